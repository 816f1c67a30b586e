"""Facts in a state that this program does not know: a newer one wrote it, and nothing is damaged.

It is read as it is written. No rule and no screen of this program means that state, so the fact
stands in no list of theirs, and counts as before.
"""

import typing
from dataclasses import is_dataclass
from typing import Any

import msgspec

from station.shop.fields import choices, field_types
from station.shop.views import F


def read_newer(kind: type[F], text: str | bytes) -> F:
    """The fact with every word that is none of its field's choices left as it is.

    Raises ValidationError where it is not only that.
    """
    try:
        fact: F = _as_written(kind, msgspec.json.decode(text))
    except TypeError as error:  # a field that must be there is missing
        raise msgspec.ValidationError(str(error)) from error
    return fact


def _as_written(hint: Any, value: Any) -> Any:  # noqa: ANN401 - whatever a fact holds
    if choices(hint) and isinstance(value, str):
        return value
    if isinstance(hint, type) and is_dataclass(hint) and isinstance(value, dict):
        hints = field_types(hint)
        return hint(**{n: _as_written(hints[n], v) for n, v in value.items() if n in hints})
    if typing.get_origin(hint) is tuple and isinstance(value, list):
        kinds = typing.get_args(hint)
        if kinds[-1] is Ellipsis:
            return tuple(_as_written(kinds[0], item) for item in value)
    return msgspec.convert(value, hint)
