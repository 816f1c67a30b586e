"""The work in hand as it is kept, and as older programs kept it."""

import json
from dataclasses import dataclass

import pytest

from station.bootstrap import load_rooms
from station.desk import draft as drafts
from station.desk.draft import Draft, OpenQuestion, held
from station.floor.cart.acts import Leave
from station.floor.cart.work import CartWork
from station.floor.popping.work import PoppingWork
from station.ledger.numbers import LEAP
from station.shop.acts import Args, SetPin
from station.shop.rooms import Aside, Do, Hand, Room, Work
from station.shop.words import say
from tests.replay import Stage

ROOMS = load_rooms()
HAND = Hand(area="cart", worker="02", subject="1", work=CartWork(mode="off"))


def kept(area="cart", **hand):
    """A draft as the program of before wrote it."""
    plain = {"area": area, "router": "", "facing": "", "bench": "", "worker": "02",
             "station": "1", "subject": "1", "work": {}, "digits": "", "now": "", "opened": "",
             "doing": None}  # fmt: skip
    return {"hand": {**plain, **hand}, "waiting": None, "last": "t1", "after": ""}


def read(raw, rooms=ROOMS):
    return drafts.read(json.dumps(raw), rooms)


def test_it_reads_back_as_written():
    do = Do("cart/1", Leave(cart="1"), HAND, ("pack",))
    waiting = OpenQuestion(
        do=do, asks="sure", known=Args(approved="07"), said=say("{n} left", n=2), then=do
    )
    beside = Hand(area="cart", work=CartWork(page=2), aside=Aside(what="recount", batch="00412"))
    for draft in (
        Draft(hand=HAND, waiting=waiting, last="t1", after=held(HAND)),
        Draft(hand=beside),
        Draft(hand=beside, spare=(("batch", "00004"),)),
    ):
        assert drafts.read(drafts.write(draft), ROOMS) == draft


def test_only_what_is_held_is_written():
    written = json.loads(drafts.write(Draft(hand=HAND)))["hand"]
    assert written["work"] == {"mode": "off"}
    assert "aside" not in written


def test_what_was_open_beside_the_work_was_kept_in_it():
    work = {"counter": "missing", "any": "recount", "any_batch": "00412", "any_part": "021"}
    hand = read(kept("popping", work=work)).hand
    assert hand.aside == Aside(what="recount", batch="00412", part="021")
    assert hand.work == PoppingWork(counter="missing")


@pytest.mark.parametrize(
    ("work", "now"),
    [
        ({"mode": "on"}, CartWork(mode="on")),
        ({"mode": None, "page": 1}, CartWork(page=1)),
        ({"colour": "red"}, CartWork()),
    ],
)
def test_work_is_read_by_its_area(work, now):
    assert read(kept(work=work)).hand.work == now


def test_work_that_the_room_cannot_read_is_put_down():
    """What the station did last can still be taken back."""
    draft = read(kept(work={"mode": "sideways"}))
    assert (draft.hand.subject, draft.hand.work, draft.hand.worker) == ("", CartWork(), "02")
    assert draft.last == "t1"


@dataclass(frozen=True, kw_only=True)
class ListWork(Work):
    name: str = ""

    @classmethod
    def renamed(cls, kept):
        """A list was once kept by its position."""
        at = kept.get("list")
        return {**kept, "name": ("material", "rack")[at]} if isinstance(at, int) else kept


def test_a_position_that_was_kept_becomes_a_name():
    office = {"office": Room("Office", {}, lambda *_: None, lambda *_: None, ListWork)}
    raw = kept("office", work={"list": 1})
    raw["after"] = json.dumps(["office", "1", {"list": 1}])
    draft = read(raw, office)
    assert draft.hand.work == ListWork(name="rack")
    assert draft.after == held(draft.hand)


def question(kind, args, known):
    do = [kind, "worker/01", args, kept()["hand"], []]
    return {"do": do, "asks": "new_pin", "code": "", "args": known, "approver": "", "tries": 0,
            "at": "", "said": [], "next": []}  # fmt: skip


def test_a_pin_that_was_entered_once_is_known():
    raw = kept() | {"waiting": question("set_pin", {}, {"hash": "$argon2", "approved": "07"})}
    waiting = read(raw).waiting
    assert waiting.do.args == SetPin(hash="$argon2")
    assert waiting.known == Args(approved="07")


@pytest.mark.parametrize(
    "waiting", [question("engrave", {}, {}), question("leave", {"cart": 1}, {})]
)
def test_a_question_about_an_act_that_is_not_known_is_dropped(waiting):
    draft = read(kept() | {"waiting": waiting})
    assert draft.waiting is None
    assert draft.hand.subject == "1"


ASKED = ("@worker 07", "@area office", "button put_down", "button list_cutfile",
         "touch SG010-SET", "button release_batch", "router 1", "3")  # fmt: skip


def ask_for_release(stage):
    """Releases a batch as far as a supervisor is asked for: its number is taken."""
    for line in ASKED:
        given = stage.send(line)
    assert given.answer.asks == "supervisor"


def test_a_number_of_an_act_that_was_left_is_not_lost_with_the_power(tmp_path):
    stage = Stage(tmp_path)
    for _ in range(3):
        ask_for_release(stage)
        stage.send("restart")
    ask_for_release(stage)
    stage.send("worker 07")
    assert str(stage.send("2468").answer.said) == "Batch 00001 is released to Router 1"
    stage.send("restart")
    assert "spare" not in json.loads(stage.ledger.draft("")), "it is used"
    stage.close()


def test_a_number_from_before_a_restored_backup_is_not_taken_again(tmp_path):
    """Papers may bear it since."""
    stage = Stage(tmp_path)
    ask_for_release(stage)
    stage.ledger.set_local(LEAP, "batch")
    stage.send("restart")
    ask_for_release(stage)
    stage.send("worker 07")
    assert "Batch 00001 " not in str(stage.send("2468").answer.said)
    stage.close()
