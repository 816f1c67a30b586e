"""Random sheets of parts written as cut files in several styles, with their true sizes.

`make(seed)` gives the text, the setting it needs, and what it was made from.
"""

from __future__ import annotations

import cmath
import math
import random
from dataclasses import dataclass, field

from station.cutting.model import Setting

INCH = 25.4


@dataclass
class Curve:
    """A closed path of lines and arcs: corners, and for each the way to the next."""

    points: list[complex]
    bends: list[tuple[complex, bool] | None]  # centre and counter-clockwise, or straight

    def moved(self, turn: float, by: complex, *, mirror: bool) -> Curve:
        def f(z: complex) -> complex:
            z = complex(-z.real, z.imag) if mirror else z
            return z * complex(math.cos(turn), math.sin(turn)) + by

        bends = [b and (f(b[0]), b[1] != mirror) for b in self.bends]
        return Curve([f(p) for p in self.points], bends)

    def reversed(self) -> Curve:
        points = [self.points[0], *self.points[:0:-1]]
        bends = [b and (b[0], not b[1]) for b in reversed(self.bends)]
        return Curve(points, bends)

    def from_corner(self, n: int) -> Curve:
        return Curve(self.points[n:] + self.points[:n], self.bends[n:] + self.bends[:n])


def outside(corners: list[complex], radius: float) -> Curve:
    """The path of a bit around corners given counter-clockwise: rounds outside corners."""
    points, bends = [], []
    n = len(corners)
    for i in range(n):
        a, b, c = corners[i - 1], corners[i], corners[(i + 1) % n]
        u, v = (b - a) / abs(b - a), (c - b) / abs(c - b)
        out1, out2 = -1j * u * radius, -1j * v * radius
        if (u.conjugate() * v).imag > 1e-9:
            points += [b + out1, b + out2]
            bends += [(b, True), None]
        else:
            points.append(b + (out1 + out2) / (1 + (u.conjugate() * v).real))
            bends.append(None)
    return Curve(points, bends)


def circle_path(centre: complex, radius: float) -> Curve:
    a, b = centre + radius, centre - radius
    return Curve([a, b], [(centre, True), (centre, True)])


def inside(width: float, height: float, at: complex, radius: float) -> Curve:
    """The path in a rectangular hole with its lower left at `at`."""
    w, h = width - 2 * radius, height - 2 * radius
    start = at + complex(radius, radius)
    return Curve([start, start + w, start + complex(w, h), start + complex(0, h)], [None] * 4)


@dataclass
class Kind:
    """A shape with its true sizes and the paths that cut it, at its own origin."""

    name: str
    path: Curve
    holes: list[Curve]
    width: float
    length: float
    area: float
    perimeter: float
    reach: float


def _corners(rng: random.Random) -> tuple[list[complex], str]:
    w, h = round(rng.uniform(60, 160), 1), round(rng.uniform(40, 58), 1)
    style = rng.choice(["plate", "angle", "wedge"])
    if style == "plate":
        return [0, w, w + 1j * h, 1j * h], style
    if style == "angle":
        a, b = round(w * rng.uniform(0.4, 0.6), 1), round(h * rng.uniform(0.4, 0.6), 1)
        return [0, w, w + 1j * b, a + 1j * b, a + 1j * h, 1j * h], style
    c = round(w * rng.uniform(0.6, 0.8), 1)
    return [0, w, c + 1j * h, 1j * h], style


def _size(corners: list[complex], radius: float) -> tuple[float, float]:
    """Area and perimeter; an inside corner keeps the bit's fillet."""
    n = len(corners)
    area = sum((corners[i - 1].conjugate() * corners[i]).imag for i in range(n)) / 2
    around = sum(abs(corners[i] - corners[i - 1]) for i in range(n))
    for i in range(n):
        u, v = corners[i] - corners[i - 1], corners[(i + 1) % n] - corners[i]
        if (u.conjugate() * v).imag < -1e-9:
            area += radius**2 * (1 - math.pi / 4)
            around -= radius * (2 - math.pi / 2)
    return area, around


def kind(rng: random.Random, number: int, radius: float) -> Kind:
    """One random shape."""
    if rng.random() < 0.2:
        r = round(rng.uniform(20, 45), 1)
        path = circle_path(0, r + radius)
        made = Kind(f"disc{number}", path, [], 2 * r, 2 * r, math.pi * r * r, math.tau * r, r)
        if rng.random() < 0.6:
            _round_hole(made, 0, round(rng.uniform(radius + 1, r - 8), 1), radius)
        return made
    corners, style = _corners(rng)
    area, around = _size(corners, radius)
    xs, ys = [z.real for z in corners], [z.imag for z in corners]
    wide, high = max(xs), max(ys)
    made = Kind(f"{style}{number}", outside(corners, radius), [], min(wide, high), max(wide, high),
                area, around, math.hypot(wide, high))  # fmt: skip
    if rng.random() < 0.6:
        r = round(rng.uniform(radius + 0.6, 7), 2)
        _round_hole(made, complex(12, 12), r, radius)
    if style == "plate" and rng.random() < 0.5:
        w, h = round(rng.uniform(14, 20), 1), round(rng.uniform(10, 16), 1)
        made.holes.append(inside(w, h, complex(28, 10), radius))
        made.area -= w * h - (4 - math.pi) * radius**2
        made.perimeter += 2 * (w + h) - (8 - math.tau) * radius
    return made


def _round_hole(made: Kind, centre: complex, r: float, radius: float) -> None:
    made.holes.append(circle_path(centre, r - radius))
    made.area -= math.pi * r * r
    made.perimeter += math.tau * r


@dataclass
class Style:
    """How a file is written."""

    inch: bool = False
    incremental: bool = False
    chords: bool = False
    numbers: bool = False
    blanks: bool = False
    bare: bool = True
    radius_words: bool = False
    ramped: bool = False
    lead_in: bool = False
    passes: int = 1
    by_pass: bool = False
    small: bool = False
    tabs: str = "square"


STYLES = (
    Style(),
    Style(inch=True, numbers=True, passes=2, bare=False),
    Style(incremental=True, blanks=True, passes=3, by_pass=True, tabs="ramped"),
    Style(chords=True, lead_in=True, tabs="square"),
    Style(radius_words=True, ramped=True, passes=2, small=True),
    Style(lead_in=True, passes=2, tabs="gap"),
    Style(inch=True, incremental=True, ramped=True, numbers=True),
    Style(chords=True, passes=2, by_pass=True, blanks=True, tabs="ramped"),
)


@dataclass
class Writer:
    """Writes moves in a style, rounding as files do and carrying on from what was written."""

    style: Style
    lines: list[str] = field(default_factory=list)
    at: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    said: str = ""

    def word(self, letter: str, mm: float) -> str:
        value = round(mm / INCH, 6) if self.style.inch else round(mm, 5)
        text = f"{value:.6f}".rstrip("0").rstrip(".")
        return letter + ("0" if text in {"-0", ""} else text)

    def axes(self, to: dict[int, float]) -> list[str]:
        words = []
        for axis, value in to.items():
            base = self.at[axis] if self.style.incremental else 0.0
            word = self.word("XYZ"[axis], value - base)
            written = float(word[1:]) * (INCH if self.style.inch else 1.0)
            if abs(value - self.at[axis]) > 1e-9:
                words.append(word)
                self.at[axis] = base + written
        return words

    def put(self, code: str, to: dict[int, float], *more: str) -> None:
        words = self.axes(to)
        if not words and not more:
            return
        head = [] if self.style.bare and self.said == code and code in {"G0", "G1"} else [code]
        self.said = code
        self.line([*head, *words, *more])

    def line(self, words: list[str]) -> None:
        if self.style.numbers:
            words = [f"N{10 * (len(self.lines) + 1)}", *words]
        text = (" " if self.style.blanks else "").join(words)
        if self.style.blanks:
            text = text.replace("X", "X ").replace("Y", " Y ")
        self.lines.append(text.lower() if self.style.small else text)

    def to(self, z: complex) -> None:
        self.put("G1", {0: z.real, 1: z.imag})

    def bend(self, end: complex, centre: complex, *, ccw: bool) -> None:
        here = complex(self.at[0], self.at[1])
        if self.style.chords:
            self._chords(here, end, centre, ccw=ccw)
            return
        code = "G3" if ccw else "G2"
        sweep = (end - centre) / (here - centre)
        angle = math.atan2(sweep.imag, sweep.real) * (1 if ccw else -1)
        if self.style.radius_words and 0.05 < angle < 3:
            r = self.word("R", abs(here - centre))
            self.put(code, {0: end.real, 1: end.imag}, r)
            return
        d = centre - here
        self.put(code, {0: end.real, 1: end.imag}, self.word("I", d.real), self.word("J", d.imag))

    def _chords(self, here: complex, end: complex, centre: complex, *, ccw: bool) -> None:
        spoke = here - centre
        turn = (end - centre) / spoke
        angle = math.atan2(turn.imag, turn.real)
        if ccw and angle <= 1e-9:
            angle += math.tau
        if not ccw and angle >= -1e-9:
            angle -= math.tau
        n = max(2, math.ceil(abs(angle) / (2 * math.acos(1 - 0.001 / abs(spoke)))))
        for i in range(1, n):
            part = angle * i / n
            self.to(centre + spoke * complex(math.cos(part), math.sin(part)))
        self.to(end)


DEEP, TOP, CLEAR = -6.2, -4.0, 5.0


def cut(writer: Writer, path: Curve, depths: list[float], tabs: int) -> None:
    """One closed path, a lap for each depth."""
    style = writer.style
    start = path.points[0]
    if style.lead_in and tabs:  # from outside, where nothing is spoiled
        away = path.points[0] - path.points[1]
        lead = start + away / abs(away) * 2
        lead = start if _surrounds(path.points, lead) else lead  # it would cut into the part
        writer.put("G0", {0: lead.real, 1: lead.imag})
    else:
        writer.put("G0", {0: start.real, 1: start.imag})
    before = 0.0
    for depth in depths:
        ramp = style.ramped and path.bends[0] is None and tabs
        if ramp:
            writer.put("G1", {2: before}, "F900")
            half = (path.points[0] + path.points[1]) / 2
            writer.put("G1", {0: half.real, 1: half.imag, 2: depth})
            lap(writer, split(path, half), depth, tabs if depth == depths[-1] else 0)
            before = depth
            if depth != depths[-1]:
                writer.put("G0", {2: CLEAR})
                writer.put("G0", {0: start.real, 1: start.imag})
                writer.put("G1", {2: before}, "F900")
            continue
        writer.put("G1", {2: depth}, "F900")
        if style.lead_in and tabs and abs(complex(*writer.at[:2]) - start) > 0.01:
            writer.to(start)
        lap(writer, path, depth, tabs if depth == depths[-1] else 0)
    writer.put("G0", {2: CLEAR})


def _surrounds(points: list[complex], at: complex) -> bool:
    """Whether a point lies within a path's corners, by the angle that they turn about it."""
    spokes = [p - at for p in points]
    turns = (cmath.phase(b / a) for a, b in zip(spokes, spokes[1:] + spokes[:1], strict=True))
    return abs(sum(turns)) > math.pi


def split(path: Curve, at: complex) -> Curve:
    """The same path, begun in the middle of its first, straight, side."""
    return Curve([at, *path.points[1:], path.points[0]], [None, *path.bends[1:], None])


def lap(writer: Writer, path: Curve, depth: float, tabs: int) -> None:
    """Once around; tabs on the longest straight sides."""
    n = len(path.points)
    sides = [i for i in range(n) if path.bends[i] is None]
    sides.sort(key=lambda i: -abs(path.points[(i + 1) % n] - path.points[i]))
    held = set(sides[:tabs])
    for i in range(n):
        end, bend = path.points[(i + 1) % n], path.bends[i]
        if bend:
            writer.bend(end, bend[0], ccw=bend[1])
        elif i in held:
            tab(writer, path.points[i], end, depth)
            writer.to(end)
        else:
            writer.to(end)


def tab(writer: Writer, start: complex, end: complex, depth: float) -> None:
    way = (end - start) / abs(end - start)
    middle = (start + end) / 2
    a, b = middle - way * 6, middle + way * 6
    writer.to(a)
    if writer.style.tabs == "gap":
        writer.put("G0", {2: CLEAR})
        writer.put("G0", {0: b.real, 1: b.imag})
        writer.put("G1", {2: depth})
    elif writer.style.tabs == "ramped":
        up, down = middle - way * 4, middle + way * 4
        writer.put("G1", {0: up.real, 1: up.imag, 2: TOP})
        writer.to(down)
        writer.put("G1", {0: b.real, 1: b.imag, 2: depth})
    else:
        writer.put("G1", {2: TOP})
        writer.to(b)
        writer.put("G1", {2: depth})


@dataclass
class Layout:
    """A written sheet and what it was made from."""

    seed: int
    text: str
    setting: Setting
    kinds: list[Kind]
    counts: list[int]
    tabs: list[int]
    commented: str


def make(seed: int) -> Layout:
    """The layout of a seed."""
    rng = random.Random(seed)
    style = STYLES[seed % len(STYLES)]
    bit = rng.choice([3.0, 6.0, 6.35])
    kinds = [kind(rng, n, bit / 2) for n in range(rng.randint(1, 4))]
    counts = [0] * len(kinds)
    tabs = [0 if k.name.startswith("disc") else rng.choice([2, 2, 1]) for k in kinds]
    pieces = _pieces(rng, kinds, counts, tabs)
    writer = Writer(style)
    writer.line([("G20" if style.inch else "G21"), "G91" if style.incremental else "G90", "G17"])
    writer.line(["T1", "M6"])
    writer.line(["M3", "S18000"])
    writer.put("G0", {2: CLEAR})
    depths = [DEEP * (i + 1) / style.passes for i in range(style.passes)]
    rounds = [[d] for d in depths] if style.by_pass else [depths]
    for some in rounds:
        for path, count in pieces:
            last = some[-1] == depths[-1]
            cut(writer, path, some, count if last else 0)
    writer.line(["M5"])
    writer.line(["M30"])
    text = "\n".join(writer.lines) + "\n"
    commented = "\n".join(f"{t} (way {i})" for i, t in enumerate(writer.lines))
    setting = Setting(bit_mm={1: bit}, thickness_mm=6.0)
    return Layout(seed, text, setting, kinds, counts, tabs, commented)


def _pieces(rng, kinds, counts, tabs) -> list[tuple[Curve, int]]:
    """Paths to cut with their tabs: holes first, pieces on a wide grid."""
    pieces = []
    pitch = 2 * max(k.reach for k in kinds) + 30
    columns, rows = int(2300 // pitch), int(1150 // pitch)
    places = [(c, r) for r in range(rows) for c in range(columns)]
    for c, r in places[: rng.randint(2, 9)]:
        n = rng.randrange(len(kinds))
        counts[n] += 1
        turn = rng.choice([0, math.pi / 2, math.pi, rng.uniform(0, math.tau)])
        by = complex((c + 0.5) * pitch + 30, (r + 0.5) * pitch + 30)
        mirror = rng.random() < 0.3
        for path, count in [*((h, 0) for h in kinds[n].holes), (kinds[n].path, tabs[n])]:
            placed = path.moved(turn, by, mirror=mirror)
            placed = placed.from_corner(rng.randrange(len(placed.points)))
            if rng.random() < 0.5:
                placed = placed.reversed()
            pieces.append((placed, count))
    return pieces
