"""Where a PC's history begins: what was done before is in the shop's database alone."""

from station.shop.words import Say, say


def not_here(begins: str) -> Say:
    """That what is asked for may lie before the beginning (`View.begins`); else nothing."""
    if not begins:
        return Say()
    day = f"{begins[8:10]}.{begins[5:7]}.{begins[:4]}"
    return say("What was done before {day} is not on this PC.", day=day)
