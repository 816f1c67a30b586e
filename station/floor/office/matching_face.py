"""Shows the columns of a shop's own file beside the fields, and what taking it in would do."""

from station.floor.office.lists import LEAVE, LISTS, PAGES, make_face
from station.floor.office.matching import KINDS, NAMES, ROWS, Slot, list_slots
from station.floor.office.work import ColumnsAsked, OfficeHand
from station.shop.cards import button
from station.shop.faces import Cards, Cell, Entry, Face, Hint, Listing, Press, Row, Table
from station.shop.views import View
from station.shop.words import say

LINES = 12  # of what would change, on a page


def show_columns(hand: OfficeHand, _view: View) -> Face:
    """Shows each field with its column and an example; or the columns that it could be."""
    asked = hand.work.columns
    table = _list_columns(hand, asked) if asked.slot else _list_fields(hand, asked)
    rows = len(asked.header) + 1 if asked.slot else _count_fields(asked)
    on = Press(label=say("Go on"), code=button("save"), wide=2,
               style="primary" if asked.matched and not asked.slot else "off")  # fmt: skip
    presses = (on, *(PAGES if rows > ROWS else ()), LEAVE)
    return make_face(hand, table, side=(_list_kinds(asked),), presses=presses, weights=(60, 0, 40))


def _count_fields(asked: ColumnsAsked) -> int:
    return len(list_slots(KINDS[asked.kind])) if asked.kind else 0


def _list_kinds(asked: ColumnsAsked) -> Cards:
    """Lists which list the file can be; the one that is taken is marked."""
    entries = tuple(
        Entry(
            big=one.words, code=button(f"list_{one.kind.kind}"), chosen=one.kind.kind == asked.kind
        )
        for one in LISTS
        if one.kind.kind not in ("shop", "revision")
    )
    return Cards(title=say("Which list is it?"), entries=entries)


def _list_fields(hand: OfficeHand, asked: ColumnsAsked) -> Table:
    """Lists the fields of the list, each with the column that is taken for it."""
    slots = list_slots(KINDS[asked.kind]) if asked.kind else ()
    first = hand.work.page * ROWS if hand.work.page * ROWS < len(slots) else 0
    rows = tuple(
        Row(
            title=slot.label,
            note=_show_example(asked, asked.matched.get(slot.key, "")),
            code=button(f"row_{n}"),
            cells=(_show_column(asked, slot),),
        )
        for n, slot in enumerate(slots[first : first + ROWS], 1)
    )
    return Table(
        columns=(say("field"), say("column")),
        rows=rows,
        title=say("Which column is which in {file}? It is kept for the next one", file=asked.file),
    )


def _show_column(asked: ColumnsAsked, slot: Slot) -> Cell:
    """Shows the column of a field; of one that is in none, whether a new thing needs it.

    A number, a name and a description are made where the file has none.
    """
    if column := asked.matched.get(slot.key):
        return Cell(text=column, bold=True)
    made = slot.key in ("id", *NAMES)
    must = slot.field.must and not slot.field.about.may_be_empty and not made
    return Cell(text=say("to be said") if must else "–", tone="quiet")


def _list_columns(hand: OfficeHand, asked: ColumnsAsked) -> Table:
    """Lists the columns that a field can be in, each with an example; none at first."""
    columns = ("", *asked.header)
    first = hand.work.page * ROWS if hand.work.page * ROWS < len(columns) else 0
    rows = tuple(
        Row(
            title=name or say("In no column"),
            note=_show_example(asked, name),
            code=button(f"row_{n}"),
            selected=name == asked.matched.get(asked.slot, ""),
        )
        for n, name in enumerate(columns[first : first + ROWS], 1)
    )
    label = next(s.label for s in list_slots(KINDS[asked.kind]) if s.key == asked.slot)
    return Table(columns=(say("column"),), rows=rows,
                 title=say("{field}: which column is it?", field=label))  # fmt: skip


def _show_example(asked: ColumnsAsked, column: str) -> str:
    """Gives what the first rows have in a column."""
    if column not in asked.header:
        return ""
    place = asked.header.index(column)
    return " · ".join(row[place] for row in asked.rows if place < len(row) and row[place])


def show_would_be(hand: OfficeHand, _view: View) -> Face:
    """Shows what taking the file in would do, in a line for each thing."""
    asked = hand.work.columns
    first = hand.work.page * LINES if hand.work.page * LINES < len(asked.would) else 0
    rows = tuple(((Cell(text=line),), "") for line in asked.would[first : first + LINES])
    take = Press(label=say("Take it in"), code=button("save"), wide=2,
                 style="primary" if asked.would else "off")  # fmt: skip
    note = say("Look it over: nothing of it counts yet.")
    title = (
        say("What {file} would change", file=asked.file)
        if asked.file
        else say("What all lists together would change")
    )
    presses = (take, *(PAGES if len(asked.would) > LINES else ()), LEAVE)
    return make_face(
        hand, Hint(title=title, note=note), Listing(title="", rows=rows), presses=presses
    )
