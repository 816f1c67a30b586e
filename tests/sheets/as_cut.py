"""Sizes of a part as its strokes leave it, where they are chords: smaller than it is drawn.

The edge of a curve that is cut by chords has flats between its corners, and the bit's own width
takes a little more at each. This works from the strokes as they are written.
"""

from collections.abc import Iterator
from math import ceil

import numpy as np
import shapely

from tests.sheets.draft import SheetDraft
from tests.sheets.lines import CutLine
from tests.sheets.shapes import Blob, Seg, find_point, measure_seg
from tests.sheets.writing import TextWriter

STEP = 0.1  # mm, by which arcs are drawn that are not written as chords
LEVEL = 0.02  # mm, above which a stroke does not go through


def find_cut_sizes(draft: SheetDraft, part: int, writer: TextWriter) -> set[tuple[float, float]]:
    """Gives width and height of what is left of a part: of its box, and of the least box about it.

    Nothing where its strokes are as it is drawn.
    """
    model = draft.laying.parts[part].model
    own = {n for n, a in enumerate(draft.lines) if a.part == part and a.role == "outline"}
    if not own or not (draft.manner.arcs == "chords" or isinstance(model.outline, Blob)):
        return set()
    lines = [draft.lines[n] for n in own]
    ways = [*list_strokes(draft, own, writer), *(seg for a in lines for seg in list_closed(a))]
    drawn = [shapely.linestrings(draw_seg(seg)) for seg in ways]
    swept = shapely.union_all(shapely.buffer(drawn, lines[0].wide / 2, quad_segs=64))
    inner = [ring for cut in shapely.get_parts(swept) for ring in cut.interiors]
    if not inner:
        return set()  # a fault left it uncut
    left = max(shapely.polygons(inner), key=shapely.area)
    return {measure_box(left), measure_box(turn_upright(left))}


def list_strokes(draft: SheetDraft, own: set[int], writer: TextWriter) -> Iterator[Seg]:
    """Lists the strokes of some lines that go through or over a tab, as they are written."""
    here, above = 0j, 0.0
    for step in draft.steps:
        if step.kind == "feed" and step.line in own and (step.sweep or step.to != here):
            floor = max(-draft.means.thickness, draft.lines[step.line].floors[-1]) + LEVEL
            if step.role == "tab" or max(above, step.z) <= floor:
                yield from writer.split(Seg(here, step.to, step.centre, step.sweep))
        if step.kind in {"feed", "rapid", "drill"}:
            here, above = step.to, step.z


def list_closed(line: CutLine) -> Iterator[Seg]:
    """Lists what is left between the strokes of a line: its tabs, and the gap before its start."""
    for begin, end in line.tabs:
        yield from line.track.take(begin, end)
    if line.over < 0:
        yield from line.track.take(line.track.length + line.over, line.track.length)


def draw_seg(seg: Seg) -> np.ndarray:
    """Draws a segment as points (n, 2)."""
    count = ceil(measure_seg(seg) / STEP) if seg.sweep else 1
    points = [find_point(seg, measure_seg(seg) * k / count) for k in range(count + 1)]
    return np.array([(p.real, p.imag) for p in points])


def measure_box(shape: shapely.Geometry) -> tuple[float, float]:
    """Measures the box of a shape."""
    x, y, x2, y2 = shapely.bounds(shape).tolist()
    return round(x2 - x, 4), round(y2 - y, 4)


def turn_upright(shape: shapely.Geometry) -> shapely.Geometry:
    """Turns a shape so that the least box about it stands upright."""
    hull = shapely.get_coordinates(shapely.convex_hull(shape))
    z = hull[:, 0] + 1j * hull[:, 1]
    best = None
    for side in np.diff(z):
        turned = z * (side.conjugate() / abs(side))
        area = float(np.ptp(turned.real) * np.ptp(turned.imag))
        if best is None or area < best[0]:
            best = area, turned
    assert best
    return shapely.linestrings(np.column_stack((best[1].real, best[1].imag)))
