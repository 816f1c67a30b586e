"""A file for a sheet of another thickness is told by its steps, its ramps, or a remark."""

import pytest
from reading import HEAD, box

from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program


def told(body: str, thick: float, zero: str = "spoilboard") -> list[tuple[int, str, str]]:
    setting = Setting(thickness_mm=thick, bit_mm={1: 6.0}, zero=zero)
    got = analyse_program(read_program((HEAD + body).encode(), setting), setting)
    return [(p.line, p.grade, str(p.text)) for p in got.problems if p.kind == "thickness"]


def laps(x: float, depths: list[float]) -> str:
    """A box in passes, Z0 on the spoilboard, safe above a sheet of 9 mm."""
    return "".join(box(x, 20, 86, 66, z=z).replace("G0 Z5", "G0 Z14") for z in depths)


def helix(x: float, top: float) -> str:
    """A hole by a helix that begins at a height."""
    turns = "".join(f"G3 X{x} Y50 I-10 Z{z:g}\n" for z in (top / 2, -0.2, -0.2))
    return f"G0 X{x} Y50\nG1 Z{top} F900\n{turns}G0 Z14\n"


@pytest.mark.parametrize(
    ("body", "thick", "lines"),
    [
        # three equal steps from 9 mm down: in a sheet of 6 the first would cut air
        (laps(20, [5.9, 2.8, -0.3]) + laps(150, [5.9, 2.8, -0.3]), 6.0, 1),
        (laps(20, [5.9, 2.8, -0.3]) + laps(150, [5.9, 2.8, -0.3]), 9.0, 0),
        # a shallow first pass that spares the face, and the rest at once
        (laps(20, [5.5, -0.3]) + laps(150, [5.5, -0.3]), 6.0, 0),
        # helices that begin well above, between plunges that tell nothing
        (helix(60, 6.5) + helix(160, 6.5) + laps(220, [-0.2]), 3.0, 1),
        (helix(60, 6.5) + helix(160, 6.5) + laps(220, [-0.2]), 6.0, 0),
    ],
)
def test_passes_and_ramps_tell_the_thickness(body, thick, lines):
    assert len(told(body, thick)) == lines


@pytest.mark.parametrize(
    ("remark", "thick", "found"),
    [
        ("(9 mm birch ply)", 6.0, ["look"]),
        ("(MATERIAL THICKNESS = 0.5 IN)", 6.0, ["look"]),
        ("(9 mm birch ply)", 8.8, []),
        ("(SHEET 1200 X 600 X 9 MM)", 9.0, []),
        ("(2440x1220 mm sheet)", 6.0, []),
        ("(6 mm straight bit for 9 mm ply)", 6.0, []),  # which of both is the sheet, nobody says
        ("(9 mm ply)\n(or 6 mm mdf)", 6.0, []),
    ],
)
def test_a_remark_tells_the_thickness(remark, thick, found):
    body = remark + "\n" + laps(20, [-0.2])
    assert [grade for _, grade, _ in told(body, thick)] == found


def test_the_question_names_both():
    ((line, grade, text),) = told("(9 mm birch ply)\n" + laps(20, [-0.2]), 6.0)
    assert (line, grade) == (5, "look")
    assert "9 mm" in text
    assert "6 mm" in text
