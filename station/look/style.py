"""How the whole window looks: its colours by what they mean, its scale, its type.

Text on its ground keeps a contrast of at least 4.5 to 1 (WCAG 2.2 AA), shapes 3 to 1, in the
light and the dark variant; tests/outside/test_contrast.py computes it. The type is Atkinson
Hyperlegible, whose zero and O, one and l differ; it is loaded once from its package.
"""

import math
from dataclasses import dataclass
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import NamedTuple

from PySide6.QtGui import QFont, QFontDatabase, QFontMetrics

BASE = (1366, 768)  # px, the smallest screen; every size in the code is meant on it
TARGET = 60  # px, the least height of what is touched with gloves on
GAP = 12  # px between things to touch
FINGER = 24  # px: what lies this near to a touch on a drawing is hit
# thin rows of a long list, from which scale on: to a finger nearly as large as on the smallest
ROWS = ((1.8, 18), (1.3, 16))
FEWEST_ROWS = 12
STEP = 0.05  # of the scale: not every pixel of a window builds it anew
PACKAGE = "fontpkg_atkinson_hyperlegible"
FAMILY = "Atkinson Hyperlegible"


class Palette(NamedTuple):
    """Colours as #rrggbb."""

    ink: str
    bench: str
    paper: str
    line: str
    act: str
    good: str
    attention: str
    ochre_text: str  # attention as text: a little darker, for the bench behind it
    stop: str
    quiet: str
    bar: str  # the top bar
    on_bar: str  # text on the top bar, the strip and primary buttons
    tint: str  # the ground of a hint and of a chosen row
    tint_line: str  # around a hint
    care: str  # the ground of "Take care"
    care_line: str  # around it
    row: str  # every other table row
    wood: str  # the sheet
    piece: str  # a piece on it, cut already
    rest: str  # the empty part of a bar
    fill: str  # the filled part of a bar that is well
    halt: str  # a stop in a router's day
    waits: str  # the column of what waits before an area
    bag: str  # a mailer
    flap: str  # its flap
    tab: str  # where a tab is on a drawing
    wood_line: str  # around the sheet
    layers: tuple[str, ...]  # what lies in a mailer, from the bottom up
    flow: tuple[str, ...]  # the areas under the lines in the day's flow
    names: tuple[str, ...]  # the names of those lines
    bits: tuple[str, ...]  # the cuts of a file's bits, in the order of their numbers


LIGHT = Palette(
    ink="#1f2a30", bench="#e8e4da", paper="#fffef8", line="#d5cfc1", act="#174f7a",
    good="#2e6b3e", attention="#9a5b00", ochre_text="#8f5400",
    stop="#9e2026", quiet="#5c6665", bar="#1f2a30",
    on_bar="#fffef8", tint="#edf2f8", tint_line="#c5d4e3", care="#fbf1df",
    care_line="#e5d3a8", row="#f5f1ea", wood="#efe6cf",
    piece="#cfdde8", rest="#dfdacd", fill="#5a8c72", halt="#c98a2b",
    waits="#8497a6", bag="#e9edf0", flap="#d5dce0", tab="#9a5b00", wood_line="#c9b98f",
    layers=("#cfdde8", "#fffef8", "#cfe3cf", "#f1e3c4"),
    flow=("#174f7a", "#437fa8", "#7fa6a3", "#b4a467"),
    names=("#174f7a", "#2f6690", "#3f6b66", "#6f6426"),
    bits=("#174f7a", "#a03d6b", "#2e6b3e", "#7a5a00", "#5b3f91"),
)  # fmt: skip

DARK = Palette(
    ink="#ece7db", bench="#14191c", paper="#1f2a30", line="#3d4a51", act="#2a6ea6",
    good="#8fce9f", attention="#f0b455", ochre_text="#f0b455",
    stop="#ff9a9e", quiet="#a9b3b2", bar="#0d1113",
    on_bar="#fffef8", tint="#263844", tint_line="#41586a", care="#3a3020",
    care_line="#6b5730", row="#26323a", wood="#4a4436",
    piece="#33546b", rest="#3d4a51", fill="#7fb897", halt="#e0a24a",
    waits="#7d92a1", bag="#2c3940", flap="#3a4951", tab="#f0b455", wood_line="#7d7358",
    layers=("#33546b", "#26323a", "#35513d", "#54482c"),
    flow=("#2f6690", "#437fa8", "#5f8f8b", "#9c8d52"),
    names=("#8fbce0", "#9fc3dd", "#a9cfcb", "#d8c98a"),
    bits=("#8fbce0", "#e69abf", "#8fce9f", "#e6c567", "#bda7ea"),
)  # fmt: skip


class Style:
    """Holds the palette and the scale in use; one for the program."""

    palette: Palette = LIGHT
    scale: float = 1.0


def palette() -> Palette:
    """Gives the colours in use."""
    return Style.palette


# the strip's grounds, the same in the dark: a tone keeps its colour, with light words on it
STRIP_GROUNDS = {
    "good": "#2e6b3e", "ask": "#174f7a", "attention": "#9a5b00", "stop": "#9e2026",
}  # fmt: skip
TONES = ("good", "attention", "stop", "quiet")


def tone_colour(tone: str) -> str:
    """Gives the colour in use for a tone; ink for none."""
    colour: str = getattr(Style.palette, tone if tone in TONES else "ink")
    return colour


def text_colour(tone: str) -> str:
    """Gives the colour in use for a text of a tone."""
    return Style.palette.ochre_text if tone == "attention" else tone_colour(tone)


def find_scale(width: int, height: int) -> float:
    """Finds how much larger than on the smallest screen things are in a window of a size."""
    fits = min(width / BASE[0], height / BASE[1])
    return max(1.0, math.floor(fits / STEP + 1e-6) * STEP)


def count_rows() -> int:
    """Counts the rows that a long list of thin rows has on this screen: more on a larger one."""
    return next((rows for scale, rows in ROWS if Style.scale >= scale), FEWEST_ROWS)


def px(size: float) -> int:
    """Turns a size on the smallest screen into pixels on this one."""
    return round(size * Style.scale)


@cache
def load_family() -> str:
    """Loads the type; gives its family's name, the system's own where the package is missing."""
    package = find_spec(PACKAGE)  # importlib.resources takes a first window longer than the type
    if package is None or package.origin is None:
        return QFont().family()
    for weight in ("Regular", "Bold"):
        path = Path(package.origin).parent / "files" / f"AtkinsonHyperlegible-{weight}.ttf"
        QFontDatabase.addApplicationFont(str(path))
    return FAMILY


@dataclass(frozen=True, eq=False)
class Lettering:
    """The shop's type at one height: what it is painted with, and what it is measured by."""

    font: QFont
    metrics: QFontMetrics


def find_lettering(size: int, *, bold: bool = False) -> Lettering:
    """Finds the shop's type at a height in pixels on the smallest screen."""
    return _make_lettering(px(size), bold)


@cache
def _make_lettering(high: int, bold: bool) -> Lettering:  # noqa: FBT001 - the key of a cache
    """Makes the shop's type at a height in pixels on this screen, once."""
    font = QFont(load_family())
    font.setPixelSize(high)
    font.setBold(bold)
    return Lettering(font, QFontMetrics(font))


def make_font(size: int, *, bold: bool = False) -> QFont:
    """Makes the shop's type, to be painted with alone."""
    return find_lettering(size, bold=bold).font
