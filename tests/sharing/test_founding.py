"""A shop's database founded by who owns the server, and stations that join it."""

import stat
import sys
from dataclasses import replace

import psycopg
import pytest

from station import bootstrap
from station.ledger.ledger import Ledger
from station.sharing import founding, joining, membership, schema, secret
from station.sharing.address import Address, read
from station.sharing.founding import NotShared, share
from station.sharing.joining import NotJoined, join
from station.sharing.loop import catch_up
from station.sharing.roles import SIGNS
from tests.ledger.toy import RULES, act
from tests.server import PASSWORD, Server
from tests.sharing.shop import found

pytestmark = pytest.mark.slow


@pytest.fixture(autouse=True)
def no_keyring(monkeypatch):
    """Nobody's own keyring is touched."""
    monkeypatch.setattr(secret, "_in_keyring", lambda *_: False)


@pytest.fixture
def home(tmp_path):
    folder = tmp_path / "one"
    folder.mkdir()
    return folder


@pytest.fixture
def ledger(home):
    ledger = Ledger(home / bootstrap.FILE, RULES)
    for n in range(5):
        ledger.record(act(f"a{n}", qty=n + 1))
    yield ledger
    ledger.close()


@pytest.fixture
def address(server):
    """A database that is not there yet."""
    server._made += 1
    return read(server.url(f"fresh{server._made}"))


def typed(address):
    """What a person types at `station join`."""
    return Address(address.host, address.port, address.database)


def rows(server, address, what="number, id, pushed_by"):
    with server.connect(address.database) as admin:
        return admin.execute(f"SELECT {what} FROM shop.entry ORDER BY number").fetchall()


def test_the_history_comes_along_and_this_pc_is_a_station(server, home, ledger, address):
    cards = share(home, ledger, address, PASSWORD, 3)
    assert [c.station for c in cards] == ["2", "3", "4"]
    assert rows(server, address) == [(n, f"a{n - 1}", "station 1") for n in range(1, 6)]
    mine = membership.of(home)
    head = mine.link(home).head()
    assert (head.site, head.number) == (ledger.local("site"), 5)
    assert ledger.holds(5, head.digest)
    assert [e.body for e in mine.link(home).pull(0, 9)] == [e.body for e in ledger.chain(0)]


def test_again_it_adds_what_is_missing_and_makes_new_cards(server, home, ledger, address):
    first = share(home, ledger, address, PASSWORD, 2)
    join(home.parent, typed(address), first[0].code)
    ledger.record(act("later"))
    again = share(home, ledger, address, PASSWORD, 3)
    assert [c.station for c in again] == ["3", "4"]
    assert catch_up(ledger, membership.of(home).link(home)).state == "shared"
    assert [r[1:] for r in rows(server, address)][5:] == [
        ("later", f"shop_station_{ledger.local('site')}_1")
    ]
    with pytest.raises(NotJoined, match="does not take that code"):
        join(home.parent, typed(address), first[1].code)


@pytest.mark.parametrize("stopped", ["make_owner", "up_to_date", "_bring", "_join_here", "_cards"])
def test_stopped_half_way_it_goes_on(server, home, ledger, address, monkeypatch, stopped):
    where = next(m for m in (founding, founding.roles, schema) if hasattr(m, stopped))

    def power_cut(*_args):
        raise KeyboardInterrupt

    with monkeypatch.context() as half:
        half.setattr(where, stopped, power_cut)
        with pytest.raises(KeyboardInterrupt):
            share(home, ledger, address, PASSWORD, 2)
    assert len(share(home, ledger, address, PASSWORD, 2)) == 2
    assert len(rows(server, address)) == 5


def test_another_shops_database_is_refused(server, home, ledger, address, tmp_path):
    share(home, ledger, address, PASSWORD, 1)
    other = Ledger(tmp_path / "other.db", RULES)
    with pytest.raises(NotShared, match="another shop"):
        share(tmp_path, other, address, PASSWORD, 1)
    other.close()


def test_a_history_that_is_not_the_beginning_of_mine_is_refused(server, home, ledger, address):
    share(home, ledger, address, PASSWORD, 1)
    with server.connect(address.database) as admin:
        admin.execute("UPDATE shop.site SET digest = 'another'")
    with pytest.raises(NotShared, match="not the beginning"):
        share(home, ledger, address, PASSWORD, 1)


def test_a_manager_without_all_rights_shares_too(server, home, ledger, address):
    """As on a managed server, whose owner may create roles and databases, and no more."""
    name = f"manager{address.database}"
    with server.connect() as admin:
        admin.execute(f"CREATE ROLE {name} LOGIN CREATEROLE CREATEDB PASSWORD 'm'")
    managed = Address(address.host, address.port, address.database, user=name)
    cards = share(home, ledger, managed, "m", 1)
    other = home.parent / "two"
    other.mkdir()
    joined = join(other, typed(address), cards[0].code)
    assert joined.link(other).head().number == 5
    assert founding.close(managed, "m", "2027-06-01T07:00:00", print).number == 5
    assert joined.link(other).closing().number == 5
    with (
        pytest.raises(psycopg.errors.InsufficientPrivilege),
        server.connect(address.database, managed.user, "m") as link,
    ):
        link.execute("DELETE FROM shop.entry")


@pytest.mark.parametrize(
    ("user", "password", "words"),
    [
        ("postgres", "wrong", "does not take this password for postgres"),
        ("nobody_at_all", PASSWORD, "does not take this password"),
    ],
)
def test_a_wrong_password_is_told(home, ledger, address, user, password, words):
    wrong = Address(address.host, address.port, address.database, user=user)
    with pytest.raises(NotShared, match=words):
        share(home, ledger, wrong, password, 1)


def test_who_may_not_create_roles_is_told(server, home, ledger, address):
    with server.connect() as admin:
        admin.execute(f"CREATE ROLE weak{address.database} LOGIN CREATEDB PASSWORD 'w'")
    weak = Address(address.host, address.port, address.database, user=f"weak{address.database}")
    with pytest.raises(NotShared, match="may not do this"):
        share(home, ledger, weak, "w", 1)


@pytest.mark.parametrize(
    "deed",
    [
        lambda at: founding.put_back(at, "w"),
        lambda at: founding.block(at, "w", "2"),
        lambda at: founding.card_again(at, "w", "2"),
        lambda at: founding.update(at, "w"),
        lambda at: founding.close(at, "w", "2027-06-01T07:00:00", print),
    ],
    ids=["put back", "block", "card", "update", "close"],
)
def test_who_does_not_own_the_database_is_told(server, home, ledger, address, deed):
    share(home, ledger, address, PASSWORD, 1)
    with server.connect() as admin:
        admin.execute(f"CREATE ROLE guest{address.database} LOGIN PASSWORD 'w'")
        admin.execute(f'GRANT CONNECT ON DATABASE "{address.database}" TO guest{address.database}')
    with pytest.raises(NotShared, match="may not do this"):
        deed(Address(address.host, address.port, address.database, f"guest{address.database}"))


def test_a_name_that_was_mistyped_makes_no_database(server, home, ledger, address):
    share(home, ledger, address, PASSWORD, 1)
    mistyped = Address(address.host, address.port, "shpo", address.user)
    with pytest.raises(NotShared, match="no database shpo"):
        founding.card_again(mistyped, PASSWORD, "2")
    with server.connect() as admin:
        assert not admin.execute("SELECT FROM pg_database WHERE datname = 'shpo'").fetchall()


def test_a_station_joins_with_host_and_code(server, home, ledger, address, tmp_path):
    card = share(home, ledger, address, PASSWORD, 1)[0]
    other = tmp_path / "two"
    other.mkdir()
    joined = join(other, typed(address), card.shown.lower())
    assert (joined.station, joined.site) == ("2", ledger.local("site"))
    assert membership.of(other) == joined
    assert len(joined.link(other).pull(0, 100)) == 5


@pytest.mark.parametrize(
    ("code", "words"),
    [
        ("", "has 16 signs"),
        ("ABCD-EFGH-JKLM-NPQR", "does not take that code"),
        ("x" * 400, "has 16 signs"),
    ],
)
def test_a_wrong_code_is_told(home, ledger, address, code, words):
    share(home, ledger, address, PASSWORD, 1)
    with pytest.raises(NotJoined, match=words):
        join(home.parent, typed(address), code)


def test_a_card_of_another_shop_leaves_all_as_it_was(server, home, ledger, address, tmp_path):
    share(home, ledger, address, PASSWORD, 0)
    mine, secret_ = membership.of(home), (home / secret.FILE).read_text()
    other = found(server)
    where = Address("127.0.0.1", server.port, other.database)
    with pytest.raises(NotJoined, match="another shop"):
        join(home, where, other.card("2").code, mine.site)
    assert (membership.of(home), (home / secret.FILE).read_text()) == (mine, secret_)


def test_a_database_that_is_not_there_is_told(server, home, ledger, address):
    card = share(home, ledger, address, PASSWORD, 1)[0]
    with pytest.raises(NotJoined, match="no database"):
        join(home.parent, Address(address.host, address.port, "elsewhere"), card.code)


def test_a_new_card_puts_a_new_pc_in_an_old_ones_place(server, home, ledger, address, tmp_path):
    old, new = tmp_path / "old", tmp_path / "new"
    old.mkdir(), new.mkdir()
    share(home, ledger, address, PASSWORD, 1)
    before = join(old, typed(address), founding.card_again(address, PASSWORD, "2").code)
    before.link(old).head()
    after = join(new, typed(address), founding.card_again(address, PASSWORD, "2").code)
    assert after.link(new).head().number == 5
    with pytest.raises(Exception, match="does not let this station in"):
        before.link(old).head()


def test_a_station_is_shut_out_and_let_in_again(home, ledger, address, tmp_path):
    card = share(home, ledger, address, PASSWORD, 1)[0]
    joined = join(tmp_path, typed(address), card.code)
    link = joined.link(tmp_path)
    link.head()
    founding.block(address, PASSWORD, "2")
    with pytest.raises(Exception, match=r"does not (answer|let)"):
        link.head()
    with pytest.raises(Exception, match="does not let this station in"):
        link.head()
    again = join(tmp_path, typed(address), founding.card_again(address, PASSWORD, "2").code)
    assert again.link(tmp_path).head().number == 5
    with pytest.raises(NotShared, match="no station 9"):
        founding.block(address, PASSWORD, "9")


def test_an_older_day_put_back_is_confirmed_once(home, ledger, address):
    share(home, ledger, address, PASSWORD, 1)
    assert founding.put_back(address, PASSWORD) == 5
    link = membership.of(home).link(home)
    assert link.head().epoch == 2
    assert catch_up(ledger, link).state == "shared"
    assert ledger.local("epoch") == "2"


def test_the_password_is_in_a_file_of_its_user_alone(home, ledger, address):
    share(home, ledger, address, PASSWORD, 1)
    file = home / secret.FILE
    password = file.read_text()
    if sys.platform != "win32":
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert len(password) >= 40
    for other in home.iterdir():
        if other != file:
            assert password.encode() not in other.read_bytes(), other
            assert PASSWORD.encode() not in other.read_bytes(), other


def test_a_file_that_others_could_read_is_closed_again(home, ledger, address):
    share(home, ledger, address, PASSWORD, 1)
    (home / secret.FILE).chmod(0o644)
    membership.of(home).link(home).head()
    if sys.platform != "win32":
        assert stat.S_IMODE((home / secret.FILE).stat().st_mode) == 0o600


def test_a_password_that_is_gone_is_told(home, ledger, address):
    share(home, ledger, address, PASSWORD, 1)
    mine = membership.of(home)
    secret.forget(home, mine.account)
    with pytest.raises(secret.NoSecret, match="new join card"):
        mine.link(home).head()


def test_no_password_is_in_what_an_error_tells(home, ledger, address):
    card = share(home, ledger, address, PASSWORD, 1)[0]
    with pytest.raises(NotJoined) as told:
        joining.join(home, Address("127.0.0.1", 1), card.code)
    for text in (str(told.value), repr(told.value.__cause__), repr(told.value.__context__)):
        assert card.code not in text


def test_an_older_database_is_brought_up_to_date(home, ledger, address):
    share(home, ledger, address, PASSWORD, 1)
    founding.update(address, PASSWORD)
    assert membership.of(home).link(home).head().number == 5


def test_codes_have_no_signs_that_are_taken_for_each_other():
    assert len(set(SIGNS)) == 32
    assert not set(SIGNS) & set("01IO")


@pytest.fixture
def elsewhere():
    """A server of its own, as in a data centre."""
    running = Server()
    yield running
    running.remove()


@pytest.mark.parametrize("mover", [0, 1], ids=["its first PC", "one that joined"])
def test_a_shop_moves_to_another_server_with_all_it_has(
    server, elsewhere, home, ledger, address, tmp_path, mover
):
    """As the server's page says: shared anew there, and a new card for each other PC."""
    other = tmp_path / "two"
    other.mkdir()
    join(other, typed(address), share(home, ledger, address, PASSWORD, 1)[0].code)
    two = Ledger(other / bootstrap.FILE, RULES, station="2")
    two.share_with(membership.of(other).site)
    assert catch_up(two, membership.of(other).link(other)).state == "shared"
    two.record(replace(act("not shared before the move", batch="00999"), station="2"))
    with server.connect() as admin:
        admin.execute(f'ALTER DATABASE "{address.database}" ALLOW_CONNECTIONS false')
    there = read(elsewhere.url("shop"))
    pcs = [(home, ledger), (other, two)]
    card = share(*pcs[mover], there, PASSWORD, 1)[0]
    moved = pcs[1 - mover][0]
    join(moved, typed(there), card.code, membership.of(moved).site)
    for folder, one in (pcs[1], pcs[0]):
        assert catch_up(one, membership.of(folder).link(folder)).state == "shared"
    ids = [*(f"a{n}" for n in range(5)), "not shared before the move"]
    assert [row[1] for row in rows(elsewhere, there)] == ids
    assert list(two.chain(0)) == list(ledger.chain(0))
    two.close()
