"""Divides the sheets that are cut for orders into lots, by the orders that wait for them.

A file may make a part for an order due today and for one due next week: all its sheets together
would hold up what others wait for in between.
"""

import math
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from station.planning.learnt import PartLearnt
from station.planning.messages import FileNow
from station.planning.routers import LOAD_MIN

SHORT_MIN = 120.0  # router minutes; what takes less stays one batch; of our own choice
# router minutes; what takes longer is parted into about so much, for what is begun goes on while
# urgent work waits; of our own choice
LONG_MIN = 240.0


class CutLot(NamedTuple):
    """Sheets of a file for the orders due by a time, and the part of them wanted first."""

    due: str
    part: str
    file: str
    sheets: int
    more: int = 0  # sheets that follow for the same, in batches of their own


class _OpenNeed(NamedTuple):
    """Pieces to cut of a part for orders due by a time, besides those for orders due before."""

    due: str
    part: str
    pieces: int


def divide_for_orders(
    counts: Mapping[str, int],
    files: Mapping[str, FileNow],
    parts: Mapping[str, PartLearnt],
    certainty: float,
) -> list[CutLot]:
    """Divides the sheets counted for orders into lots, the first due first.

    Each sheet belongs to the first order that still lacks something it makes.
    """
    left = {file: sheets for file, sheets in counts.items() if sheets}
    made: dict[str, int] = {}  # pieces that no order has taken yet
    single: list[CutLot] = []
    for open_ in _list_open(parts, certainty):
        lacking = open_.pieces - made.get(open_.part, 0)
        made[open_.part] = max(0, -lacking)
        while lacking > 0 and (file := _find_maker(open_.part, left, files)):
            left[file] -= 1
            single.append(CutLot(open_.due, open_.part, file, 1))
            for part, each in files[file].makes.items():
                made[part] = made.get(part, 0) + each
            took = min(lacking, made[open_.part])
            made[open_.part] -= took
            lacking -= took
    single += [_find_last(file, n, files, parts) for file, n in left.items() if n]
    return [
        lot._replace(sheets=sheets, more=more)
        for lot in sorted(_join_short(single, files))
        for sheets, more in part_sheets(files[lot.file], lot.sheets)
    ]


def part_sheets(file: FileNow, sheets: int) -> Iterator[tuple[int, int]]:
    """Parts sheets into batches of about the same length, none of them long.

    Gives the sheets of each, and how many follow; other routers may take those.
    """
    each = min(file.minutes.values(), default=0.0) + LOAD_MIN
    batches = math.ceil(sheets / max(1, round(LONG_MIN / each)))
    for left in range(batches, 0, -1):
        batch = math.ceil(sheets / left)
        sheets -= batch
        yield batch, sheets


def _list_open(parts: Mapping[str, PartLearnt], certainty: float) -> list[_OpenNeed]:
    """Lists what is to be cut for orders, by due time."""
    found = []
    for name, part in parts.items():
        wanted = before = 0
        dues = [wish.due for wish in part.now.wishes]
        for n, wish in enumerate(part.now.wishes):
            wanted += wish.pieces
            if wish.due in dues[n + 1 : n + 2]:
                continue  # another one is due just then
            pieces = part.count_fresh(certainty, wanted)
            if pieces > before:
                found.append(_OpenNeed(wish.due, name, pieces - before))
                before = pieces
    return sorted(found)


def _find_maker(part: str, left: Mapping[str, int], files: Mapping[str, FileNow]) -> str | None:
    """Finds the file with sheets left that makes most of a part; None: none is left."""
    makers = [file for file, n in left.items() if n and part in files[file].makes]
    return max(makers, key=lambda file: files[file].makes[part], default=None)


def _find_last(
    file: str, sheets: int, files: Mapping[str, FileNow], parts: Mapping[str, PartLearnt]
) -> CutLot:
    """Makes a lot of sheets that no order takes for itself: with the first that lacks its part."""
    lacked = [p for p in map(parts.get, files[file].makes) if p and p.lacking]
    part = min(lacked, key=PartLearnt.find_first_due)
    return CutLot(part.find_first_due(), part.now.id, file, sheets)


def _join_short(single: list[CutLot], files: Mapping[str, FileNow]) -> list[CutLot]:
    """Joins sheets of a file that are due together, and what would be a short batch of its own."""
    joined: dict[str, list[CutLot]] = {}
    for lot in sorted(single):
        lots = joined.setdefault(lot.file, [])
        each = min(files[lot.file].minutes.values()) + LOAD_MIN
        if lots and (lots[-1].due == lot.due or lots[-1].sheets * each < SHORT_MIN):
            lots[-1] = lots[-1]._replace(sheets=lots[-1].sheets + lot.sheets)
        else:
            lots.append(lot)
    return [lot for lots in joined.values() for lot in lots]
