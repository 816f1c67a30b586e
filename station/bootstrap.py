"""Is the composition root: hands rooms, rules, papers, clock and ids to each other.

No Qt here: the text station and every command that prints use it as it is; `station.window.show`
puts the window on top.
"""

import os
import secrets
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Any

from station.desk import draft as drafts
from station.desk.desk import Desk
from station.floor.office.acts import (
    FoundShop,
    GivenFact,
    Lying,
    RenewFirstFacts,
    RestoreBackup,
)
from station.ledger.faults import NoMembership
from station.ledger.ledger import Ledger
from station.ledger.private import make_folder, make_private
from station.ledger.salvage import BACKUPS
from station.shop.acts import Act
from station.shop.areas import ANYWHERE, AREAS, SUPERVISED
from station.shop.facts import Bed, Fact, Router, Shop
from station.shop.plain import to_plain
from station.shop.rooms import Begin, Hand, Room, Work
from station.shop.views import Rules
from station.shop.words import Say

if TYPE_CHECKING:
    from station.sharing.loop import Loop
    from station.sharing.membership import Membership

FIRST_STATION = "1"  # the PC that had the shop first
FILE = "shop.db"
TRIED = "restore tried"  # local: the act that wanted a backup back, once that was tried
LATELY = 100  # entries at the end of the history that are looked at: others' come in between
BY_ITSELF = ("tell_health", "take_numbers")  # what the program records by itself
JOINED = "shop.json"  # is there once this PC shares


HELD: dict[Path, Ledger] = {}  # what the window has open, by folder: for commands beside it


def load_rooms() -> dict[str, Room]:
    """Loads every room by its area: its rules, its dialogue and its screen."""
    loaded = {ANYWHERE: _load_room(ANYWHERE, Say(), Work)}
    for area in AREAS:
        work = import_module(f"station.floor.{area.id}.work").WORK
        loaded[area.id] = _load_room(area.id, area.title, work)
    return loaded


def _load_room(folder: str, title: Say, work: type[Work]) -> Room:
    base = f"station.floor.{folder}"
    dialogue = import_module(f"{base}.dialogue")
    return Room(
        title=title,
        rules=import_module(f"{base}.rules").RULES,
        handle_input=dialogue.handle_input,
        screen=import_module(f"{base}.screen").screen,
        work=work,
        think=getattr(dialogue, "think_ahead", None),
    )


def load_rules() -> Rules:
    """Loads the rules of all rooms into one table; an act kind stands in one room only."""
    table: Rules = {}
    for folder in (*(area.id for area in AREAS), ANYWHERE):
        rules: Rules = import_module(f"station.floor.{folder}.rules").RULES
        twice = table.keys() & rules.keys()
        assert not twice, f"two rooms decide {twice}"
        table |= rules
    return table


def find_data_folder() -> Path:
    """Finds where this user's station keeps its data when nothing else is said."""
    home = Path.home()
    if sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA", home / "AppData" / "Local"))
    elif sys.platform == "darwin":
        base = home / "Library" / "Application Support"
    else:
        base = Path(os.environ.get("XDG_DATA_HOME", home / ".local" / "share"))
    return base / "sheet-to-cart"


def make_id() -> str:
    """Makes a random id for an act."""
    return secrets.token_hex(16)


@dataclass(frozen=True, kw_only=True)
class Where:
    """Where a station stands, as given on the command line or kept from the first run."""

    area: str = "loading"
    router: str = ""
    bench: str = ""
    worker: str = ""


def say_beside(words: Say) -> None:
    """Says something on standard error, beside the answers of a command."""
    if sys.stderr is not None:  # a program without a console has none
        sys.stderr.write(f"{words}\n")
        sys.stderr.flush()


@contextmanager
def open_ledger(
    data: Path, *, nameless: bool = False, tell: Callable[[Say], None] = say_beside
) -> Iterator[Ledger]:
    """Opens the ledger in a data folder; it is closed again whatever happens.

    The one that the window holds is used as it is, and stays open. `nameless`: to look at alone,
    though nobody knows any more which station of its shop this PC is. `tell` is told how far
    mending is, where the file is damaged. Raises NoMembership.
    """
    if held := HELD.get(data.resolve()):
        yield held
        return
    make_folder(data)
    make_private(data / FILE)
    joined = None
    try:
        joined = find_membership(data)
    except NoMembership:
        if not nameless:
            raise
    station, site = (joined.station, joined.site) if joined else (FIRST_STATION, "")
    ledger = Ledger(data / FILE, load_rules(), station=station, site=site, tell=tell)
    try:
        if wanted := find_wanted_backup(ledger):
            wish = _find_wish(ledger)
            tried = wish.id if wish else ""
            ledger.set_local(TRIED, tried)
            ledger.close()
            Ledger.restore(wanted, ledger.path, site)
            ledger = Ledger(data / FILE, load_rules(), station=station, site=site)
            ledger.set_local(TRIED, tried)  # where PCs share, the wish comes back from the shop
        if joined and not ledger.shared:  # the file is a new one, or joining was cut short
            ledger.share_with(joined.site)
        if ledger.shared and not joined and not nameless:
            raise NoMembership(data / JOINED)
        yield ledger
    finally:
        ledger.close()


def find_wanted_backup(ledger: Ledger) -> Path | None:
    """Finds the backup that this station was to go back to, where nobody worked on since.

    It is tried at one start: one that is no sound backup must not keep the station shut.
    """
    wish = _find_wish(ledger)
    if wish is None or ledger.local(TRIED) == wish.id:
        return None
    file = ledger.path.parent / BACKUPS / Path(wish.args.file).name
    return file if file.is_file() else None


def _find_wish(ledger: Ledger) -> Act[Any] | None:
    """Finds the newest act of a person at this PC, where it wants a backup back."""
    newest = [*ledger.entries(after=ledger.count() - LATELY)]
    acts = [e.past.act for e in newest if e.kind not in BY_ITSELF]
    mine = [act for act in acts if act.station == ledger.station]
    return mine[-1] if mine and mine[-1].kind == RestoreBackup.kind else None


def find_station(data: Path) -> str:
    """Finds the station number of this PC: 1 until it is joined to a shop."""
    joined = find_membership(data)
    return joined.station if joined else "1"


def find_membership(data: Path) -> "Membership | None":
    """Finds what this PC knows of the shop's database; on a single PC None, nothing loaded."""
    if not any(data.glob(f"{JOINED}*")):
        return None
    from station.sharing.membership import of  # noqa: PLC0415 - only where a PC shares

    return of(data)


def make_loop(ledger: Ledger, data: Path) -> "Loop | None":
    """Makes the talk with the shop; none on a PC that shares with nobody."""
    joined = find_membership(data)
    if joined is None:
        return None
    from station.sharing.loop import Loop  # noqa: PLC0415 - only where a PC shares

    return Loop(ledger, lambda: joined.link(data))


def make_desk(
    ledger: Ledger,
    where: Where,
    clock: Callable[[], str],
    *,
    ids: Callable[[], str] = make_id,
    printer: Callable[[str, str], None] = lambda _kind, _id: None,
    begin: Begin | None = None,
    own: str = "",
) -> Desk:
    """Makes a desk at this place, a second one with another `own`; without `begin` it waits."""
    router, table = where.router.upper().removeprefix("R"), load_rooms()
    hand: Hand[Any] = Hand(
        area=where.area,
        work=table[where.area].work(),
        router=router,
        bench=where.bench,
        worker=where.worker,
        station=ledger.station,
    )
    from station.files.handlers import list_handlers  # noqa: PLC0415 - nor is this
    from station.jobs.process import DoneJob  # noqa: PLC0415 - it is not wanted for a first frame

    desk = Desk(
        ledger,
        table,
        hand=hand,
        clock=clock,
        ids=ids,
        printer=printer,
        file_jobs=list_handlers(ledger, clock, ids, beside=begin is not None),
        begin=begin or DoneJob,
        in_slices=begin is not None,
        own=own,
    )
    if desk.resumed and where.worker and desk.hand.worker != where.worker:
        desk.sign_in(where.worker)
    return desk


def find_left(ledger: Ledger, where: Where) -> Where:
    """Finds where a screen was when it closed: one PC may stand at several areas in a day.

    From the office or Shop today, which are only looked at, it comes back to its own area.
    """
    kept = drafts.read(ledger.draft(), load_rooms())
    if kept is None or kept.hand.area in (*SUPERVISED, "today", where.area):
        return where
    return replace(where, area=kept.hand.area, router=kept.hand.router, bench=kept.hand.bench)


def seed_shop(
    ledger: Ledger,
    facts: Iterable[Fact],
    at: str,
    *,
    stock: Iterable[tuple[str, int, str, str, str]] = (),
    ids: Callable[[], str] = make_id,
) -> None:
    """Records a shop's first act: its facts, and `stock` as (part, qty, from, to, batch)."""
    args = FoundShop(
        facts=tuple(GivenFact(kind=fact.kind, value=to_plain(fact)) for fact in facts),
        stock=tuple(Lying(*each) for each in stock),
    )
    act = Act(id=ids(), kind=args.kind, at=at, station=ledger.station, args=args)
    answer = ledger.record(act).answer
    assert not answer.refused, str(answer.said)


def set_up_shop(ledger: Ledger, at: str, *, routers: int = 1) -> None:
    """Sets an empty ledger up with what every shop starts with.

    One that is set up is brought up to what the first facts say by now; where PCs share,
    the first of the office alone does so, or each would.
    """
    first = import_module("station.shop.first_facts")
    shop = ledger.view.get(Shop, "shop")
    if shop is not None:
        if shop.first < first.ISSUE and ledger.station == [*ledger.office, FIRST_STATION][0]:
            args = RenewFirstFacts()
            act = Act(id=make_id(), kind=args.kind, at=at, station=ledger.station, args=args)
            ledger.record(act)
        return
    if ledger.shared:
        return
    new = import_module("station.queries.routers").NEW
    machines = tuple(
        fact
        for n in range(1, routers + 1)
        for fact in (Router(id=str(n), name=f"Router {n}"), Bed(id=str(n), zero=new))
    )
    seed_shop(ledger, (*first.first_facts(), *machines), at)
