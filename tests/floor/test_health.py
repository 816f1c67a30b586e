"""This shop's health in the office: each PC in a row, and the way back to a backup."""

import pytest
from msgspec import Raw

from station import VERSION, bootstrap
from station.floor.anywhere.acts import TellHealth
from station.ledger.codec import Body, write_body
from station.ledger.faults import NoBackup
from station.ledger.ledger import Ledger
from station.ledger.shop_link import SharedRow
from station.ledger.talk import exchange
from station.sharing.address import Address
from station.sharing.membership import Membership
from station.shop.acts import Act, with_args
from station.shop.facts import Concern, Station
from station.shop.words import moment
from tests.replay import PIN
from tests.simulate.shop import MemoryLink, MemoryShop
from tests.touch import list_texts

ASKED = ("worker 07", PIN)
EVENING = "2026-11-25T16:00:00"
RESTORE = ("@worker 07", "@area office", "button health", "button restore")


def send(stage, *lines):
    """Sends the lines; gives the last answer."""
    given = [stage.send(line) for line in lines]
    return given[-1].answer


def test_the_only_pc_is_shown_as_soon_as_somebody_looks(stage):
    count = stage.ledger.count()
    stage.ledger.keep_backup(stage.clock())
    send(stage, "@worker 07", "@area office", "button health")
    assert stage.ledger.view.get(Station, stage.ledger.station).version == VERSION
    shown = set(list_texts(stage.desk.face()))
    assert {"This PC", VERSION, "last recorded", f"{count + 1}"} <= shown
    assert f"with its backup, {moment(stage.clock())}" in shown


def test_a_pc_without_a_backup_says_so(stage):
    send(stage, "@worker 07", "@area office", "button health")
    shown = set(list_texts(stage.desk.face()))
    assert {"none yet", "not yet: each backup is read again", "There is no backup yet"} <= shown


def test_each_pc_is_told_and_what_is_not_well(stage):
    send(stage, "@worker 07", "@area office", "button health")
    for station, backup in (("1", EVENING), ("2", "")):
        args = TellHealth(version="0.1.0", unshared=3, free_mb=250, backup_at=backup)
        told = Act(id=f"of {station}", kind=args.kind, at=EVENING, station=station, args=args)
        assert stage.ledger.record(told).entry
    shown = str(stage.desk.face())
    for words in ("16:00", "Station {id}: the disk is nearly full, {n} MB left"):
        assert words in shown
    send(stage, "@area today", "button show_concerns")
    assert "the disk is nearly full" in str(stage.desk.face())


def test_a_backup_is_gone_back_to_by_the_next_start(stage):
    ledger, folder = stage.ledger, stage.ledger.path.parent
    kept = ledger.keep_backup(EVENING)
    send(stage, "@worker 04", "@area trimming", "traveller 00900", "button hold")
    assert list(ledger.facts(Concern))
    send(stage, *RESTORE)
    assert kept.name in str(stage.desk.face())
    assert send(stage, f"touch {kept.name}").asks == "supervisor"
    assert send(stage, *ASKED).asks == "sure"
    assert str(send(stage, "button yes").said) == f"The next start goes back to {kept.name}"
    assert list(ledger.facts(Concern))  # nothing has changed yet
    ledger.close()
    with bootstrap.open_ledger(folder) as again:
        assert list(again.facts(Concern)) == []
        assert again.check() == []
    assert list(folder.glob("shop.db.before-*"))
    stage.ledger = Ledger(ledger.path, bootstrap.load_rules())


def test_a_backup_that_is_not_sound_stops_one_start_and_no_more(stage):
    ledger, folder = stage.ledger, stage.ledger.path.parent
    kept = ledger.keep_backup(EVENING)
    send(stage, *RESTORE, f"touch {kept.name}", *ASKED, "button yes")
    kept.write_bytes(kept.read_bytes()[:100_000])
    count = ledger.count()
    ledger.close()
    with pytest.raises(NoBackup, match="damaged"), bootstrap.open_ledger(folder):
        pass
    with bootstrap.open_ledger(folder) as again:
        assert again.count() == count
        assert again.check() == []
    stage.ledger = Ledger(ledger.path, bootstrap.load_rules())


def test_who_works_on_does_not_want_it_any_more(stage):
    kept = stage.ledger.keep_backup(EVENING)
    send(stage, *RESTORE, f"touch {kept.name}", *ASKED, "button yes")
    assert bootstrap.find_wanted_backup(stage.ledger) == kept
    send(stage, "@worker 04", "@area trimming", "traveller 00900", "button hold")
    assert bootstrap.find_wanted_backup(stage.ledger) is None


@pytest.fixture
def sharing(stage):
    """The stage's PC as station 1 of a shop, all of it shared, and a backup of that."""
    ledger, shop = stage.ledger, MemoryShop()
    for entry in ledger.chain(0):
        shop.add(SharedRow(entry.id, entry.verdict, tuple(entry.writes), entry.body))
    ledger.share_with(shop.site)
    link, folder = MemoryLink(shop), ledger.path.parent
    Membership(shop.site, "1", "role", Address("192.0.2.7", 5432, "shop")).keep(folder)
    share(ledger, link)
    ledger.keep_backup(EVENING)
    return link


def share(ledger, link):
    for _ in range(4):
        ledger.take_news(exchange(link, ledger.offer()))


def want_back(stage):
    """The newest backup is wanted back, and the station closed."""
    kept = stage.ledger.list_backups()[0].file
    send(stage, *RESTORE, f"touch {kept.name}", *ASKED, "button yes")
    stage.ledger.close()


def test_what_others_do_meanwhile_takes_no_wish_back(stage, sharing):
    """The shop went on for the minute until this PC was opened again, and nothing was restored."""
    kept = stage.ledger.list_backups()[0].file
    send(stage, *RESTORE, f"touch {kept.name}", *ASKED, "button yes")
    share(stage.ledger, sharing)
    for n in range(30):
        there = Act(id=f"there {n}", kind="newer", at=EVENING, worker="05", station="2", args=None)
        body = Body(act=with_args(there, Raw(b"{}")), tone="good")
        sharing.shop.add(SharedRow(there.id, "", (), write_body(body)))
    share(stage.ledger, sharing)
    assert stage.ledger.view.past("there 29")
    assert bootstrap.find_wanted_backup(stage.ledger) == kept


def test_what_the_shop_does_not_have_yet_comes_along_to_a_backup(stage, sharing):
    """It was counted, and no other PC knows it."""
    ledger, folder = stage.ledger, stage.ledger.path.parent
    send(stage, "@worker 04", "@area trimming", "traveller 00900", "button hold")
    want_back(stage)
    with bootstrap.open_ledger(folder) as again:
        assert list(again.facts(Concern))
        assert again.not_shared()
        assert again.check() == []
        share(again, sharing)
        assert not again.not_shared()
        assert list(again.facts(Concern))
        assert again.check() == []
    stage.ledger = Ledger(ledger.path, bootstrap.load_rules())


def test_where_pcs_share_a_wish_that_comes_back_from_the_shop_is_not_granted_again(stage, sharing):
    ledger, folder = stage.ledger, stage.ledger.path.parent
    send(stage, "@worker 04", "@area trimming", "traveller 00900", "button hold")
    kept = ledger.list_backups()[0].file
    send(stage, *RESTORE, f"touch {kept.name}", *ASKED, "button yes")
    share(ledger, sharing)
    ledger.close()
    for _ in range(3):
        with bootstrap.open_ledger(folder) as again:
            share(again, sharing)
            assert list(again.facts(Concern))
        aside = folder.glob("shop.db.before-*")
        assert len([file for file in aside if file.suffix != ".noted"]) == 1
    stage.ledger = Ledger(ledger.path, bootstrap.load_rules())
