"""The hours that are worked: when so many minutes of work are over."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import NamedTuple

MIDNIGHT = 24 * 60.0


class Hours(NamedTuple):
    """From when to when it is worked on these days of the week (Monday is 0).

    In `breaks` and on `closed` days nobody works. A night ends on the day after and belongs to the
    one on which it begins; where both hours are the same it is worked round the clock.
    """

    starts: str  # "07:00"
    ends: str
    weekdays: tuple[int, ...]
    breaks: tuple[tuple[str, str], ...] = ()
    closed: tuple[str, ...] = ()  # "2026-12-24"

    @property
    def minutes(self) -> float:
        """Minutes of a worked day."""
        return sum(end - start for start, end in self.list_spans())

    def list_spans(self) -> tuple[tuple[float, float], ...]:
        """Lists the spans of a day that are worked, minutes after midnight."""
        at, end = _read_minutes(self.starts), _read_minutes(self.ends)
        breaks = [(_read_minutes(begins), _read_minutes(over)) for begins, over in self.breaks]
        if end <= at:
            breaks = [(b + MIDNIGHT, o + MIDNIGHT) if b < at else (b, o) for b, o in breaks]
            end += MIDNIGHT
        spans = []
        for begins, over in sorted(breaks):
            stops = min(end, begins)
            if at < stops:
                spans.append((at, stops))
            at = max(at, over)
        return (*spans, (at, end)) if at < end else tuple(spans)

    def add_minutes(self, at: str, minutes: float) -> str:
        """Adds minutes of work to a time; what does not fit today goes on the next worked day."""
        now, left = datetime.fromisoformat(at), minutes
        for start, end in self._list_from(now):
            if left <= (rest := _count_minutes(start, end)):
                return _write(start + timedelta(minutes=left))
            left -= rest
        return _write(now + timedelta(minutes=minutes))

    def count_days(self, since: str, until: str) -> float:
        """Counts the worked days from one time to a later one."""
        moment, over, worked = datetime.fromisoformat(since), datetime.fromisoformat(until), 0.0
        for start, end in self._list_from(moment):
            if start >= over:
                return worked / self.minutes
            worked += _count_minutes(start, min(end, over))
        return max(0.0, _count_minutes(moment, over) / MIDNIGHT)

    def _list_from(self, moment: datetime) -> Iterator[tuple[datetime, datetime]]:
        """Lists the worked spans from a moment on; none where nothing is ever worked."""
        spans, day = self.list_spans(), datetime.combine(moment, datetime.min.time())
        day -= timedelta(days=1)  # whose night may not be over
        while spans and self.weekdays:
            if day.weekday() in self.weekdays and day.date().isoformat() not in self.closed:
                for start, end in spans:
                    begins, over = (day + timedelta(minutes=m) for m in (start, end))
                    if over > moment:
                        yield max(begins, moment), over
            day += timedelta(days=1)


def _count_minutes(start: datetime, end: datetime) -> float:
    return (end - start).total_seconds() / 60


def _read_minutes(clock: str) -> float:
    return int(clock[:2]) * 60 + int(clock[3:5])


def _write(moment: datetime) -> str:
    return moment.replace(microsecond=0).isoformat(timespec="seconds")
