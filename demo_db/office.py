"""The demo shop's office: orders come in, batches are released, what needs a look is settled."""

from collections import Counter
from collections.abc import Iterator
from datetime import datetime, timedelta
from math import ceil

from demo_db.hands import BOSS, Hands, Process
from demo_db.orders import needs, new_order
from demo_db.sheets import NAMES
from station.floor.anywhere.acts import ReleaseHold
from station.floor.office.acts import CancelOrder, SetFact
from station.floor.shared.queue import ReleaseBatch
from station.floor.shared.settling import SettleConcern
from station.queries.batches import find_approved, find_revision
from station.shop.facts import Batch, Concern, CutFile, Fact, Order, Part, Revision, Router
from station.shop.moves import head
from station.shop.plain import to_plain

ROUTERS = ("1", "2", "3", "4", "5")
ALONE = ("5",)  # cuts what others cannot, so it gets what they can last
LITTLE = 0.3  # sheets that are not worth a batch
MOST_SHEETS, MOST_PIECES = 6, 480  # of a batch
# Work is counted in pieces: a sheet is as much as so many of them, besides its own.
A_SHEET = 55
WORK = 1.4  # of a usual sheet, against its pieces alone
LEAST, MOST = 2900, 3300  # work that is released a day
AHEAD = 0.25  # of a day's work that waits at the routers
QUEUED = 4  # batches that wait at a router before another is released to it
IN_WORK = ("popping", "trimming", "rework", "rack", "held")
LIKED = ("let it go on", "drop it")  # ways of settling that are taken where they are offered


class Office:
    """The supervisor's work, day after day."""

    def __init__(self, hands: Hands, numbers: Iterator[str]) -> None:
        self.hands, self.numbers = hands, numbers
        self.opened = 1.0  # minutes of this day
        self.live: set[str] = set()  # batches not yet wholly through the shop
        self.made: dict[str, dict[str, int]] = {}  # what a sheet of each revision makes
        self.least = LEAST  # work that is released a day, so that one day is like another
        self.level = 0.0  # work that is released today
        self.released = 0.0  # and was so far, with what was too much on the days before
        self.served = dict.fromkeys(ROUTERS, 0)  # sheets that each router was given
        self.ahead = 4  # how many times its mark the rack is filled to
        self.without: frozenset[str] = frozenset()  # cut files that are not released now
        self.more: dict[str, int] = {}  # pieces of a part that are to lie there besides

    def enter(self, fact: Fact) -> None:
        """Sets a fact."""
        self.hands.do(BOSS, fact.key, SetFact(of=fact.kind, value=to_plain(fact)))

    def orders(self, count: int) -> Process:
        """Orders that come in over a day."""
        hands = self.hands
        gap = hands.left() / (count + 1)
        for _ in range(count):
            yield gap * hands.minutes(0.5, 1.4)
            if hands.left() < 20:
                return
            self.order(self._due())

    def _due(self) -> datetime:
        """Some hours ahead, or in the next days; on Monday instead of a weekend."""
        days = self.hands.rng.choice((1, 1, 1, 2, 2, 3))
        hour = self.hands.rng.choice((9, 11, 13, 15))
        due = (self.hands.at + timedelta(days=days)).replace(hour=hour, minute=0, second=0)
        return due + timedelta(days=7 - due.weekday() if due.weekday() > 4 else 0)

    def order(self, due: datetime) -> None:
        """One order from the fixed source of chance."""
        number = next(self.numbers)
        self.enter(new_order(number, due, self.hands.rng))

    def work(self) -> Process:
        """Looks at need, releases batches, settles concerns."""
        yield 1
        self._plan_day()
        while self.hands.left() > 5:
            self.release()
            self._settle()
            self._cancel()
            yield self.hands.minutes(25, 45)

    # --- what is cut

    def release(self) -> None:
        """Batches for what is wanted most, as long as routers have room and the day's level."""
        short = self._short()
        while self.released < self._level_now():
            if not self._release_one(short) and not self._release_one(self._ahead_of(short)):
                return

    def _release_one(self, short: Counter[str]) -> bool:
        """The file that is wanted most and may go to a router with room; False: there is none."""
        waits = {r: self._count_queued(r) for r in ROUTERS}
        free = sorted((r for r in ROUTERS if waits[r] < QUEUED),
                      key=lambda r: (waits[r], r in ALONE, self.served[r]))  # fmt: skip
        for revision in self._by_need(short):
            for router in free:
                if not revision.routers or router in revision.routers:
                    return self._release(revision, router, short)
        return False

    def _by_need(self, short: Counter[str]) -> list[Revision]:
        """Files worth cutting, the one first whose part lacks most, counted in its mark."""
        marks = {part.id: part.mark for part in self._parts()}
        found = []
        for revision in self._files():
            makes = self._makes(revision)
            need = max(short[p] / marks[p] for p in makes)
            if need > self.ahead or _worth(makes, short) > LITTLE:
                found.append((need, revision))
        return [r for _, r in sorted(found, key=lambda f: f[0], reverse=True)]

    def _plan_day(self) -> None:
        """So much is released today as orders and marks lack, within what the shop can do."""
        lacks = WORK * sum(n for n in self._short().values() if n > 0)
        self.opened = self.hands.left()
        self.released = max(0, self.released - self.level)
        self.level = max(self.least, min(MOST, lacks))

    def _ahead_of(self, short: Counter[str]) -> Counter[str]:
        """What is short of some marks more."""
        more = Counter(short)
        for part in self._parts():
            more[part.id] += 4 * part.mark
        return more

    def _count_queued(self, router: str) -> int:
        """Sheets that wait at a router."""
        queue = self.hands.view.shelf(Batch, f"queue/{router}")
        return sum(b.sheets - b.cut for b in queue if not b.holds)

    def _level_now(self) -> float:
        """Work that should be released by now, some hours ahead of the routers."""
        gone = 1 - self.hands.left() / self.opened
        return self.level * min(1.0, gone + AHEAD)

    def fill(self) -> None:
        """Something for every router that has nothing to cut, though little is short."""
        short = self._ahead_of(self._short())
        for router in ROUTERS:
            if not self.hands.view.shelf(Batch, f"queue/{router}"):
                fits = (r for r in self._by_need(short) if not r.routers or router in r.routers)
                if revision := next(fits, None):
                    self._release(revision, router, short)

    def release_early(self, cut_file: str, router: str, sheets: int) -> None:
        """A batch that nobody misses yet."""
        due = (self.hands.at + timedelta(days=5)).isoformat(timespec="seconds")
        args = ReleaseBatch(cut_file=cut_file, router=router, sheets=sheets, due=due,
                            why="for the fair")  # fmt: skip
        self.hands.do(BOSS, f"cutfile/{cut_file}", args, numbers=("batch",))

    def _release(self, revision: Revision, router: str, short: Counter[str]) -> bool:
        """A batch of as many sheets as are short; False: it was refused."""
        makes = self._makes(revision)
        pieces = sum(makes.values())
        wanted = ceil(max(short[p] / n for p, n in makes.items()))
        room = round((self.level - self.released) / (pieces + A_SHEET))
        sheets = min(max(2, min(MOST_SHEETS, wanted)), max(1, min(room, MOST_PIECES // pieces)))
        args = ReleaseBatch(
            cut_file=revision.cut_file,
            router=router,
            sheets=sheets,
            due=self._first_due(revision),
            why=self._why(revision, short),
        )
        released = self.hands.do(BOSS, f"cutfile/{revision.cut_file}", args, numbers=("batch",))
        if released.ok:
            self.live.update(f.id for f in released.answer.sets)
            for part, n in makes.items():
                short[part] -= n * sheets
            self.released += (pieces + A_SHEET) * sheets
            self.served[router] += sheets
        return released.ok

    def _why(self, revision: Revision, short: Counter[str]) -> str:
        """In words, for the queue at the router."""
        part = max(self._makes(revision), key=lambda p: short[p])
        known = self.hands.view.get(Part, part)
        return f"{max(0, short[part])} {known.name if known else part} short of orders and mark"

    def _first_due(self, revision: Revision) -> str:
        """When the first open order wants one of its parts."""
        makes = self._makes(revision)
        for order in self.hands.view.shelf(Order, "open", 200):
            if needs(order).keys() & makes.keys():
                return order.due
        return (self.hands.at + timedelta(days=2)).isoformat(timespec="seconds")

    def _makes(self, revision: Revision) -> dict[str, int]:
        """Pieces of each part on a sheet, counted once."""
        if revision.id not in self.made:
            self.made[revision.id] = revision.makes()
        return self.made[revision.id]

    def _files(self) -> Iterator[Revision]:
        """What may be cut now."""
        for number in NAMES:
            cut_file = self.hands.view.get(CutFile, number)
            if cut_file is None or number in self.without:
                continue
            if revision := find_approved(self.hands.view, cut_file):
                yield revision

    def _short(self) -> Counter[str]:
        """Pieces wanted by orders and marks, less what lies or is on its way."""
        view, short = self.hands.view, Counter[str]()
        for part in self._parts():
            short[part.id] += self.ahead * part.mark + self.more.get(part.id, 0)
            short[part.id] -= sum(h.qty for h in view.stock(place=f"rack/{part.id}"))
        for order in view.shelf(Order, "open", 300):
            short.update(needs(order))
            short.subtract({h.part: h.qty for h in view.stock(place=f"packing/{order.id}")})
        for batch in tuple(self.live):
            coming = self._coming(batch)
            short.subtract(coming)
            if not +coming:
                self.live.discard(batch)
        return short

    def _parts(self) -> Iterator[Part]:
        return iter(self.hands.view.shelf(Part, "all", 100))

    def _coming(self, id: str) -> Counter[str]:
        """Pieces of a batch still to be cut, or before the rack."""
        view = self.hands.view
        batch, coming = view.get(Batch, id), Counter[str]()
        for held in view.stock(batch=id):
            if head(held.place) in IN_WORK and head(held.place) != "rack":
                coming[held.part] += held.qty
        if batch and batch.state in ("queued", "cutting") and not batch.holds:
            revision = find_revision(view, batch)
            for part, n in self._makes(revision).items() if revision else ():
                coming[part] += n * (batch.sheets - batch.cut)
        return coming

    # --- what needs a look

    def _settle(self) -> None:
        """Concerns some hours old are settled, most of them."""
        hands = self.hands
        before = (hands.at - timedelta(hours=3)).isoformat(timespec="seconds")
        for concern in hands.view.shelf(Concern, "open"):
            if concern.since < before and hands.chance(0.8):
                liked = (c for c in LIKED if c in concern.choices)
                how = next(liked, concern.choices[0])
                if concern.what == "hold":
                    hands.do(BOSS, concern.about, ReleaseHold(), why="41")
                hands.do(BOSS, concern.key, SettleConcern(how=how, why="looked at"))

    def _cancel(self) -> None:
        """Now and then a customer calls an order off."""
        if not self.hands.fault("cancel", 0.03):
            return
        waiting = self.hands.view.shelf(Order, "open", 100)
        if len(waiting) > 6:
            self.hands.do(BOSS, self.hands.rng.choice(waiting[3:]).key, CancelOrder())


def _worth(makes: dict[str, int], short: Counter[str]) -> float:
    """Sheets that would be cut, less the share of their pieces that nobody wants."""
    sheets = max(short[p] / n for p, n in makes.items())
    if sheets <= 0:
        return 0.0
    wanted = sum(min(max(short[p], 0), n * sheets) for p, n in makes.items())
    share = wanted / (sheets * sum(makes.values()))
    return sheets * share**2  # what nobody wants fills the rack: it weighs heavily


def routers(hands: Hands) -> tuple[str, ...]:
    """Every router's id."""
    return tuple(r.id for r in hands.view.shelf(Router, "all"))
