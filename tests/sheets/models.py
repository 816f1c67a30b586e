"""Kinds of parts of an invented weaving-tool workshop, drawn about their middle, in mm."""

import cmath
from collections.abc import Callable
from dataclasses import dataclass, replace
from math import pi, tau
from random import Random
from typing import NamedTuple

from tests.sheets.shapes import Blob, Disc, Outline, Rounded, Seg, Track, make_box, make_line

MAIN, FINE, MARK = (
    0,
    1,
    2,
)  # which of a sheet's bits: for outlines, for small details, for engraving


@dataclass(frozen=True)
class Feature:
    """What is cut in a part besides its outline. A depth of 0 is through.

    Kinds: hole (round a closed line), drilled, slot (one stroke), notch (one stroke from the
    edge), groove (one blind stroke), pocket (a blind area), engraving (a shallow stroke).
    """

    kind: str
    outline: Outline | None = None
    stroke: Track | None = None
    depth: float = 0.0
    bit: int = MAIN
    form: str = ""


@dataclass(frozen=True)
class Model:
    """A kind of part. `handed` models differ from what a mirror shows."""

    name: str
    outline: Outline
    features: tuple[Feature, ...] = ()
    handed: bool = False

    def count(self, *kinds: str) -> int:
        """Counts features of some kinds."""
        return sum(f.kind in kinds for f in self.features)


class Means(NamedTuple):
    """What a sheet's models are drawn for: thickness, and the bits' diameters, main first."""

    thickness: float
    bits: tuple[float, ...]
    large: float  # how wide a part may be

    def bit(self, which: int) -> float:
        """Gives the diameter of one of the bits; a sheet with few uses the last that it has."""
        return self.bits[min(which, len(self.bits) - 1)]


def round_to(value: float, step: float = 0.5) -> float:
    """Rounds a size as a draughtsman would."""
    return round(value / step) * step


def draw_hole(rng: Random, means: Means, at: complex, radius: float) -> Feature:
    """Gives a round hole of about a radius: milled, or drilled by a fine bit."""
    bit = means.bit(FINE)
    if rng.random() < 0.25:
        return Feature("drilled", Disc(bit / 2, at), bit=FINE)
    radius = max(round_to(radius, 0.25), bit * 0.7)
    form = "bored" if radius < bit * 1.5 and rng.random() < 0.6 else ""
    return Feature("hole", Disc(radius, at), bit=FINE, form=form)


def plate(rng: Random, means: Means) -> Model:
    """Draws a plate with holes at its corners."""
    w, h = (round_to(rng.uniform(40, means.large)) for _ in range(2))
    corner = rng.choice([0.0, 0.0, round_to(min(w, h) * rng.uniform(0.05, 0.3))])
    holes = []
    inset = max(8.0, means.bit(FINE) * 2, corner * 0.6)
    if min(w, h) > inset * 4:
        at = complex(w / 2 - inset, h / 2 - inset)
        spots = [at, -at, at.conjugate(), -at.conjugate()][: rng.choice([0, 2, 4])]
        wall = inset if inset > corner else corner - 2**0.5 * (corner - inset)
        radius = rng.uniform(2, wall - 3)
        made = draw_hole(rng, means, 0j, radius)
        holes = [replace(made, outline=replace_centre(made.outline, s)) for s in spots]
    return Model("plate", make_box(w, h, corner), tuple(holes))


def replace_centre(outline: Outline | None, at: complex) -> Outline:
    """Gives a circle about another point."""
    assert isinstance(outline, Disc)
    return replace(outline, centre=at)


def card(rng: Random, means: Means) -> Model:
    """Draws a weaving card: a rounded square with four holes, at times one in its middle."""
    size = round_to(rng.uniform(55, 80))
    at = size / 2 - rng.uniform(11, 14)
    hole = Feature("hole", Disc(max(rng.choice([3.0, 4.0, 5.0]), means.bit(FINE) * 0.7)), bit=FINE)
    spots = [complex(at, at), complex(-at, at), complex(at, -at), complex(-at, -at)]
    spots += [0j] * rng.randint(0, 1)
    holes = [replace(hole, outline=replace_centre(hole.outline, s)) for s in spots]
    return Model("card", make_box(size, size, rng.choice([5.0, 8.0])), tuple(holes))


def heddle(rng: Random, means: Means) -> Model:
    """Draws a rigid heddle: a row of closed slots, with holes between them."""
    bit = means.bit(FINE)
    pitch = round_to(bit * rng.uniform(2.6, 3.6), 0.25) + 2
    count = rng.randint(4, max(4, int(means.large * 1.2 / pitch) - 2))
    tall = round_to(rng.uniform(60, 120))
    features = []
    for k in range(count):
        x = (k - (count - 1) / 2) * pitch
        stroke = make_line(complex(x, -tall / 2 + 16), complex(x, tall / 2 - 16))
        features.append(Feature("slot", stroke=stroke, bit=FINE))
        if k and pitch > bit * 3 + 3:
            features.append(Feature("drilled", Disc(bit / 2, complex(x - pitch / 2, 0)), bit=FINE))
    return Model(
        "heddle", make_box(count * pitch + 24, tall, rng.choice([0.0, 6.0])), tuple(features)
    )


def comb(rng: Random, means: Means) -> Model:
    """Draws a comb: strokes from one edge leave its teeth."""
    bit = means.bit(FINE)
    pitch = round_to(bit + rng.uniform(3.5, 8), 0.25)
    count = rng.randint(3, max(3, int(means.large * 1.3 / pitch) - 2))
    w, tall = count * pitch + 12, round_to(rng.uniform(50, 90))
    deep = round_to(tall * rng.uniform(0.4, 0.65))
    low = -tall / 2 - means.bit(MAIN) / 2 - 0.5
    tops = -tall / 2 + deep
    strokes = [
        make_line(complex(x, low), complex(x, tops))
        for x in ((k - (count - 1) / 2) * pitch for k in range(count))
    ]
    features = [Feature("notch", stroke=s, bit=FINE) for s in strokes]
    radii = (0.0, 0.0, 8.0, 8.0) if rng.random() < 0.6 else (0.0,) * 4
    return Model("comb", replace(make_box(w, tall), radii=radii), tuple(features))


def bobbin(rng: Random, means: Means) -> Model:
    """Draws a disc with a hole, at times a small one beside it."""
    radius = round_to(rng.uniform(18, means.large / 3))
    hole = min(radius / 3, rng.uniform(4, 12))
    features = [draw_hole(rng, means, 0j, hole)]
    if radius > 30 and rng.random() < 0.4:
        features.append(draw_hole(rng, means, complex(radius * 0.68, 0), 3.0))
    return Model("bobbin", Disc(radius), tuple(features))


def shuttle(rng: Random, means: Means) -> Model:
    """Draws a stick shuttle: a long plate with a mouth in each end."""
    bit = means.bit(MAIN)
    w, h = round_to(rng.uniform(110, max(140, means.large))), round_to(rng.uniform(32, 50))
    mouth, deep = max(bit * 1.3, h * 0.3), round_to(rng.uniform(14, 24))
    x, y, m = w / 2, h / 2, mouth / 2
    right = [complex(x, -y), complex(x, -m), complex(x - deep, -m), complex(x - deep, m),
             complex(x, m), complex(x, y)]  # fmt: skip
    corners = [*right, *(-c for c in right)]
    inner = mouth * 0.49 if rng.random() < 0.5 else 0.0
    tip = rng.choice([0.0, 4.0])
    radii = [tip, 0.0, inner, inner, 0.0, tip] * 2
    return Model("shuttle", Rounded(tuple(corners), tuple(radii)))


def bracket(rng: Random, means: Means) -> Model:
    """Draws an L with holes at unlike distances: it has a left and a right."""
    sides = (round_to(rng.uniform(70, means.large)), round_to(rng.uniform(55, 100)))
    short, long = sorted(sides)
    arm = round_to(rng.uniform(24, 34))
    x, y = long / 2, short / 2
    corners = (complex(-x, -y), complex(x, -y), complex(x, -y + arm), complex(-x + arm, -y + arm),
               complex(-x + arm, y), complex(-x, y))  # fmt: skip
    inner = rng.choice([0.0, means.bit(MAIN) * 0.8])
    outer = rng.choice([0.0, 5.0])
    hole = Feature("hole", Disc(max(3.0, means.bit(FINE) * 0.75)), bit=FINE)
    spots = [complex(x - arm / 2, -y + arm / 2), complex(-x + arm / 2, y - arm / 2)]
    features = [replace(hole, outline=replace_centre(hole.outline, s)) for s in spots]
    begin, end = complex(-x + arm + 8, -y + arm / 2), complex(x - arm - 6, -y + arm / 2)
    if rng.random() < 0.5 and end.real - begin.real > 10:
        depth = round_to(means.thickness * rng.uniform(0.3, 0.5), 0.25)
        groove = make_line(begin, end)
        features.append(Feature("groove", stroke=groove, depth=depth, bit=FINE))
    return Model("bracket", Rounded(corners, (outer, outer, outer, inner, outer, outer)),
                 tuple(features), handed=abs(long - short) > 4)  # fmt: skip


def many_cornered(rng: Random, means: Means) -> Model:
    """Draws a regular polygon, sharp or rounded, with a hole in its middle."""
    n, radius = rng.choice([3, 5, 6, 8]), round_to(rng.uniform(26, means.large / 3))
    corners = tuple(cmath.rect(radius, tau * k / n + pi / 2) for k in range(n))
    hole = draw_hole(rng, means, 0j, min(radius / 4, 8))
    return Model("many-cornered", Rounded(corners, (rng.choice([0.0, 3.0, 6.0]),) * n), (hole,))


def leaf(rng: Random, means: Means) -> Model:
    """Draws a smooth freehand shape in chords."""
    radius = round_to(rng.uniform(25, means.large / 3.5))
    waves = ((2, rng.uniform(0.05, 0.16), rng.uniform(0, tau)), (3, rng.uniform(0.02, 0.05), 1.0))
    return Model("leaf", Blob(radius, waves))


def lath(rng: Random, means: Means) -> Model:
    """Draws a long narrow piece with round ends, and a long hole or slot."""
    w, h = round_to(rng.uniform(90, means.large * 1.3)), round_to(rng.uniform(24, 40))
    bit = means.bit(MAIN)
    inner = w - h - 10
    if rng.random() < 0.5:
        feature = Feature("slot", stroke=make_line(complex(-inner / 2), complex(inner / 2)))
    else:
        tall = max(bit * 1.4, 8.0)
        feature = Feature("hole", make_box(inner, tall, tall / 2 - 0.01))
    return Model("lath", make_box(w, h, rng.choice([h / 2 - 0.01, 6.0])), (feature,))


def name_plate(rng: Random, means: Means) -> Model:
    """Draws a plate with a pocket, or with marks engraved in it, or both."""
    w, h = round_to(rng.uniform(90, means.large)), round_to(rng.uniform(50, 90))
    bit = means.bit(FINE)
    depth = round_to(means.thickness * rng.uniform(0.2, 0.5), 0.25)
    features = []
    way = rng.choice(["pocket", "marks", "both"])
    if way != "marks":
        wide = w * 0.35 if way == "both" else w * 0.6
        at = complex(-w * 0.2 if way == "both" else 0, 0)
        box = make_box(round_to(wide), round_to(h * 0.5), rng.choice([bit / 2, bit]), at)
        features.append(
            Feature("pocket", box, depth=depth, bit=FINE, form=rng.choice(["zigzag", "rings"]))
        )
    if way != "pocket":
        middle = complex(w * 0.25, 0) if way == "both" else 0j
        features += draw_marks(rng, means, middle, w * 0.3, h * 0.3)
    return Model("name plate", make_box(w, h, rng.choice([0.0, 6.0])), tuple(features))


def draw_marks(rng: Random, means: Means, middle: complex, w: float, h: float) -> list[Feature]:
    """Gives one to three engraved zigzags side by side, apart from each other."""
    count = rng.randint(1, 3)
    depth = rng.choice([0.3, 0.5, 0.8])
    step = max(w / count, means.bit(MARK) * 3, 9.0)
    marks = []
    for k in range(count):
        x = middle + (k - (count - 1) / 2) * step
        half = complex(0, h / 2)
        over = complex(step * 0.25, 0)
        stroke = make_line(x - half - over, x + half, x - half + over)
        marks.append(Feature("engraving", stroke=stroke, depth=depth, bit=MARK))
    return marks


def grooved(rng: Random, means: Means) -> Model:
    """Draws a plate with blind grooves and one slot through."""
    w, h = round_to(rng.uniform(80, means.large)), round_to(rng.uniform(60, 110))
    bit, count = means.bit(FINE), rng.randint(1, 4)
    depth = round_to(means.thickness * rng.uniform(0.25, 0.6), 0.25)
    step = (h - 20) / (count + 1)
    ys = [-h / 2 + 10 + step * (k + 1) for k in range(count)]
    features = []
    if step > bit + 3:
        for k, y in enumerate(ys):
            stroke = make_line(complex(-w / 2 + 14, y), complex(w / 2 - 14, y))
            blind = k > 0 or count == 1
            features.append(Feature("groove" if blind else "slot", stroke=stroke,
                                    depth=depth if blind else 0.0, bit=FINE))  # fmt: skip
    return Model("grooved plate", make_box(w, h, rng.choice([0.0, 5.0])), tuple(features))


def dial(rng: Random, means: Means) -> Model:
    """Draws a disc with slots along arcs, and a hole in its middle."""
    radius, bit = round_to(rng.uniform(32, means.large / 3)), means.bit(FINE)
    count, at = rng.choice([2, 3, 4]), radius * 0.65
    features = [draw_hole(rng, means, 0j, radius * 0.15)]
    sweep = min(tau / count * 0.6, tau / count - (2 * bit + 6) / at)
    for k in range(count):
        a, b = (cmath.rect(at, tau * k / count + turn) for turn in (0.0, sweep))
        stroke = Track([Seg(a, b, 0j, sweep)], closed=False)
        features.append(Feature("slot", stroke=stroke, bit=FINE))
    return Model("dial", Disc(radius), tuple(features))


def raddle(rng: Random, means: Means) -> Model:
    """Draws a lath with a row of holes for pegs."""
    pitch = round_to(rng.uniform(10, 25))
    count = rng.randint(4, max(4, int(means.large * 1.3 / pitch)))
    hole = draw_hole(rng, means, 0j, 2.5)
    assert isinstance(hole.outline, Disc)
    pitch = max(pitch, hole.outline.radius * 2 + 6)
    spots = [complex((k - (count - 1) / 2) * pitch) for k in range(count)]
    holes = [replace(hole, outline=replace_centre(hole.outline, spot)) for spot in spots]
    wide = max(24.0, round_to(hole.outline.radius * 4))
    return Model(
        "raddle", make_box(count * pitch + 14, wide, rng.choice([0.0, 5.0])), tuple(holes)
    )


def window(rng: Random, means: Means) -> Model:
    """Draws a frame: a large hole of some shape falls out of it."""
    w, h = (round_to(rng.uniform(70, means.large)) for _ in range(2))
    bit, rim = means.bit(MAIN), 14.0
    inner = make_box(w - 2 * rim, h - 2 * rim, rng.choice([0.0, bit / 2, bit, 12.0]))
    if rng.random() < 0.3:
        inner_radius = min(w, h) / 2 - rim
        corners = tuple(cmath.rect(inner_radius, tau * k / 6) for k in range(6))
        inner = Rounded(corners, (rng.choice([0.0, bit]),) * 6)
    return Model("window", make_box(w, h, rng.choice([0.0, 8.0])), (Feature("hole", inner),))


def peg(rng: Random, means: Means) -> Model:
    """Draws a plate with stepped holes: a round pocket with a hole through its middle."""
    w, h = round_to(rng.uniform(60, means.large)), round_to(rng.uniform(40, 80))
    bit = means.bit(FINE)
    hole = max(2.5, bit * 0.7)
    wide = round_to(hole + max(3.0, bit * 0.8), 0.25)
    depth = round_to(means.thickness * rng.uniform(0.25, 0.5), 0.25)
    reach = w / 2 - wide - 8
    spots = [complex(-reach), complex(reach)] if reach > wide + 5 else [0j]
    features = []
    for spot in spots:
        features.append(Feature("pocket", Disc(wide, spot), depth=depth, bit=FINE))
        features.append(Feature("hole", Disc(hole, spot), bit=FINE))
    return Model(
        "peg", make_box(w, max(h, 2 * wide + 12), rng.choice([0.0, 6.0])), tuple(features)
    )


def dado(rng: Random, means: Means) -> Model:
    """Draws a side with blind grooves that run out over its edges."""
    w, h = round_to(rng.uniform(90, means.large)), round_to(rng.uniform(40, 90))
    count, bit = rng.randint(1, 3), means.bit(MAIN)
    depth = round_to(means.thickness * rng.uniform(0.3, 0.5), 0.25)
    out = h / 2 + bit / 2 + 0.5
    xs = [(k - (count - 1) / 2) * max(w / 4, bit * 2) for k in range(count)]
    strokes = [make_line(complex(x, -out), complex(x, out)) for x in xs]
    grooves = tuple(Feature("groove", stroke=s, depth=depth) for s in strokes)
    return Model("dado", make_box(w, h), grooves)


DRAW: dict[str, Callable[[Random, Means], Model]] = {
    "plate": plate, "card": card, "heddle": heddle, "comb": comb, "bobbin": bobbin,
    "shuttle": shuttle, "bracket": bracket, "many-cornered": many_cornered, "leaf": leaf,
    "lath": lath, "name plate": name_plate, "grooved plate": grooved, "dial": dial,
    "raddle": raddle, "window": window, "peg": peg, "dado": dado,
}  # fmt: skip


def draw_twin(rng: Random, model: Model, means: Means) -> Model | None:
    """Gives a model that differs by one feature: one left out, or one more in its middle."""
    if model.name in {"plate", "card", "window"} and rng.random() < 0.3:
        assert isinstance(model.outline, Rounded)
        wider = tuple(c + (1.0 if c.real > 0 else -1.0) for c in model.outline.corners)
        return replace(
            model, name=f"{model.name} wider", outline=replace(model.outline, corners=wider)
        )
    if model.features and rng.random() < 0.7:
        gone = rng.randrange(len(model.features))
        kept = tuple(f for k, f in enumerate(model.features) if k != gone)
        return replace(model, name=f"{model.name} without one", features=kept)
    if model.features or model.name not in {"plate", "bobbin", "many-cornered", "leaf"}:
        return None
    more = draw_hole(rng, means, 0j, 4.0)
    return replace(model, name=f"{model.name} with a hole", features=(more,))
