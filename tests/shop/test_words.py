"""Sentences: put together, kept in facts, read back."""

import pytest

from station.ledger.codec import read_fact, write_fact
from station.shop.facts import Concern
from station.shop.words import Say, say, together


@pytest.mark.parametrize(
    ("phrases", "sentence"),
    [
        ([], ""),
        ([say("one")], "one"),
        ([say("one"), say("two")], "one and two"),
        ([say("{n} here", n=1200), say("two"), say("three"), say("four")],
         "1\u2009200 here, two, three and four"),
    ],
)  # fmt: skip
def test_phrases_in_a_row(phrases: list[Say], sentence: str) -> None:
    assert str(together(phrases)) == sentence


@pytest.mark.parametrize("text", [say("{n} are short of {part}", n=2, part="SG-10"), "as before"])
def test_a_concern_keeps_its_sentence_to_be_translated(text: Say | str) -> None:
    worry = Concern(id="c1", what="short", text=text, since="2026-11-25T10:00:00")
    assert read_fact(Concern, write_fact(worry)) == worry
