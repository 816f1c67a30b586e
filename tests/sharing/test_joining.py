"""A PC joins while the network is cut: one card is enough, and it still lets in only once."""

import stat
import sys

import psycopg
import pytest

from station.sharing import joining, membership, secret
from station.sharing.address import Address
from station.sharing.joining import NotJoined, join
from station.sharing.roles import card_role, verifier
from tests.proxy import Proxy
from tests.sharing.shop import found
from tests.sharing.test_fault_table import empty_in_its_place, without_its_site

pytestmark = pytest.mark.slow

ANSWERED, DONE = b"SELECT 1\0", b"COMMIT\0"  # what the server says at the end of each
NEW_CARD = "station share URL --card N"


@pytest.fixture(autouse=True)
def no_keyring(monkeypatch):
    """Nobody's own keyring is touched."""
    monkeypatch.setattr(secret, "_in_keyring", lambda *_: False)


@pytest.fixture
def net(shop):
    proxy = Proxy(shop.server.port)
    yield proxy
    proxy.close()


@pytest.fixture
def address(shop, net):
    return Address("127.0.0.1", net.port, shop.database)


@pytest.fixture
def pc(tmp_path):
    folder = tmp_path / "pc"
    folder.mkdir()
    return folder


def cut_at(net, answer):
    """From now on this answer of the server is lost, and the network with it."""
    net.mode, net.losing = "open", lambda piece: answer in piece


def healed(net):
    net.mode, net.losing = "open", lambda _: False


def spent(shop, number="2"):
    """Whether the station's card was taken by the server."""
    with shop.admin() as admin:
        return admin.execute(
            "SELECT joined IS NOT NULL AND card IS NULL FROM shop.station WHERE number = %s",
            (number,),
        ).fetchone() == (True,)


def lost(shop, net, address, pc, card, answer=DONE):
    """A first try whose answer is lost on its way."""
    cut_at(net, answer)
    with pytest.raises(NotJoined, match=r"does not answer.*the same card"):
        join(pc, address, card.code)
    assert membership.of(pc) is None
    healed(net)


def is_in(pc):
    """Whether this PC is a station that the server lets in, with one password and no other."""
    link = membership.of(pc).link(pc)
    link.head()
    link.close()
    return sorted(file.name for file in pc.iterdir()) == [
        membership.FILE,
        membership.COPY,
        secret.FILE,
    ]


@pytest.mark.parametrize(("answer", "taken"), [(ANSWERED, False), (DONE, True)])
def test_the_answer_is_lost_and_the_same_card_joins(shop, net, address, pc, answer, taken):
    card = shop.card("2")
    lost(shop, net, address, pc, card, answer)
    assert spent(shop) == taken
    joined = join(pc, address, card.shown.lower())
    assert (joined.station, joined.site) == ("2", shop.names.site)
    assert is_in(pc)
    assert spent(shop)


def test_wherever_the_network_is_cut_the_same_card_joins(shop, net, address, tmp_path):
    pieces, cut = 0, True
    while cut:
        pieces += 1
        left, pc, card = [pieces], tmp_path / f"{pieces}", shop.card("2")
        pc.mkdir()

        def losing(_piece, left=left):
            left[0] -= 1
            return not left[0]

        net.losing = losing
        try:
            join(pc, address, card.code)
            cut = False
        except NotJoined:
            healed(net)
            join(pc, address, card.code)
        healed(net)
        assert is_in(pc)
    assert pieces > 5


def test_without_the_kept_password_a_new_card_is_named(shop, net, address, pc):
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    for file in pc.iterdir():
        file.unlink()
    with pytest.raises(NotJoined, match=f"does not take that code.*{NEW_CARD}"):
        join(pc, address, card.code)
    assert list(pc.iterdir()) == []
    join(pc, address, shop.card("2").code)
    assert is_in(pc)


def test_a_card_that_has_run_out_names_a_new_one(shop, address, pc):
    card = shop.card("2")
    with shop.admin() as admin:
        admin.execute("UPDATE shop.station SET expires = now() - interval '1 second'")
    with pytest.raises(NotJoined, match=f"has run out.*{NEW_CARD}"):
        join(pc, address, card.code)
    assert list(pc.iterdir()) == []


def test_the_card_of_a_lost_answer_lets_in_no_other_pc(shop, net, address, pc, tmp_path):
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    other = tmp_path / "other"
    other.mkdir()
    with pytest.raises(NotJoined, match="does not take that code"):
        join(other, address, card.code)
    assert list(other.iterdir()) == []
    join(pc, address, card.code)
    assert is_in(pc)


@pytest.mark.parametrize("is_lost", [False, True])
def test_a_pc_of_before_is_shut_out_at_once(shop, net, address, pc, is_lost):
    """What it had open went on as the same station for as long as it stood."""
    with shop.station("2") as before, shop.station("3") as other:
        before.execute("SELECT FROM shop.site")
        card = shop.card("2")
        if is_lost:
            lost(shop, net, address, pc, card)
        join(pc, address, card.code)
        with pytest.raises(psycopg.OperationalError):
            before.execute("SELECT FROM shop.site")
        other.execute("SELECT FROM shop.site")
    assert is_in(pc)


def test_a_card_that_is_used_up_lets_in_no_more(shop, address, pc):
    card = shop.card("2")
    join(pc, address, card.code)
    before = (pc / secret.FILE).read_text()
    with pytest.raises(NotJoined, match="does not take that code"):
        join(pc, address, card.code)
    assert (pc / secret.FILE).read_text() == before
    assert is_in(pc)


def test_a_mistyped_code_in_between_loses_nothing(shop, net, address, pc):
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    with pytest.raises(NotJoined, match="does not take that code"):
        join(pc, address, card.code[::-1])
    join(pc, address, card.code)
    assert is_in(pc)


def test_a_network_that_is_still_cut_loses_nothing(shop, net, address, pc):
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    net.mode = "cut"
    with pytest.raises(NotJoined, match=r"does not answer.*the same card"):
        join(pc, address, card.code)
    healed(net)
    join(pc, address, card.code)
    assert is_in(pc)


@pytest.mark.parametrize("number", ["2", "3"])
def test_a_new_card_takes_the_place_of_the_lost_answer(shop, net, address, pc, number):
    """What was kept for the first card is gone; for the same station it opens nothing."""
    first = shop.card("2")
    lost(shop, net, address, pc, first)
    kept = joining.Attempt.of(pc)
    assert join(pc, address, shop.card(number).code).station == number
    assert is_in(pc)
    with pytest.raises(NotJoined, match="does not take that code"):
        join(pc, address, first.code)
    if number == "2":
        with pytest.raises(psycopg.OperationalError, match="authentication failed"):
            shop.server.connect(shop.database, kept.role, kept.password)


def cut_once_kept(net, monkeypatch):
    """The network goes when the password is kept and the card is not spent yet."""
    keep = joining.Attempt.keep

    def then_cut(attempt, folder):
        keep(attempt, folder)
        net.mode = "cut"

    monkeypatch.setattr(joining.Attempt, "keep", then_cut)


def test_a_station_that_joins_again_keeps_its_password_until_the_card_is_spent(
    shop, net, address, pc, monkeypatch
):
    join(pc, address, shop.card("2").code)
    card = shop.card("2")
    with monkeypatch.context() as network:
        cut_once_kept(net, network)
        with pytest.raises(NotJoined, match="does not answer"):
            join(pc, address, card.code, shop.names.site)
    healed(net)
    kept = joining.Attempt.of(pc)
    with pytest.raises(psycopg.OperationalError, match="authentication failed"):
        shop.server.connect(shop.database, kept.role, kept.password)
    membership.of(pc).link(pc).head()
    join(pc, address, card.code, shop.names.site)
    assert is_in(pc)


def test_a_network_that_goes_for_a_moment_sends_nobody_for_a_new_card(
    shop, net, address, pc, monkeypatch
):
    """The kept password is not tried to the end, and then the card, which is spent, would be."""
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    connect, cut = joining.connect, [psycopg.OperationalError("cut")]

    def once(*given):
        if cut:
            raise cut.pop()
        return connect(*given)

    monkeypatch.setattr(joining, "connect", once)
    with pytest.raises(NotJoined, match=r"does not answer.*the same card"):
        join(pc, address, card.code)
    join(pc, address, card.code)
    assert is_in(pc)


def test_another_shop_s_card_is_not_used_up_and_leaves_nothing(server, shop, address, pc):
    join(pc, address, shop.card("2").code)
    other = found(server)
    where, card = Address("127.0.0.1", server.port, other.database), other.card("5")
    with pytest.raises(NotJoined, match="another shop"):
        join(pc, where, card.code, shop.names.site)
    assert is_in(pc)
    assert not spent(other, "5")
    fresh = pc.parent / "fresh"
    fresh.mkdir()
    assert join(fresh, where, card.code).station == "5"


def test_a_lost_answer_of_another_shop_does_not_join_either(server, shop, net, address, pc):
    """The folder became another shop's in the meantime."""
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    with pytest.raises(NotJoined, match="another shop"):
        join(pc, address, card.code, found(server).names.site)
    assert membership.of(pc) is None


def test_what_is_kept_meanwhile_is_for_its_user_alone(shop, net, address, pc):
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    (file,) = pc.iterdir()
    if sys.platform != "win32":
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
    kept = file.read_text(encoding="utf-8")
    assert card.code not in kept
    assert card_role(card.code) in kept


def test_what_is_kept_meanwhile_and_cannot_be_read_is_as_nothing(shop, net, address, pc):
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    (file,) = pc.iterdir()
    file.write_text("{", encoding="utf-8")
    with pytest.raises(NotJoined, match=NEW_CARD):
        join(pc, address, card.code)


def test_a_station_shut_out_in_between_is_told_so(shop, net, address, pc):
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    with shop.admin() as admin:
        admin.execute(f"ALTER ROLE {shop.names.station('2')} NOLOGIN")
    with pytest.raises(NotJoined, match=NEW_CARD):
        join(pc, address, card.code)


def test_a_pc_that_dies_in_the_middle_holds_nobody_up(shop, address, pc, monkeypatch):
    """The server ends what it waits for, so that the owner's new card does not wait for ever."""
    monkeypatch.setattr(joining, "MOST", "1s")
    held = joining.by_card(address, (card := shop.card("2")).code)
    held.execute("BEGIN")
    held.execute(joining.JOIN, (verifier(held, "", "a password"),))
    with shop.admin() as admin:
        admin.execute("SET lock_timeout = '10s'")
        admin.execute("UPDATE shop.station SET card = card")
    held.close()
    assert not spent(shop)
    assert join(pc, address, card.code).station == "2"


def test_two_pcs_with_one_card_at_once_are_told_apart(shop, address, pc):
    """One is in the middle of joining; the other is told so, and then that the card is spent."""
    card = shop.card("2")
    with joining.by_card(address, card.code) as first, first.transaction():
        first.execute(joining.JOIN, (verifier(first, "", "a password"),))
        with pytest.raises(NotJoined, match="Another PC joins with this card"):
            join(pc, address, card.code)
        assert list(pc.iterdir()) == []
    with pytest.raises(NotJoined, match=NEW_CARD):
        join(pc, address, card.code)
    assert membership.of(pc) is None


@pytest.mark.parametrize("emptied", [empty_in_its_place, without_its_site])
def test_nobody_joins_an_empty_database(shop, address, pc, emptied):
    card = shop.card("2")
    with emptied(shop), pytest.raises(NotJoined, match="is empty: it is not the shop's"):
        join(pc, address, card.code)
    assert list(pc.iterdir()) == []
    assert join(pc, address, card.code).station == "2"


def test_with_a_keyring_nothing_is_in_a_file(shop, net, address, pc, monkeypatch):
    ring = {}
    monkeypatch.setattr(secret, "_in_keyring", lambda who, text: not ring.update({who: text}))
    monkeypatch.setattr(secret.keyring, "get_password", lambda _, who: ring.get(who))
    monkeypatch.setattr(secret.keyring, "delete_password", lambda _, who: ring.pop(who, None))
    card = shop.card("2")
    lost(shop, net, address, pc, card)
    assert list(pc.iterdir()) == []
    join(pc, address, card.code)
    assert list(ring) == [membership.of(pc).account]
    membership.of(pc).link(pc).head()
