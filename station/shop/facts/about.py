"""Tells what is known of a field of a fact beyond its type. It stands at the field itself.

What a field may hold is said here alone: a form, a file, a rule's answer and what comes from
another station are all held against it (`station/shop/limits.py`).
"""

from dataclasses import KW_ONLY, dataclass
from typing import Literal

from station.shop.words import Say

# how a text is written: YYYY-MM-DDTHH:MM:SS; the same, or YYYY-MM-DD alone; HH:MM; A to Z
Written = Literal["", "time", "day", "clock", "letter"]


LONGEST = 2000  # characters of a text, where its field says nothing else
LARGEST = 1e9  # of any number, either way
MOST_ROWS = 20_000  # of any list: a sheet has some hundred pieces, an outline some hundred points


@dataclass(frozen=True, kw_only=True)
class Limit:
    """Tells what a field may hold: ``sheets: Annotated[int, Limit(least=0, most=9999)]``."""

    above: float | None = None  # a number is larger than this
    least: float | None = None  # a number is this or more
    most: float | None = None  # a number is this or less
    written: Written = ""  # a text is empty, or written so
    given: bool = False  # a text is not empty


@dataclass(frozen=True)
class About(Limit):
    """Tells of a field: ``low_mm: Annotated[float, About(say("low"), unit="mm", above=0)]``.

    A field that has none is on no form and in no list that is read or written as a file. What it
    may hold of a few words its type says, as a Literal. In a record, and around what a list
    holds, it tells of a column.
    """

    label: Say  # what people call it
    _: KW_ONLY
    unit: str = ""
    help: Say = Say()  # one sentence, where the label alone does not say what is meant
    points_at: str = ""  # the kind of fact whose id it is
    may_be_empty: bool = False  # though it points at something
    inch_start: float | None = None  # what a new one has in a shop of inches: in its unit there
    starts_today: bool = False  # of a new one the day on which it is entered is proposed
    typed: bool = True  # false: it follows from the work, and is only shown
