"""The talk with the shop goes on beside the work: the network on a thread of its own.

The ledger is only touched in `step`, which the file's own thread calls often; it does a few
milliseconds of work, less than 50 where thousands of acts wait, so nothing stands between a scan
and its answer. One that comes while they are half decided again puts that off.
"""

import logging
import random
import time
from collections import deque
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from itertools import islice
from queue import Empty, SimpleQueue
from threading import Thread

from station.ledger.absorb import FOREVER, HistoryBroken
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.ledger.rebase import Turned
from station.ledger.shop_link import SharedEntry, ShopLink
from station.ledger.talk import PAGE, News, Offer, State, exchange, further

log = logging.getLogger(__name__)

EVERY = 0.8  # seconds between two rounds when nothing is to be shared; a little more by chance
PAGE_AT_ONCE = 6000  # entries that come at once where nobody waits for the screen
SLICE = 40  # entries that are taken in at once at first: more where nothing puts that off
BUDGET = 0.006  # seconds of work in one step
STEP = 0.012  # seconds that one step takes at most where many acts are decided again
LONG_STEP = 0.03  # the same where that was put off already
STARVED = 3  # times in a row that others wrote first, from which on acts are shared by groups
MOST_BEGUN = 100  # times that taking in is begun, and put off by a scan, before none puts it off
AWAY = (0.5, 1.0, 2.0, 4.0)  # seconds until the next try, each with as much again by chance
WRONG = "Something is wrong in the program."
BEHIND = (0.005, 0.02, 0.05, 0.1)  # at most, when others had written first
STOPPED = ("too old", "differs", "another", "empty", "twin", "refused")


class Twin(Fault):
    """Another PC works under this one's number."""

    def __init__(self, station: str) -> None:
        super().__init__(
            f"Another PC works as station {station} too, from a copy of this one's folder. This "
            "PC shares no more until it has joined under a number of its own: station join HOST, "
            "with a new card from who owns the database."
        )


class Loop:
    """One station's talk with its shop.

    `opened` gives the link; it runs on the thread, for loading a driver takes its time.
    `turned` is told of acts of this station that do not hold any more. `wall` is this PC's
    clock as the shop reads it, `clock` one that only goes on.
    """

    def __init__(
        self,
        ledger: Ledger,
        opened: Callable[[], ShopLink],
        turned: Callable[[Turned], None] = lambda _: None,
        clock: Callable[[], float] = time.monotonic,
        wall: Callable[[], float] = time.time,
    ) -> None:
        self.ledger, self.turned, self._clock, self._wall = ledger, turned, clock, wall
        self.state: State = "away"  # until the first answer
        self.why = ""
        self.fault: Fault | None = None  # why this PC can take nothing in
        self.trouble: Callable[[Fault], None] = lambda _: None  # is told of it once
        self.clock_off = 0.0  # seconds that this PC's clock is ahead of the server's
        self._tries = self._behind = 0
        self._due = 0.0
        self._asking = self._closed = False
        self._come: deque[SharedEntry] = deque()
        self._page: News | None = None  # of these, what was begun to be taken in
        self._by_groups = False  # others write faster than all that waits here is decided again
        self._is_ahead = self._is_stale = False  # what is asked: while a page is half in; in vain
        self._begun = 0  # how often taking in was begun since it last came to an end
        self._at_once = SLICE
        self._rest = News("shared")
        self._offers: SimpleQueue[Offer | None] = SimpleQueue()
        self._news: SimpleQueue[News] = SimpleQueue()
        self._thread = Thread(target=self._talk, args=(opened,), name="sharing", daemon=True)
        self._thread.start()

    def kick(self) -> None:
        """Something was done here: it is shared at once, unless the shop is away."""
        if self.state in ("shared", "behind"):
            self._due = 0.0

    def step(self) -> None:
        """A few milliseconds of work: takes news in, and makes the next offer when it is due."""
        if self._closed:
            return
        try:
            self._go_on()
        except Fault as fault:  # of the disk, say: what came is asked for again
            self._later(str(fault))
            if str(self.fault) != str(fault):
                self.trouble(fault)
            self.fault = fault
        except Exception:  # our own bug must not end sharing without a word
            log.exception("sharing")
            self._later(WRONG)

    def _go_on(self) -> None:
        if self.ledger.has_twin:
            self._stop_as_twin()
            return
        if self._asking:
            self._fetch()
        if self._come or self._rest.state == "put back":
            self._take_in()
        if not self._asking and self._clock() >= self._due:
            self._ask_ahead() if self._come else self._ask()

    def _stop_as_twin(self) -> None:
        """Shares no more: two PCs under one number would hand out the same numbers."""
        if self.state != "twin":
            self.state, told = "twin", Twin(self.ledger.station)
            self.why = str(told)
            self.trouble(told)

    def _later(self, why: str) -> None:
        """Nothing could be taken in or offered: tries again, as when the shop is away."""
        self._drop_come()
        self._rest = News("away", why=why)
        self.state, self.why, self._tries = "away", why, self._tries + 1
        self._due = self._clock() + self._pause(self._rest)

    def close(self) -> None:
        """Ends the talk; a round under way is not waited for, a step to come does nothing."""
        self._closed = True
        self._offers.put(None)

    def _talk(self, opened: Callable[[], ShopLink]) -> None:
        """The thread: one offer after the other."""
        link: ShopLink | None = None
        while (offer := self._offers.get()) is not None:
            try:
                link = link or opened()
                self._news.put(exchange(link, offer))
            except Fault as fault:
                self._news.put(News("away", why=str(fault)))
            except Exception:  # our own bug must not end sharing without a word
                log.exception("sharing")
                self._news.put(News("away", why=WRONG))

    def _ask(self) -> None:
        if self.state == "shared":
            self.ledger.ask_ahead()
        self._offers.put(self.ledger.offer())
        self._asking = True

    def _ask_ahead(self) -> None:
        """Shares what is decided of a page that is half in, or asks for more behind it."""
        offer = self.ledger.offer_ahead() if self._page is not None else None
        if offer and (offer.rows or self._rest.more):
            self._offers.put(offer)
            self._asking = self._is_ahead = True

    def _fetch(self) -> None:
        try:
            news = self._news.get_nowait()
        except Empty:
            return
        was_ahead, in_vain = self._is_ahead, self._is_stale
        self._asking = self._is_ahead = self._is_stale = False
        if in_vain:
            return
        if was_ahead:
            self._fetch_ahead(news)
            return
        self.why, self._rest = news.why, news
        self._tries = self._tries + 1 if news.state == "away" else 0
        # where more is to come, this station was late: nobody writes faster than it decides
        is_beaten = news.state == "behind" and not news.more
        self._behind = self._behind + 1 if is_beaten else 0
        self._by_groups = self._by_groups or self._behind >= STARVED
        self._come.extend(news.entries)
        self._due = self._clock() + self._pause(news)
        if news.clock:
            self.clock_off = self._wall() - news.clock
        if news.state != "put back":
            self.state = news.state
        if news.state == "shared" and not news.entries:
            self.fault = None
        for act in self.ledger.hear(news):
            self.turned(act)

    def _fetch_ahead(self, news: News) -> None:
        """What came of acts that were shared ahead; all else is found out behind this page."""
        if news.state in ("shared", "behind"):
            self._come.extend(news.entries)
            self._rest = News("shared", more=news.more)
        else:
            self._due = self._clock() + EVERY

    def _pause(self, news: News) -> float:
        """Seconds until the next round; by chance, so that stations do not march in step."""
        chance = random.random()  # noqa: S311 - a pause, no secret
        if news.state == "away":
            return AWAY[min(self._tries, len(AWAY)) - 1] * (1 + chance)
        if news.state in STOPPED and not news.more:
            return EVERY * 5
        if news.more or news.state == "put back":
            return 0.0
        if news.state == "behind":
            return BEHIND[min(self._behind, len(BEHIND)) - 1] * chance
        return 0.0 if self.ledger.has_to_share() else EVERY * (1 + 0.2 * chance)

    def _part(self, count: int) -> News:
        """So many of the entries that came."""
        more = len(self._come) > count or self._rest.more
        return News("shared", tuple(islice(self._come, count)), more)

    def _drop_come(self) -> None:
        """Drops what came: it is asked for again."""
        self._come.clear()
        self._page = None
        self._is_stale = self._asking

    def _take_in(self) -> None:
        began = self._clock()
        try:
            if self._rest.state == "put back":
                self.ledger.take_news(self._rest)
                self._rest = News("shared")
            while self._come and self._clock() - began < BUDGET and self._take_page():
                pass
            self.fault = None
        except HistoryBroken as broken:
            self._drop_come()
            self.state, self.why = "differs", str(broken)
            self._due = self._clock() + EVERY * 5

    def _take_page(self) -> bool:
        """Takes some entries in, or goes on with it; tells whether it came to an end.

        Whatever the file is asked for in between puts it off: then fewer are taken in at once,
        for each time that some are, the acts of this PC that they touch are decided again. At
        last it is not left standing.
        """
        self._grow_page()
        if self._page is not None and not self.ledger.is_taking_in:
            self._page, self._at_once = None, max(1, self._at_once // 2)
        if self._page is None:
            self._begun += 1
            self._page = self._part(self._page_long())
        until = time.perf_counter() + self._step_long()
        turned = self.ledger.take_news_until(self._page, until, by_groups=self._by_groups)
        if turned is None:
            return False
        for _ in self._page.entries:
            self._come.popleft()
        self._page, self._begun, self._at_once = None, 0, min(2 * self._at_once, PAGE)
        self._by_groups = False
        for act in turned:
            self.turned(act)
        return True

    def _grow_page(self) -> None:
        """What came since is taken in together with a page that is half in by groups."""
        begun = self._page
        if begun is not None and len(self._come) > len(begun.entries):
            more = tuple(islice(self._come, len(begun.entries), None))
            if self.ledger.take_more(more):
                self._page = begun._replace(entries=(*begun.entries, *more))

    def _page_long(self) -> int:
        """How many entries are taken in at once; by groups all that there are."""
        if self._by_groups:
            return len(self._come)
        return self._at_once if self._begun <= MOST_BEGUN else PAGE

    def _step_long(self) -> float:
        """How many seconds a step of taking in takes at most."""
        if self._begun > MOST_BEGUN:
            return FOREVER
        return LONG_STEP if self._begun > 1 else STEP


def catch_up(ledger: Ledger, link: ShopLink) -> News:
    """Rounds until all is shared both ways, or the shop is away or has stopped.

    While one page is taken in, the next one is on its way; the first is small, so that there
    soon is something to take in. A slow network that does not bring a large page in its time
    is asked for small ones.
    """
    page = PAGE_AT_ONCE
    with ThreadPoolExecutor(1, "catching up") as beside:
        coming: Future[News] | None = None
        while True:
            offer = ledger.offer()
            large = coming is not None
            news = coming.result() if coming else exchange(link, offer, PAGE)
            more = further(offer, news) if news.more else None
            coming = beside.submit(exchange, link, more, page) if more else None
            ledger.take_news(news)
            if news.state == "away" and large:
                page = PAGE
                continue
            if news.state not in ("shared", "behind", "put back"):
                return news
            if news.state == "shared" and not news.more and not ledger.has_to_share():
                return news
