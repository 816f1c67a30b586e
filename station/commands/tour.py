"""``station tour``: drives the real screens through a day, and leaves their pictures."""

import argparse
import os
from pathlib import Path

from station.commands.common import has_display


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("out", type=Path, metavar="OUT", help="the folder for the pictures")
    parser.add_argument("--scanner-only", action="store_true", help="printed codes alone")
    parser.add_argument(
        "--first-day",
        action="store_true",
        help="README's first day on an empty shop: by touch, by keyboard, by scanner",
    )
    parser.add_argument("--units", choices=("mm", "inch"), default="mm", help="of the first day")


def run(options: argparse.Namespace) -> int:
    """Runs the tour that is asked for."""
    if options.first_day:
        _use_no_screen()
        from station.tour import empty_shop  # noqa: PLC0415 - Qt reads the environment

        return empty_shop.run_first_day(options.out, units=options.units)
    return run_day(options.out, scanner_only=options.scanner_only, now=options.now)


def run_day(out: Path, *, now: str, scanner_only: bool = False) -> int:
    """Runs the demo shop's day; pictures and papers go to `out`."""
    _use_no_screen()
    from station.tour import drive  # noqa: PLC0415 - Qt reads the environment as it is loaded

    return drive.run_tour(out, scanner_only=scanner_only, now=now)


def _use_no_screen() -> None:
    """Has all painted without a screen where there is none; before Qt is loaded."""
    if not has_display():
        os.environ["QT_QPA_PLATFORM"] = "offscreen"
