"""The commands that found, join and update a shop's database; loaded by these alone."""

import getpass
import sys
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from station import app
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.papers.join_cards import JoinCard, join_cards
from station.sharing import founding, joining, membership
from station.sharing.address import Address, read
from station.sharing.loop import catch_up
from station.sharing.roles import Card

Say = Callable[[str], None]
CARDS = "join-cards.pdf"


class NoJoining(Fault):
    """The PC is not one that can join; the text says why."""


def share(data: Path, url: str, stations: int, pdf: Path | None, tell: Say) -> None:
    """Makes the database the shop's and prints a join card for each other station."""
    address = _owner(url)
    password = hidden(f"Password of {address.user} at {address}: ")
    with app.opened(data) as ledger:
        cards = founding.share(data, ledger, address, password, stations)
        _settle(data, ledger)
        tell(f"Shared: {ledger.count()} entries are in {address}; this PC is its station 1.")
    _print(cards, address, pdf or data / CARDS, tell)


def card(url: str, station: str, pdf: Path, tell: Say) -> None:
    """Prints a new card for a station whose PC was changed or lost."""
    address = _owner(url)
    password = hidden(f"Password of {address.user} at {address}: ")
    _print([founding.card_again(address, password, station)], address, pdf, tell)


def update(url: str, tell: Say) -> None:
    """Brings the database up to what this program knows."""
    address = _owner(url)
    founding.update(address, hidden(f"Password of {address.user} at {address}: "))
    tell(f"{address} is up to date.")


def put_back(url: str, tell: Say) -> None:
    """The owner confirms that the database was put back to an older day."""
    address = _owner(url)
    number = founding.put_back(address, hidden(f"Password of {address.user} at {address}: "))
    tell(f"Confirmed: it ends at entry {number}. The stations share again what is newer.")


def block(url: str, station: str, tell: Say) -> None:
    """Shuts a station out whose password may be in wrong hands."""
    address = _owner(url)
    founding.block(address, hidden(f"Password of {address.user} at {address}: "), station)
    tell(f"Station {station} is shut out. A new card lets it in again: station share --card.")


def join(data: Path, host: str, tell: Say) -> None:
    """Makes this PC a station of a shop."""
    known = membership.of(data)
    if known is None and (data / app.FILE).exists():
        raise NoJoining(
            f"In {data} is a shop already. To bring it along: station share. "
            "To join another, name an empty folder with --data."
        )
    address = read(host or asked("Host of the shop's database: "))
    data.mkdir(parents=True, exist_ok=True)
    joined = joining.join(data, address, asked("Code on the join card: "))
    with app.opened(data) as ledger:
        problem = _settle(data, ledger)
        tell(f"This PC is station {joined.station} of the shop at {address}.")
        tell(problem or f"The shop is here: {ledger.count()} entries.")


def _settle(data: Path, ledger: Ledger) -> str:
    """Copies the shop and takes this station's first numbers; gives what is in the way."""
    joined = membership.of(data)
    assert joined
    link = joined.link(data)
    try:
        news = catch_up(ledger, link)
        if news.state == "shared":
            ledger.ask_ahead()
            news = catch_up(ledger, link)
        if news.state == "shared":
            return ""
        return f"The rest comes when the station is opened. {news.why}".strip()
    finally:
        link.close()


def hidden(words: str) -> str:
    """A password as it is typed, not shown; a line of standard input where nobody types."""
    return getpass.getpass(words) if sys.stdin.isatty() else sys.stdin.readline().rstrip("\n")


def asked(words: str) -> str:
    """A line as it is typed."""
    return input(words) if sys.stdin.isatty() else sys.stdin.readline().rstrip("\n")


def _owner(url: str) -> Address:
    """The address as the owner of the server; `postgres` where no user is said."""
    address = read(url)
    return address if address.user else Address(**{**vars(address), "user": "postgres"})


def _print(cards: list[Card], address: Address, pdf: Path, tell: Say) -> None:
    if not cards:
        tell("Every station has joined: no card is wanted.")
        return
    faces = (JoinCard(c.station, address.database, c.code, c.shown, c.until) for c in cards)
    pdf.write_bytes(join_cards(faces).pdf())
    until = datetime.fromisoformat(cards[0].until)
    tell(f"Join cards for {len(cards)}, valid until {until:%d.%m. %H:%M}: {pdf}")
