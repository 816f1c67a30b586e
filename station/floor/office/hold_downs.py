"""Where a clamped sheet of a cut file is held down: proposed in the waste, moved by touch."""

import math
from dataclasses import replace

from station.floor.office.work import OfficeHand, ReadText
from station.queries.hold_downs import refuse_place
from station.shop.acts import Answer, good, refuse
from station.shop.rooms import Input, Point, Took
from station.shop.words import say

NEAR_MM = 60.0  # from a hold-down, where it is not told how far a finger reaches
MOST = 24  # hold-downs of a sheet
Places = tuple[tuple[float, float], ...]


def turn_holding(hand: OfficeHand) -> Took:
    """Shows the hold-downs; from there, what was read of the text."""
    held = hand.work.intake
    after = replace(held, holding=not held.holding, held=None, drawn=False, how="")
    answer = good(say("What was read of it"), say("Look it over."))
    if after.holding:
        answer = good(say("The hold-downs"), say("Touch one, then where it is to stand."))
    return Took(replace(hand, work=replace(hand.work, intake=after)), answer)


def handle_holding(hand: OfficeHand, read: ReadText, given: Input, name: str) -> Took | None:
    """Takes a touch on the sheet: a hold-down is chosen, moved, put there or taken away."""
    if name == "as_proposed":
        return _set_places(hand, read, read.laying.proposed, good(
            say("{n} {n|hold-down|hold-downs} as proposed", n=len(read.laying.proposed)),
            say("Touch one, then where it is to stand."),
        ))  # fmt: skip
    if not isinstance(given, Point):
        return None
    places, chosen = read.revision.hold_downs, hand.work.intake.held
    at, reach = given.place, given.near_mm or NEAR_MM
    near = min(range(len(places)), key=lambda n: math.dist(places[n], at), default=None)
    on_one = near is not None and math.dist(places[near], at) <= reach
    if on_one and chosen is None:
        held = replace(hand.work.intake, held=near)
        do = say("Touch where it is to stand; touch it again to take it away.")
        return Took(
            replace(hand, work=replace(hand.work, intake=held)),
            good(say("Hold-down {n}", n=(near or 0) + 1), do),
        )
    if on_one and near == chosen:
        rest = tuple(p for n, p in enumerate(places) if n != near)
        return _set_places(hand, read, rest, good(
            say("Hold-down {n} is taken away", n=(near or 0) + 1), say("{n} left.", n=len(rest))
        ))  # fmt: skip
    return _put_there(hand, read, chosen, (round(given.x_mm, 1), round(given.y_mm, 1)))


def _put_there(
    hand: OfficeHand, read: ReadText, chosen: int | None, place: tuple[float, float]
) -> Took:
    """Puts the chosen hold-down, or one more, where no cut and no piece is."""
    places = list(read.revision.hold_downs)
    if chosen is None and len(places) >= MOST:
        said = say("There are {n} {n|hold-down|hold-downs} already", n=MOST)
        return Took(hand, refuse(said, say("Move one, or take one away.")))
    if wrong := refuse_place(read.revision, place):
        return Took(hand, wrong)
    if chosen is None:
        places.append(place)
        said = say("Hold-down {n} stands there", n=len(places))
    else:
        places[chosen] = place
        said = say("Hold-down {n} is moved", n=chosen + 1)
    answer = good(said, say("It is clear of every cut and piece."))
    return _set_places(hand, read, tuple(places), answer)


def _set_places(hand: OfficeHand, read: ReadText, places: Places, answer: Answer) -> Took:
    """Sets where the hold-downs stand in the revision that is taken in."""
    now = replace(read, revision=replace(read.revision, hold_downs=places))
    held = replace(hand.work.intake, read=now, held=None)
    return Took(replace(hand, work=replace(hand.work, intake=held)), answer)
