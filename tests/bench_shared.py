"""Sharing, measured against plain PostgreSQL on the same server, and against not sharing.

The server is the real one, waits for the disk at every commit, and runs on this machine. The
files of the fifty stations stand in memory where the machine has such a folder: in a shop
each has a disk of its own, and here they would only wait for each other's.
"""

import json
import shutil
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from time import perf_counter
from typing import Any

from station.ledger import effects
from station.ledger.codec import Body, digest, write_body
from station.ledger.ledger import Ledger
from station.ledger.shop_link import SharedRow
from station.sharing.address import Address
from station.sharing.founding import copy
from station.sharing.link import PostgresLink
from station.sharing.loop import Loop, catch_up
from station.shop.acts import Act
from station.shop.moves import move
from tests.bench import SHORT, Bench, centile, median, ratio
from tests.ledger.toy import RULES, act
from tests.proxy import Proxy
from tests.server import Server
from tests.sharing.shop import Shop, found

STATIONS, PROCESSES, SECONDS = 50, 5, 20
ARRIVING = 100_000
PUSHES = 800
TURNS = 7


def link_of(shop: Shop, number: str, port: int = 0) -> PostgresLink:
    """A station's own way to the shop."""
    shop.station(number).close()
    address = Address("127.0.0.1", port or shop.server.port, shop.database)
    role, password = shop.names.station(number), shop.passwords[number]
    return PostgresLink(address, role, lambda: password)


# --- many stations at work


def child(told: dict[str, Any]) -> None:
    """Some stations of one process: each does an act a second; tells when what was known."""
    stations = [_Watched(told, number) for number in told["stations"]]
    time.sleep(max(0.0, told["start"] - time.time()))
    for n in range(int(told["seconds"] * 100)):
        for k, station in enumerate(stations):
            if n % 100 == (k * 100 // len(stations) + told["shift"]) % 100:
                station.do(n)
            station.step()
        time.sleep(max(0.0, told["start"] + (n + 1) / 100 - time.time()))
    end = time.time() + 3
    while time.time() < end:
        for station in stations:
            station.step()
        time.sleep(0.01)
    print(json.dumps([[s.recorded, s.shared, s.seen] for s in stations]))


class _Watched:
    """A station that notes when its acts were recorded and shared, and those of others seen."""

    def __init__(self, told: dict[str, Any], number: str) -> None:
        folder = Path(tempfile.mkdtemp(dir=told["folder"]))
        self.number = number
        self.ledger = Ledger(folder / "station.db", RULES, station=number)
        self.ledger.share_with(told["site"])
        address = Address("127.0.0.1", told["port"], told["database"])
        role, password = told["roles"][number]
        self.link = PostgresLink(address, role, lambda: password)
        self.recorded: dict[str, float] = {}
        self.shared: dict[str, float] = {}
        self.seen: dict[str, float] = {}
        self.ledger.ask_ahead()  # as joining does: fifty at once would be no ordinary morning
        assert catch_up(self.ledger, self.link).state == "shared"
        self.link.push = self._pushing(self.link.push)  # type: ignore[method-assign]
        take = self.ledger.take_news_until
        self.ledger.take_news_until = self._taking(take)  # type: ignore[method-assign]
        self.loop = Loop(self.ledger, lambda: self.link)
        self.step = self.loop.step

    def _pushing(self, push: Callable[..., Any]) -> Callable[..., Any]:
        def timed(*given: Any) -> Any:
            done = push(*given)
            if hasattr(done, "digest"):
                now = time.time()
                self.shared |= {r.id: now for r in given[4] if r.id in self.recorded}
            return done

        return timed

    def _taking(self, take: Callable[..., Any]) -> Callable[..., Any]:
        def noted(news: Any, until: float, **more: Any) -> Any:
            done = take(news, until, **more)
            if done is not None:
                now = time.time()
                self.seen |= {e.id: now for e in news.entries}
            return done

        return noted

    def do(self, n: int) -> None:
        """One act on the batch of this station, now and then on another's."""
        batch = f"{n * 7 % 50 if n % 10 == 0 else int(self.number):05d}"
        done = replace(act(f"{self.number}-{n}", batch=batch), station=self.number)
        self.recorded[done.id] = time.time()
        self.ledger.record(done)
        self.loop.kick()
        self.loop.step()


def many(bench: Bench, server: Server) -> None:
    """Fifty stations at one act a second."""
    shop = found(server)
    numbers = [str(n) for n in range(2, 2 + STATIONS)]
    for number in numbers:
        shop.station(number).close()
    told = {
        "folder": _own_disks(bench.folder),
        "site": shop.names.site,
        "port": server.port,
        "database": shop.database,
        "start": time.time() + 25,
        "seconds": SECONDS,
        "roles": {n: (shop.names.station(n), shop.passwords[n]) for n in numbers},
    }
    each = STATIONS // PROCESSES
    processes = [
        subprocess.Popen(
            [
                *(sys.executable, "-m", "tests.bench_shared"),
                json.dumps(told | {"stations": numbers[k * each : (k + 1) * each], "shift": k}),
            ],
            stdout=subprocess.PIPE,
            text=True,
        )
        for k in range(PROCESSES)
    ]
    found_by = [s for p in processes for s in json.loads(p.communicate()[0])]
    shutil.rmtree(told["folder"], ignore_errors=True)
    recorded = {i: at for s in found_by for i, at in s[0].items()}
    warm = told["start"] + 3
    sharing = [s[1][i] - at for s in found_by for i, at in s[0].items() if i in s[1] and at > warm]
    seeing = [
        at - recorded[i]
        for s in found_by
        for i, at in s[2].items()
        if i in recorded and i not in s[0] and recorded[i] > warm
    ]
    missing = len(recorded) - sum(len(s[1]) for s in found_by)
    label = f"{STATIONS} stations, an act a second"
    bench.add(f"{label}: recorded to shared, median", 1000 * median(sharing), unit="ms")
    p99 = 1000 * centile(sharing, 0.99)
    bench.add(f"{label}: recorded to shared, 99 of 100", p99, unit="ms", limit=50)
    bench.add(f"{label}: seen elsewhere, median", median(seeing), unit="s")
    bench.add(f"{label}: seen elsewhere, 99 of 100", centile(seeing, 0.99), unit="s", limit=1.5)
    bench.add(f"{label}: acts not shared at the end", missing, unit="", limit=0)


def _own_disks(folder: Path) -> str:
    """Where fifty stations' files do not wait for one disk."""
    memory = Path("/dev/shm")
    return tempfile.mkdtemp(prefix="bench-", dir=memory if memory.is_dir() else folder)


# --- pushes against plain commits


def pushes(bench: Bench, server: Server) -> None:
    """Rows a second: pushed one by one, and plainly inserted and committed one by one.

    Pushes wait for each other, for the history has one order; so do plain rows that take
    their number from one row, and these are measured besides.
    """
    shop = found(server)
    with shop.admin() as admin:
        admin.execute("CREATE TABLE plain (number bigint PRIMARY KEY, id text UNIQUE, body text)")
        admin.execute("CREATE TABLE head AS SELECT 0::bigint AS number")
    for clients in (1, 8):
        rates: dict[str, list[float]] = {"ours": [], "plain": [], "in order": []}
        for turn in range(TURNS):
            name = f"{clients}.{turn}"
            each = range(clients)
            rates["plain"].append(_rate([_plain(shop, f"{name}.{c}") for c in each]))
            rates["ours"].append(_rate([_pushing(shop, c, name) for c in each]))
            rates["in order"].append(_rate([_in_order(shop, f"{name}.{c}") for c in each]))
        _add_rates(bench, f"{clients} at once", rates)


def _add_rates(bench: Bench, words: str, rates: dict[str, list[float]]) -> None:
    for name in ("plain", "in order"):
        ratios = [b / a for a, b in zip(rates["ours"], rates[name], strict=True)]
        label = "plain commits" if name == "plain" else "numbered rows"
        bench.add(
            f"{label} a second over pushes, {words}",
            median(ratios),
            limit=2.0,
            spread=f"{min(ratios):.2f}–{max(ratios):.2f}",
        )
    bench.add(f"pushes a second, {words}", median(rates["ours"]), unit="/s")


def _rate(work: list[Callable[[int], None]]) -> float:
    """How many a second, all at once."""
    clients = len(work)
    count = PUSHES // clients
    begun = threading.Barrier(clients + 1)

    def run(one: Callable[[int], None]) -> None:
        begun.wait()
        for n in range(count):
            one(n)

    threads = [threading.Thread(target=run, args=(one,)) for one in work]
    for thread in threads:
        thread.start()
    begun.wait()
    began = perf_counter()
    for thread in threads:
        thread.join()
    return count * clients / (perf_counter() - began)


SAID = "x" * 400
BODY = json.dumps({"said": SAID})


def _plain(shop: Shop, name: str) -> Callable[[int], None]:
    connection = shop.admin()
    base = abs(hash(name)) % 10**12 * 10**6

    def insert(n: int) -> None:
        row = (base + n, f"{name}-{n}", BODY)
        connection.execute("INSERT INTO plain VALUES (%s, %s, %s)", row, prepare=True)

    return insert


def _in_order(shop: Shop, name: str) -> Callable[[int], None]:
    """Plain rows whose number comes from one row, as it must where none may be missing."""
    connection = shop.admin()
    statement = (
        "WITH next AS (UPDATE head SET number = number + 1 RETURNING number)"
        " INSERT INTO plain SELECT -number, %s, %s FROM next"
    )

    def insert(n: int) -> None:
        connection.execute(statement, (f"{name}-{n}!", BODY), prepare=True)

    return insert


def _pushing(shop: Shop, client: int, name: str) -> Callable[[int], None]:
    link = link_of(shop, str(client + 2))
    head = link.head()
    at = [head.number, head.digest]

    def push(n: int) -> None:
        id_ = f"{name}.{client}-{n}"
        act = {"id": id_, "station": str(client + 2)}
        sets = [[f"batch/{client}", None, None]]
        row = SharedRow(id_, "", (), json.dumps({"act": act, "said": SAID, "sets": sets}))
        done = link.push(at[0], at[1], 1, [f"batch/{client}x"], [row])
        at[:] = [done.number, done.digest]  # type: ignore[union-attr]

    return push


# --- catching up


def catching_up(bench: Bench, server: Server) -> None:
    """A new station takes a long history in, against COPYing the same rows into a table.

    In turns, and the station in a process of its own: this one holds the whole history.
    """
    shop = found(server)
    source = Ledger(bench.history(ARRIVING), {})
    rows = list(source.chain(0))
    source.close()
    with shop.admin() as admin:
        admin.execute("CREATE TABLE shop.same (LIKE shop.entry INCLUDING ALL)")
        _copied(shop, rows, "shop.entry")
    copying, catching = [], []
    for _ in range(TURNS):
        copying.append(_copied(shop, rows, "shop.same"))
        catching.append(_caught_up(bench, shop, len(rows)))
    each = [c / b for b, c in zip(copying, catching, strict=True)]
    bench.add(f"catching up {len(rows):,} entries", len(rows) / median(catching), unit="/s")
    bench.add("the same rows by COPY", len(rows) / median(copying), unit="/s")
    bench.add(
        "COPY's rows a second over catching up",
        median(each),
        limit=3.33,
        spread=f"{min(each):.2f}–{max(each):.2f}",
    )


def _caught_up(bench: Bench, shop: Shop, count: int) -> float:
    """Seconds until a station in a process of its own has all."""
    folder = tempfile.mkdtemp(dir=bench.folder)
    link = link_of(shop, "9")
    told = {
        "catching_up": folder,
        "site": shop.names.site,
        "port": shop.server.port,
        "database": shop.database,
        "role": (link.role, shop.passwords["9"]),
    }
    command = [sys.executable, "-m", "tests.bench_shared", json.dumps(told)]
    seconds, entries = json.loads(
        subprocess.run(command, check=True, stdout=subprocess.PIPE).stdout
    )
    shutil.rmtree(folder)
    assert entries == count
    return float(seconds)


def newcomer(told: dict[str, Any]) -> None:
    """A new station catches up; tells how long it took and how much it has."""
    ledger = Ledger(Path(told["catching_up"]) / "new.db", {}, station="9")
    ledger.share_with(told["site"])
    role, password = told["role"]
    address = Address("127.0.0.1", told["port"], told["database"])
    link = PostgresLink(address, role, lambda: password)
    began = perf_counter()
    assert catch_up(ledger, link).state == "shared"
    print(json.dumps([perf_counter() - began, ledger.count()]))


def _copied(shop: Shop, rows: Iterable[Any], table: str) -> float:
    """Seconds of a COPY of the rows into an empty table, its commit included."""
    with shop.admin() as admin:
        if table != "shop.entry":
            admin.execute(f"TRUNCATE {table}")
        began = perf_counter()
        with admin.transaction():
            head = copy(admin, shop.names.site, rows, "bench", table)
            if table == "shop.entry":
                admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)
        return perf_counter() - began


# --- the screen while sharing


def screen(bench: Bench, server: Server) -> None:
    """From a scan to its painted answer: sharing, the shop away, much arriving, over alone."""
    for how in ("sharing", "away", "arriving"):
        alone, ours = _scanned(bench, server, how)
        for words, share, limit in (("median", 0.5, 1.1), ("99 of 100", 0.99, None)):
            value, spread = ratio(ours, alone, share)
            name = f"scan to answer, {how} over alone, {words}"
            bench.add(name, value, limit=limit, spread=spread)


def _scanned(bench: Bench, server: Server, how: str) -> tuple[list[float], list[float]]:
    """Seconds of scans at a station alone and at one that shares, in turns of twenty-eight."""
    from station.window.session import Session  # noqa: PLC0415 - the other parts need no Qt
    from tests.bench_screen import opened  # noqa: PLC0415

    _, bare, alone = opened(bench, SHORT)
    application, ledger, single = opened(bench, SHORT)
    single.stop()
    single.window.sent.disconnect(single.take)
    shop, proxy = found(server), Proxy(server.port)
    with shop.admin() as admin:
        head = copy(admin, shop.names.site, ledger.chain(0), "bench")
        admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)
    ledger.share_with(shop.names.site)
    link = link_of(shop, "1", proxy.port)
    if how == "arriving":
        _arrive(shop, ARRIVING)
    proxy.mode = "cut" if how == "away" else "open"
    session = Session(single.window, single.desk, Loop(ledger, lambda: link))
    alone.start()
    times: tuple[list[float], list[float]] = ([], [])
    for turn in range(22):
        mine = turn % 2
        (session.start if mine else session._often.stop)()
        for n in range(28):
            times[mine].append(_one_scan(application, (alone, session)[mine], n))
    print(f"… {ledger.count():,} entries are there", file=sys.stderr)
    for one in (alone, session):
        one.stop()
        one.window.close()
    for file in (bare, ledger):
        file.close()
    proxy.close()
    return times[0][28:], times[1][28:]


def _one_scan(application: Any, session: Any, n: int) -> float:
    """A moment as between two scans, then one scan."""
    from station.shop.cards import button  # noqa: PLC0415
    from station.shop.codes import write  # noqa: PLC0415
    from tests.bench_screen import GAUGE  # noqa: PLC0415

    around = (
        write("batch", "00900", "A"),
        write("part", GAUGE),
        write("reason", "01"),
        button("some_trimmed"),
        "1",
        button("on_rack"),
        button("undo"),
    )
    until = perf_counter() + 0.03
    while perf_counter() < until:
        application.processEvents()
        time.sleep(0.001)
    began = perf_counter()
    session.take(around[n % len(around)])
    application.processEvents()
    return perf_counter() - began


def _arrive(shop: Shop, count: int) -> None:
    """So many entries of others in the shop, about batches of their own."""
    with shop.admin() as admin:
        number, link = admin.execute("SELECT number, digest FROM shop.site").fetchall()[0]
        head = copy(admin, shop.names.site, _of_others(count, number, link), "bench")
        admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)


def _of_others(count: int, number: int, link: bytes) -> Iterator[Any]:
    for n in range(count):
        done = Act(
            id=f"other{n}", kind="cut", at="2026-11-25T10:42:07", worker="09", station="9",
            subject=f"batch/x{n % 500}",
        )  # fmt: skip
        moved = (move("014", 3, "cut", "popping/1", f"x{n % 500}"),)
        body = Body(act=done, tone="good", said=("{n} cut", {"n": 3}), moves=moved)
        text = write_body(body)
        link = digest(link, done.id, text)
        yield number + n + 1, done.id, "", effects.writes(body), text, link


def run(bench: Bench) -> None:
    """All parts on one server."""
    server = Server(durable=True)
    try:
        for part in (many, pushes, catching_up, screen):
            part(bench, server)
    finally:
        server.remove()


if __name__ == "__main__":
    asked = json.loads(sys.argv[1])
    (newcomer if "catching_up" in asked else child)(asked)
