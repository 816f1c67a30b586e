"""``station``: opens this PC's station."""

import argparse
import logging
from collections.abc import Callable
from contextlib import chdir, redirect_stderr, redirect_stdout
from io import StringIO
from typing import TYPE_CHECKING

from station.commands.common import OWN_BUG, CommandError, find_data, has_display, make_clock

if TYPE_CHECKING:
    from station.commands.backup import CopyBeside
    from station.sharing.loop import Loop
    from station.window.beside import CommandAsked, Commands, Replies, Reply, TakesLines

LOG = logging.getLogger("station")


def run(options: argparse.Namespace) -> int:
    """Opens this PC's station and runs it until its window is closed."""
    if not has_display():
        raise CommandError("There is no display here. For the text station: station scan --help")
    from station.window import show  # noqa: PLC0415 - Qt may not be there without a display

    return show.open_station(find_data(options), make_clock(options), make_commands)


def make_commands(loop: "Loop | None") -> "Commands":
    """Makes what runs the commands that are asked for beside the window; `loop` shares for it."""
    from station.window.beside import Commands  # noqa: PLC0415 - after the frame

    return Commands(run_asked, lambda asked: begin_asked(asked, loop))


def begin_asked(asked: "CommandAsked", loop: "Loop | None") -> "TakesLines | Reply":
    """Begins a text station beside the window; a reply where it cannot begin."""
    from station.commands.main import read_words  # noqa: PLC0415 - it loads this module
    from station.commands.scan_beside import ScanBeside  # noqa: PLC0415 - seldom used
    from station.window.beside import Reply  # noqa: PLC0415 - after the frame

    try:
        return ScanBeside.begin(read_words(asked.words), loop)
    except Exception:  # the caller must be told, whatever it is, and the window goes on
        LOG.exception("scan beside the window: %s", asked.words)
        return Reply("", "The text station cannot begin: see station.log.\n", OWN_BUG)


def run_asked(asked: "CommandAsked") -> "Reply | Replies":
    """Runs a command that was asked for beside the window; gives what it printed.

    One that takes long is begun, and answers later.
    """
    from station.commands.main import load_command, run_command  # noqa: PLC0415 - it loads this

    begun: list[CopyBeside] = []

    def run(options: argparse.Namespace) -> int:
        if options.command != "backup":
            return run_command(options)
        begun.append(load_command("backup").begin(options))
        return 0

    reply = run_printing(asked, run)
    return Later(asked, begun[0]) if begun else reply


class Later:
    """The answer of a command that goes on beside the window."""

    def __init__(self, asked: "CommandAsked", begun: "CopyBeside") -> None:
        self._asked, self._begun = asked, begun

    def reply(self) -> "Reply | None":
        """Gives what it printed, once it is over."""
        if not self._begun.is_over():
            return None
        return run_printing(self._asked, lambda _options: self._begun.end())

    def stop(self) -> None:
        """Ends it at once."""
        self._begun.stop()


def run_printing(asked: "CommandAsked", run: Callable[[argparse.Namespace], int]) -> "Reply":
    """Does what a command asks for; gives what that printed."""
    from station.commands.main import run_words  # noqa: PLC0415 - it loads this module
    from station.window.beside import Reply  # noqa: PLC0415 - after the frame

    out, told = StringIO(), StringIO()
    with redirect_stdout(out), redirect_stderr(told), chdir(asked.folder):
        try:
            code = run_words(asked.words, run)
        except SystemExit as ended:  # its words were wrong
            code = int(ended.code or 0)
    return Reply(out.getvalue(), told.getvalue(), code)
