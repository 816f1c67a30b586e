"""The folders that a shop sets: one that names none for certain is told, and is no bug of ours."""

from pathlib import Path

import pytest

from station.files import folder as folders
from station.files.handlers import list_handlers
from station.files.lists import MOST_BYTES
from station.floor.office.work import OfficeHand, OfficeWork
from station.shop.acts import good
from station.shop.facts import Shop
from station.shop.file_requests import FindLists, ProveText, ReadList
from station.shop.rooms import Took
from station.shop.words import say
from tests.ledger.toy import opened

NOW = "2026-11-25T10:42:00"
ODD = ["~nobody-of-that-name/x", "beside", "/a\0b"]


@pytest.fixture
def handlers(tmp_path):
    ledger = opened(tmp_path)
    yield list_handlers(ledger, lambda: NOW, lambda: "id", beside=False)
    ledger.close()


@pytest.mark.parametrize("written", ODD)
def test_a_folder_of_the_shop_that_is_none_is_told(handlers, monkeypatch, written):
    monkeypatch.setattr(folders, "find_shop", lambda _view: Shop(id="shop", folder=written))
    took = handlers[FindLists](FindLists(), OfficeHand(area="office", work=OfficeWork()))
    assert took.answer.refused
    assert str(took.answer.said) == f"{written}: write the whole path of the folder"


@pytest.mark.parametrize("written", ODD)
def test_a_folder_of_a_router_that_is_none_is_told(handlers, written):
    hand = OfficeHand(area="office", work=OfficeWork())
    asked = ProveText(
        folder=written, digest="d", letter="C", proven=Took(hand, good(say("Right")))
    )
    took = handlers[ProveText](asked, hand)
    assert took.answer.refused
    assert str(took.answer.said) == f"{written}: write the whole path of the folder"


def test_a_file_that_is_far_too_large_for_a_list_is_not_read_whole(
    handlers, tmp_path, monkeypatch
):
    """Somebody left an export of years in the folder, and the window stood still over it."""
    lists = tmp_path / "files"
    lists.mkdir()
    with (lists / "years.csv").open("wb") as out:
        out.truncate(MOST_BYTES + 1)

    def refuse(file):
        raise AssertionError(f"{file} was read")

    monkeypatch.setattr(Path, "read_bytes", refuse)
    hand = OfficeHand(area="office", work=OfficeWork())
    took = handlers[ReadList](ReadList(file="years.csv"), hand)
    assert "years.csv is too large for a list" in str(took.answer.do)
