"""One simulated station: a desk on a file of its own, and its talk with the shop in pieces."""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from random import Random

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.commands.text_station import take_line
from station.desk.desk import Given
from station.ledger.absorb import HistoryBroken
from station.ledger.closing import Closing
from station.ledger.faults import DiskFull, Fault
from station.ledger.last_recorded import note_of
from station.ledger.ledger import Ledger
from station.ledger.supply import NoNumbers
from station.ledger.talk import News, Offer, exchange
from station.shop.views import Rules
from tests.replay import PIN, code_of
from tests.simulate.errands import errand
from tests.simulate.shop import MemoryLink, MemoryShop

ANSWERS = {"sure": "button yes", "supervisor": "worker 07", "pin": PIN, "reason": "reason 51"}
COPYING = 9  # pieces of talk in which a PC that joins has the shop's history
STATES = ("shared", "behind", "put back")


class SimStation:
    """`work` takes one scan, `talk` does the next piece of a round with the shop."""

    def __init__(
        self, number: str, path: Path, shop: MemoryShop, rules: Rules, random: Random
    ) -> None:
        self.number, self.path, self.rules, self.random = number, path, rules, random
        self.link, self.clock = MemoryLink(shop), Clock("2026-11-25T08:00:00")
        self.acked: list[str] = []
        self.contested: set[str] = set()  # acts that somebody was before in
        self.recorded = self.turned = self.made = 0
        self.open()

    def open(self) -> None:
        """Starts the program on what the file holds."""
        self.ledger = Ledger(self.path, self.rules, station=self.number, ids=self.new_id)
        self.ledger.hurry(on=True)  # nothing is taken from under the file here
        where = Where(area="popping")
        self.desk = bootstrap.make_desk(self.ledger, where, self.clock, ids=self.new_id)
        self.desk.sign_in(f"0{self.number}")
        self.scans: Iterator[str] = iter(())
        self.offer: Offer | None = None
        self.news: News | None = None

    def new_id(self) -> str:
        """Ids are random: two lives of one station share none."""
        return f"{self.random.getrandbits(64):016x}"

    # --- work

    def work(self) -> None:
        """One scan of the errand under way, or the first of a new one."""
        text = next(self.scans, "")
        if not text:
            self.scans = errand(self.random, self.ledger)
            return
        given = self.send(text)
        while question := self.desk.question():
            self.send(ANSWERS[question] if self.random.random() < 0.95 else "button put_down")
        if given.answer.tone == "stop" and self.random.random() < 0.7:
            self.scans = iter(())

    def send(self, text: str) -> Given:
        """One scan; what it answered with an entry is acknowledged."""
        words = text if text.startswith("@") else code_of(text, self.ledger)
        given = take_line(self.desk, self.clock, words)
        if given.entry:
            self.acked.append(given.entry)
            self.recorded += 1
        return given

    def again(self) -> None:
        """The newest act comes once more, as after an answer that was never seen."""
        past = self.ledger.view.past(self.acked[-1]) if self.acked else None
        if past and past.act.kind in self.rules:
            before = self.ledger.count()
            done = self.ledger.record(replace(past.act))
            assert done.entry == past.act.id
            assert self.ledger.count() == before

    def spend(self, count: int) -> list[str]:
        """So many new numbers are handed out, as to papers that were torn up; or what is left."""
        numbers = list[str]()
        with suppress(NoNumbers, DiskFull):
            numbers.extend(self.ledger.take_number("batch") for _ in range(count))
        return numbers

    # --- sharing, in three pieces so that anything may come in between

    def talk(self) -> None:
        """The next piece of a round: the offer, the network, taking the news in."""
        with suppress(DiskFull):
            self._talk()

    def _talk(self) -> None:
        if self.news is not None:
            news, self.news = self.news, None
            self._take(news)
        elif self.offer is not None:
            offer, self.offer = self.offer, None
            self.news = exchange(self.link, offer)
        else:
            self.ledger.ask_ahead()
            self.offer = self.ledger.offer()

    def _take(self, news: News) -> None:
        self._contested(news)
        parted = [news.entries] if self._by_groups() else [news.entries[:3], news.entries[3:]]
        pages = parted if news.state in STATES else []
        if news.state == "put back":
            pages = [()]
        with suppress(HistoryBroken):  # it says so; the next round finds out
            for page in pages:
                if page or news.state == "put back":
                    self.turned += self._take_page(news._replace(entries=tuple(page)))

    def _take_page(self, news: News) -> int:
        """Takes a page in, some of it act by act; somebody scans in the middle, or nobody does.

        Gives how many acts turned. How far it comes first is no chance: a seed stays the same.
        """
        by_groups = self._by_groups()
        for _ in range(len(self.acked) % 30):
            turned = self.ledger.take_news_until(news, 0.0, by_groups=by_groups)
            if turned is not None:
                return len(turned)
            news = self._share_ahead(news)
        if len(self.acked) % 2:
            self.ledger.count()  # any question puts it off
        return len(self.ledger.take_news(news))

    def _by_groups(self) -> bool:
        """Whether acts are shared while those behind them are still undone."""
        return len(self.acked) % 3 == 1

    def _share_ahead(self, news: News) -> News:
        """Shares what is decided so far; gives the news with what came of it."""
        offer = self.ledger.offer_ahead()
        if offer is None or not offer.rows:
            return news
        came = exchange(self.link, offer)
        if came.state in ("shared", "behind") and self.ledger.take_more(came.entries):
            return news._replace(entries=(*news.entries, *came.entries))
        return news

    def _contested(self, news: News) -> None:
        """Notes the acts that wait and rest on what has come."""
        waiting = self.pending() if news.entries else []
        known = {id_ for id_, _ in waiting}
        others = [e.number for e in news.entries if e.id not in known]
        shop = self.link.shop.writes
        names = frozenset[str]().union(*(shop[n - 1] for n in others if n <= len(shop)))
        self.contested |= {id_ for id_, reads in waiting if not names.isdisjoint(reads)}

    def pending(self) -> list[tuple[str, list[str]]]:
        """Ids of the acts that wait, and what they rest on."""
        rows = self.ledger._store.run("SELECT id, reads FROM pending ORDER BY seq").fetchall()
        return [(id_, json.loads(reads)) for id_, reads in rows]

    # --- faults

    def crash(self, steps: int = 0) -> None:
        """The program dies, in the middle of what it does where `steps` says how far it came."""
        if steps:
            left = [steps]

            def stop() -> bool:
                left[0] -= 1
                return left[0] < 0

            run = self.ledger._store.connection
            run.set_progress_handler(stop, 20)
            acked = list(self.acked)
            try:
                self.work() if self.random.random() < 0.5 else self.talk()
            except (sqlite3.Error, Fault):
                self.acked = acked  # it died before it could answer
            run.set_progress_handler(None, 0)
        self.ledger._store.connection.close()
        self.open()

    def fill(self, *, full: bool) -> None:
        """The disk takes nothing more, or has room again."""
        run = self.ledger._store.run
        (now,) = run("PRAGMA page_count").fetchone()
        run(f"PRAGMA max_page_count={now if full else 2**30}")

    def image(self) -> bytes:
        """The disk as it is now."""
        self.ledger._store.checkpoint("TRUNCATE")
        return self.path.read_bytes()

    def restore(self, image: bytes) -> None:
        """An older disk is put in."""
        self.ledger._store.connection.close()
        self.path.with_name(self.path.name + "-wal").unlink(missing_ok=True)
        self.path.write_bytes(image)
        note_of(self.path).unlink(missing_ok=True)  # it lies on that disk too
        self.open()

    def replace(self, closing: Closing | None) -> None:
        """A new PC takes this station's place: it copies the shop, or from a closing on."""
        self.ledger._store.connection.close()
        for left in self.path.parent.glob(f"{self.path.name}*"):
            left.unlink()
        ledger = Ledger(self.path, self.rules, station=self.number)
        ledger.hurry(on=True)
        if closing:
            ledger.start_from(closing)
        ledger.share_with(self.link.shop.site)
        ledger.close()
        self.open()
        for _ in range(COPYING):
            self.talk()

    def ids(self) -> set[str]:
        """All acts that this station's file holds."""
        run = self.ledger._store.run
        return {r[0] for r in run("SELECT id FROM entry UNION ALL SELECT id FROM pending")}
