"""The folders that a shop sets: one that names none for certain is told, and is no bug of ours."""

import pytest

from station.files import folder as folders
from station.files.handlers import list_handlers
from station.floor.office.work import OfficeHand, OfficeWork
from station.shop.acts import good
from station.shop.facts import Shop
from station.shop.file_requests import FindLists, ProveText
from station.shop.rooms import Took
from station.shop.words import say
from tests.ledger.toy import opened

NOW = "2026-11-25T10:42:00"
ODD = ["~nobody-of-that-name/x", "beside", "/a\0b"]


@pytest.fixture
def handlers(tmp_path):
    ledger = opened(tmp_path)
    yield list_handlers(ledger, lambda: NOW, lambda: "id")
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
