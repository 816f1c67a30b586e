"""Asks what a bit that the shop does not know yet is like: one of a kind it knows, or a size.

The kinds stand as rows, without the codes of their bits: a bit whose card is scanned is known.
"""

from station.floor.loading.acts import EnterBit
from station.floor.loading.needs import list_later_uses
from station.floor.loading.preparing import (
    MOST_SIZES,
    Now,
    close_question,
    find_pocket,
    open_question,
    untick_bit,
)
from station.floor.shared.no_row import NO_ROW
from station.shop.acts import question, refuse
from station.shop.facts import Bit
from station.shop.rooms import Do, Number, Took
from station.shop.words import MM, length, say

MOST = 200  # bits that are looked through


def press_new_bit(here: Now) -> Took:
    """Opens the question."""
    asked = question(
        say("What is the new bit?"),
        say("Touch its kind, or enter its diameter in {unit}.", unit=MM),
    )
    return Took(open_question(here.hand, "new_bit"), asked)


def list_kinds(here: Now) -> tuple[Bit, ...]:
    """Lists a bit of each kind that the shop knows: those that the file asks for stand first."""
    own = [bit for _, name in here.bed.bits if (bit := here.view.get(Bit, name))]
    lying = [b for s in ("good", "worn", "broken") for b in here.view.shelf(Bit, s, MOST)]
    kinds: dict[tuple[str, float], Bit] = {}
    for bit in (*own, *lying):
        kinds.setdefault((bit.words, bit.diameter_mm), bit)
    run = here.running if here.bed.sheet else here.next_run
    wanted = {use.diameter_mm for use in run.bits} if run else set()
    found = sorted(kinds.values(), key=lambda bit: bit.diameter_mm not in wanted)
    return tuple(found[:MOST_SIZES])


def choose_kind(here: Now, row: int) -> Do | Took:
    """Enters a bit of the kind of a row."""
    kinds = list_kinds(here)
    if row > len(kinds):
        return Took(here.hand, NO_ROW)
    like = kinds[row - 1]
    return _enter_bit(here, EnterBit(like=like.id), like.diameter_mm)


def enter_size(here: Now, given: Number) -> Do | Took:
    """Enters a bit of a diameter, whatever its kind."""
    if given.length is None:
        said = say("{typed} is no diameter", typed=given.text)
        return Took(
            here.hand,
            refuse(
                said, say("Enter the {unit}, such as {example}.", unit=MM, example=length(6.35))
            ),
        )
    return _enter_bit(here, EnterBit(diameter_mm=given.length), given.length)


def _enter_bit(here: Now, known: EnterBit, diameter_mm: float) -> Do:
    args = EnterBit(
        like=known.like, diameter_mm=known.diameter_mm, pocket=_choose_pocket(here, diameter_mm)
    )
    after = close_question(here.hand if args.pocket < 0 else untick_bit(here.hand))
    return Do(here.subject, args, after, ("bit",))


def _choose_pocket(here: Now, diameter_mm: float) -> int:
    """Chooses where it goes: where it is wanted now, or no fit bit is in; else the drawer."""
    router = here.router
    if router and router.changer:
        pocket = find_pocket(here, diameter_mm)
        return -1 if pocket is None else pocket
    inside = here.view.get(Bit, dict(here.bed.bits).get(0, ""))
    if inside is None or inside.state != "good":
        return 0
    if here.bed.state == "cutting":
        later = list_later_uses(here.view, here.bed, here.running) if here.running else ()
        return 0 if later and later[0].diameter_mm == diameter_mm else -1
    wanted = here.next_run.bits[:1] if here.next_run else ()
    return 0 if any(use.diameter_mm == diameter_mm for use in wanted) else -1
