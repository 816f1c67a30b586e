"""Rows put there by hand: they stop no station and bend no count.

A database of before took them by a station's own password; by now it refuses most of them.
"""

import json

import pytest

from station.ledger.codec import Body, write_body
from station.shop.acts import Act
from station.shop.facts import Concern
from station.shop.moves import Move, Spot, move
from tests.sharing.two import Station, healed

AT = "2026-11-25T10:42:07"
GOOD = json.loads(
    write_body(
        Body(
            act=Act(id="bad", kind="cut", at=AT, subject="batch/00412"),
            tone="good",
            said=("{n} cut", {"n": 1}),
            moves=(move("014", 1, "cut", "popping/1", "00412"),),
        )
    )
)


def altered(**changed):
    return json.dumps({**GOOD, **changed})


def act(**changed):
    return altered(act={**GOOD["act"], **changed})


def fact(key, text, shelf=None):
    return altered(sets=[[key, None, [json.loads(text), shelf, ""]]])


MOVE = GOOD["moves"][0]
WRONG = {
    "nothing": "",
    "no JSON": "{",
    "null": "null",
    "a list": "[]",
    "another shape": '{"act": 1}',
    "deeply nested": "[" * 100_000,
    "another act's id": act(id="other"),
    "no time": act(at="yesterday"),
    "a time with more": act(at=AT + "; DROP TABLE entry"),
    "half a character": act(subject="\ud800"),
    "less than nothing": altered(moves=[[MOVE[0], -5, *MOVE[2:]]]),
    "none at all": altered(moves=[[MOVE[0], 0, *MOVE[2:]]]),
    "too many": altered(moves=[[MOVE[0], 2**70, *MOVE[2:]]]),
    "a billion pieces": altered(moves=[[MOVE[0], 10**9, *MOVE[2:]]]),
    "half a piece": altered(moves=[[MOVE[0], 0.5, *MOVE[2:]]]),
    "a move of words": altered(moves=[["014", "six", ["cut", ""], ["x", ""]]]),
    "a fact that is none": fact("batch/00412", '{"x": 1}'),
    "a fact under another's key": fact(
        "batch/00412", '{"id": "9", "cut_file": "1", "revision": "A"}'
    ),
    "a fact set twice": altered(sets=[["x/1", None, None], ["x/1", None, None]]),
    "words that cannot be said": altered(said=["{no.such}", {}]),
    "words that are none": altered(said=5),
    "a concern that cannot be said": fact(
        "concern/1", json.dumps({"id": "1", "what": "x", "text": ["{y}", {}], "since": AT})
    ),
    "this program's own mark": act(kind="left-out"),
}


@pytest.fixture(scope="module")
def pair(tmp_path_factory, server):
    from tests.sharing.shop import found  # noqa: PLC0415 - one shop for the whole table

    shop = found(server)
    stations = [Station(tmp_path_factory.mktemp("pair"), shop, n) for n in "23"]
    yield stations
    for station in stations:
        station.close()


@pytest.mark.parametrize("name", WRONG)
def test_what_is_no_sound_entry_does_nothing(pair, name):
    one, two = pair
    id_ = f"bad {name}"
    body = WRONG[name].replace('"id": "bad"', f'"id": "{id_}"')
    one.do(f"before {name}")
    two.do(f"beside {name}")
    healed(one, two)
    before, count = two.stock(), len(two.ids())
    two.shop.put((id_, body))
    one.do(f"after {name}", qty=1)
    healed(one, two)
    assert len(two.ids()) == count + 1
    gained = sum(h.qty for h in two.stock() if h.qty > 0) - sum(h.qty for h in before if h.qty > 0)
    assert gained == 1


def test_it_stays_so_after_a_rebuild_and_a_new_start(pair):
    one, two = pair
    one.ledger.rebuild()
    one.ledger.close()
    one.open()
    healed(one, two)


def test_taking_away_what_is_not_there_is_seen_and_stops_nobody(pair):
    one, two = pair
    body = Body(
        act=Act(id="thief", kind="cut", at=AT, subject="batch/00412"),
        tone="good",
        moves=(Move("014", 10**5, Spot("popping/1", "00412"), Spot("shipped", "00412")),),
    )
    two.shop.put(("thief", write_body(body)))
    for station in pair:
        assert station.share().state == "shared"
        assert station.ledger.check() == []
        concern = station.ledger.view.get(Concern, "thief")
        assert "too many leave popping/1" in str(concern.now)
    assert one.do("and on").entry == "and on"
    assert one.share().state == "shared"
    assert one.stock() != two.stock()
    two.share()
    assert one.stock() == two.stock()


def test_a_new_program_s_facts_and_fields_are_taken_in(pair):
    one, _two = pair
    body = altered(
        act={**GOOD["act"], "id": "newer", "colour": "red"},
        sets=[["kiln/1", None, [{"id": "1", "heat": 900}, "kiln/hot", "1"]]],
        weather="fine",
    )
    one.shop.put(("newer", body))
    for station in pair:
        station.share()
        assert station.ledger._history.reader.state("kiln/1") is not None
