"""Decides on the acts that belong to no one room: split, found, recount, new copy, hold.

Undo is the ledger's own: it swaps an entry's moves and restores the facts before it.
"""

from dataclasses import replace

from station.floor.anywhere.acts import (
    FindParts,
    HoldBatch,
    NewCopy,
    Recount,
    ReleaseHold,
    SplitBatch,
    TakeReturn,
    TellHealth,
)
from station.floor.anywhere.returns import RETURN_READS, take_return
from station.floor.shared.recounts import (
    COUNT_READS,
    RecountPlace,
    ask_about_count,
    ask_about_held,
    recount_place,
    say_difference,
)
from station.queries.batches import (
    find_hold,
    free_batch,
    list_where_it_lies,
    make_child,
    print_anew,
    refuse_held_parent,
)
from station.queries.stock import count_gone, take_in_order, tell_where
from station.queries.underway import list_with_paper
from station.shop.acts import Act, Answer, Args, ask, ask_approval, attention, good, refuse
from station.shop.facts import (
    Batch,
    Concern,
    Mixed,
    Part,
    Pile,
    RackPlace,
    Reason,
    Slip,
    Station,
)
from station.shop.moves import Spot, move, tail
from station.shop.views import Rule, Rules, View, by_kind, total
from station.shop.words import Say, say


def find_batch(act: Act[Args], view: View) -> Batch | None:
    """Finds the batch that an act is about."""
    return view.get(Batch, tail(act.subject))


def split_batch(act: Act[SplitBatch], view: View) -> Answer:
    """Splits a child batch off, at the place where its pieces lie."""
    batch, part, quantity = find_batch(act, view), act.args.part, act.args.quantity
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    lying = list_with_paper(view, batch.id, act.args.area)
    here = tuple(h for h in lying if part in ("", h.part))
    there = total(here)
    if not 0 < quantity < there:
        return refuse(
            say("Only {left} {left|is|are} here to split", left=there),
            say("Enter a number from 1 to {most}.", most=max(0, there - 1)),
        )
    child = make_child(act, batch, "split")
    taken = take_in_order(here, quantity)
    moves = tuple(move(part, h.qty, h.place, h.place, batch.id, child.id) for h in taken)
    papers = tuple(list_where_it_lies(view, child, Spot(h.place, h.batch), act.at) for h in taken)
    return good(
        say(
            "{quantity} split off as batch {child}, {left} {left|stays|stay}",
            quantity=quantity,
            child=child.id,
            left=there - quantity,
        ),
        say("Its own traveller goes with the {quantity}.", quantity=quantity)
        if find_hold(view, batch.id) is None
        else say(
            "Held as batch {batch} is: put them aside with their own traveller.", batch=batch.id
        ),
        moves=moves,
        sets=(child, *papers),
        prints=(("traveller", child.id),),
    )


def find_parts(act: Act[FindParts], view: View) -> Answer:
    """Takes missing pieces that were found back to their batch, at trimming."""
    batch, part, quantity = find_batch(act, view), act.args.part, act.args.quantity
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    gone = sum(h.qty for h in view.stock(batch=batch.id, place="missing") if h.part == part)
    if not 0 < quantity <= gone:
        return refuse(
            say("{gone} {gone|is|are} missing from batch {batch}", gone=gone, batch=batch.id),
            say("Enter a number from 1 to {gone}.", gone=gone),
        )
    pile = Pile(
        id=f"trimming/{batch.id}", area="trimming", batch=batch.id, since=act.at, due=batch.due
    )
    old = view.get(Pile, pile.id)
    return good(
        say("{quantity} found, {left} still missing", quantity=quantity, left=gone - quantity),
        say("Put them with batch {batch} at trimming.", batch=batch.id)
        if find_hold(view, batch.id) is None
        else say("Batch {batch} is held: put them aside with it.", batch=batch.id),
        moves=(move(part, quantity, "missing", "trimming", batch.id),),
        sets=() if old and not old.done else (pile,),
    )


def recount_parts(act: Act[Recount], view: View) -> Answer:
    """Sets the book of a batch's pieces with its paper to what was really counted."""
    batch, part = tail(act.subject), act.args.part
    place, counted = act.args.place, act.args.counted
    book = sum(h.qty for h in view.stock(batch=batch, place=place) if h.part == part)
    if problem := ask_about_count(act, view, view.get(Part, part), book, counted, place=place):
        return problem
    if problem := ask_about_held(act, view, batch, book - counted):
        return problem
    if counted == book:
        return good(say("Counted {n}: the book agrees", n=counted), say("Go on."))
    by = counted - book
    frm, to = ("recount", place) if by > 0 else (place, "recount")
    worry = Concern(
        id=act.id,
        what="recount",
        since=act.at,
        about=f"batch/{batch}",
        text=say(
            "Recount of batch {batch}: {book} by the book, {counted} there",
            batch=batch,
            book=book,
            counted=counted,
        ),
    )
    return attention(
        say("Corrected: {counted} there, {by}", counted=counted, by=say_difference(by)),
        say("The supervisor sees it under Needs a look."),
        moves=(move(part, abs(by), frm, to, batch),),
        sets=(worry,),
    )


def make_copy(act: Act[NewCopy], view: View) -> Answer:
    """Makes a new copy of a traveller; the one before is void from now on."""
    batch = find_batch(act, view)
    if batch is None:
        return refuse(say("There is no such batch"), say("Choose another."))
    return print_anew(batch)


def hold_batch(act: Act[HoldBatch], view: View) -> Answer:
    """Holds a batch until a supervisor lets it go on."""
    batch = find_batch(act, view)
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    why = act.args.why or f"put aside by worker {act.worker}"
    worry = Concern(
        id=act.id,
        what="hold",
        since=act.at,
        about=batch.key,
        text=say("Batch {batch} is held: {why}", batch=batch.id, why=why),
        choices=("let it go on", "keep it"),
    )
    said, gone = say("Batch {batch} is held", batch=batch.id), count_gone(view, batch.id)
    if gone:
        said = say("{held}; {n} of it left the shop already", held=said, n=gone)
    return attention(
        said,
        _say_put_aside(tell_where(view, batch.id)),
        sets=(
            replace(batch, holds=(*batch.holds, why), looks=(*batch.looks, worry.id)),
            worry,
        ),
    )


def _say_put_aside(lying: Say) -> Say:
    """Says what to do with the pieces of a held batch, wherever they are."""
    if not lying:
        return say("Put it aside. A supervisor lets it go on.")
    return say("Put aside what lies there: {where}.", where=lying)


def release_hold(act: Act[ReleaseHold], view: View) -> Answer:
    """Lets a held batch go on, for a reason; who said so is kept with what it settles."""
    batch = find_batch(act, view)
    if batch and (problem := refuse_held_parent(view, batch)):
        return problem
    if batch is None or not batch.why_held:
        return refuse(say("That batch is not held"), say("Go on."))
    if not act.args.approved:
        return ask_approval(say("Batch {batch} waits: {why}", batch=batch.id, why=batch.why_held))
    reason = view.get(Reason, act.args.reason)
    if reason is None:
        return ask(
            say("Why may batch {batch} go on?", batch=batch.id),
            say("Scan or touch a reason."),
            "reason",
        )
    return good(
        say("Batch {batch} may go on", batch=batch.id),
        say("Take it to its next place."),
        sets=free_batch(view, batch, at=act.at, by=act.args.approved, why=reason.words),
    )


def tell_health(act: Act[TellHealth], _view: View) -> Answer:
    """Keeps how a station's PC is."""
    told = act.args
    return good(
        say("Station {id} is at work", id=act.station),
        sets=(
            Station(
                id=act.station,
                version=told.version,
                seen=act.at,
                unshared=told.unshared,
                free_mb=told.free_mb,
                backup_at=told.backup_at,
                trouble=told.trouble,
                wrong_pins=told.wrong_pins,
                pins_at=told.pins_at,
                held=told.held,
                held_at=told.held_at,
                database=told.database,
                older_at=told.older_at,
            ),
        ),
    )


_READS = frozenset({Batch, Concern, Mixed, Part, Pile, RackPlace, Reason, Slip}) | COUNT_READS

RULES: Rules = by_kind(
    Rule(args=SplitBatch, reads=_READS, decide=split_batch),
    Rule(args=FindParts, reads=_READS, decide=find_parts),
    Rule(args=Recount, reads=_READS, decide=recount_parts),
    Rule(args=RecountPlace, reads=_READS, decide=recount_place),
    Rule(args=TakeReturn, reads=RETURN_READS, decide=take_return),
    Rule(args=NewCopy, reads=_READS, decide=make_copy),
    Rule(
        args=HoldBatch,
        reads=_READS,
        decide=hold_batch,
        stays=say("A supervisor lets the batch go on: “More”, then “Let it go on”."),
    ),
    Rule(args=ReleaseHold, reads=_READS, decide=release_hold),
    Rule(args=TellHealth, reads=frozenset(), decide=tell_health),
)
