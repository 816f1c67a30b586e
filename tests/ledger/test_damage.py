"""A file damaged anywhere: the station says so, saves what can be saved, and goes on."""

import gc
import logging
import shutil
from pathlib import Path
from random import Random

import pytest

from station.ledger.faults import Damaged
from station.ledger.ledger import Ledger
from tests.ledger.stations import Station
from tests.ledger.toy import RULES, act
from tests.simulate.shop import MemoryShop

SEEDS = 150
PAGE = 4096


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """A station's file: 40 entries of the shop and 20 acts of its own that are not shared yet."""
    station = Station(tmp_path_factory.mktemp("whole"), "1", MemoryShop())
    for n in range(60):
        if n == 40:
            assert station.share() == "shared"
        station.ledger.record(act(f"a{n}", batch=f"{n:05d}"), "draft")
    station.ledger.close()
    return station


def spoilt(raw: bytes, chance: Random) -> bytes:
    """The file with some of it overwritten, emptied or missing."""
    content = bytearray(raw)
    for _ in range(chance.randint(1, 4)):
        size = chance.choice((1, 16, 512, PAGE))
        at = chance.randrange(0, len(content) - size)
        at -= at % size
        kind = chance.random()
        if kind < 0.4:
            content[at : at + size] = chance.randbytes(size)
        elif kind < 0.8:
            content[at : at + size] = bytes(size)
        else:  # a part of it stands where another should
            there = chance.randrange(0, len(content) - size)
            content[at : at + size] = content[there - there % size :][:size]
    if chance.random() < 0.1:
        del content[chance.randrange(len(content)) :]
    return bytes(content)


def held_open(folder):
    """This process's open files in a folder; none where the system does not show them."""
    fds = Path("/proc/self/fd")
    names = [p.readlink() for p in fds.iterdir() if p.is_symlink()] if fds.is_dir() else []
    return [n for n in names if n.parent == folder]


@pytest.fixture
def held(monkeypatch):
    """What is open in its folder whenever a file is renamed: Windows would refuse that."""
    found, rename = [], Path.replace

    def replace(self, target):
        found.extend((target.name, n) for n in held_open(self.parent))
        return rename(self, target)

    monkeypatch.setattr(Path, "replace", replace)
    gc.disable()  # what is held is not to be freed by chance
    yield found
    gc.enable()


def opened_in_the_end(path, tally):
    """The ledger after as many new starts as it says are needed; sound then."""
    for _ in range(4):
        gc.collect()  # a fault's trace holds cursors, and they the lock: a new start has none
        try:
            ledger = Ledger(path, RULES, station="1")
        except Damaged as fault:
            tally.append("at the start" if fault.aside and fault.aside.exists() else "not aside")
            continue
        try:
            problems = ledger.check()
        except Damaged:
            tally.append("while open")
            ledger.close()
            continue
        if not problems:
            return ledger
        tally.append("in what is derived" if all("table" in p for p in problems) else "in entries")
        ledger.close()
        return None  # `check` and `rebuild` are for this
    raise AssertionError("it never became sound")


@pytest.mark.slow
def test_wherever_it_is_damaged_it_is_said_and_work_goes_on(whole, tmp_path, held):
    logging.disable(logging.CRITICAL)
    tally, kept = [], []
    for seed in range(SEEDS):
        folder = tmp_path / str(seed)
        folder.mkdir()
        path = folder / "shop.station"
        path.write_bytes(spoilt(whole.path.read_bytes(), Random(seed)))
        ledger = opened_in_the_end(path, tally)
        if ledger is not None:
            kept.append(ledger.count())
            assert ledger.record(act("next", batch="00099")).entry == "next"
            assert ledger.check() == []
            ledger.close()
        shutil.rmtree(folder)
    logging.disable(logging.NOTSET)
    assert held == []
    assert "not aside" not in tally
    assert len(tally) > SEEDS / 3
    assert {"at the start", "while open"} <= set(tally)
    assert sum(n > 20 for n in kept) > SEEDS / 3


@pytest.mark.slow
def test_a_schema_whose_damage_is_no_text_is_damage(whole, tmp_path):
    """The driver's own sentence quotes it, and then can't be read as text."""
    raw = whole.path.read_bytes()
    assert raw.count(b"digest BLOB")
    path = tmp_path / "shop.station"
    path.write_bytes(raw.replace(b"digest BLOB", b"digest\xc1BLOB"))
    tally = []
    ledger = opened_in_the_end(path, tally)
    assert tally[0] == "at the start", "set aside and told, not raised as a mistake of ours"
    if ledger:
        ledger.close()
