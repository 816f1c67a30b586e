"""Facts from plain values and back: what a form, a CSV row or an act's arguments hold.

`build` checks every value against the fact's own field types and returns either the fact
or the problems, all of them, as values. No library: the words of the trade stay free of
frameworks.
"""

import dataclasses
import types
import typing
from collections.abc import Mapping

from station.shop.facts import KINDS, Fact
from station.shop.facts.about import LARGEST, LONGEST
from station.shop.fields import FactField, choices, field_types, say_name
from station.shop.words import Say, say, several

Plain = dict[str, object]


def to_plain(fact: Fact) -> Plain:
    """The fact's fields as JSON values (tuples become lists)."""
    return {name: lay(getattr(fact, name)) for name in field_types(type(fact))}


def lay(value: object) -> object:
    """One value as JSON."""
    if isinstance(value, str | int | float | None):  # most are, and that is quickly seen
        return value
    if isinstance(value, list | tuple):
        return [lay(v) for v in value]
    if not dataclasses.is_dataclass(value):
        return value
    return {name: lay(getattr(value, name)) for name in field_types(type(value))}


def build(kind: str, values: Mapping[str, object]) -> Fact | list[Say]:
    """The fact of this kind with these values, or every problem found."""
    cls = KINDS.get(kind)
    if cls is None:
        return [say("There is no list called {kind}", kind=kind)]
    made, problems = _dataclass(cls, values)
    if problems or not isinstance(made, Fact):
        return problems
    if not made.id.replace("-", "").isalnum() and kind not in ("revision", "slip", "pile", "shop"):
        wrong = made.id or "nothing"
        return [say("Its number has letters, digits and dashes only, not {id}", id=wrong)]
    return made


def find_misfit(field: FactField, value: object) -> Say | None:
    """Finds why a plain value does not fit the type of a field that is no list; None: it fits."""
    if field.columns:
        return None
    if field.choices:
        return None if value in field.choices else _one_of(field.label, field.choices)
    _, problems = _fit_scalar(field.of, value, field.label)
    return problems[0] if problems else None


def _dataclass(cls: type, values: object) -> tuple[object, list[Say]]:
    """Builds a dataclass from a mapping; unknown and missing names are problems."""
    if not isinstance(values, Mapping):
        return None, [say("{value} is not a record", value=str(values)[:30])]
    hints = field_types(cls)
    problems = [say("There is no field {name}", name=n) for n in values if n not in hints]
    given: dict[str, object] = {}
    for field in dataclasses.fields(cls):
        if field.name in values:
            called = say_name(cls, field.name)
            given[field.name], wrong = _fit(hints[field.name], values[field.name], called)
            problems += wrong
        elif field.default is field.default_factory is dataclasses.MISSING:
            problems.append(say("{name} is missing", name=say_name(cls, field.name)))
    return (None, problems) if problems else (cls(**given), [])


def _fit(hint: object, value: object, name: Say | str) -> tuple[object, list[Say]]:
    """One value made to fit its type, or the problem."""
    origin = typing.get_origin(hint)
    if origin is types.UnionType:
        inner = [a for a in typing.get_args(hint) if a is not type(None)]
        return (None, []) if value is None else _fit(inner[0], value, name)
    if origin is tuple:
        return _fit_tuple(hint, value, name)
    if words := choices(hint):
        return (value, []) if value in words else (None, [_one_of(name, words)])
    if isinstance(hint, type) and dataclasses.is_dataclass(hint):
        return _dataclass(hint, value)
    return _fit_scalar(hint, value, name)


def _one_of(name: Say | str, words: tuple[str, ...]) -> Say:
    return say("{field} is one of {words}", field=name, words=several(list(words)))


def _fit_tuple(hint: object, value: object, name: Say | str) -> tuple[object, list[Say]]:
    """A tuple of one repeated type, or of fixed ones."""
    if not isinstance(value, list | tuple):
        return None, [say("{name} must be a list", name=name)]
    args = typing.get_args(hint)
    kinds = [args[0]] * len(value) if args[-1] is Ellipsis else list(args)
    if len(kinds) != len(value):
        return None, [
            say("{name} needs {count} {count|value|values}", name=name, count=len(kinds))
        ]
    fitted = [_fit(kind, item, name) for kind, item in zip(kinds, value, strict=True)]
    return tuple(v for v, _ in fitted), [p for _, problems in fitted for p in problems]


def _fit_scalar(hint: object, value: object, name: Say | str) -> tuple[object, list[Say]]:
    """A text, a whole number, a number or a yes/no."""
    if hint is float and isinstance(value, int) and not isinstance(value, bool):
        return float(value), []
    right = type(value) is hint
    if right and isinstance(value, float) and not abs(value) < LARGEST:
        right = False
    if right and type(value) is int and not -LARGEST < value < LARGEST:
        right = False
    if right and isinstance(value, str) and len(value) > LONGEST:
        right = False
    words = {str: "a text", int: "a whole number", float: "a number", bool: "yes or no"}
    wanted = words.get(hint, "a value") if isinstance(hint, type) else "a value"
    return (
        (value, [])
        if right
        else (None, [say("{name} must be {wanted}", name=name, wanted=wanted)])
    )
