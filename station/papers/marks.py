"""What stands on a page, as data: words, lines, dots and bars, in mm from its upper left.

Papers are laid out once into marks. `station.papers.pdf` writes them into a file; a printer
gets the same marks at its own dots, so that bars are whole dots there too.
"""

from typing import NamedTuple

Points = tuple[tuple[float, float], ...]


class TextMark(NamedTuple):
    """One line of words, its foot at y; `side`: x is its left, right or middle."""

    x: float
    y: float
    words: str
    size: float  # points
    bold: bool = False
    grey: float = 0.0  # 0 is black, 1 white
    side: str = "left"


class LineMark(NamedTuple):
    """A line through points; `fill` is the grey inside, None for nothing."""

    points: Points
    wide: float = 0.25  # mm; 0 draws no line
    grey: float = 0.0
    closed: bool = False
    dash: bool = False
    fill: float | None = None


class DotMark(NamedTuple):
    """A filled circle."""

    x: float
    y: float
    radius: float
    grey: float = 0.0


class BarsMark(NamedTuple):
    """A code's bars without its quiet zones: x is the left of the first bar, y their top."""

    x: float
    y: float
    code: str
    dots: int  # printer dots of 1/203 inch a module
    high: float


Mark = TextMark | LineMark | DotMark | BarsMark
