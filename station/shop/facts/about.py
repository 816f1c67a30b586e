"""Tells what is known of a field of a fact beyond its type. It stands at the field itself."""

from dataclasses import KW_ONLY, dataclass
from typing import Literal

from station.shop.words import Say

# how a text is written: YYYY-MM-DDTHH:MM:SS; the same, or YYYY-MM-DD alone; HH:MM
Written = Literal["", "time", "day", "clock"]


@dataclass(frozen=True)
class About:
    """Tells of a field: ``low_mm: Annotated[float, About(say("low"), unit="mm", above=0)]``.

    A field that has none is on no form and in no list that is read or written as a file. What it
    may hold of a few words its type says, as a Literal. In a record, and around what a list
    holds, it tells of a column.
    """

    label: Say  # what people call it
    _: KW_ONLY
    unit: str = ""
    above: float | None = None  # a number is larger than this
    least: float | None = None  # a number is this or more
    written: Written = ""
    points_at: str = ""  # the kind of fact whose id it is
    may_be_empty: bool = False  # though it points at something
    typed: bool = True  # false: it follows from the work, and is only shown
