"""Atkinson Hyperlegible: its zero and O, its one and l differ. Loaded once from its package."""

from functools import cache
from importlib.resources import as_file, files

from PySide6.QtGui import QFont, QFontDatabase

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


@cache
def font(px: int, *, bold: bool = False) -> QFont:
    """The shop's type at a height in pixels, digits of one width."""
    made = QFont(family())
    made.setPixelSize(px)
    made.setBold(bold)
    return made
