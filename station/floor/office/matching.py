"""Which column of a shop's own file stands for which field of a list: proposed, said, kept.

What a file of other columns would bring is shown before any of it counts.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from station.floor.office.lists import LISTS, name_press, read_row, say_value
from station.floor.office.work import ColumnsAsked, OfficeHand
from station.floor.shared.no_row import NO_ROW
from station.shop.acts import good, question, refuse
from station.shop.facts import Fact, Matching
from station.shop.fields import FactField, typed_fields
from station.shop.file_requests import ReadList, ReadLists
from station.shop.plain import Plain, to_plain
from station.shop.rooms import FileJob, Input, Took
from station.shop.views import View
from station.shop.words import Say, say, together

ROWS = 7  # of a page, each large enough to touch
NAMES = ("name", "words")  # of a new thing: either stands for the other where it has but one
TOLD = 200  # things of a file that are told one by one
SHOWN = 6  # fields of a thing that are told
CHOOSE = say("Touch a field, then its column. Then go on.")
KINDS = {one.kind.kind: one.kind for one in LISTS}
# How columns are called elsewhere, in small letters without signs: common practice, no source.
# A field of one list stands as "order.due", one of every list by its name alone.
CALLED: Mapping[str, str] = {
    "id": "id number no nr nummer",
    "name": "name title bezeichnung",
    "words": "description text beschreibung",
    "price": "price unitprice preis einzelpreis",
    "length_mm": "length länge",
    "width_mm": "width breite",
    "thickness_mm": "thickness dicke stärke",
    "mass_g": "weight mass gewicht",
    "mark": "minimum min mindestbestand",
    "order.id": "order orderid orderno ordernumber ordernr salesno bestellnummer bestellnr "
    "auftrag auftragsnummer auftragsnr",
    "order.due": "due duedate shipby shipdate deliverby versandbis liefertermin lieferdatum",
    "order.lines.0": "product sku article item itemno artikel artikelnummer artikelnr produkt",
    "order.lines.1": "quantity qty count pieces menge anzahl stück",
    "product.parts.0": "part component teil",
    "product.parts.1": "quantity qty count menge anzahl stück",
    "part.id": "partno partnumber teilenummer",
}


@dataclass(frozen=True, kw_only=True)
class Slot:
    """Tells what a column can stand for: a field, or a column of one that is a list."""

    key: str  # "due", "lines.0"
    label: Say
    field: FactField


def list_slots(kind: type[Fact]) -> tuple[Slot, ...]:
    """Lists what the columns of a file can stand for, the number first."""
    return tuple(slot for field in typed_fields(kind) for slot in _list_slots_of(field))


def _list_slots_of(field: FactField) -> Iterable[Slot]:
    if not field.columns:
        yield Slot(key=field.name, label=field.label, field=field)
    for n, column in enumerate(field.columns):
        if column.about.typed:
            label = say("{field}: {column}", field=field.label, column=column.label)
            yield Slot(key=f"{field.name}.{n}", label=label, field=column)


def propose_matched(kind: type[Fact], header: Iterable[str]) -> dict[str, str]:
    """Proposes the column of each field, by what columns are commonly called."""
    left = {_tidy(name): name for name in header if name}
    found: dict[str, str] = {}
    for slot in list_slots(kind):
        names = (slot.key, slot.field.name_column("mm"), slot.field.name_column("inch"))
        called = f"{CALLED.get(f'{kind.kind}.{slot.key}', '')} {CALLED.get(slot.key, '')}".split()
        alike = (name for name in (*map(_tidy, names), *called) if name in left)
        if name := next(alike, ""):
            found[slot.key] = left.pop(name)
    return found


def _tidy(name: str) -> str:
    return "".join(c for c in name.casefold() if c.isalnum())


def guess_kind(header: Iterable[str]) -> str:
    """Guesses which list a file's columns are of: the one that finds most of them; "": none."""
    names = tuple(header)
    found = {kind: len(propose_matched(of, names)) for kind, of in KINDS.items()}
    most = max(found.values())
    best = [kind for kind, count in found.items() if count == most]
    return best[0] if most > 1 and len(best) == 1 else ""


def find_kept(view: View, header: Iterable[str]) -> Matching | None:
    """Finds what was said of a file of such columns before; None: nothing that is all there."""
    names = {*header}
    kept = (m for m in view.shelf(Matching, "all") if {name for _, name in m.columns} <= names)
    return next(kept, None)


def ask_columns(hand: OfficeHand, asked: ColumnsAsked) -> Took:
    """Asks which column of a file is which; which list it is, where nothing tells."""
    if not asked.kind:
        said, do = say("Which list is {file}?", file=asked.file), say("Touch its list.")
    else:
        said, do = say("Which column is which in {file}?", file=asked.file), CHOOSE
    after = replace(hand, work=replace(hand.work, ask="columns", columns=asked, page=0))
    return Took(after, question(said, do))


def handle_columns(hand: OfficeHand, given: Input, _view: View) -> Took | FileJob | None:
    """Takes the list that a file is of, then the column of each field."""
    asked, name = hand.work.columns, name_press(given)
    if (kind := name.removeprefix("list_")) != name and kind in KINDS:
        matched = propose_matched(KINDS[kind], asked.header)
        return ask_columns(hand, replace(asked, kind=kind, matched=matched, slot=""))
    if name == "save" and asked.kind:
        return _go_on(hand)
    row = read_row(name)
    if row is None or not asked.kind:
        return None
    place = hand.work.page * ROWS + row
    return _choose_column(hand, place) if asked.slot else _choose_slot(hand, place)


def _choose_slot(hand: OfficeHand, place: int) -> Took:
    """Chooses the field whose column is to be said."""
    asked = hand.work.columns
    slots = list_slots(KINDS[asked.kind])
    if place >= len(slots):
        return Took(hand, NO_ROW)
    said = say("{field}: which column is it?", field=slots[place].label)
    return Took(
        _hold(hand, replace(asked, slot=slots[place].key)), question(said, say("Touch it."))
    )


def _choose_column(hand: OfficeHand, place: int) -> Took:
    """Says which column a field is in; the first row says that it is in none."""
    asked = hand.work.columns
    if place > len(asked.header):
        return Took(hand, NO_ROW)
    column = asked.header[place - 1] if place else ""
    rest = {slot: of for slot, of in asked.matched.items() if of != column and slot != asked.slot}
    matched = {**rest, asked.slot: column} if column else rest
    slots = list_slots(KINDS[asked.kind])
    at = next(n for n, s in enumerate(slots) if s.key == asked.slot)
    said = say("{field}: {value}", field=slots[at].label, value=column or say("in no column"))
    after = _hold(hand, replace(asked, matched=matched, slot=""), page=at // ROWS)
    return Took(after, good(said, CHOOSE))


def _go_on(hand: OfficeHand) -> Took | FileJob:
    asked = hand.work.columns
    if not asked.matched:
        return Took(hand, refuse(say("No column is said yet"), CHOOSE))
    pairs = tuple(asked.matched.items())
    return FileJob(ReadList(file=asked.file, kind=asked.kind, matched=pairs), hand)


def _hold(hand: OfficeHand, asked: ColumnsAsked, *, page: int = 0) -> OfficeHand:
    return replace(hand, work=replace(hand.work, columns=asked, page=page))


def can_ask_again(hand: OfficeHand) -> bool:
    """Tells whether the columns of the file that has problems were said on the screen."""
    asked = hand.work.columns
    return bool(asked.kind and asked.header) and asked.file == hand.work.found.read


def ask_again(hand: OfficeHand) -> Took:
    """Goes back to the columns of a file that has problems, as they were said."""
    found = replace(hand.work.found, problems=())
    after = replace(hand, work=replace(hand.work, found=found))
    return ask_columns(after, replace(hand.work.columns, slot="", seen="", would=()))


# --- what would happen


def handle_would(hand: OfficeHand, given: Input, _view: View) -> FileJob | None:
    """Takes in what was shown, once it is said that it is right."""
    asked = hand.work.columns
    if name_press(given) != "save":
        return None
    if not asked.file:
        return FileJob(ReadLists(seen=asked.seen), hand)
    pairs = tuple(asked.matched.items())
    request = ReadList(file=asked.file, kind=asked.kind, matched=pairs, seen=asked.seen)
    return FileJob(request, hand)


def show_would(hand: OfficeHand, asked: ColumnsAsked, told: "WouldBe") -> Took:
    """Shows what a file would change; nothing of it counts yet."""
    held = replace(asked, would=told.lines)
    after = replace(hand, work=replace(hand.work, ask="would", columns=held, page=0))
    said = say("{new} new, {changed} changed, {same} as they are", new=told.new,
               changed=told.changed, same=told.same)  # fmt: skip
    return Took(
        after, question(said, say("Nothing is taken in yet. Look it over, then take it in."))
    )


@dataclass(frozen=True, kw_only=True)
class WouldBe:
    """Holds what taking lists in would do: how many are new or change, and each in a line."""

    new: int = 0
    changed: int = 0
    same: int = 0
    lines: tuple[Say, ...] = ()


def find_would_be(view: View, lists: Iterable[tuple[str, Iterable[Mapping[str, Any]]]]) -> WouldBe:
    """Finds what taking lists in would do: each as its kind and its plain values."""
    new, changed, same, lines = 0, 0, 0, list[Say]()
    for kind, values in lists:
        for value in values:
            before = view.get(KINDS[kind], str(value.get("id", "")))
            line = _say_new(kind, value, view) if before is None else None
            line = line or (_say_changed(to_plain(before), kind, value, view) if before else None)
            new, changed = new + (before is None), changed + bool(before and line)
            same += line is None
            if line and len(lines) < TOLD:
                lines.append(line)
    return WouldBe(new=new, changed=changed, same=same, lines=tuple(lines))


def _say_new(kind: str, value: Mapping[str, Any], view: View) -> Say:
    fields = [f for f in typed_fields(KINDS[kind]) if f.name != "id" and value.get(f.name)]
    what = together([_say_field(f, value[f.name], view) for f in fields[:SHOWN]])
    return say("new: {id}, {what}", id=str(value.get("id", "")), what=what)


def _say_changed(before: Plain, kind: str, value: Mapping[str, Any], view: View) -> Say | None:
    changes = [
        _say_change(f, before[f.name], value[f.name], view)
        for f in typed_fields(KINDS[kind])
        if f.name in value and before[f.name] != value[f.name]
    ]
    if not changes:
        return None
    return say("changed: {id}, {what}", id=str(value["id"]), what=together(changes[:SHOWN]))


def _say_change(field: FactField, before: object, now: object, view: View) -> Say:
    was = say_value(field, before, view) or "–"
    return say("{field} from {before} to {now}", field=field.label, before=was,
               now=say_value(field, now, view))  # fmt: skip


def _say_field(field: FactField, value: object, view: View) -> Say:
    return say("{field} {value}", field=field.label, value=say_value(field, value, view))
