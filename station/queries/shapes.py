"""Shapes beside each other: which known part one differs from by little, and in what."""

from collections.abc import Iterable

from station.shop.facts import Part, Shape, measure_loop
from station.shop.words import Say, area, length, say, together

NEAR_SHARE = 0.06  # of the longer side: what differs by more is another part
SIZE_MM = 0.02  # below this two sizes are one
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
    now_has, had = len(now.holes), len(was.holes)
    if now_has != had:
        found.append(say("{now} {now|hole|holes} instead of {was}.", now=now_has, was=had))
    found += list_recess_differences(was, now)
    now_has, had = len(now.tabs), len(was.tabs)
    if now_has != had:
        found.append(say("{now} {now|tab|tabs} instead of {was}.", now=now_has, was=had))
    if not found:
        off = now.area_mm2 - was.area_mm2
        found.append(say("Its outline differs: {mm} mm² of area.", mm=area(off)))
    return found


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
