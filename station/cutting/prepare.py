"""Makes the compiled loops ready, once for this computer, and knows whether they are.

What is compiled is kept in the user's cache folder, in a folder named by the sources that it was
made from, and by these alone: it works where the program's own folder may not be written to, and
never outlives a change. Importing this module loads neither numba nor numpy.
"""

from __future__ import annotations

import hashlib
import os
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import cache
from importlib import import_module
from pathlib import Path

HERE = Path(__file__).parent
BASE = ("model.py", "compiled.py")  # what compiled loops take their constants from


def _list_cache_folders() -> list[Path]:
    """Lists where programs of this user keep what can be made again, best first."""
    home = Path.home()
    if sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA", home / "AppData" / "Local"))
    elif sys.platform == "darwin":
        base = home / "Library" / "Caches"
    else:
        base = Path(os.environ.get("XDG_CACHE_HOME", home / ".cache"))
    return [base / "sheet-to-cart", Path(tempfile.gettempdir()) / "sheet-to-cart"]


@cache
def find_kept_folder() -> Path | None:
    """Finds the folder of what is compiled from just these sources; None: nothing may be kept."""
    digest = hashlib.sha256()
    for source in sorted(HERE.rglob("*.py")):
        text = source.read_bytes()
        if source.parent.name == "read" or source.name in BASE or b"cutting.compiled" in text:
            digest.update(text)
    for base in _list_cache_folders():
        folder = base / f"compiled-{digest.hexdigest()[:16]}"
        try:
            folder.mkdir(parents=True, exist_ok=True)
            tempfile.TemporaryFile(dir=folder).close()
        except OSError:
            continue
        return folder
    return None


DONE, UNDER_WAY = "ready", "under-way"
# modules that compile, with the share of the whole time that is over after each
PARTS = {
    "read.reader_compiled": 0.41,
    "geometry.moves": 0.50,
    "analyse.time": 0.60,
    "geometry.rings": 0.71,
    "geometry.strokes": 0.85,
    "geometry.stretches": 0.855,
    "geometry.lost_tabs": 0.86,
    "geometry.edges": 0.95,
    "geometry.shapes": 0.97,
    "analyse.drawing": 1.0,
}
STEPS = 240  # beginnings and ends of functions while all is compiled, about as long each
SILENT_S = 15.0  # who says nothing for so long does not compile any more
LOOK_S = 0.1  # between two looks at how far another one is

Tell = Callable[[float], None]


def is_prepared() -> bool:
    """Tells whether a file can be read at once."""
    folder = find_kept_folder()
    return folder is not None and (folder / DONE).exists()


def prepare_reader(progress: Tell | None = None) -> None:
    """Compiles what is not kept yet; `progress` gets the part done, 0 to 1, which never falls.

    Takes ten seconds or more the first time and under a second later. While another process does
    it, this one waits. Where nothing may be kept, every start pays for it anew.
    """
    furthest, folder = 0.0, find_kept_folder()

    def tell(share: float) -> None:
        nonlocal furthest
        if share > furthest:
            furthest = share
            if progress:
                progress(share)

    if folder and not is_prepared():
        _wait_for_another(folder / UNDER_WAY, tell)
    with _noting(folder and folder / UNDER_WAY, tell) as say:
        _compile(say)
    if folder:
        (folder / DONE).touch()


def _compile(tell: Tell) -> None:
    """Loads what compiles, step by step."""
    from numba.core import event  # noqa: PLC0415 - slow, and only what compiles needs it

    class Counter(event.Listener):
        """Counts the functions that begin to be compiled, and those that are."""

        count = 0

        def on_start(self, _event: object) -> None:
            self.count += 1
            tell(min(self.count / STEPS, 1.0))

        on_end = on_start

    with event.install_listener("numba:compile", Counter()):
        for name, done in PARTS.items():
            import_module(f"station.cutting.{name}")
            tell(done)


@contextmanager
def _noting(note: Path | None, tell: Tell) -> Iterator[Tell]:
    """Keeps the part done in a note as well, for others that wait; takes it away at the end."""

    def tell_both(share: float) -> None:
        if note:
            with suppress(OSError):  # another one reads it just now
                note.write_text(f"{share:.3f}", encoding="ascii")
        tell(share)

    try:
        yield tell_both
    finally:
        if note:
            with suppress(OSError):
                note.unlink()


def _wait_for_another(note: Path, tell: Tell) -> None:
    """Waits as long as another process notes how far it is."""
    before, since = "", time.monotonic()
    while time.monotonic() - since < SILENT_S:
        try:
            now = note.read_text(encoding="ascii")
        except FileNotFoundError:
            return
        except OSError:  # it is written just now
            now = ""
        if now and now != before:
            before, since = now, time.monotonic()
            tell(float(now))
        time.sleep(LOOK_S)
