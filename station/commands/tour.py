"""``station tour``: drives the real screens through a day, and leaves their pictures."""

import argparse
import os
from pathlib import Path

from station.commands.common import has_display

LEAST = (1366, 768)  # px, the smallest screen that a station has
MOST = 8192


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("out", type=Path, metavar="OUT", help="the folder for the pictures")
    parser.add_argument("--scanner-only", action="store_true", help="printed codes alone")
    parser.add_argument(
        "--first-day",
        action="store_true",
        help="README's first day on an empty shop: by touch, by keyboard, by scanner",
    )
    parser.add_argument(
        "--size", type=_read_size, default=None, metavar="WxH", help="of the window, in pixels"
    )
    parser.add_argument("--dark", action="store_true", help="the dark variant")
    parser.add_argument("--units", choices=("mm", "inch"), default="mm", help="of the first day")


def run(options: argparse.Namespace) -> int:
    """Runs the tour that is asked for."""
    if options.first_day:
        _use_no_screen()
        from station.tour import empty_shop  # noqa: PLC0415 - Qt reads the environment

        return empty_shop.run_first_day(options.out, units=options.units)
    return run_day(
        options.out,
        scanner_only=options.scanner_only,
        now=options.now,
        size=options.size,
        dark=options.dark,
    )


def _read_size(text: str) -> tuple[int, int]:
    """Reads ``1920x1080``. Raises ValueError for any other text, which argparse tells of."""
    wide, high = map(int, text.split("x"))
    if not (LEAST[0] <= wide <= MOST and LEAST[1] <= high <= MOST):
        raise argparse.ArgumentTypeError(f"{text} is smaller than 1366x768, or too large")
    return wide, high


def run_day(
    out: Path,
    *,
    now: str,
    scanner_only: bool = False,
    size: tuple[int, int] | None = None,
    dark: bool = False,
) -> int:
    """Runs the demo shop's day; pictures and papers go to `out`."""
    _use_no_screen()
    from station.tour import drive  # noqa: PLC0415 - Qt reads the environment as it is loaded

    shown = drive.TourWindow(size=size or LEAST, dark=dark)
    return drive.run_tour(out, scanner_only=scanner_only, now=now, shown=shown)


def _use_no_screen() -> None:
    """Has all painted without a screen where there is none; before Qt is loaded."""
    if not has_display():
        os.environ["QT_QPA_PLATFORM"] = "offscreen"
