"""Drives the real screens through one demo day and leaves a picture of every one.

The window is the real one; what a scanner would send is typed into it key by key and
ended by Enter. With `scanner_only` nothing else may happen: any click, and any key that
is not part of a printed code, fails the tour. After each step the window is looked over
for cut text, overlaps and small targets; what is found fails the tour by name.
"""

import shutil
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime, timedelta
from pathlib import Path
from typing import NamedTuple

from PySide6.QtCore import QEvent, QObject, QPoint, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest

from demo_db.build import build
from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.jobs.process import ProcessJob
from station.ledger.ledger import Ledger
from station.look import inspect
from station.look.blocks.drawings import SheetBlock
from station.look.shop_time import SHOP_TIME
from station.look.window import Window
from station.printing import gathering, pdf_files
from station.printing.codes import list_codes
from station.shop import cards, codes
from station.shop.facts import Batch, Bed, Router
from station.tour.story import STORY, TourStep
from station.window.session import Session
from station.window.show import find_application

AT = "2026-11-25T10:42:00"
CUT_OFF_S = 3600


class TourWindow(NamedTuple):
    """The window that a tour is seen in: wide and high in pixels, dark or light."""

    size: tuple[int, int] = (1366, 768)
    dark: bool = False


class TourFailed(Exception):  # noqa: N818 - the sentence says what failed
    """A step that did not do what the day needs, or a screen that is not fit."""


class OnlyScans(QObject):
    """Fails the tour on any mouse button, and on any key outside a scan."""

    def __init__(self) -> None:
        super().__init__()
        self.scanning = False
        self.broken = ""

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        """Watches every event of the application."""
        if isinstance(event, QMouseEvent) and event.type() == QEvent.Type.MouseButtonPress:
            self.broken = f"a click on {watched.objectName() or watched}"
        if event.type() == QEvent.Type.KeyPress and not self.scanning:
            self.broken = f"a key outside a scan at {watched.objectName() or watched}"
        return False


class ShownJob(ProcessJob):
    """A job that stands at three tenths until its picture is taken, the same every time."""

    shown = False

    def progress(self) -> tuple[str, float]:
        """Tells how far it is, once its picture is taken."""
        return super().progress() if self.shown else ("", 0.3)

    def is_over(self) -> bool:
        """Tells whether it has ended; not before its picture is taken."""
        return self.shown and super().is_over()


class Tour:
    """One window, one desk, one demo shop; a step at a time."""

    def __init__(
        self, out: Path, *, scanner_only: bool, at: str, shown: TourWindow = TourWindow()
    ) -> None:
        self.out, self.scanner_only, self.shown = out, scanner_only, shown
        self.clock = Clock()
        self.clock.pin(at or AT)
        self.application = find_application()
        self.shots = 0
        self.problems: list[str] = []
        self.watch = OnlyScans()
        if scanner_only:
            self.application.installEventFilter(self.watch)

    def run(self) -> int:
        """Runs the whole day; gives the exit code."""
        self.out.mkdir(parents=True, exist_ok=True)
        SHOP_TIME.smooth = False
        with make_shop_folder() as folder:
            print("Building the demo shop …", flush=True)  # noqa: T201 - a command prints
            build(folder / bootstrap.FILE, datetime.fromisoformat(self.clock()))
            write_changed_text(folder / "files")
            with bootstrap.open_ledger(folder) as ledger:
                self.ledger = ledger
                ledger.set_local("dark", "yes" if self.shown.dark else "")
                self._open_window()
                for number, step in enumerate(STORY, 1):
                    self._take_step(number, step)
                self._write_cards()
                self.session.stop()
                self.window.close()
        SHOP_TIME.smooth = True
        self.application.removeEventFilter(self.watch)
        return self._say_end()

    def _open_window(self) -> None:
        papers = pdf_files.Papers(self.ledger, self.out / "papers", self.clock)
        self.desk = bootstrap.make_desk(
            self.ledger,
            Where(area="loading", router=find_free_router(self.ledger)),
            self.clock,
            printer=papers,
            begin=ShownJob,
        )
        self.window = Window()
        self.window.resize(*self.shown.size)
        self.session = Session(self.window, self.desk)
        self.window.show()
        self.session.start()
        QTest.qWaitForWindowExposed(self.window)

    def _take_step(self, number: int, step: TourStep) -> None:
        for words in step.scans:
            if words.startswith("@"):
                self._wait_for(words)
                continue
            for text in step.codes(words, self.ledger, self.desk):
                self.scan_code(text, words)
        self.session.repaint()
        self.application.processEvents()
        self.look_over(step.name)
        if step.shot:
            self.shots += 1
            self.window.grab().save(str(self.out / f"{self.shots:02d}-{step.name}.png"))
        if step.tone and self.session.answered.tone != step.tone:
            said = self.session.answered
            raise TourFailed(f"step {number} {step.name}: {said.said} / {said.do}")

    def _wait_for(self, words: str) -> None:
        """Waits for what passes without a scan: minutes, a job, a picture that moves."""
        if words == "@done":
            self._end_job()
        elif words == "@tap":
            self._tap_piece()
        elif words == "@thought":
            self._end_thought()
        elif words == "@shown":
            QTest.qWait(300)
        else:
            later = datetime.fromisoformat(self.clock()) + timedelta(minutes=int(words[7:]))
            self.clock.pin(later.isoformat())

    def _end_thought(self) -> None:
        """What the room thinks about by itself is thought to its end."""
        while self.desk.ahead.is_thinking:
            if isinstance(self.desk.ahead.running, ShownJob):
                self.desk.ahead.running.shown = True
            QTest.qWait(50)

    def _end_job(self) -> None:
        """The work beside the screen may go on, and does until it is over."""
        assert self.desk.underway is not None
        job = self.desk.underway.running
        assert isinstance(job, ShownJob)
        job.shown = True
        while self.desk.underway is not None:
            QTest.qWait(50)

    def _tap_piece(self) -> None:
        """Touches a piece of the drawn sheet; with a scanner alone, it scans its zone's card."""
        drawn = next(b for b in self.window.findChildren(SheetBlock) if b.isVisible())
        if self.scanner_only or drawn.block is None:
            self.scan_code(codes.write("zone", "55"), "zone 55")
            return
        sheet, part = drawn.block.revision, self.desk.hand.work.part
        piece = next(p for p in reversed(sheet.placed) if p.part == part)
        size = dict(sheet.shapes)[piece.part].box if piece.part in dict(sheet.shapes) else (0, 0)
        x, y = piece.x_mm + min(size) / 2, piece.y_mm + min(size) / 2
        at = QPoint(
            round(1 + x * drawn.pixels_per_mm()),
            round(1 + (sheet.width_mm - y) * drawn.pixels_per_mm()),
        )
        QTest.mouseClick(drawn, Qt.MouseButton.LeftButton, pos=at)

    def scan_code(self, text: str, words: str) -> None:
        """Types a code as a scanner does. In a scanner-only tour it must be printed."""
        if self.scanner_only and text not in self.list_printed():
            raise TourFailed(f"{words} ({text}) is on no card and no paper")
        self.watch.scanning = True
        QTest.keyClicks(self.window, text)
        QTest.keyClick(self.window, Qt.Key.Key_Return)
        self.application.processEvents()
        self.watch.scanning = False
        if self.watch.broken:
            raise TourFailed(f"scanner only, but {self.watch.broken}")

    def list_printed(self) -> set[str]:
        """Lists every code that a card or paper of this shop carries now."""
        return {str(row["code"]) for row in list_codes(self.ledger)}

    def look_over(self, name: str) -> None:
        """Notes what is not fit on the screen as it stands."""
        self.problems += [f"{name}: {problem}" for problem in inspect.list_problems(self.window)]

    def _write_cards(self) -> None:
        """Writes every card and list as PDF."""
        folder = self.out / "papers"
        folder.mkdir(exist_ok=True)
        for kind, names in (
            ("badges", ("",)),
            ("part_cards", ("",)),
            ("thing_cards", ("",)),
            ("button_cards", (*list_areas(), "all")),
        ):
            for name in names:
                paper = gathering.make_paper(self.ledger, kind, name, self.clock())
                if paper:
                    (folder / f"{kind}{'-' if name else ''}{name}.pdf").write_bytes(
                        paper.write_pdf()
                    )

    def _say_end(self) -> int:
        for problem in dict.fromkeys(self.problems):
            print(problem)  # noqa: T201 - a command
        print(f"{self.shots} pictures in {self.out}, {len(set(self.problems))} problems")  # noqa: T201 - a command prints
        return 1 if self.problems else 0


@contextmanager
def make_shop_folder() -> Iterator[Path]:
    """Gives a folder of the same name every time: one picture shows it.

    Where it is there already, another tour is at work in it, and this one takes any name. What
    a tour that was cut off has left is not in the way for longer than an hour.
    """
    folder = Path(tempfile.gettempdir()) / "tour-shop"
    try:
        if folder.exists() and time.time() - folder.stat().st_mtime > CUT_OFF_S:
            shutil.rmtree(folder)
        folder.mkdir()
    except OSError:
        folder = Path(tempfile.mkdtemp())
    try:
        yield folder
    finally:
        shutil.rmtree(folder)


def write_changed_text(folder: Path) -> None:
    """Writes a text for the office to read: a demo cut file with one feed too fast."""
    import demo_db  # noqa: PLC0415 - the builder is heavy

    text = (Path(demo_db.__file__).parent / "cut_files" / "HC300-SET-C.nc").read_text("ascii")
    folder.mkdir(parents=True, exist_ok=True)
    changed = text.replace("REVISION C", "REVISION E").replace("F8000", "F38000", 1)
    (folder / "HC300-SET-E.nc").write_text(changed, "ascii")


def find_free_router(ledger: Ledger) -> str:
    """Finds a router that stands free with batches in its queue."""
    for router in ledger.facts(Router):
        bed = ledger.view.get(Bed, router.id)
        if ledger.view.shelf(Batch, f"queue/{router.id}") and (bed is None or bed.state == "free"):
            return router.id
    return "1"


def list_areas() -> tuple[str, ...]:
    """Lists the areas that have cards of their own."""
    return tuple(dict.fromkeys(card.area for card in cards.BUTTONS.values()))


def run_tour(out: Path, *, scanner_only: bool, now: str, shown: TourWindow = TourWindow()) -> int:
    """Runs the tour; gives the exit code."""
    try:
        return Tour(out, scanner_only=scanner_only, at=now, shown=shown).run()
    except TourFailed as failed:
        print(f"The tour stopped: {failed}")  # noqa: T201 - a command prints
        return 1
