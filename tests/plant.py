"""``python -m tests.plant``: breaks lines on purpose, one at a time; the tests must notice.

Each plant goes into a copy of the tree, its tests run there, and the line is mended again.
"""

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from tests.measured import note
from tests.plants import PLANTS, Plant
from tests.plants_counts import COUNTS
from tests.plants_cutting import CUTTING
from tests.plants_holds import HOLDS
from tests.plants_planning import PLANNING
from tests.plants_sharing import CLOSINGS, SHARING, STOLEN_PASSWORDS

ROOT = Path(__file__).resolve().parent.parent
ENOUGH_S = 600
NOT_COPIED = shutil.ignore_patterns(".*", "__pycache__", "*.pyc")


def planted(text: str, plant: Plant) -> str:
    """The file's text with the broken line. Raises ValueError unless it stands just once."""
    if text.count(plant.old) != 1:
        raise ValueError(f"{plant.file}: stands {text.count(plant.old)} times: {plant.old!r}")
    return text.replace(plant.old, plant.new)


def caught(folder: Path, plant: Plant) -> str:
    """Which of the plant's tests fails on the broken line; empty: none does."""
    file = folder / plant.file
    sound = file.read_text(encoding="utf-8")
    file.write_text(planted(sound, plant), encoding="utf-8")
    try:
        return next(filter(None, (fails(folder, test) for test in plant.tests)), "")
    finally:
        file.write_text(sound, encoding="utf-8")


def fails(folder: Path, test: str) -> str:
    """How a test path, a day in the shop or the simulator fails in the copy; empty: it holds."""
    kind, _, name = test.partition(":")
    words = {
        "replay": ["-m", "tests.replay", name],
        "simulate": ["-m", "tests.simulate", name, "--to-first"],
    }.get(kind, ["-m", "pytest", "-x", "-q", test])
    quiet = {"QT_QPA_PLATFORM": "offscreen", "PYTHONDONTWRITEBYTECODE": "1"}
    try:
        done = subprocess.run(
            [sys.executable, *words],
            cwd=folder,
            env=os.environ | quiet,
            capture_output=True,
            text=True,
            timeout=ENOUGH_S,
            check=False,
        )
    except subprocess.TimeoutExpired:
        return f"{test}, which does not end"
    if done.returncode != 1:
        return ""
    if kind != "simulate":
        return test
    seed = re.search(r"^failed: (\d+)$", done.stdout, re.MULTILINE)
    return f"the simulator's seed {seed[1]}" if seed else "the simulator, as it founds the shop"


def choose(words: list[str], draw: int | None, seed: int) -> list[Plant]:
    """Those whose file or reason holds a word given, or whose group is; so many drawn of them."""
    every = (*PLANTS, *SHARING, *CLOSINGS, *STOLEN_PASSWORDS, *CUTTING, *HOLDS, *COUNTS, *PLANNING)
    groups = {"holds:": HOLDS, "counts:": COUNTS}
    chosen = [
        p
        for p in every
        if not words or any(w in p.file + p.why or p in groups.get(w, ()) for w in words)
    ]
    if draw is None or draw >= len(chosen):
        return chosen
    return random.Random(seed).sample(chosen, draw)


def main() -> int:
    """Plants each that is chosen; 1 when one is missed."""
    reading = argparse.ArgumentParser(prog="python -m tests.plant")
    said = "what stands in its file or reason; “holds:” or “counts:” for all of these"
    reading.add_argument("words", nargs="*", help=said)
    reading.add_argument("--draw", type=int, help="so many of them")
    reading.add_argument("--seed", type=int, default=1, help="that draws them")
    told = reading.parse_args()
    chosen = choose(told.words, told.draw, told.seed)
    missed = 0
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch) / "copy"
        shutil.copytree(ROOT, folder, ignore=NOT_COPIED)
        if broken := [t for t in sorted({t for p in chosen for t in p.tests}) if fails(folder, t)]:
            print(f"These fail with nothing planted: {', '.join(broken)}")
            return 1
        for plant in chosen:
            seen = caught(folder, plant)
            missed += not seen
            how = f"caught by {seen}" if seen else "NOT CAUGHT"
            note(f"{plant.why} ({plant.file})", how, "caught")
            print(f"{plant.file} - {plant.why}: {how}", flush=True)
    caught_of = f"{len(chosen) - missed} of {len(chosen)}"
    print(f"{caught_of} broken lines caught")
    note("broken lines caught", caught_of, "all")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
