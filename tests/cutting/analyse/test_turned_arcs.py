"""An arc written with G2 for G3 goes the long way round, and its neighbours show it."""

import pytest
from reading import found

from station.cutting.model import Setting


def rounded(arc: str, z: float = -6.2, radius: str = "I0 J10") -> str:
    """A box of 100 by 60 with one rounded corner, cut counter-clockwise."""
    return (
        f"G0 X20 Y20\nG1 Z{z} F600\nX110 F2000\n{arc} X120 Y30 {radius}\nG1 Y80\nX20\nY20\nG0 Z5\n"
    )


def slot(arc: str) -> str:
    """A slot of 10 between centres, its ends half rounds; it is cut counter-clockwise."""
    return (
        f"G0 X50 Y45\nG1 Z-6.2 F600\nX80 F2000\n{arc} X80 Y55 J5\nG1 X50\nG3 X50 Y45 J-5\nG0 Z5\n"
    )


@pytest.mark.parametrize(
    ("body", "lines"),
    [
        (rounded("G3"), []),
        (rounded("G2"), [8]),
        (rounded("G2", radius="R-10"), [8]),
        (rounded("G3", radius="R-10"), []),  # about another centre
        (rounded("G2", -3) + rounded("G2"), [8]),  # once a place
        (slot("G3") + rounded("G3"), []),
        (slot("G2") + rounded("G3"), [8]),
        # a loop at a corner, for the bit to turn in, goes on as it came
        ("G0 X20 Y20\nG1 Z-6.2 F600\nX120 F2000\nG3 X120 Y20 R10\n", []),
        ("G0 X20 Y20\nG1 Z-6.2 F600\nX120 F2000\nG2 X120 Y20 J-5\nG1 Y80\nX20\nY20\nG0 Z5\n", []),
        ("G0 X20 Y20\nG1 Z-6.2 F600\nX110 F2000\nG3 X100 Y30 J10\nG1 Y80\nX20\nY20\nG0 Z5\n", []),
        # in the air
        (rounded("G3") + rounded("G2", 2), []),
    ],
)
def test_an_arc_the_long_way_round(body, lines):
    setting = Setting(thickness_mm=6.0, bit_mm={1: 6.0}, zero="face")
    told = [p for p in found(body, setting).problems if p.kind == "turned-arc"]
    assert [p.line for p in told] == lines
    assert {p.grade for p in told} <= {"look"}
