"""A story a room through the real screen: by scanner, by touch, by keyboard."""

from station.look.style import DARK, LIGHT, Style
from station.printing.printers import say_none_attached
from station.shop.cards import button
from station.shop.codes import write
from station.shop.facts import Batch, Order, Pack, Part
from station.shop.views import total
from tests.floor.shop_small import GAUGE
from tests.replay import PIN
from tests.window.ways import by_touch


def stock(stage, place):
    return total(stage.ledger.view.stock(place=place))


def test_a_badge_by_touch(screen):
    screen.touch(write("worker", "02"))
    assert screen.said == "Worker 02 is signed in"


def test_loading_by_scanner(screen, stage):
    for line in (
        "@worker 07",
        "@area office",
        "button list_cutfile",
        "touch SG010-SET",
        "button release_batch",
        "router 1",
        "1",
        "worker 07",
        PIN,
    ):
        stage.send(line)
    screen.at("loading", router="1")
    screen.scan(
        "traveller 00001",
        "lot 0931",
        "6.4",
        "button held_down",
        "button bit_good",
        "button file_right",
        "button zeroed",
        "button start",
    )
    assert screen.said.startswith("Sheet 1 started")
    stage.clock.pin("2026-11-25T08:00:00")
    screen.scan("slip 00001 1")
    assert screen.said == "Sheet 1 is off the bed: 160 parts"


def test_popping_by_touch(screen, stage):
    test_loading_by_scanner(screen, stage)
    screen.type("100")
    assert screen.said == "First-off agrees on Router 1"
    screen.at("popping")
    screen.touch(write("batch", "00001", "A"))
    screen.touch(button("more"))
    screen.touch(button("more"))
    screen.touch(button("pass_on"))
    assert screen.said == "Batch 00001: 158 good, 2 spoiled"
    assert total(stage.ledger.view.stock(batch="00001", place="trimming")) == 158


def test_trimming_by_keyboard(screen, stage):
    screen.at("trimming")
    screen.scan("traveller 00900")
    screen.press(1)
    assert screen.said == "Batch 00900: 160 good"
    assert stock(stage, f"rack/{GAUGE}") == 170


def test_packing_by_touch(screen, stage):
    screen.at("packing", worker="05")
    screen.touch(write("order", "3306"))
    screen.touch(write("part", "062"))
    screen.touch(button("close_pack"))
    assert screen.said.endswith("order 3306")
    assert stage.ledger.view.get(Order, "3306").state == "packed"


def test_the_cart_by_scanner(screen, stage):
    test_packing_by_touch(screen, stage)
    pack = stage.ledger.view.shelf(Pack, "packed")[0]
    screen.at("cart", worker="05")
    screen.scan("cart 2", f"pack {pack.id}", "button at_door", "button leave")
    assert screen.said.startswith("Not scanned at the door")
    screen.scan(f"pack {pack.id}", "button leave")
    assert screen.said == "Cart 2 left, packs on it: 1"


def test_shop_today_by_touch(screen, stage):
    screen.at("trimming")
    screen.scan("traveller 00900", "button hold")
    screen.at("today", worker="07")
    by_touch(screen, "touch Batch 00900 is held")
    by_touch(screen, "touch let it go on")
    screen.scan("worker 07", PIN, "reason 51")
    assert screen.said == "Settled: let it go on"
    assert stage.ledger.view.get(Batch, "00900").holds == ()


def test_the_office_by_typing(screen, stage):
    screen.at("office", worker="07")
    screen.touch(button("list_part"))
    by_touch(screen, "touch HC-300")
    screen.scan("touch description", "Heddle comb of 300", "button save", "worker 07", PIN)
    assert screen.said == "Part 014 is changed"
    assert stage.ledger.view.get(Part, "014").words == "Heddle comb of 300"


def test_undo_and_another_area_by_touch(screen, stage):
    screen.at("trimming")
    screen.scan("traveller 00900", "button on_rack")
    screen.touch(button("menu"))
    screen.touch(button("undo"))
    assert screen.said == "Taken back: Batch 00900: 160 good"
    assert stock(stage, f"rack/{GAUGE}") == 10
    screen.touch(button("menu"))
    screen.touch(button("area_popping"))
    assert screen.said == "Here now: Popping"


def test_more_leaves_the_work_in_hand_as_it_was(screen, stage):
    screen.at("trimming")
    screen.scan("traveller 00900", "reason 01", "3", "button menu", "button put_down")
    screen.scan("button on_rack")
    assert screen.said == "Batch 00900: 157 good and 3 spoiled"


def test_the_screen_is_switched_by_touch(screen):
    screen.at("popping")
    for name, said in (("dark", "The screen is dark now"), ("sounds", "Sounds are off now")):
        screen.scan("button menu")
        screen.touch(button(name))
        assert screen.said == said
    assert Style.palette is DARK
    assert screen.window.sounds.muted
    screen.scan("button dark", "button sounds")
    assert Style.palette is LIGHT
    assert not screen.window.sounds.muted


def test_news_of_a_printer_leaves_the_answer_standing(screen, stage):
    screen.at("trimming")
    screen.scan("traveller 00900", "button on_rack")
    screen.session.say_news(say_none_attached(stage.ledger.path))
    assert screen.said == "Batch 00900: 160 good"
    assert screen.window.strip.do.text().startswith("No printer is attached to this PC. ")
