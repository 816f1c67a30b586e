"""What differs between two revisions of a cut file, part by part, as sentences."""

from collections.abc import Mapping
from itertools import zip_longest

from station.shop.facts import Placed, Revision, Shape
from station.shop.words import Say, say

SIZE_MM = 0.02  # below this two sizes are one: the reader's own grid is 0.01 mm
PLACE_MM = 0.5
TAB_MM = 0.5
SHARE = 0.01  # of minutes and metres


def differences(old: Revision, new: Revision, names: Mapping[str, Say | str]) -> list[Say]:
    """From `old` to `new`; empty: the same parts, places, tabs, time and bits.

    `names` gives a part's name by id; a part without one is told by its id.
    """
    had, makes = old.makes(), new.makes()
    found: list[Say] = []
    for part in dict.fromkeys((*had, *makes)):
        name = names.get(part, part)
        if part not in makes:
            found.append(say("{part} is no longer cut.", part=name))
        elif part not in had:
            found.append(say("{part} is new: {n} a sheet.", part=name, n=makes[part]))
        else:
            found += _of_part(old, new, part, name)
    return found + _of_file(old, new)


def _of_part(old: Revision, new: Revision, part: str, name: Say | str) -> list[Say]:
    found: list[Say] = []
    before, after = old.makes()[part], new.makes()[part]
    if before != after:
        found.append(
            say("{part}: {now} instead of {was} a sheet.", part=name, now=after, was=before)
        )
    one, other = dict(old.shapes).get(part), dict(new.shapes).get(part)
    if one and other:
        found += _of_shape(one, other, name)
    moved = _moved(_places(old, part), _places(new, part))
    if before == after and moved:
        found.append(say("{part}: {n} {n|lies|lie} elsewhere on the sheet.", part=name, n=moved))
    return found


def _of_shape(one: Shape, other: Shape, name: Say | str) -> list[Say]:
    (a, b), (c, d) = sorted(one.box), sorted(other.box)
    if abs(a - c) > SIZE_MM or abs(b - d) > SIZE_MM:
        now, was = f"{d:.2f} × {c:.2f}", f"{b:.2f} × {a:.2f}"
        return [say("{part}: {now} mm instead of {was}.", part=name, now=now, was=was)]
    found: list[Say] = []
    if len(one.holes) != len(other.holes):
        holes = say(
            "{part}: {now} {now|hole|holes} instead of {was}.",
            part=name,
            now=len(other.holes),
            was=len(one.holes),
        )
        found.append(holes)
    if len(one.tabs) != len(other.tabs):
        tabs = say(
            "{part}: {now} {now|tab|tabs} instead of {was}.",
            part=name,
            now=len(other.tabs),
            was=len(one.tabs),
        )
        found.append(tabs)
    elif _apart(one.tabs, other.tabs) > TAB_MM:
        found.append(say("{part}: its tabs are elsewhere.", part=name))
    return found


def _apart(one: tuple[tuple[float, float], ...], other: tuple[tuple[float, float], ...]) -> float:
    """How far the points of two lists of equal length lie apart at most, in their order."""
    pairs = zip(sorted(one), sorted(other), strict=True)
    return max((max(abs(a - c), abs(b - d)) for (a, b), (c, d) in pairs), default=0.0)


def _places(revision: Revision, part: str) -> list[Placed]:
    mine = [p for p in revision.placed if p.part == part]
    return sorted(mine, key=lambda p: (round(p.x_mm), round(p.y_mm), p.turn_deg))


def _moved(one: list[Placed], other: list[Placed]) -> int:
    pairs = zip_longest(one, other)
    return sum(1 for a, b in pairs if a is None or b is None or not _same_place(a, b))


def _same_place(a: Placed, b: Placed) -> bool:
    near = abs(a.x_mm - b.x_mm) <= PLACE_MM and abs(a.y_mm - b.y_mm) <= PLACE_MM
    return near and a.mirrored == b.mirrored


def _of_file(old: Revision, new: Revision) -> list[Say]:
    found: list[Say] = []
    if old.material != new.material:
        found.append(say("Another material."))
    if (old.length_mm, old.width_mm) != (new.length_mm, new.width_mm):
        found.append(say("Another size of sheet."))
    if abs(old.minutes - new.minutes) > SHARE * max(old.minutes, new.minutes):
        now, was = f"{new.minutes:.1f}", f"{old.minutes:.1f}"
        found.append(say("{now} min a sheet instead of {was}.", now=now, was=was))
    return found + _of_bits(old, new)


def _of_bits(old: Revision, new: Revision) -> list[Say]:
    found: list[Say] = []
    before = {b.number: b for b in old.bits}
    for bit in new.bits:
        had = before.pop(bit.number, None)
        if had is None:
            found.append(say("Bit {number} is new.", number=bit.number))
        elif abs(had.diameter_mm - bit.diameter_mm) > SIZE_MM:
            now, was = f"{bit.diameter_mm:.1f}", f"{had.diameter_mm:.1f}"
            found.append(
                say("Bit {number}: {now} mm instead of {was}.", number=bit.number, now=now,
                    was=was)
            )  # fmt: skip
    found += [say("Bit {number} is no longer used.", number=n) for n in before]
    return found
