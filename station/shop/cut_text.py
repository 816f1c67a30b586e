"""What was found of a cut file's text besides its revision: how it was taken, its books."""

import msgspec

from station.shop.facts import Loop
from station.shop.words import Say, length

# where on the sheet x and y are 0: shares of its two sizes, from its lower left corner
ORIGINS: dict[str, tuple[float, float]] = {
    "lower-left": (0.0, 0.0),
    "centre": (0.5, 0.5),
    "upper-left": (0.0, 1.0),
    "lower-right": (1.0, 0.0),
    "upper-right": (1.0, 1.0),
}


class TakenAs(msgspec.Struct, frozen=True):
    """One thing that was taken of a text: what, as which value, and who or what says so.

    `what` is bit (with its T number), zero, origin, spoilboard, units or dialect. `source` is
    given (a person), text, remark, changer, spindle, usual (on the router) or assumed.
    """

    what: str
    value: str
    source: str
    number: int = 0


class TextProblem(msgspec.Struct, frozen=True):
    """What could go wrong in a line (0: the whole text): stop, look or know; where, mm.

    `text` is the template of a sentence, `values` and `lengths` (mm, digits) what stands in it.
    """

    line: int
    text: str
    grade: str
    at: tuple[float, float] | None = None
    values: dict[str, str | int] = {}
    lengths: dict[str, tuple[float, int | None]] = {}

    @property
    def words(self) -> Say:
        """The sentence, to be translated."""
        sizes = {name: length(*size) for name, size in self.lengths.items()}
        return Say(self.text, {**self.values, **sizes})


class CutBooks(msgspec.Struct, frozen=True):
    """What all the cuts make: counts, and the sheet's area shared out, mm²."""

    cuts: int = 0  # that close
    parts: int = 0
    slugs: int = 0  # pieces of waste that come loose
    parts_mm2: float = 0.0
    waste_mm2: float = 0.0
    skeleton_mm2: float = 0.0
    kerf_mm2: float = 0.0


class Laying(msgspec.Struct, frozen=True):
    """What a clamped sheet comes to: places for hold-downs, what flies, how it is popped.

    Pieces are told by their place in the revision's `placed`. `slugs` lie on the sheet, mm.
    """

    slugs: tuple[Loop, ...] = ()
    proposed: tuple[tuple[float, float], ...] = ()
    flying: tuple[int, ...] = ()
    popping: tuple[int, ...] = ()
