"""Gives as readings how a piece compares with its master."""

from station.queries.readings import find_source
from station.shop.facts import Part, Size
from station.shop.readings import MASTER, NO, YES, Reading, name_size
from station.shop.views import View


def give_comparison(
    view: View, part: Part, batch: str, size: Size | None, mm: float, *, agrees: bool
) -> tuple[Reading, ...]:
    """Gives whether a piece of a batch agrees, and its size in mm where one was measured.

    Both say what cut the piece, as far as all sheets of its batch agree on it.
    """
    source = find_source(view, batch)._asdict()
    seen = Reading(subject=part.key, kind=MASTER, value=YES if agrees else NO, **source)
    if size is None:
        return (seen,)
    measured = Reading(
        subject=part.key,
        kind=name_size(size.name),
        value=mm,
        unit="mm",
        low=size.low_mm,
        high=size.high_mm,
        **source,
    )
    return (seen, measured)
