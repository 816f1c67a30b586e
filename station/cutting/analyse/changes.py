"""What differs between two revisions of a cut file, part by part."""

from __future__ import annotations

import math
from dataclasses import dataclass

from station.cutting.geometry.rings import centroid_of
from station.cutting.model import Analysis, Piece, ShapeFound, Tab
from station.shop.words import say

SIZE_MM = 0.02
TAB_MM = 0.5
FEED_PART = 0.01


@dataclass(frozen=True)
class CutFileChange:
    """Tells one difference: its kind, a sentence, and where it is on the new sheet."""

    kind: str  # gone, new, count, size, place, tabs, depth, bits, path
    text: str
    at: tuple[float, float] | None = None


def compare_analyses(old: Analysis, new: Analysis) -> list[CutFileChange]:
    """Lists the differences from `old` to `new`, largest matters first; empty: none found."""
    found: list[CutFileChange] = []
    pairs, gone, fresh = _pair_shapes(old, new)
    found += [CutFileChange("gone", f"{_name_shape(s)} is no longer cut.") for s in gone]
    found += [CutFileChange("new", f"{_name_shape(s)} is new.") for s in fresh]
    for one, other in pairs:
        found += _compare_shapes(old, new, one, other)
    return found + _compare_files(old, new)


def _name_shape(shape: ShapeFound) -> str:
    """Names a shape by its part, or by its sizes."""
    return shape.name or f"The {shape.length_mm:.2f} × {shape.width_mm:.2f} mm piece"


def _pair_shapes(
    old: Analysis, new: Analysis
) -> tuple[list[tuple[ShapeFound, ShapeFound]], list[ShapeFound], list[ShapeFound]]:
    """Pairs shapes that are the same or nearly: the nearest in size, within a tenth."""
    rest = list(new.shapes)
    pairs, gone = [], []
    for shape in old.shapes:
        near = min(rest, key=lambda s: _compare_sizes(shape, s), default=None)
        if near is None or _compare_sizes(shape, near) > 0.1:
            gone.append(shape)
        else:
            rest.remove(near)
            pairs.append((shape, near))
    return pairs, gone, rest


def _compare_sizes(one: ShapeFound, other: ShapeFound) -> float:
    """Tells how far two shapes' sizes differ, as a share of the larger; 0 for one part."""
    if one.part is not None and one.part == other.part:
        return 0.0
    sizes = (one.width_mm, other.width_mm), (one.length_mm, other.length_mm)
    areas = (one.area_mm2, other.area_mm2)
    return max(abs(a - b) / max(a, b, 1e-9) for a, b in (*sizes, areas))


def _compare_shapes(
    old: Analysis, new: Analysis, one: ShapeFound, other: ShapeFound
) -> list[CutFileChange]:
    """Compares one shape before and after: its count, its sizes, its pieces."""
    found = []
    if len(one.pieces) != len(other.pieces):
        text = f"{_name_shape(one)}: {len(other.pieces)} instead of {len(one.pieces)}."
        found.append(CutFileChange("count", text))
    for what, a, b in (
        ("width", one.width_mm, other.width_mm),
        ("length", one.length_mm, other.length_mm),
    ):
        if abs(a - b) > SIZE_MM:
            found.append(
                CutFileChange("size", f"{_name_shape(one)}: {what} {b:.2f} instead of {a:.2f} mm.")
            )
    slack = SIZE_MM * max(one.perimeter_mm, other.perimeter_mm) / 4
    if not found and abs(one.area_mm2 - other.area_mm2) > slack:
        found.append(
            CutFileChange("size", f"{_name_shape(one)}: its holes or its outline changed.")
        )
    return found + _compare_pieces(old, new, one, other)


def _compare_pieces(
    old: Analysis, new: Analysis, one: ShapeFound, other: ShapeFound
) -> list[CutFileChange]:
    """Finds pieces that lie elsewhere, and tabs moved on those that lie where they did."""
    found = []
    before = [old.pieces[i] for i in one.pieces]
    for piece in (new.pieces[i] for i in other.pieces):
        same = min(before, key=lambda p: _measure_between(p, piece), default=None)
        x, y = map(float, centroid_of(piece.outline))
        if same is None or _measure_between(same, piece) > 1.0:
            found.append(CutFileChange("place", f"{_name_shape(one)} lies elsewhere.", (x, y)))
        elif text := _compare_tabs(same.tabs, piece.tabs):
            found.append(CutFileChange("tabs", f"{_name_shape(one)}: {text}", (x, y)))
    return found


def _measure_between(one: Piece, other: Piece) -> float:
    """Measures the way between two pieces' centres of area, mm."""
    return math.dist(centroid_of(one.outline), centroid_of(other.outline))


def _compare_tabs(before: tuple[Tab, ...], after: tuple[Tab, ...]) -> str:
    """Says in what the tabs of a piece differ; empty: they do not."""
    if len(before) != len(after):
        text = say("{n} {n|tab|tabs} instead of {old}.", n=len(after), old=len(before))
        return str(text)
    for tab in after:
        near = min(before, key=lambda t: math.dist((t.x_mm, t.y_mm), (tab.x_mm, tab.y_mm)))
        if math.dist((near.x_mm, near.y_mm), (tab.x_mm, tab.y_mm)) > TAB_MM:
            return "a tab was moved."
        if abs(near.width_mm - tab.width_mm) > 0.1 or abs(near.height_mm - tab.height_mm) > 0.1:
            return f"a tab is {tab.width_mm:.1f} × {tab.height_mm:.1f} mm now."
    return ""


def _compare_files(old: Analysis, new: Analysis) -> list[CutFileChange]:
    """Compares what belongs to the whole file: depth, bits, length of the path."""
    found = []
    deep, deeper = old.bounds_mm[2], new.bounds_mm[2]
    if abs(deep - deeper) > SIZE_MM:
        found.append(
            CutFileChange("depth", f"The deepest cut is {deeper:.2f} instead of {deep:.2f} mm.")
        )
    bits = [b.number for b in old.bits], [b.number for b in new.bits]
    if bits[0] != bits[1]:
        found.append(CutFileChange("bits", f"Bits {bits[1]} instead of {bits[0]}."))
    if abs(old.feed_mm - new.feed_mm) > FEED_PART * max(old.feed_mm, 1.0):
        text = f"The path is {new.feed_mm / 1000:.1f} instead of {old.feed_mm / 1000:.1f} m."
        found.append(CutFileChange("path", text))
    return found
