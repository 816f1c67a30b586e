"""Acts that two stations must not both do: what the strip says, and what is refused offline."""

import pytest

from station import bootstrap
from station.desk.certain import PATIENCE, CertainAct
from station.desk.desk import Given
from station.floor.packing.acts import ClaimOrder
from station.shop.acts import Act
from station.shop.facts import Cart, Line, Order, Pack
from tests.fakes import fit_args
from tests.floor.shop_small import COMB, DAY, SHUTTLE, small_facts
from tests.ledger.stations import Station
from tests.simulate.shop import MemoryShop

AT = f"{DAY}T10:00:00"
FACTS = [
    *small_facts(),
    Order(id="3306", due=AT, lines=(Line(product="021", quantity=1),)),
    Pack(id="00077", order="3300", mailer="01", contents=((COMB, 1),), state="cart", cart="1",
         seen=True),
]  # fmt: skip
STOCK = [
    (COMB, 1, "found", f"rack/{COMB}", "00000"),
    (SHUTTLE, 9, "found", f"rack/{SHUTTLE}", "00000"),
    (COMB, 1, "found", "cart/1", "00000"),
]


@pytest.fixture
def station(tmp_path):
    made = Station(tmp_path, "1", MemoryShop(), **bootstrap.load_rules())
    facts = {f.key: f for f in [*FACTS, Cart(id="1", name="Cart 1", state="door")]}
    bootstrap.seed_shop(made.ledger, facts.values(), AT, stock=STOCK)
    made.share()
    return made


def do(station, id, kind, subject, **args):
    act = Act(id=id, kind=kind, at=AT, worker="02", station="1", subject=subject, args=args)
    return station.ledger.record(fit_args(act, station.ledger.rules))


def away(station):
    station.link.cut = True
    assert station.share() == "away"


def test_a_claim_waits_for_the_shop_and_is_refused_without_it(station):
    away(station)
    refused = do(station, "c1", "claim_order", "order/3306")
    assert (refused.entry, refused.answer.tone) == (None, "stop")
    assert "does not answer" in str(refused.answer.said)
    station.link.cut = False
    station.share()
    assert do(station, "c2", "claim_order", "order/3306").certain
    station.share()
    away(station)
    mine = do(station, "c3", "claim_order", "order/3306")  # claimed before: goes on
    assert (mine.entry, mine.certain) == ("c3", False)


def test_the_last_pieces_are_told_others_are_not(station):
    do(station, "c", "claim_order", "order/3306")
    assert do(station, "p1", "pick", "order/3306", part=COMB).certain
    assert not do(station, "p2", "pick", "order/3306", part=SHUTTLE).certain


def test_a_cart_leaves_only_with_the_shop_s_word(station):
    away(station)
    assert do(station, "l1", "leave", "cart/1", cart="1").entry is None
    station.link.cut = False
    station.share()
    assert do(station, "l2", "leave", "cart/1", cart="1").certain


def test_on_a_single_pc_nothing_waits(tmp_path):
    station = Station(tmp_path, "1", MemoryShop(), **bootstrap.load_rules())
    alone = bootstrap.Ledger(tmp_path / "alone.db", bootstrap.load_rules())
    bootstrap.seed_shop(alone, FACTS, AT, stock=STOCK)
    act = Act(id="c", kind="claim_order", at=AT, worker="02", station="1", subject="order/3306",
              args=ClaimOrder())  # fmt: skip
    done = alone.record(act)
    assert (done.entry, done.certain) == ("c", False)
    station.ledger.close()


def test_the_strip_asks_and_then_says_what_became_of_it(station):
    now = [0.0]
    certain = CertainAct(station.ledger, lambda: now[0])
    given = Given(*do(station, "c", "claim_order", "order/3306"))
    said = certain.ask_shop(given)
    assert (said.tone, str(said.said)) == ("attention", "Asking the shop: Order 3306 is yours")
    assert certain.find_verdict() is None
    station.share()
    assert certain.find_verdict() == given.answer
    assert certain.find_verdict() is None


def test_after_two_seconds_the_strip_says_how_it_stands(station):
    now = [0.0]
    certain = CertainAct(station.ledger, lambda: now[0])
    certain.ask_shop(Given(*do(station, "c", "claim_order", "order/3306")))
    now[0] = PATIENCE + 0.1
    assert str(certain.find_verdict().said) == "The shop has not said yet: Order 3306 is yours"
    assert certain.find_verdict() is None
