"""Acts that two stations must not both do: the strip tells once the shop has said so.

The person may go on meanwhile; after two seconds without a word the strip says how it stands.
"""

from collections.abc import Callable

from station.desk.desk import Given
from station.ledger.ledger import Ledger
from station.shop.acts import Answer, attention
from station.shop.words import say

PATIENCE = 2.0  # seconds


class CertainAct:
    """Follows the newest such act here until its verdict is known or told as unknown."""

    def __init__(self, ledger: Ledger, clock: Callable[[], float]) -> None:
        self._ledger, self._clock = ledger, clock
        self._given: Given | None = None
        self._until = 0.0

    def ask_shop(self, given: Given) -> Answer:
        """Says at once that the shop is asked, where the act waits for its word."""
        self._given = given if given.certain and given.entry else None
        if self._given is None:
            return given.answer
        self._until = self._clock() + PATIENCE
        return attention(say("Asking the shop: {what}", what=given.answer.said), say("A moment."))

    def find_verdict(self) -> Answer | None:
        """Finds what is to be said now: the answer once it holds; None while nothing is new."""
        if self._given is None or self._given.entry is None:
            return None
        given, verdict = self._given, self._ledger.verdict(self._given.entry)
        if verdict == "asking" and self._clock() < self._until:
            return None
        self._given = None
        if verdict == "holds":
            return given.answer
        if verdict == "look":
            return None  # that was said when it turned
        return attention(
            say("The shop has not said yet: {what}", what=given.answer.said),
            say("Do something else first. The strip tells when somebody was before you."),
        )
