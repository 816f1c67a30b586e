"""What the whole window shares: its palette and how large it is drawn."""

from station.look.palette import LIGHT, Palette

BASE = (1366, 768)  # px, the smallest screen; every size in the code is meant on it
TARGET = 60  # px, the least height of what is touched with gloves on
GAP = 12  # px between things to touch


class Style:
    """The palette and the scale in use; one for the program."""

    palette: Palette = LIGHT
    scale: float = 1.0


def palette() -> Palette:
    """The colours in use."""
    return Style.palette


def px(size: float) -> int:
    """A size on the smallest screen as pixels on this one."""
    return round(size * Style.scale)
