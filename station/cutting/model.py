"""The plain data that reading and analysing a cut file work on. All lengths are mm."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields

import numpy as np
import numpy.typing as npt

from station.shop.facts import Router, Shop
from station.shop.words import Say, say

Floats = npt.NDArray[np.float64]
Complexes = npt.NDArray[np.complex128]
Ints = npt.NDArray[np.int64]
Bools = npt.NDArray[np.bool_]
Bytes = npt.NDArray[np.uint8]

Progress = Callable[[float], None]
Cancelled = Callable[[], bool]

RAPID, LINE, CW, CCW = 0, 1, 2, 3  # kinds of moves, as G0 to G3
XY, XZ, YZ = 17, 18, 19  # planes, as G17 to G19
MOST_OF_A_KIND = 1000  # more problems of one kind are counted, not listed

# axes of each plane: first, second, and the one along a helix
PLANE_AXES: dict[int, tuple[int, int, int]] = {XY: (0, 1, 2), XZ: (2, 0, 1), YZ: (1, 2, 0)}


class Cancel(Exception):  # noqa: N818 - not an error: a person pressed cancel
    """Tells that a person cancelled the reading."""


@dataclass(frozen=True)
class Setting:
    """Holds what is known beside the text. None or empty: inferred from the file, and said so.

    `sheet` is (along x, along y); `origin` one of ORIGINS; `zero` "face" or "spoilboard": where Z
    is 0. `spoilboard_mm`: how deep a cut may go into the spoilboard.
    `bit_mm` are diameters that a person gave, by T number (-1: of each that has none); the
    changer's, the spindle's and the router's usual bit stand beside. `units`: "mm" or "inch", for
    a file that does not say. `hold_downs`: (x, y) on the sheet.
    """

    router: Router | None = None
    thickness_mm: float | None = None
    sheet: tuple[float, float] | None = None
    bit_mm: Mapping[int, float] = field(default_factory=dict)
    changer_mm: Mapping[int, float] = field(default_factory=dict)
    spindle_mm: float | None = None
    usual_mm: float | None = None
    flutes: int = 2  # of a bit that is not in flutes_of
    flutes_of: Mapping[int, int] = field(default_factory=dict)  # by T number
    origin: str | None = None
    zero: str | None = None
    spoilboard_mm: float | None = None
    units: str | None = None
    dialect: str = "report"
    hold_downs: tuple[tuple[float, float], ...] = ()
    shop: Shop = field(default_factory=lambda: Shop(id="shop"))  # its limits for cut files
    cuts_out: bool = True  # False: a run on the sheets of another file, which need not go through
    bits_there: frozenset[int] | None = None  # T numbers that the router has; None: not asked

    def count_teeth(self, number: int) -> int:
        """Counts the cutting edges of the bit with a T number."""
        return max(1, self.flutes_of.get(number, self.flutes))


STOP, LOOK, KNOW = "stop", "look", "know"  # how grave a problem is
GRADES = {  # of kinds; one that does not stand here is worth a look
    "rapid-in-sheet": STOP,
    "spindle-off": STOP,
    "change-low": STOP,
    "nothing-cut": STOP,
    "gouge": STOP,
    "bit-differs": STOP,
    "thickness": STOP,
    "outside-bed": STOP,
    "bit-missing": STOP,
    "skin": KNOW,
    "chip-load": KNOW,
    "across-edge": KNOW,
    "frees-nothing": KNOW,
}


@dataclass(frozen=True)
class Problem:
    """Tells what could go wrong in `line` (from 1; 0: the whole file), whose text is `source`."""

    line: int
    kind: str
    text: Say
    source: str = ""
    at: tuple[float, float] | None = None
    graded: str = ""  # where its kind does not say it

    @property
    def grade(self) -> str:
        """Tells how grave it is: stop, look or know."""
        return self.graded or GRADES.get(self.kind, LOOK)


def count_unlisted(kind: str, count: int) -> Problem:
    """Makes the problem that stands for those of one kind that are too many to be listed."""
    left = count - MOST_OF_A_KIND
    text = say("{left} more like the {most} that are listed.", left=left, most=MOST_OF_A_KIND)
    return Problem(0, kind, text)


@dataclass(frozen=True)
class Moves:
    """Holds the path in columns. Move i goes from ``points[i]`` to ``points[i + 1]``.

    `centre` holds an arc's centre in its plane's two axes, `sweep` its angle in radians
    (counter-clockwise positive, turns included). `feed` is mm/min; `minutes` is set (not
    NaN) where inverse time feed fixes a block's time. `sure` is False where a height or
    place is not known from the text (after homing).
    """

    points: Floats  # (n + 1, 3)
    kind: Bytes
    plane: Bytes
    centre: Floats  # (n, 2)
    sweep: Floats
    feed: Floats
    minutes: Floats
    tool: Ints
    rpm: Floats  # 0: spindle off; NaN: it turns, at a speed that the file has not said
    line: Ints
    sure: Bools
    exact: Bools  # G61: stops at its end

    def __len__(self) -> int:
        return len(self.kind)

    def take_some(self, first: int, stop: int) -> Moves:
        """Takes the moves from `first` to before `stop`, as a view of the same columns."""
        some = {f.name: getattr(self, f.name)[first:stop] for f in fields(self)}
        return Moves(**{**some, "points": self.points[first : stop + 1]})


@dataclass(frozen=True)
class Pause:
    """Stops the path before move `move`: dwell, tool change, stop, spindle."""

    move: int
    kind: str  # dwell, tool, stop
    seconds: float
    line: int
    tool: int = 0


@dataclass(frozen=True)
class SideSet:
    """Sets from move `move` on the side of the path on which the bit goes: 41 left, 42 right, 40
    none; `radius_mm`: of the bit, where the file has set it.
    """

    move: int
    side: int
    radius_mm: float | None = None


@dataclass(frozen=True)
class BitSaid:
    """Tells what a remark says of a bit: its T number (None: the one that is in), its size;
    `named`: the remark itself has the number.
    """

    number: int | None
    diameter_mm: float
    line: int
    text: str
    named: bool = False


@dataclass(frozen=True)
class Program:
    """Holds a read cut file: its path, pauses, and what the reader has to say of it."""

    moves: Moves
    pauses: tuple[Pause, ...]
    problems: tuple[Problem, ...]
    assumed: tuple[str, ...]
    lines: int
    units: str  # mm or inch
    refused: Say = Say()  # why it was not read at all
    bits_said: tuple[BitSaid, ...] = ()
    zero_said: str = ""  # face or spoilboard, where a remark says it
    origin_said: str = ""  # one of ORIGINS, the same
    thickness_said: tuple[float, int] | None = None  # mm, and the remark's line
    other_zero: tuple[int, str] | None = None  # the line where it changes, and its name
    backward: int = 0  # the line where the spindle is first to turn backwards
    skipped: tuple[tuple[int, int], ...] = ()  # first and last lines that begin with a slash
    sides: tuple[SideSet, ...] = ()  # G41 and G42, that the moves leave out
    otherwise: Program | None = None  # as read where those lines are run, or are not


@dataclass(frozen=True)
class BitWork:
    """Tells what one bit does on one sheet."""

    number: int
    diameter_mm: float
    cut_mm: float
    feed_mm: float
    seconds: float
    revolutions: float
    chip_mm: tuple[float, float]  # smallest and largest chip load


@dataclass(frozen=True)
class Tab:
    """Holds a tab of one piece: its place on the piece's edge, its width and its height."""

    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    style: str  # square, ramped, gap, or stub: left on the piece, and nothing hangs on it
    line: int


Ring = npt.NDArray[np.float64]  # (n, 2), last joins first


@dataclass(frozen=True)
class Hollow:
    """Holds where a piece is cut, but not through: a pocket, a groove, engraving."""

    depth_mm: float
    outline: Ring
    islands: tuple[Ring, ...] = ()  # within it, not cut as deep


@dataclass(frozen=True)
class Piece:
    """Holds one piece on the sheet: its true edge, holes, tabs, and its place in the file."""

    outline: Ring
    holes: tuple[Ring, ...]
    tabs: tuple[Tab, ...]
    tool: int
    line: int
    shape: int = -1  # index in the analysis's shapes
    turn_deg: float = 0.0  # from its shape: first mirrored left to right, then turned
    mirrored: bool = False
    covered: float = 1.0  # part of its outline that is cut through
    skin_mm: float = 0.0  # left on purpose all around it
    hollows: tuple[Hollow, ...] = ()


@dataclass(frozen=True)
class ShapeFound:
    """Holds equal pieces whatever their turn or mirror.

    Sizes are those of the true edge, width <= length.
    """

    index: int
    name: str | None
    part: str | None  # id of the shop's part
    width_mm: float
    length_mm: float
    area_mm2: float
    perimeter_mm: float
    pieces: tuple[int, ...]
    mirrored: int
    outline: Ring = field(repr=False, default_factory=lambda: np.zeros((0, 2)))
    holes: tuple[Ring, ...] = field(repr=False, default=())
    hollows: tuple[Hollow, ...] = field(repr=False, default=())


@dataclass(frozen=True)
class Analysis:
    """Holds all that was worked out of one cut file."""

    program: Program
    feed_mm: float
    rapid_mm: float
    plunges: int
    time_s: float | None
    file_s: float | None  # before the router's own correction
    bounds_mm: tuple[float, float, float, float, float, float]
    bits: tuple[BitWork, ...]
    pieces: tuple[Piece, ...]
    shapes: tuple[ShapeFound, ...]
    scrap_mm2: float
    thickness_mm: float
    sheet_mm: tuple[float, float]
    corner_mm: tuple[float, float]  # lower left of the sheet in the file's frame
    face_z: float
    assumed: tuple[str, ...]
    problems: tuple[Problem, ...]
    small_mm2: float  # a loose piece below this flies
    parts_mm2: float = 0.0
    waste_mm2: float = 0.0  # slugs and leftovers that come loose
    skeleton_mm2: float = 0.0
    kerf_mm2: float = 0.0  # what the bits take, tabs closed
    closed_cuts: int = 0  # contours that free something
    slugs: tuple[Ring, ...] = field(repr=False, default=())

    def mass_g(self, shape: ShapeFound, density_kg_m3: float) -> float:
        """Gives the mass of one piece of a shape, its holes taken off, grams."""
        return shape.area_mm2 * self.thickness_mm * density_kg_m3 * 1e-6
