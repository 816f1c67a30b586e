"""Which of several routers needs a person next, and what to bring along: sheet, lot, bits."""

from typing import Literal, NamedTuple

from station.queries.batches import find_revision, is_approved
from station.queries.routers import (
    count_metres_left,
    count_minutes_left,
    find_bed,
    find_bit_in,
    find_ready_bit,
    list_drawer,
    name_router,
)
from station.queries.runs import Due, find_due
from station.queries.stock import list_stored_lots
from station.queries.underway import list_queue
from station.shop.facts import Batch, Bed, BitUse, Revision, Router
from station.shop.views import View

ORDER = ("waits", "cuts", "stopped", "idle")  # who waits needs a person before who still cuts
Standing = Literal["waits", "cuts", "stopped", "idle"]


class BitToBring(NamedTuple):
    """A bit that is not at its router yet; `bit` is the one in the drawer that lasts longest."""

    diameter_mm: float
    bit: str  # empty: there is none


class Tended(NamedTuple):
    """A router, how it stands, and what is put on it next."""

    router: str
    name: str
    standing: Standing
    minutes: float  # until its bed is free; 0: it waits, below zero: it takes longer than expected
    batch: str = ""  # that its next sheet is of; empty: nothing waits for it
    sheet: int = 0
    sheets: int = 0  # of the batch
    run: int = 1  # of this sheet; from the second on the sheet itself is brought, no fresh one
    material: str = ""
    lot: str = ""  # to take the sheet from; empty: none has any left
    bits: tuple[BitToBring, ...] = ()


def list_tended(view: View, routers: tuple[str, ...], now: str) -> tuple[Tended, ...]:
    """Lists routers that one person tends, the one first that waits or is free next.

    One that stands still comes after those that cut, and one for which nothing waits last.
    """
    found = (_tend(view, find_bed(view, router), now) for router in routers)
    return tuple(sorted(found, key=lambda t: (ORDER.index(t.standing), t.minutes, t.router)))


def _tend(view: View, bed: Bed, now: str) -> Tended:
    name, minutes = name_router(view, bed.id), count_minutes_left(bed, now)
    following = _find_following(view, bed)
    standing: Standing = "cuts" if bed.sheet else "waits" if following else "idle"
    if bed.state == "stopped":
        standing = "stopped"
    if following is None:
        return Tended(bed.id, name, standing, minutes)
    batch, due = following
    fresh = due.run == 1
    return Tended(
        *(bed.id, name, standing, minutes, batch.id, due.sheet, batch.sheets, due.run),
        material=due.file.material if fresh else "",
        lot=_find_lot(view, bed, due.file) if fresh else "",
        bits=_list_bits(view, bed, due.file),
    )


def _find_following(view: View, bed: Bed) -> tuple[Batch, Due] | None:
    """Finds what is put on a bed next: of the batch it has, else of the first that may be cut."""
    own = view.get(Batch, bed.batch)
    queued = (b for b in list_queue(view, bed.id) if b.id != bed.batch)
    for batch in (*filter(None, [own]), *queued):
        is_free = not batch.holds and is_approved(view, batch)
        revision = find_revision(view, batch) if is_free else None
        due = find_due(view, batch, revision, bed) if revision else None
        if due and due.file.takes(bed.id):
            return batch, due
    return None


def _find_lot(view: View, bed: Bed, file: Revision) -> str:
    """Finds the lot to take a sheet from: the last one of this bed, else the oldest."""
    left = [lot.id for lot, _ in list_stored_lots(view, file.material)]
    return bed.lot if bed.lot in left else next(iter(left), "")


def _list_bits(view: View, bed: Bed, file: Revision) -> tuple[BitToBring, ...]:
    """Lists the bits that a sheet takes and that are not at the router, or do not last it."""
    router, found = view.get(Router, bed.id), []
    changer = bool(router and router.changer)
    for use in file.bits:
        if _is_in(view, bed, use) or (not changer and _lies_beside(view, bed, use)):
            continue
        ready = find_ready_bit(view, bed, use)
        found.append(BitToBring(use.diameter_mm, ready.id if ready else ""))
    return tuple(dict.fromkeys(found))


def _is_in(view: View, bed: Bed, use: BitUse) -> bool:
    """Says whether the bit that is in is right, good, and lasts a sheet."""
    bit = find_bit_in(view, bed, use)
    fits = bit is not None and bit.state == "good" and bit.diameter_mm == use.diameter_mm
    return bit is not None and fits and count_metres_left(view, bit) >= use.cut_mm / 1000


def _lies_beside(view: View, bed: Bed, use: BitUse) -> bool:
    """Says whether a right bit that lasts a sheet lies beside a router that holds only one."""
    own = (b for b in list_drawer(view, bed) if b.router == bed.id)
    need = use.cut_mm / 1000
    return any(
        b.diameter_mm == use.diameter_mm and count_metres_left(view, b) >= need for b in own
    )
