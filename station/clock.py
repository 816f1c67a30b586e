"""The shop's clock."""

from datetime import datetime


class Clock:
    """Tells the shop's time; pinned to one time where a day is replayed."""

    def __init__(self, pinned: str = "") -> None:
        self.pinned = pinned

    def __call__(self) -> str:
        """Tells the shop-local time to the second."""
        return self.pinned or datetime.now().isoformat(timespec="seconds")

    def pin(self, text: str) -> None:
        """Pins the clock. Raises ValueError where the text is no ISO time."""
        self.pinned = (
            datetime.fromisoformat(text).replace(tzinfo=None).isoformat(timespec="seconds")
        )
