"""Where a hold-down may stand is told cell by cell; where nothing is known, everywhere."""

import pytest

from station.shop.facts import Clear

ROWS = Clear.pack(bytes([1, 1, 0, 0, 1, 0]), 10.0, 3)  # two rows, from below


@pytest.mark.parametrize(
    ("place", "room"),
    [((0.0, 0.0), True), ((19.9, 9.9), True), ((20.0, 5.0), False), ((5.0, 10.0), False),
     ((10.0, 19.0), True), ((30.0, 5.0), False), ((10.0, 20.0), False), ((-1.0, 5.0), False),
     ((15.0, -0.1), False)],
)  # fmt: skip
def test_a_place_has_room_where_its_cell_has(place, room):
    assert ROWS.has_room(place) is room


def test_where_nothing_is_known_nothing_is_refused():
    assert Clear().has_room((5.0, 5.0))


def test_what_was_damaged_has_no_room():
    assert not Clear(cells="not packed", across=3).has_room((5.0, 5.0))
