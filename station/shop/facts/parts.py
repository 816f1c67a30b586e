"""Parts and where they lie; cut files and what a revision makes of one sheet."""

from dataclasses import dataclass
from functools import cached_property
from typing import Annotated, ClassVar, Literal

from station.shop.facts.about import About
from station.shop.facts.base import RETIRED, Description, Fact, InUse, Name, PlaceOnBed, Shelf
from station.shop.facts.clear import Clear
from station.shop.words import Say, length, say

SizeKind = Literal["outside", "inside", "pitch", "thickness"]
# cuts parts out; or is a run on their sheets: a second operation, an engraving, a laser
CutWork = Literal["parts", "second", "engraving", "laser"]


@dataclass(frozen=True, kw_only=True)
class Size:
    """One size of a part that is compared with its master. `low`/`high` are limits."""

    name: Name  # "A along"
    nominal_mm: Annotated[float, About(say("nominal"), unit="mm")]
    low_mm: Annotated[float, About(say("low"), unit="mm")]
    high_mm: Annotated[float, About(say("high"), unit="mm")]
    kind: Annotated[SizeKind, About(say("kind"), typed=False)] = "outside"

    @property
    def in_words(self) -> Say:
        """Its name with what it should be about: ``A along, about 399 mm``."""
        return say("{size}, about {mm} mm", size=self.name, mm=length(self.nominal_mm))

    def allows(self, mm: float) -> bool:
        """Whether a reading keeps the limits; one that is on a limit does."""
        return self.low_mm <= mm <= self.high_mm


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
        return measure_loop(self.outline) - sum(measure_loop(hole) for hole in self.holes)


def measure_loop(loop: Loop) -> float:
    """Measures the area that a closed outline goes around, mm²."""
    following = (*loop[1:], *loop[:1])
    pairs = zip(loop, following, strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)) / 2


@dataclass(frozen=True, kw_only=True)
class Part(Fact):
    """A small flat part. `mark`: when the rack falls below it, more is cut."""

    kind: ClassVar[str] = "part"
    name: Name  # "HC-300"
    words: Description  # "Heddle comb 300"
    # id of its rack place
    rack: Annotated[str, About(say("rack"), points_at="rack", may_be_empty=True)] = ""
    mark: Annotated[int, About(say("minimum"), least=0, most=999_999)] = 0
    thickness_mm: Annotated[
        float, About(say("thickness"), unit="mm", above=0, inch_start=0.25)
    ] = 6.0
    mass_g: Annotated[float, About(say("mass"), unit="g", least=0)] = 0.0
    shape: Shape | None = None
    sizes: Annotated[tuple[Size, ...], About(say("sizes"))] = ()
    small: Annotated[bool, About(say("small"))] = False  # trim in a holder
    # one in so many is compared with the master
    check_every: Annotated[int, About(say("check every"), most=999_999)] = 20
    active: InUse = True

    @property
    def tabs(self) -> int:
        """Tab stubs to trim on one piece."""
        return len(self.shape.tabs) if self.shape else 0


@dataclass(frozen=True, kw_only=True)
class RackPlace(Fact):
    """A place on the rack, under the master of one part."""

    kind: ClassVar[str] = "rack"
    name: Name  # "C 14"
    # empty: nothing has its place there yet
    part: Annotated[str, About(say("part"), points_at="part", may_be_empty=True)] = ""
    # pieces that it holds; 0: not known
    room: Annotated[int, About(say("room, pieces"), least=0, most=999_999)] = 0
    active: InUse = True

    @property
    def shelf(self) -> Shelf:
        """All of them; a retired one stands apart."""
        return ("all" if self.active else RETIRED, self.id)


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
    name: Name  # "HC300-SET"
    words: Description  # "Heddle comb 300 + shuttles"
    # revision letter; empty: none may be cut
    approved: Annotated[str, About(say("approved"), typed=False)] = ""
    work: Annotated[CutWork, About(say("work"))] = "parts"
    active: InUse = True


@dataclass(frozen=True, kw_only=True)
class ReadAs:
    """What a person said of how a cut file's text is read; what is empty is found from the text.

    `zero` is "face" or "spoilboard", `origin` "centre" or a corner: "lower-left", "upper-left",
    "lower-right", "upper-right"; `units` is "mm" or "inch"; `dialect` names one of the reader's,
    or several by +.
    """

    bits: tuple[tuple[int, float], ...] = ()  # T number, diameter in mm
    zero: str = ""
    origin: str = ""
    spoilboard_mm: float | None = None  # how deep a cut may go into it
    units: str = ""
    dialect: str = ""


@dataclass(frozen=True, kw_only=True)
class Revision(Fact):
    """One revision of a cut file, never changed: what it makes and takes, per sheet.

    Its id is ``<cut file id>.<letter>``. `shapes` are the pieces' outlines by part id;
    the drawing of the sheet is made from `placed` alone.
    """

    kind: ClassVar[str] = "revision"
    cut_file: Annotated[str, About(say("cut file"), points_at="cutfile")]
    letter: Annotated[str, About(say("letter"))]
    material: Annotated[str, About(say("material"), points_at="material")]
    minutes: Annotated[float, About(say("minutes"), above=0, most=9999)]
    # ids that can run it; empty: every one
    routers: Annotated[
        tuple[Annotated[str, About(say("router"), points_at="router")], ...],
        About(say("routers")),
    ] = ()
    length_mm: Annotated[float, About(say("length"), unit="mm", above=0, inch_start=96)] = 2440.0
    width_mm: Annotated[float, About(say("width"), unit="mm", above=0, inch_start=48)] = 1220.0
    shapes: tuple[tuple[str, Shape], ...] = ()
    placed: tuple[Placed, ...] = ()
    bits: tuple[BitUse, ...] = ()
    hold_downs: Annotated[tuple[PlaceOnBed, ...], About(say("hold downs"))] = ()
    digest: str = ""  # SHA-256 of the text that was approved
    # ids of the revisions that run on each sheet, in order
    runs: Annotated[
        tuple[Annotated[str, About(say("revision"), points_at="revision")], ...],
        About(say("runs")),
    ] = ()
    note: Annotated[str, About(say("note"))] = ""
    read_as: ReadAs = ReadAs()  # what was said of its text, and holds for the next one
    # what the reading found that must be mended before it is cut: approving it is asked twice
    stops: Annotated[int, About(say("to be mended"), typed=False, least=0, most=9999)] = 0
    # the name of the file that was read, to be opened at the router; empty: not known
    file: Annotated[str, About(say("file"), typed=False)] = ""
    clear: Clear = Clear()  # of every stroke: its strokes themselves are not kept

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
