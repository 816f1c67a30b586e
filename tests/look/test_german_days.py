"""Days of chance in German: no English word stands on a screen but those that the shop wrote."""

import re

import pytest

from station.look import language
from station.shop.facts import KINDS
from station.shop.words import Say
from tests.papers.test_german import ENGLISH
from tests.recount.days import small_day
from tests.touch import list_texts

STEPS = 250
# fields with words of the shop: names, descriptions, reasons, what is checked of a morning
OWN = ("name", "words", "caution", "note", "day_checks", "parts")


@pytest.fixture
def german(qapp, monkeypatch):
    language.set_language("de")
    monkeypatch.setattr(Say, "__str__", language.translate)
    yield
    language.set_language("")


def list_own(ledger):
    """What the shop wrote itself, where it looks like English."""
    for kind in KINDS.values():
        for fact in ledger.facts(kind):
            for field in OWN:
                value = getattr(fact, field, "")
                for words in value if isinstance(value, tuple) else (value,):
                    if isinstance(words, str) and ENGLISH.search(words):
                        yield words


@pytest.mark.parametrize("seed", [3, 4])
def test_no_english_word_stands_on_a_german_screen(german, tmp_path, seed):
    found, read = {}, 0
    with small_day(tmp_path, seed) as (day, going):
        for _, _ in zip(range(STEPS), going, strict=False):
            own = sorted(set(list_own(day.ledger)), key=len, reverse=True)
            strange = re.compile("|".join(map(re.escape, (str(tmp_path), *own))))
            day.desk.language = "de"
            answer = day.desk.greeting()
            for text in (*list_texts(day.desk.face()), str(answer.said), str(answer.do)):
                read += 1
                if ENGLISH.search(strange.sub("", str(text))):
                    found[str(text)] = day.desk.hand.area
    assert read > 5000
    assert not found, "\n".join(f"{area}: {text}" for text, area in found.items())
