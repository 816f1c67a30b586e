"""How far the mending of a file is, told while it runs: of a long history it takes a while."""

from collections.abc import Callable
from time import monotonic

from station.shop.words import Say, say

OFTEN = 1.0  # seconds between two words


class Progress:
    """Tells how far mending is: once a second at most, so that telling takes no time."""

    def __init__(self, tell: Callable[[Say], None]) -> None:
        self._tell = tell
        self._read = self._saved = 0
        self._due = 0.0  # the first word comes at once

    def read_one(self) -> None:
        """One more entry was read, in the file or beside it."""
        self._read += 1
        if self._is_due():
            self._tell(say("The shop's file is being mended; entries read: {n}",
                           n=self._read))  # fmt: skip

    def save_one(self, of: int) -> None:
        """One more entry was saved of so many."""
        self._saved += 1
        if self._is_due():
            self._tell(say("The shop's file is being mended; entries saved: {n} of {of}",
                           n=self._saved, of=of))  # fmt: skip

    def _is_due(self) -> bool:
        now = monotonic()
        if now < self._due:
            return False
        self._due = now + OFTEN
        return True


def tell_nobody(_words: Say) -> None:
    """Nobody looks on."""
