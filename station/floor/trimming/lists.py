"""Lists what waits at trimming, what the rack lacks, what went onto it today."""

from station.floor.shared.put_today import list_passed_on
from station.floor.trimming.work import TrimmingHand
from station.queries.batches import describe_batch, find_hold, find_order
from station.queries.stock import list_on_rack
from station.shop.codes import write_touch
from station.shop.faces import Cards, Cell, Entry, Listing
from station.shop.facts import Batch, Part, Pile, RackPlace
from station.shop.places import areas_of
from station.shop.views import View, total
from station.shop.words import Say, clock, day, say, say_more

MOST = 5  # rows of a short list
PILES = 2000  # that are counted
PARTS = 2000  # whose place is looked at


def list_waiting(view: View, area: str, title: Say, most: int) -> Cards:
    """Lists the piles of an area by due time."""
    piles = view.shelf(Pile, area, PILES)
    entries = tuple(e for p in piles[:most] if (e := _make_entry(view, p)))
    head = say_more(title, len(piles) - len(entries))
    return Cards(title=head, entries=entries, empty=say("Nothing waits."))


def _make_entry(view: View, pile: Pile) -> Entry | None:
    batch = view.get(Batch, pile.batch)
    if batch is None:
        return None
    n = total(view.stock(batch=batch.id, place=pile.area))
    hold = find_hold(view, batch.id)
    why = say("held: {why}", why=hold.why_held) if hold else say_due(view, batch)
    return Entry(
        big=batch.id,
        right=say("{n} {n|part|parts}", n=n),
        tone="attention" if hold else "",
        line1=say("{what} · {due}", what=describe_batch(view, batch), due=why),
        code=write_touch("batch", batch.id, batch.copy),
    )


def say_due(view: View, batch: Batch) -> Say:
    """Says for what a batch is, and when it is due."""
    if order := find_order(view, batch):
        return say("for order {order}", order=order.id)
    if batch.due:
        return say("due {day} {at}", day=day(batch.due), at=clock(batch.due))
    return say("for the rack")


def list_wanted(view: View) -> Listing:
    """Lists the parts whose rack place is below its minimum, the emptiest first."""
    low = view.once("trimming/below mark", _list_low)
    title = say("The rack is below its minimum")
    return Listing(
        title=say_more(title, len(low) - MOST),
        rows=tuple(
            (
                (
                    Cell(text=p.name, bold=True),
                    Cell(text=_name_rack(view, p), tone="quiet"),
                    Cell(text=say("{n} of {mark}", n=n, mark=p.mark), tone="attention"),
                ),
                "",
            )
            for _, n, _, p in low[:MOST]
        ),
        empty=say("No part is."),
    )


def _list_low(view: View) -> list[tuple[float, int, str, Part]]:
    """Lists the parts below their mark: which share of it is there, how many, number and part."""
    marked = [p for p in view.shelf(Part, "all", PARTS) if p.mark and p.active]
    there = [(total(list_on_rack(view, p)), p) for p in marked]
    return sorted((n / p.mark, n, p.id, p) for n, p in there if n < p.mark)


def _name_rack(view: View, part: Part) -> str:
    place = view.get(RackPlace, part.rack)
    return place.name if place else "-"


def list_put_today(hand: TrimmingHand, view: View) -> Listing:
    """Lists what went from trimming to the rack today, the most first."""
    return list_passed_on(
        say("On the rack today"), view, hand.now, frm=areas_of("trimming"), to=("rack",)
    )
