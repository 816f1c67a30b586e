"""The one door to numba: inner loops compiled once for this computer and kept.

Importing this module takes a third of a second, and the first time of all the modules that use
it take ten seconds or more: only what reads or analyses a file does so (see `prepare`).
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any, TypeVar, cast, get_type_hints

import numba
import numpy as np
from numba.core import config

from station.cutting.prepare import find_kept_folder

F = TypeVar("F", bound=Callable[..., object])
Real = Annotated[float, "f8"]
Whole = Annotated[int, "i8"]
UNCOUNTED: dict[str, Any] = {"_nrt": False}  # numba declares no names of its own

KEPT = find_kept_folder() is not None
if KEPT:
    setattr(config, "CACHE_DIR", str(find_kept_folder()))  # noqa: B010 - numba declares no names


def compile_inner(function: F) -> F:
    """Compiles a function as part of what calls it, anew for every kind of arguments: a whole
    number written out in a call is a kind of its own.

    It must make no arrays and give none: it does not count who uses its arrays, as that took
    most of the time of short functions. Numba refuses one that makes them.
    """
    return cast("F", numba.njit(nogil=True, error_model="numpy", **UNCOUNTED)(function))


def compile_entry(signature: object) -> Callable[[F], F]:
    """Compiles a function for one signature when its module is first loaded, and keeps it.

    It is for what Python calls, and for what is called with many different whole numbers.
    """

    def compiled(function: F) -> F:
        jit = numba.njit(signature, nogil=True, error_model="numpy", cache=KEPT)
        return cast("F", jit(function))

    return compiled


def make_dtype(row: type) -> np.dtype[Any]:
    """Makes the numpy record whose fields a class declares as `Annotated[type, code, shape]`."""
    hints = get_type_hints(row, include_extras=True)
    return np.dtype([(name, *hint.__metadata__) for name, hint in hints.items()])
