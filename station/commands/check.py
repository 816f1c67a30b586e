"""``station check``: digests, invariants, derived tables against a rebuild."""

import argparse
from pathlib import Path

from station import bootstrap
from station.commands.common import CommandError, require_shop
from station.ledger import kept_backups
from station.ledger.faults import Damaged
from station.queries.health import OLD_DATABASE

ADVICE = (
    "What to do: start the station again, or say: station check --mend. Either sets the file "
    "aside, saves all of it that can be read, and tells what is missing and from when on."
)

CLOSE_FIRST = (
    "It cannot be mended while the station's window is open: close that, and say "
    "station check --mend once more."
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the option of the command."""
    parser.add_argument(
        "--witness",
        default="",
        metavar="NUMBER-DIGEST",
        help="proves that the history is the one of a handover sheet, or of a backup's name",
    )
    parser.add_argument(
        "--mend",
        action="store_true",
        help="sets a file that is not sound aside, and saves all of it that can be read",
    )


def run(options: argparse.Namespace) -> int:
    """Says what is not sound and how it is mended, or that all is."""
    data, witness = require_shop(options), kept_backups.read_witness(options.witness)
    if options.witness and witness is None:
        raise CommandError(f"{options.witness} is no witness: write it as 18092-3fa9c1d27b.")
    if options.mend:
        _mend(data)  # what a check before this one has marked
    borne_out = witness is None or _bears_out(data, witness)
    problems = _check(data)
    if problems and options.mend:
        if _mend(data):
            problems = _check(data)
        else:
            print(CLOSE_FIRST)
    elif problems:
        print(ADVICE)
    if not problems and borne_out:
        print("Sound: the history is whole and every count follows from it.")
    return 1 if problems or not borne_out else 0


def _mend(data: Path) -> bool:
    """Opens the file anew, which mends it where check has marked it; tells whether it did.

    The file that the station's window holds is not opened anew.
    """
    try:
        with bootstrap.open_ledger(data, nameless=True):
            return False
    except Damaged as fault:
        print(fault)
        return True


def _bears_out(data: Path, witness: tuple[int, str]) -> bool:
    """Says whether the history is the one that the witness is of."""
    with bootstrap.open_ledger(data, nameless=True) as ledger:
        borne_out = ledger.bears_out(witness)
    number = witness[0]
    if borne_out is None:
        print(f"Entry {number} was dropped as old: a backup of its time tells.")
    elif borne_out:
        print(f"Borne out: the history up to entry {number} is the one of the witness.")
    else:
        print(
            f"Another history: entry {number} is not the one of the witness. Restore a backup "
            "that bears it in its name: station restore FILE"
        )
    return borne_out is not False


def _check(data: Path) -> list[str]:
    """Gives what is not sound, once it is printed; an old database is told as well."""
    with bootstrap.open_ledger(data, nameless=True) as ledger:
        if ledger.database == "old":
            print(f"{OLD_DATABASE}.")
        try:
            problems = ledger.check()
        except Damaged as fault:
            problems = [str(fault)]
    for problem in problems:
        print(problem)
    return problems
