"""A wide shop beside the demo shop: from scan to painted answer at every work area.

Wide: 2,000 packs that have left, 300 parts, 400 open orders, 12 routers with full queues. It is
the demo shop with more around it, so the same codes mean the same in both, and are scanned in
turn: a busy machine moves both sides.
"""

import os
import shutil
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from functools import partial
from itertools import count
from pathlib import Path
from time import perf_counter, sleep, thread_time
from typing import Any

from demo_db.build import build as build_demo
from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.jobs.process import ProcessJob
from station.ledger.ledger import Ledger
from station.look.window import Window
from station.queries.settings import list_workers
from station.shop.acts import Act, Answer, Args, good
from station.shop.cards import button
from station.shop.codes import usable, write
from station.shop.facts import (
    Batch,
    Bed,
    Cart,
    CutFile,
    Fact,
    Line,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Router,
    Slip,
)
from station.shop.moves import Move, move
from station.shop.rooms import Begin
from station.shop.views import Rule, View
from station.shop.words import say
from station.window.session import Session
from station.window.show import find_application
from tests.bench import Bench, median, ratio

NOW = "2026-11-25T10:42:00"
SHIPPED, PARTS, ORDERS, ROUTERS = 2000, 300, 400, 12
QUEUED, LOTS = 6, 3  # batches in a new router's queue; of each new part on the rack
ROUNDS = 40
LIMIT = 1.2
THOUGHTS = 3  # of the plan's screen, each from its opening
PAUSE_S, SLOWEST_S = 0.02, 120.0  # between two steps; until a thought must be there


class BenchWiden(Args, frozen=True, kw_only=True):
    """A shop becomes wide."""

    kind = "bench_widen"


def run(bench: Bench) -> None:
    """All lines of this part."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    demo = bench.keep / "demo.station"
    if not demo.exists():
        build_demo(demo, datetime.fromisoformat(NOW))
    application = find_application()
    both = [open_shop(bench.folder / name, demo, wide=name == "wide") for name in ("wide", "demo")]
    for area, codes in list_rounds(both[1].desk.ledger).items():
        times, busy = scan_in_turn(application, both, area, codes)
        value, spread = ratio(*busy, 0.5)
        bench.add(f"{area}: a scan in the wide shop", value, limit=LIMIT, spread=spread)
        bench.add(f"{area}: scan to painted answer", 1000 * median(times), unit="ms")
    for session in both:
        close(session)
    live = open_shop(bench.folder / "live", demo, wide=True, begin=ProcessJob)
    add_thinking(bench, application, live)
    close(live)


def close(session: Session) -> None:
    """Closes a shop and its window."""
    session.stop()
    session.desk.ledger.close()
    session.window.close()


def add_thinking(bench: Bench, application: Any, session: Session) -> None:
    """Adds how long the window is held up at most while the past is read and a plan is thought."""
    busy: list[float] = []
    whole: list[float] = []
    for _ in range(THOUGHTS):
        session.desk.at(area="today")
        session.desk.look_ahead()  # the thought that was there is forgotten
        session.desk.at(area="plan")
        began = perf_counter()
        busy += list(step_until_thought(application, session))
        whole.append(perf_counter() - began)
        assert session.desk.ahead.thought is not None
    said = f"{len(busy)} steps"
    bench.add("plan: the window held up at most while it thinks", 1000 * max(busy), unit="ms",
              limit=50.0, spread=said)  # fmt: skip
    bench.add("plan: from opening the screen to its plan", median(whole), unit="s")
    stopped = [time_stop(application, session) for _ in range(THOUGHTS)]
    bench.add("plan: from “Stop looking” until nothing thinks", 1000 * max(stopped), unit="ms",
              limit=50.0, spread=f"least {1000 * min(stopped):.1f}")  # fmt: skip


def time_stop(application: Any, session: Session) -> float:
    """Times the button that stops a thought on its way, until the window stands again; seconds."""
    session.desk.at(area="today")
    session.desk.look_ahead()
    session.desk.at(area="plan")
    ahead, ends = session.desk.ahead, perf_counter() + SLOWEST_S
    while ahead.running is None and perf_counter() < ends:
        session.tick()
    assert ahead.running is not None
    began = perf_counter()
    session.take(button("think"))
    application.processEvents()
    took = perf_counter() - began
    assert not ahead.is_thinking
    return took


def step_until_thought(application: Any, session: Session) -> Iterator[float]:
    """Steps as the window's own clocks do, with a scan in between; gives processor seconds each.

    Processor time of the window's thread: a machine that is busy with other work moves it little.
    """
    ends = perf_counter() + SLOWEST_S
    scan = partial(session.take, button("row_9"))
    steps = (session.tick, session.look_at_job, scan, application.processEvents)
    while session.desk.ahead.thought is None and perf_counter() < ends:
        for step in steps:
            worked = thread_time()
            step()
            yield thread_time() - worked
        sleep(PAUSE_S)


def open_shop(folder: Path, demo: Path, *, wide: bool, begin: Begin | None = None) -> Session:
    """Opens a copy of the demo shop at a real window, made wide where wanted.

    Without `begin` what it thinks beside the screen never ends: the screen is measured.
    """
    folder.mkdir()
    shutil.copyfile(demo, folder / bootstrap.FILE)
    rules = {**bootstrap.load_rules(), BenchWiden.kind: WIDEN}
    ledger = Ledger(folder / bootstrap.FILE, rules, station="1")
    if wide:
        act: Act[Args] = Act(id="wide", kind=BenchWiden.kind, at=NOW, args=BenchWiden())
        assert not ledger.record(act).answer.refused
    worker = next(w.id for w in list_workers(ledger.view) if w.supervisor)
    where = Where(area="today", worker=worker, router="2")
    begin = begin or (lambda _request: Endless())
    desk = bootstrap.make_desk(ledger, where, Clock(NOW), begin=begin)
    session = Session(Window(), desk)
    session.window.show()
    session.start()
    return session


class Endless:
    """Work beside the screen that never ends: the screen alone is measured."""

    def progress(self) -> tuple[str, float]:
        """Nothing of it is done yet."""
        return "", 0.0

    def is_over(self) -> bool:
        """It goes on."""
        return False

    def outcome(self) -> object:
        """Nothing comes of it."""
        return None

    def stop(self) -> None:
        """Nothing runs."""


def scan_in_turn(
    application: Any, both: Sequence[Session], area: str, codes: Sequence[str]
) -> tuple[list[float], tuple[list[float], list[float]]]:
    """Seconds from scan to painted answer in the wide shop; of processor time in either shop.

    Each is the mean of a round at one area. A machine that is busy with other work moves the
    first, hardly the others, so the ratio is theirs.
    """
    times: list[float] = []
    busy: tuple[list[float], list[float]] = ([], [])
    for session in both:
        session.desk.at(area=area)
        session.take(button("put_down"))
        assert session.desk.hand.worker, "nobody works here"
    for _ in range(ROUNDS + 2):
        for mine, session in zip(busy, both, strict=True):
            began, worked = perf_counter(), thread_time()
            for code in codes:
                session.take(code)
                application.processEvents()
            mine.append((thread_time() - worked) / len(codes))
            if mine is busy[0]:
                times.append((perf_counter() - began) / len(codes))
    return times[2:], (busy[0][2:], busy[1][2:])


def list_rounds(ledger: Ledger) -> dict[str, tuple[str, ...]]:
    """Lists for each work area the codes of one round, which ends as it began."""
    view, down = ledger.view, button("put_down")
    queued = view.shelf(Batch, "queue/2")[0]
    slip = view.shelf(Slip, "popping")[0]
    popped = view.get(Batch, slip.batch)
    assert popped is not None
    trimmed = view.get(Batch, view.stock(place="trimming")[0].batch)
    assert trimmed is not None
    order = next(o for o in view.shelf(Order, "open") if not o.claimed)
    cart = view.shelf(Cart, "all")[0]
    lot = view.stock(place="store")[0].batch
    return {
        "loading": (_write_traveller(queued), write("lot", lot), "6.4", button("bit_good"), down),
        "popping": (write("batch", popped.id, popped.copy, slip.sheet), "3", down),
        "trimming": (_write_traveller(trimmed), write("reason", "01"), button("more"), down),
        "packing": (write("order", order.id), button("part_missing"), "0", down),
        "cart": (write("cart", cart.id), button("next_page"), down),
        "today": (button("show_concerns"), button("row_1"), down, button("show_flow")),
        "office": (button("next_kind"), button("row_1"), down, button("back_kind")),
        "plan": (button("row_2"), button("row_1")),
    }


def _write_traveller(batch: Batch) -> str:
    return write("batch", batch.id, batch.copy)


# --- what makes it wide


def widen(_act: Act[BenchWiden], view: View) -> Answer:
    """Adds what a wide shop has more of, so that it ends at the numbers above."""
    known = view.shelf(Part, "all", PARTS)
    taken = (f"{n:03d}" for n in count(100))
    numbers = [next(n for n in taken if usable("part", n)) for _ in range(PARTS - len(known))]
    routers = [str(n) for n in range(len(view.shelf(Router, "all")) + 1, ROUTERS + 1)]
    facts = (
        *_make_parts(numbers),
        *_make_lots(view, len(numbers)),
        *_make_orders(view, numbers),
        *_make_routers(view, routers),
        *_make_packs(view),
    )
    return good(say("The shop is wide"), moves=tuple(_fill_rack(numbers)), sets=tuple(facts))


def _make_parts(numbers: Sequence[str]) -> Iterator[Fact]:
    for n in numbers:
        yield Part(id=n, name=f"W-{n}", words=f"Wide part {n}", rack=n, mark=60)
        yield RackPlace(id=n, name=f"W {n}", part=n)
        parts = tuple((other, 2) for other in {n, numbers[0], numbers[-1]})
        yield Product(id=n, name=f"SET-{n}", words=f"Wide set {n}", parts=parts)


def _fill_rack(numbers: Sequence[str]) -> Iterator[Move]:
    """Puts three batches of most parts on the rack; of each tenth there are none."""
    for n, part in enumerate(numbers):
        for lot in range(LOTS if n % 10 else 0):
            yield move(part, 25, "found", f"rack/{part}", f"8{lot}{n:03d}")


def _make_lots(view: View, parts: int) -> Iterator[Fact]:
    """Makes the batches that lie on the rack."""
    file = next(f for f in view.shelf(CutFile, "all", 50) if f.approved and f.work == "parts")
    for n in range(parts):
        for lot in range(LOTS):
            yield Batch(id=f"8{lot}{n:03d}", cut_file=file.id, revision=file.approved, sheets=1,
                        cut=1, state="cut")  # fmt: skip


def _make_orders(view: View, numbers: Sequence[str]) -> Iterator[Fact]:
    """Makes open orders behind those of the demo: three sets each, due over some days."""
    start = datetime.fromisoformat(NOW)
    for n in range(ORDERS - len(view.shelf(Order, "open", ORDERS))):
        due = (start + timedelta(minutes=15 * n + 30)).isoformat(timespec="seconds")
        wanted = (numbers[(n * 7 + k * 31) % len(numbers)] for k in range(3))
        lines = tuple(Line(product=w, quantity=1 + n % 2) for w in wanted)
        yield Order(id=f"9{n:04d}", lines=lines, due=due)


def _make_routers(view: View, numbers: Sequence[str]) -> Iterator[Fact]:
    """Makes routers with their beds, and batches of the demo's files in their queues."""
    files = [f for f in view.shelf(CutFile, "all", 50) if f.approved and f.work == "parts"]
    for r in numbers:
        yield Router(id=r, name=f"Router {r}")
        yield Bed(id=r, day=NOW[:10])
        for n in range(QUEUED):
            file = files[n % len(files)]
            yield Batch(id=f"7{int(r):02d}{n:02d}", cut_file=file.id, revision=file.approved,
                        router=r, sheets=4, due=NOW[:11] + "15:00:00")  # fmt: skip


def _make_packs(view: View) -> Iterator[Fact]:
    """Makes packs that have left with their orders, fifty a day."""
    start, gone = datetime.fromisoformat(NOW), len(view.shelf(Order, "shipped", 10_000))
    product = view.shelf(Product, "all", 1)[0].id
    for n in range(max(0, SHIPPED - gone)):
        left = (start - timedelta(days=n // 50)).isoformat(timespec="seconds")
        line = Line(product=product, quantity=1)
        yield Order(id=f"8{n:04d}", lines=(line,), due=left, state="shipped")
        yield Pack(id=f"9{n:04d}", order=f"8{n:04d}", mailer="", state="shipped", left=left)


WIDEN = Rule(
    args=BenchWiden,
    reads=frozenset({CutFile, Order, Part, Product, Router}),
    decide=widen,
)
