"""The commands that found, join and update a shop's database; loaded by these alone."""

import getpass
import sys
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

from station import bootstrap
from station.ledger.closing import ClosingWrong
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.ledger.opening import set_aside
from station.ledger.shop_link import Away
from station.papers.join_cards import JoinCard, join_cards
from station.sharing import founding, joining, membership
from station.sharing.address import Address, read
from station.sharing.closings import begin_with
from station.sharing.link import PostgresLink
from station.sharing.loop import catch_up
from station.sharing.membership import Membership
from station.sharing.roles import Card
from station.sharing.secret import OWN_ONLY

Say = Callable[[str], None]
CARDS = "join-cards.pdf"
IN_THE_WAY = {
    "too old": "This program is too old for the shop: update it, then open the station.",
    "differs": "The shop holds another history than this PC: ask who owns the database.",
    "another": "The shop's database is another shop's now: ask who owns it.",
}
FIRST_MORNING = 2  # entries of a shop that was opened and not used: its first, its paper
KEPT = timedelta(days=396)  # thirteen months


class NoJoining(Fault):
    """The PC is not one that can join; the text says why."""


class NotDropped(Fault):
    """Nothing was dropped; the text says why."""


def share(data: Path, url: str, stations: int, pdf: Path | None, now: str, tell: Say) -> None:
    """Makes the database the shop's and prints a join card for each other station."""
    address = _owner(url)
    password = hidden(f"Password of {address.user} at {address}: ")
    with bootstrap.opened(data) as ledger:
        cards = founding.share(data, ledger, address, password, stations)
        _settle(data, ledger, tell)
        here = f"this PC is its station {ledger.station}."
        tell(f"Shared: {ledger.count()} entries are in {address}; {here}")
    _print(cards, address, pdf or data / CARDS, tell)
    if cards:
        founding.close(address, password, now, tell)
    _left_open(address, password, tell)


def card(url: str, station: str, pdf: Path, now: str, tell: Say) -> None:
    """Prints a new card for a station whose PC was changed or lost."""
    address = _owner(url)
    password = hidden(f"Password of {address.user} at {address}: ")
    _print([founding.card_again(address, password, station)], address, pdf, tell)
    founding.close(address, password, now, tell)


def close(url: str, now: str, tell: Say) -> None:
    """Makes a closing, so that a new PC need not copy years of history."""
    address = _owner(url)
    password = hidden(f"Password of {address.user} at {address}: ")
    number, _, at = founding.close(address, password, now, tell)
    if number:
        tell(f"Closed behind entry {number} of {_day(at)}: a new PC begins there.")
    else:
        tell("Nothing to close: a new PC copies the whole history, which is short.")


def drop_old(data: Path, now: str, tell: Say) -> None:
    """Drops from this PC what is older than 13 months; the shop's database keeps all."""
    joined = membership.of(data)
    if joined is None:
        raise NotDropped("This PC shares with nobody: its history is the only one.")
    since = (datetime.fromisoformat(now) - KEPT).isoformat(timespec="seconds")
    with bootstrap.opened(data) as ledger:
        number, digest = ledger.older_than(since)
        if number == ledger.begins()[0]:
            tell(f"Nothing here is older than {_day(since)}.")
            return
        link = joined.link(data)
        try:
            there = link.pull(number - 1, 1)
        finally:
            link.close()
        if not there or there[0].digest != digest:
            raise NotDropped("The shop's database does not hold this: nothing was dropped.")
        ledger.drop_until(number)
    tell(f"Dropped here: what is older than {_day(since)}. The shop's database keeps all.")


def update(url: str, tell: Say) -> None:
    """Brings the database up to what this program knows."""
    address = _owner(url)
    password = hidden(f"Password of {address.user} at {address}: ")
    founding.update(address, password)
    tell(f"{address} is up to date.")
    _left_open(address, password, tell)


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
    """Makes this PC a station of a shop; one that is, and was cut off before it had copied
    anything, goes on with that.
    """
    joined = membership.of(data)
    if joined is None or host or not _empty(data):
        joined = _join(data, joined, host, tell)
    with bootstrap.opened(data) as ledger:
        tell(f"This PC is station {joined.station} of the shop at {joined.address}.")
        problem = _settle(data, ledger, tell)
        tell(problem or f"The shop is here: {ledger.count()} entries{_summed_up(ledger)}.")


def _join(data: Path, known: Membership | None, host: str, tell: Say) -> Membership:
    """Asks for host and code, and joins with them."""
    if known is None and (data / bootstrap.FILE).exists():
        _make_room(data, tell)
    address = read(host or asked("Host of the shop's database: "))
    data.mkdir(parents=True, exist_ok=True)
    code = asked("Code on the join card: ")
    return joining.join(data, address, code, known.site if known else "")


def _empty(data: Path) -> bool:
    """Whether nothing of the shop was copied yet."""
    with bootstrap.opened(data) as ledger:
        return not ledger.count()


def _make_room(data: Path, tell: Say) -> None:
    """Sets a shop aside that was opened once and never worked in. Raises NoJoining."""
    with bootstrap.opened(data) as ledger:
        used = ledger.count() > FIRST_MORNING
    if used:
        raise NoJoining(
            f"In {data} is a shop already. To bring it along: station share. "
            "To join another, name an empty folder with --data."
        )
    aside = set_aside(data / bootstrap.FILE, "before")
    tell(f"The empty shop that was here is set aside as {aside.name}.")


def _summed_up(ledger: Ledger) -> str:
    """Until when only what came of the entries is here."""
    number, at = ledger.begins()
    return f"; what was done up to {_day(at)} is summed up" if number else ""


def _settle(data: Path, ledger: Ledger, tell: Say) -> str:
    """Copies the shop and takes this station's first numbers; gives what is in the way."""
    joined = membership.of(data)
    assert joined
    link = joined.link(data)
    try:
        _begin(ledger, link, tell)
        news = catch_up(ledger, link)
        if news.state == "shared":
            ledger.ask_ahead()
            news = catch_up(ledger, link)
        if news.state == "shared":
            return ""
        go_on = "The rest comes when the station is opened."
        if not ledger.count():
            go_on = "Nothing was copied yet: type station join again when it answers."
        return IN_THE_WAY.get(news.state, f"{news.why} {go_on}".strip())
    finally:
        link.close()


def _begin(ledger: Ledger, link: PostgresLink, tell: Say) -> None:
    """Begins with the newest closing; where it does not hold, the whole history comes."""
    try:
        begin_with(ledger, link)
    except ClosingWrong as wrong:
        tell(f"{wrong} The whole history is copied instead, which takes longer.")
    except Away:
        return  # copying says so in a moment


def _day(time: str) -> str:
    """A day as people write it."""
    return f"{time[8:10]}.{time[5:7]}.{time[:4]}"


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


def _left_open(address: Address, password: str, tell: Say) -> None:
    """Says how to close what its owner could not."""
    if statements := founding.left_open(address, password):
        tell(
            "A station can still write more into the database than entries, which only a "
            f"superuser can close: let one run this in the database {address.database}."
        )
    for statement in statements:
        tell(f"{statement};")


def _print(cards: list[Card], address: Address, pdf: Path, tell: Say) -> None:
    if not cards:
        tell("Every station has joined: no card is wanted.")
        return
    faces = (JoinCard(c.station, address.behind, c.code, c.shown, c.until) for c in cards)
    pdf.touch(OWN_ONLY)  # its codes let in: nobody else on this PC may read them
    pdf.chmod(OWN_ONLY)
    pdf.write_bytes(join_cards(faces).pdf())
    until = datetime.fromisoformat(cards[0].until)
    tell(f"Join cards for {len(cards)}, valid until {until:%d.%m. %H:%M}: {pdf}")
