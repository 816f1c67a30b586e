"""Work that runs beside the screen, and the hand that it was begun for."""

from dataclasses import replace
from typing import Any

from station.desk.draft import held
from station.shop.acts import Answer
from station.shop.rooms import Doing, Hand, LongJob, RunningJob
from station.shop.words import Say, say


class JobUnderway:
    """One piece of long work: how far it is, and whether it is still wanted."""

    def __init__(self, long: LongJob, running: RunningJob) -> None:
        self.long, self.running = long, running
        self._held = held(long.hand)

    def is_wanted(self, hand: Hand[Any]) -> bool:
        """Whether the work in hand is still what it was begun for."""
        return held(hand) == self._held

    def doing(self) -> Doing:
        """What is being done, and the part done."""
        stage, share = self.running.progress()
        begins = next(iter(self.long.stages.values()), Say())
        return Doing(self.long.stages.get(stage, begins), share)

    def dropped(self, answer: Answer) -> Answer:
        """The answer to what took its hand away, with the words that it was stopped."""
        self.running.stop()
        return replace(
            answer, do=say("{next} {what}.", next=answer.do, what=self.long.stopped.said)
        )
