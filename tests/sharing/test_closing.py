"""A PC that begins with a closing, on a real server: equal to one that has all of the history."""

import zlib

import msgspec
import pytest

from station.ledger import closing
from station.ledger.closing import SEAL, Begin, Closing, ClosingWrong
from station.ledger.faults import Damaged
from station.ledger.ledger import Ledger
from station.ledger.rebuild import closed
from station.ledger.statements import DERIVED, LAYOUT
from station.sharing import closings
from station.sharing.closings import ChainBroken, begin_with, make
from station.sharing.founding import NotShared, share
from station.shop.facts import Concern
from tests.ledger.toy import RULES
from tests.server import PASSWORD
from tests.sharing.test_founding import address
from tests.sharing.test_two_stations import put_back
from tests.sharing.two import Station, healed

pytestmark = pytest.mark.slow

__all__ = ["address"]  # the fixture

OLD, LATE, NOW = "2026-03-04T10:00:00", "2026-11-20T10:00:00", "2026-11-25T10:42:00"


def quiet(_words):
    """Nobody listens."""


@pytest.fixture
def full(tmp_path, shop):
    """A station with eight old entries and three of this month, all shared."""
    station = Station(tmp_path, shop, "2")
    for n in range(8):
        station.do(f"old{n}", batch=f"0000{n % 3}", at=OLD)
    station.undo("old7", "back")
    for n in range(3):
        station.do(f"new{n}", batch=f"0000{n}", at=LATE)
    station.share()
    yield station
    station.close()


@pytest.fixture
def fresh(tmp_path, shop):
    """Makes PCs that have just joined."""
    made = []

    def one():
        made.append(Station(tmp_path, shop, str(4 + len(made))))
        return made[-1]

    yield one
    for station in made:
        station.close()


def close(shop, now=NOW):
    with shop.admin() as admin:
        return make(admin, shop.names, now, quiet)


def alike(full, short):
    """All is shared, and only how far back the entries go tells the two apart."""
    for station in (full, short, full):
        assert station.share().state == "shared"
    assert (full.ledger.check(), short.ledger.check()) == ([], [])
    for table in DERIVED:
        every = f"SELECT * FROM {table} ORDER BY 1, 2, 3, 4"
        assert short.ledger._store.rows(every) == full.ledger._store.rows(every)
    begin = max(station.ledger.begins()[0] for station in (full, short))
    assert list(short.ledger.chain(begin)) == list(full.ledger.chain(begin))
    assert short.ledger.count() == full.ledger.count()


def closing_of(admin):
    return admin.execute("SELECT number, digest, books FROM shop.closing").fetchone()


def kept(admin):
    """Every closing's books, taken out."""
    every = admin.execute("SELECT number, digest, books FROM shop.closing").fetchall()
    return [vars(closing.opened(Closing(*row))[1]) for row in every]


def begun(station):
    begin_with(station.ledger, station.link)
    return station


def test_a_new_pc_begins_with_the_closing(full, fresh, shop):
    assert close(shop) == (8, full.link.pull(7, 1)[0].digest, OLD)
    new = begun(fresh())
    assert new.ledger.begins() == (8, OLD)
    alike(full, new)
    assert new.ids() == ["back", "new0", "new1", "new2"]
    new.do("mine", batch="00001")
    full.do("theirs", batch="00002")
    alike(full, new)
    new.ledger.rebuild()
    alike(full, new)
    new.ledger.close()
    new.open()
    alike(full, new)


def test_a_closing_is_the_same_from_a_closing_and_from_the_start(full, shop):
    assert close(shop, "2026-05-01T00:00:00").number == 8
    going_on = close(shop, "2027-05-01T00:00:00")
    with shop.admin() as admin:
        first = kept(admin)
        admin.execute("DELETE FROM shop.closing")
    anew = close(shop, "2027-05-01T00:00:00")
    assert anew == going_on == (12, full.link.head().digest, LATE)
    with shop.admin() as admin:
        assert kept(admin) == first


def test_so_much_stays_entry_by_entry(full, shop, monkeypatch):
    assert close(shop, OLD).number == 0
    monkeypatch.setattr(closings, "MOST_RECENT", 4)
    assert close(shop, OLD).number == 8
    assert close(shop, OLD).number == 8
    with shop.admin() as admin:
        assert admin.execute("SELECT count(*) FROM shop.closing").fetchone() == (1,)


def test_a_chain_that_is_broken_makes_no_closing(full, shop):
    with shop.admin() as admin:
        admin.execute("ALTER TABLE shop.entry DISABLE TRIGGER kept")
        admin.execute("UPDATE shop.entry SET body = body || ' ' WHERE number = 5")
    with pytest.raises(ChainBroken, match="Entry 5"):
        close(shop)


def sealed(number, digest, packed):
    return number, digest, closing._seal(number, digest, packed) + packed


def rows(change):
    """A closing with something in its rows changed, packed and sealed again."""

    def changed(number, digest, packed):
        content = msgspec.msgpack.decode(zlib.decompress(packed))
        change(*content[1:4])
        return sealed(number, digest, zlib.compress(msgspec.msgpack.encode(content)))

    return changed


def spots(*more):
    return rows(lambda balance, _fact, _tally: balance.extend(more))


def facts(*more):
    return rows(lambda _balance, fact, _tally: fact.extend(more))


LARGE = 2**63 - 1
OTHER = zlib.compress(b"\x93\x01\x02\x03")
WRONG = {
    "one bit": (lambda n, d, p: (n, d, sealed(n, d, p)[2][:-1] + b"x"), "seal"),
    "nothing": (lambda n, d, _: (n, d, b""), "seal"),
    "half of it": (lambda n, d, p: (n, d, sealed(n, d, p)[2][:90]), "seal"),
    "a digest of another length": (lambda _, d, p: sealed(8, d[:9], p), "another entry"),
    "behind another entry": (lambda _, d, p: sealed(7, d, p), "another entry"),
    "behind no entry": (lambda _, d, p: sealed(999, d, p), "another entry"),
    "before all": (lambda _, d, p: sealed(0, d, p), "another entry"),
    "cut short": (lambda n, d, p: sealed(n, d, p[:-20]), "cut short"),
    "no books": (lambda n, d, _: sealed(n, d, b"books"), "cannot be read"),
    "other books": (lambda n, d, _: sealed(n, d, OTHER), "cannot be read"),
    "a row twice": (rows(lambda b, _f, _t: b.append(b[0])), "balance names one row twice"),
    "a fact twice": (rows(lambda _b, f, _t: f.append(f[0])), "fact names one row twice"),
    "pieces too many": (spots(["b", "9", "trimming", 5]), "pieces of 9 do not balance"),
    "pieces owed": (spots(["b", "9", "trimming", -5], ["b", "9", "cut", 5]), "-5 of 9 lie at"),
    "no pieces": (spots(["b", "9", "trimming", 0]), "0 of 9 lie at"),
    "a large number": (spots(["b", "9", "cut", LARGE], ["c", "9", "cut", -LARGE]), "lie at cut"),
    "a count of none": (rows(lambda _b, _f, t: t.append(["h", "a", "b", "9", 0])), "a count"),
    "a fact of no sense": (facts(["batch/x", "{", None, "", "a"]), "batch/x cannot be read"),
    "a fact that is another": (
        rows(lambda _b, f, _t: f.append(["batch/9", *f[0][1:]])),
        "batch/9 is no such fact",
    ),
    "a fact on another shelf": (
        rows(lambda _b, f, _t: f[0].__setitem__(2, "order/open")),
        "is no such fact",
    ),
}


@pytest.mark.parametrize(("broken", "words"), WRONG.values(), ids=WRONG)
def test_a_wrong_closing_is_refused_and_the_whole_history_comes(full, fresh, shop, broken, words):
    close(shop)
    with shop.admin() as admin:
        number, digest, books = closing_of(admin)
        wrong = broken(number, digest, books[SEAL:])
        admin.execute("UPDATE shop.closing SET number = %s, digest = %s, books = %s", wrong)
    new = fresh()
    with pytest.raises(ClosingWrong, match=words):
        begin_with(new.ledger, new.link)
    assert new.ledger.begins() == (0, "")
    healed(full, new)
    assert close(shop).number == 8, "the next one is made from the start"
    alike(full, begun(fresh()))


@pytest.mark.parametrize("layout", [LAYOUT - 1, 99], ids=["older", "newer"])
def test_a_closing_of_another_program_is_passed_over(full, fresh, shop, layout):
    close(shop)
    with shop.admin() as admin:
        admin.execute("UPDATE shop.closing SET format = %s", (layout,))
    new = begun(fresh())
    healed(full, new)
    assert new.ledger.begins() == (0, "")
    assert close(shop).number == 8, "the next one is made from the start"
    assert begun(fresh()).ledger.begins() == (8, OLD)


def test_who_has_anything_does_not_begin_anew(full, fresh, shop):
    close(shop)
    new = fresh()
    new.do("scanned before the shop came", batch="00009")
    healed(full, begun(new))
    assert new.ledger.begins() == (0, "")


def test_what_is_left_out_behind_a_closing_is_alike(full, fresh, shop):
    close(shop, "2027-11-25T10:42:00")
    shop.put(("x", "{"))
    new = begun(fresh())
    alike(full, new)
    assert [c.since for c in new.ledger.facts(Concern)] == [LATE]


def test_an_older_day_than_its_beginning_stops_it_until_the_others_have_shared(full, fresh, shop):
    close(shop)
    new = begun(fresh())
    alike(full, new)
    put_back(shop, 5)
    shop.confirm_put_back()
    assert new.share().state == "differs"
    assert new.ledger.not_shared() == 0
    assert new.do("scanning goes on", batch="00001").entry
    full.share()
    full.share()
    alike(full, new)
    assert full.ids()[-1] == "scanning goes on"


def test_a_day_put_back_behind_its_beginning_is_shared_again(full, fresh, shop):
    close(shop)
    new = begun(fresh())
    new.do("mine", batch="00001")
    alike(full, new)
    put_back(shop, 10)
    shop.confirm_put_back()
    new.share()
    full.share()
    alike(full, new)


def test_a_shop_is_not_founded_from_a_pc_without_all_of_it(full, fresh, shop, address, tmp_path):
    close(shop)
    new = begun(fresh())
    new.ledger.set_local("site", "5173")
    with pytest.raises(NotShared, match="begins behind entry 8"):
        share(tmp_path, new.ledger, address, PASSWORD, 1)


# --- old entries leave a station


def overwrite(path, spot):
    """As a bad disk does."""
    raw = bytearray(path.read_bytes())
    at = raw.find(spot)
    assert at > 0
    raw[at : at + 4] = b"\x00\x00\x00\x00"
    path.write_bytes(raw)


def test_old_entries_are_dropped_and_all_goes_on(full, fresh, shop):
    before = full.stock()
    number, digest = full.ledger.older_than("2026-10-25T10:42:00")
    assert full.ledger.holds(number, digest)
    full.ledger.drop_until(number)
    assert full.ledger.begins() == (8, OLD)
    assert full.ids() == ["back", "new0", "new1", "new2"]
    assert full.stock() == before
    assert full.ledger.older_than("2026-10-25T10:42:00")[0] == 8
    full.do("more", batch="00001")
    full.ledger.drop_until(full.ledger.older_than("2027-01-01T00:00:00")[0])
    assert full.ids() == ["more"]
    healed(full)
    whole = fresh()
    alike(whole, full)


def test_a_disk_without_room_for_a_smaller_file_drops_all_the_same(full, fresh):
    run = full.ledger._store.run
    run(f"PRAGMA max_page_count={run('PRAGMA page_count').fetchone()[0] + 4}")
    full.ledger.drop_until(8)
    run("PRAGMA max_page_count=1000000")
    assert full.ledger.begins() == (8, OLD)
    alike(fresh(), full)


def test_only_what_is_old_from_the_first_on_is_dropped(full):
    assert full.ledger.older_than(OLD)[0] == 0
    assert full.ledger.older_than("2026-03-04T10:00:01")[0] == 8
    assert full.ledger.older_than("2030-01-01T00:00:00")[0] == 12


def test_what_was_done_before_is_not_taken_back_but_told(full):
    full.ledger.drop_until(8)
    answer = full.undo("old1", "late").answer
    assert answer.refused
    assert str(answer.do) == "What was done before 4 Mar 2026 is not on this PC."
    assert full.ledger.view.past("old1") is None
    assert full.ledger.view.last("batch/00002", "cut").act.id == "new2"


def test_a_backup_of_a_short_history_is_restored(full, tmp_path, fresh):
    full.ledger.drop_until(8)
    full.ledger.backup(tmp_path / "copy")
    full.ledger.close()
    Ledger.restore(tmp_path / "copy", full.path)
    full.open()
    assert full.ledger.begins() == (8, OLD)
    alike(fresh(), full)


@pytest.mark.parametrize(("books_too", "saved"), [(False, 12), (True, 4)])
def test_a_damaged_short_history_is_mended(full, fresh, books_too, saved):
    full.ledger.drop_until(8)
    books = closing.packed_of(full.ledger._store)
    full.do("pending", batch="00002")
    full.ledger.idle()
    full.ledger.close()
    for spot in (b'"id":"new2"', *([books[40:60]] if books_too else ())):
        overwrite(full.path, spot)
    with pytest.raises(Damaged, match=f"; {saved} entries were saved"):
        full.open()
    full.open()
    assert full.ledger.begins()[0] == (0 if books_too else 8)
    alike(fresh(), full)
    assert full.ids()[-1] == "pending"


def test_a_damaged_closing_is_told(full):
    full.ledger.drop_until(8)
    books = closing.packed_of(full.ledger._store)
    full.ledger.idle()
    full.ledger.close()
    overwrite(full.path, books[40:60])
    full.open()
    assert full.ledger.check() == ["The closing does not hold: its seal is broken."]


def test_a_file_from_before_there_were_closings_is_opened(tmp_path):
    ledger = Ledger(tmp_path / "shop.db", RULES)
    ledger._store.run("DROP TABLE closing")
    ledger.close()
    ledger = Ledger(tmp_path / "shop.db", RULES)
    assert ledger.begins() == (0, "")
    ledger.close()


def test_books_of_whole_months_are_kept_small(full):
    books = closed(full.ledger._store)
    made = closing.close(books, Begin(12, b"d" * 32, LATE))
    assert closing.opened(made)[1].fact == books.fact
    assert len(made.books) < 2000
