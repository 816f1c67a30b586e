"""What a file's remarks say of its bits: the diameter, in the habits of many who write them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from station.cutting.model import RAPID, BitSaid, Program
from station.shop.lengths import MM_PER_INCH

REMARK = re.compile(rb"\(([^)\r\n]*)\)?|;([^\r\n]*)")
NUMBER = r"(\d+(?:[.,]\d*)?|[.,]\d+)"
UNIT = r"(MM|INCH(?:ES)?|IN\b|\"|'')?"
NAMED = re.compile(
    r"(?:\bD(?:IA(?:M(?:ETER)?)?)?|DURCHMESSER|\xd8)(?P<point>\.(?=\d))?(?:\.(?!\d))?\s*[=:]?\s*"
    rf"{NUMBER}\s*{UNIT}"
)
FRACTION = re.compile(r"(?<![\d./])(\d+)\s*/\s*(\d+)(?![\d/])\s*(\"|''|IN\b|INCH)?")
PARTED_BY = (2, 4, 8, 16, 32, 64)  # what an inch is parted by: 3/5 is the third of five
SIZED = re.compile(rf"(?<![\d.,=]){NUMBER}\s*(MM\b|INCH(?:ES)?|IN\b|\"|'')")
# a whole number that is no size
WHOLE = r"(\d+)(?!\d*[.,/]\d|[\d.,]*\s*(?:MM\b|INCH|IN\b|\"|''))"
NUMBERED = re.compile(
    r"(?:\bT|\b(?:TOOL|BIT|CUTTER|WERKZEUG|FR(?:\xc4|AE?)SER)\s*(?:NO\.?|NR\.?|NUMBER|#)?)"
    rf"\s*[=:]?\s*{WHOLE}"
)
FLUTES = r"(?!\d*[\s-]*(?:FLUTE|TOOTH|TEETH|EDGE|SCHNEID))"  # how many, and no number of a bit
# a size that stands first, or after the bit's number, and only begins with its point
POINTED = re.compile(
    r"^\W*(?:(?:T|TOOL|BIT|CUTTER|NO\.?)?\W*\d*\W*\s)?(?<![\d.,])0?([.,]\d+)(?![\d.,/])"
    r"(?!\s*(?:R\b|C?RAD|CR\b|DEG|\xb0|LONG))"
)
NAMED_AFTER = re.compile(r"(?<![\d.,/])(\d*[.,]\d+)\s*DIA")
# a line of a list of bits, whatever its word
LISTED = re.compile(rf"^\W*(?:[A-Z]+\W*)?{WHOLE}{FLUTES}")
BIT_WORDS = re.compile(
    r"\bBIT\b|CUTTER|MILL|STRAIGHT|COMPRESSION|UP-?\s?CUT|DOWN-?\s?CUT|BALL|FLUTE|DRILL|SPIRAL|TOOL"
    r"|ENGRAV|TAPER|FR(?:\xc4|AE?)SER|BOHRER|\bT\s*\d"
)
OTHER_WORDS = re.compile(
    r"DEEP|DEPTH|LEAD|STEP|\bTABS?\b|PLY|MDF|SHEET|BOARD|THICK|STOCK|PASS|SAFE|CLEAR|FEED|OFFSET"
    r"|CONTOUR|\bPART|\d\s*X\s*\d|ALLOW|HEIGHT|KEEP|POCKET|\bSLOT|SKIN|MATERIAL|DICKE|ST\xc4RKE"
    r"|\bT\s*="
)
T_WORD = re.compile(r"T\s*0*(\d+)")
SKIPPED = re.compile(r"\([^)]*\)?|;.*")
LEAST_LISTED = 2  # remarks that are a list of bits
AHEAD, BESIDE = 8, 4  # lines between a remark and the call of its bit; and a stop to change it
# what rounding may have taken from sizes that are sold: whole twentieths of a mm, 1/64 inch
SNAPS = ((0.05, 0.003), (MM_PER_INCH / 64, 0.0051))
HEAD_BYTES = 4000  # of a file, in which it says where its zero is
LEAST_MM, MOST_MM = 0.05, 130.0


def find_bits_said(data: bytes, *, inches: bool) -> tuple[BitSaid, ...]:
    """Finds what remarks say of bits; number None: of the bit that is in by then.

    `inches`: the file's unit, where a remark names none. A remark that only stands before a call
    says nothing of a bit that another names by its number.
    """
    said: list[BitSaid] = []
    named_bits: set[int] = set()
    lines: list[str] | None = None
    ends = 0
    line = 1
    for found in list_remarks(data):
        text = decode_remark(found[1] if found[1] is not None else found[2]).upper()
        if not any(c.isdigit() for c in text):
            continue
        size = read_size(text, inches=inches)
        if size is None:
            continue
        line += data.count(b"\n", ends, found.start()) or (
            data.count(b"\r", ends, found.start()) if b"\n" not in data[:1000] else 0
        )
        ends = found.start()
        lines = data.decode("latin-1").upper().splitlines() if lines is None else lines
        named = NUMBERED.search(text)
        number = int(named[1]) if named else _find_call(lines, line)
        if named:
            named_bits.add(int(named[1]))
        if named or number is not None or BIT_WORDS.search(text) or NAMED.search(text):
            said.append(BitSaid(number, size, line, text.strip()[:80], named=bool(named)))
    said = _number_list(said, lines or [])
    named_bits |= {s.number for s in said if s.named and s.number is not None}
    return tuple(s for s in said if s.named or s.number not in named_bits)


def _number_list(said: list[BitSaid], lines: Sequence[str]) -> list[BitSaid]:
    """Takes remarks before the first bit is called for a list, where each begins with a number of
    its own and every bit that is called is among them.
    """
    listed = {s.line: int(found[1]) for s in said if (found := LISTED.search(s.text))}
    if len(set(listed.values())) < LEAST_LISTED or all(s.named for s in said):
        return said
    calls = [
        (n, int(call[1]))
        for n, line in enumerate(lines, 1)
        if "T" in line and (call := T_WORD.search(SKIPPED.sub("", line)))
    ]
    head = [s for s in said if calls and s.line <= calls[0][0]]
    numbers = {listed[s.line] for s in head if s.line in listed}
    if len(numbers) < max(LEAST_LISTED, len(head)) or not {n for _, n in calls} <= numbers:
        return said
    return [replace(s, number=listed[s.line], named=True) if s in head else s for s in said]


def list_remarks(data: bytes) -> Iterator[re.Match[bytes]]:
    """Gives the remarks one after another; a long file has few or none, so its marks are sought
    rather than all its letters matched.
    """
    begins = {mark: data.find(mark) for mark in (b"(", b";")}
    while there := [at for at in begins.values() if at >= 0]:
        found = REMARK.match(data, min(there))
        if found is None:
            return
        yield found
        for mark, at in begins.items():
            if 0 <= at < found.end():
                begins[mark] = data.find(mark, found.end())


def decode_remark(remark: bytes) -> str:
    """Reads the characters of a remark, as it was written on one system or another."""
    try:
        return remark.decode("utf-8")
    except UnicodeDecodeError:
        return remark.decode("latin-1")


def read_size(text: str, *, inches: bool) -> float | None:
    """Reads a bit's diameter from a remark, mm; None where it names none. Where no unit stands,
    fractions and what begins with its point are in the file's own.
    """
    bit = BIT_WORDS.search(text) or NAMED.search(text) or re.search(r"\bDIA", text)
    for found in FRACTION.finditer(text):
        over, under = int(found[1]), int(found[2])
        if found[3] or (inches and bit and over % 2 and under in PARTED_BY):
            own = BIT_WORDS.search(text) or not OTHER_WORDS.search(text)
            return _keep_size(over / max(under, 1) * MM_PER_INCH) if own else None
    if named := NAMED.search(text):
        return _read_named(named[2], named[3], inches=inches, joined=bool(named["point"]))
    if after := NAMED_AFTER.search(text):
        return _read_named(after[1], None, inches=inches)
    if BIT_WORDS.search(text) or not OTHER_WORDS.search(text):
        if sized := SIZED.search(text):
            return _keep_size(read_value(sized[1]) * (1.0 if sized[2] == "MM" else MM_PER_INCH))
        if BIT_WORDS.search(text) and (pointed := POINTED.search(text)):
            return _keep_size(read_value(pointed[1]) * (MM_PER_INCH if inches else 1.0))
    return None


def _read_named(
    number: str, unit: str | None, *, inches: bool, joined: bool = False
) -> float | None:
    """Reads a diameter beside its word. A point `joined` to both is the number's where that is in
    inches: DIA.25; else it ends the word: DIA.6 MM.
    """
    if joined and unit != "MM" and (unit or inches):
        number = f".{number}"
    value = read_value(number)
    if unit is None:
        unit = "IN" if inches and value < 1 else "MM"
    return _keep_size(value * (1.0 if unit == "MM" else MM_PER_INCH))


def read_value(number: str) -> float:
    """Reads a number of a remark; its point may be a comma."""
    return float(number.replace(",", "."))


def _keep_size(size: float) -> float | None:
    """Gives a size without the rounding of inches; None where no bit is that size."""
    if not LEAST_MM <= size <= MOST_MM:
        return None
    for step, off in SNAPS:
        near = round(size / step) * step
        if abs(near - size) < off:
            return round(near, 4)
    return round(size, 4)


def _find_call(lines: Sequence[str], line: int) -> int | None:
    """Finds the number of the bit that is called on the remark's line, or soon after it."""
    for n in range(line - 1, min(line - 1 + AHEAD, len(lines))):
        code = SKIPPED.sub("", lines[n])
        if called := T_WORD.search(code):
            return int(called[1])
        if n > line - 1 and re.search(r"[XYZ]\s*[-+.\d]", code) and "G53" not in code:
            return None
    return None


def number_bits(program: Program) -> Program:
    """Gives a number to each bit that is put in by hand at a stop and has none of its own."""
    moves = program.moves
    changes = np.flatnonzero(moves.tool[1:] != moves.tool[:-1])  # few, of millions of moves
    called = {*moves.tool[:1].tolist(), *moves.tool[changes + 1].tolist()}
    by_hand = not any(called)
    loose = [
        said
        for said in program.bits_said
        if said.number not in called and (said.number is None or by_hand)
    ]
    if not loose or not len(moves):
        return program
    feed = np.flatnonzero(moves.kind != RAPID)
    first_line = int(moves.line[feed[0]]) if len(feed) else 0
    tool = moves.tool.copy()
    kept = [said for said in program.bits_said if said.number in called]
    free = int(tool.max()) + 1
    for said in loose:
        stop = min(
            (p for p in program.pauses if p.kind == "stop"),
            key=lambda p: abs(p.line - said.line),
            default=None,
        )
        beside = stop is not None and abs(stop.line - said.line) <= BESIDE
        if stop is not None and beside and said.line > first_line:
            start = min(stop.move, len(tool) - 1)
            same = int(tool[start])
            rest = start + np.flatnonzero(tool[start:] == same)
            tool[rest], number = free, free
            free += 1
        elif said.line <= first_line or len(np.unique(tool)) == 1:
            number = int(tool[feed[0]]) if len(feed) else 0
        else:
            continue
        if said.named or not any(k.named and k.number == number for k in kept):
            kept.append(replace(said, number=number))
    kept.sort(key=lambda said: said.line)
    return replace(program, moves=replace(moves, tool=tool), bits_said=tuple(kept))


LEFT_HAND = re.compile(rb"LEFT[ -]?HAND|\bLH\b|\bLINKS", re.IGNORECASE)


def says_left_hand(data: bytes) -> bool:
    """Tells whether a remark says of a bit that it cuts turning the other way round."""
    return any(LEFT_HAND.search(found[0]) for found in REMARK.finditer(data[:HEAD_BYTES]))


ZERO = re.compile(
    rb"[(;][^)\r\n]*(?:\bZ\s*-?\s*(?:0|ZERO|ORIGIN|NULL)\b|\bZERO\b)([^)\r\n]*)", re.IGNORECASE
)
BELOW = re.compile(rb"SPOIL|WASTE|\bBED\b|TABLE|BOTTOM|UNDERSIDE|OPFER|TISCH", re.IGNORECASE)
ABOVE = re.compile(rb"\bTOP\b|\bFACE\b|SURFACE|MATERIAL|STOCK|OBEN|OBERFL", re.IGNORECASE)


def find_zero_said(data: bytes) -> str:
    """Finds where a remark says that Z is zero: face, spoilboard, or nothing."""
    for found in ZERO.finditer(data[:HEAD_BYTES]):
        if BELOW.search(found[0]):
            return "spoilboard"
        if ABOVE.search(found[0]):
            return "face"
    return ""
