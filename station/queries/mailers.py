"""Questions about a pack: which mailer it goes into, how much wrap it needs, what it weighs.

The stack is built level by level, the largest parts at the bottom; the first part's box
gives the footprint. A flat mailer must be at least as wide as the stack is wide and thick
together, and as long as it is long and thick together, with an allowance (common practice,
no source). Nothing here is measured: the crew's hands decide.
"""

import math
from collections.abc import Iterable
from typing import NamedTuple

from station.shop.facts import Mailer, Part
from station.shop.views import View, by_part
from station.shop.words import Say, say

ALLOWANCE_MM = 10.0
ASSUMED_MM = (100.0, 50.0)  # a part whose outline nobody has entered
GAP_MM = 1.0  # between parts that lie beside each other
OVERLAP_MM = 50.0  # of the wrap's ends
WEIGHT_TOLERANCE = 0.05  # share of the parts' mass, for wood that is more or less dry
LEAST_G = 5.0  # the tolerance of a light pack: scale and mailer differ as well
MOST = 100  # mailers that are looked through

Pieces = Iterable[tuple[Part, int]]  # so many of each part


class Level(NamedTuple):
    """The pieces of one part: as many beside each other as the footprint takes, then on top.

    `across` of them lie along the stack's length, `beside` in one layer; the box is in mm.
    """

    part: Part
    pieces: int
    length_mm: float
    width_mm: float
    across: int
    beside: int


class Stack(NamedTuple):
    """Parts stacked flat: the box in mm, and its levels from the bottom.

    `guessed` is the name of a part without an outline: its size is only assumed.
    """

    length_mm: float
    width_mm: float
    thick_mm: float
    levels: tuple[Level, ...]
    guessed: str = ""

    @property
    def flat_mm(self) -> tuple[float, float]:
        """Length and width that a mailer must have lying flat."""
        return (
            self.length_mm + self.thick_mm + ALLOWANCE_MM,
            self.width_mm + self.thick_mm + ALLOWANCE_MM,
        )

    @property
    def wrap_m(self) -> float:
        """Metres of wrap for one turn around the length, the ends overlapping.

        Rounded up to a tenth of a metre; common practice, no source.
        """
        around = 2 * (self.length_mm + self.thick_mm) + OVERLAP_MM
        return math.ceil(around / 100) / 10


class Weight(NamedTuple):
    """What the scale should show: grams, their uncertainty, and what limits it.

    `unknown` is the name of a part without a weight: then nothing can be told. `light`
    and `light_g` are the lightest part: where one piece more or less would not show.
    """

    grams: float
    plus: float
    unknown: str
    light: str
    light_g: float

    def agrees(self, scale_g: float) -> bool | None:
        """Tells whether a reading is as it should be; None: it can't be told."""
        return None if self.unknown else abs(scale_g - self.grams) <= self.plus

    def words(self, scale_g: float) -> Say:
        """Says a reading against what was expected."""
        if self.unknown:
            return say("{g} g on the scale: can't tell", g=round(scale_g))
        if self.agrees(scale_g):
            return say("{g} g on the scale: as it should be", g=round(scale_g))
        return say(
            "{g} g on the scale, {grams} ± {plus} g expected",
            g=round(scale_g),
            grams=round(self.grams),
            plus=round(self.plus),
        )

    @property
    def blind(self) -> int:
        """Pieces of the lightest part more or less that stay within the tolerance."""
        return int(self.plus / self.light_g) if self.light_g else 0


class Parcel(NamedTuple):
    """Parts as they are packed: how they are stacked, the mailer, what both should weigh.

    The mailer is None where none is large enough.
    """

    stack: Stack
    mailer: Mailer | None
    weight: Weight


def plan_parcel(view: View, pieces: Pieces) -> Parcel:
    """Plans how so many of each part are packed, in the smallest mailer that takes them."""
    inside = [(part, count) for part, count in pieces if count > 0]
    stack = stack_parts(inside)
    mailer = find_smallest(stack, view.shelf(Mailer, "all", MOST))
    return Parcel(stack, mailer, weigh_parts(inside, mailer))


def plan_open_pack(view: View, order: str) -> Parcel:
    """Plans how what lies in an order's open pack now is packed."""
    inside = by_part(view.stock(place=f"packing/{order}"))
    return plan_parcel(view, [(p, n) for part, n in inside.items() if (p := view.get(Part, part))])


def stack_parts(pieces: Pieces) -> Stack:
    """Stacks so many of each part, the largest face at the bottom."""
    boxes = sorted(((_find_box(p), p, n) for p, n in pieces), key=lambda b: -b[0][0] * b[0][1])
    if not boxes:
        return Stack(0.0, 0.0, 0.0, ())
    length = max(box[0] for box, _, _ in boxes)
    width = max(box[1] for box, _, _ in boxes)
    levels = tuple(_lay_level(part, box, n, length, width) for box, part, n in boxes)
    thick = sum(math.ceil(x.pieces / x.beside) * x.part.thickness_mm for x in levels)
    guessed = next((part.name for _, part, _ in boxes if part.shape is None), "")
    return Stack(length, width, thick, levels, guessed)


def _find_box(part: Part) -> tuple[float, float]:
    """Finds a part's box, the longer side first."""
    x, y = part.shape.box if part.shape else ASSUMED_MM
    return (max(x, y), min(x, y))


def _lay_level(
    part: Part, box: tuple[float, float], count: int, length: float, width: float
) -> Level:
    """Lays the pieces of one part side by side on a footprint."""
    across = max(1, int((length + GAP_MM) // (box[0] + GAP_MM)))
    rows = int((width + GAP_MM) // (box[1] + GAP_MM))
    return Level(part, count, *box, across, max(1, across * rows))


def find_smallest(stack: Stack, mailers: Iterable[Mailer]) -> Mailer | None:
    """Finds the smallest active mailer that takes the stack, either way round; or None."""
    long, short = max(stack.flat_mm), min(stack.flat_mm)
    fit = [
        m
        for m in mailers
        if m.active
        and m.thick_mm >= stack.thick_mm
        and max(m.length_mm, m.width_mm) >= long
        and min(m.length_mm, m.width_mm) >= short
    ]
    return min(fit, key=lambda m: m.length_mm * m.width_mm, default=None)


def weigh_parts(pieces: Pieces, mailer: Mailer | None) -> Weight:
    """Weighs so many of each part and their mailer by the book, without wrap.

    The uncertainty is a share of the wood's mass (k = 1), 5 g at the least.
    """
    inside = list(pieces)
    parts_g = sum(p.mass_g * n for p, n in inside)
    lightest = min((p for p, _ in inside), key=lambda p: p.mass_g, default=None)
    return Weight(
        parts_g + (mailer.mass_g if mailer else 0.0),
        max(LEAST_G, parts_g * WEIGHT_TOLERANCE),
        next((p.name for p, _ in inside if p.mass_g <= 0), ""),
        lightest.name if lightest else "",
        lightest.mass_g if lightest else 0.0,
    )
