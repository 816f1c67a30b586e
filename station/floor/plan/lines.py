"""The lines of the plan that still hold: what can be released, and what can be taken back."""

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from station.floor.plan.acts import Bought
from station.floor.plan.work import PlanHand
from station.planning.messages import (
    Blocked,
    BringForward,
    CuttingPlan,
    MarkAdvice,
    Release,
    TakeQueuedBack,
)
from station.queries.shortage import list_blocking, list_waiting_for
from station.queries.underway import list_queued
from station.shop.facts import Batch, Part
from station.shop.file_requests import OrderRow
from station.shop.views import View
from station.shop.words import length, say

MARKS = 3  # that are off and stand on the screen


class PlanLine(NamedTuple):
    """One thing to decide: a release, for a part that blocks or not; a take-back; a mark."""

    key: str
    blocked: Blocked | None = None
    release: Release | None = None
    take_back: TakeQueuedBack | None = None
    mark: MarkAdvice | None = None


def find_plan(hand: PlanHand) -> CuttingPlan | None:
    """Finds what was thought last; None: nothing yet."""
    return hand.thought if isinstance(hand.thought, CuttingPlan) else None


def list_lines(hand: PlanHand, view: View) -> tuple[PlanLine, ...]:
    """Lists what there is to decide, the most urgent first, without what was done since."""
    plan = find_plan(hand)
    if plan is None:
        return ()
    blocking = {b.standing.part.id for b in list_blocking(view, hand.now)}
    released = list_released_since(plan, view)
    blocked = [
        PlanLine(f"part/{b.part}", blocked=b, release=b.release)
        for b in plan.blocked
        if b.part in blocking
    ]
    then = _number_lines(r for r in plan.then if r.file not in released)
    back = [PlanLine(f"batch/{b.batch}", take_back=b) for b in plan.take_back if can_wait(view, b)]
    marks = [PlanLine(f"mark of {m.part}", mark=m) for m in plan.marks if is_mark(view, m)]
    return (*blocked, *then, *back, *marks)


def _number_lines(releases: Iterable[Release]) -> list[PlanLine]:
    """Makes the lines of what else is cut; batches that one file was parted into are numbered."""
    found, times = list[PlanLine](), Counter[str]()
    for release in releases:
        key = f"{release.because}/{release.file}"
        times[key] += 1
        found.append(PlanLine(f"{key}/{times[key]}", release=release))
    return found


def list_released_since(plan: CuttingPlan, view: View) -> frozenset[str]:
    """Lists the cut files of batches that the plan does not know: they were released since."""
    return frozenset(b.cut_file for b in list_queued(view) if b.id not in plan.seen)


def can_wait(view: View, back: TakeQueuedBack) -> bool:
    """Says whether a batch still waits as it did when it was thought about, and for no order."""
    batch = view.get(Batch, back.batch)
    waits = batch is not None and batch.state == "queued" and not batch.cut
    return batch is not None and waits and not list_waiting_for(view, batch)


def find_forward(hand: PlanHand, view: View) -> BringForward | None:
    """Finds the first queued batch that an order wants sooner, where it still waits too late."""
    plan = find_plan(hand)
    for forward in plan.forward if plan else ():
        batch = view.get(Batch, forward.batch)
        late = batch is not None and (not batch.due or batch.due > forward.by)
        if batch and batch.state == "queued" and not batch.cut and late:
            return forward
    return None


def is_mark(view: View, mark: MarkAdvice) -> bool:
    """Says whether a mark is still the one that was found to be off."""
    part = view.get(Part, mark.part)
    return part is not None and part.mark == mark.mark


def find_chosen(hand: PlanHand, lines: tuple[PlanLine, ...]) -> PlanLine | None:
    """Finds the line that is looked at; the first where none is chosen or it is gone."""
    return next((line for line in lines if line.key == hand.work.chosen), next(iter(lines), None))


def list_order_rows(plan: CuttingPlan) -> tuple[OrderRow, ...]:
    """Lists what to order in words: sheets, bits and mailers, the most urgent first."""
    return tuple(
        OrderRow(
            what=o.name or str(say("{size} mm bit", size=length(o.diameter_mm))),
            quantity=o.quantity, by=o.by, lasts_days=o.lasts, lead_days=o.lead_days,
            lead_known=o.lead_known, bit_mm=0.0 if o.name else o.diameter_mm, price=o.price,
            coming=o.coming,
        )
        for o in plan.order
    )  # fmt: skip


def list_bought(plan: CuttingPlan) -> tuple[Bought, ...]:
    """Lists the same as it is noted once it is ordered."""
    return tuple(Bought(o.of, o.id, o.quantity, o.expected, o.diameter_mm) for o in plan.order)


def list_on_list(hand: PlanHand) -> tuple[Bought, ...]:
    """Lists what stands on the written order list, without what is to be ordered no more.

    It may be thought about anew while somebody orders: what is ordered is what stands there.
    """
    plan = find_plan(hand)
    wanted = {(b.of, b.id, b.diameter_mm) for b in list_bought(plan)} if plan else set()
    return tuple(b for b in hand.work.on_list if (b.of, b.id, b.diameter_mm) in wanted)
