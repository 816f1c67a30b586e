"""Words for the screen: templates translated through Qt, then filled with their values."""

from PySide6.QtCore import QCoreApplication

from station.shop.words import Say, filled, plain

Text = Say | str

CONTEXT = "say"


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
