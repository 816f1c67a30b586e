"""A station of `tests.many`: a process in which somebody scans by the shop's real rules.

What it does is told line by line: ``scan`` before each scan, ``ack`` with the entry's id or
``no`` after it, ``certain`` for an act that only counts once the shop has said so, and
``holds`` when it has.
"""

import itertools
import json
import random
import shutil
import time
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.commands.text_station import take_line
from station.floor.office.acts import SetFact
from station.ledger.ledger import Ledger
from station.ledger.numbers import printable
from station.ledger.supply import NoNumbers
from station.sharing.address import Address
from station.sharing.founding import copy
from station.sharing.link import PostgresLink
from station.sharing.loop import Loop
from station.shop.acts import Act
from station.shop.facts import Batch, Fact, Order, Slip
from tests.many_errands import errand, machines
from tests.replay import code_of
from tests.sharing.shop import Shop
from tests.simulate.errands import ORDERS, PARTS
from tests.simulate.founded import AT, STOCK, facts
from tests.simulate.station import ANSWERS

SUPERVISOR = "07"
WORKERS = ("02", "03", "04")
OFTEN = 40  # times as much of the small shop's orders, batches and stock
PACE = 80  # scans a second, the waiting for the disk left out
RACKS = 0.15  # of what is done: a new place on the rack
RULES = bootstrap.load_rules()


# --- the shop they begin with


def _numbers(kind: str, first: int) -> Iterator[str]:
    return (str(n) for n in itertools.count(first) if printable(kind, str(n)))


def orders() -> dict[str, list[str]]:
    """Of each order of the small shop, the numbers of those that are like it."""
    numbers = _numbers("order", 5000)
    return {order: [order, *itertools.islice(numbers, OFTEN)] for order in ORDERS}


def founding(stations: list[str]) -> tuple[list[Fact], list[tuple[str, int, str, str, str]]]:
    """The small shop with a router a station, many more orders and batches, and its stock."""
    found = list({f.key: f for f in (*facts(), *machines(stations))}.values())
    stock: list[tuple[str, int, str, str, str]] = []
    known = {f.id: f for f in found if isinstance(f, Order)}
    found += [replace(known[o], id=n) for o, like in orders().items() for n in like[1:]]
    batches = {f.id: f for f in found if isinstance(f, Batch)}
    slips = {f.batch: f for f in found if isinstance(f, Slip)}
    numbers = _numbers("batch", 30000)
    for part, quantity, source, place, batch in STOCK:
        if batch not in batches or source != "cut":
            stock.append((part, quantity if batch else quantity * OFTEN, source, place, batch))
            continue
        stock.append((part, quantity, source, place, batch))
        for number in itertools.islice(numbers, OFTEN):
            stock.append((part, quantity, source, place, number))
            found.append(replace(batches[batch], id=number))
            if batch in slips:
                found.append(replace(slips[batch], id=f"{number}-1", batch=number))
    return found, stock


def begin(folder: Path, shop: Shop, stations: list[str]) -> None:
    """Founds the shop: in its database, and in each station's file; one is left alone."""
    first = folder / "first.db"
    ledger = Ledger(first, RULES)
    found, stock = founding(stations)
    bootstrap.seed_shop(ledger, found, AT, stock=stock)
    ledger.backup(folder / "alone.db")
    with shop.admin() as admin:
        head = copy(admin, shop.names.site, ledger.chain(0), "test")
        admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)
    ledger.share_with(shop.names.site)
    ledger.close()
    for number in stations:
        shutil.copyfile(first, folder / f"{number}.db")


# --- one station, in its own process


def child(given: str) -> None:
    """Records and shares until it is killed; to ``heal`` it only shares."""
    life = json.loads(given)
    ledger = Ledger(Path(life["path"]), RULES, station=life["station"])
    address = Address("127.0.0.1", life["port"], life["database"])
    loop = Loop(ledger, lambda: PostgresLink(address, life["role"], lambda: life["password"]))
    if life["heal"]:
        heal(ledger, loop)
        return
    person = Person(ledger, life["run"])
    print("ready", flush=True)
    while True:
        until = time.monotonic() + person.chance.expovariate(PACE)
        while time.monotonic() < until:
            loop.step()
            time.sleep(0.002)
        person.work()
        person.hear()
        loop.kick()


def heal(ledger: Ledger, loop: Loop) -> None:
    """Shares until there was nothing to share for a while; tells how far it is."""
    n, said = 0, ""
    while n <= 60:
        loop.step()
        time.sleep(0.02)
        if ledger.is_taking_in:  # who asks puts it off each time
            continue
        n += loop.state == "shared" and not ledger.not_shared()
        now = f"{loop.state}, {ledger.not_shared()} to share, at {ledger.count()} {loop.why}"
        if now != said:  # seldom: nobody may be reading yet
            said = now
            print(said, flush=True)
    print("healed", flush=True)
    ledger.close()


class Person:
    """Somebody at a station, on one errand after the other."""

    def __init__(self, ledger: Ledger, run: int) -> None:
        self.ledger, self.life = ledger, f"{ledger.station}-{run}"
        self.chance, self.count, self.like = random.Random(self.life), itertools.count(1), orders()
        self.clock, self.now = Clock(AT), datetime.fromisoformat(AT) + timedelta(minutes=run)
        self.desk = bootstrap.make_desk(ledger, Where(area="popping"), self.clock, ids=self.new_id)
        self.desk.sign_in(WORKERS[int(ledger.station) % len(WORKERS)])
        self.scans: Iterator[str] = iter(())
        self.asked: list[str] = []  # acts that only count once the shop has said so

    def new_id(self) -> str:
        return f"{self.life}-{next(self.count)}"

    def work(self) -> None:
        """One scan of the errand under way, or a new errand begins."""
        text = next(self.scans, "")
        if not text:
            if self.chance.random() < RACKS:
                self.new_place()
            self.scans = self.errand()
            return
        stopped = self.send(text)
        while question := self.desk.question():
            sure = self.chance.random() < 0.95
            stopped = self.send(ANSWERS[question] if sure else "button put_down")
        if stopped and self.chance.random() < 0.7:
            self.scans = iter(())
        if self.chance.random() < 0.1:
            self.ledger.idle()

    def errand(self) -> Iterator[str]:
        """The scans of an errand, about an open order like the one that it names."""
        nth = int(self.chance.expovariate(1))  # the first of them are wanted by many at once
        for text in errand(self.chance, self.ledger):
            word, _, order = text.partition(" ")
            like = self.like.get(order, []) if word == "order" else []  # else it is one of these
            still_open = [n for n in like if self.open(n)]
            yield f"order {still_open[min(nth, len(still_open) - 1)]}" if still_open else text

    def open(self, order: str) -> bool:
        found = self.ledger.view.get(Order, order)
        return found is not None and found.state in ("open", "packing", "waiting")

    def send(self, text: str) -> bool:
        """One scan, told before and after; whether it was refused."""
        self.now += timedelta(seconds=1)
        self.clock.pin(self.now.isoformat())
        print("scan", text, flush=True)
        words = text if text.startswith("@") else code_of(text, self.ledger)
        given = take_line(self.desk, self.clock, words)
        self.tell(given.entry, certain=given.certain)
        return given.answer.tone == "stop"

    def tell(self, entry: str | None, *, certain: bool) -> None:
        print("ack" if entry else "no", entry or "", flush=True)
        if entry and certain:
            print("certain", entry, flush=True)
            self.asked.append(entry)

    def new_place(self) -> None:
        """A supervisor gives a part one more place on the rack, by a number of its own."""
        with suppress(NoNumbers):
            number = self.ledger.take_number("rack")
            place = {"id": number, "name": f"N {number}", "part": self.chance.choice(PARTS)}
            print("scan", "place", number, flush=True)
            act = Act(
                id=self.new_id(),
                kind=SetFact.kind,
                at=self.clock(),
                worker=SUPERVISOR,
                station=self.ledger.station,
                subject=f"rack/{number}",
                args=SetFact(of="rack", value=place, approved=SUPERVISOR),
            )
            done = self.ledger.record(act)
            self.tell(done.entry, certain=done.certain)

    def hear(self) -> None:
        """What the shop has said by now of the acts that must be certain."""
        for entry in list(self.asked):
            verdict = self.ledger.verdict(entry)
            if verdict != "asking":
                self.asked.remove(entry)
                print(verdict, entry, flush=True)
