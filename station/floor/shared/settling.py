"""Writes down how what needs a look is settled, as it is kept for ever."""

from station.shop.acts import Args


class SettleConcern(Args, frozen=True, kw_only=True):
    """Settles what needs a look, in one of its ways; the subject is the concern."""

    kind = "settle_concern"

    how: str = ""  # one of the concern's choices; empty: its first
    why: str = ""  # where no reason card says it
    others: tuple[str, ...] = ()  # ids of those like it that are settled the same way with it
