"""``python -m tests.simulate SEEDS [FIRST]``: so many runs on all cores; 1 when one fails.

A long campaign is run in parts, one after the other: each begins where the last one ended.
"""

import gc
import logging
import os
import sys
import tempfile
import time
import traceback
from argparse import ArgumentParser, Namespace
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path

from tests.measured import note
from tests.simulate.founded import Founded, found
from tests.simulate.world import Tally, World

WANTED = 0.2  # of all acts, those that somebody was before in
SHOWN = 5  # failures that are printed whole
LINE = 1000  # seeds between two lines of how far it has come
_state: dict[str, Founded | Path] = {}


def prepare(top: Path) -> None:
    """Founds the shop once in this process, in a folder of its own under `top`."""
    folder = Path(tempfile.mkdtemp(dir=top))
    (folder / "run").mkdir()
    _state["founded"], _state["run"] = found(folder), folder / "run"


def prepare_quietly(top: Path) -> None:
    """The same in a process of the campaign: what the program logs is not for the report."""
    logging.disable(logging.WARNING)
    prepare(top)
    gc.freeze()  # the program itself need not be looked through again for every seed


def one(seed: int) -> tuple[int, Tally | str]:
    """One seed's tally, or how it failed."""
    founded, folder = _state["founded"], _state["run"]
    assert isinstance(founded, Founded)
    assert isinstance(folder, Path)
    try:
        return seed, World(founded, folder, seed).run()
    except Exception:  # noqa: BLE001 - whatever it is, the seed is told with it
        return seed, traceback.format_exc(limit=-4)


@dataclass
class Sum:
    """What the seeds so far came to."""

    first: int
    last: int = 0
    held: int = 0
    tally: Tally = Tally()
    failed: dict[int, str] = field(default_factory=dict)
    began: float = field(default_factory=time.monotonic)

    def add(self, seed: int, result: Tally | str) -> None:
        """One more seed."""
        self.last = seed
        if isinstance(result, str):
            self.failed[seed] = result
        else:
            self.held += 1
            self.tally += result

    def line(self) -> str:
        """The figures in one line."""
        t, passed = self.tally, time.monotonic() - self.began
        return (
            f"seeds {self.first} to {self.last}: {self.held} held, {len(self.failed)} failed; "
            f"{t.acts} acts, {t.contested / max(t.acts, 1):.1%} in conflict, "
            f"{t.lost} that need a look; {passed:.0f} s"
        )


def campaign(seeds: range, workers: int, *, to_first: bool = False) -> Sum:
    """All seeds, or `to_first` that fails; a line for every thousand."""
    done = Sum(seeds.start)
    memory = Path("/dev/shm")
    with (
        tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as top,
        ProcessPoolExecutor(workers, initializer=prepare_quietly, initargs=(Path(top),)) as pool,
    ):
        for seed, result in pool.map(one, seeds, chunksize=1 if to_first else 8):
            done.add(seed, result)
            if seed in done.failed:
                if len(done.failed) <= SHOWN:
                    print(f"--- seed {seed}\n{result}", flush=True)
                if to_first:
                    pool.shutdown(wait=False, cancel_futures=True)
                    break
            if seed % LINE == 0:
                print(done.line(), flush=True)
    return done


def named(counts: Counter[str]) -> str:
    """Counts with their names, the largest first."""
    return ", ".join(f"{n} × {name}" for name, n in counts.most_common())


def wanted() -> Namespace:
    """What was asked for on the command line."""
    parser = ArgumentParser(prog="python -m tests.simulate")
    parser.add_argument("count", type=int, nargs="?", default=2000)
    parser.add_argument("first", type=int, nargs="?", default=1)
    parser.add_argument("--workers", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--to-first", action="store_true", help="end at the first that fails")
    return parser.parse_args()


def main() -> int:
    """Runs the seeds and prints what came of them."""
    asked = wanted()
    seeds = range(asked.first, asked.first + asked.count)
    done = campaign(seeds, asked.workers, to_first=asked.to_first)
    print(done.line())
    note("three stations, one shop, every fault", done.line(), "all held, 20 % in conflict")
    print("faults:", named(done.tally.faults))
    print("acts shared:", named(done.tally.kinds))
    if done.failed:
        print("failed:", *done.failed)
    enough = done.tally.contested >= WANTED * done.tally.acts
    return 1 if done.failed or not enough else 0


if __name__ == "__main__":
    sys.exit(main())
