"""Questions about what was spoiled: how many pieces, why, and on which router they were cut."""

from collections import Counter
from typing import NamedTuple

from station.shop.moves import NO_PIECES
from station.shop.places import kind_of
from station.shop.readings import SPOILED
from station.shop.views import View

LOST_AT_ONCE = "cut"  # where pieces come from that are spoiled with their sheet, on the bed
AT_THE_BED = "loading"


class SpoiledThere(NamedTuple):
    """Pieces that were not good off a router, for one reason, at one place of the sheet."""

    pieces: int
    reason: str  # its number
    place: str  # in words; empty: nobody said


def list_spoiled_by_place(view: View, router: str, since: str) -> tuple[SpoiledThere, ...]:
    """Lists what was not good off a router since a time, by reason and place, most first.

    Who counted it is not told.
    """
    counts: Counter[tuple[str, str]] = Counter()
    for noted in view.series(f"router/{router}", SPOILED, since):
        counts[noted.reading.why, noted.reading.place] += round(noted.reading.value)
    return tuple(SpoiledThere(n, *what) for what, n in counts.most_common())


def count_spoiled(
    view: View, since: str, until: str, *, router: str = "", area: str = ""
) -> dict[str, int]:
    """Counts the pieces that were spoiled, by reason, from one hour up to and including another.

    With `router` only those that were cut there, with `area` only those that were found in that
    work area; pieces spoiled with their sheet are loading's. The largest count comes first.
    """
    counts: Counter[str] = Counter()
    for passed in view.passed(since, until):
        if not passed.reason or passed.part in NO_PIECES:
            continue
        came_from = AT_THE_BED if passed.frm == LOST_AT_ONCE else kind_of(passed.frm).area
        if router in ("", passed.router) and area in ("", came_from):
            counts[passed.reason] += passed.qty if kind_of(passed.to).reason else -passed.qty
    return dict(Counter({reason: n for reason, n in counts.items() if n}).most_common())
