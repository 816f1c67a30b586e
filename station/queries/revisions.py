"""What a revision of a cut file makes, and what differs between two, as sentences."""

from bisect import bisect_left, bisect_right
from collections.abc import Mapping
from dataclasses import replace

from station.queries.batches import find_revision
from station.queries.shapes import list_hole_differences, list_recess_differences
from station.shop.facts import Batch, Part, Placed, Revision, Shape
from station.shop.on_sheet import OnSheet, Points
from station.shop.views import View
from station.shop.words import Say, figure, length, say

SIZE_MM = 0.02  # below this two sizes are one: the reader's own grid is 0.01 mm
PLACE_MM = 0.5
TAB_MM = 0.5
SHARE = 0.01  # of minutes and metres

Pair = tuple[Placed, Placed]  # a piece of the old revision and the one in its place in the new


def list_differences(old: Revision, new: Revision, names: Mapping[str, Say | str]) -> list[Say]:
    """Lists what differs from `old` to `new`; empty: the same parts, places, tabs, time and bits.

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
    pairs, apart = _pairs(_places(old, part), _places(new, part))
    if one and other:
        size = _of_size(one, other, name)
        found += size or (
            *_of_holes(one, other, name),
            *_of_recesses(one, other, name),
            *_of_tabs(one, other, pairs, name),
        )
    if before == after and apart:
        found.append(say("{part}: {n} {n|lies|lie} elsewhere on the sheet.", part=name, n=apart))
    return found


def _of_size(one: Shape, other: Shape, name: Say | str) -> list[Say]:
    (a, b), (c, d) = sorted(one.box), sorted(other.box)
    if abs(a - c) > SIZE_MM or abs(b - d) > SIZE_MM:
        now, was = (say("{a} × {b}", a=length(x, 2), b=length(y, 2)) for x, y in ((d, c), (b, a)))
        return [say("{part}: {now} mm instead of {was}.", part=name, now=now, was=was)]
    return []


def _of_holes(one: Shape, other: Shape, name: Say | str) -> list[Say]:
    return [say("{part}: {what}", part=name, what=w) for w in list_hole_differences(one, other)]


def _of_recesses(one: Shape, other: Shape, name: Say | str) -> list[Say]:
    return [say("{part}: {what}", part=name, what=w) for w in list_recess_differences(one, other)]


def _of_tabs(one: Shape, other: Shape, pairs: list[Pair], name: Say | str) -> list[Say]:
    """Tabs of each piece against those it had, from its own lower left.

    Where all have changed it is said of the part.
    """
    changed = sum(not _same_tabs(_tabs(a), _tabs(b)) for a, b in pairs)
    if changed == 0:
        return []
    if changed < len(pairs) or _same_tabs(one.tabs, other.tabs):
        return [say("{part}: {n} {n|has|have} other tabs.", part=name, n=changed)]
    now, was = len(other.tabs), len(one.tabs)
    if now != was:
        return [say("{part}: {now} {now|tab|tabs} instead of {was}.", part=name, now=now, was=was)]
    return [say("{part}: its tabs are elsewhere.", part=name)]


def _tabs(piece: Placed) -> Points:
    """A piece's tabs from its own lower left, mm."""
    return [(x - piece.x_mm, y - piece.y_mm) for x, y in piece.tabs]


def _same_tabs(one: Points, other: Points) -> bool:
    """Whether each has one near it among the others, whatever their order."""
    return len(one) == len(other) and all(
        any(abs(a - c) <= TAB_MM and abs(b - d) <= TAB_MM for a, b in there)
        for there, here in ((one, other), (other, one))
        for c, d in here
    )


def find_as_cut(view: View, part: Part, batch: Batch) -> Part:
    """Finds a part as a batch's sheets were cut: with the outline and tabs of its revision."""
    revision = find_revision(view, batch)
    shape = dict(revision.shapes).get(part.id) if revision else None
    return replace(part, shape=shape) if shape else part


def count_tabs(view: View, revision: Revision) -> int:
    """Counts the tabs on one sheet: those of the pieces, or of their outline (`_places`)."""
    shapes, found = dict(revision.shapes), 0
    for name, count in revision.makes().items():
        own = sum(len(piece.tabs) for piece in revision.placed if piece.part == name)
        if not own and name in shapes:
            own = count * len(shapes[name].tabs)
        elif not own and (part := view.get(Part, name)):
            own = count * part.tabs
        found += own
    return found


def _places(revision: Revision, part: str) -> list[Placed]:
    """The pieces of a part, each with its tabs on the sheet, from left to right.

    Where no piece brings tabs of its own, all have those of their shape; where some do, a
    piece without any has none.
    """
    mine = [p for p in revision.placed if p.part == part]
    shape = dict(revision.shapes).get(part)
    if shape and not any(p.tabs for p in mine):
        mine = [replace(p, tabs=tuple(OnSheet(p, shape).place(shape.tabs))) for p in mine]
    return sorted(mine, key=lambda p: (p.x_mm, p.y_mm, p.turn_deg))


def _pairs(one: list[Placed], other: list[Placed]) -> tuple[list[Pair], int]:
    """Pairs pieces that lie where one lay before, and the others in their order.

    Gives the pairs, and how many of the pieces lie elsewhere. Both lists are sorted by x.
    """
    pairs: list[Pair] = []
    rest, apart = list(one), []
    for piece in other:
        first = bisect_left(rest, piece.x_mm - PLACE_MM, key=lambda p: p.x_mm)
        last = bisect_right(rest, piece.x_mm + PLACE_MM, key=lambda p: p.x_mm)
        same = next((n for n in range(first, last) if _same_place(rest[n], piece)), None)
        if same is None:
            apart.append(piece)
        else:
            pairs.append((rest.pop(same), piece))
    pairs += zip(rest, apart, strict=False)
    return pairs, max(len(rest), len(apart))


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
        now, was = figure(new.minutes, 1), figure(old.minutes, 1)
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
            now, was = length(bit.diameter_mm, 1), length(had.diameter_mm, 1)
            found.append(
                say("Bit {number}: {now} mm instead of {was}.", number=bit.number, now=now,
                    was=was)
            )  # fmt: skip
    found += [say("Bit {number} is no longer used.", number=n) for n in before]
    return found
