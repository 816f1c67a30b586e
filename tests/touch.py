"""Finds what stands on a screen by what it says, as the person who touches it does.

No test names the place of a row: lists get longer, and what matters is what is touched.
"""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from station.shop.codes import Code, read
from station.shop.faces import Face, Listing

NO_ROW = "row_9"  # the last of the printed row cards: no list of the small shop has so many
INSIDE = ("code", "press", "minus", "plus", "style", "state", "tone")


class NotShown(AssertionError):  # noqa: N818 - the screen does not say it
    """Nothing to be touched says these words, or things that differ do."""


def find_touch(face: Face, words: str) -> str:
    """Gives the code of what says `words`: as a whole text of its own, or else within one.

    Raises NotShown where nothing says so, or things of different codes do.
    """
    shown = list(list_touches(face))
    whole = {code for code, texts in shown if words in texts}
    found = whole or {code for code, texts in shown if words in " · ".join(texts)}
    if len(found) != 1:
        each = "\n  ".join(f"{code}: {' · '.join(texts)}" for code, texts in shown)
        raise NotShown(f"{len(found)} things to touch say “{words}”:\n  {each}")
    return found.pop()


def touch(face: Face, words: str) -> Code:
    """Gives what a room is handed when `words` are touched."""
    code = read(find_touch(face, words))
    assert isinstance(code, Code)
    return code


def list_touches(shown: object) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Gives each thing of a screen that can be touched: its code, and the texts on it."""
    if isinstance(shown, Listing):
        yield from ((code, tuple(list_texts(cells))) for cells, code in shown.rows if code)
    elif isinstance(shown, tuple):
        for one in shown:
            yield from list_touches(one)
    elif is_dataclass(shown):
        if code := getattr(shown, "code", ""):
            yield code, tuple(list_texts(shown))
        for field in fields(shown):
            yield from list_touches(getattr(shown, field.name))


def list_texts(shown: object) -> Iterator[str]:
    """Gives the texts of a part of a screen in their order, empty ones left out."""
    if isinstance(shown, str) or hasattr(shown, "template"):
        if str(shown):
            yield str(shown)
    elif isinstance(shown, tuple):
        for one in shown:
            yield from list_texts(one)
    elif is_dataclass(shown):
        for field in fields(shown):
            if field.name not in INSIDE:
                yield from list_texts(getattr(shown, field.name))
