"""``station share``: shares this PC's shop, and what only the owner of its database may do."""

import argparse
from datetime import datetime
from pathlib import Path

from station import bootstrap
from station.commands.common import add_replace, check_output, make_clock, require_shop
from station.commands.shop_database import (
    ask_password,
    copy_shop,
    read_owner,
    say_left_open,
    say_office,
)
from station.papers.join_cards import JoinCard, make_join_cards
from station.sharing import founding
from station.sharing.address import Address
from station.sharing.roles import IssuedCard
from station.sharing.secret import OWN_ONLY
from station.shop.words import dated

CARDS = "join-cards.pdf"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("url", metavar="URL", help="postgresql://user@host/database, no password")
    parser.add_argument("--stations", type=int, default=3, help="how many other PCs (3)")
    one = parser.add_mutually_exclusive_group()
    one.add_argument("--card", metavar="STATION", help="only a new join card for this station")
    one.add_argument("--block", metavar="STATION", help="only shuts this station out")
    one.add_argument(
        "--office",
        metavar="STATIONS",
        help="only says at which PCs people, PINs, reasons and settings are changed, as 1,3",
    )
    one.add_argument(
        "--put-back", action="store_true", help="confirms that an older day was put back"
    )
    one.add_argument("--close", action="store_true", help="only a closing: new PCs begin with it")
    parser.add_argument("--pdf", type=Path, metavar="FILE", help="where the join cards go")
    add_replace(parser)


def run(options: argparse.Namespace) -> int:
    """Shares this PC's shop, or does the one thing that an option names."""
    pdf = options.pdf or (Path(CARDS) if options.card is not None else None)
    if pdf:
        check_output(pdf, options)
    if options.put_back:
        confirm_put_back(options.url)
    elif options.office is not None:
        name_office(options.url, options.office)
    elif options.block is not None:
        block_station(options.url, options.block)
    elif options.close:
        close_history(options.url, make_clock(options)())
    elif options.card is not None and pdf:
        print_new_card(options.url, options.card, pdf, make_clock(options)())
    else:
        data, now = require_shop(options), make_clock(options)()
        return 0 if share_shop(data, options.url, options.stations, pdf, now) else 1
    return 0


def share_shop(data: Path, url: str, stations: int, pdf: Path | None, now: str) -> bool:
    """Makes the database the shop's and prints a join card for each other station.

    Tells whether all of this PC is in it.
    """
    address = read_owner(url)
    password = ask_password(address)
    with bootstrap.open_ledger(data) as ledger:
        cards = founding.share(data, ledger, address, password, stations)
        problem = copy_shop(data, ledger)
        here = f"this PC is its station {ledger.station}."
        print(problem or f"Shared: {ledger.count()} entries are in {address}; {here}")
    if cards:
        _print_cards(cards, address, pdf or data / CARDS)
        founding.close(address, password, now, print)
    else:
        print("Every station has joined: no card is wanted.")
    say_office(address, password)
    say_left_open(address, password)
    return not problem


def print_new_card(url: str, station: str, pdf: Path, now: str) -> None:
    """Prints a new card for a station whose PC was changed or lost."""
    address = read_owner(url)
    password = ask_password(address)
    _print_cards([founding.card_again(address, password, station)], address, pdf)
    founding.close(address, password, now, print)


def close_history(url: str, now: str) -> None:
    """Makes a closing, so that a new PC need not copy years of history."""
    address = read_owner(url)
    number, _, at = founding.close(address, ask_password(address), now, print)
    if number:
        print(f"Closed behind entry {number} of {dated(at)}: a new PC begins there.")
    else:
        print("Nothing to close: a new PC copies the whole history, which is short.")


def confirm_put_back(url: str) -> None:
    """Confirms for the owner that the database was put back to an older day."""
    address = read_owner(url)
    number = founding.put_back(address, ask_password(address))
    print(f"Confirmed: it ends at entry {number}. The stations share again what is newer.")


def name_office(url: str, stations: str) -> None:
    """Names the PCs of the office."""
    address = read_owner(url)
    password = ask_password(address)
    founding.name_office(address, password, sorted({n.strip() for n in stations.split(",")}))
    say_office(address, password)


def block_station(url: str, station: str) -> None:
    """Shuts a station out whose password may be in wrong hands."""
    address = read_owner(url)
    founding.block(address, ask_password(address), station)
    print(f"Station {station} is shut out. A new card lets it in again: station share --card.")


def _print_cards(cards: list[IssuedCard], address: Address, pdf: Path) -> None:
    """Writes the join cards into a PDF that nobody else on this PC may read."""
    pdf.touch(OWN_ONLY)  # their codes let in
    pdf.chmod(OWN_ONLY)
    shown = (JoinCard(c.station, address.behind, c.code, c.shown, c.until) for c in cards)
    pdf.write_bytes(make_join_cards(shown).write_pdf())
    until = datetime.fromisoformat(cards[0].until)
    print(f"Join cards for {len(cards)}, valid until {until:%d.%m. %H:%M}: {pdf}")
