"""What the commands on the shop's database share: who owns it, what is asked for, copying it."""

import getpass
import sys
from pathlib import Path

from station.ledger.closing import ClosingWrong
from station.ledger.ledger import Ledger
from station.ledger.shop_link import Away
from station.sharing import founding, membership
from station.sharing.address import Address, read
from station.sharing.closings import begin_with
from station.sharing.link import PostgresLink
from station.sharing.loop import catch_up

IN_THE_WAY = {
    "too old": "This program is too old for the shop: update it, then open the station.",
    "differs": "The shop holds another history than this PC: ask who owns the database.",
    "another": "The shop's database is another shop's now: ask who owns it.",
}


def read_owner(url: str) -> Address:
    """Reads an address as the owner of the server's; `postgres` where no user is said."""
    address = read(url)
    return address if address.user else Address(**{**vars(address), "user": "postgres"})


def ask_password(address: Address) -> str:
    """Asks for the owner's password, not shown; a line of standard input where nobody types."""
    if sys.stdin.isatty():
        return getpass.getpass(f"Password of {address.user} at {address}: ")
    return sys.stdin.readline().rstrip("\n")


def ask_line(words: str) -> str:
    """Asks for a line as it is typed."""
    return input(words) if sys.stdin.isatty() else sys.stdin.readline().rstrip("\n")


def copy_shop(data: Path, ledger: Ledger) -> str:
    """Copies the shop and takes this station's first numbers; gives what is in the way."""
    joined = membership.of(data)
    assert joined
    link = joined.link(data)
    try:
        _begin_with_closing(ledger, link)
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


def _begin_with_closing(ledger: Ledger, link: PostgresLink) -> None:
    """Begins with the newest closing; where it does not hold, the whole history comes."""
    try:
        begin_with(ledger, link)
    except ClosingWrong as wrong:
        print(f"{wrong} The whole history is copied instead, which takes longer.")
    except Away:
        return  # copying says so in a moment


def say_office(address: Address, password: str) -> None:
    """Says at which PCs people, PINs and settings are changed, and how others are added."""
    office = founding.read_office(address, password)
    where = f"station {', '.join(office)} alone" if office else "every station"
    print(
        f"People, PINs, reasons and settings are changed at {where}. To name the stations for "
        "that: station share URL --office 1,3."
    )


def say_left_open(address: Address, password: str) -> None:
    """Says how to close what the owner of the database could not."""
    if statements := founding.left_open(address, password):
        print(
            "A station can still write more into the database than entries, which only a "
            f"superuser can close: let one run this in the database {address.database}."
        )
    for statement in statements:
        print(f"{statement};")
