"""Stations of one shop in memory, driven by hand: toy rules and no threads."""

from pathlib import Path

from station.ledger.absorb import HistoryBroken
from station.ledger.ledger import Ledger
from station.ledger.rebase import Turned
from station.ledger.statements import DERIVED
from station.ledger.talk import exchange
from station.shop.views import Rule
from tests.ledger.toy import RULES
from tests.simulate.shop import MemoryLink, MemoryShop

ROUNDS = 12


class Station:
    """One ledger that shares; `share` goes on until all is shared, or it cannot be."""

    def __init__(self, folder: Path, number: str, shop: MemoryShop, **rules: Rule) -> None:
        folder.mkdir(parents=True, exist_ok=True)
        self.path, self.number, self.shop = folder / "shop.station", number, shop
        self.rules = {**RULES, **rules}
        self.link = MemoryLink(shop)
        self.turned: list[Turned] = []
        self.open()

    def open(self) -> None:
        """Opens the file, as after a start."""
        self.ledger = Ledger(self.path, self.rules, station=self.number)
        if not self.ledger.shared:
            self.ledger.share_with(self.shop.site)

    def crash(self) -> None:
        """The program dies and is started again."""
        self.ledger._store.connection.close()
        self.open()

    def share(self) -> str:
        """Rounds until all is shared; returns the last one's state."""
        for _ in range(ROUNDS):
            news = exchange(self.link, self.ledger.offer())
            try:
                self.turned += self.ledger.take_news(news)
            except HistoryBroken:
                return "differs"
            if news.state not in ("shared", "behind", "put back"):
                return news.state
            if news.state == "shared" and not news.more and not self.ledger.not_shared():
                self.ledger.ask_ahead()
                if not self.ledger.not_shared():
                    return "shared"
        raise AssertionError("it never came to an end")


def same(*stations: Station) -> bool:
    """Whether the stations hold the same entries and the same derived tables."""
    everything = [
        [
            s.ledger._store.run(f"SELECT * FROM {table} ORDER BY 1, 2, 3, 4").fetchall()
            for table in ("entry", *DERIVED)
        ]
        for s in stations
    ]
    return all(one == everything[0] for one in everything)
