"""What passes at once is what passes the judgement field by field, and nearly everything does."""

import dataclasses
from dataclasses import replace
from random import Random

import msgspec
import pytest

from station.ledger.codec import read_fact, write_fact
from station.shop.facts import KINDS, Batch, Bed, Concern, Order, Part
from station.shop.facts.about import LARGEST, LONGEST, MOST_ROWS
from station.shop.fitting import find_fitting
from station.shop.limits import find_unfit
from tests.replay import small_shop

AT = "2026-11-25T10:42:07"
FACTS = [f for f in small_shop() if f.kind != Concern.kind]
BATCH = Batch(id="00412", cut_file="001", revision="A", sheets=2, due=AT, holds=("late",))
ODD = (
    None, True, "", "x" * LONGEST, "x" * (LONGEST + 1), AT, "yesterday", "B", "BB", "25:00", 0, -1,
    1, 9999, 10_000, 10**9, 10**9 + 1, -(10**9) - 1, 0.5, 2.0**30, 1e6, -1e308, [], ["x"], [[]],
    {}, ["x" * (LONGEST + 1)], ["x"] * (MOST_ROWS + 1), [0.5, 1e300],
)  # fmt: skip


@pytest.mark.parametrize("fact", [BATCH, *FACTS], ids=lambda f: f.key)
def test_what_a_shop_holds_passes_at_once(fact):
    assert find_fitting(type(fact), write_fact(fact)) == fact.id


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda k: k.kind)
def test_what_passes_can_be_read_and_holds_what_can_be(kind):
    """Every field of every kind, with odd values: none passes that would be left out."""
    chance, passed = Random(kind.kind), 0
    known = [msgspec.to_builtins(f) for f in (BATCH, *FACTS) if f.kind == kind.kind]
    fields = [field.name for field in dataclasses.fields(kind)]
    for _ in range(600):
        value = dict(chance.choice(known or [{"id": "1"}]))
        for name in chance.sample(fields, chance.randint(1, min(3, len(fields)))):
            value[name] = chance.choice(ODD)
        text = msgspec.json.encode(value)
        if id_ := find_fitting(kind, text):
            passed += 1
            fact = read_fact(kind, text)
            assert (fact.id, str(find_unfit(fact))) == (id_, ""), text
    assert passed or not known or kind is Concern


@pytest.mark.parametrize(
    "fact",
    [
        replace(BATCH, sheets=10**9),
        replace(BATCH, cut=-1),
        replace(BATCH, copy="AA"),
        replace(BATCH, due="soon"),
        replace(BATCH, why="x" * (LONGEST + 1)),
        replace(BATCH, holds=("x" * (LONGEST + 1),)),
        Bed(id="1", minutes=LARGEST * 2),
        Bed(id="1", state="paused"),
        Order(id="3306", due=AT, lines=({"product": "031", "quantity": 0},)),
        Part(id="014", name="HC-300", words="Heddle comb 300", thickness_mm=0.0),
    ],
    ids=lambda f: f.key,
)
def test_what_cannot_be_or_is_not_known_does_not(fact):
    assert not find_fitting(type(fact), msgspec.json.encode(fact))


def test_a_fact_with_sentences_is_judged_field_by_field():
    assert not find_fitting(Concern, write_fact(Concern(id="c", what="short", text="x", since=AT)))
