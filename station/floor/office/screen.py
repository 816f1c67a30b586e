"""Shows the office: a list, or one form; the acts beside it."""

from collections.abc import Callable
from datetime import datetime, timedelta

from station.floor.office.count import show_count
from station.floor.office.form import can_step
from station.floor.office.health import show_health, show_restore
from station.floor.office.intake_face import compare_revisions, show_intake, show_progress
from station.floor.office.lines import show_rows
from station.floor.office.lists import (
    FIELDS,
    LEAVE,
    LISTS,
    PAGES,
    ROWS,
    OfficeList,
    count_listed,
    find_chosen,
    find_chosen_field,
    find_list,
    find_value,
    is_cut_off,
    list_page,
    list_shown,
    make_face,
    name_fact,
    offer_things,
    say_one,
    say_value,
)
from station.floor.office.matching import can_ask_again
from station.floor.office.matching_face import show_columns, show_would_be
from station.floor.office.release import ask_sheets, show_release
from station.floor.office.search import HOW
from station.floor.office.set_up import is_shown, press_missing, show_set_up
from station.floor.office.unmade import press_unmade, show_unmade
from station.floor.office.work import OfficeHand
from station.queries.batches import find_approved
from station.queries.pace import LEAST, find_fit
from station.queries.routers import count_metres_cut
from station.queries.settings import find_shop
from station.queries.spoiled import list_spoiled_by_place
from station.queries.stock import count_in_store
from station.queries.supplies import count_left
from station.shop.cards import BUTTONS, button
from station.shop.codes import has_code
from station.shop.faces import (
    Asked,
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Hint,
    Letters,
    Listing,
    Pairs,
    Press,
    Row,
    SheetDrawing,
    Table,
    Text,
    Tone,
)
from station.shop.facts import (
    Bit,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Order,
    Pace,
    Part,
    RackPlace,
    Reason,
    Revision,
    Router,
    Shop,
    Worker,
)
from station.shop.field_texts import write_value
from station.shop.fields import FactField, fields_by_name, typed_fields
from station.shop.first_facts import say_reason
from station.shop.lengths import is_length, write_figure
from station.shop.moves import WEAR
from station.shop.plain import lay
from station.shop.views import View
from station.shop.words import Say, figure, metres, moment, say, say_more

SPOILED_LATELY = timedelta(days=14)
SPOILED_ROWS = 4
LONG = 32  # characters of a value in a form
SEARCHED = Letters(question=say("Search"), note=HOW)
LEAVE_FORM = Press(label=say("Leave"), code=button("put_down"))


def screen(hand: OfficeHand, view: View) -> Face:
    """Shows the open list, the form of a row, what is asked, or how far a file is read."""
    if hand.doing:
        return show_progress(hand, hand.doing)
    if show := QUESTIONS.get(hand.work.ask):
        return show(hand, view)
    if is_shown(hand, view):
        return show_set_up(hand, view)
    return _show_list(hand, view) if hand.work.form is None else _show_form(hand, view)


def _show_list(hand: OfficeHand, view: View) -> Face:
    of = find_list(hand)
    first, *others = (fields_by_name(of.kind)[name] for name in of.shows[:4])
    rows = tuple(
        Row(
            title=fact.id,
            note=_say_first(fact, first, view),
            code=button(f"row_{n}"),
            cells=tuple(
                Cell(text=_say_field(fact, field, view), tone=_choose_tone(hand, fact, field))
                for field in others
            ),
        )
        for n, fact in enumerate(list_page(hand, view), 1)
    )
    pages = max(1, -(-len(list_shown(hand, view)) // count_listed(hand)))
    heads = (say("number"), *(field.label for field in others))
    return Face(
        title=say("Office"),
        where=of.words,
        side=(SEARCHED if hand.work.ask == "search" else _list_lists(of),),
        main=(
            Table(columns=heads, rows=rows, title=_say_title(hand, of, view, pages), thin=True),
        ),
        presses=(
            *_list_presses(hand, pages),
            *press_missing(view),
            *press_unmade(view),
            *_press_lock(hand),
        ),
        weights=(60, 0, 40),
    )


def _choose_tone(hand: OfficeHand, fact: Fact, field: FactField) -> Tone:
    """Marks an open order that is late, a bit or worker out of use: seen at a glance."""
    if isinstance(fact, Order) and field.name == "due" and fact.shelf and fact.shelf[0] == "open":
        return "attention" if fact.due < hand.now else ""
    return "" if fact.in_use else "quiet"


def _say_title(hand: OfficeHand, of: OfficeList, view: View, pages: int) -> Say:
    """Says how many there are in a list, or that there are more than the office looks through."""
    words = say("{list}: {count}, page {page} of {pages}")
    if hand.work.search:
        words = say("{list} with “{text}”: {count}, page {page} of {pages}")
    elif is_cut_off(of.kind, view):
        words = say("{list}: {count} and more, page {page} of {pages}")
    values = {
        "list": of.words, "count": len(list_shown(hand, view)), "page": hand.work.page + 1,
        "pages": pages, "text": hand.work.search,
    }  # fmt: skip
    return words._replace(values=values)


def _list_presses(hand: OfficeHand, pages: int) -> tuple[Press, ...]:
    """Lists what is done with a list; of the shop there is one, and no other is made."""
    if find_list(hand).kind is Shop:
        return ()
    add = Press(label=say("A new one"), code=button("new"), style="primary", wide=2)
    find = Press(label=say("Search"), code=button("search"))
    if pages == 1:
        return (add, find)
    return (
        add,
        find,
        Press(label=say("Page back"), code=button("back_page")),
        Press(label=say("Next page"), code=button("next_page")),
    )


def _press_lock(hand: OfficeHand) -> tuple[Press, ...]:
    """Offers to lock the office while a supervisor has opened it."""
    return (Press(label=say("Lock"), code=button("lock")),) if hand.opened else ()


def _say_first(fact: Fact, field: FactField, view: View) -> Text:
    """Says what stands beside a number; of what is retired, that it is."""
    words = _say_field(fact, field, view)
    if field.of is bool:  # a yes beside a number says nothing
        words = field.label if getattr(fact, field.name) else ""
    if fact.in_use:
        return words
    return say("retired · {words}", words=words) if words else say("retired")


def _say_field(fact: Fact, field: FactField, view: View) -> Text:
    if isinstance(fact, Reason) and field.name == "words":
        return say_reason(fact)
    return say_value(field, lay(getattr(fact, field.name)), view)


def _list_lists(of: OfficeList) -> Block:
    """Lists every list to touch, the open one marked; then what is done with files."""
    lists = (
        Entry(big=one.words, chosen=one is of, code=button(f"list_{one.kind.kind}"))
        for one in LISTS
    )
    names = {
        "read_csv": say("Read CSV"),
        "write_csv": say("Write CSV"),
        "correct": say("Correct count"),
        "print_cards": say("All cards"),
        "health": say("Shop's health"),
    }
    files = (Entry(big=words, code=button(name)) for name, words in names.items())
    return Cards(title=say("Lists"), entries=(*lists, *files))


def _show_form(hand: OfficeHand, view: View) -> Face:
    of, fact, typed = find_list(hand), find_chosen(hand, view), hand.work.form or {}
    first, chosen = hand.work.page * FIELDS, find_chosen_field(hand)
    rows = tuple(
        Row(
            title=field.label,
            code=button(f"row_{n}"),
            selected=field == chosen,
            known=_write_known(hand, field, view) if field == chosen else None,
            cells=(_show_value(hand, field, view, bold=field.name in typed),),
        )
        for n, field in enumerate(typed_fields(of.kind)[first : first + FIELDS], 1)
    )
    title = say_one(of.one, fact.id if fact else say("new"))
    if (pages := -(-len(typed_fields(of.kind)) // FIELDS)) > 1:
        title = say("{thing}, page {page} of {pages}", thing=title, page=hand.work.page + 1,
                    pages=pages)  # fmt: skip
    return Face(
        title=say("Office"),
        where=of.words,
        side=_show_beside(hand, view, fact),
        main=(Table(columns=(say("field"), say("value")), rows=rows, title=title),),
        presses=_list_form_presses(chosen, saving=bool(typed)),
        weights=(50, 0, 50),
    )


def _show_value(hand: OfficeHand, field: FactField, view: View, *, bold: bool) -> Cell:
    """Shows what stands in a field; of an empty one of a new thing, whether it may stay so."""
    text = _shorten(say_value(field, find_value(hand, field, view), view))
    if text or find_chosen(hand, view):
        return Cell(text=text, bold=bold)
    must = field.must and not field.about.may_be_empty
    return Cell(text=say("to be said") if must else say("may stay empty"), tone="quiet")


def _shorten(text: Text) -> Text:
    """Leaves out the end of a long text: it stands whole where the field is edited."""
    long = isinstance(text, str) and len(text) > LONG
    return f"{text[:LONG].rstrip()}…" if long and isinstance(text, str) else text


def _write_known(hand: OfficeHand, field: FactField, view: View) -> str:
    """Writes what stands in a field as it is typed."""
    text = write_value(field, find_value(hand, field, view))
    return write_figure(text) if field.of is float else text


def _list_form_presses(field: FactField | None, *, saving: bool) -> tuple[Press, ...]:
    save = Press(
        label=say("Save"), code=button("save"), wide=2, style="primary" if saving else "off"
    )
    style = "plain" if field and can_step(field) else "off"  # a key never changes its place
    return (
        save,
        Press(label=say("Next field"), code=button("next_field")),
        Press(label="−", code=button("fewer"), style=style),
        Press(label="+", code=button("more"), style=style),
        LEAVE_FORM,
    )


def _show_beside(hand: OfficeHand, view: View, fact: Fact | None) -> tuple[Block, ...]:
    """Shows a keypad for a number, things to choose from, or what can be done with the thing."""
    field = find_chosen_field(hand)
    if field and (things := offer_things(field, view)):
        return (things,)
    if field is None:
        return _show_acts(fact, view, hand.now)
    fractions = find_shop(view).fractions and is_length(field.about.unit)
    if field.of in (int, float) and not fractions:  # a number has letters, a fraction its stroke
        asked = Asked(question=say("{field}", field=field.label), typed=hand.digits)
        told = field.about.help
        return (Hint(title=say("What it means"), note=told), asked) if told else (asked,)
    example = say("Example: {text}", text=moment("2026-11-26T14:00"))
    note = example if field.about.written == "time" else Say()
    return (Letters(question=say("{field}", field=field.label), note=note),)


def _show_acts(fact: Fact | None, view: View, now: str) -> tuple[Block, ...]:
    """Shows what can be done with the chosen thing, and what follows from the work."""
    if fact is None:
        return ()
    names: dict[type[Fact], tuple[str, ...]] = {
        CutFile: ("release_batch", "read_file", "approve"),
        Revision: ("approve",),
        Order: ("cancel_it",),
        Lot: ("receive", "correct"),
        Mailer: ("receive",),
        Part: ("correct",),
        RackPlace: ("correct",),
        Worker: ("new_pin",),
    }
    done = isinstance(fact, Order) and fact.state in ("cancelled", "shipped")
    offered = () if done else names.get(type(fact), ())
    entries = [Entry(big=_name_act(name, fact), code=button(name)) for name in offered]
    if has_code(fact.kind, fact.id):
        entries.append(Entry(big=say("Print its card"), code=button("print_cards")))
    acts = Cards(title=say("Do"), entries=tuple(entries))
    known: tuple[tuple[Text, Text], ...] = tuple(
        (field.label, _say_field(fact, field, view))
        for name, field in sorted(fields_by_name(type(fact)).items())
        if not field.about.typed and getattr(fact, name)
    )
    known += _tell_pace(fact, view) + _tell_worn(fact, view) + _tell_stored(fact, view)
    blocks: list[Block] = [acts] if entries else []
    if known:
        blocks.append(Pairs(rows=known, title=say("From the work")))
    if isinstance(fact, Router):
        blocks.append(_list_spoiled(fact, view, now))
    if isinstance(fact, CutFile) and (newest := _find_newest(fact, view)):
        blocks += (_draw_sheet(newest), *_compare_approved(newest, view))
    if isinstance(fact, Revision):
        blocks.append(SheetDrawing(revision=fact, note=say("Drawn from the cut file.")))
        blocks += _compare_approved(fact, view)
    return tuple(blocks)


def _tell_stored(fact: Fact, view: View) -> tuple[tuple[Text, Text], ...]:
    """Tells how many sheets of a lot are in the store, or how many mailers are left."""
    if isinstance(fact, Mailer):
        return ((say("By the book"), say("{n}", n=count_left(view, fact.id))),)
    if not isinstance(fact, Lot):
        return ()
    n = count_in_store(view, fact.id)
    return ((say("In the store"), say("{n} {n|sheet|sheets}", n=n)),)


def _tell_pace(fact: Fact, view: View) -> tuple[tuple[Text, Text], ...]:
    """Tells a router's own correction as its sheets tell it, or that they can't yet."""
    if not isinstance(fact, Router):
        return ()
    kept, found = view.get(Pace, fact.id), find_fit(view, fact.id)
    if found is None:
        so_far = say(
            "{n} of {least} {least|sheet|sheets}", n=len(kept.sheets) if kept else 0, least=LEAST
        )
        told: Text = say("can't tell yet: {so_far}; as typed till then", so_far=so_far)
        return ((say("Time over the file's"), told),)
    sheets = say("{n} {n|sheet|sheets}", n=found.count)
    if found.left_out:
        sheets = say("{n}, {m} left out", n=sheets, m=found.left_out)
    return (
        (say("Time over the file's"), say("× {pace}", pace=figure(found.pace, 3))),
        (say("Added a sheet"), say("{s} s", s=round(found.extra_s))),
        (say("Spread"), say("± {s} s", s=round(found.spread_s))),
        (say("Told by"), sheets),
    )


def _list_spoiled(router: Router, view: View, now: str) -> Listing:
    """Lists what was not good off a router lately, by place on the sheet; nobody's name."""
    since = (datetime.fromisoformat(now) - SPOILED_LATELY).isoformat() if now else ""
    found = list_spoiled_by_place(view, router.id, since)
    rows = tuple(
        (
            (
                Cell(text=say("{n}", n=one.pieces), bold=True),
                Cell(text=_name_reason(one.reason, view)),
                Cell(text=one.place or say("nobody said where"), tone="quiet"),
            ),
            "",
        )
        for one in found[:SPOILED_ROWS]
    )
    title = say("Not good off it in {n} days", n=SPOILED_LATELY.days)
    return Listing(
        title=say_more(title, len(found) - SPOILED_ROWS),
        rows=rows,
        empty=say("Nothing was counted."),
    )


def _name_reason(number: str, view: View) -> Text:
    reason = view.get(Reason, number)
    return say_reason(reason) if reason else number


def _tell_worn(fact: Fact, view: View) -> tuple[tuple[Text, Text], ...]:
    """Tells the metres that a bit has cut, router by router."""
    if not isinstance(fact, Bit):
        return ()
    held = view.stock(place=f"bit/{fact.id}")
    each = [h for h in held if h.part == WEAR]
    return (
        (say("Cut in all"), say("{metres} m", metres=metres(count_metres_cut(view, fact)))),
        *(
            (name_fact(Router, h.batch, view) if h.batch else say("Before"),
             say("{metres} m", metres=metres(h.qty / 1000)))
            for h in each
        ),
    )  # fmt: skip


def _find_newest(cut_file: CutFile, view: View) -> Revision | None:
    """Finds the newest revision: what stands to be approved, or is."""
    return next(iter(view.shelf(Revision, cut_file.id, 50)[-1:]), None)


def _draw_sheet(newest: Revision) -> SheetDrawing:
    """Draws the sheet of a revision."""
    note = say(
        "Revision {letter}: {n} {n|part|parts} a sheet, {minutes} min.",
        letter=newest.letter,
        n=len(newest.placed),
        minutes=figure(newest.minutes, 1),
    )
    return SheetDrawing(revision=newest, note=note)


def _compare_approved(fact: Revision, view: View) -> tuple[Block, ...]:
    """Compares with the revision that may be cut now."""
    cut_file = view.get(CutFile, fact.cut_file)
    old = find_approved(view, cut_file) if cut_file else None
    return (compare_revisions(old, fact, view),) if old and old.letter != fact.letter else ()


def _name_act(name: str, fact: Fact) -> Say:
    if name == "approve" and isinstance(fact, CutFile):
        return say("Approve the newest")
    if name == "cancel_it":
        return say("Cancel this order")
    if name == "receive" and isinstance(fact, Mailer):
        return say("Receive mailers")
    return say(BUTTONS[name].words)


# --- what is asked

LINES = 14  # problems of a file on the screen


def _show_sheets(hand: OfficeHand, view: View) -> Face:
    fact = find_chosen(hand, view)
    head = Hint(title=say_one(find_list(hand).one, fact.id if fact else ""))
    if isinstance(fact, Mailer):
        asked = Asked(question=say("How many mailers came?"), typed=hand.digits)
        return make_face(hand, head, asked)
    return make_face(hand, head, ask_sheets(hand))


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
    again = Press(label=say("Read again"), code=button("save"), style="primary", wide=2)
    hint = Hint(title=title, note=note, tone="stop")
    columns = Press(label=say("Change its columns"), code=button("how_read"))
    presses = (again, *((columns,) if can_ask_again(hand) else ()), LEAVE)
    return make_face(hand, hint, Listing(title="", rows=rows), presses=presses)


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
        "A file tells by its first line which list it is, or you say so. What it changes is "
        "shown before it counts."
    )
    title = say("Which file?") if found.names else say("No CSV file lies there")
    every = Press(label=say("All lists together"), code=button("read_all"), style="primary")
    turns = PAGES if len(found.names) > ROWS else ()
    again = Press(label=say("Look again"), code=button("read_csv"))
    presses = (*((every,) if len(found.names) > 1 else ()), again, *turns, LEAVE)
    return make_face(hand, Hint(title=title, note=note), table, presses=presses)


QUESTIONS: dict[str, Callable[[OfficeHand, View], Face]] = {
    "release": show_release,
    "sheets": _show_sheets,
    "count": show_count,
    "files": _show_files,
    "columns": show_columns,
    "would": show_would_be,
    "lines": show_rows,
    "cut": show_intake,
    "unmade": show_unmade,
    "health": show_health,
    "restore": show_restore,
    "search": _show_list,
}
