"""What the office shows while something is asked: release, sheets, count, files, lines."""

from collections.abc import Callable

from station.floor.office import count, files, intake_face, lines, release
from station.floor.office.fields import POINTS, label
from station.floor.office.state import ROWS, called, chosen, everything, items_of, list_of, page_of
from station.floor.office.values import listed
from station.queries.settings import find_shop
from station.queries.stock import name_place
from station.shop.cards import button
from station.shop.codes import LETTERS, write
from station.shop.faces import (
    Asked,
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Hint,
    Listing,
    Press,
    Row,
    SheetDrawing,
    Table,
)
from station.shop.facts import CutFile, Fact, Order, Part, Revision, Router
from station.shop.moves import Held, head
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import Say, moment, say

LEAVE = Press(label=say("Leave it"), code=button("put_down"))
THINGS = 10  # cards of things to choose from
LINES = 14  # problems of a file on the screen


def _face(hand: Hand, *main: Block, **more: object) -> Face:
    presses = more.pop("presses", (LEAVE,))
    return Face(
        title=say("Office"),
        where=list_of(hand).words,
        main=main,
        presses=presses,  # type: ignore[arg-type]  # named arguments of one's own
        **more,  # type: ignore[arg-type]
    )


def things(kind: type[Fact], field: str, view: View) -> Cards | None:
    """The things that a field can point at, as cards to touch where they have codes."""
    points = POINTS.get((kind, field))
    return _cards(points, view) if points and points.kind in LETTERS else None


def _cards(kind: type[Fact], view: View) -> Cards:
    found = [f for f in everything(kind, view) if getattr(f, "active", True)]
    return Cards(
        title=say("Scan, type or touch one"),
        entries=tuple(
            Entry(big=called(kind, f.id, view), code=write(kind.kind, f.id))
            for f in found[:THINGS]
        ),
    )


# --- a list field


def _lines(hand: Hand, view: View) -> Face:
    """The rows of a list field, and what can be added."""
    of, item = lines.columns(hand), lines.item_of(hand)
    first = page_of(hand) * ROWS
    rows = tuple(
        _line(hand, view, n, row)
        for n, row in enumerate(items_of(hand)[first : first + ROWS], first)
    )
    asked = [c for c in of if c.asked]
    heads = tuple(label(c.name) for c in asked)
    pages = max(1, -(-len(items_of(hand)) // ROWS))
    title = say(
        "{kind} {id}: {field}, page {page} of {pages}",
        kind=list_of(hand).one,
        id=str(hand.work.get("chosen", "")) or say("new"),
        field=label(str(hand.work["lines"])),
        page=page_of(hand) + 1,
        pages=pages,
    )
    presses = [
        Press(label=say("List complete"), code=button("lines_done"), style="primary", wide=2)
    ]
    if item is not None:
        presses.append(Press(label=say("Take it out"), code=button("remove")))
    if pages > 1:
        presses.append(Press(label=say("Page back"), code=button("back_page")))
        presses.append(Press(label=say("Next page"), code=button("next_page")))
    table = Table(columns=heads, rows=rows, title=title)
    bed = _bed(hand, view)
    return _face(
        hand,
        *((bed, table) if bed else (table,)),
        side=_line_side(hand, view),
        presses=(*presses, LEAVE),
        weights=(60, 0, 40),
    )


def _line(hand: Hand, view: View, n: int, row: list[object]) -> Row:
    of = lines.columns(hand)
    points, quantity = of[0].points, [c.name for c in of if c.asked][1:] == ["quantity"]
    chosen_one = n == lines.item_of(hand)
    part = view.get(Part, str(row[0])) if points is Part else None
    return Row(
        title=called(points, row[0], view) if points else _plain(row[0]),
        note=str(row[0]) if points else "",
        cells=tuple(
            Cell(text=_plain(v), bold=chosen_one)
            for v, c in zip(row[1:], of[1:], strict=True)
            if c.asked
        ),
        shape=part.shape if part else None,
        code=button(f"row_{n % ROWS + 1}"),
        selected=chosen_one,
        counter=0 if quantity else None,
        minus=_with_row(n, "fewer") if quantity else "",
        plus=_with_row(n, "more") if quantity else "",
    )


def _with_row(n: int, name: str) -> str:
    """Touched beside a row: the row is chosen, then one more or one less."""
    return f"{button(f'row_{n % ROWS + 1}')}|{button(name)}"


def _plain(value: object) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value)


def _line_side(hand: Hand, view: View) -> tuple[Block, ...]:
    """What can be added, or a keypad for the chosen row's number."""
    of, item = lines.columns(hand), lines.item_of(hand)
    column = of[lines.column_of(hand) if item is not None else 0]
    if column.points:
        return (_cards(column.points, view),)
    if column.kind is str:
        return (Hint(title=say("Type it on the keyboard"), note=say("Enter adds it.")),)
    pad = Asked(question=say("{field}", field=label(column.name)), typed=hand.digits)
    return (pad,)


def _bed(hand: Hand, view: View) -> SheetDrawing | None:
    """The bed or sheet that places stand on; a touch adds one."""
    fact = chosen(hand, view)
    if not isinstance(fact, Router | Revision) or lines.columns(hand)[0].kind is not float:
        return None
    drawn = (
        Revision(id="bed", cut_file="", letter="", material="", minutes=0,
                 length_mm=fact.length_mm, width_mm=fact.width_mm)
        if isinstance(fact, Router)
        else fact
    )  # fmt: skip
    spots = tuple((float(str(r[0])), float(str(r[1])), "attention") for r in items_of(hand))
    return SheetDrawing(revision=drawn, spots=spots, touch=True)  # type: ignore[arg-type]  # tones


# --- acts with questions of their own


def _release(hand: Hand, view: View) -> Face:
    """Router, order and due time to touch; the number of sheets releases."""
    fact = chosen(hand, view)
    router = view.get(Router, str(hand.work.get("router", "")))
    order, due = str(hand.work.get("order", "")), release.due_of(hand, view)
    known = [
        say("due {due}", due=moment(due)) if due else say("no due time: by need"),
        say("for order {order}", order=order) if order else say("for the rack"),
    ]
    head = Hint(
        title=say("Release {name}", name=fact.name if isinstance(fact, CutFile) else ""),
        right=router.name if router else "",
        note=say("{due}, {order}", due=known[0], order=known[1]),
    )
    return _face(
        hand,
        head,
        _routers(hand, view, router),
        _orders(hand, view),
        side=(
            Asked(
                question=say("How many sheets?"),
                typed=hand.digits,
                unit=say("{n|sheet|sheets}", n=hand.digits),
            ),
        ),
        presses=(
            Press(label=say("Due a day sooner"), code=button("fewer")),
            Press(label=say("Due a day later"), code=button("more")),
            LEAVE,
        ),
        weights=(66, 0, 34),
    )


def _routers(hand: Hand, view: View, chosen_one: Router | None) -> Cards:
    return Cards(
        title=say("Which router?"),
        entries=tuple(
            Entry(
                big=r.name,
                right="●" if chosen_one and r.id == chosen_one.id else "",
                code=write("router", r.id),
            )
            for r in release.able(hand, view)
        ),
        empty=say("No router runs it."),
    )


def _orders(hand: Hand, view: View) -> Cards:
    return Cards(
        title=say("For one order? Scan or touch it"),
        entries=tuple(
            Entry(
                big=o.id,
                right=say("due {at}", at=moment(o.due)),
                line1=_wanted(o, view),
                tone="good" if o.id == hand.work.get("order") else "",
                code=write("order", o.id),
            )
            for o in release.orders(hand, view)
        ),
        empty=say("No open order wants its parts."),
    )


def _wanted(order: Order, view: View) -> str:
    return listed(Order, "lines", [[x.product, x.quantity] for x in order.lines], view)


def _sheets(hand: Hand, view: View) -> Face:
    fact = chosen(hand, view)
    return _face(
        hand,
        Hint(title=say("{kind} {id}", kind=list_of(hand).one, id=fact.id if fact else "")),
        Asked(
            question=say("How many sheets?"),
            typed=hand.digits,
            unit=say("{n|sheet|sheets}", n=hand.digits),
        ),
    )


def _count(hand: Hand, view: View) -> Face:
    """Where the thing lies by the book; then the number that was counted."""
    found, spot = count.spots(hand, view), count.spot_of(hand, view)
    if found is None:
        note = say("Scan a part, a rack place, a lot or a traveller; or touch a part.")
        return _face(hand, Hint(title=say("What was counted?"), note=note), _cards(Part, view))
    rows = tuple(
        Row(
            title=name_place(view, held.place),
            note=_whose(view, held),
            cells=(Cell(text=say("{n}", n=held.qty), bold=True),),
            code=button(f"row_{n}"),
            selected=held == spot,
        )
        for n, held in enumerate(found.held, 1)
    )
    table = Table(columns=(say("place"), say("by the book")), rows=rows, title=found.words)
    if spot is None:
        return _face(hand, table)
    pad = Asked(question=say("How many did you count?"), typed=hand.digits)
    note = say("A supervisor corrects it, with a reason; both are kept.")
    return _face(hand, table, side=(pad, Hint(title=say("The book is set right"), note=note)))


def _whose(view: View, held: Held) -> Say:
    if head(held.place) == "store":
        return say("sheets of this lot")
    if held.batch == count.NO_BATCH:
        return say("of no batch")
    return say("{part}, batch {batch}", part=called(Part, held.part, view), batch=held.batch)


# --- files


def _wrong_lines(hand: Hand, wrong: list[str]) -> Face:
    """What is wrong in a file, by line."""
    rows = tuple(((Cell(text=text),), "") for text in wrong[:LINES])
    more = len(wrong) - LINES
    title = say("{n} {n|problem|problems}: nothing was taken in", n=len(wrong))
    note = (
        say("{n} more; mend these first.", n=more)
        if more > 0
        else say("Mend the file and read it again.")
    )
    again = Press(label=say("Read again"), code=button("read_csv"), style="primary", wide=2)
    return _face(
        hand,
        Hint(title=title, note=note, tone="stop"),
        Listing(title="", rows=rows),
        presses=(again, LEAVE),
    )


def _files(hand: Hand, view: View) -> Face:
    """The files found, to touch; or what is wrong in one, by line."""
    wrong, names = files.texts(hand, "problems"), files.texts(hand, "files")
    folder = str(hand.work.get("folder", "")) or find_shop(view).folder
    if wrong:
        return _wrong_lines(hand, wrong)
    first = page_of(hand) * ROWS
    table = Table(
        columns=(say("file"),),
        title=say("CSV files in {folder}", folder=folder),
        rows=tuple(
            Row(title=name, code=button(f"row_{n}"))
            for n, name in enumerate(names[first : first + ROWS], 1)
        ),
    )
    presses = [LEAVE]
    if len(names) > ROWS:
        presses = [
            Press(label=say("Page back"), code=button("back_page")),
            Press(label=say("Next page"), code=button("next_page")),
            LEAVE,
        ]
    note = say(
        "A file tells by its first line which list it is. All of it is taken in, or nothing."
    )
    hint = Hint(title=say("Which file?") if names else say("No CSV file lies there"), note=note)
    return _face(hand, hint, table, presses=tuple(presses))


FACES: dict[str, Callable[[Hand, View], Face]] = {
    "release": _release,
    "sheets": _sheets,
    "count": _count,
    "files": _files,
    "lines": _lines,
    "cut": intake_face.face,
}
