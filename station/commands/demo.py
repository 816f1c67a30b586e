"""``station demo``: builds the demo shop where it is not there yet, and opens it."""

import argparse
import tempfile
from datetime import datetime
from pathlib import Path

from demo_db.build import build
from station import bootstrap
from station.bootstrap import Where
from station.commands import tour
from station.commands.common import has_display, make_clock
from station.commands.open import make_commands
from station.ledger.private import make_folder


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the options of the command."""
    parser.add_argument("--build-only", action="store_true", help="builds it and stops")


def run(options: argparse.Namespace) -> int:
    """Builds the demo shop where it is not there yet, and opens it."""
    data = options.data or Path(tempfile.mkdtemp(prefix="demo-shop-"))
    _build_demo(data, make_clock(options)())
    if options.build_only:
        print(data)
        return 0
    if not has_display():
        out = data / "tour"
        print(f"There is no display here, so the tour runs; its pictures go to {out}")
        return tour.run_day(out, now=options.now)
    from station.window import first_run, show  # noqa: PLC0415 - Qt, where there is a display

    with bootstrap.open_ledger(data) as ledger:
        first_run.keep_where(ledger, Where(area="loading", router="1", bench="1"))
    return show.open_station(data, make_clock(options), make_commands)


def _build_demo(data: Path, now: str) -> None:
    """Builds the demo shop in a folder, unless it is there already."""
    if (data / bootstrap.FILE).exists():
        return
    make_folder(data)
    print("Building the demo shop …", flush=True)
    build(data / bootstrap.FILE, datetime.fromisoformat(now))
