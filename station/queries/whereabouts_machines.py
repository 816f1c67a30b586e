"""Answers about routers, bits, lots, cut files and mailers: what they do, how much is left."""

from collections.abc import Iterator

from station.queries.batches import describe_batch
from station.queries.routers import (
    count_metres_cut,
    count_minutes_left,
    find_bed,
    find_running,
    name_router,
)
from station.queries.stock import count_in_store, name_place
from station.queries.supplies import count_left
from station.queries.things import AnswerLine, Thing
from station.queries.underway import list_queue, list_queued
from station.shop.codes import write_touch
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    CutFile,
    Lot,
    Mailer,
    Material,
    Pack,
    Reason,
    Router,
)
from station.shop.first_facts import say_reason
from station.shop.moves import SHEET
from station.shop.places import balances
from station.shop.views import View
from station.shop.words import Say, length, metres, say, when

OPENED = 2000  # packs opened again that are looked through
FREE = say("it is free")


def answer_router(view: View, router: Router, now: str) -> Thing:
    """Answers about a router: its sheet, its bits and its queue."""
    bed, queue = find_bed(view, router.id), list_queue(view, router.id)
    lines = []
    if bed.sheet:
        made = find_running(view, bed)
        lines.append(AnswerLine(
            say("sheet {n} of batch {batch}", n=bed.sheet, batch=bed.batch),
            say("file {file}", file=made.id) if made else "", write_touch("batch", bed.batch),
        ))  # fmt: skip
    lines += [
        AnswerLine(say("bit {bit}", bit=bit), _tell_metres(view, bit), write_touch("bit", bit))
        for _, bit in bed.bits
    ]
    return Thing(
        label=say("Router"),
        number=router.id,
        title=router.name,
        said=say("{router}: {doing}", router=router.name, doing=tell_doing(bed, now)),
        next=(say("Next in its queue: batch {batch}.", batch=queue[0].id) if queue
              else say("Nothing is in its queue.")),
        where=tuple(lines),
        promised=tuple(
            AnswerLine(say("Batch {batch}", batch=b.id), describe_batch(view, b),
                 write_touch("batch", b.id)) for b in queue
        ),
        about=(router.key,),
    )  # fmt: skip


def tell_doing(bed: Bed, now: str) -> Say:
    """Tells what a router does now."""
    if bed.state == "stopped":
        return say("stopped since {at}", at=when(bed.stopped, now))
    if bed.sheet:
        left = max(0, round(count_minutes_left(bed, now)))
        return say("sheet {n} of batch {batch}, {left} min left", n=bed.sheet, batch=bed.batch,
                   left=left)  # fmt: skip
    return say("it is free, batch {batch} is taken on", batch=bed.batch) if bed.batch else FREE


def _tell_metres(view: View, id: str) -> Say:
    bit = view.get(Bit, id)
    if bit is None:
        return Say()
    cut = metres(count_metres_cut(view, bit))
    return say("{cut} of {life} m cut", cut=cut, life=metres(bit.life_m))


def answer_bit(view: View, bit: Bit, _now: str) -> Thing:
    """Answers about a bit: where it is, and how much it has cut."""
    in_router = name_router(view, bit.router) if bit.router else ""
    place = say("in {router}", router=in_router) if in_router else say("in the drawer")
    cut = _tell_metres(view, bit.id)
    states = {"good": say("good"), "worn": say("worn"), "broken": say("broken")}
    left = metres(max(0, bit.life_m - count_metres_cut(view, bit)))
    return Thing(
        label=say("Bit"),
        number=bit.id,
        title=bit.words,
        note=states[bit.state],
        said=say("Bit {bit}: {place}, {metres}", bit=bit.id, place=place, metres=cut),
        next=(say("Left of its life: {n} m.", n=left) if bit.state == "good"
              else say("It is not used any more.")),
        where=(AnswerLine(cut, place, write_touch("router", bit.router)),),
        about=(bit.key,),
    )  # fmt: skip


def answer_lot(view: View, lot: Lot, _now: str) -> Thing:
    """Answers about a lot: where its sheets are."""
    there = count_in_store(view, lot.id)
    material = view.get(Material, lot.material)
    sheets = [h for h in view.stock(batch=lot.id) if h.part == SHEET and not balances(h.place)]
    used = sum(h.qty for h in sheets if h.place == "used")
    return Thing(
        label=say("Lot"),
        number=lot.id,
        title=material.name if material else lot.material,
        note=say("Look twice: {mark}.", mark=lot.mark) if lot.mark else "",
        said=say("Lot {lot}: {n} {n|sheet|sheets} in the store, {used} used", lot=lot.id, n=there,
                 used=used),
        next=(say("Loading scans it at the sheet.") if there
              else say("None is left in the store.")),
        where=tuple(AnswerLine(say("{n} {n|sheet|sheets}", n=h.qty), name_place(view, h.place))
                    for h in sheets),
        about=(lot.key,),
    )  # fmt: skip


def answer_cutfile(view: View, file: CutFile, now: str) -> Thing:
    """Answers about a cut file: which revision may be cut, and which batches wait of it."""
    queued = [b for b in list_queued(view) if b.cut_file == file.id]
    left = sum(b.sheets - b.cut for b in queued)
    approved = (say("revision {letter} is approved", letter=file.approved) if file.approved
                else say("no revision is approved"))  # fmt: skip
    return Thing(
        label=say("Cut file"),
        number=file.id,
        title=file.name,
        note=file.words,
        said=say("{file}: {approved}, {n} {n|sheet|sheets} to cut", file=file.name,
                 approved=approved, n=left),
        next=(say("It waits in a queue.") if queued
              else say("The office or the plan releases it.")),
        where=tuple(_describe_queued(view, b, now) for b in queued),
        about=(file.key,),
    )  # fmt: skip


def _describe_queued(view: View, batch: Batch, now: str) -> AnswerLine:
    """Describes a batch that waits at its router."""
    where: Say | str = name_router(view, batch.router)
    if batch.due:
        where = say("{router}, due {at}", router=where, at=when(batch.due, now))
    return AnswerLine(say("Batch {batch}", batch=batch.id), where, write_touch("batch", batch.id))


def answer_mailer(view: View, mailer: Mailer, _now: str) -> Thing:
    """Answers about a mailer: its size, how many are left, what became of packs in it."""
    hangs = say("place {place}", place=mailer.hangs) if mailer.hangs else say("in the shop")
    size = say("{a} × {b} mm, closes over {c} mm", a=length(mailer.length_mm),
               b=length(mailer.width_mm), c=length(mailer.thick_mm))  # fmt: skip
    return Thing(
        label=say("Mailer"),
        number=mailer.id,
        title=mailer.name,
        said=say("Mailer {mailer}: {size}", mailer=mailer.name, size=size),
        next=say("Packing says which order it is for."),
        where=(
            AnswerLine(size),
            AnswerLine(hangs, say("{n} left", n=count_left(view, mailer.id))),
            *_tell_opened(view, mailer),
        ),
        about=(mailer.key,),
    )


def _tell_opened(view: View, mailer: Mailer) -> Iterator[AnswerLine]:
    """Tells how many packs in a mailer were opened again, and for which reason."""
    counts: dict[str, int] = {}
    for pack in view.shelf(Pack, "opened", OPENED):
        if pack.mailer == mailer.id and pack.why:
            counts[pack.why] = counts.get(pack.why, 0) + 1
    for why, n in sorted(counts.items(), key=lambda c: -c[1]):
        reason = view.get(Reason, why)
        yield AnswerLine(
            say("{n} {n|pack|packs} opened again", n=n), say_reason(reason) if reason else why
        )


def answer_reason(_view: View, reason: Reason, _now: str) -> Thing:
    """Answers about a reason: what it is given for."""
    uses = {"spoiled": say("parts spoiled"), "sheet": say("sheet spoiled"),
            "rework": say("parts to rework"), "stop": say("the router stopped"),
            "overrule": say("a supervisor overrules"), "correct": say("a count is corrected"),
            "repack": say("a closed pack is opened"),
            "returned": say("something came back"),
            "mailer": say("another mailer is taken")}  # fmt: skip
    use = uses.get(reason.use, Say())
    return Thing(
        label=say("Reason"),
        number=reason.id,
        title=say_reason(reason),
        note=use,
        said=say("Reason “{words}”: {use}", words=say_reason(reason), use=use),
        next=say("Scan it when a reason is asked for."),
        about=(reason.key,),
    )
