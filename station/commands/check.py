"""``station check``: digests, invariants, derived tables against a rebuild."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import require_shop
from station.ledger.faults import Damaged

ADVICE = (
    "What to do: start the station again, or say: station check --mend. Either sets the file "
    "aside, saves all of it that can be read, and tells what is missing and from when on."
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the option of the command."""
    parser.add_argument(
        "--mend",
        action="store_true",
        help="sets a file that is not sound aside, and saves all of it that can be read",
    )


def run(options: argparse.Namespace) -> int:
    """Says what is not sound and how it is mended, or that all is."""
    data = require_shop(options)
    problems = _check(data)
    if problems and options.mend:
        try:
            problems = _check(data)
        except Damaged as fault:  # it is mended where it is opened, for check has marked it
            print(fault)
            problems = _check(data)
    elif problems:
        print(ADVICE)
    if not problems:
        print("Sound: the history is whole and every count follows from it.")
    return 1 if problems else 0


def _check(data: Path) -> list[str]:
    """Gives what is not sound, once it is printed."""
    with bootstrap.open_ledger(data) as ledger:
        try:
            problems = ledger.check()
        except Damaged as fault:
            problems = [str(fault)]
    for problem in problems:
        print(problem)
    return problems
