"""``python -m tests.exhaust_packs [--problems N] [--seed S]``: packs against every way there is.

Problems of up to six pieces, drawn from the trade, are answered by the program, and every way to
pack them is tried besides (`tests/packs/exhausted.py`). Each answer is checked rule by rule. What
is cheaper has outer layers drawn apart, which is not tried here. The exit code is 1 where an
answer breaks a rule, is dearer than what was found so, or has a lower bound above it.
"""

import argparse
import random
import sys

import msgspec

from station.commands.pack import PackingProblem, solve_problem
from tests.measured import note
from tests.packs.drawn import draw_few
from tests.packs.exhausted import Exhausted, TooManyWaysError
from tests.packs.test_ship import check

NEAR = 1e-6


def main() -> int:
    """Compares, and tells each problem that is dearer, then the figures of all."""
    reader = argparse.ArgumentParser(prog="python -m tests.exhaust_packs")
    reader.add_argument("--problems", type=int, default=300)
    reader.add_argument("--seed", type=int, default=6)
    given = reader.parse_args()
    chance = random.Random(given.seed)
    said = dict.fromkeys(("the same", "none fits", "cheaper", "dearer", "not ended"), 0)
    for n in range(given.problems):
        problem = draw_few(chance)
        word, sentence = compare(problem)
        said[word] += 1
        if word in ("cheaper", "dearer"):
            print(f"problem {n}: {sentence}")
    told = ", ".join(f"{n} {word}" for word, n in said.items())
    print(f"{given.problems} problems: {told}")
    note(f"{given.problems} packing problems of up to six pieces against every way", told,
         "none dearer")  # fmt: skip
    return 1 if said["dearer"] else 0


def compare(problem: PackingProblem) -> tuple[str, str]:
    """Compares an answer with every way; AssertionError where it breaks a rule."""
    answer = solve_problem(problem)
    if answer["packs"]:
        check(msgspec.to_builtins(problem), answer)
    try:
        least = Exhausted(problem).find_cost()
    except TooManyWaysError:
        return "not ended", ""
    cost, bound = answer["cost"], answer.get("lower_bound")
    sentence = f"{cost}, every way tried: {least}"
    if least is None:
        return ("none fits", "") if cost is None else ("cheaper", sentence)
    assert bound is None or bound <= least + NEAR, f"lower bound {bound}, and {least} is found"
    if cost is None or cost > least + NEAR:
        return "dearer", sentence
    return ("cheaper" if cost < least - NEAR else "the same"), sentence


if __name__ == "__main__":
    sys.exit(main())
