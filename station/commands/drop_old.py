"""``station drop-old``: drops what is older than 13 months from this PC alone."""

import argparse
from datetime import datetime, timedelta
from pathlib import Path

from station import bootstrap
from station.commands.common import make_clock, require_shop
from station.ledger.faults import Fault
from station.sharing import membership
from station.shop.words import dated

KEPT = timedelta(days=396)  # thirteen months


class NotDropped(Fault):
    """Nothing was dropped; the text says why."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds nothing: the command takes no arguments of its own."""


def run(options: argparse.Namespace) -> int:
    """Drops old entries from this PC's file; the shop's database keeps all."""
    drop_old(require_shop(options), make_clock(options)())
    return 0


def drop_old(data: Path, now: str) -> None:
    """Drops what is older than 13 months, once the shop's database has shown that it has it."""
    joined = membership.of(data)
    if joined is None:
        raise NotDropped("This PC shares with nobody: its history is the only one.")
    since = (datetime.fromisoformat(now) - KEPT).isoformat(timespec="seconds")
    with bootstrap.open_ledger(data) as ledger:
        number, digest = ledger.older_than(since)
        if number == ledger.begins()[0]:
            print(f"Nothing here is older than {dated(since)}.")
            return
        link = joined.link(data)
        try:
            there = link.pull(number - 1, 1)
        finally:
            link.close()
        if not there or there[0].digest != digest:
            raise NotDropped("The shop's database does not hold this: nothing was dropped.")
        ledger.drop_until(number)
    print(f"Dropped here: what is older than {dated(since)}. The shop's database keeps all.")
