"""Entries are judged by their values: refused at recording, left out where they come in."""

import json
from dataclasses import replace

import pytest

from station.ledger.codec import read_fact, write_fact
from station.ledger.shop_link import SharedRow
from station.ledger.sound import taken_in
from station.shop.acts import Args, good
from station.shop.facts import Batch, Bed, BitSize, Concern, Order, Pace, Revision, Shop
from station.shop.moves import WEAR, move
from station.shop.plain import to_plain
from station.shop.views import Rule
from station.shop.words import say
from tests.ledger.stations import Station, same
from tests.ledger.toy import AT, act
from tests.simulate.shop import MemoryShop

BATCH = Batch(id="00777", cut_file="001", revision="A", sheets=2)
WRONG = {
    "a start that is no time": Bed(id="1", state="cutting", started="yesterday"),
    "10⁹ sheets": replace(BATCH, sheets=10**9),
    "15 MB of title": Concern(id="c1", what="short", text="x" * 15_000_000, since=AT),
    "a due time that is none": Order(id="3306", due="soon", lines=()),
    "sheets of no length, which no pace follows from": Pace(id="1", sheets=((0.0, 300.0),) * 3),
    "days until it comes, which nobody lives to see": BitSize(
        id="1", name="6 mm", diameter_mm=6.0, lead_days=10**9
    ),
    "a sheet that is cut for 2000 years": Revision(
        id="1.A", cut_file="1", letter="A", material="1", minutes=1e9
    ),
    "a day that begins at no hour": Shop(id="shop", day_starts=""),
    "a break that ends at no hour": Shop(id="shop", breaks=(("12:00", ""),)),
    "a list without an end": replace(BATCH, holds=("damp",) * 20_001),
}


def test_a_sentence_within_a_kept_sentence_is_read_back_as_one():
    told = say("{stop}, {size} mm", stop=say("since {at}", at=say("{day}", day="25")), size=6)
    kept = Concern(id="c1", what="short", text=told, since=AT, now=say("{n} there", n=2))
    again = read_fact(Concern, write_fact(kept))
    assert (str(again.text), str(again.now)) == ("since 25, 6 mm", "2 there")
    assert again == kept


@pytest.fixture
def two(tmp_path):
    shop = MemoryShop()
    made = [Station(tmp_path / n, n, shop) for n in "12"]
    for station in (*made, *made):
        station.share()
    yield made
    for station in made:
        assert station.ledger.check() == []


def entry(**changed):
    plain = {"act": {"id": "bad", "kind": "save_fact", "at": AT}, "tone": "good", **changed}
    return SharedRow("bad", "", (), json.dumps(plain))


def setting(fact):
    shelf, rank = fact.shelf
    return entry(sets=[[fact.key, None, [to_plain(fact), f"{fact.kind}/{shelf}", rank]]])


@pytest.mark.parametrize("name", WRONG)
def test_from_elsewhere_it_is_left_out_and_told_and_the_rest_goes_on(two, name):
    one, fact = two[0], WRONG[name]
    one.link.shop.add(setting(fact))
    one.ledger.record(act("after"))
    for station in (*two, *two):
        assert station.share() == "shared"
        assert station.ledger.view.get(type(fact), fact.id) is None
        told = station.ledger.view.get(Concern, "bad")
        assert f"of {fact.kind} {fact.id} cannot be" in str(told.now)
        assert station.ledger.view.get(Batch, "00412").cut == 1
    assert same(*two)


def test_a_text_is_judged_by_what_it_is_said_to_be(two):
    """Read as another kind, which passes its fields over, the same text may well be sound."""
    text = {"id": "1", "state": "cutting", "started": "yesterday", "label": "x"}
    sound = entry(sets=[["numbers/1", None, [text, None, ""]]])
    wrong = {"act": {"id": "worse", "kind": "save_fact", "at": AT}, "tone": "good"}
    wrong["sets"] = [["bed/1", None, [text, "bed/all", "1"]]]
    two[0].link.shop.add(sound)
    two[0].link.shop.add(SharedRow("worse", "", (), json.dumps(wrong)))
    for station in two:
        assert station.share() == "shared"
        assert station.ledger.view.get(Concern, "bad") is None
        assert "started of bed 1" in str(station.ledger.view.get(Concern, "worse").now)
    assert same(*two)


@pytest.mark.parametrize(
    "wrong",
    [
        {"said": ["{title}", {"title": "x" * 15_000_000}]},
        {"moves": [["x" * 300, 1, ["cut", ""], ["store", ""]]]},
        {"act": {"id": "bad", "kind": "cut", "at": "0001-01-01T00:00:00"}},
    ],
)
def test_what_stands_beside_the_facts_is_judged_too(two, wrong):
    two[0].link.shop.add(entry(**wrong))
    for station in two:
        assert station.share() == "shared"
        assert station.ledger.view.get(Concern, "bad").what == "left-out"
    assert same(*two)


MOVE = ["014", 1, ["cut", ""], ["popping/1", "00412"]]
LONG, LONGEST, MOST = "x" * 201, "x" * 200, 999_999


@pytest.mark.parametrize("moves", ["moves", "wanted"])
@pytest.mark.parametrize(
    ("at", "value", "why"),
    [
        (0, LONG, "a name in it is too long"),
        (2, [LONG, ""], "a name in it is too long"),
        (2, ["cut", LONG], "a name in it is too long"),
        (3, [LONG, ""], "a name in it is too long"),
        (3, ["store", LONG], "a name in it is too long"),
        (1, 0, "it moves a number that cannot be"),
        (1, MOST + 1, "it moves a number that cannot be"),
        (1, "six", "it cannot be read"),
        (0, LONGEST, ""),
        (3, ["store", LONGEST], ""),
        (1, MOST, ""),
    ],
)
def test_a_move_is_held_against_its_limits(moves, at, value, why):
    """And what the move's reading alone decides is told in the same words as ever."""
    wrong = [*MOVE[:at], value, *MOVE[at + 1 :]]
    body, told = taken_in("bad", entry(**{moves: [MOVE, wrong]}).body)
    assert str(told) == why
    assert why or len(body.moves + body.wanted) == 2


@pytest.mark.parametrize(("qty", "why"), [(10**9, ""), (10**9 + 1, "it moves a number")])
def test_a_bit_may_have_cut_more_millimetres_than_there_are_pieces(qty, why):
    worn = [WEAR, qty, ["bit/12", ""], ["used", ""]]
    _, told = taken_in("bad", entry(moves=[worn]).body)
    assert str(told).startswith(why)
    assert bool(told) == bool(why)


@pytest.mark.parametrize("name", WRONG)
def test_at_recording_it_is_refused_and_told_and_nothing_is_counted(two, name):
    fact = WRONG[name]
    one = two[0].ledger
    one.rules["wrong"] = Rule(Args, frozenset(), lambda _a, _v: good(say("Done"), sets=(fact,)))
    done = one.record(act("bad", "wrong"))
    assert done.answer.refused
    assert done.entry is None
    assert f"of {fact.kind} {fact.id} cannot be" in str(done.answer.said)
    assert one.record(act("after")).entry == "after"


def test_more_than_can_be_counted_is_refused(two):
    moves = (move("014", 10**9 + 1, "cut", "store", ""),)
    one = two[0].ledger
    one.rules["many"] = Rule(Args, frozenset(), lambda _a, _v: good(say("Done"), moves=moves))
    assert str(one.record(act("bad", "many")).answer.said).endswith(" of 014 are too many")


@pytest.mark.parametrize("at", ["2300-01-01T10:00:00", "1969-12-31T23:59:59"])
def test_an_act_of_a_year_that_nobody_takes_in_is_refused_at_its_own_station(two, at):
    """It was answered as recorded, and left out as soon as it had been shared."""
    one = two[0].ledger
    done = one.record(act("then", at=at))
    assert (done.answer.refused, done.entry) == (True, None)
    assert str(done.answer.said) == "This PC's clock is wrong: nothing was counted"
    assert one.record(act("then", at=AT)).entry == "then"
