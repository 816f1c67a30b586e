"""Whether a hold-down may stand in a place of a sheet: clear of every stroke and of each piece."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from station.queries.batches import find_revision
from station.queries.runs import list_runs
from station.shop.acts import Answer, refuse
from station.shop.facts import Batch, Revision, Router
from station.shop.on_sheet import OnSheet, Points
from station.shop.views import View
from station.shop.words import Say, say

Place = tuple[float, float]
SAME_MM = 15.0  # from a place that a bed takes


class WrongHoldDown(NamedTuple):
    """A hold-down that cannot stand where it is drawn: its number on the sheet, and why."""

    number: int
    why: Say


def refuse_place(revision: Revision, place: Place) -> Answer | None:
    """Refuses a place for a hold-down where a piece lies or the bit comes."""
    if not (0 <= place[0] <= revision.length_mm and 0 <= place[1] <= revision.width_mm):
        return refuse(say("That is beside the sheet"), say("Touch a place on it."))
    if is_on_piece(revision, place):
        return refuse(say("A piece lies there"), say("Touch a place in the waste."))
    if not revision.clear.has_room(place):
        return refuse(
            say("The bit comes too near there"), say("Touch a place further from every cut.")
        )
    return None


def is_on_piece(revision: Revision, place: Place) -> bool:
    """Tells whether a place lies within a piece of a sheet, holes being free."""
    near = {part: (shape, math.hypot(*shape.box)) for part, shape in revision.shapes}
    x, y = place
    for piece in revision.placed:
        shape, reach = near.get(piece.part, (None, 0.0))
        if shape is None or abs(piece.x_mm - x) > reach or abs(piece.y_mm - y) > reach:
            continue  # nearly all: a screen asks for each hold-down at every scan
        lies = OnSheet(piece, shape)
        if _is_within(lies.place(shape.outline), place) and not any(
            _is_within(lies.place(hole), place) for hole in shape.holes
        ):
            return True
    return False


def _is_within(ring: Points, place: Place) -> bool:
    """Tells whether a place lies within a ring."""
    x, y = place
    inside = False
    for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            inside = not inside
    return inside


def find_wrong(
    revision: Revision, runs: Sequence[Revision], router: Router | None
) -> WrongHoldDown | None:
    """Finds the first hold-down of a sheet that cannot stand as it is drawn; None: each can.

    `runs` are all that run on the sheet: a piece of any of them may not lie under one, nor may
    the bit come near those that are set for its own run. A bed that takes hold-downs in places of
    its own must have each.
    """
    for number, place in enumerate(revision.hold_downs, 1):
        if not (0 <= place[0] <= revision.length_mm and 0 <= place[1] <= revision.width_mm):
            return WrongHoldDown(number, say("number {n} is beside the sheet", n=number))
        if any(is_on_piece(run, place) for run in runs):
            return WrongHoldDown(number, say("number {n} stands on a piece", n=number))
        if not revision.clear.has_room(place):
            return WrongHoldDown(number, say("the bit comes too near number {n}", n=number))
        own = router.hold_downs if router else ()
        if own and all(math.dist(place, there) > SAME_MM for there in own):
            return WrongHoldDown(number, say("this bed takes none at number {n}", n=number))
    return None


def find_wrong_on(
    view: View, batch: Batch | None, run: Revision, router: Router | None
) -> WrongHoldDown | None:
    """Finds the first hold-down in the way of one run of a batch's sheet; None: none is."""
    made = find_revision(view, batch) if batch else None
    return find_wrong(run, (run, *(list_runs(view, made) if made else ())), router)
