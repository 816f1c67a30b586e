"""Finds the life of a thing: the entries about it and about what it came from, newest first."""

from typing import NamedTuple

from station.queries.routers import name_router
from station.queries.things import Thing
from station.shop.facts import Pack, Slip
from station.shop.moves import head, tail
from station.shop.views import Told, View
from station.shop.words import Say, say

PAGE = 12  # lines of a life on one page


class LifeStep(NamedTuple):
    """One line of a life: when, who, what was done; `own` is about the thing itself.

    `station` is the one that shared it; empty where nothing was written down.
    """

    at: str
    worker: str
    said: Say
    own: bool
    undone: bool = False
    station: str = ""


class LifePage(NamedTuple):
    """A page of a life, from 0; `more`: another one follows."""

    steps: tuple[LifeStep, ...]
    page: int
    more: bool


def list_life(view: View, thing: Thing, page: int) -> LifePage:
    """Lists one page of the life of a thing."""
    limit = PAGE * (page + 1) + 1
    told: list[tuple[int, LifeStep]] = []
    for number, about in enumerate(thing.about):
        told += [(t.number, _step(t, own=not number)) for t in view.told(about, limit)]
    steps = [step for _, step in sorted(told, key=lambda t: (t[1].at, t[0]))]
    steps += _list_unwritten(view, thing, steps)
    return _cut_page(sorted(steps, key=lambda s: s.at)[::-1], page)


def list_history(view: View, page: int) -> LifePage:
    """Lists one page of all that was done in the shop."""
    return _cut_page([_step(t, own=True) for t in view.told("", PAGE * (page + 1) + 1)], page)


def _cut_page(steps: list[LifeStep], page: int) -> LifePage:
    """Cuts a page out; one behind the last is the last."""
    page = min(page, max(0, (len(steps) - 1) // PAGE))
    shown = steps[PAGE * page : PAGE * (page + 1)]
    return LifePage(tuple(shown), page, len(steps) > PAGE * (page + 1))


def _step(told: Told, *, own: bool) -> LifeStep:
    return LifeStep(told.at, told.worker, told.said, own, told.undone, told.station)


def _list_unwritten(view: View, thing: Thing, steps: list[LifeStep]) -> list[LifeStep]:
    """Lists what was done with a thing under another subject: its router's, its cart's."""
    known = {(s.at, s.worker) for s in steps}
    found = []
    for key in thing.about:
        slip = view.get(Slip, tail(key)) if head(key) == "slip" else None
        if slip and (slip.at, slip.by) not in known:
            said = say("Sheet {n} of batch {batch} off {router}, {minutes} min", n=slip.sheet,
                       batch=slip.batch, router=name_router(view, slip.router),
                       minutes=round(slip.minutes))  # fmt: skip
            found.append(LifeStep(slip.at, slip.by, said, own=False))
        pack = view.get(Pack, tail(key)) if head(key) == "pack" else None
        if pack and pack.left:
            said = say("Pack {pack} left with its cart", pack=pack.id)
            found.append(LifeStep(pack.left, "", said, own=True))
    return found
