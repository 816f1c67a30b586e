"""The smallest mailer that a stack lies flat in.

The stack is built level by level, the largest parts at the bottom; the first part's box
gives the footprint. A flat mailer must be at least as wide as the stack is wide and thick
together, and as long as it is long and thick together, with an allowance (common practice,
no source). Nothing here is measured: the crew's hands decide.
"""

import math
from typing import NamedTuple

from station.shop.faces import Layer
from station.shop.facts import Mailer, Part
from station.shop.words import Say, say

ALLOWANCE_MM = 10.0
ASSUMED_MM = (100.0, 50.0)  # a part whose outline nobody has entered
OVERLAP_MM = 50.0  # of the wrap's ends
WEIGHT_TOLERANCE = 0.05  # share of the parts' mass, for wood that is more or less dry
LEAST_G = 5.0  # the tolerance of a light pack: scale and mailer differ as well


class Stack(NamedTuple):
    """Parts stacked flat: box in mm, the layers to draw.

    `guessed` is the name of a part without an outline: its size is only assumed.
    """

    length_mm: float
    width_mm: float
    thick_mm: float
    layers: tuple[Layer, ...]
    guessed: str = ""


def stack(pieces: list[tuple[Part, int]]) -> Stack:
    """Stacks so many of each part, the largest face at the bottom."""
    boxes = sorted(((_box(p), p, n) for p, n in pieces if n > 0), key=lambda b: -b[0][0] * b[0][1])
    if not boxes:
        return Stack(0.0, 0.0, 0.0, ())
    length = max(box[0] for box, _, _ in boxes)
    width = max(box[1] for box, _, _ in boxes)
    layers: list[Layer] = []
    thick = 0.0
    for level, (box, part, count) in enumerate(boxes):
        a_level = max(1, int((length + 1) // (box[0] + 1)) * int((width + 1) // (box[1] + 1)))
        thick += -(-count // a_level) * part.thickness_mm
        layers += _lay(part, box, min(count, a_level), count, level, length)
    guessed = next((part.name for _, part, _ in boxes if part.shape is None), "")
    return Stack(length, width, thick, tuple(layers), guessed)


def _box(part: Part) -> tuple[float, float]:
    """A part's box, the longer side first."""
    x, y = part.shape.box if part.shape else ASSUMED_MM
    return (max(x, y), min(x, y))


def _lay(
    part: Part, box: tuple[float, float], shown: int, count: int, level: int, length: float
) -> list[Layer]:
    """One level's pieces side by side, for the drawing."""
    across = max(1, int((length + 1) // (box[0] + 1)))
    return [
        Layer(
            label=f"{part.name} ×{count}" if n == 0 else "",
            x_mm=n % across * (box[0] + 1),
            y_mm=n // across * (box[1] + 1),
            length_mm=box[0],
            width_mm=box[1],
            level=level,
        )
        for n in range(shown)
    ]


def needs_flat(made: Stack) -> tuple[float, float]:
    """Length and width that a mailer must have lying flat, mm."""
    return (
        made.length_mm + made.thick_mm + ALLOWANCE_MM,
        made.width_mm + made.thick_mm + ALLOWANCE_MM,
    )


def smallest(made: Stack, mailers: tuple[Mailer, ...]) -> Mailer | None:
    """The smallest active mailer that takes the stack, or None."""
    length, width = needs_flat(made)
    fit = [
        m for m in mailers if m.active and m.thick_mm >= made.thick_mm and _takes(m, length, width)
    ]
    return min(fit, key=lambda m: m.length_mm * m.width_mm, default=None)


def _takes(mailer: Mailer, length: float, width: float) -> bool:
    """Whether the stack goes in, either way round."""
    long, short = max(mailer.length_mm, mailer.width_mm), min(mailer.length_mm, mailer.width_mm)
    return long >= max(length, width) and short >= min(length, width)


def wrap_m(made: Stack) -> float:
    """Metres of wrap for one turn around the stack's length, the ends overlapping.

    Rounded up to a tenth of a metre; common practice, no source.
    """
    around = 2 * (made.length_mm + made.thick_mm) + OVERLAP_MM
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
        """Whether a reading is as it should be; None: it can't be told."""
        return None if self.unknown else abs(scale_g - self.grams) <= self.plus

    def words(self, scale_g: float) -> Say:
        """A reading against what was expected."""
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


def weight(pieces: list[tuple[Part, int]], mailer: Mailer | None) -> Weight:
    """What these parts and their mailer should weigh, without wrap.

    The uncertainty is a share of the wood's mass (k = 1), 5 g at the least.
    """
    inside = [(p, n) for p, n in pieces if n > 0]
    parts_g = sum(p.mass_g * n for p, n in inside)
    lightest = min((p for p, _ in inside), key=lambda p: p.mass_g, default=None)
    return Weight(
        parts_g + (mailer.mass_g if mailer else 0.0),
        max(LEAST_G, parts_g * WEIGHT_TOLERANCE),
        next((p.name for p, _ in inside if p.mass_g <= 0), ""),
        lightest.name if lightest else "",
        lightest.mass_g if lightest else 0.0,
    )
