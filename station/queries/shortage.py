"""Questions about what orders lack: wanted, free, kept back, under way, part by part.

All parts are looked over at once, for one order's question would read the same places again and
again.
"""

from bisect import bisect_left
from collections.abc import Iterator
from typing import NamedTuple

from station.queries.batches import (
    find_hold,
    find_order,
    find_revision,
    is_approved,
    keep_free,
    keep_held,
)
from station.queries.orders import count_wanted
from station.queries.routers import list_beds
from station.queries.shelf import deal_packs
from station.queries.stock import list_on_rack
from station.queries.underway import MOST, list_queue
from station.shop.facts import Batch, Order, Part, Slip
from station.shop.moves import Held
from station.shop.views import View, by_part
from station.shop.words import Say, say

Counts = dict[str, dict[str, int]]  # part or order: stage: pieces
STAGES = ("rework", "trimming", "popping", "bed", "queue")  # the farthest on first
ORDERS = 1000  # open ones that are looked through
PARTS = 2000


class Taken(NamedTuple):
    """Pieces of a part that an order still takes from the rack."""

    order: Order
    pieces: int


class Standing(NamedTuple):
    """How a part stands: who still takes it, by due time; what lies where; what is under way.

    `kept_back` are the pieces whose batch is held or in doubt, on the rack, in open packs and on
    their way: they count nowhere else. `coming` counts by stage: rework, trimming, popping, bed,
    queue. `own` is what orders still take that comes on sheets for them alone: no other takes it.
    """

    part: Part
    takers: tuple[Taken, ...]
    free: int
    kept_back: int
    coming: dict[str, int]
    own: tuple[Taken, ...] = ()

    @property
    def wanted(self) -> int:
        """Pieces that open orders still take, of their own sheets too."""
        return sum(t.pieces for t in (*self.takers, *self.own))

    @property
    def under_way(self) -> int:
        """Pieces on their way to the rack or to one order, those still to be cut too."""
        return sum(self.coming.values()) + sum(t.pieces for t in self.own)

    @property
    def lacking(self) -> int:
        """Pieces that are neither there nor under way."""
        return max(0, self.wanted - self.free - self.under_way)

    def list_blocked(self, without: int = 0) -> tuple[Order, ...]:
        """Lists the orders that cannot have the part: what comes is given out by due time.

        Where so many pieces that come are not counted, also those that wait for them.
        """
        left, found = self.free + sum(self.coming.values()) - without, []
        for taker in self.takers:
            if taker.pieces > left:
                found.append(taker.order)
            else:
                left -= taker.pieces
        return tuple(found)


class Blocking(NamedTuple):
    """A part that open orders lack and that is not under way, with the orders it blocks."""

    standing: Standing
    orders: tuple[Order, ...]
    late: int

    @property
    def words(self) -> Say:
        """What it blocks, for a person."""
        return say_blocking(self.standing.part.name, len(self.orders), self.late)


def list_blocking(view: View, now: str) -> tuple[Blocking, ...]:
    """Lists the parts that block orders, the one with most late orders first."""
    found = [
        Blocking(standing, orders, bisect_left(dues, now))
        for standing, orders, dues in view.once("shortage/blocked", _list_blocked)
    ]
    return tuple(sorted(found, key=lambda b: (-b.late, -len(b.orders), b.standing.part.id)))


def _list_blocked(
    view: View,
) -> tuple[tuple[Standing, tuple[Order, ...], tuple[str, ...]], ...]:
    """Lists the parts that open orders lack, each with the orders without it, and their dues."""
    blocked = (
        (standing, standing.list_blocked())
        for standing in survey_parts(view, wanted_only=True)
        if standing.lacking
    )
    return tuple(
        (standing, orders, tuple(sorted(o.due for o in orders))) for standing, orders in blocked
    )


def list_waiting_for(view: View, batch: Batch) -> tuple[Order, ...]:
    """Lists the orders that wait now for what is still to be cut of a batch, by due time."""
    revision = find_revision(view, batch)
    makes = revision.makes() if revision and not find_hold(view, batch.id) else {}
    left = max(0, batch.sheets - batch.cut)
    own = find_order(view, batch)
    wanted = [s for s in view.once("shortage/wanted", _survey_wanted) if s.part.id in makes]
    if own:
        takes = any(taken.order.id == own.id for standing in wanted for taken in standing.own)
        return (own,) if takes and left else ()
    found = {
        order.id: order
        for standing in wanted
        for order in standing.list_blocked(makes[standing.part.id] * left)
    }
    return tuple(sorted(found.values(), key=lambda o: (o.due, o.id)))


def _survey_wanted(view: View) -> tuple[Standing, ...]:
    return survey_parts(view, wanted_only=True)


def say_blocking(part: str, orders: int, late: int) -> Say:
    """Says that a part blocks so many orders."""
    if late:
        return say("Blocks {n} {n|order|orders}, {late} of them late: {part}", n=orders,
                   late=late, part=part)  # fmt: skip
    return say("Blocks {n} {n|order|orders}: {part}", n=orders, part=part)


def survey_parts(view: View, *, wanted_only: bool = False) -> tuple[Standing, ...]:
    """Looks over every part in use; with `wanted_only` over those that orders still take."""
    takers = _find_takers(view)
    parts = [p for p in view.shelf(Part, "all", PARTS) if p.active or p.id in takers]
    if wanted_only:
        parts = [p for p in parts if p.id in takers]
    coming, kept, theirs = _count_coming(view) if parts else ({}, {}, {})
    own = {part: _deal_own(takers.get(part, []), coming, theirs[part], part) for part in theirs}
    for held in _list_held_in_packs(view) if parts else ():
        kept[held.part] = kept.get(held.part, 0) + held.qty
    return tuple(
        _stand(
            view, part, takers.get(part.id, []), coming.get(part.id, {}), kept.get(part.id, 0)
        )._replace(own=tuple(own.get(part.id, ())))
        for part in parts
    )


def _deal_own(takers: list[Taken], coming: Counts, theirs: Counts, part: str) -> list[Taken]:
    """Deals a part's pieces on sheets for one order alone to that order, those farthest on first.

    Takes them from what it still takes of others; what is beyond is for the rack. Gives what
    each takes of its own; `theirs` are pieces by order and stage.
    """
    dealt, open_ = [], {taken.order.id: taken for taken in takers}
    for number, stages in theirs.items():
        taken = open_.get(number)
        left = taken.pieces if taken else 0
        for stage in sorted(stages, key=STAGES.index):
            took = min(left, stages[stage])
            left -= took
            if beyond := stages[stage] - took:
                here = coming.setdefault(part, {})
                here[stage] = here.get(stage, 0) + beyond
        if taken and left < taken.pieces:
            dealt.append(taken._replace(pieces=taken.pieces - left))
            open_[number] = taken._replace(pieces=left)
    takers[:] = [taken for taken in open_.values() if taken.pieces]
    return sorted(dealt, key=lambda taken: (taken.order.due, taken.order.id))


def _stand(
    view: View, part: Part, takers: list[Taken], coming: dict[str, int], kept: int
) -> Standing:
    lying = list_on_rack(view, part)
    held = sum(h.qty for h in lying if find_hold(view, h.batch))
    free = sum(h.qty for h in lying) - held
    return Standing(part, tuple(takers), free, kept + held, coming)


def _find_takers(view: View) -> dict[str, list[Taken]]:
    """Finds who still takes each part, by due time; what is held in an open pack may not leave."""
    found: dict[str, list[Taken]] = {}
    for order in view.shelf(Order, "open", ORDERS):
        inside = by_part(keep_free(view, view.stock(place=f"packing/{order.id}")))
        ahead = deal_packs(view).get(order.id, {})
        for part, count in count_wanted(view, order).items():
            if (left := count - inside.get(part, 0) - ahead.get(part, 0)) > 0:
                found.setdefault(part, []).append(Taken(order, left))
    return found


def _list_held_in_packs(view: View) -> Iterator[Held]:
    """Lists the held pieces in the open packs of open orders."""
    for order in view.shelf(Order, "open", ORDERS):
        yield from keep_held(view, view.stock(place=f"packing/{order.id}"))


def _count_coming(view: View) -> tuple[Counts, dict[str, int], dict[str, Counts]]:
    """Counts what is under way by part and stage; by part what is kept back of it; and by part and
    order what is on sheets for that order alone.
    """
    coming: Counts = {}
    kept: dict[str, int] = {}
    theirs: dict[str, Counts] = {}
    known: dict[str, tuple[bool, str]] = {}
    for stage, lot in _list_under_way(view):
        if lot.batch not in known:
            known[lot.batch] = find_hold(view, lot.batch) is not None, _find_own(view, lot.batch)
        held, order = known[lot.batch]
        if held:
            is_cut = stage not in ("bed", "queue")  # what is not cut yet is nobody's
            kept[lot.part] = kept.get(lot.part, 0) + lot.qty * is_cut
        else:
            of = theirs.setdefault(lot.part, {}) if order else coming
            here = of.setdefault(order or lot.part, {})
            here[stage] = here.get(stage, 0) + lot.qty
    return coming, kept, theirs


def _find_own(view: View, number: str) -> str:
    """Finds the order that a batch is cut for alone, while it takes pieces; empty: none."""
    batch = view.get(Batch, number)
    order = find_order(view, batch) if batch else None
    return order.id if order else ""


def _list_under_way(view: View) -> Iterator[tuple[str, Held]]:
    """Lists what is under way, each line with its stage."""
    for place in ("rework", "trimming"):
        yield from ((place, held) for held in view.stock(place=place))
    for slip in view.shelf(Slip, "popping", MOST):
        for held in view.stock(batch=slip.batch, place=f"popping/{slip.sheet}"):
            yield "popping", held
    for router, bed in list_beds(view):
        for batch in list_queue(view, router.id):
            revision = find_revision(view, batch)
            on_bed = int(bed.batch == batch.id and bool(bed.sheet) and bed.state != "free")
            left = max(0, batch.sheets - batch.cut - on_bed) if is_approved(view, batch) else 0
            for part, each in revision.makes().items() if revision else ():
                if on_bed:
                    yield "bed", Held("", batch.id, part, each)
                if left:
                    yield "queue", Held("", batch.id, part, each * left)
