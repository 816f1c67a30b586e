"""A station's file: opened for one program alone, written in whole transactions."""

import logging
import sqlite3
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

import msgspec

from station.ledger import statements
from station.ledger.faults import Damaged, Fault, FormatTooNew, fault_of
from station.ledger.last_recorded import Note

log = logging.getLogger(__name__)
LAYOUT_NAME = "format"  # local: the layout of its tables, which older programs ask for before all
MENDED = "mended"  # local: entries are missing that the acts not shared yet stand on
LARGEST_LOG = 64 * 2**20  # bytes of write-ahead log from which a checkpoint is forced

_SETTINGS = (
    "PRAGMA page_size=8192",  # of a new file: an entry fits better, and a fifth less is written
    "PRAGMA locking_mode=EXCLUSIVE",  # before the log is first touched: one program only
    "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=FULL",
    "PRAGMA wal_autocheckpoint=0",  # they are what makes a slow scan: done when idle
    "PRAGMA temp_store=MEMORY",
    "PRAGMA cache_size=-16000",  # KB: the indexes of a long history fit while it is taken in
)


class Store:
    """The one connection to the file, its transactions, and its local values."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._log = path.with_name(path.name + "-wal")
        self._log_used = False
        with self.faults():
            self.connection = sqlite3.connect(path, isolation_level=None, timeout=0)
        try:
            with self.faults():
                self._prepare()
        except BaseException:
            self.connection.close()
            raise
        self.run: Callable[..., sqlite3.Cursor] = self.connection.execute
        self.note = Note(path)
        self._left_out = 0  # rows written of local values, or rolled back
        self._began_at = 0  # rows that were `written` when the newest transaction began
        self._stands = False  # whether that was let stand open
        self.is_still = False  # whether the file is let be while somebody copies it

    @property
    def settled(self) -> int | None:
        """Counts `written` rows; None where what is read now may still be rolled back.

        Of a transaction that stands open nobody reads anything: they are those from before it.
        """
        if self._stands:
            return self._began_at
        return None if self.connection.in_transaction else self.written

    @property
    def written(self) -> int:
        """Counts the rows written since it was opened: not local values, nor what was undone."""
        return self.connection.total_changes - self._left_out

    def _prepare(self) -> None:
        run = self.connection.execute
        for setting in _SETTINGS:
            run(setting)
        try:
            run("BEGIN IMMEDIATE")
            self._create()
            self.values: dict[str, str] = dict(run(statements.LOCAL_ALL).fetchall())
            self._gate()
            run("COMMIT")
        except BaseException:
            with suppress(sqlite3.Error):
                run("ROLLBACK")
            raise

    def _create(self) -> None:
        run = self.connection.execute
        names = {row[0] for row in run("SELECT name FROM sqlite_master").fetchall()}
        if names and names.isdisjoint({"local"}):
            raise Damaged(self.path)
        if names:
            self._bring_up(names)
            return
        for statement in statements.CREATION:
            run(statement)
        run(statements.PUT_LOCAL, (LAYOUT_NAME, str(statements.LAYOUT)))

    def _bring_up(self, names: set[str]) -> None:
        """Older files have no closing, and kept the names of what was written beside the body."""
        if "closing" not in names:
            self.connection.execute(statements.CREATE_CLOSING)
        for table in ("entry", "pending"):
            columns = self.connection.execute(f"PRAGMA table_info({table})").fetchall()
            if any(column[1] == "writes" for column in columns):
                self.connection.execute(f"ALTER TABLE {table} DROP COLUMN writes")

    def _gate(self) -> None:
        found = self.values.get(LAYOUT_NAME, "")
        if not found.isdecimal():
            raise Damaged(self.path)
        if int(found) > statements.LAYOUT:
            raise FormatTooNew(self.path, found)

    @property
    def is_older(self) -> bool:
        """Whether its derived tables are those of an older program."""
        return int(self.values[LAYOUT_NAME]) < statements.LAYOUT

    def renew_tables(self) -> None:
        """Makes the derived tables anew and empty, inside a transaction.

        `values` say so once they are read again: what is not committed must not count.
        """
        for statement in statements.RENEWAL:
            self.run(statement)
        self.put(LAYOUT_NAME, str(statements.LAYOUT))

    @contextmanager
    def faults(self) -> Iterator[None]:
        """Turns the driver's errors into faults with a sentence."""
        try:
            yield
        except sqlite3.Error as error:
            self._blame(error)
            raise
        except (msgspec.DecodeError, UnicodeDecodeError) as error:
            raise self.spoilt() from error  # the driver's own sentence may quote what is damaged

    def rows(self, statement: str, values: Sequence[object] = ()) -> list[Any]:
        """All rows of a query; the driver's errors as faults."""
        try:
            return self.run(statement, values).fetchall()
        except sqlite3.Error as error:
            self._blame(error)
            raise

    def _blame(self, error: sqlite3.Error) -> None:
        """Raises the fault behind the driver's error; returns when it is our own bug."""
        fault = fault_of(error, self.path)
        if isinstance(fault, Damaged):
            self.suspect()
        if fault:
            raise fault from error

    def spoilt(self) -> Damaged:
        """What was written soundly cannot be read: the fault to raise."""
        self.suspect()
        return Damaged(self.path)

    def suspect(self) -> None:
        """Leaves a mark beside the file: the next start looks it over whole."""
        with suppress(OSError):
            suspect_mark(self.path).touch()

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction: all of it is kept, or nothing."""
        with self.faults():
            try:  # from the first word on: stopped inside it, the transaction may stand open
                self.begin()
                yield self.connection
                self.commit()
            except BaseException:
                self.roll_back()
                raise

    def begin(self) -> None:
        """Begins a transaction."""
        self.run("BEGIN IMMEDIATE")
        self._began_at = self.written

    def commit(self) -> None:
        """Keeps all that the transaction wrote."""
        self.run("COMMIT")
        self._log_used = True

    def roll_back(self) -> None:
        """Drops all that the transaction wrote, where one stands open."""
        with suppress(sqlite3.Error):
            was_open = self.connection.in_transaction
            self.run("ROLLBACK")
            if was_open:
                self._left_out += self.written - self._began_at

    def let_stand(self, put_off: Callable[[], None]) -> None:
        """Lets a transaction stand open; it is `put_off` before anything else is asked for."""

        def ask(statement: str, values: Sequence[Any] = ()) -> sqlite3.Cursor:
            put_off()
            return self.run(statement, values)

        self.run, self._stands = ask, True

    def take_up(self) -> None:
        """Goes on with the transaction that stands open, or with nothing open."""
        self.run, self._stands = self.connection.execute, False

    def settle(self) -> None:
        """Puts off what stands open: whoever goes around `run` asks for this first."""
        self.run("SELECT 1")

    def put(self, key: str, value: str) -> None:
        """Sets a local value; inside a transaction only."""
        before = self.connection.total_changes
        self.run(statements.PUT_LOCAL, (key, value))
        self._left_out += self.connection.total_changes - before

    def bound_log(self) -> None:
        """Forces a checkpoint when the log has grown past its size."""
        with suppress(OSError):
            if self._log.stat().st_size > LARGEST_LOG:
                self.checkpoint("TRUNCATE")

    def checkpoint(self, mode: str = "PASSIVE") -> None:
        """Moves the log into the file. It is safe where it is, so a fault is only noted."""
        if self._log_used and not self.is_still:
            self._log_used = False
            try:
                with self.faults():
                    self.run(f"PRAGMA wal_checkpoint({mode})")
            except Fault:
                log.exception("The log could not be moved into the file")

    def hold_still(self) -> bool:
        """Moves the log into the file, and moves nothing more until `go_on`; tells if it could."""
        with self.faults():
            ((_, in_log, moved),) = self.run("PRAGMA wal_checkpoint(PASSIVE)").fetchall()
        self.is_still = bool(in_log == moved)
        return self.is_still

    def go_on(self) -> None:
        """Moves the log into the file again where it grows."""
        self.is_still, self._log_used = False, True

    def close(self) -> None:
        """Closes the file; the log is moved in first where the disk allows."""
        self.checkpoint()
        self.note.close()
        self.connection.close()


def suspect_mark(path: Path) -> Path:
    """Where it is noted that a file was found damaged while it was open."""
    return path.with_name(path.name + ".suspect")
