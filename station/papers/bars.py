"""Code 128 bars as vectors in whole printer dots (ISO/IEC 15417; the encoder is python-barcode's).

At 203 dots an inch a narrow bar is two dots, 0.2502 mm; three where the paper has room.
Quiet zones are ten modules on both sides; the bars are at least 5 mm and 15 % of their
length high, which the tutorials give as guidance for scanning by hand.
"""

from functools import lru_cache

from reportlab.lib.units import inch, mm
from reportlab.pdfgen.canvas import Canvas

DOT = inch / 203  # points
QUIET = 10  # modules on either side


@lru_cache(maxsize=4096)
def modules(text: str) -> str:
    """The symbol as ones (bar) and zeros (space), quiet zones not included."""
    from barcode import Code128  # noqa: PLC0415 - heavy, only when a paper is drawn

    return str(Code128(text).build()[0])


def length(text: str, dots: int = 2) -> float:
    """Points from the first quiet zone to the last."""
    return float((len(modules(text)) + 2 * QUIET) * dots * DOT)


def least_height(text: str, dots: int = 2) -> float:
    """Points: the greater of 5 mm and 15 % of the symbol's length."""
    return float(max(5 * mm, 0.15 * len(modules(text)) * dots * DOT))


def draw(
    canvas: Canvas, text: str, x: float, y: float, *, dots: int = 2, height: float = 0.0
) -> float:
    """Draws the bars, their quiet zone beginning at x, their foot at y; gives the length.

    The page's own lower left is on the dot grid, so x and y are moved to the nearest dot.
    """
    high = max(height, least_height(text, dots))
    left = round(x / DOT) * DOT + QUIET * dots * DOT
    low = round(y / DOT) * DOT
    canvas.setFillGray(0)
    for start, run in _runs(modules(text)):
        canvas.rect(left + start * dots * DOT, low, run * dots * DOT, high, stroke=0, fill=1)
    return length(text, dots)


def _runs(bits: str) -> list[tuple[int, int]]:
    """Where bars begin and how many modules wide they are."""
    runs: list[tuple[int, int]] = []
    for n, bit in enumerate(bits):
        if bit == "0":
            continue
        if runs and runs[-1][0] + runs[-1][1] == n:
            runs[-1] = (runs[-1][0], runs[-1][1] + 1)
        else:
            runs.append((n, 1))
    return runs


def spaced(text: str) -> str:
    """``B00412AA`` as people read it: ``B 00412 A A``."""
    groups = [text[0]]
    for char in text[1:-1]:
        if groups[-1][-1].isdigit() and char.isdigit():
            groups[-1] += char
        else:
            groups.append(char)
    return " ".join([*groups, text[-1]])
