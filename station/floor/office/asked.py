"""Shows what the office asks: the rows of a list field, a release, sheets, a count, files."""

from collections.abc import Callable

from station.floor.office import count, intake_face, lines, release
from station.floor.office.lists import (
    ROWS,
    find_chosen,
    find_list,
    list_facts,
    name_fact,
    say_rows,
)
from station.floor.office.work import OfficeHand
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
from station.shop.field_texts import write_scalar
from station.shop.fields import FactField, fields_by_name
from station.shop.moves import Held, head
from station.shop.views import View
from station.shop.words import Say, moment, say

LEAVE = Press(label=say("Leave it"), code=button("put_down"))
PAGES = (
    Press(label=say("Page back"), code=button("back_page")),
    Press(label=say("Next page"), code=button("next_page")),
)
THINGS = 10  # cards of things to choose from
LINES = 14  # problems of a file on the screen


def _make_face(
    hand: OfficeHand,
    *main: Block,
    side: tuple[Block, ...] = (),
    presses: tuple[Press, ...] = (LEAVE,),
    weights: tuple[int, int, int] = (71, 0, 29),
) -> Face:
    return Face(
        title=say("Office"),
        where=find_list(hand).words,
        main=main,
        side=side,
        presses=presses,
        weights=weights,
    )


def offer_things(field: FactField, view: View) -> Cards | None:
    """Offers the things that a field can point at, as cards, where they have codes."""
    points = field.points
    return _list_cards(points, view) if points and points.kind in LETTERS else None


def _list_cards(kind: type[Fact], view: View) -> Cards:
    found = [f for f in list_facts(kind, view) if getattr(f, "active", True)]
    return Cards(
        title=say("Scan, type or touch one"),
        entries=tuple(
            Entry(big=name_fact(kind, f.id, view), code=write(kind.kind, f.id))
            for f in found[:THINGS]
        ),
    )


# --- a list field


def _show_rows(hand: OfficeHand, view: View) -> Face:
    """Shows the rows of a list field, and what can be added."""
    field, rows, first = lines.find_edited(hand), hand.work.editing.rows, hand.work.page * ROWS
    shown = tuple(
        _make_row(hand, view, n, row) for n, row in enumerate(rows[first : first + ROWS], first)
    )
    pages = max(1, -(-len(rows) // ROWS))
    title = say(
        "{kind} {id}: {field}, page {page} of {pages}",
        kind=find_list(hand).one,
        id=hand.work.chosen or say("new"),
        field=field.label,
        page=hand.work.page + 1,
        pages=pages,
    )
    done = Press(label=say("List complete"), code=button("lines_done"), style="primary", wide=2)
    out = Press(label=say("Take it out"), code=button("remove"))
    chosen = lines.find_item(hand) is not None
    presses = (done, *((out,) if chosen else ()), *(PAGES if pages > 1 else ()), LEAVE)
    heads = tuple(c.label for c in field.columns if c.about.typed)
    table = Table(columns=heads, rows=shown, title=title)
    bed = _draw_bed(hand, view)
    main = (bed, table) if bed else (table,)
    side = _show_beside_rows(hand, view)
    return _make_face(hand, *main, side=side, presses=presses, weights=(60, 0, 40))


def _make_row(hand: OfficeHand, view: View, n: int, row: tuple[object, ...]) -> Row:
    of = lines.find_edited(hand).columns
    points, quantity = of[0].points, [c.counts for c in of if c.about.typed][1:] == [True]
    chosen_one = n == lines.find_item(hand)
    part = view.get(Part, str(row[0])) if points is Part else None
    return Row(
        title=name_fact(points, row[0], view) if points else write_scalar(row[0]),
        note=str(row[0]) if points else "",
        cells=tuple(
            Cell(text=write_scalar(v), bold=chosen_one)
            for v, c in zip(row[1:], of[1:], strict=True)
            if c.about.typed
        ),
        shape=part.shape if part else None,
        code=button(f"row_{n % ROWS + 1}"),
        selected=chosen_one,
        counter=0 if quantity else None,
        minus=_write_codes(n, "fewer") if quantity else "",
        plus=_write_codes(n, "more") if quantity else "",
    )


def _write_codes(n: int, name: str) -> str:
    """Writes what a touch beside a row sends: the row is chosen, then one more or one less."""
    return f"{button(f'row_{n % ROWS + 1}')}|{button(name)}"


def _show_beside_rows(hand: OfficeHand, view: View) -> tuple[Block, ...]:
    """Shows what can be added, or a keypad for the chosen row's number."""
    of, item = lines.find_edited(hand).columns, lines.find_item(hand)
    column = of[hand.work.editing.column if item is not None else 0]
    if column.points:
        return (_list_cards(column.points, view),)
    if column.of is str:
        return (Hint(title=say("Type it on the keyboard"), note=say("Enter adds it.")),)
    return (Asked(question=say("{field}", field=column.label), typed=hand.digits),)


def _draw_bed(hand: OfficeHand, view: View) -> SheetDrawing | None:
    """Draws the bed or sheet that places stand on; a touch adds one."""
    fact = find_chosen(hand, view)
    if (
        not isinstance(fact, Router | Revision)
        or lines.find_edited(hand).columns[0].of is not float
    ):
        return None
    drawn = (
        Revision(id="bed", cut_file="", letter="", material="", minutes=0,
                 length_mm=fact.length_mm, width_mm=fact.width_mm)
        if isinstance(fact, Router)
        else fact
    )  # fmt: skip
    rows = hand.work.editing.rows
    spots = tuple((float(str(x)), float(str(y)), "attention") for x, y in rows)
    return SheetDrawing(revision=drawn, spots=spots, touch=True)  # type: ignore[arg-type]  # tones


# --- acts with questions of their own


def _show_release(hand: OfficeHand, view: View) -> Face:
    """Shows router, order and due time to touch; the number of sheets releases."""
    fact, held = find_chosen(hand, view), hand.work.releasing
    router, due = view.get(Router, held.router), release.find_due(hand, view)
    known = [
        say("due {due}", due=moment(due)) if due else say("no due time: by need"),
        say("for order {order}", order=held.order) if held.order else say("for the rack"),
    ]
    head = Hint(
        title=say("Release {name}", name=fact.name if isinstance(fact, CutFile) else ""),
        right=router.name if router else "",
        note=say("{due}, {order}", due=known[0], order=known[1]),
    )
    sooner = Press(label=say("Due a day sooner"), code=button("fewer"))
    later = Press(label=say("Due a day later"), code=button("more"))
    return _make_face(
        hand,
        head,
        _list_routers(hand, view, router),
        _list_orders(hand, view),
        side=(_ask_sheets(hand),),
        presses=(sooner, later, LEAVE),
        weights=(66, 0, 34),
    )


def _ask_sheets(hand: OfficeHand) -> Asked:
    return Asked(
        question=say("How many sheets?"),
        typed=hand.digits,
        unit=say("{n|sheet|sheets}", n=hand.digits),
    )


def _list_routers(hand: OfficeHand, view: View, chosen_one: Router | None) -> Cards:
    return Cards(
        title=say("Which router?"),
        entries=tuple(
            Entry(
                big=r.name,
                right="●" if chosen_one and r.id == chosen_one.id else "",
                code=write("router", r.id),
            )
            for r in release.list_able(hand, view)
        ),
        empty=say("No router runs it."),
    )


def _list_orders(hand: OfficeHand, view: View) -> Cards:
    return Cards(
        title=say("For one order? Scan or touch it"),
        entries=tuple(
            Entry(
                big=o.id,
                right=say("due {at}", at=moment(o.due)),
                line1=_say_wanted(o, view),
                tone="good" if o.id == hand.work.releasing.order else "",
                code=write("order", o.id),
            )
            for o in release.list_wanting(hand, view)
        ),
        empty=say("No open order wants its parts."),
    )


def _say_wanted(order: Order, view: View) -> str:
    lines_field = fields_by_name(Order)["lines"]
    return say_rows(lines_field, [[x.product, x.quantity] for x in order.lines], view)


def _show_sheets(hand: OfficeHand, view: View) -> Face:
    fact = find_chosen(hand, view)
    head = Hint(title=say("{kind} {id}", kind=find_list(hand).one, id=fact.id if fact else ""))
    return _make_face(hand, head, _ask_sheets(hand))


def _show_count(hand: OfficeHand, view: View) -> Face:
    """Shows where the thing lies by the book; then asks for the number that was counted."""
    found, spot = count.find_spots(hand, view), count.find_spot(hand, view)
    if found is None:
        note = say("Scan a part, a rack place, a lot or a traveller; or touch a part.")
        hint = Hint(title=say("What was counted?"), note=note)
        return _make_face(hand, hint, _list_cards(Part, view))
    rows = tuple(
        Row(
            title=name_place(view, held.place),
            note=_say_whose(view, held),
            cells=(Cell(text=say("{n}", n=held.qty), bold=True),),
            code=button(f"row_{n}"),
            selected=held == spot,
        )
        for n, held in enumerate(found.held, 1)
    )
    table = Table(columns=(say("place"), say("by the book")), rows=rows, title=found.words)
    if spot is None:
        return _make_face(hand, table)
    pad = Asked(question=say("How many did you count?"), typed=hand.digits)
    note = say("A supervisor corrects it, with a reason; both are kept.")
    hint = Hint(title=say("The book is set right"), note=note)
    return _make_face(hand, table, side=(pad, hint))


def _say_whose(view: View, held: Held) -> Say:
    if head(held.place) == "store":
        return say("sheets of this lot")
    if held.batch == count.NO_BATCH:
        return say("of no batch")
    return say("{part}, batch {batch}", part=name_fact(Part, held.part, view), batch=held.batch)


# --- files


def _show_wrong(hand: OfficeHand) -> Face:
    """Shows what is wrong in a file, by line."""
    wrong = hand.work.found.problems
    rows = tuple(((Cell(text=text),), "") for text in wrong[:LINES])
    more = len(wrong) - LINES
    title = say("{n} {n|problem|problems}: nothing was taken in", n=len(wrong))
    note = (
        say("{n} more; mend these first.", n=more)
        if more > 0
        else say("Mend the file and read it again.")
    )
    again = Press(label=say("Read again"), code=button("read_csv"), style="primary", wide=2)
    hint = Hint(title=title, note=note, tone="stop")
    return _make_face(hand, hint, Listing(title="", rows=rows), presses=(again, LEAVE))


def _show_files(hand: OfficeHand, view: View) -> Face:
    """Shows the files found, to touch; or what is wrong in one, by line."""
    found, first = hand.work.found, hand.work.page * ROWS
    if found.problems:
        return _show_wrong(hand)
    table = Table(
        columns=(say("file"),),
        title=say("CSV files in {folder}", folder=found.folder or find_shop(view).folder),
        rows=tuple(
            Row(title=name, code=button(f"row_{n}"))
            for n, name in enumerate(found.names[first : first + ROWS], 1)
        ),
    )
    note = say(
        "A file tells by its first line which list it is. All of it is taken in, or nothing."
    )
    title = say("Which file?") if found.names else say("No CSV file lies there")
    presses = (*(PAGES if len(found.names) > ROWS else ()), LEAVE)
    return _make_face(hand, Hint(title=title, note=note), table, presses=presses)


FACES: dict[str, Callable[[OfficeHand, View], Face]] = {
    "release": _show_release,
    "sheets": _show_sheets,
    "count": _show_count,
    "files": _show_files,
    "lines": _show_rows,
    "cut": intake_face.show_intake,
}
