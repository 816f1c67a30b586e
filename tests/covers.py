"""``python -m tests.covers N [SEED]``: N small problems of sheets against every cover there is.

Problems are drawn from their written description (`tests/planning/drawn.py`) and answered as
``station plan --problem`` answers them. Each answer is verified by rules of its own, its wanted
pieces in exact fractions, its cost against the least of all covers, its bound against that too.
The exit code is 1 where one is wrong, dearer or refused.
"""

import argparse
import json
import sys
import tempfile
from pathlib import Path

from station.commands.common import CommandError
from station.commands.plan import solve_problem
from station.started import count_seconds_taken
from tests.measured import note
from tests.planning.drawn import Problem, draw_small
from tests.planning.exact import count_wanted, find_least
from tests.planning.verify import find_faults

NEAR = 1e-6  # minutes
SECONDS = 20.0  # for each, so that a busy PC ends them too


def judge(problem: Problem, path: Path) -> tuple[str, str]:
    """How an answer stands, in a word, and what is wrong with it."""
    path.write_text(json.dumps(problem), encoding="utf-8")
    try:
        answer = solve_problem(path, count_seconds_taken() + SECONDS)
    except CommandError as refused:
        return "refused", str(refused)
    wanted = count_all_wanted(problem)
    if faults := find_faults(problem, answer, wanted):
        return "wrong", "; ".join(faults)
    least, cost, bound = find_least(problem, wanted), answer["objective"], answer["lower_bound"]
    if bound > least + NEAR:
        return "wrong", f"proven are {bound}, and {least} is enough"
    if cost > least + NEAR:
        return "dearer", f"{cost}, and {least} is enough"
    return ("proven" if bound >= least - NEAR else "least"), ""


def count_all_wanted(problem: Problem) -> dict[str, int]:
    """The pieces wanted of each part, in fractions of the decimals as they are written."""
    good, certainty = problem.get("good", {}), problem.get("certainty")
    return {
        part: count_wanted(int(need), str(good[part]), str(certainty))
        if part in good and certainty is not None else int(need)
        for part, need in problem["need"].items()
    }  # fmt: skip


def main() -> int:
    """Judges all, tells each that is not the least, then the figures."""
    reader = argparse.ArgumentParser(prog="python -m tests.covers")
    reader.add_argument("count", type=int, nargs="?", default=500)
    reader.add_argument("first", type=int, nargs="?", default=1)
    given = reader.parse_args()
    said = dict.fromkeys(("proven", "least", "dearer", "wrong", "refused"), 0)
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(given.first, given.first + given.count):
            word, why = judge(draw_small(seed), Path(folder) / "problem.json")
            said[word] += 1
            if why:
                print(f"problem {seed}: {word}: {why}", flush=True)
    told = f"{given.count} problems of sheets: " + ", ".join(f"{n} {w}" for w, n in said.items())
    print(told)
    note("small problems of sheets against every cover", told, "all least")
    return 1 if said["dearer"] + said["wrong"] + said["refused"] else 0


if __name__ == "__main__":
    sys.exit(main())
