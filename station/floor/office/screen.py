"""What the office shows: a list, or one form; the acts beside it."""

from station.floor.office import asked
from station.floor.office.fields import LISTS, UNTYPED, OfficeList, label, typed_fields
from station.floor.office.form import steps
from station.floor.office.intake_face import being_read, changes_from
from station.floor.office.state import (
    FIELDS,
    ROWS,
    called,
    chosen,
    everything,
    facts_on_page,
    form_of,
    list_of,
    page_of,
)
from station.floor.office.values import in_words, value_now
from station.queries.batches import find_approved
from station.queries.pace import LEAST, find_fit
from station.queries.routers import count_metres_cut
from station.shop.cards import BUTTONS, button
from station.shop.codes import LETTERS, usable
from station.shop.faces import (
    Asked,
    Block,
    Cards,
    Cell,
    Entry,
    Face,
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
    Order,
    Pace,
    Part,
    RackPlace,
    Revision,
    Router,
    Worker,
)
from station.shop.moves import WEAR
from station.shop.plain import field_types, to_plain
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import Say, say

LEAVE = Press(label=say("Leave"), code=button("put_down"))


def screen(hand: Hand, view: View) -> Face:
    """The open list, the form of the chosen row, what is asked, or how far a file is read."""
    if hand.doing:
        return being_read(hand, hand.doing)
    shown = asked.FACES.get(str(hand.work.get("ask", "")))
    if shown:
        return shown(hand, view)
    return _form(hand, view) if "form" in hand.work else _list(hand, view)


def _list(hand: Hand, view: View) -> Face:
    entry = list_of(hand)
    rows = tuple(
        Row(
            title=fact.id,
            note=_cell(fact, entry.shows[0], view),
            code=button(f"row_{n}"),
            shape=fact.shape if isinstance(fact, Part) else None,
            cells=tuple(
                Cell(text=_cell(fact, f, view), tone=_tone(hand, fact, f))
                for f in entry.shows[1:4]
            ),
        )
        for n, fact in enumerate(facts_on_page(hand, view), 1)
    )
    pages = max(1, -(-len(everything(entry.kind, view)) // ROWS))
    heads: tuple[Say | str, ...] = (say("number"), *(label(f) for f in entry.shows[1:4]))
    return Face(
        title=say("Office"),
        where=entry.words,
        side=(_lists(entry), _files(hand)),
        main=(Table(columns=heads, rows=rows, title=_title(hand, entry, view, pages)),),
        presses=_list_presses(pages),
        weights=(60, 0, 40),
    )


def _tone(hand: Hand, fact: Fact, field: str) -> Tone:
    """An open order that is late, a bit or worker out of use: seen at a glance."""
    if isinstance(fact, Order) and field == "due" and fact.shelf and fact.shelf[0] == "open":
        return "attention" if fact.due < hand.now else ""
    return "" if getattr(fact, "active", True) else "quiet"


def _title(hand: Hand, entry: OfficeList, view: View, pages: int) -> Say:
    return say(
        "{list}: {count}, page {page} of {pages}",
        list=entry.words,
        count=len(everything(entry.kind, view)),
        page=page_of(hand) + 1,
        pages=pages,
    )


def _list_presses(pages: int) -> tuple[Press, ...]:
    add = Press(label=say("A new one"), code=button("new"), style="primary", wide=2)
    if pages == 1:
        return (add,)
    return (
        add,
        Press(label=say("Page back"), code=button("back_page")),
        Press(label=say("Next page"), code=button("next_page")),
    )


def _cell(fact: Fact, field: str, view: View) -> str:
    return in_words(type(fact), field, to_plain(fact)[field], view)


def _lists(entry: OfficeList) -> Block:
    """Every list to touch, the open one marked."""
    return Cards(
        title=say("Lists"),
        entries=tuple(
            Entry(
                big=one.words,
                right="●" if one is entry else "",
                code=button(f"list_{one.kind.kind}"),
            )
            for one in LISTS
        ),
    )


def _files(hand: Hand) -> Block:
    """What is done with files and with the whole office."""
    names = {
        "read_csv": say("Read CSV"),
        "write_csv": say("Write CSV"),
        "backup": say("Back up"),
        "correct": say("Correct count"),
        "print_cards": say("All cards"),
    }
    if hand.opened:
        names["lock"] = say("Lock")
    return Cards(
        title="", entries=tuple(Entry(big=words, code=button(n)) for n, words in names.items())
    )


def _form(hand: Hand, view: View) -> Face:
    entry, fact, typed = list_of(hand), chosen(hand, view), form_of(hand)
    first = page_of(hand) * FIELDS
    field = str(hand.work.get("field", ""))
    rows = tuple(
        Row(
            title=label(name),
            code=button(f"row_{n}"),
            selected=name == field,
            cells=(
                Cell(
                    text=in_words(entry.kind, name, value_now(hand, name, view), view),
                    bold=name in typed,
                ),
            ),
        )
        for n, name in enumerate(typed_fields(entry.kind)[first : first + FIELDS], 1)
    )
    number = fact.id if fact else say("new")
    title = say("{kind} {id}", kind=entry.one, id=number)
    return Face(
        title=say("Office"),
        where=entry.words,
        side=_beside(hand, view, fact, field),
        main=(Table(columns=(say("field"), say("value")), rows=rows, title=title),),
        presses=_form_presses(entry, field, saving=bool(typed)),
        weights=(64, 0, 36),
    )


def _form_presses(entry: OfficeList, field: str, *, saving: bool) -> tuple[Press, ...]:
    save = Press(
        label=say("Save"), code=button("save"), wide=2, style="primary" if saving else "off"
    )
    by = (
        (
            Press(label="−", code=button("fewer")),
            Press(label="+", code=button("more")),
        )
        if field and steps(entry.kind, field)
        else ()
    )
    return (save, Press(label=say("Next"), code=button("next_field")), *by, LEAVE)


def _beside(hand: Hand, view: View, fact: Fact | None, field: str) -> tuple[Block, ...]:
    """A keypad for a number, things to choose from, or what can be done with the thing."""
    kind = list_of(hand).kind
    choices = asked.things(kind, field, view)
    if choices:
        return (choices,)
    if field and (field == "id" or field_types(kind).get(field) in (int, float)):
        return (Asked(question=say("{field}", field=label(field)), typed=hand.digits),)
    return _acts(fact, view)


def _acts(fact: Fact | None, view: View) -> tuple[Block, ...]:
    """What can be done with the chosen thing, and what follows from the work."""
    if fact is None:
        return ()
    names: dict[type[Fact], tuple[str, ...]] = {
        CutFile: ("release_batch", "read_file", "approve"),
        Revision: ("approve",),
        Order: ("cancel_it",),
        Lot: ("receive", "correct"),
        Part: ("correct",),
        RackPlace: ("correct",),
        Worker: ("new_pin",),
    }
    entries = [
        Entry(big=_act_words(name, fact), code=button(name)) for name in names.get(type(fact), ())
    ]
    if fact.kind in LETTERS and usable(fact.kind, fact.id):
        entries.append(Entry(big=say("Print its card"), code=button("print_cards")))
    acts = Cards(title=say("Do"), entries=tuple(entries))
    known: tuple[tuple[Text, Text], ...] = tuple(
        (label(name), _cell(fact, name, view))
        for name in sorted(UNTYPED.get(type(fact), ()))
        if name not in ("pin", "digest") and getattr(fact, name)
    )
    known += _of_its_sheets(fact, view) + _worn(fact, view)
    blocks: list[Block] = [acts] if entries else []
    if known:
        blocks.append(Pairs(rows=known, title=say("From the work")))
    if isinstance(fact, CutFile) and (drawn := _sheet_of(fact, view)):
        blocks.append(drawn)
    if isinstance(fact, Revision):
        blocks.append(SheetDrawing(revision=fact, note=say("Drawn from the cut file.")))
        blocks += _against_approved(fact, view)
    return tuple(blocks)


def _of_its_sheets(fact: Fact, view: View) -> tuple[tuple[Text, Text], ...]:
    """A router's own correction as its sheets tell it, or that they can't yet."""
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
        (say("Time over the file's"), say("× {pace}", pace=f"{found.pace:.3f}")),
        (say("Added a sheet"), say("{s} s", s=round(found.extra_s))),
        (say("Spread"), say("± {s} s", s=round(found.spread_s))),
        (say("Told by"), sheets),
    )


def _worn(fact: Fact, view: View) -> tuple[tuple[Text, Text], ...]:
    """The metres that a bit has cut, router by router."""
    if not isinstance(fact, Bit):
        return ()
    held = view.stock(place=f"bit/{fact.id}")
    each = [h for h in held if h.part == WEAR]
    return (
        (say("Cut in all"), say("{metres} m", metres=round(count_metres_cut(view, fact)))),
        *(
            (called(Router, h.batch, view) if h.batch else say("Before"),
             say("{metres} m", metres=round(h.qty / 1000)))
            for h in each
        ),
    )  # fmt: skip


def _sheet_of(cut_file: CutFile, view: View) -> SheetDrawing | None:
    """The sheet of the newest revision: what stands to be approved, or is."""
    newest = next(iter(view.shelf(Revision, cut_file.id, 50)[-1:]), None)
    if newest is None:
        return None
    note = say(
        "Revision {letter}: {n} {n|part|parts} a sheet, {minutes} min.",
        letter=newest.letter,
        n=len(newest.placed),
        minutes=f"{newest.minutes:.1f}",
    )
    return SheetDrawing(revision=newest, note=note)


def _against_approved(fact: Revision, view: View) -> tuple[Block, ...]:
    """What differs from the revision that may be cut now."""
    cut_file = view.get(CutFile, fact.cut_file)
    old = find_approved(view, cut_file) if cut_file else None
    return (changes_from(old, fact, view),) if old and old.letter != fact.letter else ()


def _act_words(name: str, fact: Fact) -> Say:
    if name == "approve" and isinstance(fact, CutFile):
        return say("Approve the newest")
    if name == "cancel_it":
        return say("Cancel this order")
    return say(BUTTONS[name].words)
