"""Which of several routers needs a person next, and what to bring along: sheet, lot, bits."""

from collections import Counter
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


class _Going(NamedTuple):
    """A router as it stands, and what is put on its bed next; None: nothing."""

    tended: Tended
    bed: Bed
    due: Due | None


class _Brought:
    """What those before bring to their routers: the next cannot have it too."""

    def __init__(self) -> None:
        self.sheets: Counter[str] = Counter()  # by lot
        self.bits: set[str] = set()


def list_tended(view: View, routers: tuple[str, ...], now: str) -> tuple[Tended, ...]:
    """Lists routers that one person tends, the one first that waits or is free next.

    One that stands still comes after those that cut, and one for which nothing waits last. The
    last sheet of a lot and a bit go to the first that takes them.
    """
    found = sorted((_tend(view, find_bed(view, r), now) for r in routers), key=_rank)
    brought = _Brought()
    return tuple(_bring(view, going, brought) for going in found)


def _rank(going: _Going) -> tuple[int, float, str]:
    return ORDER.index(going.tended.standing), going.tended.minutes, going.tended.router


def _tend(view: View, bed: Bed, now: str) -> _Going:
    name, minutes = name_router(view, bed.id), count_minutes_left(bed, now)
    following = _find_following(view, bed)
    standing: Standing = "cuts" if bed.sheet else "waits" if following else "idle"
    if bed.state == "stopped":
        standing = "stopped"
    if following is None:
        return _Going(Tended(bed.id, name, standing, minutes), bed, None)
    batch, due = following
    found = Tended(bed.id, name, standing, minutes, batch.id, due.sheet, batch.sheets, due.run)
    return _Going(found, bed, due)


def _bring(view: View, going: _Going, brought: _Brought) -> Tended:
    """Adds what to bring to a router, besides what is brought to those before."""
    if going.due is None:
        return going.tended
    bed, file, fresh = going.bed, going.due.file, going.due.run == 1
    return going.tended._replace(
        material=file.material if fresh else "",
        lot=_find_lot(view, bed, file, brought) if fresh else "",
        bits=_list_bits(view, bed, file, brought),
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


def _find_lot(view: View, bed: Bed, file: Revision, brought: _Brought) -> str:
    """Finds the lot to take a sheet from: the last one of this bed, else the oldest."""
    lots = list_stored_lots(view, file.material)
    left = [lot.id for lot, n in lots if n > brought.sheets[lot.id]]
    found = bed.lot if bed.lot in left else next(iter(left), "")
    brought.sheets[found] += 1
    return found


def _list_bits(view: View, bed: Bed, file: Revision, brought: _Brought) -> tuple[BitToBring, ...]:
    """Lists the bits that a sheet takes and that are not at the router, or do not last it."""
    router, found = view.get(Router, bed.id), dict[float, BitToBring]()
    changer = bool(router and router.changer)
    for use in file.bits:
        at_hand = _is_in(view, bed, use) or (not changer and _lies_beside(view, bed, use))
        if at_hand or use.diameter_mm in found:
            continue
        ready = find_ready_bit(view, bed, use, brought.bits)
        number = ready.id if ready else ""
        found[use.diameter_mm] = BitToBring(use.diameter_mm, number)
        brought.bits.add(number)
    return tuple(found.values())


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
