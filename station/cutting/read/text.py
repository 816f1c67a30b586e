"""What is known of a whole text: its lines, units and messages, and why it is refused."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from station.cutting.model import Setting
from station.cutting.read.dialects import find_dialect
from station.cutting.read.expressions import clean_line
from station.shop.lengths import MM_PER_INCH
from station.shop.words import Say, say

UNITS = re.compile(rb"G\s*0*\s*2\s*([01])(?!\s*\d)", re.IGNORECASE)
UNIT_WORD = re.compile(r"G0*2([01])(?:\.0*)?(?![\d.])")
REMARKS = re.compile(rb"\([^)\r\n]*\)?|;[^\r\n]*")
SCALED = re.compile(rb"[XYZIJKRQF]\s*[-+.\d\[#]", re.IGNORECASE)  # words that units scale
ENDS = re.compile(rb"\r\n|\r|\n")
MESSAGE = re.compile(rb"\(\s*MSG\s*,([^)\r\n]*)\)?([^\r\n]*)", re.IGNORECASE)
MOST_LETTERS, MOST_MESSAGES = 1000, 5
DELETED = re.compile(rb"(?m)^[ \t]*(?:[Nn]\d+[ \t]*)?/")
ZERO_CALLED = re.compile(rb"[Gg]5[4-9](?![\d.])")
ZERO_SET = re.compile(rb"^[^\r\n(;]*G\s*0*10(?!\d)[^\r\n]*", re.IGNORECASE | re.MULTILINE)
BACKWARD = re.compile(rb"[Mm]0*4(?![\d.])")
ZERO_NUMBER = re.compile(r"P([1-6])(?![\d.])")
MARK = b"\xef\xbb\xbf"  # byte-order mark
LONGEST = 1 << 16  # letters of a line; the report allows 256
MOST_MOVES = 20_000_000  # 1.7 GB of columns
NUMBER_ONLY = re.compile(r"(N\d+)?O\d+")
CALLS = re.compile(r"M9[789](?!\d)|G6[567](?!\d)")
NUMBERED = re.compile(rb"(?:\xef\xbb\xbf)?[%\s]*[Oo]\s*\d")
WIDE = (b"\xff\xfe", b"\xfe\xff")  # how a text in UTF-16 begins
CONTROLS = bytes({*range(32)} - set(b"\t\n\v\f\r\x1a"))  # a text has hardly any
ENOUGH, LOOKED_AT = 64, 4096  # bytes from the start that tell it
MOST_CONTROLS = 0.05  # their share
BLOCK = 1 << 18  # bytes that are compared at once
LINE_LETTERS = 256  # of a line, as the report allows


class Units(NamedTuple):
    """Tells whether the file names its units, mm per unit at its start, and the line if it is
    late.

    `late` is the line that names them after words that they scale; 0: none stands before.
    """

    said: bool
    scale: float
    late: int = 0

    @property
    def name(self) -> str:
        """Gives inch or mm."""
        return "inch" if self.scale == MM_PER_INCH else "mm"


def find_units(data: bytes, setting: Setting) -> Units:
    """Finds the units that the first G20 or G21 names; remarks and deleted blocks name none."""
    dialect = find_dialect(setting.dialect)
    for found in UNITS.finditer(data):
        before = max(data.rfind(b"\n", 0, found.start()), data.rfind(b"\r", 0, found.start())) + 1
        after = ENDS.search(data, found.end())
        line = data[before : after.start() if after else len(data)][:MOST_LETTERS]
        text = clean_line(line.decode("latin-1"), semicolon=dialect.semicolon)
        word = UNIT_WORD.search(text)
        if word is None or (text.startswith("/") and dialect.skip_deleted):
            continue
        head = data[:before]
        late = SCALED.search(REMARKS.sub(b"", head)) is not None
        line_number = len(ENDS.findall(head)) + 1 if late else 0
        return Units(True, MM_PER_INCH if word[1] == "0" else 1.0, line_number)
    return Units(False, MM_PER_INCH if setting.units == "inch" else 1.0)


def find_messages(data: bytes) -> list[str]:
    """Finds what the file tells at the router; of several remarks in a line the last."""
    told = [m[1].decode("latin-1").strip() for m in MESSAGE.finditer(data) if b"(" not in m[2]]
    return [f"The file tells at the router: {text[:120]}" for text in told[:MOST_MESSAGES]]


def find_skipped(data: bytes) -> tuple[tuple[int, int], ...]:
    """Finds the first and last line of each block of lines that begin with a slash."""
    blocks: list[tuple[int, int]] = []
    line, before = 1, 0
    if b"/" not in data:
        return ()
    data = data.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    for found in DELETED.finditer(data):
        line += data.count(b"\n", before, found.start())
        before = found.start()
        if blocks and blocks[-1][1] == line - 1:
            blocks[-1] = blocks[-1][0], line
        else:
            blocks.append((line, line))
    return tuple(blocks)


def split_lines(data: bytes) -> list[str]:
    """Splits the text in lines, whatever ends them; bytes that are no text become odd letters."""
    text = data.removeprefix(MARK).decode("latin-1")
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


def refuse_no_text(data: bytes) -> Say:
    """Says why a file is no text that can be read; empty: it can."""
    if not data or data.isspace():
        return say("The file is empty. Choose another.")
    if data[:2] in WIDE:
        return say("The file is written in UTF-16. Save it as plain text.")
    head = data[:LOOKED_AT]
    controls = len(head) - len(head.translate(None, CONTROLS))
    if len(head) >= ENOUGH and controls > MOST_CONTROLS * len(head):
        return say("It is no text but something else, as an archive or a picture. Choose another.")
    return Say()


def quote_line(line: str) -> str:
    """Quotes a line of the file as problems do."""
    return line[:300].strip()[:120]


def refuse_loops(text: str, number: int) -> Say:
    """Says why a line of a loop or a subprogram refuses the file; empty: it does not."""
    bare = text.removeprefix("/")
    head = re.sub(r"^N\d+", "", bare)
    if head.startswith("O") and not NUMBER_ONLY.fullmatch(bare):
        return say(
            "Line {line} is part of a loop or subprogram. Save the file without them.", line=number
        )
    if ("M9" in bare or "G6" in bare) and CALLS.search(bare):
        return say("Line {line} calls a subprogram. Save the file without them.", line=number)
    return Say()


def refuse_length(moves: int) -> Say:
    """Says why a file of so many moves is refused; empty: it is not."""
    if moves <= MOST_MOVES:
        return Say()
    most = MOST_MOVES // 1_000_000
    return say("The file has more than {most} million moves. Split it.", most=most)


def find_other_zero(data: bytes) -> tuple[int, str] | None:
    """Finds the line where a file goes on from another zero than it began with, and which."""
    first, known = b"", set[bytes]()
    for found in _list_zeroes(data):
        line = data[data.rfind(b"\n", 0, found.start()) + 1 : found.start()]
        if b";" in line or line.count(b"(") != line.count(b")"):
            continue
        zero = found[0][1:]
        first = first or zero
        if zero in {first, *known}:
            continue
        known = _find_zeroes_set(data[: found.start()])
        if not {first, zero} <= known:
            return data.count(b"\n", 0, found.start()) + 1, f"G{zero.decode()}"
    return None


def _find_zeroes_set(data: bytes) -> set[bytes]:
    """Finds the zeroes whose place the file itself has set in X and Y by then, G10 L2: between
    two of these the way is known.
    """
    found = set()
    for setting in ZERO_SET.finditer(data):
        text = clean_line(setting[0].decode("latin-1"))
        number = ZERO_NUMBER.search(text)
        if "G10" in text and "L2" in text and number and {"X", "Y"} <= set(text):
            found.add(str(53 + int(number[1])).encode())
    return found


def find_backward(data: bytes) -> int:
    """Finds the line where the spindle is first to turn backwards; 0: nowhere."""
    for found in list_m_codes(data, BACKWARD):
        line = data[data.rfind(b"\n", 0, found.start()) + 1 : found.start()]
        if line[-1:].isalpha():
            continue
        if b";" not in line and line.count(b"(") == line.count(b")"):
            return data.count(b"\n", 0, found.start()) + 1
    return 0


def _list_zeroes(data: bytes) -> Iterator[re.Match[bytes]]:
    """Lists where zeroes are called. Comparing all letters at once is quickest: many lines have a
    G, and hardly any a G5.
    """
    letters = np.frombuffer(data, np.uint8)
    for start in range(0, len(letters), BLOCK):
        some = letters[start : start + BLOCK + 1]
        begins = some[1:] == ord("5")
        begins &= (some[:-1] == ord("G")) | (some[:-1] == ord("g"))
        for at in np.flatnonzero(begins).tolist():
            if called := ZERO_CALLED.match(data, start + at):
                yield called


def list_m_codes(data: bytes, pattern: re.Pattern[bytes]) -> Iterator[re.Match[bytes]]:
    """Lists where an M code may stand: few lines have an M, so looking for that is quickest."""
    for letter in (b"M", b"m"):
        at = data.find(letter)
        while at >= 0:
            if called := pattern.match(data, at):
                yield called
            at = data.find(letter, at + 1)


def list_deviations(data: bytes, *, ended: bool, gaps: bool, long: int, high: bool) -> list[str]:
    """Lists in what a file goes beyond the report, without harm; the reader takes it as it is.

    `long` is the first line with more letters than the report allows, or 0.
    """
    found = {
        "The file begins with a byte-order mark; it is passed over.": data.startswith(MARK),
        "Lines end with a carriage return.": b"\r" in data,
        "A program number stands at the top; it is passed over.": bool(NUMBERED.match(data)),
        "Blanks stand inside numbers; they are passed over.": gaps,
        f"Line {long} has more than {LINE_LETTERS} letters; it is read whole.": bool(long),
        "Line numbers go beyond 99999; they are passed over.": high,
        "The file has no M2, M30 or % at its end.": not ended,
    }
    return [text for text, so in found.items() if so]
