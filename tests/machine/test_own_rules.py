"""The random walks' own rules of what may not go on tell right from wrong."""

from dataclasses import replace

import pytest

from station.shop.facts import Batch, Bed, FirstOff, Lot, Revision
from station.shop.moves import move
from tests.machine.test_machine import list_gone_on, list_wrongly_started

FIRST = FirstOff(file="012.C", bits=("11",), zero_since="", batch="00412", sheet=1)
BED = Bed(id="1", batch="00412", bits=((0, "11"),))
OTHERS = (
    Batch(id="00412", cut_file="012", revision="C", sheets=2),
    Lot(id="0931", material="1", received=""),
    Lot(id="0940", material="2", received=""),
    Revision(id="012.C", cut_file="012", letter="C", material="1", minutes=1.0),
)


@pytest.mark.parametrize(
    ("fields", "lot", "wrong"),
    [
        ({}, "0931", False),
        ({"firsts": (replace(FIRST, state="agreed"),)}, "0931", False),
        ({"firsts": (replace(FIRST, state="wrong", zero_since="before"),)}, "0931", False),
        ({"firsts": (FIRST,)}, "0931", True),
        ({"firsts": (replace(FIRST, state="wrong"),)}, "0931", True),
        ({"state": "stopped"}, "0931", True),
        ({"rehome": "a stop"}, "0931", True),
        ({}, "0940", True),
    ],
)
def test_a_sheet_is_started_with_nothing_open(fields, lot, wrong):
    facts = {f.key: f for f in (replace(BED, **fields), *OTHERS)}
    started = [move("sheet", 1, "store", "bed/1", lot)]
    assert bool(list_wrongly_started(facts, started)) is wrong


@pytest.mark.parametrize(("sheet", "wrong"), [(1, True), (2, False)])
def test_pieces_of_a_sheet_that_is_to_be_compared_stay(sheet, wrong):
    facts = {f.key: f for f in (replace(BED, firsts=(FIRST,)), *OTHERS)}
    gone = [move("045", 1, f"popping/{sheet}", "trimming", "00412")]
    assert bool(list_gone_on(facts, gone)) is wrong
