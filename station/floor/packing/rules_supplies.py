"""Decides on what packs take: mailers, wrap and labels, counted and used up."""

from station.floor.packing.acts import CountSupplies
from station.queries.buying import note_came
from station.queries.supplies import TENTHS, WRAP, count_left, find_supply, name_supply
from station.shop.acts import Act, Answer, attention, good, refuse
from station.shop.moves import SUPPLY, move, tail
from station.shop.views import View
from station.shop.words import say

MOST = 100_000


def count_supplies(act: Act[CountSupplies], view: View) -> Answer:
    """Corrects the book to what there really is of a mailer, wrap or labels."""
    number, counted = tail(act.subject), act.args.counted
    supply = find_supply(view, number)
    if supply is None:
        return refuse(say("Packs take no such thing"), say("Touch a row."))
    if not 0 <= counted <= MOST:
        return refuse(say("{n} is no count of it", n=counted), say("Count it again."))
    there = counted
    if number == WRAP:
        tenths = act.args.tenths
        there = counted * TENTHS if tenths is None else tenths
    more = there - count_left(view, number)
    ends = ("bought", "supplies") if more > 0 else ("supplies", "recount")
    moves = (move(SUPPLY, abs(more), *ends, name_supply(number)),) if more else ()
    came = note_came(view, "mailer", number, max(0, more))
    said = say("{name}: {n} there", name=supply.name, n=counted)
    if not counted:
        return attention(said, say("Order new ones."), moves=moves, sets=came)
    if counted < supply.mark:
        do = say("Below the minimum of {n}: order new ones.", n=supply.mark)
        return attention(said, do, moves=moves, sets=came)
    return good(said, say("Packs count it down."), moves=moves, sets=came)
