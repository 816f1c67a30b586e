"""What the screen shows while a dialogue that belongs to no room is open."""

from station.floor.anywhere import dialogue
from station.queries.batches import describe_batch
from station.queries.routers import list_beds, list_worn_bits
from station.queries.stock import name_place
from station.queries.underway import list_waiting, list_waiting_batches, list_with_paper
from station.shop.areas import AREAS, button_of
from station.shop.cards import BUTTONS, button
from station.shop.codes import usable, write
from station.shop.faces import (
    Asked,
    Cards,
    Cell,
    Entry,
    Face,
    Hint,
    Listing,
    PartDrawing,
    Press,
    Row,
    Table,
    Text,
)
from station.shop.facts import Batch, Part, Slip
from station.shop.rooms import Hand
from station.shop.views import View, by_batch, by_part, total
from station.shop.words import Say, clock, say

MOST_PARTS = 7  # rows that stand on the screen without scrolling

WAIT = 8  # rows of what waits on the handover
UNDER_WAY = 8  # batches to choose from
TITLES: dict[str, Say] = {
    "split_batch": say("Split a part off"),
    "find_parts": say("Missing parts found"),
    "recount": say("Count again"),
    "new_copy": say("Print a new copy"),
    "hold_batch": say("Hold a batch"),
    "release_hold": say("Let a batch go on"),
    "lost_paper": say("Traveller lost"),
    "handover": say("Handover"),
    "menu": say("More"),
}


def screen(hand: Hand, view: View) -> Face:
    """The open dialogue: what is asked, what can be chosen."""
    what = hand.aside.what
    if what == "handover":
        return _handover(view)
    if what == "menu":
        return _menu()
    if what == "lost_paper":
        return _lost(hand, view)
    batch = hand.aside.batch
    if not batch:
        return _frame(
            what, Hint(title=dialogue.ASKS[what], note=say("Scan its traveller.")), under_way(view)
        )
    return _frame(what, _rows(hand, what, view), *_number(hand))


MENU = ("undo", "split", "found", "recount", "reprint", "lost_paper", "hold", "release",
        "handover", "print_page")  # fmt: skip
SCREEN = ("dark", "sounds", "language")


def _menu() -> Face:
    """What belongs to no one room, and the work areas, to touch."""
    acts = tuple(Entry(big=say(BUTTONS[name].words), code=button(name)) for name in MENU)
    here = ("sign_out", *map(button_of, AREAS), *SCREEN)
    areas = tuple(Entry(big=say(BUTTONS[name].words), code=button(name)) for name in here)
    return Face(
        title=TITLES["menu"],
        main=(Cards(title=say("With this work"), entries=acts),),
        side=(Cards(title=say("This screen"), entries=areas),),
        weights=(55, 0, 45),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
    )


def _frame(what: str, *blocks: Table | Asked | Hint | Cards) -> Face:
    leave = Press(label=say("Leave it"), code=button("put_down"))
    return Face(title=TITLES[what], main=blocks, presses=(leave,))


def _rows(hand: Hand, what: str, view: View) -> Table:
    chosen = hand.aside.part
    rows = []
    for name, count in dialogue.choices(hand, what, view).items():
        part = view.get(Part, name)
        rows.append(
            Row(
                title=part.name if part else name,
                note=part.words if part else "",
                cells=(Cell(text=say("{count}", count=count), bold=True),),
                code=write("part", name),
                shape=part.shape if part else None,
                selected=name == chosen,
            )
        )
    return Table(
        columns=(say("part"), say("by the book")),
        rows=tuple(rows),
        title=say("Batch {batch}", batch=hand.aside.batch),
    )


def _number(hand: Hand) -> tuple[Asked, ...]:
    if not hand.aside.part:
        return ()
    question = dialogue.HOW_MANY[hand.aside.what]
    return (
        Asked(question=question, typed=hand.digits, unit=say("{n|piece|pieces}", n=hand.digits)),
    )


def batch_code(batch: Batch) -> str:
    """What a touch on a batch's row sends: the code of its valid copy."""
    copy = batch.copy if usable("batch", batch.id, batch.copy) else ""
    return write("batch", batch.id, copy)


def under_way(view: View) -> Cards:
    """Batches whose pieces wait for work."""
    entries = [_entry(view, b) for b in list_waiting_batches(view)[:UNDER_WAY]]
    return Cards(
        title=say("Under way"),
        entries=tuple(e for e in entries if e),
        empty=say("No batch is under way."),
    )


def _entry(view: View, id: str, count: int | None = None) -> Entry | None:
    """One batch as a card: what it is, how many, where they lay last."""
    batch = view.get(Batch, id)
    if batch is None:
        return None
    held = list_with_paper(view, id)
    places = list(dict.fromkeys(str(name_place(view, h.place)) for h in held))
    return Entry(
        big=id,
        right=say("{count} {count|piece|pieces}", count=total(held) if count is None else count),
        line1=describe_batch(view, batch),
        line2=", ".join(places[:3]),
        code=batch_code(batch),
    )


def _lost(hand: Hand, view: View) -> Face:
    part = view.get(Part, hand.aside.part)
    if part is None:
        under_way = by_part(list_waiting(view))
        most = sorted(under_way, key=lambda part: -under_way[part])[:MOST_PARTS]
        rows = tuple(
            Row(title=p.name, note=p.words, shape=p.shape, code=write("part", p.id))
            for p in (view.get(Part, name) for name in most)
            if p
        )
        table = Table(columns=(say("What part lies there?"),), rows=rows)
        more = Hint(title=say("Not among them?"), note=say("Scan the part's card at the rack."))
        return _frame("lost_paper", table, *((more,) if len(under_way) > MOST_PARTS else ()))
    entries = [_entry(view, b, n) for b, n in dialogue.candidates(view, part.id).items()]
    return Face(
        title=TITLES["lost_paper"],
        main=(
            PartDrawing(part=part, note=say("Compare with what lies there.")),
            Cards(title=say("Could be theirs"), entries=tuple(e for e in entries if e)),
        ),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
    )


def _handover(view: View) -> Face:
    """Both piles once, each router's state, and bits near their end."""
    return Face(
        title=TITLES["handover"],
        main=(
            Listing(title=say("At popping"), rows=_slips(view), empty=say("Nothing waits.")),
            Listing(title=say("At trimming"), rows=_piles(view), empty=say("Nothing waits.")),
        ),
        side=(
            Listing(title=say("Routers"), rows=_routers(view)),
            Listing(title=say("Bits near their end"), rows=_bits(view), empty=say("None.")),
        ),
        presses=(
            Press(label=say("Print"), code=button("print_page")),
            Press(label=say("Close"), code=button("handover")),
        ),
    )


Lines = tuple[tuple[tuple[Cell, ...], str], ...]


def _line(first: Text, *cells: Cell) -> tuple[tuple[Cell, ...], str]:
    """One row of the handover; nothing to touch."""
    return (Cell(text=first, bold=True), *cells), ""


def _pieces(count: int) -> Cell:
    return Cell(text=say("{count} {count|piece|pieces}", count=count))


def _slips(view: View) -> Lines:
    """The sheets that wait at popping."""
    return tuple(
        _line(
            s.batch,
            Cell(text=say("sheet {sheet}", sheet=s.sheet)),
            _pieces(total(view.stock(batch=s.batch, place=f"popping/{s.sheet}"))),
        )
        for s in view.shelf(Slip, "popping", WAIT)
    )


def _piles(view: View) -> Lines:
    """What waits at trimming, good and to be made good, by batch."""
    waits = by_batch(list_waiting(view, "trimming"))
    return tuple(_line(batch, _pieces(n)) for batch, n in list(waits.items())[:WAIT])


def _routers(view: View) -> Lines:
    """Each router's state, and since when it cuts."""
    return tuple(
        _line(
            r.name,
            Cell(text=say(bed.state)),
            Cell(text=clock(bed.started) if bed.state == "cutting" else ""),
        )
        for r, bed in list_beds(view)
    )


def _bits(view: View) -> Lines:
    """Bits near their end."""
    return tuple(
        _line(
            say("Bit {id}", id=b.id),
            Cell(text=b.words),
            Cell(text=say("{share} % of its life", share=round(100 * share)), tone="attention"),
        )
        for b, share in list_worn_bits(view)
    )
