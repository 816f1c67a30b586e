"""Every call to the disk fails once in whatever a ledger does: all parts are there, or nothing.

Each deed is done on a copy of a file, with the disk failing at its first call, its second and
so on until it needs no more. It may end in a fault with a sentence; the file then holds what it
held before, or all of what the deed does, and the same deed again brings that about.
"""

import gc
import inspect
import itertools
import logging
import shutil
from pathlib import Path

import pytest

from station.ledger.faults import Fault, InUse
from station.ledger.ledger import Ledger
from station.ledger.statements import DERIVED
from station.ledger.talk import exchange
from station.shop.facts import Batch
from tests.ledger.stations import Station
from tests.ledger.toy import AT, RULES, act
from tests.power.disks import CHANGING, FailingDisk
from tests.power.layer import in_memory, library, under
from tests.simulate.shop import MemoryLink, MemoryShop

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(library() is None, reason="SQLite is built into this driver"),
]
ALWAYS = 10**9
WAYS = {"one call": (False, 1), "all from there": (False, ALWAYS), "full": (True, ALWAYS)}
FILE = "shop.station"
MENDED = "a spoilt file mended"  # it cannot be looked at without being mended


@pytest.fixture(autouse=True)
def quiet():
    logging.disable(logging.CRITICAL)
    yield
    logging.disable(logging.NOTSET)


class World:
    """Two stations' shop, and station 1's file in a folder as each deed finds it."""

    def __init__(self, top: Path) -> None:
        self.top, self.shop = top, MemoryShop()
        one, two = (Station(top / f"s{n}", n, self.shop) for n in "12")
        for n in range(12):
            one.ledger.record(act(f"a{n}", batch=f"{n % 3:05d}"))
        for station in (one, two, one):
            station.share()
        one.ledger.record(act("mine", batch="00001"))
        two.ledger.record(act("theirs", batch="00001"))
        two.ledger.record(act("others", batch="00009"))
        two.share()
        for station in (one, two):
            station.ledger.close()
        self.shared = top / "s1"
        alone = Ledger(self._folder("alone") / FILE, RULES)
        for n in range(12):
            alone.record(act(f"a{n}", at=f"2026-11-{n + 10}T10:00:00", batch=f"{n % 3:05d}"))
        alone.backup(self._folder("restored") / "copy.backup")
        alone.take_number("batch")  # of a block that more are taken of
        alone.record(act("after the backup"))
        shutil.copyfile(alone.path, self._folder("logged") / FILE)  # with its log, as after a cut
        shutil.copyfile(f"{alone.path}-wal", self.top / "logged" / f"{FILE}-wal")
        self.closing = closing_of(alone)
        alone.close()
        shutil.copyfile(alone.path, self.top / "restored" / FILE)
        raw = bytearray(alone.path.read_bytes())
        at = raw.find(b'"id":"after the backup"')
        raw[at : at + 4] = bytes(4)
        self._folder("spoilt")
        (self.top / "spoilt" / FILE).write_bytes(raw)
        self._folder("none")

    def _folder(self, name: str) -> Path:
        (self.top / name).mkdir()
        return self.top / name


def closing_of(ledger):
    from station.ledger import closing, rebuild  # noqa: PLC0415

    number, link, at = ledger._store.rows("SELECT number, digest, at FROM entry WHERE number=6")[0]
    return closing.close(rebuild.closed(ledger._store, 6), closing.Begin(number, link, at))


def opened(folder):
    """A block asked for again has the same id again; beside it another has its own."""
    ledger = Ledger(folder / FILE, RULES, ids=lambda: f"block {ledger.not_shared() + 1}")
    return ledger


def with_ledger(do):
    """A deed on an open ledger, closed whatever comes."""

    def deed(folder, world):
        ledger = opened(folder)
        try:
            do(ledger, world)
        finally:
            ledger.close()

    return deed


def share(ledger, world):
    link = MemoryLink(world.shop)
    for _ in range(3):
        ledger.take_news(exchange(link, ledger.offer()))


def share_by_acts(ledger, world):
    """A scan comes in the middle of the first page; it is taken in all the same."""
    link = MemoryLink(world.shop)
    for turn in range(3):
        news = exchange(link, ledger.offer())
        for step in itertools.count():
            if ledger.take_news_until(news, 0.0) is not None:
                break
            if (turn, step) == (0, 2):
                ledger.record(act("a scan in the middle", batch="00001"))


def share_by_groups(ledger, world):
    """What is decided again is shared while what stands behind it is still undone."""
    link = MemoryLink(world.shop)
    for _ in range(3):
        news = exchange(link, ledger.offer())
        while ledger.take_news_until(news, 0.0, by_groups=True) is None:
            offer = ledger.offer_ahead()
            came = exchange(link, offer).entries if offer and offer.rows else ()
            if ledger.take_more(came):
                news = news._replace(entries=(*news.entries, *came))


def put_back(ledger, world):
    world.shop.put_back(6)
    world.shop.epoch = 2
    share(ledger, world)


def taken_back(ledger, _world):
    ledger.undo("after the backup", act("back", "undo"))


def numbered(ledger, _world):
    """Done again it may be another number: where only the act failed, the first is used up."""
    ledger.take_number("batch")
    ledger.record(act("new"))


def moved_in(ledger, _world):
    ledger.record(act("new"))
    ledger.idle()


def held_still(ledger, _world):
    ledger.hold_still()
    ledger.record(act("new"))
    ledger.go_on()
    ledger.idle()


def restored(folder, _world):
    Ledger.restore(folder / "copy.backup", folder / FILE)


def opened_twice(folder, _world):
    """A spoilt file: the first start says so once it is mended, the second goes on."""
    for _ in range(2):
        try:
            opened(folder).close()
        except Fault as fault:
            if "set aside" not in str(fault):
                raise


DEEDS = {
    "a file is made": ("none", with_ledger(lambda *_: None)),
    "a file is opened": ("alone", with_ledger(lambda *_: None)),
    "a file is opened after a cut": ("logged", with_ledger(lambda *_: None)),
    "an act": ("alone", with_ledger(lambda it, _: it.record(act("new"), "draft"))),
    "an act after a cut": ("logged", with_ledger(lambda it, _: it.record(act("new"), "draft"))),
    "an act that waits": ("s1", with_ledger(lambda it, _: it.record(act("new"), "draft"))),
    "an act taken back": ("alone", with_ledger(taken_back)),
    "an act, and its log moved in": ("alone", with_ledger(moved_in)),
    "an act while the file is copied": ("alone", with_ledger(held_still)),
    "an act with a number": ("alone", with_ledger(numbered)),
    "a number of a new block": ("alone", with_ledger(lambda it, _: it.take_number("order"))),
    "asking for numbers ahead": (
        "none",
        with_ledger(lambda it, _: (it.share_with("s1"), it.ask_ahead())),
    ),
    "the work in hand": ("alone", with_ledger(lambda it, _: it.keep("draft"))),
    "a local value": ("alone", with_ledger(lambda it, _: it.set_local("area", "popping"))),
    "taking in from the shop": ("s1", with_ledger(share)),
    "taking in act by act": ("s1", with_ledger(share_by_acts)),
    "taking in group by group": ("s1", with_ledger(share_by_groups)),
    "the shop put back": ("s1", with_ledger(put_back)),
    "joining": ("none", with_ledger(lambda it, _: it.share_with("s1"))),
    "joining, and copying the shop": (
        "none",
        with_ledger(lambda it, world: (it.share_with("s1"), share(it, world))),
    ),
    "beginning with a closing": (
        "none",
        with_ledger(lambda it, world: it.count() or it.start_from(world.closing)),
    ),
    "dropping what is old": (
        "alone",
        with_ledger(lambda it, _: it.begins()[0] or it.drop_until(6)),
    ),
    "a rebuild": ("alone", with_ledger(lambda it, _: it.rebuild())),
    "a backup": ("alone", with_ledger(lambda it, _: it.backup(it.path.with_name("copy")))),
    "a backup kept": ("alone", with_ledger(lambda it, _: it.keep_backup(AT))),
    "a backup put in place": ("restored", restored),
    MENDED: ("spoilt", opened_twice),
}
READS = {  # what a ledger does without a write
    "view": lambda it: it.view.get(Batch, "00001"),
    "not_shared": lambda it: it.not_shared(),
    "draft": lambda it: it.draft(),
    "local": lambda it: it.local("area"),
    "facts": lambda it: list(it.facts(Batch)),
    "balances": lambda it: list(it.balances()),
    "entries": lambda it: list(it.entries()),
    "count": lambda it: it.count(),
    "tally": lambda it: it.tally(AT[:13], AT[:13]),
    "flow": lambda it: it.flow("", AT),
    "shared": lambda it: it.shared,
    "offer": lambda it: it.offer(),
    "offer_ahead": lambda it: it.offer_ahead(),
    "begins": lambda it: it.begins(),
    "verdict": lambda it: it.verdict("a1"),
    "oldest_not_shared": lambda it: it.oldest_not_shared(),
    "chain": lambda it: list(it.chain(0)),
    "holds": lambda it: it.holds(1, b""),
    "is_taking_in": lambda it: it.is_taking_in,
    "is_still": lambda it: it.is_still,
    "older_at": lambda it: it.older_at,
    "check": lambda it: it.check(),
    "witness": lambda it: it.witness(),
    "bears_out": lambda it: it.bears_out((1, "0123456789")),
    "list_backups": lambda it: it.list_backups(),
    "newest_at": lambda it: it.newest_at(),
    "office": lambda it: it.office,
    "database": lambda it: it.database,
    "has_to_share": lambda it: it.has_to_share(),
    "held": lambda it: it.held,
    "find_backup": lambda it: it.find_backup(AT),
    "has_twin": lambda it: it.has_twin,
    "forget_twin": lambda it: it.forget_twin(),  # where it has one, a local value as above
    "older_than": lambda it: it.older_than(AT),
    "hurry": lambda it: it.hurry(on=False),  # how it will write
}


def state(folder):
    """What the file holds, as seen with a disk that works; None where there is none."""
    if not (folder / FILE).exists() and not (folder / f"{FILE}.new").exists():
        return None
    try:
        ledger = opened(folder)
    except InUse:  # a fault's trace still holds the file
        gc.collect()
        ledger = opened(folder)
    run = ledger._store.rows
    held = [run(f"SELECT * FROM {t} ORDER BY 1, 2, 3, 4") for t in DERIVED]
    ids = [
        run("SELECT number, id FROM entry ORDER BY number"),
        run("SELECT id FROM pending ORDER BY seq"),
    ]
    local = run("SELECT * FROM local WHERE key IN ('draft', 'area', 'shop', 'epoch') ORDER BY key")
    problems = ledger.check()
    ledger.close()
    assert problems == []
    return held, ids, local, copies(folder)


def copies(folder):
    return [p.name for p in folder.iterdir() if p.name == "copy"]


def run_through(top, deed, world_of, way):
    """Fails the n-th call for all n; gives how many calls there are and how many were told."""
    start, do = DEEDS[deed]
    full, times = WAYS[way]
    done = fresh(top, "sound", world_of(), start, do)
    shutil.copytree(world_of().top / start, top / "before")
    before = None if deed == MENDED else state(top / "before")
    assert done != before or deed in UNCHANGED
    told = []
    for nth in itertools.count(1):
        world = world_of()
        folder = top / f"n{nth}"
        shutil.copytree(world.top / start, folder)
        disk = FailingDisk(folder, full=full)
        disk.fail(nth, times)
        try:
            with under(disk):
                do(folder, world)
        except Fault as fault:
            told.append(str(fault))
        if not disk.failed:
            assert all(words.endswith(".") and "\n" not in words for words in told)
            return nth, len(told)
        if deed != MENDED:
            assert state(folder) in (before, done) or deed in IN_STEPS, nth
        do(folder, world)
        assert state(folder) == done or (deed == MENDED and fewer(state(folder), done)), nth
        shutil.rmtree(folder)
    raise AssertionError


def fewer(found, whole):
    """Whether entries are missing at the end: what cannot be read now is in the file set aside."""
    (entries, _), (every, _) = found[1], whole[1]
    return entries == [row for row in every if row[0] <= len(entries)]


OPENED = ("a file is opened", "a file is opened after a cut")  # nothing need be written
UNCHANGED = (*OPENED, "a rebuild", "a backup kept")  # in the end nothing is other than before
IN_STEPS = (  # each step is whole by itself
    "a file is made",
    "joining",
    "joining, and copying the shop",
    "beginning with a closing",
    "taking in from the shop",
    "taking in act by act",
    "the shop put back",
    "asking for numbers ahead",
)


def fresh(top, name, world, start, do):
    shutil.copytree(world.top / start, top / name)
    do(top / name, world)
    return state(top / name)


@pytest.fixture(scope="module")
def made():
    logging.disable(logging.CRITICAL)
    with in_memory() as top:
        yield World(top)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("deed", DEEDS)
def test_all_of_it_is_there_or_nothing(deed, way, made):
    entries, writes = list(made.shop.entries), list(made.shop.writes)

    def world():
        made.shop.entries[:], made.shop.writes[:], made.shop.epoch = entries, writes, 1
        return made

    with in_memory() as top:
        calls, told = run_through(top, deed, world, way)
    assert calls > 10 or way == "full"
    assert told or deed in OPENED, (calls, told)


def test_no_way_to_write_is_missing(made, monkeypatch):
    done = set()
    ways = {name for name in vars(Ledger) if not name.startswith("_")} - READS.keys()
    for name in ways:
        monkeypatch.setattr(Ledger, name, noted(name, done))
    with in_memory() as top:
        for deed, (start, do) in DEEDS.items():
            shutil.copytree(made.top / start, top / deed)
            do(top / deed, made)
    assert ways - done == set()


def noted(name, done):
    """A method of a ledger as it is; that it was called is noted."""
    plain = inspect.getattr_static(Ledger, name)
    fixed = isinstance(plain, staticmethod)
    method = plain.__func__ if fixed else plain

    def calls(*given, **more):
        done.add(name)
        return method(*given, **more)

    return staticmethod(calls) if fixed else calls


class Watched(FailingDisk):
    """A disk that notes what is asked of it that changes a file."""

    changed = ()

    def asked(self, what, name, offset=0, data=b""):
        if what in CHANGING:
            self.changed = (*self.changed, what)
        return super().asked(what, name, offset, data)


@pytest.mark.parametrize("start", ["alone", "s1"])
@pytest.mark.parametrize("way", READS)
def test_what_only_reads_does_not_write(way, start, made):
    with in_memory() as top:
        shutil.copytree(made.top / start, top / "it")
        disk = Watched(top / "it")
        with under(disk):
            ledger = opened(top / "it")
            disk.changed = ()
            READS[way](ledger)
            assert disk.changed == ()
            ledger.close()
