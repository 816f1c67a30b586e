"""``station backup``: copies the whole history into one file."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import add_replace, check_output, require_shop


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the argument of the command."""
    parser.add_argument("file", type=Path, help="the file to write")
    add_replace(parser)


def run(options: argparse.Namespace) -> int:
    """Copies the history into one file."""
    check_output(options.file, options, copy=True)
    with bootstrap.open_ledger(require_shop(options), nameless=True) as ledger:
        ledger.backup(options.file)
    print(f"Backed up to {options.file}")
    return 0
