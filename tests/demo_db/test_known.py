"""What the demo shop's cut files make is known to it as its own parts."""

import pytest

from demo_db.parts import designs, shape
from demo_db.write_cut import FOLDER
from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program
from station.shop.facts import Part


@pytest.mark.parametrize("name", ["HC300-SET-C", "FS600-SET-C", "STICK-SET-A"])
def test_the_parts_of_a_demo_cut_file_are_known(name):
    known = {k: Part(id=k, name=d.name, words="", shape=shape(k)) for k, d in designs().items()}
    setting = Setting(sheet=(2440.0, 1220.0))
    program = read_program((FOLDER / f"{name}.nc").read_bytes(), setting)
    found = analyse_program(program, setting, known=known).shapes
    assert found
    assert all(s.name for s in found), [(s.name, s.width_mm, s.length_mm) for s in found]
