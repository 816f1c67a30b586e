"""What is to be cut as lines: each the track of a bit's centre with its depths, tabs and entry."""

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from math import ceil, tau
from random import Random
from typing import NamedTuple

from tests.sheets.laying import LaidPart, Laying
from tests.sheets.manners import LEADS, Manner
from tests.sheets.models import MAIN, Feature, Means, Model
from tests.sheets.shapes import Disc, Frame, Seg, Track, make_box

BESIDE = Model("beside", make_box(1, 1))  # what is cut in no part
INSIDE = ("engraving", "pocket", "groove", "drilled", "hole", "slot", "notch")


class CutSizes(NamedTuple):
    """Sizes that a sheet's cutting keeps to, in mm, and feeds in mm/min."""

    below: float  # how far below the sheet, negative where a skin is left
    shares: tuple[float, ...]  # of each bit's width, how deep a pass goes at most
    lead: float
    tab: float  # what is left of a tab along the line
    tab_high: float
    slope: float  # of a tab's ends, its length for each mm of height
    feed: float
    plunge: float


@dataclass
class CutLine:
    """A line of one bit's centre. `floors` are z of its passes, 0 being the sheet's top."""

    role: str
    part: int | None
    bit: int
    wide: float
    track: Track
    floors: list[float]
    tabs: list[tuple[float, float]] = field(default_factory=list)
    tab_top: float = 0.0
    tab_form: str = ""
    slope: float = 0.0
    waste: int = 0  # on which side waste lies: 1 left, -1 right
    entry: str = "plunge"
    lead: float = 0.0
    run: float = 0.0  # how long it sinks
    leaves: bool = False
    over: float = 0.0  # past its start, or short of it when negative
    feed: float = 3000.0
    plunge: float = 800.0
    lost: set[int] = field(default_factory=set)  # tabs that the last pass cuts through
    holds: list[int] = field(default_factory=list)  # a shared line's tabs: the parts at each
    second: bool = False  # the second half of an outline
    unlevel: bool = False  # a spiral that ends without a level lap


def choose_sizes(rng: Random, manner: Manner, means: Means) -> CutSizes:
    """Draws the sizes that a sheet keeps to."""
    thick = means.thickness
    skin = round(rng.uniform(0.2, min(0.6, thick * 0.12)), 2)
    return CutSizes(
        below=-skin if manner.hold == "onion" else round(rng.uniform(0.1, 0.5), 1),
        shares=tuple(rng.choice([0.6, 1.0, 1.5]) for _ in means.bits),
        lead=float(rng.choice([3, 4, 5])) if manner.entry in LEADS else 0.0,
        tab=rng.choice([3.0, 4.0, 6.0]),
        tab_high=min(rng.choice([1.0, 1.5, 2.0, 3.0]), thick * 0.5),
        slope=rng.choice([1.0, 1.5, 2.0]),
        feed=rng.choice([1800.0, 2400.0, 3000.0, 3600.0, 4500.0]),
        plunge=rng.choice([400.0, 600.0, 800.0, 900.0]),
    )


def find_floors(
    manner: Manner, deep: float, wide: float, most: float, thick: float
) -> list[float]:
    """Gives z of each pass down to `deep`."""
    if manner.passes == "one" and deep <= wide * 2.01:
        return [-deep]
    count = max(2 if manner.passes != "one" and deep > 1.5 else 1, ceil(deep / most - 1e-9))
    if manner.passes == "step" and count > 1:
        step = round(deep / (count - 0.4), 2)
        return [-step * k for k in range(1, count) if step * k < deep] + [-deep]
    floors = [-deep * k / count for k in range(1, count + 1)]
    if manner.passes == "skin first" and deep > thick > 1.5:
        return [z for z in floors if z > -thick + 0.8] + [-thick + 0.5, -deep]
    return floors


def plan_lines(
    rng: Random, laying: Laying, manner: Manner, means: Means, sizes: CutSizes
) -> list[CutLine]:
    """Gives all lines of a sheet in the order in which they are cut."""
    planner = LinePlanner(rng, manner, means, sizes)
    made: dict[tuple[str, bool], list[CutLine]] = {}
    lines: list[CutLine] = []
    for k, part in enumerate(laying.parts):
        key = (part.kind, part.frame.mirrored)
        if key not in made:
            made[key] = planner.plan_part(part, outline=not laying.shared)
        frame = part.frame._replace(mirrored=False)
        lines += [
            replace(line, part=k, track=line.track.place(frame), floors=[*line.floors],
                    tabs=[*line.tabs])  # its own: a fault in one part is none of its equals
            for line in made[key]
        ]  # fmt: skip
    lines += [planner.shared(track, laying.parts) for track in laying.shared]
    lines += [planner.feature(LaidPart(BESIDE, Frame(), ""), f) for f in laying.beside]
    return put_in_order(lines, laying, manner)


class LinePlanner:
    """Makes lines of features and outlines, as the sheet's habits want it."""

    def __init__(self, rng: Random, manner: Manner, means: Means, sizes: CutSizes) -> None:
        self.rng, self.manner, self.means, self.sizes = rng, manner, means, sizes
        self.through = means.thickness + sizes.below

    def _make(self, role: str, bit: int, track: Track, deep: float) -> CutLine:
        which = min(bit, len(self.means.bits) - 1)
        wide = self.means.bits[which]
        most = wide * self.sizes.shares[which]
        floors = find_floors(self.manner, deep, wide, most, self.means.thickness)
        feed = self.sizes.feed if bit == MAIN else self.sizes.feed * 0.6
        return CutLine(role, None, which, wide, track, floors, feed=feed, plunge=self.sizes.plunge)

    def plan_part(self, part: LaidPart, *, outline: bool) -> list[CutLine]:
        """Gives the lines of a part as if it were laid upright at the sheet's corner."""
        laid = replace(part, frame=Frame(0j, 1 + 0j, part.frame.mirrored))
        lines = [self.feature(laid, feature) for feature in part.model.features]
        return lines + self.outline(laid) if outline else lines

    def feature(self, laid: LaidPart, feature: Feature) -> CutLine:
        """Gives the line of one feature of a laid part."""
        bit = min(feature.bit, len(self.means.bits) - 1)
        wide, deep = (
            self.means.bits[bit],
            feature.depth or max(self.through, self.means.thickness + 0.1),
        )
        if feature.kind == "hole":
            assert feature.outline
            track = feature.outline.trace(-wide / 2)
            line = self._round(laid, track, bit, "hole", feature.form)
            x0, y0, x1, y1 = track.bounds()
            slug = min(x1 - x0, y1 - y0) - wide  # a slot of two strokes leaves nothing to hold
            if self.manner.hold == "tabs" and track.length > 150 and bit == MAIN and slug > 1:
                self._put_tabs(line, laid)
            return line
        if feature.kind == "pocket":
            return self._make("pocket", bit, clear_pocket(feature, wide, laid.frame), deep)
        if feature.kind == "drilled":
            assert feature.outline
            at = laid.frame.place(feature.outline.trace(0.0).segs[0].centre)
            return self._make("drilled", bit, Track([Seg(at, at + 1e-6)], closed=False), deep)
        assert feature.stroke
        line = self._make(feature.kind, bit, feature.stroke.place(laid.frame), deep)
        if feature.kind != "engraving" and self.manner.entry in {"ramp", "zigzag", "helix"}:
            line.entry = "ramp"
            line.run = min(line.track.length, 40.0)
        return line

    def outline(self, laid: LaidPart) -> list[CutLine]:
        """Gives the outline of a laid part: one line, or two halves."""
        wide = self.means.bits[MAIN]
        track = laid.model.outline.trace(wide / 2, rolled=self.manner.corners == "rolled")
        line = self._round(laid, track, MAIN, "outline")
        if self.manner.hold == "tabs":
            self._put_tabs(line, laid)
        if self.manner.form != "halves":
            return [line]
        return halve(line, self.rng.choice([0.0, 0.5, 2.0]))

    def shared(self, track: Track, parts: Sequence[LaidPart]) -> CutLine:
        """Gives a line that frees several parts; a tab holds each side of each part."""
        line = self._make("shared", MAIN, track, self.through)
        line.entry = "ramp" if self.manner.entry in {"ramp", "zigzag"} else "plunge"
        line.run = min(line.track.length * 0.3, 20.0)
        if self.manner.hold != "tabs":
            return line
        line.tab_form, line.slope, long = self._shape_tab(line)
        line.tab_top = self._find_top()
        found: dict[float, list[int]] = {}
        for k, part in enumerate(parts):
            for s in find_sides(part, track, line.wide):
                found.setdefault(round(s - long / 2, 3), []).append(k)
        line.tabs = [(s, s + long) for s in sorted(found)]
        line.holds = [k for held in found.values() for k in held]
        return line

    def _round(self, laid: LaidPart, track: Track, bit: int, role: str, form: str = "") -> CutLine:
        """Gives the line round a closed shape: its direction, start, closing and entry."""
        placed = track.place(laid.frame)
        way = self.manner.way if self.manner.way != "mixed" else self.rng.choice(["climb", "not"])
        left = (way == "climb") == (role == "hole")
        if (placed.area() > 0) != left:
            placed = placed.reverse()
        placed = placed.begin_at(self._find_start(placed))
        inside = max(self.through, self.means.thickness + 0.1)
        line = self._make(role, bit, placed, inside if role == "hole" else self.through)
        line.waste = 1 if left == (role == "hole") else -1
        self._close(line)
        self._enter(line, "helix" if form == "bored" else self.manner.entry)
        return line

    def _find_start(self, track: Track) -> float:
        if self.manner.start == "anywhere":
            return self.rng.uniform(0, track.length)
        if self.manner.start == "corner":
            return 0.0
        k = max(range(len(track.segs)), key=lambda k: track.ends[k + 1] - track.ends[k])
        return (track.ends[k] + track.ends[k + 1]) / 2

    def _close(self, line: CutLine) -> None:
        if self.manner.closing == "overlap":
            line.over = min(self.rng.choice([1.0, 2.0, 5.0, 8.0]), line.track.length * 0.2)
        if self.manner.closing == "gap":
            gap = self.rng.choice([0.005, 0.02, 0.05, 0.1, 0.3, 0.5])
            line.over = -min(gap, line.track.length * 0.02)

    def _enter(self, line: CutLine, entry: str) -> None:
        line.entry = entry
        if line.entry in LEADS:
            line.lead = self.sizes.lead
            if line.role == "hole":
                room = abs(line.track.area()) * 2 / line.track.length
                line.lead = min(line.lead, room * 0.45)
            line.leaves = self.rng.random() < 0.4
            if line.lead < 0.8:
                line.entry = "plunge"
        if line.entry in {"ramp", "zigzag"} and line.track.length < 30:
            line.entry = "helix" if line.role == "hole" else "plunge"
        if line.entry in {"ramp", "zigzag"}:
            drop = max(a - b for a, b in pairwise([0.0, *line.floors]))
            line.run = min(max(20.0, drop * 3), line.track.length * 0.3)
        if line.entry in {"helix", "spiral"}:
            self._wind(line)

    def _wind(self, line: CutLine) -> None:
        """Spreads a spiral's depth over its laps; one without a level lap ends below the sheet."""
        deep, thick = -line.floors[-1], self.means.thickness
        most = min(line.wide * self.sizes.shares[line.bit], line.track.length * 0.12)
        line.unlevel = line.entry == "spiral" and deep > thick + 0.05
        line.entry = "helix"
        line.floors = find_floors(
            self.manner, thick + 0.02 if line.unlevel else deep, 0.0, most, thick
        )
        if line.unlevel:
            line.floors.append(-deep)

    def _put_tabs(self, line: CutLine, laid: LaidPart) -> None:
        """Spreads tabs on a line, clear of its start and of strokes that open its edge."""
        line.tab_form, line.slope, long = self._shape_tab(line)
        line.tab_top = self._find_top()
        begin = max(line.over, 0.0) + (line.run + 5.0 if line.run else 0.0) + 2.0
        room = line.track.length - begin - line.wide - 2.0
        count = min(self.rng.choice([2, 3, 4, 4, 6]), int(room / (long * 1.5)))
        keep = [
            laid.frame.place(f.stroke.find(line.wide / 2 + 0.5))
            for f in laid.model.features
            if f.kind == "notch" and f.stroke
        ]
        place = TabPlace(line.track, line.wide, long, self.sizes.tab, keep)
        for k in range(count):
            at = place.find(begin + room / count * k, room / count)
            if at is not None and (not line.tabs or at > line.tabs[-1][1] + line.wide):
                line.tabs.append((at, at + long))

    def _shape_tab(self, line: CutLine) -> tuple[str, float, float]:
        """Gives a tab's form, the length of its slopes, and its whole length."""
        form = self.manner.tab_form
        steep = {"trapezoid": self.sizes.slope, "ramp": 3.0}.get(form, 0.0)
        slope = steep * (self.sizes.tab_high + self.sizes.below)
        return form, slope, line.wide + self.sizes.tab + 2 * slope

    def _find_top(self) -> float:
        """Gives z of a tab's top."""
        every = self.manner.tab_when == "every pass"
        return 0.5 if every else self.sizes.tab_high - self.means.thickness


def find_sides(part: LaidPart, track: Track, wide: float) -> list[float]:
    """Gives where the middles of an upright part's sides lie on a track beside them."""
    x0, y0, x1, y1 = part.box
    middle, half = complex(x0 + x1, y0 + y1) / 2, wide / 2
    sides = [complex(x0 - half, middle.imag), complex(x1 + half, middle.imag),
             complex(middle.real, y0 - half), complex(middle.real, y1 + half)]  # fmt: skip
    found = []
    for seg, begin in zip(track.segs, track.ends, strict=False):
        ahead = (seg.b - seg.a) / abs(seg.b - seg.a)
        for side in sides:
            along = (side - seg.a) * ahead.conjugate()
            if abs(along.imag) < 1e-6 and 0 < along.real < abs(seg.b - seg.a):
                found.append(begin + along.real)
    return found


class TabPlace:
    """Finds where on a line a tab holds: between straight neighbours, with waste beside it."""

    def __init__(
        self, track: Track, wide: float, long: float, tab: float, keep: Sequence[complex]
    ) -> None:
        self.track, self.wide, self.long, self.tab, self.keep = track, wide, long, tab, keep
        count = int(track.length / 2) + 1
        self.around = [(track.length * k / count, track.find(track.length * k / count))
                       for k in range(count)]  # fmt: skip

    def find(self, begin: float, share: float) -> float | None:
        """Gives where a tab may begin in a share of the line, its middle first."""
        spare = share - self.long
        for shift in range(int(max(spare, 0.0) / 2 / 3) + 1):
            for side in (1, -1):
                at = begin + spare / 2 + side * shift * 3
                if self._holds(at):
                    return at
        return None

    def _holds(self, at: float) -> bool:
        middle = self.track.find(at + self.long / 2)
        if any(abs(middle - stroke) < self.long * 0.6 + self.wide for stroke in self.keep):
            return False
        for s, point in self.around:
            away = abs(s - at - self.long / 2)
            away = min(away, self.track.length - away)
            if away > self.long / 2 + 1:
                near = (
                    self.wide + 2 if away > self.long * 1.6 else (self.wide + self.tab * 0.8) / 2
                )
                if abs(point - middle) < near:
                    return False
        return True


def halve(line: CutLine, more: float) -> list[CutLine]:
    """Cuts a closed line in two open ones that run `more` mm into each other."""
    middle = line.track.length / 2
    for low, high in line.tabs:
        if low - 3 < middle < high + 3 + more:
            middle = high + 4 + more
    halves: list[CutLine] = []
    for begin, end in ((0.0, middle), (middle, line.track.length)):
        track = Track(line.track.take(begin, end + more), closed=False)
        tabs = [(a - begin, b - begin) for a, b in line.tabs if begin <= a and b <= end + more]
        halves.append(
            CutLine(line.role, line.part, line.bit, line.wide, track, list(line.floors), tabs,
                    line.tab_top, line.tab_form, line.slope, feed=line.feed, plunge=line.plunge,
                    second=bool(halves))
        )  # fmt: skip
    return halves


def clear_pocket(feature: Feature, wide: float, frame: Frame) -> Track:
    """Gives one stroke that clears a pocket: to and fro and round its edge, or in rings."""
    assert feature.outline
    edge = feature.outline.trace(-wide / 2)
    if isinstance(feature.outline, Disc):
        return clear_round_pocket(feature.outline, wide).place(frame)
    x0, y0, x1, y1 = edge.bounds()
    points: list[complex] = []
    if feature.form == "zigzag":
        count = max(1, ceil((y1 - y0) / (wide * 0.45)))
        for k in range(count + 1):
            y = y0 + (y1 - y0) * k / count
            row = [complex(x0 + wide / 2, y), complex(x1 - wide / 2, y)]
            points += row if k % 2 == 0 else row[::-1]
    else:
        inset = min(x1 - x0, y1 - y0) / 2 - 0.01
        for k in range(max(1, ceil(inset / (wide * 0.4))), 0, -1):
            d = inset * k / max(1, ceil(inset / (wide * 0.4)))
            ring = [complex(x0 + d, y0 + d), complex(x1 - d, y0 + d), complex(x1 - d, y1 - d),
                    complex(x0 + d, y1 - d), complex(x0 + d, y0 + d)]  # fmt: skip
            points += ring
    segs = [Seg(a, b) for a, b in itertools.pairwise(points) if a != b]
    segs.append(Seg(points[-1], edge.segs[0].a))
    return Track([*segs, *edge.segs], closed=False).place(frame)


def clear_round_pocket(pocket: Disc, wide: float) -> Track:
    """Gives rings from the middle of a round pocket to its edge."""
    last = pocket.radius - wide / 2
    count = max(1, ceil(last / (wide * 0.4)))
    segs: list[Seg] = []
    here = pocket.centre
    for k in range(1, count + 1):
        start = pocket.centre + last * k / count
        segs += [Seg(here, start), Seg(start, start, pocket.centre, tau)]
        here = start
    return Track(segs, closed=False)


def put_in_order(lines: Sequence[CutLine], laying: Laying, manner: Manner) -> list[CutLine]:
    """Orders lines: small bits first, what is inside first, parts in holes before their rings."""

    def depth(line: CutLine) -> tuple[int, int]:
        part = line.part
        if part is None:
            return (len(laying.parts), 1)
        around = laying.parts[part].within
        return (part if around is None else around, 0 if around is not None else 1)

    def key(line: CutLine) -> tuple[object, ...]:
        outline = line.role in {"outline", "shared"}
        role = INSIDE.index(line.role) if not outline else len(INSIDE)
        part = line.part if line.part is not None else len(laying.parts)
        if manner.order == "part by part":
            return (-line.bit, *depth(line), part, role)
        return (-line.bit, outline, depth(line)[1], role, line.second, *depth(line), part)

    return sorted(lines, key=key)
