"""What the trimming screen shows: the batch in hand, its tabs, its master, its rack place."""

from station.floor.trimming import dialogue
from station.shop import counting
from station.shop.cards import button
from station.shop.codes import usable, write
from station.shop.count_steps import asked, chosen, faults_line
from station.shop.counting import Tally
from station.shop.faces import (
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Header,
    Hint,
    Listing,
    Pairs,
    PartDrawing,
    Press,
    Remark,
    Row,
    Table,
)
from station.shop.facts import Batch, CutFile, Order, Part, Pile, RackPlace, Reason, Shop
from station.shop.rooms import Hand
from station.shop.views import View, total
from station.shop.words import Say, say


def face(hand: Hand, view: View) -> Face:
    """The screen at trimming."""
    batch = view.get(Batch, hand.subject) if hand.subject else None
    if batch is None:
        return _empty(hand, view)
    parts = dialogue.here(hand, view)
    tallies = counting.tally(hand, parts)
    part = view.get(Part, chosen(hand, parts) or next(iter(parts), ""))
    return Face(
        title=say("Trimming"),
        where=_where(hand),
        main=(
            _header(batch, tallies, view),
            _table(tallies, hand, view),
            *_faults(hand, view),
            *_part(part),
        ),
        presses=_presses(tallies, batch),
        side=(*asked(hand), *_goes(part, batch, view), *_reasons(hand, view), _care(view)),
        weights=(64, 0, 36),
    )


def _where(hand: Hand) -> Say:
    return say("Router table {bench}", bench=hand.bench or "1")


def _empty(hand: Hand, view: View) -> Face:
    """Nothing in hand: what waits, by due time, and what is to be made good."""
    return Face(
        title=say("Trimming"),
        where=_where(hand),
        main=(
            Hint(title=say("Scan a traveller"), note=say("or touch a batch that waits")),
            _waiting(view, "trimming", say("Waiting here"), 4),
        ),
        side=(_waiting(view, "rework", say("To be made good"), 3), _care(view)),
    )


def _waiting(view: View, area: str, title: Say, most: int) -> Cards:
    piles = view.shelf(Pile, area, 60)
    entries = tuple(e for p in piles[:most] if (e := _entry(view, p)))
    more = len(piles) - len(entries)
    head = say("{title}: {n} more", title=title, n=more) if more > 0 else title
    return Cards(title=head, entries=entries, empty=say("Nothing waits."))


def _entry(view: View, pile: Pile) -> Entry | None:
    batch = view.get(Batch, pile.batch)
    if batch is None:
        return None
    cut_file = view.get(CutFile, batch.cut_file)
    n = total(view.stock(batch=batch.id, place=pile.area))
    copy = batch.copy if usable("batch", batch.id, batch.copy) else ""
    return Entry(
        big=batch.id,
        right=say("{n} {n|part|parts}", n=n),
        tone="attention" if batch.holds else "",
        line1=cut_file.words if cut_file else "",
        line2=say("held: {why}", why=batch.holds[0]) if batch.holds else due(batch),
        code=write("batch", batch.id, copy),
    )


def due(batch: Batch) -> Say:
    """For what and when."""
    if batch.order:
        return say("for order {order}", order=batch.order)
    if batch.due:
        return say(
            "due {day} {at}", day=f"{batch.due[8:10]}.{batch.due[5:7]}.", at=batch.due[11:16]
        )
    return say("for the rack")


def _header(batch: Batch, tallies: tuple[Tally, ...], view: View) -> Header:
    cut_file = view.get(CutFile, batch.cut_file)
    stubs = sum(t.here * (p.tabs if (p := view.get(Part, t.part)) else 0) for t in tallies)
    here = sum(t.here for t in tallies)
    note = say(
        "{here} {here|part|parts} here · {stubs} {stubs|tab stub|tab stubs} to trim",
        here=here,
        stubs=stubs,
    )
    if batch.role == "rework":
        note = say(
            "to be made good, try {n} of 2 · {here} {here|part|parts}", n=batch.tries, here=here
        )
    return Header(
        label=say("Batch"),
        number=batch.id,
        note=note,
        title=cut_file.words if cut_file else "",
        right_label=say("goes"),
        right=due(batch),
    )


def _table(tallies: tuple[Tally, ...], hand: Hand, view: View) -> Table:
    return Table(
        columns=(say("part"), say("came"), say("good"), say("spoiled"), say("rework")),
        rows=tuple(_row(t, hand, view) for t in tallies),
    )


def _row(t: Tally, hand: Hand, view: View) -> Row:
    part, code = view.get(Part, t.part), write("part", t.part)
    mine = hand.work.get("part") == t.part
    return Row(
        title=part.name if part else t.part,
        note=say(
            "{words} · {tabs} {tabs|tab|tabs}",
            words=part.words if part else "",
            tabs=part.tabs if part else 0,
        ),
        shape=part.shape if part else None,
        code=code,
        selected=mine,
        cells=(
            Cell(text=say("{n}", n=t.here)),
            Cell(text=say("{n}", n=t.good), bold=True),
            Cell(text=say("{n}", n=t.spoiled), tone="stop" if t.spoiled else ""),
            Cell(text=say("{n}", n=t.rework), tone="attention" if t.rework else ""),
        ),
        counter=2,
        minus=button("fewer") if mine else f"{code}|{button('fewer')}",
        plus=button("more") if mine else f"{code}|{button('more')}",
    )


def _faults(hand: Hand, view: View) -> tuple[Block, ...]:
    line = faults_line(hand, view)
    return (Listing(title="", rows=(((Cell(text=line, tone="stop"),), ""),)),) if line else ()


def _part(part: Part | None) -> tuple[Block, ...]:
    if part is None:
        return ()
    note = say("Arrows: where the tabs were.")
    if part.small:
        note = say("Arrows: where the tabs were. A small part: use a holder.")
    return (PartDrawing(part=part, note=note),)


def _presses(tallies: tuple[Tally, ...], batch: Batch) -> tuple[Press, ...]:
    good, spoiled = sum(t.good for t in tallies), sum(t.spoiled for t in tallies)
    words = say("Put on the rack: {good} good", good=good)
    if spoiled:
        words = say("Put on the rack: {good} good, {n} spoiled", good=good, n=spoiled)
    if batch.order:
        words = say("To packing: {good} good", good=good)
    return (
        Press(label=words, code=button("on_rack"), style="primary", wide=2),
        Press(label=say("Only some of it"), code=button("some_trimmed")),
        Press(label=say("Put it down"), code=button("put_down")),
    )


def _goes(part: Part | None, batch: Batch, view: View) -> tuple[Block, ...]:
    """Under which master the good ones go, and what lies there."""
    if part is None:
        return ()
    if batch.order:
        order = view.get(Order, batch.order)
        return (
            Hint(
                title=say("For order {order}", order=batch.order),
                note=say("it is {state}", state=order.state if order else "?"),
            ),
        )
    rack = view.get(RackPlace, part.rack)
    lying = total(view.stock(place=f"rack/{part.rack}"))
    masters = tuple(
        (size.name, f"{size.low_mm:g} to {size.high_mm:g} mm") for size in part.sizes[:2]
    )
    return (
        Hint(
            title=say("Goes under rack {place}", place=rack.name if rack else "?"),
            note=say(
                "under its master, {part}: {n} there now, mark is {mark}",
                part=part.name,
                n=lying,
                mark=part.mark,
            ),
        ),
        Pairs(title=say("Against the master: one in {n}", n=part.check_every), rows=masters),
    )


def _reasons(hand: Hand, view: View) -> tuple[Block, ...]:
    """What can be wrong, once a part is chosen; and the master's two answers."""
    entries = [
        Entry(big=say("Agrees with the master"), code=button("master_agrees")),
        Entry(big=say("Differs from the master"), code=button("master_differs")),
    ]
    if hand.work.get("part"):
        entries += [
            Entry(big=r.words, code=write("reason", r.id))
            for r in (*view.shelf(Reason, "spoiled", 4), *view.shelf(Reason, "rework", 3))
            if r.id in ("01", "03", "22")
        ]
    return (Cards(title=say("Say what you see"), entries=tuple(entries[:5])),)


def _care(view: View) -> Remark:
    """Hands and lungs at the router table, briefly."""
    shop = view.get(Shop, "shop") or Shop(id="shop")
    small = say("small parts in a holder or against the starting pin")
    return Remark(
        tone="attention",
        title=say("Take care"),
        text=say(
            "Feed against the bit's rotation, guard on, {small}; never between bit and fence. "
            "Gloves off. Extraction on. {local}",
            small=small,
            local=shop.caution,
        ),
    )
