"""The office's lists and what can be typed into them: one generic form for every fact.

Only fields with a plain value are typed on the form; outlines, placements and lists of
parts come by file. A field's kind decides how a text becomes its value.
"""

import dataclasses

from station.shop.facts import (
    Bit,
    Cart,
    CutFile,
    Fact,
    Lot,
    Mailer,
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
from station.shop.plain import field_types
from station.shop.words import Say, say


@dataclasses.dataclass(frozen=True, kw_only=True)
class OfficeList:
    """One list of the office: its facts, the words above it, what it shows in a row."""

    kind: type[Fact]
    words: Say
    shows: tuple[str, ...]


LISTS: tuple[OfficeList, ...] = (
    OfficeList(kind=Order, words=say("Orders"), shows=("due", "state")),
    OfficeList(kind=CutFile, words=say("Cut files"), shows=("name", "words", "approved")),
    OfficeList(kind=Part, words=say("Parts"), shows=("name", "words", "rack", "mark")),
    OfficeList(kind=Product, words=say("Products"), shows=("name", "words")),
    OfficeList(kind=RackPlace, words=say("Rack places"), shows=("name", "part")),
    OfficeList(kind=Material, words=say("Materials"), shows=("name", "low_mm", "high_mm")),
    OfficeList(kind=Lot, words=say("Lots"), shows=("material", "received", "mark")),
    OfficeList(kind=Router, words=say("Routers"), shows=("name", "bed", "pace")),
    OfficeList(kind=Bit, words=say("Bits"), shows=("words", "life_m", "state")),
    OfficeList(kind=Mailer, words=say("Mailers"), shows=("name", "length_mm", "width_mm")),
    OfficeList(kind=Cart, words=say("Carts"), shows=("name", "goes", "state")),
    OfficeList(kind=Worker, words=say("Workers"), shows=("supervisor", "active")),
    OfficeList(kind=Reason, words=say("Reasons"), shows=("words", "use")),
    OfficeList(kind=Revision, words=say("Revisions"), shows=("letter", "material", "minutes")),
    OfficeList(kind=Shop, words=say("This shop"), shows=("name", "units", "paper")),
)


def typed_fields(kind: type[Fact]) -> tuple[str, ...]:
    """Fields of a kind that a form can hold, `id` first; secrets are left out."""
    plain = (str, int, float, bool)
    names = tuple(n for n, hint in field_types(kind).items() if hint in plain and n != "pin")
    return ("id", *(n for n in names if n != "id"))


def from_text(kind: type[Fact], field: str, text: str) -> object:
    """The value that a typed text stands for; the text itself where it does not fit."""
    hint = field_types(kind).get(field)
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
    return field.replace("_", " ")


def shown(value: object) -> str:
    """A value as a form shows it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    return str(value)
