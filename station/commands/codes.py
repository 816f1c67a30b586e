"""``station codes``: every code as JSON."""

import argparse

from station import bootstrap
from station.commands.common import print_json, require_shop
from station.printing.codes import list_codes


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the option of the command."""
    parser.add_argument("--json", action="store_true", help="the only form")


def run(options: argparse.Namespace) -> int:
    """Prints every code as JSON."""
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        print_json(list_codes(ledger))
    return 0
