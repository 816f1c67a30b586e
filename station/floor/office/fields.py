"""What can be typed into the office's lists: one generic form for every fact.

A field's type decides how a text becomes its value. A field that is itself a list (an
order's lines, a product's parts) is a table of columns, edited row by row. What follows
from the work, from an approval or from a PIN is not typed and stands in `UNTYPED`.
"""

import dataclasses
import re
import typing
from datetime import datetime

from station.floor.office.work import Rows
from station.shop.facts import (
    KINDS,
    Bit,
    Cart,
    CutFile,
    Fact,
    Lot,
    Material,
    Order,
    Part,
    Product,
    RackPlace,
    Reason,
    Revision,
    Router,
    Shop,
    Worker,
)
from station.shop.plain import SPOKEN, choices, field_types

UNTYPED: dict[type[Fact], frozenset[str]] = {
    Order: frozenset({"state", "claimed", "by", "waits"}),
    CutFile: frozenset({"approved"}),
    Cart: frozenset({"state", "left", "runs"}),
    Revision: frozenset({"digest"}),
    Worker: frozenset({"pin"}),
    Shop: frozenset({"first"}),
}


# --- what a field may hold

POINTS: dict[tuple[type[Fact], str], type[Fact]] = {
    (Lot, "material"): Material,
    (Revision, "cut_file"): CutFile,
    (Revision, "material"): Material,
    (RackPlace, "part"): Part,
    (Part, "rack"): RackPlace,
    (Bit, "router"): Router,
}
MAY_BE_EMPTY = frozenset({(Part, "rack"), (Bit, "router")})
CHOICES: dict[tuple[type[Fact], str], tuple[str, ...]] = {
    (kind, name): words
    for kind in KINDS.values()
    for name, hint in field_types(kind).items()
    if (words := choices(hint)) and name not in UNTYPED.get(kind, ())
}
TIMES = frozenset({(Order, "due")})  # YYYY-MM-DDTHH:MM:SS
DAYS = frozenset({(Lot, "received")})  # the same, or YYYY-MM-DD alone
CLOCKS = frozenset({(Cart, "goes"), (Shop, "day_starts"), (Shop, "day_ends")})  # HH:MM


@dataclasses.dataclass(frozen=True, kw_only=True)
class Column:
    """One column of a field that is a list. `start` is what a new row holds there."""

    name: str
    kind: type = str
    points: type[Fact] | None = None
    start: object = ""
    asked: bool = True  # false: kept as it is, and filled in by the work


_PLACE = (Column(name="x_mm", kind=float, start=0.0), Column(name="y_mm", kind=float, start=0.0))
COLUMNS: dict[tuple[type[Fact], str], tuple[Column, ...]] = {
    (Order, "lines"): (
        Column(name="product", points=Product),
        Column(name="quantity", kind=int, start=1),
        Column(name="short", kind=int, start=0, asked=False),
    ),
    (Product, "parts"): (
        Column(name="part", points=Part),
        Column(name="quantity", kind=int, start=1),
    ),
    (Router, "hold_downs"): _PLACE,
    (Revision, "hold_downs"): _PLACE,
    (Revision, "routers"): (Column(name="router", points=Router),),
    (Revision, "runs"): (Column(name="revision", points=Revision),),
    (Shop, "day_checks"): (Column(name="check"),),
    **{(Reason, name): (Column(name="area"),) for name in ("areas", "first_at", "usual_at")},
    (Part, "sizes"): (
        Column(name="name"),
        Column(name="nominal_mm", kind=float, start=0.0),
        Column(name="low_mm", kind=float, start=0.0),
        Column(name="high_mm", kind=float, start=0.0),
        Column(name="kind", start="outside", asked=False),
    ),
}


def typed_fields(kind: type[Fact]) -> tuple[str, ...]:
    """Fields of a kind that a form can hold, `id` first."""
    untyped = UNTYPED.get(kind, frozenset())
    names = tuple(
        name
        for name, hint in field_types(kind).items()
        if (hint in (str, int, float, bool) or choices(hint) or (kind, name) in COLUMNS)
        and name not in untyped
        and name != "id"
    )
    return ("id", *names)


# --- texts and values


def from_text(kind: type[Fact], field: str, text: str) -> object:
    """The plain value that a typed text stands for; the text itself where it does not fit."""
    if (kind, field) in COLUMNS:
        return list_from_text(kind, field, text)
    if (kind, field) in TIMES:
        return a_time(text)
    return value_from_text(field_types(kind).get(field), text)


def value_from_text(hint: object, text: str) -> object:
    """The same for a type: a whole number, a number, yes or no, a text."""
    try:
        if hint is int:
            return int(text)
        if hint is float:
            return float(text.replace(",", "."))
    except ValueError:
        return text
    if hint is bool:
        return {"yes": True, "no": False, "1": True, "0": False}.get(text.strip().lower(), text)
    return text


_TIME = re.compile(r"(\d{4}-\d\d-\d\d)(?:[T ](\d\d?):?(\d\d)(?::\d\d)?)?")
_DATE = re.compile(r"(\d\d?)\.(\d\d?)\.(20\d\d)(?: +(\d\d?):?(\d\d))?")
_DAY = re.compile(r"(\d\d?)[. ]?(\d\d?)\.?(?:\s*(\d\d?):?(\d\d))?")
_DIGITS = re.compile(r"(\d\d)(\d\d)(?:(\d\d)(\d\d))?")


def a_time(text: str, now: str = "", ends: str = "16:00") -> str:
    """A time as it is stored; the text itself where it is none.

    Taken are ``2026-11-25 14:00``, ``25.11.2026 14:00``, ``25.11. 14:00`` and, from digit
    cards, ``25111400``; without an hour it is the end of the day. A day and month alone are
    the next such day from `now` on.
    """
    bare = text.strip()
    if match := _TIME.fullmatch(bare):
        day, hour, minute = match.groups()
        return _checked(day, hour, minute, ends) or text
    if match := _DATE.fullmatch(bare):
        day, month, year, hour, minute = match.groups()
        return _checked(f"{year}-{int(month):02d}-{int(day):02d}", hour, minute, ends) or text
    match = _DIGITS.fullmatch(bare) or _DAY.fullmatch(bare)
    if not match or not now:
        return text
    day, month, hour, minute = match.groups()
    date = f"{now[:4]}-{int(month):02d}-{int(day):02d}"
    if date < now[:10]:
        date = f"{int(now[:4]) + 1}{date[4:]}"
    return _checked(date, hour, minute, ends) or text


def _checked(day: str, hour: str | None, minute: str | None, ends: str) -> str:
    """The time when it is one; else nothing."""
    at = f"{int(hour):02d}:{minute}" if hour else ends
    made = f"{day}T{at}:00"
    return made if is_time(made) else ""


def is_time(text: str) -> bool:
    """Whether a text is a time as stored."""
    try:
        return len(text) == 19 and bool(datetime.fromisoformat(text)) and text[10] == "T"
    except ValueError:
        return False


def label(field: str) -> str:
    """A field's name in words: ``low_mm`` is ``low, mm``."""
    for ending, unit in (
        ("_mm_min", "mm/min"),
        ("_mm_s2", "mm/s²"),
        ("_kg_m3", "kg/m³"),
        ("_mm", "mm"),
        ("_g", "g"),
        ("_kg", "kg"),
        ("_m", "m"),
        ("_s", "s"),
    ):
        if field.endswith(ending):
            return f"{field.removesuffix(ending).replace('_', ' ')}, {unit}"
    return {"id": "number", **SPOKEN}.get(field, field.replace("_", " "))


def shown(value: object) -> str:
    """A plain value as a form and a CSV file show it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    return str(value)


# --- fields that are lists

BETWEEN = re.compile(r"\s+[x×]\s+")


def rows_of(kind: type[Fact], field: str, value: object) -> Rows:
    """A list field's plain value as rows of its columns; what does not fit as no rows."""
    columns = COLUMNS[kind, field]
    if not isinstance(value, list | tuple):
        return ()
    return tuple(_row(columns, item) for item in value)


def _row(columns: tuple[Column, ...], item: object) -> tuple[object, ...]:
    if isinstance(item, dict):
        return tuple(item.get(c.name, c.start) for c in columns)
    if isinstance(item, list | tuple):
        return (*item, *(c.start for c in columns[len(item) :]))
    return (item, *(c.start for c in columns[1:]))


def value_of(kind: type[Fact], field: str, rows: Rows) -> list[object]:
    """Rows as the field's plain value: texts, pairs or records, as its type says."""
    columns = COLUMNS[kind, field]
    item = typing.get_args(field_types(kind)[field])[0]
    if dataclasses.is_dataclass(item):
        return [{c.name: v for c, v in zip(columns, row, strict=True)} for row in rows]
    return [row[0] if item is str else [*row] for row in rows]


def text_of(kind: type[Fact], field: str, value: object) -> str:
    """A list field in one cell: ``014 x 2; 021 x 1``; the last columns only where they differ."""
    columns, texts = COLUMNS[kind, field], []
    for row in rows_of(kind, field, value):
        kept = list(row)
        while len(kept) > 1 and not columns[len(kept) - 1].asked:
            if kept[-1] != columns[len(kept) - 1].start:
                break
            kept.pop()
        texts.append(" x ".join(shown(v) for v in kept))
    return "; ".join(texts)


def list_from_text(kind: type[Fact], field: str, text: str) -> object:
    """A list field's plain value from one cell; the text itself where it does not fit."""
    columns, rows = COLUMNS[kind, field], list[tuple[object, ...]]()
    for piece in filter(None, (p.strip() for p in text.split(";"))):
        texts = BETWEEN.split(piece)
        if len(texts) > len(columns):
            return text
        row = [value_from_text(c.kind, t) for c, t in zip(columns, texts, strict=False)]
        rows.append((*row, *(c.start for c in columns[len(texts) :])))
    return value_of(kind, field, tuple(rows))
