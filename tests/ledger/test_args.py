"""The arguments of acts: kept as plain JSON, read as what their kind says."""

import json

import pytest

from station.ledger.codec import read_body
from station.ledger.shop_link import SharedRow
from station.shop.acts import Act, Args, UnreadArgs, good
from station.shop.facts import Batch, Concern
from station.shop.moves import move
from station.shop.views import Rule, by_kind
from station.shop.words import say
from tests.ledger.stations import Station, same
from tests.ledger.toy import AT
from tests.simulate.shop import MemoryShop


class Drill(Args, frozen=True, kw_only=True):
    kind = "drill"

    part: str
    holes: int = 1


class DrillDeep(Args, frozen=True, kw_only=True):
    """As a program wrote it that counts holes in words."""

    kind = "drill"

    part: str
    holes: str = "1"


def decide_drill(act, view):
    newest = view.last(act.subject, Drill)
    said = say("{n} before", n=newest.act.args.holes if newest else 0)
    return good(said, moves=(move(act.args.part, act.args.holes, "cut", "popping/1", "00412"),))


def decide_deep(act, view):
    return good(say("{n} deep, {x}", n=act.args.holes, x=view.last(act.subject) is None))


RULES = by_kind(Rule(args=Drill, reads=frozenset({Batch}), decide=decide_drill))


def drill(id, **args):
    return Act(id=id, kind="drill", at=AT, worker="03", station="1", subject="batch/00412",
               args=Drill(**args))  # fmt: skip


@pytest.fixture
def two(tmp_path):
    made = [Station(tmp_path / n, n, MemoryShop(), **RULES) for n in "12"]
    made[1].shop = made[0].shop
    made[1].link.shop = made[0].link.shop
    for station in (*made, *made):
        station.share()
    yield made
    for station in made:
        assert station.ledger.check() == []


def kept(station, id):
    """An act as the file has it."""
    text = station.ledger._store.run(
        "SELECT body FROM entry WHERE id = ?1 UNION SELECT body FROM pending WHERE id = ?1", (id,)
    ).fetchone()[0]
    return json.loads(text)["act"]


def shared(station, id, kind="drill", *, args):
    """Pushes an entry as another program wrote it."""
    act = {"id": id, "kind": kind, "at": AT, "worker": "", "station": "9",
           "subject": "batch/00412", "args": args}  # fmt: skip
    moves = [["014", 1, ["cut", "00412"], ["popping/1", "00412"]]]
    body = json.dumps({"act": act, "tone": "good", "said": ["Drilled", {}], "moves": moves})
    station.link.shop.add(SharedRow(id, "", ("batch/00412",), body))


def test_they_are_kept_as_plain_json(two):
    one, _ = two
    one.ledger.record(drill("a", part="014", holes=3))
    one.ledger.record(drill("b", part="014", sure=True, numbers={"batch": "00007"}))
    assert kept(one, "a")["args"] == {"part": "014", "holes": 3}
    assert kept(one, "b")["args"] == {"part": "014", "sure": True, "numbers": {"batch": "00007"}}
    assert list(kept(one, "a")) == ["id", "kind", "at", "worker", "station", "subject", "args"]


def test_a_rule_finds_them_as_their_kind_says(two):
    one, _ = two
    one.ledger.record(drill("a", part="014", holes=3))
    assert str(one.ledger.record(drill("b", part="014")).answer.said) == "3 before"
    assert one.ledger.view.past("a").act == drill("a", part="014", holes=3)
    assert one.ledger.view.last("batch/00412", Drill).act.args.holes == 1


def test_those_of_a_kind_that_is_not_known_are_plain_values(two):
    one, _ = two
    shared(one, "new", "engrave", args={"depth": 0.2})
    assert one.share() == "shared"
    assert one.ledger.view.past("new").act.args == UnreadArgs(kept={"depth": 0.2})
    assert one.ledger.view.last("batch/00412").act.args.kept == {"depth": 0.2}


@pytest.mark.parametrize("args", [{}, {"part": 14}, {"part": "014", "holes": "three"}])
def test_those_that_do_not_fit_stop_no_station_and_no_rule(two, args):
    """The effects count: all stations judge alike, whatever each knows of the kind."""
    shared(two[0], "odd", args=args)
    for station in two:
        assert station.share() == "shared"
        assert station.ledger.view.get(Concern, "odd") is None
        assert station.ledger.view.past("odd").act.args == UnreadArgs(kept=args)
        assert station.ledger.view.last("batch/00412", Drill) is None
    assert str(two[0].ledger.record(drill("b", part="014")).answer.said) == "0 before"
    two[0].share()
    two[1].share()
    assert same(*two)


@pytest.mark.parametrize("args", ["no object", [], None, {"depth": "\ud800"}])
def test_those_that_cannot_be_read_are_left_out(two, args):
    shared(two[0], "odd", args=args)
    for station in two:
        assert station.share() == "shared"
        assert station.ledger.view.get(Concern, "odd") is not None
    assert same(*two)


def test_a_waiting_act_whose_arguments_do_not_fit_needs_a_look(two):
    """Written by another program, and decided again by this one."""
    one, other = two
    one.link.cut = True
    one.ledger.rules["drill"] = Rule(args=DrillDeep, reads=frozenset(), decide=decide_deep)
    deep = Act(id="deep", kind="drill", at=AT, station="1", subject="batch/00412",
               args=DrillDeep(part="014", holes="three"))  # fmt: skip
    one.ledger.record(deep)
    one.ledger.rules["drill"] = RULES["drill"]
    other.ledger.record(drill("first", part="014"))
    other.share()
    one.link.cut = False
    assert one.share() == "shared"
    assert [t.id for t in one.turned] == ["deep"]
    assert kept(one, "deep")["args"] == {"part": "014", "holes": "three"}
    other.share()
    assert same(*two)


def test_what_a_newer_program_added_stays_though_it_is_decided_again(two):
    one, other = two
    one.link.cut = True
    one.ledger.record(drill("mine", part="014", holes=2))
    run = one.ledger._store.run
    run('UPDATE pending SET body = replace(body, \'"holes":2\', \'"holes":2,"bit":"11"\')')
    other.ledger.record(drill("first", part="014"))
    other.share()
    one.link.cut = False
    assert one.share() == "shared"
    assert one.turned == []
    assert kept(one, "mine")["args"] == {"part": "014", "holes": 2, "bit": "11"}
    assert read_body(other.ledger._store.run("SELECT body FROM entry").fetchone()[0])
