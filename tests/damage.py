"""``python -m tests.damage N [FIRST]``: damages a station's files and looks what becomes of them.

A window or a text station, alone or sharing, records sixty acts and loses its power. Then a bit,
some bytes or pages of its file, its log or its newest backup are spoilt, or the file is cut short
or gone. However that ends: no act that was answered is missing while its text can still be read
in any file beside; what is missing is told with its time before work goes on; nothing is deleted
that was damaged; and no file is renamed while this program has one open there, which Windows
would refuse.
"""

import gc
import io
import logging
import shutil
import sys
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

from station.clock import Clock
from station.commands.text_station import run_text_station
from station.desk.desk import Given
from station.ledger.faults import Damaged, Empty
from station.ledger.ledger import Ledger
from tests.ledger.stations import Station
from tests.ledger.toy import RULES, act
from tests.measured import note
from tests.power.layer import in_memory
from tests.simulate.shop import MemoryShop

ACTS = 60
SHARED = 35  # of them the shop has, where the station shares
SAVED = 25  # of them stand in the backup
PAGE = 8192
STATIONS = ("window", "text station")
TARGETS = ("shop", "log", "backup", "shop and log")
HOWS = ("bit", "bytes", "zeroes", "page elsewhere", "cut", "gone")
STARTS = 5


def at_of(n: int) -> str:
    """When act n was done: a minute after the one before."""
    return f"2026-11-25T{10 + n // 60:02}:{n % 60:02}:00"


@dataclass
class Left:
    """What a station left behind when its power went: its folder, its shop, and its acts."""

    folder: Path
    shop: MemoryShop
    sharing: bool
    texts: dict[str, bytes] = field(default_factory=dict)  # by id, of what was answered
    at: dict[str, str] = field(default_factory=dict)


@dataclass
class Found:
    """What one damage came to."""

    wrong: list[str] = field(default_factory=list)
    lost: int = 0
    told: int = 0


class Scans:
    """A desk of toy acts for the text station: a line is the number of an act."""

    secret, recorded = False, None

    def __init__(self, ledger: Ledger) -> None:
        self.ledger, self.at = ledger, dict[str, str]()

    def take(self, text: str) -> Given:
        """Records one act, and notes when it was done once it is answered."""
        n = int(text)
        name = f"act-{n:04}"
        done = self.ledger.record(act(name, at=at_of(n), batch=f"{n % 9:05d}", qty=1 + n % 9))
        assert done.entry == name
        self.at[name] = at_of(n)
        if n == SAVED:
            self.ledger.backup(self.ledger.path.parent / "backups" / "newest.db")
        return Given(done.answer, done.entry, done.moves)


def leave(folder: Path, station: str, *, sharing: bool) -> Left:
    """Lets a station work, and copies its files as they lie when its power goes."""
    shop = MemoryShop()
    left = Left(folder / "left", shop, sharing)
    (folder / "at work" / "backups").mkdir(parents=True)
    made = _ledger(folder / "at work", shop, sharing=sharing)
    said = list[str]()
    desk: Any = Scans(made.ledger if isinstance(made, Station) else made)
    for first, last in ((0, SHARED), (SHARED, ACTS)):
        for n in range(first, last):
            if station == "window":
                desk.take(str(n))
                if n % 20 == 7:
                    desk.ledger.idle()
            else:
                run_text_station(desk, Clock(), io.StringIO(f"{n}\n"), said.append, print)
        if isinstance(made, Station) and last == SHARED:
            made.share()
    shutil.copytree(folder / "at work", left.folder)
    left.at = desk.at
    for name in left.at:
        (row,) = desk.ledger._store.run(
            "SELECT body FROM entry WHERE id = ? UNION SELECT body FROM pending WHERE id = ?",
            (name, name),
        ).fetchall()
        left.texts[name] = row[0].encode()
    desk.ledger.close()
    return left


def _ledger(folder: Path, shop: MemoryShop, *, sharing: bool) -> Any:
    station = Station(folder, "1", shop) if sharing else None
    return station or opened(folder, shop, sharing=False)


def opened(folder: Path, shop: MemoryShop, *, sharing: bool) -> Ledger:
    """Opens the file as after a start; one that shares does so with its shop."""
    site = shop.site if sharing else ""
    ledger = Ledger(folder / "shop.station", RULES, station="1", site=site)
    if sharing and not ledger.shared:
        ledger.share_with(shop.site)
    return ledger


def spoil(raw: bytes, how: str, chance: Random) -> bytes | None:
    """Gives the content with some of it spoilt; None: the file is gone."""
    content = bytearray(raw)
    if how == "gone" or not content:
        return None
    if how == "cut":
        return bytes(content[: chance.choice((0, chance.randrange(len(content))))])
    if how == "bit":
        content[chance.randrange(len(content))] ^= 1 << chance.randrange(8)
        return bytes(content)
    for _ in range(chance.randint(1, 3)):
        size = min(chance.choice((1, 16, 512, PAGE)), len(content) - 1)
        at = chance.randrange(len(content) - size)
        at -= at % size
        there = chance.randrange(len(content) - size)
        fill = {"bytes": chance.randbytes(size), "zeroes": bytes(size)}
        content[at : at + size] = fill.get(how, bytes(content[there - there % size :][:size]))
    return bytes(content)


@contextmanager
def watched(wrong: list[str]) -> Iterator[None]:
    """Notes what is open in its folder whenever a file is renamed there."""
    rename, fds = Path.replace, Path("/proc/self/fd")

    def replace(self: Path, target: Path) -> Path:
        held = [fd.readlink() for fd in fds.iterdir() if fd.is_symlink()] if fds.is_dir() else []
        here = (name.name for name in held if name.parent == self.parent)
        wrong.extend(f"{name} is open while {self.name} becomes {target.name}" for name in here)
        return rename(self, target)

    Path.replace = replace  # type: ignore[method-assign, assignment]
    gc.collect()
    gc.disable()  # what is held is not to be freed by chance
    try:
        yield
    finally:
        gc.enable()
        Path.replace = rename  # type: ignore[method-assign]


def start(folder: Path, left: Left, shop: MemoryShop, told: list[Damaged | Empty]) -> Ledger:
    """Starts until the station is sound, each time as a person is told to; gives its ledger."""
    for _ in range(STARTS):
        try:
            ledger = opened(folder, shop, sharing=left.sharing)
        except (Damaged, Empty) as fault:
            told.append(fault.with_traceback(None))
            continue
        try:
            if not ledger.check():
                return ledger
        except Damaged:
            pass
        ledger.close()
    raise AssertionError("it never became sound")


def share(ledger: Ledger, left: Left, shop: MemoryShop, folder: Path) -> Ledger:
    """Lets a station that shares take in all that the shop has."""
    if not left.sharing:
        return ledger
    station = Station.__new__(Station)
    station.path, station.number, station.shop = folder / "shop.station", "1", shop
    ledger.close()
    Station.__init__(station, folder, "1", shop)
    assert station.share() == "shared"
    return station.ledger


def try_one(seed: int, left: Left, folder: Path) -> Found:
    """Damages a copy of what was left, starts the station on it, and looks what became of it."""
    chance, found = Random(seed), Found()
    target, how = TARGETS[seed % 4], HOWS[seed // 4 % 6]
    shutil.copytree(left.folder, folder)
    logs = set[bytes]()
    for name in _files(target):
        file = folder / name
        content = spoil(file.read_bytes(), how, chance)
        file.unlink()
        if content is not None:
            file.write_bytes(content)
            logs |= {content} if name.endswith("-wal") else set()  # it is taken into the shop
    readable = _readable(folder, left)
    told, shop = list[Damaged | Empty](), left.shop.copy()
    try:
        with watched(found.wrong):
            ledger = start(folder, left, shop, told)
        ledger = share(ledger, left, shop, folder)
        there = {entry.id for entry in (*ledger.chain(0), *ledger.entries())}  # looks as well
        _judge(found, left, there, readable, told)
        assert ledger.record(act("next", at=at_of(99), batch="00099")).entry == "next"
        found.wrong += ledger.check()
        ledger.close()
    except Exception as error:  # noqa: BLE001 - whatever a start raises is what is looked for
        found.wrong.append(repr(error))
    if told:
        found.wrong += _deleted(folder, logs)
        found.wrong += [f"{f} is not set aside" for f in told if f.aside and not f.aside.exists()]
    found.told = len(told)
    found.wrong = [f"{seed} ({target}, {how}): {why}" for why in dict.fromkeys(found.wrong)]
    return found


def _files(target: str) -> list[str]:
    named = {"shop": "shop.station", "log": "shop.station-wal", "backup": "backups/newest.db"}
    return [named[word] for word in target.split(" and ")]


def _readable(folder: Path, left: Left) -> set[str]:
    """The acts whose text stands whole in any file, each looked for by itself."""
    raw = [file.read_bytes() for file in folder.rglob("*") if file.is_file()]
    return {id_ for id_, text in left.texts.items() if any(text in each for each in raw)}


def _judge(
    found: Found, left: Left, there: set[str], readable: set[str], told: list[Damaged | Empty]
) -> None:
    lost = left.at.keys() - there
    found.lost = len(lost)
    for name in sorted(lost & readable):
        found.wrong.append(f"{name} is missing and can be read")
    for name in sorted(lost):
        if not any(f.since <= left.at[name] and left.at[name] <= f.until for f in told):
            found.wrong.append(f"{name} of {left.at[name]} is missing, and nobody was told")


def _deleted(folder: Path, logs: set[bytes]) -> list[str]:
    there = [file.read_bytes() for file in folder.rglob("*") if file.is_file()]
    return [f"a log of {len(log)} bytes is gone" for log in logs if log and log not in there]


def run(count: int, first: int = 1) -> tuple[list[Found], Counter[str]]:
    """Damages so many files; gives what each came to, and what they were."""
    came, kinds = list[Found](), Counter[str]()
    logging.disable(logging.CRITICAL)
    try:
        with in_memory() as made:
            every = [
                leave(made / f"{station} {sharing}", station, sharing=sharing)
                for station in STATIONS
                for sharing in (False, True)
            ]
            for seed in range(first, first + count):
                folder = made / str(seed)
                came.append(try_one(seed, every[seed // 24 % 4], folder))
                kinds[TARGETS[seed % 4]] += 1
                shutil.rmtree(folder)
    finally:
        logging.disable(logging.NOTSET)
    return came, kinds


def main() -> int:
    """Runs the campaign and prints what came of it."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    came, kinds = run(count, first)
    wrong = [why for found in came for why in found.wrong]
    for why in wrong[:40]:
        print(why)
    what = ", ".join(f"{n} × {name}" for name, n in kinds.items())
    said = (
        f"{sum(f.told for f in came)} times told; {sum(f.lost for f in came)} acts could be read "
        f"nowhere, all told with their time; {len(wrong)} problems"
    )
    print(f"{count} damaged stations ({what}): {said}")
    note(f"{count} damaged stations", said, "0 problems")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
