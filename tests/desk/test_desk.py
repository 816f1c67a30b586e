"""The desk's own manners: badges, numbers, questions back, undo, what a power cut leaves."""

import random
import string
from dataclasses import replace

import pytest

from station.bootstrap import load_rooms
from station.desk import draft as drafts
from station.desk.draft import Draft, OpenQuestion
from station.desk.pin import agrees, hashed
from station.floor.anywhere.acts import NewCopy
from station.floor.popping.acts import PassOn
from station.floor.popping.work import PoppingWork
from station.floor.today.work import TodayWork
from station.ledger.faults import DiskFull
from station.shop.acts import Args, good
from station.shop.areas import AREAS
from station.shop.facts import Batch
from station.shop.rooms import Do, FileJob, Hand, Took
from station.shop.words import say as words
from tests.replay import PIN, Stage


def released(stage):
    """A batch of 4 sheets for router 2, by supervisor 07."""
    for line in (
        "@worker 07",
        "@area office",
        "button next_kind",
        "touch ST200-SET",
        "button release_batch",
        "router 2",
        "4",
        "worker 07",
    ):
        stage.send(line)
    return stage.send(PIN)


def say(given):
    return given.answer.tone, str(given.answer.said)


@pytest.mark.parametrize(
    ("text", "tone", "said"),
    [
        ("worker 03", "good", "Worker 03 is signed in"),
        ("]C0W03X", "stop", "That is no code of this shop, or was read wrong"),
        ("5901234123457", "stop", "That is no code of this shop"),
        ("HELLO", "stop", "That is no code of this shop"),
        ("-", "stop", "That is no code of this shop"),
        ("button start", "stop", "Nobody is signed in here"),
        ("worker 99", "stop", "There is no worker 99"),
        ("button undo", "stop", "Nobody is signed in here"),
    ],
)
def test_the_first_scan(stage, text, tone, said):
    assert say(stage.send(text)) == (tone, said)


def test_another_badge_takes_over_and_the_work_stays(stage):
    released(stage)
    stage.send("worker 01")
    stage.send("touch name")
    before = stage.desk.hand.work
    assert say(stage.send("worker 06")) == ("good", "Worker 06 takes over from 01")
    assert stage.desk.hand.work == before


def test_a_number_is_put_together_from_digit_cards(stage):
    stage.send("worker 02")
    stage.send("digit 1")
    assert say(stage.send("digit 2"))[1] == "Number: 12"
    assert stage.desk.hand.digits == "12"
    stage.send("button clear")
    assert say(stage.send("button enter")) == ("stop", "No number yet")


def test_a_supervisors_act_waits_for_badge_and_pin(stage):
    assert say(released(stage)) == ("good", "Batch 00001 is released to Router 2")


def test_a_worker_is_no_supervisor_and_a_wrong_pin_is_refused(stage):
    for line in (
        "@worker 07",
        "@area office",
        "button next_kind",
        "touch ST200-SET",
        "button release_batch",
        "router 2",
        "4",
    ):
        stage.send(line)
    assert say(stage.send("worker 03")) == ("stop", "Worker 03 is no supervisor")
    stage.send("worker 07")
    for _ in range(5):
        assert say(stage.send("1111")) == ("stop", "That PIN is not right")
    assert stage.desk.question() == "pin"


def test_pin_digits_are_not_shown(stage):
    for line in (
        "@worker 07",
        "@area office",
        "button next_kind",
        "touch ST200-SET",
        "button release_batch",
        "router 2",
        "4",
        "worker 07",
        "digit 2",
    ):
        given = stage.send(line)
    assert "2" not in str(given.answer.said)


def test_undo_takes_act_after_act_back_and_gives_each_hand_back(stage):
    stage.send("@worker 05")
    stage.send("@area packing")
    hands, entries = [], []
    for line in ("order 3307", "part 045", "2", "part 045", "button close_pack", "button yes"):
        before = replace(stage.desk.hand, now="")
        if given := stage.send(line).entry:
            hands.append(before)
            entries.append(given)
    assert len(entries) >= 4
    while entries:
        assert stage.desk.last == entries.pop()
        assert say(stage.send("button undo"))[0] == "good"
        assert replace(stage.desk.hand, now="") == hands.pop()


def test_a_power_cut_leaves_the_hand_as_it_was(stage):
    stage.send("worker 02")
    stage.send("@area trimming")
    stage.send("button lost_paper")
    before = stage.desk.hand.work
    stage.send("restart")
    assert stage.desk.resumed
    assert stage.desk.hand.worker == "02"
    assert stage.desk.hand.work == before


def test_ten_thousand_random_bursts_never_raise_and_record_nothing(stage):
    chance = random.Random(5)
    letters = string.ascii_letters + string.digits + "]*-_ äß\t"
    stage.send("worker 02")
    before = stage.ledger.count()
    for _ in range(10_000):
        text = "".join(chance.choices(letters, k=chance.randint(0, 30)))
        assert stage.desk.take(text).answer.said
    assert stage.ledger.count() == before


def test_a_draft_reads_back_as_written():
    work = PoppingWork(slips=("00001-1",), counts={"021": {"spoiled/01": 3}},
                       marks={"021": {"spoiled/01": ((20.5, 4.0),)}})  # fmt: skip
    hand = Hand(area="popping", worker="02", subject="00001", work=work)
    counted = PassOn(slips=work.slips, parts=work.counts)
    do = Do("batch/00001", counted, hand, ("batch",))
    waiting = OpenQuestion(do=do, asks="reason", code="X1", known=Args(sure=True))
    draft = Draft(hand=hand, waiting=waiting, last="t1")
    assert drafts.read(drafts.write(draft), load_rooms()) == draft


@pytest.mark.parametrize("text", ["", "{}", "null", "[1]", '{"hand": 3}', '{"hand": {"no": 1}}'])
def test_a_foreign_draft_is_no_draft(text):
    assert drafts.read(text, load_rooms()) is None


@pytest.mark.parametrize("pin", ["123", "123456789", "12a4", ""])
def test_a_pin_has_four_to_eight_digits(pin):
    with pytest.raises(ValueError, match="4 to 8 digits"):
        hashed(pin)


@pytest.mark.slow
def test_a_pin_agrees_with_its_own_hash_alone():
    assert agrees(hashed("2468"), "2468")
    assert not agrees(hashed("2468"), "2469")
    assert not agrees("", "2468")
    assert not agrees("no hash", "2468")


def test_a_trigger_pulled_twice_is_no_yes(stage):
    released(stage)
    for line in (
        "@worker 02",
        "@area loading",
        "@router R2",
        "traveller 00001",
        "lot 0931",
        "6.4",
        "button held_down",
        "button bit_good",
        "button file_right",
        "button zeroed",
        "button start",
        "slip 00001 1",
    ):
        given = stage.send(line)
    assert stage.desk.question() == "sure"
    assert stage.send("slip 00001 1").entry is None
    stage.clock.pin("2026-11-25T07:00:05")
    given = stage.send("slip 00001 1")
    assert str(given.answer.said) == "Sheet 1 is off the bed: 96 parts"


def opened(stage):
    """The office with a supervisor's PIN given once."""
    released(stage)
    stage.desk.face()
    assert stage.desk.hand.opened == "07"


@pytest.mark.parametrize(
    "locks",
    ["button lock", "worker 02", "@at 2026-11-25T07:40:00", "restart"],
)
def test_an_opened_office_locks_again(stage, locks):
    opened(stage)
    stage.send(locks)
    for line in (
        "button put_down",
        "button list_cutfile",
        "touch HC300-SET",
        "button release_batch",
        "router 1",
    ):
        stage.send(line)
    assert stage.send("1").answer.asks == "supervisor"


def test_an_opened_office_asks_for_no_second_pin(stage):
    opened(stage)
    stage.clock.pin("2026-11-25T07:09:00")
    for line in (
        "button put_down",
        "button list_cutfile",
        "touch HC300-SET",
        "button release_batch",
    ):
        stage.send(line)
    stage.send("router 1")
    assert stage.send("1").entry


def test_a_job_takes_or_acts(stage):
    def job(text, hand):
        if text == "2":
            return Do("batch/00900", NewCopy(), hand)
        return Took(replace(hand, work=TodayWork(page=3)), good(words("Told {what}", what=text)))

    def handle_input(hand, given, _view):
        return FileJob(given.text, hand)

    desk = stage.desk
    desk.file_jobs = {str: job}
    desk.rooms = {**desk.rooms, "today": desk.rooms["today"]._replace(handle_input=handle_input)}
    stage.send("@worker 07")
    stage.send("@area today")
    assert str(stage.send("1").answer.said) == "Told 1"
    assert desk.hand.work == TodayWork(page=3)
    assert str(stage.send("2").answer.said) == "Copy B of batch 00900 is printed"


def test_undo_leaves_what_is_counted_but_not_recorded(stage):
    """Whoever has counted since the newest act means the count, not the older act."""
    stage.desk.at(area="trimming")
    stage.desk.sign_in("03")
    stage.send("traveller 00900")
    stage.send("button on_rack")
    stage.send("traveller 00901")
    stage.send("reason 03")
    before = stage.desk.hand.work
    assert say(stage.send("button undo")) == ("stop", "What is in hand is not recorded yet")
    assert stage.desk.hand.work == before
    stage.send("button put_down")
    assert say(stage.send("button undo"))[1].startswith("Taken back")


def test_undo_takes_nothing_back_that_was_done_elsewhere(stage):
    stage.desk.at(area="trimming")
    stage.desk.sign_in("03")
    stage.send("traveller 00900")
    stage.send("button on_rack")
    stage.send("button area_popping")
    stage.send("restart")
    stage.send("worker 03")
    said = "The newest act of this station was at Trimming"
    assert say(stage.send("button undo")) == ("stop", said)
    stage.send("button area_trimming")
    assert say(stage.send("button undo"))[1].startswith("Taken back")


@pytest.mark.parametrize("order", ["@area trimming", "@router 3", "@bench 2", "@worker 04"])
def test_an_order_that_cannot_be_kept_is_refused_and_the_station_stays(stage, order, monkeypatch):
    stage.send("@worker 02")
    before = stage.desk.hand

    def full(_text, _own):
        raise DiskFull(stage.ledger.path)

    with monkeypatch.context() as disk:
        disk.setattr(stage.ledger, "keep", full)
        assert say(stage.send(order)) == ("stop", str(DiskFull(stage.ledger.path)))
    assert stage.desk.hand == before
    assert say(stage.send(order))[0] == "good"
    assert stage.desk.hand != before


def test_a_hold_is_not_taken_back_by_who_made_it(stage):
    for line in ("@worker 03", "@area trimming", "traveller 00900", "button hold"):
        stage.send(line)
    given = stage.send("button undo")
    assert say(given) == ("stop", "That stays: it is not taken back here")
    assert stage.ledger.view.get(Batch, "00900").holds


def test_who_does_not_work_here_records_nothing(stage):
    for line in ("@worker 03", "@area trimming", "traveller 00900"):
        stage.send(line)
    stage.desk.sign_in("77")
    given = stage.send("button on_rack")
    assert say(given)[0] == "stop"
    assert str(given.answer.do) == "Scan your own badge."
    assert given.entry is None
    assert stage.desk.hand.worker == ""
    assert stage.send("worker 04").entry is None
    assert stage.send("button on_rack").entry


def test_what_was_counted_is_there_again_though_the_station_starts_elsewhere(stage):
    for line in ("@worker 03", "@area trimming", "traveller 00900", "reason 01", "7"):
        stage.send(line)
    stage.desk = stage.new_desk("popping")
    stage.send("worker 03")
    stage.send("button area_trimming")
    assert str(stage.desk.hand.work.tell_counted(stage.ledger.view)) == "7 × torn at a tab"


def test_the_menu_is_left_by_what_is_scanned(stage):
    for line in ("@worker 03", "@area trimming", "button menu"):
        stage.send(line)
    assert say(stage.send("traveller 00900")) == ("good", "Batch 00900 in hand")


def test_a_stop_is_not_taken_back(stage):
    for line in ("@worker 02", "@area loading", "@router R1", "button stop", "reason 32"):
        given = stage.send(line)
    assert given.entry
    assert say(stage.send("button undo")) == ("stop", "That stays: it is not taken back here")


@pytest.mark.parametrize("area", AREAS, ids=lambda area: area.id)
def test_who_signs_in_is_told_what_begins_work_there(area, tmp_path):
    stage = Stage(tmp_path)
    stage.send(f"@area {area.id}")
    answer = stage.send("worker 07").answer
    assert str(answer.do) == str(area.first)
    stage.close()


def test_a_number_is_taken_as_its_card_where_nothing_is_in_hand(stage):
    stage.send("@area popping")
    assert say(stage.send("03")) == ("good", "Worker 03 is signed in")
    (card,) = {b.id for b in stage.ledger.facts(Batch) if b.id == "00900"} or {"00900"}
    touched = say(stage.send(f"traveller {card}"))
    stage.send("button put_down")
    assert say(stage.send(card)) == touched
    stage.send("button put_down")
    assert say(stage.send("900")) == ("stop", "Number 900 is not known here")
    stage.send("@area packing")
    assert say(stage.send("3307")) == ("good", "Order 3307 is yours")
    assert say(stage.send("3306"))[0] == "stop"  # with an order in hand it is a count


def test_a_number_of_nobody_signs_nobody_in(stage):
    assert say(stage.send("99")) == ("stop", "Nobody is signed in here")
