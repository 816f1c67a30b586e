"""Shows at popping the slips in hand, counted by exception."""

from station.floor.popping import dialogue
from station.floor.popping.lists import list_coming, list_passed, list_waiting
from station.floor.popping.work import PoppingHand
from station.floor.shared import counting, counting_screen
from station.floor.shared.first_offs import find_measured, list_open
from station.floor.shared.reasons import list_entries
from station.queries.batches import describe_batch, find_hold, find_revision
from station.queries.first_offs import Unmeasured
from station.queries.settings import find_shop
from station.shop.cards import button
from station.shop.cautions import CAUTIONS, say_cautions
from station.shop.faces import (
    Block,
    Cards,
    Entry,
    Face,
    Header,
    Hint,
    Remark,
    SheetDrawing,
    Steps,
)
from station.shop.facts import Batch, Material, Router, Slip
from station.shop.views import View, total
from station.shop.words import Say, length, say, several

ROOM = 3  # reasons on a page, beside the two ways that are always there: two rows of cards


def screen(hand: PoppingHand, view: View) -> Face:
    """Shows the screen at popping."""
    batch = view.get(Batch, hand.subject) if hand.subject else None
    if batch is None:
        return _show_waiting(hand, view)
    tallies = counting.tally_parts(hand, dialogue.count_here(hand, view))
    first = dialogue.find_first(hand, view)
    reasons = _offer_first(first, hand, view) if first else _offer_reasons(hand, view)
    beside = len(tallies) > 1  # many rows leave the reasons no room under them
    faults = counting_screen.build_faults(hand, view, dialogue.name_zones(hand, view))
    if reasons and not beside:  # they stand under it, and do not move when something is counted
        faults = faults or counting_screen.build_no_faults()
    told = (*_draw_sheet(hand, view),
            *(reasons if beside and reasons else (list_waiting(hand, view, 2),)))  # fmt: skip
    return Face(
        title=say("Popping"),
        where=_say_where(hand),
        main=(
            _show_header(batch, hand, view),
            _show_steps(batch, view),
            counting_screen.build_table(say("cut"), tallies, hand, view),
            *faults,
            *(() if beside else reasons),
        ),
        presses=counting_screen.build_presses(
            say("Pass on: {count}", count=counting_screen.sum_up(tallies)),
            "pass_on",
            "some",
            waits=find_hold(view, batch.id) is not None,
        ),
        side=(
            *(counting_screen.build_question(hand) or told),  # beside its keys: only the caution
            _remind_care(batch, view),
        ),
    )


def _say_where(hand: PoppingHand) -> Say:
    return say("Bench {bench}", bench=hand.bench) if hand.bench else Say()


def _show_waiting(hand: PoppingHand, view: View) -> Face:
    """Shows, with nothing in hand, what waits, what comes next and what was passed on."""
    return Face(
        title=say("Popping"),
        where=_say_where(hand),
        main=(
            Hint(title=say("Scan a slip"), note=say("or a traveller for all its sheets here")),
            list_waiting(hand, view, 8),
        ),
        side=(list_coming(hand, view), list_passed(hand, view), _remind_care(None, view)),
    )


def _show_header(batch: Batch, hand: PoppingHand, view: View) -> Header:
    slips = hand.work.slips
    sheets = several([s.rpartition("-")[2] for s in slips])
    return Header(
        label=say("Batch"),
        number=batch.id,
        title=describe_batch(view, batch),
        note=say(
            "{k|slip for sheet|slips for sheets} {sheets} of {all} · cut on {routers}",
            k=len(slips),
            sheets=sheets,
            all=batch.sheets or sheets,
            routers=_name_routers(slips, view),
        ),
    )


def _name_routers(slips: tuple[str, ...], view: View) -> str:
    """Names the routers that cut these sheets."""
    cut_on = dict.fromkeys(slip.router for s in slips if (slip := view.get(Slip, s)))
    found = [view.get(Router, router) for router in cut_on]
    return several([r.name for r in found if r]) or "-"


def _show_steps(batch: Batch, view: View) -> Steps:
    held = view.stock(batch=batch.id)
    return Steps(
        items=(
            (say("Loading"), say("{n} {n|sheet|sheets} cut", n=batch.cut), "done"),
            (say("Popping"), say("{n} to count", n=total(held, place="popping")), "now"),
            (say("Trimming"), _say_count(total(held, place="trimming")), "next"),
            (say("Packing"), _say_count(total(held, place="packing")), "next"),
            (say("Cart"), "", "next"),
        )
    )


def _say_count(n: int) -> Say:
    return say("{n} there", n=n) if n else Say()


def _offer_reasons(hand: PoppingHand, view: View) -> tuple[Block, ...]:
    """Offers what can be wrong, once a part is chosen."""
    if not hand.work.part:
        return ()
    entries = (
        *list_entries(hand, view, ROOM),
        Entry(big=say("missing"), code=button("missing")),
        Entry(big=say("to rework"), code=button("uncut")),
    )
    return (Cards(title="", entries=entries),)


def _offer_first(waits: Unmeasured, hand: PoppingHand, view: View) -> tuple[Block, ...]:
    """Offers the sizes of a first-off that is due, the one that is measured now first.

    Nothing of its sheet goes on before: what else can be said of it is said then.
    """
    first = waits.first
    asked = find_measured(view, first, hand.work.measured)
    entries = tuple(
        Entry(
            big=say("{part}: {size}", part=m.part.name, size=m.size.in_words),
            line1=say("right from {low} to {high} mm", low=length(m.size.low_mm),
                      high=length(m.size.high_mm)),
            tone="attention" if asked and m.name == asked.name else "",
            code=button(f"row_{n}"),
        )
        for n, m in enumerate(list_open(view, first)[: dialogue.MOST_SIZES], 1)
    )  # fmt: skip
    agrees = Entry(big=say("It agrees with its master"), code=button("first_off_good"))
    wrong = Entry(big=say("It is wrong"), code=button("first_off_bad"))
    title = say("First: measure one piece of sheet {n}", n=first.sheet)
    return (Cards(title=title, entries=(*(entries or (agrees,)), wrong)),)


def _draw_sheet(hand: PoppingHand, view: View) -> tuple[Block, ...]:
    """Draws the sheet: the chosen part strongly, a mark where a fault lay."""
    revision, chosen = dialogue.find_revision_in_hand(hand, view), hand.work.part
    if revision is None or not revision.placed:
        return ()
    spots = [spot for row in hand.work.marks.values() for spots in row.values() for spot in spots]
    return (
        SheetDrawing(
            revision=revision,
            cut=1.0,
            touch=True,
            chosen=(chosen,) if chosen else (),
            spots=tuple((x, y, "stop") for x, y in spots),
            note=say("Touch a piece to count it spoiled there."),
        ),
    )


def _remind_care(batch: Batch | None, view: View) -> Remark:
    """Reminds of eyes, hands, lungs and backs; a touch shows all of it."""
    shop = find_shop(view)
    revision = find_revision(view, batch) if batch else None
    material = view.get(Material, revision.material) if revision else None
    heavy = material is not None and material.sheet_kg >= shop.two_people_kg
    names = ("pop", *(("pop_sheet",) if heavy else ()), "pop_dust")
    title = say("Take care: {at}", at=CAUTIONS["pop"].at)
    text = say_cautions(names, shop)
    return Remark(tone="attention", title=title, text=text, code=button("care"))
