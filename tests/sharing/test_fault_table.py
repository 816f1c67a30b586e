"""The table of faults that the design promises to survive, row by row, on a real server."""

import re
import shutil
import time
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from station.ledger import effects
from station.ledger.faults import Damaged, DiskFull, InUse
from station.ledger.ledger import Ledger
from station.ledger.shop_link import Away
from station.sharing.loop import Loop
from station.window import sharing_words
from tests.ledger.toy import RULES, act
from tests.proxy import Proxy
from tests.sharing.shop import found
from tests.sharing.test_two_stations import put_back
from tests.sharing.two import Station, healed

pytestmark = pytest.mark.slow

THIN = "\u202f"  # between the thousands of a number, as it is shown
ROOT = Path(__file__).resolve().parents[2]


def turned_until(loop, true):
    """Lets the loop turn by itself until something holds."""
    until = time.monotonic() + 15
    while not true():
        loop.step()
        time.sleep(0.005)
        assert time.monotonic() < until, (loop.state, loop.why)


@pytest.fixture
def net(shop):
    """The network between a station and the shop."""
    proxy = Proxy(shop.server.port)
    yield proxy
    proxy.close()


@pytest.fixture
def one(tmp_path, shop, net):
    station = Station(tmp_path, shop, "2", port=net.port)
    yield station
    station.close()


@pytest.fixture
def two(tmp_path, shop):
    station = Station(tmp_path, shop, "3")
    yield station
    station.close()


def test_power_cut_before_the_local_commit(one, two, monkeypatch):
    def power_cut(*_):
        raise KeyboardInterrupt

    with monkeypatch.context() as cut:
        cut.setattr(effects, "apply_tally", power_cut)
        with pytest.raises(KeyboardInterrupt):
            one.do("a")
    one.ledger.close()
    one.open()
    assert (one.ledger.not_shared(), one.stock()) == (0, [])
    one.do("a")
    healed(one, two)
    assert two.ids() == ["a"]


def test_power_cut_after_the_commit_before_the_screen(one, two):
    first = one.do("a")
    one.ledger.close()
    one.open()
    again = one.do("a")
    assert (again.entry, again.answer.said) == ("a", first.answer.said)
    one.share()
    assert one.do("a").entry == "a"
    healed(one, two)
    assert two.ids() == ["a"]


def test_the_network_away_for_hours(one, two, net):
    one.share()
    net.mode = "cut"
    for n in range(14):
        one.do(f"a{n}", at=f"2026-11-25T10:{n:02d}:00")
        assert one.talk()[0].state == "away"
    loop = Loop(one.ledger, lambda: one.link)
    words, well = sharing_words.describe_sharing(one.ledger, loop, "2026-11-25T12:42:00")
    loop.close()
    assert (str(words), well) == ("14 not shared since 10:00", False)
    net.mode = "open"
    healed(one, two)
    healed(one, two)
    assert two.ids() == [f"a{n}" for n in range(14)]
    assert [e.at[14:16] for e in two.ledger.entries()] == [f"{n:02d}" for n in range(14)]


def test_a_network_that_swallows_everything(one, two, net, monkeypatch):
    monkeypatch.setattr("station.sharing.link.Patient.patience", 0.5)
    one.do("a")
    one.share()
    net.mode = "silent"
    one.do("b")
    began = time.monotonic()
    assert one.talk()[0].state == "away"
    assert time.monotonic() - began < 3
    net.mode = "open"
    healed(one, two)


def test_the_reply_to_a_push_lost(one, two, monkeypatch):
    one.do("a")
    push = one.link.push

    def lost(*given):
        push(*given)
        raise Away("lost")

    with monkeypatch.context() as cut:
        cut.setattr(one.link, "push", lost)
        assert one.talk()[0].state == "away"
    one.do("b")
    healed(one, two)
    assert two.ids() == ["a", "b"]


def test_the_shop_s_database_restored_to_an_older_day(one, two, shop):
    for n in range(5):
        one.do(f"a{n}")
    healed(one, two)
    put_back(shop, 2)
    assert one.talk()[0].state == "differs"
    assert one.do("scanning goes on").entry
    assert one.ledger.count() == 6
    shop.confirm_put_back()
    healed(two, one)
    assert one.ids() == ["a0", "a1", "a2", "a3", "a4", "scanning goes on"]


def test_another_database(one, server):
    one.do("a")
    other = found(server)
    elsewhere = Station(one.path.parent, other, "7")
    one.link = elsewhere.link
    assert one.talk()[0].state == "another"
    assert one.ledger.not_shared() == 1
    elsewhere.close()


def scanned(station):
    """What was done, without the numbers that a station asks for by itself."""
    return [id_ for id_ in station.ids() if " " in id_]


@contextmanager
def empty_in_its_place(shop):
    """The shop's database stands aside, and an empty one has its name."""
    aside = f"{shop.database}_aside"

    def instead(*statements):
        ends = "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = %s"
        with shop.server.connect() as admin:
            admin.execute(ends, (shop.database,))
            for statement in statements:
                admin.execute(statement)

    instead(
        f"ALTER DATABASE {shop.database} RENAME TO {aside}", f"CREATE DATABASE {shop.database}"
    )
    yield
    instead(
        f"DROP DATABASE {shop.database} WITH (FORCE)",
        f"ALTER DATABASE {aside} RENAME TO {shop.database}",
    )


@contextmanager
def without_its_site(shop):
    """The tables are there, and nothing in them says whose they are."""
    with shop.admin() as admin:
        admin.execute("ALTER TABLE shop.site DISABLE TRIGGER kept")
        admin.execute("CREATE TABLE shop.aside AS SELECT * FROM shop.site")
        admin.execute("DELETE FROM shop.site")
    yield
    with shop.admin() as admin:
        admin.execute("INSERT INTO shop.site SELECT * FROM shop.aside")


@pytest.mark.parametrize("shared", [0, 1])
@pytest.mark.parametrize("waiting", [0, 1])
@pytest.mark.parametrize("emptied", [empty_in_its_place, without_its_site])
def test_an_empty_database(one, two, shop, emptied, shared, waiting):
    """Told for what it is. Once the shop is back, sharing goes on by itself."""
    ids = [f"shared {n}" for n in range(shared)] + [f"waits {n}" for n in range(waiting)]
    for id_ in ids[:shared]:
        one.do(id_)
    one.share()
    with emptied(shop):
        for id_ in ids[shared:]:
            one.do(id_)
        news = one.talk()[0]
        assert (news.state, "is empty: it is not the shop's" in news.why) == ("empty", True)
        assert one.do("scanning goes on").entry
        assert one.ledger.not_shared() == waiting + 1
        loop = Loop(one.ledger, lambda: one.link)
        turned_until(loop, lambda: loop.state == "empty")
    turned_until(loop, lambda: not one.ledger.not_shared())
    loop.close()
    healed(one, two)
    assert scanned(two) == [*ids, "scanning goes on"]


def test_a_station_restored_from_an_old_disk_image(one, two):
    one.ledger.ask_ahead()
    one.share()
    one.ledger.ask_ahead()
    one.share()
    first = one.ledger.take_number("order")
    one.do("a", batch="first")
    one.ledger.close()
    image = shutil.copy(one.path, one.path.with_suffix(".image"))
    one.open()
    given = {first, *(one.ledger.take_number("order") for _ in range(5))}
    one.do("b", batch="second")
    healed(one, two)
    one.ledger.close()
    shutil.copy(image, one.path)
    one.open()
    healed(one, two)
    one.ledger.ask_ahead()
    one.share()
    assert one.ids().count("a") == one.ids().count("b") == 1
    assert one.ledger.take_number("order") not in given


@pytest.mark.parametrize("days", [1, -1])
def test_clocks_wrong_by_a_day(one, two, days):
    """The order is the order of sharing, and the PC whose clock is wrong says so."""
    off = timedelta(days=days)
    wrong = (datetime.now() + off).isoformat(timespec="seconds")
    right = datetime.now().isoformat(timespec="seconds")
    loops = [
        Loop(one.ledger, lambda: one.link, wall=lambda: time.time() + off.total_seconds()),
        Loop(two.ledger, lambda: two.link),
    ]
    for n in range(2):
        for station, at, loop in zip((one, two), (wrong, right), loops, strict=True):
            station.do(f"{station.number} {n}", at=at)
            turned_until(loop, lambda s=station: not s.ledger.not_shared())
    for station, loop in zip((one, two), loops, strict=True):
        turned_until(loop, lambda s=station: len(scanned(s)) == 4)
    said = [
        str(sharing_words.describe_sharing(station.ledger, loop, at)[0])
        for station, at, loop in zip((one, two), (wrong, right), loops, strict=True)
    ]
    assert said == [f"This PC's clock is {days * 1440:,} min off".replace(",", THIN), "Shared"]
    for loop in loops:
        loop.close()
    healed(one, two)
    assert scanned(one) == ["2 0", "3 0", "2 1", "3 1"]


def test_the_local_disk_full_while_the_shop_comes(one, two):
    for n in range(200):
        two.do(f"b{n}", batch=f"{n:05d}")
    two.share()
    run = one.ledger._store.run
    pages = run("PRAGMA page_count").fetchone()[0]
    run(f"PRAGMA max_page_count={pages + 2}")
    with pytest.raises(DiskFull):
        one.share()
    assert one.ledger.check() == []
    run("PRAGMA max_page_count=1000000")
    healed(one, two)


def test_the_file_damaged(one, two):
    one.do("shared")
    one.share()
    one.do("pending")
    one.ledger.idle()
    one.ledger.close()
    raw = bytearray(one.path.read_bytes())
    at = raw.find(b'"id":"shared"')
    raw[at : at + 4] = b"\x00\x00\x00\x00"
    one.path.write_bytes(raw)
    with pytest.raises(Damaged, match="set aside"):
        one.open()
    one.open()
    assert one.ledger.not_shared() == 1
    healed(one, two)
    assert two.ids() == ["shared", "pending"]


def test_two_programs_on_one_file(one):
    with pytest.raises(InUse, match="Another program has"):
        Ledger(one.path, RULES, station="2")


def test_an_old_program_keeps_what_it_has(one, two, shop):
    one.do("a")
    with shop.admin() as admin:
        admin.execute("UPDATE shop.site SET format = 2")
    assert one.talk()[0].state == "too old"
    assert one.do("b").entry == "b"
    assert one.ledger.not_shared() == 2
    with shop.admin() as admin:
        admin.execute("UPDATE shop.site SET format = 1")
    healed(one, two)
    assert two.ids() == ["a", "b"]


def test_a_stolen_station_s_password(one, two, shop):
    one.do("a")
    one.share()
    one.ledger.record(replace(act("forged"), station="9"))
    assert one.talk()[0].state == "refused"
    two.share()
    with shop.admin() as admin:
        rows = admin.execute("SELECT id, pushed_by FROM shop.entry ORDER BY number").fetchall()
    assert rows == [("a", shop.names.station("2"))]


HERE = "tests/sharing/test_fault_table.py"
ROWS = {  # the design's table of faults, and the tests that show each row
    "power cut before the local commit": (
        f"{HERE}::test_power_cut_before_the_local_commit",
        "tests/power/test_power.py::test_wherever_the_power_goes_nothing_acknowledged_is_lost",
    ),
    "after the commit, before the screen": (
        f"{HERE}::test_power_cut_after_the_commit_before_the_screen",
        "tests/ledger/test_kill.py::test_killed_at_random_moments_nothing_acknowledged_is_lost",
    ),
    "the network or the shop's database away for hours": (
        f"{HERE}::test_the_network_away_for_hours",
        f"{HERE}::test_a_network_that_swallows_everything",
        "tests/sharing/test_on_the_screen.py::test_the_network_goes_and_comes_again",
    ),
    "reply to a push lost": (f"{HERE}::test_the_reply_to_a_push_lost",),
    "the shop's database restored to an older day": (
        f"{HERE}::test_the_shop_s_database_restored_to_an_older_day",
        "tests/sharing/test_restore_drill.py::test_the_server_is_lost_and_nothing_with_it",
        "tests/sharing/test_on_the_screen.py::test_an_older_day_is_put_back",
    ),
    "another or an empty database": (
        f"{HERE}::test_another_database",
        f"{HERE}::test_an_empty_database",
        "tests/sharing/test_on_the_screen.py::test_another_shops_database",
        "tests/sharing/test_on_the_screen.py::test_an_empty_database_and_the_shop_again",
        "tests/sharing/test_joining.py::test_nobody_joins_an_empty_database",
    ),
    "a station restored from an old disk image": (
        f"{HERE}::test_a_station_restored_from_an_old_disk_image",
    ),
    "clocks wrong by a day": (
        f"{HERE}::test_clocks_wrong_by_a_day",
        "tests/sharing/test_on_the_screen.py::test_a_clock_is_worth_a_word_past_two_minutes",
    ),
    "local disk full, file damaged": (
        f"{HERE}::test_the_local_disk_full_while_the_shop_comes",
        f"{HERE}::test_the_file_damaged",
        "tests/ledger/test_damage.py::test_wherever_it_is_damaged_it_is_said_and_work_goes_on",
        "tests/power/test_every_write.py::test_a_day_on_a_disk_that_fails_at_every_call",
        "tests/power/test_every_way.py::test_all_of_it_is_there_or_nothing",
        (
            "tests/sharing/test_on_the_screen.py::"
            "test_a_full_disk_is_said_in_red_and_all_comes_with_room"
        ),
        (
            "tests/sharing/test_text_station.py::"
            "test_a_disk_that_fails_while_news_comes_is_said_once_and_scanning_goes_on"
        ),
    ),
    "two programs on one file": (
        f"{HERE}::test_two_programs_on_one_file",
        "tests/ledger/test_faults.py::test_a_second_program_stops_at_once",
    ),
    "mixed versions": (
        f"{HERE}::test_an_old_program_keeps_what_it_has",
        "tests/sharing/test_on_the_screen.py::test_an_old_program_says_so_and_keeps_what_it_has",
        "tests/sharing/test_malformed.py::test_a_new_program_s_facts_and_fields_are_taken_in",
    ),
    "a stolen station's password": (
        f"{HERE}::test_a_stolen_station_s_password",
        "tests/sharing/test_rights.py::test_a_station_may_only_read_and_push",
        "tests/sharing/test_malformed_fuzz.py::test_no_station_stops_and_all_agree",
    ),
}


@pytest.mark.parametrize("row", ROWS)
def test_each_row_of_the_table_has_its_tests(row):
    for file, name in (place.split("::") for place in ROWS[row]):
        assert f"\ndef {name}(" in (ROOT / file).read_text(encoding="utf-8")


def test_every_test_of_this_file_stands_under_a_row():
    text = (ROOT / HERE).read_text(encoding="utf-8")
    named = {place.partition("::")[2] for places in ROWS.values() for place in places}
    here = set(re.findall(r"^def (test_\w+)", text, re.MULTILINE))
    assert here - named == {
        "test_each_row_of_the_table_has_its_tests",
        "test_every_test_of_this_file_stands_under_a_row",
    }
