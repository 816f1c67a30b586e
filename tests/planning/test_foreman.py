"""What a good foreman answers, case by case; written down from the trade before the program.

No source but the trade itself: each answer is worked out by hand in its comment.
"""

import pytest
from msgspec.structs import replace

from station.floor.plan.words import say_why_cut
from station.planning.messages import (
    BitsNow,
    Coming,
    CuttingPlan,
    LeadSeen,
    MailersNow,
    MaterialNow,
    Passage,
    Wish,
)
from station.planning.think import run
from tests.planning.small import (
    IN_FIVE_DAYS,
    TODAY,
    TOMORROW,
    YESTERDAY,
    file,
    part,
    queued,
    router,
    shop,
)

STEADY = (20,) * 30  # pieces a day


def think(asked) -> CuttingPlan:
    return run(asked, lambda _stage, _share: None)


def sheets_of(plan):
    """Sheets by cut file; what several parts wait for is one release."""
    releases = {b.release for b in plan.blocked if b.release}
    assert not releases & {*plan.then}
    return {release.name: release.sheets for release in (*releases, *plan.then)}


def test_two_files_make_the_part_and_the_quicker_one_a_piece_is_cut():
    # 40 wanted. "small" makes 10 in 20 min: 4 sheets. "large" makes 40 in 35 min: 1 sheet.
    asked = shop(part("a", [(40, TODAY)]),
                 files=(file("small", {"a": 10}), file("large", {"a": 40}, 35.0)))  # fmt: skip
    assert sheets_of(think(asked)) == {"large": 1}


def test_a_large_sheet_is_not_cut_for_a_few_pieces_where_a_small_one_does():
    # 8 wanted: "small" makes 10 in 20 min, "large" 40 in 35 min.
    asked = shop(part("a", [(8, TODAY)]),
                 files=(file("small", {"a": 10}), file("large", {"a": 40}, 35.0)))  # fmt: skip
    assert sheets_of(think(asked)) == {"small": 1}


def test_one_short_part_that_blocks_ten_orders_is_told_first():
    # a: 10 orders of 4, none there. b: one order lacks 6, due before all of them.
    asked = shop(part("b", [(6, TODAY)]), part("a", [(4, TOMORROW)] * 9 + [(4, YESTERDAY)]),
                 files=(file("A", {"a": 20}), file("B", {"b": 10})))  # fmt: skip
    first, second = think(asked).blocked
    assert (first.name, first.wanted, first.there, len(first.orders), first.late) == (
        "a", 40, 0, 10, 1,
    )  # fmt: skip
    assert (first.release.name, first.release.sheets) == ("A", 2)
    assert second.name == "b"


def test_a_file_of_three_parts_of_which_one_is_over_full_is_left_where_another_will_do():
    # 24 a wanted. "mixed" makes 24 a, 64 b, 30 c in 36 min, of b 900 lie there; "plain" makes 24 a
    # in 22 min: the pieces of b and c would only fill the rack.
    asked = shop(part("a", [(24, TODAY)]), part("b", free=900), part("c", free=50),
                 files=(file("mixed", {"a": 24, "b": 64, "c": 30}, 36.0),
                        file("plain", {"a": 24}, 22.0)))  # fmt: skip
    plan = think(asked)
    assert sheets_of(plan) == {"plain": 1}
    assert plan.beyond == 0


def test_a_file_of_several_parts_is_cut_where_all_of_them_are_wanted():
    # the same, but 60 b and 30 c are wanted too: one sheet instead of three
    asked = shop(part("a", [(24, TODAY)]), part("b", [(60, TODAY)]), part("c", [(30, TODAY)]),
                 files=(file("mixed", {"a": 24, "b": 64, "c": 30}, 36.0),
                        file("plain", {"a": 24}, 22.0), file("B", {"b": 64}, 20.0),
                        file("C", {"c": 30}, 20.0)))  # fmt: skip
    assert sheets_of(think(asked)) == {"mixed": 1}


def test_what_is_held_back_is_not_there():
    # 10 wanted, 30 lie there and are held: one sheet is cut; once they are free, none is
    held = shop(part("a", [(10, TODAY)], kept_back=30), files=(file("A", {"a": 20}),))
    free = shop(part("a", [(10, TODAY)], free=30), files=(file("A", {"a": 20}),))
    assert (sheets_of(think(held)), think(held).blocked[0].kept_back) == ({"A": 1}, 30)
    assert think(free).blocked == ()


def test_a_loss_of_five_in_a_hundred_takes_a_sheet_more_where_the_mean_is_not_enough():
    # 24 a sheet, 46 wanted: two sheets are 48, and 45.6 good ones are expected. Three are enough.
    loss = {"cut": Passage(good=95_000, lost=5_000)}
    asked = shop(part("a", [(46, TODAY)], passed=loss), files=(file("A", {"a": 24}),))
    release = think(asked).blocked[0].release
    assert (release.sheets, release.loss) == (3, pytest.approx(0.05, abs=1e-3))
    assert release.certainty > 0.95
    sure = shop(part("a", [(46, TODAY)]), files=(file("A", {"a": 24}),))
    assert think(sure).blocked[0].release.sheets == 2


def test_without_history_it_is_cut_as_wanted_and_said_that_nobody_can_tell():
    asked = shop(part("a", [(46, TODAY)], passed={}), files=(file("A", {"a": 24}),))
    release = think(asked).blocked[0].release
    assert (release.sheets, release.loss, release.certainty) == (2, None, None)
    assert (release.use, release.days_after) == (None, None)


def test_what_is_due_today_goes_before_what_is_due_in_five_days():
    # one router, both lack parts: the one due today is cut first, whatever they are called
    asked = shop(part("a", [(10, IN_FIVE_DAYS)]), part("b", [(10, TODAY)]),
                 files=(file("A", {"a": 10}, routers="1"), file("B", {"b": 10}, routers="1")),
                 routers=(router("1"),))  # fmt: skip
    a, b = sorted((x.release for x in think(asked).blocked), key=lambda r: r.name)
    assert b.starts < b.ends <= a.starts < a.ends
    assert (b.starts, b.ends, a.ends) == (
        "2026-11-25T10:00:00", "2026-11-25T10:25:00", "2026-11-25T10:50:00",
    )  # fmt: skip


def test_it_goes_before_what_is_queued_and_due_later_but_not_before_what_is_begun():
    # router 1 cuts for 30 min yet; one more sheet of what is begun, then ours, then the later one
    queue = (queued("1", "B", {"b": 10}, sheets=1, begun=True, due=TODAY),
             queued("2", "B", {"b": 10}, sheets=4, due=IN_FIVE_DAYS))  # fmt: skip
    asked = shop(part("a", [(10, TOMORROW)]), part("b"), queue=queue,
                 files=(file("A", {"a": 10}, routers="1"), file("B", {"b": 10})),
                 routers=(router("1", free_in=30.0),))  # fmt: skip
    assert think(asked).blocked[0].release.starts == "2026-11-25T10:55:00"  # 30 + 20 + 5


def test_what_is_due_in_five_days_does_not_hold_up_what_is_due_tomorrow():
    # one router, 25 min a sheet. a: 10 today, 400 in five days, 10 a sheet; b: 10 tomorrow. Two
    # hours of a stay one batch, 5 sheets; then b; then the other 36 of a, four hours at once.
    asked = shop(part("a", [(10, TODAY), (400, IN_FIVE_DAYS)]), part("b", [(10, TOMORROW)]),
                 files=(file("A", {"a": 10}, routers="1"), file("B", {"b": 10}, routers="1")),
                 routers=(router("1"),),
                 materials=(MaterialNow(id="ply", name="plywood"),))  # fmt: skip
    plan = think(asked)
    first, b = (blocked.release for blocked in plan.blocked)
    last = plan.then[-1]
    assert [(r.name, r.sheets, r.due) for r in (first, b)] == [("A", 5, TODAY), ("B", 1, TOMORROW)]
    assert [(r.name, r.sheets, r.more, r.due) for r in plan.then] == [
        ("A", 9, 27, IN_FIVE_DAYS), ("A", 9, 18, IN_FIVE_DAYS), ("A", 9, 9, IN_FIVE_DAYS),
        ("A", 9, 0, IN_FIVE_DAYS),
    ]  # fmt: skip
    assert first.ends <= b.starts < b.ends <= plan.then[0].starts
    # the first batch is enough for the first of the two orders, with the last one for both
    assert [(r.need, r.serves, r.orders, r.beyond) for r in (first, last)] == [
        (10, 1, 2, 0), (410, 2, 2, 0),
    ]  # fmt: skip


def test_what_is_left_of_an_orders_sheets_goes_to_the_next_order():
    # 10 a sheet, more than two hours each: two sheets for today's 15, and the 5 that are left of
    # them for tomorrow's 3 and the 2 of the day after; ten more for the 100 in five days
    wants = [(15, TODAY), (3, TOMORROW), (2, "2026-11-27T09:00:00"), (100, IN_FIVE_DAYS)]
    asked = shop(part("a", wants), files=(file("A", {"a": 10}, 130.0),))
    plan = think(asked)
    assert plan.blocked[0].release.sheets == 2
    assert [(r.sheets, r.due) for r in plan.then] == [(2, IN_FIVE_DAYS)] * 5


def test_other_routers_take_the_rest_of_what_would_take_long():
    # 16 sheets of 25 min and 5 at the bed are eight hours of a router, or four of two
    asked = shop(part("a", [(160, TODAY)]), files=(file("A", {"a": 10}, routers="12"),))
    plan = think(asked)
    releases = (plan.blocked[0].release, *plan.then)
    assert {(r.router, r.sheets, r.more) for r in releases} == {("1", 8, 8), ("2", 8, 0)}


def test_a_few_sheets_for_several_orders_stay_one_batch():
    wants = [(10, TODAY), (10, TOMORROW), (10, IN_FIVE_DAYS)]
    asked = shop(part("a", wants), files=(file("A", {"a": 10}),))
    plan = think(asked)
    assert (plan.blocked[0].release.sheets, plan.then) == (3, ())


def test_a_queued_batch_that_nobody_needs_can_be_taken_back():
    # 200 lie there, 20 a day are used, 10 are wanted: the batch of 40 can wait, with 9.5 days
    asked = shop(part("a", [(10, TODAY)], free=200, use=STEADY), files=(file("A", {"a": 20}),),
                 queue=(queued("00646", "A", {"a": 20}),))  # fmt: skip
    (back,) = think(asked).take_back
    assert (back.batch, back.part, back.there, back.wanted) == ("00646", "a", 200, 10)
    assert back.days == 9.5


@pytest.mark.parametrize(
    ("stock", "fields"),
    [
        (110, {}),  # five days and a half: the lead time and four days to spare are six
        (200, {"begun": True}),
        (200, {"order": "3301"}),
        (200, {"held": True}),
    ],
)
def test_a_batch_that_is_needed_begun_held_or_for_an_order_stays(stock, fields):
    asked = shop(part("a", free=stock, use=STEADY), files=(file("A", {"a": 20}),),
                 queue=(queued("00646", "A", {"a": 20}, **fields),))  # fmt: skip
    assert think(asked).take_back == ()


def test_of_two_queued_batches_the_later_waits_where_one_is_needed():
    # 105 lie there, 20 a day: without both 5.2 days; with one of them (40) 7.2 days
    queue = (queued("1", "A", {"a": 20}, due=TODAY), queued("2", "A", {"a": 20}))
    asked = shop(part("a", free=105, use=STEADY), files=(file("A", {"a": 20}),), queue=queue)
    assert [back.batch for back in think(asked).take_back] == ["2"]


def test_a_part_whose_use_cannot_be_told_is_not_taken_back():
    asked = shop(part("a", free=200), files=(file("A", {"a": 20}),),
                 queue=(queued("00646", "A", {"a": 20}),))  # fmt: skip
    assert think(asked).take_back == ()


def test_not_enough_sheets_in_the_store_are_said_and_the_rest_is_cut():
    # 100 wanted at 20 a sheet: five sheets; three lie there, one of them is for a queued batch
    asked = shop(part("a", [(100, TODAY)]), part("b", [(1, TODAY)]),
                 files=(file("A", {"a": 20}), file("B", {"b": 5})),
                 queue=(queued("1", "B", {"b": 5}, sheets=1),),
                 materials=(MaterialNow(id="ply", name="plywood", sheets=3),))  # fmt: skip
    blocked = think(asked).blocked[0]
    assert (blocked.release.sheets, blocked.why_not) == (2, "no sheets")


def test_a_store_that_nobody_counts_does_not_stop_anything():
    asked = shop(part("a", [(100, TODAY)]), files=(file("A", {"a": 20}),),
                 materials=(MaterialNow(id="ply", name="plywood"),))  # fmt: skip
    assert think(asked).blocked[0].release.sheets == 5


def test_a_router_that_stands_still_is_passed_over():
    asked = shop(part("a", [(10, TODAY)]), files=(file("A", {"a": 10}, routers="12"),),
                 routers=(router("1", stopped=True), router("2", free_in=90.0)))  # fmt: skip
    assert think(asked).blocked[0].release.router == "2"
    alone = replace(asked, routers=(router("1", stopped=True),))
    blocked = think(alone).blocked[0]
    assert (blocked.release.router, blocked.why_not) == ("", "no router")


def test_where_no_router_in_use_runs_a_file_the_store_is_not_blamed():
    asked = shop(part("a", [(10, TODAY)]), files=(file("A", {"a": 10}, routers=""),), routers=())
    blocked = think(asked).blocked[0]
    assert (blocked.release, blocked.why_not) == (None, "none runs it")


def test_what_is_cut_because_of_loss_alone_names_the_orders_that_may_lack_it():
    """Thirty wanted by two orders and thirty queued: all is under way, a tenth is lost."""
    loss = {"cut": Passage(good=900, lost=100)}
    asked = shop(part("a", [(20, TODAY), (10, TOMORROW)], passed=loss),
                 files=(file("A", {"a": 10}),),
                 queue=(queued("1", "A", {"a": 10}, sheets=3),))  # fmt: skip
    plan = think(asked)
    (release,) = plan.then
    assert (plan.blocked, release.due, release.orders) == ((), TOMORROW, 1)
    assert str(say_why_cut(release)) == "1 order waits for a"


def test_the_bit_counts_as_ten_minutes_where_it_is_not_in():
    # both are free; in router 1 is a 3 mm bit
    asked = shop(part("a", [(10, TODAY)]), files=(file("A", {"a": 10}, routers="12"),),
                 routers=(router("1", bits_mm=(3.0,)), router("2", free_in=5.0)))  # fmt: skip
    assert think(asked).blocked[0].release.router == "2"
    later = replace(asked, routers=(router("1", bits_mm=(3.0,)), router("2", free_in=15.0)))
    release = think(later).blocked[0].release
    assert (release.router, release.bit_missing) == ("1", True)


def test_a_part_that_no_approved_file_makes_is_named():
    asked = shop(part("z", [(3, TODAY)]), files=(file("A", {"a": 10}),))
    plan = think(asked)
    assert (plan.uncovered, plan.blocked[0].why_not) == (("z",), "no file")


def test_the_rack_is_filled_to_its_mark_only_after_the_orders():
    # 30 there, mark 60, 10 wanted: 20 will lie there, 40 are missing, two sheets of 20
    asked = shop(part("a", [(10, TODAY)], free=30, mark=60), files=(file("A", {"a": 20}),))
    plan = think(asked)
    assert plan.blocked == ()
    (release,) = plan.then
    assert (release.sheets, release.because, release.need, release.due) == (2, "mark", 40, "")


def test_a_mark_below_a_days_use_is_too_low():
    # 20 a day, two days until it is there and one until the next look: 60, and no less
    asked = shop(part("a", free=500, mark=12, use=STEADY), files=(file("A", {"a": 20}),))
    (advice,) = think(asked).marks
    assert (advice.mark, advice.use, advice.days) == (12, 20.0, 3.0)
    assert 60 <= advice.should <= 75
    # of 60 used 12 are there; Poisson of 60 at 60 and more: a twentieth lacks at most
    assert advice.lacks == pytest.approx(0.8, abs=1e-3)
    assert 0 < advice.lacks_then < 0.02


def test_a_way_to_the_rack_that_varies_takes_a_higher_mark():
    asked = shop(part("a", free=500, mark=12, use=STEADY), files=(file("A", {"a": 20}),))
    even = replace(asked, lead_seen=LeadSeen(2.0, 0.0))
    varies = replace(asked, lead_seen=LeadSeen(2.0, 1.0))
    (same,), (more,), (usual,) = (think(a).marks for a in (even, varies, asked))
    assert (same.should, same.days, same.varies) == (usual.should, 3.0, 0.0)
    # as 60 pieces with a deviation of a day's 20: about 1.6 deviations above them
    assert 90 <= more.should <= 105
    assert (more.days, more.varies) == (3.0, 1.0)


def test_work_that_does_not_fit_today_goes_on_tomorrow_morning():
    # 16 sheets of 25 min are 400 min; 360 are left today
    asked = shop(part("a", [(160, TODAY)]), files=(file("A", {"a": 10}, routers="1"),))
    plan = think(asked)
    assert [r.ends for r in (plan.blocked[0].release, *plan.then)] == [
        "2026-11-25T13:20:00", "2026-11-26T07:40:00",
    ]  # fmt: skip


def test_sheets_are_ordered_before_the_store_is_empty():
    # 20 a day at 20 a sheet: a sheet a day. 8 lie there, an order takes 6 days: by the day after
    # tomorrow; it is to last 20 days more: 26 less 8, in packs of 10
    store = MaterialNow(id="ply", name="plywood", sheets=8, lead_days=6, pack=10)
    asked = shop(part("a", free=500, use=STEADY), files=(file("A", {"a": 20}),),
                 materials=(store,))  # fmt: skip
    (order,) = think(asked).order
    assert (order.quantity, order.by, order.lasts, order.a_day) == (20, "2026-11-27", 8.0, 1.0)
    enough = replace(asked, materials=(replace(store, sheets=11),))
    assert think(enough).order == ()
    unknown = replace(asked, materials=(replace(store, lead_days=0, pack=0),))
    (order,) = think(unknown).order
    assert (order.lead_days, order.lead_known, order.quantity, order.by) == (
        5,
        False,
        17,
        "2026-11-30",
    )


def test_bits_are_ordered_before_the_last_is_worn():
    # a sheet a day of 100 m: 700 m last 7 days, an order takes the usual 5: by the day after
    # tomorrow; it is to last 20 days more: 2,500 m less 700, of 1,000 m each
    cuts = replace(file("A", {"a": 20}), cut_m=((6.0, 100.0), (3.0, 0.0)))
    six = BitsNow(diameter_mm=6.0, bits=2, left_m=700.0, life_m=1000.0)
    three = BitsNow(diameter_mm=3.0, bits=0, left_m=0.0, life_m=1000.0)
    asked = shop(part("a", free=500, use=STEADY), files=(cuts,), bits=(three, six))
    (order,) = [o for o in think(asked).order if o.of == "bit_size"]
    assert (order.diameter_mm, order.quantity, order.by, order.lasts, order.a_day) == (
        6.0, 2, "2026-11-27", 7.0, 0.1
    )  # fmt: skip
    assert think(replace(asked, bits=(replace(six, left_m=1000.0),))).order == ()
    assert think(shop(part("a"), files=(cuts,), bits=(six,))).order == ()


def test_what_is_on_its_way_counts_as_there():
    store = MaterialNow(id="ply", name="plywood", sheets=8, lead_days=6, pack=10)
    asked = shop(part("a", free=500, use=STEADY), files=(file("A", {"a": 20}),),
                 materials=(replace(store, coming=(Coming("2026-11-27", 2),)),))  # fmt: skip
    (order,) = think(asked).order  # ten last ten days: within lead and the five days before
    assert (order.quantity, order.lasts, order.coming, order.by) == (20, 10.0, 2, "2026-12-01")
    more = replace(store, coming=(Coming("2026-11-27", 2), Coming("", 1)))
    assert think(replace(asked, materials=(more,))).order == ()


def test_bits_and_mailers_below_their_marks_are_ordered_today():
    # three good bits of five wanted, one on its way: one more; how long they last can't be told
    six = BitsNow(diameter_mm=6.0, bits=3, left_m=3000.0, life_m=1000.0, size="1", name="6 mm",
                  mark=5, coming=(Coming("", 1),))  # fmt: skip
    # two packs a day: 9 mailers last 4.5 days; 25 days of two are 50 less 9, by the box of 25
    flat = MailersNow(id="01", name="Flat", left=9, a_day=2.0, pack=25, price=0.5)
    asked = shop(part("a"), files=(), bits=(six,), mailers=(flat,))
    mailers, bits = think(asked).order
    assert (bits.of, bits.quantity, bits.lasts, bits.by) == ("bit_size", 1, None, "2026-11-25")
    assert (mailers.id, mailers.quantity, mailers.by, mailers.price) == (
        "01", 50, "2026-11-25", 0.5,
    )  # fmt: skip
    high = replace(flat, left=100, mark=120)
    (order,) = think(replace(asked, bits=(), mailers=(high,))).order
    assert (order.quantity, order.by) == (25, "2026-11-25")


def test_days_off_and_breaks_move_the_day_by_which_is_ordered():
    store = MaterialNow(id="ply", name="plywood", sheets=8, lead_days=6, pack=10)
    asked = shop(part("a", free=500, use=STEADY), files=(file("A", {"a": 20}),),
                 materials=(store,))  # fmt: skip
    closed = replace(asked, closed=("2026-11-26",))
    assert think(closed).order[0].by == "2026-11-30"  # the 26th is off, the 28th a Saturday


def test_packs_ahead_and_own_pushes_are_cut_for_besides_the_mark():
    # 300 there, a mark of 50, steady use of 20: enough. 400 more are expected; of them no more is
    # begun at once than what a day and a half of use takes
    calm = shop(replace(part("a", free=300, use=STEADY), mark=50), files=(file("A", {"a": 20}),))
    assert think(calm).then == ()
    pushed = replace(calm, parts=(replace(calm.parts[0], besides=400),))
    (release,) = think(pushed).then
    assert (release.because, release.besides) == ("ahead", 400)
    assert release.sheets == 2


def test_what_is_lost_of_sheets_for_one_order_alone_is_cut_for_the_rack_before_it_lacks():
    # 25 there, a mark of 20; of 100 on an order's own sheets 10 will lack, that come off the rack
    loses = {"passed": {"cut": Passage(good=900_000_000, lost=100_000_000)}}
    own = (Wish("o1", TODAY, 100),)
    asked = shop(part("a", free=25, mark=20, own=own, **loses), files=(file("A", {"a": 20}),))
    (release,) = think(asked).then
    assert (release.because, release.sheets, release.need) == ("mark", 1, 5)
    calm = shop(part("a", free=30, mark=20, own=own, **loses), files=(file("A", {"a": 20}),))
    assert think(calm).then == ()


def test_nothing_is_ordered_where_use_or_store_cannot_be_told():
    empty = MaterialNow(id="ply", name="plywood", sheets=0)
    files = (file("A", {"a": 20}),)
    assert think(shop(part("a"), files=files, materials=(empty,))).order == ()
    uncounted = (MaterialNow(id="ply", name="plywood"),)
    assert think(shop(part("a", use=STEADY), files=files, materials=uncounted)).order == ()


def test_what_lies_there_goes_to_the_first_due_and_the_rest_is_blocked():
    # 10 lie there: 6 for yesterday's order; today's wants 6 and cannot have them, tomorrow's 4 can
    wants = [(6, YESTERDAY), (6, TODAY), (4, TOMORROW)]
    asked = shop(part("a", wants, free=10), files=(file("A", {"a": 20}),))
    (blocked,) = think(asked).blocked
    assert (blocked.orders, blocked.late, blocked.release.due) == (("a2",), 0, TODAY)


def test_the_rack_is_filled_to_what_its_use_asks_for_where_the_mark_is_too_low():
    # mark 12, 20 a day: 60 to 75 should lie there, 40 do
    asked = shop(part("a", free=40, mark=12, use=STEADY), files=(file("A", {"a": 10}),))
    (release,) = think(asked).then
    assert (release.because, release.mark) == ("use", 12)
    assert 2 <= release.sheets <= 4
    assert release.days_before == 2.0


def test_a_queued_batch_that_an_order_wants_sooner_is_named():
    # 10 lie there, for the first order; the batch for the rack is due in five days, and tomorrow's
    # order needs it. Once it is due by tomorrow's order, it is not named any more.
    wants = [(10, TODAY), (5, TOMORROW)]
    queue = (queued("7", "A", {"a": 20}, due=IN_FIVE_DAYS), queued("8", "A", {"a": 20}, due=""))
    asked = shop(part("a", wants, free=10), files=(file("A", {"a": 20}),), queue=queue)
    (forward,) = think(asked).forward
    assert (forward.batch, forward.order, forward.was, forward.by) == (
        "7", "a2", IN_FIVE_DAYS, TOMORROW,
    )  # fmt: skip
    in_time = replace(asked, queued=(replace(queue[0], due=TOMORROW), queue[1]))
    assert think(in_time).forward == ()
    begun = replace(asked, queued=(replace(queue[0], begun=True), queue[1]))
    assert think(begun).forward == ()


def test_for_the_rack_nothing_more_is_cut_where_days_of_work_are_under_way():
    # 20 a day of each: 40 a day, so 50 may be under way. 40 are: ten more, a sheet of 20.
    a = part("a", mark=200, use=STEADY, coming={"popping": 40})
    asked = shop(a, part("b", free=500, use=STEADY), files=(file("A", {"a": 20}),))
    (release,) = think(asked).then
    assert (release.sheets, release.in_store, release.store_left) == (1, 40, 39)
    more = replace(asked, parts=(replace(a, coming={"popping": 50}), asked.parts[1]))
    assert think(more).then == ()
    waited_for = replace(a, coming={"popping": 60}, wishes=(Wish("o", TODAY, 80),))
    assert think(replace(asked, parts=(waited_for, asked.parts[1]))).blocked[0].release.sheets == 1


def test_full_sheets_are_cut_where_what_is_left_is_used_in_a_day():
    # 3 a and 3 b wanted. "both" makes just that, "A" and "B" 20 of one part, all in 20 min. Where
    # 20 a day of each are used, two full sheets waste nothing; where one a day is, 34 would lie.
    parts = tuple(part(name, [(3, TODAY)], use=STEADY) for name in "ab")
    files = (file("A", {"a": 20}), file("B", {"b": 20}), file("both", {"a": 3, "b": 3}))
    asked = shop(*parts, files=files)
    assert {b.release.name for b in think(asked).blocked} == {"A", "B"}
    rare = tuple(replace(p, use=(1,) * 30) for p in parts)
    assert {b.release.name for b in think(replace(asked, parts=rare)).blocked} == {"both"}


def test_what_is_cut_for_the_rack_is_queued_behind_the_orders_of_these_days():
    # 20 a day, 20 lie there: a day; two days until it is there and one until the next look
    asked = shop(part("a", free=20, use=STEADY), files=(file("A", {"a": 10}),))
    (release,) = think(asked).then
    assert (release.due, release.by) == ("", "2026-12-01T10:00:00")  # four worked days on
    (waited,) = think(shop(part("a", [(5, TODAY)]), files=(file("A", {"a": 10}),))).blocked
    assert waited.release.by == waited.release.due == TODAY


def test_orders_that_leave_time_to_cut_take_no_stock():
    asked = shop(part("a", free=500, mark=1, use=STEADY), files=(file("A", {"a": 20}),))
    all_ = think(asked).marks[0].should
    half = think(replace(asked, short_notice=0.5)).marks[0].should
    assert half < 0.65 * all_


def test_a_mark_far_above_what_its_use_asks_for_is_named_after_those_too_low():
    parts = (part("a", free=500, mark=300, use=STEADY), part("b", free=500, mark=5, use=STEADY))
    marks = think(shop(*parts, files=(file("A", {"a": 20, "b": 20}),))).marks
    assert [m.part for m in marks] == ["b", "a"]
    assert 60 <= marks[1].should <= 75


def test_no_more_is_cut_for_the_rack_than_its_place_holds():
    # 20 a day, none there, a mark of 150: eight sheets of 20, but the place holds 90: four
    low = replace(part("a", use=STEADY), mark=150)
    asked = shop(low, replace(part("b", use=(400,) * 20), free=9000),
                 files=(file("A", {"a": 20}),))  # fmt: skip
    assert think(asked).then[0].sheets == 8
    small = replace(low, room=90)
    assert think(replace(asked, parts=(small, asked.parts[1]))).then[0].sheets == 4
    full = replace(small, kept_back=75)
    assert think(replace(asked, parts=(full, asked.parts[1]))).then == ()
    wanted = replace(full, wishes=part("a", [(100, TODAY)]).wishes)
    assert think(replace(asked, parts=(wanted, asked.parts[1]))).blocked[0].release.sheets == 5


def test_why_this_router_and_behind_what():
    # router 1 has a batch due before it, of two sheets of 25 min; router 2 one that is due later
    first = queued("00500", "A", {"a": 10}, router="1", due=YESTERDAY)
    later = queued("00501", "A", {"a": 10}, router="2", sheets=9, due="2026-12-01T15:00:00")
    asked = shop(part("a", [(400, TODAY)]), files=(file("A", {"a": 10}, routers="12"),),
                 queued=(first, later))  # fmt: skip
    release = think(asked).blocked[0].release
    assert (release.router, release.behind, release.next_router) == ("2", 0, "Router 1")
    assert release.next_ends > release.ends
    alone = shop(part("a", [(400, TODAY)]), files=(file("A", {"a": 10}, routers="1"),),
                 queued=(first,))  # fmt: skip
    release = think(alone).blocked[0].release
    assert (release.router, release.behind, release.next_router) == ("1", 1, "")


def test_what_is_put_off_is_told_with_what_is_under_way():
    # 20 a day: no more than 25 pieces under way. 20 are queued; nine sheets of 20 are wanted for
    # the rack: one is begun, since part of it fits, and eight wait
    low = replace(part("a", use=STEADY), mark=200)
    waits = queued("00500", "A", {"a": 20}, sheets=1)
    plan = think(shop(low, files=(file("A", {"a": 20}),), queue=(waits,)))
    assert (plan.then[0].sheets, plan.put_off, plan.under_way) == (1, 8, 20)


def test_a_mark_of_what_is_better_cut_when_it_is_wanted_should_be_nought():
    # used once in twenty days, and then 60: nobody holds that for nine uses of ten of both parts
    rare = part("b", free=500, mark=40, use=(0,) * 9 + (60,) + (0,) * 9 + (60,))
    asked = shop(
        part("a", free=500, mark=65, use=STEADY), rare, files=(file("A", {"a": 9, "b": 9}),)
    )
    (advice,) = think(replace(asked, service=0.9)).marks
    assert (advice.part, advice.mark, advice.should) == ("b", 40, 0)
    assert advice.lacks < advice.lacks_then
    none = replace(asked, parts=(asked.parts[0], replace(rare, mark=0)), service=0.9)
    assert think(none).marks == ()


def test_a_file_that_spares_minutes_and_spends_sheets_is_not_cut():
    # 9 sheets for each part alone, of 45 min, or 20 of both together, of 15 min
    alone = file("A", {"a": 20}, 45.0), file("B", {"b": 20}, 45.0)
    both = part("a", [(180, TODAY)], use=STEADY), part("b", [(180, TODAY)], use=STEADY)
    asked = shop(*both, files=(*alone, file("AB", {"a": 9, "b": 9}, 15.0)))
    plan = think(asked)
    assert {r.file for r in (*(b.release for b in plan.blocked), *plan.then)} == {"A", "B"}
