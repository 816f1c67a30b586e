"""What a value from outside the project is.

Its source and its status stand at the value itself, in the tables beside this file. The tests in
this folder read the tables, so that a value and what is known of it are never apart.
"""

from collections.abc import Iterable
from enum import StrEnum
from typing import Any, NamedTuple

import pytest


class Status(StrEnum):
    """How sure a value is."""

    PUBLISHED = "the published value was read; it is nothing that one computes"
    PUBLISHED_RECOMPUTED = (
        "the published value was read, often in a transcription, and computed again"
    )
    COMPUTED = "computed with a library or in two independent ways; no printed page was read"
    MEMORY_COMPUTED = "what it rests on is from memory; the arithmetic was checked"
    MEMORY = "from memory alone: a default or a sanity band, nothing to rest an answer on"


PUBLISHED = Status.PUBLISHED
PUBLISHED_RECOMPUTED = Status.PUBLISHED_RECOMPUTED
COMPUTED = Status.COMPUTED
MEMORY_COMPUTED = Status.MEMORY_COMPUTED
MEMORY = Status.MEMORY


class Value(NamedTuple):
    """One value: what is given, what must come of it, how sure it is and who says so."""

    given: Any
    expected: Any
    status: Status
    source: str


def values(table: Iterable[Value]) -> pytest.MarkDecorator:
    """Hands a test each value of a table, as `given` and `expected`."""
    cases = [
        pytest.param(v.given, v.expected, id=f"{str(v.given)[:40]!r} {v.status.name}")
        for v in table
    ]
    return pytest.mark.parametrize(("given", "expected"), cases)
