"""Turns what a field holds into text and back, as a form takes it and a file keeps it.

A field that is a list is rows of its columns: ``014 x 2; 021 x 1`` in one cell. A text that does
not fit its field stays as it is: what is wrong with it is told where a fact is made.
"""

import re
from collections.abc import Mapping

from station.shop import lengths
from station.shop.fields import FactField
from station.shop.times import is_time

Rows = tuple[tuple[object, ...], ...]  # of a field that is a list

_BETWEEN = re.compile(r"\s+[x×]\s+")  # the columns of a row
_YES = {"yes": True, "no": False, "1": True, "0": False}


def read_value(field: FactField, text: str, units: str = "") -> object:
    """Reads the plain value that a text stands for; a length in `units`, or the shop's."""
    if field.columns:
        return _read_rows(field, text)
    if field.about.written == "time":
        return read_time(text)
    if field.about.written == "day":
        return read_day(text)
    return read_scalar(field.of, text, field.about.unit, units)


def read_scalar(of: type, text: str, unit: str = "", units: str = "") -> object:
    """Reads a whole number, a number, yes or no, or a text; a length in `units` or the shop's."""
    if of is float and lengths.is_length(unit):
        found = lengths.read(text, unit, units)
        return text if found is None else found
    try:
        if of is int:
            return int(text)
        if of is float:
            return float(text.replace(",", "."))
    except ValueError:
        return text
    return _YES.get(text.strip().lower(), text) if of is bool else text


def write_value(field: FactField, value: object) -> str:
    """Writes a plain value as it is read; of a row, what the work fills in only where it did."""
    if not field.columns:
        return write_scalar(value, field.about.unit)
    return "; ".join(_write_row(field.columns, row) for row in to_rows(field, value))


def write_scalar(value: object, unit: str = "") -> str:
    """Writes one plain value: yes or no, a number without needless zeros, a text.

    A length is written in the shop's unit, as exactly as it is kept.
    """
    if isinstance(value, float) and lengths.is_length(unit):
        return lengths.write_exactly(value, unit)
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)


def show_scalar(value: object, unit: str = "") -> str:
    """Writes one plain value for a person, who may type it so too: with the language's sign."""
    text = write_scalar(value, unit)
    return lengths.write_figure(text) if isinstance(value, float) else text


# --- rows of a list


def to_rows(field: FactField, value: object) -> Rows:
    """Gives a list field's plain value as rows of its columns; what does not fit as no rows."""
    return tuple(_to_row(field, item) for item in value) if isinstance(value, list | tuple) else ()


def _to_row(field: FactField, item: object) -> tuple[object, ...]:
    columns = field.columns
    if isinstance(item, Mapping):
        return tuple(item.get(c.name, c.start) for c in columns)
    if isinstance(item, list | tuple):
        return (*item, *(c.start for c in columns[len(item) :]))
    return (item, *(c.start for c in columns[1:]))


def from_rows(field: FactField, rows: Rows) -> list[object]:
    """Gives rows as the field's plain value: texts, pairs or records, as its type says."""
    if field.record:
        return [{c.name: v for c, v in zip(field.columns, row, strict=True)} for row in rows]
    return [row[0] if len(field.columns) == 1 else [*row] for row in rows]


def start_row(field: FactField, first: object) -> tuple[object, ...]:
    """Gives a new row that begins so."""
    return (first, *(c.start for c in field.columns[1:]))


def _write_row(columns: tuple[FactField, ...], row: tuple[object, ...]) -> str:
    kept = list(row)
    while len(kept) > 1 and not columns[len(kept) - 1].about.typed:
        if kept[-1] != columns[len(kept) - 1].start:
            break
        kept.pop()
    written = zip(kept, columns, strict=False)
    return " x ".join(write_scalar(value, column.about.unit) for value, column in written)


def _read_rows(field: FactField, text: str) -> object:
    columns, rows = field.columns, list[tuple[object, ...]]()
    for piece in filter(None, (p.strip() for p in text.split(";"))):
        texts = _BETWEEN.split(piece)
        if len(texts) > len(columns):
            return text
        row = [read_scalar(c.of, t, c.about.unit) for c, t in zip(columns, texts, strict=False)]
        rows.append((*row, *(c.start for c in columns[len(texts) :])))
    return from_rows(field, tuple(rows))


# --- times

_TIME = re.compile(r"(\d{4}-\d\d-\d\d)(?:[T ](\d\d?):?(\d\d)(?::\d\d)?)?")
_DATE = re.compile(r"(\d\d?)\.(\d\d?)\.(20\d\d)(?: +(\d\d?):?(\d\d))?")
_DAY = re.compile(r"(\d\d?)[. ]?(\d\d?)\.?(?:\s*(\d\d?):?(\d\d))?")
_NAMED = re.compile(r"(\d\d?)\.? *([a-zä]{3})[a-zä]*\.?(?: +(20\d\d))?(?: +(\d\d?):?(\d\d))?")
_NAMED_FIRST = re.compile(r"([a-zä]{3})[a-zä]*\.? *(\d\d?)(?:,? +(20\d\d))?(?: +(\d\d?):?(\d\d))?")
_SLASHED = re.compile(r"(\d\d?)/(\d\d?)(?:/(20\d\d|\d\d))?(?: +(\d\d?):?(\d\d))?")
_MONTHS = (  # English and German, by number
    ("jan",), ("feb",), ("mar", "mär"), ("apr",), ("may", "mai"), ("jun",),
    ("jul",), ("aug",), ("sep",), ("oct", "okt"), ("nov",), ("dec", "dez"),
)  # fmt: skip
_DIGITS = re.compile(r"(\d\d)(\d\d)(?:(\d\d)(\d\d))?")


def read_time(text: str, now: str = "", ends: str = "16:00") -> str:
    """Reads a time as it is stored; the text itself where it is none.

    Taken are ``2026-11-25 14:00``, ``25.11.2026 14:00``, ``25.11. 14:00``, ``25 Nov 14:00``,
    ``25 Nov 2026 14:00``, ``Nov 25``, ``25/11/2026`` (in a shop of inches ``11/25/2026``) and,
    from digit cards, ``25111400``; without an hour it is the end of the day. A day and month
    alone are the next such day from `now` on.
    """
    bare = _turn_strokes(_number_month(text.strip()))
    if match := _TIME.fullmatch(bare):
        day, hour, minute = match.groups()
        return _make_time(day, hour, minute, ends) or text
    if match := _DATE.fullmatch(bare):
        day, month, year, hour, minute = match.groups()
        return _make_time(f"{year}-{int(month):02d}-{int(day):02d}", hour, minute, ends) or text
    match = _DIGITS.fullmatch(bare) or _DAY.fullmatch(bare)
    if not match or not now:
        return text
    day, month, hour, minute = match.groups()
    date = f"{now[:4]}-{int(month):02d}-{int(day):02d}"
    if date < now[:10]:
        date = f"{int(now[:4]) + 1}{date[4:]}"
    return _make_time(date, hour, minute, ends) or text


def read_day(text: str, now: str = "") -> str:
    """Reads a day as it is stored, written in any way that a time is; the text itself if none."""
    return text if (time := read_time(text, now)) == text else time[:10]


def _number_month(text: str) -> str:
    """Writes the name of a month as its number; any other text stays as it is."""
    if match := _NAMED.fullmatch(text.lower()):
        day, name, year, hour, minute = match.groups()
    elif match := _NAMED_FIRST.fullmatch(text.lower()):
        name, day, year, hour, minute = match.groups()
    else:
        return text
    number = next((n for n, names in enumerate(_MONTHS, 1) if name in names), 0)
    at = f" {hour}:{minute}" if hour else ""
    return f"{day}.{number}.{year or ''}{at}" if number else text


def _turn_strokes(text: str) -> str:
    """Writes a day with strokes with dots; the month stands first in a shop of inches."""
    match = _SLASHED.fullmatch(text)
    if not match:
        return text
    first, second, year, hour, minute = match.groups()
    day, month = (second, first) if lengths.are_in_inches() else (first, second)
    year = f"20{year}" if year and len(year) < 4 else year or ""
    return f"{day}.{month}.{year}" + (f" {hour}:{minute}" if hour else "")


def _make_time(day: str, hour: str | None, minute: str | None, ends: str) -> str:
    """Makes the time when it is one; else nothing."""
    at = f"{int(hour):02d}:{minute}" if hour else ends
    made = f"{day}T{at}:00"
    return made if is_time(made) else ""
