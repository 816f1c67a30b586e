"""``python -m demo_db --out DIR [--now TIME] [--seed N]``: builds the demo shop, timed."""

import argparse
import sys
from datetime import datetime
from pathlib import Path
from time import perf_counter

from demo_db.build import build
from station.bootstrap import FILE


def main() -> int:
    """Builds into a folder and says how long it took."""
    parser = argparse.ArgumentParser(prog="python -m demo_db", description=__doc__)
    parser.add_argument("--out", type=Path, required=True, help="folder for the shop's file")
    parser.add_argument("--now", default="", help="build as if it were this time")
    parser.add_argument("--seed", type=int, default=7)
    options = parser.parse_args()
    now = datetime.fromisoformat(options.now) if options.now else datetime.now()
    options.out.mkdir(parents=True, exist_ok=True)
    target = options.out / FILE
    began = perf_counter()
    try:
        build(target, now, options.seed, _told)
    except FileExistsError:
        sys.stderr.write("\nThere is a shop in that folder already: choose another.\n")
        return 1
    sys.stdout.write(f"\nBuilt in {perf_counter() - began:.1f} s\n")
    return 0


def _told(done: int, whole: int) -> None:
    sys.stdout.write(f"\rday {done} of {whole}")
    sys.stdout.flush()


if __name__ == "__main__":
    sys.exit(main())
