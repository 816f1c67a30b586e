"""Lengths in the shop's own unit. They are kept in mm."""

# the international inch of 1959
MM_PER_INCH = 25.4
FINEST = 4  # digits of a mm that are kept: a tenth of a micrometre


def inches(length: float) -> float:
    """Gives inches in mm, as they are kept."""
    return round(length * MM_PER_INCH, FINEST)
