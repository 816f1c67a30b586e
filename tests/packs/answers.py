"""Answers packing problems with the program that stands first in ``PYTHONPATH``.

Standard input is JSON: a list of packing problems. A line each: what it costs as it is sent, the
answer, and the flat area of the mailer that an order of the shop gets for the same pieces. Run as
a file, so that `tests.compare_packs` can ask an older program as well.
"""

import json
import sys
from time import process_time

import msgspec

from station.commands.pack import PackingProblem, solve_problem
from station.packs.choose import choose_mailer
from station.packs.messages import PackMailer, PackPart, PackProblem


def main() -> None:
    """Answers each problem of standard input."""
    for problem in msgspec.json.decode(sys.stdin.buffer.read(), type=list[PackingProblem]):
        start = process_time()
        sent = solve_problem(problem)
        between = process_time()
        area = measure_mailer(problem)
        times = between - start, process_time() - between
        print(json.dumps({"sent": sent, "area": area, "times": times}), flush=True)


def measure_mailer(problem: PackingProblem) -> float | None:
    """Measures the mailer of an order, mm² lying flat; None: none closes over its pieces."""
    parts = tuple(
        PackPart(p.part, p.length, p.width, p.thickness, p.count, p.small) for p in problem.parts
    )
    mailers = {
        c.container: PackMailer(c.container, c.length, c.width, c.thickness)
        for c in problem.containers
    }
    asked = PackProblem(
        parts=parts, mailers=tuple(mailers.values()), allowance_mm=10.0, gap_mm=1.0
    )
    found = mailers.get(choose_mailer(asked).mailer)
    return found and found.length_mm * found.width_mm


if __name__ == "__main__":
    main()
