"""One line's bytes into words, compiled.

What is not plain words is odd: for the twin, `line_plain.py`, with `expressions.py`.
"""

from __future__ import annotations

import numpy as np

from station.cutting.compiled import compile_inner
from station.cutting.model import Bools, Bytes, Floats
from station.cutting.read.controller_compiled import RecordRow

NEWLINE, RETURN, TAB, SPACE, PLUS, MINUS, POINT, ZERO = 10, 13, 9, 32, 43, 45, 46, 48
MOST_DIGITS = 17
POWERS: Floats = np.power(10.0, np.arange(MOST_DIGITS + 2))

# what a byte is, outside a number
BLANK, LETTER, END, OPENS, REMARK, SLASH, ODD = range(7)
MEANING: Bytes = np.full(256, ODD, dtype=np.uint8)
MEANING[[9, 11, 12, 28, 29, 30, 31, 32, 133, 160]] = BLANK
MEANING[65:91] = MEANING[97:123] = LETTER
MEANING[[NEWLINE, RETURN]] = END
MEANING[[40, 59, 47]] = OPENS, REMARK, SLASH

# letters with a part of their own
F, G, M, N = 6, 7, 13, 14
# by letter: words that turn an axis (A to C), program numbers (O), and what is no word
NO_WORD: Bools = np.zeros(32, dtype=np.bool_)
NO_WORD[[1, 2, 3, 5, 15, 21, 22, 23]] = True
HIGHEST_LINE = 99_999

# groups of G codes, and which codes a line may hold without being odd
(MOTION, PLANE, DISTANCE, FEED_MODE, UNITS, LENGTH, RETURN_TO, SYSTEM, PATH, ONCE,
 CENTRES) = range(11)  # fmt: skip
NONE = -1
GROUP = np.full(1000, NONE, dtype=np.int64)
for _group, _codes in (
    (MOTION, (0, 1, 2, 3, 73, *range(80, 87), 88, 89)), (PLANE, (17, 18, 19)),
    (DISTANCE, (90, 91)), (FEED_MODE, (93, 94)), (UNITS, (20, 21)),
    (LENGTH, (43, 49)),
    (RETURN_TO, (98, 99)), (PATH, (61, 64)), (ONCE, (4,)), (CENTRES, (90.1, 91.1)),
    (SYSTEM, (54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3)),
):  # fmt: skip
    GROUP[[round(code * 10) for code in _codes]] = _group
SPINDLE, QUIET = 0, 1
M_GROUP = np.full(100, NONE, dtype=np.int64)
M_GROUP[[3, 4, 5]] = SPINDLE
M_GROUP[[7, 8, 9, 48, 49]] = QUIET


@compile_inner
def read_number(at: int, s: RecordRow) -> tuple[int, float, int]:
    """Reads the number that begins here: where it ends, its value, and whether it is one."""
    c = s.text[at]
    while c in (SPACE, TAB):
        at += 1
        c = s.text[at]
    minus = c == MINUS
    if minus or c == PLUS:
        at += 1
        c = s.text[at]
    whole, digits, places, pointed, gap = 0, 0, 0, 0, 0
    while True:
        digit = int(np.int64(c)) - ZERO
        if 0 <= digit <= 9:
            whole = whole * 10 + digit
            digits += 1
            places += pointed
        elif c == POINT and pointed == 0:
            pointed = 1
        elif c in (SPACE, TAB):
            gap = digits
        else:
            break
        at += 1
        c = s.text[at]
    if 0 < gap < digits:
        s.gaps = 1
    if digits == 0 or digits > MOST_DIGITS:
        return at, 0.0, 0
    value = whole / POWERS[places] if places else float(whole)
    return at, -value if minus else value, 1


@compile_inner
def scan_line(at: int, s: RecordRow) -> int:
    """Puts the words of the line at `at` into the record; gives where the next line begins."""
    s.said = s.begun = s.worded = s.deleted = s.odd = 0
    s.turn = NONE
    while True:
        c = s.text[at]
        meaning = MEANING[c]
        at += 1
        if meaning == LETTER:
            at = _read_word(at, int(np.int64(c)) & 31, s)
        elif meaning == END:
            return at + 1 if c == RETURN and s.text[at] == NEWLINE else at
        elif meaning == OPENS:
            at = _skip_comment(at, s)
        elif meaning == REMARK and s.semicolon:
            while s.text[at] not in (NEWLINE, RETURN):
                at += 1
        elif meaning == SLASH and not s.begun:
            s.deleted = 1
        elif meaning != BLANK:
            s.odd = 1
        if s.odd:
            return at


@compile_inner
def _skip_comment(at: int, s: RecordRow) -> int:
    """Gives what comes after the bracket that closes a comment, or the line's end."""
    begins = at
    while s.text[begins] in (SPACE, TAB):
        begins += 1
    s.says |= int(s.text[begins] & 31 == M)
    while s.text[at] not in (NEWLINE, RETURN):
        at += 1
        if s.text[at - 1] == 41:
            break
    return at


@compile_inner
def _read_word(at: int, letter: int, s: RecordRow) -> int:
    """Keeps one word; a letter said twice, or with no number, makes the line odd."""
    at, value, fine = read_number(at, s)
    s.begun = 1
    if not fine or NO_WORD[letter]:
        s.odd = 1
    elif letter == G:
        _keep_g_code(value, s)
    elif letter == M:
        _keep_m_code(value, s)
    elif letter == N and not s.worded:
        s.high |= int(value > HIGHEST_LINE)
    else:
        bit = 1 << letter
        s.odd = int((s.said & bit) != 0 or (letter == F and value < 0))
        s.said |= bit
        s.value[letter] = value
        s.worded = 1
    return at


@compile_inner
def _keep_g_code(value: float, s: RecordRow) -> None:
    """Keeps a G code in its group; one not known, or a second of its group, makes the line odd."""
    if not s.said & 1:  # bit 0: a G code is on the line
        s.said |= 1
        s.codes[:] = NONE
    tenths = np.rint(value * 10)
    s.worded = 1
    if not 0 <= tenths < 1000 or abs(value * 10 - tenths) > 1e-9:
        s.odd = 1
        return
    code = int(tenths)
    group = GROUP[code]
    if group == NONE or s.codes[group] != NONE:
        s.odd = 1
        return
    s.codes[group] = code


@compile_inner
def _keep_m_code(value: float, s: RecordRow) -> None:
    """Keeps an M code; one not known, or a second of its group, makes the line odd."""
    s.worded = 1
    if not 0 <= value < 100 or value != np.rint(value):
        s.odd = 1
        return
    group = M_GROUP[int(value)]
    if group == NONE or (group == SPINDLE and s.turn != NONE):
        s.odd = 1
    elif group == SPINDLE:
        s.turn = int(value)
    elif s.said >> 30 & 1:
        s.odd = 1
    else:
        s.said |= 1 << 30
