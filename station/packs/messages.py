"""Names what is asked of packing and what is answered: parts, mailers, layers of piles.

Lengths are mm, masses g. x runs along a mailer's length, y along its width, z up.
"""

from dataclasses import dataclass
from typing import Literal, NamedTuple

NEAR = 1e-6  # mm: what is closer is the same


class PackPart(NamedTuple):
    """So many flat pieces of one part; `small` ones lie between larger ones."""

    name: str
    length_mm: float
    width_mm: float
    thick_mm: float
    pieces: int
    small: bool = False


PackKind = Literal["mailer", "sleeve", "box"]


class PackMailer(NamedTuple):
    """What pieces are packed in: its inside lying flat, what it closes over, its mass.

    A mailer still has its `flap_mm` in its length; a sleeve is open at both ends; a box is as
    high inside as `thick_mm`.
    """

    name: str
    length_mm: float
    width_mm: float
    thick_mm: float
    mass_g: float = 0.0
    kind: PackKind = "mailer"
    flap_mm: float = 0.0
    price: float = 0.0  # 0: not known

    def find_room(self, thick: float, allowance: float) -> tuple[float, float]:
        """Finds the length and width that a stack so thick may have in it.

        Lying flat, a mailer must be as long as the stack is long and thick together, and as wide
        as it is wide and thick together; a sleeve only so wide; a box as its inside is (common
        practice, no source).
        """
        around = 0.0 if self.kind == "box" else thick
        along = thick if self.kind == "mailer" else 0.0
        return (
            self.length_mm - self.flap_mm - along - allowance,
            self.width_mm - around - allowance,
        )

    def takes(self, length: float, width: float, thick: float, allowance: float) -> bool:
        """Tells whether it closes over a box that lies in it, either way round."""
        return thick <= self.thick_mm + NEAR and any(
            self.takes_lying(*way, thick, allowance) for way in ((length, width), (width, length))
        )

    def takes_lying(self, length: float, width: float, thick: float, allowance: float) -> bool:
        """Tells whether a box lies in it with its length along the mailer's."""
        room = self.find_room(thick, allowance)
        return length <= room[0] + NEAR and width <= room[1] + NEAR


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
