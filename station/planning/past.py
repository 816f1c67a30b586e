"""What the shop went through so far: pieces packed by day, pieces that passed or were lost.

It is read from the sums by hour, an hour after the other, for six weeks of a large shop are more
than a screen can wait for. Today is left out: it is not over.
"""

from collections.abc import Callable, Iterator, Sequence
from datetime import date, datetime, timedelta
from typing import NamedTuple

from station.queries.settings import find_shop
from station.shop.moves import NO_PIECES
from station.shop.views import Passed, View

DAYS = 42  # of history that is looked at
LEAST_ON = 2  # days of a weekday that work was done on, until it counts as worked
USUAL = (0, 1, 2, 3, 4)  # worked days where nothing is known yet; Monday is 0

# what passes each step and what is lost in it, by kinds of place; the way back counts against it
GOOD = {
    ("cut", "popping"): "cut",
    ("popping", "trimming"): "popping",
    ("trimming", "rack"): "trimming",
    ("trimming", "packing"): "trimming",
    ("rework", "rack"): "trimming",
    ("rework", "packing"): "trimming",
}
LOST = {
    (place, end): step
    for place, step in (
        ("cut", "cut"),
        ("popping", "popping"),
        ("trimming", "trimming"),
        ("rework", "trimming"),
    )
    for end in ("spoiled", "missing")
}


class PartPast(NamedTuple):
    """What a part went through: pieces packed by day, pieces by step that went on or were lost."""

    packed: dict[str, int]
    good: dict[str, int]
    lost: dict[str, int]


class ShopPast(NamedTuple):
    """The past of every part by its id, and the days that were worked, oldest first.

    `through` are the pieces of all parts that a step got through, lost ones too, by day.
    """

    parts: dict[str, PartPast]
    days: tuple[str, ...]
    through: dict[str, dict[str, int]]

    @property
    def weekdays(self) -> tuple[int, ...]:
        """The days of the week that are worked on."""
        counts: dict[int, int] = {}
        for day in self.days:
            weekday = date.fromisoformat(day).weekday()
            counts[weekday] = counts.get(weekday, 0) + 1
        return tuple(sorted(day for day, n in counts.items() if n >= LEAST_ON)) or USUAL

    def list_through(self, step: str) -> tuple[int, ...]:
        """Lists what a step got through on each of the days that were worked."""
        days = self.through.get(step, {})
        return tuple(max(0, days.get(day, 0)) for day in self.days)


class PastReading:
    """The reading of the past up to a worked day, in as many slices as it takes.

    `night` is the hour at which a worked day is over; what a night brings belongs to the day on
    which it began.
    """

    def __init__(self, view: View, now: str) -> None:
        self.night = find_night(view)
        self.today = find_day(now, self.night)
        self._parts: dict[str, PartPast] = {}
        self._days: set[str] = set()
        self._through: dict[str, dict[str, int]] = {}
        self._hours = _list_hours(self.today, self.night)
        self._over = False

    def is_of(self, view: View, now: str) -> bool:
        """Whether it is the reading that a shop wants now."""
        night = find_night(view)
        return (self.night, self.today) == (night, find_day(now, night))

    def read_on(self, view: View, is_time_up: Callable[[], bool] = lambda: False) -> bool:
        """Reads hour after hour until the time is up; True once all is read."""
        while not self._over:
            day, hour = next(self._hours, ("", ""))
            self._over = not hour
            if hour:
                self._add(day, view.passed(hour, hour))
                if is_time_up():
                    return False
        return True

    def tell(self) -> ShopPast:
        """Tells what was read so far."""
        return ShopPast(self._parts, tuple(sorted(self._days)), self._through)

    def _add(self, day: str, passed: tuple[Passed, ...]) -> None:
        for p in passed:
            if p.part not in NO_PIECES:
                known = self._parts.setdefault(p.part, PartPast({}, {}, {}))
                _add_way(known, (p.frm, p.to), day, p.qty)
                _add_way(known, (p.to, p.frm), day, -p.qty)  # what was taken back
                self._add_through((p.frm, p.to), day, p.qty)
                self._add_through((p.to, p.frm), day, -p.qty)
                if p.to in ("pack", "popping"):
                    self._days.add(day)

    def _add_through(self, way: tuple[str, str], day: str, qty: int) -> None:
        if step := GOOD.get(way) or LOST.get(way):
            days = self._through.setdefault(step, {})
            days[day] = days.get(day, 0) + qty


def _add_way(known: PartPast, way: tuple[str, str], day: str, qty: int) -> None:
    if way == ("packing", "pack"):
        known.packed[day] = known.packed.get(day, 0) + qty
    for steps, counts in ((GOOD, known.good), (LOST, known.lost)):
        if step := steps.get(way):
            counts[step] = counts.get(step, 0) + qty


def find_night(view: View) -> int:
    """Finds the hour after midnight at which a night's work is over; 0: no night is worked."""
    shop = find_shop(view)
    begins, over = shop.day_starts, shop.day_ends
    return int(over[:2]) + (over[3:5] > "00") if over <= begins else 0


def find_day(now: str, night: int) -> str:
    """Finds the worked day that a time belongs to."""
    return (datetime.fromisoformat(now) - timedelta(hours=night)).date().isoformat()


def list_dates(days: Sequence[str], night: int) -> list[str]:
    """Lists the dates of what was done on these worked days, the newest first."""
    later = [_add_day(day) for day in days] if night else []
    return sorted({*days, *later}, reverse=True)


def _add_day(day: str) -> str:
    return (date.fromisoformat(day) + timedelta(days=1)).isoformat()


def _list_hours(today: str, night: int) -> Iterator[tuple[str, str]]:
    """Lists the worked days before today and their hours, oldest first."""
    until = datetime.fromisoformat(today) + timedelta(hours=night)
    for back in range(DAYS, 0, -1):
        begins = until - timedelta(days=back)
        for hour in range(24):
            moment = begins + timedelta(hours=hour)
            yield begins.date().isoformat(), moment.isoformat()[:13]


def read_past(view: View, now: str) -> ShopPast:
    """Reads all of it at once: where no screen waits."""
    reading = PastReading(view, now)
    reading.read_on(view)
    return reading.tell()
