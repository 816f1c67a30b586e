"""``station traveller``: prints a batch's traveller into a PDF."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import CommandError, make_clock, require_shop
from station.floor.anywhere.acts import NewCopy
from station.ledger.ledger import Ledger
from station.printing import gathering
from station.shop.acts import Act


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("batch")
    parser.add_argument("--pdf", type=Path, required=True, metavar="FILE")
    parser.add_argument("--copy", action="store_true", help="makes the next copy first")


def run(options: argparse.Namespace) -> int:
    """Writes the traveller of a batch as a PDF. Raises CommandError where there is no batch."""
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        now = make_clock(options)()
        if options.copy:
            _make_next_copy(ledger, options.batch, now)
        paper = gathering.make_paper(ledger, "traveller", options.batch, now)
        if paper is None:
            raise CommandError(f"There is no batch {options.batch}.")
        options.pdf.write_bytes(paper.write_pdf())
    print(options.pdf)
    return 0


def _make_next_copy(ledger: Ledger, batch: str, at: str) -> None:
    """Makes the next copy of a traveller; the one before is void."""
    act = Act(
        id=bootstrap.make_id(),
        kind=NewCopy.kind,
        at=at,
        subject=f"batch/{batch}",
        station=ledger.station,
        args=NewCopy(),
    )
    ledger.record(act)
