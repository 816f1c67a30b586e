"""Holds the values of facts against what their fields may hold.

A rule's answer is held against it before it is recorded, and what another station has shared
before it is taken in: a value that no screen can show must not get into the history.

What may be held says the field itself (`station.shop.facts.about`); where it says nothing, a text
and a number of any kind have the limits that stand there for all.
"""

import re
import types
import typing
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from typing import Any

from station.shop.facts import Fact
from station.shop.facts.about import LARGEST, LONGEST, MOST_ROWS, Limit, Written
from station.shop.fields import choices, say_name
from station.shop.times import is_time
from station.shop.words import Say, say

LONGEST_SENTENCE = 20_000  # characters of a sentence that is kept
SHOWN = 40  # characters of a wrong value that are told
NOTHING = Say()
_PATTERNS = {"clock": re.compile(r"([01]\d|2[0-3]):[0-5]\d"), "letter": re.compile("[A-Z]")}
_NONE = Limit()

Check = Callable[[Any], bool]  # whether a value of the right type can be


def find_unfit(fact: Fact) -> Say:
    """Finds a field that holds what it cannot, and says so; nothing where all can be."""
    for name, check in _checks_of(type(fact)):
        value = getattr(fact, name)
        if not check(value):
            return say(
                "{field} of {fact} cannot be {value}",
                field=say_name(type(fact), name),
                fact=fact.key[:SHOWN].replace("/", " "),
                value=str(value)[:SHOWN] if isinstance(value, str | int | float) else "that",
            )
    return NOTHING


def is_written(written: Written, text: str) -> bool:
    """Tells whether a text that is not empty is written as its field asks."""
    if written == "time":
        return is_time(text)
    if written == "day":
        return is_time(text if "T" in text else f"{text}T00:00:00")
    return written == "" or _PATTERNS[written].fullmatch(text) is not None


_checks: dict[type, tuple[tuple[str, Check], ...]] = {}


def _checks_of(kind: type) -> tuple[tuple[str, Check], ...]:
    """Gives the fields of a record that have limits, each with its check; made once."""
    if kind not in _checks:
        hints = typing.get_type_hints(kind, include_extras=True)
        names = [f.name for f in fields(kind)] if is_dataclass(kind) else list(hints)
        made = ((name, make_check(hints[name])) for name in names)
        _checks[kind] = tuple((name, check) for name, check in made if check)
    return _checks[kind]


def part_hint(hint: Any) -> tuple[Any, Limit]:  # noqa: ANN401 - the type of any field
    """Parts an annotated type into the type and its limits."""
    if typing.get_origin(hint) is not typing.Annotated:
        return hint, _NONE
    of, *beside = typing.get_args(hint)
    return of, next((one for one in beside if isinstance(one, Limit)), _NONE)


def make_check(hint: Any) -> Check | None:  # noqa: ANN401 - the type of any field
    """Makes the check of a field from its annotated type; None where any value of it can be."""
    of, limit = part_hint(hint)
    if choices(of) or of is bool:
        return None
    if of is str:
        return _make_text_check(limit)
    if of in (int, float):
        return _make_number_check(limit)
    if typing.get_origin(of) is types.UnionType:
        return _make_union_check(typing.get_args(of))
    if typing.get_origin(of) is tuple:
        return _make_tuple_check(typing.get_args(of))
    return _make_record_check(_checks_of(of))


def _make_text_check(limit: Limit) -> Check:
    written = limit.written
    if not written:
        return lambda text: len(text) <= LONGEST
    if limit.given:
        return lambda text: is_written(written, text)
    return lambda text: text == "" or is_written(written, text)


def _make_number_check(limit: Limit) -> Check:
    above = -LARGEST if limit.above is None else limit.above
    least = -LARGEST if limit.least is None else limit.least
    most = LARGEST if limit.most is None else limit.most
    return lambda number: least <= number <= most and number > above


def _make_union_check(kinds: tuple[Any, ...]) -> Check | None:
    """Makes the check of a sentence or text, or of what may be missing."""
    if Say in kinds:
        return lambda words: len(str(words)) <= LONGEST_SENTENCE
    within = make_check(kinds[0])
    return within and (lambda value: value is None or within(value))


def _make_tuple_check(kinds: tuple[Any, ...]) -> Check | None:
    if kinds[-1] is Ellipsis:
        each = make_check(kinds[0])
        return each and (lambda values: len(values) <= MOST_ROWS and all(map(each, values)))
    checks = [(n, check) for n, kind in enumerate(kinds) if (check := make_check(kind))]
    return lambda values: all(check(values[n]) for n, check in checks)


def _make_record_check(checks: tuple[tuple[str, Check], ...]) -> Check:
    return lambda record: all(check(getattr(record, name)) for name, check in checks)
