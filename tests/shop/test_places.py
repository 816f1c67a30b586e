"""The table of the kinds of place."""

import re
from pathlib import Path

import pytest

from station.shop import facts
from station.shop.places import KINDS, areas_of, kind_of, place_words

ROOT = Path(__file__).parent.parent.parent
WRITTEN = re.compile(r"""f?"([a-z]+)/\{""")  # f"popping/{sheet}"
SHELVES = {"queue", "cut", "settled"}  # lists of facts are written alike


def having(column: str) -> set[str]:
    """The kinds of place of which a column of the table is true."""
    return {name for name, kind in KINDS.items() if getattr(kind, column)}


@pytest.mark.parametrize(
    ("column", "kinds"),
    [
        ("area", {"popping", "trimming", "rework"}),
        ("paper", {"popping", "trimming", "rework", "held"}),
        ("before_rack", {"popping", "trimming", "rework", "held", "missing"}),
        ("good", {"trimming", "rack", "packing"}),
        ("onward", {"trimming", "rack", "packing", "pack", "cart", "shipped"}),
        ("counted", {"store", "popping", "trimming", "rework", "rack", "held"}),
        ("balances", {"cut", "bought", "wear", "found", "recount"}),
    ],
)
def test_each_purpose_has_its_kinds(column, kinds):
    assert having(column) == kinds


def test_what_waits_at_trimming_is_trimmed_or_made_good():
    assert areas_of("trimming") == ("trimming", "rework")
    assert areas_of("popping") == ("popping",)
    assert areas_of("cart") == ()


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("popping/4", "popping, sheet 4"),
        ("trimming", "trimming"),
        ("spoiled/01", "spoiled (01)"),
        ("packing/3306", "open pack of order 3306"),
        ("spoiled", "spoiled"),  # its number is not known
        ("trimming/2", "trimming/2"),
        ("moon/7", "moon/7"),
    ],
)
def test_a_place_is_told_in_words(place, words):
    assert str(place_words(place)) == words


def test_a_place_of_another_program_is_nothing_special():
    kind = kind_of("moon/7")
    assert (kind.area, kind.paper, kind.counted, kind.balances) == ("", False, False, False)


def test_a_whole_place_has_no_number():
    assert kind_of("trimming").whole
    assert not kind_of("rack/014").whole


def test_every_place_that_rooms_write_is_in_the_table():
    rooms = (ROOT / "station" / "floor").rglob("*.py")
    written = {kind for f in rooms for kind in WRITTEN.findall(f.read_text(encoding="utf-8"))}
    assert {"popping", "rack", "packing", "cart", "pack", "bed"} <= written
    assert written - facts.KINDS.keys() - SHELVES <= KINDS.keys()
