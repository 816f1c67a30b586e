"""The office worked by codes, touch or keyboard: lists, one form, and the acts beside it.

Every question that is open takes an input first; what it does not know is a button of the
office.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace

from station.floor.office import (
    count,
    form,
    health,
    intake,
    lines,
    matching,
    release,
    search,
    unmade,
)
from station.floor.office.acts import ApproveRevision, CancelOrder, ReceiveLot, ReceiveMailers
from station.floor.office.lists import (
    LISTS,
    ROWS,
    find_chosen,
    find_fact,
    find_list,
    list_page,
    name_press,
    read_row,
)
from station.floor.office.set_up import find_begun, is_shown, open_set_up
from station.floor.office.work import Ask, OfficeHand, OfficeWork
from station.floor.shared.no_row import NO_ROW
from station.floor.shared.queue import CancelBatch
from station.floor.shared.set_up import WORDS
from station.queries.first_sheet import list_set_up
from station.shop.acts import SetPin, good, question, refuse
from station.shop.codes import Code
from station.shop.facts import Batch, CutFile, Fact, Lot, Mailer, Order, Revision, Worker
from station.shop.file_requests import BackUp, FindLists, ReadList, ReadLists, WriteList
from station.shop.office import KINDS, refuse_elsewhere
from station.shop.rooms import Do, Dropped, FileJob, HandleInput, Input, Number, Took, Typed
from station.shop.views import View
from station.shop.words import say

ALL_CARDS = (("badges", ""), ("part_cards", ""), ("thing_cards", ""), ("button_cards", "all"))
Result = Do | Took | FileJob | None


def handle_input(hand: OfficeHand, given: Input, view: View) -> Result:
    """Takes one input in the office."""
    if hand.doing:
        return intake.refuse_meanwhile(hand)
    if isinstance(given, Dropped):
        return intake.take_dropped(hand, given, view)
    if done := _take_open(hand, given, view):
        return done
    name = name_press(given)
    if (row := read_row(name)) is not None:
        return _open_step(hand, row, view) if is_shown(hand, view) else _open_row(hand, row, view)
    if name.startswith("list_"):
        return _open_listed(hand, name.removeprefix("list_"), view)
    if name in BUTTONS:
        return BUTTONS[name](hand, view)
    if isinstance(given, Code) and given.kind != "button":
        return _scan_thing(hand, given, view)
    is_open = hand.work.ask in QUESTIONS or hand.work.form is not None
    if isinstance(given, Typed | Number) and not is_open:
        return _open_named(hand, given.text, view)
    return None


def _take_open(hand: OfficeHand, given: Input, view: View) -> Result:
    """Takes what the open question or the open form knows; leaves it."""
    if name_press(given) == "put_down":
        return intake.step_back(hand) or form.leave(hand, view)
    if open_one := QUESTIONS.get(hand.work.ask):
        return open_one(hand, given, view)
    if hand.work.form is None:
        return None
    result, office = form.handle_input(hand, given, view), view.office()
    if result and office and hand.station not in office and find_list(hand).kind.kind in KINDS:
        return Took(hand, refuse_elsewhere(office))  # before anything is typed
    return result


def _turn_list(hand: OfficeHand, by: int) -> Took:
    place = (LISTS.index(find_list(hand)) + by) % len(LISTS)
    return _open_list(hand, LISTS[place].kind.kind)


def _open_list(hand: OfficeHand, kind: str) -> Took:
    after = replace(hand, work=OfficeWork(list=kind))
    return Took(after, good(find_list(after).words, say("Touch a row, or add a new one.")))


def _turn_page(hand: OfficeHand, by: int) -> Took:
    page = max(0, hand.work.page + by)
    after = replace(hand, work=replace(hand.work, page=page))
    return Took(after, good(say("Page {page}", page=page + 1)))


def _open_row(hand: OfficeHand, row: int, view: View) -> Took | FileJob:
    """Opens the form of what stands in a row of the list."""
    rows = list_page(hand, view)
    if row >= len(rows):
        return Took(hand, NO_ROW)
    return _open_fact(hand, rows[row], view)


def _open_step(hand: OfficeHand, row: int, view: View) -> Took:
    """Opens what a step of setting the shop up is about: what is begun for it, else its list."""
    steps = [step for step in list_set_up(view) if not step.done]
    if row >= len(steps):
        return Took(hand, NO_ROW)
    step = steps[row]
    if begun := find_begun(step, view):
        return form.open_fact(hand, begun)
    return _open_listed(hand, WORDS[step.name].list, view)


def _open_listed(hand: OfficeHand, kind: str, view: View) -> Took:
    """Opens a list; from the page of what is missing it says what to do there."""
    opened = _open_list(hand, kind)
    left = [WORDS[step.name] for step in list_set_up(view) if not step.done]
    words = next((w for w in left if w.list == kind), None)
    if words is None or not is_shown(hand, view):
        return opened
    return opened._replace(answer=good(words.title, words.do))


def _open_fact(hand: OfficeHand, fact: Fact, view: View) -> Took | FileJob:
    """Opens a fact's form; reads a file that was dropped for the cut file that is opened."""
    opened = form.open_fact(hand, fact)
    if not isinstance(fact, CutFile) or not hand.work.dropped:
        return opened
    work = replace(opened.hand.work, dropped=hand.work.dropped)
    return intake.ask_intake(replace(opened.hand, work=work), view)


def _open_named(hand: OfficeHand, text: str, view: View) -> Took | FileJob:
    """Opens what a number or name means in the open list."""
    of = find_list(hand)
    if found := find_fact(of.kind, text, view):
        return _open_fact(hand, found, view)
    return search.show_matching(hand, text, view) or Took(hand, search.refuse_unknown(of, text))


def _scan_thing(hand: OfficeHand, code: Code, view: View) -> Took | None:
    """Opens the form of what has this card; a traveller is for a new count or an end."""
    for one in LISTS:
        if one.kind.kind == code.kind and (fact := view.get(one.kind, code.number)):
            return form.open_fact(hand, fact)
    if code.kind == "batch" and view.get(Batch, code.number):
        return Took(
            replace(hand, work=OfficeWork(list=hand.work.list, batch=code.number)),
            question(
                say("Batch {batch}", batch=code.number),
                say("Cancel it, correct a count, or leave it."),
            ),
        )
    return None


def _approve_chosen(hand: OfficeHand, view: View) -> Do | Took:
    """Approves the chosen revision, or the newest of the chosen cut file."""
    fact = find_chosen(hand, view)
    if isinstance(fact, Revision):
        return Do(f"cutfile/{fact.cut_file}", ApproveRevision(letter=fact.letter), hand)
    if isinstance(fact, CutFile):
        newest = view.shelf(Revision, fact.id, 50)
        return Do(fact.key, ApproveRevision(letter=newest[-1].letter if newest else ""), hand)
    return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))


def _ask_sheets(hand: OfficeHand, view: View) -> Took:
    fact = find_chosen(hand, view)
    if isinstance(fact, Mailer):
        asked = question(say("How many mailers came?"), say("Count them, enter the number."))
        return Took(_ask(hand, "sheets"), asked)
    if not isinstance(fact, Lot):
        said = say("Neither sheets nor mailers are open")
        return Took(hand, refuse(said, say("Open a lot or a mailer first.")))
    return Took(
        _ask(hand, "sheets"),
        question(say("How many sheets came?"), say("Count them, enter the number.")),
    )


def _ask(hand: OfficeHand, ask: Ask) -> OfficeHand:
    """Opens a question, or closes it."""
    return replace(hand, work=replace(hand.work, ask=ask))


def _take_sheets(hand: OfficeHand, given: Input, view: View) -> Do | Took | None:
    """Takes the number of sheets that were received of the chosen lot, or of mailers."""
    fact = find_chosen(hand, view)
    if not isinstance(given, Number) or not isinstance(fact, Lot | Mailer):
        return None
    if isinstance(fact, Mailer):
        return Do(fact.key, ReceiveMailers(mailers=given.whole or 0), _ask(hand, ""))
    if not given.whole:
        return Took(hand, refuse(say("That is no number of sheets"), say("Type 1 or more.")))
    args = ReceiveLot(material=fact.material, sheets=given.whole)
    return Do(fact.key, args, _ask(hand, ""))


def _set_pin(hand: OfficeHand, view: View) -> Do | Took:
    """Sets a new PIN: the rule asks for it; it is kept nowhere as it is."""
    fact = find_chosen(hand, view)
    if not isinstance(fact, Worker):
        return Took(hand, refuse(say("That is no worker"), say("Open a worker first.")))
    return Do(fact.key, SetPin(), hand)


def _cancel_chosen(hand: OfficeHand, view: View) -> Do | Took:
    """Cancels the chosen order, or the batch whose traveller was scanned."""
    if hand.work.batch:
        after = replace(hand, work=replace(hand.work, batch=""))
        return Do(f"batch/{hand.work.batch}", CancelBatch(), after)
    fact = find_chosen(hand, view)
    if isinstance(fact, Order):
        return Do(fact.key, CancelOrder(), hand)
    return Took(
        hand,
        refuse(
            say("Only an order or a batch is cancelled"),
            say("Open an order, or scan a traveller."),
        ),
    )


def _print_cards(hand: OfficeHand, view: View) -> Took:
    """Prints the chosen thing's card; with nothing chosen, every card of the shop."""
    fact = find_chosen(hand, view)
    if fact is None:
        answer = good(say("Every card of the shop is printed"), say("Cut them out, put them up."))
        return Took(hand, replace(answer, prints=ALL_CARDS))
    answer = good(say("Its card is printed"), say("Cut it out and put it in place."))
    return Took(hand, replace(answer, prints=(("card", fact.key),)))


# --- lists as files, read and written by the station: touch lists them, nothing is typed


def _find_lists(hand: OfficeHand, _view: View) -> FileJob:
    """Finds which CSV files lie in the shop's folder."""
    found = replace(hand.work.found, problems=())
    return FileJob(
        FindLists(), replace(hand, work=replace(hand.work, ask="files", page=0, found=found))
    )


def _choose_file(hand: OfficeHand, given: Input, _view: View) -> Took | FileJob | None:
    """Takes in the file that stands in a row, or all of them together."""
    if name_press(given) == "read_all":
        return FileJob(ReadLists(), hand)
    if name_press(given) == "how_read" and matching.can_ask_again(hand):
        return matching.ask_again(hand)
    if name_press(given) == "save" and hand.work.found.problems:
        read, said = hand.work.found.read, hand.work.columns
        if read and read == said.file:  # as its columns were said
            pairs = tuple(said.matched.items())
            return FileJob(ReadList(file=read, kind=said.kind, matched=pairs), hand)
        return FileJob(ReadList(file=read) if read else ReadLists(), hand)
    row = read_row(name_press(given))
    if row is None:
        return None
    found, place = hand.work.found, hand.work.page * ROWS + row
    if found.problems or place >= len(found.names):
        return Took(hand, refuse(say("There is no file in that row"), say("Touch a file.")))
    return FileJob(ReadList(file=found.names[place]), hand)


def _write_list(hand: OfficeHand, _view: View) -> FileJob:
    return FileJob(WriteList(kind=find_list(hand).kind.kind), hand)


QUESTIONS: Mapping[str, HandleInput] = {
    "release": release.handle_input,
    "sheets": _take_sheets,
    "count": count.handle_input,
    "files": _choose_file,
    "columns": matching.handle_columns,
    "would": matching.handle_would,
    "lines": lines.handle_input,
    "cut": intake.handle_input,
    "unmade": unmade.handle_input,
    "health": health.handle_health,
    "restore": health.handle_restore,
    "search": search.handle_input,
}
BUTTONS: Mapping[str, Callable[[OfficeHand, View], Result]] = {
    "next_kind": lambda hand, _view: _turn_list(hand, 1),
    "back_kind": lambda hand, _view: _turn_list(hand, -1),
    "next_page": lambda hand, _view: _turn_page(hand, 1),
    "back_page": lambda hand, _view: _turn_page(hand, -1),
    "still_missing": open_set_up,
    "not_made": unmade.open_unmade,
    "health": health.open_health,
    "restore": health.find_backups,
    "search": search.ask_search,
    "new": form.open_new,
    "approve": _approve_chosen,
    "release_batch": release.ask_release,
    "cancel_it": _cancel_chosen,
    "receive": _ask_sheets,
    "correct": count.ask_count,
    "new_pin": _set_pin,
    "read_file": intake.ask_intake,
    "print_cards": _print_cards,
    "read_csv": _find_lists,
    "write_csv": _write_list,
    "backup": lambda hand, _view: FileJob(BackUp(), hand),
}
