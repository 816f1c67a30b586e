"""Which station a PC is stands in two files: damage to one of them costs nothing."""

from contextlib import closing
from pathlib import Path
from time import monotonic, sleep

import pytest

from station import bootstrap
from station.commands import join
from station.ledger.faults import InUse, NoMembership
from station.ledger.ledger import Ledger
from station.sharing import membership, secret
from station.sharing.address import Address
from station.sharing.joining import NotJoined
from station.sharing.loop import Loop
from station.sharing.membership import COPY, FILE, Membership
from station.sharing.secret import NoSecret
from tests.ledger.toy import opened
from tests.replay import small_shop

ADDRESS = Address(host="192.0.2.7", port=5432, database="shop")
KNOWN = Membership("s1", "3", "station_3", ADDRESS)
DAMAGES = {"empty": b"", "cut short": b'{"site": "s', "zeroes": bytes(300), "no text": b"\xff\xfe",
           "another": b"[]", "nothing": b"null", "less": b'{"station": "3"}',
           "a number": b'{"site": "s1", "station": 3, "role": "r", "address": {}}'}  # fmt: skip


@pytest.mark.parametrize("name", [FILE, COPY])
@pytest.mark.parametrize("damage", [*DAMAGES, "gone"])
def test_one_that_is_damaged_is_written_anew_from_the_other(tmp_path, name, damage):
    KNOWN.keep(tmp_path)
    sound = (tmp_path / name).read_bytes()
    if damage == "gone":
        (tmp_path / name).unlink()
    else:
        (tmp_path / name).write_bytes(DAMAGES[damage])
    assert membership.of(tmp_path) == bootstrap.find_membership(tmp_path) == KNOWN
    assert (tmp_path / name).read_bytes() == sound


def test_a_pc_that_shares_with_nobody_has_none(tmp_path):
    assert bootstrap.find_membership(tmp_path) is membership.of(tmp_path) is None


@pytest.fixture
def nameless(tmp_path):
    """A station with an act that is not shared yet, and nothing that says which it is."""
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), "2026-11-25T07:00:00")
        ledger.share_with("s1")
    return tmp_path


@pytest.mark.parametrize("damage", [*DAMAGES, "gone"])
def test_where_both_are_damaged_nothing_is_recorded_under_another_s_number(nameless, damage):
    if damage != "gone":
        for name in (FILE, COPY):
            (nameless / name).write_bytes(DAMAGES[damage])
    with (
        pytest.raises(NoMembership, match="say: station join HOST"),
        bootstrap.open_ledger(nameless),
    ):
        pass
    with bootstrap.open_ledger(nameless, nameless=True) as ledger:  # it can be looked at
        assert ledger.check() == []
        assert ledger.not_shared() == 0


def test_a_new_card_brings_it_back_with_what_it_has(nameless, monkeypatch):
    (nameless / FILE).write_bytes(b"")
    asked = []

    def joined(folder, address, code, site):
        asked.append((str(address), code, site))
        KNOWN.keep(folder)
        return KNOWN

    monkeypatch.setattr(join.joining, "join", joined)
    monkeypatch.setattr(join, "ask_line", lambda _words: "a code")
    monkeypatch.setattr(join, "copy_shop", lambda _data, _ledger: "")
    before = (nameless / bootstrap.FILE).stat().st_ino
    join.join_shop(nameless, "192.0.2.7/shop")
    assert [(code, site) for _, code, site in asked] == [("a code", "s1")]
    assert (nameless / bootstrap.FILE).stat().st_ino == before  # what was not shared is in it
    with bootstrap.open_ledger(nameless) as ledger:
        assert ledger.station == "3"


@pytest.fixture
def joins(nameless, monkeypatch):
    """This PC is station 3 and joins as it again; gives the codes that were asked for."""
    KNOWN.keep(nameless)
    asked = []
    monkeypatch.setattr(join.joining, "join", lambda *_: KNOWN)
    monkeypatch.setattr(join, "ask_line", lambda _words: asked.append("a code") or "a code")
    monkeypatch.setattr(join, "copy_shop", lambda _data, _ledger: "")
    return asked


def test_no_card_is_spent_while_the_window_is_open(nameless, joins):
    """What is joined then could not be copied, and the card would be of no use any more."""
    window = Ledger(nameless / bootstrap.FILE, bootstrap.load_rules(), station="3")
    with closing(window), pytest.raises(InUse):
        join.join_shop(nameless, "192.0.2.7/shop")
    assert joins == []
    join.join_shop(nameless, "192.0.2.7/shop")
    assert joins == ["a code"]


def test_a_new_card_for_the_same_number_ends_that_there_are_two(nameless, joins):
    """The other PC's password holds no longer: this one is the station."""
    with bootstrap.open_ledger(nameless) as ledger:
        ledger.set_local("twin", "3")
        assert ledger.has_twin
    join.join_shop(nameless, "192.0.2.7/shop")
    with bootstrap.open_ledger(nameless) as ledger:
        assert not ledger.has_twin


def test_a_card_that_joins_nothing_costs_no_shop(tmp_path, monkeypatch):
    """The shop was set aside before the card was asked for, and stayed so."""

    def refuse(*_given):
        raise NotJoined("That card does not hold.")

    monkeypatch.setattr(join.joining, "join", refuse)
    monkeypatch.setattr(join, "ask_line", lambda _words: "a code")
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), "2026-11-25T07:00:00")
        witness = ledger.witness()
    with pytest.raises(NotJoined):
        join.join_shop(tmp_path, "192.0.2.7/shop")
    with bootstrap.open_ledger(tmp_path) as ledger:
        assert ledger.witness() == witness
    assert not list(tmp_path.glob("shop.db.before*"))


def test_an_empty_password_is_none(tmp_path):
    (tmp_path / secret.FILE).write_bytes(b"")
    with pytest.raises(NoSecret):
        secret.read(tmp_path, KNOWN.account)


def test_a_password_that_may_not_be_read_is_no_bug_of_ours(tmp_path, monkeypatch):
    """The top bar said that something is wrong in the program."""
    monkeypatch.setattr(secret, "_in_keyring", lambda *_: False)
    secret.keep(tmp_path, KNOWN.account, "its password")
    real = Path.read_text

    def refuse(self, *given, **more):
        if self.name == secret.FILE:
            raise PermissionError(13, "Permission denied", str(self))
        return real(self, *given, **more)

    monkeypatch.setattr(Path, "read_text", refuse)
    with closing(opened(tmp_path)) as ledger:
        ledger.share_with(KNOWN.site)
        loop = Loop(ledger, lambda: KNOWN.link(tmp_path))
        end = monotonic() + 10
        while not loop.why and monotonic() < end:
            loop.step()
            sleep(0.005)
        loop.close()
    assert loop.state == "away"
    assert loop.why.startswith("This PC's password for the shop's database cannot be read.")
    assert secret.FILE in loop.why
