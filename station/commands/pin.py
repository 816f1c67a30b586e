"""``station pin``: sets a supervisor's PIN, where a first shop has none yet."""

import argparse
import getpass
import sys

from station import bootstrap
from station.commands.common import CommandError, make_clock, require_shop
from station.desk.pin import agrees, hashed, is_easy
from station.desk.wrong_pins import WrongPins, count_minutes, keep_wrong_pins, read_wrong_pins
from station.ledger.ledger import Ledger
from station.queries.settings import find_supervisor, has_pin
from station.shop.acts import Act, SetPin
from station.shop.facts import Worker


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the argument of the command."""
    parser.add_argument("worker", help="the supervisor's number")
    parser.add_argument(
        "--forgotten",
        action="store_true",
        help="sets it anew without the old one, at the shop's first PC: everybody is told",
    )


def run(options: argparse.Namespace) -> int:
    """Sets a supervisor's PIN, asked for without showing it."""
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        at = make_clock(options)()
        print(ask_and_set_pin(ledger, options.worker, at, forgotten=options.forgotten))
    return 0


def ask_and_set_pin(ledger: Ledger, worker: str, at: str, *, forgotten: bool = False) -> str:
    """Asks for the PIN twice, without showing it, and sets it; gives what to say.

    Raises CommandError where none was set.
    """
    known = ledger.view.get(Worker, worker)
    if known is None:
        raise CommandError(f"There is no worker {worker}.")
    if has_pin(ledger.view) and not forgotten:
        raise CommandError(
            "This shop has a supervisor's PIN: others are set in the office. Where nobody knows "
            f"one: station pin {worker} --forgotten"
        )
    owners = ledger.office or (bootstrap.FIRST_STATION,)
    if forgotten and ledger.station not in owners:
        raise CommandError(f"A forgotten PIN is set at station {owners[0]}: do it there.")
    first, second = ask_pin("New PIN: "), ask_pin("Again: ")
    if first != second:
        raise CommandError("The two are not the same: nothing was changed.")
    try:
        return set_pin(ledger, worker, first, at, forgotten=forgotten)
    except ValueError as wrong:
        raise CommandError(str(wrong)) from None


def ask_pin(words: str) -> str:
    """Asks for a PIN, not shown; a line of standard input where there is no terminal.

    Raises CommandError where nobody typed any.
    """
    if sys.stdin.isatty():
        return getpass.getpass(words)
    typed = sys.stdin.readline().rstrip("\n")
    if not typed:
        raise CommandError("A PIN is wanted: type it in a terminal, or send it as a line.")
    return typed


def set_pin(ledger: Ledger, worker: str, pin: str, at: str, *, forgotten: bool = False) -> str:
    """Sets a PIN; gives what to say.

    Raises ValueError for a PIN that is none, CommandError where it is refused.
    """
    if pin.isdecimal() and is_easy(pin):
        raise CommandError("Anybody guesses that PIN: choose digits that are not in a row.")
    act = Act(
        id=bootstrap.make_id(),
        kind=SetPin.kind,
        at=at,
        worker=worker,
        station=ledger.station,
        subject=f"worker/{worker}",
        args=SetPin(hash=hashed(pin), forgotten=forgotten),
    )
    answer = ledger.record(act).answer
    if answer.refused:
        raise CommandError(str(answer.said))
    return str(answer.said)


def ask_for_supervisor(ledger: Ledger, worker: str, now: str) -> bool:
    """Asks for a supervisor's PIN, without showing it; whether it is right.

    Raises CommandError while none is taken, for too many were wrong.
    """
    known, pins = find_supervisor(ledger.view, worker), read_wrong_pins(ledger)
    if left := pins.find_wait(now):
        keep_wrong_pins(ledger, pins.start_waiting(now))
        raise CommandError(f"Too many wrong PINs: wait {count_minutes(left)} min.")
    if known is None:
        return False
    right = agrees(known.pin, ask_pin(f"PIN of supervisor {worker}: "))
    keep_wrong_pins(ledger, WrongPins() if right else pins.count_wrong(now))
    return right
