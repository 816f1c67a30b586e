"""Turns off what PySide does for its optional features, of which none is used here.

To know who wants them it reads the source of every module that is loaded: an eighth of the time
until a station was ready. So this stands before what it is to spare.
"""

from contextlib import suppress
from types import ModuleType

import PySide6.QtCore  # noqa: F401 - with it comes what is turned off


def _pass_over(_module: ModuleType) -> None:
    """Leaves a module that was loaded unread."""


with suppress(ImportError, AttributeError):  # of another release, which is only slower then
    from shibokensupport import feature  # type: ignore[import-not-found]

    feature.feature_imported = _pass_over
