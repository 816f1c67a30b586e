"""``station update-shop``: brings the shop's database up to what this program knows."""

import argparse

from station.commands.shop_database import ask_password, read_owner, say_left_open, say_office
from station.sharing import founding


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the argument of the command."""
    parser.add_argument("url", metavar="URL", help="postgresql://user@host/database, no password")


def run(options: argparse.Namespace) -> int:
    """Brings the shop's database up to date."""
    address = read_owner(options.url)
    password = ask_password(address)
    founding.update(address, password)
    print(f"{address} is up to date.")
    say_office(address, password)
    say_left_open(address, password)
    return 0
