"""This shop's health at the real window, and a restore played there until the next start."""

import pytest
from PySide6.QtWidgets import QApplication

from station import bootstrap
from station.floor.anywhere.acts import TellHealth
from station.ledger.ledger import Ledger
from station.look import inspect
from station.shop.acts import Act
from station.shop.facts import Concern
from tests.replay import PIN
from tests.touch import find_touch

pytestmark = pytest.mark.slow  # paints the real window

EVENINGS = [f"2026-11-{day}T16:00:00" for day in range(10, 25)]
STATIONS = (
    TellHealth(version="0.0.9", unshared=0, free_mb=250, backup_at="2026-11-24T16:00:00"),
    TellHealth(version="0.1.0", unshared=12, free_mb=99_000, backup_at="", trouble="no stick"),
)


def touch(screen, words):
    """Touches what on the screen says so."""
    screen.touch(find_touch(screen.session.desk.face(), words))


def find_wrong(screen, *words):
    """Finds what is cut on the screen, here and in German, and which words do not stand there."""
    found = []
    for language in ("de", ""):
        screen.window.set_language(language)
        screen.session.repaint()
        QApplication.processEvents()
        found += inspect.list_problems(screen.window)
    said = " ".join(" ".join(inspect.list_texts(screen.window)).split())
    return found + [one for one in words if one not in said]


def test_each_pc_and_what_is_not_well_with_it_stands_on_one_page(screen):
    screen.window.resize(1366, 768)
    for number, args in enumerate(STATIONS, 2):  # beside this PC, which tells by itself
        told = Act(
            id=f"of {number}", kind=args.kind, at=EVENINGS[-1], station=f"{number}", args=args
        )
        assert screen.stage.ledger.record(told).entry
    screen.at("office", "07")
    touch(screen, "Shop's health")
    wrong = find_wrong(
        screen,
        "0.0.9", "0.2 GB free", "24 Nov 16:00", "none", "12",
        "Station 2: the disk is nearly full, 250 MB left",
        "Station 2: its program 0.0.9 is older than 0.1.0",
        "Station 3 makes no backup: no stick",
    )  # fmt: skip
    assert wrong == []


def test_a_backup_is_gone_back_to_by_touches_and_the_next_start(screen):
    screen.window.resize(1366, 768)
    ledger, folder = screen.stage.ledger, screen.stage.ledger.path.parent
    kept = [ledger.keep_backup(at) for at in EVENINGS][-1]
    screen.at("trimming", "04")
    screen.scan("traveller 00900", "button hold")
    assert list(ledger.facts(Concern))
    screen.at("office", "07")
    touch(screen, "Shop's health")
    touch(screen, "Restore a backup")
    assert (
        find_wrong(screen, "Which backup?", "24.11.2026 16:00", kept.name, "Kept on this PC") == []
    )
    touch(screen, kept.name)
    assert screen.said == "Supervisor's work"
    screen.scan("worker 07")
    for sign in PIN:
        screen.scan(f"digit {sign}")
    screen.scan("button enter")
    assert find_wrong(screen) == []
    screen.scan("button yes")
    assert screen.said == f"The next start goes back to {kept.name}"
    assert list(ledger.facts(Concern))  # nothing has changed yet
    screen.session.stop()
    ledger.close()
    with bootstrap.open_ledger(folder) as again:
        assert list(again.facts(Concern)) == []
        assert again.check() == []
    assert list(folder.glob("shop.db.before-*"))  # what was there until then
    screen.stage.ledger = Ledger(ledger.path, bootstrap.load_rules())
    screen.session.desk.ledger = screen.stage.ledger
