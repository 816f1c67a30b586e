"""A fact in a state that only a newer program knows: nothing is damaged, and nothing stops."""

import json

import pytest

from station.ledger.codec import read_fact
from station.ledger.shop_link import SharedRow
from station.shop.facts import Batch, Concern, Part, Router
from tests.ledger.stations import Station, same
from tests.ledger.toy import AT, act
from tests.simulate.shop import MemoryShop

BATCH = {"id": "00412", "cut_file": "001", "revision": "A", "state": "paused"}


@pytest.fixture
def two(tmp_path):
    shop = MemoryShop()
    made = [Station(tmp_path / n, n, shop) for n in "12"]
    for station in (*made, *made):
        station.share()
    yield made
    for station in made:
        assert station.ledger.check() == []


def shared(station, fact, shelf="batch/paused"):
    """Pushes an entry that sets a fact, as a newer program wrote it."""
    body = {
        "act": {"id": "new", "kind": "pause", "at": AT, "args": {}},
        "tone": "good",
        "said": ["Paused", {}],
        "sets": [[f"batch/{BATCH['id']}", None, [fact, shelf, "1"]]],
    }
    station.link.shop.add(SharedRow("new", "", ("batch/00412",), json.dumps(body)))


def test_it_is_taken_in_and_read_as_it_is_written(two):
    shared(two[0], BATCH)
    for station in two:
        assert station.share() == "shared"
        assert station.ledger.view.get(Concern, "new") is None
        assert station.ledger.view.get(Batch, "00412").state == "paused"
        assert [b.id for b in station.ledger.view.shelf(Batch, "paused")] == ["00412"]
        station.crash()
        assert next(station.ledger.facts(Batch)).state == "paused"
    assert same(*two)


def test_work_on_it_goes_on(two):
    one, other = two
    shared(one, BATCH)
    one.share()
    assert one.ledger.record(act("x")).entry
    assert one.ledger.view.get(Batch, "00412").cut == 1
    for station in (one, other, one):
        assert station.share() == "shared"
    assert other.ledger.view.get(Batch, "00412").state == "paused"
    one.ledger.rebuild()
    assert same(*two)


@pytest.mark.parametrize(
    "wrong", [{"state": 5}, {"cut_file": None}, {"cut": "many"}, {"holds": "no list"}]
)
def test_what_is_wrong_besides_is_left_out(two, wrong):
    shared(two[0], {**BATCH, **wrong})
    for station in two:
        assert station.share() == "shared"
        assert station.ledger.view.get(Concern, "new") is not None
        assert station.ledger.view.get(Batch, "00412") is None
    assert same(*two)


def test_it_may_stand_within_a_list():
    size = {"name": "A", "nominal_mm": 3, "low_mm": 2.5, "high_mm": 3.5, "kind": "radius"}
    part = {"id": "014", "name": "HC", "words": "Comb", "sizes": [size], "colour": "red",
            "shape": {"outline": [[0, 0], [3.5, 0]], "tabs": [[1, 2]]}}  # fmt: skip
    read = read_fact(Part, json.dumps(part))
    plain = read_fact(Part, json.dumps({**part, "sizes": [{**size, "kind": "pitch"}]}))
    assert read.sizes[0].kind == "radius"
    assert (read.shape, read.sizes[0].low_mm) == (plain.shape, plain.sizes[0].low_mm)
    router = {"id": "1", "name": "One", "bed": "magnets", "hold_downs": [[1, 2], [3, 4.5]]}
    assert read_fact(Router, json.dumps(router)).hold_downs == ((1.0, 2.0), (3.0, 4.5))
