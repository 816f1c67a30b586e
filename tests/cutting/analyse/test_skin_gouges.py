"""A lap that leaves a skin and crosses another part is told as one that goes through is."""

import pytest

from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program

SHEET = Setting(thickness_mm=6, sheet=(400, 200), zero="face", origin="lower-left", spindle_mm=6)
LAP = "G0 X{x} Y40\nG1 Z-5.7 F400\nG1 X{far} F2000\nG1 Y120\nG1 X{x}\nG1 Y40\nG1 X{over}\nG0 Z5\n"


@pytest.mark.parametrize(("second", "told"), [(180, []), (140, ["gouge"])])
def test_a_skin_that_crosses_another_part(second, told):
    laps = "".join(LAP.format(x=x, far=x + 110, over=x + 4) for x in (40, second))
    program = read_program(f"G21 G90\nM3 S18000\nG0 Z5\n{laps}M5\nM30\n".encode(), SHEET)
    found = [p for p in analyse_program(program, SHEET).problems if p.kind == "gouge"]
    assert [p.kind for p in found] == told
    assert all(12 <= p.line <= 19 for p in found)
