"""The screen: from scan to painted answer, first window, ready for a scan, memory.

A bare window is a process that makes a QApplication and shows an empty QWidget; ours are
timed as whole processes too, in turn with it, so a busy machine slows both.
"""

import compileall
import os
import statistics
import subprocess
import sys
from pathlib import Path
from time import perf_counter, thread_time

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.look.window import Window
from station.shop.cards import button
from station.shop.codes import write
from station.shop.facts import Shop
from station.window.session import Session
from station.window.show import find_application
from tests.bench import SHORT, Bench, centile, ratio
from tests.bench_history import clock as time_of
from tests.floor.shop_small import GAUGE
from tests.replay import START
from tests.replay import small_shop as facts

RUNS = 9
A_DAY = 480  # entries of the built histories
SCANS = 500
HERE = Path(__file__).resolve().parent.parent

BARE = """
from PySide6.QtWidgets import QApplication, QWidget
a = QApplication([]); w = QWidget(); w.resize(1366, 768); w.show(); a.processEvents()
"""
FRAME = """
from station.window.show import find_application
from station.look.window import Window
a = find_application(); w = Window()
w.show_top(area="Loading", where="", worker="", clock="10:42", shared="", shared_ok=True)
w.show(); a.processEvents()
"""
READY = (
    FRAME
    + """
import pathlib, sys
from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.window.session import Session
with bootstrap.open_ledger(pathlib.Path(sys.argv[1])) as ledger:
    desk = bootstrap.make_desk(ledger, Where(area="loading", router="1", worker="02"), Clock())
    session = Session(w, desk); session.start(); a.processEvents()
"""
)
SCANNING = (
    READY
    + """
    from station.shop.codes import write
    for n in range(500):
        session.take(write("worker", "02" if n % 2 else "03"))
"""
)
# VmHWM, for what getrusage tells is inherited from the process that started this one.
PEAK = """
print(next(line.split()[1] for line in open("/proc/self/status") if line.startswith("VmHWM")))
"""


def run(bench: Bench) -> None:
    """All lines of this part."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    shop = small_shop(bench.folder)
    windows(bench, shop)
    memory(bench, shop)
    scans(bench)


def small_shop(folder: Path) -> Path:
    """A folder with the tests' small shop in it."""

    data = folder / "shop"
    with bootstrap.open_ledger(data) as ledger:
        bootstrap.seed_shop(ledger, facts(), "2026-11-25T07:00:00", stock=START)
    return data


def timed(script: str, *args: str) -> tuple[float, str]:
    """Seconds of a whole process, and what it printed."""
    began = perf_counter()
    done = subprocess.run(
        [sys.executable, "-c", script, *args], cwd=HERE, check=True, capture_output=True, text=True
    )
    return perf_counter() - began, done.stdout


def windows(bench: Bench, shop: Path) -> None:
    """First window and ready for a scan, over a bare window's process."""
    # as after any first start: where Python is told to write no bytecode, every process would
    # compile our modules anew, and those of the bare window never
    compileall.compile_dir(HERE / "station", quiet=2)
    bare, frame, ready = [], [], []
    for _ in range(RUNS + 1):
        bare.append(timed(BARE)[0])
        frame.append(timed(FRAME)[0])
        ready.append(timed(READY, str(shop))[0])
    for name, ours, limit in (
        ("first window over a bare window", frame[1:], 1.5),
        ("ready for a scan over a bare window", ready[1:], 4.0),
    ):
        each = [a / b for a, b in zip(ours, bare[1:], strict=True)]
        bench.add(
            name, statistics.median(each), limit=limit, spread=f"{min(each):.2f}–{max(each):.2f}"
        )


def memory(bench: Bench, shop: Path) -> None:
    """Peak memory after 500 scans, over a bare window's."""
    bare = int(timed(BARE + PEAK)[1])
    ours = int(timed(SCANNING + PEAK, str(shop))[1])
    bench.add("memory after 500 scans over a bare window", ours / bare, limit=2.2)


def scans(bench: Bench) -> None:
    """From a scan to its painted answer, on a long and on a short history."""
    short, _ = scanned(bench, SHORT)
    long, busy = scanned(bench, bench.long)
    bench.add(
        f"scan to painted answer, {bench.long:,} entries, median",
        1000 * statistics.median(long),
        unit="ms",
        limit=5,
    )
    bench.add("scan to painted answer, 99 of 100", 1000 * centile(long, 0.99), unit="ms", limit=16)
    bench.add("of that processor time, 99 of 100", 1000 * centile(busy, 0.99), unit="ms", limit=10)
    value, spread = ratio(long, short, 0.5)
    bench.add(f"scan, {bench.long:,} entries over {SHORT:,}", value, limit=1.2, spread=spread)
    value, spread = ratio(*todays(bench), 0.5)
    bench.add(
        f"Shop today, {bench.long:,} entries over {SHORT:,}", value, limit=1.2, spread=spread
    )


def opened(bench: Bench, entries: int) -> tuple[object, object, Session]:
    """A real desk and window on a history with the small shop founded on top of it."""

    application = find_application()
    path = bench.history(entries)
    data = path.parent
    path.rename(data / bootstrap.FILE)
    ledger = bootstrap.Ledger(data / bootstrap.FILE, bootstrap.load_rules(), station="1")
    if ledger.view.get(Shop, "shop") is None:
        bootstrap.seed_shop(ledger, facts(), end_of_day(entries), stock=START)
    clock = Clock(end_of_day(entries))
    desk = bootstrap.make_desk(ledger, Where(area="trimming", worker="02"), clock)
    window = Window()
    window.show()
    session = Session(window, desk)
    session.start()
    return application, ledger, session


def end_of_day(entries: int) -> str:
    """The end of a history's last whole day: both histories have just as much in it."""
    return time_of(entries // A_DAY * A_DAY - 1)


def scanned(bench: Bench, entries: int) -> tuple[list[float], list[float]]:
    """Seconds from each scan to its painted answer, and of its processor time.

    A batch is trimmed a few pieces at a time. A machine that is busy with other work moves
    the first, hardly the second.
    """

    application, ledger, session = opened(bench, entries)
    traveller = write("batch", "00900", "A")
    around = (
        traveller,
        write("part", GAUGE),
        write("reason", "01"),
        button("some_trimmed"),
        "1",
        button("on_rack"),
        button("undo"),
    )
    times, busy = [], []
    for n in range(SCANS):
        began, worked = perf_counter(), thread_time()
        session.take(around[n % len(around)])
        application.processEvents()
        times.append(perf_counter() - began)
        busy.append(thread_time() - worked)
    session.stop()
    ledger.close()
    session.window.close()
    return times[len(around) :], busy[len(around) :]


def todays(bench: Bench) -> tuple[list[float], list[float]]:
    """Seconds of each painting of Shop today, on the long history and the short one in turn."""
    both = [opened(bench, n) for n in (bench.long, SHORT)]
    times: tuple[list[float], list[float]] = ([], [])
    for _, _, session in both:
        session.desk.at(area="today")
    for _ in range(65):
        for mine, (application, _, session) in zip(times, both, strict=True):
            began = perf_counter()
            session.repaint()
            application.processEvents()
            mine.append(perf_counter() - began)
    for _, ledger, session in both:
        session.stop()
        ledger.close()
        session.window.close()
    return times[0][5:], times[1][5:]
