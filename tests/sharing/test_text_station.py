"""The text station of a PC that shares, on a disk that fails while news comes from the shop."""

import io
import json
import sys
import time
from collections.abc import Callable, Iterator

import pytest

from station import bootstrap
from station.commands import main, text_station
from station.ledger.faults import DiskFault, DiskFull
from station.sharing import secret
from station.sharing.address import Address
from station.sharing.founding import copy
from station.sharing.membership import Membership
from tests.power.disks import FailingDisk
from tests.power.layer import library, under
from tests.replay import START, code_of, small_shop
from tests.sharing.two import Station

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(library() is None, reason="SQLite is built into this driver"),
]
NOW = "2026-11-25T10:42:00"
ALWAYS = 10**9
PATIENCE = 15.0  # seconds
AGAIN = 3.0  # seconds in which it has tried several times more
WELL = "Sharing goes on again."
TRIES = "Sharing tries again by itself."


@pytest.fixture
def data(tmp_path, shop, monkeypatch):
    """A PC of the shop that has shared all it has."""
    folder = tmp_path / "one"
    with bootstrap.open_ledger(folder) as ledger, shop.admin() as admin:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
        head = copy(admin, shop.names.site, ledger.chain(0), "test")
        admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)
    shop.station("1").close()
    address = Address("127.0.0.1", shop.server.port, shop.database)
    Membership(shop.names.site, "1", shop.names.station("1"), address).keep(folder)
    monkeypatch.setattr(secret, "read", lambda *_: shop.passwords["1"])
    return folder


@pytest.fixture
def news(tmp_path, shop, data):
    """What another station has shared meanwhile: the newest act's id."""
    two = Station(tmp_path, shop, "2")
    for n in range(40):
        two.do(f"there {n}", batch=f"{n + 70000}")
    two.share()
    two.close()
    return "there 39"


class Typed:
    """Somebody who types lines and reads what is said, on a thread of the text station's."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.out, self.err = io.StringIO(), io.StringIO()
        self.broken: list[AssertionError] = []
        monkeypatch.setattr(sys, "stdin", self)
        monkeypatch.setattr(sys, "stdout", self.out)
        monkeypatch.setattr(sys, "stderr", self.err)

    def __iter__(self) -> Iterator[str]:
        try:
            yield from self.types()
        except AssertionError as wrong:
            self.broken.append(wrong)

    types: Callable[[], Iterator[str]]

    @property
    def beside(self) -> list[str]:
        return self.err.getvalue().splitlines()

    @property
    def answers(self) -> list[tuple[str, str]]:
        rows = [json.loads(line) for line in self.out.getvalue().splitlines()]
        return [(row["level"], row["happened"]) for row in rows]

    def until(self, true: Callable[[], object]) -> None:
        end = time.monotonic() + PATIENCE
        while not true():
            time.sleep(0.01)
            assert time.monotonic() < end, (self.beside, self.answers)


@pytest.mark.parametrize(("full", "kind"), [(True, DiskFull), (False, DiskFault)])
def test_a_disk_that_fails_while_news_comes_is_said_once_and_scanning_goes_on(
    data, news, full, kind, monkeypatch
):
    disk, typed = FailingDisk(data, full=full), Typed(monkeypatch)
    # once the log is moved into the file there is room in it for a few acts more
    monkeypatch.setattr(text_station, "MOVED_AFTER", PATIENCE)
    sentence = str(kind(data / bootstrap.FILE))

    def types():
        disk.fail(1, ALWAYS)
        typed.until(lambda: typed.beside)
        time.sleep(AGAIN)
        yield from ("@area trimming\n", "@worker 04\n")
        typed.until(lambda: len(typed.answers) == 2)
        disk.heal()
        typed.until(lambda: WELL in typed.beside)
        yield from ("@area trimming\n", "@worker 04\n")
        yield from (f"{code}\n" for code in codes)

    with bootstrap.open_ledger(data) as ledger:
        codes = [code_of(text, ledger) for text in ("traveller 00900", "button on_rack")]
    typed.types = types
    with under(disk):
        code = main.main(["scan", "--data", str(data), "--now", NOW])
    assert (code, typed.broken) == (0, [])
    assert typed.beside == [f"{sentence} {TRIES}", WELL]
    assert typed.answers[:2] == [("stop", sentence)] * 2
    assert typed.answers[2:4] == [("good", "area trimming"), ("good", "worker 04")]
    assert typed.answers[-1] == ("good", "Batch 00900: 160 good")
    with bootstrap.open_ledger(data) as ledger:
        assert ledger.view.past(news)
        assert (ledger.not_shared(), ledger.check()) == (0, [])
