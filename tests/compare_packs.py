"""``python -m tests.compare_packs [COMMIT] [--problems N] [--seed S]``: packs then and now.

The same problems, drawn from the trade, are answered by this program and by the program of a
commit (the one before, unless told): what they cost sent, and how large an order's mailer is. Each
answer of this program is checked rule by rule. The exit code is 1 where one breaks a rule or
finds nothing where the other found something; what is cheaper and dearer is told as it is.
"""

import argparse
import io
import os
import random
import subprocess
import sys
import tarfile
import tempfile
from pathlib import Path

import msgspec

from station.commands.pack import PackingProblem
from tests.packs.drawn import KINDS, draw_problem
from tests.packs.test_ship import check

HERE = Path(__file__).resolve().parent
NEAR = 1e-6


class Answered(msgspec.Struct):
    """What `tests/packs/answers.py` says of a problem; times in seconds."""

    sent: dict[str, object]
    area: float | None
    times: tuple[float, float]


def main() -> int:
    """Compares, and tells it a line a question."""
    reader = argparse.ArgumentParser(prog="python -m tests.compare_packs")
    reader.add_argument("commit", nargs="?", default="HEAD~1")
    reader.add_argument("--problems", type=int, default=2000)
    reader.add_argument("--seed", type=int, default=2000)
    given = reader.parse_args()
    chance = random.Random(given.seed)
    drawn = [draw_problem(chance, KINDS[n % len(KINDS)]) for n in range(given.problems)]
    with tempfile.TemporaryDirectory(prefix="packs-") as folder:
        unpack_program(given.commit, Path(folder))
        old = answer_problems(drawn, Path(folder))
    new = answer_problems(drawn, HERE.parent)
    broken = count_broken(drawn, new)
    print(f"{len(drawn)} problems, {broken} answers that break a rule")
    costs = [(a.sent["cost"], b.sent["cost"]) for a, b in zip(old, new, strict=True)]
    areas = [(a.area, b.area) for a, b in zip(old, new, strict=True)]
    lost = tell_pairs("cost of sending", costs) + tell_pairs("area of an order's mailer", areas)
    for n, name in enumerate(("to send", "mailer of an order")):
        then, now = ([each.times[n] * 1000 for each in all_] for all_ in (old, new))
        print(f"{name}: {measure_late(then)} ms then, {measure_late(now)} ms now")
    return 1 if broken or lost else 0


def unpack_program(commit: str, folder: Path) -> None:
    """Puts the program of a commit into a folder."""
    ask = ["git", "archive", commit, "station"]
    packed = subprocess.run(ask, cwd=HERE.parent, check=True, capture_output=True).stdout
    with tarfile.open(fileobj=io.BytesIO(packed)) as archive:
        archive.extractall(folder, filter="data")


def answer_problems(drawn: list[PackingProblem], program: Path) -> list[Answered]:
    """Answers the problems with the program of a folder."""
    asked = subprocess.run(
        [sys.executable, str(HERE / "packs" / "answers.py")],
        input=msgspec.json.encode(drawn),
        env={**os.environ, "PYTHONPATH": str(program)},
        check=True,
        capture_output=True,
    )
    return [msgspec.json.decode(line, type=Answered) for line in asked.stdout.splitlines()]


def count_broken(drawn: list[PackingProblem], answers: list[Answered]) -> int:
    """Counts the answers that break a rule, and prints the first sentence of each."""
    broken = 0
    for n, (problem, answer) in enumerate(zip(drawn, answers, strict=True)):
        if not answer.sent["packs"]:
            continue
        try:
            check(msgspec.to_builtins(problem), answer.sent)
        except AssertionError as error:
            print(f"problem {n}: {str(error).splitlines()[:1]}")
            broken += 1
    return broken


def tell_pairs(name: str, pairs: list[tuple[float | None, float | None]]) -> int:
    """Tells how many are lower and higher now; the answer counts those found only then."""
    both = [(a, b) for a, b in pairs if a is not None and b is not None]
    lower, higher = (sum(b < a - NEAR for a, b in both), sum(b > a + NEAR for a, b in both))
    lost = sum(b is None and a is not None for a, b in pairs)
    won = sum(a is None and b is not None for a, b in pairs)
    share = sum(b for _, b in both) / sum(a for a, _ in both) - 1
    worst = max((b / a - 1 for a, b in both), default=0.0)
    print(
        f"{name}: {len(both)} found then and now, {lower} lower, {higher} higher "
        f"(all {share:+.3%}, worst {worst:+.1%}); {won} found only now, {lost} only then"
    )
    return lost


def measure_late(times: list[float]) -> str:
    """Measures the middle and the 99th of a hundred, as words."""
    times = sorted(times)
    return f"median {times[len(times) // 2]:.1f}, p99 {times[int(len(times) * 0.99)]:.1f}"


if __name__ == "__main__":
    sys.exit(main())
