"""Days in shops of chance: screens touched, cards scanned, numbers typed, time going on.

A day begins on one of three shops: the small one of the tests, a demo shop of a few days, and
the wide shop. Whatever is done goes through a real desk; only the history is handed on.
"""

import random
import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import fields, is_dataclass
from datetime import datetime, timedelta
from pathlib import Path

from demo_db.build import build
from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.commands.text_station import take_line
from station.ledger.ledger import Ledger
from station.shop.cards import button
from station.shop.faces import Face
from station.shop.words import Say
from tests import answers
from tests.recount.wide import found_wide_shop
from tests.replay import PIN, START, code_of, small_shop

Steps = Iterator[None]
AREAS = ("loading", "popping", "trimming", "packing", "cart", "today", "office", "plan")
LANGUAGE = button("language")  # papers are counted in English
DULL = ("revision", "part", "shape")  # fields of blocks that hold no codes
SEEN = re.compile(r"\b(batch|pack) (\d{5})", re.IGNORECASE)


class Day:
    """A shop with one desk, at work; `bodies` gives the entries that are new since last time."""

    def __init__(self, ledger: Ledger, at: str, dice: random.Random) -> None:
        self.ledger, self.dice, self.clock = ledger, dice, Clock(at)
        self._ids, self._read = iter(range(1, 10**6)), 0
        self.desk = bootstrap.make_desk(
            ledger, Where(area="loading"), self.clock, ids=lambda: f"r{next(self._ids):06d}"
        )
        self.seen: dict[str, list[str]] = {"batch": ["00900"], "pack": ["00001"]}

    def bodies(self) -> list[str]:
        """The exported entries that are new since the last asking."""
        rows = self.ledger._store.run(
            "SELECT number, body FROM entry WHERE number > ? ORDER BY number", (self._read,)
        ).fetchall()
        self._read = rows[-1][0] if rows else self._read
        return [body for _, body in rows]

    def send(self, line: str) -> None:
        """One line of a day, as `tests.replay` writes it; ``@after 5`` lets minutes pass."""
        line = answers.filled(line, self.seen, self.dice)
        word, _, minutes = line.partition(" ")
        if word == "@after":
            self.pass_time(int(minutes))
            return
        if line == "restart":
            return
        if line[:1] == "'":
            given = self.desk.take(line[1:])
        else:
            text = line if line.startswith("@") else code_of(line, self.ledger)
            given = take_line(self.desk, self.clock, text)
        for kind, number in SEEN.findall(str(given.answer.said)):
            self.seen[kind.lower()].append(number)

    def pass_time(self, minutes: float) -> None:
        """Lets the shop's clock go on."""
        later = datetime.fromisoformat(self.clock()) + timedelta(minutes=minutes)
        self.clock.pin(later.isoformat(timespec="seconds"))


@contextmanager
def small_day(folder: Path, seed: int) -> Iterator[tuple[Day, Iterator[None]]]:
    """The small shop, from the morning on."""
    dice = random.Random(seed)
    with _ledger(folder) as ledger:
        begin = "2026-11-25T07:00:00"
        bootstrap.seed_shop(ledger, small_shop(), begin, stock=START)
        day = Day(ledger, begin, dice)
        yield day, _touches(day)


@contextmanager
def demo_day(
    folder: Path, seed: int, *, midnight: bool = False
) -> Iterator[tuple[Day, Iterator[None]]]:
    """A demo shop of two days, worked on by touches of chance; at night on request."""
    dice = random.Random(seed)
    now = datetime(2026, 11, 25, 23, 20) if midnight else datetime(2026, 11, 25, 10, 42)
    now += timedelta(days=dice.randrange(20), minutes=0 if midnight else dice.randrange(300))
    build(folder / bootstrap.FILE, now, seed=seed, days=2)
    with _ledger(folder) as ledger:
        day = Day(ledger, now.isoformat(timespec="seconds"), dice)
        yield day, _touches(day)


@contextmanager
def wide_day(folder: Path, seed: int) -> Iterator[tuple[Day, Iterator[None]]]:
    """The wide shop: 300 parts, 400 open orders, 12 routers, 2,000 packs that left."""
    dice = random.Random(seed)
    with _ledger(folder) as ledger:
        begin = "2026-11-25T09:10:00"
        found_wide_shop(ledger, begin, dice)
        day = Day(ledger, begin, dice)
        yield day, _touches(day)


@contextmanager
def _ledger(folder: Path) -> Iterator[Ledger]:
    ledger = Ledger(folder / bootstrap.FILE, bootstrap.load_rules(), station="1")
    ledger.hurry(on=True)
    try:
        yield ledger
    finally:
        ledger.close()


def _touches(day: Day) -> Iterator[None]:
    """Touches what the screens show, without end."""
    dice, face = day.dice, day.desk.face()
    errand: Iterator[str] = iter(())
    while True:
        if dice.random() < 0.04:
            errand = answers.errand(dice)
        line = next(errand, "")
        if line:
            day.send(line)
        else:
            _touch(day, face)
        if dice.random() < 0.15:
            day.pass_time(dice.choice((0.5, 2, 5, 12)))
        if day.desk.hand.area == "plan":
            day.desk.look_ahead()
        yield
        face = day.desk.face()


def _touch(day: Day, face: Face) -> None:
    """One touch, number, scan or change of place."""
    dice, desk = day.dice, day.desk
    if dice.random() < 0.03:
        desk.at(area=dice.choice(AREAS), router=str(dice.randint(1, 5)), bench="1")
        desk.sign_in(dice.choice(("02", "03", "04", "05")))
    codes = [code for code in _codes(face) if code != LANGUAGE]
    first = [p.code for p in face.presses if p.style == "primary"]
    if desk.question() == "pin":
        desk.take(PIN)
    elif dice.random() < 0.15 or not codes:
        desk.take(str(dice.choice((0, 1, 1, 2, 3, 5, 8, 12, 40))))
    elif first and dice.random() < 0.3:
        desk.take(dice.choice(first))
    else:
        desk.take(dice.choice(codes))


def _codes(shown: object) -> Iterator[str]:
    """Every code that a touch on the screen would send."""
    if is_dataclass(shown):
        for each in fields(shown):
            value = getattr(shown, each.name)
            if each.name in ("code", "minus", "plus") and value:
                yield value
            elif each.name not in DULL:
                yield from _codes(value)
    elif isinstance(shown, tuple) and not isinstance(shown, Say):
        for one in shown:
            if isinstance(one, str) and re.fullmatch(r"[A-Z][0-9A-Z-]{3,}", one):
                yield one
            else:
                yield from _codes(one)
