"""Some lives on every test run; ``python -m tests.power 2000`` is the whole campaign."""

import logging
import os
from random import Random

import pytest

from tests.power.__main__ import careless, one
from tests.power.disks import SECTOR, File, PowerDisk
from tests.power.layer import library, under

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(library() is None, reason="SQLite is built into this driver"),
]
LIVES = int(os.environ.get("POWER_LIVES", "60"))


@pytest.fixture(autouse=True)
def quiet():
    logging.disable(logging.CRITICAL)  # a checkpoint that fails is noted each time
    yield
    logging.disable(logging.NOTSET)


def test_wherever_the_power_goes_nothing_acknowledged_is_lost():
    lives = {seed: one(seed) for seed in range(1, LIVES + 1)}
    assert {seed: text for seed, text in lives.items() if isinstance(text, str)} == {}
    assert sum(t.lost for t in lives.values()) == 0
    assert sum(t.cuts for t in lives.values()) > LIVES
    assert sum(t.inside for t in lives.values()) > LIVES
    assert sum(t.acked for t in lives.values()) > 10 * LIVES


def test_a_station_that_does_not_wait_for_the_disk_loses_acts():
    lives = [careless(seed) for seed in range(1, 21)]
    assert all(not isinstance(t, str) for t in lives)
    assert sum(t.lost for t in lives) > 20


@pytest.mark.parametrize("setting", ["PRAGMA synchronous=NORMAL", "PRAGMA synchronous=OFF"])
def test_a_station_that_waits_less_is_found_out(setting, monkeypatch):
    from station.ledger import store  # noqa: PLC0415 - what is altered here

    held = tuple(setting if "synchronous" in s else s for s in store._SETTINGS)
    monkeypatch.setattr(store, "_SETTINGS", held)
    # so few are lost with NORMAL that twenty lives may all be lucky
    assert any("acknowledged and lost" in str(one(seed)) for seed in range(1, 101))


def states(file):
    return {file.left(Random(n), mercy) for n in range(300) for mercy in (0.0, 0.5, 1.0)}


def test_what_was_synced_is_left_and_the_rest_may_be_torn():
    file = File()
    file.since.append((0, b"a" * 3 * SECTOR))
    file.sync()
    assert states(file) == {b"a" * 3 * SECTOR}
    file.since += [(SECTOR, b"b" * 2 * SECTOR), (2 * SECTOR + 10, b"c" * SECTOR)]
    left = states(file)
    assert b"a" * 3 * SECTOR in left
    assert any(s[: 2 * SECTOR] == b"a" * 2 * SECTOR and b"c" in s for s in left)  # out of order
    assert any(s[SECTOR] != s[2 * SECTOR] for s in left)  # torn between two sectors
    assert {len(s) for s in left} == {3 * SECTOR, 3 * SECTOR + 10}
    assert {s[:SECTOR] for s in left} == {b"a" * SECTOR}
    file.since.append(100)
    assert {len(s) for s in states(file)} == {100, 3 * SECTOR, 3 * SECTOR + 10}


def test_a_file_that_was_made_or_renamed_may_be_so_or_not(tmp_path):
    seen = set()
    for seed in range(60):
        folder = tmp_path / str(seed)
        folder.mkdir()
        (folder / "a").write_bytes(b"old")
        disk = PowerDisk(folder, Random(seed), 3)
        with under(disk):
            (folder / "b").write_bytes(b"new")
            disk.asked("create", str(folder / "b"))
            (folder / "a").replace(folder / "c")
            with pytest.raises(OSError, match="power is off"):
                (folder / "b").replace(folder / "a")
        disk.cut()
        seen.add(tuple(sorted(p.name for p in folder.iterdir())))
    assert seen == {("a",), ("a", "b"), ("b", "c"), ("a", "c")}
