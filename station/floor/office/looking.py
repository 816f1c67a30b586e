"""What could go wrong in a cut file's text, looked at one by one: in the list and on the drawing.

Each bears the number that it has in the list.
"""

import math
from dataclasses import replace

from station.floor.office.work import OfficeHand, ReadText
from station.floor.shared.no_row import NO_ROW
from station.shop.acts import attention, notice
from station.shop.rooms import Point, Took
from station.shop.words import say

PAGE = 3  # problems on a page of the list
NEAR_MM = 120.0  # from a problem's place, where it is not told how far a finger reaches


def look_at_row(hand: OfficeHand, read: ReadText, row: int) -> Took:
    """Looks at the problem in a row of the page that is shown."""
    return _look_at(hand, read, find_page(hand, read) * PAGE + row + 1)


def look_at_next(hand: OfficeHand) -> Took:
    """Looks at the problem after the one that is looked at; after the last at the first."""
    held = hand.work.intake
    if held.read is None or not held.read.told:
        return Took(hand, notice(say("There is no problem"), say("Look it over.")))
    return _look_at(hand, held.read, held.problem % len(held.read.told) + 1)


def look_at_place(hand: OfficeHand, read: ReadText, given: Point) -> Took | None:
    """Looks at the problem nearest to a place on the sheet; again: at the next one there."""
    reach = given.near_mm or NEAR_MM
    near = [
        (math.dist(p.at, given.place), number)
        for number, p in enumerate(read.told, 1)
        if p.at and math.dist(p.at, given.place) <= reach
    ]
    if not near:
        do = say("Touch a number.")
        if hand.work.intake.drawn:
            do = say("Touch a number, or bring this place closer.")
        return Took(hand, notice(say("No problem lies there"), do))
    least = min(near)[0]
    here = [number for away, number in near if away <= least + 1.0]
    after = [number for number in here if number > hand.work.intake.problem]
    now = hand.work.intake.problem
    return _look_at(hand, read, after[0] if now in here and after else here[0])


def find_page(hand: OfficeHand, read: ReadText) -> int:
    """Finds which page of the problems is shown, from 0."""
    return hand.work.page % max(1, -(-len(read.told) // PAGE))


def _look_at(hand: OfficeHand, read: ReadText, number: int) -> Took:
    """Looks at a problem by its number: its page of the list, its place brought closer."""
    if not 1 <= number <= len(read.told):
        return Took(hand, NO_ROW)
    problem = read.told[number - 1]
    asked = hand.work.intake.asked[0] + 1, "look"
    held = replace(hand.work.intake, problem=number, asked=asked)
    after = replace(hand, work=replace(hand.work, intake=held, page=(number - 1) // PAGE))
    do = (
        say("It is marked on the drawing.") if problem.at else say("It has no place on the sheet.")
    )
    return Took(after, attention(say("{n}: {what}", n=number, what=problem.words), do))
