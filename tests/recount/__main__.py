"""``python -m tests.recount [DAYS] [SEED]``: counts days of chance from their history."""

import re
import sys
import tempfile
from collections import Counter
from collections.abc import Callable
from contextlib import AbstractContextManager
from functools import partial
from pathlib import Path

from tests.measured import note
from tests.recount.census import Census
from tests.recount.check import Recount
from tests.recount.days import Day, Steps, demo_day, small_day, wide_day

STEPS = 300  # touches and scans of a day
Make = Callable[[Path, int], AbstractContextManager[tuple[Day, Steps]]]


def kind_of(n: int) -> tuple[str, Make]:
    """The kind of the n-th day: the wide shop once, one night, else demo shops and small ones."""
    if n == 0:
        return "wide", wide_day
    if n == 1:
        return "midnight", partial(demo_day, midnight=True)
    return ("demo", demo_day) if n % 2 else ("small", small_day)


def count_day(make: Make, seed: int, steps: int = STEPS) -> Recount:
    """Plays one day and counts it again: screens at every step, state and papers three times."""
    with tempfile.TemporaryDirectory() as folder, make(Path(folder), seed) as (day, going):
        recount = Recount(day)
        for n, _ in enumerate(going, 1):
            recount.look()
            if n % (steps // 3) == 0:
                recount.look_at_all()
            if n >= steps:
                break
        return recount


def main() -> int:
    """Counts days again; prints what differs. Ends with 1 where anything does."""
    days, seed = (*map(int, sys.argv[1:3]), *(50, 1)[len(sys.argv) - 1 :])
    figures, wrong, census = 0, 0, Census()
    for n in range(days):
        kind, make = kind_of(n)
        recount = count_day(make, seed + n)
        figures += recount.census.counted.total()
        wrong += len(recount.wrong)
        census.add(recount.census)
        told: Counter[str] = Counter()
        for difference in recount.wrong:
            like = re.sub(r"\d+", "#", difference)[:70]
            told[like] += 1
            if told[like] <= 2:
                print(f"  {difference[:400]}")
        print(
            f"day {n + 1}, {kind}, seed {seed + n}: {len(recount.books.entries)} entries, "
            f"{recount.census.counted.total()} figures counted again, {len(recount.wrong)} differ",
            flush=True,
        )
    for line in census.tell_all():
        print(f"  {line}")
    print(f"{days} days: {census.tell_share()}; {wrong} differ")
    note("figures counted again from the history", f"{days} days: {census.tell_share()}",
         f"{wrong} differ")  # fmt: skip
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
