"""Questions about a batch: its revision, its paper, its children, whether it may go on."""

from dataclasses import replace
from typing import Any

from station.queries.why_cut import read_why
from station.shop.acts import Act, Answer, good, new_number, refuse
from station.shop.codes import Code, next_copy
from station.shop.facts import (
    Batch,
    BatchRole,
    Concern,
    CutFile,
    Fact,
    Mixed,
    Order,
    Pile,
    PileArea,
    Revision,
    Slip,
)
from station.shop.moves import Held, Spot, head, tail
from station.shop.views import View
from station.shop.words import Say, moment, say

LET_GO = "let it go on"  # how a hold is settled
FAMILY = 1000  # batches that came of one, of each kind: a hold reaches all of them


def find_revision(view: View, batch: Batch) -> Revision | None:
    """Finds the revision that a batch was released with."""
    return view.get(Revision, Revision.id_of(batch.cut_file, batch.revision))


def find_approved(view: View, cut_file: CutFile) -> Revision | None:
    """Finds the revision of a cut file that may be cut now; None: none may."""
    return view.get(Revision, Revision.id_of(cut_file.id, cut_file.approved))


def find_approved_letter(view: View, batch: Batch) -> str:
    """Finds the letter of its cut file that may be cut now; empty when none may."""
    cut_file = view.get(CutFile, batch.cut_file)
    return cut_file.approved if cut_file else ""


def is_approved(view: View, batch: Batch) -> bool:
    """Tells whether the revision of a batch may be cut now: it is the approved one."""
    return find_approved_letter(view, batch) == batch.revision


def describe_batch(view: View, batch: Batch) -> str:
    """Describes what a batch makes by the words of its cut file; by its number where unknown."""
    cut_file = view.get(CutFile, batch.cut_file)
    return cut_file.words if cut_file else batch.cut_file


def find_order(view: View, batch: Batch) -> Order | None:
    """Finds the order that a batch's good pieces go to; None: they go to the rack.

    One that is packed, gone or cancelled meanwhile takes none any more.
    """
    order = view.get(Order, batch.order) if batch.order else None
    return order if order and order.takes_pieces else None


def say_why(batch: Batch) -> Say | str:
    """Says why a batch was released and as of when: what lacked then may lie there now."""
    if not batch.why or not batch.released:
        return read_why(batch.why)
    return say("{why} (as of {at})", why=read_why(batch.why), at=moment(batch.released))


def find_hold(view: View, number: str) -> Batch | None:
    """Finds the batch whose hold keeps the pieces of a batch: itself, or one it came from.

    What was split off or is made good is of the same wood, bit and hands as its parent, so
    a hold on the parent keeps it as well; where pieces of several came back together nobody
    knows which is of which, so a hold on any of them does. None: the pieces may go on.
    """
    climbed = [number]
    for one in climbed:  # grows while it is walked
        batch = view.get(Batch, one)
        if batch and batch.why_held:
            return batch
        climbed += [b for b in (batch.parents if batch else ()) if b not in climbed]
    return None


def refuse_held(view: View, number: str) -> Answer | None:
    """Refuses what would move a held batch onward. None: it may go on."""
    hold = find_hold(view, number)
    if hold is None:
        return None
    if not hold.holds:
        said = say("Batch {batch} waits: {why}", batch=hold.id, why=hold.why_held)
        return refuse(said, say("Trimming measures it again; or a supervisor lets it go on."))
    if hold.id == number:
        said = say("Batch {batch} is held: {why}", batch=number, why=hold.why_held)
    else:
        said = say(
            "Batch {batch} is held with batch {parent}: {why}",
            batch=number,
            parent=hold.id,
            why=hold.why_held,
        )
    return refuse(said, say("Put it aside. A supervisor lets it go on."))


def refuse_held_parent(view: View, batch: Batch) -> Answer | None:
    """Refuses to let a batch go on while one that it came from is held."""
    holds = (find_hold(view, number) for number in batch.parents)
    parent = next(filter(None, holds), None)
    if parent is None:
        return None
    return refuse(
        say("Batch {batch} is held with batch {parent}", batch=batch.id, parent=parent.id),
        say("Let batch {parent} go on first.", parent=parent.id),
    )


def list_family(view: View, number: str) -> tuple[str, ...]:
    """Lists a batch and all that came of it: what was split off, is made good, came back."""
    found = [number]
    for one in found:  # grows while it is walked
        children = [b.id for b in view.shelf(Batch, f"child/{one}", FAMILY)]
        children += [mixed.within for mixed in view.shelf(Mixed, f"of/{one}", FAMILY)]
        found += [child for child in children if child not in found]
    return tuple(found)


def free_batch(view: View, batch: Batch, *, at: str, by: str, why: str) -> tuple[Fact, ...]:
    """Frees a batch of what holds it; what asked for a look at that is settled with it."""
    looks = (view.get(Concern, look) for look in batch.looks)
    settled = (
        replace(c, settled=LET_GO, settled_at=at, by=by, reason=why)
        for c in looks
        if c and not c.settled
    )
    return (replace(batch, holds=(), doubts=(), looks=()), *settled)


def keep_free(view: View, lying: tuple[Held, ...]) -> tuple[Held, ...]:
    """Keeps the pieces that may go on, in their order."""
    return tuple(h for h in lying if find_hold(view, h.batch) is None)


def keep_held(view: View, lying: tuple[Held, ...]) -> tuple[Held, ...]:
    """Keeps the pieces that may not go on, in their order."""
    return tuple(h for h in lying if find_hold(view, h.batch))


def refuse_uncuttable(view: View, batch: Batch) -> Answer | None:
    """Refuses a batch that has no sheets to cut, or is held."""
    if not batch.has_sheets:
        return refuse(
            say("Batch {batch} has no sheets of its own", batch=batch.id),
            say("Bring it to trimming."),
        )
    if batch.state == "cancelled":
        return refuse(
            say("Batch {batch} is cancelled", batch=batch.id), say("Throw its traveller away.")
        )
    if hold := find_hold(view, batch.id):
        return refuse(
            say("Batch {batch} is held: {why}", batch=batch.id, why=hold.why_held),
            say("Put it aside; a supervisor lets it go on."),
        )
    if batch.cut >= batch.sheets:
        return refuse(
            say(
                "All {sheets} {sheets|sheet|sheets} of batch {batch} {sheets|is|are} cut",
                sheets=batch.sheets,
                batch=batch.id,
            ),
            say("Take the next batch."),
        )  # fmt: skip
    return None


def refuse_unapproved(view: View, batch: Batch) -> Answer | None:
    """Refuses a batch when another revision is approved than the batch was released with."""
    letter = find_approved_letter(view, batch)
    if letter == batch.revision and find_revision(view, batch):
        return None
    if not letter:
        return refuse(
            say("No revision of this cut file is approved"),
            say("Put it aside; ask the supervisor."),
        )
    offered = say(
        "Revision {offered} offered, {letter} is approved", offered=batch.revision, letter=letter
    )
    if not batch.cut:
        return refuse(offered, say("Put it aside; the office releases it anew."))
    return refuse(
        offered,
        say(
            "The other {left} {left|sheet is|sheets are} held; cut parts go on.",
            left=batch.sheets - batch.cut,
        ),
    )


def refuse_wrong_paper(code: Code, batch: Batch | None) -> Answer | None:
    """Refuses a paper that cannot be picked up: no such batch, or a void copy of a traveller.

    A slip lies with the parts of its sheet: it tells what they are though its traveller is void.
    """
    if batch is None:
        return refuse(
            say("There is no batch {batch}", batch=code.number), say("Look at the paper.")
        )
    slip_of_before = bool(code.sheet) and code.copy in batch.void
    if code.copy and code.copy != batch.copy and not slip_of_before:
        return refuse(
            say("Void: see copy {copy}", copy=batch.copy),
            say("Throw this paper away. Nothing was counted."),
        )
    return None


def make_child(act: Act[Any], batch: Batch, role: BatchRole, *, tries: int = 0) -> Batch:
    """Makes a batch without sheets of its own: ``split`` off, or ``rework``, to be made good."""
    return replace(
        batch,
        id=new_number(act, "batch"),
        parent=batch.id,
        others=(),
        role=role,
        tries=tries or batch.tries,
        sheets=0,
        cut=0,
        spoiled=0,
        copy="A",
        void=(),
        why="",  # its parent's was of other pieces, at another time
        holds=(),  # while its parent is held it is held too, and free with it
        doubts=(),
        looks=(),
        state="cut",
        released=act.at,
    )


def make_rework(act: Act[Any], batch: Batch) -> Batch:
    """Makes a child for pieces that are made good: one try more than where they come from."""
    return make_child(act, batch, "rework", tries=batch.tries + 1)


def make_pile(act: Act[Any], area: PileArea, batch: Batch) -> Pile:
    """Makes the pile of a batch's pieces that wait in an area since this act."""
    return Pile(id=f"{area}/{batch.id}", area=area, batch=batch.id, since=act.at, due=batch.due)


def list_where_it_lies(view: View, child: Batch, spot: Spot, at: str) -> Slip | Pile:
    """Makes what puts a child's pieces of a spot into the list of the area where they lie."""
    if head(spot.place) != "popping":
        return Pile(
            id=f"{spot.place}/{child.id}",
            area="rework" if spot.place == "rework" else "trimming",
            batch=child.id,
            since=at,
            due=child.due,
        )
    sheet = tail(spot.place)
    slip = view.get(Slip, f"{spot.batch}-{sheet}")
    number = f"{child.id}-{sheet}"
    if slip:  # it is of the same sheet: its lot, its bit, its router
        return replace(slip, id=number, batch=child.id, state="popping")
    return Slip(id=number, batch=child.id, sheet=int(sheet), router=child.router, at=at)


def list_mixed(child: Batch) -> tuple[Mixed, ...]:
    """Makes what leads from each other batch that a child's pieces are of to the child."""
    return tuple(Mixed(id=f"{child.id}/{b}", within=child.id, batch=b) for b in child.others)


def print_anew(batch: Batch) -> Answer:
    """Prints a batch's traveller as a new copy; the one before is void from now on."""
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


def find_cut_batch(view: View, number: str) -> Batch | None:
    """Finds the batch whose sheets a batch's pieces were cut of.

    What was split off or is made good was cut with its parent; None: nobody knows, as of
    pieces of several batches that came back together.
    """
    cut, asked = view.get(Batch, number), {number}
    while cut and not cut.others and cut.parent not in ("", *asked):
        asked.add(cut.parent)
        cut = view.get(Batch, cut.parent)
    return None if cut and cut.others else cut


def list_slips(view: View, batch: Batch) -> tuple[Slip, ...]:
    """Lists the slips of a batch's own sheets, by their number; those not cut have none."""
    slips = (view.get(Slip, f"{batch.id}-{n}") for n in range(1, batch.sheets + 1))
    return tuple(slip for slip in slips if slip)
