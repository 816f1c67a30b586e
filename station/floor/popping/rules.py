"""Popping: parts leave their sheet, are counted by exception and go on to trimming."""

from collections.abc import Mapping
from dataclasses import replace

from station.floor.popping.acts import PassOn
from station.floor.shared.counting import draw_pieces, list_faults
from station.queries.batches import make_pile, make_rework, refuse_held
from station.queries.first_offs import refuse_unmeasured
from station.queries.routers import name_router
from station.queries.stock import name_part, tell_where
from station.queries.underway import ask_if_changed, count_good, explain_last
from station.shop.acts import Act, Answer, attention, good, refuse
from station.shop.beginning import not_here
from station.shop.counts import Counts, has_rework, read_counts, sum_by_fate
from station.shop.facts import (
    Batch,
    Bed,
    Fact,
    Mixed,
    Notice,
    Part,
    Pile,
    RackPlace,
    Reason,
    Router,
    Slip,
)
from station.shop.moves import Held, Move, head, tail
from station.shop.readings import SPOILED, Reading
from station.shop.views import Rule, Rules, View, by_kind, by_part, total
from station.shop.words import Say, clock, say, several, together


def list_lying(view: View, batch: str, slips: tuple[str, ...]) -> tuple[Held, ...]:
    """Lists the pieces of these slips that wait at popping."""
    places = {f"popping/{slip.rpartition('-')[2]}" for slip in slips}
    return tuple(h for h in view.stock(batch=batch) if h.place in places)


def read_sheet(slip: str) -> int:
    """Reads the number of the sheet from the id of its slip."""
    return int(slip.rpartition("-")[2])


def decide_pass_on(act: Act[PassOn], view: View) -> Answer:
    """Sends counted pieces to trimming; spoiled, missing and rework to where they belong.

    Nothing may exceed what lies here.
    """
    batch = view.get(Batch, tail(act.subject))
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    sheets = [read_sheet(slip) for slip in act.args.slips]
    if problem := refuse_held(view, batch.id) or refuse_unmeasured(view, batch.id, sheets):
        return problem
    held = list_lying(view, batch.id, act.args.slips)
    if not held:
        return refuse_empty(view, batch)
    counts = read_counts(act.args.parts)
    here = by_part(held)
    if problem := _refuse_counts(view, batch, counts, here):
        return problem
    if asked := ask_if_changed(act, act.args.seen, view, batch, here):
        return asked
    routers = {slip.router for s in act.args.slips if (slip := view.get(Slip, s))}
    router = routers.pop() if len(routers) == 1 else ""
    answer = _pass_on(act, view, batch, held, counts)
    return replace(answer, router=router, readings=_note_spoiled(act, batch, router))


def _note_spoiled(act: Act[PassOn], batch: Batch, router: str) -> tuple[Reading, ...]:
    """Notes what was not good, with its reason and where on the sheet, for its router's page."""
    if not router:
        return ()
    sheets = [read_sheet(slip) for slip in act.args.slips]
    return tuple(
        Reading(
            subject=f"router/{router}",
            kind=SPOILED,
            value=float(count),
            batch=batch.id,
            sheet=sheets[0] if len(sheets) == 1 else 0,
            router=router,
            part=part,
            why=tail(counter),
            place=several(list(act.args.where.get(part, {}).get(counter, ()))),
        )
        for part, row in act.args.parts.items()
        for counter, count in row.items()
        if head(counter) in ("spoiled", "rework") and count > 0
    )


def _refuse_counts(
    view: View, batch: Batch, counts: Counts, here: Mapping[str, int]
) -> Answer | None:
    """Refuses a count of more than lies here, or of nothing at all."""
    for part, row in counts.items():
        left = here.get(part, 0)
        if sum(row.values()) > left:
            return refuse(
                say(
                    "{left} {part} left here, not {count}",
                    left=left,
                    part=name_part(view, part),
                    count=sum(row.values()),
                ),
                say_again(explain_last(view, batch)),
            )
    if not any(sum(row.values()) for row in counts.values()):
        return refuse(say("Nothing was counted"), say("Say how many go on."))
    return None


def say_again(lately: Say) -> Say:
    """Says what to do when fewer lie here than were counted."""
    if not lately:
        return say("Count again. Somebody may have passed some on.")
    return say("Count again: {who}.", who=lately)


def refuse_empty(view: View, batch: Batch) -> Answer:
    """Refuses a batch that has nothing left at popping, and says where it is."""
    past = view.last(batch.key, PassOn)
    if past is None:
        return refuse(
            say("Batch {batch} has nothing at popping", batch=batch.id),
            not_here(view.begins()) or say("Take it off the bed first."),
        )
    goods = count_good(past.moves)
    return refuse(
        say(
            "Passed on at {at} by worker {worker}: {good} good",
            at=clock(past.act.at),
            worker=past.act.worker,
            good=goods,
        ),
        _say_where(view, batch),
    )


def _say_where(view: View, batch: Batch) -> Say:
    """Says where the pieces of a batch are now that went on from popping."""
    where = tell_where(view, batch.id, gone=True)
    if not where:
        return say("None of it is good any more. Scan the next slip.")
    return say("Now {where}. Scan the next slip.", where=where)


def _pass_on(
    act: Act[PassOn], view: View, batch: Batch, held: tuple[Held, ...], counts: Counts
) -> Answer:
    slips = act.args.slips
    lying = list(held)
    moves: list[Move] = []
    child = make_rework(act, batch) if has_rework(counts) else None
    for part, row in counts.items():
        for counter, count in row.items():
            to, to_batch = _find_destination(counter, child)
            moves += draw_pieces(lying, part, count, to, to_batch)
    left = {h.place for h in lying}
    sets = (
        *_close_slips(view, batch, slips, left),
        *_make_piles(act, view, batch, child, moves),
        *_tell_routers(act, view, counts),
    )
    prints = (("traveller", child.id),) if child else ()
    return _say_passed(batch, counts, tuple(moves), sets, prints, stay=total(lying))


def _find_destination(counter: str, child: Batch | None) -> tuple[str, str]:
    """Finds where a counter's pieces go, and into which batch (empty: their own)."""
    if counter == "good":
        return "trimming", ""
    if head(counter) == "rework" and child:
        return "rework", child.id
    return counter, ""


def _close_slips(
    view: View, batch: Batch, slips: tuple[str, ...], left: set[str]
) -> tuple[Slip, ...]:
    """Closes the slips whose pile is empty now."""
    done = (view.get(Slip, s) for s in slips if f"popping/{s.rpartition('-')[2]}" not in left)
    return tuple(replace(s, state="popped") for s in done if s and s.batch == batch.id)


def _make_piles(
    act: Act[PassOn], view: View, batch: Batch, child: Batch | None, moves: list[Move]
) -> tuple[Fact, ...]:
    """Makes the piles that appear at trimming, and the child batch itself."""
    came = any(m.to.place == "trimming" for m in moves)
    old = view.get(Pile, f"trimming/{batch.id}") if came else None
    new = (make_pile(act, "trimming", batch),) if came and (old is None or old.done) else ()
    return (*new, child, make_pile(act, "rework", child)) if child else new


def _tell_routers(act: Act[PassOn], view: View, counts: Counts) -> tuple[Notice, ...]:
    """Tells each router that cut one of these sheets what was wrong, before its next one.

    Pieces of several sheets are counted together, so each router hears of all the faults.
    """
    wrong = "; ".join(
        w for part, row in counts.items() if (w := _name_faults(act, view, part, row))
    )
    found = [slip for s in act.args.slips if (slip := view.get(Slip, s))]
    routers = list(dict.fromkeys(slip.router for slip in found if slip.router))
    if not wrong:
        return ()
    if len(routers) > 1:
        cut = [f"sheet {s.sheet} on {name_router(view, s.router)}" for s in found if s.router]
        wrong += f" (batch {found[0].batch}, counted together: {several(cut)})"
    return tuple(
        Notice(id=f"{act.id}-{router}", router=router, text=wrong, at=act.at, by=act.worker)
        for router in routers
    )


def _name_faults(act: Act[PassOn], view: View, part: str, row: Mapping[str, int]) -> str:
    """Names one part's faults: "6 HC-300 uncut, bottom right: look at …"."""
    faults, board = [], False
    where = act.args.where.get(part, {})
    for counter, count in row.items():
        reason = view.get(Reason, tail(counter)) if tail(counter) else None
        board = board or bool(reason and reason.look_at_board)
        if head(counter) in ("spoiled", "rework"):
            told = f"{count} {reason.words if reason else head(counter)}"
            faults.append(", ".join((told, *where.get(counter, ()))))
    if not faults:
        return ""
    look = "; look at the spoilboard or Z" if board else ""
    return f"{name_part(view, part)}: {'; '.join(faults)}{look}"


def _say_passed(
    batch: Batch,
    counts: Counts,
    moves: tuple[Move, ...],
    sets: tuple[Fact, ...],
    prints: tuple[tuple[str, str], ...],
    *,
    stay: int,
) -> Answer:
    """Says what happened in one line, and what to do now."""
    sums = sum_by_fate(*counts.values())
    faults = list_faults(sums)
    said = say("Batch {batch}: {good} good passed on", batch=batch.id, good=sums["good"])
    if faults:
        said = say(
            "Batch {batch}: {good} good, {faults}",
            batch=batch.id,
            good=sums["good"],
            faults=together(faults),
        )
    do = say("Bring them to trimming with the traveller.")
    if stay:
        do = say("{n} {n|stays|stay} here under {n|its slip|their slips}.", n=stay)
    if prints:
        do = say(
            "Rework traveller {child} goes with the {n}.", child=prints[0][1], n=sums["rework"]
        )
    answer = good if not faults else attention
    return answer(said, do, moves=moves, sets=sets, prints=prints)


_READS = frozenset({Batch, Bed, Mixed, Notice, Part, Pile, RackPlace, Reason, Router, Slip})

RULES: Rules = by_kind(Rule(args=PassOn, reads=_READS, decide=decide_pass_on))
