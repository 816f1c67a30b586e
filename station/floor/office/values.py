"""What a form holds: a field's value as given, as known or as a new fact has it, and its words."""

import dataclasses

from station.floor.office.fields import COLUMNS, DAYS, POINTS, is_time, label, shown, text_of
from station.floor.office.state import called, chosen, form_of, list_of
from station.shop.acts import good
from station.shop.facts import Fact
from station.shop.plain import to_plain
from station.shop.rooms import Hand, Took
from station.shop.views import View
from station.shop.words import clock, dated, say


def given_value(hand: Hand, field: str, value: object, view: View) -> Took:
    """One field's value, still to be saved."""
    filled = hand.with_work(form={**form_of(hand), field: value})
    kind = list_of(hand).kind
    return Took(
        filled,
        good(
            say("{field}: {value}", field=label(field), value=in_words(kind, field, value, view)),
            say("Touch the next field, or save."),
        ),
    )


def value_now(hand: Hand, field: str, view: View) -> object:
    """A field's plain value: as given, else as known, else as a new fact has it."""
    form = form_of(hand)
    if field in form:
        return form[field]
    fact = chosen(hand, view)
    if fact:
        return to_plain(fact)[field]
    default = next(f.default for f in dataclasses.fields(list_of(hand).kind) if f.name == field)
    return "" if default is dataclasses.MISSING else default


def in_words(kind: type[Fact], field: str, value: object, view: View) -> str:
    """A field's value for a person: names for numbers, a time without its seconds."""
    if (kind, field) in COLUMNS:
        return listed(kind, field, value, view)
    if (kind, field) in POINTS and value:
        name = called(POINTS[kind, field], value, view)
        return name if name == value else f"{value} · {name}"
    if (kind, field) in DAYS and is_time(f"{value}T00:00:00"):
        return dated(str(value))
    return timed(shown(value))


def listed(kind: type[Fact], field: str, value: object, view: View) -> str:
    """A list field in one line: ``2 × HC-300, 1 × ST-200``."""
    first = COLUMNS[kind, field][0]
    if not first.points or not isinstance(value, list | tuple):
        return text_of(kind, field, value)
    found = []
    for item in value:
        row = list(item.values()) if isinstance(item, dict) else item
        row = [row] if isinstance(row, str) else row
        name = called(first.points, row[0], view)
        found.append(f"{row[1]} × {name}" if len(row) > 1 else name)
    return ", ".join(found)


def timed(text: str) -> str:
    """A shop time of any year, ``25.11.2026 10:42``; any other text as it is."""
    return f"{dated(text)} {clock(text)}" if is_time(text) else text
