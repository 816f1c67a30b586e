"""Whatever looks sound is taken in, and no screen fails: a sample of ``python -m tests.forge``."""

import logging

import pytest

from station.ledger.sound import taken_in
from station.sharing.migrations.versions import first
from station.shop.facts import Bed, Order, Part, Reason
from station.shop.moves import SHEET
from station.shop.plain import to_plain
from tests import forge, replay, structure, thief

pytestmark = pytest.mark.slow


@pytest.mark.parametrize("seed", range(4))
def test_no_screen_fails_on_what_is_taken_in(seed):
    left_out, wrong = forge.run(500, seed=seed)
    assert wrong == []
    assert 50 < left_out < 250


@pytest.mark.parametrize(
    ("kind", "number", "bent"),
    [
        (Reason, "02", {"use": "stop"}),
        (Order, "3306", {"due": "", "state": "cancelled"}),
        (Part, "045", {"shape": {"outline": [], "holes": [], "tabs": [], "recesses": []}}),
    ],
)
def test_what_was_found_once_fails_no_more(tmp_path, monkeypatch, kind, number, bent):
    """A reason on the shelf of another use, an order without a time, a part without an outline."""

    wrong = []

    class Bent(forge.ForgedStage):
        def forge_some(self, ids):
            fact = self.ledger.view.get(kind, number)
            text = forge.write_entry(fact, to_plain(fact) | bent, ids[0])
            self.wrong = wrong
            self.show([self.take(ids[0], text)])
            assert not self.left_out

    monkeypatch.chdir(tmp_path)
    replay.play(replay.HERE / "16_order_cancelled.txt", staged=Bent)
    assert wrong == []


def test_a_sheet_that_the_books_have_not_on_the_bed_comes_off_all_the_same(tmp_path):
    """Else nobody could start another sheet on that router."""
    stage = replay.Stage(tmp_path)
    for line in structure.RELEASED.split("\n")[1:-1]:
        stage.desk.take(line[1:]) if line[0] == "'" else stage.send(line)
    bed = stage.ledger.view.get(Bed, "2")
    text = forge.write_entry(bed, to_plain(bed) | {"lot": "0940"}, "forged 0")
    body, why = taken_in("forged 0", text)
    assert not why
    stage.ledger._history.append(body, (), {})
    given = stage.send("slip 00001 1")
    sheet = next(m for m in given.moves if m.part == SHEET)
    assert (sheet.frm.place, sheet.to.place) == ("recount", "used")
    stage.close()


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
