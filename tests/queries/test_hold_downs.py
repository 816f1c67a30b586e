"""Where hold-downs may stand: asked of each at every scan, so few pieces are looked at."""

from dataclasses import replace

from station.queries import hold_downs
from station.queries.hold_downs import find_wrong, is_on_piece
from station.shop.facts import Placed, Revision, Shape
from station.shop.on_sheet import OnSheet

PLATE = Shape(outline=((0.0, 0.0), (60.0, 0.0), (60.0, 40.0), (0.0, 40.0)))
ROWS, COLUMNS = 11, 20
SHEET = Revision(
    id="1.A",
    cut_file="1",
    letter="A",
    material="1",
    minutes=20,
    shapes=(("plate", PLATE),),
    placed=tuple(
        Placed(part="plate", x_mm=60.0 + 110 * n, y_mm=50.0 + 100 * row)
        for row in range(ROWS)
        for n in range(COLUMNS)
    ),
)


def test_a_hold_down_on_a_piece_is_the_one_that_is_told():
    first = SHEET.placed[0]
    places = ((5.0, 5.0), (first.x_mm + 30, first.y_mm + 20))
    wrong = find_wrong(replace(SHEET, hold_downs=places), (SHEET,), None)
    assert wrong is not None
    assert wrong.number == 2


def test_only_pieces_that_are_near_are_drawn_on_the_sheet(monkeypatch):
    drawn = []

    class Counted(OnSheet):
        def __init__(self, piece, shape):
            drawn.append(piece)
            super().__init__(piece, shape)

    monkeypatch.setattr(hold_downs, "OnSheet", Counted)
    assert not is_on_piece(SHEET, (115.0, 100.0))
    assert len(drawn) <= 9  # of 220
