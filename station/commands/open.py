"""``station``: opens this PC's station."""

import argparse
from contextlib import chdir, redirect_stderr, redirect_stdout
from io import StringIO
from typing import TYPE_CHECKING

from station.commands.common import CommandError, find_data, has_display, make_clock

if TYPE_CHECKING:
    from station.window.beside import CommandAsked, Reply


def run(options: argparse.Namespace) -> int:
    """Opens this PC's station and runs it until its window is closed."""
    if not has_display():
        raise CommandError("There is no display here. For the text station: station scan --help")
    from station.window import show  # noqa: PLC0415 - Qt may not be there without a display

    return show.open_station(find_data(options), make_clock(options), run_asked)


def run_asked(asked: "CommandAsked") -> "Reply":
    """Runs a command that was asked for beside the window; gives what it printed."""
    from station.commands import main  # noqa: PLC0415 - it loads this module
    from station.window.beside import Reply  # noqa: PLC0415 - after the frame

    out, told = StringIO(), StringIO()
    with redirect_stdout(out), redirect_stderr(told), chdir(asked.folder):
        try:
            code = main.main(asked.words)
        except SystemExit as ended:  # its words were wrong
            code = int(ended.code or 0)
    return Reply(out.getvalue(), told.getvalue(), code)
