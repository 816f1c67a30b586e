"""Code 128 as modules and runs (ISO/IEC 15417; the encoder is python-barcode's).

A narrow bar is three dots of a printer with 203 dots an inch, 0.375 mm: at two, a print with
flaws, seen turned and out of focus, is read too seldom (`python -m tests.readback`). Quiet
zones are ten modules on both sides. Bars are at least 12 mm high, for the same reason, and
15 % of their length, which tutorials give as guidance for scanning by hand.
"""

from functools import lru_cache

DOT = 25.4 / 203  # mm
DOTS = 3  # dots of a module
QUIET = 10  # modules on either side
HIGH = 12.0  # mm


@lru_cache(maxsize=4096)
def encode_modules(text: str) -> str:
    """Encodes a text as ones (bar) and zeros (space), quiet zones not included."""
    from barcode import Code128  # noqa: PLC0415 - heavy, only when a paper is drawn

    return str(Code128(text).build()[0])


def measure_quiet(dots: int = DOTS) -> float:
    """Measures a quiet zone, mm."""
    return QUIET * dots * DOT


def measure_length(text: str, dots: int = DOTS) -> float:
    """Measures a code from its first quiet zone to its last, mm."""
    return len(encode_modules(text)) * dots * DOT + 2 * measure_quiet(dots)


def find_least_height(text: str, dots: int = DOTS) -> float:
    """Finds the least height of a code: 12 mm, or 15 % of its length where that is more."""
    return max(HIGH, 0.15 * len(encode_modules(text)) * dots * DOT)


def cut_to_dots(size: float) -> float:
    """Cuts a length to whole dots: what fits a page to a printer's dots need not stretch it.

    A hair less than whole, so that rounding does not add a dot.
    """
    return (int(size / DOT + 1e-6) - 0.02) * DOT


def list_bars(bits: str) -> list[tuple[int, int]]:
    """Lists where bars begin and how many modules wide they are."""
    found: list[tuple[int, int]] = []
    for n, bit in enumerate(bits):
        if bit == "0":
            continue
        if found and found[-1][0] + found[-1][1] == n:
            found[-1] = (found[-1][0], found[-1][1] + 1)
        else:
            found.append((n, 1))
    return found


def space_code(text: str) -> str:
    """Writes ``B00412AA`` as people read it: ``B 00412 A A``."""
    groups = [text[0]]
    for char in text[1:-1]:
        if groups[-1][-1].isdigit() and char.isdigit():
            groups[-1] += char
        else:
            groups.append(char)
    return " ".join([*groups, text[-1]])
