"""Decides how what needs a look is settled. Else Shop today only looks."""

from dataclasses import replace

from station.floor.shared.settling import SettleConcern
from station.queries.batches import (
    LET_GO,
    free_batch,
    list_mixed,
    list_where_it_lies,
    make_child,
    make_rework,
    print_anew,
    refuse_held,
    refuse_held_parent,
)
from station.queries.first_offs import refuse_unmeasured
from station.queries.owing import OTHERS, find_others, name_products, owe
from station.queries.routers import TAKE_OUT
from station.queries.unmade import AGAIN, refuse_one_more, want_one_more
from station.shop import conflicts
from station.shop.acts import Act, Answer, ask, ask_approval, good, refuse
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    Concern,
    CutFile,
    Fact,
    Mixed,
    Order,
    Part,
    Pile,
    Product,
    Reason,
    Revision,
    Router,
    Slip,
)
from station.shop.moves import Move, Spot, head, tail
from station.shop.places import kind_of
from station.shop.views import Rule, Rules, View, by_kind
from station.shop.words import Say, say, together


def settle_concern(act: Act[SettleConcern], view: View) -> Answer:
    """Notes how what needed a look was settled, by whom and why."""
    concern = view.get(Concern, tail(act.subject))
    if concern is None or concern.settled:
        return refuse(say("That is settled already"), say("Choose another."))
    if not act.args.approved:
        return ask_approval(say("Settling is supervisor's work"))
    reason = view.get(Reason, act.args.reason)
    why = reason.words if reason else act.args.why
    if not why:
        return ask(say("Why is it settled so?"), say("Scan or touch a reason."), "reason")
    how, by = act.args.how or concern.choices[0], act.args.approved
    done = replace(concern, settled=how, settled_at=act.at, by=by, reason=why)
    if act.args.others:
        return _settle_together(act, view, done)
    if how == conflicts.BOOK:
        return _book_rest(view, concern, done)
    if how == conflicts.RENEW:
        return _renew_paper(act, view, concern, done)
    if how == LET_GO:
        return _let_batch_go(view, concern, done)
    if how == AGAIN:
        return _cut_again(view, concern, done)
    if how == OTHERS:
        return _send_others(view, concern, done)
    out = _take_out(view, concern) if how == TAKE_OUT else ()
    return good(
        say("Settled: {how}", how=Say(how)),
        say("{text}. Supervisor {by}: {why}.", text=concern.text, by=by, why=why),
        sets=(done, *out),
    )


# more than the concern changes with them
ALONE = (conflicts.BOOK, conflicts.RENEW, LET_GO, AGAIN, OTHERS, TAKE_OUT)


def _settle_together(act: Act[SettleConcern], view: View, done: Concern) -> Answer:
    """Settles several that are alike the same way; what is settled meanwhile stays so."""
    if done.settled in ALONE:
        said = say("“{how}” is done one by one", how=Say(done.settled))
        return refuse(said, say("Touch “{alone}”, then settle each.", alone=say("It alone")))
    others = tuple(
        replace(other, settled=done.settled, settled_at=act.at, by=done.by, reason=done.reason)
        for one in act.args.others
        if (other := view.get(Concern, one)) and not other.settled
        and done.settled in other.choices and other.id != done.id
    )  # fmt: skip
    return good(
        say("Settled: {how}, {n} of them", how=Say(done.settled), n=1 + len(others)),
        say("{text}. Supervisor {by}: {why}.", text=done.text, by=done.by, why=done.reason),
        sets=(done, *others),
    )


def _cut_again(view: View, concern: Concern, done: Concern) -> Answer:
    """Gives the batch of a spoiled sheet one more: it waits in its router's queue again."""
    batch = view.get(Batch, tail(concern.about))
    if batch is None:
        return refuse(say("Nobody knows its batch any more"), say("Drop it."))
    if wrong := refuse_one_more(view, batch):
        return replace(wrong, do=say("Drop it; more of it is a new batch."))
    more = want_one_more(batch)
    return replace(
        good(
            say("Batch {batch} has {sheets} {sheets|sheet|sheets} now", batch=batch.id,
                sheets=more.sheets),
            say("Its traveller is printed with one more slip."),
            sets=(done, more),
        ),
        prints=(("traveller", batch.id),),
    )  # fmt: skip


def _send_others(view: View, concern: Concern, done: Concern) -> Answer:
    """Makes an order of what is sent for pieces that came back; it is due the same day."""
    found = find_others(view, concern)
    if found is None:
        said = say("No product of its order has that part any more")
        return refuse(said, say("Enter what is sent as an order of its own; then settle it."))
    order, others = found
    owed = owe(view, order, others, f"{done.settled_at[:10]}T23:59:00")
    what = together(name_products(view, {line.product: line.quantity for line in owed.lines}))
    return good(
        say("Order {owed} is owed to order {order}: {what}", owed=owed.id, order=order.id,
            what=what),
        say("Packing takes it as any other. Supervisor {by}: {why}.", by=done.by, why=done.reason),
        sets=(done, owed),
    )  # fmt: skip


def _take_out(view: View, concern: Concern) -> tuple[Fact, ...]:
    """Takes a bit that a supervisor does not approve out of use, wherever it is."""
    bit = view.get(Bit, tail(concern.about))
    return (replace(bit, state="worn"),) if bit and bit.state == "good" else ()


def _book_rest(view: View, concern: Concern, done: Concern) -> Answer:
    """Moves what an act had meant to move, as far as it still lies there."""
    return _book(view, concern, done, conflicts.bookable(view, concern))


def _book(view: View, concern: Concern, done: Concern, there: tuple[Move, ...]) -> Answer:
    """Moves what is still there of what an act had meant to move."""
    if not there:
        return refuse(say("Nothing of it lies there any more"), say("Leave it out."))
    led = (_lead_on(view, m) for m in there)
    moves = tuple(m for m in led if m and m.frm != m.to)
    if not moves:
        said = say("The order that they were for takes no pieces any more")
        return refuse(said, say("Leave it out: they stay where they are."))
    for m in moves:
        problem = _refuse_onward(view, m) if kind_of(m.to.place).onward else None
        if problem:
            return replace(problem, do=say("Leave it out, or let the batch go on first."))
    booked, meant = sum(m.qty for m in moves), sum(m.qty for m in concern.meant)
    return good(
        say("Settled: {booked} of {meant} {booked|is|are} booked now", booked=booked, meant=meant),
        say("{text}. Supervisor {by}: {why}.", text=concern.text, by=done.by, why=done.reason),
        moves=moves,
        sets=(done,),
    )


def _renew_paper(act: Act[SettleConcern], view: View, concern: Concern, done: Concern) -> Answer:
    """Prints a paper that bears what another bears anew: as the next copy, or as a new batch."""
    if concern.meant:
        return _give_number(act, view, concern, done)
    batch = view.get(Batch, tail(concern.about))
    if batch is None:
        return refuse(say("Nobody knows its batch any more"), say("Leave it out."))
    printed = print_anew(batch)
    if printed.refused:
        return printed
    do = say("Copy {old} is void: throw both papers away.", old=batch.copy)
    return replace(printed, do=do, sets=(*printed.sets, done))


def _give_number(act: Act[SettleConcern], view: View, concern: Concern, done: Concern) -> Answer:
    """Books pieces that got a batch of their own under a number that nothing else bears."""
    there = conflicts.bookable(view, concern)
    into = [m for m in there if conflicts.into_child(m)]
    parents = [b for n in dict.fromkeys(m.frm.batch for m in into) if (b := view.get(Batch, n))]
    if not parents:
        return refuse(say("Nothing of it lies there any more"), say("Leave it out."))
    first, *rest = parents
    made = into[0].to.place == "rework"
    child = make_rework(act, first) if made else make_child(act, first, "split")
    child = replace(child, others=tuple(b.id for b in rest))
    own = {m: m._replace(to=Spot(m.to.place, child.id)) for m in into}
    booked = _book(view, concern, done, tuple(own.get(m, m) for m in there))
    if booked.refused:
        return booked
    spots = dict.fromkeys(Spot(m.to.place, m.frm.batch) for m in into)
    listed = (list_where_it_lies(view, child, spot, act.at) for spot in spots)
    once = {fact.key: fact for fact in listed}.values()
    return replace(
        booked,
        said=say("Its paper is printed as batch {batch}", batch=child.id),
        do=say("Put it with its {n} {n|piece|pieces}; throw the other paper away.",
               n=sum(m.qty for m in into)),
        sets=(*booked.sets, child, *list_mixed(child), *once),
        prints=(("traveller", child.id),),
    )  # fmt: skip


def _refuse_onward(view: View, meant: Move) -> Answer | None:
    """Refuses to move pieces onward that are held, or whose sheet nobody has measured yet."""
    at, batch = meant.frm.place, meant.frm.batch
    sheets = (int(tail(at)),) if head(at) == "popping" else ()
    return refuse_held(view, batch) or refuse_unmeasured(view, batch, sheets)


def _lead_on(view: View, meant: Move) -> Move | None:
    """Leads pieces that were meant for an order that takes none any more onto the rack.

    None: their part has no place there.
    """
    order = view.get(Order, tail(meant.to.place)) if head(meant.to.place) == "packing" else None
    if order is None or order.takes_pieces:
        return meant
    part = view.get(Part, meant.part)
    if part is None or not part.rack:
        return None
    return meant._replace(to=Spot(f"rack/{part.rack}", meant.to.batch))


def _let_batch_go(view: View, concern: Concern, done: Concern) -> Answer:
    """Lets the batch of a hold go on, unless it is still held with its parent."""
    batch = view.get(Batch, tail(concern.about))
    if batch and (problem := refuse_held_parent(view, batch)):
        return problem
    found = (
        free_batch(view, batch, at=done.settled_at, by=done.by, why=done.reason) if batch else ()
    )
    freed = tuple(fact for fact in found if fact.key != done.key)
    return good(
        say("Settled: {how}", how=done.settled),
        say("Batch {batch} may go on. Supervisor {by}: {why}.", batch=tail(concern.about),
            by=done.by, why=done.reason),
        sets=(done, *freed),
    )  # fmt: skip


_READS: frozenset[type[Fact]] = frozenset(
    {
        Batch,
        Bed,
        Bit,
        Concern,
        CutFile,
        Mixed,
        Order,
        Part,
        Pile,
        Product,
        Reason,
        Revision,
        Router,
        Slip,
    }
)

RULES: Rules = by_kind(
    Rule(
        args=SettleConcern,
        reads=_READS,
        decide=settle_concern,
    )
)
