"""``python -m tests.bench [NAME …] [--small] [--keep DIR]``: the project's measured ratios.

Every ``tests/bench_*.py`` with a function ``run(bench)`` is a part, by its name; it adds
lines to one table. `Bench.history` gives a file with a long history, built once a run (or
once for all, with ``--keep``). Ratios are taken within one run, so a slow or busy machine
moves both sides.
"""

import argparse
import importlib
import pkgutil
import shutil
import statistics
import sys
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

import tests
from tests.bench_history import build
from tests.measured import note

SHORT, LONG, SMALL = 10_000, 1_000_000, 60_000


@dataclass
class Line:
    """One measured figure; it must not pass `limit`, nor fall below `least` (None: only told)."""

    name: str
    value: float
    unit: str
    limit: float | None
    spread: str
    least: float | None = None

    @property
    def kept(self) -> bool:
        under = self.limit is None or self.value <= self.limit
        return under and (self.least is None or self.value >= self.least)

    def __str__(self) -> str:
        limit = self.wanted + ("" if self.kept else "  MISSED")
        return f"{self.name:<58}{self.value:>9.2f} {self.unit:<3}{self.spread:>16}  {limit}"

    @property
    def wanted(self) -> str:
        """What it must not pass, or not fall below."""
        if self.least is not None:
            return f"≥ {self.least:g}"
        return "" if self.limit is None else f"≤ {self.limit:g}"

    def note(self, part: str) -> None:
        """Notes it as a figure of a part of the bench."""
        spread = f" ({self.spread})" if self.spread else ""
        figure = f"{self.value:.2f} {self.unit}".strip() + spread
        missed = "" if self.kept else "; **missed**"
        note(self.name, figure + missed, self.wanted or "–", f"python -m tests.bench {part}")


@dataclass
class Bench:
    """A folder to work in, the lengths of history, and the table."""

    folder: Path
    keep: Path
    long: int = LONG
    part: str = ""  # that runs now
    lines: list[Line] = field(default_factory=list)

    def add(
        self,
        name: str,
        value: float,
        *,
        unit: str = "×",
        limit: float | None = None,
        least: float | None = None,
        spread: str = "",
    ) -> None:
        """A line of the table, printed at once."""
        line = Line(name, value, unit, limit, spread, least)
        self.lines.append(line)
        print(line, flush=True)
        line.note(self.part)

    def history(self, entries: int) -> Path:
        """A copy of a station's file with so many entries, for this bench to write in."""
        built = self.keep / f"history-{entries}.station"
        if not built.exists():
            print(f"… building {entries:,} entries", file=sys.stderr, flush=True)
            partial = built.with_suffix(".partial")
            partial.unlink(missing_ok=True)
            build(partial, entries)
            partial.replace(built)
        mine = Path(tempfile.mkdtemp(dir=self.folder)) / "station.db"
        shutil.copyfile(built, mine)
        return mine


def centile(times: Sequence[float], share: float) -> float:
    """The time that so much of them do not pass."""
    return sorted(times)[min(len(times) - 1, int(len(times) * share))]


def rounds(times: Sequence[float], share: float, count: int = 5) -> list[float]:
    """The centile in each of some rounds in turn: their spread tells how steady it is."""
    size = max(1, len(times) // count)
    return [centile(times[n * size : (n + 1) * size], share) for n in range(count)]


def ratio(ours: Sequence[float], theirs: Sequence[float], share: float) -> tuple[float, str]:
    """The ratio of two centiles, and the smallest to largest by rounds."""
    each = [a / b for a, b in zip(rounds(ours, share), rounds(theirs, share), strict=True)]
    return centile(ours, share) / centile(theirs, share), f"{min(each):.2f}–{max(each):.2f}"


def median(times: Sequence[float]) -> float:
    """The middle one."""
    return statistics.median(times)


def parts() -> list[str]:
    """The names of all parts."""
    found = (m.name for m in pkgutil.iter_modules(tests.__path__))
    return [n.removeprefix("bench_") for n in found if n.startswith("bench_")]


def main() -> int:
    reader = argparse.ArgumentParser(prog="python -m tests.bench")
    reader.add_argument("names", nargs="*", help=f"of {', '.join(parts())}")
    reader.add_argument("--small", action="store_true", help="a short history for the long one")
    reader.add_argument("--keep", type=Path, help="where built histories are kept")
    given = reader.parse_args()
    with tempfile.TemporaryDirectory(prefix="bench-") as folder:
        keep = given.keep or Path(folder)
        keep.mkdir(parents=True, exist_ok=True)
        bench = Bench(Path(folder), keep, SMALL if given.small else LONG)
        for name in given.names or parts():
            bench.part = name
            run = getattr(importlib.import_module(f"tests.bench_{name}"), "run", None)
            if run:
                run(bench)
    return 0 if all(line.kept for line in bench.lines) else 1


if __name__ == "__main__":
    sys.exit(main())
