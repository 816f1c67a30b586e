"""Every room's work by scanner alone, by touch alone and by keyboard alone: one story each."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from station.shop.cards import button
from station.shop.facts import Batch, Material, Order
from tests.replay import PIN
from tests.window.ways import WAYS

pytestmark = pytest.mark.slow  # plays each way through the window

RELEASE = (
    "@worker 07",
    "@area office",
    "button list_cutfile",
    "touch SG010-SET",
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
    "button bit_out",
    "button bed_clear",
    "button held_down",
    "button nobody_near",
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


def test_a_first_off_is_measured_again(stage, screen, do):
    released(stage, screen)
    for line in LOADING:
        screen.scan(line) if not line[0].isdigit() else screen.type(line)
    stage.clock.pin("2026-11-25T08:00:00")
    do("button off_bed", "touch A along", "100.5")
    assert screen.said == "SG-10 A along: 100.5 mm, limits 99.7 to 100.3"
    do("100.1", "100.2")
    assert screen.said == "First-off agrees on Router 1"


def test_the_other_cautions_are_behind_a_touch(stage, screen, do):
    released(stage, screen)
    do("traveller 00001", "button care")
    assert screen.said == "Take care"
    do("button put_down", "lot 0931")
    assert screen.said == "Sheet from lot 0931"


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
    screen.scan("traveller 00001")
    assert screen.said.startswith("Sheet 1 is a first-off")
    screen.type("100")
    assert screen.said == "First-off agrees on Router 1"
    screen.scan("button put_down")
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
    do("button put_down", "button menu", "button split", "traveller 00901", "10")
    assert screen.said == "10 split off as batch 00001, 30 stay"


def test_shop_today(stage, screen, do):
    screen.at("trimming")
    screen.scan("traveller 00900", "button hold")
    screen.at("today", worker="07")
    do("touch Batch 00900 is held", "touch let it go on", PIN, "reason 51")
    assert screen.said == "Settled: let it go on"


def test_everything_that_needs_a_look(stage, screen, do):
    screen.at("trimming")
    screen.scan("traveller 00900", "button recount", "158", "reason 51")
    screen.at("today", worker="07")
    do("button show_concerns", "touch batch 00900", "button settle", PIN, "reason 52")
    assert screen.said == "Settled: looked at"
    do("button show_flow")
    assert screen.said == "The day so far"


def test_an_order_with_its_lines(stage, screen, do):
    screen.at("office", worker="07")
    do("button list_order", "button new", "product 032", "6", "product 031", "3")
    do("touch GAUGE · 032", "7", "touch COMB-50 · 031", "button remove", "button lines_done")
    do("touch due", "button more", "button save", PIN)
    assert screen.said == "Order 9001 is new"
    order = stage.ledger.view.get(Order, "9001")
    assert [(line.product, line.quantity) for line in order.lines] == [("032", 7)]
    assert order.due == f"{stage.clock()[:10]}T16:00:00"


def test_a_batch_for_one_order(stage, screen, do):
    screen.at("office", worker="07")
    do("button list_cutfile", "touch SG010-SET", "button release_batch", "router 3", "order 3307")
    do("button more", "2", PIN)
    batch = stage.ledger.view.get(Batch, "00001")
    assert (batch.router, batch.order, batch.sheets) == ("3", "3307", 2)
    assert batch.due == "2026-11-26T14:00:00"


def test_a_count_set_right_with_a_reason(stage, screen, do):
    screen.at("office", worker="07")
    do(
        "button list_part",
        "touch SG-10",
        "button correct",
        "touch B 07",
        "12",
    )
    do("reason 54")
    assert screen.said == "Corrected: 12 SG-10 there, 2 more than by the book"


def test_lists_and_copies_as_files(stage, screen, do):
    screen.at("office", worker="07")
    do("button list_material", "button write_csv")
    assert screen.said == "The list is written"
    file = next((stage.ledger.path.parent / "files").glob("material-*.csv"))
    file.write_text(file.read_text("utf-8-sig").replace("6.5 mm birch", "Birch"), "utf-8")
    do("button read_csv", f"touch {file.name}")
    assert screen.said == "0 new, 1 changed, 1 as they are"
    do("touch Take it in", PIN)
    assert screen.said == "Taken in: 0 new, 1 changed"
    assert stage.ledger.view.get(Material, "1").name.startswith("Birch")
    do("button health", "button backup")
    assert screen.said == "The whole history is copied"
    assert stage.ledger.list_backups(), "what was asked for is done: nothing goes on asking for it"
    do("button put_down", "button lock")
    do("button list_router", "touch Router 1", "touch length, mm", "button more")
    do("button save")
    assert screen.said == "Supervisor's work"


def test_loose_parts_without_their_paper(screen, do):
    screen.at("trimming")
    do("button menu", "button lost_paper", "part 051", "traveller 00901")
    assert screen.said == "Copy B of batch 00901 is printed"


def test_a_pin_is_seen_and_kept_nowhere(stage, screen):
    """Neither while it is typed or scanned, nor after, nor in what a power cut leaves."""
    for line in RELEASE[:-1]:
        stage.send(line)
    screen.session.repaint()
    QTest.keyClicks(screen.window, PIN[:3])
    assert screen.window.strip.code.text() == "•••"
    QTest.keyClick(screen.window, Qt.Key.Key_Escape)
    screen.scan(*(f"digit {d}" for d in PIN))
    assert PIN not in stage.ledger.draft()
    screen.scan("button clear")
    screen.type(PIN)
    assert screen.said.startswith("Batch 00001 is released")
    shown = [label.text() for label in screen.window.findChildren(QLabel)]
    assert not [text for text in shown if PIN in text]
    assert PIN not in stage.ledger.draft()


def test_esc_leaves_the_page_of_a_thing(screen):
    screen.at("popping")
    screen.scan("part 051")
    assert screen.session.desk.hand.aside.what == "find"
    QTest.keyClick(screen.window, Qt.Key.Key_Escape)
    assert screen.session.desk.hand.aside.what == ""


def test_only_what_was_scanned_or_typed_is_the_last_scan(screen):
    screen.at("popping")
    screen.scan("button menu")
    assert screen.window.strip.code.text()
    screen.touch(button("put_down"))
    assert screen.window.strip.code.text() == ""
    screen.scan("part 051")
    assert screen.window.strip.code.text()
    screen.press(next(b.number for b in screen.window.body.list_buttons() if b.isEnabled()))
    assert screen.window.strip.code.text() == ""
