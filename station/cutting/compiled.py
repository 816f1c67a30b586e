"""The one door to numba: inner loops compiled once for this computer and kept.

What is compiled is kept in the user's cache folder, in a folder named by the sources that
it was made from, so that it works where the program's own folder may not be written to
and never outlives a change. Importing this module takes a third of a second: only what
reads or analyses a file does so.
"""

from __future__ import annotations

import hashlib
import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Annotated, Any, TypeVar, cast, get_type_hints

import numba
import numpy as np
from numba.core import config

F = TypeVar("F", bound=Callable[..., object])
Real = Annotated[float, "f8"]
Whole = Annotated[int, "i8"]
HERE = Path(__file__).parent


def _caches() -> list[Path]:
    """Where programs of this user keep what can be made again, best first."""
    home = Path.home()
    if sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA", home / "AppData" / "Local"))
    elif sys.platform == "darwin":
        base = home / "Library" / "Caches"
    else:
        base = Path(os.environ.get("XDG_CACHE_HOME", home / ".cache"))
    return [base / "sheet-to-cart", Path(tempfile.gettempdir()) / "sheet-to-cart"]


def _folder() -> Path | None:
    """The folder of what is compiled from just these sources; None: nothing may be kept."""
    digest = hashlib.sha256()
    for source in sorted(HERE.glob("*.py")):
        digest.update(source.read_bytes())
    for base in _caches():
        folder = base / f"compiled-{digest.hexdigest()[:16]}"
        try:
            folder.mkdir(parents=True, exist_ok=True)
            tempfile.TemporaryFile(dir=folder).close()
        except OSError:
            continue
        return folder
    return None


KEPT = _folder()
if KEPT is not None:
    setattr(config, "CACHE_DIR", str(KEPT))  # noqa: B010 - numba declares no names


def inner(function: F) -> F:
    """Compiled as part of what calls it."""
    return cast("F", numba.njit(nogil=True, error_model="numpy")(function))


def entry(signature: object) -> Callable[[F], F]:
    """Called from Python: compiled for one signature when its module is first loaded, and kept."""

    def compiled(function: F) -> F:
        kept = KEPT is not None
        jit = numba.njit(signature, nogil=True, error_model="numpy", cache=kept)
        return cast("F", jit(function))

    return compiled


def dtype_of(row: type) -> np.dtype[Any]:
    """The numpy record whose fields a class declares as `Annotated[type, code, shape]`."""
    hints = get_type_hints(row, include_extras=True)
    return np.dtype([(name, *hint.__metadata__) for name, hint in hints.items()])
