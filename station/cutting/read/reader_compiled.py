"""Reads a whole cut file: plain lines compiled, odd ones by the slow reader."""

from __future__ import annotations

import numpy as np

from station.cutting.model import MOST_OF_A_KIND, Cancelled, Pause, Program, Progress, Setting
from station.cutting.read.columns import Columns
from station.cutting.read.controller_compiled import CHUNK, hand_over, record_of, take_back
from station.cutting.read.controller_plain import Machine
from station.cutting.read.dialects import dialect_of
from station.cutting.read.notes import sentence
from station.cutting.read.reader_plain import (
    LINE_LETTERS,
    LONGEST,
    MARK,
    Taker,
    finish,
    look_up,
    no_plain_text,
    quoted,
    stretched,
    too_long,
)
from station.cutting.read.run import ODD, run
from station.cutting.read.text import messages, units_of
from station.cutting.read.write import PAUSE_KINDS

RETURN = 13
SHORT = 24  # after fewer plain lines than this, more than one line is read slowly
MOST_SLOW = 512


def read_fast(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """The program of a cut file's text; equal to what reading line by line gives."""
    units = units_of(data, setting)
    machine = Machine(dialect_of(setting.dialect), units.scale)
    reader = Reader(machine, data)
    while not reader.over:
        look_up(reader.start / max(1, len(data)), progress, cancelled)
        reader.chunk()
    if progress:
        progress(1.0)
    ended, row = machine.state.ended or reader.taker.marks > 0, reader.record[0]
    mentions = stretched(
        data, ended=ended, gaps=bool(row["gaps"]), long=int(row["long"]), high=bool(row["high"])
    )
    mentions += messages(data) if row["says"] else []
    moves, refused = reader.columns.moves(), reader.taker.refused
    return finish(machine, moves, reader.lines, units, refused, mentions)


class Reader:
    """A text on its way through the compiled reader, a chunk of whole lines at a time."""

    def __init__(self, machine: Machine, data: bytes) -> None:
        self.machine, self.taker, self.data = machine, Taker(machine), data
        self.record = record_of(machine)
        self.lines = data.count(b"\n") + 1
        if b"\r" in data:
            self.lines += data.count(b"\r") - data.count(b"\r\n")
        self.columns = Columns(self.lines)
        self.start = len(MARK) if data.startswith(MARK) else 0  # of the chunk
        self.slow = 1
        self.taker.refused = no_plain_text(data)
        self.over = bool(self.taker.refused)

    def chunk(self) -> None:
        """Reads the next whole lines."""
        size = self._size()
        row = self.record[0]
        row["text"][:size] = np.frombuffer(self.data, np.uint8, size, self.start)
        row["text"][size] = RETURN  # ends the last line of a file that has no end
        row["byte"] = 0
        while row["byte"] < size and not self.over:
            line = int(row["line"])
            run(self.record, size)
            self._fetch()
            if row["why"] == ODD:
                self._slowly(int(row["line"]) - line, size)
        self.start += int(row["byte"])
        self.over = self.over or self.start >= len(self.data)

    def _size(self) -> int:
        """Bytes up to the last line end in reach; without one, up to the end of the line."""
        start, far = self.start, self.start + CHUNK
        if far >= len(self.data):
            return len(self.data) - start
        found = max(self.data.rfind(b"\n", start, far), self.data.rfind(b"\r", start, far - 1))
        return found + 1 - start if found >= 0 else CHUNK

    def _fetch(self) -> None:
        """Takes moves, pauses and notes over from the record."""
        row, machine = self.record[0], self.machine
        before = self.columns.count
        self.columns.fetch(self.record)
        for move, kind, seconds, line in row["pause"][: row["pauses"]].tolist():
            name = PAUSE_KINDS[int(kind)]
            machine.path.pauses.append(Pause(before + int(move), name, seconds, int(line)))
        for line, byte, which, value, x, y in row["note"][: row["notes"]].tolist():
            kind, text = sentence(int(which), value)
            if machine.told.get(kind, 0) < MOST_OF_A_KIND:
                machine.line, machine.source = int(line), quoted(self._line(int(byte))[0])
                machine.state.at = [x, y, 0.0]
            machine.problem(kind, text)
        row["pauses"] = row["notes"] = 0
        self._count()

    def _count(self) -> None:
        """Ends the reading of a file with more moves than are taken."""
        self.machine.written = self.columns.count
        self.taker.refused = self.taker.refused or too_long(self.columns.count)
        self.over = bool(self.taker.refused)

    def _line(self, byte: int) -> tuple[str, int]:
        """The line at a byte of the chunk, and where the next begins."""
        start = self.start + byte
        end = self.data.find(b"\n", start)
        end = len(self.data) if end < 0 else end
        early = self.data.find(b"\r", start, end)
        end = end if early < 0 else early
        after = end + 2 if self.data[end : end + 2] == b"\r\n" else end + 1
        text = self.data[start : min(end, start + LONGEST + 1)].decode("latin-1")
        return text, after - self.start

    def _slowly(self, plain: int, size: int) -> None:
        """Reads an odd line, and some after it where few were plain before it."""
        row, machine = self.record[0], self.machine
        self.slow = 1 if plain >= SHORT else min(self.slow * 2, MOST_SLOW)
        take_back(machine, self.record)
        at, number = int(row["byte"]), int(row["line"])
        for _ in range(self.slow):
            text, at = self._line(at)
            self.over = self.taker.take(number, text)
            if len(text) > LINE_LETTERS and not row["long"]:
                row["long"] = number
            row["says"] |= "(" in text
            number += 1
            if self.over or at >= size:
                break
        row["byte"], row["line"] = at, number
        block = machine.close_block()
        if block is not None:
            self.columns.add(block)
        hand_over(machine, self.record)
