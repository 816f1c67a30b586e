"""``station join``: makes this PC a station of a shop."""

import argparse
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext, suppress
from pathlib import Path

from station import bootstrap
from station.commands.common import find_data
from station.commands.shop_database import ask_line, copy_shop
from station.ledger.faults import Fault, NoMembership
from station.ledger.history import SHOP
from station.ledger.ledger import Ledger
from station.ledger.opening import put_back, set_aside
from station.ledger.private import make_folder
from station.sharing import joining, membership
from station.sharing.address import read
from station.sharing.membership import Membership
from station.shop.words import dated

FIRST_MORNING = 2  # entries of a shop that was opened and not used: its first, its paper


class NoJoining(Fault):
    """The PC is not one that can join; the text says why."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the argument of the command."""
    parser.add_argument("host", nargs="?", default="", help="host of the shop's database")


def run(options: argparse.Namespace) -> int:
    """Makes this PC a station of a shop."""
    return 0 if join_shop(find_data(options), options.host) else 1


def join_shop(data: Path, host: str) -> bool:
    """Joins a shop; a PC that has, and was cut off before it had copied anything, goes on.

    Tells whether all of the shop is here.
    """
    joined = None
    with suppress(NoMembership):  # a new card gives this PC its place again
        joined = membership.of(data)
    is_anew = False
    if joined is None or host or not _is_empty(data):
        joined, is_anew = _join_with_card(data, joined, host), True
    with bootstrap.open_ledger(data) as ledger:
        if is_anew:
            ledger.forget_twin()
        print(f"This PC is station {joined.station} of the shop at {joined.address}.")
        problem = copy_shop(data, ledger)
        print(problem or f"The shop is here: {ledger.count()} entries{_sum_up(ledger)}.")
        return not problem


def _join_with_card(data: Path, known: Membership | None, host: str) -> Membership:
    """Asks for host and code, and joins with them; no card is spent while a window is open."""
    site = known.site if known else ""
    is_used = False
    if (data / bootstrap.FILE).exists():
        with bootstrap.open_ledger(data, nameless=True) as ledger:
            site, is_used = site or ledger.local(SHOP) or "", ledger.count() > FIRST_MORNING
    if is_used and not site:
        raise NoJoining(
            f"In {data} is a shop already. To bring it along: station share. "
            "To join another, name an empty folder with --data."
        )
    address = read(host or ask_line("Host of the shop's database: "))
    make_folder(data)
    code = ask_line("Code on the join card: ")
    with nullcontext() if site else _making_room(data / bootstrap.FILE):
        return joining.join(data, address, code, site)


def _is_empty(data: Path) -> bool:
    """Tells whether nothing of the shop was copied yet."""
    with bootstrap.open_ledger(data) as ledger:
        return not ledger.count()


@contextmanager
def _making_room(file: Path) -> Iterator[None]:
    """Sets a shop aside that nobody worked in; puts it back where joining fails."""
    aside = set_aside(file, "before") if file.exists() else None
    try:
        yield
    except BaseException:
        if aside and not any(file.parent.glob(f"{bootstrap.JOINED}*")):
            put_back(aside, file)
        raise
    if aside:
        print(f"The empty shop that was here is set aside as {aside.name}.")


def _sum_up(ledger: Ledger) -> str:
    """Says until when only what came of the entries is here."""
    number, at = ledger.begins()
    return f"; what was done up to {dated(at)} is summed up" if number else ""
