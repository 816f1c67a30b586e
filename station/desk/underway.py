"""Work that runs beside the screen, and the hand that it was begun for."""

from dataclasses import replace
from typing import Any

from station.desk.draft import held
from station.shop.acts import Answer
from station.shop.rooms import Begin, Doing, Hand, LongJob
from station.shop.words import Say, say


class JobUnderway:
    """One piece of long work: how far it is, and whether it is still wanted."""

    def __init__(self, long: LongJob, begin: Begin) -> None:
        self.long = long
        try:
            self.running = begin(long.request)
        except BaseException:
            long.is_over()
            raise
        self._held = held(long.hand)

    def is_wanted(self, hand: Hand[Any]) -> bool:
        """Whether the work in hand is still what it was begun for."""
        return held(hand) == self._held

    def doing(self) -> Doing:
        """What is being done, and the part done."""
        stage, share = self.running.progress()
        begins = next(iter(self.long.stages.values()), Say())
        long = self.long
        return Doing(long.stages.get(stage, begins), share, long.title, long.note, long.stop)

    def outcome(self) -> object:
        """Gives what came of it. Raises RuntimeError where it broke off."""
        try:
            return self.running.outcome()
        finally:
            self.long.is_over()

    def stop(self) -> None:
        """Ends it at once; nothing comes of it."""
        self.running.stop()
        self.long.is_over()

    def dropped(self, answer: Answer) -> Answer:
        """The answer to what took its hand away, with the words that it was stopped."""
        self.stop()
        return replace(
            answer, do=say("{next} {what}.", next=answer.do, what=self.long.stopped.said)
        )
