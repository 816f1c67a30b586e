"""What can wait: queued batches that nobody needs, parts that lie too long, marks that are off."""

from collections.abc import Mapping

from station.planning.learnt import PartLearnt
from station.planning.messages import MarkAdvice, OverFull, PlanCutting, QueuedNow, TakeQueuedBack
from station.planning.routers import LAST

Parts = Mapping[str, PartLearnt]
SPARE_DAYS = 4.0  # worked days beyond the lead time for which nobody may need a batch that waits
LONG_DAYS = 15.0  # worked days of stock, from which on a part is named
FAR_OFF = 0.8  # a mark below this share of what it should be is named


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


def list_marks(parts: Parts, days: float) -> tuple[MarkAdvice, ...]:
    """Lists the marks that are far too low, the one that is lowest for its use first."""
    found = [
        MarkAdvice(part=p.now.id, name=p.now.name, mark=p.now.mark, should=p.should,
                   use=round(p.use.mean, 1), days=days)
        for p in parts.values()
        if p.use and p.should and p.now.mark < FAR_OFF * p.should
    ]  # fmt: skip
    return tuple(sorted(found, key=lambda m: (m.mark / m.should, m.part)))
