"""Subprograms in the file's own text: M98 calls what begins with an O-number and ends with M99.

Before it is read, a text is written out as a controller runs it: each call becomes the lines that
it calls. P is the subprogram's number and L how often it is run; without L, the digits of P before
its last four say how often. M99 of the main program begins it anew (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from station.cutting.model import Ints, Problem, Program
from station.cutting.read.dialects import Dialect
from station.cutting.read.expressions import clean_line
from station.cutting.read.text import list_m_codes
from station.shop.words import Say, say

CODE = re.compile(rb"[Mm][ \t]*0*9[ \t]*[89](?!\d)")
MARKED = re.compile(rb"[OoMm]")  # what a line has that begins, calls or ends a subprogram
BEGINS = re.compile(r"(?:N\d+)?O(\d+)")
CALLS, RETURNS = re.compile(r"M0*98(?!\d)"), re.compile(r"M0*99(?!\d)")
NUMBER = re.compile(r"P(\d+)\.?0*(?![\d#\[])")
REPEATS = re.compile(r"[LK](\d+)\.?0*(?![\d#\[])")
# a remark, or a word of the call itself: the rest of its line is run before it
WORDS = re.compile(
    rb"(\([^)\r\n]*\)?|;[^\r\n]*)|[Mm][ \t]*0*9[ \t]*[89](?!\d)\.?0*|[PLKplk][ \t]*[\d.][\d. \t]*"
)
LEAST_JOINED = 10_000  # a P as large says how often too, before its last four digits
MOST_DEEP = 20
MOST_LINES = 5_000_000


class Call(NamedTuple):
    """Tells which subprogram a line calls, and how often it is run."""

    number: int
    repeats: int


class BadCall(Exception):  # noqa: N818 - it is named for what it tells
    """Tells why a call cannot be written out."""

    def __init__(self, why: Say) -> None:
        super().__init__(str(why))
        self.why = why


@dataclass(frozen=True)
class WrittenOut:
    """Holds a text as a controller runs it.

    `lines`: the line of the file that each line is from, from 1; None: nothing is called.
    `count`: of the file's lines. `anew`: the one where the main program begins anew, or 0.
    """

    data: bytes
    lines: Ints | None = None
    count: int = 0
    anew: int = 0
    refused: Say = Say()

    def find_lines(self, program: Program) -> Program:
        """Gives what was read of it with the lines of the file."""
        if self.refused:
            told = [p for p in program.problems if p.kind != "refused"]
            told.append(Problem(int(str(self.refused.values["line"])), "refused", self.refused))
            return replace(program, refused=self.refused, problems=tuple(told))
        return program if self.lines is None else _find_lines(program, self, self.lines)


def write_out(data: bytes, dialect: Dialect) -> WrittenOut:
    """Writes a text out as a controller of that dialect runs it."""
    if next(list_m_codes(data, CODE), None) is None:
        return WrittenOut(data)
    lines = data.splitlines(keepends=True)
    count = len(lines) + lines[-1].endswith((b"\n", b"\r"))
    try:
        text = CalledText(lines, dialect)
        order = text.write_main()
    except BadCall as bad:
        return WrittenOut(data, refused=bad.why)
    if not text.calls and not text.anew:  # only remarks tell of one
        return WrittenOut(data)
    written = b"".join(text.lines[n] for n in order)
    return WrittenOut(written, np.array([*order, count - 1]) + 1, count, text.anew)


class CalledText:
    """Parts a text into its main program and its subprograms; lines count from 0."""

    def __init__(self, lines: list[bytes], dialect: Dialect) -> None:
        self.lines, self.dialect = lines, dialect
        lines[-1] += b"" if lines[-1].endswith((b"\n", b"\r")) else b"\n"
        marked = {
            n: clean_line(line.decode("latin-1"), semicolon=dialect.semicolon)
            for n, line in enumerate(lines)
            if MARKED.search(line)
        }
        # by line: the number of what begins there, and what is called
        self.begins = {n: int(m[1]) for n, t in marked.items() if (m := BEGINS.fullmatch(t))}
        self.calls = {n: self._read_call(n, t) for n, t in marked.items() if CALLS.search(t)}
        self.returns = {n for n, t in marked.items() if RETURNS.search(t) and self._returns(n, t)}
        self.main: list[int] = []
        self.bodies: dict[int, list[int]] = {}  # by number
        self.written: dict[int, list[int]] = {}  # the same with all that they call
        self._part_lines()
        self.anew = next((n + 1 for n in self.main if n in self.returns), 0)

    def _is_run(self, text: str) -> bool:
        """Tells whether the router runs a line: one with a slash only where it is to."""
        return not (text.startswith("/") and self.dialect.skip_deleted)

    def _read_call(self, n: int, text: str) -> Call:
        """Reads what a line calls, and leaves of it only what else stands there."""
        number, repeats = NUMBER.search(text), REPEATS.search(text)
        if number is None or (repeats is None and ("L" in text or "K" in text)):
            raise BadCall(say("Line {line} does not say by number what it calls. Save the file "
                              "without it.", line=n + 1))  # fmt: skip
        called, often = int(number[1]), int(repeats[1]) if repeats else 1
        there = set(self.begins.values())
        if called not in there and called >= LEAST_JOINED and repeats is None:
            often, called = divmod(called, LEAST_JOINED)
        if called not in there:
            raise BadCall(say("Line {line} calls subprogram {number}, which is not in the file. "
                              "Put it in.", line=n + 1, number=str(called)))  # fmt: skip
        self._clear_words(n)
        return Call(called, often if self._is_run(text) else 0)

    def _returns(self, n: int, text: str) -> bool:
        """Tells whether the router goes back at a line, of which only what else stands is left."""
        if "P" in text:
            raise BadCall(say("Line {line} goes back to another line than it came from. Save the "
                              "file without it.", line=n + 1))  # fmt: skip
        self._clear_words(n)
        return self._is_run(text)

    def _clear_words(self, n: int) -> None:
        """Takes the words of a call out of its line."""
        self.lines[n] = WORDS.sub(lambda word: word[1] or b"", self.lines[n])

    def _part_lines(self) -> None:
        """Gives each line to the subprogram that it stands in, or to the main program."""
        called, into = {call.number for call in self.calls.values()}, self.main
        for n, line in enumerate(self.lines):
            number = self.begins.get(n)
            if number in called and number in self.bodies:
                raise BadCall(say("Line {line} begins subprogram {number} a second time. Take one "
                                  "of them out.", line=n + 1, number=str(number)))  # fmt: skip
            if number is not None:
                into = self.bodies.setdefault(number, []) if number in called else self.main
            (self.main if line.lstrip()[:1] == b"%" else into).append(n)
            if n in self.returns:
                into = self.main

    def write_main(self) -> list[int]:
        """Lists the lines of the main program in the order in which they are run."""
        stop = self.main.index(self.anew - 1) + 1 if self.anew else len(self.main)
        return self._write(self.main[:stop], ())

    def _write(self, lines: Sequence[int], within: tuple[int, ...]) -> list[int]:
        """Lists lines with all that they call, in the order in which they are run."""
        order: list[int] = []
        for n in lines:
            order.append(n)
            if n not in self.calls:
                continue
            number, repeats = self.calls[n]
            if repeats and number not in self.written:
                self._look_for_circles(n, (*within, number))
                self.written[number] = self._write(self.bodies[number], (*within, number))
            more = self.written[number] if repeats else []
            if len(order) + len(more) * repeats > MOST_LINES:
                raise BadCall(say("With what line {line} calls, the file has more than {most} "
                                  "million lines. Split it.", line=n + 1,
                                  most=MOST_LINES // 1_000_000))  # fmt: skip
            order += more * repeats
        return order

    def _look_for_circles(self, n: int, within: tuple[int, ...]) -> None:
        """Refuses what calls itself, or is called too deep."""
        number = str(within[-1])
        if within[-1] in within[:-1]:
            raise BadCall(say("Line {line} calls subprogram {number}, which it stands in: that "
                              "would never end.", line=n + 1, number=number))  # fmt: skip
        if len(within) > MOST_DEEP:
            raise BadCall(say("Line {line} calls subprogram {number} from within more than {most} "
                              "others.", line=n + 1, number=number, most=MOST_DEEP))  # fmt: skip


def _find_lines(program: Program, text: WrittenOut, lines: Ints) -> Program:
    """Gives a program with the file's lines; what is told of a line is told once."""

    def find(line: int) -> int:
        return int(lines[line - 1]) if line else 0

    problems = {(find(p.line), p.kind, str(p.text)): p for p in reversed(program.problems)}
    told = (replace(p, line=line) for (line, _, _), p in reversed(problems.items()))
    moves, refused, zero = program.moves, program.refused, program.other_zero
    if "line" in refused.values:
        line = find(int(str(refused.values["line"])))
        refused = Say(refused.template, {**refused.values, "line": line})
    anew = f"Line {text.anew} begins the program anew; it is read once."
    return replace(
        program,
        moves=replace(moves, line=lines.astype(moves.line.dtype)[moves.line - 1]),
        pauses=tuple(replace(p, line=find(p.line)) for p in program.pauses),
        problems=tuple(sorted(told, key=lambda p: (p.line, p.kind))),
        assumed=(*program.assumed, *([anew] if text.anew else ())),
        lines=text.count,
        bits_said=tuple(replace(s, line=find(s.line)) for s in program.bits_said),
        other_zero=zero and (find(zero[0]), zero[1]),
        backward=find(program.backward),
        refused=refused,
    )
