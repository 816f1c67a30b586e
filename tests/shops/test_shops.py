"""A few of the shops on every test run; `python -m tests.shops` plays two hundred."""

import ast
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest

from tests.shops.__main__ import tell
from tests.shops.bound import find_earliest, find_hopeless
from tests.shops.days import Floor, open_shop
from tests.shops.judge import count_owed, find_blocking, judge
from tests.shops.marks import cut_by_marks
from tests.shops.planned import plan, read_time, tell_time
from tests.shops.shop import DAY, File, Order, draw_shop

HERE = Path(__file__).parent


@pytest.mark.slow
def test_the_planner_has_fewer_late_orders_and_names_all_that_blocks():
    verdicts = [judge(seed, plan) for seed in (3, 9, 12, 22)]
    assert all(v.late < v.late_by_marks for v in verdicts), tell(verdicts)
    assert sum(v.sheets for v in verdicts) < 1.02 * sum(v.sheets_by_marks for v in verdicts)
    assert [(v.not_named, v.named_for_nothing, v.needed) for v in verdicts] == [(0, 0, [])] * 4
    assert all(v.blocking for v in verdicts)


def test_nothing_but_what_asks_the_planner_uses_the_program():
    for path in HERE.glob("*.py"):
        names = {n.module or "" for n in ast.walk(ast.parse(path.read_text("utf-8")))
                 if isinstance(n, ast.ImportFrom)}  # fmt: skip
        if path.name != "planned.py":
            assert not [name for name in names if name.startswith("station")], path


@pytest.mark.slow
def test_no_piece_appears_from_nowhere():
    # what was on the rack at first and what came through the last step is there or packed, but for
    # what recounts found short
    floor = open_shop(draw_shop(5))
    first = Counter(floor.rack)
    for _ in range(12):
        floor.wake()
        cut_by_marks(floor)
        floor.work()
    packed = sum(floor.use, Counter())
    for part in floor.shop.parts:
        came = first[part] + floor.good["trimming"][part]
        assert 0 <= came - floor.rack[part] - packed[part] < 0.3 * came, part
        assert floor.rack[part] >= 0
        through = floor.good["cut"][part] - floor.gone["popping"][part]
        on_way = sum(load.pieces[part] for load in floor.popping + floor.trimming)
        assert through - floor.gone["trimming"][part] - on_way == floor.good["trimming"][part]


def test_a_part_blocks_where_more_is_wanted_than_lies_there_and_comes():
    floor = open_shop(draw_shop(5))
    floor.wake()
    order, part = next((o, p) for o in floor.open for p in o.wants)
    floor.open = [order]
    floor.rack.update(order.wants)
    assert find_blocking(floor) == set()
    floor.rack[part] = order.wants[part] - 1
    assert find_blocking(floor) == {part}
    file = next(f for f in floor.shop.files.values() if part in f.makes)
    floor.release(file.name, 1, next(iter(file.minutes)), 0.0)
    assert find_blocking(floor) == set()


def test_what_orders_lack_is_owed_and_what_they_leave_is_spare():
    floor = open_shop(draw_shop(5))
    part = floor.shop.parts[0]
    sheet = max(f.makes.get(part, 0) for f in floor.shop.files.values())
    order = Order("O", 0, DAY, {part: 2 * sheet})
    floor.rack, floor.open = Counter({part: 2 * sheet}), [order]
    assert count_owed(floor) == (0, 0)
    floor.rack[part] = 3 * sheet
    owed, spare = count_owed(floor)
    assert (owed, 1 < spare < 1.1) == (0, True)  # what it takes to cut a sheet's worth, loss too
    floor.rack[part] = sheet
    assert count_owed(floor) == (spare, 0)


def test_an_order_is_hopeless_where_the_whole_shop_would_be_late_for_it_alone():
    # one of two routers stands; a sheet makes 10 in half an hour, trimming takes 540 pieces a day
    shop = replace(draw_shop(5), files={"F0": File("F0", {"P0": 10}, {"R0": 30.0, "R1": 40.0})},
                   routers=("R0", "R1"), lost={"P0": (0.0, 0.0, 0.0)},
                   people={"popping": 540.0, "trimming": 540.0, "packing": 540.0},
                   handling={"popping": 0.1, "trimming": 1.0, "packing": 0.1})  # fmt: skip
    order = Order("O", 0, 300, {"P0": 105})
    floor = Floor(shop, {}, rack=Counter(P0=5), queues={"R0": [], "R1": []}, open=[order])
    assert find_earliest(floor, order) == 150.0  # ten sheets by two routers
    floor.stopped = {"R1"}
    assert find_earliest(floor, order) == 300.0
    assert find_hopeless(floor) == set()
    floor.rack["P0"] = 4
    assert find_hopeless(floor) == {"O"}
    floor.open = [replace(order, wants={"P0": 84 + 190})]
    floor.stopped, floor.rack["P0"] = set(), 4
    assert find_earliest(floor, floor.open[0]) == 405.0  # 27 sheets; trimming is done after 300
    floor.release("F0", 20, "R0", 0.0)  # what is queued only is still to be cut
    assert find_earliest(floor, floor.open[0]) == 405.0


def test_times_go_over_the_weekend_and_back():
    assert tell_time(4 * DAY + 60) == "2026-01-09T08:00:00"  # a Friday
    assert tell_time(5 * DAY) == "2026-01-12T07:00:00"
    assert [read_time(tell_time(n)) for n in (0, 60, 5 * DAY + 1)] == [0, 60, 5 * DAY + 1]
