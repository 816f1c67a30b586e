"""What differs between two revisions, piece by piece where tabs are concerned."""

from dataclasses import replace

import pytest

from station.queries.revisions import list_differences
from station.shop.facts import Placed, Revision, Shape

BOX = ((0.0, 0.0), (200.0, 0.0), (200.0, 40.0), (0.0, 40.0))
SHAPE = Shape(outline=BOX, tabs=((100.0, 0.0), (100.0, 40.0)))
MIDDLE = ((100.0, 0.0), (100.0, 40.0))  # from a piece's lower left, mm
ENDS = ((20.0, 0.0), (180.0, 40.0))


def piece(n: int, *tabs: tuple[float, float], x: float = 0.0) -> Placed:
    """The n-th of 24 pieces in four columns, its tabs told from its lower left."""
    left, low = 20.0 + 240 * (n % 4) + x, 20.0 + 60 * (n // 4)
    there = tuple((left + tx, low + ty) for tx, ty in tabs)
    return Placed(part="021", x_mm=left, y_mm=low, tabs=there)


def revision(*pieces: Placed, shape: Shape = SHAPE) -> Revision:
    """A revision with these pieces on its sheet."""
    return Revision(id="009.C", cut_file="009", letter="C", material="1", minutes=20.0,
                    shapes=(("021", shape),), placed=pieces)  # fmt: skip


def told(old: Revision, new: Revision) -> list[str]:
    """The differences as sentences."""
    return [str(s) for s in list_differences(old, new, {"021": "ST-200"})]


ALL = revision(*(piece(n, *MIDDLE) for n in range(24)))


def test_pieces_with_other_tabs_are_counted() -> None:
    new = revision(piece(0, *MIDDLE), *(piece(n, *ENDS) for n in range(1, 24)))
    assert told(ALL, new) == ["ST-200: 23 have other tabs."]
    one = revision(piece(0, *ENDS), *ALL.placed[1:])
    assert told(ALL, one) == ["ST-200: 1 has other tabs."]


def test_tabs_that_went_are_told() -> None:
    new = revision(piece(0, *MIDDLE), *(piece(n) for n in range(1, 24)))
    assert told(ALL, new) == ["ST-200: 23 have other tabs."]
    fewer = revision(*ALL.placed[:23], piece(23, MIDDLE[0]))
    assert told(ALL, fewer) == ["ST-200: 1 has other tabs."]


def test_the_same_tabs_are_no_difference() -> None:
    again = tuple(replace(p, tabs=tuple((x - 0.01, y) for x, y in p.tabs)) for p in ALL.placed)
    assert told(ALL, revision(*again)) == []
    assert told(ALL, revision(*reversed(again))) == []


def test_all_changed_alike_is_told_of_the_part() -> None:
    other = replace(SHAPE, tabs=ENDS)
    new = revision(*(piece(n, *ENDS) for n in range(24)), shape=other)
    assert told(ALL, new) == ["ST-200: its tabs are elsewhere."]
    third = replace(SHAPE, tabs=(*MIDDLE, (0.0, 20.0)))
    new = revision(*(piece(n, *third.tabs) for n in range(24)), shape=third)
    assert told(ALL, new) == ["ST-200: 3 tabs instead of 2."]


def test_pieces_moved_together_keep_their_tabs() -> None:
    new = revision(*(piece(n, *MIDDLE, x=7.0) for n in range(24)))
    assert told(ALL, new) == ["ST-200: 24 lie elsewhere on the sheet."]


def test_with_one_piece_less_the_others_tabs_are_still_compared() -> None:
    new = revision(*(piece(n, *ENDS) for n in range(1, 24)))
    assert told(ALL, new) == [
        "ST-200: 23 instead of 24 a sheet.",
        "ST-200: 23 have other tabs.",
    ]


@pytest.mark.parametrize("turn", [0.0, 90.0, 180.0])
def test_tabs_that_only_the_shape_has_are_compared_where_they_lie(turn: float) -> None:
    lying = [replace(piece(n), turn_deg=turn, mirrored=turn == 90.0) for n in range(3)]
    bare = revision(*lying)
    turned = {0.0: MIDDLE, 180.0: MIDDLE, 90.0: ((0.0, 100.0), (40.0, 100.0))}[turn]
    own = [replace(p, tabs=piece(n, *turned).tabs) for n, p in enumerate(lying)]
    assert told(bare, revision(*own)) == []
    own[1] = replace(own[1], tabs=piece(1, (20.0, 0.0), turned[1]).tabs)
    assert told(bare, revision(*own)) == ["ST-200: 1 has other tabs."]
    assert told(revision(*own), bare) == ["ST-200: 1 has other tabs."]


def test_another_size_says_nothing_of_tabs_beside() -> None:
    longer = Shape(outline=((0.0, 0.0), (210.0, 0.0), (210.0, 40.0), (0.0, 40.0)))
    new = revision(*(piece(n) for n in range(24)), shape=longer)
    assert told(ALL, new) == ["ST-200: 210.00 × 40.00 mm instead of 200.00 × 40.00."]


def hole(x: float, y: float, size: float = 10.0) -> tuple[tuple[float, float], ...]:
    """A square hole around a place."""
    h = size / 2
    return ((x - h, y - h), (x + h, y - h), (x + h, y + h), (x - h, y + h))


@pytest.mark.parametrize(
    ("holes", "said"),
    [
        ((hole(30, 20), hole(150, 20)), []),
        ((hole(170, 20), hole(50, 20)), []),  # the part lies turned by half a turn
        ((hole(30, 20),), ["ST-200: 1 hole instead of 2."]),
        ((hole(30, 20), hole(150, 23)), ["ST-200: Holes at another place."]),
        ((hole(30, 20), hole(150, 20, 10.4)), ["ST-200: Holes of another size."]),
    ],
)
def test_holes_that_were_moved_or_bored_wider_are_told(
    holes: tuple[tuple[tuple[float, float], ...], ...], said: list[str]
) -> None:
    before = replace(SHAPE, holes=(hole(30, 20), hole(150, 20)))
    old = revision(*ALL.placed, shape=before)
    assert told(old, revision(*ALL.placed, shape=replace(SHAPE, holes=holes))) == said
