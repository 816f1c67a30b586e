"""Questions about what one shift leaves to the next: beds and stops, open packs."""

from typing import NamedTuple

from station.queries.orders import MOST, count_inside, count_wanted
from station.queries.routers import find_bed, list_routers
from station.shop.facts import Bed, Order, Reason, Router
from station.shop.first_facts import say_reason
from station.shop.views import View
from station.shop.words import Say, moment, say, together, when


class LeftBed(NamedTuple):
    """A router and what is left on its bed, in words; `wrong`: it does not simply go on."""

    router: Router
    words: Say
    wrong: bool


class OpenPack(NamedTuple):
    """An order with pieces in its open pack: how many are in, of how many."""

    order: Order
    inside: int
    wanted: int

    @property
    def words(self) -> Say:
        """How far it is, and where."""
        if self.order.state == "cancelled":
            return say("{n} to put back: it is cancelled", n=self.inside)
        far = say("{n} of {all} in it", n=self.inside, all=self.wanted)
        if not self.order.claimed:
            return far
        return say("{far}, at station {station}", far=far, station=self.order.claimed)


def list_left_beds(view: View, now: str) -> tuple[LeftBed, ...]:
    """Lists every router in use with what is left on its bed."""
    beds = ((router, find_bed(view, router.id)) for router in list_routers(view))
    return tuple(
        LeftBed(router, _describe_bed(view, bed, now), _is_wrong(bed, now)) for router, bed in beds
    )


def _is_wrong(bed: Bed, now: str) -> bool:
    late = bed.state == "cutting" and "" < bed.ends < now
    return late or bed.state == "stopped" or bool(bed.rehome)


def _describe_bed(view: View, bed: Bed, now: str) -> Say:
    """Describes what is on a bed, since when it stands still, and what must be done first."""
    told = [_describe_sheet(bed, now)]
    if bed.state == "stopped":
        reason = view.get(Reason, bed.stop)
        why = say_reason(reason) if reason else say("no reason given")
        told.append(say("stopped since {at}: {why}", at=when_exactly(bed.stopped, now), why=why))
    told += [say("first-off {state}", state=f.state) for f in bed.firsts if f.state != "agreed"]
    told += [say("zero is due")] * bool(bed.zero) + [say("re-home it")] * bool(bed.rehome)
    return together(told)


def _describe_sheet(bed: Bed, now: str) -> Say:
    if not bed.sheet:
        return say("batch {batch} is taken on", batch=bed.batch) if bed.batch else say("free")
    on_it = say("batch {batch}, sheet {sheet} on it", batch=bed.batch, sheet=bed.sheet)
    if bed.state != "cutting" or not bed.ends:
        return on_it
    if bed.ends < now:
        return say(
            "{on_it}, should be off since {at}", on_it=on_it, at=when_exactly(bed.ends, now)
        )
    return say("{on_it}, off at {at}", on_it=on_it, at=when_exactly(bed.ends, now))


def when_exactly(at: str, now: str) -> Say:
    """Says a time of today by its clock, another with its day."""
    return when(at, now) if at[:10] == now[:10] else say("{at}", at=moment(at))


def list_open_packs(view: View) -> tuple[OpenPack, ...]:
    """Lists the orders whose open packs have pieces in them by due time, cancelled ones too."""
    orders = (*view.shelf(Order, "open", MOST), *view.shelf(Order, "cancelled", MOST))
    return tuple(
        OpenPack(order, inside, sum(count_wanted(view, order).values()))
        for order in sorted(orders, key=lambda o: (o.due, o.id))
        if (inside := count_inside(view, order))
    )
