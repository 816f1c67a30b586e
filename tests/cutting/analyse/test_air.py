"""A file for a thicker sheet, with its zero on the spoilboard, begins in the air."""

import pytest

from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program

LAP = "G0 X{x} Y20\nG0 Z19\nG1 Z{z} F400\nG1 X{far} F2000\nG1 Y80\nG1 X{x}\nG1 Y20\nG0 Z25\n"


@pytest.mark.parametrize(("thickness", "told"), [(18, []), (9, ["thickness"])])
def test_laps_in_the_air_are_told_once(thickness, told):
    laps = "".join(
        LAP.format(x=x, far=x + 60, z=z) for x in (20, 120) for z in (14, 10, 6, 2, -0.3)
    )
    setting = Setting(
        thickness_mm=thickness,
        sheet=(300, 200),
        zero="spoilboard",
        origin="lower-left",
        spindle_mm=6,
    )
    program = read_program(f"G21 G90\nM3 S18000\nG0 Z25\n{laps}M5\nM30\n".encode(), setting)
    found = [p for p in analyse_program(program, setting).problems if p.kind == "thickness"]
    assert [p.kind for p in found] == told
    assert [p.line for p in found] == [7] * len(told)
