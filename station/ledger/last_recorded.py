"""What was recorded last, noted beside the file: so that an end that is missing is noticed.

A log that was cut at the right place, or is gone, looks as sound as one that was never longer.
The note is written when an act is safe on the disk, and never waits for the disk itself: it may
be older than the file, never newer.
"""

from contextlib import suppress
from io import FileIO
from pathlib import Path
from typing import NamedTuple

import msgspec

WIDTH = 400  # bytes of the note: it is written over in place


class Newest(NamedTuple):
    """The newest act of a station: how many entries there were, its id and time, and how many
    acts were not shared yet with the time of the oldest of them.
    """

    entries: int = 0
    id: str = ""
    at: str = ""
    pending: int = 0
    oldest: str = ""


_write = msgspec.json.Encoder().encode
_read = msgspec.json.Decoder(Newest).decode


def note_of(path: Path) -> Path:
    """Where the note of a station's file lies."""
    return path.with_name(path.name + ".noted")


def read_newest(path: Path) -> Newest:
    """Reads the note of a station's file; an empty one where there is none that can be read."""
    try:
        return _read(note_of(path).read_bytes().rstrip())
    except (OSError, msgspec.MsgspecError):
        return Newest()


class Note:
    """The note of a file that is open; from its first writing on it is kept open itself."""

    def __init__(self, path: Path) -> None:
        self.newest = read_newest(path)
        self._path = note_of(path)
        self._file: FileIO | None = None

    def write(self, newest: Newest) -> None:
        """Writes what is newest now. The act is safe without it: a fault is no matter."""
        self.newest = newest
        with suppress(OSError):
            if self._file is None:
                self._file = FileIO(self._path, "r+" if self._path.exists() else "w")
            self._file.seek(0)
            self._file.write(_write(newest).ljust(WIDTH))

    def close(self) -> None:
        """Closes the note."""
        if self._file is not None:
            with suppress(OSError):
                self._file.close()
