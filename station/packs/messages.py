"""Names what is asked of packing and what is answered: parts, mailers, layers of piles.

Lengths are mm, masses g. x runs along a mailer's length, y along its width, z up.
"""

from dataclasses import dataclass
from typing import NamedTuple

NEAR = 1e-6  # mm: what is closer is the same


class PackPart(NamedTuple):
    """So many flat pieces of one part; `small` ones lie between larger ones."""

    name: str
    length_mm: float
    width_mm: float
    thick_mm: float
    pieces: int
    small: bool = False


class PackMailer(NamedTuple):
    """A mailer's inside lying flat, what it closes over, its mass."""

    name: str
    length_mm: float
    width_mm: float
    thick_mm: float
    mass_g: float = 0.0

    def takes(self, length: float, width: float, thick: float, allowance: float) -> bool:
        """Tells whether it closes over a box that lies in it, either way round.

        Lying flat it must be as long as the box is long and thick together, and as wide as
        the box is wide and thick together, with the allowance (common practice, no source).
        """
        own = sorted((self.length_mm, self.width_mm))
        box = sorted((length, width))
        near = all(b + thick + allowance <= o + NEAR for b, o in zip(box, own, strict=True))
        return near and thick <= self.thick_mm + NEAR


@dataclass(frozen=True, kw_only=True)
class PackProblem:
    """What is to be packed, into one of which mailers.

    `allowance_mm` a mailer must be larger in each direction; `gap_mm` lies between parts.
    """

    parts: tuple[PackPart, ...]
    mailers: tuple[PackMailer, ...]
    allowance_mm: float = 0.0
    gap_mm: float = 0.0


class PackPile(NamedTuple):
    """Pieces of one part on each other, in one layer; the corner nearest to 0, 0."""

    part: str
    x_mm: float
    y_mm: float
    length_mm: float  # along x
    width_mm: float  # along y
    pieces: int


class PackLayer(NamedTuple):
    """Piles side by side; as high as the highest of them may be."""

    height_mm: float
    piles: tuple[PackPile, ...]

    @property
    def size_mm(self) -> tuple[float, float]:
        """Length and width of the box around its piles."""
        xs = [(p.x_mm, p.x_mm + p.length_mm) for p in self.piles]
        ys = [(p.y_mm, p.y_mm + p.width_mm) for p in self.piles]
        return (
            max(b for _, b in xs) - min(a for a, _ in xs),
            max(b for _, b in ys) - min(a for a, _ in ys),
        )

    @property
    def covered(self) -> float:
        """The share of its box that piles cover, 0 to 1."""
        length, width = self.size_mm
        return sum(p.length_mm * p.width_mm for p in self.piles) / (length * width)


@dataclass(frozen=True, kw_only=True)
class PackAnswer:
    """How the pieces lie, from the bottom up, and the mailer; empty where none takes them.

    `loose` says that a rule of the stack had to be let go: it is a tower, or small parts
    lie outside.
    """

    layers: tuple[PackLayer, ...] = ()
    mailer: str = ""
    loose: bool = False

    @property
    def size_mm(self) -> tuple[float, float, float]:
        """Length, width and thickness of the stack."""
        if not self.layers:
            return (0.0, 0.0, 0.0)
        sizes = [layer.size_mm for layer in self.layers]
        thick = sum(layer.height_mm for layer in self.layers)
        return (max(s[0] for s in sizes), max(s[1] for s in sizes), thick)
