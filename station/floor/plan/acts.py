"""Writes down what is decided at what to cut and is no release, as it is kept for ever."""

from typing import NamedTuple

from station.shop.acts import Args


class SetMark(Args, frozen=True, kw_only=True):
    """Sets below how many pieces of a part on the rack more is cut, and from what that follows."""

    kind = "set_mark"

    mark: int
    why: str = ""


class CutSooner(Args, frozen=True, kw_only=True):
    """Gives a queued batch an earlier place in its router's queue: when it is due from now on."""

    kind = "cut_sooner"

    due: str


class Bought(NamedTuple):
    """One thing that is ordered: what, how many, the day on which it should be there.

    `id` is empty for a bit size that nobody has entered; `diameter_mm` tells it then.
    """

    of: str  # material, bit_size, mailer
    id: str
    quantity: int
    expected: str
    diameter_mm: float = 0.0


class NotePurchases(Args, frozen=True, kw_only=True):
    """Notes what is ordered and on its way from now on."""

    kind = "note_purchases"

    rows: tuple[Bought, ...]
