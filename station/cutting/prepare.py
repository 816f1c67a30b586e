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
from collections.abc import Callable
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


DONE = "ready"
# modules that compile, with the share of the whole time that each takes
PARTS = {
    "read.reader_compiled": 0.4,
    "geometry.moves": 0.48,
    "analyse.time": 0.55,
    "geometry.rings": 0.7,
    "geometry.strokes": 0.78,
    "geometry.shapes": 0.9,
    "analyse.drawing": 1.0,
}


def is_prepared() -> bool:
    """Tells whether a file can be read at once."""
    folder = find_kept_folder()
    return folder is not None and (folder / DONE).exists()


def prepare_reader(progress: Callable[[float], None] | None = None) -> None:
    """Compiles what is not kept yet; `progress` gets the part done, 0 to 1.

    Takes ten seconds or more the first time and under a second later. Where nothing may be
    kept, every start pays for it anew.
    """
    for name, done in PARTS.items():
        import_module(f"station.cutting.{name}")
        if progress:
            progress(done)
    if folder := find_kept_folder():
        (folder / DONE).touch()
