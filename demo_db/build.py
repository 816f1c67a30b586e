"""Builds the demo shop: six weeks of work through the real rules, today half done.

The history is dated back from `now`. Every working day has the same hours, laid around
`now` so that about half of today's work is done when the shop is opened.
"""

from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import date, datetime, time, timedelta
from pathlib import Path
from random import Random

from demo_db.benches import benches, worries
from demo_db.content import founding, sheets_in_store
from demo_db.hands import Hands, Process, before, run, start
from demo_db.lacking import CARDS_FILE, WITHOUT_DAYS, lack_cards
from demo_db.loading import RouterDay
from demo_db.office import Office, routers
from demo_db.orders import FIRST_NUMBER, numbers, orders
from station.bootstrap import load_rules
from station.bootstrap import seed_shop as found
from station.ledger.ledger import Ledger
from station.ledger.renaming import replace_file
from station.shop.facts import Order

Progress = Callable[[int, int], None]  # days done, days in all
DAYS = 42
HOURS = 9.0
ORDERS_A_DAY = 48
LAST = timedelta(minutes=12)  # before now, what two routers do is settled
STOPPED, CUTTING, FREE = "4", "3", "2"  # how three of the routers stand now
# How many times its mark the rack is filled to, yesterday and today: a fair is near, and
# every router is busy.
FAIR = {2: 4, 1: 12}
# What goes wrong for certain, by days before the end: the first sheet that it can happen to.
PLANNED = {
    11: ("bit", "paper"), 10: ("short", "split"), 9: ("vacuum", "wait"), 8: ("moved", "thickness"),
    7: ("wrong sheet", "hold"), 6: ("fault", "first-off"), 5: ("wrong places", "cancel"),
    4: ("vacuum",), 3: ("bit",), 2: ("paper",), 1: ("bit",),
}  # fmt: skip


def build(
    path: Path,
    now: datetime,
    seed: int = 7,
    progress: Progress | None = None,
    days: int = DAYS,
) -> None:
    """Writes the demo shop's history into a new file at `path`.

    `progress` hears of each finished day. The file appears only when all is done. Raises
    FileExistsError where there is one already.
    """
    if path.exists():
        raise FileExistsError(path)
    now = now.replace(microsecond=0)
    building = path.with_name(path.name + ".building")
    _remove(building)
    with closing(Ledger(building, load_rules())) as ledger:
        ledger.hurry(on=True)
        _history(ledger, now, Random(seed), progress, days)
        ledger.hurry(on=False)
    replace_file(building, path)
    _remove(building)  # its note has the name of before


def _remove(building: Path) -> None:
    """Removes what an attempt left behind."""
    for ending in ("", "-wal", "-shm", ".noted"):
        building.with_name(building.name + ending).unlink(missing_ok=True)


def hours(now: datetime) -> tuple[time, time]:
    """When the demo shop's days start and end: around `now`, on half hours."""
    middle = now.hour + now.minute / 60
    start = min(max(round(2 * (middle - HOURS / 2)) / 2, 0.0), 23.5 - HOURS)
    return _clock(start), _clock(start + HOURS)


def _clock(hour: float) -> time:
    return time(int(hour), round(hour % 1 * 60))


def working_days(today: date, days: int) -> list[date]:
    """Every day but Sundays in so many days before today, and today."""
    before = (today - timedelta(days=n) for n in range(days, 0, -1))
    return [*(d for d in before if d.weekday() != 6), today]


def _history(
    ledger: Ledger, now: datetime, rng: Random, progress: Progress | None, days: int
) -> None:
    """Founds the shop, then works day after day up to now."""
    opens, closes = hours(now)
    dates = working_days(now.date(), days)
    first = datetime.combine(dates[0], opens) - timedelta(minutes=20)
    named = (opens.isoformat("minutes"), closes.isoformat("minutes"))
    found(ledger, founding(first, now, named), first.isoformat(), stock=sheets_in_store(),
         ids=lambda: f"{rng.getrandbits(64):016x}")  # fmt: skip
    hands = Hands(ledger, rng, first, first)
    week = Week(hands, now)
    for n, day in enumerate(dates):
        hands.at = max(hands.at, datetime.combine(day, opens))
        hands.ends = datetime.combine(day, closes)
        week.day(left=len(dates) - n)
        if progress:
            progress(n + 1, len(dates))


class Week:
    """The shop's days in turn."""

    def __init__(self, hands: Hands, now: datetime) -> None:
        self.hands, self.now = hands, now
        old = iter(numbers(FIRST_NUMBER - 2200, 2100))
        self.office = Office(hands, old)
        self.live = list(orders(now))

    def day(self, left: int) -> None:
        """One day; `left` counts it and those after it."""
        hands = self.hands
        today = left == 1
        if left <= 2:
            self.office.ahead = FAIR[left]
        if left <= WITHOUT_DAYS:
            self.office.without = frozenset({CARDS_FILE})
        hands.planned += PLANNED.get(left, ())
        processes = [*self._orders(left), self.office.work()]
        for router in routers(hands):
            free_by = self.now if today and router == FREE else None
            day = RouterDay(hands, router, free_by).run()
            kept = today and router in (STOPPED, CUTTING)
            processes.append(before(hands, day, self.now - LAST) if kept else day)
        processes += benches(hands)
        begun = start(hands, processes)
        if not today:
            run(hands, begun, hands.ends + timedelta(minutes=30))
            return
        rest = run(hands, begun, self.now - LAST)
        self._last_minutes()
        run(hands, rest, self.now)

    def _last_minutes(self) -> None:
        """Router 4 stops for its bit; router 3 has a sheet on that lasts past now.

        Router 2 stands free with work in its queue.
        """
        self.office.release()
        self.office.fill()
        worries(self.hands)
        lack_cards(self.hands, self.office, self.now)
        RouterDay(self.hands, STOPPED).stand_still("31")
        RouterDay(self.hands, CUTTING).keep_cutting(self.now)

    def _orders(self, left: int) -> Iterator[Process]:
        """Orders from chance at first; the ones still in the shop on the last two days."""
        if left > 2:
            yield self.office.orders(ORDERS_A_DAY)
            return
        count = 8 if left == 2 else len(self.live)
        chosen, self.live = self.live[:count], self.live[count:]
        yield self._enter(chosen, self.hands.left() / 2)

    def _enter(self, chosen: list[Order], minutes: float) -> Process:
        for order in chosen:
            yield minutes / (len(chosen) + 1)
            self.office.enter(order)
