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

MOST_SHEETS = 6
QUEUED = 4  # batches that wait at a router before another is released to it
IN_WORK = ("popping", "trimming", "rework", "rack", "held")
LIKED = ("let it go on", "drop it")  # ways of settling that are taken where they are offered


class Office:
    """The supervisor's work, day after day."""

    def __init__(self, hands: Hands, numbers: Iterator[str]) -> None:
        self.hands, self.numbers = hands, numbers
        self.live: set[str] = set()  # batches not yet wholly through the shop
        self.made: dict[str, dict[str, int]] = {}  # what a sheet of each revision makes
        self.ahead = 2  # how many times its mark the rack is filled to
        self.without: frozenset[str] = frozenset()  # cut files that are not released now

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
        """Some hours ahead, or in the next days."""
        days = self.hands.rng.choice((1, 1, 1, 2, 2, 3))
        hour = self.hands.rng.choice((9, 11, 13, 15))
        due = (self.hands.at + timedelta(days=days)).replace(hour=hour, minute=0, second=0)
        return due + timedelta(days=1) if due.weekday() == 6 else due

    def order(self, due: datetime) -> None:
        """One order from the fixed source of chance."""
        number = next(self.numbers)
        self.enter(new_order(number, due, self.hands.rng))

    def work(self) -> Process:
        """Looks at need, releases batches, settles concerns."""
        yield 1
        while self.hands.left() > 5:
            self.release()
            self._settle()
            self._cancel()
            yield self.hands.minutes(25, 45)

    # --- what is cut

    def release(self) -> None:
        """Batches for what is wanted most, as long as routers have room."""
        short = self._short()
        for router in ("1", "2", "3", "4", "5"):
            queue = self.hands.view.shelf(Batch, f"queue/{router}")
            if sum(b.sheets - b.cut for b in queue if not b.holds) < QUEUED:
                self._release_to(router, short)

    def fill(self) -> None:
        """Something for every router that has nothing to cut: what falls below twice its mark."""
        short = self._short()
        for part in self._parts():
            short[part.id] += 4 * part.mark
        for router in ("1", "2", "3", "4", "5"):
            if not self.hands.view.shelf(Batch, f"queue/{router}"):
                self._release_to(router, short)

    def _release_to(self, router: str, short: Counter[str]) -> None:
        """The file that fills the largest gap, in sheets of cutting time."""
        best, most = None, 0.0
        for revision in self._files(router):
            sheets = _worth(self._makes(revision), short)
            if sheets > most:
                best, most = revision, sheets
        if best is None or most < 0.3:
            return
        sheets = max(2, min(MOST_SHEETS, ceil(most)))
        args = ReleaseBatch(
            cut_file=best.cut_file,
            router=router,
            sheets=sheets,
            due=self._first_due(best),
            why=self._why(best, short),
        )
        released = self.hands.do(BOSS, f"cutfile/{best.cut_file}", args, numbers=("batch",))
        if released.ok:
            self.live.update(f.id for f in released.answer.sets)
            for part, n in self._makes(best).items():
                short[part] -= n * sheets

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

    def _files(self, router: str) -> Iterator[Revision]:
        """What this router may cut."""
        for number in NAMES:
            cut_file = self.hands.view.get(CutFile, number)
            if cut_file is None or number in self.without:
                continue
            revision = find_approved(self.hands.view, cut_file)
            if revision and (not revision.routers or router in revision.routers):
                yield revision

    def _short(self) -> Counter[str]:
        """Pieces wanted by orders and marks, less what lies or is on its way."""
        view, short = self.hands.view, Counter[str]()
        for part in self._parts():
            short[part.id] += self.ahead * part.mark
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
    return sheets * share**4  # what nobody wants fills the rack: it weighs heavily


def routers(hands: Hands) -> tuple[str, ...]:
    """Every router's id."""
    return tuple(r.id for r in hands.view.shelf(Router, "all"))
