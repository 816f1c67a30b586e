"""The usual cautions, found at each act that can hurt: all behind one touch, its own in sight."""

import pytest

from station.shop.cards import button
from station.shop.cautions import CAUTIONS, list_cautions
from station.shop.faces import Cards, Remark
from station.shop.facts import Shop
from tests import replay
from tests.replay import PIN

PAPER = "paper"  # what is printed, and stands on no screen


@pytest.mark.parametrize("area", sorted({c.area for c in CAUTIONS.values()} - {PAPER}))
def test_a_touch_shows_all_of_them(stage, area):
    for line in ("@worker 02", f"@area {area}", "button care"):
        stage.send(line)
    (shown,) = stage.desk.face().main
    assert isinstance(shown, Cards)
    assert str(shown.title) == Shop(id="shop").caution
    assert [(e.big, e.line1) for e in shown.entries] == [
        (c.at, c.line) for c in list_cautions(area)
    ]


def test_the_work_in_hand_goes_on_after_it(stage):
    for line in ("@worker 02", "@area loading", "@router R1", "lot 0931", "button care"):
        stage.send(line)
    before = stage.desk.hand.work
    assert str(stage.send("lot 0931").answer.said) == "Back to the work"
    assert (stage.desk.hand.work, stage.desk.hand.aside.what) == (before, "")


def test_each_says_where_it_comes_from():
    assert all("no source" in c.source or "PUBLISHED" in c.source for c in CAUTIONS.values())


def release(router, sheets="1"):
    return ("@worker 07", "@area office", "button list_cutfile", "touch SG010-SET",
            "button release_batch", f"router {router}", sheets, "worker 07", PIN,
            "@worker 02", "@area loading", f"@router R{router}", "traveller 00001")  # fmt: skip


TICKED = ("6.4", "button held_down", "button bit_good", "button file_right", "button zeroed")
LOADED = (*release("1"), "lot 0931", *TICKED)
CUTTING = (*LOADED, "button start")
STOPPED = (*CUTTING, "button stop", "reason 34")
OFF = (*CUTTING, "@at 2026-11-25T09:00:00", "slip 00001 1")
POPPED = (*OFF, "100", "@area popping", "traveller 00001")
WORN_BOARD = (  # the board is to be flat again after one sheet
    "@worker 07", "@area office", "button list_router", "touch Router 1", "button next_page",
    "touch spoilboard bears", "1", "button save", "worker 07", PIN,
)  # fmt: skip
LASER = (
    "@worker 07", "@area office", "button list_revision", "012.C", "button next_page",
    "touch runs", "072.A", "button lines_done", "button save", "worker 07", PIN, *release("1")[2:],
    "lot 0931", *TICKED, "button start", "@at 2026-11-25T09:00:00", "slip 00001 1", "100",
    "@router R5", "traveller 00001", "slip 00001 1",
)  # fmt: skip
# What hurts in this trade, and what is usually said of it (common practice, no source): the act,
# where a hand is at it, the caution's name, and words that it cannot do without.
ACTS = {
    "running on after a stop": (
        (*STOPPED, "button bit_out", "button rehomed"), "restart",
        ("Bit out of the wood", "bed clear", "sheet held", "nobody at the bed")),
    "a bit is changed as planned": (
        (*release("1"), "bit 18"), "bit", ("switched off and locked", "hot", "sharp")),
    "a bit broke while it cut": (
        (*CUTTING, "button bit_broken"), "bit", ("switched off and locked",)),
    "a stop for its bit": (
        (*CUTTING, "button stop", "reason 31"), "bit", ("switched off and locked",)),
    "a changer moves by itself": (
        (*release("5"), "lot 0931", *TICKED, "button start", "button stop", "reason 31"),
        "changer", ("moves by itself", "switched off and locked")),
    "a sheet comes off": (
        (*CUTTING, "@at 2026-11-25T09:00:00", "@area loading"), "off_bed",
        ("Spindle at rest", "splinters", "gloves")),
    "a part is taken out": (OFF, "part_out", ("Spindle at rest", "away from the hand")),
    "dust is emptied": (
        ("@worker 02", "@area loading", "@router R1"), "dust",
        ("Extraction on", "mask", "emptied", "never blow")),
    "a sheet is lifted": ((*release("1"), "lot 0931"), "", ("two people or a lift", "Gloves")),
    "it cuts": (CUTTING, "cutting", ("Eyes and ears", "Nobody reaches")),
    "a vacuum lets go": (
        (*release("5"), "lot 0931", *TICKED, "button start"), "vacuum",
        ("never hold", "own stop")),
    "a laser marks": (LASER, "laser", ("eyes covered", "fumes", "never left alone")),
    "a laser's sheet is lifted, too": (LASER, "", ("two people or a lift",)),
    "the board is cut flat": (
        (*WORN_BOARD, *OFF, "100", "button put_down"), "surface", ("No screw or clamp", "nobody")),
    "it is sent home": (STOPPED, "home", ("moves by itself", "hands, hair and sleeves")),
    "parts are pried out": (
        POPPED, "pop", ("Eyes protected", "Pry and cut away", "splinters")),
    "dust at popping": (POPPED, "pop_dust", ("Vacuum dust, never blow", "mask")),
    "a sheet is carried to popping": (POPPED, "pop_sheet", ("Two people or a lift", "gloves")),
    "the router table": (
        ("@worker 04", "@area trimming", "traveller 00900"), "table",
        ("Eyes and ears", "hair and sleeves", "gloves off", "extraction on")),
    "a part is fed": (
        ("@worker 04", "@area trimming", "traveller 00900"), "table_feed",
        ("Against the bit's rotation", "guard on", "never between bit and fence")),
    "a small part is fed": (
        ("@worker 04", "@area trimming"), "table_small", ("holder", "starting pin")),
    "a knife at packing": (
        ("@worker 05", "@area packing", "order 3307"), "pack", ("Knife away", "splinters")),
    "a pack is lifted": (
        ("@worker 05", "@area packing", "order 3307"), "pack_lift", ("legs", "by two")),
    "a cart is pushed": (("@worker 05", "@area cart", "cart 1"), "cart", ("never pull", "low")),
}  # fmt: skip
BEHIND = {"table_bit"}  # of the table's own bit: nothing is scanned at it
ELSEWHERE = {"hold_downs", "flying", "lift"}  # tests/floor/test_intake.py, test_loading_faces.py


def list_care(face):
    """The cautions that stand on a screen, each with the touch that shows all of them."""
    blocks = (*face.main, *face.middle, *face.side, *face.beside)
    return [b for b in blocks if isinstance(b, Remark) and b.code == button("care")]


@pytest.mark.parametrize("act", ACTS)
def test_the_caution_stands_where_the_hand_is(stage, act):
    lines, name, words = ACTS[act]
    for line in lines:
        stage.send(line)
    care = list_care(stage.desk.face())
    assert len(care) == 1
    told = str(care[0].text)
    assert not name or str(CAUTIONS[name].line) in told
    assert [w for w in words if w not in told] == []
    assert told.endswith(Shop(id="shop").caution)


def test_every_caution_has_its_act():
    known = {name for _, name, _ in ACTS.values() if name} | BEHIND | ELSEWHERE
    assert known == {name for name, c in CAUTIONS.items() if c.area != PAPER}


def test_no_caution_says_what_this_shop_s_routers_do_not_do():
    assert [c for c in CAUTIONS.values() if "bed moves" in str(c.line)] == []


HANDS_AT = ("loading", "popping", "trimming", "packing", "cart")


@pytest.mark.slow
@pytest.mark.parametrize("file", sorted(replay.HERE.glob("*.txt")), ids=lambda f: f.stem)
def test_all_day_long_no_work_is_without_its_caution(stage, file):
    """But for a question that is open, and a page that is only read: there no hand is at work."""
    for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
        if not line.strip() or line.strip()[0] in ">=*#":
            continue
        stage.send(line.strip())
        hand = stage.desk.hand
        if hand.area in HANDS_AT and hand.worker and not hand.aside.what:
            where = f"{file.stem}:{number}"
            assert stage.desk.question() or len(list_care(stage.desk.face())) == 1, where
