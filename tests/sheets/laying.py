"""Lays parts on a sheet: in rows, in each other's holes, with shared lines, as strips."""

import cmath
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from math import radians
from random import Random

from tests.sheets.models import DRAW, FINE, MAIN, MARK, Feature, Means, Model, draw_twin, round_to
from tests.sheets.shapes import Disc, Frame, Track, make_box, make_line


@dataclass(frozen=True)
class LaidPart:
    """A part on the sheet. `within` is the part in whose hole it lies; `kind` tells equal ones."""

    model: Model
    frame: Frame
    kind: str
    within: int | None = None

    @cached_property
    def box(self) -> tuple[float, float, float, float]:
        """Gives least x, least y, greatest x, greatest y on the sheet."""
        return self.model.outline.trace(0.0).place(self.frame).bounds()


@dataclass
class Laying:
    """What lies on a sheet. `shared` lines free parts in place of their own outlines."""

    parts: list[LaidPart] = field(default_factory=list)
    shared: list[Track] = field(default_factory=list)
    rest: int = 0  # pieces of the sheet that come loose and are no parts
    beside: list[Feature] = field(default_factory=list)  # cut in no part


def lay_out(
    rng: Random, form: str, size: tuple[float, float], means: Means, gap: float, beside: str
) -> Laying:
    """Lays a sheet out in one of the forms."""
    if form == "shared":
        return lay_grid(rng, size, means)
    if form == "strips":
        return lay_strips(rng, size, means)
    laying = lay_rows(rng, form, size, means, gap, EDGE if beside != "nothing" else 0.0)
    laying.beside = draw_beside(beside, size, means)
    return laying


def draw_beside(beside: str, size: tuple[float, float], means: Means) -> list[Feature]:
    """Gives holes for pins in the corners of a sheet, or a mark engraved at its edge."""
    if beside == "pin holes":
        half = means.bit(FINE) / 2
        spots = [complex(8, 8), complex(size[0] - 8, 8), complex(8, size[1] - 8)]
        return [Feature("drilled", Disc(half, spot), bit=FINE) for spot in spots]
    if beside == "sheet mark":
        stroke = make_line(complex(30, 5), complex(36, 10), complex(42, 5), complex(48, 10))
        return [Feature("engraving", stroke=stroke, depth=0.4, bit=MARK)]
    return []


EDGE = 16.0  # mm left free for what is cut beside the parts


def choose_models(rng: Random, form: str, means: Means) -> list[tuple[Model, bool, int]]:
    """Gives models, each with whether it is mirrored and how many of it are wanted."""
    names = rng.sample(list(DRAW), rng.randint(1, 4))
    if form == "mirrored":
        names = ["bracket", *(name for name in names if name != "bracket")]
    chosen = []
    for name in names:
        model = DRAW[name](rng, means)
        many = rng.choice([1, 2, 3, 4, 6, 8, 12, 20, 30])
        chosen.append((model, False, many))
        if form == "mirrored" and model.handed:
            chosen.append((model, True, max(1, many - rng.randint(0, 2))))
        if form == "twins" and (twin := draw_twin(rng, model, means)):
            chosen.append((twin, False, rng.randint(1, 6)))
    return chosen


def lay_rows(
    rng: Random, form: str, size: tuple[float, float], means: Means, gap: float, edge: float
) -> Laying:
    """Lays parts in rows from the lower left, as many as fit and are wanted."""
    wanted = []
    for k, (model, mirrored, many) in enumerate(choose_models(rng, form, means)):
        turns = choose_turns(rng)
        for _ in range(many):
            turn = rng.choice(turns)
            wanted.append(LaidPart(model, Frame(0j, turn, mirrored), f"{k} {model.name}"))
    if form == "nested":
        ring = draw_ring(rng, means)
        wanted[:0] = [LaidPart(ring, Frame(), "ring")] * rng.randint(1, 2)
    if rng.random() < 0.3:
        rng.shuffle(wanted)
    laying = Laying(fill_rows(wanted[:80], size, gap, edge))
    if form == "nested":
        fill_rings(rng, laying, means, gap)
    return laying


def choose_turns(rng: Random) -> list[complex]:
    """Gives the turns that a kind is laid in."""
    odd = cmath.exp(1j * radians(rng.choice([15, 30, 37.5, 45, 60])))
    return rng.choice(
        [[1 + 0j], [1 + 0j], [1 + 0j, -1 + 0j], [1j], [1 + 0j, 1j, -1 + 0j, -1j], [odd]]
    )


def fill_rows(
    wanted: Sequence[LaidPart], size: tuple[float, float], gap: float, edge: float
) -> list[LaidPart]:
    """Puts parts side by side and row above row, leaving out what finds no place."""
    laid: list[LaidPart] = []
    x, y, tall = gap + edge, gap + edge, 0.0
    right, top = size[0] - gap - edge, size[1] - gap - edge
    for part in wanted:
        x0, y0, x1, y1 = part.box
        if x + x1 - x0 > right:
            x, y, tall = gap + edge, y + tall + gap, 0.0
        if x + x1 - x0 > right or y + y1 - y0 > top:
            continue
        at = complex(round(x - x0, 3), round(y - y0, 3))
        laid.append(replace(part, frame=part.frame._replace(at=at)))
        x, tall = x + x1 - x0 + gap, max(tall, y1 - y0)
    return laid


def draw_ring(rng: Random, means: Means) -> Model:
    """Draws a ring or a frame whose hole takes other parts."""
    bit = means.bit(MAIN)
    if rng.random() < 0.5:
        outer = round_to(rng.uniform(70, 110))
        return Model("ring", Disc(outer), (Feature("hole", Disc(outer - 16)),))
    w, h = round_to(rng.uniform(130, 200)), round_to(rng.uniform(120, 160))
    inner = make_box(w - 32, h - 32, rng.choice([0.0, bit]))
    return Model("frame", make_box(w, h, 5.0), (Feature("hole", inner),))


def fill_rings(rng: Random, laying: Laying, means: Means, gap: float) -> None:
    """Lays a disc with a hole in the middle of each ring."""
    radius = round_to(min(rng.uniform(18, 34), 42 - gap), 0.5)
    disc = Model(
        "inner disc", Disc(radius), (Feature("hole", Disc(max(4.0, means.bit(MAIN) * 0.7))),)
    )
    for k, part in enumerate(list(laying.parts)):
        if part.kind == "ring":
            laying.parts.append(LaidPart(disc, Frame(part.frame.at), "inner disc", within=k))


def lay_grid(rng: Random, size: tuple[float, float], means: Means) -> Laying:
    """Lays equal plates a bit's width apart: one stroke cuts two of them."""
    bit, margin = means.bit(MAIN), 20.0
    w, h = (round_to(rng.uniform(40, means.large)) for _ in range(2))
    across = max(1, min(rng.randint(1, 6), int((size[0] - 2 * margin) / (w + bit))))
    up = max(1, min(rng.randint(2, 5), int((size[1] - 2 * margin) / (h + bit))))
    hole = Feature("hole", Disc(max(4.0, means.bit(FINE) * 0.7)), bit=FINE)
    model = Model("tile", make_box(w, h), (hole,) if rng.random() < 0.5 else ())
    at = complex(margin + w / 2, margin + h / 2)
    parts = [
        LaidPart(model, Frame(at + complex(i * (w + bit), j * (h + bit))), "tile")
        for j in range(up)
        for i in range(across)
    ]
    low = complex(margin, margin) - complex(bit, bit) / 2
    wide, tall = across * (w + bit), up * (h + bit)
    upright = [
        make_line(low + x, low + complex(x, tall))
        for x in ((w + bit) * k for k in range(1, across))
    ]
    level = [
        make_line(low + 1j * y, low + complex(wide, y))
        for y in ((h + bit) * k for k in range(1, up))
    ]
    ring = make_box(wide, tall, 0.0, low + complex(wide, tall) / 2).trace(0.0)
    inner = upright + level
    return Laying(parts, [*inner, ring] if rng.random() < 0.7 else [ring, *inner])


def lay_strips(rng: Random, size: tuple[float, float], means: Means) -> Laying:
    """Rips strips off across the whole sheet: first its edge is trimmed, a rest stays."""
    bit, upright = means.bit(MAIN), rng.random() < 0.4
    long, across = (size[1], size[0]) if upright else size
    tall = round_to(rng.uniform(30, 90))
    trim = rng.choice([0.0, 8.0]) + bit
    count = min(rng.randint(2, 10), int((across - trim - 40) / (tall + bit)))
    low = [trim + k * (tall + bit) for k in range(count)]
    frame = Frame(0j, 1j, mirrored=True) if upright else Frame()  # x and y change places
    model = Model("strip", make_box(long, tall))
    parts = [
        LaidPart(model, frame._replace(at=frame.place(complex(long / 2, y + tall / 2))), "strip")
        for y in low
    ]
    out = bit / 2 + rng.choice([1.0, 4.0])
    ys = [low[0] - bit / 2, *(y + tall + bit / 2 for y in low)]
    lines = [make_line(complex(-out, y), complex(long + out, y)).place(frame) for y in ys]
    return Laying(parts, lines, rest=2 if trim > bit else 1)
