"""Takes a batch on, adds a sheet, reads what popping reported."""

from dataclasses import replace

from station.floor.loading.acts import ReadNotice, SpoilSheet, TakeBatch
from station.floor.loading.needs import (
    AT_ONCE,
    NO_BATCH,
    find_batch,
    list_unread,
    refuse_elsewhere,
    refuse_void_copy,
)
from station.floor.shared.queue import AddSheet
from station.queries.batches import find_revision, refuse_unapproved, refuse_uncuttable
from station.queries.first_offs import find_in_the_way, find_unsettled, say_in_the_way
from station.queries.routers import find_bed, name_router
from station.queries.runs import find_due
from station.queries.unmade import (
    MADE,
    MOST_SHEETS,
    list_unmade,
    refuse_one_more,
    settle_unmade,
    want_one_more,
)
from station.shop.acts import Act, Answer, ask, attention, good, notice, refuse
from station.shop.facts import Batch, Bed, Concern, Router
from station.shop.moves import tail
from station.shop.views import View
from station.shop.words import Say, clock, say


def take_batch(act: Act[TakeBatch], view: View) -> Answer:
    """Takes a batch on at a router."""
    batch = find_batch(act, view)
    if batch is None:
        return NO_BATCH
    bed = find_bed(view, act.args.router)
    unmade = list_unmade(view, batch) if batch.state == "cut" else ()
    wanted = want_one_more(batch) if unmade and batch.sheets < MOST_SHEETS else batch
    wrong = (
        refuse_void_copy(batch, act.args.copy)
        or refuse_uncuttable(view, wanted)
        or refuse_unapproved(view, wanted)
        or _refuse_here(view, wanted, bed)
    )
    if wrong:
        return wrong
    if wanted is not batch:
        return _take_for_one_more(act, view, wanted, bed, unmade)
    if bed.batch == batch.id and batch.router == bed.id:
        return notice(
            say("Batch {batch} is on {router} already", batch=batch.id,
                router=name_router(view, bed.id)),
            say("Go on with sheet {sheet}.", sheet=batch.cut + 1),
        )  # fmt: skip
    if batch.router not in ("", bed.id) and not act.args.sure:
        return ask(
            say("Batch {batch} is planned for {router}", batch=batch.id,
                router=name_router(view, batch.router)),
            say("Scan it again to cut it here all the same."),
            "sure",
        )  # fmt: skip
    return _put_on_router(act, view, batch, bed)


def _take_for_one_more(
    act: Act[TakeBatch], view: View, more: Batch, bed: Bed, unmade: tuple[Concern, ...]
) -> Answer:
    """Takes a batch on again whose sheets are all cut, for one that was spoiled."""
    if not act.args.sure:
        return ask(
            say("Batch {batch} is cut, but {n} {n|sheet is|sheets are} not made anew",
                batch=more.id, n=len(unmade)),
            say("Scan it again to cut one more sheet, or take the next batch."),
            "sure",
        )  # fmt: skip
    here = replace(more, router=bed.id)
    taken = _put_on_router(act, view, here, bed)
    made = settle_unmade(unmade[:1], MADE, at=act.at, by=act.worker)
    return replace(taken, sets=(here, *taken.sets, *made), prints=(("traveller", here.id),))


def _refuse_here(view: View, batch: Batch, bed: Bed) -> Answer | None:
    """Refuses when this router can't take this batch now."""
    if view.get(Router, bed.id) is None:
        return refuse(say("Which router?"), say("Scan the router's code first."))
    if elsewhere := refuse_elsewhere(view, batch, bed):
        return elsewhere
    if bed.sheet:
        return refuse(
            say("Sheet {sheet} of batch {batch} is on the bed", sheet=bed.sheet, batch=bed.batch),
            say("Take it off first, then take this batch."),
        )
    other = find_bed(view, batch.router)
    if other.id != bed.id and other.batch == batch.id and other.sheet:
        return refuse(
            say("Batch {batch} is being cut on {router}", batch=batch.id,
                router=name_router(view, other.id)),
            say("Leave it there, or take its sheet off first."),
        )  # fmt: skip
    return None


def _put_on_router(act: Act[TakeBatch], view: View, batch: Batch, bed: Bed) -> Answer:
    """Puts the batch on the router."""
    sets: tuple[Bed | Batch, ...] = (
        replace(bed, batch=batch.id, seen=tuple(b for _, b in bed.bits)),
    )
    other = find_bed(view, batch.router)
    if batch.router and other.id != bed.id and other.batch == batch.id:
        sets += (replace(other, batch=""),)
    if batch.router != bed.id:
        sets += (replace(batch, router=bed.id),)
    left = say(
        "Batch {batch} taken: {left} of {sheets} {sheets|sheet|sheets} to cut",
        batch=batch.id,
        left=batch.sheets - batch.cut,
        sheets=batch.sheets,
    )
    if bed.batch and bed.batch != batch.id:
        return attention(left, say("Batch {old} waits in the queue.", old=bed.batch), sets=sets)
    return good(left, _say_first_step(act, view, batch, bed), sets=sets)


def _say_first_step(act: Act[TakeBatch], view: View, batch: Batch, bed: Bed) -> Say:
    """Says what a batch that was just taken on asks for."""
    if bed.day != act.at[:10]:
        return say("First the start of day, then the lot of the sheet.")
    first = find_unsettled(bed)
    if first and first.state == "due":
        return say("First: measure sheet {n} of batch {batch}.", batch=first.batch, n=first.sheet)
    revision = find_revision(view, batch)
    following = find_due(view, batch, revision, bed) if revision else None
    if following and (wrong := find_in_the_way(view, bed, following.file)):
        said, do = say_in_the_way(view, bed, wrong, following.file)
        return say("{what}. {do}", what=said, do=do)
    if following is None or following.run == 1:
        return say("Scan the lot of the sheet, measure it.")
    return say(
        "Sheet {n} on its pins: run {run} of {of}.",
        n=following.sheet,
        run=following.run,
        of=following.of,
    )


def add_sheet(act: Act[AddSheet], view: View) -> Answer:
    """Adds a sheet to a batch, to make good for a spoiled one ."""
    batch = find_batch(act, view)
    if batch is None:
        return NO_BATCH
    if wrong := refuse_one_more(view, batch):
        return wrong
    before, spoilt = (
        view.last(act.subject, AddSheet),
        view.last(act.subject, SpoilSheet),
    )
    unmade = list_unmade(view, batch)
    if done := _find_made(act, view):
        said = say(
            "That sheet is settled by worker {by}: {how}", by=done.by, how=Say(done.settled)
        )
        return notice(said, say("Go on."))
    added = before and not before.undone and (not spoilt or before.act.at >= spoilt.act.at)
    if before and added and not unmade and not act.args.sure:
        if act.again:  # nobody is there to be asked: both meant the same sheet
            said = say("One more was added at {at} by worker {by}", at=clock(before.act.at),
                       by=before.act.worker)  # fmt: skip
            return notice(said, say("Go on."))
        return ask(
            say("One more was added at {at} by worker {by}", at=clock(before.act.at),
                by=before.act.worker),
            say("Scan it again for yet another."),
            "sure",
        )  # fmt: skip
    named = tuple(c for c in unmade if c.id == act.args.look) or unmade[:1]
    made = settle_unmade(named, MADE, at=act.at, by=act.worker)
    return _add_one(view, batch, find_bed(view, act.args.router), made)


def _find_made(act: Act[AddSheet], view: View) -> Concern | None:
    """Finds what told of the sheet that is named, where that is settled already."""
    told = view.get(Concern, act.args.look) if act.args.look else None
    return told if told and told.settled else None


def _add_one(view: View, batch: Batch, bed: Bed, made: tuple[Concern, ...]) -> Answer:
    """Gives the batch one sheet more; the bed takes it up again if it is free."""
    more = want_one_more(batch)
    sets: tuple[Bed | Batch | Concern, ...] = (more, *made)
    if not bed.batch and view.get(Router, bed.id):
        sets += (replace(bed, batch=batch.id),)
    return good(
        say(
            "Batch {batch} has {sheets} {sheets|sheet|sheets} now",
            batch=batch.id,
            sheets=more.sheets,
        ),
        say("Its traveller is printed with one more slip."),
        sets=sets,
        prints=(("traveller", batch.id),),
    )


def read_notice(act: Act[ReadNotice], view: View) -> Answer:
    """Notes that what was told to this router, and is on its screen, is read."""
    waiting = list_unread(view, tail(act.subject))[:AT_ONCE]
    if not waiting:
        return notice(say("There is nothing to read"), say("Go on."))
    return good(
        say("Read by worker {by}: {count}", by=act.worker, count=len(waiting)),
        say("Look at spoilboard and zero before the sheet."),
        sets=tuple(replace(n, seen=act.worker or "?") for n in waiting),
    )
