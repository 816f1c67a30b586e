"""Keeps what goes wrong in the program in a file that turns over, so that it fills no disk."""

import logging
from contextlib import suppress
from pathlib import Path

MOST_BYTES = 1_000_000
KEPT = 3  # older files beside it, the newest of them with the number 1


class TurningLog(logging.FileHandler):
    """A log of a few files, made by its first line."""

    def __init__(self, file: Path, words: str = "%(asctime)s %(message)s") -> None:
        super().__init__(file, encoding="utf-8", delay=True)
        self.setFormatter(logging.Formatter(words))

    def emit(self, record: logging.LogRecord) -> None:
        """Writes a line; a file that is full is put aside first."""
        file = Path(self.baseFilename)
        with suppress(OSError):  # not there yet; or held by another program: it grows on
            if file.stat().st_size > MOST_BYTES:
                self._turn_over(file)
        with suppress(OSError):  # it may not be written: what wanted to be noted goes on
            super().emit(record)

    def handleError(self, record: logging.LogRecord) -> None:  # noqa: N802 - called so by logging
        """Says nothing where a line could not be written: nobody could do anything about it."""

    def _turn_over(self, file: Path) -> None:
        """Gives each older file the next number; the oldest goes. Raises OSError."""
        stream, self.stream = self.stream, None  # the next line opens it again
        if stream:
            stream.close()
        for number in range(KEPT - 1, 0, -1):
            older = file.with_name(f"{file.name}.{number}")
            if older.exists():
                older.replace(file.with_name(f"{file.name}.{number + 1}"))
        file.replace(file.with_name(f"{file.name}.1"))
