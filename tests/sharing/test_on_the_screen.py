"""What the screen says of sharing, with the real window, loop and server; scanning never stops."""

import re
import time

import pytest

from station import bootstrap
from station.desk.certain import PATIENCE
from station.ledger import statements
from station.ledger.faults import DiskFault
from station.look.inspect import list_texts
from station.look.window import Window
from station.sharing import secret
from station.sharing.address import Address
from station.sharing.founding import copy
from station.sharing.loop import Loop
from station.sharing.membership import Membership
from station.shop.facts import Order
from station.window.session import Session
from tests.proxy import Proxy
from tests.replay import Stage
from tests.sharing.shop import found
from tests.sharing.test_fault_table import THIN, without_its_site
from tests.sharing.test_link import link_of
from tests.sharing.two import Station
from tests.window.ways import Screen

pytestmark = pytest.mark.slow

PATIENCE_MS = 15_000


@pytest.fixture
def net(shop):
    proxy = Proxy(shop.server.port)
    yield proxy
    proxy.close()


@pytest.fixture
def screen(tmp_path, shop, net, qtbot):
    """A station's window in the middle of a working day, all of it shared."""
    stage = Stage(tmp_path)
    with shop.admin() as admin:
        head = copy(admin, shop.names.site, stage.ledger.chain(0), "test")
        admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)
    stage.ledger.share_with(shop.names.site)
    stage.ledger.ask_ahead()
    link = link_of(shop, "1", net.port)
    window = Window()
    qtbot.addWidget(window)
    window.resize(1366, 768)
    session = Session(window, stage.desk, Loop(stage.ledger, lambda: link))
    window.show()
    qtbot.waitExposed(window)
    session.start()
    shown = Screen(window, session, stage)
    shown.at("trimming")
    stage.clock.pin("2026-11-25T10:42:00")
    qtbot.waitUntil(lambda: not stage.ledger.not_shared(), timeout=PATIENCE_MS)
    says(shown, qtbot, "Shared")
    yield shown
    session.stop()
    link.close()
    assert stage.ledger.check() == []
    stage.close()


def says(screen, qtbot, words):
    """Waits until the top bar says it."""

    def it_does():
        screen.session.repaint()
        assert re.fullmatch(words, screen.window.bar.shared.text())

    qtbot.waitUntil(it_does, timeout=PATIENCE_MS)


def works_on(screen, batch="00900"):
    """A batch is trimmed, and the strip says so at once."""
    before = screen.stage.ledger.count()
    screen.scan(f"traveller {batch}", "button on_rack")
    assert screen.said == f"Batch {batch}: 160 good"
    assert screen.stage.ledger.count() == before + 1


def test_an_old_program_says_so_and_keeps_what_it_has(screen, shop, qtbot, monkeypatch):
    newer = statements.FORMAT + 1
    with shop.admin() as admin:
        before = admin.execute("SELECT number FROM shop.site").fetchone()
        admin.execute("UPDATE shop.site SET format = %s", (newer,))
    says(screen, qtbot, "Update this program: sharing has stopped")
    works_on(screen)
    says(screen, qtbot, "Update this program: 1 not shared since 10:42")
    with shop.admin() as admin:
        assert admin.execute("SELECT number FROM shop.site").fetchone() == before
    monkeypatch.setattr(statements, "FORMAT", newer)  # the update
    says(screen, qtbot, "Shared")
    with shop.admin() as admin:
        kinds = admin.execute("SELECT body::json->'act'->>'kind' FROM shop.entry").fetchall()
    assert ("put_on_rack",) in kinds


def test_the_network_goes_and_comes_again(screen, net, qtbot):
    net.mode = "cut"
    says(screen, qtbot, r"The shop is away: The shop's database at \S+ does not answer\.")
    works_on(screen)
    says(screen, qtbot, "1 not shared since 10:42")
    screen.stage.clock.pin("2026-11-26T07:00:00")
    says(screen, qtbot, r"1 not shared since 25 Nov 10:42")
    net.mode = "open"
    says(screen, qtbot, "Shared")


def test_an_older_day_is_put_back(screen, shop, qtbot):
    with shop.admin() as admin:
        admin.execute("UPDATE shop.site SET digest = sha256('another')")
    says(screen, qtbot, "Another history in the shop: sharing has stopped")
    works_on(screen)
    says(screen, qtbot, "Another history in the shop: 1 not shared since 10:42")


def test_a_full_disk_is_said_in_red_and_all_comes_with_room(screen, shop, qtbot, tmp_path):
    two = Station(tmp_path, shop, "2")
    two.share()
    for n in range(40):
        two.do(f"there {n}", batch=f"{n + 70000}")
    screen.stage.ledger._store.run("PRAGMA max_page_count=1")
    two.share()
    says(screen, qtbot, "This PC's disk fails: sharing has stopped")
    assert (screen.session.answered.tone, "is full" in screen.said) == ("stop", True)
    screen.stage.ledger._store.run("PRAGMA max_page_count=1000000")
    says(screen, qtbot, "Shared")
    assert screen.stage.ledger.view.past("there 39")
    works_on(screen)
    two.close()


def test_a_disk_that_cannot_be_read_is_said_and_the_screen_stays(screen, monkeypatch):
    def fails(*_):
        raise DiskFault(screen.stage.ledger.path)

    with monkeypatch.context() as broken:
        broken.setattr(screen.stage.ledger, "not_shared", fails)
        screen.session.tick()
        assert (screen.session.answered.tone, "disk did not take" in screen.said) == ("stop", True)
    works_on(screen)


def test_another_shops_database(screen, server, net, qtbot):
    other = found(server)
    link = link_of(other, "1")
    screen.session.loop.close()
    screen.session.loop = Loop(screen.stage.ledger, lambda: link)
    screen.session._often.timeout.connect(screen.session.loop.step)
    says(screen, qtbot, "Another shop's database: sharing has stopped")
    works_on(screen)
    says(screen, qtbot, "Another shop's database: 1 not shared since 10:42")
    link.close()


def test_the_second_pc_under_one_number_joins_by_one_card(screen, shop, net, qtbot):
    """A folder was copied: both work as station 1, and this one has stopped."""
    folder = screen.stage.ledger.path.parent
    address = Address("127.0.0.1", net.port, shop.database)
    Membership(shop.names.site, "1", shop.names.station("1"), address).keep(folder)
    screen.scan(shop.card("2").code)
    assert screen.said == "That is no code of this shop"  # where nothing is the matter
    screen.stage.ledger.set_local("twin", "1")
    says(screen, qtbot, "Another PC works as this station: sharing has stopped")
    assert shows(screen, "Scan a new join card here: it gives this PC a number of its own.")
    works_on(screen)
    screen.scan("3" * 16)
    assert screen.said == "This PC joins the shop"
    qtbot.waitUntil(lambda: "does not take that code" in screen.said, timeout=PATIENCE_MS)
    assert bootstrap.find_station(folder) == "1"
    screen.scan(shop.card("3").shown)
    until_said(screen, qtbot, "This PC is station 3 from its next start")
    assert bootstrap.find_station(folder) == "3"
    assert shows(screen, "Close this window and open the station again.")
    assert not shows(screen, "Scan a new join card here: it gives this PC a number of its own.")


def test_a_card_for_the_same_number_lets_this_pc_share_on_at_once(screen, shop, net, qtbot):
    """The owner has decided which of the two it is: no other PC has the new password."""
    folder = screen.stage.ledger.path.parent
    address = Address("127.0.0.1", net.port, shop.database)
    membership = Membership(shop.names.site, "1", shop.names.station("1"), address)
    membership.keep(folder)
    secret.keep(folder, membership.account, shop.passwords["1"])
    link = membership.link(folder)  # as the program's own: its password is another from then on
    screen.session.loop.close()
    screen.session.loop = Loop(screen.stage.ledger, lambda: link)
    screen.session._often.timeout.connect(screen.session.loop.step)
    screen.stage.ledger.set_local("twin", "1")
    says(screen, qtbot, "Another PC works as this station: sharing has stopped")
    works_on(screen)
    screen.scan(shop.card("1").shown)
    until_said(screen, qtbot, "This PC alone is station 1 now")
    qtbot.waitUntil(lambda: not screen.stage.ledger.not_shared(), timeout=PATIENCE_MS)
    says(screen, qtbot, "Shared")
    assert not shows(screen, "Scan a new join card here: it gives this PC a number of its own.")
    link.close()


def shows(screen, words):
    """Whether these words stand on the screen, however they are broken into lines."""
    said = " ".join(" ".join(list_texts(screen.window)).split())
    return words in said


def test_an_empty_database_and_the_shop_again(screen, shop, qtbot):
    with without_its_site(shop):
        says(screen, qtbot, "An empty database, not the shop's: sharing has stopped")
        works_on(screen)
        says(screen, qtbot, "An empty database, not the shop's: 1 not shared since 10:42")
    says(screen, qtbot, "Shared")


@pytest.mark.parametrize(
    ("off", "words"),
    [
        (119, "Shared"),
        (121, "This PC's clock is 2 min off"),
        (-119, "Shared"),
        (-121, "This PC's clock is -2 min off"),
        (86400, f"This PC's clock is 1{THIN}440 min off"),
    ],
)
def test_a_clock_is_worth_a_word_past_two_minutes(screen, shop, qtbot, off, words):
    """The server's clock as it comes with its answers, and this PC's own set wrong."""
    link = link_of(shop, "1")
    screen.session.loop.close()
    loop = Loop(screen.stage.ledger, lambda: link, wall=lambda: time.time() + off)
    screen.session.loop = loop
    screen.session._often.timeout.connect(loop.step)
    qtbot.waitUntil(lambda: loop.clock_off != 0, timeout=PATIENCE_MS)
    says(screen, qtbot, words)
    works_on(screen)
    says(screen, qtbot, words)
    link.close()


def until_said(screen, qtbot, words):
    """Waits until the strip says it; nothing else is done meanwhile."""
    qtbot.waitUntil(lambda: screen.said == words, timeout=PATIENCE_MS)


def test_a_claim_asks_the_shop_and_then_says_that_it_holds(screen, qtbot):
    screen.at("packing")
    says(screen, qtbot, "Shared")
    screen.scan("order 3306")
    assert screen.said == "Asking the shop: Order 3306 is yours"
    until_said(screen, qtbot, "Order 3306 is yours")
    assert screen.session.answered.tone == "good"


def test_a_claim_that_nobody_answers_is_told_after_two_seconds_and_the_screen_goes_on(
    screen, net, qtbot
):
    screen.at("packing")
    says(screen, qtbot, "Shared")
    net.mode = "silent"
    began = time.monotonic()
    screen.scan("order 3306")
    assert screen.said == "Asking the shop: Order 3306 is yours"
    worst, ticks = 0.0, 0
    while screen.said.startswith("Asking"):
        before = time.monotonic()
        qtbot.wait(1)
        worst, ticks = max(worst, time.monotonic() - before), ticks + 1
        assert time.monotonic() - began < PATIENCE_MS / 1000
    assert time.monotonic() - began > PATIENCE
    assert screen.said == "The shop has not said yet: Order 3306 is yours"
    assert (worst < 1, ticks > 20) == (True, True)  # the screen's own thread never waited
    net.mode = "open"
    says(screen, qtbot, "Shared")
    assert screen.stage.ledger.view.get(Order, "3306").claimed == "1"
