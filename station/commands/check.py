"""``station check``: digests, invariants, derived tables against a rebuild."""

import argparse

from station import bootstrap
from station.commands.common import require_shop


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds nothing: the command takes no arguments of its own."""


def run(options: argparse.Namespace) -> int:
    """Says what is not sound, or that all is."""
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        problems = ledger.check()
    for problem in problems:
        print(problem)
    if not problems:
        print("Sound: the history is whole and every count follows from it.")
    return 1 if problems else 0
