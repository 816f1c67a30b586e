"""Puts a bit where the office says that it is: into its router's spindle or pocket, or out.

A bit whose router is said in the office is in it, as if its card had been scanned there. Where
another bit is in that place it lies in the drawer, and loading offers it from there.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import NamedTuple

from station.queries.routers import find_bed, name_router
from station.shop.acts import Answer, refuse
from station.shop.facts import Bed, Bit, CutFile, Fact, Revision, Router
from station.shop.views import View
from station.shop.words import Say, say

MOST = 500  # cut files
SPINDLE = 0


class Seated(NamedTuple):
    """What follows from where bits are said to be: the facts as they are set, the beds, words."""

    facts: tuple[Fact, ...]
    beds: tuple[Bed, ...] = ()
    told: Say = Say()  # of the last bit that found its place taken
    wrong: Answer | None = None


def seat_bits(facts: Iterable[Fact], view: View, at: str) -> Seated:
    """Puts each bit among the facts in or out; the others stay as they are.

    Refuses where a bit would leave or enter a router with a sheet on its bed.
    """
    made: list[Fact] = []
    beds: dict[str, Bed] = {}
    told = Say()
    for fact in facts:
        if not isinstance(fact, Bit):
            made.append(fact)
            continue
        before = view.get(Bit, fact.id)
        for router in {fact.router, before.router if before else ""} - {""}:
            bed = beds.setdefault(router, find_bed(view, router))
            if bed.sheet and (fact.router == router) != _holds(bed, fact.id):
                return Seated((), wrong=_refuse_meanwhile(view, router, fact))
        bit, said = _seat(fact, before, beds, view, at)
        told = said or told
        made.append(bit)
    changed = (b for b in beds.values() if b != find_bed(view, b.id))
    return Seated(tuple(made), tuple(changed), told)


def _holds(bed: Bed, bit: str) -> bool:
    return bit in dict(bed.bits).values()


def _refuse_meanwhile(view: View, router: str, bit: Bit) -> Answer:
    return refuse(
        say("A sheet is on the bed of {router}", router=name_router(view, router)),
        say("Scan the card of bit {bit} at that router instead.", bit=bit.id),
    )


def _seat(
    bit: Bit, before: Bit | None, beds: dict[str, Bed], view: View, at: str
) -> tuple[Bit, Say]:
    """Gives the bit with where it is then, changing the beds; words where it found no place."""
    if before and before.router and before.router != bit.router:
        old = beds[before.router]
        left = tuple((place, b) for place, b in old.bits if b != bit.id)
        beds[old.id] = replace(old, bits=left)
    if not bit.router or _holds(beds[bit.router], bit.id) or bit.state != "good":
        return bit, Say()
    bed, router = beds[bit.router], view.get(Router, bit.router)
    place = _find_pocket(bit, bed, view) if router and router.changer else SPINDLE
    if place is None:
        return replace(bit, router=""), say(
            "No pocket of {router} asks for it yet: it lies in the drawer.",
            router=name_router(view, bed.id),
        )
    if other := dict(bed.bits).get(place):
        return replace(bit, router=""), say(
            "Bit {other} is in {router}: this one lies in the drawer.",
            other=other,
            router=name_router(view, bed.id),
        )
    new = f"new bit {bit.id}"  # as loading writes it
    beds[bed.id] = replace(
        bed,
        bits=tuple(sorted((*bed.bits, (place, bit.id)))),
        first_off=new,
        zero=new,
        zero_since=at,
    )
    return bit, Say()


def _find_pocket(bit: Bit, bed: Bed, view: View) -> int | None:
    """Finds the free pocket that an approved file of this router asks such a bit for."""
    taken = dict(bed.bits)
    for cut_file in view.shelf(CutFile, "all", MOST):
        revision = view.get(Revision, Revision.id_of(cut_file.id, cut_file.approved))
        for use in revision.bits if revision and revision.takes(bed.id) else ():
            if use.diameter_mm == bit.diameter_mm and use.number not in taken:
                return use.number
    return None
