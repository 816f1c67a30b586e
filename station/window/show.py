"""Opens this PC's station: the frame first, everything else after it."""

import gc
import logging
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEventLoop, QObject, Qt, QTimer, Signal, Slot
from PySide6.QtWidgets import QApplication

import station.look.features  # noqa: F401 - first, for all that is loaded behind it
from station.clock import Clock
from station.files.logs import TurningLog
from station.look.sounds import SILENT
from station.look.style import BASE
from station.look.window import Window
from station.shop.words import Say, clock, say

if TYPE_CHECKING:
    from station.files.backups import Begin
    from station.jobs.messages import GetReady
    from station.jobs.process import ProcessJob
    from station.ledger.faults import Fault
    from station.ledger.ledger import Ledger
    from station.papers.page import Page
    from station.printing.printers import Printers
    from station.sharing.loop import Loop
    from station.shop.acts import Answer
    from station.shop.faces import Face
    from station.window.beside import Beside, Commands
    from station.window.scale import ScaleLine
    from station.window.session import Session

QUIET_MS = 2000  # after the frame stands: this PC gets ready beside what it is opened for
OFTEN_MS = 100  # between two looks whether a command was asked for
LOADED_MS = 3000  # from the start; by then all is loaded that a first scan needs
FRAME = 40  # px, a window's title bar at most


MakeCommands = Callable[["Loop | None"], "Commands"]


def open_station(data: Path, at: Clock, commands: MakeCommands | None = None) -> int:
    """Opens this PC's station and runs until its window is closed; gives the exit code.

    `commands` makes what runs a command that is asked for meanwhile.
    """
    application = find_application()
    window = Window()
    window.show_top(
        area=say("Station"), where="", worker="", clock=clock(at()), shared="", shared_ok=True
    )
    fill_screen(window)
    application.processEvents()  # the frame stands before anything heavy is loaded
    from station.ledger.faults import Fault  # noqa: PLC0415 - after the frame

    try:
        return _run_station(window, data, at, commands)
    except Fault as fault:
        if QApplication.platformName() not in SILENT:  # who clicked an icon reads no console
            window.show_face(_explain_fault(fault))
            application.exec()
        raise


def _explain_fault(fault: "Fault") -> "Face":
    """Explains why the station does not open, on its window until that is closed."""
    from station.shop.faces import Face, Hint  # noqa: PLC0415 - only when it is used

    hint = Hint(title=str(fault), note=say("Close this window."), tone="stop")
    return Face(title=say("Station"), main=(hint,))


def _run_station(window: Window, data: Path, at: Clock, commands: MakeCommands | None) -> int:
    """Runs the station in its window."""
    from station import bootstrap  # noqa: PLC0415 - after the frame
    from station.files.backups import keep_before_update  # noqa: PLC0415 - as above
    from station.jobs.process import ProcessJob  # noqa: PLC0415 - only when it is used
    from station.printing.pdf_files import Papers  # noqa: PLC0415 - only when it is used
    from station.printing.printers import Printers  # noqa: PLC0415 - only when it is used
    from station.window import first_run  # noqa: PLC0415 - after the frame
    from station.window.session import Session  # noqa: PLC0415 - only when it is used

    log_into(find_log(data))
    opened = bootstrap.open_ledger(data, tell=show_words(window))
    with getting_ready(ProcessJob), opened as ledger:
        keep_before_update(ledger, at())
        bootstrap.set_up_shop(ledger, at())
        where = first_run.find_where(ledger, window, at())
        if where is None:
            return 0
        where = bootstrap.find_left(ledger, where)

        def tell(news: "Answer") -> None:
            session.say_news(news)  # there is a session before any paper

        def is_alone() -> bool:
            return desk.recorded is None  # nothing was done but that a paper was asked for

        printers = Printers(ledger, window, tell)
        papers = Papers(ledger, data / "papers", at, print_later(printers, is_alone))
        desk = bootstrap.make_desk(ledger, where, at, printer=papers, begin=ProcessJob)
        session = Session(window, desk, bootstrap.make_loop(ledger, data))
        session.start()
        gc.freeze()  # what is loaded by now stays: looking it over for cycles takes 50 ms
        line = listen_to_scale(ledger, session)
        house = keeping_house(ledger, at, ProcessJob)
        with commands_beside(data, session, commands), house as session.when_quiet:
            code = find_application().exec()
        if line is not None:
            line.stop()
        session.stop()
        return code


def show_words(window: Window) -> "Callable[[Say], None]":
    """Shows words in the window before the station is ready, and paints them at once."""
    from station.shop.faces import Face, Hint  # noqa: PLC0415 - only when it is used

    def show(words: Say) -> None:
        hint = Hint(title=words, note=say("Leave this PC on until it is done."), tone="attention")
        window.show_face(Face(title=say("Station"), main=(hint,)))
        find_application().processEvents(QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents)

    return show


@contextmanager
def getting_ready(begin: "Callable[[GetReady], ProcessJob]") -> Iterator[None]:
    """Gets this PC ready to read cut files beside the screen, at its first opening alone."""
    from station.cutting.prepare import is_prepared  # noqa: PLC0415 - after the frame
    from station.jobs.messages import GetReady  # noqa: PLC0415 - as above

    jobs: list[ProcessJob] = []
    timer = QTimer(singleShot=True)
    timer.timeout.connect(lambda: None if is_prepared() else jobs.append(begin(GetReady())))
    timer.start(QUIET_MS)
    try:
        yield
    finally:
        timer.stop()
        for job in jobs:  # what is compiled by then is kept
            if not job.is_over():
                job.stop()


def listen_to_scale(ledger: "Ledger", session: "Session") -> "ScaleLine | None":
    """Lets the scale of this PC send its weights to the session; None: it has none."""
    from station.window.scale import ScaleLine, find_port  # noqa: PLC0415 - only when it is used

    port, speed = find_port(ledger)
    if not port:
        return None
    line = ScaleLine(port, speed, session)
    line.steady.connect(session.take)
    return line


@contextmanager
def keeping_house(ledger: "Ledger", at: Clock, begin: "Begin") -> "Iterator[Callable[[], None]]":
    """Gives what is done by itself while nobody scans: backups, and telling how this PC is."""
    from station.bootstrap import make_id  # noqa: PLC0415 - after the frame
    from station.files.backups import Backups  # noqa: PLC0415 - as above
    from station.files.health import Health  # noqa: PLC0415 - as above

    backups, health = Backups(ledger, at, begin), Health(ledger, at, make_id)

    def step() -> None:
        backups.step()
        health.step()

    try:
        yield step
    finally:
        backups.stop()


class LooksBeside(QObject):
    """Looks whether a command was asked for: now and then, and at once where one knocks."""

    knocked = Signal()  # from another thread

    def __init__(self, session: "Session") -> None:
        super().__init__()
        self._session = session
        self.beside: Beside | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(OFTEN_MS)
        self._timer.timeout.connect(self.look)
        self.knocked.connect(self.look, Qt.ConnectionType.QueuedConnection)

    def start(self, beside: "Beside") -> None:
        """Begins to look."""
        self.beside = beside
        self._timer.start()

    @Slot()
    def look(self) -> None:
        """Runs what was asked for, and shows what it did."""
        if self.beside is not None and self.beside.step():
            self._session.repaint()

    def stop(self) -> None:
        """Looks no more."""
        self._timer.stop()
        if self.beside is not None:
            self.beside.close()
        self.beside = None


@contextmanager
def commands_beside(data: Path, session: "Session", make: MakeCommands | None) -> Iterator[None]:
    """Runs the commands that are asked for while the window is open, and shows what they did."""
    if make is None:
        yield
        return
    from station import bootstrap  # noqa: PLC0415 - after the frame
    from station.window.beside import Beside  # noqa: PLC0415 - as above

    looks = LooksBeside(session)
    try:
        looks.start(Beside(data, make(session.loop), looks.knocked.emit))
    except OSError:  # commands say then that the file is in use, as ever
        logging.getLogger(__name__).exception("no commands beside the window")
        yield
        return
    bootstrap.HELD[data.resolve()] = session.desk.ledger
    try:
        yield
    finally:
        del bootstrap.HELD[data.resolve()]
        looks.stop()


def fill_screen(window: Window) -> None:
    """Fills the screen; without a frame where the frame would leave too little room."""
    # window.screen() would make the screen a child of the window, to be collected with it
    free = QApplication.primaryScreen().availableGeometry()
    if QApplication.platformName() in SILENT:
        window.show()
    elif free.width() >= BASE[0] and free.height() >= BASE[1] + FRAME:
        window.showMaximized()
    else:
        window.showFullScreen()


def find_application() -> QApplication:
    """Finds the one Qt application of this process, or makes it.

    While what follows is loaded no garbage is looked for: nearly all of it stays.
    """
    found = QApplication.instance()
    if isinstance(found, QApplication):
        return found
    gc.disable()
    made = QApplication(["station"])
    QTimer.singleShot(LOADED_MS, gc.enable)
    return made


def print_later(
    printers: "Printers", is_alone: "Callable[[], bool]"
) -> "Callable[[Page, Path], None]":
    """Prints when the answer to the scan stands on the screen, which never waits for paper."""

    def begin(page: "Page", file: Path) -> None:
        alone = is_alone()
        QTimer.singleShot(0, lambda: printers.try_to_print(page, file, alone=alone))

    return begin


def log_into(file: Path) -> None:
    """Writes what goes wrong in the program into a file beside the data."""
    handler = TurningLog(file, "%(asctime)s %(levelname)s %(message)s")
    logging.getLogger("station").addHandler(handler)


def find_log(data: Path) -> Path:
    """Finds where this station's own mistakes are written down."""
    from station.ledger.private import make_folder  # noqa: PLC0415 - after the frame

    make_folder(data)
    return data / "station.log"
