"""People, PINs, reasons and settings are changed at the office's PCs, which the owner names."""

from dataclasses import replace

import psycopg
import pytest
from argon2 import PasswordHasher

from station import bootstrap
from station.clock import Clock
from station.floor.office.acts import SetFact
from station.sharing import founding, roles
from station.sharing.address import Address
from station.sharing.migrations.versions import second
from station.shop.acts import Act, SetPin
from station.shop.cards import button
from station.shop.facts import KINDS, Concern, Worker
from station.shop.plain import to_plain
from tests import replay
from tests.ledger.toy import act
from tests.server import ADMIN, PASSWORD
from tests.sharing.shop import found
from tests.sharing.test_push import at, body_of, push
from tests.sharing.test_two_stations import put_back
from tests.sharing.two import Station, healed

pytestmark = pytest.mark.slow  # asks a whole server

AT = "2026-11-25T10:00:00"
# By the least work that argon2 takes: every worker of the tests loads this file.
NEW_PIN = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash("4711")


@pytest.fixture
def pair(tmp_path, shop):
    """Station 2 of the office, and 3, which is not; a supervisor 07 has a PIN."""
    made = [Station(tmp_path, shop, n, rules=bootstrap.load_rules()) for n in "23"]
    bootstrap.seed_shop(made[0].ledger, replay.small_shop(), AT, stock=replay.START)
    healed(*made)
    name(shop, "2")
    healed(*made)
    yield made
    for station in made:
        station.close()


def name(shop, *stations):
    address = Address("127.0.0.1", shop.server.port, shop.database, ADMIN)
    founding.name_office(address, PASSWORD, stations)


def set_pin(station, id="pin", hash=NEW_PIN):
    asked = Act(
        id=id, kind=SetPin.kind, at=AT, worker="07", station=station.number,
        subject="worker/07", args=SetPin(hash=hash, approved="07"),
    )  # fmt: skip
    return station.ledger.record(asked).answer


def pin_of(station):
    return station.ledger.view.get(Worker, "07").pin


def test_a_pin_is_changed_in_the_office_alone(pair):
    office, other = pair
    before = pin_of(other)
    for given in ("", NEW_PIN):  # before it is typed, and however it came
        answer = set_pin(other, hash=given)
        assert answer.refused
        assert not answer.asks
        assert str(answer.said).endswith("are changed at station 2 alone")
        assert "at that PC" in str(answer.do)
    assert (other.ledger.not_shared(), pin_of(other)) == (0, before)
    assert not set_pin(office).refused
    healed(*pair)
    assert pin_of(other) != before


@pytest.mark.parametrize("kind", ["worker", "shop", "reason", "order"])
def test_a_form_is_refused_at_the_first_touch(pair, kind):
    """Nobody fills it in for nothing; an order's form is anybody's."""
    for station, refused in zip(pair, (False, kind != "order"), strict=True):
        desk = bootstrap.make_desk(station.ledger, bootstrap.Where(area="office"), Clock(AT))
        desk.sign_in("07")
        desk.unlocked = "07"
        desk.take(button(f"list_{kind}"))
        desk.take(next(row.code for row in desk.face().main[0].rows if row.code))
        answer = desk.take(button("next_field")).answer
        assert ("alone" in str(answer.said)) == refused, str(answer.said)


@pytest.mark.parametrize("kind", ["worker", "shop", "reason", "order"])
def test_what_is_saved_past_the_form_is_refused_too(pair, kind):
    """As by a list or a command: nothing is recorded that the shop would not take."""
    for station, refused in zip(pair, (False, kind != "order"), strict=True):
        fact = next(iter(station.ledger.facts(KINDS[kind])))
        args = SetFact(of=kind, value=to_plain(fact), approved="07")
        asked = Act(id=f"{kind} {station.number}", kind=SetFact.kind, at=AT, worker="07",
                    station=station.number, subject=fact.key, args=args)  # fmt: skip
        answer = station.ledger.record(asked).answer
        assert ("alone" in str(answer.said)) == refused, str(answer.said)
        assert answer.refused or not refused


def test_who_is_named_later_may_from_then_on(pair, shop):
    _, other = pair
    assert set_pin(other).refused
    name(shop, "2", "3")
    healed(*pair)
    assert not set_pin(other).refused
    healed(*pair)


def test_nobody_undoes_such_a_change_elsewhere(pair):
    office, other = pair
    assert not set_pin(office).refused
    healed(*pair)
    back = other.undo("pin", "back").answer
    assert back.refused
    assert "station 2" in str(back.said)


def test_what_was_changed_before_it_was_known_needs_a_look_and_stops_nothing(pair, shop):
    office, other = pair
    name(shop, "2", "3")
    healed(*pair)
    before = pin_of(office)
    assert not set_pin(other).refused
    name(shop, "2")
    assert other.talk()[0].state == "refused"
    healed(*pair)
    assert pin_of(office) == pin_of(other) == before
    (told,) = [c for c in office.ledger.facts(Concern) if not c.settled]
    assert "are changed at station 2 alone" in str(told.now)


def test_a_number_that_is_no_station_is_told(pair, shop):
    with pytest.raises(founding.NotShared, match="no station 9"):
        name(shop, "2", "9")


def test_what_is_not_shared_goes_along_under_a_new_number(tmp_path, shop):
    """A PC that joins anew, with a card of another number, brings along what it has."""
    one, two = (Station(tmp_path, shop, n) for n in "23")
    healed(one, two)
    two.do("mine")
    two.close()
    again = Station(tmp_path, shop, "4")
    again.close()
    again.path = two.path
    again.open()
    again.do("after")
    healed(one, again)
    with shop.admin() as admin:
        rows = admin.execute("SELECT id, pushed_by FROM shop.entry ORDER BY number").fetchall()
    assert rows == [(id_, shop.names.station("4")) for id_ in ("mine", "after")]
    assert [e.said for e in one.ledger.entries()] == [e.said for e in again.ledger.entries()]
    one.close()
    again.close()


def test_after_an_older_day_each_brings_its_own_and_the_office_what_is_left(tmp_path, shop):
    """What a PC did that is gone is brought by the office, in its old order."""
    one, two, gone = (Station(tmp_path, shop, n) for n in "234")
    name(shop, "2")
    one.do("first")
    healed(one, two, gone)
    for n, station in enumerate((two, gone, two, gone)):
        station.do(f"{n}", batch="00413")
        healed(one, two, gone)
    gone.close()
    put_back(shop, 1)
    shop.confirm_put_back()
    for _ in range(2):
        two.share()
    assert two.link.head().number == 2
    assert two.ledger.not_shared() == 3
    healed(one, two)
    healed(two, one)
    assert two.ids() == ["first", "0", "1", "2", "3"]
    assert not list(one.ledger.facts(Concern))
    one.close()
    two.close()


def test_the_office_brings_what_others_did_after_an_older_day_alone(tmp_path, shop):
    """At any other time the office's password forges no act of another station."""
    one = Station(tmp_path, shop, "2")
    name(shop, "2")
    one.ledger.record(replace(act("forged"), station="3"))
    assert one.talk()[0].state == "refused"
    one.close()


def test_the_office_of_a_shop_of_before_is_where_it_was_set_up(shop):
    """Where such things came from until now, and the PC that brought the history along."""
    with shop.admin() as admin:
        for number in "1234":
            roles.make_station(admin, shop.names, number)
        rows = [
            ("station 1", "batch/00001"),
            (shop.names.station("3"), "worker/07"),
            (shop.names.station("4"), "worker's/07"),
            (shop.names.station("4"), "shelf/worker/x"),
        ]
        for n, (by, name) in enumerate(rows, 1):
            admin.execute(
                "INSERT INTO shop.entry SELECT id, %s, %s, '', ARRAY[%s], '{}', '', %s, now()"
                " FROM shop.site", (n, f"{n}", name, by)
            )  # fmt: skip
        admin.execute(second.OFFICE_OF_BEFORE)
        assert admin.execute("SELECT office FROM shop.site").fetchone() == (["1", "3"],)


def test_a_database_of_before_is_shared_with_and_brought_up_to_date(tmp_path, server):
    """Programs are newer than the database for a while; then the office is where it was."""
    shop = found(server, step="1")
    one, two = (Station(tmp_path, shop, n, rules=bootstrap.load_rules()) for n in "23")
    bootstrap.seed_shop(one.ledger, replay.small_shop(), AT, stock=replay.START)
    healed(one, two)
    assert one.ledger.office == ()
    assert one.ledger.database == two.ledger.database == "old"
    assert not set_pin(two, id="of before").refused
    healed(one, two)
    address = Address("127.0.0.1", shop.server.port, shop.database, ADMIN)
    founding.update(address, PASSWORD)
    assert founding.read_office(address, PASSWORD) == ["2", "3"]
    name(shop, "2")
    healed(one, two)
    assert one.ledger.database == two.ledger.database == "new"  # on the connections of before
    assert set_pin(two, id="of now").refused
    assert not set_pin(one, id="of the office").refused
    healed(one, two)
    with shop.station("3") as thief, pytest.raises(psycopg.Error, match="another station"):
        push(thief, *at(thief), body=body_of("a", station="2"))
    one.close()
    two.close()
