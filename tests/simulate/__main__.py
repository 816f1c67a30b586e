"""``python -m tests.simulate SEEDS [FIRST]``: so many runs on all cores; 1 when one fails."""

import logging
import os
import sys
import tempfile
import time
import traceback
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.simulate.founded import Founded, found
from tests.simulate.world import Tally, World

WANTED = 0.2  # of all acts, those that somebody was before in
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


def one(seed: int) -> tuple[int, Tally | str]:
    """One seed's tally, or how it failed."""
    founded, folder = _state["founded"], _state["run"]
    assert isinstance(founded, Founded)
    assert isinstance(folder, Path)
    try:
        return seed, World(founded, folder, seed).run()
    except Exception:  # noqa: BLE001 - whatever it is, the seed is told with it
        return seed, traceback.format_exc(limit=-4)


def campaign(seeds: range, workers: int) -> tuple[list[Tally], dict[int, str]]:
    """All seeds; the tallies of those that held, and how the others failed."""
    held, failed = [], {}
    memory = Path("/dev/shm")
    with (
        tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as top,
        ProcessPoolExecutor(workers, initializer=prepare_quietly, initargs=(Path(top),)) as pool,
    ):
        for seed, result in pool.map(one, seeds, chunksize=8):
            if isinstance(result, str):
                failed[seed] = result
            else:
                held.append(result)
    return held, failed


def main() -> int:
    """Runs the seeds and prints what came of them."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    began = time.monotonic()
    held, failed = campaign(range(first, first + count), os.cpu_count() or 1)
    acts, contested = sum(t.acts for t in held), sum(t.contested for t in held)
    faults = sum((t.faults for t in held), Counter())
    print(f"{len(held)} of {count} seeds held in {time.monotonic() - began:.0f} s")
    print(
        f"{acts} acts, {contested / max(acts, 1):.0%} in conflict, "
        f"{sum(t.lost for t in held)} that need a look"
    )
    print("faults:", ", ".join(f"{n} × {kind}" for kind, n in sorted(faults.items())))
    for seed, text in list(failed.items())[:5]:
        print(f"--- seed {seed}\n{text}")
    return 1 if failed or contested < WANTED * acts else 0


if __name__ == "__main__":
    sys.exit(main())
