"""The hours that are worked: when so many minutes of work are over."""

from datetime import datetime, time, timedelta
from typing import NamedTuple


class Hours(NamedTuple):
    """From when to when it is worked on these days of the week (Monday is 0); no breaks."""

    starts: str  # "07:00"
    ends: str
    weekdays: tuple[int, ...]

    @property
    def minutes(self) -> float:
        """Minutes of a worked day."""
        return _read_minutes(self.ends) - _read_minutes(self.starts)

    def add_minutes(self, at: str, minutes: float) -> str:
        """Adds minutes of work to a time; what does not fit today goes on the next worked day."""
        now = datetime.fromisoformat(at)
        if not self.weekdays or self.minutes <= 0:
            return _write(now + timedelta(minutes=minutes))
        moment, left = self._first_worked(now), minutes
        while left > (rest := self._left_on(moment)):
            left -= rest
            moment = self._first_worked(self._at(moment + timedelta(days=1), self.starts))
        return _write(moment + timedelta(minutes=left))

    def count_days(self, since: str, until: str) -> float:
        """Counts the worked days from one time to a later one."""
        moment, end, worked = datetime.fromisoformat(since), datetime.fromisoformat(until), 0.0
        if not self.weekdays or self.minutes <= 0:
            return max(0.0, (end - moment).total_seconds() / 86_400)
        while (moment := self._first_worked(moment)) < end:
            stop = min(end, self._at(moment, self.ends))
            worked += (stop - moment).total_seconds() / 60
            moment = self._at(moment + timedelta(days=1), self.starts)
        return worked / self.minutes

    def _first_worked(self, moment: datetime) -> datetime:
        """Finds the first worked moment from this one on."""
        if moment.weekday() in self.weekdays and moment < self._at(moment, self.ends):
            return max(moment, self._at(moment, self.starts))
        day = moment + timedelta(days=1)
        while day.weekday() not in self.weekdays:
            day += timedelta(days=1)
        return self._at(day, self.starts)

    def _left_on(self, moment: datetime) -> float:
        return (self._at(moment, self.ends) - moment).total_seconds() / 60

    @staticmethod
    def _at(day: datetime, clock: str) -> datetime:
        return datetime.combine(day, time.fromisoformat(clock))


def _read_minutes(clock: str) -> float:
    return int(clock[:2]) * 60 + int(clock[3:5])


def _write(moment: datetime) -> str:
    return moment.replace(microsecond=0).isoformat(timespec="seconds")
