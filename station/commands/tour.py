"""``station tour``: drives the real screens through one demo day, and leaves their pictures."""

import argparse
import os
from pathlib import Path

from station.commands.common import has_display


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("out", type=Path, metavar="OUT", help="the folder for the pictures")
    parser.add_argument("--scanner-only", action="store_true", help="printed codes alone")


def run(options: argparse.Namespace) -> int:
    """Runs the tour, on no screen where there is none."""
    if not has_display():
        os.environ["QT_QPA_PLATFORM"] = "offscreen"
    from station.tour import drive  # noqa: PLC0415 - Qt reads the environment as it is loaded

    return drive.run_tour(options.out, scanner_only=options.scanner_only, now=options.now)
