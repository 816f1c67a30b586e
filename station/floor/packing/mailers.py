"""The smallest mailer that a stack lies flat in.

The stack is built level by level, the largest parts at the bottom; the first part's box
gives the footprint. A flat mailer must be at least as wide as the stack is wide and thick
together, and as long as it is long and thick together, with an allowance (common practice,
no source). Nothing here is measured: the crew's hands decide.
"""

from typing import NamedTuple

from station.shop.faces import Layer
from station.shop.facts import Mailer, Part

ALLOWANCE_MM = 10.0
WEIGHT_TOLERANCE = 0.05  # share of the parts' mass, for wood that is more or less dry


class Stack(NamedTuple):
    """Parts stacked flat: box in mm, mass in grams, the layers to draw."""

    length_mm: float
    width_mm: float
    thick_mm: float
    mass_g: float
    layers: tuple[Layer, ...]


def stack(pieces: list[tuple[Part, int]]) -> Stack:
    """Stacks so many of each part, the largest face at the bottom."""
    boxes = sorted(((_box(p), p, n) for p, n in pieces if n > 0), key=lambda b: -b[0][0] * b[0][1])
    if not boxes:
        return Stack(0.0, 0.0, 0.0, 0.0, ())
    length = max(box[0] for box, _, _ in boxes)
    width = max(box[1] for box, _, _ in boxes)
    layers: list[Layer] = []
    thick = 0.0
    for level, (box, part, count) in enumerate(boxes):
        a_level = max(1, int((length + 1) // (box[0] + 1)) * int((width + 1) // (box[1] + 1)))
        thick += -(-count // a_level) * part.thickness_mm
        layers += _lay(part, box, min(count, a_level), count, level, length)
    mass = sum(part.mass_g * count for _, part, count in boxes)
    return Stack(length, width, thick, mass, tuple(layers))


def _box(part: Part) -> tuple[float, float]:
    """A part's box, the longer side first."""
    x, y = part.shape.box if part.shape else (100.0, 50.0)
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


def weight(made: Stack, mailer: Mailer | None) -> tuple[float, float]:
    """Expected grams and their uncertainty (k = 1, a share of the wood's mass)."""
    return (
        made.mass_g + (mailer.mass_g if mailer else 0.0),
        max(5.0, made.mass_g * WEIGHT_TOLERANCE),
    )
