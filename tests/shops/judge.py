"""Plays a shop's six weeks twice, and judges what came of them."""

from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass, field
from math import prod
from statistics import quantiles

from tests.shops.bound import find_hopeless
from tests.shops.days import Batch, Floor, open_shop
from tests.shops.marks import cut_by_marks
from tests.shops.shop import DAY, DAYS, DAYS_BEFORE, draw_shop

USUAL_LEAD, WATCHED, ENOUGH = (
    2.0,
    40,
    5,
)  # worked days until observed; batches that it is seen from


@dataclass
class Plan:
    """What a planner says on one morning."""

    blocked: frozenset[str]  # parts
    releases: tuple[tuple[str, int, str, float], ...]  # file, sheets, router, due
    take_back: tuple[str, ...]  # batches
    marks: tuple[tuple[str, int], ...] = ()  # as they should be
    forward: tuple[tuple[str, float], ...] = ()  # batches, and when they are due now


Planner = Callable[[Floor], Plan]


@dataclass
class Verdict:
    """How one shop went."""

    seed: int
    late: int = 0
    late_by_marks: int = 0
    orders: int = 0
    sheets: int = 0
    sheets_by_marks: int = 0
    owed: float = 0  # sheets that orders which wait in the end still take
    owed_by_marks: float = 0
    spare: float = 0  # sheets' worth that lies there in the end, or is past the routers, unwanted
    spare_by_marks: float = 0
    hopeless: int = 0  # of the late ones, those that nobody could save on the morning they came
    hopeless_by_marks: int = 0
    blocking: int = 0  # parts that blocked, each morning
    not_named: int = 0
    named_for_nothing: int = 0
    taken_back: int = 0
    needed: list[str] = field(default_factory=list)  # taken back, and needed within its lead time

    @property
    def fewer_late(self) -> bool:
        return self.late < self.late_by_marks or self.late == self.late_by_marks == 0

    @property
    def tied_at_least(self) -> bool:
        """As many late as by marks, and none that could still be saved when it came."""
        return self.late == self.late_by_marks == self.hopeless > 0

    @property
    def no_more_cut(self) -> bool:
        return self.sheets <= self.sheets_by_marks

    @property
    def no_more_sheets(self) -> bool:
        """No more for the same: who leaves orders waiting has only not cut for them yet."""
        return self.sheets + self.owed <= self.sheets_by_marks + self.owed_by_marks

    @property
    def no_more_used(self) -> bool:
        """No more for the same once the rack is as full as by marks; it decides nothing."""
        used = self.sheets + self.owed - self.spare
        return used <= self.sheets_by_marks + self.owed_by_marks - self.spare_by_marks


def judge(seed: int, plan: Planner) -> Verdict:
    """One shop by marks and by the planner, from the same morning on."""
    floor = open_shop(draw_shop(seed))
    for _ in range(DAYS_BEFORE):
        floor.wake()
        cut_by_marks(floor)
        floor.work()
    by_marks, planned, verdict = deepcopy(floor), floor, Verdict(seed)
    hopeless, hopeless_by_marks = set[str](), set[str]()
    for _ in range(DAYS):
        by_marks.wake()
        hopeless_by_marks |= find_hopeless(by_marks)
        cut_by_marks(by_marks)
        by_marks.work()
        planned.wake()
        hopeless |= find_hopeless(planned)
        follow(planned, plan(planned), verdict)
        planned.work()
    late, late_by_marks = find_late(planned), find_late(by_marks)
    verdict.late, verdict.sheets = len(late), planned.cut.total()
    verdict.late_by_marks, verdict.sheets_by_marks = len(late_by_marks), by_marks.cut.total()
    verdict.hopeless = len(late & hopeless)
    verdict.hopeless_by_marks = len(late_by_marks & hopeless_by_marks)
    verdict.owed, verdict.spare = count_owed(planned)
    verdict.owed_by_marks, verdict.spare_by_marks = count_owed(by_marks)
    verdict.orders = len(list_judged(planned))
    return verdict


def count_owed(floor: Floor) -> tuple[float, float]:
    """Sheets still to be cut for the orders that wait, each part by the file that makes most.

    Some of their pieces will be lost as well. Then the sheets' worth that no order wants.
    """
    files, owed, spare = floor.shop.files.values(), 0.0, 0.0
    for part in floor.shop.parts:
        on_way = floor.count_under_way(part) - floor.count_queued(part)
        lacking = floor.count_wanted(part) - floor.rack[part] - on_way
        good = prod(1 - lost for lost in floor.shop.lost[part])
        sheets = lacking / good / max(f.makes.get(part, 0) for f in files)
        owed, spare = owed + max(0, sheets), spare + max(0, -sheets)
    return owed, spare


def follow(floor: Floor, plan: Plan, verdict: Verdict) -> None:
    """Does all that the plan says, and notes what was wrong with it."""
    blocking = find_blocking(floor)
    verdict.blocking += len(blocking)
    verdict.not_named += len(blocking - plan.blocked)
    verdict.named_for_nothing += len(plan.blocked - blocking)
    for name in plan.take_back:
        batch = next(b for b in floor.list_queued() if b.name == name)
        floor.take_back(batch)
        verdict.taken_back += 1
        if was_needed(floor, batch):
            verdict.needed.append(f"{name} on day {floor.day}")
    for name, due in plan.forward:
        floor.bring_forward(name, due)
    for release in plan.releases:
        floor.release(*release)
    floor.marks.update(plan.marks)


def find_blocking(floor: Floor) -> set[str]:
    """Parts of which open orders want more than lies there and is under way."""
    return {
        part for part in floor.shop.parts
        if floor.count_wanted(part) > floor.rack[part] + floor.count_under_way(part)
    }  # fmt: skip


def was_needed(floor: Floor, batch: Batch) -> bool:
    """If orders known by the end of its lead time wanted more than there was without it."""
    until = floor.day + observe_lead(floor)
    for part in floor.shop.files[batch.file].makes:
        come = (o for o in floor.shop.orders if floor.day < o.comes < until)
        wanted = floor.count_wanted(part) + sum(o.wants.get(part, 0) for o in come)
        if wanted > floor.rack[part] + floor.count_under_way(part):
            return True
    return False


def observe_lead(floor: Floor) -> float:
    """Worked days in which three of four batches that an order waited for were on the rack."""
    for_orders = [took for took, wanted in floor.took if wanted]
    return quantiles(for_orders[-WATCHED:], n=4)[2] if len(for_orders) >= ENOUGH else USUAL_LEAD


def find_short_notice(floor: Floor) -> float:
    """The share of pieces so far whose orders want them sooner than they can be cut."""
    come = [(o.due - o.comes * DAY, sum(o.wants.values()))
            for o in floor.shop.orders if o.comes < floor.day]  # fmt: skip
    soon = (observe_lead(floor) + 1) * DAY
    return sum(n for notice, n in come if notice < soon) / sum(n for _, n in come)


def list_judged(floor: Floor) -> list[str]:
    """Orders that fell due in the six weeks."""
    begins, ends = DAYS_BEFORE * DAY, (DAYS_BEFORE + DAYS) * DAY
    return [o.name for o in floor.shop.orders if begins <= o.due < ends]


def find_late(floor: Floor) -> set[str]:
    """Of these, those that were packed late or are open still."""
    due = {o.name: o.due for o in floor.shop.orders}
    return {n for n in list_judged(floor) if floor.packed.get(n, float("inf")) > due[n]}
