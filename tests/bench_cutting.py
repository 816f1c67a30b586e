"""How fast cut files are read and analysed, against pygcode and polars in the same run.

``python -m tests.bench_cutting [LINES]`` prints the ratios with their spread.
"""

from __future__ import annotations

import io
import math
import random
import statistics
import sys
import time
from collections.abc import Callable

from station.cutting.model import Setting
from station.cutting.report import analyse, read
from station.shop.facts import Router

SAMPLE = 20_000  # lines that pygcode is timed on: its rate does not depend on the number
ROUNDS = 3


def sheet(lines: int, seed: int = 1) -> str:
    """A program with a fifth arcs, bare modal lines, feed changes and cycles."""
    rng = random.Random(seed)
    out = ["G21 G90 G17", "T1 M6", "S18000 M3", "G0 X0 Y0 Z5", "G1 Z-2 F800"]
    x = y = 0.0
    mode = 1
    while len(out) < lines:
        roll = rng.random()
        if roll < 0.2:
            x, y, line = _arc(rng, x, y)
            out.append(line)
            mode = 3
        elif roll < 0.205:
            out += _holes(rng, x, y)
            mode = 1
        elif roll < 0.3:
            out.append(f"F{rng.randint(2000, 5000)}")
        else:
            x = min(max(x + rng.uniform(-20, 20), 0), 2400)
            y = min(max(y + rng.uniform(-20, 20), 0), 1200)
            out.append(f"{'' if mode == 1 else 'G1 '}X{x:.4f} Y{y:.4f}")
            mode = 1
    return "\n".join(out[:lines]) + "\n"


def _arc(rng: random.Random, x: float, y: float) -> tuple[float, float, str]:
    r, a = rng.uniform(3, 9), rng.uniform(0, math.tau)
    b = a + rng.uniform(0.3, 2)
    i, j = -r * math.cos(a), -r * math.sin(a)
    x2, y2 = x + i + r * math.cos(b), y + j + r * math.sin(b)
    return x2, y2, f"G3 X{x2:.4f} Y{y2:.4f} I{i:.4f} J{j:.4f}"


def _holes(rng: random.Random, x: float, y: float) -> list[str]:
    places = [f"X{rng.uniform(0, 2400):.3f} Y{rng.uniform(0, 1200):.3f}" for _ in range(6)]
    first = f"G81 {places[0]} Z-6.2 R1 F500"
    return ["G0 Z5", first, *places[1:], "G80", f"G0 X{x:.4f} Y{y:.4f}", "G1 Z-2 F800"]


def timed(work: Callable[[], object], rounds: int = ROUNDS) -> list[float]:
    """Seconds of each round."""
    found = []
    for _ in range(rounds):
        began = time.perf_counter()
        work()
        found.append(time.perf_counter() - began)
    return found


def told(name: str, theirs: list[float], ours: list[float]) -> None:
    """One line: the ratio of the medians, and from the worst to the best pairing."""
    ratio = statistics.median(theirs) / statistics.median(ours)
    low, high = min(theirs) / max(ours), max(theirs) / min(ours)
    print(f"{name}: {ratio:.1f} times ({low:.1f} to {high:.1f}); "
          f"ours {statistics.median(ours):.3f} s")  # fmt: skip


def main() -> int:
    """Prints reading against pygcode and polars, and the whole analysis against pygcode."""
    import polars as pl  # noqa: PLC0415 - only the bench needs them
    from pygcode import Line  # noqa: PLC0415

    lines = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    text = sheet(lines)
    data, setting = text.encode(), Setting(router=Router(id="1", name="Router 1"))
    few = text.splitlines()[:SAMPLE]
    scale = lines / len(few)
    parse = [s * scale for s in timed(lambda: [Line(line) for line in few])]
    ours = timed(lambda: read(data, setting))
    told("reading against pygcode's parse", parse, ours)
    program = read(data, setting)
    rest = timed(lambda: analyse(program, setting))
    whole = [a + b for a, b in zip(ours, rest, strict=True)]
    told("reading and analysing against pygcode's parse", parse, whole)
    points = program.moves.points
    table = "\n".join(f"{x:.4f},{y:.4f},{z:.4f}" for x, y, z in points.tolist()).encode()
    theirs = timed(lambda: pl.read_csv(io.BytesIO(table), has_header=False))
    told("reading against polars' CSV of the same numbers", theirs, ours)
    for some in (10_000, 100_000, lines):
        part = "\n".join(text.splitlines()[:some]).encode() + b"\n"
        seconds = statistics.median(timed(lambda part=part: read(part, setting)))
        print(f"{some} lines: {seconds / some * 1e6:.3f} µs a line")
    return 0


if __name__ == "__main__":
    sys.exit(main())
