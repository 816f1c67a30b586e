"""A cut file's text into a program: the path, its pauses, and what is wrong with it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from station.cutting.model import (
    MOST_OF_A_KIND,
    Cancel,
    Cancelled,
    Moves,
    Problem,
    Program,
    Progress,
    Setting,
    more,
)
from station.cutting.read.controller_plain import Machine, columns
from station.cutting.read.dialects import dialect_of
from station.cutting.read.execute_plain import run_line
from station.cutting.read.expressions import clean
from station.cutting.read.text import (
    LONGEST,
    Units,
    loops_or_calls,
    no_plain_text,
    quoted,
    text_lines,
    too_long,
    units_of,
)

EVERY = 20_000  # lines between two looks at progress and cancel


def read_slowly(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """Reads every line by itself: the plain way, which the fast reader must equal."""
    units = units_of(data, setting)
    machine = Machine(dialect_of(setting.dialect), units.scale)
    lines = text_lines(data)
    refused = no_plain_text(data) or _run_lines(machine, lines, progress, cancelled)
    block = columns(machine.path)
    moves = replace(block, points=np.concatenate((np.zeros((1, 3)), block.points)))
    return finish(machine, moves, len(lines), units, refused)


def _run_lines(
    machine: Machine, lines: list[str], progress: Progress | None, cancelled: Cancelled | None
) -> str:
    taker = Taker(machine)
    for number, line in enumerate(lines, 1):
        if number % EVERY == 0:
            look_up(number / len(lines), progress, cancelled)
        if taker.take(number, line):
            break
    return taker.refused


class Taker:
    """Gives single lines to a machine; knows of marks and of why a file is refused."""

    def __init__(self, machine: Machine) -> None:
        self.machine, self.marks, self.refused = machine, 0, ""

    def take(self, number: int, line: str) -> bool:
        """Runs a line; whether the file ends with it."""
        machine = self.machine
        machine.line, machine.source = number, quoted(line)
        if len(line) > LONGEST:
            machine.problem("not-read", f"This line has more than {LONGEST} letters.")
            return False
        text = clean(line, semicolon=machine.state.dialect.semicolon)
        if not text:
            return False
        if text.startswith("%"):
            self.marks += 1
            return note_mark(machine, self.marks)
        self.refused = loops_or_calls(text, number)
        if self.refused:
            return True
        run_line(machine, text)
        self.refused = too_long(machine.count)
        return machine.state.ended or bool(self.refused)


def note_mark(machine: Machine, marks: int) -> bool:
    """Whether a ``%`` ends the file: the second does, after one at the top."""
    if marks == 1 and not machine.count:
        return False
    if marks == 1:
        machine.problem("stray-mark", "A % stands in the middle of the file; it is passed over.")
        return False
    return True


def look_up(done: float, progress: Progress | None, cancelled: Cancelled | None) -> None:
    """Shows how far reading is and stops when a person has cancelled it."""
    if cancelled and cancelled():
        raise Cancel("Reading was cancelled.")
    if progress:
        progress(done)


def finish(
    machine: Machine, moves: Moves, lines: int, units: Units, refused: str,
    mentions: Sequence[str] = (),
) -> Program:  # fmt: skip
    """The program that a machine has run, with remarks on the file as a whole."""
    problems = sorted(machine.problems, key=lambda p: (p.line, p.kind))
    assumed: list[str] = []
    if not units.said and not refused:
        text = "The file does not say inch or millimetre. Say which it is."
        problems.insert(0, Problem(0, "no-units", text))
        assumed.append(f"Units: {units.name}, for the file does not say.")
    if units.late:
        assumed.append(f"Units: {units.name} from the start; the file says so in line "
                       f"{units.late} only.")  # fmt: skip
    assumed += mentions
    problems += [
        more(kind, count) for kind, count in machine.told.items() if count > MOST_OF_A_KIND
    ]
    if refused:
        problems.append(Problem(_line_in(refused), "refused", refused))
    return Program(
        moves=moves,
        pauses=tuple(machine.path.pauses),
        problems=tuple(problems),
        assumed=tuple(assumed),
        lines=lines,
        units=units.name,
        refused=refused,
    )


def _line_in(sentence: str) -> int:
    found = re.match(r"Line (\d+)", sentence)
    return int(found[1]) if found else 0
