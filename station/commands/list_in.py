"""``station list-in``: takes one of the office's lists in from CSV."""

import argparse
import sys
from pathlib import Path

from station import bootstrap
from station.commands import list_out
from station.commands.common import CommandError, make_clock, require_shop
from station.commands.pin import ask_for_supervisor
from station.files import lists


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("list", help="part, order, material, worker …")
    parser.add_argument("file", type=Path, help="the CSV file to read")
    parser.add_argument("--worker", default="01", help="the supervisor who does it")


def run(options: argparse.Namespace) -> int:
    """Takes a list in from CSV, once a supervisor has given the PIN."""
    kind = list_out.find_list(options.list)
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        if not ask_for_supervisor(ledger, options.worker):
            raise CommandError("That is supervisor's work: the PIN is not right.")
        problems = lists.read(
            ledger,
            kind,
            options.file,
            options.worker,
            make_clock(options)(),
            bootstrap.make_id(),
        )
    for problem in problems:
        print(problem, file=sys.stderr)
    if not problems:
        print(f"Taken in: {options.file}")
    return 1 if problems else 0
