"""Which part each shape of a text is: said by a person, kept where the text is read again."""

import math
from dataclasses import replace

from station.floor.office.work import ReadText
from station.shop.facts import Placed, Revision, Shape
from station.shop.on_sheet import OnSheet

SAME_PLACE_MM = 1.0  # another bit or zero makes a piece larger around its middle
SAME_SIZE_MM, SAME_AREA_MM2 = 0.1, 20.0  # a shape that only lies elsewhere


def name_shape(read: ReadText, shape: str, name: str) -> ReadText:
    """Names a shape as a new part."""
    return _without(replace(read, parts={**read.parts, shape: name}), shape)


def set_part(read: ReadText, shape: str, part: str) -> ReadText:
    """Says that a shape is a part that the shop knows."""
    known = read.revision
    known = replace(
        known,
        shapes=tuple((part if name == shape else name, s) for name, s in known.shapes),
        placed=tuple(replace(p, part=part) if p.part == shape else p for p in known.placed),
    )
    sizes = {**read.sizes, part: read.sizes.get(shape, "")}
    chosen = (*read.chosen, part)
    return _without(replace(read, revision=known, sizes=sizes, chosen=chosen), shape)


def _without(read: ReadText, shape: str) -> ReadText:
    return replace(read, unnamed=tuple(s for s in read.unnamed if s != shape))


def keep_names(before: ReadText | None, now: ReadText) -> ReadText:
    """Keeps what was said of the shapes of a text for those that it still has, read anew."""
    if before is None or before.revision.digest != now.revision.digest:
        return now
    for was, shape in _pair_shapes(before.revision, now.revision):
        if shape not in now.unnamed:
            continue
        if name := before.parts.get(was):
            now = name_shape(now, shape, name)
        elif was in before.chosen and was not in dict(now.revision.shapes):
            now = set_part(now, shape, was)
    return now


def _pair_shapes(before: Revision, now: Revision) -> list[tuple[str, str]]:
    """Pairs the shapes of two readings of a text: those at one place first, the most alike."""
    olds, news = _find_middles(before), _find_middles(now)
    found = sorted(
        (*off, old, new)
        for old, (was, there) in olds.items()
        for new, (shape, here) in news.items()
        if (off := _measure_off(was, shape, math.dist(there, here))) is not None
    )
    pairs: dict[str, str] = {}
    for _, _, old, new in found:
        if old not in pairs and new not in pairs.values():
            pairs[old] = new
    return list(pairs.items())


def _find_middles(revision: Revision) -> dict[str, tuple[Shape, tuple[float, float]]]:
    """Finds each shape with the middle of the piece of it that is cut first."""
    first: dict[str, Placed] = {}
    for piece in revision.placed:
        first.setdefault(piece.part, piece)
    found = {}
    for name, shape in revision.shapes:
        if name in first and shape.outline:
            xs, ys = zip(*OnSheet(first[name], shape).place(shape.outline), strict=True)
            found[name] = shape, ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    return found


def _measure_off(one: Shape, other: Shape, apart: float) -> tuple[bool, float] | None:
    """Measures how far two shapes differ: whether in place, and in size, mm; None: not one."""
    (a, b), (c, d) = sorted(one.box), sorted(other.box)
    off, area = abs(a - c) + abs(b - d), abs(one.area_mm2 - other.area_mm2)
    if apart <= SAME_PLACE_MM:
        return False, off
    return (True, off) if off <= SAME_SIZE_MM and area <= SAME_AREA_MM2 else None
