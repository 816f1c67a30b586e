import dataclasses
import logging

import pytest

from station.ledger.codec import read_body, read_fact, write_fact
from station.ledger.effects import writes
from station.ledger.faults import EffectsWrong, OwnBug, ReadsWrong, UnknownAct
from station.shop.acts import good
from station.shop.facts import (
    KINDS,
    Batch,
    BitUse,
    Fact,
    Gone,
    Line,
    Numbers,
    Placed,
    Reason,
    Shape,
    Size,
    Worker,
)
from station.shop.moves import Held, Move, Spot, move
from station.shop.words import say
from tests.ledger.toy import AT, ToyArgs, act, given, new_batch, opened, tables_of, toy_rule

SQUARE = Shape(outline=((0.0, 0.0), (30.0, 0.0), (30.0, 20.5)), tabs=((1.5, 0.0),))
RICH: dict[str, dict[str, object]] = {
    "reason": {"words": "torn", "use": "spoiled"},
    "material": {"name": "birch", "thickness_mm": 6, "low_mm": 5.8, "high_mm": 6.2},
    "lot": {"material": "01"},
    "part": {
        "name": "HC-300",
        "words": "Comb",
        "shape": SQUARE,
        "sizes": (Size(name="A", nominal_mm=1.0, low_mm=0.9, high_mm=1.1),),
    },
    "rack": {"name": "C 14", "part": "014"},
    "cutfile": {"name": "SET", "words": "set"},
    "revision": {
        "cut_file": "001",
        "letter": "A",
        "material": "01",
        "minutes": 12.5,
        "shapes": (("014", SQUARE),),
        "placed": (Placed(part="014", x_mm=1.0, y_mm=2.0),),
        "bits": (BitUse(number=1, diameter_mm=6.0, cut_mm=9300.0),),
        "hold_downs": ((1.0, 2.0),),
    },
    "router": {"name": "Router 1"},
    "bed": {"bits": ((0, "14"),)},
    "bit": {"words": "6 mm", "diameter_mm": 6.0},
    "notice": {"router": "1", "text": "“uncut” – again", "at": AT},
    "batch": {"cut_file": "001", "revision": "A", "holds": ("a lot to look at",)},
    "mixed": {"within": "00413", "batch": "00412"},
    "slip": {"batch": "00412", "sheet": 1, "router": "1", "at": AT},
    "pile": {"area": "trimming", "batch": "00412", "since": AT},
    "product": {"name": "P", "words": "p", "parts": (("014", 2),)},
    "order": {"lines": (Line(product="021", quantity=2),), "due": AT},
    "mailer": {"name": "M", "length_mm": 300.0, "width_mm": 200.0},
    "postage": {"name": "Parcel", "to_g": 2000.0, "price": 5.9},
    "bit_size": {"name": "6 mm", "diameter_mm": 6.0},
    "purchase": {"material": "01", "quantity": 5, "expected": "2026-12-01"},
    "push": {"product": "033", "quantity": 200, "begins": "2026-12-01"},
    "pack": {"order": "3306", "mailer": "01", "contents": (("014", 2),)},
    "cart": {"name": "Cart 2"},
    "concern": {"what": "recount", "text": "x", "since": AT},
    "spent": {"of": "batch/00412"},
    "damage": {"mailer": "01", "contents": (("014", 2),), "why": "61", "at": AT},
    "matching": {"columns": (("due", "Ship by"),)},
    "habit": {"mailer": "01", "times": 2, "why": "stiffer"},
}


def fact_of(kind: str) -> Fact:
    return KINDS[kind](id="1", **RICH.get(kind, {}))


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_comes_back_as_it_was(kind, tmp_path):
    fact = fact_of(kind)
    gone = Gone(id="", gone=fact.key)
    answers = {"a": good(say("x"), sets=(fact,)), "b": good(say("x"), sets=(gone,))}
    ledger = opened(tmp_path, given=given(answers))
    ledger.record(act("a", "given"))
    ledger.close()
    ledger = opened(tmp_path, given=given(answers))
    assert ledger.view.get(KINDS[kind], "1") == fact
    assert tuple(ledger.facts(KINDS[kind])) == (fact,)
    shelf = fact.shelf
    assert shelf is None or ledger.view.shelf(KINDS[kind], shelf[0]) == (fact,)
    ledger.record(act("b", "given"))
    assert ledger.view.get(KINDS[kind], "1") is None
    assert shelf is None or ledger.view.shelf(KINDS[kind], shelf[0]) == ()
    assert ledger.check() == []


def test_a_fact_of_a_newer_program_is_read(tmp_path):
    text = write_fact(Worker(id="03")).replace(b"{", b'{"shoe_size":44,', 1)
    assert read_fact(Worker, text) == Worker(id="03")


def test_an_act_is_one_entry_with_its_effects(tmp_path):
    ledger = opened(tmp_path)
    done = ledger.record(act("a1"), "my draft")
    assert (done.entry, str(done.answer.said)) == ("a1", "6 cut, sheet 1")
    assert done.moves == (move("014", 6, "cut", "popping/1", "00412"),)
    assert ledger.draft() == "my draft"
    assert ledger.view.stock(batch="00412") == (Held("popping/1", "00412", "014", 6),)
    (entry,) = ledger.entries()
    assert (entry.number, entry.id, entry.worker, entry.kind) == (1, "a1", "03", "cut")
    assert entry.past.sets[0].before is None
    assert entry.past.sets[0].after == dataclasses.replace(new_batch("00412"), cut=1)
    assert str(entry.said) == "6 cut, sheet 1"
    assert [tuple(row) for row in ledger.tally("2026-11-25T10", "2026-11-25T10")] == [
        ("2026-11-25T10", "cut", "popping", "014", "", "", 6)
    ]
    assert [tuple(f) for f in ledger.flow(AT[:10], "2026-11-26")] == [
        (AT, "cut", "popping", 6, "014")
    ]
    assert ledger.check() == []


def test_the_same_act_again_gives_the_same_answer_and_no_entry(tmp_path):
    ledger = opened(tmp_path)
    first = ledger.record(act("a1"))
    assert ledger.record(act("a1")) == first
    assert ledger.record(act("a1", qty=9999)) == first
    ledger.close()
    ledger = opened(tmp_path)
    assert ledger.record(act("a1")) == first
    assert ledger.count() == 1


def test_a_refusal_writes_nothing(tmp_path):
    ledger = opened(tmp_path)
    done = ledger.record(act("a1", qty=101), "kept not")
    assert (done.entry, done.moves, done.answer.tone) == (None, (), "stop")
    assert ledger.count() == 0
    assert ledger.draft() == ""


WRONG_EFFECTS = {
    "nothing moved": good(say("x"), moves=(move("014", 0, "cut", "held", "1"),)),
    "less than nothing": good(say("x"), moves=(move("014", -1, "cut", "held", "1"),)),
    "half a piece": good(say("x"), moves=(Move("014", 1.5, Spot("cut", ""), Spot("held", "")),)),
    "more than is there": good(say("x"), moves=(move("014", 1, "held", "trimming", "1"),)),
    "a fact twice": good(say("x"), sets=(Worker(id="1"), Worker(id="1", active=False))),
    "a fact that cannot be read": good(say("x"), sets=(Reason(id="1", words=5, use="x"),)),
    "part good, part wrong": good(
        say("x"),
        moves=(move("014", 1, "cut", "held", "1"), move("015", 1, "held", "trimming", "1")),
        sets=(Worker(id="7"),),
    ),
}


@pytest.mark.parametrize("case", WRONG_EFFECTS)
def test_wrong_effects_are_our_own_bug_and_record_nothing(case, tmp_path, caplog):
    ledger = opened(tmp_path, given=given({"w": WRONG_EFFECTS[case]}))
    ledger.record(act("a1"))
    before = tables_of(ledger)
    with caplog.at_level(logging.ERROR), pytest.raises(EffectsWrong):
        ledger.record(act("w", "given"))
    assert "id='w'" in caplog.text
    assert tables_of(ledger) == before
    assert ledger.view.get(Worker, "7") is None
    assert ledger.record(act("a2")).entry == "a2"
    assert ledger.check() == []


def test_a_rule_reads_only_the_kinds_it_lists(tmp_path):
    readers = {
        "get": lambda v: v.get(Batch, "1"),
        "shelf": lambda v: v.shelf(Batch, "x"),
        "passed": lambda v: v.passed("", ""),
    }
    for name, read in readers.items():

        def decide(_act, view, read=read):
            read(view)
            return good(say("x"))

        ledger = opened(tmp_path, sly=toy_rule(frozenset({Worker}), decide))
        with pytest.raises(ReadsWrong):
            ledger.record(act(name, "sly"))
        assert ledger.count() == 0
        ledger.close()


def test_an_act_without_a_rule_is_our_own_bug(tmp_path):
    with pytest.raises(UnknownAct):
        opened(tmp_path).record(act("a", "juggle"))


def test_a_bug_in_a_rule_is_not_swallowed(tmp_path):
    ledger = opened(tmp_path)
    with pytest.raises(AttributeError):
        ledger.record(dataclasses.replace(act("a"), args=None))
    assert ledger.record(act("b")).entry == "b"


def test_what_cannot_be_written_is_our_own_bug(tmp_path):
    strange = dataclasses.replace(act("a"), args=ToyArgs(batch="1", qty=1, reason=object()))
    with pytest.raises(OwnBug):
        opened(tmp_path).record(strange)


def test_last_and_past(tmp_path):
    ledger = opened(tmp_path)
    for name in ("a", "b"):
        ledger.record(act(name))
    ledger.record(act("p", "pop"))
    view = ledger.view
    assert view.last("batch/00412").act.id == "p"
    assert view.last("batch/00412", "cut").act.id == "b"
    assert view.last("batch/00412", "juggle") is None
    assert view.last("batch/9") is None
    assert view.past("a").act == act("a")
    assert view.past("zz") is None
    assert [e.id for e in ledger.entries(after=1, subject="batch/00412")] == ["b", "p"]


def test_oldest_batch_first(tmp_path):
    ledger = opened(tmp_path)
    for number in ("00415", "00412", "00413"):
        ledger.record(act(number, batch=number))
    held = ledger.view.stock(place="popping/1")
    assert [h.batch for h in held] == ["00412", "00413", "00415"]


def test_entries_name_what_they_wrote(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    body = read_body(ledger._store.run("SELECT body FROM entry").fetchone()[0])
    assert body.act.id == "a"
    names = writes(body)
    for name in (
        "batch/00412",
        "shelf/batch/queue/1",
        "at/popping/1/00412",
        "at/cut/00412",
        "stock/00412",
        "place/popping/1",
        "act/a",
        "about/batch/00412",
    ):
        assert name in names


def test_numbers_print_and_come_once(tmp_path):
    ledger = opened(tmp_path)
    first = [ledger.take_number("batch") for _ in range(30)]
    ledger.record(act("a"), "draft")
    more = [ledger.take_number("batch") for _ in range(3)]
    ledger.close()
    ledger = opened(tmp_path)
    last = [ledger.take_number("batch") for _ in range(30)]
    assert len(set(first + more + last)) == 63
    assert all(len(n) == 5 for n in first)
    assert ledger.view.get(Numbers, "batch").next > 63
    assert ledger.take_number("cart") == "1"
    with pytest.raises(ValueError, match="not numbered"):
        ledger.take_number("zone")


def test_numbers_come_once_when_an_act_is_repeated(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    numbers = [ledger.take_number("pack")]
    ledger.record(act("a"))
    ledger.record(act("refused", qty=101))
    numbers.append(ledger.take_number("pack"))
    ledger.record(act("b"))
    numbers.append(ledger.take_number("pack"))
    ledger.keep("draft")
    ledger._store.connection.close()  # as a power cut: nothing is written on the way out
    numbers.append(opened(tmp_path).take_number("pack"))
    assert len(set(numbers)) == 4


def test_a_number_that_is_taken_is_passed_over(tmp_path):
    answers = {"a": good(say("x"), sets=(Worker(id="01"), Worker(id="02")))}
    ledger = opened(tmp_path, given=given(answers))
    ledger.record(act("a", "given"))
    assert int(ledger.take_number("worker")) > 2


def test_local_values_are_kept(tmp_path):
    ledger = opened(tmp_path)
    ledger.set_local("area", "popping")
    ledger.keep("half a count")
    ledger.close()
    ledger = opened(tmp_path)
    assert (ledger.local("area"), ledger.draft(), ledger.local("x")) == (
        "popping",
        "half a count",
        None,
    )
