"""The log beside a station's file, read without SQLite: what it would pass over is found too.

SQLite stops at the first frame that does not hold (https://www.sqlite.org/fileformat2.html, "The
Write-Ahead Log"). Each frame's sum goes on from the one before it, as that is written there; so
the frames behind a spoilt one can be proved as well.
"""

import shutil
import struct
import sys
from array import array
from collections.abc import Iterator
from pathlib import Path

from station.ledger.private import make_private

HEAD, FRAME_HEAD = 32, 24  # bytes
BIG = 0x377F0683  # begins a log whose sums read their words big end first
PAGE = 8192  # bytes of a page, as the program makes its files
SIZES = {2**n for n in range(9, 16)}
WORD = 0xFFFFFFFF


def log_of(path: Path) -> Path:
    """Where SQLite keeps what is not in the file yet."""
    return path.with_name(path.name + "-wal")


def kept_log_of(path: Path) -> Path:
    """Where a log that a station left behind is kept until its file is found sound."""
    return path.with_name(path.name + ".lastlog")


def keep_log(path: Path) -> None:
    """Keeps a copy of a log that was left behind, before SQLite takes it in and drops it."""
    log = log_of(path)
    if log.exists() and log.stat().st_size:
        shutil.copyfile(log, kept_log_of(path))
        make_private(kept_log_of(path))


def overlay(path: Path, log: Path, to: Path) -> None:
    """Writes the file with every sound frame of its log in its place, in order."""
    to.write_bytes(b"")
    if path.exists():
        shutil.copyfile(path, to)
    with to.open("r+b") as made:
        for number, page in read_frames(log.read_bytes()):
            made.seek((number - 1) * len(page))
            made.write(page)


def read_frames(raw: bytes) -> Iterator[tuple[int, bytes]]:
    """Gives page number and page of every frame that holds by itself, in order.

    Frames of an earlier round, which the log is written over, bear another salt.
    """
    if len(raw) < HEAD:
        return
    magic, _, size, *_ = struct.unpack(">8I", raw[:HEAD])
    size = size if size in SIZES else PAGE
    step, before = FRAME_HEAD + size, raw[HEAD - 8 : HEAD]
    starts = range(HEAD, len(raw) - step + 1, step)
    salt = raw[16:24]
    if all(raw[at + 8 : at + 16] != salt for at in starts):
        salt = raw[HEAD + 8 : HEAD + 16]  # it is the head that is spoilt
    for at in starts:
        head, page = raw[at : at + FRAME_HEAD], raw[at + FRAME_HEAD : at + step]
        number, now = int.from_bytes(head[:4], "big"), head[16:]
        if head[8:16] == salt and number and _sum(magic, head[:8] + page, before) == now:
            yield number, page
        before = now


def _sum(magic: int, content: bytes, before: bytes) -> bytes:
    """The sum of a frame behind the sum before it: two running sums of words of 32 bits."""
    words = array("I", content)
    if (magic == BIG) == (sys.byteorder == "little"):
        words.byteswap()
    one, two = struct.unpack(">2I", before)
    for first, second in zip(words[::2], words[1::2], strict=True):
        one = (one + first + two) & WORD
        two = (two + second + one) & WORD
    return struct.pack(">2I", one, two)
