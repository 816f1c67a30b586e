"""``station backup``: copies the whole history into one file."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import require_shop


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the argument of the command."""
    parser.add_argument("file", type=Path)


def run(options: argparse.Namespace) -> int:
    """Copies the history into one file."""
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        ledger.backup(options.file)
    print(f"Backed up to {options.file}")
    return 0
