"""The language of the screen: Qt's own translator with a file made by lrelease."""

import logging
from importlib.resources import as_file, files

from PySide6.QtCore import QCoreApplication, QTranslator

LOG = logging.getLogger("station")


class _Tongue:
    """The translator in use; one for the program."""

    translator: QTranslator | None = None
    language = ""


def speak(language: str) -> bool:
    """Translates into a language from now on ("" is English); False where nothing changes."""
    if language == _Tongue.language:
        return False
    if _Tongue.translator:
        QCoreApplication.removeTranslator(_Tongue.translator)
    _Tongue.translator, _Tongue.language = None, language
    found = loaded(language) if language else None
    if found:
        _Tongue.translator = found
        QCoreApplication.installTranslator(found)
    return True


def loaded(language: str) -> QTranslator | None:
    """The translator for a language; None, and a line in the log, where its file is missing."""
    made = QTranslator()
    with as_file(files("resources") / "translations" / f"station_{language}.qm") as file:
        if made.load(str(file)):
            return made
    LOG.warning("no translation file for %r, the screen stays English", language)
    return None
