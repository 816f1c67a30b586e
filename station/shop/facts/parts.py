"""Parts and where they lie; cut files and what a revision makes of one sheet."""

from dataclasses import dataclass
from functools import cached_property
from typing import ClassVar, Literal

from station.shop.facts.base import Fact, Shelf

SizeKind = Literal["outside", "inside", "pitch", "thickness"]
# cuts parts out; or is a run on their sheets: a second operation, an engraving, a laser
CutWork = Literal["parts", "second", "engraving", "laser"]


@dataclass(frozen=True, kw_only=True)
class Size:
    """One size of a part that is compared with its master. `low`/`high` are limits."""

    name: str  # "A along"
    nominal_mm: float
    low_mm: float
    high_mm: float
    kind: SizeKind = "outside"


Loop = tuple[tuple[float, float], ...]  # a closed outline, (x, y) in mm, last joins first


@dataclass(frozen=True, kw_only=True)
class Recess:
    """Where a part is cut, but not through: a pocket, a groove, engraving."""

    depth_mm: float
    outline: Loop
    islands: tuple[Loop, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Shape:
    """A flat outline with its holes; lower left of its box at 0, 0."""

    outline: Loop
    holes: tuple[Loop, ...] = ()
    tabs: tuple[tuple[float, float], ...] = ()  # where tabs hold it, on the outline
    recesses: tuple[Recess, ...] = ()

    @property
    def box(self) -> tuple[float, float]:
        """Length along x and width along y, mm."""
        xs, ys = zip(*self.outline, strict=True) if self.outline else ((0.0,), (0.0,))
        return (max(xs) - min(xs), max(ys) - min(ys))

    @property
    def area_mm2(self) -> float:
        """The area inside the outline, without its holes."""
        return _measure_loop(self.outline) - sum(_measure_loop(hole) for hole in self.holes)


def _measure_loop(loop: Loop) -> float:
    """Measures the area that a closed outline goes around, mm²."""
    following = (*loop[1:], *loop[:1])
    pairs = zip(loop, following, strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)) / 2


@dataclass(frozen=True, kw_only=True)
class Part(Fact):
    """A small flat part. `mark`: when the rack falls below it, more is cut."""

    kind: ClassVar[str] = "part"
    name: str  # "HC-300"
    words: str  # "Heddle comb 300"
    rack: str = ""  # id of its rack place
    mark: int = 0
    thickness_mm: float = 6.0
    mass_g: float = 0.0
    shape: Shape | None = None
    sizes: tuple[Size, ...] = ()
    small: bool = False  # trim in a holder
    check_every: int = 20  # one in so many is compared with the master
    active: bool = True

    @property
    def tabs(self) -> int:
        """Tab stubs to trim on one piece."""
        return len(self.shape.tabs) if self.shape else 0


@dataclass(frozen=True, kw_only=True)
class RackPlace(Fact):
    """A place on the rack, under the master of one part."""

    kind: ClassVar[str] = "rack"
    name: str  # "C 14"
    part: str


@dataclass(frozen=True, kw_only=True)
class Placed:
    """One piece on the sheet: which part, where its box's lower left is, how turned."""

    part: str
    x_mm: float
    y_mm: float
    turn_deg: float = 0.0
    mirrored: bool = False
    tabs: tuple[tuple[float, float], ...] = ()  # on the sheet, mm; empty: as its shape


@dataclass(frozen=True, kw_only=True)
class BitUse:
    """What a cut file asks of one bit for one sheet."""

    number: int  # the T number in the file
    diameter_mm: float
    cut_mm: float  # length it is in the cut, a sheet


@dataclass(frozen=True, kw_only=True)
class CutFile(Fact):
    """A cut file by name, and which of its revisions may be cut."""

    kind: ClassVar[str] = "cutfile"
    name: str  # "HC300-SET"
    words: str  # "Heddle comb 300 + shuttles"
    approved: str = ""  # revision letter; empty: none may be cut
    work: CutWork = "parts"
    active: bool = True


@dataclass(frozen=True, kw_only=True)
class Revision(Fact):
    """One revision of a cut file, never changed: what it makes and takes, per sheet.

    Its id is ``<cut file id>.<letter>``. `shapes` are the pieces' outlines by part id;
    the drawing of the sheet is made from `placed` alone.
    """

    kind: ClassVar[str] = "revision"
    cut_file: str
    letter: str
    material: str
    minutes: float
    routers: tuple[str, ...] = ()  # ids that can run it; empty: every one
    length_mm: float = 2440.0
    width_mm: float = 1220.0
    shapes: tuple[tuple[str, Shape], ...] = ()
    placed: tuple[Placed, ...] = ()
    bits: tuple[BitUse, ...] = ()
    hold_downs: tuple[tuple[float, float], ...] = ()
    digest: str = ""  # SHA-256 of the text that was approved
    runs: tuple[str, ...] = ()  # ids of the revisions that run on each sheet, in order
    note: str = ""

    @staticmethod
    def id_of(cut_file: str, letter: str) -> str:
        """Gives the id of a cut file's revision by its letter."""
        return f"{cut_file}.{letter}"

    @property
    def shelf(self) -> Shelf:
        """By cut file."""
        return (self.cut_file, self.letter)

    @property
    def in_order(self) -> tuple[str, ...]:
        """The ids of all runs of a sheet, its own first where it is not named."""
        return self.runs if self.id in self.runs else (self.id, *self.runs)

    def takes(self, router: str) -> bool:
        """Whether a router can run it."""
        return not self.routers or router in self.routers

    def makes(self) -> dict[str, int]:
        """Pieces of each part on one sheet, in the order they are first placed."""
        return dict(self._pieces)

    @cached_property
    def _pieces(self) -> dict[str, int]:
        """The same, counted once: a sheet has hundreds of them, and every look asks for it."""
        counts: dict[str, int] = {}
        for piece in self.placed:
            counts[piece.part] = counts.get(piece.part, 0) + 1
        return counts
