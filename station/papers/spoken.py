"""The language of a paper: that of the PC that prints it, told before a paper is made."""

from collections.abc import Callable

from station.shop.cautions import say_local
from station.shop.facts import Shop
from station.shop.lengths import THOUSANDS
from station.shop.words import Say, fill_in

Text = Say | str
NO_BREAK = "\u00a0"  # in the place of a narrow space, which the type of papers does not have


def _keep(template: str) -> str:
    return template


class _Spoken:
    """Holds how a template is found in the language of the papers; one for the program."""

    find_template: Callable[[str], str] = staticmethod(_keep)


def speak(find_template: Callable[[str], str] = _keep) -> None:
    """Has papers speak a language from now on, by its templates; English where none is given."""
    _Spoken.find_template = staticmethod(find_template)


def tell(words: Text) -> str:
    """Puts words into the language of the papers; a text is the shop's own and stays."""
    told = fill_in(words, _Spoken.find_template) if isinstance(words, Say) else words
    return told.replace(THOUSANDS, NO_BREAK)


def tell_caution(shop: Shop) -> str:
    """Tells the shop's own caution; the one that a shop starts with in the paper's language."""
    return tell(say_local(shop))


def join(*words: Text, by: str = " · ") -> str:
    """Joins what there is of some words into one line."""
    return by.join(filter(None, map(tell, words)))
