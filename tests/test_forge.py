"""Whatever looks sound is taken in, and no screen fails: a sample of ``python -m tests.forge``."""

import logging

import pytest

from station.sharing.migrations.versions import first
from tests import forge, thief

pytestmark = pytest.mark.slow


def test_no_screen_fails_on_what_is_taken_in(monkeypatch):
    monkeypatch.setattr(forge, "AFRESH", 8)
    _, wrong = forge.run(16, seed=7)
    assert wrong == []


def test_a_password_stolen_for_an_hour_changes_nothing_but_its_own():
    hour = thief.steal(120, seed=3, holds=1)
    assert hour.wrong == []
    assert hour.tried == 120
    assert 5 < hour.taken < 60


def test_it_would_be_seen_if_it_did(caplog):
    """With the push of before the thief forges all that it wants to."""
    caplog.set_level(logging.CRITICAL)

    def open_again(shop):
        with shop.admin() as admin:
            admin.execute(first.PUSH.replace("CREATE FUNCTION", "CREATE OR REPLACE FUNCTION"))

    wrong = " ".join(thief.steal(120, seed=3, prepare=open_again, holds=0).wrong)
    for what in ("forged an act of station", "people or settings", "writes something else"):
        assert what in wrong
