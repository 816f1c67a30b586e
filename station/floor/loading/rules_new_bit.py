"""Decides on a bit that the shop does not know yet: entered at the router, approved later."""

from dataclasses import replace

from station.floor.loading.acts import EnterBit
from station.floor.loading.needs import refuse_no_router
from station.floor.loading.rules_stop import put_bit_in, refuse_unfit
from station.queries.buying import note_bit_came
from station.queries.routers import find_bed, name_router
from station.shop.acts import Act, Answer, good, new_number, refuse
from station.shop.facts import Bed, Bit, Concern
from station.shop.moves import tail
from station.shop.views import View
from station.shop.words import MM, length, say

# mm across its edges: common practice, no source
SMALLEST, LARGEST = 0.3, 80.0


def enter_bit(act: Act[EnterBit], view: View) -> Answer:
    """Enters a bit under a number of its own: work goes on with it, a supervisor looks later."""
    if wrong := refuse_no_router(act, view):
        return wrong
    like = view.get(Bit, act.args.like)
    size = like.diameter_mm if like else act.args.diameter_mm
    if not SMALLEST <= size <= LARGEST:
        said = say("{size} mm is no bit's diameter", size=length(size))
        return refuse(said, say("Measure it across its edges, enter {unit}.", unit=MM))
    bed, number = find_bed(view, tail(act.subject)), new_number(act, "bit")
    bit = Bit(id=number, words=str(say("{size} mm", size=length(size))), diameter_mm=size)
    if like:
        bit = replace(like, id=number, router="", state="good")
    concern, came = _ask_for_look(act, view, bed, bit), note_bit_came(view, size)
    if act.args.pocket < 0:
        said = say("Bit {bit} is new: {words}", bit=bit.id, words=bit.words)
        do = say("Its card goes with it into the drawer.")
        return good(said, do, sets=(bit, concern, *came), prints=(("card", bit.key),))
    if refused := refuse_unfit(view, bed, bit):
        return refused
    done = put_bit_in(act, view, bed, bit, act.args.pocket)
    said = say("Bit {bit} is new and in: {words}", bit=bit.id, words=bit.words)
    return replace(done, said=said, sets=(*done.sets, concern, *came), prints=(("card", bit.key),))


def _ask_for_look(act: Act[EnterBit], view: View, bed: Bed, bit: Bit) -> Concern:
    """Asks a supervisor to look at what a worker entered."""
    text = say(
        "Bit {bit} is new at {router}, entered by worker {by}: {words}, {size} mm",
        bit=bit.id,
        router=name_router(view, bed.id),
        by=act.worker,
        words=bit.words,
        size=length(bit.diameter_mm),
    )
    return Concern(
        id=act.id,
        what="new-bit",
        since=act.at,
        about=bit.key,
        text=text,
        choices=("approve it", "take it out"),
    )
