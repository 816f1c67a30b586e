"""What the whole window shares: its palette and how large it is drawn."""

import math

from station.look.palette import LIGHT, Palette

BASE = (1366, 768)  # px, the smallest screen; every size in the code is meant on it
TARGET = 60  # px, the least height of what is touched with gloves on
GAP = 12  # px between things to touch
STEP = 0.05  # of the scale: not every pixel of a window builds it anew


class Style:
    """The palette and the scale in use; one for the program."""

    palette: Palette = LIGHT
    scale: float = 1.0


def palette() -> Palette:
    """The colours in use."""
    return Style.palette


def scale_for(width: int, height: int) -> float:
    """How much larger than on the smallest screen things are in a window of a size."""
    fits = min(width / BASE[0], height / BASE[1])
    return max(1.0, math.floor(fits / STEP + 1e-6) * STEP)


def px(size: float) -> int:
    """A size on the smallest screen as pixels on this one."""
    return round(size * Style.scale)
