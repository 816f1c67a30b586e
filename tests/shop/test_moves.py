"""Places, spots and moves."""

import pytest

from station.shop.moves import Move, Spot, head, move, tail
from station.shop.places import balances


@pytest.mark.parametrize(
    ("place", "kind", "rest"),
    [("popping/4", "popping", "4"), ("rack/014", "rack", "014"), ("trimming", "trimming", "")],
)
def test_a_place_has_a_kind_and_a_rest(place, kind, rest):
    assert (head(place), tail(place)) == (kind, rest)


@pytest.mark.parametrize(
    ("place", "may"),
    [
        ("cut", True),
        ("bought", True),
        ("wear", True),
        ("found", True),
        ("recount", True),
        ("rack/014", False),
        ("spoiled/01", False),
        ("missing", False),
        ("store", False),
    ],
)
def test_only_places_that_balance_the_books_go_below_zero(place, may):
    assert balances(place) is may


def test_a_move_names_both_ends():
    made = move("014", 24, "cut", "popping/1", "00412")
    assert made == Move("014", 24, Spot("cut", "00412"), Spot("popping/1", "00412"))


def test_a_split_is_a_move_between_two_batches_at_one_place():
    made = move("014", 5, "trimming", "trimming", "00412", "00413")
    assert (made.frm, made.to) == (Spot("trimming", "00412"), Spot("trimming", "00413"))


def test_back_and_back_again_is_the_same_move():
    made = move("014", 5, "trimming", "rack/014", "00412", "00413")
    assert made.back() == Move("014", 5, made.to, made.frm)
    assert made.back().back() == made
