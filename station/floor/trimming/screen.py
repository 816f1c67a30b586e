"""Shows at trimming the batch in hand, its tabs, its master, its rack place."""

from station.floor.shared import counting, counting_screen
from station.floor.shared.reasons import list_entries
from station.floor.trimming import dialogue
from station.floor.trimming.lists import list_put_today, list_waiting, list_wanted, say_due
from station.floor.trimming.rules import MOST_TRIES
from station.floor.trimming.rules_master import find_doubt
from station.floor.trimming.tabs import name_tab_places
from station.floor.trimming.work import TrimmingHand
from station.queries.batches import describe_batch, find_hold, find_order
from station.queries.revisions import find_as_cut
from station.queries.settings import find_shop
from station.queries.stock import list_on_rack
from station.shop.cards import button
from station.shop.cautions import CAUTIONS, say_cautions
from station.shop.faces import (
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Header,
    Hint,
    Listing,
    PartDrawing,
    Press,
    Remark,
    Tone,
)
from station.shop.facts import Batch, Part, RackPlace, Size
from station.shop.views import View, total
from station.shop.words import MM, Say, length, say

ROOM = 3  # on a page of what can be wrong; a fourth row would leave the caution no room


def screen(hand: TrimmingHand, view: View) -> Face:
    """Shows the screen at trimming."""
    batch = view.get(Batch, hand.subject) if hand.subject else None
    if batch is None:
        return _show_waiting(hand, view)
    parts = dialogue.count_here(hand, view)
    tallies = counting.tally_parts(hand, parts)
    part = view.get(Part, counting.find_part(hand, parts) or next(iter(parts), ""))
    part = find_as_cut(view, part, batch) if part else None
    return Face(
        title=say("Trimming"),
        where=_say_where(hand),
        main=(
            _show_header(batch, tallies, view),
            counting_screen.build_table(say("came"), tallies, hand, view),
            *counting_screen.build_faults(hand, view),
            *_draw_part(hand, part),
        ),
        presses=_offer_presses(tallies, batch, view),
        side=(
            *(
                counting_screen.build_question(hand)  # beside its keys only the caution has room
                or (*_show_destination(hand, part, batch, view), *_offer_reasons(hand, view))
            ),
            _remind_care(part, view),
        ),
        weights=(64, 0, 36),
    )


def _say_where(hand: TrimmingHand) -> Say:
    return say("Router table {bench}", bench=hand.bench or "1")


def _show_waiting(hand: TrimmingHand, view: View) -> Face:
    """Shows, with nothing in hand, what waits, what is to be made good, what the rack lacks."""
    return Face(
        title=say("Trimming"),
        where=_say_where(hand),
        main=(
            Hint(title=say("Scan a traveller"), note=say("or touch a batch that waits")),
            list_waiting(view, "trimming", say("Waiting here"), 6),
            list_waiting(view, "rework", say("To be made good"), 2),
        ),
        side=(list_wanted(view), list_put_today(hand, view), _remind_care(None, view)),
    )


def _show_header(batch: Batch, tallies: tuple[counting.Tally, ...], view: View) -> Header:
    stubs = sum(
        t.here * find_as_cut(view, p, batch).tabs for t in tallies if (p := view.get(Part, t.part))
    )
    here = sum(t.here for t in tallies)
    note = say(
        "{here} {here|part|parts} here · {stubs} {stubs|tab stub|tab stubs} to trim",
        here=here,
        stubs=stubs,
    )
    if batch.tries:
        note = say(
            "to be made good, try {n} of {most} · {here} {here|part|parts}",
            n=batch.tries,
            most=MOST_TRIES,
            here=here,
        )
    if hold := find_hold(view, batch.id):
        note = say("it waits: {why}", why=hold.why_held)
    return Header(
        label=say("Batch"),
        number=batch.id,
        note=note,
        title=describe_batch(view, batch),
        right_label=say("why cut"),
        right=say_due(view, batch),
    )


def _draw_part(hand: TrimmingHand, part: Part | None) -> tuple[Block, ...]:
    """Draws the part with its tabs, and says where they were."""
    if part is None:
        return ()
    note = say("Arrows: where the tabs were.")
    if part.shape and part.shape.tabs:
        note = say(
            "{part}, {n} {n|tab|tabs}: {where}.",
            part=part.name,
            n=part.tabs,
            where=name_tab_places(part.shape),
        )
    measured = None
    if hand.work.asks == "size" and part.sizes:
        measured = part.sizes[dialogue.find_chosen_size(hand, part)]
        note = say("Measure {size}.", size=measured.in_words)
    return (PartDrawing(part=part, note=note, measured=measured),)


def _offer_presses(
    tallies: tuple[counting.Tally, ...], batch: Batch, view: View
) -> tuple[Press, ...]:
    count = counting_screen.sum_up_in_short(tallies)
    done = say("To packing: {count}", count=count)
    if not find_order(view, batch):
        done = say("To the rack: {count}", count=count)
    waits = find_hold(view, batch.id) is not None
    return counting_screen.build_presses(done, "on_rack", "some_trimmed", waits=waits)


def _show_destination(
    hand: TrimmingHand, part: Part | None, batch: Batch, view: View
) -> tuple[Block, ...]:
    """Shows under which master the good ones go, and what lies there."""
    if part is None:
        return ()
    if order := find_order(view, batch):
        title = say("For order {order}", order=order.id)
        return (Hint(title=title, note=say("it is {state}", state=order.state)),)
    rack = view.get(RackPlace, part.rack)
    lying = total(list_on_rack(view, part))
    return (
        Hint(
            title=say("Goes under rack {place}", place=rack.name if rack else "?"),
            note=say(
                "under its master, {part}: {n} there now, minimum {mark}",
                part=part.name,
                n=lying,
                mark=part.mark,
            ),
        ),
        *_list_sizes(hand, part, batch),
    )


def _list_sizes(hand: TrimmingHand, part: Part, batch: Batch) -> tuple[Block, ...]:
    """Shows the size that is measured now or next; once it is, what a touch measures instead."""
    if not part.sizes:
        return ()
    doubtful = [n for n, s in enumerate(part.sizes) if find_doubt(batch, part.id, s.name)]
    now = dialogue.find_chosen_size(hand, part)
    measures = hand.work.asks == "size"
    if doubtful and not measures:
        now = doubtful[0]
    size, doubt = part.sizes[now], now in doubtful
    if not measures:
        title = say("Against the master: one in {n}", n=part.check_every)
        cells = (_name_size(size, doubtful=doubt), Cell(text=_say_limits(size), tone="quiet"))
        return (_list_size(title, cells, now, part),)
    if len(part.sizes) == 1:
        title = say("Measure {size}, enter the {unit}", unit=MM, size=size.name)
        cells = (_name_size(size, doubtful=doubt, bold=True), Cell(text=_say_limits(size)))
        return (_list_size(title, cells, now, part),)
    title = say("Measure {size}: {limits}", size=size.name, limits=_say_limits(size))
    other = (now + 1) % len(part.sizes)
    instead = say("or measure {size} now", size=part.sizes[other].name)
    return (_list_size(title, (Cell(text=instead),), other, part),)


def _list_size(title: Say, cells: tuple[Cell, ...], row: int, part: Part) -> Listing:
    """Shows one size as a row to be touched, and which of how many it is."""
    if len(part.sizes) > 1:
        which = say("{n} of {most}", n=row + 1, most=len(part.sizes))
        cells = (*cells, Cell(text=which, tone="quiet"))
    return Listing(title=title, rows=((cells, button(f"row_{row + 1}")),))


def _name_size(size: Size, *, doubtful: bool, bold: bool = False) -> Cell:
    tone: Tone = "stop" if doubtful else "good" if bold else ""
    return Cell(text=size.name, tone=tone, bold=bold)


def _say_limits(size: Size) -> Say:
    return say("{low} to {high} mm", low=length(size.low_mm), high=length(size.high_mm))


def _offer_reasons(hand: TrimmingHand, view: View) -> tuple[Block, ...]:
    """Offers the master's two answers; once a part is chosen, what can be wrong with it."""
    entries = [
        Entry(big=say("Agrees with the master"), code=button("master_agrees")),
        Entry(big=say("Differs from the master"), code=button("master_differs")),
    ]
    if hand.work.part:
        missing = Entry(big=say("missing"), code=button("lost"))
        entries += list_entries(hand, view, ROOM, (missing,))
    return (Cards(title=say("Say what you see"), entries=tuple(entries)),)


def _remind_care(part: Part | None, view: View) -> Remark:
    """Reminds of eyes, ears, hands and lungs at the router table; a touch shows all of it."""
    names = ("table", "table_feed", *(("table_small",) if part is None or part.small else ()))
    title = say("Take care: {at}", at=CAUTIONS["table"].at)
    text = say_cautions(names, find_shop(view))
    return Remark(tone="attention", title=title, text=text, code=button("care"))
