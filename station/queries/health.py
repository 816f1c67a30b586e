"""Questions about the PCs of the shop: what is not well with them, as each told last."""

from datetime import datetime, timedelta
from typing import NamedTuple

from station.shop.facts import Station
from station.shop.views import View
from station.shop.words import Say, day, moment, say

MOST = 200  # stations
LOW_MB = 1000  # of a disk that is nearly full: a year of work takes a few hundred
BACKUP_DAYS = 3  # since the newest backup: a weekend and an evening
SILENT = timedelta(days=1)  # behind the station that told last
HELD_TOLD = timedelta(days=7)  # so long it is told that a station held sharing up
COPY_TOLD = timedelta(days=7)  # so long it is told that a station went on from an older folder
GIVEN_UP = timedelta(days=30)  # silent for longer: that PC is not used any more
TRIED = timedelta(days=1)  # so long it is told that many PINs were wrong


class Trouble(NamedTuple):
    """What is not well, in words, and since when; empty: now."""

    words: Say
    since: str = ""


def list_stations(view: View) -> tuple[Station, ...]:
    """Lists the stations that told how they are, by number."""
    return view.shelf(Station, "all", MOST)


def list_troubles(view: View) -> tuple[Trouble, ...]:
    """Lists what is not well with the shop's PCs, the gravest first."""
    stations = list_stations(view)
    own = (t for s in stations for t in _find_own(s, stations))
    shops = (_find_held(stations), _find_no_backup(stations), _find_old_database(stations))
    found = (*shops, *own)
    return tuple(trouble for trouble in found if trouble)


def _find_held(stations: tuple[Station, ...]) -> Trouble | None:
    """Finds that a station held everybody's sharing up; each PC tells of it."""
    told = max(stations, key=lambda s: s.held_at, default=None)
    newest = max((station.seen for station in stations), default="")
    if told is None or not told.held_at or _gone(told.held_at, newest) > HELD_TOLD:
        return None
    words = say("Station {id} held sharing up, {at}: is its password in wrong hands?",
                id=told.held, at=moment(told.held_at))  # fmt: skip
    return Trouble(words, told.held_at)


def _find_no_backup(stations: tuple[Station, ...]) -> Trouble | None:
    """Finds that no PC has a backup of the last days; each has the whole history."""
    if not stations:
        return None
    newest = max(station.backup_at for station in stations)
    seen = max(station.seen for station in stations)
    if not newest:
        return Trouble(say("There is no backup yet"))
    if _count_days(newest, seen) <= BACKUP_DAYS:
        return None
    return Trouble(say("There is no backup since {day}", day=day(newest)), newest)


def _find_old_database(stations: tuple[Station, ...]) -> Trouble | None:
    """Finds that the shop's database lacks what came with a newer program; the newest word counts.

    It takes more from a stolen password than it has to, and nothing else would tell.
    """
    heard = [station for station in stations if station.database]
    told = max(heard, key=lambda s: s.seen, default=None)
    return Trouble(OLD_DATABASE, told.seen) if told and told.database == "old" else None


OLD_DATABASE = say("The shop's database is too old: its owner types station update-shop URL")


def _find_own(station: Station, stations: tuple[Station, ...]) -> tuple[Trouble | None, ...]:
    """Finds what is not well with one PC; nothing of one that was given up.

    One that has acts which nobody else has is never given up.
    """
    newest = max(other.seen for other in stations)
    if not station.unshared and _gone(station.seen, newest) > GIVEN_UP:
        return ()
    return (_find_full(station), _find_failed(station), _find_tries(station, stations),
            _find_copy(station, newest), _find_silent(station, stations),
            _find_older(station, stations))  # fmt: skip


def is_full(station: Station) -> bool:
    """Whether the disk of a PC is nearly full."""
    return bool(station.seen) and station.free_mb < LOW_MB


def is_silent(station: Station, stations: tuple[Station, ...]) -> bool:
    """Whether a PC told nothing for a day on which another did; all rest on Sundays."""
    return _gone(station.seen, max(other.seen for other in stations)) > SILENT


def is_older(station: Station, stations: tuple[Station, ...]) -> bool:
    """Whether the program of a PC is older than that of another."""
    newest = _find_newest(stations)
    return _read_version(station.version) < _read_version(newest)


def _find_newest(stations: tuple[Station, ...]) -> str:
    return max((other.version for other in stations), key=_read_version)


def _find_full(station: Station) -> Trouble | None:
    if not is_full(station):
        return None
    return Trouble(
        say(
            "Station {id}: the disk is nearly full, {n} MB left", id=station.id, n=station.free_mb
        ),
        station.seen,
    )


def _find_failed(station: Station) -> Trouble | None:
    if not station.trouble:
        return None
    words = say("Station {id} makes no backup: {why}", id=station.id, why=station.trouble)
    return Trouble(words, station.seen)


def _find_tries(station: Station, stations: tuple[Station, ...]) -> Trouble | None:
    """Finds that somebody tried a PIN more often than a slip of the finger explains."""
    newest = max(other.seen for other in stations)
    if not station.pins_at or _gone(station.pins_at, newest) > TRIED:
        return None
    words = say("Station {id}: {n} wrong PINs, the newest of {at}", id=station.id,
                n=station.wrong_pins, at=moment(station.pins_at))  # fmt: skip
    return Trouble(words, station.pins_at)


def _find_copy(station: Station, newest: str) -> Trouble | None:
    """Finds that a PC did not know its own newest acts: it was put back, or is there twice."""
    if not station.older_at or _gone(station.older_at, newest) > COPY_TOLD:
        return None
    words = say("Station {id} went on without its own work of {at}: an older folder, or two PCs "
                "with one?", id=station.id, at=moment(station.older_at))  # fmt: skip
    return Trouble(words, station.older_at)


def _find_silent(station: Station, stations: tuple[Station, ...]) -> Trouble | None:
    if not is_silent(station, stations):
        return None
    words = say("Station {id} is silent since {day}", id=station.id, day=day(station.seen))
    if station.unshared:
        words = say("{words}: {n} not shared", words=words, n=station.unshared)
    return Trouble(words, station.seen)


def _find_older(station: Station, stations: tuple[Station, ...]) -> Trouble | None:
    if not is_older(station, stations):
        return None
    newest = _find_newest(stations)
    words = say("Station {id}: its program {old} is older than {new}", id=station.id,
                old=station.version, new=newest)  # fmt: skip
    return Trouble(words, station.seen)


def _read_version(text: str) -> tuple[int, ...]:
    return tuple(int(part) for part in text.split(".") if part.isdecimal())


def _gone(since: str, until: str) -> timedelta:
    if not since or not until:
        return timedelta()
    return datetime.fromisoformat(until) - datetime.fromisoformat(since)


def _count_days(since: str, until: str) -> int:
    return _gone(f"{since[:10]}T00:00:00", f"{until[:10]}T00:00:00").days
