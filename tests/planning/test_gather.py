"""What is gathered from the shop."""

from dataclasses import replace

import pytest

from station.planning.gather import gather_plan as gather_all
from station.planning.hours import Hours
from station.planning.messages import Coming, LeadSeen, Passage, Wish
from station.planning.past import PastReading, read_past
from station.planning.think import run
from station.shop.acts import Act, Answer
from station.shop.facts import (
    Bed,
    Bit,
    BitSize,
    Concern,
    CutFile,
    Lot,
    Mailer,
    Pack,
    Product,
    Purchase,
    Push,
    RackPlace,
    Router,
    Shop,
    Slip,
)
from station.shop.first_facts import first_materials
from station.shop.moves import SUPPLY, WEAR, Move, Spot, move
from tests.floor.shop_small import COMB, COMBS, DAY, GAUGES, SPACER, batch, small_facts, small_shop
from tests.queries.test_shortage import COMB_ONLY, on_rack, order

NOW = f"{DAY}T10:42:00"


def gather_plan(view, now):
    return gather_all(view, now, read_past(view, now))


def done(view, at, *moves):
    """Moves that were made then."""
    view.apply(Act(id=at + str(len(view.entries)), kind="k", at=at),
               Answer(tone="good", said="", moves=moves))  # fmt: skip


def part_of(asked, id=COMB):
    return next(p for p in asked.parts if p.id == id)


def test_a_part_with_its_wishes_its_stock_and_its_past():
    view = small_shop(COMB_ONLY, order("3301", 9), moves=(on_rack(COMB, 4),))
    for day in ("2026-11-20", "2026-11-23"):
        done(view, f"{day}T09:10:00", move(COMB, 24, "cut", "popping/1", "00390"),
             move(COMB, 2, "cut", "spoiled/01", "00390"),
             move(COMB, 23, "popping/1", "trimming", "00390"),
             move(COMB, 1, "popping/1", "missing", "00390"),
             move(COMB, 23, "trimming", "rack/014", "00390"))  # fmt: skip
    done(view, "2026-11-24T10:00:00", move(COMB, 7, "packing/1", "pack/1", "00390"))
    done(view, "2026-11-24T10:05:00", move(COMB, 2, "pack/1", "packing/1", "00390"))
    done(view, f"{DAY}T08:00:00", move(COMB, 9, "packing/1", "pack/1", "00390"))
    asked = gather_plan(view, NOW)
    assert asked.through == {"popping": (24, 24, 0), "trimming": (23, 23, 0)}
    found = part_of(asked)
    assert found.wishes == (Wish("3301", f"{DAY}T15:00:00", 9),)
    assert found.free == 4 + 46
    assert found.use == (
        0,
        0,
        5,
    )  # three worked days before today; what was taken back counts less
    assert found.passed == {
        "cut": Passage(good=48, lost=4),
        "popping": Passage(good=46, lost=2),
        "trimming": Passage(good=46, lost=0),
    }


def test_a_shop_without_a_past_works_from_monday_to_friday():
    asked = gather_plan(small_shop(), NOW)
    assert asked.weekdays == (0, 1, 2, 3, 4)
    assert part_of(asked).use == ()


def test_the_days_that_are_worked_are_told_from_the_past():
    view = small_shop()
    for day in ("2026-11-14", "2026-11-21", "2026-11-16", "2026-11-23", "2026-11-19"):
        done(view, f"{day}T09:00:00", move(COMB, 1, "cut", "popping/1", "00390"))
    assert gather_plan(view, NOW).weekdays == (0, 5)  # two Mondays, two Saturdays, one Thursday


def test_files_have_a_time_for_each_router_that_runs_them():
    router = Router(id="2", name="Router 2", pace=1.5, extra_s=60.0)
    asked = gather_plan(small_shop(router), NOW)
    combs = next(f for f in asked.files if f.id == COMBS)
    assert combs.makes == {COMB: 24}
    assert (combs.minutes["1"], combs.minutes["2"]) == (22.0, 34.0)
    assert combs.bits_mm == (6.0,)


def test_a_file_without_an_approved_revision_is_none():
    facts = [replace(f, approved="") if f.key == f"cutfile/{COMBS}" else f for f in small_facts()]
    asked = gather_plan(small_shop(*facts), NOW)
    assert COMBS not in {f.id for f in asked.files}


def test_queues_tell_what_is_begun_held_and_still_to_be_loaded():
    view = small_shop(
        batch(sheets=4, cut=1, state="cutting"),
        batch(id="00413", sheets=2, holds=("bit",)),
        batch(id="00414", router="2", sheets=3, due=""),
        Bed(id="1", state="cutting", batch="00412", sheet=2, minutes=20.0,
            started=f"{DAY}T10:30:00", bits=((0, "11"),)),
        Bed(id="2", state="stopped", stop="31", stopped=f"{DAY}T10:00:00"),
    )  # fmt: skip
    asked = gather_plan(view, NOW)
    told = {b.id: (b.sheets, b.begun, b.held) for b in asked.queued}
    assert told == {
        "00412": (2, True, False), "00413": (2, False, True), "00414": (3, False, False),
    }  # fmt: skip
    first, second = asked.routers[:2]
    assert (first.free_in, first.stopped, first.bits_mm) == (8.0, False, (6.0,))
    assert (second.free_in, second.stopped) == (0, True)


def test_a_queue_tells_what_it_takes_from_the_store_whatever_came_of_its_file():
    """One file was retired; of another file a newer revision is approved."""
    first, *_ = (f for f in small_facts() if f.key == f"cutfile/{COMBS}")
    view = small_shop(
        replace(first, active=False), batch(sheets=4), batch(GAUGES, "00413", cut=1, sheets=3),
    )  # fmt: skip
    gauges = view.get(CutFile, GAUGES)
    view.facts[gauges.key] = replace(gauges, approved="D")
    told = {b.id: (b.material, b.to_take, b.held) for b in gather_plan(view, NOW).queued}
    assert told == {"00412": ("1", 4, False), "00413": ("1", 2, True)}


def test_the_store_is_counted_and_one_that_never_got_anything_is_not():
    view = small_shop(Lot(id="0950", material="1", received="2026-11-20"))
    sheets = {m.id: m.sheets for m in gather_plan(view, NOW).materials}
    assert sheets == {"1": 40, "2": 40}
    bare = small_shop()
    for key in ("lot/0931", "lot/0940"):
        del bare.facts[key]
    assert {m.sheets for m in gather_plan(bare, NOW).materials} == {None}
    assert part_of(gather_plan(bare, NOW), SPACER).coming == {}


def test_the_past_is_read_in_slices_to_the_same_end():
    view = small_shop()
    for day in ("2026-11-19", "2026-11-20", "2026-11-23"):
        done(view, f"{day}T09:00:00", move(COMB, 5, "packing/1", "pack/1", "00390"))
        done(view, f"{day}T10:00:00", move(COMB, 1, "popping/1", "missing", "00390"))
    reading, slices = PastReading(view, NOW), 1
    while not reading.read_on(view, lambda: True):
        slices += 1
    assert slices == 42 * 24 + 1
    assert reading.tell() == read_past(view, NOW)
    assert reading.tell().days == ("2026-11-19", "2026-11-20", "2026-11-23")


def test_what_a_night_packs_after_midnight_belongs_to_the_day_on_which_it_began():
    # two nights from ten to six: 5 and 3 pieces in the first, 2 in the second, the third goes on
    view = small_shop(Shop(id="shop", day_starts="22:00", day_ends="06:00"))
    for at, pieces in (("2026-11-23T23:10:00", 5), ("2026-11-24T05:50:00", 3),
                       ("2026-11-25T01:00:00", 2), ("2026-11-25T22:30:00", 4)):  # fmt: skip
        done(view, at, move(COMB, pieces, "packing/1", "pack/1", "00390"))
    past = read_past(view, "2026-11-26T01:00:00")
    assert past.days == ("2026-11-23", "2026-11-24")
    assert past.parts[COMB].packed == {"2026-11-23": 8, "2026-11-24": 2}
    reading = PastReading(view, "2026-11-26T01:00:00")
    assert reading.is_of(view, "2026-11-26T05:59:00")
    assert not reading.is_of(view, "2026-11-26T06:00:00")


def released(view, number, sheet_at, *, on_rack, since="2026-11-24T08:00:00"):
    """A batch that was released at a time, cut then, and on the rack at a time."""
    view.facts[f"batch/{number}"] = batch(id=number, state="cut", released=since)
    slip = Slip(id=f"{number}-1", batch=number, sheet=1, router="1", at=sheet_at, state="popped")
    view.facts[slip.key] = slip
    done(view, sheet_at, move(COMB, 24, "cut", "popping/1", number))
    act = Act(id=f"r{number}", kind="put_on_rack", at=on_rack, subject=f"batch/{number}")
    view.apply(act, Answer(tone="good", said="", moves=()))


def test_what_a_night_cuts_and_sends_after_midnight_is_of_the_day_on_which_it_began():
    # Friday's night goes on until Saturday at 6; Sunday's begins after the newest worked day
    mailer = Mailer(id="01", name="Flat", length_mm=350.0, width_mm=250.0, mark=20)
    view = small_shop(Shop(id="shop", day_starts="22:00", day_ends="06:00"), mailer)
    hours = ("2026-11-20T23:00:00", "2026-11-21T01:00:00", "2026-11-21T02:00:00",
             "2026-11-21T03:00:00", "2026-11-21T04:00:00", "2026-11-22T23:00:00")  # fmt: skip
    for n, at in enumerate(hours):
        released(view, f"0039{n}", at, on_rack=f"{at[:14]}30:00", since="2026-11-20T22:00:00")
        pack = Pack(id=f"0090{n}", order="3301", mailer="01", state="shipped", left=at)
        view.facts[pack.key] = pack
    asked = gather_plan(view, "2026-11-22T23:30:00")
    # 90, 210, 270, 330 and 390 of 480 minutes
    assert asked.lead_seen == LeadSeen(0.54, 0.24)
    assert [m.a_day for m in asked.mailers] == [5.0]


def test_the_lead_time_is_that_of_three_batches_of_four():
    # a day is worked from 7 to 16; 540 minutes. Four took an hour, four three, one until Thursday
    view = small_shop()
    for n, hour in enumerate((9, 9, 9, 9, 11, 11, 11, 11)):
        released(view, f"0039{n}", "2026-11-24T08:30:00", on_rack=f"2026-11-24T{hour:02d}:00:00")
    assert gather_plan(view, NOW).lead_days == 0.5  # the third quarter is three hours: too short
    for n in range(4):
        released(view, f"0040{n}", "2026-11-24T08:40:00", on_rack=f"{DAY}T08:00:00")
    assert gather_plan(view, NOW).lead_days == 1.0  # 8 to 16, and 7 to 8
    # in hours of nine a day: four of 1, four of 3, three of 9; of twelve the slowest is left out
    assert gather_plan(view, NOW).lead_seen == LeadSeen(0.5, 0.38)
    for n in range(8):  # and six of 18 more: two of twenty are left out
        released(view, f"0041{n}", "2026-11-24T08:50:00", on_rack="2026-11-26T08:00:00")
    assert gather_plan(view, NOW).lead_seen == LeadSeen(0.99, 0.8)


def test_one_batch_that_was_held_for_weeks_does_not_tell_how_the_others_vary():
    view = small_shop()
    for n in range(19):
        released(view, f"0039{n}", "2026-11-24T08:30:00", on_rack="2026-11-24T16:00:00")
    even = gather_plan(view, NOW).lead_seen
    released(view, "00420", "2026-11-24T08:30:00", on_rack="2026-12-22T16:00:00")
    assert gather_plan(view, NOW).lead_seen == even == LeadSeen(0.89, 0.0)


def test_a_few_batches_do_not_tell_a_lead_time():
    view = small_shop()
    for n in range(4):
        released(view, f"0039{n}", "2026-11-24T08:30:00", on_rack="2026-11-24T09:00:00")
    asked = gather_plan(view, NOW)
    assert (asked.lead_days, asked.lead_seen) == (2.0, None)


def test_bits_are_told_by_size_with_the_metres_that_are_left():
    worn = Bit(id="19", words="6.0 mm compression", diameter_mm=6.0, state="worn")
    cut = Move(WEAR, 500_000, Spot("wear", "1"), Spot("bit/11", "1"))
    view = small_shop(worn, moves=(cut,))
    # six in routers 1 to 5 (15 in the fifth) and one in the drawer; two of 3.0 mm
    told = {b.diameter_mm: (b.bits, b.left_m, b.life_m) for b in gather_plan(view, NOW).bits}
    assert told == {3.0: (2, 3000.0, 1500.0), 6.0: (6, 8500.0, 1500.0)}
    (file,) = [f for f in gather_plan(view, NOW).files if f.id == GAUGES]
    assert file.cut_m == ((6.0, 65.0),)


@pytest.mark.parametrize(
    ("service", "soon", "told"),
    [(95.0, 100.0, (0.95, 1.0)), (80.0, 40.0, (0.8, 0.4)), (100.0, 250.0, (0.995, 1.0))],
)
def test_the_service_level_and_short_notice_are_the_shops_own(service, soon, told):
    shop = Shop(id="shop", service_percent=service, short_notice_percent=soon)
    asked = gather_plan(small_shop(shop), NOW)
    assert (asked.service, asked.short_notice) == told


# --- what is bought, the calendar, what is wanted besides orders


def test_what_nobody_has_entered_stays_empty():
    asked = gather_plan(small_shop(), NOW)
    assert (asked.mailers, asked.breaks, asked.closed) == ((), (), ())
    assert {(m.price, m.lead_days, m.coming) for m in asked.materials} == {(0.0, 0, ())}
    assert {(b.size, b.mark, b.price, b.coming) for b in asked.bits} == {("", 0, 0.0, ())}


def test_prices_lead_days_and_what_is_on_its_way_are_told():
    ply = replace(first_materials()[0], price=31.5, lead_days=4, pack_sheets=25)
    six = BitSize(
        id="1", name="6 mm compression", diameter_mm=6.0, mark=5, lead_days=3, price=40.0
    )
    view = small_shop(
        ply, six, Purchase(id="1", material="1", quantity=50, expected="2026-12-01"),
        Purchase(id="2", bit_size="1", quantity=4, came=1),
    )  # fmt: skip
    asked = gather_plan(view, NOW)
    told = asked.materials[0]
    assert (told.price, told.lead_days, told.pack) == (31.5, 4, 25)
    assert told.coming == (Coming("2026-12-01", 50),)
    bits = next(b for b in asked.bits if b.diameter_mm == 6.0)
    assert (bits.size, bits.name, bits.mark, bits.lead_days) == ("1", "6 mm compression", 5, 3)
    assert bits.coming == (Coming("", 3),)


def test_mailers_that_are_counted_go_with_the_packs_of_the_newest_days():
    flat = Mailer(id="01", name="Flat", length_mm=350.0, width_mm=250.0, mark=20, lead_days=2)
    packs = [
        Pack(id=f"0090{n}", order="3301", mailer="01", state="shipped",
             left=f"2026-11-2{3 + n % 2}T14:00:00")
        for n in range(6)
    ]  # fmt: skip
    view = small_shop(flat, *packs, moves=(move(SUPPLY, 31, "found", "supplies", "supply-01"),))
    for day in ("2026-11-23", "2026-11-24"):
        done(view, f"{day}T09:00:00", move(COMB, 1, "packing/1", "pack/1", "00390"))
    (told,) = gather_plan(view, NOW).mailers
    assert (told.left, told.a_day, told.mark, told.lead_days) == (31, 3.0, 20, 2)


def test_breaks_and_closed_days_are_not_worked():
    shop = Shop(
        id="shop", breaks=(("09:00", "09:15"), ("12:00", "12:45")), closed=("2026-11-26T00:00:00",)
    )
    asked = gather_plan(small_shop(shop), NOW)
    hours = Hours(asked.day_starts, asked.day_ends, asked.weekdays, asked.breaks, asked.closed)
    assert hours.minutes == 480
    # 10:42 to 12:00 and 12:45 to 16:00 are 273 min; the 26th is closed: 7:00 on the 27th
    assert hours.add_minutes(NOW, 274) == "2026-11-27T07:01:00"
    assert hours.add_minutes(NOW, 78) == f"{DAY}T12:00:00"
    assert hours.add_minutes(NOW, 79) == f"{DAY}T12:46:00"
    assert hours.count_days(NOW, "2026-11-27T07:08:00") == pytest.approx((273 + 8) / 480)


def test_packs_ahead_below_their_mark_and_a_push_that_begins_soon_are_wanted_besides():
    kit = Product(id="021", name="LOOM-KIT", words="", parts=((COMB, 1), (SPACER, 2)), mark=6)
    lying = [Pack(id=f"0090{n}", order="", mailer="01", state="shelf", product="021")
             for n in range(2)]  # fmt: skip
    view = small_shop(kit, *lying)
    assert part_of(gather_plan(view, NOW)).besides == 4
    assert part_of(gather_plan(view, NOW), SPACER).besides == 8
    pushed = Push(id="1", product="021", quantity=200, begins="2026-12-01")
    assert part_of(gather_plan(small_shop(kit, *lying, pushed), NOW)).besides == 204
    later = replace(pushed, begins="2026-12-15")  # more than seven worked days ahead
    assert part_of(gather_plan(small_shop(kit, *lying, later), NOW)).besides == 4


def test_packs_that_were_made_ahead_of_a_push_are_not_wanted_again():
    """Ten lie there, two are to lie there always: eight are for the first of two pushes."""
    kit = Product(id="021", name="LOOM-KIT", words="", parts=((COMB, 1),), mark=2)
    lying = [Pack(id=f"009{n:02d}", order="", mailer="01", state="shelf", product="021")
             for n in range(10)]  # fmt: skip
    pushes = [Push(id=n, product="021", quantity=20, begins="2026-12-01") for n in ("1", "2")]
    assert part_of(gather_plan(small_shop(kit, *lying, pushes[0]), NOW)).besides == 12
    assert part_of(gather_plan(small_shop(kit, *lying, *pushes), NOW)).besides == 32
    few = replace(kit, mark=12)
    assert part_of(gather_plan(small_shop(few, *lying, pushes[0]), NOW)).besides == 22


def test_a_batch_for_one_order_alone_brings_the_others_nothing():
    """A sheet for an order of next week; one of today lacks as many."""
    week = order("3301", 24, "2026-12-02T15:00:00")
    view = small_shop(COMB_ONLY, week, order("3302", 24), batch(sheets=1, order="3301"))
    asked = gather_plan(view, NOW)
    assert part_of(asked).own == (Wish("3301", week.due, 24),)
    plan = run(asked, lambda _stage, _share: None)
    (blocked,) = plan.blocked
    assert (blocked.orders, blocked.release.due) == (("3302",), f"{DAY}T15:00:00")
    assert (blocked.wanted, blocked.under_way) == (48, 24)
    assert (plan.orders, plan.forward, plan.take_back) == (2, (), ())
    gone = replace(week, state="cancelled")
    view = small_shop(COMB_ONLY, gone, batch(sheets=1, order="3301"))
    assert [b.order for b in gather_plan(view, NOW).queued] == [""]


def test_the_room_of_a_rack_place_and_recounts_that_nobody_has_settled_are_told():
    place = RackPlace(id=COMB, name="C 14", part=COMB, room=400)
    text = "HC-300: 9 by the book, 4 counted in its rack place"
    looks = [Concern(id=f"c{n}", what="recount", text=text, since=NOW, about=f"part/{COMB}",
                     settled=settled) for n, settled in enumerate(("", "", "kept"))]  # fmt: skip
    asked = gather_plan(small_shop(place, *looks), NOW)
    assert (part_of(asked).room, part_of(asked).unsettled) == (400, 2)
    assert (part_of(asked, SPACER).room, part_of(asked, SPACER).unsettled) == (0, 0)
