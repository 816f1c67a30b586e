"""The handbook's chapters, read from its page: what a station shows of it."""

import re
from functools import cache
from importlib.resources import files
from typing import NamedTuple

_QUOTES = {"": "“”", "de": "„“"}
_SCREEN = re.compile(r"\*([^*]+)\*")  # words that stand on the screen
_LINK = re.compile(r"!?\[([^\]]*)\]\([^)]*\)")


class Chapter(NamedTuple):
    """A chapter: its title, and its paragraphs without what a web page needs."""

    title: str
    lines: tuple[str, ...]


@cache
def read_chapters(language: str = "") -> tuple[Chapter, ...]:
    """Reads every chapter, in order; in English where a language has no page of its own."""
    guide = files("resources") / "guide"
    page = guide / f"shop_{language}.md"
    page = page if language and page.is_file() else guide / "shop.md"
    text = page.read_text(encoding="utf-8")
    _, *chapters = text.split("\n## ")
    quotes = _QUOTES.get(language, _QUOTES[""])
    return tuple(_read_chapter(chapter, quotes) for chapter in chapters)


def _read_chapter(text: str, quotes: str) -> Chapter:
    title, *lines = text.splitlines()
    kept = (line for line in lines if line and not line.startswith("!"))
    return Chapter(title, tuple(_free_line(line, quotes) for line in kept))


def _free_line(line: str, quotes: str) -> str:
    """Frees a line of what marks its words on a web page; words of the screen are quoted."""
    plain = _LINK.sub(r"\1", line).removeprefix("- ").replace("`", "")
    return _SCREEN.sub(rf"{quotes[0]}\1{quotes[1]}", plain)


def find_chapter(area: str) -> int:
    """Finds the chapter of a work area, from 0; the first where it has none of its own.

    They stand in the same order in every language.
    """
    wanted = OF_AREA.get(area, area.capitalize())
    titles = [chapter.title for chapter in read_chapters()]
    return titles.index(wanted) if wanted in titles else 0


OF_AREA = {"today": "Shop today and what to cut", "plan": "Shop today and what to cut",
           "office": "Setting up"}  # fmt: skip
