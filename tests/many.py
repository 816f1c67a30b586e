"""``python -m tests.many [KILLS] [STOPS] [STATIONS]``: a shop of real processes, badly treated.

Each station is a process of its own with its own file, which records acts and shares them
through a proxy with one real PostgreSQL. Stations are killed at random moments and started
again, the server is stopped at once and started again, the network is cut, slowed and
silenced. In the end all heal and share everything; then the six invariants must hold:

1. every acknowledged act is in the shop's database, 2. each id once, 3. the stations are
equal, 4. pieces balance, 5. nothing is ever given out twice, 6. the derived tables equal a
rebuild.
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
from dataclasses import dataclass, field, replace
from pathlib import Path

from station.ledger.ledger import Ledger
from station.ledger.sound import taken_in
from station.ledger.supply import NoNumbers
from station.sharing.address import Address
from station.sharing.link import PostgresLink
from station.sharing.loop import Loop
from station.shop.acts import Act, Answer, good, refuse
from station.shop.facts import Batch
from station.shop.views import Rule, View
from station.shop.words import say
from tests.ledger.toy import RULES, act, new_batch
from tests.proxy import Proxy
from tests.server import AT_ONCE, Server
from tests.sharing.shop import found

BATCHES, ORDERS = 12, 5000
LIFE = (0.3, 3.0)  # seconds of a station between start and kill, the loading left out
HEALING = 120.0  # seconds in which all must be shared in the end


def claim(act: Act, view: View) -> Answer:
    """An order goes to one station only."""
    order = str(act.args["batch"])
    taken = view.get(Batch, order)
    if taken:
        return refuse(say("Taken by {station}", station=taken.router))
    return good(say("Yours"), sets=(replace(new_batch(order), router=act.station),))


MANY = {**RULES, "claim": Rule(frozenset({Batch}), claim)}


# --- one station, in its own process


def child(given: str) -> None:
    """Records and shares until it is killed; to ``heal`` it only shares."""
    life = json.loads(given)
    ledger = Ledger(Path(life["path"]), MANY, station=life["station"])
    if not ledger.shared:
        ledger.share_with(life["site"])
    address = Address("127.0.0.1", life["port"], life["database"])
    loop = Loop(ledger, lambda: PostgresLink(address, life["role"], lambda: life["password"]))
    print("ready", ledger.count(), flush=True)
    chance = random.Random(life["run"])
    n, said = 0, ""
    while True:
        until = time.monotonic() + chance.expovariate(40)
        while time.monotonic() < until:
            loop.step()
            time.sleep(0.002)
        if life["heal"]:
            n += loop.state == "shared" and not ledger.not_shared()
            now = f"{loop.state}, {ledger.not_shared()} to share, at {ledger.count()} {loop.why}"
            if now != said or n > 100:  # seldom: nobody may be reading yet
                said = now if n <= 100 else "healed"
                print(said, flush=True)
            if said == "healed":
                ledger.close()
                return
            continue
        n += 1
        one_act(ledger, f"{life['station']}-{life['run']}-{n}", life["station"], chance)
        loop.kick()


def one_act(ledger: Ledger, name: str, station: str, chance: random.Random) -> None:
    """One scan: told before and after."""
    kind = chance.choices(["cut", "pop", "claim", "number"], [5, 4, 2, 1])[0]
    batch = f"{chance.randrange(BATCHES):05d}"
    if kind == "claim":
        batch = f"o{chance.randrange(ORDERS) if chance.random() < 0.5 else chance.randrange(50)}"
    if kind == "number":
        try:
            batch, kind = ledger.take_number("batch"), "cut"
            print("number", batch, flush=True)
        except NoNumbers:
            return
    print("scan", name, flush=True)
    done = ledger.record(replace(act(name, kind, batch=batch), station=station), f"after {name}")
    print("ack" if done.entry else "no", name, flush=True)
    if chance.random() < 0.1:
        ledger.idle()


# --- the shop around them


@dataclass
class Tally:
    """What was seen of all stations."""

    acked: set[str] = field(default_factory=set)
    numbers: list[str] = field(default_factory=list)
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
            elif word == "number":
                self.numbers.append(name)
            open_scan = word == "scan"
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
                lines = [process.stdout.readline()]
                time.sleep(chance.uniform(*LIFE))
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


def problems_of(many: Many) -> list[str]:
    """What does not hold of the six invariants."""
    with many.shop.admin() as admin:
        rows = admin.execute("SELECT id, verdict, body FROM shop.entry ORDER BY number").fetchall()
    count = Counter(id_ for id_, _, _ in rows)
    found = [f"acknowledged and lost: {i}" for i in sorted(many.tally.acked - count.keys())]
    found += [f"{n} times: {i}" for i, n in count.items() if n > 1]
    found += [f"number given twice: {n}" for n, k in Counter(many.tally.numbers).items() if k > 1]
    bodies = [taken_in(id_, text)[0] for id_, verdict, text in rows if not verdict]
    claims = Counter(b.act.args["batch"] for b in bodies if b.act.kind == "claim")
    found += [f"claimed {n} times: {o}" for o, n in claims.items() if n > 1]
    states = set()
    for number in many.numbers:
        ledger = Ledger(many.folder / f"{number}.db", MANY, station=number)
        found += [f"station {number}: {why}" for why in ledger.check()]
        short = [h for h in ledger.balances() if h.qty < 0 and h.place != "cut"]
        found += [f"station {number}: below nothing {h}" for h in short]
        if ledger.not_shared():
            found.append(f"station {number}: {ledger.not_shared()} not shared")
        states.add(
            json.dumps([[list(h) for h in ledger.balances()], [e.id for e in ledger.entries()]])
        )
        ledger.close()
    return found + (["the stations are not equal"] if len(states) != 1 else [])


def treat(folder: Path, kills: int, stops: int, stations: int, seed: int = 1) -> tuple[str, list]:
    """One whole run; gives the figures and the problems."""
    many = Many(folder, stations, seed)
    try:
        began = time.monotonic()
        many.run(kills, stops)
        problems = many.heal() + problems_of(many)
        with many.shop.admin() as admin:
            total, looks = admin.execute(
                "SELECT count(*), count(*) FILTER (WHERE verdict <> '') FROM shop.entry"
            ).fetchall()[0]
        errors = [p for p in folder.glob("*.err") if p.stat().st_size]
        problems += [f"{p.name}: {p.read_text()[-300:]}" for p in errors]
        problems += [f"station {n} ended by itself" for n in many.tally.died]
        words = (
            f"{stations} stations, {many.tally.kills} kills ({many.tally.between} between scan "
            f"and answer), {many.tally.stops} stops of the server: {len(many.tally.acked)} acts "
            f"acknowledged, {total} entries, {looks} need a look, "
            f"{len(many.tally.numbers)} numbers, {time.monotonic() - began:.0f} s; "
            f"{len(problems)} problems"
        )
        return words, problems
    finally:
        many.close()


def main() -> int:
    if sys.argv[1:2] == ["--child"]:
        child(sys.argv[2])
        return 0
    given = [int(a) for a in sys.argv[1:4]]
    kills, stops, stations = (*given, *(200, 20, 8)[len(given) :])
    with tempfile.TemporaryDirectory(prefix="many-") as folder:
        words, problems = treat(Path(folder), kills, stops, stations)
    print(words)
    for problem in problems[:30]:
        print(problem)
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
