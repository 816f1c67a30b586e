"""``station backup``: copies the whole history into one file."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import (
    CommandError,
    add_replace,
    check_output,
    make_clock,
    require_shop,
)
from station.files.backups import Backups, let_go
from station.jobs.messages import CopyHistory, Failed
from station.jobs.process import ProcessJob
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the argument of the command."""
    parser.add_argument("file", type=Path, help="the file to write")
    add_replace(parser)


def run(options: argparse.Namespace) -> int:
    """Copies the history into one file."""
    check_output(options.file, options, copy=True)
    with bootstrap.open_ledger(require_shop(options), nameless=True) as ledger:
        ledger.backup(options.file)
    return _tell(options.file)


def _tell(file: Path) -> int:
    print(f"Backed up to {file}")
    return 0


def begin(options: argparse.Namespace) -> "CopyBeside":
    """Begins to copy the history that the window has open. Raises CommandError."""
    check_output(options.file, options, copy=True)
    ledger = bootstrap.HELD[require_shop(options).resolve()]
    return CopyBeside(ledger, Backups(ledger, make_clock(options)), options.file)


class CopyBeside:
    """Copies a history beside the window that has it open, once nobody else copies it."""

    def __init__(self, ledger: Ledger, backups: Backups, file: Path) -> None:
        """`file` is named from the folder that is current now."""
        self._ledger, self._backups = ledger, backups
        self._file, self._to = file, file.absolute()
        self._job: ProcessJob | None = None
        self._fault: Fault | None = None  # why it cannot begin

    def _try_to_begin(self) -> None:
        try:
            if request := self._backups.ask_to_copy(self._to):
                self._job = self._start(request)
        except Fault as fault:
            self._fault = fault

    def _start(self, request: CopyHistory) -> ProcessJob:
        try:
            return ProcessJob(request)
        except BaseException:
            let_go(self._ledger, self._to)
            raise

    def is_over(self) -> bool:
        """Tells whether it is copied, or cannot be."""
        if self._job is None:
            self._try_to_begin()
        return self._fault is not None or (self._job is not None and self._job.is_over())

    def end(self) -> int:
        """Tells what came of it. Raises CommandError or a Fault."""
        if self._fault is not None:
            raise self._fault
        assert self._job is not None
        try:
            outcome = self._job.outcome()
        except RuntimeError:
            raise CommandError("The program that copies the history broke off.") from None
        finally:
            let_go(self._ledger, self._to)
        if isinstance(outcome, Failed):
            raise CommandError(outcome.tell())
        return _tell(self._file)

    def stop(self) -> None:
        """Ends it at once; nothing half made stays."""
        if self._job is not None:
            self._job.stop()
            let_go(self._ledger, self._to)
