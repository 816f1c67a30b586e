"""``station share`` and ``station join``: an option does its one thing; what failed is told."""

import io

import pytest

from station import bootstrap
from station.commands import join, main, share
from station.sharing import founding
from station.sharing.address import Address
from station.sharing.membership import Membership
from station.sharing.roles import IssuedCard
from tests.replay import small_shop

URL = "postgresql://owner@192.0.2.7/shop"
NOW = "2026-11-25T10:42:00"
AWAY = "The shop's database at 192.0.2.7:5432/shop does not answer."
REST = f"{AWAY} The rest comes when the station is opened."


@pytest.fixture
def data(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("sys.stdin", io.StringIO("its password\n"))
    with bootstrap.open_ledger(tmp_path / "data") as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW)
    return tmp_path / "data"


def run(data, *words):
    return main.main([*words, "--data", str(data), "--now", NOW])


@pytest.mark.parametrize("option", ["--block", "--card", "--office"])
def test_an_option_without_a_number_shares_nothing(data, monkeypatch, capsys, option):
    """A variable of a script that is empty made the shop shared."""

    def refuse(*given):
        raise founding.NotShared(f"There is no station {given[-1]}.")

    for name in ("block", "card_again", "name_office"):
        monkeypatch.setattr(founding, name, refuse)
    monkeypatch.setattr(share, "share_shop", lambda *_: pytest.fail("it was shared"))
    assert run(data, "share", URL, option, "") == 1
    assert capsys.readouterr().err.startswith("There is no station")


def test_two_things_at_once_are_none(data, capsys):
    with pytest.raises(SystemExit) as end:
        run(data, "share", URL, "--block", "3", "--card", "3")
    assert end.value.code == 2
    assert "not allowed with" in capsys.readouterr().err


def test_cards_that_were_printed_before_are_kept(data, tmp_path, monkeypatch, capsys):
    """A new card for one station was written over those of the others, which still let in."""
    cards = tmp_path / share.CARDS
    cards.write_bytes(b"the cards of stations 2 to 4")
    monkeypatch.setattr(founding, "card_again", lambda *_: pytest.fail("an older one is void"))
    assert run(data, "share", URL, "--card", "2") == 1
    assert "is there already" in capsys.readouterr().err
    assert cards.read_bytes() == b"the cards of stations 2 to 4"


def test_a_shop_that_could_not_be_copied_to_the_end_is_told(data, monkeypatch, capsys):
    monkeypatch.setattr(founding, "share", lambda *_: [IssuedCard("2", "C" * 16, NOW)])
    monkeypatch.setattr(founding, "close", lambda *_: None)
    monkeypatch.setattr(share, "copy_shop", lambda *_: REST)
    monkeypatch.setattr(share, "say_office", lambda *_: None)
    monkeypatch.setattr(share, "say_left_open", lambda *_: None)
    assert run(data, "share", URL) == 1
    out = capsys.readouterr().out
    assert REST in out
    assert "entries are in" not in out
    assert (data / share.CARDS).read_bytes().startswith(b"%PDF")


def test_a_pc_that_has_joined_and_copied_nothing_is_not_done(data, monkeypatch, capsys):
    shop = Membership("s1", "2", "r", Address("192.0.2.7"))
    monkeypatch.setattr(join, "_join_with_card", lambda *_: shop)
    monkeypatch.setattr(join, "copy_shop", lambda *_: REST)
    assert run(data, "join", "192.0.2.7") == 1
    assert REST in capsys.readouterr().out
    monkeypatch.setattr(join, "copy_shop", lambda *_: "")
    assert run(data, "join", "192.0.2.7") == 0
