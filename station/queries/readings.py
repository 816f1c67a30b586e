"""Questions about readings: can it be one, how did they go over time, what do they come from."""

from collections.abc import Iterable
from typing import NamedTuple

from station.queries.batches import find_cut_batch, list_slips
from station.shop.acts import Answer, question
from station.shop.facts import Revision, Size
from station.shop.readings import name_size
from station.shop.views import Noted, View
from station.shop.words import length, say

# A reading this far from what is nominal is of something else: common practice, no source.
FAR_SHARE = 0.1
FAR_MM = 2.0


def ask_if_far(size: Size, mm: float) -> Answer | None:
    """Asks about a reading that can't be of this size; it is not booked."""
    far = max(FAR_SHARE * size.nominal_mm, FAR_MM, size.high_mm - size.nominal_mm)
    if abs(mm - size.nominal_mm) <= far:
        return None
    return question(
        say("{mm} mm: is that {size}?", mm=length(mm), size=size.in_words),
        say("Measure it again, or choose the size that it is."),
    )


class Source(NamedTuple):
    """What a batch's pieces came from; empty where it is not known, or its sheets differ."""

    batch: str
    sheet: int = 0
    router: str = ""
    bit: str = ""
    lot: str = ""
    revision: str = ""


def find_source(view: View, number: str) -> Source:
    """Finds what a batch's pieces came from, by the slips of its sheets or its parent's.

    What was split off or is made good was cut with its parent; of pieces of several batches
    that came back together nobody knows.
    """
    cut = find_cut_batch(view, number)
    if cut is None:
        return Source(number)
    slips = list_slips(view, cut)
    return Source(
        batch=number,
        sheet=slips[0].sheet if len(slips) == 1 else 0,
        router=_find_common(slip.router for slip in slips),
        bit=_find_common(slip.bit for slip in slips),
        lot=_find_common(slip.lot for slip in slips),
        revision=Revision.id_of(cut.cut_file, cut.revision),
    )


def _find_common(found: Iterable[str]) -> str:
    """Finds what is the same in all; else nothing."""
    different = set(found)
    return different.pop() if len(different) == 1 else ""


def list_size(
    view: View, part: str, size: str, since: str = "", *, router: str = "", bit: str = ""
) -> tuple[Noted, ...]:
    """Lists what was measured of one size of a part, in mm, by time.

    Each reading says which batch, sheet, router and bit it came from, as far as it is known;
    with `router` or `bit` only those of the one or the other are listed.
    """
    return tuple(
        noted
        for noted in view.series(f"part/{part}", name_size(size), since)
        if (not router or noted.reading.router == router) and (not bit or noted.reading.bit == bit)
    )
