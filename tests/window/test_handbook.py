"""The handbook is opened by More, at the chapter of the work area; every chapter fits a screen."""

import re
from pathlib import Path

import pytest

from station.look import inspect
from station.shop.areas import AREAS
from station.shop.cards import button
from station.shop.handbook import read_chapters
from tests.touch import find_touch

PAGE = Path(__file__).parents[2] / "resources" / "guide" / "shop.md"


@pytest.mark.parametrize("area", [area.id for area in AREAS])
def test_more_opens_the_chapter_of_the_area(screen, area):
    screen.at(area, worker="07")
    screen.touch(button("menu"))
    assert inspect.list_problems(screen.window) == []
    screen.touch(button("handbook"))
    own = {"office": "Setting up", "today": "Shop today and what to cut"}
    own["plan"] = own["today"]
    assert screen.said == f"Handbook: {own.get(area, area.capitalize())}"


@pytest.mark.parametrize(("language", "said"), [("", "Handbook"), ("de", "Handbuch")])
def test_every_chapter_fits_and_is_a_touch_away(screen, language, said):
    screen.stage.ledger.set_local("language", language)
    screen.at("popping", worker="07")
    screen.touch(button("menu"))
    screen.touch(button("handbook"))
    for chapter in read_chapters(language):
        screen.touch(find_touch(screen.session.desk.face().side, chapter.title))
        assert screen.window.strip.said.text() == f"{said}: {chapter.title}"
        assert inspect.list_problems(screen.window) == []
        assert chapter.lines[0] in inspect.list_texts(screen.window)
    screen.touch(button("put_down"))
    assert "Chapters" not in inspect.list_texts(screen.window)
    screen.window.set_language("")


@pytest.mark.parametrize("language", ["", "de"])
def test_no_mark_of_a_web_page_stands_on_the_screen(language):
    assert not [
        line for c in read_chapters(language) for line in c.lines if "*" in line or "`" in line
    ]


def test_the_german_handbook_says_as_much_as_the_english_one():
    """Chapter for chapter, and in each line for line: a new one wants its German one."""
    english, german = read_chapters(), read_chapters("de")
    assert len({chapter.title for chapter in german} - {c.title for c in english}) > 10
    assert [len(c.lines) for c in german] == [len(c.lines) for c in english]
    assert read_chapters("fr") == english


def test_its_pictures_are_there():
    pictures = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", PAGE.read_text("utf-8"))
    assert len(pictures) >= 4
    assert [name for name in pictures if not (PAGE.parent / name).exists()] == []


def test_what_a_page_marks_stands_in_quotes_on_the_screen():
    for language, quoted in (("", "“in use”"), ("de", "„in Gebrauch“")):
        chapters = read_chapters(language)
        assert any(quoted in line for chapter in chapters for line in chapter.lines)
        assert not [line for c in chapters for line in c.lines if "*" in line or "`" in line]
