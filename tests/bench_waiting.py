"""Taking in one entry that touches nearly all of what waits at a station that was cut off.

Two thousand acts wait there, and five thousand: counts of rack places, by the shop's own rules.
Meanwhile the office has taken in a list with all of their parts, so that each has to be decided
again. How long is a step of taking in, and how long waits a scan that comes at any moment? One
that comes again and again puts it off, so its count ends before all is taken in.
"""

import gc
import shutil
import tempfile
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from time import perf_counter, sleep, thread_time

import msgspec

from station import bootstrap
from station.floor.office.acts import SetList
from station.floor.shared.recounts import RecountPlace
from station.ledger import rebase
from station.ledger.ledger import Ledger
from station.ledger.shop_link import SharedRow
from station.ledger.talk import exchange
from station.sharing.loop import Loop
from station.shop.acts import Act, Args
from station.shop.facts import Part
from tests.bench import Bench
from tests.many_station import RULES, SUPERVISOR, founding
from tests.simulate.founded import AT
from tests.simulate.shop import MemoryLink, MemoryShop

WAITING = (2_000, 5_000)
PARTS = ("061", "062", "045", "051")
SCANS = 20  # that come while it is taken in
STEP_MS, ANSWER_MS = 50, 200


def run(bench: Bench) -> None:
    """Both lengths of what waits."""
    for count in WAITING:
        folder = Path(tempfile.mkdtemp(dir=bench.folder))
        link = _found(folder)
        station = Ledger(folder / "1.db", RULES, station="1")
        station.hurry(on=True)
        for n in range(count):
            _count_place(station, n)
        station.close()
        _take_list_in(folder, link)
        for kept in (rebase._read_kept, rebase._read_names, rebase._marks_of, rebase._writes_of):
            kept.cache_clear()  # as at a new start
        station = Ledger(folder / "1.db", RULES, station="1")
        _take_in(bench, station, link, count)
        assert not station.check()
        station.close()


def _found(folder: Path) -> MemoryLink:
    """Founds a shop of two stations, in their files and in its database."""
    first, link = Ledger(folder / "1.db", RULES), MemoryLink(MemoryShop())
    facts, stock = founding(["1", "2"])
    bootstrap.seed_shop(first, facts, AT, stock=stock)
    for entry in first.chain(0):
        row = SharedRow(entry.id, entry.verdict, tuple(entry.writes), entry.body)
        link.push(link.head().number, link.head().digest, 1, (), [row])
    first.share_with(link.shop.site)
    first.close()
    shutil.copyfile(folder / "1.db", folder / "2.db")
    return link


def _act(id: str, args: Args, *, after_s: int, worker: str, station: str, about: str) -> Act[Args]:
    """An act so many seconds after the shop's founding."""
    at = (datetime.fromisoformat(AT) + timedelta(seconds=after_s)).isoformat()
    return Act(
        id=id, kind=args.kind, at=at, worker=worker, station=station, subject=about, args=args
    )


def _count_place(station: Ledger, n: int) -> None:
    """A rack place is counted: now one more than by the book, now one less."""
    part = PARTS[n % len(PARTS)]
    lies = sum(held.qty for held in station.view.stock(place=f"rack/{part}"))
    differs = 1 if n // len(PARTS) % 2 else -1
    args = RecountPlace(part=part, counted=lies + differs, reason="51", sure=True)
    act = _act(f"count {n}", args, after_s=n, worker="03", station="1", about=f"part/{part}")
    assert station.record(act).entry


def _take_list_in(folder: Path, link: MemoryLink) -> None:
    """At another station the office takes the list of parts in: each has another mark."""
    other = Ledger(folder / "2.db", RULES, station="2")
    found = (other.view.get(Part, part) for part in PARTS)
    rows = tuple(msgspec.to_builtins(replace(p, mark=p.mark + 1)) for p in found if p)
    args = SetList(of="part", values=rows, approved=SUPERVISOR)
    done = other.record(
        _act("list", args, after_s=9, worker=SUPERVISOR, station="2", about="list/part")
    )
    assert done.entry, done.answer
    other.take_news(exchange(link, other.offer()))
    other.close()


def _take_in(bench: Bench, station: Ledger, link: MemoryLink, count: int) -> None:
    """Takes it in by steps, with scans in between."""
    gc.freeze()  # as the window and the text station do
    loop = Loop(station, lambda: link)
    steps, used = list[float](), list[float]()  # processor time beside: the PC may be busy
    answers, thought, here = list[float](), list[float](), station._history
    began, number = perf_counter(), here.number
    while here.number == number:
        started, busy = perf_counter(), thread_time()
        loop.step()
        steps.append(perf_counter() - started)
        used.append(thread_time() - busy)
        scans = len(answers)
        if scans < SCANS and len(steps) % 5 == 0:
            _count_place(station, count + scans)
            answers.append(perf_counter() - started)  # it came as the step began
            thought.append(thread_time() - busy)
        sleep(0.002)
    loop.close()
    label = f"one entry under {count:,} acts that wait"
    bench.add(f"{label}: longest step", 1000 * max(steps), unit="ms", limit=STEP_MS)
    most = 1000 * max(used)
    bench.add(f"{label}: a step's processor time", most, unit="ms", limit=STEP_MS)
    bench.add(f"{label}: longest answer", 1000 * max(answers), unit="ms", limit=ANSWER_MS)
    most = 1000 * max(thought)
    bench.add(f"{label}: an answer's processor time", most, unit="ms", limit=ANSWER_MS)
    bench.add(f"{label}: until all is there", perf_counter() - began, unit="s")
