"""Acts that belong to no one room: split, found, recount, new copy, hold, settle.

Undo is the ledger's own: it swaps an entry's moves and restores the facts before it.
"""

from dataclasses import replace

from station.queries.batches import find_hold, make_child, refuse_held
from station.queries.settings import find_reason
from station.queries.stock import take_in_order
from station.queries.underway import list_with_paper
from station.shop import conflicts
from station.shop.acts import Act, Answer, ask, attention, good, refuse
from station.shop.codes import next_copy
from station.shop.facts import Batch, Concern, Part, Pile, RackPlace, Reason, Slip
from station.shop.moves import Held, head, move, tail
from station.shop.places import kind_of
from station.shop.views import Rule, Rules, View, total
from station.shop.words import say

LET_GO = "let it go on"  # a way to settle a hold


def batch_of(act: Act, view: View) -> Batch | None:
    """The batch that an act is about."""
    return view.get(Batch, tail(act.subject))


def split_batch(act: Act, view: View) -> Answer:
    """A child batch takes so many of a part off, at the place where they lie."""
    batch, part = batch_of(act, view), str(act.args.get("part", ""))
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    area = str(act.args.get("area", ""))
    here = tuple(h for h in list_with_paper(view, batch.id, area) if part in ("", h.part))
    there, quantity = total(here), act.args.get("quantity")
    if not isinstance(quantity, int) or not 0 < quantity < there:
        return refuse(
            say("Only {left} {left|is|are} here to split", left=there),
            say("Enter a number from 1 to {most}.", most=max(0, there - 1)),
        )
    child = make_child(act, batch, "split")
    taken = take_in_order(here, quantity)
    moves = tuple(move(part, h.qty, h.place, h.place, batch.id, child.id) for h in taken)
    papers = tuple(_stand_in(view, child, h, act) for h in taken)
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


def _stand_in(view: View, child: Batch, held: Held, act: Act) -> Slip | Pile:
    """What makes a child's pieces appear in the list of the area where they lie."""
    if head(held.place) != "popping":
        return Pile(
            id=f"{held.place}/{child.id}",
            area="rework" if held.place == "rework" else "trimming",
            batch=child.id,
            since=act.at,
            due=child.due,
        )
    sheet = tail(held.place)
    slip = view.get(Slip, f"{held.batch}-{sheet}")
    return Slip(
        id=f"{child.id}-{sheet}",
        batch=child.id,
        sheet=int(sheet),
        router=slip.router if slip else child.router,
        at=slip.at if slip else act.at,
        by=slip.by if slip else "",
    )


def find_parts(act: Act, view: View) -> Answer:
    """Missing pieces that were found go on with their batch, at trimming."""
    batch, part = batch_of(act, view), str(act.args.get("part", ""))
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    gone = sum(h.qty for h in view.stock(batch=batch.id, place="missing") if h.part == part)
    quantity = act.args.get("quantity")
    if not isinstance(quantity, int) or not 0 < quantity <= gone:
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


def recount(act: Act, view: View) -> Answer:
    """What was really counted at one place replaces the book's figure, with a reason."""
    batch, part = tail(act.subject), str(act.args.get("part", ""))
    place, counted = str(act.args.get("place", "")), act.args.get("counted")
    book = sum(h.qty for h in view.stock(batch=batch, place=place) if h.part == part)
    if not isinstance(counted, int) or not 0 <= counted <= 100_000:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    if counted == book:
        return good(say("Counted {counted}: the book agrees", counted=counted), say("Go on."))
    reason = find_reason(view, str(act.args.get("reason", "")), "correct")
    if reason is None:
        return ask(
            say("Counted {counted}, the book says {book}", counted=counted, book=book),
            say("Scan a reason card to correct the book."),
            "reason",
        )
    by = counted - book
    frm, to = ("recount", place) if by > 0 else (place, "recount")
    worry = Concern(
        id=act.id,
        what="recount",
        since=act.at,
        about=f"batch/{batch}",
        text=f"Recount of batch {batch}: {book} by the book, {counted} there",
    )
    return attention(
        say("Corrected: {counted} there, {by} by the book", counted=counted, by=f"{by:+d}"),
        say("The supervisor sees it under Needs a look."),
        moves=(move(part, abs(by), frm, to, batch),),
        sets=(worry,),
    )


def new_copy(act: Act, view: View) -> Answer:
    """A new copy of a traveller; the one before is void from now on."""
    batch = batch_of(act, view)
    if batch is None:
        return refuse(say("There is no such batch"), say("Choose another."))
    letter = next_copy(batch.id, batch.copy, batch.sheets)
    if not letter:
        return refuse(
            say("Batch {batch} has no copy letter left", batch=batch.id),
            say("Split it: the child has its own paper."),
        )
    return good(
        say("Copy {new} of batch {batch} is printed", new=letter, batch=batch.id),
        say("Copy {old} is void: throw it away.", old=batch.copy),
        sets=(replace(batch, copy=letter, void=(*batch.void, batch.copy)),),
        prints=(("traveller", batch.id),),
    )


def hold_batch(act: Act, view: View) -> Answer:
    """A batch may not go on until a supervisor lets it."""
    batch = batch_of(act, view)
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    why = str(act.args.get("why") or f"held by worker {act.worker}")
    worry = Concern(
        id=act.id,
        what="hold",
        since=act.at,
        about=batch.key,
        text=f"Batch {batch.id} is held: {why}",
        choices=("let it go on", "keep it"),
    )
    return attention(
        say("Batch {batch} is held", batch=batch.id),
        say("Put it aside. A supervisor lets it go on."),
        sets=(replace(batch, holds=(*batch.holds, why)), worry),
    )


def release_hold(act: Act, view: View) -> Answer:
    """A supervisor lets a held batch go on."""
    batch = batch_of(act, view)
    if batch and (problem := _held_with_parent(view, batch)):
        return problem
    if batch is None or not batch.holds:
        return refuse(say("That batch is not held"), say("Go on."))
    if not act.args.get("approved"):
        return ask(
            say("Held: {why}", why=batch.holds[-1]),
            say("Supervisor: scan your badge, then enter your PIN."),
            "supervisor",
        )
    return good(
        say("Batch {batch} may go on", batch=batch.id),
        say("Take it to its next place."),
        sets=(replace(batch, holds=()),),
    )


def _held_with_parent(view: View, batch: Batch) -> Answer | None:
    """Refuses to let a batch go on while one that it came from is held."""
    parent = find_hold(view, batch.parent)
    if parent is None:
        return None
    return refuse(
        say("Batch {batch} is held with batch {parent}", batch=batch.id, parent=parent.id),
        say("Let batch {parent} go on first.", parent=parent.id),
    )


def settle_concern(act: Act, view: View) -> Answer:
    """What needed a look has had one: how it was settled, by whom and why."""
    concern = view.get(Concern, tail(act.subject))
    if concern is None or concern.settled:
        return refuse(say("That is settled already"), say("Choose another."))
    if not act.args.get("approved"):
        return ask(
            say("Settling is supervisor's work"),
            say("Supervisor: scan your badge, then enter your PIN."),
            "supervisor",
        )
    reason = view.get(Reason, str(act.args.get("reason", "")))
    why = reason.words if reason else str(act.args.get("why", ""))
    if not why:
        return ask(say("Why is it settled so?"), say("Scan or touch a reason."), "reason")
    how, by = str(act.args.get("how") or concern.choices[0]), str(act.args["approved"])
    done = replace(concern, settled=how, settled_at=act.at, by=by, reason=why)
    if how == conflicts.BOOK:
        return _booked(view, concern, done)
    if how == LET_GO:
        return _let_go(view, concern, done)
    return good(
        say("Settled: {how}", how=how),
        say("{text}. Supervisor {by}: {why}.", text=concern.text, by=by, why=why),
        sets=(done,),
    )


def _booked(view: View, concern: Concern, done: Concern) -> Answer:
    """What an act had meant to move is moved now, as far as it still lies there."""
    moves = conflicts.bookable(view, concern)
    if not moves:
        return refuse(say("Nothing of it lies there any more"), say("Leave it out."))
    for m in moves:
        problem = refuse_held(view, m.frm.batch) if kind_of(m.to.place).onward else None
        if problem:
            return replace(problem, do=say("Leave it out, or let the batch go on first."))
    booked, meant = sum(m.qty for m in moves), sum(m.qty for m in concern.meant)
    return good(
        say("Settled: {booked} of {meant} {booked|is|are} booked now", booked=booked, meant=meant),
        say("{text}. Supervisor {by}: {why}.", text=concern.text, by=done.by, why=done.reason),
        moves=moves,
        sets=(done,),
    )


def _let_go(view: View, concern: Concern, done: Concern) -> Answer:
    """The batch of a hold may go on, unless it is still held with its parent."""
    batch = view.get(Batch, tail(concern.about))
    if batch and (problem := _held_with_parent(view, batch)):
        return problem
    freed = (replace(batch, holds=()),) if batch else ()
    return good(
        say("Settled: {how}", how=done.settled),
        say("Batch {batch} may go on. Supervisor {by}: {why}.", batch=tail(concern.about),
            by=done.by, why=done.reason),
        sets=(done, *freed),
    )  # fmt: skip


_READS = frozenset({Batch, Concern, Part, Pile, RackPlace, Reason, Slip})

RULES: Rules = {
    kind: Rule(_READS, decide)
    for kind, decide in {
        "split_batch": split_batch,
        "find_parts": find_parts,
        "recount": recount,
        "new_copy": new_copy,
        "hold_batch": hold_batch,
        "release_hold": release_hold,
        "settle_concern": settle_concern,
    }.items()
}
