"""The sheets that were not made: cut again, or dropped for a reason; nobody forgets them."""

from dataclasses import replace

from station.floor.office.lists import LEAVE, ROWS, make_face, name_press, read_row
from station.floor.office.work import OfficeHand, OfficeWork
from station.floor.shared.no_row import NO_ROW
from station.floor.shared.queue import AddSheet
from station.floor.shared.settling import SettleConcern
from station.queries.unmade import DROP, Unmade, list_all_unmade
from station.shop.acts import good, question
from station.shop.cards import button
from station.shop.faces import Cell, Face, Hint, Press, Row, Table
from station.shop.rooms import Do, Input, Took
from station.shop.views import View
from station.shop.words import moment, say

UNMADE = say("Sheets not made")


def open_unmade(hand: OfficeHand, view: View) -> Took:
    """Shows the sheets that were not made."""
    n = len(list_all_unmade(view))
    after = replace(hand, work=OfficeWork(list=hand.work.list, ask="unmade"))
    said = say("{n} {n|sheet was|sheets were} not made", n=n)
    return Took(after, good(said, say("Touch one: it is cut again, or dropped.")))


def handle_input(hand: OfficeHand, given: Input, view: View) -> Do | Took | None:
    """Takes the row of a sheet, then how it is settled; turns the pages."""
    name = name_press(given)
    if (row := read_row(name)) is not None:
        return _choose_sheet(hand, row, view)
    if name in ("next_page", "back_page"):
        return _turn_page(hand, 1 if name == "next_page" else -1, view)
    chosen = _find_chosen(hand, view)
    after = replace(hand, work=replace(hand.work, look=""))
    if chosen and name == "one_more_sheet":
        return Do(chosen.batch.key, AddSheet(router="", look=chosen.look), after)
    if chosen and name == "cancel_it":
        return Do(f"concern/{chosen.look}", SettleConcern(how=DROP), after)
    return None


def _find_chosen(hand: OfficeHand, view: View) -> Unmade | None:
    look = hand.work.look
    return next((u for u in list_all_unmade(view) if look and u.look == look), None)


def _list_page(hand: OfficeHand, view: View) -> tuple[Unmade, ...]:
    start = ROWS * hand.work.page
    return list_all_unmade(view)[start : start + ROWS]


def _turn_page(hand: OfficeHand, by: int, view: View) -> Took:
    last = max(0, (len(list_all_unmade(view)) - 1) // ROWS)
    page = min(last, max(0, hand.work.page + by))
    after = replace(hand, work=replace(hand.work, page=page, look=""))
    return Took(after, good(say("Page {page}", page=page + 1)))


def _choose_sheet(hand: OfficeHand, row: int, view: View) -> Took:
    """Chooses a sheet; of those that nobody may cut any more, their batch."""
    shown = _list_page(hand, view)
    if row >= len(shown):
        return Took(hand, NO_ROW)
    one = shown[row]
    if not one.look:
        after = replace(hand, work=OfficeWork(list=hand.work.list, batch=one.batch.id))
        said = say("Batch {batch}", batch=one.batch.id)
        return Took(after, question(said, say("Cancel it and release it anew, or leave it.")))
    after = replace(hand, work=replace(hand.work, look=one.look))
    said = say("Batch {batch}, sheet {sheet}", batch=one.batch.id, sheet=one.sheet)
    return Took(after, question(said, say("Cut it again, or drop it?")))


def show_unmade(hand: OfficeHand, view: View) -> Face:
    """Shows each sheet that was not made: of which batch and file, why, since when."""
    every, chosen = list_all_unmade(view), _find_chosen(hand, view)
    rows = tuple(
        Row(
            title=say("Batch {batch}", batch=one.batch.id),
            note=one.file,
            cells=(Cell(text=one.sheet, bold=True), Cell(text=one.why),
                   Cell(text=moment(one.since) if one.since else say("now"))),
            code=button(f"row_{n}"),
            selected=chosen is not None and one.look == chosen.look,
        )
        for n, one in enumerate(_list_page(hand, view), 1)
    )  # fmt: skip
    pages = max(1, -(-len(every) // ROWS))
    title = say("{list}: {count}, page {page} of {pages}", list=UNMADE, count=len(every),
                page=hand.work.page + 1, pages=pages)  # fmt: skip
    heads = (say("batch"), say("sheet"), say("why"), say("since"))
    main = Table(columns=heads, rows=rows, title=title)
    if not every:
        return replace(make_face(hand, Hint(title=say("Every sheet was made"))), where=UNMADE)
    face = make_face(hand, main, presses=_offer(pages, chosen=chosen is not None))
    return replace(face, where=UNMADE)


def _offer(pages: int, *, chosen: bool) -> tuple[Press, ...]:
    """Offers what is done with the chosen sheet, and the pages."""
    ways = (
        Press(label=say("Cut it again"), code=button("one_more_sheet"), style="primary", wide=2),
        Press(label=say("Drop it"), code=button("cancel_it")),
    )
    turns = (
        Press(label=say("Page back"), code=button("back_page")),
        Press(label=say("Next page"), code=button("next_page")),
    )
    return (*(ways if chosen else ()), *(turns if pages > 1 else ()), LEAVE)


def press_unmade(view: View) -> tuple[Press, ...]:
    """Offers the page from a list, while any sheet was not made."""
    n = len(list_all_unmade(view))
    return (Press(label=say("Not made: {n}", n=n), code=button("not_made")),) if n else ()
