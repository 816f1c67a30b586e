"""Decides on the office's acts about work: revisions, batches, orders, sheets, counts."""

from dataclasses import replace
from string import ascii_uppercase

from station.floor.office.acts import (
    ApproveRevision,
    CancelOrder,
    CorrectCount,
    ReceiveLot,
    ReceiveMailers,
    TakeInFile,
)
from station.floor.shared.approval import ask_supervisor, refuse_unapproved
from station.floor.shared.queue import CancelBatch, ReleaseBatch
from station.floor.shared.recounts import ask_about_count, ask_about_held, say_difference
from station.queries.batches import find_approved
from station.queries.buying import note_came
from station.queries.runs import list_between, list_runs
from station.queries.settings import find_reason
from station.queries.stock import name_place
from station.queries.supplies import count_left, name_supply
from station.queries.underway import list_queued, list_with_paper
from station.queries.unmade import DROP, list_unmade, settle_unmade
from station.shop.acts import (
    Act,
    Answer,
    ask,
    ask_why,
    attention,
    good,
    new_number,
    notice,
    refuse,
)
from station.shop.codes import usable
from station.shop.facts import (
    Batch,
    BatchState,
    Bed,
    Concern,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Material,
    Order,
    Part,
    Pile,
    Revision,
    Router,
    Slip,
)
from station.shop.moves import SHEET, SUPPLY, move, tail
from station.shop.places import kind_of
from station.shop.times import is_time
from station.shop.views import View, total
from station.shop.words import say

NEXT = say("Touch the next row, or work on.")
MOST = 100_000  # pieces or sheets in one act: more is a slip of the finger
MOST_PARTS = 999


def take_in_file(act: Act[TakeInFile], view: View) -> Answer:
    """Takes in a new revision of a cut file, to be looked at and approved."""
    if asked := ask_supervisor(act):
        return asked
    cut_file, made = view.get(CutFile, act.subject.partition("/")[2]), act.args.revision
    if cut_file is None or (cut_file.work == "parts" and not made.placed):
        return refuse(say("No part was found in that file"), say("Read another file."))
    material = view.get(Material, made.material)
    if material is None:
        return refuse(say("There is no such material"), say("Enter the material first."))
    before = view.shelf(Revision, cut_file.id, 50)
    if same := next((r for r in before if r.digest == made.digest), None):
        return refuse(
            say("That text is revision {letter} already", letter=same.letter),
            say("Read another file."),
        )
    letter = find_letter({r.letter for r in before})
    if not letter:
        return refuse(say("No letter is left for it"), say("Make a new cut file."))
    parts = _make_parts(act.args.parts, made, material, view)
    if parts is None:
        return refuse(say("A part of it is not known"), say("Read the file again."))
    return good(
        say("Revision {letter} of {name} is in", letter=letter, name=cut_file.name),
        say("Look it over, then approve it."),
        sets=(
            _give_letter(replace(made, file=act.args.file), cut_file.id, letter, parts),
            *parts.values(),
            *_give_shapes(made, parts, view),
        ),
    )


def find_letter(taken: set[str]) -> str:
    """Finds the first letter after the last one taken; empty past Z."""
    last = max((ascii_uppercase.index(t) for t in taken if t in ascii_uppercase), default=-1)
    return ascii_uppercase[last + 1 : last + 2]


def _make_parts(
    names: dict[str, str], made: Revision, material: Material, view: View
) -> dict[str, Part] | None:
    """Makes the new parts by the shape's own id; None when a shape is neither known nor named.

    They are as thick as the sheets that they are cut from.
    """
    known = {p.id for p in view.shelf(Part, "all", MOST_PARTS)}
    free = (n for n in (f"{n:03d}" for n in range(1, MOST_PARTS)) if _is_free(n, known))
    found = {}
    for shape, outline in made.shapes:
        if shape in names:
            name = names[shape]
            found[shape] = Part(id=next(free), name=name, words=name, shape=outline,
                                thickness_mm=material.thickness_mm)  # fmt: skip
        elif shape not in known:
            return None
    return found


def _give_shapes(made: Revision, new: dict[str, Part], view: View) -> list[Part]:
    """Gives known parts that had no shape yet the one that the file cuts."""
    known = ((view.get(Part, s), outline) for s, outline in made.shapes if s not in new)
    return [replace(p, shape=outline) for p, outline in known if p and p.shape is None]


def _is_free(number: str, known: set[str]) -> bool:
    return number not in known and usable("part", number)


def _give_letter(made: Revision, cut_file: str, letter: str, parts: dict[str, Part]) -> Fact:
    ids = {shape: part.id for shape, part in parts.items()}
    return replace(
        made,
        id=Revision.id_of(cut_file, letter),
        letter=letter,
        shapes=tuple((ids.get(s, s), outline) for s, outline in made.shapes),
        placed=tuple(replace(p, part=ids.get(p.part, p.part)) for p in made.placed),
    )


def approve_revision(act: Act[ApproveRevision], view: View) -> Answer:
    """Lets one revision of a cut file be cut from now on; batches of others are held."""
    if asked := ask_supervisor(act):
        return asked
    cut_file = view.get(CutFile, act.subject.partition("/")[2])
    letter = act.args.letter
    revision = view.get(Revision, Revision.id_of(cut_file.id, letter)) if cut_file else None
    if cut_file is None or revision is None:
        return refuse(say("There is no revision {letter}", letter=letter))
    if doubted := _doubt_stops(act, revision, view):
        return doubted
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


def _doubt_stops(act: Act[ApproveRevision], revision: Revision, view: View) -> Answer | None:
    """Asks twice, and for a reason, before what its reading says must be mended is cut."""
    if not revision.stops:
        return None
    said = say("{n} {n|thing|things} in its file must be mended first", n=revision.stops)
    if not act.args.sure:
        return ask(said, say("Leave it and mend the file; or go on, with a reason."), "sure")
    if find_reason(view, act.args.reason, "overrule") is None:
        return ask(said, say("Why is it cut all the same? Scan or touch a reason."), "reason")
    return None


def release_batch(act: Act[ReleaseBatch], view: View) -> Answer:
    """Puts a new batch into a router's queue and prints its traveller."""
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
    if asked := ask_supervisor(act):
        return asked
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
    if cut_file is None:
        return refuse(say("That is no cut file"), say("Open a cut file first."))
    if not cut_file.approved:
        return refuse_unapproved(cut_file, view)
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
    dropped = settle_unmade(list_unmade(view, batch), DROP, at=act.at, by=act.args.approved)
    if begun := len(list_between(view, batch.id)):
        return good(
            say("Batch {batch}: no fresh sheets", batch=batch.id),
            say("{n} {n|sheet lies|sheets lie} between two runs: they are finished.", n=begun),
            sets=(replace(batch, sheets=batch.cut + begun), *dropped),
        )
    state: BatchState = "cut" if batch.cut else "cancelled"
    freed = (replace(bed, batch=""),) if bed and bed.batch == batch.id else ()
    return good(
        say("Batch {batch}: no more sheets", batch=batch.id),
        say("{count} {count|sheet was|sheets were} cut.", count=batch.cut),
        sets=(replace(batch, state=state, sheets=batch.cut), *freed, *dropped),
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
    packed = order.state == "packed" or bool(order.packs)
    worry: tuple[Concern, ...] = ()
    if lying or packed:
        worry = (
            Concern(
                id=act.id,
                what="cancelled",
                since=act.at,
                about=order.key,
                text=say("Order {order} is cancelled but already packed", order=order.id)
                if packed
                else say(
                    "Order {order} is cancelled: put back {n} {n|part|parts} of its pack",
                    order=order.id,
                    n=lying,
                ),
                choices=("put back", "send it"),
            ),
        )
    return good(
        say("Order {order} is cancelled", order=order.id),
        say("Its pack must be opened and put back.")
        if packed
        else say("Packing puts back {n} {n|part|parts} of its pack.", n=lying)
        if lying
        else NEXT,
        sets=(replace(order, state="cancelled"), *worry),
    )


def receive_lot(act: Act[ReceiveLot], view: View) -> Answer:
    """Receives sheets: a new lot, or more of one."""
    if asked := ask_supervisor(act):
        return asked
    material, sheets = view.get(Material, act.args.material), act.args.sheets
    if material is None:
        return refuse(say("There is no such material"), say("Enter the material first."))
    if sheets < 1:
        return refuse(say("How many sheets came?"), say("Enter a number above 0."))
    if sheets > MOST:
        return refuse(say("{n} {n|sheet|sheets} cannot come at once", n=sheets),
                      say("Enter how many came."))  # fmt: skip
    number = act.subject.partition("/")[2]
    lot = view.get(Lot, number) or Lot(id=number, material=material.id, received=act.at)
    if lot.material != material.id:
        return refuse(say("Lot {lot} is another material", lot=number), say("Use a new lot."))
    return good(
        say("{sheets} {sheets|sheet|sheets} received, lot {lot}", sheets=sheets, lot=number),
        say("Print its card and put it on the stack."),
        moves=(move(SHEET, sheets, "bought", "store", number),),
        sets=(lot, *note_came(view, "material", material.id, sheets)),
    )


def receive_mailers(act: Act[ReceiveMailers], view: View) -> Answer:
    """Receives mailers: so many more than the book says."""
    mailer, came = view.get(Mailer, act.subject.partition("/")[2]), act.args.mailers
    if mailer is None:
        return refuse(say("There is no such mailer"), say("Enter the mailer first."))
    if not 1 <= came <= MOST:
        return refuse(say("How many mailers came?"), say("Enter a number above 0."))
    if asked := ask_supervisor(act):
        return asked
    left = came + count_left(view, mailer.id)
    return good(
        say("{n} × {mailer} received", n=came, mailer=mailer.name),
        say("{n} by the book now. Packs count them down.", n=left),
        moves=(move(SUPPLY, came, "bought", "supplies", name_supply(mailer.id)),),
        sets=note_came(view, "mailer", mailer.id, came),
    )


def correct_count(act: Act[CorrectCount], view: View) -> Answer:
    """Sets the book right at one spot, asked about as every recount is, against ``recount``."""
    part, place = act.args.part, act.args.place
    batch, counted = act.args.batch, act.args.counted
    if not kind_of(place).counted:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    book = sum(h.qty for h in view.stock(batch=batch, place=place) if h.part == part)
    if problem := ask_about_count(act, view, view.get(Part, part), book, counted, place=place):
        return problem
    if problem := ask_about_held(act, view, batch, book - counted):
        return problem
    if counted == book:
        return notice(say("Counted {n}: the book agrees", n=counted), NEXT)
    by = counted - book
    frm, to = ("recount", place) if by > 0 else (place, "recount")
    agreed = bool(act.args.approved)
    return attention(
        say("Corrected: {counted} there, {by}", counted=counted, by=say_difference(by)),
        NEXT if agreed else say("The supervisor sees it under Needs a look."),
        moves=(move(part, abs(by), frm, to, batch),),
        sets=() if agreed else (_look_at_count(act, view, book),),
    )


def _look_at_count(act: Act[CorrectCount], view: View, book: int) -> Concern:
    """Asks a supervisor, who was not there, for a look at a count that was corrected."""
    text = say(
        "{place}: {book} by the book, {counted} counted",
        place=name_place(view, act.args.place),
        book=book,
        counted=act.args.counted,
    )
    of = "lot" if act.args.part == SHEET else "batch"
    return Concern(
        id=act.id, what="recount", since=act.at, about=f"{of}/{act.args.batch}", text=text
    )
