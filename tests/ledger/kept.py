"""A shop file as an older program wrote it, and how it was made.

``python -m tests.ledger.kept FOLDER`` plays ``kept/day.txt`` on two stations and then
``kept/hands.txt`` at one of them, and writes into the folder what `kept` holds:

- ``shop.sql``: station 1's file, as SQLite dumps it. It shares, and has acts that wait.
- ``hands.json``: by name, the work in hand as that file kept it, what its screen said, and the
  answers to what was scanned next.

Both were made by the program of commit a263d6b, before its acts and its work in hand were typed.
They are never made anew for a newer program to pass: it must read what was kept. To keep another
program's file as well, run this in its checkout into a folder beside this one.
"""

import itertools
import json
import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import NamedTuple

from argon2 import PasswordHasher

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.commands.text_station import take_line
from station.desk.desk import Desk, Given
from station.ledger.ledger import Ledger
from station.ledger.rebase import Turned
from station.ledger.shop_link import SharedRow
from station.ledger.talk import exchange
from station.shop.acts import good
from station.shop.facts import Fact, Placed, Revision
from station.shop.words import say
from tests.answers import screen
from tests.floor.shop_small import GAUGES, SPACERS
from tests.replay import PIN, START, code_of, said, small_shop
from tests.simulate.shop import MemoryLink, MemoryShop

HERE = Path(__file__).resolve().parent / "kept"
SITE = "kept"
FILES = {
    "carts.csv": "id,name,goes\n1,Cart 1,15:00\n3,Cart 3,16:30\n",
    "pocket.nc": "G21 G90 T1 M6\nM3 S18000\nG0 X50 Y50 Z5\nG1 Z-2 F900\nX90 F3000\nG0 Z5\nM30\n",
    "slot.nc": "G21 G90 T1 M6\nM3 S18000\nG0 X50 Y50 Z5\nG1 Z-3 F900\nX80 F3000\nG0 Z5\nM30\n",
}


def facts() -> list[Fact]:
    """The small shop, smaller: few pieces a sheet, and a PIN whose hash is soon compared.

    On router 2 the day has not begun.
    """
    cheap = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1)
    pin = cheap.hash(PIN, salt=b"a kept shop file")
    found = {f.key: f for f in small_shop()}
    for key, change in (
        ("worker/07", {"pin": pin}),
        ("bed/2", {"day": "2026-11-24"}),
        *((f"revision/{file}.C", {"placed": _few(found, file)}) for file in (SPACERS, GAUGES)),
    ):
        found[key] = replace(found[key], **change)
    return list(found.values())


def _few(found: dict[str, Fact], file: str) -> tuple[Placed, ...]:
    revision = found[f"revision/{file}.C"]
    assert isinstance(revision, Revision)
    return revision.placed[:24]


class Kept:
    """One station of the kept shop: a desk on a file, and its link to the shop."""

    def __init__(self, folder: Path, number: str, shop: MemoryShop, first_id: int = 1) -> None:
        folder.mkdir(parents=True, exist_ok=True)
        self.number, self.link = number, MemoryLink(shop)
        self.count = itertools.count(first_id)
        self.clock = Clock("2026-11-25T07:00:00")
        self.ledger = Ledger(
            folder / bootstrap.FILE, bootstrap.load_rules(), station=number, ids=self.new_id
        )
        self.desk = self.at("loading")

    def new_id(self) -> str:
        return f"{self.number}-{next(self.count):04d}"

    def at(self, area: str, router: str = "", bench: str = "") -> Desk:
        """A desk at an area; it finds what was left in hand there."""
        where = Where(area=area, router=router, bench=bench)
        return bootstrap.make_desk(self.ledger, where, self.clock, ids=self.new_id)

    def send(self, line: str) -> Given:
        """One line of a day."""
        if line == "left in hand":
            self.desk = self.at("packing", bench="4")
            return Given(self.desk.greeting())
        if line.startswith("file "):
            name = line.removeprefix("file ")
            folder = self.ledger.path.parent / "files"
            folder.mkdir(exist_ok=True)
            (folder / name).write_text(FILES[name], encoding="utf-8")
            return Given(good(say("{name} is there", name=name)))
        if line.startswith("'"):
            return self.desk.take(line[1:])
        words = line if line.startswith("@") else code_of(line, self.ledger, self.desk.face)
        return take_line(self.desk, self.clock, words)

    def share(self) -> list[Turned]:
        """Shares until nothing is left; gives the acts that do not hold any more."""
        turned: list[Turned] = []
        for _ in range(12):
            news = exchange(self.link, self.ledger.offer())
            turned += self.ledger.take_news(news)
            assert news.state in ("shared", "behind"), news
            if news.state == "shared" and not news.more and not self.ledger.not_shared():
                return turned
        raise AssertionError("it never came to an end")


class Two:
    """Stations 1 and 2; the shop is there from the first ``@share`` on."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.shop = folder, MemoryShop(site=SITE)
        self.here = one = Kept(folder / "1", "1", self.shop)
        self.stations = {"1": one}
        bootstrap.seed_shop(one.ledger, facts(), one.clock(), stock=START, ids=one.new_id)

    def play(self, lines: Iterator[str]) -> None:
        """Every line in turn, printed with its answer."""
        for line in lines:
            order, _, rest = line.partition(" ")
            if order == "@share":
                self._share()
            elif order == "@station":
                self.here = self.stations[rest]
            elif order == "@network":
                self.here.link.cut = rest == "off"
            else:
                print(f"{line}\n    {said(self.here.send(line))}")

    def _share(self) -> None:
        """All that have a network share; the first time, station 1's history is the shop's."""
        if len(self.stations) == 1:
            one = self.stations["1"].ledger
            for entry in one.chain(0):
                self.shop.add(SharedRow(entry.id, entry.verdict, tuple(entry.writes), entry.body))
            one.share_with(SITE)
            self.stations["2"] = two = Kept(self.folder / "2", "2", self.shop)
            two.ledger.share_with(SITE)
        for station in [*self.stations.values()] * 2:
            if not station.link.cut:
                for turned in station.share():
                    print(f"    station {station.number}, {turned.id}: {turned.answer.said}")
                station.ledger.ask_ahead()


def lines_of(text: str) -> Iterator[str]:
    """The lines that are played."""
    return (x for line in text.splitlines() if (x := line.strip()) and not x.startswith("#"))


# --- the work in hand


class InHand(NamedTuple):
    """A case of work in hand: how it came to be, and what is scanned next."""

    name: str
    before: list[str]
    after: list[str]


def cases(text: str) -> Iterator[InHand]:
    """The cases of ``hands.txt``: a name in brackets, lines, ``--``, lines."""
    for block in text.split("\n[")[1:]:
        name, _, rest = block.partition("]\n")
        before, _, after = rest.partition("\n--\n")
        yield InHand(name, list(lines_of(before)), list(lines_of(after)))


def kept_hand(folder: Path, case: InHand, sql: str) -> dict[str, object]:
    """Plays one case on the dumped file; gives what is kept of it."""
    station = opened(folder, sql)
    acts = station.ledger.count()
    for line in case.before:
        print(f"{line}\n    {said(station.send(line))}")
    assert station.ledger.count() == acts, f"{case.name}: an act was recorded"
    hand, draft = station.desk.hand, station.ledger.draft().replace(str(folder), "/shop")
    station.ledger.keep(draft)
    station.desk = station.at(hand.area, hand.router, hand.bench)
    shown = screen(station.desk.face())
    station.desk = station.at(hand.area, hand.router, hand.bench)
    assert station.desk.resumed, case.name
    assert screen(station.desk.face()) == shown, case.name
    kept = {
        "area": hand.area,
        "router": hand.router,
        "bench": hand.bench,
        "draft": draft,
        "screen": shown,
        "next": [[line, said(station.send(line))] for line in case.after],
    }
    print(json.dumps(kept["next"], indent=1, ensure_ascii=False))
    assert station.ledger.check() == []
    station.ledger.close()
    return kept


# --- the file


def opened(folder: Path, sql: str) -> Kept:
    """Station 1 on its dumped file, and the shop as far as the file knows it."""
    folder.mkdir(parents=True, exist_ok=True)
    lay(folder / bootstrap.FILE, sql)
    shop = MemoryShop(site=SITE)
    station = Kept(folder, "1", shop, first_id=9001)
    for entry in station.ledger.chain(0):
        shop.add(SharedRow(entry.id, entry.verdict, tuple(entry.writes), entry.body))
    station.clock.pin(CLOCK)
    return station


CLOCK = "2026-11-25T10:00:00"


def lay(file: Path, sql: str) -> None:
    """Makes a station's file out of its dump."""
    made = sqlite3.connect(file)
    made.executescript(sql)
    made.close()


def dump(file: Path) -> str:
    """A station's file as SQL."""
    there = sqlite3.connect(file)
    text = "\n".join(there.iterdump())
    there.close()
    return text + "\n"


def main() -> int:
    """Makes the kept files anew in a folder."""
    out = Path(sys.argv[1])
    out.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        two = Two(Path(folder))
        two.play(lines_of((HERE / "day.txt").read_text(encoding="utf-8")))
        for station in two.stations.values():
            assert station.ledger.check() == []
            station.ledger.close()
        sql = dump(Path(folder) / "1" / bootstrap.FILE)
        (out / "shop.sql").write_text(sql, encoding="utf-8")
    kept = {}
    for case in cases((HERE / "hands.txt").read_text(encoding="utf-8")):
        print(f"== {case.name}")
        with tempfile.TemporaryDirectory() as folder:
            kept[case.name] = kept_hand(Path(folder), case, sql)
    text = json.dumps(kept, indent=1, ensure_ascii=False)
    (out / "hands.json").write_text(text + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
