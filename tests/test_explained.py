"""Each millimetre of a cut through the sheet bounds what comes off it, or is told."""

from dataclasses import replace

import pytest

from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program
from tests.explained import TELLS, measure_unexplained
from tests.look_at_sheets import SHEETS, THICK, Text
from tests.sheets.making import make_draft, write_draft

SETTING = Setting(thickness_mm=THICK, sheet=(2440.0, 1220.0), bit_mm={1: 6.0})


def read(text, setting=SETTING):
    return analyse_program(read_program(text.encode(), setting), setting)


@pytest.mark.parametrize("seed", range(70000, 70006))
def test_every_cut_of_a_made_sheet_is_explained(seed):
    sheet = write_draft(seed, make_draft(seed, small=True))
    setting = Setting(
        thickness_mm=sheet.thickness, sheet=sheet.size, spindle_mm=sheet.bit,
        zero="face" if sheet.zero == "top" else "spoilboard", origin="lower-left",
    )  # fmt: skip
    found = read(sheet.text, setting)
    assert found.pieces
    assert measure_unexplained(found) == 0


@pytest.mark.parametrize("name", ["5-shared", "8-changes"])
def test_every_cut_of_a_telling_sheet_is_explained(name):
    found = read(SHEETS[name](), replace(SETTING, bit_mm={}))
    assert found.pieces
    assert measure_unexplained(found) == 0


def test_a_cut_that_frees_nothing_is_told_and_measured():
    plate = Text().take_bit(1).cut_out(100, 100, 300, 200)
    alone = plate.cut([(600, 900), (1600, 900)], 6.8, closed=False).write()
    found = read(alone)
    assert measure_unexplained(found) == 0
    assert any(p.kind == "frees-nothing" and "1000 mm" in str(p.text) for p in found.problems)
    silent = replace(found, problems=tuple(p for p in found.problems if p.kind not in TELLS))
    assert measure_unexplained(silent) == pytest.approx(1000, abs=1)


def test_a_contour_that_is_cut_twice_is_one_closed_cut():
    plate = Text().take_bit(1).cut_out(100, 100, 300, 200)
    once = read(plate.write())
    for _ in range(2):
        plate.cut_out(100, 100, 300, 200)
    assert read(plate.write()).closed_cuts == once.closed_cuts == 1
