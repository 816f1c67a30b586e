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
from demo_db.content import founding, stock
from demo_db.hands import Break, Hands, Process, attend, before, rest, run, start
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
BREAKS = ((2.5, 0.25), (6.0, 0.5))  # when each begins, and how long it is, in hours
ORDERS_A_DAY = 58
EARLIER = 8  # of the orders that are in the shop now, those that came in yesterday
LAST = timedelta(minutes=12)  # before now, what two routers do is settled
STOPPED, CUTTING, FREE = "4", "3", "2"  # how three of the routers stand now
# How many times its mark the rack is filled to, and the least work that is released, yesterday
# and today: a fair is near, and every router is busy.
FAIR = {2: (6, 3500), 1: (12, 4200)}
# On the last days these are made for it besides: so many of a part.
PLENTY_DAYS, PLENTY = 5, {"051": 200, "061": 120}
CAN_WAIT = ("015", FREE, 3)  # and too many of them are queued: a cut file, a router, sheets
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
    """Mondays to Fridays in so many days before today, and today."""
    before = (today - timedelta(days=n) for n in range(days, 0, -1))
    return [*(d for d in before if d.weekday() < 5), today]


def breaks(opens: datetime) -> tuple[Break, ...]:
    """The breaks of a day that starts then."""
    begins = ((opens + timedelta(hours=at), timedelta(hours=long)) for at, long in BREAKS)
    return tuple((at, at + long) for at, long in begins)


def _history(
    ledger: Ledger, now: datetime, rng: Random, progress: Progress | None, days: int
) -> None:
    """Founds the shop, then works day after day up to now."""
    opens, closes = hours(now)
    dates = working_days(now.date(), days)
    pauses = tuple((a.time(), b.time()) for a, b in breaks(datetime.combine(dates[0], opens)))
    first = datetime.combine(dates[0], opens) - timedelta(minutes=20)
    found(ledger, founding(first, now, (opens, closes), pauses), first.isoformat(), stock=stock(),
         ids=lambda: f"{rng.getrandbits(64):016x}")  # fmt: skip
    hands = Hands(ledger, rng, first, first)
    week = Week(hands, now)
    for n, day in enumerate(dates):
        hands.at = max(hands.at, datetime.combine(day, opens))
        hands.ends = datetime.combine(day, closes)
        hands.breaks = breaks(datetime.combine(day, opens))
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
            self.office.ahead, self.office.least = FAIR[left]
        if left <= WITHOUT_DAYS:
            self.office.without = frozenset({CARDS_FILE})
        if left <= PLENTY_DAYS:
            self.office.more = PLENTY
        hands.planned += PLANNED.get(left, ())
        people = [*self._orders(left), self.office.work(), *benches(hands)]
        processes = [rest(hands, one) for one in people]
        for router in routers(hands):
            free_by = self.now if today and router == FREE else None
            day = attend(hands, RouterDay(hands, router, free_by).run())
            kept = today and router in (STOPPED, CUTTING)
            processes.append(before(hands, day, self.now - LAST) if kept else day)
        begun = start(hands, processes)
        if not today:
            run(hands, begun, hands.ends + timedelta(minutes=30))
            return
        going = run(hands, begun, self.now - LAST)
        self._last_minutes()
        run(hands, going, self.now)

    def _last_minutes(self) -> None:
        """Router 4 stops for its bit; router 3 has a sheet on that lasts past now.

        Router 2 stands free with work in its queue.
        """
        self.office.release()
        self.office.fill()
        self.office.release_early(*CAN_WAIT)
        worries(self.hands)
        lack_cards(self.hands, self.office, self.now)
        RouterDay(self.hands, STOPPED).stand_still("31")
        RouterDay(self.hands, CUTTING).keep_cutting(self.now)

    def _orders(self, left: int) -> Iterator[Process]:
        """Orders from chance at first; the ones still in the shop on the last two days."""
        if left > 2:
            yield self.office.orders(ORDERS_A_DAY)
            return
        count = EARLIER if left == 2 else len(self.live)
        if left == 2:
            yield self.office.orders(ORDERS_A_DAY - EARLIER)
        chosen, self.live = self.live[:count], self.live[count:]
        yield self._enter(chosen, self.hands.left() / 2)

    def _enter(self, chosen: list[Order], minutes: float) -> Process:
        for order in chosen:
            yield minutes / (len(chosen) + 1)
            self.office.enter(order)
