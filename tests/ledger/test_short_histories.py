"""Stations that drop old entries, or begin late, beside one that has all: random days."""

from dataclasses import replace
from random import Random

import pytest

from station.ledger.closing import Begin, close
from station.ledger.rebuild import closed
from station.ledger.statements import DERIVED
from tests.ledger.stations import Station
from tests.ledger.toy import act
from tests.simulate.shop import MemoryShop

SEEDS, STEPS = 40, 40
BATCHES = ("00001", "00002", "00003")


class Days:
    """A whole station, one that drops, and new ones that begin with a closing of the first."""

    def __init__(self, folder, seed):
        self.random, self.folder, self.shop = Random(seed), folder, MemoryShop()
        self.stations = [Station(folder / n, n, self.shop) for n in ("1", "2")]
        self.done: list[str] = []

    def step(self):
        one = self.random.choice(self.stations)
        self.random.choices((self.do, self.undo, self.share, self.drop, self.crash, self.join),
                            (12, 3, 6, 2, 2, 1))[0](one)  # fmt: skip

    def do(self, one):
        name, batch = f"a{len(self.done)}", self.random.choice(BATCHES)
        made = act(name, self.random.choice(("cut", "cut", "pop")), batch=batch)
        if one.ledger.record(replace(made, station=one.number)).entry:
            self.done.append(name)

    def undo(self, one):
        if self.done:
            by = replace(act(f"u{self.random.random()}", "undo"), station=one.number)
            one.ledger.undo(self.random.choice(self.done), by)

    def share(self, one):
        assert one.share() == "shared"

    def drop(self, one):
        begin, head = one.ledger.begins()[0], one.ledger._history.number
        if one is not self.stations[0] and head > begin:
            one.ledger.drop_until(self.random.randint(begin + 1, head))

    def crash(self, one):
        one.crash()

    def join(self, _one):
        whole, number = self.stations[0].ledger, str(len(self.stations) + 1)
        head = whole._history.number
        if head and len(self.stations) < 5:
            upto = self.random.randint(1, head)
            link, at = whole._store.rows("SELECT digest, at FROM entry WHERE number = ?", (upto,))[
                0
            ]
            new = Station(self.folder / number, number, self.shop)
            new.ledger.start_from(close(closed(whole._store, upto), Begin(upto, link, at)))
            self.stations.append(new)

    def end(self):
        for one in (*self.stations, *self.stations, *self.stations):
            self.share(one)
        whole = self.stations[0].ledger
        for one in self.stations:
            assert one.ledger.check() == []
            for table in DERIVED:
                every = f"SELECT * FROM {table} ORDER BY 1, 2, 3, 4"
                assert one.ledger._store.rows(every) == whole._store.rows(every)
            begin = one.ledger.begins()[0]
            assert list(one.ledger.chain(begin)) == list(whole.chain(begin))
        for one in self.stations:
            one.ledger.close()


@pytest.mark.parametrize("seed", range(SEEDS))
@pytest.mark.slow
def test_short_and_whole_histories_come_to_the_same(tmp_path, seed):
    days = Days(tmp_path, seed)
    for _ in range(STEPS):
        days.step()
    days.end()
