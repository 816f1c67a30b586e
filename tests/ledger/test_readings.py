"""Readings: kept under what they are of, taken back, shared, rebuilt and closed like all else."""

import json
import math
import sqlite3
from dataclasses import replace

import pytest

from station.ledger.closing import Begin, Closing, ClosingWrong, close, opened
from station.ledger.codec import keep_act, read_body, write_body
from station.ledger.faults import EffectsWrong
from station.ledger.rebuild import closed
from station.ledger.shop_link import SharedRow
from station.ledger.undo import decide_undo
from station.shop.acts import good, refuse
from station.shop.readings import Reading, name_size
from station.shop.words import say
from tests.ledger import toy
from tests.ledger.stations import Station, same
from tests.ledger.toy import AT, COUNTED, act, given, tables_of, toy_rule
from tests.simulate.shop import MemoryShop

LATER = "2026-11-25T11:00:00"
ALONG = name_size("A along")
SIZE = Reading(
    subject="part/014",
    kind=ALONG,
    value=12.25,
    unit="mm",
    low=12.0,
    high=12.5,
    batch="00412",
    sheet=3,
    router="2",
    bit="07",
    part="014",
)


def measured(value, **more):
    changed = {"value": value, **more}
    fields = {name: getattr(SIZE, name) for name in SIZE.__struct_fields__}
    return good(say("Measured"), readings=(Reading(**{**fields, **changed}),))


ANSWERS = {
    "m1": measured(12.25),
    "m2": measured(12.5, bit="08"),
    "m3": replace(measured(12.75), readings=measured(1).readings + measured(2).readings),
}


@pytest.fixture
def ledger(tmp_path):
    made = toy.opened(tmp_path, given=given(ANSWERS))
    made.record(act("m2", "given", at=LATER))
    made.record(act("m1", "given"))
    yield made
    assert made.check() == []
    before = tables_of(made)
    made.rebuild()
    assert tables_of(made) == before
    made.close()


def values(ledger, subject="part/014", kind=ALONG, since=""):
    return [noted.reading.value for noted in ledger.view.series(subject, kind, since)]


def test_they_come_by_time_as_they_were_given(ledger):
    first, second = ledger.view.series("part/014", ALONG)
    assert first == (AT, "m1", SIZE)
    assert (second.at, second.act, second.reading.value) == (LATER, "m2", 12.5)
    assert values(ledger, since=LATER) == [12.5]
    assert values(ledger, kind=name_size("B")) == []


def test_they_are_found_under_part_router_and_bit(ledger):
    assert values(ledger, "router/2") == [12.25, 12.5]
    assert values(ledger, "bit/07") == [12.25]
    assert values(ledger, "bit/08") == [12.5]
    assert values(ledger, "batch/00412") == []


def test_one_act_may_give_several(ledger):
    ledger.record(act("m3", "given", at=LATER))
    assert values(ledger) == [12.25, 12.5, 1, 2]


def test_undo_takes_them_back_and_forth(ledger):
    ledger.undo("m1", act("u", "undo", at=LATER))
    assert values(ledger) == values(ledger, "router/2") == [12.5]
    ledger.undo("u", act("v", "undo", at=LATER))
    assert values(ledger) == [12.25, 12.5]
    ledger.undo("m1", act("w", "undo", at=LATER))
    assert values(ledger) == [12.5]


def test_an_answer_is_given_again_with_them(ledger):
    assert ledger.record(act("m1", "given")).answer == ANSWERS["m1"]


WRONG = {
    "no number": measured(math.nan),
    "without end": measured(math.inf),
    "yes": measured(True),
    "too large": measured(1e10),
    "a limit too large": measured(1.0, low=-1e10),
    "of nothing": measured(1.0, subject=""),
    "no kind": measured(1.0, kind=""),
    "a text": measured("12"),
}


@pytest.mark.parametrize("case", WRONG)
def test_what_is_no_reading_is_our_own_bug(case, tmp_path):
    ledger = toy.opened(tmp_path, given=given({"w": WRONG[case]}))
    with pytest.raises(EffectsWrong):
        ledger.record(act("w", "given"))
    assert ledger.count() == 0
    ledger.close()


def test_a_whole_number_is_kept_as_a_number(tmp_path):
    ledger = toy.opened(tmp_path, given=given({"w": measured(12)}))
    ledger.record(act("w", "given"))
    assert ledger.check() == []
    ledger.close()


PLANTED = {
    "another": "UPDATE reading SET body = replace(body, '12.25', '12.26')",
    "one less": "DELETE FROM reading WHERE subject = 'bit/07'",
    "one more": "INSERT INTO reading VALUES ('part/014', 'x', '', 'm1', 0, '{}')",
}


@pytest.mark.parametrize("planted", PLANTED.values(), ids=PLANTED)
def test_a_wrong_row_is_found(planted, tmp_path):
    ledger = toy.opened(tmp_path, given=given(ANSWERS))
    ledger.record(act("m1", "given"))
    ledger.close()
    plain = sqlite3.connect(ledger.path)
    plain.execute(planted)
    plain.commit()
    plain.close()
    ledger = toy.opened(tmp_path)
    assert any("The table reading differs" in problem for problem in ledger.check())
    ledger.rebuild()
    assert ledger.check() == []
    assert values(ledger) == [12.25]
    ledger.close()


# --- shared


def judge(_act, view):
    """Good while nothing, or little, was counted of the part."""
    counted = view.series("part/014", COUNTED)
    if len(counted) > 1:
        return refuse(say("Too many"))
    return good(say("{n} so far", n=len(counted)), readings=(SIZE,))


def need(_act, view):
    """Good once something was counted of the part."""
    if view.series("part/014", COUNTED):
        return good(say("Counted"))
    return refuse(say("Nothing counted"))


@pytest.fixture
def shop():
    return MemoryShop()


@pytest.fixture
def two(tmp_path, shop):
    more = {
        "judge": toy_rule(frozenset(), judge),
        "need": toy_rule(frozenset(), need),
        "given": given(ANSWERS),
    }
    made = [Station(tmp_path / n, n, shop, **more) for n in "12"]
    settle(*made)
    yield made
    settle(*made)
    for station in made:
        assert station.ledger.check() == []
        station.ledger.close()


def settle(*stations):
    for station in (*stations, *stations):
        assert station.share() == "shared"
    assert same(*stations)


def test_they_are_shared(two):
    one, other = two
    one.ledger.record(act("m1", "given"))
    other.ledger.record(act("m2", "given", at=LATER))
    settle(*two)
    assert values(one.ledger) == values(other.ledger) == [12.25, 12.5]
    other.ledger.undo("m1", act("u", "undo"))
    settle(*two)
    assert values(one.ledger) == values(other.ledger) == [12.5]


def test_what_is_decided_again_gives_them_once(two):
    one, other = two
    one.ledger.record(act("a"))
    other.ledger.record(act("b", qty=7))
    settle(*two)
    assert sorted(values(one.ledger, kind=COUNTED)) == [6, 7]


def test_an_act_that_rests_on_them_is_decided_again(two):
    one, other = two
    assert str(one.ledger.record(act("j", "judge", batch="00999")).answer.said) == "0 so far"
    assert values(one.ledger) == [12.25]
    for n in range(2):
        other.ledger.record(act(f"b{n}"))
    other.share()
    one.share()
    assert [turned.id for turned in one.turned] == ["j"]
    assert values(one.ledger) == []
    assert one.ledger.check() == []


def test_an_act_that_rests_on_what_is_taken_back_is_decided_again(two):
    one, other = two
    other.ledger.record(act("b"))
    settle(*two)
    assert one.ledger.record(act("n", "need", batch="00999")).entry
    other.ledger.undo("b", act("u", "undo"))
    other.share()
    one.share()
    assert [turned.id for turned in one.turned] == ["n"]


def test_they_are_taken_back_by_a_program_that_knows_none(two, shop):
    one, other = two
    one.ledger.record(act("m1", "given"))
    settle(*two)
    text = undone_by_older(one.ledger, "m1")
    shop.add(SharedRow("old", "", (), text))
    settle(*two)
    assert values(one.ledger) == values(other.ledger) == []
    other.ledger.undo("old", act("v", "undo"))
    settle(*two)
    assert values(one.ledger) == values(other.ledger) == [12.25]


def undone_by_older(ledger, id):
    """The reversing entry as a program wrote it that kept no readings."""
    body = decide_undo(ledger._history, id, keep_act(act("old", "undo"))).body
    plain = json.loads(write_body(body))
    assert plain.pop("readings")
    return json.dumps(plain)


def test_a_reading_of_a_newer_program_is_read_as_far_as_it_is_known(two, shop):
    body = {
        "act": {"id": "new", "kind": "k", "at": AT, "args": {}},
        "tone": "good",
        "readings": [{"subject": "part/9", "kind": "colour", "value": 5, "shade": "red"}],
    }
    shop.add(SharedRow("new", "", ("series/part/9/colour",), json.dumps(body)))
    settle(*two)
    (noted,) = two[0].ledger.view.series("part/9", "colour")
    assert (noted.at, noted.reading.value) == (AT, 5)


# --- closings


def closed_at(ledger, number):
    link, at = ledger._store.rows("SELECT digest, at FROM entry WHERE number = ?", (number,))[0]
    return close(closed(ledger._store, number), Begin(number, link, at))


def test_a_pc_that_begins_with_a_closing_knows_them(two, tmp_path, shop):
    one, _ = two
    for name in ("m1", "m2", "m3"):
        one.ledger.record(act(name, "given"))
    one.ledger.undo("m2", act("u", "undo"))
    settle(*two)
    before_undo = one.ledger.count() - 1
    new = Station(tmp_path / "3", "3", shop)
    new.ledger.start_from(closed_at(one.ledger, before_undo))
    assert new.ledger.begins()[0] == before_undo
    new.share()
    for subject in ("part/014", "router/2", "bit/07", "bit/08"):
        assert new.ledger.view.series(subject, ALONG) == one.ledger.view.series(subject, ALONG)
    assert len(values(new.ledger)) == 3
    new.ledger.rebuild()
    assert tables_of(new.ledger)[3] == tables_of(one.ledger)[3]
    assert new.ledger.check() == []
    new.ledger.close()


@pytest.mark.parametrize(
    ("key", "text", "words"),
    [
        (("part/014", ALONG, AT, "m1", 1), "{", "cannot be read"),
        (("part/015", ALONG, AT, "m1", 1), None, "is no size/A along of part/015"),
        (("part/014", "size/B", AT, "m1", 1), None, "is no size/B of part/014"),
    ],
)
def test_a_closing_with_a_wrong_reading_does_not_hold(ledger, key, text, words):
    books = closed(ledger._store)
    books.reading[key] = text or next(iter(books.reading.values()))
    made = close(books, Begin(2, b"d" * 32, AT))
    with pytest.raises(ClosingWrong, match=words):
        opened(Closing(*made))


def test_a_body_of_before_has_none(ledger):
    text = '{"act":{"id":"a","kind":"cut","at":"","args":{}},"tone":"good"}'
    assert read_body(text).readings == ()
