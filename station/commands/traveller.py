"""``station traveller``: prints a batch's traveller into a PDF."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import (
    CommandError,
    add_replace,
    check_output,
    make_clock,
    require_shop,
)
from station.floor.anywhere.acts import NewCopy
from station.ledger.ledger import Ledger
from station.ledger.renaming import write_whole
from station.printing import gathering
from station.queries.settings import find_shop
from station.shop import codes
from station.shop.acts import Act
from station.shop.facts import Batch


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("batch", help="its number, or the code on its paper")
    parser.add_argument(
        "--pdf", type=Path, required=True, metavar="FILE", help="the PDF file to write"
    )
    parser.add_argument("--copy", action="store_true", help="makes the next copy first")
    add_replace(parser)


def run(options: argparse.Namespace) -> int:
    """Writes the traveller of a batch as a PDF. Raises CommandError where there is no batch."""
    check_output(options.pdf, options)
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        now, batch = make_clock(options)(), read_batch(ledger, options.batch)
        if options.copy:
            _make_next_copy(ledger, batch, now)
        paper = gathering.make_paper(ledger, "traveller", batch, now)
        if paper is None:
            raise CommandError(f"There is no batch {batch}.")
        write_whole(options.pdf, paper.write_pdf())
    print(options.pdf)
    return 0


def read_batch(ledger: Ledger, text: str) -> str:
    """Reads a batch's number from the code on its paper; any other text is a number as it is.

    Raises CommandError for the code of something else.
    """
    code = codes.read(text, find_shop(ledger.view).prefix)
    if not isinstance(code, codes.Code):
        return text
    if code.kind != "batch":
        raise CommandError(f"{text} is no code of a traveller.")
    return code.number


def _make_next_copy(ledger: Ledger, batch: str, at: str) -> None:
    """Makes the next copy of a traveller; the one before is void. Raises CommandError."""
    if ledger.view.get(Batch, batch) is None:
        raise CommandError(f"There is no batch {batch}.")
    act = Act(
        id=bootstrap.make_id(),
        kind=NewCopy.kind,
        at=at,
        subject=f"batch/{batch}",
        station=ledger.station,
        args=NewCopy(),
    )
    answer = ledger.record(act).answer
    if answer.refused:
        raise CommandError(str(answer.said))
