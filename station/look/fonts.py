"""Atkinson Hyperlegible: its zero and O, its one and l differ. Loaded once from its package."""

from functools import cache
from importlib.resources import as_file, files

from PySide6.QtGui import QFont, QFontDatabase, QFontMetrics

from station.look.style import px

PACKAGE = "fontpkg_atkinson_hyperlegible"
FAMILY = "Atkinson Hyperlegible"


@cache
def family() -> str:
    """The family's name, or the system's own where the package is missing."""
    try:
        folder = files(PACKAGE) / "files"
    except ModuleNotFoundError:
        return QFont().family()
    for weight in ("Regular", "Bold"):
        with as_file(folder / f"AtkinsonHyperlegible-{weight}.ttf") as path:
            QFontDatabase.addApplicationFont(str(path))
    return FAMILY


def font(size: int, *, bold: bool = False) -> QFont:
    """The shop's type at a height in pixels on the smallest screen."""
    return font_of(px(size), bold)


@cache
def font_of(high: int, bold: bool) -> QFont:  # noqa: FBT001 - the key of a cache
    """The shop's type at a height in pixels on this screen."""
    made = QFont(family())
    made.setPixelSize(high)
    made.setBold(bold)
    return made


@cache
def metrics_of(high: int, bold: bool) -> QFontMetrics:  # noqa: FBT001 - the key of a cache
    """How wide and tall that type is."""
    return QFontMetrics(font_of(high, bold))
