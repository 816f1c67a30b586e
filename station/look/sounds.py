"""The sound of an answer: small files of our own, played without holding up a scan.

Windows plays a file by itself; on Linux and macOS one of the system's own players is
started from a thread of its own. Where none is there the system's beep stands in.
"""

import logging
import shutil
import sys
import threading
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

if TYPE_CHECKING:
    from queue import Queue

    from station.shop.acts import Answer

LOG = logging.getLogger("station")
PLAYERS = (("pw-play",), ("paplay",), ("aplay", "-q"), ("afplay",))
SILENT = ("offscreen", "minimal")  # platforms without a person before them
AGAIN_MS = 220  # between the two beeps of a refusal
LONGEST_S = 5.0  # a player that takes longer hangs
WAITING = 2  # sounds that wait; more would come too late to mean anything


def choose_sound(answer: "Answer") -> str:
    """Chooses the sound of an answer: good, ask, refuse or look."""
    if answer.tone == "good":
        return "good"
    if answer.asks or answer.tone == "ask":
        return "ask"
    return "refuse" if answer.tone == "stop" else "look"


def find_player() -> tuple[str, ...]:
    """Finds the command that plays a file on this PC; empty for none."""
    return next((p for p in PLAYERS if shutil.which(p[0])), ())


class Sounds:
    """Plays the sound of an answer, unless it is muted."""

    def __init__(self) -> None:
        self.muted = False
        self._wanted: Queue[str] | None = None  # made with the thread
        self._thread: threading.Thread | None = None
        self._failed = False  # from then on: the system's beep

    def play_answer(self, answer: "Answer") -> None:
        """Asks for the sound of an answer and returns at once."""
        if self.muted or QApplication.platformName() in SILENT:
            return
        name = choose_sound(answer)
        if self._failed:
            _beep(name)
            return
        if self._wanted is None:
            from queue import Queue  # noqa: PLC0415 - the first window is not kept waiting

            self._wanted = Queue(WAITING)
            play, given = self._play_waiting, (self._wanted,)
            self._thread = threading.Thread(target=play, args=given, name="sounds", daemon=True)
            self._thread.start()
        if not self._wanted.full():
            self._wanted.put(name)

    def _play_waiting(self, wanted: "Queue[str]") -> None:
        """Plays one sound after the other, in the thread, until one fails."""
        from importlib.resources import as_file, files  # noqa: PLC0415 - as above
        from subprocess import SubprocessError  # noqa: PLC0415 - as above

        while not self._failed:
            name = wanted.get()
            try:
                with as_file(files("resources") / "sounds" / f"{name}.wav") as file:
                    _play_file(file)
            except (OSError, RuntimeError, SubprocessError) as why:
                self._failed = True
                LOG.warning("no sounds here, the system's beep stands in: %s", why)


def _play_file(file: Path) -> None:
    """Plays a file to its end. Raises OSError, RuntimeError or SubprocessError."""
    if sys.platform == "win32":
        import winsound  # noqa: PLC0415 - there is none elsewhere

        winsound.PlaySound(str(file), winsound.SND_FILENAME | winsound.SND_NODEFAULT)
        return
    import subprocess  # noqa: PLC0415 - as above

    command = find_player()
    if not command:
        raise FileNotFoundError(f"none of {', '.join(p[0] for p in PLAYERS)} is installed")
    subprocess.run([*command, str(file)], check=True, capture_output=True, timeout=LONGEST_S)  # noqa: S603 - our own file, a player found by name


def _beep(name: str) -> None:
    """Beeps as the system does: not when all is well, twice for a refusal."""
    if name == "good":
        return
    QApplication.beep()
    if name == "refuse":
        QTimer.singleShot(AGAIN_MS, QApplication.beep)
