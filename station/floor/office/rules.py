"""Decides on office acts: a supervisor sets what the shop knows. All ask for a PIN, bar the first.

There is one generic act to set a fact (`set_fact`); acts of their own exist only where
more than one fact changes together or pieces move.
"""

from dataclasses import replace

from station.floor.office import rules_intake
from station.floor.office.acts import (
    ApproveRevision,
    CancelOrder,
    CorrectCount,
    FoundShop,
    GivenFields,
    ReceiveLot,
    RenewFirstFacts,
    SetFact,
    SetList,
)
from station.floor.office.approval import ask_supervisor
from station.floor.office.first import ISSUE, later_reasons, renewed
from station.floor.office.keeping import keep_orders, refuse_last_supervisor
from station.floor.office.lists import LISTS
from station.floor.office.sound import find_problems
from station.floor.shared.queue import CancelBatch, ReleaseBatch
from station.queries.batches import find_approved
from station.queries.runs import list_between, list_runs
from station.queries.settings import find_reason, has_pin
from station.queries.underway import list_queued, list_with_paper
from station.shop.acts import (
    Act,
    Answer,
    SetPin,
    ask,
    ask_why,
    attention,
    good,
    new_number,
    notice,
    refuse,
)
from station.shop.cards import REASON_USES
from station.shop.facts import (
    KINDS,
    Batch,
    BatchState,
    Bed,
    Concern,
    CutFile,
    Fact,
    Lot,
    Material,
    Numbers,
    Order,
    Pack,
    Part,
    Pile,
    RackPlace,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
    Worker,
)
from station.shop.field_texts import is_time
from station.shop.moves import SHEET, move, tail
from station.shop.places import kind_of
from station.shop.plain import build
from station.shop.views import Rule, Rules, View, by_kind, total
from station.shop.words import Say, say

USES = tuple(REASON_USES)
NEXT = say("Touch the next row, or work on.")
NOTHING_SET = say("Nothing was set.")
MOST = 100_000  # pieces or sheets in one act: more is a slip of the finger


def found_shop(act: Act[FoundShop], view: View) -> Answer:
    """Founds a shop: everything that it starts with, and what lies on its rack."""
    if view.get(Shop, "shop"):
        return refuse(say("This shop is set up already"), say("Change it in the office."))
    made = [build(given.kind, given.value) for given in act.args.facts]
    problems = [p for m in made if isinstance(m, list) for p in m]
    if problems:
        return refuse(
            problems[0],
            say("{count} {count|problem|problems}: nothing was set.", count=len(problems)),
        )
    moves = tuple(
        move(lying.part, lying.quantity, lying.frm, lying.to, lying.batch)
        for lying in act.args.stock
    )
    facts = tuple(m for m in made if isinstance(m, Fact))
    return good(say("The shop is set up"), say("Scan your badge."), moves=moves, sets=facts)


def renew_first_facts(_act: Act[RenewFirstFacts], view: View) -> Answer:
    """Brings a shop that exists up to what the first facts of this program say."""
    shop = view.get(Shop, "shop")
    if shop is None or shop.first >= ISSUE:
        return notice(say("The shop knows all that it starts with"), say("Go on."))
    known = (r for use in USES for r in view.shelf(Reason, use, MOST))
    changed = tuple(new for old in known if (new := renewed(old, shop.first)) != old)
    added = tuple(r for r in later_reasons() if view.get(Reason, r.id) is None)
    return good(
        say("{n} {n|reason says|reasons say} more now of what follows from them", n=len(changed)),
        say("New ones: {n}. Look at them in the office.", n=len(added)),
        sets=(replace(shop, first=ISSUE), *changed, *added),
    )


def set_fact(act: Act[SetFact], view: View) -> Answer:
    """Sets any fact anew from its fields, each checked against its type."""
    if asked := ask_supervisor(act):
        return asked
    made = build_sound(act.args.of, act.args.value, view)
    if isinstance(made, list):
        return refuse(made[0], say("Correct it and save again."))
    if problem := refuse_last_supervisor((made,), view):
        return problem
    kept = keep_orders(act, (made,), view)
    if not kept.facts:
        return _tell_kept(made, kept.wishes)
    new = view.get(type(made), made.id) is None
    one = next((o.one for o in LISTS if o.kind is type(made)), Say(act.args.of))
    said = (
        say("{kind} {id} is new", kind=one, id=made.id)
        if new
        else say("{kind} {id} is changed", kind=one, id=made.id)
    )
    return good(said, NEXT, sets=(made, *_give_place(made, view)))


def _tell_kept(made: Fact, wishes: tuple[Concern, ...]) -> Answer:
    """Tells that an order stays as it is; what was wanted of it is kept."""
    if not wishes:
        known = say("What is wanted of it is known already: see Needs a look.")
        return notice(say("Order {order} stays as it is", order=made.id), known)
    return attention(
        say("Order {order} is begun or gone: it stays as it is", order=made.id),
        say("What is wanted stands under Needs a look."),
        sets=wishes,
    )


NOT_BY_HAND = (Bed, Batch, Pack, Numbers, Concern)


def build_sound(kind: str, value: GivenFields, view: View) -> Fact | list[Say]:
    """Builds the fact with these values, or tells every problem: types first, then the rest."""
    made = build(kind, value)
    if isinstance(made, list):
        return made
    if isinstance(made, NOT_BY_HAND):
        return [say("{kind} follows from the work and is not set by hand", kind=kind)]
    return find_problems(made, view) or made


def _give_place(made: Fact, view: View) -> tuple[Part, ...]:
    """Gives the part of a rack place its place, where it has none."""
    part = view.get(Part, made.part) if isinstance(made, RackPlace) else None
    return (replace(part, rack=made.id),) if part and not part.rack else ()


def set_list(act: Act[SetList], view: View) -> Answer:
    """Takes a whole list in, in one act: all of it or nothing, and taken back as one."""
    if asked := ask_supervisor(act):
        return asked
    facts: dict[str, Fact] = {}
    for number, value in enumerate(act.args.values, 1):
        made = build_sound(act.args.of, value, view)
        if isinstance(made, list):
            return refuse(say("Row {n}: {what}", n=number, what=made[0]), NOTHING_SET)
        facts[made.id] = made
    if problem := refuse_last_supervisor(facts.values(), view):
        return problem
    kept = keep_orders(act, facts.values(), view)
    before = {f.id: view.get(type(f), f.id) for f in facts.values()}
    sets = tuple(f for f in kept.facts if f != before[f.id])
    new = sum(before[fact.id] is None for fact in sets)
    if not sets and not kept.wishes:
        return notice(say("Nothing in it differs from what is known"), NOTHING_SET)
    said = say("Taken in: {new} new, {changed} changed", new=new, changed=len(sets) - new)
    if wishes := kept.wishes:
        do = say(
            "{n} {n|order is|orders are} begun or gone and {n|stays|stay}: see Needs a look.",
            n=len(wishes),
        )
        return attention(said, do, sets=(*sets, *wishes))
    return good(said, say("What is not in the file stays as it was."), sets=sets)


def approve_revision(act: Act[ApproveRevision], view: View) -> Answer:
    """Lets one revision of a cut file be cut from now on; batches of others are held."""
    if asked := ask_supervisor(act):
        return asked
    cut_file = view.get(CutFile, act.subject.partition("/")[2])
    letter = act.args.letter
    revision = cut_file and view.get(Revision, Revision.id_of(cut_file.id, letter))
    if cut_file is None or revision is None:
        return refuse(say("There is no revision {letter}", letter=letter))
    held = tuple(
        replace(b, holds=(*b.holds, f"revision {letter} is approved now"))
        for b in list_queued(view)
        if b.cut_file == cut_file.id and b.revision != letter and not b.holds and b.cut == 0
    )
    return good(
        say("{name} revision {letter} is approved", name=cut_file.name, letter=letter),
        say(
            "{count} {count|batch|batches} of the old revision {count|is|are} held.",
            count=len(held),
        )
        if held
        else NEXT,
        sets=(replace(cut_file, approved=letter), *held),
    )


def release_batch(act: Act[ReleaseBatch], view: View) -> Answer:
    """Puts a new batch into a router's queue and prints its traveller."""
    if asked := ask_supervisor(act):
        return asked
    args = act.args
    cut_file, router = view.get(CutFile, args.cut_file), view.get(Router, args.router)
    if wrong := _refuse_release(view, cut_file, router, args.sheets):
        return wrong
    assert cut_file is not None
    assert router is not None
    order = view.get(Order, args.order)
    if args.order and (order is None or order.state in ("shipped", "cancelled")):
        return refuse(say("That order is not open"), say("Choose another, or none."))
    due = args.due or (order.due if order else "")
    if due and not is_time(due):
        return refuse(say("{due} is no time", due=due), say("Write it as 2026-11-25 14:00."))
    number = new_number(act, "batch")
    batch = Batch(
        id=number,
        cut_file=cut_file.id,
        revision=cut_file.approved,
        router=router.id,
        sheets=args.sheets,
        order=order.id if order else "",
        due=due,
        why=args.why,
        released=act.at,
    )
    return good(
        say("Batch {batch} is released to {router}", batch=number, router=router.name),
        say("Put its traveller with the sheets."),
        sets=(batch,),
        prints=(("traveller", number),),
    )


def _refuse_release(
    view: View, cut_file: CutFile | None, router: Router | None, sheets: int
) -> Answer | None:
    """Refuses when no batch of so many sheets can be cut on a router."""
    if cut_file is None or not cut_file.approved:
        return refuse(say("No approved revision of that cut file"), say("Approve one first."))
    if cut_file.work != "parts":
        return refuse(
            say("{name} cuts no parts out", name=cut_file.name),
            say("Release the cut file whose sheets it runs on."),
        )
    revision = find_approved(view, cut_file)
    if not 1 <= sheets <= 99:
        return refuse(say("A batch has 1 to 99 sheets"), say("Enter the sheets again."))
    if revision is None or router is None or not router.active:
        return refuse(say("There is no such router"), say("Choose a router."))
    if not list_runs(view, revision)[0].takes(router.id):
        return refuse(
            say("{name} does not run this file", name=router.name), say("Choose another router.")
        )
    return None


def cancel_batch(act: Act[CancelBatch], view: View) -> Answer:
    """Ends a batch: no more of its sheets are cut; what is cut goes on.

    Where all are cut, what waits of it is thrown away for a reason.
    """
    if asked := ask_supervisor(act):
        return asked
    batch = view.get(Batch, act.subject.partition("/")[2])
    if batch is None or batch.state == "cancelled":
        return refuse(say("There is no such batch to cancel"), say("Scan another traveller."))
    if batch.state == "cut":
        return _throw_rest_away(act, view, batch)
    bed = view.get(Bed, batch.router)
    if bed and bed.state == "cutting" and bed.batch == batch.id:
        return refuse(say("A sheet of it is on the bed"), say("Take it off the bed first."))
    if begun := len(list_between(view, batch.id)):
        return good(
            say("Batch {batch}: no fresh sheets", batch=batch.id),
            say("{n} {n|sheet lies|sheets lie} between two runs: they are finished.", n=begun),
            sets=(replace(batch, sheets=batch.cut + begun),),
        )
    state: BatchState = "cut" if batch.cut else "cancelled"
    freed = (replace(bed, batch=""),) if bed and bed.batch == batch.id else ()
    return good(
        say("Batch {batch}: no more sheets", batch=batch.id),
        say("{count} {count|sheet was|sheets were} cut.", count=batch.cut),
        sets=(replace(batch, state=state, sheets=batch.cut), *freed),
    )


def _throw_rest_away(act: Act[CancelBatch], view: View, batch: Batch) -> Answer:
    """Throws away what still waits of a batch whose sheets are all cut."""
    lying = list_with_paper(view, batch.id)
    if not lying:
        said = say("Nothing of batch {batch} waits any more", batch=batch.id)
        return refuse(said, say("What went on is on the rack or packed: count it there."))
    reason, n = find_reason(view, act.args.reason, "spoiled"), total(lying)
    if reason is None:
        cut = say(
            "All of batch {batch} is cut: {n} {n|piece that waits is|pieces that wait are} thrown "
            "away",
            batch=batch.id,
            n=n,
        )
        return ask_why(cut, "spoiled")
    slips = (view.get(Slip, f"{batch.id}-{tail(h.place)}") for h in lying)
    piles = (view.get(Pile, f"{h.place}/{batch.id}") for h in lying)
    done = {f.key: replace(f, state="spoiled") for f in slips if f}
    over = {f.key: replace(f, done=True) for f in piles if f}
    said = say("Batch {batch} is closed: {n} {n|piece|pieces} thrown away", batch=batch.id, n=n)
    return attention(
        said,
        say("Throw its papers away with them."),
        moves=tuple(move(h.part, h.qty, h.place, f"spoiled/{reason.id}", h.batch) for h in lying),
        sets=(*done.values(), *over.values()),
    )


def cancel_order(act: Act[CancelOrder], view: View) -> Answer:
    """Cancels an order; what is packed for it is caught at packing or the cart."""
    if asked := ask_supervisor(act):
        return asked
    order = view.get(Order, act.subject.partition("/")[2])
    if order is None or order.state in ("shipped", "cancelled"):
        return refuse(say("That order cannot be cancelled any more"))
    lying = total(view.stock(place=f"packing/{order.id}"))
    packed = order.state == "packed"
    worry: tuple[Concern, ...] = ()
    if lying or packed:
        worry = (
            Concern(
                id=act.id,
                what="cancelled",
                since=act.at,
                about=order.key,
                text=f"Order {order.id} is cancelled but already packed",
                choices=("put back", "send it"),
            ),
        )
    return good(
        say("Order {order} is cancelled", order=order.id),
        say("Its pack must be opened and put back.") if packed else NEXT,
        sets=(replace(order, state="cancelled"), *worry),
    )


def receive_lot(act: Act[ReceiveLot], view: View) -> Answer:
    """Receives sheets: a new lot, or more of one."""
    if asked := ask_supervisor(act):
        return asked
    material, sheets = view.get(Material, act.args.material), act.args.sheets
    if material is None:
        return refuse(say("There is no such material"), say("Enter the material first."))
    if not 1 <= sheets <= MOST:
        return refuse(say("How many sheets came?"), say("Enter a number above 0."))
    number = act.subject.partition("/")[2]
    lot = view.get(Lot, number) or Lot(id=number, material=material.id, received=act.at)
    if lot.material != material.id:
        return refuse(say("Lot {lot} is another material", lot=number), say("Use a new lot."))
    return good(
        say("{sheets} {sheets|sheet|sheets} received, lot {lot}", sheets=sheets, lot=number),
        say("Print its card and put it on the stack."),
        moves=(move(SHEET, sheets, "bought", "store", number),),
        sets=(lot,),
    )


def correct_count(act: Act[CorrectCount], view: View) -> Answer:
    """Sets the book right at one spot, up or down, with a reason, against ``recount``."""
    if asked := ask_supervisor(act):
        return asked
    part, place = act.args.part, act.args.place
    batch, counted = act.args.batch, act.args.counted
    if not 0 <= counted <= MOST or not kind_of(place).counted:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    book = sum(h.qty for h in view.stock(batch=batch, place=place) if h.part == part)
    if counted == book:
        return notice(say("Counted {n}: the book agrees", n=counted), NEXT)
    reason = find_reason(view, act.args.reason, "correct")
    if reason is None:
        return ask(
            say("Counted {n}, the book says {book}", n=counted, book=book),
            say("Why? Scan or touch a reason."),
            "reason",
        )
    by = counted - book
    frm, to = ("recount", place) if by > 0 else (place, "recount")
    return attention(
        say("Corrected from {book} to {n}", book=book, n=counted),
        say("Reason: {reason}.", reason=reason.words),
        moves=(move(part, abs(by), frm, to, batch),),
    )


def set_pin(act: Act[SetPin], view: View) -> Answer:
    """Sets a supervisor's new PIN, hashed before it comes here (argon2).

    The first one of a shop needs no approval: there is nobody yet who could give it.
    """
    worker = view.get(Worker, act.subject.partition("/")[2])
    if worker is None:
        return refuse(say("There is no such worker"), say("Open a worker first."))
    if has_pin(view) and (asked := ask_supervisor(act)):
        return asked
    hashed = act.args.hash
    if not hashed:
        return ask(
            say("A new PIN for worker {id}", id=worker.id),
            say("Enter 4 to 8 digits that nobody guesses."),
            "new_pin",
        )
    if not hashed.startswith("$argon2"):
        return refuse(say("A PIN is kept only as its hash"), say("Set it in the office."))
    return good(
        say("Worker {id} has a new PIN", id=worker.id),
        NEXT,
        sets=(replace(worker, supervisor=True, pin=hashed),),
    )


_ANY = frozenset(
    {Shop, Worker, Reason, Material, Lot, CutFile, Revision, Router, Bed, Batch, Order}
)

_EVERY_KIND = frozenset(KINDS.values())

RULES: Rules = {
    **by_kind(
        Rule(args=FoundShop, reads=frozenset({Shop}), decide=found_shop),
        Rule(args=RenewFirstFacts, reads=frozenset({Shop, Reason}), decide=renew_first_facts),
        Rule(args=SetFact, reads=_EVERY_KIND, decide=set_fact),
        Rule(args=SetList, reads=_EVERY_KIND, decide=set_list),
        Rule(args=ApproveRevision, reads=_ANY, decide=approve_revision),
        Rule(args=ReleaseBatch, reads=_ANY, decide=release_batch),
        Rule(args=CancelBatch, reads=_ANY | {Slip, Pile}, decide=cancel_batch),
        Rule(args=CancelOrder, reads=_ANY, decide=cancel_order),
        Rule(args=ReceiveLot, reads=_ANY, decide=receive_lot),
        Rule(args=CorrectCount, reads=_ANY, decide=correct_count),
        Rule(args=SetPin, reads=_ANY, decide=set_pin),
    ),
    **rules_intake.RULES,
}
