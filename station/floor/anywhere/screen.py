"""Shows the screen while a dialogue that belongs to no room is open."""

from collections.abc import Callable

from station.floor.anywhere import dialogue
from station.floor.anywhere.acts import (
    FindParts,
    HoldBatch,
    NewCopy,
    Recount,
    ReleaseHold,
    SplitBatch,
    TakeReturn,
)
from station.floor.anywhere.finding import FIND, LISTS
from station.floor.anywhere.finding_face import show_list, show_thing
from station.floor.anywhere.handbook import HANDBOOK, show_handbook
from station.floor.anywhere.packs_face import show_opening, show_returned
from station.floor.shared.opening import OpenPack
from station.queries.batches import describe_batch
from station.queries.handing_over import list_left_beds, list_open_packs
from station.queries.routers import list_worn_bits
from station.queries.settings import find_shop
from station.queries.stock import name_place
from station.queries.underway import MOST, list_waiting, list_waiting_batches, list_with_paper
from station.shop.areas import AREAS, button_of
from station.shop.cards import BUTTONS, IN_MENU, button
from station.shop.cautions import list_cautions, say_local
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
from station.shop.rooms import Hand, Work
from station.shop.views import View, by_batch, by_part, total
from station.shop.words import Say, say, say_more

MOST_PARTS = 7  # rows that stand on the screen without scrolling

WAIT = 5  # rows of each list on the handover
UNDER_WAY = 8  # batches to choose from
PLACES = 3  # that a card of a batch names
TITLES: dict[str, Say] = {
    SplitBatch.kind: say("Split a part off"),
    FindParts.kind: say("Missing parts found"),
    Recount.kind: say("Count again"),
    NewCopy.kind: say("Print a new copy"),
    HoldBatch.kind: say("Hold a batch"),
    ReleaseHold.kind: say("Let a batch go on"),
    "lost_paper": say("Traveller lost"),
    "handover": say("Handover"),
    "care": say("Take care"),
    "menu": say("More"),
}


def screen(hand: Hand[Work], view: View) -> Face:
    """Shows the open dialogue: what is asked, what can be chosen."""
    what = hand.aside.what
    if show := SHOWS.get(what):
        return show(hand, view)
    batch = hand.aside.batch
    if not batch:
        return _make_frame(
            what,
            Hint(title=dialogue.ASKS[what], note=say("Scan its traveller.")),
            list_under_way(view),
        )
    return _make_frame(what, _list_parts(hand, what, view), *_ask_number(hand))


def _show_cautions(hand: Hand[Work], view: View) -> Face:
    """Shows every caution of this work area; what the shop itself says stands first."""
    entries = tuple(Entry(big=c.at, line1=c.line) for c in list_cautions(hand.area))
    return Face(
        title=TITLES["care"],
        main=(
            Cards(
                title=say_local(find_shop(view)),
                entries=entries,
                empty=say("Ask the safety lead."),
            ),
        ),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
        weights=(100, 0, 0),
    )


MENU = ("undo", "split", "found", "recount", "reprint", "lost_paper", "returned", "hold",
        "release", "handover", "print_page", "batches", "history", HANDBOOK)  # fmt: skip
SCREEN = ("dark", "sounds", "language")


def _show_menu(hand: Hand[Work], _view: View) -> Face:
    """Shows what belongs to no one room, and the work areas, to touch."""
    acts = tuple(
        Entry(big=say(BUTTONS[name].words), code=button(name))
        for name in (*IN_MENU.get(hand.area, ()), *MENU)
    )
    here = ("sign_out", *map(button_of, AREAS), *SCREEN)
    areas = tuple(Entry(big=say(BUTTONS[name].words), code=button(name)) for name in here)
    return Face(
        title=TITLES["menu"],
        main=(Cards(title=say("With this work"), entries=acts),),
        side=(Cards(title=say("This screen"), entries=areas),),
        weights=(55, 0, 45),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
    )


def _make_frame(what: str, *blocks: Table | Asked | Hint | Cards) -> Face:
    leave = Press(label=say("Leave it"), code=button("put_down"))
    return Face(title=TITLES[what], main=blocks, presses=(leave,))


def _list_parts(hand: Hand[Work], what: str, view: View) -> Table:
    chosen = hand.aside.part
    rows = []
    for name, count in dialogue.list_choices(hand, what, view).items():
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


def _ask_number(hand: Hand[Work]) -> tuple[Asked, ...]:
    if not hand.aside.part:
        return ()
    question = dialogue.HOW_MANY[hand.aside.what]
    return (
        Asked(question=question, typed=hand.digits, unit=say("{n|piece|pieces}", n=hand.digits)),
    )


def write_code(batch: Batch) -> str:
    """Writes what a touch on a batch's row sends: the code of its valid copy."""
    copy = batch.copy if usable("batch", batch.id, batch.copy) else ""
    return write("batch", batch.id, copy)


def list_under_way(view: View) -> Cards:
    """Lists the batches whose pieces wait for work."""
    entries = [_make_card(view, b) for b in list_waiting_batches(view)[:UNDER_WAY]]
    return Cards(
        title=say("Under way"),
        entries=tuple(e for e in entries if e),
        empty=say("No batch is under way."),
    )


def _make_card(view: View, id: str, count: int | None = None) -> Entry | None:
    """Makes a card of a batch: what it is, how many, where they lay last."""
    batch = view.get(Batch, id)
    if batch is None:
        return None
    held = list_with_paper(view, id)
    places = list(dict.fromkeys(str(name_place(view, h.place)) for h in held))
    return Entry(
        big=id,
        right=say("{count} {count|piece|pieces}", count=total(held) if count is None else count),
        line1=describe_batch(view, batch),
        line2=", ".join(places[:PLACES]) + (" …" if len(places) > PLACES else ""),
        code=write_code(batch),
    )


def _show_lost(hand: Hand[Work], view: View) -> Face:
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
        return _make_frame("lost_paper", table, *((more,) if len(under_way) > MOST_PARTS else ()))
    entries = [_make_card(view, b, n) for b, n in dialogue.list_candidates(view, part.id).items()]
    return Face(
        title=TITLES["lost_paper"],
        main=(
            PartDrawing(part=part, note=say("Compare with what lies there.")),
            Cards(title=say("Could be theirs"), entries=tuple(e for e in entries if e)),
        ),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
    )


def _show_handover(hand: Hand[Work], view: View) -> Face:
    """Shows what is left to the next shift: piles, open packs, beds and stops, worn bits."""
    waits, none = say("Nothing waits."), say("None.")
    return Face(
        title=TITLES["handover"],
        main=(
            _list_first(say("At popping"), _list_slips(view), waits),
            _list_first(say("At trimming"), _list_piles(view), waits),
            _list_first(say("Open packs"), _list_packs(view), none),
        ),
        side=(
            Listing(title=say("Routers"), rows=_list_routers(view, hand.now)),
            _list_first(say("Bits near their end"), _list_bits(view), none),
        ),
        presses=(
            Press(label=say("Print"), code=button("print_page")),
            Press(label=say("Close"), code=button("handover")),
        ),
    )


Lines = tuple[tuple[tuple[Cell, ...], str], ...]


def _make_line(first: Text, *cells: Cell) -> tuple[tuple[Cell, ...], str]:
    """Makes a row of the handover; nothing to touch."""
    return (Cell(text=first, bold=True), *cells), ""


def _count_pieces(count: int) -> Cell:
    return Cell(text=say("{count} {count|piece|pieces}", count=count))


def _list_first(title: Say, lines: Lines, empty: Say) -> Listing:
    """Lists the first lines; the title tells how many more there are, which the paper has."""
    return Listing(title=say_more(title, len(lines) - WAIT), rows=lines[:WAIT], empty=empty)


def _list_slips(view: View) -> Lines:
    """Lists the sheets that wait at popping."""
    return tuple(
        _make_line(
            s.batch,
            Cell(text=say("sheet {sheet}", sheet=s.sheet)),
            _count_pieces(total(view.stock(batch=s.batch, place=f"popping/{s.sheet}"))),
        )
        for s in view.shelf(Slip, "popping", MOST)
    )


def _list_piles(view: View) -> Lines:
    """Lists what waits at trimming, good and to be made good, by batch."""
    waits = by_batch(list_waiting(view, "trimming"))
    return tuple(_make_line(batch, _count_pieces(n)) for batch, n in waits.items())


def _list_packs(view: View) -> Lines:
    """Lists the orders whose packs are open, and how far they are."""
    return tuple(
        _make_line(say("order {order}", order=p.order.id), Cell(text=p.words))
        for p in list_open_packs(view)
    )


def _list_routers(view: View, now: str) -> Lines:
    """Lists what is left on each router's bed."""
    return tuple(
        _make_line(
            left.router.name, Cell(text=left.words, tone="attention" if left.wrong else "good")
        )
        for left in list_left_beds(view, now)
    )


def _list_bits(view: View) -> Lines:
    """Lists the bits near their end."""
    return tuple(
        _make_line(
            say("Bit {id}", id=b.id),
            Cell(text=b.words),
            Cell(text=say("{share} % of its life", share=round(100 * share)), tone="attention"),
        )
        for b, share in list_worn_bits(view)
    )


SHOWS: dict[str, Callable[[Hand[Work], View], Face]] = {  # the others ask for a batch first
    FIND: show_thing,
    **dict.fromkeys(LISTS, show_list),
    "handover": _show_handover,
    "menu": _show_menu,
    HANDBOOK: show_handbook,
    "care": _show_cautions,
    "lost_paper": _show_lost,
    TakeReturn.kind: show_returned,
    OpenPack.kind: show_opening,
}
