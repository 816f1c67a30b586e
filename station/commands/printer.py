"""``station printer``: which printer of this PC prints which paper."""

import argparse

from station import bootstrap
from station.commands.common import CommandError, require_shop
from station.printing import printers
from station.window.show import find_application


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("size", nargs="?", default="", help="A4, A5 or label")
    parser.add_argument("name", nargs="?", default="", help="a printer, or pdf: open the file")


def run(options: argparse.Namespace) -> int:
    """Keeps a choice, then lists the printers and what each size goes to."""
    find_application()
    names = printers.list_attached()
    if options.size and options.size not in printers.PAPERS:
        raise CommandError(f"{options.size} is no size: {', '.join(printers.PAPERS)}.")
    if options.name not in ("", printers.OPENED, *names):
        there = ", ".join(names) or "none"
        raise CommandError(f"There is no printer {options.name}. There is: {there}.")
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        if options.size:
            printers.keep_choice(ledger, options.size, options.name)
        for size in printers.PAPERS:
            print(f"{size}: {printers.find_chosen(ledger, size) or 'asks once'}")
    print(f"printers: {', '.join(names) or 'none'}")
    return 0
