"""The history is copied beside the screen: for the office, and for a command beside the window."""

import time
from contextlib import closing

import pytest

from station import bootstrap
from station.commands.open import run_asked
from station.files.backups import TROUBLE, Backups
from station.jobs import process
from station.ledger.ledger import Ledger
from station.shop.cards import button
from station.shop.faces import Pairs, Progress
from station.window.beside import CommandAsked, Reply
from tests.window.ways import on_screen

pytestmark = pytest.mark.slow
EVENING = "2026-11-25T16:00:10"


@pytest.fixture
def live(stage, qtbot):
    """The shop's health in an office whose long work runs in a process of its own."""
    stage.desk = bootstrap.make_desk(
        stage.ledger, bootstrap.Where(area="office"), stage.clock, ids=stage.new_id,
        begin=process.ProcessJob,
    )  # fmt: skip
    for live in on_screen(stage, qtbot):
        live.at("office", "07")
        live.scan("button health")
        yield live


def said(live):
    return str(live.session.answered.said)


def until_over(live, qtbot):
    """Waits until nothing runs beside the screen; gives what that said meanwhile."""
    told = []
    while live.session.desk.underway:
        told += [str(b.note) for b in live.session.desk.face().main if isinstance(b, Progress)]
        qtbot.wait(20)
    return told


def copies(stage):
    return sorted((stage.ledger.path.parent / "files").glob("*"))


def test_the_office_copies_beside_the_screen_and_tells_what_came_of_it(live, qtbot):
    """It was done on the window's thread: 1.5 s where the history has 100,000 entries."""
    ledger, end = live.stage.ledger, live.stage.ledger.witness()
    live.scan("button backup")
    assert (said(live), ledger.is_still) == ("The history is being copied", True)
    live.scan("button backup")
    assert said(live).startswith("The history is being copied, ")
    live.stage.ledger.keep("", "meanwhile/")  # what is written now is not in the copy
    assert until_over(live, qtbot)
    assert said(live) == "The whole history is copied"
    (file,) = copies(live.stage)
    (kept,) = ledger.list_backups()
    assert (kept.witness, ledger.is_still) == (end, False)
    own = next(b for b in live.session.desk.face().side if isinstance(b, Pairs))
    assert "none yet" not in [str(value) for _, value in own.rows]
    again = file.parent.parent / "again" / "shop.db"
    again.parent.mkdir()
    Ledger.restore(file, again)
    with closing(Ledger(again, bootstrap.load_rules(), station="1")) as copied:
        assert (copied.witness(), copied.check()) == (end, [])


def test_what_keeps_the_copy_is_said_in_one_sentence(live, qtbot):
    begin, files = live.session.desk.begin, live.stage.ledger.path.with_name("files")

    def lose(request):
        """The stick is pulled out as the copy is begun."""
        files.rmdir()
        return begin(request)

    live.session.desk.begin = lose
    live.scan("button backup")
    until_over(live, qtbot)
    assert said(live).startswith("The history was not copied: No such file or directory: ")
    assert not live.stage.ledger.is_still
    assert live.stage.ledger.list_backups() == []


def test_where_no_backup_can_be_kept_the_copy_is_made_all_the_same(live, qtbot):
    live.stage.ledger.path.with_name("backups").write_text("a file where the folder should be")
    live.scan("button backup")
    until_over(live, qtbot)
    assert said(live) == "The whole history is copied"
    assert "backups" in live.stage.ledger.local(TROUBLE)


@pytest.mark.parametrize("how", ["stop_reading", "area_popping", "the window is closed"])
def test_one_that_is_stopped_leaves_nothing_half_made(live, how):
    live.scan("button backup")
    if how == "the window is closed":
        live.session.stop()
    else:
        live.session.take(button(how))
        assert "was stopped" in f"{said(live)} {live.session.answered.do}"
    assert (copies(live.stage), live.stage.ledger.is_still) == ([], False)


def test_one_that_breaks_off_lets_the_file_go_on(live, qtbot):
    live.scan("button backup")
    live.session.desk.underway.running.process.kill()
    until_over(live, qtbot)
    assert (copies(live.stage), live.stage.ledger.is_still) == ([], False)


def test_the_evening_s_waits_for_it_and_it_for_the_evening_s(live, qtbot):
    """Else the one that ends first would let the file move below the other."""
    live.scan("button backup")
    evening = Backups(live.stage.ledger, lambda: EVENING, process.ProcessJob)
    evening.step()
    assert (evening._job, live.stage.ledger.list_backups()) == (None, [])
    until_over(live, qtbot)
    for kept in live.stage.ledger.list_backups():
        kept.file.unlink()
    evening.step()
    assert evening._job is not None
    live.scan("button backup")
    assert said(live) == "The history is being copied already"
    while evening._job is not None:
        evening.step()
        qtbot.wait(20)
    assert len(live.stage.ledger.list_backups()) == 1


# --- `station backup`, beside the window


@pytest.fixture
def asked(stage, tmp_path):
    """Asks for a copy to a file, as the command does while the window is open."""
    data = stage.ledger.path.parent
    bootstrap.HELD[data.resolve()] = stage.ledger

    def ask(file):
        words = ["--data", str(data), "backup", str(file)]
        return run_asked(CommandAsked(words=words, folder=str(tmp_path)))

    yield ask
    del bootstrap.HELD[data.resolve()]


def wait_for(later):
    while (reply := later.reply()) is None:
        time.sleep(0.02)
    return reply


def test_a_command_copies_beside_the_window_and_waits_for_the_end(asked, stage, tmp_path):
    first, second = asked("one.db"), asked("two.db")
    assert (first.reply(), second.reply(), stage.ledger.is_still) == (None, None, True)
    stage.ledger.keep("", "meanwhile/")
    assert wait_for(first) == Reply("Backed up to one.db\n", "", 0)
    assert wait_for(second) == Reply("Backed up to two.db\n", "", 0)
    assert not stage.ledger.is_still
    assert sorted(file.name for file in tmp_path.glob("*.db*") if "shop" not in file.name) == [
        "one.db",
        "two.db",
    ]


def test_what_a_command_s_copy_fails_of_is_one_sentence(asked, stage, tmp_path):
    (tmp_path / "stick").mkdir()
    later = asked("stick/one.db")
    (tmp_path / "stick").rmdir()  # it is pulled out before the copy is begun
    reply = wait_for(later)
    assert reply.code == 1
    assert reply.told.startswith("No such file or directory: ")
    assert reply.told.count("\n") == 1
    assert not stage.ledger.is_still
    assert (
        asked(stage.ledger.path).told == f"{stage.ledger.path} holds a shop: name another file.\n"
    )


def test_a_command_whose_window_is_closed_leaves_nothing_half_made(asked, stage, tmp_path):
    later = asked("one.db")
    assert later.reply() is None
    later.stop()
    assert not stage.ledger.is_still
    assert not list(tmp_path.glob("one.db*"))
