"""Where a PC's history begins: what was done before is in the shop's database alone."""

from station.shop.words import Say, dated, say


def not_here(begins: str) -> Say:
    """That what is asked for may lie before the beginning (`View.begins`); else nothing."""
    if not begins:
        return Say()
    return say("What was done before {day} is not on this PC.", day=dated(begins))
