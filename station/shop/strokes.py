"""The strokes of a cut file's path as one short text, for a draft that is written often.

Whole numbers in tenths of a millimetre and of a second, each point told from the one before,
packed and written as letters.
"""

import sys
import zlib
from array import array
from base64 import b85decode, b85encode
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

import msgspec

RAPID = -1  # the band of moves that cut nothing
AIR = 0  # the band of fed moves that stay above the sheet; 1 to BANDS: how deep they cut
BANDS = 4  # equal depths of the sheet
HEAD = 3  # numbers before a stroke's points: bit, band, how many points
KEPT = 4  # paths that are kept unpacked

Point = tuple[float, float, float]  # x and y in mm on the sheet, seconds from the start


class Stroke(NamedTuple):
    """Moves one after the other with one bit in one band."""

    bit: int
    band: int
    points: tuple[Point, ...]


class PackedPath(msgspec.Struct, frozen=True):
    """The path of the bit, to be drawn: its strokes packed, and what is told of it."""

    strokes: str  # packed: a draft with it is written at every scan
    seconds: float  # of the whole path
    off_mm: float  # from the true path, at most
    share: float  # of its strokes that are drawn
    thickness_mm: float | None  # of the sheet


def pack(strokes: Iterable[Stroke]) -> str:
    """The strokes as a text; places and times are rounded to tenths."""
    numbers = array("i")
    for stroke in strokes:
        numbers.extend((stroke.bit, stroke.band, len(stroke.points)))
        last = (0, 0, 0)
        for x, y, at in stroke.points:
            now = (round(x * 10), round(y * 10), round(at * 10))
            numbers.extend(n - before for n, before in zip(now, last, strict=True))
            last = now
    return b85encode(zlib.compress(_little(numbers).tobytes(), 9)).decode("ascii")


@lru_cache(maxsize=KEPT)
def unpack(text: str) -> tuple[Stroke, ...]:
    """The strokes of a packed text."""
    numbers = array("i")
    numbers.frombytes(zlib.decompress(b85decode(text)))
    return tuple(_strokes(_little(numbers)))


def _little(numbers: "array[int]") -> "array[int]":
    """The low byte first, whatever the machine."""
    if sys.byteorder == "big":
        numbers.byteswap()
    return numbers


def _strokes(numbers: "array[int]") -> Iterator[Stroke]:
    at = 0
    while at < len(numbers):
        bit, band, count = numbers[at : at + HEAD]
        at += HEAD
        points, x, y, when = [], 0, 0, 0
        for n in range(at, at + 3 * count, 3):
            x, y, when = x + numbers[n], y + numbers[n + 1], when + numbers[n + 2]
            points.append((x / 10, y / 10, when / 10))
        at += 3 * count
        yield Stroke(bit, band, tuple(points))
