"""Under G41 and G42 the part is what the text says, whatever the bit: common practice."""

import math

import pytest
from reading import HEAD, both, ends, found, program, sizes

from station.cutting.geometry.compensation import compensate
from station.cutting.model import Setting

SIX = Setting(thickness_mm=6.0, bit_mm={1: 6.0})
# around a box of 100 by 60 with its lower left corner at 50, 50: the bit is left of a way
# that goes around it clockwise, and right of the other one
CLOCKWISE = "G1 Y110\nX150\nY50\nX50\n"
COUNTER = "G1 X150\nY110\nX50\nY50\n"
# with a lead in and out along an arc
ARC_IN, ARC_OUT = "G0 X30 Y80\n", "G3 X40 Y90 I-10\nG1 G40 X40 Y98\nG0 Z5\n"
LED = f"{ARC_IN}G1 Z-6.2 F600\nG1 G41 D1 X40 Y70 F2000\nG3 X50 Y80 J10\n"
ROUND = "G1 Y100\nG2 X60 Y110 I10\nG1 X140\nG2 X150 Y100 J-10\nG1 Y50\nX50\nY80\n"
ELL = "G1 Y110\nX90\nY80\nG3 X100 Y70 I10\nG1 X150\nY50\nX50\n"


def around(side: str, way: str, end: str = "G40 X50 Y30\n") -> str:
    return f"G0 X50 Y30\nG1 Z-6.2 F600\nG1 {side} D1 X50 Y50 F2000\n{way}{end}G0 Z5\n"


@pytest.mark.parametrize("bit", [3.0, 6.0, 12.0])
@pytest.mark.parametrize(
    ("body", "size"),
    [
        (around("G41", CLOCKWISE), (60, 100)),
        (around("G42", COUNTER), (60, 100)),
        (around("G41", "Z-3\nZ-6.2\n" + CLOCKWISE), (60, 100)),
        (LED + ROUND + ARC_OUT, (60, 100)),
        (around("G41", ELL), (60, 100)),
    ],
)
def test_a_part_is_as_the_text_says_whatever_the_bit(body, size, bit):
    got = found(body, Setting(thickness_mm=6.0, bit_mm={1: bit}))
    assert sizes(got) == [(*size, 1)]
    assert [p.kind for p in got.problems if p.kind not in {"no-tabs", "small-piece"}] == [
        "cutter-comp"
    ]


def test_inner_corners_and_rounds_keep_their_places():
    (shape,) = found(around("G41", ELL), SIX).shapes
    fillet = 10 * 10 * (1 - math.pi / 4)
    assert shape.area_mm2 == pytest.approx(100 * 60 - 60 * 40 + fillet, abs=0.5)


def test_a_hole_is_as_the_text_says_too():
    hole = (
        "G0 X100 Y80\nG1 Z-6.2 F600\nG1 G41 D1 X110 Y80 F2000\nG3 I-10\nG1 G40 X100 Y80\nG0 Z5\n"
    )
    (shape,) = found(hole + around("G41", CLOCKWISE), SIX).shapes
    assert shape.area_mm2 == pytest.approx(6000 - 100 * math.pi, abs=0.1)


def shift(body: str, bit: float = 6.0) -> list[tuple[float, ...]]:
    return ends(compensate(program(HEAD + body), {1: bit}))


def test_the_path_is_what_a_control_would_run():
    """Worked by hand: beside the first side, around an outer corner, to where two sides cross."""
    way = shift("G0 X0 Y-10\nG1 Z-1 F600\nG1 G41 X0 Y0\nY50\nX40\nY90\nG1 G40 X30\nG0 Z5\n")
    assert way[1:] == [
        (0, -10, 5), (0, -10, -1), (-3, 0, -1), (-3, 50, -1), (0, 53, -1), (37, 53, -1),
        (37, 90, -1), (30, 90, -1), (30, 90, 5),
    ]  # fmt: skip


def test_the_radius_is_the_files_own_where_it_is_set():
    body = "G10 L12 P4 R5\nG0 X0 Y-10\nG1 Z-1 F600\nG1 G41 D4 X0 Y0\nY50\nG40 Y60\nG0 Z5\n"
    assert shift(body)[3:5] == [(-5, 0, -1), (-5, 50, -1)]
    assert "by 5 mm" in str(next(p.text for p in program(HEAD + body).problems))


def test_pauses_stay_where_they_were():
    got = program(HEAD + around("G41", CLOCKWISE.replace("X150", "X150\nG4 P1\n")))
    moved = compensate(got, {1: 6.0})
    places = [
        some.moves.points[pause.move, :2].tolist()
        for some in (got, moved)
        for pause in some.pauses
        if pause.kind == "dwell"
    ]
    assert places == [[150, 110], [150, 113]]
    assert moved.moves.line.tolist() == sorted(moved.moves.line.tolist())


def test_both_readers_find_the_sides():
    text = "G21 F900\nG0 X1 G41 D1\nX5\nG42\nX9\nG40 X10\nG40\nM30"
    assert [(s.move, s.side) for s in both(text).sides] == [(0, 41), (2, 42), (3, 40)]
