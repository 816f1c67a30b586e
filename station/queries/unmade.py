"""Questions about sheets that a batch did not get: told until they are cut anew, or dropped."""

from dataclasses import replace

from station.shop.facts import Batch, Concern
from station.shop.views import View
from station.shop.words import say

UNMADE = "unmade"  # the kind of concern
DROP, MADE = "drop it", "one more is cut"  # how it is settled: by a supervisor, by itself
MOST = 5000  # concerns


def raise_unmade(batch: Batch, sheet: int, lost: int, *, id: str, at: str) -> Concern:
    """Raises that a spoiled sheet is not made anew yet; `lost` are its pieces that are gone."""
    text = say(
        "Batch {batch}, sheet {sheet} is not made anew: {n} {n|piece|pieces} lost",
        batch=batch.id,
        sheet=sheet,
        n=lost,
    )
    return Concern(id=id, what=UNMADE, since=at, about=batch.key, text=text, choices=("drop it",))


def list_unmade(view: View, batch: Batch) -> tuple[Concern, ...]:
    """Lists what tells of sheets of a batch that are neither made anew nor dropped, in order."""
    every = view.shelf(Concern, "open", MOST)
    return tuple(c for c in every if c.what == UNMADE and c.about == batch.key)


def settle_unmade(told: tuple[Concern, ...], how: str, *, at: str, by: str) -> tuple[Concern, ...]:
    """Settles what tells of unmade sheets: they are made anew, or their batch is over."""
    return tuple(replace(c, settled=how, settled_at=at, by=by, reason=how) for c in told)
