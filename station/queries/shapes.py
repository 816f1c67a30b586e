"""Shapes beside each other: which known part one differs from by little, and in what."""

import math
from collections.abc import Iterable

from station.shop.facts import Loop, Part, Shape, measure_loop
from station.shop.words import Say, area, length, say, together

NEAR_SHARE = 0.06  # of the longer side: what differs by more is another part
SIZE_MM = 0.02  # below this two sizes are one
HOLE_MM, HOLE_MM2 = 0.1, 2.0  # below this two holes lie alike, and are as large
POCKET_MM2 = 2.0  # below this two pockets are as large: their edges are kept to 0.01 mm


def find_near(shape: Shape, parts: Iterable[Part]) -> Part | None:
    """Finds the part whose shape is the nearest to one, within a little of its sizes; or None."""
    found = [(_measure_off(shape, p.shape), p.id, p) for p in parts if p.shape]
    best = min(((off, id_, p) for off, id_, p in found if off is not None), default=None)
    return best[2] if best else None


def _measure_off(one: Shape, other: Shape) -> float | None:
    """Measures how far two shapes are apart, as a share of their length; None: too far."""
    if not one.outline or not other.outline:
        return None
    (a, b), (c, d) = sorted(one.box), sorted(other.box)
    most = max(b, d, 1e-9)
    area = abs(one.area_mm2 - other.area_mm2) / most**2
    off = max(abs(a - c) / most, abs(b - d) / most, area)
    if off > NEAR_SHARE:
        return None
    return off + 0.001 * abs(len(one.holes) - len(other.holes))


def list_shape_differences(was: Shape, now: Shape) -> list[Say]:
    """Lists in what a shape differs from one that is known."""
    found: list[Say] = []
    (a, b), (c, d) = sorted(was.box), sorted(now.box)
    if abs(a - c) > SIZE_MM or abs(b - d) > SIZE_MM:
        found.append(say("{now} mm instead of {was}.", now=_write_size(d, c),
                         was=_write_size(b, a)))  # fmt: skip
    found += list_hole_differences(was, now)
    found += list_recess_differences(was, now)
    now_has, had = len(now.tabs), len(was.tabs)
    if now_has != had:
        found.append(say("{now} {now|tab|tabs} instead of {was}.", now=now_has, was=had))
    if not found:
        off = now.area_mm2 - was.area_mm2
        found.append(say("Its outline differs: {mm} mm² of area.", mm=area(off)))
    return found


def list_hole_differences(was: Shape, now: Shape) -> list[Say]:
    """Lists in what holes and slots differ: how many, how large, where; however it is turned."""
    now_has, had = len(now.holes), len(was.holes)
    if now_has != had:
        return [say("{now} {now|hole|holes} instead of {was}.", now=now_has, was=had)]
    sizes, sizes_were = (sorted(measure_loop(h) for h in shape.holes) for shape in (now, was))
    if any(abs(a - b) > HOLE_MM2 for a, b in zip(sizes, sizes_were, strict=True)):
        return [say("Holes of another size.")]
    left = _measure_from_middle(was)
    for place in _measure_from_middle(now):
        near = min(left, key=lambda there: math.dist(place, there))
        if math.dist(place, near) > HOLE_MM:
            return [say("Holes at another place.")]
        left.remove(near)
    return []


def _measure_from_middle(shape: Shape) -> list[tuple[float, float]]:
    """Measures how far the middle of each hole lies from that of the shape's box, along its
    longer side and across it: the same however the shape is turned over or around.
    """
    x, y = _find_middle(shape.outline)
    wide, high = shape.box
    off = [(abs(hx - x), abs(hy - y)) for hx, hy in map(_find_middle, shape.holes)]
    return off if wide >= high else [(b, a) for a, b in off]


def _find_middle(loop: Loop) -> tuple[float, float]:
    """Finds the middle of the box around a loop, mm."""
    across, up = zip(*loop, strict=True)
    return (min(across) + max(across)) / 2, (min(up) + max(up)) / 2


def list_recess_differences(was: Shape, now: Shape) -> list[Say]:
    """Lists in what pockets, grooves and engraving differ: how many, how deep, how large."""
    now_has, had = len(now.recesses), len(was.recesses)
    if now_has != had:
        return [say("{now} {now|pocket|pockets} or grooves instead of {was}.", now=now_has,
                    was=had)]  # fmt: skip
    deep = sorted(round(r.depth_mm, 1) for r in now.recesses)
    deep_was = sorted(round(r.depth_mm, 1) for r in was.recesses)
    if deep != deep_was:
        return [say("Pockets {now} mm deep instead of {was}.", now=_write(deep),
                    was=_write(deep_was))]  # fmt: skip
    off = sum(measure_loop(r.outline) for r in now.recesses)
    off -= sum(measure_loop(r.outline) for r in was.recesses)
    if abs(off) > POCKET_MM2:
        return [say("Pockets of another size: {mm} mm².", mm=area(off))]
    return []


def _write(depths: list[float]) -> Say:
    return together([length(depth) for depth in dict.fromkeys(depths)])


def _write_size(long: float, wide: float) -> Say:
    return say("{a} × {b}", a=length(long, 2), b=length(wide, 2))
