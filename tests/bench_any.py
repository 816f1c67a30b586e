"""Any code with free hands: from its scan to its painted page, on a long history.

A batch of every thousandth of the history, every part, the rack, lot, bit and router that all of
it went through: what has the longest life has the most to answer from.
"""

import os
import random
from time import perf_counter, thread_time

from station.ledger.ledger import Ledger
from station.printing.codes import list_codes
from station.shop.cards import button
from station.shop.codes import batch_usable, write
from tests.bench import Bench, centile, median
from tests.bench_history import BIT, LOT, PARTS, ROUTER
from tests.bench_screen import opened

SCANS = 300
BATCHES = 60
WITHIN_MS = 16  # a frame of a screen of sixty a second
SEED = 7
AREAS = ("loading", "popping", "trimming", "packing", "cart")
# who works here, a number, an act; batches and slips are taken from all of the history
APART = ("worker", "digit", "button", "batch", "slip")
WARM = 30  # scans before, so that every kind of page was shown once


def run(bench: Bench) -> None:
    """All lines of this part."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    times, busy = time_answers(bench)
    found = f"any code to its painted page, {bench.long:,} entries"
    bench.add(f"{found}, median", 1000 * median(times), unit="ms")
    bench.add("the same, 99 of 100", 1000 * centile(times, 0.99), unit="ms", limit=WITHIN_MS)
    bench.add("of that processor time, 99 of 100", 1000 * centile(busy, 0.99), unit="ms",
              limit=WITHIN_MS)  # fmt: skip


def list_scans(entries: int, ledger: Ledger) -> list[str]:
    """Lists the codes that are scanned: those of the whole history, and of the shop on it."""
    last = entries // 12
    batches = (f"{n:05d}" for n in range(1, last, max(1, last // BATCHES)))
    found = [write("batch", number, "A") for number in batches if batch_usable(number)]
    found += [write("part", part) for part in PARTS]
    found += [write("lot", LOT), write("bit", BIT), write("router", ROUTER)]
    rows = (row for row in list_codes(ledger) if row["kind"] not in APART)
    return found + [str(row["code"]) for row in rows]


def time_answers(bench: Bench) -> tuple[list[float], list[float]]:
    """Seconds from each scan to its painted answer, and of its processor time."""
    application, ledger, session = opened(bench, bench.long)
    codes, chosen = list_scans(bench.long, ledger), random.Random(SEED)
    times, busy = [], []
    for n in range(-WARM, SCANS):
        session.desk.at(area=AREAS[n % len(AREAS)])
        session.take(button("put_down"))
        application.processEvents()
        code = chosen.choice(codes)
        began, ran = perf_counter(), thread_time()
        session.take(code)
        application.processEvents()
        if n >= 0:
            times.append(perf_counter() - began)
            busy.append(thread_time() - ran)
    session.stop()
    session.window.close()
    ledger.close()
    return times, busy
