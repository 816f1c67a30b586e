"""Cuts a sheet in a grid of cells, to see what really comes loose: a check of the truth itself.

It knows the strokes as they were planned, not the text, and nothing of how the truth was found:
each stroke sweeps its bit's disc at its depth. Two grids are cut. In the *held* one tabs stand,
in the *freed* one every line goes through where its tabs are; what is in the first and not in
the second are the tabs.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

import numpy as np
from scipy import ndimage

from tests.sheets.draft import SheetDraft
from tests.sheets.laying import LaidPart
from tests.sheets.lines import CutLine
from tests.sheets.making import find_groups
from tests.sheets.shapes import Seg, find_point, measure_seg
from tests.sheets.strokes import RouterStep

STRIDE = 6.0  # mm that are swept at once
LEAST_TAB = 1.5  # mm², below it is what a slope leaves beside a tab


@dataclass(frozen=True)
class LoosePart:
    """What is free when its tabs are gone: area in mm², box, and how many tabs hold it."""

    area: float
    box: tuple[float, float, float, float]
    tabs: int
    openings: int
    at_edge: bool

    @property
    def middle(self) -> complex:
        """The middle of its box."""
        return complex(self.box[0] + self.box[2], self.box[1] + self.box[3]) / 2


class SheetGrid:
    """Heights of a sheet's cells, in mm below its top as negative numbers."""

    def __init__(self, size: tuple[float, float], cell: float) -> None:
        self.cell = cell
        self.z = np.zeros((ceil(size[1] / cell), ceil(size[0] / cell)), dtype=np.float32)

    def sweep(self, a: complex, b: complex, za: float, zb: float, radius: float) -> None:
        """Takes away what a disc takes from `a` to `b`."""
        cell, (rows, columns) = self.cell, self.z.shape
        x0, x1 = sorted((a.real, b.real))
        y0, y1 = sorted((a.imag, b.imag))
        i0, i1 = max(int((y0 - radius) / cell), 0), min(ceil((y1 + radius) / cell) + 1, rows)
        j0, j1 = max(int((x0 - radius) / cell), 0), min(ceil((x1 + radius) / cell) + 1, columns)
        if i0 >= i1 or j0 >= j1:
            return
        y = ((np.arange(i0, i1) + 0.5) * cell - a.imag)[:, None]
        x = ((np.arange(j0, j1) + 0.5) * cell - a.real)[None, :]
        run = b - a
        long = abs(run) or 1e-12
        share = np.clip((x * run.real + y * run.imag) / long**2, 0.0, 1.0)
        within = (x - share * run.real) ** 2 + (y - share * run.imag) ** 2 <= radius**2
        part = self.z[i0:i1, j0:j1]
        np.minimum(part, np.where(within, za + (zb - za) * share, 0.0), out=part)


def split_step(
    begin: complex, above: float, step: RouterStep
) -> Iterator[tuple[complex, complex, float, float]]:
    """Gives a step in short straight pieces with their heights."""
    seg = Seg(begin, step.to, step.centre, step.sweep)
    length = measure_seg(seg)
    stride = min(STRIDE, (0.02 * 8 * abs(begin - step.centre)) ** 0.5) if step.sweep else STRIDE
    count = max(1, ceil(length / max(stride, 0.2)))
    for k in range(count):
        z0, z1 = (above + (step.z - above) * n / count for n in (k, k + 1))
        yield (
            find_point(seg, length * k / count),
            find_point(seg, length * (k + 1) / count),
            z0,
            z1,
        )


def cut_grids(
    steps: Sequence[RouterStep], lines: Sequence[CutLine], bits: Sequence[float],
    size: tuple[float, float], cell: float, through: float,
) -> tuple[np.ndarray, np.ndarray]:  # fmt: skip
    """Gives where material stands with tabs, and without, as two grids of truth values."""
    grid = SheetGrid(size, cell)
    here, z = 0j, 10.0
    for step in steps:
        radius = bits[step.bit] / 2
        if step.kind == "drill":
            grid.sweep(step.to, step.to, step.z, step.z, radius)
            here = step.to
        if step.kind in {"rapid", "feed"}:
            for a, b, z0, z1 in split_step(here, z, step) if min(z, step.z) < 0 else ():
                grid.sweep(a, b, min(z0, 0), min(z1, 0), radius)
            here, z = step.to, step.z
    held = grid.z > through
    for line in lines:
        for begin, end in line.tabs:
            for seg in line.track.take(begin, end):
                step = RouterStep("feed", seg.b, line.floors[-1], seg.centre, seg.sweep)
                for a, b, z0, z1 in split_step(seg.a, line.floors[-1], step):
                    grid.sweep(a, b, z0, z1, line.wide / 2)
    return held, grid.z > through


def find_loose(held: np.ndarray, freed: np.ndarray, cell: float) -> list[LoosePart]:
    """Gives all that comes apart, each with its tabs, without crumbs below 4 mm²."""
    names, count = ndimage.label(freed)
    tabs, many = ndimage.label(held & ~freed, structure=np.ones((3, 3)))
    big = np.bincount(tabs.ravel(), minlength=many + 1) * cell * cell >= LEAST_TAB
    big[0] = False
    sums = np.bincount(names.ravel(), minlength=count + 1)
    rows, columns = names.shape
    parts = []
    for k, place in enumerate(ndimage.find_objects(names), start=1):
        area = float(sums[k]) * cell * cell
        if area < 4 or place is None:
            continue
        grown = tuple(slice(max(s.start - 2, 0), s.stop + 2) for s in place)
        edge = ndimage.binary_dilation(names[grown] == k, iterations=2)
        touched = np.unique(tabs[grown][edge])
        (y, x) = place
        box = (x.start * cell, y.start * cell, x.stop * cell, y.stop * cell)
        at_edge = x.start == 0 or y.start == 0 or x.stop == columns or y.stop == rows
        parts.append(
            LoosePart(
                area, box, int(big[touched].sum()), count_openings(names[grown] == k), at_edge
            )
        )
    return parts


def count_openings(part: np.ndarray) -> int:
    """Counts what is open inside a part."""
    _, count = ndimage.label(~np.pad(part, 1))
    return int(count) - 1


def find_tolerance(part: LaidPart, cell: float) -> float:
    """Gives by how much an area may differ: cells at its edge, chords of arcs."""
    tracks = [part.model.outline.trace(0.0)]
    tracks += [f.outline.trace(0.0) for f in part.model.features if f.outline and not f.depth]
    edge = sum(t.length for t in tracks)
    edge += sum(2 * f.stroke.length for f in part.model.features if f.stroke and not f.depth)
    return 2.0 + edge * (0.5 * cell + 0.01)


def cut_draft(draft: SheetDraft, cell: float) -> list[LoosePart]:
    """Cuts a draft's sheet and gives what comes apart. What only a skin holds is free."""
    thick = draft.means.thickness
    skin = 0.0
    if draft.manner.hold == "onion":
        skin = max(thick + min(line.floors) for line in draft.lines if line.role == "outline")
    through = -thick + max(skin, 0.0) + 1e-4
    held, freed = cut_grids(draft.steps, draft.lines, draft.means.bits, draft.size, cell, through)
    return find_loose(held, freed, cell)


def check_truth(draft: SheetDraft, cell: float) -> list[str]:
    """Tells how truth and grid differ: parts not found, other areas, openings, tabs."""
    told, free = [], cut_draft(draft, cell)
    for group in find_groups(draft):
        for place, tabs in zip(group.places, group.tabs, strict=True):
            if not free:
                return [*told, f"{len(told)} parts differ, and no more come loose"]
            near = min(free, key=lambda p: abs(p.middle - place) + abs(p.area - group.area) * 0.01)
            part = find_part(draft, place)
            name = f"{group.name} at {place:.1f}"
            if abs(near.middle - place) > 3 * cell:
                told.append(f"no {name}")
            elif abs(near.area - group.area) > find_tolerance(part, cell):
                told.append(f"{name}: {near.area:.1f} not {group.area:.1f} mm²")
            elif near.tabs != tabs:
                told.append(f"{name}: {near.tabs} tabs, not {tabs}")
            elif near.openings != group.holes + group.slots:
                told.append(f"{name}: {near.openings} openings, not {group.holes + group.slots}")
            free.remove(near)
    return told + [
        f"loose at {p.middle:.1f}: {p.area:.0f} mm²" for p in free if is_strange(draft, p)
    ]


def find_part(draft: SheetDraft, place: complex) -> LaidPart:
    """Gives the part whose box has its middle there."""

    def away(part: LaidPart) -> float:
        x0, y0, x1, y1 = part.box
        return abs(complex(x0 + x1, y0 + y1) / 2 - place)

    return min(draft.laying.parts, key=away)


def is_strange(draft: SheetDraft, loose: LoosePart) -> bool:
    """Whether what comes loose is no rest of the sheet, nothing that fell out of a part, no scrap.

    Scraps lie between parts where their strokes meet, and are small.
    """
    if loose.at_edge or loose.area < 120 or draft.manner.gap == "tight":
        return False
    for part in draft.laying.parts:
        for feature in part.model.features:
            if feature.kind == "hole" and feature.outline:
                x0, y0, x1, y1 = feature.outline.trace(0.5).place(part.frame).bounds()
                if (
                    x0 < loose.box[0]
                    and y0 < loose.box[1]
                    and loose.box[2] < x1
                    and loose.box[3] < y1
                ):
                    return False
    return True
