"""What a reading of a part's size says: whether it can be that size, and whether it is right."""

from collections.abc import Sequence

from station.shop.acts import Answer, notice
from station.shop.facts import Size
from station.shop.words import Say, say

# A reading this far from what is nominal is of something else: common practice, no source.
FAR_SHARE = 0.1
FAR_MM = 2.0


def name_size(size: Size) -> Say:
    """Names a size with what it should be about: ``A along, about 399 mm``."""
    return say("{size}, about {mm} mm", size=size.name, mm=f"{size.nominal_mm:g}")


def is_inside(size: Size, mm: float) -> bool:
    """Tells whether a reading keeps the limits; one that is on a limit does."""
    return size.low_mm <= mm <= size.high_mm


def ask_if_far(size: Size, mm: float) -> Answer | None:
    """Asks about a reading that can't be of this size; it is not booked."""
    far = max(FAR_SHARE * size.nominal_mm, FAR_MM, size.high_mm - size.nominal_mm)
    if abs(mm - size.nominal_mm) <= far:
        return None
    return notice(
        say("{mm} mm: is that {size}?", mm=f"{mm:g}", size=name_size(size)),
        say("Measure it again, or choose the size that it is."),
    )


def is_settled(size: Size, readings: Sequence[float], least: int = 1) -> bool:
    """Tells whether a size is right: inside, and twice in turn after one that was outside."""
    inside = [is_inside(size, mm) for mm in readings]
    return all(inside[-2:]) and len(inside) >= (least if all(inside) else 2)
