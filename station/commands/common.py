"""What the commands share: the data folder, the clock, and how they say what is wrong."""

import argparse
import json
import logging
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from station import bootstrap
from station.clock import Clock

ERRORS = "errors.log"  # where our own mistakes are kept, in the data folder
OWN_BUG = 70  # the exit code


class CommandError(Exception):
    """What a person did wrong, as one sentence."""


def find_data(options: argparse.Namespace) -> Path:
    """Finds the data folder of a command."""
    return options.data or bootstrap.find_data_folder()


def require_shop(options: argparse.Namespace) -> Path:
    """Finds the data folder, which must hold a shop already. Raises CommandError."""
    data = find_data(options)
    if not (data / bootstrap.FILE).exists():
        raise CommandError(f"There is no shop in {data}. Open it once with: station --data {data}")
    return data


def make_clock(options: argparse.Namespace) -> Clock:
    """Makes the clock of a command, pinned where asked. Raises CommandError."""
    clock = Clock()
    if options.now:
        try:
            clock.pin(options.now)
        except ValueError:
            raise CommandError(f"{options.now} is no time: write 2026-11-25T10:42:00.") from None
    return clock


@contextmanager
def keep_errors(data: Path) -> Iterator[None]:
    """Keeps what goes wrong in the program meanwhile in a file beside the data."""
    handler = logging.FileHandler(data / ERRORS, encoding="utf-8", delay=True)
    handler.setFormatter(logging.Formatter("%(asctime)s %(message)s"))
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
