"""``python -m tests.shops N [SEED]``: N shops from a seed on; 1 where planning falls short."""

import sys
import time
from argparse import ArgumentParser
from concurrent.futures import ProcessPoolExecutor
from functools import partial

from tests.measured import note
from tests.shops.judge import Verdict, judge
from tests.shops.planned import plan

BETTER = 0.9  # of shops: fewer late orders with no more sheets
LEFT_ALONE = 0.95  # of shops: nothing taken back that was needed within its lead time


def tell(verdicts: list[Verdict]) -> tuple[list[str], bool]:
    """The figures in words, and if they are as wanted."""

    def add(name: str) -> int:
        return sum(getattr(v, name) for v in verdicts)

    count = len(verdicts)
    better = sum(v.fewer_late and v.no_more_sheets for v in verdicts)
    alone = sum(not v.needed for v in verdicts)
    needed = sum(len(v.needed) for v in verdicts)
    better_words = f"{add('fewer_late')} fewer late, {add('no_more_sheets')} no more sheets"
    owed = f"and {add('owed'):.0f} owed", f"and {add('owed_by_marks'):.0f}"
    lines = [
        f"{better} of {count} shops: fewer late orders with no more sheets ({better_words})",
        f"late: {add('late')} of {add('orders')}, by marks {add('late_by_marks')}",
        f"sheets: {add('sheets')} {owed[0]}, by marks {add('sheets_by_marks')} {owed[1]}",
        f"hopeless when they came: {add('hopeless')} late, by marks {add('hopeless_by_marks')}",
        f"a tie with no others late in {add('tied_at_least')} shops",
        f"no more cut, whatever is owed, in {add('no_more_cut')} shops",
        f"no more with the same left on the rack, in {add('no_more_used')} shops",
        f"a part blocked {add('blocking')} times, {add('not_named')} of them not named",
        f"{add('named_for_nothing')} parts named though enough was under way",
        f"batches taken back: {add('taken_back')}, {needed} needed within their lead time",
        f"none of those in {alone} of {count} shops",
    ]  # fmt: skip
    kept = better >= BETTER * count and alone >= LEFT_ALONE * count
    return lines, kept and not add("not_named")


def main() -> int:
    parser = ArgumentParser(prog="python -m tests.shops")
    parser.add_argument("count", type=int, nargs="?", default=200)
    parser.add_argument("first", type=int, nargs="?", default=1)
    parser.add_argument("--each", action="store_true", help="a line for each shop")
    parser.add_argument("--workers", type=int, default=1)
    given, began, verdicts = parser.parse_args(), time.monotonic(), []
    seeds = range(given.first, given.first + given.count)
    with ProcessPoolExecutor(given.workers) as pool:
        for verdict in pool.map(partial(judge, plan=plan), seeds):
            verdicts.append(verdict)
            if given.each:
                print(verdict, flush=True)
    lines, kept = tell(verdicts)
    print(*lines, f"{time.monotonic() - began:.0f} s", sep="\n")
    note("simulated shops of six weeks", "; ".join(lines), "90 %, all named, 95 %")
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
