"""Says what a form holds: a field's value as given, as known or as a new fact has it."""

import dataclasses
from dataclasses import replace

from station.floor.office.fields import COLUMNS, DAYS, POINTS, is_time, label, shown, text_of
from station.floor.office.lists import find_chosen, find_list, name_fact
from station.floor.office.work import OfficeHand
from station.shop.acts import good
from station.shop.facts import Fact
from station.shop.plain import to_plain
from station.shop.rooms import Took
from station.shop.views import View
from station.shop.words import clock, dated, say


def give_value(hand: OfficeHand, field: str, value: object, view: View) -> Took:
    """Gives a field its value, still to be saved."""
    form = {**(hand.work.form or {}), field: value}
    filled = replace(hand, work=replace(hand.work, form=form))
    kind = find_list(hand).kind
    return Took(
        filled,
        good(
            say("{field}: {value}", field=label(field), value=say_value(kind, field, value, view)),
            say("Touch the next field, or save."),
        ),
    )


def find_value(hand: OfficeHand, field: str, view: View) -> object:
    """Finds a field's plain value: as given, else as known, else as a new fact has it."""
    if hand.work.form and field in hand.work.form:
        return hand.work.form[field]
    fact = find_chosen(hand, view)
    if fact:
        return to_plain(fact)[field]
    default = next(f.default for f in dataclasses.fields(find_list(hand).kind) if f.name == field)
    return "" if default is dataclasses.MISSING else default


def say_value(kind: type[Fact], field: str, value: object, view: View) -> str:
    """Says a field's value for a person: names for numbers, a time without its seconds."""
    if (kind, field) in COLUMNS:
        return say_rows(kind, field, value, view)
    if (kind, field) in POINTS and value:
        name = name_fact(POINTS[kind, field], value, view)
        return name if name == value else f"{value} · {name}"
    if (kind, field) in DAYS and is_time(f"{value}T00:00:00"):
        return dated(str(value))
    return say_time(shown(value))


def say_rows(kind: type[Fact], field: str, value: object, view: View) -> str:
    """Says a list field in one line: ``2 × HC-300, 1 × ST-200``."""
    first = COLUMNS[kind, field][0]
    if not first.points or not isinstance(value, list | tuple):
        return text_of(kind, field, value)
    found = []
    for item in value:
        row = list(item.values()) if isinstance(item, dict) else item
        row = [row] if isinstance(row, str) else row
        name = name_fact(first.points, row[0], view)
        found.append(f"{row[1]} × {name}" if len(row) > 1 else name)
    return ", ".join(found)


def say_time(text: str) -> str:
    """Says a shop time of any year, ``25.11.2026 10:42``; any other text as it is."""
    return f"{dated(text)} {clock(text)}" if is_time(text) else text
