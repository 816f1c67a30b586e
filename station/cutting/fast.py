"""Reads a whole cut file: blocks of plain lines in columns, the others one by one."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Future, ThreadPoolExecutor

from station.cutting.machine import Machine
from station.cutting.modal import Stretch, run_plain
from station.cutting.model import MM_PER_INCH, Cancelled, Program, Progress, Setting
from station.cutting.reader import Taker, finish, look_up, units_of
from station.cutting.words import Words, tokenise

BLOCK = 192 * 1024  # bytes: columns of one block stay in the processor's cache
SHORT = 48  # plain lines fewer than this are quicker one by one
AHEAD = 4  # blocks taken apart before they are needed


def read_fast(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """The program of a cut file's text; equal to what reading line by line gives."""
    said, scale = units_of(data, setting)
    machine = Machine(setting.reads_as, scale)
    text = _newlines(data)
    taker = Taker(machine)
    done, first = 0, 1
    for block, words in _ahead(text, semicolon=machine.state.dialect.semicolon):
        look_up(done / max(1, len(text)), progress, cancelled)
        if Block(machine, taker, block, words, first).run():
            break
        done += len(block)
        first += words.count
    if progress:
        progress(1.0)
    lines = text.count(b"\n")
    units = "inch" if scale == MM_PER_INCH else "mm"
    return finish(machine, lines, units, taker.refused, said=said)


def _newlines(data: bytes) -> bytes:
    """The text with one kind of line end, and one after the last line."""
    text = data.removeprefix(b"\xef\xbb\xbf")
    if b"\r" in text:
        text = text.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    return text + b"\n"


def _blocks(text: bytes) -> Iterator[bytes]:
    """Whole lines, about BLOCK bytes at a time."""
    at = 0
    while at < len(text):
        end = text.find(b"\n", min(at + BLOCK, len(text) - 1)) + 1
        yield text[at:end]
        at = end


def _ahead(text: bytes, *, semicolon: bool) -> Iterator[tuple[bytes, Words]]:
    """Blocks with their words, the next ones taken apart in another thread meanwhile."""
    if len(text) <= BLOCK:
        yield text, tokenise(text, semicolon=semicolon)
        return
    with ThreadPoolExecutor(1) as pool:
        waiting: list[tuple[bytes, Future[Words]]] = []
        for block in _blocks(text):
            waiting.append((block, pool.submit(tokenise, block, semicolon=semicolon)))
            if len(waiting) > AHEAD:
                early, future = waiting.pop(0)
                yield early, future.result()
        for early, future in waiting:
            yield early, future.result()


class Block:
    """One block of lines on its way through the machine."""

    def __init__(
        self, machine: Machine, taker: Taker, text: bytes, words: Words, first: int
    ) -> None:
        self.machine, self.taker, self.text, self.first = machine, taker, text, first
        self.stretch = Stretch(words, first)
        self.split: list[bytes] | None = None
        machine.source_of = self.source_of

    def line(self, at: int) -> str:
        """The text of a line of this block."""
        if self.split is None:
            self.split = self.text.split(b"\n")
        return self.split[at].decode("latin-1")

    def source_of(self, number: int) -> str:
        """The text of a line of the file, as problems quote it."""
        return self.line(number - self.first).strip()[:120]

    def run(self) -> bool:
        """Runs the block; whether the file ends in it."""
        at, slow = 0, 1
        while at < self.stretch.count:
            after = run_plain(self.machine, self.stretch, at)
            slow = 1 if after - at >= SHORT else min(slow * 2, 512)
            at = after
            for _ in range(slow):
                if at >= self.stretch.count:
                    break
                if self.taker.take(self.first + at, self.line(at)):
                    return True
                at += 1
        return False
