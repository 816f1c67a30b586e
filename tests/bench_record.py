"""Recording a sheet off the bed of a six-part file, against the same rows written bare.

The ledger decides, checks, encodes, chains and writes every table; the bare side is given
the very rows that came of it and writes them with the driver alone, in one transaction at
``synchronous=FULL``, into a copy of the same file. Both sides take turns, act by act.
"""

import sqlite3
from collections.abc import Callable, Iterator
from pathlib import Path
from time import perf_counter
from typing import NamedTuple

from station.ledger import statements
from station.ledger.ledger import Ledger
from station.shop.acts import Act
from station.shop.readings import MINUTES
from tests.bench import SHORT, Bench, median, ratio
from tests.bench_history import OFF_BED, BenchOffBed

ACTS = 1500
WARM = 100  # the first ones warm all sides up
DRAFT = '{"hand":{"area":"loading","router":"1","worker":"01","work":{}},"last":"%s"}'


READ = (
    "SELECT * FROM reading WHERE subject IN ('router/1', 'bit/01') AND kind=? AND at=? AND entry=?"
)


class Rows(NamedTuple):
    """The rows that one act wrote, by table."""

    entry: tuple[object, ...]
    balance: list[tuple[object, ...]]
    fact: list[tuple[object, ...]]
    tally: list[tuple[object, ...]]
    reading: list[tuple[object, ...]]
    local: tuple[object, ...]


def acts(count: int) -> Iterator[Act]:
    """Sheets off the bed, of batches all over the history."""
    for n in range(count):
        batch, second = f"{n * 7919 % (SHORT // 12) + 1:05d}", n % 3600
        yield Act(
            id=f"{n * 2654435761 % 2**32:08x}bench{n:04d}",
            kind=BenchOffBed.kind,
            at=f"2031-01-05T10:{second // 60:02d}:{second % 60:02d}",
            worker="01",
            station="1",
            subject=f"slip/{batch}-{n + 4}",
            args=BenchOffBed(batch=batch, sheet=n + 4),
        )


def written(ledger: Ledger, act: Act) -> Rows:
    """Reads back what the act wrote."""
    run, batch = ledger._store.run, act.args.batch
    number = ledger.count()
    keys = (f"slip/{batch}-{act.args.sheet}", f"batch/{batch}", "bed/1")
    spots = (f"popping/{act.args.sheet}", "cut")
    balance = run(
        "SELECT * FROM balance WHERE batch=? AND place IN (?,?) UNION ALL "
        "SELECT * FROM balance WHERE batch IN ('0001', '')",
        (batch, *spots),
    ).fetchall()
    return Rows(
        run("SELECT * FROM entry WHERE number=?", (number,)).fetchone(),
        balance,
        run("SELECT * FROM fact WHERE key IN (?,?,?)", keys).fetchall(),
        run("SELECT * FROM tally WHERE hour=?", (act.at[:13],)).fetchall(),
        run(READ, (MINUTES, act.at, act.id)).fetchall(),
        run("SELECT * FROM local WHERE key='draft'").fetchone(),
    )


class Bare:
    """The driver alone on a copy of the same file."""

    def __init__(self, path: Path) -> None:
        self.connection = sqlite3.connect(path, isolation_level=None)
        for pragma in (
            "locking_mode=EXCLUSIVE",
            "journal_mode=WAL",
            "synchronous=FULL",
            "wal_autocheckpoint=0",
            "cache_size=-8000",
        ):
            self.connection.execute(f"PRAGMA {pragma}")

    def write(self, rows: Rows) -> None:
        run, many = self.connection.execute, self.connection.executemany
        run("BEGIN IMMEDIATE")
        run(statements.ADD_ENTRY, rows.entry)
        many("INSERT OR REPLACE INTO balance VALUES (?,?,?,?)", rows.balance)
        many("INSERT OR REPLACE INTO fact VALUES (?,?,?,?,?)", rows.fact)
        many("INSERT OR REPLACE INTO tally VALUES (?,?,?,?,?,?,?)", rows.tally)
        many("INSERT OR REPLACE INTO reading VALUES (?,?,?,?,?,?)", rows.reading)
        run("INSERT OR REPLACE INTO local VALUES (?,?)", rows.local)
        run("COMMIT")

    def idle(self) -> None:
        self.connection.execute("PRAGMA wal_checkpoint(PASSIVE)")


def timed(bench: Bench) -> tuple[list[float], list[float], list[float]]:
    """Seconds of each act with a long history, with a short one, and written bare."""
    rules = {"bench_off_bed": OFF_BED}
    long = Ledger(bench.history(bench.long), rules)
    short = Ledger(bench.history(SHORT), rules)
    bare = Bare(bench.history(bench.long))
    times: tuple[list[float], list[float], list[float]] = ([], [], [])
    for n, act in enumerate(acts(ACTS + WARM)):
        draft = DRAFT % act.id
        spent = [clocked(side.record, act, draft) for side in (long, short)]
        spent.append(clocked(bare.write, written(long, act)))
        if n >= WARM:
            for kept, seconds in zip(times, spent, strict=True):
                kept.append(seconds)
        if n % 25 == 0:
            for side in (long, short, bare):
                side.idle()
    for side in (long, short, bare.connection):
        side.close()
    return times


def clocked(deed: Callable[..., object], *given: object) -> float:
    """The seconds that it took."""
    begun = perf_counter()
    deed(*given)
    return perf_counter() - begun


def run(bench: Bench) -> None:
    """Recording: bare rows, and a long history against a short one."""
    long, short, bare = timed(bench)
    label = f"sheet off the bed, {bench.long:,} entries"
    for name, share, limit in (("median", 0.5, 2.0), ("p99", 0.99, 3.0)):
        value, spread = ratio(long, bare, share)
        bench.add(f"{label}: {name} over bare rows", value, limit=limit, spread=spread)
    value, spread = ratio(long, short, 0.5)
    bench.add(f"{label}: median over {SHORT:,}", value, limit=1.2, spread=spread)
    bench.add(f"{label}: median", 1000 * median(long), unit="ms")
    bench.add("the same rows bare: median", 1000 * median(bare), unit="ms")
