"""What comes back from a customer: to the table where it is looked at, with a paper of its own."""

from dataclasses import replace

from station.floor.anywhere.acts import TakeReturn
from station.queries.batches import make_child, make_pile
from station.queries.stock import take_in_order
from station.shop.acts import Act, Answer, ask_why, attention, refuse
from station.shop.facts import Batch, Part, Reason
from station.shop.moves import move, tail
from station.shop.views import View, total
from station.shop.words import say


def take_return(act: Act[TakeReturn], view: View) -> Answer:
    """Takes pieces that have left back, as a batch to be made good; the subject is the part.

    The newest that left are taken to be those that came back.
    """
    part, quantity = view.get(Part, tail(act.subject)), act.args.quantity
    if part is None:
        return refuse(say("There is no such part"), say("Scan its card."))
    gone = tuple(h for h in view.stock(place="shipped") if h.part == part.id)[::-1]
    if not 0 < quantity <= total(gone):
        said = say("{n} {part} have left by the book", n=total(gone), part=part.name)
        return refuse(said, say("Count again. What never left is counted at its rack place."))
    batch = next((b for h in gone if (b := view.get(Batch, h.batch))), None)
    if batch is None:
        said = say("Nobody knows of which batch {part} is", part=part.name)
        return refuse(said, say("Look it over, then count its rack place again."))
    reason = view.get(Reason, act.args.reason)
    if reason is None or reason.use != "rework":
        return ask_why(say("{n} {part} came back", n=quantity, part=part.name), "rework")
    child = replace(
        make_child(act, batch, "rework", tries=1),
        order="",
        due="",
        why=f"came back: {reason.words}",
    )
    return attention(
        say("{n} {part} came back: batch {batch}", n=quantity, part=part.name, batch=child.id),
        say("To trimming with its traveller: look at each, then onto the rack."),
        moves=tuple(
            move(part.id, h.qty, h.place, "rework", h.batch, child.id)
            for h in take_in_order(gone, quantity)
        ),
        sets=(child, make_pile(act, "rework", child)),
        prints=(("traveller", child.id),),
    )
