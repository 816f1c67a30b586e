"""Stations of one shop in one process, each with a ledger and a link to the real server."""

from dataclasses import replace
from pathlib import Path

from station.ledger.ledger import Ledger
from station.ledger.rebase import Turned
from station.ledger.talk import News, exchange
from station.sharing.address import Address
from station.sharing.link import PostgresLink
from station.sharing.loop import PAGE_AT_ONCE, catch_up
from tests.ledger.toy import RULES, act
from tests.sharing.shop import Shop

__all__ = ["Station", "act"]


def round_of(ledger: Ledger, link: PostgresLink) -> tuple[News, list[Turned]]:
    """One whole round of talk."""
    news = exchange(link, ledger.offer(), PAGE_AT_ONCE)
    return news, ledger.take_news(news)


class Station:
    """One station: `do` records, `talk` is one round, `share` goes on until all is shared."""

    def __init__(self, folder: Path, shop: Shop, number: str, rules=RULES, port: int = 0) -> None:
        shop.station(number).close()
        self.number, self.shop, self.rules = number, shop, rules
        self.path = folder / f"station-{number}.db"
        address = Address("127.0.0.1", port or shop.server.port, shop.database)
        role = shop.names.station(number)
        self.link = PostgresLink(address, role, lambda: shop.passwords[number])
        self.open()

    def open(self) -> None:
        self.ledger = Ledger(self.path, self.rules, station=self.number)
        if not self.ledger.shared:
            self.ledger.share_with(self.shop.names.site)

    def do(self, id: str, kind: str = "cut", **given):
        return self.ledger.record(replace(act(id, kind, **given), station=self.number))

    def undo(self, id: str, by: str):
        return self.ledger.undo(id, replace(act(by, "undo"), station=self.number))

    def talk(self):
        return round_of(self.ledger, self.link)

    def share(self):
        return catch_up(self.ledger, self.link)

    def ids(self):
        return [e.id for e in self.ledger.entries()]

    def stock(self):
        return sorted(h for h in self.ledger.balances() if h.qty)

    def close(self) -> None:
        self.link.close()
        self.ledger.close()


def healed(*stations: Station) -> None:
    """All share all, and then nothing tells them apart: invariants 2, 3, 4 and 6."""
    for _ in range(2):
        for station in stations:
            news = station.share()
            assert news.state == "shared", (station.number, news.state, news.why)
    first = stations[0]
    for station in stations:
        assert station.ledger.check() == []
        assert station.ledger.not_shared() == 0
        assert station.ids() == first.ids()
        assert station.stock() == first.stock()
        assert len(set(station.ids())) == len(station.ids())
