"""What a PC tells of itself, and what comes of it under Needs a look and on the bar."""

import shutil

import pytest

from station import bootstrap
from station.desk.wrong_pins import WrongPins, keep_wrong_pins
from station.files.backups import TROUBLE
from station.files.health import Health
from station.ledger.codec import Body, Change, keep_act, state_of
from station.ledger.sharing import DATABASE, HELD, OLDER_AT
from station.queries.health import LOW_MB
from station.queries.looks import list_raised
from station.shop.acts import Act
from station.shop.facts import Station
from station.window.own_clock import OwnClock
from station.window.sharing_words import describe_health
from tests.replay import START, small_shop

DAY, NEXT, AFTER = "2026-11-25T09:00:00", "2026-11-26T09:00:00", "2026-11-30T09:00:00"


@pytest.fixture
def shop(tmp_path, monkeypatch):
    usage = shutil.disk_usage(tmp_path)
    monkeypatch.setattr(shutil, "disk_usage", lambda _path: usage._replace(free=50 * 10**9))
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), DAY, stock=START)
        yield ledger


def tell(ledger, at):
    """The PC looks at itself at that time."""
    ids = iter(f"told {at} {n}" for n in range(9))
    Health(ledger, lambda: at, lambda: next(ids)).step()


def raised(ledger, at):
    return [str(r.words) for r in list_raised(ledger.view, at) if r.kind == "health"]


def bar(ledger):
    """What the top bar says is not well with the shop's PCs."""
    return str(describe_health(ledger))


def other(ledger, **told):
    """What another station told."""
    ledger._history.append(body_of(ledger, Station(id="3", **told)), (), {})


def body_of(ledger, fact):
    act = Act(id=f"of {fact.id} {fact.seen}", kind="tell_health", at=fact.seen, station=fact.id)
    before = ledger._history.reader.state(fact.key)
    return Body(act=keep_act(act), tone="good", sets=(Change(fact.key, before, state_of(fact)),))


def test_it_is_told_once_and_again_when_anything_changes(shop):
    before = shop.count()
    tell(shop, DAY)
    tell(shop, "2026-11-25T09:10:00")
    assert shop.count() == before + 1
    shop.keep_backup("2026-11-25T16:00:00")
    tell(shop, "2026-11-25T16:01:00")
    assert shop.count() == before + 2
    assert shop.view.get(Station, "1").backup_at == "2026-11-25T16:00:00"


def test_no_backup_ever_made_is_told(shop):
    tell(shop, DAY)
    assert raised(shop, DAY) == ["There is no backup yet"]
    assert bar(shop) == "There is no backup yet"
    shop.keep_backup("2026-11-25T16:00:00")
    tell(shop, NEXT)
    assert raised(shop, NEXT) == []
    assert bar(shop) == ""
    tell(shop, AFTER)
    assert raised(shop, AFTER) == ["There is no backup since 25 Nov"]


def test_a_disk_that_is_nearly_full_is_told(shop, monkeypatch):
    shop.keep_backup(DAY)
    usage = shutil.disk_usage(shop.path.parent)
    monkeypatch.setattr(
        shutil, "disk_usage", lambda _path: usage._replace(free=(LOW_MB - 1) * 10**6)
    )
    tell(shop, DAY)
    assert raised(shop, DAY) == ["Station 1: the disk is nearly full, 999 MB left"]


def test_a_backup_that_fails_is_told(shop):
    shop.keep_backup(DAY)
    shop.set_local(TROUBLE, "The disk that holds shop.db is full.")
    tell(shop, DAY)
    assert raised(shop, DAY) == ["Station 1 makes no backup: The disk that holds shop.db is full."]


def test_many_wrong_pins_are_told_for_a_day_though_a_right_one_came_after_them(shop):
    shop.keep_backup(DAY)
    pins = WrongPins()
    for _ in range(4):
        pins = pins.count_wrong(DAY)
        keep_wrong_pins(shop, pins)
    tell(shop, DAY)
    assert raised(shop, DAY) == []
    keep_wrong_pins(shop, pins.count_wrong(DAY))
    keep_wrong_pins(shop, WrongPins())
    tell(shop, "2026-11-25T09:01:00")
    assert bar(shop) == "Station 1: 5 wrong PINs, the newest of 25 Nov 09:00"
    assert raised(shop, DAY) == [bar(shop)]
    shop.keep_backup(NEXT)
    tell(shop, "2026-11-26T09:01:00")
    assert raised(shop, NEXT) == []


def test_a_station_that_is_silent_or_older_is_told(shop):
    shop.keep_backup(NEXT)
    other(shop, seen="2026-11-24T17:00:00", version="0.0.9", unshared=4, free_mb=9000)
    tell(shop, NEXT)
    assert raised(shop, NEXT) == [
        "Station 3 is silent since 24 Nov: 4 not shared",
        "Station 3: its program 0.0.9 is older than 0.1.0",
    ]


def test_an_old_database_is_told_until_the_newest_word_is_another(shop):
    shop.keep_backup(DAY)
    shop.set_local(DATABASE, "old")
    tell(shop, DAY)
    assert raised(shop, DAY) == [bar(shop)]
    told = "The shop's database is too old: its owner types station update-shop URL"
    assert bar(shop) == told
    other(shop, seen="2026-11-25T09:30:00", version="0.0.9", free_mb=9000)  # it knows no such word
    assert any("update-shop" in words for words in raised(shop, DAY))
    shop.set_local(DATABASE, "new")
    tell(shop, "2026-11-25T09:31:00")
    assert not any("update-shop" in words for words in raised(shop, DAY))


def test_a_pc_that_was_given_up_is_not_told_of_for_ever(shop):
    """An alarm that never ends is not looked at, and hides the next one."""
    shop.keep_backup(NEXT)
    tell(shop, NEXT)
    other(shop, seen="2026-10-20T17:00:00", version="0.0.9", free_mb=3)
    assert raised(shop, NEXT) == []
    other(shop, seen="2026-10-20T17:00:01", version="0.1.0", free_mb=9000, unshared=4)
    assert raised(shop, NEXT) == ["Station 3 is silent since 20 Oct: 4 not shared"]


def test_a_clock_that_is_wrong_is_told_on_a_single_pc_as_long_as_it_is(shop):
    """What is recorded by it meanwhile, and be it how this PC is, hid it."""
    told, wrong = "This PC's clock is wrong: work was done 25 Nov 09:00", "1999-01-01T09:00:00"
    clock = OwnClock(shop)
    assert str(clock.look(wrong)) == told
    tell(shop, wrong)
    assert str(clock.look("1999-01-01T09:05:00")) == told
    assert str(OwnClock(shop).look("1999-01-01T09:06:00")) == told  # after the next start too
    assert not clock.look("2026-11-25T09:30:00")
    tell(shop, "2026-11-25T09:30:00")
    assert not OwnClock(shop).look("2026-11-25T09:30:00")


def test_a_clock_that_is_an_hour_back_is_told_until_it_is_past_that(shop):
    tell(shop, "2026-11-25T12:00:00")
    clock = OwnClock(shop)
    assert str(clock.look("2026-11-25T11:00:00")).endswith("work was done 25 Nov 12:00")
    tell(shop, "2026-11-25T11:00:00")
    assert clock.look("2026-11-25T11:30:00")
    assert not clock.look("2026-11-25T11:59:00")


def test_a_station_that_held_sharing_up_is_told_for_a_week(shop):
    shop.set_local(HELD, f"3 {DAY}")
    tell(shop, DAY)
    said = "Station 3 held sharing up, 25 Nov 09:00: is its password in wrong hands?"
    assert said in raised(shop, DAY)
    assert bar(shop) == said
    tell(shop, "2026-12-02T08:00:00")
    assert said in raised(shop, "2026-12-02T08:00:00")
    tell(shop, "2026-12-03T09:00:00")
    assert said not in raised(shop, "2026-12-03T09:00:00")


def test_a_clock_that_was_a_year_ahead_keeps_no_pc_silent(shop):
    """What was told then would else be the newest for a year."""
    tell(shop, DAY)
    tell(shop, "2027-11-25T09:00:00")
    tell(shop, NEXT)
    (told,) = shop.facts(Station)
    assert told.seen == NEXT


def test_a_folder_that_was_put_back_or_is_used_in_turn_is_told_for_a_week(shop):
    shop.keep_backup(DAY)
    shop.set_local(OLDER_AT, DAY)
    tell(shop, DAY)
    said = (
        "Station 1 went on without its own work of 25 Nov 09:00: an older folder, or two PCs with "
        "one?"
    )
    assert said in raised(shop, DAY)
    assert bar(shop) == said
    tell(shop, "2026-12-03T09:00:00")
    assert said not in raised(shop, "2026-12-03T09:00:00")
