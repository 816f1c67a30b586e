"""Tells at once of a fact's text that all of its values can be, as of nearly every text they can.

The decoder itself holds each value against its limit. Of a text that does not pass here nothing
is said yet: `limits.find_unfit` tells what cannot be.
"""

import typing
from collections.abc import Callable
from dataclasses import MISSING, fields
from typing import Annotated, Any, NamedTuple

import msgspec

from station.shop.facts import Fact
from station.shop.facts.about import LARGEST, LONGEST, MOST_ROWS, Limit
from station.shop.fields import choices
from station.shop.limits import Check, make_check, part_hint


class _Strict(NamedTuple):
    """Reads a text of one kind as a record; `left` are the checks that no decoder does.

    The last of each says whether what is empty is held against it too.
    """

    read: Callable[[bytes], Any]
    left: tuple[tuple[str, Check, bool], ...]


_strict: dict[type[Fact], _Strict | None] = {}


def find_fitting(kind: type[Fact], text: bytes) -> str:
    """Finds the id in a text that can surely be read and holds only what can be; else nothing."""
    if kind not in _strict:
        _strict[kind] = _make(kind)
    strict = _strict[kind]
    if strict is None:
        return ""
    try:
        record = strict.read(text)
    except msgspec.DecodeError:
        return ""
    for name, check, given in strict.left:
        value = getattr(record, name)
        if (value or given) and not check(value):  # what is empty, none or missing can be
            return ""
    id_: str = record.id
    return id_


def _make(kind: type[Fact]) -> _Strict | None:
    """Makes what reads a kind; None for one that holds a sentence, which takes more to judge."""
    hints = typing.get_type_hints(kind, include_extras=True)
    if any("Say" in repr(hint) for hint in typing.get_type_hints(kind).values()):
        return None
    made, left = list[tuple[Any, ...]](), list[tuple[str, Check, bool]]()
    for field in fields(kind):
        hint = _narrow(hints[field.name])
        if hint is None and (check := make_check(hints[field.name])):
            left.append((field.name, check, part_hint(hints[field.name])[1].given))
        of = (field.name, hint or part_hint(hints[field.name])[0])
        made.append(of if field.default is MISSING else (*of, field.default))
    record = msgspec.defstruct(kind.__name__, made, frozen=True, kw_only=True, gc=False)
    return _Strict(msgspec.json.Decoder(record).decode, tuple(left))


def _narrow(hint: Any) -> Any:  # noqa: ANN401 - the type of any field
    """Narrows a type to what may be held there; None where that takes a check of its own."""
    of, limit = part_hint(hint)
    if choices(of) or of is bool:
        return of
    if of is str:
        return None if limit.written else Annotated[str, msgspec.Meta(max_length=LONGEST)]
    if of in (int, float):
        return _narrow_number(of, limit)
    if typing.get_origin(of) is tuple and typing.get_args(of)[1:] == (...,):
        within = _narrow(typing.get_args(of)[0])
        rows = msgspec.Meta(max_length=MOST_ROWS)
        return within and Annotated[tuple.__class_getitem__((within, ...)), rows]
    return None


def _narrow_number(of: type, limit: Limit) -> Any:  # noqa: ANN401 - the narrowed type
    least = -LARGEST if limit.least is None else limit.least
    most = LARGEST if limit.most is None else limit.most
    if limit.above is not None and limit.above >= least:
        return Annotated[of, msgspec.Meta(gt=of(limit.above), le=of(most))]
    return Annotated[of, msgspec.Meta(ge=of(least), le=of(most))]
