"""Tells what the fields of facts hold: from their types, and from the `About` at each."""

import dataclasses
import typing
from dataclasses import dataclass
from typing import Any

from station.shop.facts import KINDS, Fact
from station.shop.facts.about import About
from station.shop.lengths import are_in_inches, name_unit, to_kept
from station.shop.words import Say, say


@dataclass(frozen=True, kw_only=True)
class FactField:
    """One field of a fact, or one column of a field that is a list.

    `of` is str, int, float, bool or, of a list, tuple. `start` is what a new fact or a new row
    holds there. `record` is the type of a row that is kept by its fields' names.
    """

    name: str  # empty for a column that has none of its own
    of: type
    about: About
    choices: tuple[str, ...] = ()
    start: object = ""
    columns: tuple["FactField", ...] = ()
    record: type | None = None
    must: bool = False  # a new fact has nothing there: it is to be said

    @property
    def label(self) -> Say:
        """Says what people call it, with its unit: ``low, mm``."""
        label, unit = self.about.label, self.about.unit
        return say("{label}, {unit}", label=label, unit=name_unit(unit)) if unit else label

    def name_column(self, units: str = "") -> str:
        """Names its column in a file: ``low_mm``, or ``low_in`` where lengths are in inches.

        `units`: mm or inch; "": the shop's.
        """
        both = (self.about.unit, name_unit(self.about.unit, units))
        kept, now = (
            f"_{unit.replace('/', '_').replace('²', '2').replace('³', '3')}" for unit in both
        )
        return self.name.removesuffix(kept) + now if self.name.endswith(kept) else self.name

    @property
    def starts(self) -> object:
        """Gives what a new thing has there, round in the units of the shop."""
        round_one = self.about.inch_start
        if round_one is None or not are_in_inches():
            return self.start
        return to_kept(round_one, self.about.unit)

    @property
    def points(self) -> type[Fact] | None:
        """Gives the kind of fact whose id it is."""
        return KINDS.get(self.about.points_at)

    @property
    def counts(self) -> bool:
        """Tells whether it is how many there are of what its row names: one at least."""
        return self.of is int and self.about.least == 1


_TYPES: dict[type, dict[str, object]] = {}  # resolving them is slow
_FIELDS: dict[type, dict[str, FactField]] = {}  # and so is this


def field_types(cls: type) -> dict[str, object]:
    """Gives the resolved types of a dataclass's fields by name, without what stands at them."""
    if cls not in _TYPES:
        hints = typing.get_type_hints(cls)
        _TYPES[cls] = {f.name: hints[f.name] for f in dataclasses.fields(cls)}
    return _TYPES[cls]


def choices(hint: object) -> tuple[str, ...]:
    """Gives the words that a field may hold, where its type names them; else none."""
    return typing.get_args(hint) if typing.get_origin(hint) is typing.Literal else ()


def fields_by_name(cls: type) -> dict[str, FactField]:
    """Gives the fields of a fact or a record that have an `About`, a fact's `id` first."""
    if cls not in _FIELDS:
        _FIELDS[cls] = _make_fields(cls)
    return _FIELDS[cls]


def _make_fields(cls: type) -> dict[str, FactField]:
    hints = typing.get_type_hints(cls, include_extras=True)
    found = {}
    for each in dataclasses.fields(cls):
        missing = each.default is dataclasses.MISSING
        default = "" if missing and issubclass(cls, Fact) else each.default  # nothing typed yet
        if field := _make_field(each.name, hints[each.name], default):
            found[field.name] = dataclasses.replace(field, must=missing)
    return found


def find_field(kind: type[Fact], name: str) -> FactField | None:
    """Finds a field by its name; None where it has no `About`."""
    return fields_by_name(kind).get(name)


def typed_fields(kind: type[Fact]) -> tuple[FactField, ...]:
    """Gives the fields that a form or a file can hold, `id` first."""
    return tuple(field for field in fields_by_name(kind).values() if field.about.typed)


def list_starts(kind: type[Fact]) -> dict[str, Any]:
    """Lists what a new fact has in the shop's units that its type does not say."""
    fields = typed_fields(kind)
    return {field.name: field.starts for field in fields if field.starts != field.start}


def say_name(cls: type, name: str) -> Say | str:
    """Says what people call a field; its own name where nothing stands at it."""
    field = fields_by_name(cls).get(name)
    return field.label if field else name.replace("_", " ")


def _make_field(name: str, hint: object, default: object) -> FactField | None:
    """Makes a field from its annotated type; none where nothing stands at it."""
    of, about = _part_hint(hint)
    if about is None:
        return None
    words = choices(of)
    if typing.get_origin(of) is tuple:
        row, beside = _part_hint(typing.get_args(of)[0])
        columns = _make_columns(row, beside)
        record = row if isinstance(row, type) and dataclasses.is_dataclass(row) else None
        return FactField(
            name=name, of=tuple, about=about, start=default or (), columns=columns, record=record
        )
    bare = str if words else of
    assert isinstance(bare, type), f"{name} is of no type that can be typed"
    start = default
    if default is dataclasses.MISSING:
        start = bare(about.least or 0) if bare in (int, float) else ""
    return FactField(name=name, of=bare, about=about, choices=words, start=start)


def _make_columns(row: object, about: About | None) -> tuple[FactField, ...]:
    """Makes the columns of a list: the fields of a record, the parts of a tuple, or one."""
    if isinstance(row, type) and dataclasses.is_dataclass(row):
        return tuple(fields_by_name(row).values())
    if typing.get_origin(row) is tuple:
        made = (_make_field("", part, dataclasses.MISSING) for part in typing.get_args(row))
        return tuple(column for column in made if column)
    assert isinstance(row, type)
    assert about is not None, "a list says nothing of what it holds"
    return (FactField(name="", of=row, about=about),)


def _part_hint(hint: object) -> tuple[object, About | None]:
    """Parts an annotated type into the type and what stands at it."""
    if typing.get_origin(hint) is not typing.Annotated:
        return hint, None
    of, *beside = typing.get_args(hint)
    return of, next((one for one in beside if isinstance(one, About)), None)
