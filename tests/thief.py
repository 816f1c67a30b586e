"""A station's password is stolen for an hour: what the thief tries, and what came of it.

Part of ``python -m tests.forge``. The thief speaks SQL as station 3, with time-outs of its own
choosing, while station 2 of the office and station 4 go on with their work. Afterwards the shop
differs by nothing but what station 3 may do itself.
"""

import contextlib
import json
import tempfile
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

import psycopg

from station import bootstrap
from station.ledger.codec import read_body
from station.ledger.effects import writes
from station.shop.acts import Act
from station.shop.facts import KINDS, Concern, Fact, Reason, Shop, Worker
from station.shop.moves import NO_PIECES
from tests import replay
from tests.forge import AT, forge
from tests.server import Server
from tests.sharing.shop import Shop as Database
from tests.sharing.shop import found
from tests.sharing.test_push import APPEND, PUSH
from tests.sharing.test_rights import REFUSED
from tests.sharing.two import Station

OFFICE, THIEF, OTHER = "2", "3", "4"
OWN = (Shop, Worker, Reason)  # kinds of fact that the office alone changes
LONGEST_WAIT = 8.0  # seconds until an honest act is shared while somebody holds sharing up
HOLDS = ("SELECT pg_sleep(60)", "SELECT 1", "")  # what is done meanwhile: at work, now and then
MOST_IN_ALL = 10**5  # pieces in the shop: it has some hundred, and each try adds one at most


@dataclass
class Hour:
    """What was tried in it, what the database took, and what is wrong in the end."""

    tried: int = 0
    taken: int = 0
    slowest: float = 0.0  # seconds until an honest act was shared while sharing was held up
    wrong: list[str] = field(default_factory=list)


class Thief:
    """Somebody with the password of station 3."""

    def __init__(self, stations: dict[str, Station], chance: Random, hour: Hour) -> None:
        self.stations, self.chance, self.hour = stations, chance, hour
        self.shop = stations[THIEF].shop
        self.facts: list[Fact] = [f for kind in KINDS.values() for f in self._all(kind)]

    def _all(self, kind: type[Fact]) -> list[Fact]:
        return list(self.stations[THIEF].ledger.facts(kind))

    def connect(self) -> "psycopg.Connection[Any]":
        """Gives a session without any time-out."""
        link = self.shop.station(THIEF)
        for name in ("statement_timeout", "lock_timeout", "idle_in_transaction_session_timeout"):
            link.execute(f"SET {name} = 0")
        return link

    def try_one(self, link: "psycopg.Connection[Any]", number: int) -> None:
        """Tries one thing; what is refused is as it should be."""
        id_ = f"forged {number}"
        self.hour.tried += 1
        with contextlib.suppress(psycopg.Error):
            if self.chance.random() < 0.2:
                link.execute(self.chance.choice(REFUSED))
                self.hour.wrong.append("a statement was done that is refused")
                return
            text = self._bend(id_)
            head = link.execute("SELECT number, digest FROM shop.site").fetchone()
            claims = self.chance.choice(["", "[]", '["act/x"]', '["shelf/order/open"]'])
            how, said = (PUSH, ([claims],)) if claims else (APPEND, ())
            row = link.execute(how, (*(head or ()), 1, [], [id_], [""], *said, [text])).fetchone()
            self.hour.taken += bool(row and row[0] == "pushed")

    def _bend(self, id_: str) -> str:
        """Writes an entry: any fact bent, under any station's name, or a billion pieces."""
        body = json.loads(forge(self.chance.choice(self.facts), id_, self.chance))
        station = self.chance.choice([OFFICE, THIEF, THIEF, THIEF, OTHER, "", "9"])
        worker = self.chance.choice(["01", "07", ""])
        body["act"] |= {"station": station, "worker": worker}
        key = body["sets"][0][0]
        state = self.stations[THIEF].ledger._history.reader.state(key)
        if state is not None:  # as it stands, so that the change fits
            body["sets"][0][1] = [
                json.loads(bytes(state.body)),
                state.shelf,
                state.rank,
                state.entry,
            ]
        if self.chance.random() < 0.2:
            spots = [["cut", "00900"], ["popping/1", "00900"]]
            body |= {"sets": [], "moves": [["014", self.chance.choice([1, 10**9]), *spots]]}
        text = json.dumps(body)
        if self.chance.random() < 0.1:
            text = text.replace('"station"', '"station": "3", "st\\u0061tion"', 1)
        return text

    def hold(self, keep_on: str) -> None:
        """Holds the site's row as long as it can; honest stations go on sharing all the same."""
        stop, link = threading.Event(), self.connect()

        def holding() -> None:
            with contextlib.suppress(psycopg.Error):
                link.execute("BEGIN")
                self.try_holding(link)
                while not stop.wait(0.2):
                    if keep_on:
                        link.execute(keep_on.encode())

        holder = threading.Thread(target=holding)
        holder.start()
        time.sleep(0.3)
        began = time.monotonic()
        while not work(self.stations[OTHER], f"held up {keep_on}"):
            if time.monotonic() - began > LONGEST_WAIT:
                self.hour.wrong.append(f"sharing is held up: {keep_on or 'idle'}")
                break
        self.hour.slowest = max(self.hour.slowest, time.monotonic() - began)
        stop.set()
        link.close()
        holder.join(20)
        with self.shop.admin() as admin:  # the minute is over
            admin.execute("UPDATE shop.site SET held_at = NULL")

    def try_holding(self, link: "psycopg.Connection[Any]") -> None:
        """Pushes an entry that may be, inside a transaction that stays open."""
        head = link.execute("SELECT number, digest FROM shop.site").fetchone()
        act = {"id": "held", "kind": "note", "at": AT, "station": THIEF}
        text = json.dumps({"act": act, "tone": "good"})
        link.execute(PUSH, (*(head or ()), 1, [], ["held"], [""], ["[]"], [text]))


def work(station: Station, id_: str) -> bool:
    """Does an honest act once, and shares; tells whether all is shared."""
    if station.ledger.verdict(id_) == "":
        args = station.ledger.rules["tell_health"].args(
            version="1", unshared=0, free_mb=10**5, backup_at=AT, trouble=""
        )
        act = Act(id=id_, kind="tell_health", at=AT, station=station.number,
                  subject=f"station/{station.number}", args=args)  # fmt: skip
        assert not station.ledger.record(act).answer.refused
    station.talk()
    return station.ledger.not_shared() == 0


def found_shop(server: Server, folder: Path) -> dict[str, Station]:
    """Founds the small shop with three stations, the first of them the office's."""
    shop, rules = found(server), bootstrap.load_rules()
    stations = {n: Station(folder, shop, n, rules=rules) for n in (OFFICE, THIEF, OTHER)}
    office = stations[OFFICE].ledger
    bootstrap.seed_shop(office, replay.small_shop(), "2026-11-25T07:00:00", stock=replay.START)
    with shop.admin() as admin:
        admin.execute("UPDATE shop.site SET office = ARRAY['2']")
    for station in stations.values():
        station.share()
    return stations


def own(station: Station) -> list[Fact]:
    """Lists what the office alone may change, as a station knows it."""
    return [fact for kind in OWN for fact in station.ledger.facts(kind)]


def judge(stations: dict[str, Station], before: list[Fact], hour: Hour) -> None:
    """Tells what is otherwise than if station 3 had done what it may."""
    for station in stations.values():
        if (state := station.share().state) != "shared":
            hour.wrong.append(f"station {station.number} does not share: {state}")
        if own(station) != before:
            hour.wrong.append(f"people or settings changed at station {station.number}")
        if problems := station.ledger.check():
            hour.wrong.append(f"station {station.number} is not sound: {problems[:2]}")
        lying = (h for h in station.ledger.balances() if h.part not in NO_PIECES)
        pieces = sum(max(held.qty, 0) for held in lying)
        if pieces > MOST_IN_ALL:
            hour.wrong.append(f"{pieces} pieces at station {station.number}")
    judge_entries(stations[OFFICE].shop, hour)
    for concern in stations[OFFICE].ledger.facts(Concern):
        if concern.station in (OFFICE, OTHER) and not concern.settled:
            hour.wrong.append(f"an honest act does not hold: {concern.id}")


def judge_entries(shop: Database, hour: Hour) -> None:
    """Tells which entries are not what they say they are."""
    with shop.admin() as admin:
        rows = admin.execute("SELECT pushed_by, writes, body FROM shop.entry").fetchall()
    for by, names, text in rows:
        body = read_body(str(text))
        if by != shop.names.station(body.act.station):
            hour.wrong.append(f"{by} forged an act of station {body.act.station}")
        if sorted(names) != writes(body):  # type: ignore[call-overload]
            hour.wrong.append(f"{body.act.id} writes something else than was kept")


def steal(
    many: int,
    seed: int,
    prepare: Callable[[Database], None] | None = None,
    holds: int = len(HOLDS),
) -> Hour:
    """Lets the thief try so many things in its hour; `prepare` is done to the database before."""
    hour, chance = Hour(), Random(seed)
    server = Server()
    with tempfile.TemporaryDirectory() as folder:
        try:
            stations = found_shop(server, Path(folder))
            before, thief = own(stations[OFFICE]), Thief(stations, chance, hour)
            if prepare:
                prepare(thief.shop)
            link = thief.connect()
            for number in range(many):
                thief.try_one(link, number)
                if number % 50 == 0:
                    work(stations[OFFICE], f"honest {number}")
                    work(stations[OTHER], f"beside {number}")
                    stations[THIEF].talk()
            link.close()
            for keep_on in HOLDS[:holds]:
                thief.hold(keep_on)
            judge(stations, before, hour)
            for station in stations.values():
                station.close()
        finally:
            server.remove()
    return hour
