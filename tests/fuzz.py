"""Reads random and mutated programs: nothing may crash or hang, both readers must agree.

``python -m tests.fuzz N`` tries N inputs and prints what they were. Most are mutated pieces
of whole cut files. Each goes through the reader, every fifth through the plain reader too,
every twentieth through the analysis.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import time
from dataclasses import asdict, dataclass
from functools import cache

import numpy as np

from station.cutting.model import Analysis, Program, Setting
from station.cutting.read.dialects import DIALECTS
from station.cutting.read.reader_compiled import read_compiled
from station.cutting.read.reader_plain import read_plain
from station.cutting.report import analyse_program, make_report
from tests.cutting.layouts import STYLES, make
from tests.cutting.sheets import outlines, sheet
from tests.explained import measure_unexplained
from tests.measured import note

CODES = (0, 1, 2, 3, 4, 10, 17, 18, 19, 20, 21, 28, 30, 40, 41, 43, 49, 53, 54, 55, 59.3, 61, 64,
         73, 80, 81, 82, 83, 85, 89, 90, 91, 92, 92.1, 92.2, 92.3, 93, 94, 98, 99)  # fmt: skip
COMMON = (0, 1, 1, 1, 2, 3, 81, 80, 90, 21, 17, 98, 99)
LETTERS = "XYZIJRFSTPLQKNMAB"
PIECES = [b"G", b"X", b"(", b")", b"%", b"/", b";", b"\r\n", b"#1=", b"#1", b"[", b"]", b"-", b".",
          b"O1", b"\xff", b"\x00", b" ", b"1e5", b"99999999999", b"M2", b"G0X1"]  # fmt: skip


def _number(rng: random.Random) -> str:
    style = rng.random()
    if style < 0.4:
        return str(rng.randint(-20, 60))
    if style < 0.9:
        return f"{rng.uniform(-50, 200):.{rng.randint(1, 5)}f}"
    return rng.choice(["0", ".5", "5.", "-.25", "+3", "000.10", "123456.7891", "-0"])


def _plain(rng: random.Random, motion: str) -> str:
    words = [a + _number(rng) for a in "XYZ" if rng.random() < 0.6]
    if motion in {"G2", "G3"}:
        words += [a + _number(rng) for a in "IJ"] if rng.random() < 0.7 else ["R" + _number(rng)]
    if motion == "G81":
        words += ["R" + _number(rng)] if rng.random() < 0.7 else []
    if rng.random() < 0.2:
        words.append(f"F{rng.randint(0, 4000)}")
    return " ".join(words)


def program(rng: random.Random) -> bytes:
    """A program of some tens of lines that mostly makes sense."""
    lines = ["G21 G90 G17", "T1 M6", "M3 S18000", "G0 X0 Y0 Z5 F1000"]
    motion = "G1"
    for _ in range(rng.randint(10, 60)):
        roll = rng.random()
        if roll < 0.25:
            motion = rng.choice(["G0", "G1", "G1", "G2", "G3", "G81"])
            lines.append(f"{motion} {_plain(rng, motion)}")
        elif roll < 0.88:
            lines.append(_plain(rng, motion))
        elif roll < 0.94:
            code = rng.choice(COMMON) if rng.random() < 0.5 else rng.choice(CODES)
            lines.append(f"G{code} {_plain(rng, motion)}")
        else:
            words = [rng.choice(LETTERS) + _number(rng) for _ in range(rng.randint(1, 4))]
            lines.append(" ".join(words))
    return "\n".join(lines).encode()


def mutated(rng: random.Random, data: bytes) -> bytes:
    """A program with letters changed, put in, taken out, lines doubled or moved."""
    for _ in range(rng.randint(1, 6)):
        at = rng.randrange(len(data) + 1)
        roll = rng.random()
        if roll < 0.4:
            data = data[:at] + rng.choice(PIECES) + data[at:]
        elif roll < 0.7:
            data = data[:at] + data[at + rng.randint(1, 3) :]
        elif roll < 0.85:
            data = data[:at] + bytes([rng.randrange(256)]) + data[at + 1 :]
        else:
            to = rng.randrange(len(data) + 1)
            data = data[:to] + data[at : at + 40] + data[to:]
    return data


def noise(rng: random.Random) -> bytes:
    """Bytes that are hardly a program."""
    if rng.random() < 0.3:
        return rng.randbytes(rng.randint(0, 300))
    return b"".join(rng.choice(PIECES) for _ in range(rng.randint(0, 80)))


@cache
def real() -> list[bytes]:
    """Pieces of whole cut files in all their styles: the head, then some tens of lines."""
    texts = [make(seed).text for seed in range(3 * len(STYLES))] + [sheet(2000), outlines(4000)]
    found, rng = [], random.Random(3)
    for text in texts:
        lines = text.splitlines()
        for _ in range(12):
            at = rng.randrange(5, max(6, len(lines) - 60))
            some = lines[:5] + lines[at : at + rng.randint(25, 60)]
            found.append("\n".join(some).encode())
    return found


def one(rng: random.Random) -> tuple[bytes, bool]:
    """An input, and whether it is a mutated real program, as seven in ten are."""
    roll = rng.random()
    if roll < 0.7:
        return mutated(rng, rng.choice(real())), True
    if roll < 0.8:
        return mutated(rng, program(rng)), False
    return program(rng) if roll < 0.85 else noise(rng), False


def differences(one: Program, other: Program) -> list[str]:
    """In what two readings of one text differ."""
    found = []
    if len(one.moves) != len(other.moves):
        return [f"{len(one.moves)} and {len(other.moves)} moves"]
    for name in ("points", "kind", "plane", "centre", "sweep", "feed", "minutes", "tool", "rpm",
                 "line", "sure", "exact"):  # fmt: skip
        if np.array_equal(getattr(one.moves, name), getattr(other.moves, name)):
            continue
        a = np.asarray(getattr(one.moves, name), float)
        b = np.asarray(getattr(other.moves, name), float)
        if not np.allclose(a, b, rtol=1e-9, atol=1e-7, equal_nan=True):
            at = int(np.argwhere(~np.isclose(a, b, rtol=1e-9, atol=1e-7, equal_nan=True))[0][0])
            found.append(
                f"{name} at move {at}, line {one.moves.line[min(at, len(one.moves) - 1)]}"
            )
    if one.pauses != other.pauses:
        found.append("pauses")
    told = [[(p.line, p.kind, p.source) for p in r.problems] for r in (one, other)]
    if told[0] != told[1]:
        found.append(f"problems {sorted(set(told[0]) ^ set(told[1]))[:3]}")
    if one.refused != other.refused:
        found.append("refused")
    return found


@dataclass
class Tally:
    """What came of the inputs tried."""

    tried: int = 0
    mutated: int = 0
    past_20: int = 0  # of the mutated ones
    compared: int = 0
    analysed: int = 0
    slowest: float = 0.0
    most_moves: int = 0

    def __str__(self) -> str:
        mutated, past = self.mutated / self.tried, self.past_20 / max(1, self.mutated)
        return (
            f"{self.tried:,} inputs; {mutated:.0%} mutated real programs, {past:.0%} of them past "
            f"20 moves; {self.compared:,} read by both readers, {self.analysed:,} analysed; "
            f"slowest {self.slowest:.2f} s, most moves {self.most_moves:,}, "
            f"most memory {memory_mb():.0f} MB"
        )


def memory_mb() -> float:
    """The most memory this process has had, where the system tells."""
    try:
        import resource  # noqa: PLC0415 - not on every system
    except ImportError:
        return float("nan")
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def attempt(seed: int, tally: Tally) -> None:
    """One input through the reader, and now and then through more."""
    rng = random.Random(seed)
    data, is_mutated = one(rng)
    setting = Setting(dialect=rng.choice(list(DIALECTS)) if rng.random() < 0.3 else "report")
    began = time.perf_counter()
    got = read_compiled(data, setting)
    tally.slowest = max(tally.slowest, time.perf_counter() - began)
    if seed % 5 == 0:
        differ = differences(read_plain(data, setting), got)
        assert not differ, f"seed {seed}: {differ}"
        tally.compared += 1
    if seed % 20 == 0:
        found = analyse_program(got, setting)
        make_report(found)
        lost = measure_lost_area(found)
        assert abs(lost) < 0.01, f"seed {seed}: {lost} mm² of the sheet are nowhere"
        silent = measure_unexplained(found)
        assert not silent, f"seed {seed}: {silent} mm of cuts bound nothing, and are not told"
        tally.analysed += 1
    tally.tried += 1
    tally.mutated += is_mutated
    tally.past_20 += is_mutated and len(got.moves) > 20
    tally.most_moves = max(tally.most_moves, len(got.moves))


def measure_lost_area(found: Analysis) -> float:
    """Measures what of a sheet is neither parts, waste, skeleton nor what the bits take, mm²."""
    told = found.parts_mm2 + found.waste_mm2 + found.skeleton_mm2 + found.kerf_mm2
    return found.sheet_mm[0] * found.sheet_mm[1] - told


def fuzz(total: int, first: int = 0) -> Tally:
    """Tries inputs; an error names the seed of the first that goes wrong."""
    tally = Tally()
    with np.errstate(all="raise", under="ignore"):
        for seed in range(first, first + total):
            try:
                attempt(seed, tally)
            except Exception as error:
                error.add_note(f"seed {seed}")
                raise
    return tally


def main() -> int:
    """Tries as many inputs as asked for, from a seed on."""
    reader = argparse.ArgumentParser(prog="python -m tests.fuzz")
    reader.add_argument("total", nargs="?", type=int, default=100_000)
    reader.add_argument("first", nargs="?", type=int, default=0, help="the seed of the first")
    reader.add_argument("--json", action="store_true", help="the tally as numbers")
    given = reader.parse_args()
    tally = fuzz(given.total, given.first)
    print(json.dumps(asdict(tally)) if given.json else tally)
    note("inputs to the reader of cut files", str(tally), "no crash")
    return 0


if __name__ == "__main__":
    sys.exit(main())
