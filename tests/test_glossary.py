"""Screens, cards, papers and translations keep to the glossary: one word for one thing."""

import ast
import re
from pathlib import Path

import pytest

from resources.translations.ts_file import read

ROOT = Path(__file__).parents[1]
PLACEHOLDER = re.compile(r"\{(\w+)(?:\|([^|{}]*)\|([^|{}]*))?\}")
SIDE = re.compile(r"^\| ([a-z -]+) \| ([^|]+) \| ([^|]+) \| ([^|]*)\|$", re.MULTILINE)


def split(cell):
    return [word.strip() for word in cell.split(",") if word.strip()]


def list_words():
    """The glossary: word, German words, words that stand nowhere."""
    text = (ROOT / "resources" / "guide" / "glossary.md").read_text("utf-8")
    return [(word, split(german), split(never)) for word, _, german, never in SIDE.findall(text)
            if word not in ("word", "---")]  # fmt: skip


GERMAN = read(ROOT / "resources" / "translations" / "station_de.ts")
WORDS = list_words()


def bare(template):
    """A template without its values and the text station's orders: words of a plural stay."""
    template = re.sub(r"@\w+", "", template)
    return PLACEHOLDER.sub(lambda found: f"{found[2] or ''} {found[3] or ''}", template)


def has(word, text):
    return re.search(rf"\b{word}(s|es)?\b", text, re.IGNORECASE)


def list_paper_texts():
    """The texts of papers: what the sources of papers print, without their docstrings."""
    for file in (ROOT / "station" / "papers").glob("*.py"):
        tree = ast.parse(file.read_text("utf-8"))
        told = [node.body[0].value for node in ast.walk(tree)
                if isinstance(node, ast.Module | ast.FunctionDef | ast.ClassDef)
                and node.body and isinstance(node.body[0], ast.Expr)]  # fmt: skip
        for node in ast.walk(tree):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in told:
                yield node.value


def test_the_glossary_is_read():
    assert len(WORDS) > 20
    assert [word for word, *_ in WORDS] == sorted(word for word, *_ in WORDS)


@pytest.mark.parametrize(("word", "german"), [(word, german) for word, german, _ in WORDS])
def test_german_has_one_word_for_it_too(word, german):
    wrong = [
        (source, text)
        for source, text in GERMAN.items()
        if has(word, bare(source))
        and not any(re.search(stem, bare(text), re.IGNORECASE) for stem in german)
    ]
    assert wrong == []


@pytest.mark.parametrize("never", [never for *_, each in WORDS for never in each])
def test_no_second_word_stands_for_it(never):
    shown = [bare(source) for source in GERMAN]
    assert [text for text in (*shown, *list_paper_texts()) if has(never, text)] == []
