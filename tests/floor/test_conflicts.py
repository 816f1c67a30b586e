"""Every kind of Needs a look that sharing brings arises, and each choice under it is settled.

Two stations with the rooms' own rules; what one does the other has not seen yet.
"""

import pytest

from station import bootstrap
from station.ledger.shop_link import SharedRow
from station.shop.acts import Act
from station.shop.conflicts import BOOK, BOTH, LEAVE, LEFT_OUT, NO_LONGER, RENEW, bookable
from station.shop.facts import Batch, Concern, Line, Order, Pile
from station.shop.places import balances
from tests.fakes import fit_args
from tests.floor.shop_small import COMB, DAY, small_facts
from tests.ledger.stations import Station, same
from tests.simulate.shop import MemoryShop

AT = f"{DAY}T10:00:00"
FACTS = [
    *small_facts(),
    Batch(id="00900", cut_file="008", revision="C", sheets=1, cut=1, state="cut"),
    Pile(id="trimming/00900", area="trimming", batch="00900", since=AT),
    Order(id="3306", due=AT, lines=(Line(product="021", quantity=1),)),
]


@pytest.fixture
def two(tmp_path):
    shop = MemoryShop()
    made = [Station(tmp_path / n, n, shop, **bootstrap.load_rules()) for n in "12"]
    bootstrap.seed_shop(made[0].ledger, FACTS, AT, stock=[(COMB, 24, "cut", "trimming", "00900")])
    heal(made)
    yield made
    heal(made)
    assert same(*made)
    for station in made:
        assert station.ledger.check() == []
        sums = sum(h.qty for h in station.ledger.balances() if h.part == COMB)
        below = [h for h in station.ledger.balances() if h.qty < 0 and not balances(h.place)]
        assert (sums, below) == (0, [])


def heal(stations):
    for station in (*stations, *stations, *stations):
        assert station.share() == "shared"


def do(station, id, kind, subject, **args):
    act = Act(id=id, kind=kind, at=AT, worker="02", station=station.number, subject=subject,
              args=args)  # fmt: skip
    return station.ledger.record(fit_args(act, station.ledger.rules))


def split(station, id, quantity, child):
    return do(station, id, "split_batch", "batch/00900", part=COMB, quantity=quantity,
              numbers={"batch": child})  # fmt: skip


def settle(station, concern, how, **args):
    args = {"approved": "07", "reason": "51"} | args
    return do(station, f"s{station.number}", "settle_concern", concern.key, how=how, **args)


def at(station, place, batch):
    return sum(h.qty for h in station.ledger.view.stock(batch=batch, place=place))


def two_splits(two):
    """Both split off what is only there once: 20 and 10 of 24."""
    a, b = two
    assert split(a, "one", 20, "00950").entry
    assert split(b, "two", 10, "00951").entry
    heal(two)
    return concern_of(two, "two")


def concern_of(two, id):
    found = [s.ledger.view.get(Concern, id) for s in two]
    assert found[0] == found[1]
    return found[0]


def test_an_act_that_holds_no_longer_shows_both_versions(two):
    concern = two_splits(two)
    assert (concern.what, concern.station, concern.worker) == (NO_LONGER, "2", "02")
    assert str(concern.first) == "10 split off as batch 00951, 14 stay"
    assert str(concern.now) == "Only 4 are here to split"
    assert concern.choices == (LEAVE, BOOK)
    assert [at(two[0], "trimming", b) for b in ("00900", "00950", "00951")] == [4, 20, 0]


@pytest.mark.parametrize(("how", "left"), [(LEAVE, [4, 20, 0]), (BOOK, [0, 20, 4])])
def test_each_choice_settles_it(how, left, two):
    concern = two_splits(two)
    assert settle(two[0], concern, how).entry
    heal(two)
    assert [at(two[1], "trimming", b) for b in ("00900", "00950", "00951")] == left
    settled = concern_of(two, "two")
    assert (settled.settled, settled.by, settled.reason) == (how, "07", "counted again")


def test_a_number_that_two_papers_bear_needs_a_look(two):
    """A station on an older disk hands out what it has not asked the shop about."""
    assert split(two[0], "one", 5, "00950").entry
    assert split(two[1], "two", 4, "00950").entry
    heal(two)
    concern = concern_of(two, "two")
    assert str(concern.now) == "Number 00950 was given out twice"
    assert [at(two[0], "trimming", b) for b in ("00900", "00950")] == [19, 5]
    assert concern.choices == (RENEW, LEAVE), "no pieces go under the number of others"
    assert settle(two[0], concern, LEAVE).entry


def test_a_paper_with_the_number_of_another_gets_its_own(two):
    assert split(two[0], "one", 5, "00950").entry
    assert split(two[1], "two", 4, "00950").entry
    heal(two)
    done = settle(two[0], concern_of(two, "two"), RENEW, numbers={"batch": "00960"})
    assert str(done.answer.said) == "Its paper is printed as batch 00960"
    assert done.answer.prints == (("traveller", "00960"),)
    heal(two)
    view = two[1].ledger.view
    assert [at(two[1], "trimming", b) for b in ("00900", "00950", "00960")] == [15, 5, 4]
    child = view.get(Batch, "00960")
    assert (child.parent, child.role, child.state) == ("00900", "split", "cut")
    assert "00960" in [p.batch for p in view.shelf(Pile, "trimming")], "trimming lists its pile"


def print_anew_on_both(two):
    """The paper of one batch is lost, and printed anew at both stations."""
    assert all(do(s, f"copy{s.number}", "new_copy", "batch/00900").entry for s in two)
    heal(two)
    return concern_of(two, "copy2")


def test_a_lost_paper_that_was_printed_at_two_stations_needs_a_look(two):
    """Both papers bear copy B: no third copy is valid that nobody has printed."""
    concern = print_anew_on_both(two)
    assert str(concern.now) == "Copy B of batch 00900 was printed twice"
    assert concern.choices == (RENEW, LEAVE)
    batch = two[1].ledger.view.get(Batch, "00900")
    assert (batch.copy, batch.void) == ("B", ("A",))
    done = settle(two[0], concern, RENEW)
    assert done.answer.prints == (("traveller", "00900"),)
    assert str(done.answer.do) == "Copy B is void: throw both papers away."
    heal(two)
    batch = two[1].ledger.view.get(Batch, "00900")
    assert (batch.copy, batch.void) == ("C", ("A", "B"))


def test_a_paper_lost_twice_at_one_station_is_no_conflict(two):
    for again in ("first", "second"):
        assert do(two[0], again, "new_copy", "batch/00900").entry
    assert split(two[1], "other", 1, "00951").entry
    heal(two)
    assert two[1].ledger.view.get(Batch, "00900").copy == "C"
    assert two[0].ledger.view.shelf(Concern, "open") == ()


def test_both_supervisors_settle_it_and_it_is_booked_once(two):
    concern = two_splits(two)
    assert all(settle(station, concern, BOOK).entry for station in two)
    heal(two)
    assert at(two[0], "trimming", "00951") == 4
    second = concern_of(two, "s2")
    assert str(second.now) == "That is settled already"
    done = do(two[0], "s3", "settle_concern", second.key, how=LEAVE, approved="07", reason="51")
    assert done.entry


def test_an_order_claimed_twice_stays_with_the_first(two):
    a, b = two
    assert all(do(s, f"claim{s.number}", "claim_order", "order/3306").entry for s in two)
    heal(two)
    assert b.ledger.view.get(Order, "3306").claimed == "1"
    concern = concern_of(two, "claim2")
    assert (concern.choices, str(concern.now)) == ((LEAVE,), "Station 1 packs order 3306")
    assert settle(a, concern, LEAVE).entry


def test_what_followed_tells_of_what_it_followed_from(two):
    a, b = two
    assert split(a, "one", 20, "00950").entry
    assert split(b, "two", 10, "00951").entry
    held = do(b, "then", "hold_batch", "batch/00951")
    assert held.entry
    heal(two)
    followed = concern_of(two, "then")
    assert str(followed.now) == "Only 4 are here to split", "its batch was never split off"
    assert str(followed.text) == (
        "“Batch 00951 is held” does not hold: Only 4 are here to split, worker 02"
    )


def test_what_stands_by_itself_is_told_by_its_own_reason(two):
    a, b = two
    assert all(do(s, f"claim{s.number}", "claim_order", "order/3306").entry for s in two)
    assert split(a, "one", 20, "00950").entry
    assert split(b, "two", 10, "00951").entry
    heal(two)
    assert str(concern_of(two, "two").now) == "Only 4 are here to split"


def recount(station, counted):
    return do(station, f"count{station.number}", "recount", "batch/00900", part=COMB,
              place="trimming", counted=counted, reason="51")  # fmt: skip


def test_two_who_count_the_same_are_of_one_mind(two):
    assert all(recount(station, 23).entry for station in two)
    heal(two)
    assert at(two[0], "trimming", "00900") == 23, "one is missing, not two"
    assert concern_of(two, "count2").settled == BOTH
    assert two[1].ledger.view.shelf(Concern, "open") == (
        two[1].ledger.view.get(Concern, "count1"),
    )


@pytest.mark.parametrize(("how", "left"), [(LEAVE, 23), (BOOK, 22)])
def test_of_two_counts_that_differ_a_person_takes_one(how, left, two):
    assert recount(two[0], 23).entry
    assert recount(two[1], 22).entry
    heal(two)
    assert at(two[0], "trimming", "00900") == 23
    assert settle(two[0], concern_of(two, "count2"), how).entry
    heal(two)
    assert at(two[1], "trimming", "00900") == left


def test_it_takes_a_supervisor_and_a_reason(two):
    concern = two_splits(two)
    assert settle(two[0], concern, LEAVE, approved="").answer.asks == "supervisor"
    assert settle(two[0], concern, LEAVE, reason="").answer.asks == "reason"
    assert settle(two[0], concern, LEAVE).entry
    heal(two)
    assert concern_of(two, "two").reason == "counted again"


TOO_MANY = (
    '{"act":{"id":"bad","kind":"pass_on","at":"2026-11-25T10:00:00","station":"9","worker":"05"},'
    '"tone":"good","said":["60 passed on",{}],'
    '"moves":[["014",60,["trimming","00900"],["rack/014","00900"]]]}'
)


@pytest.mark.parametrize(("how", "left"), [(LEAVE, (24, 0)), (BOOK, (0, 24))])
def test_an_entry_that_takes_too_many_is_left_out_and_settled(how, left, two):
    two[0].shop.add(SharedRow("bad", "", (), TOO_MANY))
    heal(two)
    concern = concern_of(two, "bad")
    assert (concern.what, concern.station, str(concern.first)) == (LEFT_OUT, "9", "60 passed on")
    assert "36 of 014 too many leave trimming" in str(concern.now)
    assert settle(two[0], concern, how).entry
    heal(two)
    assert (at(two[1], "trimming", "00900"), at(two[1], "rack/014", "00900")) == left


def two_claims(two):
    """Both claim one order: no pieces were meant to move."""
    assert all(do(s, f"claim{s.number}", "claim_order", "order/3306").entry for s in two)
    heal(two)
    return concern_of(two, "claim2")


def by_hand(body):
    """An entry pushed past a station's program."""

    def raised(two):
        two[0].shop.add(SharedRow("bad", "", (), body))
        heal(two)
        return concern_of(two, "bad")

    return raised


RAISED = {  # what arises by sharing: its kind, its choices, and how it comes about
    "an act with pieces": (NO_LONGER, (LEAVE, BOOK), two_splits),
    "an act without": (NO_LONGER, (LEAVE,), two_claims),
    "a copy printed twice": (NO_LONGER, (RENEW, LEAVE), print_anew_on_both),
    "an entry that takes too many": (LEFT_OUT, (LEAVE, BOOK), by_hand(TOO_MANY)),
    "an entry that nobody can read": (LEFT_OUT, (LEAVE,), by_hand("{")),
}


@pytest.mark.parametrize(
    ("name", "how"), [(n, how) for n, (_, choices, _) in RAISED.items() for how in choices]
)
def test_every_kind_arises_and_every_choice_settles_it(name, how, two):
    what, choices, raised = RAISED[name]
    concern = raised(two)
    assert (concern.what, concern.choices) == (what, choices)
    before = {(h.place, h.batch, h.part): h.qty for h in two[1].ledger.balances()}
    booked = bookable(two[1].ledger.view, concern) if how == BOOK else ()
    assert settle(two[1], concern, how).entry
    heal(two)
    settled = concern_of(two, concern.id)
    assert (settled.settled, settled.by, settled.reason) == (how, "07", "counted again")
    for m in booked:
        for spot, qty in ((m.frm, -m.qty), (m.to, m.qty)):
            key = (*spot, m.part)
            before[key] = before.get(key, 0) + qty
    after = {(h.place, h.batch, h.part): h.qty for h in two[0].ledger.balances()}
    assert after == {key: qty for key, qty in before.items() if qty}
    assert all(s.ledger.view.shelf(Concern, "open") == () for s in two)


def test_an_entry_that_nobody_can_read_can_only_be_left_out(two):
    two[0].shop.add(SharedRow("bad", "", (), "{"))
    heal(two)
    concern = concern_of(two, "bad")
    assert concern.choices == (LEAVE,)
    assert "it cannot be read" in str(concern.text)
    assert settle(two[1], concern, LEAVE).entry
