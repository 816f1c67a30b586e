"""Long work beside the screen: a large cut file is read, the screen stays live, it is stopped."""

import time

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from station import bootstrap
from station.bootstrap import Where
from station.jobs import process
from station.jobs.read_cut_file import STAGES
from station.shop.cards import button
from station.shop.faces import Progress
from tests.floor.test_intake import TEXTS, folder_with, new_cut_file
from tests.window.ways import on_screen

LARGE = 20_000_000  # bytes, at least


def large_text(size):
    """One part cut out, and engraving enough for a file of so many bytes."""
    head = ["G21 G90 G17", "T1 M6", "S18000 M3", "G0 X50 Y50 Z5", "G1 Z-9.2 F800"]
    head += [f"G1 X{x} Y{y} F4000" for x, y in ((150, 50), (150, 90), (50, 90), (50, 50))]
    wave = "".join(
        f"X{300 + k * 1.113:.3f} Y{200 + k % 7:.3f} F{3000 + k % 3}\n" for k in range(60)
    )
    line = f"G0 Z5\nG0 X300 Y200\nG1 Z-1 F900\n{wave}"
    return "\n".join(head) + "\n" + line * (size // len(line) + 1) + "G0 Z5\nM30\n"


BIRCH = "touch 6.5 mm birch plywood"

pytestmark = [pytest.mark.slow, pytest.mark.usefixtures("compiled")]


@pytest.fixture
def live(stage, qtbot):
    """A screen whose long work runs in a process of its own."""
    stage.desk = bootstrap.make_desk(
        stage.ledger, Where(area="office"), stage.clock, ids=stage.new_id,
        begin=process.ProcessJob,
    )  # fmt: skip
    yield from on_screen(stage, qtbot)


def reading(live, name="large.nc", text=None):
    """A cut file's form is open, and this file is being read for it."""
    folder = folder_with(live.stage)
    (folder / name).write_text(text or large_text(LARGE), encoding="utf-8")
    new_cut_file(live.stage)
    live.scan("button read_file", BIRCH, f"touch {name}")
    assert str(live.session.answered.said) == f"{name} is being read"


def said(live):
    return str(live.session.answered.said)


def until_over(live, qtbot):
    """What the screen said of it meanwhile: (what, percent)."""
    told = []
    while live.session.desk.underway:
        block = next(b for b in live.session.desk.face().main if isinstance(b, Progress))
        told.append((str(block.note), int(str(block.big).split()[0])))
        qtbot.wait(30)
    return told


def test_the_screen_answers_while_a_large_file_is_read(live, qtbot):
    reading(live)
    desk, longest, scans = live.session.desk, 0.0, 0
    began = before = time.perf_counter()
    told = [(str(b.note), b.fraction) for b in desk.face().main if isinstance(b, Progress)]
    while desk.underway:
        live.scan(f"worker 0{2 + scans % 2}")
        assert desk.hand.worker == f"0{2 + scans % 2}"
        told += [(str(b.note), b.fraction) for b in desk.face().main if isinstance(b, Progress)]
        scans += 1
        qtbot.wait(50)
        longest, before = max(longest, time.perf_counter() - before), time.perf_counter()
    assert said(live).startswith("large.nc")
    assert desk.hand.work.intake.read.file == "large.nc"
    assert scans > 5
    whole = time.perf_counter() - began
    assert longest < max(0.5, whole / 4)  # seconds; busy computers are slow at everything
    stages = list(dict.fromkeys(note for note, _ in told if note))
    assert stages == [
        str(STAGES[s]) for s in ("read", "work_out", "draw") if str(STAGES[s]) in stages
    ]
    assert len(stages) > 1
    assert [share for _, share in told] == sorted(share for _, share in told)


@pytest.mark.parametrize("how", ["Esc", "its card", "put down", "its button", "another area"])
def test_a_reading_that_is_stopped_leaves_nothing_behind(live, qtbot, how):
    reading(live)
    running, before = live.session.desk.underway.running, live.session.desk.hand.work
    qtbot.waitUntil(lambda: running.progress()[1] > 0, timeout=20_000)
    began = time.perf_counter()
    if how == "Esc":
        QTest.keyClick(live.window, Qt.Key.Key_Escape)
    elif how == "its button":
        live.touch(button("stop_reading"))
    else:
        live.scan({"its card": "button stop_reading", "put down": "button put_down",
                   "another area": "button area_popping"}[how])  # fmt: skip
    assert time.perf_counter() - began < 1
    assert running.process.poll() is not None
    assert live.session.desk.underway is None
    stopped = "Reading large.nc was stopped"
    if how == "another area":
        assert stopped in str(live.session.answered.do)
        assert not live.session.desk.hand.has_work
    else:
        assert said(live) == stopped
        assert live.session.desk.hand.work == before
    after = live.session.desk.hand
    qtbot.wait(400)  # nothing comes of it later
    assert live.session.desk.hand == after


def test_what_else_is_asked_of_the_office_waits(live):
    reading(live)
    for asks in ("button list_part", "button read_file", "button save", "part 061"):
        live.scan(asks)
        assert said(live).startswith("A cut file is being read, ")
    assert live.session.desk.underway


def test_a_reading_does_not_outlive_a_power_cut_or_the_window(live):
    reading(live)
    running = live.session.desk.underway.running
    live.session.stop()
    assert running.process.poll() is not None
    live.stage.send("restart")
    assert live.stage.desk.underway is None
    assert live.stage.desk.hand.work.found.names == ("large.nc",)


def test_a_reading_that_breaks_off_is_our_own_bug(live, qtbot, caplog):
    reading(live)
    live.session.desk.underway.running.process.kill()
    until_over(live, qtbot)
    assert said(live).startswith("Something is wrong in the program")
    assert "it ended with" in caplog.text
    assert live.session.desk.hand.work.found.names == ("large.nc",)


def test_a_file_that_goes_away_is_told(live, qtbot):
    folder_with(live.stage, "ST120-SET-A.nc")
    new_cut_file(live.stage)
    live.scan("button read_file", BIRCH)
    chosen = live.code_of("touch ST120-SET-A.nc")
    (folder_with(live.stage) / "ST120-SET-A.nc").unlink()
    live.session.take(chosen)
    until_over(live, qtbot)
    assert "ST120-SET-A.nc: No such file" in said(live)


def test_a_file_of_a_hundred_megabytes_is_read(live, qtbot):
    reading(live, text=large_text(100_000_000))
    assert until_over(live, qtbot)
    assert said(live).startswith("large.nc")
    assert live.session.desk.hand.work.intake.read.unnamed == ("new0",)


# --- dropped on the window


def drop(live, *urls):
    """Drags these addresses over the window and lets go."""
    mime, window = QMimeData(), live.window
    mime.setUrls([QUrl(u) if "://" in u else QUrl.fromLocalFile(u) for u in urls])
    over, keys = QPoint(200, 200), Qt.KeyboardModifier.NoModifier
    copy, left = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton
    enter = QDragEnterEvent(over, copy, mime, left, keys)
    QApplication.sendEvent(window, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(window, QDropEvent(QPointF(over), copy, mime, left, keys))


def test_a_cut_file_is_dropped_on_its_form(live, qtbot):
    new_cut_file(live.stage)
    drop(live, str(TEXTS / "ST120-SET-A.nc"))
    assert said(live) == "Cut from which material?"
    live.scan(BIRCH)
    assert said(live) == "ST120-SET-A.nc is being read"
    until_over(live, qtbot)
    assert said(live) == "ST120-SET-A.nc is read"
    assert not live.session.desk.hand.work.dropped


def test_a_cut_file_is_dropped_in_the_office_and_asked_where_it_belongs(live, qtbot):
    number = new_cut_file(live.stage)
    live.scan("button list_part")
    drop(live, str(TEXTS / "ST120-SET-A.nc"))
    assert said(live) == "ST120-SET-A.nc is here"
    live.session.take("NEW-SET")
    live.scan(BIRCH)
    until_over(live, qtbot)
    assert said(live) == "ST120-SET-A.nc is read"
    assert live.session.desk.hand.work.intake.read.revision.cut_file == number


def test_a_cut_file_is_dropped_for_a_new_one(live, qtbot):
    new_cut_file(live.stage)
    live.scan("button list_cutfile")
    drop(live, str(TEXTS / "ST120-SET-A.nc"))
    live.scan("button new")
    for text in ("DROPPED", "Dropped", button("save")):
        live.session.take(text)
    live.scan("button read_file", BIRCH)
    until_over(live, qtbot)
    assert said(live) == "ST120-SET-A.nc is read"


@pytest.mark.parametrize(
    ("urls", "words", "do"),
    [
        (("A.nc", "B.nc"), "2 files at once", "Drop one cut file at a time."),
        (("folder",), "folder is a folder", "Open it, then drop one cut file."),
        (("notes.pdf",), "notes.pdf is no cut file by its name", "Drop one that ends in .nc"),
        (("none",), "none is no cut file by its name", "Drop one that ends in .nc"),
        (("gone.nc",), "gone.nc: No such file or directory", "Drop a file that is there."),
        (("https://a.example/A.nc",), "That is no file of this PC", "Drop a cut file from one"),
    ],
)
def test_what_is_dropped_in_vain_is_told(live, tmp_path, urls, words, do):
    new_cut_file(live.stage)
    before = live.session.desk.hand.work
    (tmp_path / "folder").mkdir()
    for name in ("A.nc", "B.nc", "notes.pdf", "none"):
        (tmp_path / name).touch()
    drop(live, *(u if "://" in u else str(tmp_path / u) for u in urls))
    assert said(live).removeprefix(f"{tmp_path}/") == words
    assert str(live.session.answered.do).startswith(do)
    assert live.session.desk.hand.work == before


def test_a_text_that_cuts_nothing_is_told_after_reading(live, qtbot, tmp_path):
    (tmp_path / "notes.txt").write_text("G21 G90\nG0 Z10\nG0 X50 Y50\nM30\n", encoding="utf-8")
    new_cut_file(live.stage)
    drop(live, str(tmp_path / "notes.txt"))
    live.scan(BIRCH)
    until_over(live, qtbot)
    assert said(live) == "notes.txt cuts no part out of 6.5 mm"
    live.scan("touch 9 mm birch plywood")  # of another material, perhaps
    assert said(live) == "notes.txt is being read"
    live.scan("button stop_reading")
    assert live.session.desk.hand.work.intake.read is None
    assert live.session.desk.hand.work.chosen


def test_files_are_taken_in_at_the_office_alone(live):
    live.at("popping")
    drop(live, str(TEXTS / "ST120-SET-A.nc"))
    assert said(live) == "Files are taken in at the office"


def test_a_form_that_is_not_saved_is_kept(live):
    new_cut_file(live.stage)
    live.scan("button list_part", "button new")
    live.session.take("A-1")
    drop(live, str(TEXTS / "ST120-SET-A.nc"))
    assert said(live) == "What was typed is not saved yet"
    assert live.session.desk.hand.work.form["name"] == "A-1"
