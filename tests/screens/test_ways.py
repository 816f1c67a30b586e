"""Every room's work by scanner alone, by touch alone and by keyboard alone: one story each."""

import pytest

from station.shop.facts import Order
from tests.replay import PIN
from tests.screens.ways import WAYS

RELEASE = (
    "@worker 07",
    "@area office",
    "button list_cutfile",
    "button row_4",
    "button release_batch",
    "router 1",
    "1",
    "worker 07",
    PIN,
)
LOADING = (
    "traveller 00001",
    "lot 0931",
    "6.4",
    "button held_down",
    "button bit_good",
    "button file_right",
    "button start",
    "button stop",
    "reason 31",
    "button stop_over",
)


@pytest.fixture(params=sorted(WAYS))
def do(request, screen):
    """Does a line of a story in one way alone."""
    way = WAYS[request.param]

    def each(*lines):
        for line in lines:
            way(screen, line)

    return each


def released(stage, screen):
    for line in RELEASE:
        stage.send(line)
    screen.at("loading", router="1")


def test_signing_in_and_taking_over(screen, do):
    do("worker 02")
    assert screen.said == "Worker 02 is signed in"
    do("button menu", "button sign_out")
    assert screen.said == "Signed out; what is in hand stays here"
    do("worker 03")
    assert screen.said == "Worker 03 is signed in"


def test_loading(stage, screen, do):
    released(stage, screen)
    do(*LOADING)
    assert screen.said.startswith("Stop over")
    stage.clock.pin("2026-11-25T08:00:00")
    do("button off_bed")
    assert screen.said == "Sheet 1 is off the bed: 160 parts"


def test_a_sheet_spoiled(stage, screen, do):
    released(stage, screen)
    do(*LOADING, "button sheet_spoiled", "reason 11")
    assert screen.said == "Sheet 1: bit broke"


def test_popping(stage, screen, do):
    released(stage, screen)
    for line in LOADING:
        screen.scan(line) if not line[0].isdigit() else screen.type(line)
    stage.clock.pin("2026-11-25T08:00:00")
    screen.scan("button off_bed")
    screen.at("popping")
    do("traveller 00001", "reason 01", "button more", "button missing", "button pass_on")
    assert screen.said == "Batch 00001: 157 good, 2 spoiled and 1 missing"


def test_trimming(stage, screen, do):
    screen.at("trimming")
    do("traveller 00900", "reason 03", "button more", "button on_rack")
    assert screen.said == "Batch 00900: 158 good and 2 spoiled"


def test_packing(stage, screen, do):
    screen.at("packing", worker="05")
    do("order 3306", "part 062", "button close_pack")
    assert screen.said.endswith("order 3306")
    assert stage.ledger.view.get(Order, "3306").state == "packed"


def test_a_part_is_missing(stage, screen, do):
    screen.at("packing", worker="05")
    do("order 3306", "button part_missing")
    assert screen.said == "HC-50: 5 in rack C 02 by the book"


def test_the_cart(stage, screen, do):
    screen.at("packing", worker="05")
    screen.scan("order 3306", "part 062", "button close_pack")
    screen.at("cart", worker="05")
    do("cart 2", "pack 00001", "button at_door", "pack 00001", "button leave")
    assert screen.said == "Cart 2 left, packs on it: 1"


def test_acts_of_no_room(stage, screen, do):
    screen.at("trimming")
    do("traveller 00900", "button on_rack", "button menu", "button undo")
    assert screen.said.startswith("Taken back")
    do("button menu", "button split", "traveller 00901", "10")
    assert screen.said == "10 split off as batch 00001, 30 stay"


def test_shop_today(stage, screen, do):
    screen.at("trimming")
    screen.scan("traveller 00900", "button hold")
    screen.at("today", worker="07")
    do("button row_1", "button row_1", "worker 07", PIN)
    assert screen.said == "Settled: let it go on"


def test_loose_parts_without_their_paper(screen, do):
    screen.at("trimming")
    do("button menu", "button lost_paper", "part 051", "traveller 00901")
    assert screen.said == "Copy B of batch 00901 is printed"
