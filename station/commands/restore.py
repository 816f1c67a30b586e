"""``station restore``: takes a backup back into the data folder."""

import argparse
from contextlib import suppress
from pathlib import Path

from station import bootstrap
from station.commands.common import find_data
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.ledger.private import make_folder


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the argument of the command."""
    parser.add_argument("file", type=Path, help="the backup")
    parser.add_argument(
        "--another-shop", action="store_true", help="puts another shop in the place of this one"
    )


def run(options: argparse.Namespace) -> int:
    """Takes a backup back; what is there now is kept aside."""
    data = find_data(options)
    make_folder(data)
    site = ""
    with suppress(Fault):  # a damaged one keeps nobody from putting a backup back
        joined = bootstrap.find_membership(data)
        site = joined.site if joined else ""
    Ledger.restore(options.file, data / bootstrap.FILE, site, another=options.another_shop)
    print(f"Restored from {options.file}")
    return 0
