"""Writes down what is done at trimming, as it is kept for ever.

The subject is the batch, or the part that is compared with its master.
"""

from station.shop.acts import Args
from station.shop.counts import Counts


class PutOnRack(Args, frozen=True, kw_only=True):
    """Puts counted pieces of a batch under their master, to their order, or where they belong.

    `seen` is how many of each part lay here when the batch was picked up.
    """

    kind = "put_on_rack"

    parts: Counts
    seen: dict[str, int] = {}  # noqa: RUF012 - a struct copies it


class CheckMaster(Args, frozen=True, kw_only=True):
    """Compares a piece with its master: it agrees or not, or one of its sizes is measured."""

    kind = "check_master"

    batch: str  # it is a piece of
    agrees: bool = False  # as seen; a reading tells it by itself
    reading_mm: float | None = None
    size: int = 0  # which of the part's sizes was measured, counted from 0
