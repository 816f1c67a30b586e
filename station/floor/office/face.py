"""What the office shows: a list, or one form; the acts beside it."""

from station.floor.office import dialogue
from station.floor.office.fields import LISTS, OfficeList, from_text, label, shown, typed_fields
from station.shop.cards import button
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
from station.shop.facts import CutFile, Fact, Lot, Order, Part, Revision, Router, Worker
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import Say, say


def face(hand: Hand, view: View) -> Face:
    """The open list, or the form of the chosen row."""
    entry = dialogue.list_of(hand)
    if hand.work.get("ask"):
        return _asking(hand, view, entry)
    if "form" in hand.work:
        return _form(hand, view, entry)
    return _list(hand, view, entry)


def _list(hand: Hand, view: View, entry: OfficeList) -> Face:
    rows = tuple(
        Row(
            title=fact.id,
            note=_first(entry, fact),
            code=button(f"row_{n}"),
            shape=fact.shape if isinstance(fact, Part) else None,
            cells=tuple(Cell(text=timed(shown(getattr(fact, f)))) for f in entry.shows[1:4]),
        )
        for n, fact in enumerate(dialogue.facts_on_page(hand, view), 1)
    )
    count = len(dialogue.everything(entry.kind, view))
    pages = max(1, -(-count // dialogue.ROWS))
    title = say(
        "{list}: {count}, page {page} of {pages}",
        list=entry.words,
        count=count,
        page=dialogue.page_of(hand) + 1,
        pages=pages,
    )
    heads: tuple[Say | str, ...] = (say("number"), *(label(f) for f in entry.shows[1:4]))
    presses = [Press(label=say("A new one"), code=button("new"), style="primary", wide=2)]
    if pages > 1:
        presses += [
            Press(label=say("Page back"), code=button("back_page")),
            Press(label=say("Next page"), code=button("next_page")),
        ]
    return Face(
        title=say("Office"),
        where=entry.words,
        side=_lists(entry),
        main=(Table(columns=heads, rows=rows, title=title),),
        presses=tuple(presses),
    )


def _first(entry: OfficeList, fact: Fact) -> str:
    return timed(shown(getattr(fact, entry.shows[0])))


def timed(text: str) -> str:
    """A shop time as people write it, ``2026-11-25 10:42``; any other text as it is."""
    return f"{text[:10]} {text[11:16]}" if text[4:5] == "-" and text[10:11] == "T" else text


def _lists(entry: OfficeList) -> tuple[Block, ...]:
    """The lists, the open one marked, and the two buttons that turn them."""
    rows = tuple(
        ((Cell(text=one.words, bold=one is entry, tone="good" if one is entry else ""),), "")
        for one in LISTS
    )
    turn = Cards(
        title="",
        entries=(
            Entry(big=say("Next list"), code=button("next_kind")),
            Entry(big=say("Back a list"), code=button("back_kind")),
            Entry(big=say("Print all cards"), code=button("print_cards")),
        ),
    )
    return (turn, Listing(title=say("Lists"), rows=rows))


def _form(hand: Hand, view: View, entry: OfficeList) -> Face:
    fact, typed = dialogue.chosen(hand, view), dialogue.form_of(hand)
    names = typed_fields(entry.kind)
    first = dialogue.page_of(hand) * dialogue.FIELDS
    rows = tuple(
        Row(
            title=label(name),
            code=button(f"row_{n}"),
            selected=name == hand.work.get("field"),
            cells=(Cell(text=_value(entry, fact, typed, name), bold=name in typed),),
        )
        for n, name in enumerate(names[first : first + dialogue.FIELDS], 1)
    )
    title: Say = say("{kind} {id}", kind=entry.words, id=fact.id if fact else say("new"))
    return Face(
        title=say("Office"),
        where=entry.words,
        side=_acts(fact),
        main=(Table(columns=(say("field"), say("value")), rows=rows, title=title),),
        presses=(
            Press(
                label=say("Save"), code=button("save"), wide=2, style="primary" if typed else "off"
            ),
            Press(label=say("Next field"), code=button("next_field")),
            Press(label=say("Leave it"), code=button("put_down")),
        ),
    )


def _value(entry: OfficeList, fact: Fact | None, typed: dict[str, str], name: str) -> str:
    if name in typed:
        return shown(from_text(entry.kind, name, typed[name]))
    return shown(getattr(fact, name)) if fact else ""


def _acts(fact: Fact | None) -> tuple[Block, ...]:
    """What can be done with the chosen thing, as cards to touch."""
    names: list[tuple[str, Say]] = []
    if isinstance(fact, CutFile):
        names = [("release_batch", say("Release and print")), ("approve", say("Approve newest"))]
    if isinstance(fact, Revision):
        names = [("approve", say("Approve this revision"))]
    if isinstance(fact, Order):
        names = [("cancel_it", say("Cancel this order"))]
    if isinstance(fact, Worker) and fact.supervisor:
        names = [("new_pin", say("A new PIN"))]
    if isinstance(fact, Lot):
        names = [("receive", say("Receive sheets"))]
    if fact is not None:
        names.append(("print_cards", say("Print its card")))
    acts = Cards(
        title=say("Do"),
        entries=tuple(Entry(big=words, code=button(name)) for name, words in names),
    )
    if isinstance(fact, Revision):
        return (acts, SheetDrawing(revision=fact, note=say("Drawn from the cut file.")))
    return (acts,)


def _asking(hand: Hand, view: View, entry: OfficeList) -> Face:
    fact = dialogue.chosen(hand, view)
    title = say("{kind} {id}", kind=entry.words, id=fact.id if fact else "")
    leave = Press(label=say("Leave it"), code=button("put_down"))
    if hand.work.get("ask") == "sheets":
        return Face(
            title=say("Office"),
            where=entry.words,
            presses=(leave,),
            main=(
                Hint(title=title),
                Asked(
                    question=say("How many sheets?"),
                    typed=hand.digits,
                    unit=say("{n|sheet|sheets}", n=hand.digits),
                ),
            ),
        )
    rows = tuple(
        Row(title=r.name, note=r.bed, code=button(f"row_{n}"))
        for n, r in enumerate(view.shelf(Router, "all", 9), 1)
    )
    return Face(
        title=say("Office"),
        where=entry.words,
        presses=(leave,),
        main=(Table(columns=(say("Which router?"),), rows=rows, title=title),),
    )
