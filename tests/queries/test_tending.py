"""Which router needs a person next, and what to bring along."""

from dataclasses import replace

from station.queries.tending import BitToBring, list_tended
from station.shop.facts import Bed, BitUse, Lot, Revision, Slip
from station.shop.moves import SHEET, move
from tests.floor.shop_small import DAY, FRAMES, GAUGES, at, batch, sheets, small_facts, small_shop

NOW = at("09:10")
CUTS = Bed(id="1", day=DAY, state="cutting", batch="00412", sheet=1, lot="0931",
           started=at("09:00"), minutes=18.0, bits=((0, "11"),))  # fmt: skip
ON_ONE = batch(GAUGES)
ON_TWO = batch(GAUGES, "00413", router="2")


def tend(*facts, routers=("1", "2", "3"), moves=()):
    return list_tended(small_shop(*facts, moves=moves), routers, NOW)


def test_who_waits_comes_before_who_still_cuts_and_nothing_to_cut_is_last():
    stands = Bed(id="4", day=DAY, state="stopped", batch="00412", sheet=1, stopped=at("09:00"))
    found = tend(CUTS, ON_ONE, ON_TWO, stands, routers=("4", "3", "1", "2"))
    assert [(t.router, t.standing, t.minutes) for t in found] == [
        ("2", "waits", 0.0), ("1", "cuts", 8.0), ("4", "stopped", 0.0), ("3", "idle", 0.0)
    ]  # fmt: skip


def test_of_two_that_cut_the_one_that_is_free_first():
    soon = replace(CUTS, id="2", batch="00413", minutes=12.0)
    assert [t.router for t in tend(CUTS, ON_ONE, ON_TWO, soon, routers=("1", "2"))] == ["2", "1"]


def test_the_sheet_after_the_one_on_the_bed_from_the_same_lot():
    (one,) = tend(CUTS, ON_ONE, routers=("1",))
    assert (one.batch, one.sheet, one.sheets, one.run) == ("00412", 2, 4, 1)
    assert (one.material, one.lot, one.bits) == ("1", "0931", ())


def test_the_last_sheet_is_on_the_bed_so_the_next_batch_is_brought():
    last = replace(CUTS, sheet=4)
    (one,) = tend(replace(ON_ONE, cut=3, state="cutting"), batch(FRAMES, "00415"), last,
                  routers=("1",))  # fmt: skip
    assert (one.batch, one.sheet, one.material, one.lot) == ("00415", 1, "2", "0940")


def test_a_held_batch_is_passed_over():
    held = replace(ON_TWO, holds=("thickness",))
    (one,) = tend(held, batch(FRAMES, "00415", router="2"), routers=("2",))
    assert one.batch == "00415"


def test_a_batch_that_may_not_be_cut_any_more_is_passed_over():
    """Loading would refuse its sheets: another revision is approved."""
    gauges = next(f for f in small_facts() if f.key == f"cutfile/{GAUGES}")
    begun, newer = replace(ON_TWO, cut=1, state="cutting"), replace(gauges, approved="D")
    (one,) = tend(begun, newer, batch(FRAMES, "00415", router="2"), routers=("2",))
    assert one.batch == "00415"


def test_a_bit_that_is_not_in_or_does_not_last_is_brought_from_the_drawer():
    small = Revision(id=f"{GAUGES}.C", cut_file=GAUGES, letter="C", material="1", minutes=18.0,
                     bits=(BitUse(number=1, diameter_mm=3.0, cut_mm=5000.0),))  # fmt: skip
    (one,) = tend(ON_TWO, small, routers=("2",))
    assert one.bits == (BitToBring(3.0, "18"),)
    long = replace(small, bits=(BitUse(number=1, diameter_mm=6.0, cut_mm=9e9),))
    assert tend(ON_TWO, long, routers=("2",))[0].bits == (BitToBring(6.0, "17"),)
    rare = replace(small, bits=(BitUse(number=1, diameter_mm=8.0, cut_mm=5000.0),))
    assert tend(ON_TWO, rare, routers=("2",))[0].bits == (BitToBring(8.0, ""),)


def test_a_sheet_between_its_runs_is_brought_itself():
    first = Revision(id=f"{GAUGES}.C", cut_file=GAUGES, letter="C", material="1", minutes=18.0,
                     runs=(f"{GAUGES}.C", f"{FRAMES}.C"))  # fmt: skip
    waits = Slip(id="00413-1", batch="00413", sheet=1, router="2", at=at("08:50"),
                 state="between", runs=((f"{GAUGES}.C", "2", 18.0),))  # fmt: skip
    (one,) = tend(ON_TWO, first, waits, routers=("2",))
    assert (one.sheet, one.run, one.material, one.lot) == (1, 2, "", "")


def test_the_last_sheet_and_the_last_bit_are_brought_to_one_router_alone():
    """Who is needed first has them; for the next there is none by the book."""
    small = Revision(id=f"{GAUGES}.C", cut_file=GAUGES, letter="C", material="1", minutes=18.0,
                     bits=(BitUse(number=1, diameter_mm=3.0, cut_mm=5000.0),))  # fmt: skip
    soon = replace(CUTS, id="2", batch="00413", minutes=12.0)
    used = move(SHEET, 39, "store", "used", "0931")
    first, second = tend(CUTS, ON_ONE, ON_TWO, soon, small, routers=("1", "2"), moves=(used,))
    assert (first.router, first.lot, first.bits) == ("2", "0931", (BitToBring(3.0, "18"),))
    assert (second.router, second.lot, second.bits) == ("1", "", (BitToBring(3.0, ""),))


def test_where_a_lot_ends_the_next_router_has_a_sheet_of_another():
    newer = Lot(id="0950", material="1", received="2026-11-20")
    moves = (move(SHEET, 39, "store", "used", "0931"), sheets("0950", 40))
    found = tend(ON_ONE, ON_TWO, newer, routers=("1", "2"), moves=moves)
    assert [(t.router, t.lot) for t in found] == [("1", "0931"), ("2", "0950")]
