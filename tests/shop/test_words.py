"""Sentences: values, one and many, and that no template counts in the plural alone."""

import ast
import re
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QTranslator

import station
from station.ledger.codec import read_fact, write_fact
from station.look.language import translate
from station.shop.facts import Concern
from station.shop.words import (
    Say,
    clock,
    name_first,
    plain,
    say,
    say_more,
    several,
    together,
)

HOME = Path(station.__file__).parent
COUNTED = (
    r"\{(?!part\b|station\b)\w+\} (parts|pieces|sheets|tabs|tab stubs|packs|orders|batches|lines|"
    r"problems|rows|values|hold-downs|products|times|are|were|have|stay|wait)\b"
)


@pytest.mark.parametrize(
    ("template", "values", "words"),
    [
        ("{n} {n|part|parts}", {"n": 1}, "1 part"),
        ("{n} {n|part|parts}", {"n": 0}, "0 parts"),
        ("{n} {n|part|parts}", {"n": 1200}, "1\u202f200 parts"),
        ("{n} {n|part|parts}", {"n": "1"}, "1 part"),
        ("{n} {n|part|parts}", {"n": ""}, " parts"),
        ("{n} {n|sheet is|sheets are} cut", {"n": 2}, "2 sheets are cut"),
        ("{a} {a|part|parts} in {b} {b|pack|packs}", {"a": 2, "b": 1}, "2 parts in 1 pack"),
        ("{n|pack sent|packs sent}", {"n": 1}, "pack sent"),
        ("{what}: {n}", {"what": say("{n} {n|line|lines}", n=1), "n": 3}, "1 line: 3"),
        ("{name}", {"name": "a {b} | c"}, "a {b} | c"),
        ("{n} {n|a|b}", {"n": 11}, "11 b"),
    ],
)
def test_a_template_is_filled(template, values, words):
    assert str(Say(template, values)) == words
    assert translate(Say(template, values)) == words


class Danish(QTranslator):
    """A translation with its own words for one and many."""

    def translate(self, _context, source, _disambiguation=None, _n=-1):
        return "{n|del|dele}: {n}" if source == "{n} {n|part|parts}" else ""


@pytest.mark.parametrize(("n", "words"), [(1, "del: 1"), (4, "dele: 4")])
def test_a_translation_writes_its_own_forms(qapp, n, words):
    danish = Danish()
    QCoreApplication.installTranslator(danish)
    try:
        assert translate(say("{n} {n|part|parts}", n=n)) == words
    finally:
        QCoreApplication.removeTranslator(danish)


def _templates():
    for file in sorted(HOME.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "say":
                first = node.args[0] if node.args else None
                if isinstance(first, ast.Constant):
                    yield file.relative_to(HOME), first.value


@pytest.mark.slow
def test_no_template_counts_in_the_plural_alone():
    found = list(_templates())
    assert len(found) > 300
    wrong = [(str(f), t) for f, t in found if re.search(COUNTED, t)]
    assert wrong == []


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (1234567, "1\u202f234\u202f567"),
        (-1234, "-1\u202f234"),
        (True, "True"),
        (1.5, "1.5"),
        ("x", "x"),
    ],
)
def test_a_value_is_written_plainly(value, words):
    assert plain(value) == words


@pytest.mark.parametrize(
    ("items", "words"),
    [([], ""), (["1"], "1"), (["1", "2"], "1 and 2"), (["1", "2", "3"], "1, 2 and 3")],
)
def test_several_things_in_a_row(items, words):
    assert several(items) == words


def test_an_empty_sentence_says_nothing():
    assert not Say()
    assert say("x")
    assert clock("2026-11-25T10:42:07") == "10:42"
    assert clock("") == ""


@pytest.mark.parametrize(
    ("phrases", "sentence"),
    [
        ([], ""),
        ([say("one")], "one"),
        ([say("one"), say("two")], "one and two"),
        ([say("{n} here", n=1200), say("two"), say("three"), say("four")],
         "1\u202f200 here, two, three and four"),
    ],
)  # fmt: skip
def test_phrases_in_a_row(phrases: list[Say], sentence: str) -> None:
    assert str(together(phrases)) == sentence


@pytest.mark.parametrize("text", [say("{n} are short of {part}", n=2, part="SG-10"), "as before"])
def test_a_concern_keeps_its_sentence_to_be_translated(text: Say | str) -> None:
    worry = Concern(id="c1", what="short", text=text, since="2026-11-25T10:00:00")
    assert read_fact(Concern, write_fact(worry)) == worry


def test_what_is_left_out_is_told():
    names = ["A", "B", "C", "D"]
    assert [name_first(names[:n], 3) for n in (1, 3, 4)] == ["A", "A, B and C", "A, B, C …"]
    parts = [say("{p}", p=name) for name in names]
    assert [str(together(parts[:n], 3)) for n in (0, 3, 4)] == ["", "A, B and C", "A, B, C …"]
    assert str(together(parts)) == "A, B, C and D"


def test_a_list_that_is_cut_off_ends_its_sentence():
    told = say("No {parts}. Put them back.", parts=together([say(name) for name in "ABC"], 2))
    assert str(told) == "No A, B … Put them back."
    assert [str(say_more(say("Lots"), n)) for n in (-1, 0, 2)] == ["Lots", "Lots", "Lots: 2 more"]
