"""Hundreds of bent entries pushed by hand: no station stops, no screen fails, all agree.

The entries are those of a real day, bent at random places with a seed: values of other types,
huge and negative numbers, odd signs, missing and strange fields, cut off text.
"""

import json
from random import Random

import pytest

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.shop.areas import AREAS
from station.shop.facts import KINDS
from station.shop.plain import to_plain
from tests import replay
from tests.sharing.shop import found
from tests.sharing.two import Station, healed

pytestmark = pytest.mark.slow

ROWS, AT_ONCE = 400, 50
NASTY = (
    None, True, "", " ", "x" * 5000, "\0", "\u202e{}", "{n}", "%s", "2026-13-45T99:99:99", "-1",
    0, -1, 2**31, 2**63, 2**70, -(2**70), 0.5, 1e308, [], {}, [[]], {"say": 1, "with": 2},
    ["{n} {n|a|b}", {"n": "x"}], "batch/00900", "../../etc", "'; DROP TABLE entry; --",
)  # fmt: skip


def paths(value, path=()):
    """Every place in a JSON value."""
    yield path
    inside = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    for key, part in inside:
        yield from paths(part, (*path, key))


def bent(body, id_, chance):
    """An entry's text with one to three places bent."""
    value = json.loads(body)
    value["act"]["id"] = id_
    for _ in range(chance.randint(1, 3)):
        places = [p for p in paths(value) if p and p != ("act", "id")]
        *way, last = chance.choice(places)
        at = value
        for key in way:
            at = at[key]
        kind = chance.random()
        if kind < 0.75:
            at[last] = chance.choice(NASTY)
        elif kind < 0.9:
            del at[last]
        elif isinstance(at, list):
            at.append(at[last])
        else:
            at[f"{last}x"] = chance.choice(NASTY)
    text = json.dumps(value)
    return text[: chance.randrange(len(text))] if chance.random() < 0.05 else text


def odd_fact(fact, id_, chance):
    """An entry that makes a new fact of a kind, with an odd value in one of its fields."""
    value = to_plain(fact)
    value["id"] = id_ if chance.random() < 0.5 else f"{chance.randrange(10**5):05d}"
    fields = [p for p in paths(value) if p and p != ("id",)]
    if fields:
        *way, last = chance.choice(fields)
        at = value
        for key in way:
            at = at[key]
        same = [n for n in NASTY if type(n) is type(at[last])] or NASTY
        at[last] = chance.choice(same)
    shelf = fact.shelf
    state = [value, f"{fact.kind}/{shelf[0]}" if shelf else None, shelf[1] if shelf else ""]
    return json.dumps({
        "act": {"id": id_, "kind": "save_fact", "at": "2026-11-25T09:00:00"},
        "tone": "good", "sets": [[f"{fact.kind}/{value['id']}", None, state]],
    })  # fmt: skip


def days_in_the_shop():
    """The entries of three days in the shop, and all facts that there are in the end."""
    kept, facts = [], []

    def staged(top):
        stage = replay.Stage(top)
        close = stage.ledger.close

        def closing():
            kept.extend(row[0] for row in stage.ledger._store.rows("SELECT body FROM entry"))
            facts.extend(f for kind in KINDS.values() for f in stage.ledger.facts(kind))
            close()

        stage.ledger.close = closing
        return stage

    for day in ("01_ordinary_batch", "16_order_cancelled", "08_split"):
        replay.play(replay.HERE / f"{day}.txt", staged=staged)
    return kept, facts


@pytest.fixture
def stations(tmp_path, server):
    shop = found(server)
    made = [Station(tmp_path, shop, n, rules=bootstrap.load_rules()) for n in "23"]
    facts, at = replay.small_shop(), "2026-11-25T07:00:00"
    bootstrap.seed_shop(made[0].ledger, facts, at, stock=replay.START)
    healed(*made)
    yield made
    for station in made:
        station.close()


def faces(station):
    """Every room's screen, and Shop today with all that needs a look, one by one."""
    clock = Clock("2026-11-25T10:00:00")
    desk = bootstrap.make_desk(station.ledger, Where(area="trimming"), clock)
    desk.sign_in("02")
    for area in AREAS:
        desk.at(area=area.id, router="1")
        assert desk.face().title
    desk.at(area="today")
    for line in ("show_concerns", "row_1", "show_concerns", "next_page", "row_2"):
        desk.take(replay.cards.button(line))
        assert desk.face().title
    return desk


@pytest.mark.parametrize("seed", range(2))
def test_no_station_stops_and_all_agree(seed, stations):
    one, two = stations
    (bodies, facts), chance = days_in_the_shop(), Random(seed)
    by_kind = [[f for f in facts if f.kind == kind] for kind in {f.kind: 1 for f in facts}]
    for start in range(0, ROWS, AT_ONCE):
        rows = []
        for n in range(start, start + AT_ONCE):
            if n % 2:
                body = odd_fact(chance.choice(chance.choice(by_kind)), f"bent {n}", chance)
            else:
                body = bent(chance.choice(bodies), f"bent {n}", chance)
            rows.append((f"bent {n}", body))
        one.shop.put(*rows)
        healed(one, two)
        desk = faces(two)
        assert desk.take(replay.code_of("traveller 00900", two.ledger)).answer.said
    assert two.ledger.count() > ROWS
    sound = sum(e.id.startswith("bent") for e in two.ledger.entries())
    assert ROWS / 4 < sound < ROWS * 3 / 4
    one.ledger.rebuild()
    healed(one, two)
