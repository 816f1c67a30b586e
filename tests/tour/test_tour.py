"""The tour: a day from the printed codes alone, every screen fit at 1366 × 768."""

import os
import subprocess
import sys
import tempfile

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from station.tour import drive


@pytest.mark.long
@pytest.mark.slow
def test_a_day_from_printed_codes_alone(tmp_path, capsys):
    assert drive.run_tour(tmp_path, scanner_only=True, now="2026-11-25T10:42:00") == 0, (
        capsys.readouterr().out
    )
    assert len(list(tmp_path.glob("*.png"))) == len([s for s in drive.STORY if s.shot])
    assert list((tmp_path / "papers").glob("traveller-*.pdf"))


def test_a_click_fails_a_scanner_only_tour(qtbot):
    watch = drive.OnlyScans()
    QApplication.instance().installEventFilter(watch)
    widget = QWidget()
    qtbot.addWidget(widget)
    widget.show()
    QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
    assert "a click" in watch.broken
    watch.broken = ""
    QTest.keyClick(widget, Qt.Key.Key_A)
    assert "a key outside a scan" in watch.broken
    QApplication.instance().removeEventFilter(watch)


@pytest.mark.long
@pytest.mark.skipif(sys.platform in ("win32", "darwin"), reason="always has a display")
@pytest.mark.slow
def test_without_a_display_the_demo_says_so_and_runs_the_tour(tmp_path):
    bare = {k: v for k, v in os.environ.items()
            if k not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}  # fmt: skip
    done = subprocess.run(
        [sys.executable, "-m", "station", "demo", "--data", str(tmp_path), "--now",
         "2026-11-25T10:42:00"],
        env=bare, capture_output=True, text=True, check=False, timeout=300,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    assert "There is no display here, so the tour runs" in done.stdout
    assert (tmp_path / "tour" / "01-good-morning.png").exists()


def test_the_shop_of_a_tour_lies_in_a_folder_of_one_name(tmp_path, monkeypatch):
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    with drive.make_shop_folder() as first, drive.make_shop_folder() as beside:
        assert (first.name, beside.name == first.name) == ("tour-shop", False)
    with drive.make_shop_folder() as again:
        assert again == first
    first.mkdir()
    os.utime(first, (0, 0))  # of a tour that was cut off long ago
    with drive.make_shop_folder() as again:
        assert again == first
    assert list(tmp_path.iterdir()) == []
