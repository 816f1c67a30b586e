"""The language of the screen: sentences put into it by Qt's own translator.

A language is a file made by Qt's lrelease; a template is looked up in it, then filled.
"""

import logging
from importlib.resources import as_file, files

from PySide6.QtCore import QCoreApplication, QTranslator

from station.shop.words import Say, filled, plain

Text = Say | str

CONTEXT = "say"
LOG = logging.getLogger("station")


def text(words: Text) -> str:
    """A sentence in the language of the screen."""
    if not isinstance(words, Say):
        return words
    if not words.template:
        return ""
    template = QCoreApplication.translate(CONTEXT, words.template)
    return filled(template, words.values, _value)


def _value(value: object) -> str:
    """A value; a sentence inside a sentence is translated too."""
    return text(value) if isinstance(value, Say) else plain(value)


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
