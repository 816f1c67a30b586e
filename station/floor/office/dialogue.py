"""The office worked by codes, touch or keyboard: lists, one form, and the acts beside it.

Every dialogue that is open takes an input first; what it does not know is a button of the
office. What `hand.work` holds stands in `state`.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace

from station.floor.office import count, dropped, files, form, intake, lines, release
from station.floor.office.fields import LISTS
from station.floor.office.state import (
    chosen,
    facts_on_page,
    find,
    list_of,
    page_of,
    pressed,
    row_of,
)
from station.shop.acts import SetPin, good, notice, refuse
from station.shop.codes import Code
from station.shop.facts import Batch, CutFile, Fact, Lot, Order, Revision, Worker
from station.shop.rooms import (
    Do,
    Dropped,
    FileJob,
    Hand,
    HandleInput,
    Input,
    Number,
    Took,
    Typed,
    plain_do,
)
from station.shop.views import View
from station.shop.words import say

ALL_CARDS = (("badges", ""), ("part_cards", ""), ("button_cards", "all"))
Result = Do | Took | FileJob | None


def handle_input(hand: Hand, given: Input, view: View) -> Result:
    """One input in the office."""
    if hand.doing:
        return intake.being_read(hand)
    if isinstance(given, Dropped):
        return dropped.handle_input(hand, given, view)
    open_one = ASKED.get(str(hand.work.get("ask", "")))
    if open_one and (done := open_one(hand, given, view)):
        return done
    if not open_one and "form" in hand.work and (done := form.handle_input(hand, given, view)):
        return done
    name = pressed(given)
    if (row := row_of(name)) is not None:
        return _row(hand, row, view)
    if name.startswith("list_"):
        return _open_list(hand, name.removeprefix("list_"))
    if name in BUTTONS:
        return BUTTONS[name](hand, view)
    if isinstance(given, Code) and given.kind != "button":
        return _scan(hand, given, view)
    if isinstance(given, Typed | Number) and not open_one and "form" not in hand.work:
        return _named(hand, given.text, view)
    return None


def _turn(hand: Hand, by: int) -> Took:
    index = (LISTS.index(list_of(hand)) + by) % len(LISTS)
    fresh = replace(hand, work={"list": index})
    return Took(fresh, good(LISTS[index].words, say("Touch a row, or add a new one.")))


def _open_list(hand: Hand, kind: str) -> Took:
    index = next(n for n, entry in enumerate(LISTS) if entry.kind.kind == kind)
    return _turn(replace(hand, work={"list": index}), 0)


def _page(hand: Hand, by: int) -> Took:
    page = max(0, page_of(hand) + by)
    return Took(hand.with_work(page=page), good(say("Page {page}", page=page + 1)))


def _row(hand: Hand, row: int, view: View) -> Took | FileJob:
    """A row of a list opens its form."""
    rows = facts_on_page(hand, view)
    if row >= len(rows):
        return Took(hand, refuse(say("There is nothing in that row"), say("Touch a row.")))
    return _open(hand, rows[row], view)


def _open(hand: Hand, fact: Fact, view: View) -> Took | FileJob:
    """A fact's form; a file that was dropped is read for the cut file that is opened."""
    opened = form.open_fact(hand, fact)
    if isinstance(fact, CutFile) and (path := dropped.path_of(hand)):
        return intake.start(opened.hand.with_work(dropped=path), view)
    return opened


def _named(hand: Hand, text: str, view: View) -> Took | FileJob:
    """A number or name opens what it names in the open list."""
    found = find(list_of(hand).kind, text, view)
    if found:
        return _open(hand, found, view)
    return Took(
        hand,
        refuse(
            say("{list}: there is no {text}", list=list_of(hand).words, text=text),
            say("Touch a row, or add a new one."),
        ),
    )


def _scan(hand: Hand, code: Code, view: View) -> Took | None:
    """A thing's own card opens its form; a traveller is for a new count or an end."""
    for entry in LISTS:
        if entry.kind.kind == code.kind and (fact := view.get(entry.kind, code.number)):
            return form.open_fact(hand, fact)
    if code.kind == "batch" and view.get(Batch, code.number):
        return Took(
            replace(hand, work={"list": LISTS.index(list_of(hand)), "batch": code.number}),
            notice(
                say("Batch {batch}", batch=code.number),
                say("Cancel it, correct a count, or leave it."),
            ),
        )
    return None


def _approve(hand: Hand, view: View) -> Do | Took:
    """The chosen revision, or the newest of the chosen cut file."""
    fact = chosen(hand, view)
    if isinstance(fact, Revision):
        subject = f"cutfile/{fact.cut_file}"
        return plain_do("approve_revision", subject, {"letter": fact.letter}, hand)
    if isinstance(fact, CutFile):
        newest = view.shelf(Revision, fact.id, 50)
        letter = newest[-1].letter if newest else ""
        return plain_do("approve_revision", fact.key, {"letter": letter}, hand)
    return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))


def _ask_sheets(hand: Hand, view: View) -> Took:
    if not isinstance(chosen(hand, view), Lot):
        return Took(hand, refuse(say("That is no lot"), say("Open a lot first.")))
    return Took(hand.with_work(ask="sheets"), good(say("Sheets received"), say("How many?")))


def _sheets(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """The number of sheets that were received of the chosen lot."""
    fact = chosen(hand, view)
    if not isinstance(given, Number) or not isinstance(fact, Lot):
        return None
    if not given.whole:
        return Took(hand, refuse(say("That is no number of sheets"), say("Type 1 or more.")))
    args = {"material": fact.material, "sheets": given.whole}
    return plain_do("receive_lot", fact.key, args, hand.with_work(ask=None))


def _new_pin(hand: Hand, view: View) -> Do | Took:
    """The rule asks for it; it is kept nowhere as it is."""
    fact = chosen(hand, view)
    if not isinstance(fact, Worker):
        return Took(hand, refuse(say("That is no worker"), say("Open a worker first.")))
    return Do(fact.key, SetPin(), hand)


def _cancel(hand: Hand, view: View) -> Do | Took:
    """The chosen order, or the batch whose traveller was scanned."""
    batch = str(hand.work.get("batch", ""))
    if batch:
        return plain_do("cancel_batch", f"batch/{batch}", {}, hand.with_work(batch=None))
    fact = chosen(hand, view)
    if isinstance(fact, Order):
        return plain_do("cancel_order", fact.key, {}, hand)
    return Took(
        hand,
        refuse(
            say("Only an order or a batch is cancelled"),
            say("Open an order, or scan a traveller."),
        ),
    )


def _print(hand: Hand, view: View) -> Took:
    """The chosen thing's card; with nothing chosen, every card of the shop."""
    fact = chosen(hand, view)
    if fact is None:
        answer = good(say("Every card of the shop is printed"), say("Cut them out, put them up."))
        return Took(hand, replace(answer, prints=ALL_CARDS))
    answer = good(say("Its card is printed"), say("Cut it out and put it in place."))
    return Took(hand, replace(answer, prints=(("card", fact.key),)))


ASKED: Mapping[str, HandleInput] = {
    "release": release.handle_input,
    "sheets": _sheets,
    "count": count.handle_input,
    "files": files.handle_input,
    "lines": lines.handle_input,
    "cut": intake.handle_input,
}
BUTTONS: Mapping[str, Callable[[Hand, View], Result]] = {
    "next_kind": lambda hand, _view: _turn(hand, 1),
    "back_kind": lambda hand, _view: _turn(hand, -1),
    "next_page": lambda hand, _view: _page(hand, 1),
    "back_page": lambda hand, _view: _page(hand, -1),
    "new": form.new,
    "approve": _approve,
    "release_batch": release.start,
    "cancel_it": _cancel,
    "receive": _ask_sheets,
    "correct": count.start,
    "new_pin": _new_pin,
    "read_file": intake.start,
    "print_cards": _print,
    "read_csv": lambda hand, _view: files.find(hand),
    "write_csv": lambda hand, _view: files.write(hand),
    "backup": lambda hand, _view: files.backup(hand),
}
