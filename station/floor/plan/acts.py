"""Writes down what is decided at what to cut and is no release, as it is kept for ever."""

from station.shop.acts import Args


class SetMark(Args, frozen=True, kw_only=True):
    """Sets below how many pieces of a part on the rack more is cut, and from what that follows."""

    kind = "set_mark"

    mark: int
    why: str = ""
