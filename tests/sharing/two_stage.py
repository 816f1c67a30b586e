"""A day in the shop on two stations that share through the real server.

The files are those of ``python -m tests.replay``. Where an area is the second station's, the
worker walks over to it; more is said by lines of their own:

    @station 2          goes to a station, whoever works there
    @network off        the station has no network; ``on`` again
    @share              all stations share; the strip of each may turn
    turned              what the strip of this station says since then
"""

import itertools
from pathlib import Path

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.desk.desk import Desk, Given
from station.ledger.ledger import Ledger
from station.shop.acts import good, notice
from station.shop.facts import Concern, Order
from station.shop.views import View
from station.shop.words import say
from tests.replay import START, Stage, small_shop
from tests.sharing.shop import Shop
from tests.sharing.test_link import link_of
from tests.sharing.two import round_of


def list_left_in_cancelled(view: View) -> list[str]:
    """Cancelled orders in whose open packs pieces lie that nobody is told to put back."""
    told = {c.about for c in view.shelf(Concern, "open", 1000) if c.what == "cancelled"}
    return [
        f"{order.id} is cancelled, and nobody is told of what is in its pack"
        for order in view.shelf(Order, "cancelled", 1000)
        if view.stock(place=f"packing/{order.id}") and order.key not in told
    ]


class TwoStations(Stage):
    """Two desks on two ledgers; `second` are the areas that stand at station 2."""

    def __init__(self, folder: Path, shop: Shop, second: frozenset[str] = frozenset()) -> None:
        self.clock, self.count = Clock("2026-11-25T07:00:00"), itertools.count(1)
        self.second, self.here = second, "1"
        self.ledgers: dict[str, Ledger] = {}
        self.turned: dict[str, list[Given]] = {"1": [], "2": []}
        self.off: set[str] = set()
        self.links = {n: link_of(shop, n) for n in "12"}
        for number in "12":
            ledger = Ledger(folder / f"{number}.db", bootstrap.load_rules(), station=number)
            ledger.share_with(shop.names.site)
            self.ledgers[number] = ledger
            if number == "1":
                bootstrap.seed_shop(
                    ledger, small_shop(), self.clock(), stock=START, ids=self.new_id
                )
            self.share()
            ledger.ask_ahead()  # the first one's numbers are those of a single PC
            self.share()
        self.desks = {n: self._desk(n) for n in "12"}

    @property
    def ledger(self) -> Ledger:
        return self.ledgers[self.here]

    @property
    def desk(self) -> Desk:
        return self.desks[self.here]

    @desk.setter
    def desk(self, desk: Desk) -> None:
        self.desks[self.here] = desk

    def _desk(self, number: str) -> Desk:
        return bootstrap.make_desk(
            self.ledgers[number], Where(area="loading"), self.clock, ids=self.new_id
        )

    def share(self) -> None:
        """Rounds until nothing is left that a network would carry."""
        for number in [*self.ledgers, *self.ledgers]:
            while number not in self.off:
                news, turned = round_of(self.ledgers[number], self.links[number])
                self.turned[number] += [Given(t.answer, t.id) for t in turned]
                assert news.state in ("shared", "behind"), news
                if news.state == "shared" and not self.ledgers[number].not_shared():
                    break

    def send(self, text: str) -> Given:
        """One line; the work is shared before it and after it wherever there is a network."""
        order, _, rest = text.partition(" ")
        if order == "@station":
            self.here = rest
            return Given(good(say("station")))
        if order == "@network":
            (self.off.add if rest == "off" else self.off.discard)(self.here)
            return Given(good(say("network")))
        if order == "@share":
            self.share()
            return Given(good(say("shared")))
        if text == "turned":
            told = self.turned[self.here]
            return told.pop(0) if told else Given(notice(say("nothing turned")))
        if order == "@area" and self.second:
            self._walk("2" if rest in self.second else "1")
        if self.second:
            self.share()
        given = super().send(text)
        if self.second:
            self.share()
        return given

    def _walk(self, to: str) -> None:
        """Whoever works here goes to the other station, with router and bench in mind."""
        hand, self.here = self.desk.hand, to
        self.desk.at(router=hand.router, bench=hand.bench)
        if hand.worker:
            self.desk.sign_in(hand.worker)

    def check(self) -> list[str]:
        """What is not sound, and where the stations differ."""
        self.off.clear()
        self.share()
        one, two = (self.ledgers[n] for n in "12")
        wrong = one.check() + two.check()
        if [e.id for e in one.entries()] != [e.id for e in two.entries()]:
            wrong.append("the stations know other entries")
        if list(one.balances()) != list(two.balances()):
            wrong.append("the stations count otherwise")
        return [*wrong, *list_left_in_cancelled(one.view), *list_left_in_cancelled(two.view)]

    def close(self) -> None:
        for number in "12":
            self.links[number].close()
            self.ledgers[number].close()
