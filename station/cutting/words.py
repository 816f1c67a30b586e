"""Text into columns of words, a block of lines at a time, without a loop over lines.

Eight letters of a number are read as one 64-bit integer, and its digits are put together
by three multiplications. A line that holds anything but plain words is marked odd and
left to the slow reader.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from station.cutting.model import Bools, Bytes, Floats, Ints

Words64 = npt.NDArray[np.uint64]

UPPER = bytes.maketrans(bytes(range(97, 123)), bytes(range(65, 91)))
PLAIN = b"ABCDEFGHIJKLMNPQRSTUVWXYZ0123456789+-.\n"
COMMENT = re.compile(rb"\([^)\n]*\)?|;[^\n]*")
BRACKETED = re.compile(rb"\([^)\n]*\)?")
PAD = b"\n" * 16
LONGEST = 16  # digits and point of one number
NEWLINE, PLUS, MINUS, LETTER_A = 10, 43, 45, 65


def _u(value: int) -> np.uint64:
    return np.uint64(value)


ONES, TENS, DOTS = _u(0x0101010101010101), _u(0x3030303030303030), _u(0x2E2E2E2E2E2E2E2E)
HIGH, OVER_NINE = _u(0x8080808080808080), _u(0x7676767676767676)
ONE, SEVEN, EIGHT, BYTE = _u(1), _u(7), _u(8), _u(0xFF)
POWERS: Floats = np.power(10.0, np.arange(40), dtype=np.float64)  # two points in a long number: 22
WHOLE_POWERS: Ints = 10 ** np.arange(18)
KEEP: Words64 = np.array([(~0 << (8 * (8 - n))) & (2**64 - 1) for n in range(9)], dtype=np.uint64)
FILL: Words64 = TENS & ~KEEP


@dataclass(frozen=True)
class Words:
    """The words of a block of lines. `line` counts from 0 in the block, `odd` is by line."""

    count: int
    line: Ints
    letter: Bytes
    value: Floats
    odd: Bools


def tokenise(block: bytes, *, semicolon: bool = True) -> Words:
    """The words of whole lines; a newline must end the last."""
    text = block
    if b"(" in text or (semicolon and b";" in text):
        text = (COMMENT if semicolon else BRACKETED).sub(b"", text)
    text = text.translate(UPPER, b" \t\v\f")
    buffer = np.frombuffer(PAD + text + PAD, dtype=np.uint8)
    size = len(text)
    body = buffer[16 : 16 + size]
    places = np.flatnonzero((body >= LETTER_A) | (body == NEWLINE))
    signs = body[places]
    breaks = signs == NEWLINE
    line_of = np.cumsum(breaks)
    count = int(line_of[-1]) if len(line_of) else 0
    odd = np.zeros(count + 1, dtype=bool)
    _mark_odd(text, body, odd)
    _mark_beginnings(buffer, places[breaks], odd)
    is_word = ~breaks
    is_word[-1:] = False
    where = np.flatnonzero(is_word)
    value, wrong = numbers(buffer, places[where] + 17, places[where + 1] + 16)
    line = line_of[where]
    odd[line[wrong]] = True
    return Words(count, line, signs[where], value, odd[:count])


def _mark_odd(text: bytes, body: Bytes, odd: Bools) -> None:
    """Lines with a letter that stands in no plain word."""
    if not text.translate(None, PLAIN):
        return
    plain = np.zeros(256, dtype=bool)
    plain[list(PLAIN)] = True
    where = np.flatnonzero(~plain[body])
    breaks = np.flatnonzero(body == NEWLINE)
    odd[np.searchsorted(breaks, where)] = True


def _mark_beginnings(buffer: Bytes, breaks: Ints, odd: Bools) -> None:
    """Lines that do not begin with a letter."""
    first = np.concatenate((buffer[16:17], buffer[breaks + 17]))
    odd |= (first < LETTER_A) & (first != NEWLINE)
    odd[-1] = False


def numbers(buffer: Bytes, start: Ints, end: Ints) -> tuple[Floats, npt.NDArray[np.int64]]:
    """The numbers that stand from `start` to `end`, and the indexes of those that are none."""
    first = buffer[start]
    minus = first == MINUS
    size = end - start - (minus | (first == PLUS))
    eights = np.ndarray((len(buffer) - 7,), dtype="<u8", buffer=buffer, strides=(1,))
    short = np.minimum(size, 8)
    digits, after, pointed, wrong = _eight(eights[end - 8], short)
    wrong |= (size <= pointed) | (size > LONGEST)
    value = digits.astype(np.float64)
    long = np.flatnonzero(size > 8)
    if len(long):
        upper = np.minimum(size[long] - 8, 8)
        more, more_after, more_pointed, bad = _eight(eights[end[long] - 16], upper)
        here = pointed[long]
        wrong[long] |= bad | (here & more_pointed)
        whole = more.astype(np.int64) * WHOLE_POWERS[8 - here] + digits[long].astype(np.int64)
        value[long] = whole
        after[long] += np.where(more_pointed, more_after + EIGHT, _u(0))
    value /= POWERS[after]
    np.negative(value, out=value, where=minus)
    return value, np.flatnonzero(wrong)


def _eight(text: Words64, size: Ints) -> tuple[Words64, Words64, Bools, Bools]:
    """Up to eight digits with a point: their digits as one whole number, how many stand
    after the point, whether there is one, and whether it is no number at all.
    """
    kept = np.maximum(size, 0)
    text = (text & KEEP[kept]) | FILL[kept]
    zero = text ^ DOTS
    dot = (zero - ONES) & ~zero & HIGH
    pointed = dot != 0
    dot &= ~dot + ONE
    below = (dot >> SEVEN) - ONE
    above = ~((below << EIGHT) | BYTE)
    after = ((above & ONES) * ONES) >> _u(56)
    closed = ((text & below) << EIGHT) | (text & above) | _u(0x30)
    text = np.where(pointed, closed, text) ^ TENS
    wrong = (((text + OVER_NINE) | text) & HIGH) != 0
    text = (text * _u(10) + (text >> EIGHT)) & _u(0x00FF00FF00FF00FF)
    text = (text * _u(100) + (text >> _u(16))) & _u(0x0000FFFF0000FFFF)
    text = (text * _u(10000) + (text >> _u(32))) & _u(0x00000000FFFFFFFF)
    return text, after, pointed, wrong
