"""``station list-out``: writes one of the office's lists as CSV."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import CommandError, add_replace, check_output, require_shop
from station.files import lists
from station.ledger.renaming import write_whole
from station.shop.facts import Fact


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("list", help="part, order, material, worker …")
    parser.add_argument("file", type=Path, help="the CSV file to write")
    add_replace(parser)


def run(options: argparse.Namespace) -> int:
    """Writes a list as CSV."""
    kind = find_list(options.list)
    check_output(options.file, options)
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        write_whole(options.file, lists.write(ledger, kind).encode())
    print(options.file)
    return 0


def find_list(name: str) -> type[Fact]:
    """Finds the kind of fact that a list holds. Raises CommandError where there is none."""
    if name not in lists.NAMES:
        names = ", ".join(sorted(lists.NAMES))
        raise CommandError(f"There is no list {name}. There are: {names}.")
    return lists.NAMES[name]
