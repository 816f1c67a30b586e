"""Tells the shop how this PC is: by itself, every few hours and when anything changes."""

import shutil
from collections.abc import Callable

from station import VERSION
from station.desk.wrong_pins import MANY, read_wrong_pins
from station.files.backups import TROUBLE
from station.floor.anywhere.acts import TellHealth
from station.floor.office.health import show_pc
from station.floor.office.work import OfficeHand, OwnPc
from station.ledger.ledger import Ledger
from station.queries.health import LOW_MB
from station.shop.acts import Act
from station.shop.facts import Shop, Station
from station.shop.file_requests import LookAtPc
from station.shop.rooms import Took
from station.shop.times import is_near

AGAIN = 4 * 3600  # seconds until it is told again though nothing has changed


class Health:
    """What one PC tells of itself."""

    def __init__(self, ledger: Ledger, clock: Callable[[], str], ids: Callable[[], str]) -> None:
        self._ledger, self._clock, self._ids = ledger, clock, ids
        self._looked = ""  # the minute in which it was looked whether anything has changed

    def step(self) -> None:
        """Tells how this PC is where that is news; looks once a minute."""
        now = self._clock()
        if now[:16] == self._looked or self._ledger.view.get(Shop, "shop") is None:
            return
        self._looked = now[:16]
        told, args = self._ledger.view.get(Station, self._ledger.station), self.look()
        if told is None or not is_near(told.seen, now, AGAIN) or _is_news(told, args):
            station = self._ledger.station
            self._ledger.record(
                Act(
                    id=self._ids(),
                    kind=args.kind,
                    at=now,
                    station=station,
                    subject=f"station/{station}",
                    args=args,
                )
            )

    def look_at_pc(self, _request: LookAtPc, hand: OfficeHand) -> Took:
        """Tells at once how this PC is, and shows it."""
        self.step()
        return show_pc(hand, self.look_here(), self._ledger.view)

    def look_here(self) -> OwnPc:
        """Looks how this PC is, for who stands at it."""
        now, ledger = self.look(), self._ledger
        return OwnPc(version=now.version, free_mb=now.free_mb, backup_at=now.backup_at,
                     newest_at=ledger.newest_at(), entries=ledger.count())  # fmt: skip

    def look(self) -> TellHealth:
        """Looks how this PC is."""
        newest = self._ledger.find_backup(self._clock())
        pins = read_wrong_pins(self._ledger, MANY)
        held, held_at = self._ledger.held
        return TellHealth(
            version=VERSION,
            unshared=self._ledger.not_shared(),
            free_mb=shutil.disk_usage(self._ledger.path.parent).free // 10**6,
            backup_at=newest.at if newest else "",
            trouble=self._ledger.local(TROUBLE) or "",
            wrong_pins=pins.number,
            pins_at=pins.at,
            held=held,
            held_at=held_at,
            database=self._ledger.database,
            older_at=self._ledger.older_at,
        )


def _is_news(told: Station, now: TellHealth) -> bool:
    """Tells whether anything is other than was told, but for what always changes."""
    was = (told.version, told.backup_at, told.trouble, told.pins_at, told.held_at,
           told.database, told.older_at)  # fmt: skip
    is_ = (now.version, now.backup_at, now.trouble, now.pins_at, now.held_at,
           now.database, now.older_at)  # fmt: skip
    return was != is_ or (told.free_mb < LOW_MB) != (now.free_mb < LOW_MB)
