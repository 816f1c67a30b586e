"""Questions about what lies where: on the rack, in the store; held or free to be taken."""

from station.queries.batches import find_hold, keep_free, list_family
from station.shop.facts import Lot, Part, RackPlace, Reason
from station.shop.first_facts import say_reason
from station.shop.moves import SHEET, Held, Move, head, move, tail
from station.shop.places import find_reason_of, place_words
from station.shop.views import View, by_batch, total
from station.shop.words import Say, say, together


def list_on_rack(view: View, part: Part) -> tuple[Held, ...]:
    """Lists all that lies at a part's rack place, held or not, oldest batch first."""
    if not part.rack:
        return ()
    return tuple(h for h in view.stock(place=f"rack/{part.rack}") if h.part == part.id)


def list_free_on_rack(view: View, part: Part) -> tuple[Held, ...]:
    """Lists what may be taken from a part's rack place, oldest batch first."""
    return keep_free(view, list_on_rack(view, part))


def count_free_on_rack(view: View, part: Part, enough: int) -> int:
    """Counts what may be taken from a part's rack place, no further than `enough`."""
    free = 0
    for held in list_on_rack(view, part):
        if free >= enough:
            return enough
        free += held.qty if find_hold(view, held.batch) is None else 0
    return min(free, enough)


def count_in_store(view: View, lot: str) -> int:
    """Counts the sheets of a lot in the store."""
    return total(view.stock(batch=lot, place="store"))


def list_stored_lots(view: View, material: str) -> tuple[tuple[Lot, int], ...]:
    """Lists the lots of a material that have sheets in the store and how many, oldest first.

    The store is asked, not the lots: a shop has had hundreds, and most of them are used up.
    """
    left = by_batch(h for h in view.stock(place="store") if h.part == SHEET)
    lots = ((lot, n) for number, n in left.items() if (lot := view.get(Lot, number)))
    fit = [(lot, n) for lot, n in lots if lot.material == material and lot.active]
    return tuple(sorted(fit, key=lambda found: (found[0].received, found[0].id)))


def take_in_order(lying: tuple[Held, ...], quantity: int) -> tuple[Held, ...]:
    """Takes so many pieces from spots in their order: what comes first is taken first.

    Gives what is taken from each; fewer where there are not so many.
    """
    taken: list[Held] = []
    for held in lying:
        if quantity <= 0:
            break
        taken.append(held._replace(qty=min(held.qty, quantity)))
        quantity -= held.qty
    return tuple(taken)


def move_in_order(lying: tuple[Held, ...], quantity: int, to: str) -> tuple[Move, ...]:
    """Moves so many pieces from spots in their order to one place."""
    return tuple(move(h.part, h.qty, h.place, to, h.batch) for h in take_in_order(lying, quantity))


def name_place(view: View, place: str) -> Say:
    """Names a place for a person; a rack place by its name, what is spoiled by its reason."""
    reason = view.get(Reason, find_reason_of(place)) if find_reason_of(place) else None
    if reason:
        return say("spoiled ({number})", number=say_reason(reason))
    rack = view.get(RackPlace, tail(place)) if head(place) == "rack" else None
    return say("rack {number}", number=rack.name) if rack else place_words(place)


def tell_where(
    view: View, number: str, most: int = 3, *, gone: bool = False, besides: str = ""
) -> Say:
    """Tells where a batch's pieces lie, and those of what came of it, farthest on first.

    With `gone` those that have left the shop too; those of the work area `besides` not.
    """
    heads = (*_FARTHEST, "shipped") if gone else _FARTHEST
    lying: dict[str, int] = {}
    for batch in list_family(view, number):
        for h in view.stock(batch=batch):
            if head(h.place) in heads and head(h.place) != besides:
                lying[h.place] = lying.get(h.place, 0) + h.qty
    order = sorted(lying, key=lambda place: heads.index(head(place)))
    told = [
        say("{place}: {n}", place=name_place(view, place), n=lying[place])
        for place in order[:most]
    ]
    if len(order) > most:
        told.append(say("{n} other {n|place|places}", n=len(order) - most))
    return together(told)


def count_gone(view: View, number: str) -> int:
    """Counts the pieces of a batch, and of what came of it, that have left the shop."""
    lying = (h for batch in list_family(view, number) for h in view.stock(batch=batch))
    return sum(h.qty for h in lying if head(h.place) == "shipped")


def count_in_shop(view: View, number: str, part: str) -> int:
    """Counts the pieces of a part of a batch that are in the shop; what is missing may be."""
    lying = (h for h in view.stock(batch=number) if h.part == part)
    return sum(h.qty for h in lying if head(h.place) in (*_FARTHEST, "missing"))


# where pieces may lie, the farthest from their sheet first
_FARTHEST = ("cart", "pack", "packing", "rack", "rework", "held", "trimming", "popping", "between")


def name_part(view: View, part: str) -> str:
    """Names a part; its number where it is not known."""
    found = view.get(Part, part)
    return found.name if found else part
