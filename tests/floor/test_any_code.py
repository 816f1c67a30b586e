"""Any code scanned with free hands is answered in one line and one page, and changes nothing."""

from collections import Counter

import pytest

from station.floor.anywhere.acts import TellHealth
from station.floor.anywhere.finding_face import show_thing
from station.queries.life import list_life
from station.queries.stock import name_place
from station.queries.whereabouts import find_thing
from station.shop.acts import Act
from station.shop.areas import AREAS
from station.shop.cards import button
from station.shop.codes import Code, read, write
from station.shop.moves import SHEET, WEAR
from station.shop.places import balances
from station.shop.rooms import Aside, Hand
from tests.any_code import free_hands, list_rows, play_day, scan, scan_at_random
from tests.any_days import add_up, play, write_csv
from tests.recount.days import small_day
from tests.replay import Stage
from tests.touch import find_touch, list_texts

DOES = {("packing", "order"), ("loading", "bit")}  # what the room does with free hands
REFUSES = {("loading", "bit")}  # what it looks at by itself


@pytest.fixture(scope="module")
def day(tmp_path_factory):
    stage = play_day(tmp_path_factory.mktemp("day"))
    yield stage
    assert stage.ledger.check() == []
    stage.close()


@pytest.mark.parametrize("area", [a.id for a in AREAS])
def test_every_thing_is_answered_at_every_area(day, area):
    desk = day.new_desk(area)
    for row in list_rows(day):
        if row["kind"] == "button":
            continue
        scanned = scan(day, desk, row, area)
        answer, where = scanned.given.answer, (area, row["kind"])
        assert answer.said, row
        assert not scanned.given.entry or where in DOES, row
        assert answer.tone != "stop" or where in REFUSES, (row, str(answer.said))


@pytest.mark.slow
def test_no_more_than_one_random_scan_in_twenty_is_red(tmp_path):
    day = play_day(tmp_path)  # of its own: some of these scans are an undo
    scans = list(scan_at_random(day, 1200, 1))
    day.close()
    assert sum(s.given.answer.tone == "stop" for s in scans) <= len(scans) / 20


def test_the_page_of_every_thing_shows_its_line_and_where_it_is(day):
    desk = day.new_desk("today")
    for row in list_rows(day):
        if row["kind"] in ("button", "zone"):
            continue
        free_hands(desk, "today")
        before = day.ledger.count()
        given = desk.take(row["code"])
        shown = list(list_texts(desk.face()))
        thing = find_thing(day.ledger.view, read(row["code"]), desk.hand.now)
        assert given.answer.said == thing.said, row
        assert thing.number in shown, row
        assert "Where it is" in shown, row
        assert day.ledger.count() == before


def list_past(stage):
    acts = (stage.ledger.view.past(f"t{n:06d}") for n in range(1, next(stage.count)))
    return [past for past in acts if past]


def test_where_a_batch_lies_is_what_the_moves_say(day):
    lies = Counter()
    for past in list_past(day):
        for m in past.moves:
            lies[m.frm.batch, m.frm.place, m.part] -= m.qty
            lies[m.to.batch, m.to.place, m.part] += m.qty
    batches = {b for b, place, part in lies if b and part not in (SHEET, WEAR, "pass")}
    assert "00001" in batches
    for number in batches - {"00000"}:
        mine = sorted(
            n for (b, place, _), n in lies.items() if b == number and n and not balances(place)
        )
        lines = find_thing(day.ledger.view, Code("batch", number), "").where
        told = sorted(line.what.values["n"] for line in lines if "part" in line.what.values)
        assert told == mine, number


def test_a_life_is_told_entry_by_entry_newest_first(tmp_path):
    day = play_day(tmp_path)  # of its own: nothing was scanned at random
    view = day.ledger.view
    thing = find_thing(view, Code("pack", "00001"), "")
    steps = list_life(view, thing, 0).steps
    assert [s.at for s in steps] == sorted((s.at for s in steps), reverse=True)
    mine = [p for p in list_past(day) if p.act.subject in ("pack/00001", "order/3307")]
    assert len(mine) == 5  # claimed, taken, closed, onto the cart, seen at the door
    assert [s.at for s in steps if s.said] == [steps[0].at, *(p.act.at for p in mine[::-1])]
    assert str(steps[0].said) == "Pack 00001 left with its cart"
    came = [(str(line.what), line.code) for line in thing.origin]
    assert came == [("6 SG-10 of batch 00000", "")]
    day.close()


def test_a_batch_leads_to_its_sheets_lots_and_bits(day):
    thing = find_thing(day.ledger.view, Code("batch", "00001"), "")
    assert all("lot 0931" in str(line.where) for line in thing.origin)
    assert [line.code for line in thing.origin] == [write("lot", "0931")] * 4


def test_what_stands_on_the_page_is_looked_at_and_the_rest_is_work(day):
    desk = day.new_desk("trimming")
    free_hands(desk, "trimming")
    desk.take(write("rack", "021"))
    desk.take(write("batch", "00001"))
    assert desk.hand.aside.code == write("batch", "00001")
    desk.take(write("batch", "00900"))
    assert (desk.hand.aside.what, desk.hand.subject) == ("", "00900")
    desk.take(button("put_down"))


def test_from_the_page_of_a_batch_it_is_counted_again(day):
    desk = day.new_desk("today")
    free_hands(desk, "today")
    desk.take(write("batch", "00900"))
    given = desk.take(find_touch(desk.face(), "Count again"))
    assert str(given.answer.said) == "160 SG-10 there by the book"
    desk.take(button("put_down"))


def test_batches_and_what_was_done_are_found_from_more(day):
    desk = day.new_desk("packing")
    free_hands(desk, "packing")
    for name, title in (("The batches", "00901"), ("What was done", "Newest first")):
        desk.take(button("menu"))
        desk.take(find_touch(desk.face(), name))
        assert title in list(list_texts(desk.face()))
        desk.take(button("next_page"))
        desk.take(button("put_down"))
    desk.take(button("batches"))
    desk.take(find_touch(desk.face(), "00900"))
    assert "Where it is" in list(list_texts(desk.face()))
    desk.take(button("put_down"))


@pytest.mark.parametrize(
    ("code", "said"),
    [
        (Code("part", "999"), "This shop knows no part 999"),
        (Code("batch", "00900", "C"), "Void: see copy A"),
    ],
)
def test_what_the_shop_does_not_know_and_a_void_paper_are_refused(day, code, said):
    desk = day.new_desk("cart")
    free_hands(desk, "cart")
    given = desk.take(str(code))
    assert (given.answer.tone, str(given.answer.said)) == ("stop", said)
    assert not desk.hand.aside.what


@pytest.mark.slow
def test_what_is_told_after_a_day_of_chance_is_what_its_csv_adds_up_to():
    ((_, asked),) = play(1, 11)
    assert asked.wrong == []
    assert asked.compared > 100


def test_a_piece_that_the_csv_does_not_have_is_found(tmp_path):
    """The comparison can fail: a day whose CSV lacks its last move differs."""
    with small_day(tmp_path, 11) as (day, going):
        for _, _ in zip(range(60), going, strict=False):
            pass
        text = write_csv(day)
        assert add_up(text) != add_up(text[: text.rindex("\n", 0, -1)] + "\n")


def test_where_pcs_share_a_life_says_at_which_one(tmp_path):
    """The shop's database takes an act from its own station alone, so that is who shared it."""
    day = play_day(tmp_path)
    code = str(Code("pack", "00001"))
    page = Hand(area="packing", work=None, aside=Aside(what="find", code=code))
    alone = [row[0][2].text for row in show_thing(page, day.ledger.view).side[0].rows]
    assert "05" in alone
    well = TellHealth(version="1", unshared=0, free_mb=1, backup_at="", trouble="")
    for number in "12":
        told = Act(id=number, kind=well.kind, at=day.clock(), station=number, args=well)
        day.ledger.record(told)
    said = [str(row[0][2].text) for row in show_thing(page, day.ledger.view).side[0].rows]
    assert said == [f"{who} at 1" if who else "" for who in map(str, alone)]


CLOSED = ("@area packing", "@worker 05", "order 3307", "part 045", "button close_pack")


@pytest.mark.parametrize("area", ["packing", "cart", "trimming"])
def test_a_closed_pack_is_asked_about_with_free_hands_and_opened_from_its_page(tmp_path, area):
    stage = Stage(tmp_path)
    for line in CLOSED:
        stage.send(line)
    stage.send(f"@area {area}")
    before = stage.ledger.count()
    given = stage.send("pack 00001")
    assert (given.answer.tone, given.answer.asks) == ("good", "")
    assert str(given.answer.said).startswith("Pack 00001: waits for a cart")
    assert stage.desk.hand.aside.what == "find"
    assert stage.ledger.count() == before
    opens = button("open_pack") in [press.code for press in stage.desk.face().presses]
    assert opens == (area == "packing")
    asked = stage.desk.take(button("open_pack")).answer
    assert asked.asks == ("reason" if opens else ""), "elsewhere the card is refused"
    assert asked.tone == ("ask" if opens else "stop")
    stage.close()


def test_a_card_without_a_page_asks_which_pack_is_opened(tmp_path):
    stage = Stage(tmp_path)
    for line in (*CLOSED, "button open_pack"):
        stage.send(line)
    assert str(stage.send("touch 00001").answer.said) == "Open pack 00001 again?"
    stage.close()


def test_a_void_label_is_told_so_on_its_page(tmp_path):
    stage = Stage(tmp_path)
    for line in (*CLOSED, "pack 00001", "button open_pack", "reason 61", "button close_pack"):
        stage.send(line)
    given = stage.send("pack 00001").answer
    assert (given.tone, str(given.do)) == (
        "attention", "Throw it away. Order 3307 is in pack 00002 now."
    )  # fmt: skip
    assert button("open_pack") not in [press.code for press in stage.desk.face().presses]
    stage.close()


def test_what_is_spoiled_is_told_by_its_reason_in_words(day):
    words = list(name_place(day.ledger.view, "spoiled/05").values.values())
    assert list(map(str, words)) == ["damaged in handling"]
    assert str(name_place(day.ledger.view, "spoiled/99")) == "spoiled (99)"
