"""Who is late, and whose turn it is: small cases worked out by hand.

No source but arithmetic. It is Wednesday at ten; six hours are left of today, and a day has nine.
"""

from station.floor.plan.words import say_router
from station.planning.flow import Job, OnRouter, ShopFlow, find_pace
from station.planning.hours import Hours
from station.planning.learnt import learn_parts
from station.planning.messages import CuttingPlan
from station.planning.think import run
from station.planning.turns import find_turns, set_places
from tests.planning.small import TODAY, TOMORROW, YESTERDAY, file, part, queued, router, shop

HOURS = Hours("07:00", "16:00", (0, 1, 2, 3, 4))


def follow(asked, *jobs):
    """How the queue of router 1 goes."""
    return ShopFlow(asked, learn_parts(asked), HOURS).follow({"1": jobs})


def job(name, makes, sheets=1, minutes=60.0, **fields):
    return Job(name, "1", sheets, minutes, makes, **{"by": TODAY, **fields})


def think(asked) -> CuttingPlan:
    return run(asked, lambda _stage, _share: None)


def test_an_order_is_packed_when_the_last_of_its_pieces_is_cut():
    # 4 lie there, 10 are wanted: the sixth of three sheets of 2, an hour each
    asked = shop(part("a", [(10, TODAY)], free=4), files=())
    assert follow(asked, job("1", {"a": 2}, sheets=5)).packed == [180.0]
    assert follow(asked, job("0", {"b": 1}), job("1", {"a": 2}, sheets=5)).packed == [240.0]


def test_pieces_go_to_the_order_that_is_due_first():
    # four lie there; the first wants six, so the second waits for its two as well
    asked = shop(part("a", [(6, TODAY), (2, TOMORROW)], free=4), files=())
    assert follow(asked, job("1", {"a": 2}, sheets=5)).packed == [60.0, 120.0]


def test_popping_and_trimming_take_one_sheet_after_another_and_what_waited_first():
    # 540 pieces a day are one a minute; 30 wait for popping. A sheet of 60 is cut after 10
    # minutes, popped at 90, trimmed at 150; the next is popped at 150, trimmed at 210
    through = {"popping": (540,) * 10, "trimming": (540,) * 10}
    b = part("b", coming={"popping": 30})
    asked = shop(part("a", [(60, TODAY), (1, TODAY)]), b, files=(), through=through)
    course = follow(asked, job("1", {"a": 60}, sheets=2, minutes=10.0))
    assert course.packed == [150.0, 210.0]


def test_what_is_past_the_routers_comes_evenly():
    # 100 of a wait for trimming, one a minute: the order that wants 50 has them after 50 minutes
    asked = shop(part("a", [(50, TODAY)], coming={"trimming": 100}), files=(),
                 through={"trimming": (540,) * 10})  # fmt: skip
    assert follow(asked).packed == [50.0]


def test_packing_packs_the_order_due_first_of_those_that_are_complete():
    # 540 a day: 300 take 300 minutes, for an order that was due when an hour was left of yesterday
    # and three of today; the order of 70 then ends 10 minutes late
    wants = [(300, YESTERDAY), (70, "2026-11-25T16:00:00")]
    asked = shop(part("a", wants, free=370, use=(540,) * 10), files=())
    course = follow(asked)
    assert course.packed == [300.0, 370.0]
    assert (course.late, round(course.minutes)) == (2, 10 + 60 + 180 + 300)


def test_a_pace_is_that_of_a_busy_day_and_takes_ten_days_to_tell():
    assert find_pace((100,) * 9) == 0
    assert find_pace((100,) * 9 + (900,)) == 100
    assert find_pace((0, 100) * 10) == 100


def test_a_large_late_order_waits_where_two_small_ones_can_still_be_in_time():
    # ten hours for the late one; an hour each for the others, due today at three
    asked = shop(part("a", [(10, YESTERDAY)]), part("b", [(1, TODAY)]), part("c", [(1, TODAY)]),
                 files=())  # fmt: skip
    flow = ShopFlow(asked, learn_parts(asked), HOURS)
    by_due = {"1": [job("1", {"a": 1}, 10, by=YESTERDAY), job("2", {"b": 1}), job("3", {"c": 1})]}
    assert flow.follow(by_due).late == 3
    found = find_turns(flow, by_due, HOURS.minutes)
    assert flow.follow(found).late == 1
    assert found["1"][-1].name == "1"


def test_an_order_that_is_long_overdue_waits_for_no_other():
    asked = shop(part("a", [(10, "2026-11-17T15:00:00")]), part("b", [(1, TODAY)]), files=())
    flow = ShopFlow(asked, learn_parts(asked), HOURS)
    by_due = {"1": [job("1", {"a": 1}, 10), job("2", {"b": 1})]}
    assert find_turns(flow, by_due, HOURS.minutes) == by_due


def test_many_that_are_long_overdue_take_half_of_the_day_and_leave_the_rest():
    # an hour each for ten, and for one that is due in eight hours: behind five it is in time
    overdue = [part(f"p{n}", [(1, "2026-11-17T15:00:00")]) for n in range(10)]
    asked = shop(*overdue, part("b", [(1, TOMORROW)]), files=())
    flow = ShopFlow(asked, learn_parts(asked), HOURS)
    by_due = {"1": [*(job(f"{n}", {f"p{n}": 1}, by=YESTERDAY) for n in range(10)),
                    job("b", {"b": 1}, by=TOMORROW)]}  # fmt: skip
    assert flow.follow(by_due).late == 11
    found = find_turns(flow, by_due, HOURS.minutes)
    assert flow.follow(found).late == 10
    assert {j.name for j in found["1"][:5]} == {"0", "1", "2", "3", "4"}


def test_what_is_packed_just_in_time_counts_as_half_late_where_its_turn_can_be_better():
    # an hour each; the small order is due in two hours, the other in three: either is in time, but
    # a minute lost makes one late that stands just at its due time
    soon, later = "2026-11-25T12:00:00", "2026-11-25T13:30:00"
    asked = shop(part("a", [(1, soon)]), part("b", [(1, later)]), files=())
    flow = ShopFlow(asked, learn_parts(asked), HOURS)
    queues = {"1": [job("b", {"b": 1}), job("a", {"a": 1})]}
    course = flow.follow(queues)
    assert (course.late, course.expected) == (0, 0.5)
    assert [j.name for j in find_turns(flow, queues, HOURS.minutes)["1"]] == ["a", "b"]


def test_what_is_planned_goes_to_the_router_where_it_ends_first_in_its_turn():
    # an hour for each of three, due in five hours; two more that are begun take three hours
    asked = shop(*(part(p, [(1, TODAY)]) for p in "abc"), files=(),
                 routers=(router("1"), router("2")))  # fmt: skip
    flow = ShopFlow(asked, learn_parts(asked), HOURS)
    both = (OnRouter("1", 60.0), OnRouter("2", 90.0))
    planned = [job(p, {p: 1}, planned=True, others=both) for p in "abc"]
    queues = {"1": [job("0", {}, sheets=3, begun=True), *planned], "2": []}
    assert flow.follow(queues).late == 1
    found = find_turns(flow, queues, HOURS.minutes)
    assert [len(found[r]) for r in "12"] == [2, 2]
    assert [(j.router, j.minutes) for j in found["2"]] == [("2", 90.0)] * 2
    assert flow.follow(found).late == 0


def test_where_nothing_is_late_all_keep_their_turns():
    asked = shop(part("a", [(1, TODAY)]), part("b", [(1, TODAY)]), files=())
    flow = ShopFlow(asked, learn_parts(asked), HOURS)
    by_due = {"1": [job("1", {"a": 1}), job("2", {"b": 1})]}
    assert find_turns(flow, by_due, HOURS.minutes) is by_due


def test_places_follow_the_turns_and_what_is_queued_only_comes_forward():
    late, soon = job("1", {}, by=YESTERDAY), job("2", {}, by=TODAY)
    new = job("+0", {}, by=YESTERDAY, planned=True)
    places = set_places([soon, new, late], [late, soon])
    assert places["1"] == YESTERDAY
    assert places["2"] < places["1"]
    assert places["2"] <= places["+0"] < places["1"]
    assert set_places([late, soon, new], [late, soon]) == {
        "1": YESTERDAY, "2": TODAY, "+0": "2026-11-25T15:00:01",
    }  # fmt: skip


def test_a_plan_lets_a_hopeless_order_wait_and_names_what_comes_forward():
    # one router: 8 sheets of 60 minutes and loading for yesterday's order are planned; a queued
    # sheet for today's order would be too late behind them, which is due an hour after it is cut
    asked = shop(
        part("a", [(8, YESTERDAY)]), part("b", [(1, "2026-11-25T12:30:00")]),
        files=(file("A", {"a": 1}, 60.0, "1"), file("B", {"b": 1}, 60.0, "1")),
        queue=(queued("7", "B", {"b": 1}, sheets=1, minutes=60.0, due=TODAY),),
        routers=(router("1"),),
    )  # fmt: skip
    plan = think(asked)
    (blocked,) = plan.blocked
    (forward,) = plan.forward
    assert (forward.batch, forward.order) == ("7", "b1")
    assert forward.by <= forward.due == "2026-11-25T12:30:00"
    assert blocked.release.due == YESTERDAY
    assert blocked.release.by > forward.by
    assert (blocked.release.behind, blocked.release.starts) == (1, "2026-11-25T11:05:00")


def test_a_plan_chooses_routers_again_once_all_turns_are_known():
    """Six small orders go before a hopeless one, which then ends first on the other router.

    Ten sheets of 25 minutes from twelve on, for the bed is free then: until 07:10 next day. Before
    the small orders it would end at 14:10 on the first.
    """
    dues = [(10, f"{TODAY[:11]}{11 + n // 2}:{30 * (n % 2):02d}:00") for n in range(6)]
    asked = shop(part("big", [(100, f"{TODAY[:11]}10:30:00")]), part("s", dues),
                 files=(file("B", {"big": 10}, routers="12"), file("S", {"s": 10}, routers="1")),
                 routers=(router("1"), router("2", free_in=120.0)))  # fmt: skip
    plan = think(asked)
    (release,) = (b.release for b in plan.blocked if b.part == "big")
    assert (release.router, release.router_name, release.behind) == ("2", "Router 2", 0)
    assert release.ends == plan.done_by == "2026-11-26T07:10:00"
    assert (release.next_router, release.next_ends) == ("Router 1", "2026-11-25T14:10:00")
    assert [str(w) for w in say_router(release, asked.now)] == ["Router 2", "others run it too"]
