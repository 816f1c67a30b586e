"""``python -m tests.many [KILLS] [STOPS] [STATIONS]``: a shop of real processes, badly treated.

Each station is a process of its own with its own file, in which somebody scans by the shop's
real rules (`many_station.py`, `many_errands.py`); it shares through a proxy with one real
PostgreSQL. Stations are killed at random moments and started again, the server is stopped at
once and started again, the network is cut, slowed and silenced. In the end all heal and share
everything; then this must hold:

1. every acknowledged act is in the shop's database, and what the shop let count still does,
2. each id once, 3. the stations are equal, 4. pieces balance, 5. no number, order or rack
place is ever given out twice, 6. the derived tables equal a rebuild, 7. one PC alone, given
all acts in their order, comes to the very same.
"""

import json
import random
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from station.ledger.codec import Body, plain_args, read_body, read_fact
from station.ledger.ledger import Ledger
from station.ledger.numbers import given_to
from station.ledger.statements import DERIVED
from station.shop.facts import Order, Pack
from station.shop.places import balances
from tests.many_station import RULES, begin, child
from tests.measured import note
from tests.proxy import Proxy
from tests.server import AT_ONCE, Server
from tests.sharing.shop import found
from tests.simulate.world import decided_again

LIFE = (4, 300)  # lines told between start and kill: a slow machine gets as far
MOMENT = 0.05  # seconds from the last of them to the kill, at most
HEALING = 120.0  # seconds in which all must be shared in the end


# --- the shop around them


@dataclass
class Tally:
    """What was seen of all stations."""

    acked: set[str] = field(default_factory=set)
    certain: int = 0  # acts that only count once the shop has said so
    holding: set[str] = field(default_factory=set)  # of these, what the shop let count
    kills: int = 0
    between: int = 0  # kills between scan and answer
    stops: int = 0
    died: list[str] = field(default_factory=list)

    def take(self, lines: list[str]) -> None:
        """The lines of one life; one that was cut off by the kill was not told."""
        open_scan = False
        for line in lines:
            word, _, name = line.rstrip("\n").partition(" ")
            if not line.endswith("\n"):
                continue
            if word == "ack":
                self.acked.add(name)
            elif word == "holds":
                self.holding.add(name)
            self.certain += word == "certain"
            open_scan = word == "scan" or (open_scan and word not in ("ack", "no"))
        self.between += open_scan


class Many:
    """Stations, server and network, and what is done to them."""

    def __init__(self, folder: Path, stations: int, seed: int) -> None:
        self.folder, self.chance = folder, random.Random(seed)
        self.server = Server(durable=True)
        self.shop = found(self.server)
        self.tally, self.lock = Tally(), threading.Lock()
        self.numbers = [str(n) for n in range(2, 2 + stations)]
        self.proxies = {n: Proxy(self.server.port) for n in self.numbers}
        for number in self.numbers:
            self.shop.station(number).close()
        begin(folder, self.shop, self.numbers)
        self.left = 0

    def life(self, number: str, run: int, *, heal: bool = False) -> subprocess.Popen[str]:
        """A station's process."""
        given = {
            "path": str(self.folder / f"{number}.db"),
            "station": number,
            "site": self.shop.names.site,
            "port": self.proxies[number].port,
            "database": self.shop.database,
            "role": self.shop.names.station(number),
            "password": self.shop.passwords[number],
            "run": run,
            "heal": heal,
        }
        return subprocess.Popen(
            [sys.executable, "-m", "tests.many", "--child", json.dumps(given)],
            stdout=subprocess.PIPE,
            stderr=(self.folder / f"{number}.err").open("a"),
            text=True,
        )

    def lives(self, number: str) -> None:
        """One station's lives, one after the other, until enough were ended."""
        chance, run = random.Random(f"{number}"), 0
        while self._one_more():
            run += 1
            with self.life(number, run) as process:
                assert process.stdout
                lines = [process.stdout.readline() for _ in range(chance.randrange(*LIFE))]
                time.sleep(chance.uniform(0, MOMENT))
                ended = process.poll() is not None
                process.kill()
                lines += process.stdout.readlines()
            with self.lock:
                self.tally.take(lines)
                self.tally.kills += 1
                if ended:
                    self.tally.died.append(number)

    def _one_more(self) -> bool:
        with self.lock:
            self.left -= 1
            return self.left >= 0

    def run(self, kills: int, stops: int) -> None:
        """All the bad treatment."""
        self.left = kills
        threads = [threading.Thread(target=self.lives, args=(n,)) for n in self.numbers]
        for thread in threads:
            thread.start()
        while any(thread.is_alive() for thread in threads):
            proxy = self.proxies[self.chance.choice(self.numbers)]
            proxy.mode = self.chance.choice(["cut", "slow", "silent", "open", "open", "open"])
            time.sleep(self.chance.uniform(0.1, 0.5))
            done = self.tally.kills / max(1, kills)
            if self.tally.stops < stops and done > self.tally.stops / stops:
                self._stop_server()
        while self.tally.stops < stops:
            self._stop_server()

    def _stop_server(self) -> None:
        self.server.stop(AT_ONCE)
        time.sleep(self.chance.uniform(0, 0.5))
        self.server.start()
        self.tally.stops += 1

    def heal(self) -> list[str]:
        """The network is whole again; all share all. Gives what does not come to an end."""
        for proxy in self.proxies.values():
            proxy.mode = "open"
        problems = []
        for _ in range(2):  # the first to heal has not seen what the last one shared
            healing = {n: self.life(n, 0, heal=True) for n in self.numbers}
            with ThreadPoolExecutor(len(healing)) as pool:  # all at once: a full pipe stops one
                told = pool.map(self._told, healing.values())
            for number, said in zip(healing, told, strict=True):
                if said[-1:] != ["healed\n"]:
                    problems.append(f"station {number} does not heal: {said[-4:]}")
        return problems

    def _told(self, process: subprocess.Popen[str]) -> list[str]:
        """What a healing station said; it is ended when its time is up."""
        timer = threading.Timer(HEALING, process.kill)
        timer.start()
        assert process.stdout
        said = process.stdout.readlines()
        timer.cancel()
        process.wait()
        return said

    def close(self) -> None:
        for proxy in self.proxies.values():
            proxy.close()
        self.server.remove()


class Shared(NamedTuple):
    """One entry of the shop's database."""

    id: str
    verdict: str
    body: Body


def shared(many: Many) -> list[Shared]:
    """The shop's history."""
    with many.shop.admin() as admin:
        rows = admin.execute("SELECT id, verdict, body FROM shop.entry ORDER BY number").fetchall()
    return [Shared(str(i), str(verdict), read_body(str(text))) for i, verdict, text in rows]


def problems_of(many: Many, entries: list[Shared]) -> list[str]:
    """What does not hold."""
    count = Counter(e.id for e in entries)
    found = [f"acknowledged and lost: {i}" for i in sorted(many.tally.acked - count.keys())]
    found += [f"{n} times: {i}" for i, n in count.items() if n > 1]
    counting = {e.id for e in entries if not e.verdict}
    found += [f"held, and does not count: {i}" for i in sorted(many.tally.holding - counting)]
    found += given_twice([e.body for e in entries if not e.verdict])
    numbers = Counter(given for e in entries for given in given_to(e.body.act))
    found += [f"number given twice: {n}" for n, k in numbers.items() if k > 1]
    states = set()
    for number in many.numbers:
        ledger = Ledger(many.folder / f"{number}.db", RULES, station=number)
        found += [f"station {number}: {why}" for why in not_sound(ledger)]
        states.add(state_of(ledger))
        ledger.close()
    found += ["the stations are not equal"] if len(states) != 1 else []
    return found + decided_otherwise(many.folder, entries)


def given_twice(bodies: list[Body]) -> list[str]:
    """Orders that were taken while another station had them, and rack places given again."""
    found, places = [], set()
    for body in bodies:
        act = body.act
        for change in body.sets:
            kind, _, name = change.key.partition("/")
            if kind == "rack" and act.kind == "set_fact" and not body.reverses:
                found += [f"rack place given twice: {name}"] if name in places else []
                places.add(name)
            if kind == "order" and change.before and change.after and not body.reverses:
                was, now = (
                    read_fact(Order, s.body).claimed for s in (change.before, change.after)
                )
                taken = was and now and was != now and not plain_args(act).get("approved")
                found += [f"order {name} of {was} given to {now}: {act.id}"] if taken else []
    return found


def not_sound(ledger: Ledger) -> list[str]:
    """What is wrong in one station's books."""
    found = list(ledger.check())
    sums: Counter[str] = Counter()
    for held in ledger.balances():
        sums[held.part] += held.qty
        found += [f"below nothing {held}"] if held.qty < 0 and not balances(held.place) else []
    found += [f"{part} does not balance: {n}" for part, n in sums.items() if n]
    packs = Counter(p.order for p in ledger.facts(Pack) if p.state != "opened")
    found += [f"order {o} is packed {n} times" for o, n in packs.items() if n > 1]
    return found + ([f"{ledger.not_shared()} not shared"] if ledger.not_shared() else [])


def state_of(ledger: Ledger) -> str:
    """The entries and all that is derived, in short."""
    digest = sha256()
    for table in ("entry", *DERIVED):
        for row in ledger._store.run(f"SELECT * FROM {table} ORDER BY 1, 2, 3, 4"):
            digest.update(repr(row).encode())
    return digest.hexdigest()


def decided_otherwise(folder: Path, entries: list[Shared]) -> list[str]:
    """One PC alone decides all acts in the shop's order: what it comes to otherwise."""
    found = []
    alone = Ledger(folder / "alone.db", RULES)
    alone.hurry(on=True)
    for entry in entries[alone.count() :]:
        decided_again(alone, entry.body)
        if alone._history.reader.body(entry.id) != entry.body:
            found.append(f"decided otherwise in order: {entry.id} {entry.body.act.kind}")
    alone.close()
    return found


def treat(folder: Path, kills: int, stops: int, stations: int, seed: int = 1) -> tuple[str, list]:
    """One whole run; gives the figures and the problems."""
    many = Many(folder, stations, seed)
    try:
        began = time.monotonic()
        many.run(kills, stops)
        problems, entries = many.heal(), shared(many)
        problems += problems_of(many, entries)
        errors = [p for p in folder.glob("*.err") if p.stat().st_size]
        problems += [f"{p.name}: {p.read_text()[-300:]}" for p in errors]
        problems += [f"station {n} ended by itself" for n in many.tally.died]
        return figures(many, entries, time.monotonic() - began, len(problems)), problems
    finally:
        many.close()


def figures(many: Many, entries: list[Shared], seconds: float, problems: int) -> str:
    """What one run came to."""
    tally, looks = many.tally, sum(bool(e.verdict) for e in entries)
    numbers = sum(len(given_to(e.body.act)) for e in entries)
    kinds = Counter(e.body.act.kind for e in entries if e.id in tally.acked)
    told = ", ".join(f"{n} {kind}" for kind, n in kinds.most_common())
    return (
        f"{len(many.numbers)} stations, {tally.kills} kills ({tally.between} between scan "
        f"and answer), {tally.stops} stops of the server: {len(tally.acked)} acts "
        f"acknowledged, {len(entries)} entries, {looks} need a look, "
        f"{numbers} numbers, {seconds:.0f} s; {problems} problems\n"
        f"{tally.certain} had to be certain, {len(tally.holding)} were told to hold; "
        f"of those acknowledged: {told}"
    )


def main() -> int:
    if sys.argv[1:2] == ["--child"]:
        child(sys.argv[2])
        return 0
    given = [int(a) for a in sys.argv[1:4]]
    kills, stops, stations = (*given, *(200, 20, 8)[len(given) :])
    with tempfile.TemporaryDirectory(prefix="many-") as folder:
        words, problems = treat(Path(folder), kills, stops, stations)
    print(words)
    note("stations at the shop's rules", words.replace("\n", "; "), "0 problems")
    for problem in problems[:30]:
        print(problem)
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
