"""How fast cut files are read and analysed, against pygcode and polars in the same run.

Each round times both sides one after the other; pygcode's rate does not depend on the
number of lines, so it parses a part of the file.
"""

import io
import os
import random
import subprocess
import sys
import tempfile
import time
import tracemalloc
from collections.abc import Callable
from pathlib import Path

import numpy as np
import polars as pl
from pygcode import Line as TheirLine
from pygcode import Machine as TheirMachine

from station.cutting.model import Program, Setting
from station.cutting.report import analyse_program, read_program
from station.shop.facts import Router
from tests.bench import Bench, median
from tests.cutting.sheets import outlines, sheet

SETTING = Setting(router=Router(id="1", name="Router 1"), thickness_mm=6.0)
PARSED = 10_000  # lines that pygcode is timed on
CHECKED = 20_000  # lines of which 1,000 positions are compared
ROUNDS = 7
FIRST = """
from station.cutting.model import Setting
from station.cutting.report import read_program
read_program(b"G21 G0 X1", Setting())
"""
# VmHWM, for what getrusage tells is inherited from the process that started this one.
OFFICE = """
import sys
from station.jobs.messages import ReadCutFile
from station.jobs.read_cut_file import run
from station.shop.facts import ReadAs, Router, Shop
run(
    ReadCutFile(
        path=sys.argv[1], cut_file="1", material="1", thickness_mm=6.0, sheet=(2440.0, 1220.0),
        router=Router(id="1", name="Router 1"), pockets=(), read_as=ReadAs(), parts=(), taken={},
        cuts_out=True, shop=Shop(id="shop"),
    ),
    lambda _stage, _share: None,
)
print(next(line.split()[1] for line in open("/proc/self/status") if line.startswith("VmHWM")))
"""


def run(bench: Bench) -> None:
    """Adds reading, the whole analysis, their cost per line, memory, and the first reading."""
    text = sheet(bench.long)
    assert same_places() == 1000
    _against_others(bench, "a sheet", text, all_least=30)
    _against_others(bench, "450 pieces, cuts through only", outlines(bench.long // 2))
    _by_length(bench)
    _memory(bench)
    _office_memory(bench)
    _first(bench)


def seconds(work: Callable[[], object], clock: Callable[[], float] = time.perf_counter) -> float:
    began = clock()
    work()
    return clock() - began


def ratios(bench: Bench, name: str, each: list[float], *, least: float | None) -> None:
    """A line with the median of the rounds."""
    bench.add(name, median(each), least=least, spread=f"{min(each):.1f}–{max(each):.1f}")


def _against_others(bench: Bench, what: str, text: str, all_least: float | None = None) -> None:
    data, lines = text.encode(), text.count("\n")
    few = text.splitlines()[:PARSED]
    program = read_program(data, SETTING)
    table = numbers(program)
    parse, reading, whole, csv = [], [], [], []
    for _ in range(ROUNDS):
        parse.append(seconds(lambda: [TheirLine(line) for line in few]) * lines / len(few))
        reading.append(seconds(lambda: read_program(data, SETTING)))
        csv.append(seconds(lambda: pl.read_csv(io.BytesIO(table), has_header=False)))
        whole.append(seconds(lambda: analyse_program(read_program(data, SETTING), SETTING)))
    bench.add(f"{what}: reading a line", median(reading) / lines * 1e6, unit="µs")
    ratios(bench, f"{what}: pygcode's parse over reading", over(parse, reading), least=150)
    ratios(bench, f"{what}: pygcode's parse over all", over(parse, whole), least=all_least)
    each = over(reading, csv)
    bench.add(f"{what}: reading over polars' CSV of its numbers", median(each), limit=3,
              spread=f"{min(each):.1f}–{max(each):.1f}")  # fmt: skip


def over(theirs: list[float], ours: list[float]) -> list[float]:
    return [a / b for a, b in zip(theirs, ours, strict=True)]


def numbers(program: Program) -> bytes:
    """The path's numbers as a table: x, y, z and feed of every move."""
    moves = program.moves
    table = np.column_stack((moves.points[1:], moves.feed))
    return "\n".join(f"{x:.4f},{y:.4f},{z:.4f},{f:.1f}" for x, y, z, f in table.tolist()).encode()


def same_places() -> int:
    """How many of 1,000 sampled positions equal pygcode's (it does not drill: cycles aside)."""
    text = sheet(CHECKED)
    theirs, machine, plain = {}, TheirMachine(), True
    for number, line in enumerate(text.splitlines(), 1):
        block = TheirLine(line).block
        machine.process_block(block)
        plain = "G81" not in line and (plain or line.startswith("G0 X"))
        if plain:
            theirs[number] = tuple(machine.pos.values[a] for a in "XYZ")
    moves = read_program(text.encode(), SETTING).moves
    ours = dict(zip(moves.line.tolist(), moves.points[1:].tolist(), strict=True))
    chosen = random.Random(5).sample(sorted(theirs.keys() & ours.keys()), 1000)
    return sum(bool(np.allclose(ours[n], theirs[n], atol=1e-6)) for n in chosen)


def _by_length(bench: Bench) -> None:
    """Processor time per line from ten thousand lines to two million (``--small``: fewer)."""
    clock = time.process_time
    text = sheet(2 * bench.long)
    cost: dict[str, list[float]] = {"reading": [], "all": []}
    for lines in (10_000, 100_000, bench.long, 2 * bench.long):
        data = "".join(text.splitlines(keepends=True)[:lines]).encode()
        each = {
            "reading": [seconds(lambda d=data: read_program(d, SETTING), clock) for _ in range(5)],
            "all": [
                seconds(lambda d=data: analyse_program(read_program(d, SETTING), SETTING), clock)
                for _ in range(5)
            ],
        }
        for name, times in each.items():
            cost[name].append(min(times) / lines * 1e6)
    for name, costs in cost.items():
        told = " ".join(f"{c:.2f}" for c in costs)
        bench.add(f"{name}: a line of {2 * bench.long:,} over one of 10,000", costs[-1] / costs[0],
                  limit=1.5, spread=f"µs {told}")  # fmt: skip


def _memory(bench: Bench) -> None:
    """The most memory that reading 100 MB asks for, over what its columns take."""
    body = sheet(100_000)
    times = max(1, (100_000_000 if bench.long >= 1_000_000 else 10_000_000) // len(body))
    data = (body * times).encode()
    tracemalloc.start()
    program = read_program(data, SETTING)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    moves = program.moves
    columns = sum(getattr(moves, name).nbytes for name in moves.__dataclass_fields__)
    bench.add(f"reading {len(data) / 1e6:.0f} MB: most memory over its columns", peak / columns,
              limit=2.0, spread=f"{peak / 1e6:.0f} MB")  # fmt: skip


def _office_memory(bench: Bench) -> None:
    """The most memory of the process that reads a sheet of 93 MB for the office, all of it."""
    text = sheet(round(3.985 * bench.long))
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "large.nc"
        file.write_text(text, encoding="ascii")
        done = subprocess.run(
            [sys.executable, "-c", OFFICE, str(file)],
            cwd=Path(__file__).parent.parent, check=True, capture_output=True, text=True,
        )  # fmt: skip
    told = f"{len(text) / 1e6:.0f} MB of text"
    bench.add("the office reads a large sheet: most memory", int(done.stdout) * 1024 / 1e6,
              unit="MB", limit=1000, spread=told)  # fmt: skip


def _first(bench: Bench) -> None:
    """A first reading on a computer, and one with what the first has kept."""
    with tempfile.TemporaryDirectory() as folder:
        places = dict.fromkeys(("XDG_CACHE_HOME", "LOCALAPPDATA", "HOME"), folder)
        home = Path(__file__).parent.parent
        times = [
            seconds(
                lambda: subprocess.run(
                    [sys.executable, "-c", FIRST],
                    env={**os.environ, **places},
                    cwd=home,
                    check=True,
                )
            )
            for _ in range(2)
        ]
    bench.add("the first reading on a computer", times[0], unit="s")
    bench.add("a later first reading of a run", times[1], unit="s")
