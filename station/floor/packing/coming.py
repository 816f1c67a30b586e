"""Where more pieces of a part are under way: what a packer can wait for."""

from typing import NamedTuple

from station.queries.batches import find_hold, find_revision
from station.queries.routers import find_bed
from station.shop.facts import Batch, Order, Router, Slip
from station.shop.views import View
from station.shop.words import Say, clock, day, say, together


class Coming(NamedTuple):
    """Pieces of a part by where they are, and the earliest due time of their batches.

    `bed` are on a router's bed now, `queue` on sheets that are still to be cut.
    """

    trimming: int
    rework: int
    popping: int
    bed: int
    queue: int
    due: str

    @property
    def all(self) -> int:
        """Pieces under way, wherever they are."""
        return self.trimming + self.rework + self.popping + self.bed + self.queue

    def words(self, now: str) -> Say:
        """The places in words: 160 in trimming and 24 at popping, due 14:00."""
        places = (
            (self.trimming, say("{n} in trimming", n=self.trimming)),
            (self.rework, say("{n} in rework", n=self.rework)),
            (self.popping, say("{n} at popping", n=self.popping)),
            (self.bed, say("{n} being cut", n=self.bed)),
            (self.queue, say("{n} still to be cut", n=self.queue)),
        )
        where = together([words for count, words in places if count])
        if not self.due:
            return where
        return say("{where}, due {at}", where=where, at=when(self.due, now))


def when(at: str, now: str) -> Say:
    """A time of today as its clock, any other as its day."""
    if at[:10] == now[:10]:
        return say("{at}", at=clock(at))
    return say("{day}", day=day(at))


def coming(view: View, part: str, order: str = "") -> Coming:
    """Pieces of a part that may reach the rack, or this order, from where they are now.

    Batches that are held, and those cut for another order that still wants them, do not
    count.
    """
    dues: list[str] = []
    found = Coming(
        _lying(view, part, order, "trimming", dues),
        _lying(view, part, order, "rework", dues),
        _at_popping(view, part, order, dues),
        *_to_cut(view, part, order, dues),
        due="",
    )
    return found._replace(due=min(filter(None, dues), default=""))


def _free(view: View, batch: Batch | None, order: str) -> bool:
    """Whether pieces of a batch may come to this order."""
    if batch is None:
        return True
    if find_hold(view, batch.id):
        return False
    theirs = view.get(Order, batch.order) if batch.order not in ("", order) else None
    return theirs is None or not theirs.takes_pieces


def _lying(view: View, part: str, order: str, place: str, dues: list[str]) -> int:
    count = 0
    for held in view.stock(place=place):
        batch = view.get(Batch, held.batch) if held.part == part else None
        if held.part == part and _free(view, batch, order):
            count += held.qty
            dues.append(batch.due if batch else "")
    return count


def _at_popping(view: View, part: str, order: str, dues: list[str]) -> int:
    count = 0
    for slip in view.shelf(Slip, "popping", 500):
        batch = view.get(Batch, slip.batch)
        if not _free(view, batch, order):
            continue
        held = view.stock(batch=slip.batch, place=f"popping/{slip.sheet}")
        here = sum(h.qty for h in held if h.part == part)
        count += here
        dues.append(batch.due if batch and here else "")
    return count


def _to_cut(view: View, part: str, order: str, dues: list[str]) -> tuple[int, int]:
    """Pieces on the beds now, and on the sheets that are still to be cut."""
    bed_count = queue_count = 0
    for router in view.shelf(Router, "all", 50):
        bed = find_bed(view, router.id)
        for batch in view.shelf(Batch, f"queue/{router.id}", 200):
            revision = find_revision(view, batch)
            each = revision.makes().get(part, 0) if revision else 0
            if not each or not _free(view, batch, order):
                continue
            on_bed = bool(bed.batch == batch.id and bed.sheet and bed.state != "free")
            bed_count += each * on_bed
            queue_count += each * max(0, batch.sheets - batch.cut - on_bed)
            dues.append(batch.due)
    return bed_count, queue_count
