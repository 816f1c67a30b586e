"""``python -m tests.kill [RUNS]``: kills a scanning process at random moments.

A child records acts at one file and prints ``scan ID`` before and ``ack ID`` after each;
it is killed at a random moment (opening and idle checkpoints included) and started again,
where it first does its last scan once more, as a person would. After every run all that
was acknowledged must be in the history exactly once, and nothing may be there that was
not scanned. At the end the whole file is checked.
"""

import random
import subprocess
import sys
import tempfile
import time
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path

from station.ledger.ledger import Ledger
from tests.ledger.toy import RULES, act
from tests.measured import note

BETWEEN_WANTED = 0.3  # of the kills come between scan and answer: 60 of 200


@dataclass
class Tally:
    """What was seen of the child so far."""

    scanned: set[str] = field(default_factory=set)
    acked: set[str] = field(default_factory=set)
    between: int = 0
    died: int = 0  # children that ended before they were killed
    last: str = ""

    def take(self, lines: list[str]) -> None:
        """The lines of one run; a line cut off by the kill was not told."""
        open_scan = ""
        for line in lines:
            word, _, name = line.rstrip("\n").partition(" ")
            if not line.endswith("\n"):
                continue
            if word == "scan":
                self.scanned.add(name)
                self.last = open_scan = name
            elif word == "ack":
                self.acked.add(name)
                open_scan = ""
        self.between += bool(open_scan)


def child(path: Path, run: str, again: str) -> None:
    """Records acts until it is killed."""
    ledger = Ledger(path, RULES)
    print("ready", flush=True)
    chance = random.Random(run)
    for n in range(1_000_000):
        name = again if again and n == 0 else f"{run}-{n}"
        batch = ledger.take_number("batch") if chance.random() < 0.05 else f"{n % 7:05d}"
        print("scan", name, flush=True)
        done = ledger.record(act(name, batch=batch, qty=1 + n % 9), f"draft after {name}")
        assert done.entry == name
        print("ack", name, flush=True)
        if chance.random() < 0.2:
            ledger.idle()


def kill_once(path: Path, run: int, tally: Tally, chance: random.Random) -> None:
    """One child, killed at a random moment."""
    command = [sys.executable, "-m", "tests.kill", "--child", str(path), str(run), tally.last]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout
        lines = []
        if chance.random() < 0.9:
            told = chance.randrange(1, 40)  # lines, not seconds: a slow machine gets as far
            lines += [process.stdout.readline() for _ in range(told)]
            time.sleep(chance.uniform(0, 0.02))
        else:
            time.sleep(chance.uniform(0, 0.6))  # while it opens the file
        tally.died += process.poll() is not None
        process.kill()
        tally.take(lines + process.stdout.readlines())


def wrong(path: Path, tally: Tally) -> list[str]:
    """What is not as it should be."""
    ledger = Ledger(path, RULES)
    try:
        entries = [e for e in ledger.entries() if e.kind == "cut"]
        count = Counter(e.id for e in entries)
        lost = tally.acked - count.keys()
        strange = count.keys() - tally.scanned
        problems = ["a child ended by itself"] * tally.died
        problems += [f"acknowledged and lost: {name}" for name in sorted(lost)]
        problems += [f"never scanned: {name}" for name in sorted(strange)]
        problems += [f"{n} times: {name}" for name, n in count.items() if n > 1]
        last = entries[-1].id if entries else ""
        if last and ledger.draft() != f"draft after {last}":
            problems.append(f"the draft is {ledger.draft()!r}, the last act {last}")
        return problems + ledger.check()
    finally:
        ledger.close()


def kill_often(path: Path, runs: int, seed: int = 1) -> tuple[Tally, list[str]]:
    """So many kills; the problems found, after each run and at the end."""
    tally, chance = Tally(), random.Random(seed)
    for run in range(runs):
        kill_once(path, run, tally, chance)
        if run % 5 == 4 or run == runs - 1:
            problems = wrong(path, tally)
            if problems:
                return tally, problems
    return tally, []


def main() -> int:
    if sys.argv[1:2] == ["--child"]:
        child(Path(sys.argv[2]), sys.argv[3], sys.argv[4])
        return 0
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    with tempfile.TemporaryDirectory(prefix="kill-") as folder:
        tally, problems = kill_often(Path(folder) / "shop.station", runs)
    kills = f"{runs} kills, {tally.between} of them between scan and answer"
    came = f"{len(tally.acked)} acts acknowledged, {len(problems)} problems"
    print(f"{kills}; {came}")
    note(kills, came, "0 problems")
    for problem in problems:
        print(problem)
    return 1 if problems or tally.between < runs * BETWEEN_WANTED else 0


if __name__ == "__main__":
    sys.exit(main())
