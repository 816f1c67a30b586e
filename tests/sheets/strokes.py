"""The strokes of a bit: lines to cut become moves, with lead-ins, ramps, tabs and lifts."""

import cmath
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import ceil, pi
from typing import NamedTuple

from tests.sheets.lines import CutLine
from tests.sheets.manners import LEADS, Manner
from tests.sheets.shapes import Seg, Track

LOW = 1.0  # mm above the sheet where a rapid ends and the feed begins


class RouterStep(NamedTuple):
    """One move or other word of the router. `line` is the index of the line that it cuts.

    Kinds: rapid, feed, drill, change, start, halt, remark.
    """

    kind: str
    to: complex = 0j
    z: float = 0.0
    centre: complex = 0j
    sweep: float = 0.0
    feed: float = 0.0
    line: int | None = None
    bit: int = 0
    role: str = ""  # tab, plunge, lead, lift
    text: str = ""
    depth: int = -1  # which pass


@dataclass
class Heights:
    """How high a bit is lifted, in mm above the sheet."""

    safe: float = 15.0
    between: float = 5.0
    low: float = LOW  # where the feed begins


class StrokeMaker:
    """Makes the steps of lines one after the other, knowing where the bit stands."""

    def __init__(self, heights: Heights) -> None:
        self.steps: list[RouterStep] = []
        self.at, self.z = 0j, heights.safe
        self.heights = heights
        self.line: tuple[int, CutLine] | None = None
        self.depth = -1

    def _add(
        self, kind: str, to: complex, z: float, seg: Seg | None = None, role: str = ""
    ) -> None:
        index, line = self.line or (None, None)
        feed = self._find_feed(line, to, z, role) if kind != "rapid" and line else 0.0
        centre, sweep = (seg.centre, seg.sweep) if seg and seg.sweep else (0j, 0.0)
        bit = line.bit if line else 0
        self.steps.append(RouterStep(kind, to, z, centre, sweep, feed, index, bit,
                               role, "", self.depth))  # fmt: skip
        self.at, self.z = to, z

    def _find_feed(self, line: CutLine, to: complex, z: float, role: str) -> float:
        if role == "ramp":
            return max(line.plunge, line.feed * 0.4)
        return line.plunge if abs(to - self.at) < 1e-6 and z < self.z else line.feed

    def rapid(self, to: complex, z: float, role: str = "") -> None:
        """Moves without cutting."""
        if abs(to - self.at) > 1e-9 or abs(z - self.z) > 1e-9:
            self._add("rapid", to, z, role=role)

    def feed(self, to: complex, z: float, role: str = "") -> None:
        """Moves at feed in a straight line."""
        if abs(to - self.at) > 1e-9 or abs(z - self.z) > 1e-9:
            self._add("feed", to, z, role=role)

    def drill(self, at: complex, z: float) -> None:
        """Drills a hole and comes back to the height it came from."""
        above = self.z
        self.at = at
        self._add("drill", at, z)
        self.z = above

    def lift(self) -> None:
        """Lifts the bit to the height between lines."""
        self.rapid(self.at, self.heights.between)

    def go_to(self, at: complex) -> None:
        """Lifts, goes above a point, and down to just above the sheet."""
        z = self.heights.low
        if self.z < self.heights.between:
            self.lift()
        self.rapid(at, self.z)
        if z < self.z:
            self.rapid(at, z)

    def follow(self, track: Track, breaks: Sequence[tuple[float, float, str]]) -> None:
        """Follows a track: z at each length; the role "lift" goes over by rapid."""
        for (s0, z0, _), (s1, z1, role) in pairwise(breaks):
            if role == "lift":
                self.rapid(track.find(s1), z1, role)
            elif s1 - s0 < 1e-9:
                if z1 > z0 and role == "off":
                    self.rapid(self.at, z1)
                else:
                    self.feed(self.at, z1, role)
            else:
                run = 0.0
                for seg in track.take(s0, s1):
                    run += _length(seg)
                    z = z0 + (z1 - z0) * min(run / (s1 - s0), 1.0)
                    self._add("feed", seg.b, z1 if run > s1 - s0 - 1e-6 else z, seg, role)


def _length(seg: Seg) -> float:
    return abs(seg.sweep) * abs(seg.a - seg.centre) if seg.sweep else abs(seg.b - seg.a)


def make_steps(lines: Sequence[CutLine], manner: Manner, heights: Heights) -> list[RouterStep]:
    """Gives the steps of a whole sheet, with a change before each bit's first line."""
    maker = StrokeMaker(heights)
    numbered = list(enumerate(lines))
    bit = None
    for (which, outline), group in groupby(
        numbered, key=lambda n: (n[1].bit, n[1].role in {"outline", "shared"})
    ):
        if which != bit:
            change_bit(maker, which, first=bit is None)
            bit = which
        for index, line, passes in order_passes(
            list(group), outline and manner.order == "level by level"
        ):
            cut_line(maker, index, line, passes)
    maker.line, maker.depth = None, -1
    maker.rapid(maker.at, heights.safe)
    maker.steps.append(RouterStep("halt"))
    return maker.steps


def change_bit(maker: StrokeMaker, bit: int, *, first: bool) -> None:
    """Lifts the bit and has it changed."""
    maker.line, maker.depth = None, -1
    if not first:
        maker.rapid(maker.at, maker.heights.safe)
    maker.steps.append(RouterStep("change", maker.at, maker.heights.safe, bit=bit))
    maker.steps.append(RouterStep("start", maker.at, maker.heights.safe, bit=bit))
    maker.z = maker.heights.safe


def order_passes(
    group: Sequence[tuple[int, CutLine]],
    by_level: bool,  # noqa: FBT001
) -> Iterator[tuple[int, CutLine, range]]:
    """Gives lines with the passes that are cut at a stretch."""
    if not by_level:
        yield from ((index, line, range(len(line.floors))) for index, line in group)
        return
    for k in range(max(len(line.floors) for _, line in group)):
        for index, line in group:
            if k < len(line.floors):
                yield index, line, range(k, k + 1)


def cut_line(maker: StrokeMaker, index: int, line: CutLine, passes: range) -> None:
    """Cuts some passes of a line."""
    maker.line, maker.depth = (index, line), passes[0]
    if line.role == "drilled":
        maker.drill(line.track.segs[0].a, line.floors[-1])
        return
    if line.entry == "helix":
        cut_spiral(maker, line, passes)
    elif not line.track.closed:
        cut_to_and_fro(maker, line, passes)
    else:
        for k in passes:
            maker.depth = k
            cut_lap(maker, line, k)
    maker.lift()


def cut_spiral(maker: StrokeMaker, line: CutLine, passes: range) -> None:
    """Sinks by one pass in each lap, then goes round once at the bottom."""
    maker.go_to(line.track.find(0))
    above = line.floors[passes[0] - 1] if passes[0] else 0.0
    maker.feed(maker.at, above, "plunge")
    length = line.track.length
    breaks = [(0.0, above, "")]
    breaks += [(length * (n + 1), line.floors[k], "ramp") for n, k in enumerate(passes)]
    if not line.unlevel:
        breaks.append((breaks[-1][0] + length, line.floors[passes[-1]], ""))
    maker.follow(line.track, breaks)


def cut_to_and_fro(maker: StrokeMaker, line: CutLine, passes: range) -> None:
    """Cuts an open line, turning round at its ends."""
    long = line.track.length
    turns = line.role in {"slot", "groove", "notch"}
    for n, k in enumerate(passes):
        maker.depth = k
        back = turns and n % 2 == 1
        track = line.track.reverse() if back else line.track
        tabs = [(long - b, long - a) for a, b in reversed(line.tabs)] if back else line.tabs
        floor, above = line.floors[k], line.floors[k - 1] if k else 0.0
        if n == 0 or not turns:
            maker.go_to(track.find(0))
        if line.entry == "ramp" and not tabs:
            maker.feed(maker.at, above, "plunge")
            run = line.run
            maker.follow(track, [(0.0, above, ""), (run, floor, "ramp")])
            maker.follow(reverse_part(track, run), [(0.0, floor, ""), (run, floor, "")])
        else:
            maker.feed(maker.at, floor, "plunge")
        maker.follow(track, find_breaks(line, floor, 0.0, long, tabs, k))


def reverse_part(track: Track, run: float) -> Track:
    """Gives the first `run` mm of a track, backwards."""
    return Track(track.take(0.0, run), closed=False).reverse()


def cut_lap(maker: StrokeMaker, line: CutLine, k: int) -> None:
    """Cuts one lap at one depth, with its way in and out."""
    floor, above = line.floors[k], line.floors[k - 1] if k else 0.0
    start, long = line.track.find(0), line.track.length
    begin, end = 0.0, long + line.over
    standing = abs(maker.at - start) < 1e-6 and maker.z < 0
    if line.entry in LEADS:
        lead_in(maker, line, floor)
    elif not standing:
        maker.go_to(start)
    if line.entry in {"ramp", "zigzag"}:
        if maker.z > above:
            maker.feed(maker.at, above, "plunge")
        ramp_in(maker, line, above, floor)
        begin = line.run if line.entry == "ramp" else 0.0
        end = long + max(line.over, 0.0) + begin if line.entry == "ramp" else end
    else:
        maker.feed(maker.at, floor, "plunge")
    tabs = [(a + n * long, b + n * long) for n in range(2) for a, b in line.tabs]
    maker.follow(line.track, find_breaks(line, floor, begin, end, tabs, k))
    if line.leaves and line.entry in LEADS:
        u = line.track.heading(line.over)
        maker.feed(maker.at + 1j * u * line.waste * line.lead * 0.6, floor, "lead")


def lead_in(maker: StrokeMaker, line: CutLine, floor: float) -> None:
    """Comes to a line from the waste, by a line or a quarter turn."""
    start, ahead = line.track.find(0), line.track.heading(0)
    out = 1j * ahead * line.waste * line.lead
    if line.entry == "arc":
        centre, sweep = start + out, line.waste * pi / 2
        first = centre + (start - centre) * cmath.exp(-1j * sweep)
        arc = Track([Seg(first, start, centre, sweep)], closed=False)
        maker.go_to(first)
        maker.feed(first, floor, "plunge")
        maker.follow(arc, [(0.0, floor, ""), (arc.length, floor, "lead")])
        return
    first = start + (out if line.entry == "straight in" else (out - ahead * line.lead) * 0.7)
    maker.go_to(first)
    maker.feed(first, floor, "plunge")
    maker.feed(start, floor, "lead")


def ramp_in(maker: StrokeMaker, line: CutLine, above: float, floor: float) -> None:
    """Sinks along the line: ahead, or to and fro over 10 mm."""
    if line.entry == "ramp":
        maker.follow(line.track, [(0.0, above, ""), (line.run, floor, "ramp")])
        return
    back = reverse_part(line.track, 10.0)
    legs = 2 * ceil((above - floor) * 3 / 20)
    for k in range(legs):
        z0, z1 = (above + (floor - above) * n / legs for n in (k, k + 1))
        maker.follow(back if k % 2 else line.track, [(0.0, z0, ""), (10.0, z1, "ramp")])


def find_breaks(
    line: CutLine,
    floor: float,
    begin: float,
    end: float,
    tabs: Sequence[tuple[float, float]],
    k: int,
) -> list[tuple[float, float, str]]:
    """Gives z along one pass: its floor, and each tab that stands above it."""
    breaks = [(begin, floor, "")]
    last = k == len(line.floors) - 1
    for n, (a, b) in enumerate(tabs):
        lost = last and n % max(len(line.tabs), 1) in line.lost
        if floor >= line.tab_top - 1e-6 or lost or a < begin or b > end:
            continue
        top = line.tab_top
        if line.tab_form == "lift":
            high = max(LOW, top)
            breaks += [(a, floor, ""), (a, high, "off"), (b, high, "lift"), (b, floor, "plunge")]
        else:
            up, down = a + line.slope, b - line.slope
            breaks += [(a, floor, ""), (up, top, "tab"), (down, top, "tab"), (b, floor, "tab")]
    breaks.append((end, floor, ""))
    return breaks
