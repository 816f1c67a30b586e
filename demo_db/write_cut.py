"""Writes the RS-274 text of a sheet from its placements, as a shop's own files look.

Zero is the sheet's face at its lower left, the bit's centre runs on the exact offset of
every edge. The small bit goes first (holes by a drilling cycle, slots), then the large
one (pockets, outlines in passes, the last ones lifted over the tabs). Feeds, depths and
spindle speeds are common practice, no source. ``python -m demo_db.write_cut`` writes all
files anew into ``cut_files``.
"""

from dataclasses import dataclass, field
from math import hypot
from pathlib import Path

from demo_db.geometry import (
    Corner,
    Corners,
    Piece,
    Point,
    length,
    offset,
    path,
    radius,
    rectangle,
    reverse,
    turned,
)
from demo_db.parts import THICKNESS, Design, designs
from station.shop.facts import BitUse, Placed

LARGE, SMALL = 1, 2  # the T numbers
DIAMETER = {LARGE: 6.0, SMALL: 3.0}
FEED = {LARGE: 8000.0, SMALL: 3600.0}  # mm a minute
PLUNGE = {LARGE: 2000.0, SMALL: 1200.0}
SPEED = {LARGE: 18000, SMALL: 21000}
PASS = {LARGE: 3.4, SMALL: 3.4}  # mm deep
RAPID = 18000.0
CHANGE_MIN = 1.5  # a tool change, in the file's time
SAFE, NEAR = 15.0, 2.0
THROUGH = 0.2  # into the spoilboard
TAB_WIDE, TAB_HIGH, SLOPE = 6.0, 1.5, 4.0


@dataclass(frozen=True, kw_only=True)
class Job:
    """What is written: a name, the material's number, the pieces, and the style."""

    name: str
    letter: str
    material: str
    placed: tuple[Placed, ...]
    inch: bool = False
    radius_arcs: bool = False


@dataclass(frozen=True, kw_only=True)
class Cut:
    """A text, and what it asks of time and bits."""

    text: str
    minutes: float
    bits: tuple[BitUse, ...]


@dataclass
class Writer:
    """Writes moves as lines and keeps count of lengths and time; all in mm."""

    inch: bool = False
    radius_arcs: bool = False
    lines: list[str] = field(default_factory=list)
    at: tuple[float, float, float] = (0.0, 0.0, SAFE)
    tool: int = 0
    minutes: float = 0.0
    cut_mm: dict[int, float] = field(default_factory=dict)

    def num(self, value: float) -> str:
        """A length as written: without idle zeros, in the file's unit."""
        text = f"{value / 25.4:.5f}" if self.inch else f"{value:.3f}"
        text = text.rstrip("0").rstrip(".")
        return "0" if text in ("-0", "") else text

    def rapid(self, x: float, y: float) -> None:
        """Over to a place, at the safe height."""
        if self.at[2] < SAFE:
            self._up()
        self.minutes += hypot(x - self.at[0], y - self.at[1]) / RAPID
        self.at = (x, y, SAFE)
        self.lines.append(f"G0 X{self.num(x)} Y{self.num(y)}")

    def _up(self) -> None:
        self.minutes += (SAFE - self.at[2]) / RAPID
        self.at = (*self.at[:2], SAFE)
        self.lines.append(f"G0 Z{self.num(SAFE)}")

    def plunge(self, z: float) -> None:
        """Down to a depth at the plunge feed, from just above the face."""
        if self.at[2] > NEAR:
            self.lines.append(f"G0 Z{self.num(NEAR)}")
            self.at = (*self.at[:2], NEAR)
        self.minutes += abs(self.at[2] - z) / PLUNGE[self.tool]
        self.at = (*self.at[:2], z)
        self.lines.append(f"G1 Z{self.num(z)} F{self.num(PLUNGE[self.tool])}")

    def line(self, x: float, y: float, z: float | None = None) -> None:
        """A straight cut, up or down a slope where `z` is given."""
        depth = self.at[2] if z is None else z
        self._count(hypot(x - self.at[0], y - self.at[1]))
        words = f"G1 X{self.num(x)} Y{self.num(y)}"
        if depth != self.at[2]:
            words += f" Z{self.num(depth)}"
        self.at = (x, y, depth)
        self.lines.append(f"{words} F{self.num(FEED[self.tool])}")

    def arc(self, piece: Piece) -> None:
        """An arc at the same depth."""
        assert piece.centre is not None
        (x, y), (cx, cy) = piece.end, piece.centre
        self._count(length(piece))
        if self.radius_arcs:
            middle = f"R{self.num(radius(piece))}"
        else:
            middle = f"I{self.num(cx - piece.start[0])} J{self.num(cy - piece.start[1])}"
        word = "G3" if piece.left else "G2"
        self.lines.append(f"{word} X{self.num(x)} Y{self.num(y)} {middle}")
        self.at = (x, y, self.at[2])

    def drill(self, spot: Point, z: float, *, first: bool) -> None:
        """A hole by the drilling cycle, which stays on from the first one."""
        x, y = spot
        words = f"X{self.num(x)} Y{self.num(y)}"
        if first:
            feed = self.num(PLUNGE[self.tool])
            words = f"G98 G81 {words} Z{self.num(z)} R{self.num(NEAR)} F{feed}"
        self.minutes += hypot(x - self.at[0], y - self.at[1]) / RAPID
        self.minutes += (NEAR - z) / PLUNGE[self.tool]
        self.cut_mm[self.tool] = self.cut_mm.get(self.tool, 0.0) - z
        self.at = (x, y, SAFE)
        self.lines.append(words)

    def _count(self, mm: float) -> None:
        self.minutes += mm / FEED[self.tool]
        self.cut_mm[self.tool] = self.cut_mm.get(self.tool, 0.0) + mm

    def take(self, tool: int) -> None:
        """Changes the bit and starts the spindle."""
        self._up()
        self.tool, self.minutes = tool, self.minutes + CHANGE_MIN
        self.lines += ["M5", f"T{tool} M6", f"(BIT {tool}: {DIAMETER[tool]:.1f} MM)",
                       f"S{SPEED[tool]} M3", "G4 P3"]  # fmt: skip


def write(job: Job) -> Cut:
    """The whole text of a sheet."""
    w = Writer(inch=job.inch, radius_arcs=job.radius_arcs)
    thick = THICKNESS[job.material]
    w.lines += [
        "%",
        f"({job.name} REVISION {job.letter})",
        f"(SHEET 2440 X 1220 MM, {thick:g} MM, ZERO ON THE FACE AT THE LOWER LEFT)",
        f"(ON THE BED: {len(job.placed)} PIECES)",
        f"{'G20' if job.inch else 'G21'} G90 G17 G40 G49 G80 G94",
        f"G0 Z{w.num(SAFE)}",
    ]
    if any(_needs_small(designs()[p.part]) for p in job.placed):
        w.take(SMALL)
        _holes(w, job, thick)
        for p in job.placed:
            _slots(w, p, thick)
    w.take(LARGE)
    _holes(w, job, thick)
    for p in job.placed:
        _slots(w, p, thick)
        _pockets(w, p)
    for p in job.placed:
        _outline(w, p, thick)
    w.lines += [f"G0 Z{w.num(SAFE)}", "M5", "G0 X0 Y0", "M30", "%"]
    bits = tuple(
        BitUse(number=t, diameter_mm=DIAMETER[t], cut_mm=round(mm, 1))
        for t, mm in sorted(w.cut_mm.items())
    )
    return Cut(text="\n".join(w.lines) + "\n", minutes=round(w.minutes, 1), bits=bits)


def _needs_small(design: Design) -> bool:
    drilled = bool(design.holes) and design.hole_mm == DIAMETER[SMALL]
    return drilled or any(bit_for(slot) == SMALL for slot in design.slots)


def _on_sheet(p: Placed, corners: Corners) -> Corners:
    """A design's loop where the piece lies."""
    box = designs()[p.part].box
    moved = (turned((c.x, c.y), p.turn_deg, box) for c in corners)
    return tuple(
        Corner(x + p.x_mm, y + p.y_mm, c.r) for (x, y), c in zip(moved, corners, strict=True)
    )


def _holes(w: Writer, job: Job, thick: float) -> None:
    """Every hole of this bit's size in one drilling cycle."""
    of_size = (p for p in job.placed if designs()[p.part].hole_mm == DIAMETER[w.tool])
    spots = [c for p in of_size for c in _hole_spots(p)]
    for n, spot in enumerate(spots):
        w.drill(spot, -thick - THROUGH, first=n == 0)
    if spots:
        w.lines.append("G80")


def _hole_spots(p: Placed) -> list[Point]:
    return [(c.x, c.y) for c in _on_sheet(p, tuple(Corner(*h) for h in designs()[p.part].holes))]


def _depths(bottom: float, tool: int) -> list[float]:
    """Even passes down to `bottom` (below zero), none deeper than the bit's pass."""
    count = max(1, -int(bottom // PASS[tool]))
    return [bottom * (n + 1) / count for n in range(count)]


def bit_for(slot: Corners) -> int:
    """The large bit where it has room in the corners, else the small one."""
    return LARGE if min(c.r for c in slot) > DIAMETER[LARGE] / 2 else SMALL


def _slots(w: Writer, p: Placed, thick: float) -> None:
    """Slots for this bit as loops inside their edge, counter-clockwise: climbing."""
    for slot in designs()[p.part].slots:
        if bit_for(slot) != w.tool:
            continue
        pieces = path(offset(_on_sheet(p, slot), -DIAMETER[w.tool] / 2))
        w.rapid(*pieces[0].start)
        for z in _depths(-thick - THROUGH, w.tool):
            w.plunge(z)
            _run(w, pieces)


def _run(w: Writer, pieces: tuple[Piece, ...]) -> None:
    """Once along a path at the present depth."""
    for piece in pieces:
        if piece.centre is None:
            w.line(*piece.end)
        else:
            w.arc(piece)


def _pockets(w: Writer, p: Placed) -> None:
    """Pockets from the inside out, each ring half a bit wider."""
    for pocket in designs()[p.part].pockets:
        rings = _rings(_on_sheet(p, pocket.corners))
        for z in _depths(-pocket.depth_mm, LARGE):
            w.rapid(*rings[0][0].start)
            w.plunge(z)
            for ring in rings:
                w.line(*ring[0].start)
                _run(w, ring)


def _rings(corners: Corners) -> list[tuple[Piece, ...]]:
    """Rings that clear a rectangle, the last one along its edge."""
    edge = offset(corners, -DIAMETER[LARGE] / 2)
    x, y = min(c.x for c in edge), min(c.y for c in edge)
    along, across = max(c.x for c in edge) - x, max(c.y for c in edge) - y
    step = DIAMETER[LARGE] / 2
    count = int((min(along, across) / 2 - 0.1) // step)
    inner = (
        rectangle(x + n * step, y + n * step, along - 2 * n * step, across - 2 * n * step)
        for n in range(count, 0, -1)
    )
    return [*map(path, inner), path(edge)]


def _outline(w: Writer, p: Placed, thick: float) -> None:
    """The outline clockwise, in passes; below the tabs' tops it rises over each."""
    design = designs()[p.part]
    pieces = reverse(path(offset(_on_sheet(p, design.outline), DIAMETER[LARGE] / 2)))
    tabs = p.tabs or tuple(_spot(p, design, t) for t in design.tabs)
    top = -thick + TAB_HIGH
    w.rapid(*pieces[0].start)
    for z in _depths(-thick - THROUGH, LARGE):
        w.plunge(z)
        for piece in pieces:
            if piece.centre is not None:
                w.arc(piece)
            elif z < top:
                _over_tabs(w, piece, tabs, top, ramped=design.ramped)
            else:
                w.line(*piece.end)


def _spot(p: Placed, design: Design, tab: Point) -> Point:
    x, y = turned(tab, p.turn_deg, design.box)
    return x + p.x_mm, y + p.y_mm


def _over_tabs(
    w: Writer, piece: Piece, tabs: tuple[Point, ...], top: float, *, ramped: bool
) -> None:
    """A straight edge with a lift over each tab that lies on it."""
    (ax, ay), whole, low = piece.start, length(piece), w.at[2]
    ux, uy = (piece.end[0] - ax) / whole, (piece.end[1] - ay) / whole
    reach = (TAB_WIDE + DIAMETER[LARGE]) / 2
    for along in sorted(_on_edge(tabs, piece, (ux, uy))):
        slope = SLOPE if ramped else 0.0
        marks = [(along - reach - slope, low), (along - reach, top), (along + reach, top),
                 (along + reach + slope, low)]  # fmt: skip
        for mark, z in marks:
            x, y = ax + ux * mark, ay + uy * mark
            if hypot(x - w.at[0], y - w.at[1]) < 1e-6:
                w.plunge(z)
            else:
                w.line(x, y, z)
    w.line(*piece.end)


def _on_edge(tabs: tuple[Point, ...], piece: Piece, u: Point) -> list[float]:
    """How far along the edge each tab stands that lies on it."""
    (ax, ay), found = piece.start, []
    for x, y in tabs:
        along = (x - ax) * u[0] + (y - ay) * u[1]
        aside = abs((x - ax) * u[1] - (y - ay) * u[0])
        if abs(aside - DIAMETER[LARGE] / 2) < 0.01 and 0 < along < length(piece):
            found.append(along)
    return found


FOLDER = Path(__file__).resolve().parent / "cut_files"


def write_all(folder: Path = FOLDER) -> list[Path]:
    """Writes every revision's text into a folder; gives the files."""
    from demo_db.sheets import cut, file_name, layouts  # noqa: PLC0415 - sheets use this module

    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for layout in layouts():
        target = folder / file_name(layout)
        text = cut(layout.cut_file, layout.letter).text
        target.write_text(text, encoding="ascii", newline="\n")
        written.append(target)
    return written


if __name__ == "__main__":
    write_all()
