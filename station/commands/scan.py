"""``station scan``: the text station, codes in and JSON lines out."""

import argparse
import gc
import logging
import sys
from collections.abc import Callable

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.commands.common import OWN_BUG, keep_errors, make_clock, require_shop
from station.commands.text_station import run_text_station
from station.files.backups import TROUBLE, Backups, keep_before_update
from station.files.health import Health
from station.ledger.ledger import Ledger
from station.shop.areas import AREAS
from station.window.own_clock import OwnClock
from station.window.sharing_words import describe_health

log = logging.getLogger(__name__)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the options of the command: where the station stands, and who works there."""
    parser.add_argument(
        "--area", default="loading", choices=[area.id for area in AREAS], help="the work area"
    )
    parser.add_argument("--router", default="", help="the router that it stands at, as R3")
    parser.add_argument("--bench", default="", help="the bench that it stands at")
    parser.add_argument("--worker", default="", help="who works there")


def run(options: argparse.Namespace) -> int:
    """Runs the text station until its input ends."""
    clock, data, where = make_clock(options), require_shop(options), find_where(options)
    with keep_errors(data), bootstrap.open_ledger(data) as ledger:
        keep_before_update(ledger, clock())
        gc.freeze()  # what is loaded by now stays: looking it over for cycles takes 50 ms
        keep_house = make_keeping(ledger, clock)
        keep_house()
        sound = run_text_station(
            bootstrap.make_desk(ledger, where, clock),
            clock,
            sys.stdin,
            lambda text: print(text, flush=True),
            lambda text: print(text, file=sys.stderr, flush=True),
            bootstrap.make_loop(ledger, data),
            keep_house,
        )
        keep_house()
    return 0 if sound else OWN_BUG


def make_keeping(ledger: Ledger, clock: Clock) -> Callable[[], None]:
    """Makes what keeps the evening's backup and tells how this PC is, as the window does.

    What is not well is said on standard error, each once while it lasts; it ends no line.
    """
    backups, health = Backups(ledger, clock), Health(ledger, clock, bootstrap.make_id)
    own_clock = OwnClock(ledger)
    told = set[str]()

    def keep() -> None:
        nonlocal told
        try:
            backups.step()
            clock_is = str(own_clock.look(clock()))
            health.step()
            now = [clock_is, *list_unwell(ledger)]
        except Exception:
            log.exception("what is done by itself")
            return
        for words in now:
            if words and words not in told:
                print(words, file=sys.stderr)
        told = set(now)

    return keep


def list_unwell(ledger: Ledger) -> list[str]:
    """Lists what is not well: why there is no backup here, and what the window's bar would say."""
    why, said = ledger.local(TROUBLE), str(describe_health(ledger))
    if not why:
        return [said]
    return [f"No backup: {why}", "" if why in said else said]


def find_where(options: argparse.Namespace) -> Where:
    """Finds where the text station stands, and who works there."""
    return Where(
        area=options.area, router=options.router, bench=options.bench, worker=options.worker
    )
