"""Opening a station: the first run's questions, the session's care for our own bugs."""

import logging
import subprocess
import sys
from types import SimpleNamespace

import pytest
from PySide6.QtCore import QLocale

from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.cutting import prepare
from station.jobs.messages import GetReady
from station.ledger.faults import Fault
from station.look import inspect
from station.look.window import Window
from station.shop.cards import button
from station.shop.facts import Mailer, Material, Reason, Router, Shop
from station.shop.words import say
from station.window import first_run, show
from station.window.session import Session
from tests.replay import Stage
from tests.touch import find_touch

AT = "2026-11-25T07:00:00"


def test_how_far_mending_is_stands_in_the_window_at_once(qtbot):
    window = Window()
    qtbot.addWidget(window)
    window.resize(1366, 768)
    window.show()
    words = say("The shop's file is being mended; entries saved: {n} of {of}", n=3, of=9)
    show.show_words(window)(words)
    texts = inspect.list_texts(window)
    assert str(words) in texts
    assert "Leave this PC on until it is done." in texts
    assert inspect.list_problems(window) == []


FRAME = """
import sys
import station.window.show
print(*sorted({"station.shop.facts", "station.shop.faces", "msgspec"} & set(sys.modules)))
"""


@pytest.fixture
def stage(tmp_path):
    made = Stage(tmp_path)
    yield made
    made.ledger.close()


def test_the_first_run_asks_once_and_keeps_the_answers(stage, qtbot, monkeypatch):
    window = Window()
    qtbot.addWidget(window)
    question = first_run.FirstRun(stage.ledger, window, AT)
    for words in ("Work area", "Loading", "Router 3", "inches"):
        question.take(find_touch(question.make_face(), words))
    where = question.keep()
    assert (where.area, where.router, where.bench) == ("loading", "3", "1")
    shop = stage.ledger.view.get(Shop, "shop")
    assert (shop.paper, shop.units) == ("Letter", "inch")
    monkeypatch.setattr(first_run, "FirstRun", None)
    assert first_run.find_where(stage.ledger, window, AT) == where


@pytest.mark.parametrize(
    ("system", "answers"),
    [
        ("de_AT", {"language": "de", "units": "mm", "paper": "A4"}),
        ("en_US", {"language": "", "units": "inch", "paper": "Letter"}),
        ("en_CA", {"language": "", "units": "mm", "paper": "Letter"}),
        ("fi_FI", {"language": "", "units": "mm", "paper": "A4"}),
    ],
)
def test_an_empty_shop_is_asked_with_the_answers_of_the_system(
    system, answers, tmp_path, qtbot, monkeypatch
):
    window = Window()
    qtbot.addWidget(window)
    monkeypatch.setattr(QLocale, "system", lambda: QLocale(system))
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.set_up_shop(ledger, AT)
        question = first_run.FirstRun(ledger, window, AT)
        assert answers.items() <= question.answered.items()
        assert question.answered["area"] == "office"
        question.keep()
        sheet = ledger.view.get(Material, "1")
    assert (sheet.length_mm == 2438.4) == (answers["units"] == "inch")
    window.set_language("")


def test_a_wrong_answer_of_the_first_run_is_told(stage, qtbot):
    window = Window()
    qtbot.addWidget(window)
    question = first_run.FirstRun(stage.ledger, window, AT)
    question.take("9")
    assert window.strip.said.text() == "There is no answer 9"
    question.take("nonsense")
    assert window.strip.said.text() == "That is no answer"


def test_our_own_bug_is_written_down_and_the_work_goes_on(stage, qtbot, monkeypatch, caplog):
    window = Window()
    qtbot.addWidget(window)
    session = Session(window, stage.desk)
    window.show()
    session.start()
    session.take("W022")

    def broken(_text):
        raise RuntimeError("a bug of ours")

    monkeypatch.setattr(session.desk, "take", broken)
    with caplog.at_level(logging.ERROR):
        session.take("B00900AA")
    assert window.strip.said.text() == "Something is wrong in the program; nothing was counted"
    assert "B00900AA" in caplog.text
    assert "a bug of ours" in caplog.text
    monkeypatch.undo()
    session.take("W03X")
    assert session.answered.said
    session.stop()


def test_what_was_recorded_before_a_bug_of_ours_is_said_to_be(stage, qtbot, monkeypatch, caplog):
    window = Window()
    qtbot.addWidget(window)
    session = Session(window, stage.desk)
    window.show()
    session.start()
    for line in ("@area trimming", "@worker 05", "batch 00900"):
        stage.send(line)

    def broken(_given):
        raise RuntimeError("a bug of ours")

    monkeypatch.setattr(session.certain, "ask_shop", broken)
    with caplog.at_level(logging.ERROR):
        session.take(button("on_rack"))
    assert list(stage.ledger.entries())[-1].kind == "put_on_rack"
    said = "It is recorded, then something went wrong in the program"
    assert window.strip.said.text() == said
    with caplog.at_level(logging.ERROR):
        session.take("@place somewhere")  # recorded nothing: what was said of the last is over
    assert window.strip.said.text() == "Something is wrong in the program; nothing was counted"
    session.stop()


def test_a_station_opens_and_closes(tmp_path, qtbot, monkeypatch):
    application = show.find_application()
    monkeypatch.setattr(type(application), "exec", lambda _self=None: 0)
    monkeypatch.setattr(first_run, "find_where", lambda *_: Where(area="popping"))
    assert show.open_station(tmp_path, Clock(AT)) == 0
    assert (tmp_path / "shop.db").exists()
    logging.getLogger("station").error("a fault of ours")  # the log is made by its first line
    assert "a fault of ours" in (tmp_path / "station.log").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("was", "now"),
    [("loading", "loading"), ("cart", "cart"), ("today", "popping"), ("office", "popping")],
)
def test_a_screen_comes_back_where_it_was_left(stage, was, now):
    stage.send("@worker 02")
    stage.send(f"@area {was}")
    stage.send("@router R2")
    left = bootstrap.find_left(stage.ledger, Where(area="popping", bench="1"))
    assert (left.area, left.router) == (now, "2" if now != "popping" else "")


@pytest.mark.parametrize("prepared", [False, True])
def test_a_pc_gets_ready_to_read_cut_files_at_its_first_opening(qtbot, monkeypatch, prepared):
    begun, stopped = [], []

    def begin(request):
        begun.append(request)
        return SimpleNamespace(is_over=lambda: False, stop=lambda: stopped.append(request))

    monkeypatch.setattr(prepare, "is_prepared", lambda: prepared)
    monkeypatch.setattr(show, "QUIET_MS", 1)
    with show.getting_ready(begin):
        qtbot.wait(50)
        assert begun == ([] if prepared else [GetReady()])
        assert stopped == []
    assert stopped == begun


def too_new(ledger):
    ledger.set_local("format", "99")
    ledger.close()


@pytest.mark.parametrize(
    ("harm", "words"),
    [
        (too_new, "shop.db was written by a newer program (format 99). Update this one first."),
        (
            lambda _: None,
            "Another program has shop.db open. Close that one first, or use it instead.",
        ),
    ],
    ids=["an old program", "a second program"],
)
def test_why_a_station_does_not_open_stands_on_its_window(stage, qtbot, monkeypatch, harm, words):
    """Who clicked an icon reads no console; what is in the file stays as it is."""
    harm(stage.ledger)
    seen = []
    application = show.find_application()

    def until_it_is_closed(_self=None):
        windows = [w for w in application.topLevelWidgets() if isinstance(w, Window)]
        seen.extend(text for w in windows if w.isVisible() for text in inspect.list_texts(w))
        return 0

    monkeypatch.setattr(type(application), "exec", until_it_is_closed)
    monkeypatch.setattr(show, "SILENT", ())
    with pytest.raises(Fault, match=words[:20]):
        show.open_station(stage.ledger.path.parent, Clock(AT))
    assert {words, "Close this window."} <= set(seen)


def test_the_first_run_of_a_pc_that_joined_leaves_the_shop_as_it_is(stage, qtbot):
    window = Window()
    qtbot.addWidget(window)
    question = first_run.FirstRun(stage.ledger, window, AT)
    for words in ("Lengths", "inches"):
        question.take(find_touch(question.make_face(), words))
    question.keep()
    changed = list(stage.ledger.entries())[-1]
    assert (changed.kind, changed.at) == ("set_lists", AT)
    first_run.FirstRun(stage.ledger, window, AT).keep()
    assert stage.ledger.view.get(Shop, "shop").units == "inch"
    assert list(stage.ledger.entries())[-1] == changed


def test_the_frame_waits_for_nothing_that_the_shop_knows():
    ran = subprocess.run([sys.executable, "-c", FRAME], capture_output=True, text=True, check=True)
    assert ran.stdout.split() == []


def test_a_shop_that_opens_in_german_begins_with_german_words(tmp_path, qtbot):
    """Reasons, sheets and mailers are the shop's own from then on: they begin in its language."""
    window = Window()
    qtbot.addWidget(window)
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.set_up_shop(ledger, AT)
        question = first_run.FirstRun(ledger, window, AT)
        question.answered |= {"language": "de", "units": "mm", "paper": "A4"}
        window.set_language("de")
        question.keep()
        view = ledger.view
        said = (
            view.get(Reason, "11").words,
            view.get(Material, "1").name,
            view.get(Router, "1").name,
        )
        assert said == ("Fräser gebrochen", "Birkensperrholz 6,5 mm", "Fräse 1")
        assert view.get(Reason, "11").breaks_bit
        assert (view.get(Material, "1").low_mm, view.get(Mailer, "01").name) == (
            6.0,
            "Flach 250 × 180",
        )
    window.set_language("")


COLLECTS = """
import gc
from station.window import show
show.LOADED_MS = 1
application = show.find_application()
print(gc.isenabled())
while not gc.isenabled():
    application.processEvents()
print(show.find_application() is application, gc.isenabled())
"""


def test_no_garbage_is_looked_for_until_the_station_is_loaded():
    ran = subprocess.run([sys.executable, "-c", COLLECTS], capture_output=True, text=True,
                         check=True, timeout=60)  # fmt: skip
    assert ran.stdout.split() == ["False", "True", "True"]
