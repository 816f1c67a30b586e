"""A field that is a list, edited row by row: an order's lines, a product's parts, bed places.

`hand.work` holds `lines` (the field), `items` (its rows), `item` (the chosen row) and
`column` (where the next input goes). With no row chosen an input begins a new one, or
chooses the row that names the same thing. A quantity of 0 takes its row out.
"""

from station.floor.office.fields import COLUMNS, Column, Rows, rows_of, value_from_text, value_of
from station.floor.office.state import (
    ROWS,
    called,
    find,
    items_of,
    list_of,
    page_of,
    pressed,
    row_of,
)
from station.floor.office.values import given_value, value_now
from station.shop.acts import Answer, good, refuse
from station.shop.codes import Code
from station.shop.rooms import Hand, Input, Number, Point, Took, Typed
from station.shop.views import View
from station.shop.words import Say, say

MOST = 60  # rows of one list


def start(hand: Hand, field: str, view: View) -> Took:
    """Opens a list field with its rows as they stand."""
    rows = rows_of(list_of(hand).kind, field, value_now(hand, field, view))
    opened = hand.with_work(
        ask="lines", lines=field, items=rows, item=None, column=0, field=field, page=0
    )
    return Took(opened, good(say("{n} {n|line|lines}", n=len(rows)), _what_first(columns(opened))))


def columns(hand: Hand) -> tuple[Column, ...]:
    """The columns of the list that is being edited."""
    return COLUMNS[list_of(hand).kind, str(hand.work.get("lines", ""))]


def item_of(hand: Hand) -> int | None:
    """The chosen row, from 0."""
    item = hand.work.get("item")
    return item if isinstance(item, int) and item < len(items_of(hand)) else None


def column_of(hand: Hand) -> int:
    """The column that the next input goes to."""
    column = hand.work.get("column", 0)
    return column if isinstance(column, int) else 0


def _what_first(of: tuple[Column, ...]) -> Say:
    first = of[0]
    if first.points:
        return say("Scan or type a {kind} to add it.", kind=first.points.kind)
    return say("Type one to add it.") if first.kind is str else say("Type x, then y; or touch it.")


def handle_input(hand: Hand, given: Input, view: View) -> Took | None:
    """One input while a list field is open."""
    if isinstance(given, Point) and columns(hand)[0].kind is float:
        row: list[object] = [round(given.x_mm), round(given.y_mm)]
        return _kept(hand, [*items_of(hand), [float(str(v)) for v in row]], len(items_of(hand)))
    if isinstance(given, Typed | Number):
        return _text(hand, given.text, view)
    name = pressed(given)
    if (place := row_of(name)) is not None:
        return _choose(hand, page_of(hand) * ROWS + place)
    if name in ("more", "fewer"):
        return _by_one(hand, 1 if name == "more" else -1)
    if name == "remove":
        return _remove(hand)
    if name in ("lines_done", "save"):
        return done(hand, view)
    return _scan(hand, given, view) if isinstance(given, Code) else None


def done(hand: Hand, view: View) -> Took:
    """The rows go back to the form, still to be saved."""
    field, kind = str(hand.work["lines"]), list_of(hand).kind
    back = hand.with_work(ask=None, lines=None, items=None, item=None, column=None, page=0)
    return given_value(back, field, value_of(kind, field, items_of(hand)), view)


def _choose(hand: Hand, place: int) -> Took:
    if place >= len(items_of(hand)):
        return Took(hand, refuse(say("There is no line in that row"), say("Touch a line.")))
    of = columns(hand)
    column = next((n for n, c in enumerate(of) if c.kind is not str), 0)
    return Took(
        hand.with_work(item=place, column=column),
        good(say("Line {n}", n=place + 1), say("Enter its {what}.", what=of[column].name)),
    )


def _scan(hand: Hand, code: Code, view: View) -> Took | None:
    """The card of such a thing adds it, or chooses its row."""
    points = columns(hand)[0].points
    if not points or points.kind != code.kind:
        return None
    if view.get(points, code.number) is None:
        return Took(hand, _unknown(points.kind, code.number))
    return _named(hand, code.number, view)


def _unknown(kind: str, text: str) -> Answer:
    return refuse(
        say("There is no {kind} {id}", kind=kind, id=text), say("Scan its card, or type its name.")
    )


def _text(hand: Hand, text: str, view: View) -> Took:
    """A text or number goes to the chosen row's column, or begins a row."""
    of, item = columns(hand), item_of(hand)
    column = of[column_of(hand) if item is not None else 0]
    if column.points:
        found = find(column.points, text, view)
        return (
            _named(hand, found.id, view)
            if found
            else Took(hand, _unknown(column.points.kind, text))
        )
    value = value_from_text(column.kind, text)
    if type(value) is not column.kind:
        return Took(hand, refuse(say("{text} is no number", text=text), say("Enter a number.")))
    if isinstance(value, str):
        value = value.replace(";", ",").strip()  # a line of a file parts them by semicolons
    if item is None:
        return _begun(hand, value)
    return _set(hand, item, column_of(hand), value)


def _named(hand: Hand, id: str, view: View) -> Took:
    """A row that names this thing: the one that is there, or a new one."""
    rows, of = items_of(hand), columns(hand)
    known = next((n for n, row in enumerate(rows) if row[0] == id), None)
    name = called(of[0].points, id, view) if of[0].points else id
    if known is None:
        if len(rows) >= MOST:
            return Took(hand, refuse(say("A list has at most {n} {n|line|lines}", n=MOST)))
        rows, known = [*rows, [id, *(c.start for c in of[1:])]], len(rows)
    after = hand.with_work(
        items=rows, item=known if len(of) > 1 else None, column=1, page=known // ROWS
    )
    if len(of) == 1:
        return Took(after, good(say("{name} is in the list", name=name), say("Add the next one.")))
    return Took(after, good(say("{name}: {n}", name=name, n=rows[known][1]), say("How many?")))


def _begun(hand: Hand, value: object) -> Took:
    """A new row with its first column given."""
    of, rows = columns(hand), items_of(hand)
    if len(rows) >= MOST:
        return Took(hand, refuse(say("A list has at most {n} {n|line|lines}", n=MOST)))
    begun = hand.with_work(
        items=[*rows, [value, *(c.start for c in of[1:])]], page=len(rows) // ROWS
    )
    return _onward(begun, len(rows), 0)


def _set(hand: Hand, item: int, column: int, value: object) -> Took:
    rows, of = items_of(hand), columns(hand)
    if of[column].name == "quantity" and isinstance(value, int) and value < 1:
        return _remove(hand)
    rows[item][column] = value
    return _onward(hand.with_work(items=rows), item, column)


def _onward(hand: Hand, item: int, column: int) -> Took:
    """The next column that is asked; after the last one the row is complete."""
    of = columns(hand)
    after = next((n for n in range(column + 1, len(of)) if of[n].asked), None)
    if after is None:
        return _kept(hand, items_of(hand), item)
    return Took(
        hand.with_work(item=item, column=after),
        good(say("Line {n}", n=item + 1), say("Enter its {what}.", what=of[after].name)),
    )


def _kept(hand: Hand, rows: Rows, item: int) -> Took:
    after = hand.with_work(items=rows, item=None, column=0, page=item // ROWS)
    return Took(
        after,
        good(say("Line {n} is complete", n=item + 1), say("Add the next one, or close the list.")),
    )


def _by_one(hand: Hand, by: int) -> Took:
    """The chosen row's number, one more or one less."""
    item, column = item_of(hand), column_of(hand)
    if item is None:
        return Took(hand, refuse(say("No line is chosen"), say("Touch a line first.")))
    value = items_of(hand)[item][column]
    if not isinstance(value, int | float):
        return Took(hand, refuse(say("No line is chosen"), say("Touch a line first.")))
    if value + by < 1 and columns(hand)[column].name == "quantity":
        return _remove(hand)
    rows = items_of(hand)
    rows[item][column] = value + by
    return Took(
        hand.with_work(items=rows),
        good(
            say("Line {n}: {value}", n=item + 1, value=f"{value + by:g}"),
            say("Add the next one, or close the list."),
        ),
    )


def _remove(hand: Hand) -> Took:
    item = item_of(hand)
    if item is None:
        return Took(hand, refuse(say("No line is chosen"), say("Touch the line to take out.")))
    rows = items_of(hand)
    rows.pop(item)
    return Took(
        hand.with_work(items=rows, item=None, column=0),
        good(
            say("Line {n} is taken out", n=item + 1), say("Add the next one, or close the list.")
        ),
    )
