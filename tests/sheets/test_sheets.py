"""The written sheets are what their truth says, and the comparison tells what differs."""

from dataclasses import replace
from itertools import pairwise
from math import acos, ceil, cos, pi
from random import Random

import pytest

from tests.sheets.comparing import judge
from tests.sheets.faults import put_fault
from tests.sheets.making import make_draft, make_sheet
from tests.sheets.measure import measure
from tests.sheets.raster import check_truth
from tests.sheets.reading import read_sheet
from tests.sheets.truth import Found, FoundGroup, FoundProblem

CELL = 0.3773  # no size on the sheets is a multiple of it


def find_all(sheet):
    """What a reader without fault would find."""
    groups = [
        FoundGroup(g.count, *g.sizes[0], g.holes, g.slots, g.pockets, g.tabs, g.places)
        for g in sheet.groups
    ]
    fault = sheet.fault
    line = fault.lines[0][0] if fault and fault.lines else None
    return Found(groups, [FoundProblem(fault.kind, line)] if fault else [])


def test_a_seed_gives_the_same_sheet_again():
    assert make_sheet(7) == make_sheet(7)


@pytest.mark.parametrize("seed", [0, 2, 5, 30])
@pytest.mark.slow
def test_the_truth_is_what_a_grid_of_cells_shows(seed):
    assert check_truth(make_draft(seed, small=True), CELL) == []


@pytest.mark.parametrize(
    ("seed", "kind", "spoilt"),
    [(9, "uncut", 1), (77, "uncut", 5), (85, "gouge", 2), (17, "tab cut", 0)],
)
@pytest.mark.slow
def test_a_fault_does_to_the_parts_what_its_truth_says(seed, kind, spoilt):
    draft = make_draft(seed, small=True)
    assert put_fault(draft, Random(f"fault {seed}")).kind == kind
    assert len(check_truth(draft, CELL)) == spoilt


@pytest.mark.parametrize("seed", range(12))
def test_a_reader_without_fault_is_told_so(seed):
    sheet = make_sheet(seed, small=True)
    verdict = judge(sheet, find_all(sheet))
    assert (verdict.told, verdict.alarms) == ([], [])
    assert verdict.fault == ("found" if sheet.fault else "")


def test_what_differs_is_told():
    sheet = make_sheet(0)
    found = find_all(sheet)
    first = found.groups[0]
    fewer = replace(first, places=first.places[1:], tabs=first.tabs[1:], count=first.count - 1)
    assert judge(sheet, Found([fewer, *found.groups[1:]])).parts is False
    other = replace(first, n_pockets=first.n_pockets + 1)
    assert judge(sheet, Found([other, *found.groups[1:]])).features is False
    tabs = replace(first, tabs=tuple(n + 1 for n in first.tabs))
    assert judge(sheet, Found([tabs, *found.groups[1:]])).tabs is False
    wide = replace(first, width=first.width + 0.5)
    assert max(judge(sheet, Found([wide, *found.groups[1:]])).sizes) == pytest.approx(0.5)
    assert judge(sheet, Found(found.groups, [FoundProblem("gouge", 5)])).alarms == ["gouge"]


@pytest.mark.slow
def test_half_of_the_sheets_have_a_fault_with_its_lines():
    sheets = [make_sheet(seed, small=True) for seed in range(16)]
    faults = [sheet.fault for sheet in sheets if sheet.fault]
    assert len(faults) == 8
    assert all(fault.lines or fault.kind == "other thickness" for fault in faults)


@pytest.mark.parametrize("seed", range(0, 24, 2))
def test_a_clean_sheet_does_nothing_that_is_a_fault_elsewhere(seed):
    draft = make_draft(seed, small=True)
    lowest = -draft.means.thickness - 0.51
    for line in draft.lines:
        drops = [a - b for a, b in pairwise([0.0, *line.floors])]
        assert line.role == "drilled" or max(drops) <= line.wide * 2.05, line
        assert line.floors[-1] > lowest
        assert line.plunge <= 1000
    here = None
    for step in draft.steps:
        across = here is not None and step.to != here
        assert not (step.kind == "rapid" and across and step.z < 0.5)
        here = step.to


@pytest.mark.slow
def test_the_table_counts_what_a_reader_missed():
    sheets = {sheet.text: sheet for sheet in map(make_sheet, (4, 5))}

    def read_all(text, *_):
        return find_all(sheets[text])

    def read_nothing(*_):
        return Found()

    whole = next(row for row in measure(2, 4, read_all).rows() if row.startswith("all"))
    judged = sum(sheet.parts_hold for sheet in sheets.values())
    assert whole.split()[1:8] == ["2", "0", str(judged), *"...."]
    whole = next(row for row in measure(2, 4, read_nothing).rows() if row.startswith("all"))
    assert "1/1" in whole


@pytest.mark.slow
def test_a_disc_that_is_cut_by_chords_is_as_narrow_as_their_flats():
    """Its least box touches flats; each lies the bit's radius within a chord of the bit's way."""
    bobbin = next(group for group in make_sheet(95011).groups if group.name == "bobbin")
    radius = make_draft(95011).means.bits[0] / 2
    chords = [
        4 * ceil(pi / 2 / (2 * acos(1 - tall / (28 + radius)))) for tall in (0.01, 0.02, 0.05)
    ]
    flat = [2 * ((28 + radius) * cos(pi / n) - radius) for n in chords]
    off = [min(abs(a - b) for b in flat) for a in min(bobbin.sizes)]
    assert max(off) < 0.008  # the corners are written to 0.01
    assert max(min(bobbin.sizes)) < 55.99


@pytest.mark.slow
@pytest.mark.parametrize("seed", [3101772, 98045, 3100868, 63161, 940046])
def test_a_sheet_that_was_read_wrongly_once_is_read_as_it_is(seed):
    """A narrow ring that the library could not part at its crossings; a lost tab at a corner; a
    skin at whose side the neighbours left nothing; a tab at a rounded inner corner; what parts
    near the sheet's edge leave between them.
    """
    sheet = make_sheet(seed)
    found = read_sheet(sheet.text, sheet.thickness, sheet.size, sheet.zero, sheet.bit)
    verdict = judge(sheet, found)
    assert (verdict.told, verdict.alarms) == ([], [])
    assert verdict.fault in {"found", ""}
