"""A field that is a list, edited row by row: an order's lines, a product's parts, bed places.

With no row chosen an input begins a new one, or chooses the row that names the same thing. A
quantity of 0 takes its row out.
"""

from dataclasses import replace

from station.floor.office.lists import (
    LEAVE,
    PAGES,
    ROWS,
    find_chosen,
    find_fact,
    find_list,
    find_page,
    find_value,
    give_value,
    list_cards,
    make_face,
    name_fact,
    name_press,
    read_row,
    say_one,
)
from station.floor.office.work import EditedRows, OfficeHand
from station.shop.acts import Answer, good, refuse
from station.shop.cards import button
from station.shop.codes import Code
from station.shop.faces import Asked, Block, Cell, Face, Letters, Press, Row, SheetDrawing, Table
from station.shop.facts import Part, Revision, Router
from station.shop.field_texts import Rows, from_rows, read_scalar, show_scalar, start_row, to_rows
from station.shop.fields import FactField, fields_by_name
from station.shop.rooms import Input, Number, Point, Took, Typed
from station.shop.views import View
from station.shop.words import Say, figure, say

MOST = 60  # rows of one list
FULL = refuse(say("A list has at most {n} {n|line|lines}", n=MOST))
NOTHING_CHOSEN = refuse(say("No line is chosen"), say("Touch a line first."))
ON = say("Add the next one, or close the list.")


def open_rows(hand: OfficeHand, field: FactField, view: View) -> Took:
    """Opens a list field with its rows as they stand."""
    rows = to_rows(field, find_value(hand, field, view))
    opened = _edit(hand, EditedRows(field=field.name, rows=rows), page=0)
    opened = replace(opened, work=replace(opened.work, ask="lines", field=field.name))
    do = _say_what_first(field.columns[0])
    return Took(opened, good(say("{n} {n|line|lines}", n=len(rows)), do))


def _edit(hand: OfficeHand, editing: EditedRows, page: int | None = None) -> OfficeHand:
    """The hand with these rows, on the same page unless another is given."""
    page = hand.work.page if page is None else page
    return replace(hand, work=replace(hand.work, editing=editing, page=page))


def find_edited(hand: OfficeHand) -> FactField:
    """Finds the list field that is being edited."""
    return fields_by_name(find_list(hand).kind)[hand.work.editing.field]


def find_item(hand: OfficeHand) -> int | None:
    """Finds the chosen row, from 0."""
    item = hand.work.editing.item
    return item if item is not None and item < len(hand.work.editing.rows) else None


def _say_what_first(first: FactField) -> Say:
    if first.points:
        return say("Scan, touch or type a {kind} to add it.", kind=first.points.kind)
    return say("Type one to add it.") if first.of is str else say("Type x, then y; or touch it.")


def handle_input(hand: OfficeHand, given: Input, view: View) -> Took | None:
    """Takes one input while a list field is open."""
    if isinstance(given, Point) and find_edited(hand).columns[0].of is float:
        rows = hand.work.editing.rows
        point = (float(round(given.x_mm)), float(round(given.y_mm)))
        return _complete_row(hand, (*rows, point), len(rows))
    if isinstance(given, Typed | Number):
        return _take_text(hand, given.text, view)
    name = name_press(given)
    if (place := read_row(name)) is not None:
        return _choose_row(hand, hand.work.page * ROWS + place)
    if name in ("more", "fewer"):
        return _step_number(hand, 1 if name == "more" else -1)
    if name == "remove":
        return _remove_row(hand)
    if name in ("lines_done", "save"):
        return close_rows(hand, view)
    return _scan_thing(hand, given, view) if isinstance(given, Code) else None


def close_rows(hand: OfficeHand, view: View) -> Took:
    """Gives the rows back to the form, still to be saved."""
    field, rows = find_edited(hand), hand.work.editing.rows
    page = find_page(find_list(hand).kind, field.name)
    closed = replace(hand, work=replace(hand.work, ask="", editing=EditedRows(), page=page))
    return give_value(closed, field, from_rows(field, rows), view)


def _choose_row(hand: OfficeHand, place: int) -> Took:
    editing, of = hand.work.editing, find_edited(hand).columns
    if place >= len(editing.rows):
        return Took(hand, refuse(say("There is no line in that row"), say("Touch a line.")))
    column = next((n for n, c in enumerate(of) if c.of is not str), 0)
    return Took(
        _edit(hand, replace(editing, item=place, column=column)),
        good(say("Line {n}", n=place + 1), say("Enter its {what}.", what=of[column].label)),
    )


def _scan_thing(hand: OfficeHand, code: Code, view: View) -> Took | None:
    """Adds the thing whose card was scanned, or chooses its row."""
    points = find_edited(hand).columns[0].points
    if not points or points.kind != code.kind:
        return None
    if view.get(points, code.number) is None:
        return Took(hand, _refuse_unknown(points.kind, code.number))
    return _name_thing(hand, code.number, view)


def _refuse_unknown(kind: str, text: str) -> Answer:
    return refuse(
        say("There is no {kind} {id}", kind=kind, id=text), say("Scan its card, or type its name.")
    )


def _take_text(hand: OfficeHand, text: str, view: View) -> Took:
    """Takes a text or number into the chosen row's column, or begins a row with it."""
    of, item = find_edited(hand).columns, find_item(hand)
    column = of[hand.work.editing.column if item is not None else 0]
    if column.points:
        found = find_fact(column.points, text, view)
        if found is None:
            return Took(hand, _refuse_unknown(column.points.kind, text))
        return _name_thing(hand, found.id, view)
    value = read_scalar(column.of, text, column.about.unit)
    if type(value) is not column.of:
        return Took(hand, refuse(say("{text} is no number", text=text), say("Enter a number.")))
    if isinstance(value, str):
        value = value.replace(";", ",").strip()  # a line of a file parts them by semicolons
    if item is None:
        return _begin_row(hand, value)
    return _set_column(hand, item, hand.work.editing.column, value)


def _name_thing(hand: OfficeHand, id: str, view: View) -> Took:
    """Chooses the row that names this thing: the one that is there, or a new one."""
    rows, field = hand.work.editing.rows, find_edited(hand)
    of = field.columns
    known = next((n for n, row in enumerate(rows) if row[0] == id), None)
    name = name_fact(of[0].points, id, view) if of[0].points else id
    if known is None:
        if len(rows) >= MOST:
            return Took(hand, FULL)
        rows, known = (*rows, start_row(field, id)), len(rows)
    item = known if len(of) > 1 else None
    editing = replace(hand.work.editing, rows=rows, item=item, column=1)
    after = _edit(hand, editing, page=known // ROWS)
    if len(of) == 1:
        return Took(after, good(say("{name} is in the list", name=name), say("Add the next one.")))
    return Took(after, good(say("{name}: {n}", name=name, n=rows[known][1]), say("How many?")))


def _begin_row(hand: OfficeHand, value: object) -> Took:
    """Begins a new row with its first column given."""
    rows = hand.work.editing.rows
    if len(rows) >= MOST:
        return Took(hand, FULL)
    longer = (*rows, start_row(find_edited(hand), value))
    begun = _edit(hand, replace(hand.work.editing, rows=longer), page=len(rows) // ROWS)
    return _go_right(begun, len(rows), 0)


def _set_column(hand: OfficeHand, item: int, column: int, value: object) -> Took:
    if find_edited(hand).columns[column].counts and isinstance(value, int) and value < 1:
        return _remove_row(hand)
    return _go_right(_edit(hand, _put(hand.work.editing, item, column, value)), item, column)


def _put(editing: EditedRows, item: int, column: int, value: object) -> EditedRows:
    """The rows with another value in one place."""
    row = editing.rows[item]
    row = (*row[:column], value, *row[column + 1 :])
    return replace(editing, rows=(*editing.rows[:item], row, *editing.rows[item + 1 :]))


def _go_right(hand: OfficeHand, item: int, column: int) -> Took:
    """Goes to the next column that is asked; after the last one the row is complete."""
    of = find_edited(hand).columns
    after = next((n for n in range(column + 1, len(of)) if of[n].about.typed), None)
    if after is None:
        return _complete_row(hand, hand.work.editing.rows, item)
    return Took(
        _edit(hand, replace(hand.work.editing, item=item, column=after)),
        good(say("Line {n}", n=item + 1), say("Enter its {what}.", what=of[after].label)),
    )


def _complete_row(hand: OfficeHand, rows: Rows, item: int) -> Took:
    editing = replace(hand.work.editing, rows=rows, item=None, column=0)
    after = _edit(hand, editing, page=item // ROWS)
    return Took(after, good(say("Line {n} is complete", n=item + 1), ON))


def _step_number(hand: OfficeHand, by: int) -> Took:
    """Makes the chosen row's number one more or one less."""
    item, editing = find_item(hand), hand.work.editing
    value = None if item is None else editing.rows[item][editing.column]
    if item is None or not isinstance(value, int | float):
        return Took(hand, NOTHING_CHOSEN)
    if value + by < 1 and find_edited(hand).columns[editing.column].counts:
        return _remove_row(hand)
    return Took(
        _edit(hand, _put(editing, item, editing.column, value + by)),
        good(say("Line {n}: {value}", n=item + 1, value=figure(value + by)), ON),
    )


def _remove_row(hand: OfficeHand) -> Took:
    item, editing = find_item(hand), hand.work.editing
    if item is None:
        return Took(hand, refuse(say("No line is chosen"), say("Touch the line to take out.")))
    rows = (*editing.rows[:item], *editing.rows[item + 1 :])
    return Took(
        _edit(hand, replace(editing, rows=rows, item=None, column=0)),
        good(say("Line {n} is taken out", n=item + 1), ON),
    )


# --- its screen


def show_rows(hand: OfficeHand, view: View) -> Face:
    """Shows the rows of a list field, and what can be added."""
    field, rows, first = find_edited(hand), hand.work.editing.rows, hand.work.page * ROWS
    shown = tuple(
        _make_row(hand, view, n, row) for n, row in enumerate(rows[first : first + ROWS], first)
    )
    pages = max(1, -(-len(rows) // ROWS))
    title = say(
        "{what}: {field}, page {page} of {pages}",
        what=say_one(find_list(hand).one, hand.work.chosen or say("new")),
        field=field.label,
        page=hand.work.page + 1,
        pages=pages,
    )
    done = Press(label=say("List complete"), code=button("lines_done"), style="primary", wide=2)
    out = Press(label=say("Take it out"), code=button("remove"))
    chosen = find_item(hand) is not None
    presses = (done, *((out,) if chosen else ()), *(PAGES if pages > 1 else ()), LEAVE)
    heads = tuple(c.label for c in field.columns if c.about.typed)
    table = Table(columns=heads, rows=shown, title=title)
    bed = _draw_bed(hand, view)
    main = (bed, table) if bed else (table,)
    side = _show_beside_rows(hand, view)
    return make_face(hand, *main, side=side, presses=presses, weights=(60, 0, 40))


def _make_row(hand: OfficeHand, view: View, n: int, row: tuple[object, ...]) -> Row:
    of = find_edited(hand).columns
    points, quantity = of[0].points, [c.counts for c in of if c.about.typed][1:] == [True]
    chosen_one = n == find_item(hand)
    part = view.get(Part, str(row[0])) if points is Part else None
    return Row(
        title=name_fact(points, row[0], view) if points else show_scalar(row[0], of[0].about.unit),
        note=str(row[0]) if points else "",
        cells=tuple(
            Cell(text=show_scalar(v, c.about.unit), bold=chosen_one)
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
    of, item = find_edited(hand).columns, find_item(hand)
    column = of[hand.work.editing.column if item is not None else 0]
    if column.points:
        return (list_cards(column.points, view),)
    if column.of is str:
        return (Letters(question=column.label, note=say("Enter adds it.")),)
    return (Asked(question=say("{field}", field=column.label), typed=hand.digits),)


def _draw_bed(hand: OfficeHand, view: View) -> SheetDrawing | None:
    """Draws the bed or sheet that places stand on; a touch adds one."""
    fact = find_chosen(hand, view)
    if not isinstance(fact, Router | Revision) or find_edited(hand).columns[0].of is not float:
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
