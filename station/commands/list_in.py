"""``station list-in``: takes the office's lists in from CSV, one or several together."""

import argparse
import sys
from pathlib import Path

from station import bootstrap
from station.commands import list_out
from station.commands.common import CommandError, make_clock, require_shop
from station.commands.pin import ask_for_supervisor
from station.files import lists
from station.ledger.ledger import Ledger
from station.shop.facts import Fact

NO_PIN = "That is supervisor's work: the PIN is not right."


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("list", help="part, order, material, worker …")
    parser.add_argument("file", type=Path, help="the CSV file to read")
    parser.add_argument("more", nargs="*", metavar="LIST FILE", help="more lists, all or nothing")
    parser.add_argument("--worker", default="01", help="the supervisor who does it")


def run(options: argparse.Namespace) -> int:
    """Takes a list in from CSV, once a supervisor has given the PIN."""
    words = (options.list, options.file, *options.more)
    if len(words) % 2:
        raise CommandError("Each list wants its file: list-in part parts.csv rack places.csv")
    files = [
        (Path(f), list_out.find_list(n)) for n, f in zip(words[::2], words[1::2], strict=True)
    ]
    now = make_clock(options)()
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        if not ask_for_supervisor(ledger, options.worker, now):
            raise CommandError(NO_PIN)
        problems = _take_in(ledger, files, options.worker, now)
    for problem in problems:
        print(problem, file=sys.stderr)
    if not problems:
        print(f"Taken in: {', '.join(str(file) for file, _ in files)}")
    return 1 if problems else 0


def _take_in(
    ledger: Ledger, files: list[tuple[Path, type[Fact]]], worker: str, now: str
) -> list[str]:
    """Takes one list in, or several together; gives the problems."""
    act = bootstrap.make_id()
    if len(files) > 1:
        return lists.read_several(ledger, files, worker, now, act)
    ((file, kind),) = files
    return lists.read(ledger, kind, file, worker, now, act)
