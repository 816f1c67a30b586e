"""Reads a whole cut file in plain Python, line by line; `reader_compiled.py` reads it quickly."""

from __future__ import annotations

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
    count_unlisted,
)
from station.cutting.read.controller_plain import Controller, make_columns
from station.cutting.read.dialects import find_dialect
from station.cutting.read.execute_plain import execute_line
from station.cutting.read.expressions import clean_line
from station.cutting.read.text import (
    LONGEST,
    Units,
    find_units,
    quote_line,
    refuse_length,
    refuse_loops,
    refuse_no_text,
    split_lines,
)
from station.shop.words import Say, say

EVERY = 20_000  # lines between two looks at progress and cancel


def read_plain(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """Reads every line by itself: the plain way, which the compiled reader must equal."""
    units = find_units(data, setting)
    controller = Controller(find_dialect(setting.dialect), units.scale)
    lines = split_lines(data)
    taker = LineTaker(controller)
    taker.refused = refuse_no_text(data)
    for number, line in enumerate([] if taker.refused else lines, 1):
        if number % EVERY == 0:
            report_progress(number / len(lines), progress, cancelled)
        if taker.take_line(number, line):
            break
    block = make_columns(controller.path)
    moves = replace(block, points=np.concatenate((np.zeros((1, 3)), block.points)))
    return make_program(controller, moves, len(lines), units, taker.refused)


class LineTaker:
    """Gives single lines to a controller; knows of marks and of why a file is refused."""

    def __init__(self, controller: Controller) -> None:
        self.controller, self.marks, self.refused = controller, 0, Say()

    def take_line(self, number: int, line: str) -> bool:
        """Executes a line; tells whether the file ends with it."""
        controller = self.controller
        controller.line, controller.source = number, quote_line(line)
        if len(line) > LONGEST:
            controller.note_problem(
                "not-read", say("This line has more than {most} letters.", most=LONGEST)
            )
            return False
        text = clean_line(line, semicolon=controller.state.dialect.semicolon)
        if not text:
            return False
        if text.startswith("%"):
            self.marks += 1
            return note_mark(controller, self.marks)
        self.refused = refuse_loops(text, number)
        if self.refused:
            return True
        execute_line(controller, text)
        self.refused = refuse_length(controller.move_count)
        return controller.state.ended or bool(self.refused)


def note_mark(controller: Controller, marks: int) -> bool:
    """Notes a ``%``, and tells whether it ends the file: the second does, after one at the top."""
    if marks == 1 and not controller.move_count:
        return False
    if marks == 1:
        controller.note_problem(
            "stray-mark", say("A % stands in the middle of the file; it is passed over.")
        )
        return False
    return True


def report_progress(done: float, progress: Progress | None, cancelled: Cancelled | None) -> None:
    """Shows how far reading is and stops when a person has cancelled it."""
    if cancelled and cancelled():
        raise Cancel("Reading was cancelled.")
    if progress:
        progress(done)


def make_program(
    controller: Controller, moves: Moves, lines: int, units: Units, refused: Say,
    mentions: Sequence[str] = (),
) -> Program:  # fmt: skip
    """Makes the program that a controller has run, with remarks on the file as a whole."""
    problems = sorted(controller.problems, key=lambda p: (p.line, p.kind))
    assumed: list[str] = []
    if not units.said and not refused:
        text = say("The file does not say inch or millimetre. Say which it is.")
        problems.insert(0, Problem(0, "no-units", text))
        assumed.append(f"Units: {units.name}, for the file does not say.")
    if units.late:
        assumed.append(f"Units: {units.name} from the start; the file says so in line "
                       f"{units.late} only.")  # fmt: skip
    assumed += mentions
    problems += [
        count_unlisted(kind, count)
        for kind, count in controller.told.items()
        if count > MOST_OF_A_KIND
    ]
    if refused:
        problems.append(Problem(int(str(refused.values.get("line", 0))), "refused", refused))
    return Program(
        moves=moves,
        pauses=tuple(controller.path.pauses),
        sides=tuple(controller.path.sides),
        problems=tuple(problems),
        assumed=tuple(assumed),
        lines=lines,
        units=units.name,
        refused=refused,
    )
