"""The founded shop that every run begins with: made once, then copied file by file."""

import shutil
from dataclasses import replace
from pathlib import Path
from random import Random
from typing import NamedTuple

from argon2 import PasswordHasher

from station import bootstrap
from station.ledger.ledger import Ledger
from station.ledger.shop_link import SharedRow
from station.shop.facts import Batch, Fact, Line, Order, Slip, Worker
from station.shop.views import Rules
from tests.floor.shop_small import GAUGES, SHUTTLES
from tests.replay import DUE, PIN, START, small_shop
from tests.simulate.shop import MemoryShop
from tests.simulate.station import SimStation

STATIONS = ("1", "2", "3")
ALONE = "alone.db"
AT = "2026-11-25T07:00:00"


class Founded(NamedTuple):
    """The files of the stations before the first scan, and the shop's history then."""

    folder: Path  # holds one file a station, and one of a PC that shares with nobody
    rules: Rules
    shop: MemoryShop


def facts() -> list[Fact]:
    """The small shop, with more batches and orders for the same few parts."""
    found = {f.key: f for f in small_shop()}
    cheap = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1)  # as sound, sooner
    found["worker/07"] = Worker(id="07", supervisor=True, pin=cheap.hash(PIN))
    for number, product, quantity in (("3310", "032", 3), ("3311", "031", 2)):
        order = Order(id=number, due=DUE, lines=(Line(product=product, quantity=quantity),))
        found[order.key] = order
    for number, file in (("00910", SHUTTLES), ("00911", GAUGES)):
        batch = Batch(id=number, cut_file=file, revision="C", router="1", sheets=1, cut=1,
                      state="cut", due=DUE)  # fmt: skip
        slip = Slip(id=f"{number}-1", batch=number, sheet=1, router="1", at=AT)
        found |= {batch.key: batch, slip.key: slip}
    return [replace(f) for f in found.values()]


STOCK = [
    *START,
    ("021", 96, "cut", "popping/1", "00910"),
    ("045", 160, "cut", "popping/1", "00911"),
    ("051", 20, "found", "rack/051", "00000"),
]


def found(folder: Path) -> Founded:
    """Founds the shop in a folder: its first entry, and numbers for every station."""
    rules, shop = bootstrap.load_rules(), MemoryShop()
    first = folder / "first.db"
    ledger = Ledger(first, rules)
    bootstrap.seed_shop(ledger, facts(), AT, stock=STOCK, ids=lambda: "0" * 16)
    ledger.backup(folder / ALONE)
    for entry in ledger.chain(0):
        shop.add(SharedRow(entry.id, entry.verdict, tuple(entry.writes), entry.body))
    ledger.share_with(shop.site)
    ledger.close()
    stations = []
    for number in STATIONS:
        shutil.copyfile(first, folder / f"{number}.db")
        path = folder / f"{number}.db"
        stations.append(SimStation(number, path, shop, rules, Random(int(number))))
    for station in stations * 9:
        station.talk()
    for station in stations * 9:
        station.talk()
    for station in stations:
        station.ledger.close()
    return Founded(folder, rules, shop)
