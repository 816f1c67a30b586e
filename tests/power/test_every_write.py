"""Every call to the disk fails once in a day in the shop: each ends in one red sentence.

The days are those of ``python -m tests.replay``. Before each scan the disk is told to fail at
its first call, at its second, and so on, until the scan needs no further call. Each time the
same scan is done again: nothing of it was there, and in the end the day's answers and states
are those of a disk that never failed.
"""

import logging
from collections import Counter

import pytest

from station.ledger.faults import DiskFault, DiskFull, NotWritable
from tests import replay
from tests.power.disks import FailingDisk
from tests.power.layer import library, under

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(library() is None, reason="SQLite is built into this driver"),
]
ALWAYS = 10**9
WAYS = {  # full or broken, and for how many calls
    "one call fails": (False, 1),
    "all calls fail from there": (False, ALWAYS),
    "the disk is full from there": (True, ALWAYS),
}
DAYS = {
    "01_ordinary_batch": tuple(WAYS),
    "08_split": ("all calls fail from there",),
    "14_power_cut": ("one call fails", "the disk is full from there"),
}
SENTENCES = {str(kind(replay.Path("shop.db"))) for kind in (DiskFault, DiskFull, NotWritable)}


@pytest.fixture(autouse=True)
def quiet():
    logging.disable(logging.CRITICAL)
    yield
    logging.disable(logging.NOTSET)


class FailingStage(replay.Stage):
    """A small shop on a disk whose n-th call fails, for every n of every scan."""

    def __init__(self, folder, full, times):
        super().__init__(folder)
        self.ledger.close()
        self.disk, self.times = FailingDisk(folder, full=full), times
        self.refused: Counter[str] = Counter()
        with under(self.disk):
            path = folder / replay.bootstrap.FILE
            self.ledger = replay.Ledger(path, self.ledger.rules, station="1")
        self.desk = self.new_desk()

    def recorded(self):
        """What counts as written: all but numbers taken for acts that are yet to come."""
        names = "SELECT id FROM entry WHERE kind != 'take_numbers' ORDER BY number"
        entries = self.ledger._store.rows(names)
        return entries, sorted(self.ledger.balances()), self.ledger.draft(), self.desk.hand.work

    def send(self, text):
        if text.startswith("@") or text == "restart":  # the test's own orders, no scans
            return super().send(text)
        code = replay.code_of(text, self.ledger, self.desk.face)
        for nth in range(1, ALWAYS):
            before = self.recorded()
            self.disk.fail(nth, self.times)
            given = self.desk.take(code)
            failed = self.disk.failed
            self.disk.heal()
            if not failed:
                if not self.disk.full:  # else the log goes on growing
                    self.ledger.idle()
                return given
            if str(given.answer.said) not in SENTENCES:
                return given  # the call that failed was not needed: moving the log, say
            self.refused[str(given.answer.said)] += 1
            assert (given.answer.tone, given.entry) == ("stop", None)
            assert str(given.answer.do)
            assert self.recorded() == before
        raise AssertionError


@pytest.mark.parametrize(("day", "way"), [(d, w) for d, ways in DAYS.items() for w in ways])
def test_a_day_on_a_disk_that_fails_at_every_call(day, way):
    full, times = WAYS[way]
    stages = []

    def staged(folder):
        stages.append(FailingStage(folder, full, times))
        return stages[0]

    with_faults = replay.play(replay.HERE / f"{day}.txt", staged=staged)
    assert any(line.startswith(">") for line in with_faults)
    assert sum(stages[0].refused.values()) > 60
