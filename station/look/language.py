"""The language of the screen: sentences put into it by Qt's own translator.

A language is a file made by Qt's lrelease; a template is looked up in it, then filled.
"""

import logging
from functools import partial

from PySide6.QtCore import QCoreApplication, QTranslator

from station.shop.lengths import use_decimals
from station.shop.words import Say, fill_in

Text = Say | str

CONTEXT = "say"
FIND_TEMPLATE = partial(QCoreApplication.translate, CONTEXT)  # in the language in use
LOG = logging.getLogger("station")


def translate(words: Text) -> str:
    """Puts a sentence into the language of the screen."""
    return fill_in(words, FIND_TEMPLATE) if isinstance(words, Say) else words


class _InUse:
    """Holds the translator in use; one for the program."""

    translator: QTranslator | None = None
    language = ""


def find_language() -> str:
    """Gives the language in use; "" is English."""
    return _InUse.language


def set_language(language: str) -> bool:
    """Translates into a language from now on ("" is English); False where nothing changes."""
    if language == _InUse.language:
        return False
    if _InUse.translator:
        QCoreApplication.removeTranslator(_InUse.translator)
    _InUse.translator, _InUse.language = None, language
    use_decimals(language)
    found = load_translator(language) if language else None
    if found:
        _InUse.translator = found
        QCoreApplication.installTranslator(found)
    return True


def load_translator(language: str) -> QTranslator | None:
    """Loads the translator of a language; None, and a line in the log, without its file."""
    from importlib.resources import as_file, files  # noqa: PLC0415 - English needs no file

    made = QTranslator()
    with as_file(files("resources") / "translations" / f"station_{language}.qm") as file:
        if made.load(str(file)):
            return made
    LOG.warning("no translation file for %r, the screen stays English", language)
    return None
