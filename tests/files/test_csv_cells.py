"""No cell of a list is a formula to a spreadsheet, and each is read back as it was."""

import csv
import io
import os

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.files import lists
from station.files.lists import free_cell, guard_cell
from station.floor.office.acts import SetFact
from station.shop.acts import Act
from station.shop.facts import Part
from station.shop.plain import to_plain

BEGINS = tuple("=+-@\t\r")


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("=1+1", "'=1+1"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("+49 30", "'+49 30"),
        ("-cmd", "'-cmd"),
        ("-5", "-5"),
        ("+5.25", "+5.25"),
        ("-5,25", "-5,25"),
        ("-5+1", "'-5+1"),
        ("'=1", "''=1"),
        ("'quoted", "'quoted"),
        ("comb = 5", "comb = 5"),
        ("", ""),
    ],
)
def test_a_formula_gets_a_quote_and_numbers_stay(text, cell):
    assert (guard_cell(text), free_cell(cell)) == (cell, text)


@given(st.text(alphabet="'=+-@\t\r5.,ab"))
def test_what_is_written_is_read_back(text):
    cell = guard_cell(text)
    assert free_cell(cell) == text
    assert not cell.startswith(BEGINS) or lists.NUMBER.fullmatch(cell)


def test_a_list_with_formulas_goes_out_and_comes_back(stage, tmp_path):
    value = {**to_plain(stage.ledger.view.get(Part, "061")), "words": "=HYPERLINK(1)"}
    args = SetFact(of="part", value=value, approved="07")
    act = Act(id="odd", kind=args.kind, at=stage.clock(), subject="part/061", args=args)
    assert stage.ledger.record(act).entry
    text = lists.write(stage.ledger, Part)
    cells = [cell for row in csv.reader(io.StringIO(text)) for cell in row]
    assert "'=HYPERLINK(1)" in cells
    assert not [c for c in cells if c.startswith(BEGINS) and not lists.NUMBER.fullmatch(c)]
    found = lists.read_text(stage.ledger.view, text, Part)
    assert found.problems == ()
    assert next(v for v in found.values if v["id"] == "061")["words"] == "=HYPERLINK(1)"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_pipe_is_not_waited_for(stage, tmp_path):
    os.mkfifo(tmp_path / "pipe.csv")
    (problem,) = lists.read_file(stage.ledger.view, tmp_path / "pipe.csv").problems
    assert str(problem) == "pipe.csv is no plain file"
