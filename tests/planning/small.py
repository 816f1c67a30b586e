"""A small shop as planning sees it; figures are made up, answers worked out by hand."""

from functools import partial

from msgspec.structs import replace

from station.planning.messages import (
    FileNow,
    MaterialNow,
    PartNow,
    Passage,
    PlanCutting,
    QueuedNow,
    RouterNow,
    Wish,
)

NOW = "2026-11-25T10:00:00"  # a Wednesday; it is worked from 7 to 16, Monday to Friday
TODAY, TOMORROW, IN_FIVE_DAYS = "2026-11-25T15:00:00", "2026-11-26T09:00:00", "2026-11-30T15:00:00"
YESTERDAY = "2026-11-24T15:00:00"
NO_LOSS = {step: Passage(good=1_000_000_000, lost=0) for step in ("cut", "popping", "trimming")}


def part(id, wants=(), free=0, **fields):
    """A part of which so many are wanted: (pieces, due) an order each, o1, o2 …"""
    wishes = tuple(Wish(f"{id}{n}", due, pieces) for n, (pieces, due) in enumerate(wants, 1))
    return PartNow(id=id, name=id, free=free, wishes=wishes, **{"passed": NO_LOSS, **fields})


def file(id, makes, minutes=20.0, routers="123", material="ply", bits=(6.0,)):
    return FileNow(id=id, name=id, material=material, makes=makes,
                   minutes=dict.fromkeys(routers, minutes), bits_mm=bits)  # fmt: skip


def router(id, **fields):
    return RouterNow(id=id, name=f"Router {id}", **{"bits_mm": (6.0,), **fields})


def queued(id, file, makes, sheets=2, router="1", **fields):
    usual = {"minutes": 20.0, "due": IN_FIVE_DAYS, "material": "ply"}
    return QueuedNow(id=id, file=file, router=router, sheets=sheets, makes=makes,
                     **{**usual, **fields})  # fmt: skip


def with_queue(queue, part):
    """A part with its pieces on the sheets of the queue, as those of held batches do not count."""
    pieces = sum(b.makes.get(part.id, 0) * b.sheets for b in queue if not b.held)
    return replace(part, coming={**part.coming, "queue": pieces}) if pieces else part


def shop(*parts, files, queue=(), **fields):
    """A shop with three routers and forty sheets; what is queued is under way."""
    plain = PlanCutting(
        now=NOW,
        parts=tuple(map(partial(with_queue, queue), parts)),
        files=tuple(files),
        queued=tuple(queue),
        routers=(router("1"), router("2"), router("3")),
        materials=(MaterialNow(id="ply", name="plywood", sheets=40),),
    )
    return replace(plain, **fields)
