"""What the commands share: the data folder, the clock, and how they say what is wrong."""

import argparse
import json
import logging
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from errno import EINVAL
from pathlib import Path

from station.clock import Clock
from station.files.logs import TurningLog
from station.shop.times import is_time

ERRORS = "errors.log"  # where our own mistakes are kept, in the data folder
KEPT = {"backups", "files", "papers", "beside.key", "station.log", ERRORS}  # the program's there
OWN_BUG = 70  # the exit code
TABLES = b"SQLite format 3\0"  # how a file of tables begins


class CommandError(Exception):
    """What a person did wrong, as one sentence."""


def find_data(options: argparse.Namespace) -> Path:
    """Finds the data folder of a command."""
    from station import bootstrap  # noqa: PLC0415 - as the next two: it takes half a second

    return options.data or bootstrap.find_data_folder()


def require_shop(options: argparse.Namespace) -> Path:
    """Finds the data folder, which must hold a shop already. Raises CommandError."""
    from station import bootstrap  # noqa: PLC0415 - as above

    data = find_data(options)
    if (data / bootstrap.FILE).exists():
        return data
    if aside := sorted(data.glob(f"{bootstrap.FILE}.empty-*")):
        raise CommandError(
            f"The shop that was in {data} was found empty and is set aside as {aside[-1].name}: "
            "put a backup in its place with station restore FILE."
        )
    raise CommandError(f"There is no shop in {data}. Open it once with: station --data {data}")


def make_clock(options: argparse.Namespace) -> Clock:
    """Makes the clock of a command, pinned where asked. Raises CommandError."""
    clock = Clock()
    if options.now:
        try:
            pin_clock(clock, options.now)
        except ValueError:
            raise CommandError(f"{options.now} is no time: write 2026-11-25T10:42:00.") from None
    return clock


def pin_clock(clock: Clock, text: str) -> None:
    """Pins a clock. Raises ValueError where the text is no time that a shop can have."""
    before = clock.pinned
    clock.pin(text)
    if not is_time(clock()):
        clock.pinned = before
        raise ValueError(text)


def read_plain_file(file: Path) -> bytes:
    """Reads a file whole. Raises OSError, also for a pipe, which may never end."""
    if file.exists() and not file.is_file() and not file.is_dir():
        raise OSError(EINVAL, "it is no plain file")
    return file.read_bytes()


def add_replace(parser: argparse.ArgumentParser) -> None:
    """Adds the option that lets a command write over a file."""
    parser.add_argument("--replace", action="store_true", help="writes over a file that is there")


def check_output(file: Path, options: argparse.Namespace, *, copy: bool = False) -> None:
    """Raises CommandError where `file` must not be written.

    One that holds anything is written over only where that is asked for; a shop's own file
    never is, nor a copy of one but by a new `copy`.
    """
    if _is_shops_own(file, find_data(options)) or (not copy and _is_history(file)):
        raise CommandError(f"{file} holds a shop: name another file.")
    if file.is_dir():
        raise CommandError(f"{file} is a folder: name a file in it.")
    if not file.parent.is_dir():
        raise CommandError(f"There is no folder {file.parent} to write in.")
    if file.exists() and not file.is_file():  # a device, a pipe: it would be no more
        raise CommandError(f"{file} is no plain file: name another.")
    if file.is_file() and file.stat().st_size and not options.replace:
        raise CommandError(f"{file} is there already: name another, or say --replace.")


def _is_shops_own(file: Path, data: Path) -> bool:
    """Tells whether a shop lives in this file or in one beside it that it needs."""
    from station import bootstrap  # noqa: PLC0415 - as above

    shop, own = data / bootstrap.FILE, file.resolve()
    if file.exists() and shop.exists() and file.samefile(shop):
        return True
    named = own.name.casefold()
    beside = named.startswith((bootstrap.FILE, bootstrap.JOINED)) or named in KEPT
    return beside and (own.parent / bootstrap.FILE).exists()


def _is_history(file: Path) -> bool:
    """Tells whether a file holds tables, as a shop and each copy of it do."""
    if not file.is_file():
        return False
    with file.open("rb") as inside:
        return inside.read(len(TABLES)) == TABLES


@contextmanager
def keep_errors(data: Path) -> Iterator[None]:
    """Keeps what goes wrong in the program meanwhile in a file beside the data."""
    handler = TurningLog(data / ERRORS)
    station = logging.getLogger("station")
    station.addHandler(handler)
    try:
        yield
    finally:
        station.removeHandler(handler)
        handler.close()


def print_json(value: object) -> None:
    """Prints one JSON value."""
    print(json.dumps(value, ensure_ascii=False), flush=True)


def has_display() -> bool:
    """Tells whether this machine has a screen to open a window on."""
    if sys.platform in ("win32", "darwin"):
        return True
    names = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    return any(os.environ.get(name) for name in names)
