"""What can wait: queued batches that nobody needs, parts that lie too long, marks that are off."""

from collections.abc import Mapping
from typing import NamedTuple

from station.planning.demand import Forecast, find_lack
from station.planning.learnt import TOO_HIGH, TOO_LOW, PartLearnt, find_span_to_last
from station.planning.messages import (
    Besides,
    BringForward,
    MarkAdvice,
    OverFull,
    PlanCutting,
    QueuedNow,
    TakeQueuedBack,
    Wish,
)
from station.planning.routers import LAST

Parts = Mapping[str, PartLearnt]
SPARE_DAYS = 4.0  # worked days beyond the lead time for which nobody may need a batch that waits
LONG_DAYS = 15.0  # worked days of stock, from which on a part is named


def list_take_back(asked: PlanCutting, parts: Parts) -> tuple[TakeQueuedBack, ...]:
    """Lists the queued batches without which every part lasts long enough.

    The ones due last go first; without them the others must still be missed by nobody.
    """
    gone: dict[str, int] = {}  # pieces of the batches taken back so far
    found = []
    for batch in sorted(asked.queued, key=lambda b: (b.due or LAST, b.id), reverse=True):
        after = _go_without(batch, gone)
        made = [parts[part] for part in batch.makes if part in parts]
        if not _is_movable(batch) or not made:
            continue
        if all(_may_wait(p, after[p.now.id], asked.lead_days) for p in made):
            gone = after
            found.append(_take_back(asked, batch, made, gone))
    return tuple(reversed(found))


def _is_movable(batch: QueuedNow) -> bool:
    """Says whether a batch can be taken back at all: no sheet of it is begun."""
    return not (batch.begun or batch.held or batch.order) and batch.sheets > 0


def _go_without(batch: QueuedNow, gone: Mapping[str, int]) -> dict[str, int]:
    """Gives the pieces that are gone without this batch too."""
    own = {part: each * batch.sheets for part, each in batch.makes.items()}
    return {part: gone.get(part, 0) + own.get(part, 0) for part in {*gone, *own}}


def _count_left(part: PartLearnt, gone: float) -> float:
    return part.left - gone * part.mean


def _may_wait(part: PartLearnt, gone: float, lead_days: float) -> bool:
    """Says whether a part lasts long enough without so many pieces."""
    left = _count_left(part, gone)
    if part.use is None or left < part.level:
        return False
    days = part.count_days(left)
    return days is None or days >= lead_days + SPARE_DAYS


def _take_back(
    asked: PlanCutting, batch: QueuedNow, made: list[PartLearnt], gone: Mapping[str, int]
) -> TakeQueuedBack:
    """Names the batch by the part of it that lasts shortest."""
    lasts = [(p.count_days(_count_left(p, gone[p.now.id])), p) for p in made]
    days, part = min(lasts, key=lambda last: (last[0] is None, last[0] or 0.0))
    names = {f.id: f.name for f in asked.files}
    return TakeQueuedBack(
        batch=batch.id,
        file=batch.file,
        name=names.get(batch.file, batch.file),
        router=batch.router,
        sheets=batch.sheets,
        part=part.now.id,
        part_name=part.now.name,
        there=part.now.free,
        wanted=part.now.wanted,
        days=days,
    )


class Wanted(NamedTuple):
    """The first order that wants a queued batch, and the part that it waits for."""

    wish: Wish
    part: PartLearnt


def find_wanted(asked: PlanCutting, parts: Parts) -> dict[str, Wanted]:
    """Finds the queued batches that orders wait for, by their id.

    What lies free or is past the routers goes to the orders due first, then the batches as they
    are queued.
    """
    waiting = [b for b in asked.queued if b.sheets > 0 and not b.held]
    found: dict[str, Wanted] = {}
    for part in parts.values():
        for batch, wish in _give_out(part, waiting).items():
            if batch not in found or wish.due < found[batch].wish.due:
                found[batch] = Wanted(wish, part)
    return found


def list_forward(
    asked: PlanCutting, wanted: Mapping[str, Wanted], places: Mapping[str, str]
) -> tuple[BringForward, ...]:
    """Lists the queued batches whose place in the queue is before where they are, the first first.

    `wanted` are those that orders wait for.
    """
    found = [
        _bring_forward(asked, b, wanted[b.id], places[b.id])
        for b in asked.queued
        if b.id in wanted and places.get(b.id, LAST) < (b.due or LAST)
    ]
    return tuple(sorted(found, key=lambda f: (f.by, f.batch)))


def _give_out(part: PartLearnt, waiting: list[QueuedNow]) -> dict[str, Wish]:
    """Gives a part's pieces to its orders by due time: by batch, the first that needs it."""
    queue = sorted(
        (b for b in waiting if b.makes.get(part.now.id) and not b.order),
        key=lambda b: (not b.begun, b.due or LAST, b.id),
    )
    queued = sum(b.makes[part.now.id] * b.sheets for b in queue)
    left, found, at = part.now.free + part.now.under_way - queued, {}, 0
    for wish in part.now.wishes:
        left -= wish.pieces
        while left < 0 and at < len(queue):
            batch = queue[at]
            found[batch.id] = wish
            left += int(batch.makes[part.now.id] * batch.sheets * part.mean)
            at += 1
    return found


def _bring_forward(
    asked: PlanCutting, batch: QueuedNow, wanted: Wanted, place: str
) -> BringForward:
    names = {f.id: f.name for f in asked.files}
    return BringForward(
        batch=batch.id,
        file=batch.file,
        name=names.get(batch.file, batch.file),
        router=batch.router,
        sheets=batch.sheets,
        part=wanted.part.now.id,
        part_name=wanted.part.now.name,
        order=wanted.wish.order,
        due=wanted.wish.due,
        was=batch.due,
        by=place,
    )


def list_besides(asked: PlanCutting) -> tuple[Besides, ...]:
    """Lists what is wanted besides orders and marks, the most pieces ahead."""
    found = (Besides(p.name, p.besides) for p in asked.parts if p.besides)
    return tuple(sorted(found, key=lambda b: (-b.pieces, b.name)))


def list_over_full(parts: Parts) -> tuple[OverFull, ...]:
    """Lists the parts of which far more lies there than is used, the longest first."""
    found = []
    for part in parts.values():
        spare = part.now.free - part.now.wanted
        days = part.count_days(spare)
        if part.use and spare > part.level and (days is None or days >= LONG_DAYS):
            one = OverFull(part=part.now.id, name=part.now.name, there=part.now.free,
                           wanted=part.now.wanted, days=days)  # fmt: skip
            found.append(one)
    return tuple(sorted(found, key=lambda f: (f.days is not None, -(f.days or 0), f.part)))


def list_marks(asked: PlanCutting, parts: Parts) -> tuple[MarkAdvice, ...]:
    """Lists the marks that are far off: too low ones first, the farthest off first of each.

    One of a part that is better cut when it is wanted is told too: else a mark that was once
    raised never falls to nought again, and more and more lies on the rack.
    """
    found = [
        _advise_mark(asked, p, p.use, p.should)
        for p in parts.values()
        if p.use and p.use.mean > 0 and p.should is not None and _is_off(p.now.mark, p.should)
    ]
    return tuple(sorted(found, key=lambda m: (m.mark > m.should, _find_share(m), m.part)))


def _is_off(mark: int, should: int) -> bool:
    return not TOO_LOW * should <= mark <= TOO_HIGH * should


def _advise_mark(asked: PlanCutting, part: PartLearnt, use: Forecast, should: int) -> MarkAdvice:
    """Advises a mark, with what lacks as it is and as it should be until more is there."""
    span, mark = find_span_to_last(asked), part.now.mark
    mean, variance = span.expect_use(use)
    lacks, then = (find_lack(mean, variance, n) / mean for n in (mark, should))
    return MarkAdvice(
        part=part.now.id, name=part.now.name, mark=mark, should=should, use=round(use.mean, 1),
        days=round(span.days, 2), varies=round(span.deviation, 2), service=asked.service,
        lacks=round(lacks, 4), lacks_then=round(then, 4),
    )  # fmt: skip


def _find_share(advice: MarkAdvice) -> float:
    """Finds the smaller of the two marks over the larger."""
    return min(advice.mark, advice.should) / max(advice.mark, advice.should)
