"""What comes back from a customer: to the table where it is looked at, with a paper of its own."""

from dataclasses import replace

from station.floor.anywhere.acts import TakeReturn
from station.queries.batches import list_mixed, make_child, make_pile
from station.queries.damage import note_damage
from station.queries.owing import ask_owed
from station.queries.returns import count_gone, draw_gone, find_origin, list_other_origins
from station.queries.settings import find_reason
from station.shop.acts import Act, Answer, ask_why, attention, refuse
from station.shop.facts import Batch, CutFile, Fact, Mixed, Pack, Part, Product, Reason, Revision
from station.shop.moves import Held, head, move, tail
from station.shop.views import View
from station.shop.words import Say, say

RETURN_READS = frozenset({Batch, CutFile, Mixed, Pack, Part, Product, Reason, Revision})


def take_return(act: Act[TakeReturn], view: View) -> Answer:
    """Takes pieces that have left back, as a batch that is looked at and made good."""
    part, quantity = view.get(Part, act.args.part or tail(act.subject)), act.args.quantity
    if part is None:
        return refuse(say("There is no such part"), say("Scan its card."))
    gone = count_gone(view, act.subject).get(part.id, 0)
    if not 0 < quantity <= gone:
        return _refuse_count(act.subject, part, gone)
    drawn = draw_gone(view, act.subject, part.id, quantity)
    origin = find_origin(view, drawn)
    if origin is None:
        said = say("No cut file makes {part}", part=part.name)
        return refuse(said, say("The office enters the one that does; then scan it again."))
    reason = find_reason(view, act.args.reason, "returned")
    if reason is None:
        return ask_why(say("{n} {part} came back", n=quantity, part=part.name), "returned")
    child = replace(
        make_child(act, origin, "rework", tries=1),
        others=list_other_origins(view, drawn, origin),
        order="",
        due="",
        why=f"came back: {reason.words}",
    )
    return _take_back(act, view, part, drawn, child, reason)


def _take_back(
    act: Act[TakeReturn],
    view: View,
    part: Part,
    drawn: tuple[Held, ...],
    child: Batch,
    reason: Reason,
) -> Answer:
    pack = view.get(Pack, tail(act.subject)) if head(act.subject) == "pack" else None
    sets = (child, make_pile(act, "rework", child), *list_mixed(child))
    moves = tuple(move(part.id, h.qty, h.place, "rework", h.batch, child.id) for h in drawn)
    noted: tuple[Fact, ...] = ()
    do = say("To trimming with its traveller. No order is owed by it: others are a new order.")
    if pack:
        asked = ask_owed(act, pack, part, reason.words, moves)
        noted = (_note_back(pack, part, act.args.quantity), *note_damage(pack, reason, act.at),
                 asked)  # fmt: skip
        do = say("To trimming with its traveller. What order {order} is owed by it, a supervisor "
                 "says at Shop today.", order=pack.order)  # fmt: skip
    return attention(
        say("{n} {part} came back: batch {batch}", n=act.args.quantity, part=part.name,
            batch=child.id),
        do,
        moves=moves,
        sets=(*sets, *noted),
        prints=(("traveller", child.id),),
    )  # fmt: skip


def _note_back(pack: Pack, part: Part, quantity: int) -> Pack:
    """Notes on a pack what came back of it."""
    back = dict(pack.returned)
    back[part.id] = back.get(part.id, 0) + quantity
    return replace(pack, returned=tuple(sorted(back.items())))


def _refuse_count(subject: str, part: Part, gone: int) -> Answer:
    do: Say = say("Count again. What never left is counted at its rack place.")
    if head(subject) == "pack":
        said = say("{n} {part} of pack {pack} {n|is|are} still away by the book",
                   n=gone, part=part.name, pack=tail(subject))  # fmt: skip
        return refuse(said, do)
    return refuse(say("{n} {part} have left by the book", n=gone, part=part.name), do)
