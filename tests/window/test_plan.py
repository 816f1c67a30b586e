"""What to cut on a real window: it thinks in a process of its own, and the screen goes on."""

import pytest

from station import bootstrap
from station.bootstrap import Where
from station.jobs.process import ProcessJob
from station.planning.messages import CuttingPlan
from station.shop.cards import button
from station.shop.codes import write
from station.shop.facts import Batch
from tests.touch import NO_ROW
from tests.window.ways import on_screen

SOON_MS = 60_000


@pytest.fixture
def live(stage, qtbot):
    """The station of the supervisor, whose thoughts are thought in a process of their own."""
    stage.desk = bootstrap.make_desk(
        stage.ledger, Where(area="plan", worker="07"), stage.clock, ids=stage.new_id,
        begin=ProcessJob,
    )  # fmt: skip
    yield from on_screen(stage, qtbot)


def wait_for_thought(live, qtbot):
    desk = live.session.desk
    qtbot.waitUntil(lambda: isinstance(desk.ahead.thought, CuttingPlan), timeout=SOON_MS)
    qtbot.waitUntil(lambda: not desk.ahead.is_thinking, timeout=SOON_MS)
    live.session.repaint()
    return desk.ahead.thought


@pytest.mark.slow
def test_it_thinks_by_itself_is_touched_once_and_thinks_anew(live, qtbot):
    live.session.tick()
    assert live.session.desk.ahead.is_thinking
    assert "Looking at orders" in str(live.session.desk.face().main[0].title)
    first = wait_for_thought(live, qtbot).blocked[0]
    live.touch(button("release_first"))
    assert live.said == "Supervisor's work"
    live.scan("worker 07", "2468")
    assert live.said.startswith("Batch")
    assert [b.sheets for b in live.stage.ledger.facts(Batch) if b.state == "queued"] == [
        first.release.sheets
    ]
    qtbot.waitUntil(
        lambda: first.part not in {b.part for b in live.session.desk.ahead.thought.blocked},
        timeout=SOON_MS,
    )


@pytest.mark.slow
def test_scans_are_answered_while_it_reads_and_thinks(live, qtbot):
    live.session.tick()
    for _ in range(5):
        live.scan(f"button {NO_ROW}")
        assert live.said == "There is nothing in that row"
        live.session.look_at_job()
    wait_for_thought(live, qtbot)
    assert live.said == "There is nothing in that row"  # a thought says nothing on the strip


@pytest.mark.parametrize("way", ["card", "Esc", "touch"])
def test_a_thought_on_its_way_is_stopped(live, qtbot, way):
    live.session.tick()
    ahead = live.session.desk.ahead
    qtbot.waitUntil(lambda: ahead.running is not None, timeout=SOON_MS)
    process = ahead.running.process
    if way == "card":
        live.scan("button think")
    elif way == "Esc":
        live.session.take_escape()
    else:
        live.session.repaint()
        live.touch(button("think"))
    assert live.said == "Looking is stopped"
    assert (process.poll() is None, ahead.is_thinking) == (False, False)
    live.session.tick()
    assert not ahead.is_thinking  # the shop is as it was


def test_another_area_ends_its_process(live, qtbot):
    live.session.tick()
    ahead = live.session.desk.ahead
    qtbot.waitUntil(lambda: ahead.running is not None, timeout=SOON_MS)
    process = ahead.running.process
    live.type(write("button", "019"))  # work at popping
    assert process.poll() is not None
    assert (ahead.is_thinking, ahead.thought) == (False, None)
