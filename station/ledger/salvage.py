"""All that can still be read of a damaged file, wherever it stands.

Rows are read as SQLite gives them, past what it cannot read; from the file with every sound frame
of its log put in place; and from kept backups. An act's text that no row leads to any more is
found by how it begins. Nothing here writes to what is read: SQLite opens copies, or a file that
it may not touch.
"""

import mmap
import re
import sqlite3
from collections.abc import Callable, Iterable, Iterator
from contextlib import closing, contextmanager, suppress
from dataclasses import dataclass, field
from itertools import chain
from pathlib import Path, PurePath
from typing import Any, NamedTuple

import msgspec

from station.ledger import statements
from station.ledger.closing import Begin, Closing, ClosingWrong, opened
from station.ledger.codec import read_body
from station.ledger.effects import list_text, rests_on
from station.ledger.faults import Damaged, fault_of
from station.ledger.last_recorded import note_of
from station.ledger.log_file import kept_log_of, log_of, overlay
from station.ledger.progress import Progress, tell_nobody
from station.ledger.sound import taken_in

BACKUPS = "backups"  # the folder beside the file with its kept backups
SEAL = 32  # bytes of a digest
FAILS = 20_000  # places in a row that cannot be read until a table is given up
STEP = 100_000  # numbers that a row may be ahead of the one before it
_BEGIN = re.compile(rb'\{"act":\{"id":"')
_PARTS = re.compile(rb'"(?:[^"\\]|\\.)*"|[{}]', re.DOTALL)
LONGEST = 65536  # bytes of a text that stands in one page


class FoundEntry(NamedTuple):
    """An entry where it was found; number 0: not known. `link` is the digest beside it.

    `altered`: its digest proves that it was another.
    """

    number: int
    id: str
    text: str
    link: bytes
    altered: bool = False


class Unshared(NamedTuple):
    """An act that was not shared yet, where it was found, and what its rule had read."""

    id: str
    reads: str
    text: str


@dataclass
class Salvage:
    """What was found, the nearest to the newest state first."""

    begin: Begin = Begin()
    books: bytes = b""  # of the closing that it begins with
    pieces: dict[int, list[FoundEntry]] = field(default_factory=dict)
    loose: list[FoundEntry] = field(default_factory=list)  # texts that no row leads to
    waiting: dict[str, Unshared] = field(default_factory=dict)
    local: dict[str, str] = field(default_factory=dict)
    progress: Progress = field(default_factory=lambda: Progress(tell_nobody))


def gather(path: Path, scratch: Path, progress: Progress) -> Salvage:
    """Gathers what can be read of a file and its logs; `scratch` is written over."""
    found = Salvage(progress=progress)
    logs = [log for log in (log_of(path), kept_log_of(path)) if log.exists()]
    for log in _order_states(path, logs):
        if log is not None:
            overlay(path, log, scratch)
        with _reading(scratch if log else path) as run:
            _read_tables(found, run)
    scratch.unlink(missing_ok=True)
    _read_loose(found, [file for file in (path, *logs) if file.exists()])
    return found


def _order_states(path: Path, logs: list[Path]) -> list[Path | None]:
    """Orders the states that a file is found in, the newest first: with a log, and without (None).

    What was recorded since a log was kept is in the file: then that state is an old one.
    """
    alone = [None] if path.exists() else []
    kept, note = kept_log_of(path), note_of(path)
    if kept in logs and note.exists() and kept.stat().st_mtime < note.stat().st_mtime:
        return [*(log for log in logs if log != kept), *alone, kept]
    return [*logs, *alone]


def list_backups(path: Path) -> list[Path]:
    """Lists the kept backups of a file, the newest first."""
    folder = path.parent / BACKUPS
    return sorted(folder.glob("*.db"), reverse=True) if folder.is_dir() else []


def read_backup(found: Salvage, file: Path, number: int, link: bytes) -> None:
    """Adds what a backup holds behind an entry, where it has that entry too.

    One that has another there is of a day that was put back since, and is none of this history.
    """
    with _reading(file) as run:
        same = not number or any(row[0] == link for row in _rows(run, statements.LINK, (number,)))
        if same or number == found.begin.number:
            _read_tables(found, run, number)


@contextmanager
def _reading(file: Path) -> Iterator[Callable[..., Any]]:
    """Opens a file that is not written to."""
    with closing(_connect(file)) as tables:
        yield tables.execute


def _connect(file: Path) -> sqlite3.Connection:
    """Opens what may be no file of tables; then one that has none stands for it."""
    with _passing_over(file):
        return sqlite3.connect(write_uri(file.absolute()), uri=True)
    return sqlite3.connect(":memory:")


def write_uri(file: PurePath) -> str:
    """Writes the name by which SQLite reads a file that nobody changes.

    It knows no hosts: the one of a folder on a Windows network stands behind two strokes more.
    """
    uri = file.as_uri()
    name = uri if uri.startswith("file:///") else uri.replace("file://", "file:////", 1)
    return f"{name}?immutable=1"


@contextmanager
def _passing_over(file: Path = Path("the file")) -> Iterator[None]:
    """Passes over what is damaged; a disk that does not read now is no damage, but a fault."""
    try:
        yield
    except UnicodeDecodeError:  # the driver's own sentence quotes what is damaged
        pass
    except sqlite3.Error as error:
        fault = fault_of(error, file)
        if fault is not None and not isinstance(fault, Damaged):
            raise fault from error


def _read_tables(found: Salvage, run: Callable[..., Any], after: int = 0) -> None:
    """Reads every table of one file, as far as each can be read."""
    if not found.begin.number:
        _read_closing(found, run)
    for piece in _entries(run, max(after, found.begin.number)):
        found.progress.read_one()
        known = found.pieces.setdefault(piece.number, [])
        if piece not in known:
            known.append(piece)
    for _, id_, _, reads, text in _rows(run, statements.ALL_PENDING):
        if _are_texts(id_, reads, text) and not taken_in(id_, text)[1]:
            found.waiting.setdefault(id_, Unshared(id_, _sound_names(reads, text), text))
    for key, value in _rows(run, statements.LOCAL_ALL):
        if _are_texts(key, value):
            found.local.setdefault(key, value)


def _rows(
    run: Callable[..., Any], query: str, values: tuple[object, ...] = ()
) -> Iterator[tuple[Any, ...]]:
    """Rows up to the first that cannot be read."""
    with _passing_over():
        yield from run(query, values)


def _sound_names(reads: str, text: str) -> str:
    """The names that a rule had read; where they are spoilt, what the effects rest on."""
    try:
        return list_text(msgspec.json.decode(reads, type=list[str]))
    except msgspec.MsgspecError:
        return list_text(sorted(rests_on(read_body(text))))


def _are_texts(*values: object) -> bool:
    return all(isinstance(value, str) for value in values)


def _read_closing(found: Salvage, run: Callable[..., Any]) -> None:
    for number, link, _, books in _rows(run, statements.EVERY_CLOSING):
        with suppress(ClosingWrong, TypeError):
            found.begin, _ = opened(Closing(number, link, books))
            found.books = books


def _entries(run: Callable[..., Any], after: int) -> Iterator[FoundEntry]:
    """Every entry that can be read, past those that cannot.

    Asked from a number on, not from behind one: that would be looked for on the page before.
    """
    fails = 0
    while fails < FAILS:
        came = False
        with _passing_over():
            for number, id_, text, link, *_ in run(statements.CHAIN_FROM, (after + 1,)):
                if not after < number <= after + STEP:
                    break
                came, after, fails = True, number, 0
                if _are_texts(id_, text) and isinstance(link, bytes):
                    yield FoundEntry(number, id_, text, link)
            else:
                if not came:
                    return
                continue
        after, fails = after + 1, fails + 1


def _read_loose(found: Salvage, files: Iterable[Path]) -> None:
    """Finds texts of acts that no row led to."""
    known = {(p.id, p.text) for p in chain.from_iterable(found.pieces.values())}
    known |= {(w.id, w.text) for w in found.waiting.values()}
    for file in files:
        for id_, text, link in _texts(file):
            found.progress.read_one()
            if (id_, text) not in known and not taken_in(id_, text)[1]:
                known.add((id_, text))
                found.loose.append(FoundEntry(0, id_, text, link))


def _texts(file: Path) -> Iterator[tuple[str, str, bytes]]:
    """Gives id, text and the bytes behind it of every act whose text stands whole in a file."""
    if not file.stat().st_size:
        return
    with file.open("rb") as raw, mmap.mmap(raw.fileno(), 0, access=mmap.ACCESS_READ) as content:
        for begun in _BEGIN.finditer(content):
            piece = content[begun.start() : begun.start() + LONGEST]
            end = _find_end(piece)
            with suppress(UnicodeDecodeError):
                text = piece[:end].decode()
                id_ = piece[begun.end() - begun.start() :].partition(b'"')[0].decode()
                if end:
                    yield id_, text, piece[end : end + SEAL]


def _find_end(piece: bytes) -> int:
    """Where the object that a text begins with ends; 0 where it does not."""
    depth = 0
    for part in _PARTS.finditer(piece):
        depth += {b"{": 1, b"}": -1}.get(part.group(), 0)
        if not depth:
            return part.end()
    return 0
