"""Office acts: the supervisor sets what the shop knows. All ask for a PIN, bar the first.

There is one generic act to set a fact (`set_fact`); acts of their own exist only where
more than one fact changes together or pieces move.
"""

from collections.abc import Mapping
from dataclasses import replace

from station.floor.office import rules_intake
from station.floor.office.approval import supervised
from station.floor.office.fields import LISTS, is_time
from station.floor.office.first import ISSUE, renewed
from station.floor.office.sound import wrong
from station.queries.batches import find_approved
from station.queries.runs import list_between, list_runs
from station.queries.settings import find_reason, has_pin
from station.queries.underway import list_queued
from station.shop.acts import (
    Act,
    Answer,
    SetPin,
    ask,
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
    RackPlace,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
    Worker,
)
from station.shop.moves import SHEET, Move, Spot, move
from station.shop.places import kind_of
from station.shop.plain import build
from station.shop.views import Rule, Rules, View, by_kind, total
from station.shop.words import Say, say

USES = tuple(REASON_USES)
NEXT = say("Touch the next row, or work on.")
NOTHING_SET = say("Nothing was set.")
MOST = 100_000  # pieces or sheets in one act: more is a slip of the finger


def found_shop(act: Act, view: View) -> Answer:
    """The very first act: everything a shop starts with, and what lies on its rack."""
    if view.get(Shop, "shop"):
        return refuse(say("This shop is set up already"), say("Change it in the office."))
    made = [build(str(f["kind"]), f["value"]) for f in _rows(act.args.get("facts"))]
    problems = [p for m in made if isinstance(m, list) for p in m]
    if problems:
        return refuse(
            problems[0],
            say("{count} {count|problem|problems}: nothing was set.", count=len(problems)),
        )
    facts = tuple(m for m in made if isinstance(m, Fact))
    moves = tuple(
        Move(str(part), int(qty), Spot(str(frm), str(batch)), Spot(str(to), str(batch)))
        for part, qty, frm, to, batch in act.args.get("stock", ())
    )
    return good(say("The shop is set up"), say("Scan your badge."), moves=moves, sets=facts)


def renew_first_facts(_act: Act, view: View) -> Answer:
    """Brings a shop that exists up to what the first facts of this program say."""
    shop = view.get(Shop, "shop")
    if shop is None or shop.first >= ISSUE:
        return notice(say("The shop knows all that it starts with"), say("Go on."))
    known = (r for use in USES for r in view.shelf(Reason, use, MOST))
    changed = tuple(new for old in known if (new := renewed(old)) != old)
    return good(
        say("{n} {n|reason says|reasons say} more now of what follows from them", n=len(changed)),
        say("Look at them in the office."),
        sets=(replace(shop, first=ISSUE), *changed),
    )


def _rows(value: object) -> list[dict[str, dict[str, object]]]:
    """Records as they came, or none."""
    return [r for r in value if isinstance(r, dict)] if isinstance(value, list | tuple) else []


def set_fact(act: Act, view: View) -> Answer:
    """Sets any fact anew from its fields, each checked against its type."""
    if asked := supervised(act):
        return asked
    kind, value = str(act.args.get("kind", "")), act.args.get("value")
    made = sound(kind, value, view)
    if isinstance(made, list):
        return refuse(made[0], say("Correct it and save again."))
    new = view.get(type(made), made.id) is None
    one = next((o.one for o in LISTS if o.kind is type(made)), Say(kind))
    said = (
        say("{kind} {id} is new", kind=one, id=made.id)
        if new
        else say("{kind} {id} is changed", kind=one, id=made.id)
    )
    return good(said, NEXT, sets=(made, *_its_part(made, view)))


NOT_BY_HAND = (Bed, Batch, Pack, Numbers, Concern)


def sound(kind: str, value: object, view: View) -> Fact | list[Say]:
    """The fact with these values, or every problem: types first, then what it means."""
    made = build(kind, value if isinstance(value, Mapping) else {})
    if isinstance(made, list):
        return made
    if isinstance(made, NOT_BY_HAND):
        return [say("{kind} follows from the work and is not set by hand", kind=kind)]
    return wrong(made, view) or made


def _its_part(made: Fact, view: View) -> tuple[Part, ...]:
    """A rack place that is set gives a part without a place its place."""
    part = view.get(Part, made.part) if isinstance(made, RackPlace) else None
    return (replace(part, rack=made.id),) if part and not part.rack else ()


def set_list(act: Act, view: View) -> Answer:
    """A whole list from a file in one act: all of it or nothing, and taken back as one."""
    if asked := supervised(act):
        return asked
    kind, values = str(act.args.get("kind", "")), act.args.get("values")
    facts: dict[str, Fact] = {}
    for number, value in enumerate(values if isinstance(values, list | tuple) else (), 1):
        made = sound(kind, value, view)
        if isinstance(made, list):
            return refuse(say("Row {n}: {what}", n=number, what=made[0]), NOTHING_SET)
        facts[made.id] = made
    before = {f.id: view.get(type(f), f.id) for f in facts.values()}
    sets = tuple(f for f in facts.values() if f != before[f.id])
    new = sum(before[fact.id] is None for fact in sets)
    if not sets:
        return notice(say("Nothing in it differs from what is known"), NOTHING_SET)
    return good(
        say("Taken in: {new} new, {changed} changed", new=new, changed=len(sets) - new),
        say("What is not in the file stays as it was."),
        sets=sets,
    )


def approve_revision(act: Act, view: View) -> Answer:
    """One revision of a cut file may be cut from now on; batches of others are held."""
    if asked := supervised(act):
        return asked
    cut_file = view.get(CutFile, act.subject.partition("/")[2])
    letter = str(act.args.get("letter", ""))
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


def release_batch(act: Act, view: View) -> Answer:
    """A new batch for a router's queue, its traveller printed."""
    if asked := supervised(act):
        return asked
    cut_file = view.get(CutFile, str(act.args.get("cut_file", "")))
    router = view.get(Router, str(act.args.get("router", "")))
    sheets = act.args.get("sheets")
    if wrong := _not_released(view, cut_file, router, sheets):
        return wrong
    assert cut_file is not None
    assert router is not None
    assert isinstance(sheets, int)
    order = view.get(Order, str(act.args.get("order", "")))
    if act.args.get("order") and (order is None or order.state in ("shipped", "cancelled")):
        return refuse(say("That order is not open"), say("Choose another, or none."))
    due = str(act.args.get("due", "")) or (order.due if order else "")
    if due and not is_time(due):
        return refuse(say("{due} is no time", due=due), say("Write it as 2026-11-25 14:00."))
    number = new_number(act, "batch")
    batch = Batch(
        id=number,
        cut_file=cut_file.id,
        revision=cut_file.approved,
        router=router.id,
        sheets=sheets,
        order=order.id if order else "",
        due=due,
        why=str(act.args.get("why", "")),
        released=act.at,
    )
    return good(
        say("Batch {batch} is released to {router}", batch=number, router=router.name),
        say("Put its traveller with the sheets."),
        sets=(batch,),
        prints=(("traveller", number),),
    )


def _not_released(
    view: View, cut_file: CutFile | None, router: Router | None, sheets: object
) -> Answer | None:
    """A refusal when no batch of so many sheets can be cut on a router."""
    if cut_file is None or not cut_file.approved:
        return refuse(say("No approved revision of that cut file"), say("Approve one first."))
    if cut_file.work != "parts":
        return refuse(
            say("{name} cuts no parts out", name=cut_file.name),
            say("Release the cut file whose sheets it runs on."),
        )
    revision = find_approved(view, cut_file)
    if not isinstance(sheets, int) or not 1 <= sheets <= 99:
        return refuse(say("A batch has 1 to 99 sheets"), say("Enter the sheets again."))
    if revision is None or router is None or not router.active:
        return refuse(say("There is no such router"), say("Choose a router."))
    if not list_runs(view, revision)[0].takes(router.id):
        return refuse(
            say("{name} does not run this file", name=router.name), say("Choose another router.")
        )
    return None


def cancel_batch(act: Act, view: View) -> Answer:
    """No more sheets of a batch are cut; what is cut goes on."""
    if asked := supervised(act):
        return asked
    batch = view.get(Batch, act.subject.partition("/")[2])
    if batch is None or batch.state not in ("queued", "cutting"):
        return refuse(say("That batch has no sheets left to cancel"))
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


def cancel_order(act: Act, view: View) -> Answer:
    """An order will not leave; what is packed for it is caught at packing or the cart."""
    if asked := supervised(act):
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


def receive_lot(act: Act, view: View) -> Answer:
    """Sheets received: a new lot, or more of one."""
    if asked := supervised(act):
        return asked
    material = view.get(Material, str(act.args.get("material", "")))
    sheets = act.args.get("sheets")
    if material is None:
        return refuse(say("There is no such material"), say("Enter the material first."))
    if not isinstance(sheets, int) or not 1 <= sheets <= MOST:
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


def correct_count(act: Act, view: View) -> Answer:
    """What lies at one spot is counted again, up or down, with a reason, against ``recount``."""
    if asked := supervised(act):
        return asked
    part, place = str(act.args.get("part", "")), str(act.args.get("place", ""))
    batch, counted = str(act.args.get("batch", "")), act.args.get("counted")
    if not isinstance(counted, int) or not 0 <= counted <= MOST or not kind_of(place).counted:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    book = sum(h.qty for h in view.stock(batch=batch, place=place) if h.part == part)
    if counted == book:
        return notice(say("Counted {n}: the book agrees", n=counted), NEXT)
    reason = find_reason(view, str(act.args.get("reason", "")), "correct")
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
    """A supervisor's new PIN, hashed before it comes here (argon2).

    The first one of a shop needs no approval: there is nobody yet who could give it.
    """
    worker = view.get(Worker, act.subject.partition("/")[2])
    if worker is None:
        return refuse(say("There is no such worker"), say("Open a worker first."))
    if has_pin(view) and (asked := supervised(act)):
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

RULES: Rules = {
    "found_shop": Rule(frozenset({Shop}), found_shop),
    "renew_first_facts": Rule(frozenset({Shop, Reason}), renew_first_facts),
    "set_fact": Rule(frozenset(KINDS.values()), set_fact),
    "set_list": Rule(frozenset(KINDS.values()), set_list),
    "approve_revision": Rule(_ANY, approve_revision),
    "release_batch": Rule(_ANY, release_batch),
    "cancel_batch": Rule(_ANY | {Slip}, cancel_batch),
    "cancel_order": Rule(_ANY, cancel_order),
    "receive_lot": Rule(_ANY, receive_lot),
    "correct_count": Rule(_ANY, correct_count),
    **by_kind(Rule(args=SetPin, reads=_ANY, decide=set_pin)),
    **rules_intake.RULES,
}
