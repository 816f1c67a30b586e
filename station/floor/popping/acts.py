"""Writes down what is done at popping, as it is kept for ever. The subject is the batch."""

from station.shop.acts import Args
from station.shop.counts import Counts


class PassOn(Args, frozen=True, kw_only=True):
    """Passes counted pieces of some slips on to trimming, or to where they belong.

    `where` on the sheet they lay: part → counter → zones in words. `seen` is how many of each
    part lay here when the slips were picked up.
    """

    kind = "pass_on"

    slips: tuple[str, ...]  # ids
    parts: Counts
    where: dict[str, dict[str, tuple[str, ...]]] = {}  # noqa: RUF012 - a struct copies it
    seen: dict[str, int] = {}  # noqa: RUF012 - the same
