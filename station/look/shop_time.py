"""The shop's clock for what moves by itself, smooth between its whole seconds."""

from collections.abc import Callable
from datetime import datetime

from PySide6.QtCore import QElapsedTimer

MOST_S = 0.999  # a clock that stands still carries nothing further than this


class ShopTime:
    """Tells shop time in seconds, from a clock that tells whole ones.

    Without `smooth` nothing moves between them, so that pictures taken again are the same.
    """

    def __init__(self) -> None:
        self.smooth = True
        self.clock: Callable[[], str] = lambda: datetime.now().isoformat(timespec="seconds")
        self._last = ""
        self._since = QElapsedTimer()

    def now(self) -> float:
        """Tells the seconds since some fixed day."""
        told = self.clock()
        if told != self._last:
            self._last = told
            self._since.start()
        if not self.smooth:
            return to_seconds(told)
        return to_seconds(told) + min(self._since.elapsed() / 1000, MOST_S)


def to_seconds(at: str) -> float:
    """Turns a time of the shop into seconds since some fixed day."""
    return (datetime.fromisoformat(at) - FIRST).total_seconds()


FIRST = datetime(2000, 1, 1)
SHOP_TIME = ShopTime()
