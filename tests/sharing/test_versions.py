"""What two stations did about the same thing stands side by side on Shop today, and fits."""

import pytest

from station.look import inspect
from station.look.window import Window
from station.shop.facts import Concern
from station.window.session import Session
from tests.sharing.two_stage import TwoStations
from tests.touch import find_touch

pytestmark = pytest.mark.slow  # asks a whole server

BATCH = ("traveller 00900", "button on_rack")


@pytest.fixture
def stage(tmp_path, shop):
    """Station 1 was first with a batch; station 2, without a network, did the same."""
    made = TwoStations(tmp_path, shop)
    for number, worker in (("1", "02"), ("2", "03")):
        at = ("@area trimming", f"@worker {worker}")
        for line in (f"@station {number}", *at):
            made.send(line)
    for line in ("@network off", *BATCH, "@station 1", *BATCH, "@share", "@station 2"):
        made.send(line)
    made.send("@network on")
    made.send("@share")
    yield made
    made.close()


def test_it_is_known_who_was_first_and_what_was_said(stage):
    for ledger in stage.ledgers.values():
        (concern,) = ledger.facts(Concern)
        first = ledger.view.past(concern.before)
        assert (first.act.station, first.act.worker) == ("1", "02")
        assert (concern.station, concern.worker) == ("2", "03")
        assert str(concern.first) == str(concern.other) == "Batch 00900: 160 good"
        assert str(concern.now) == "0 SG-10 left here, not 160"


@pytest.mark.parametrize("size", [(1366, 768), (1920, 1080)])
@pytest.mark.parametrize("number", "12")
def test_both_versions_stand_on_the_screen_of_every_station(stage, qapp, number, size):
    desk = stage.desks[number]
    desk.at(area="today")
    desk.sign_in("07")
    window = Window()
    window.resize(*size)
    session = Session(window, desk)
    window.show()
    session.start()
    session.take(find_touch(desk.face(), "0 min"))
    qapp.processEvents()
    texts = inspect.list_texts(window)
    assert {"not counted", "counted", "leave it out", "book what is there"} <= set(texts)
    assert "worker 03 at station 2, 07:00" in texts
    assert "worker 02 at station 1, 07:00" in texts
    assert texts.count("from trimming to rack B 07: 160 SG-10") == 2
    assert inspect.list_problems(window) == []
    session.stop()
    window.close()
