"""Every day in the shop, as in ``python -m tests.replay``."""

import pytest

from station.ledger.cache import CachedReads
from tests import replay

FACES = ("loading", "popping", "trimming", "packing", "cart", "today")


@pytest.mark.parametrize("file", sorted(replay.HERE.glob("*.txt")), ids=lambda f: f.stem)
def test_a_day(file):
    lines = replay.play(file)
    assert any(line.startswith(">") for line in lines), "a day has at least one answer"


class TwiceShown(replay.Stage):
    """A shop that shows each screen twice after each line: from what is held, and read anew."""

    def send(self, text):
        given = super().send(text)
        reader = self.ledger._history.reader
        held, shown = reader.held, self.show_all()
        reader.held = CachedReads(self.ledger._store)
        anew = self.show_all()
        reader.held = held
        assert shown == anew, text
        return given

    def show_all(self):
        """The screen that the day is at, and the first one of each work area."""
        if not hasattr(self, "others"):
            self.others = [self.new_desk(area, worker="06") for area in FACES]
        return [desk.face() for desk in (self.desk, *self.others)]


@pytest.mark.slow
@pytest.mark.parametrize("file", sorted(replay.HERE.glob("*.txt")), ids=lambda f: f.stem)
def test_what_is_held_shows_what_would_be_read(file):
    assert replay.play(file, staged=TwiceShown)
