"""Cuts parts out of a sheet in a programmer's manner, and notes what comes of it."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from itertools import pairwise
from math import hypot

from tests.habits.loops import Loop, Point, Step, cut_out, measure, move, turn_round
from tests.habits.parts import Shape
from tests.habits.pen import Pen, Style

SAFE, NEAR = 12.0, 2.0


@dataclass(frozen=True)
class Manner:
    """Says how one programmer cuts; lengths in mm, heights over the sheet's lower face."""

    bit: float = 6.0
    passes: int = 2
    through: float = 0.3
    entry: str = "plunge"
    lead: str = ""
    overlap: float = 0.0
    gap: float = 0.0
    tabs: int = 0
    tab_wide: float = 6.0
    tab_high: float = 3.0
    triangles: bool = False
    tabs_last_only: bool = False
    finish: float = 0.0
    skin: float = 0.0
    climb: bool = True
    start: float = 0.0


@dataclass(frozen=True)
class Piece:
    """What must come out: sizes in mm, area in mm², tabs."""

    width: float
    length: float
    area: float
    tabs: int


@dataclass(frozen=True)
class Fault:
    """What must be told: one of these kinds, at a line from first to last."""

    kinds: tuple[str, ...]
    first: int
    last: int


@dataclass
class Job:
    """A cut file that is being written, with its truth and the faults put in."""

    name: str
    style: Style = field(default_factory=Style)
    sheet: Point = (1000.0, 600.0)
    thick: float = 12.0
    given: dict[str, object] = field(default_factory=dict)
    pieces: list[Piece] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    pen: Pen = field(init=False)

    def __post_init__(self) -> None:
        self.pen = Pen(self.style, self.sheet, self.thick)

    def open(
        self, bit: float = 6.0, *, remark: str | None = None, tool: int = 1, spin: bool = True
    ) -> "Job":
        """Writes a head with the bit named in a remark."""
        if self.style.percent:
            self.pen.lines.append("%")
        self.pen.note(self.name)
        if remark is None:
            size = f"{bit / 25.4:.4f}" if self.style.inch else f"{bit:g}"
            remark = f"T{tool} D={size} CR=0. - flat end mill"
        for text in remark.split("|"):
            self.pen.note(text)
        self.pen.say(f"G90 {'G20' if self.style.inch else 'G21'} G17")
        self.pen.say("G90.1" if self.style.absolute_centres else "G91.1")
        self.pen.say(f"T{tool} M6")
        if spin:
            self.pen.say("S18000 M3")
        self.pen.lift(SAFE)
        return self

    def close(self) -> "Job":
        """Writes the end."""
        self.pen.lift(SAFE)
        self.pen.say("M5")
        self.pen.say("M30")
        if self.style.percent:
            self.pen.lines.append("%")
        return self

    @contextmanager
    def fault(self, *kinds: str) -> Iterator[None]:
        """Says that what is written within is wrong, by any of these kinds."""
        first = self.pen.next_line
        yield
        self.faults.append(Fault(kinds, first, self.pen.next_line - 1))

    def expect(self, shape: Shape, bit: float = 6.0, tabs: int = 0, drill: float = 0.0) -> None:
        """Adds a part to the truth."""
        low, high = sorted((shape.width, shape.length or shape.width))
        self.pieces.append(Piece(low, high, shape.measure_area(bit, drill), tabs))

    def approach(self, at: Point) -> None:
        """Goes above a place, safe on the way."""
        self.pen.lift(SAFE)
        self.pen.jump(at)
        self.pen.lift(NEAR)

    def cut_part(
        self,
        shape: Shape,
        x: float,
        y: float,
        manner: Manner,
        angle: float = 0.0,
        *,
        mirror: bool = False,
    ) -> None:
        """Cuts a part, its inside first, and adds it to the truth."""

        def put(way: Loop) -> Loop:
            return move(way, x, y, angle, mirror=mirror)

        self.cut_inside(shape, put, manner)
        self.cut_outline(put(shape.draw_outline(manner.bit)), manner, put, shape)
        self.expect(shape, manner.bit, manner.tabs)

    def cut_inside(self, shape: Shape, put: Callable[[Loop], Loop], manner: Manner) -> None:
        """Cuts what lies in a part: shallow ways, drilled holes, strokes, holes."""
        inside = replace(manner, tabs=0, lead="", finish=0.0, skin=0.0, start=0.0)
        for points in shape.shallow:
            self.cut_open(put(_join(points)), -shape.depth, 1)
        for p in shape.drills:
            at = put((Step(p, p),))[0].start
            self.approach(at)
            self.pen.plunge(-self.thick - manner.through, 300.0)
        for points in shape.strokes:
            self.cut_open(put(_join(points)), -self.thick - manner.through, manner.passes)
        for hole in shape.holes:
            self.cut_loop(put(hole.draw(manner.bit)), inside)

    def cut_open(self, way: Loop, deep: float, passes: int) -> None:
        """Cuts an open way to and fro."""
        self.approach(way[0].start)
        for i in range(passes):
            z = deep * (i + 1) / passes
            self.pen.plunge(z)
            self.pen.cut_all(turn_round(way) if i % 2 else way, z)

    def cut_outline(
        self, loop: Loop, manner: Manner, put: Callable[[Loop], Loop], shape: Shape
    ) -> None:
        """Cuts an outline: rough and finished where the manner has it."""
        if manner.climb:
            loop = turn_round(loop)
        if manner.finish:
            rough = put(shape.draw_outline(manner.bit + 2 * manner.finish))
            rough = turn_round(rough) if manner.climb else rough
            self.cut_loop(rough, replace(manner, finish=0.0), outside=True)
            self.cut_loop(loop, replace(manner, passes=1, entry="plunge"), outside=True)
        else:
            self.cut_loop(loop, manner, outside=True)

    def list_depths(self, manner: Manner) -> list[float]:
        """Gives the depths of the passes, from above to below."""
        deep = -self.thick - manner.through
        if manner.skin:
            rough = -self.thick + manner.skin
            return [rough * (i + 1) / manner.passes for i in range(manner.passes)] + [deep]
        return [deep * (i + 1) / manner.passes for i in range(manner.passes)]

    def cut_loop(  # noqa: C901 - one programmer's habits beside each other
        self, loop: Loop, manner: Manner, *, outside: bool = False
    ) -> None:
        """Cuts a closed way in all its passes."""
        whole, at = measure(loop), manner.start
        middles = self.find_tabs(loop, manner)
        lead_in = _lead(loop, at, manner)[0] if outside else ()
        lead_out = _lead(loop, at + manner.overlap - manner.gap, manner)[1] if outside else ()
        first = (lead_in or cut_out(loop, at, at + 1))[0].start
        self.approach(first)
        depths, last = self.list_depths(manner), 0.0
        for z in depths:
            if lead_in and z != depths[0]:
                self.approach(first)
            if manner.entry == "plunge" or lead_in:
                self.pen.plunge(z)
            elif z == depths[0]:
                self.pen.plunge(0.0)
            if lead_in:
                self.pen.cut_all(lead_in, z)
            elif middles and z < -self.thick + manner.tab_high:
                self.pen.plunge(z)  # a ramp would cut the tabs
            elif manner.entry in ("ramp", "helix"):
                down = whole if manner.entry == "helix" else min(40.0, whole / 2)
                self.pen.cut_all(cut_out(loop, at, at + down), z)
                at += down
                if manner.entry == "helix" and z != depths[-1]:
                    continue
            held = [] if manner.tabs_last_only and z != depths[-1] else middles
            end = at + whole + manner.overlap - manner.gap
            self.cut_lap(loop, at, end, z, held, manner)
            if lead_out:
                self.pen.cut_all(lead_out, z)
            elif manner.entry != "plunge":
                at = end
            elif z != depths[-1] and manner.overlap + manner.gap:
                self.approach(first)
            last = z
        assert last

    def find_tabs(self, loop: Loop, manner: Manner) -> list[float]:
        """Finds the middles of tabs, on the longest straight steps."""
        along, found = 0.0, []
        for step in loop:
            if not step.centre:
                found.append((step.length, along + step.length / 2))
            along += step.length
        found = sorted(sorted(found, reverse=True)[: manner.tabs], key=lambda f: f[1])
        assert len(found) == manner.tabs
        return [middle for _, middle in found]

    def cut_lap(
        self, loop: Loop, a: float, b: float, z: float, tabs: list[float], manner: Manner
    ) -> None:
        """Cuts from a to b along at one depth, over tabs where it lies deeper than they."""
        whole, top = measure(loop), -self.thick + manner.tab_high
        half = (manner.tab_wide + manner.bit) / 2 * (2 if manner.triangles else 1)
        laps = [m + k * whole for m in tabs for k in range(-1, 9) if a < m + k * whole < b]
        for middle in sorted(laps) if z < top else []:
            self.pen.cut_all(cut_out(loop, a, middle - half), z)
            if manner.triangles:
                self.pen.cut_all(cut_out(loop, middle - half, middle), top)
                self.pen.cut_all(cut_out(loop, middle, middle + half), z)
            else:
                self.pen.plunge(top)
                self.pen.cut_all(cut_out(loop, middle - half, middle + half), top)
                self.pen.plunge(z)
            a = middle + half
        self.pen.cut_all(cut_out(loop, a, b), z)


def _join(points: tuple[Point, ...]) -> Loop:
    return tuple(Step(a, b) for a, b in pairwise(points))


def _lead(loop: Loop, at: float, manner: Manner) -> tuple[Loop, Loop]:
    """Makes ways onto and off a closed way that goes clockwise outside its part."""
    if not manner.lead:
        return (), ()
    here, after = cut_out(loop, at, at + 0.5)[0].start, cut_out(loop, at, at + 0.5)[0].end
    size = hypot(after[0] - here[0], after[1] - here[1])
    tx, ty = (after[0] - here[0]) / size, (after[1] - here[1]) / size
    nx, ny = (-ty, tx) if manner.climb else (ty, -tx)
    (x, y), r = here, 3.0
    if manner.lead == "straight":
        far = (x + 2 * r * nx, y + 2 * r * ny)
        return (Step(far, here),), (Step(here, far),)
    middle = (x + r * nx, y + r * ny)
    start = (middle[0] - r * tx, middle[1] - r * ty)
    end = (middle[0] + r * tx, middle[1] + r * ty)
    return (
        (Step(start, here, middle, manner.climb),),
        (Step(here, end, middle, manner.climb),),
    )
