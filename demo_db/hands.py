"""The people of the demo shop: they act through the real rules, at believable times.

A process is a generator that yields the minutes until it goes on; `run` takes all
processes of a day in the order of their times. Everything random comes from one source
with a fixed seed.
"""

import heapq
from collections import Counter
from collections.abc import Generator, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from random import Random
from typing import NamedTuple

from station.ledger.ledger import Ledger
from station.shop.acts import Act, Answer, Args, TakeBack, add_known
from station.shop.views import View

Process = Generator[float, None, None]  # yields minutes
Break = tuple[datetime, datetime]  # from when to when nobody works

SUPERVISOR, OFFICE = "01", "6"


class Done(NamedTuple):
    """What an act came to; `id` is its entry's, empty where it was refused."""

    answer: Answer
    id: str

    @property
    def ok(self) -> bool:
        """Whether it was recorded."""
        return bool(self.id)


class Who(NamedTuple):
    """A worker at a station."""

    worker: str
    station: str


BOSS = Who(SUPERVISOR, OFFICE)


@dataclass
class Hands:
    """Acts at the shop's time `at`. What was refused is counted by its words."""

    ledger: Ledger
    rng: Random
    at: datetime
    ends: datetime  # of this working day
    refused: Counter[str] = field(default_factory=Counter)
    done: Counter[str] = field(default_factory=Counter)
    planned: list[str] = field(default_factory=list)  # faults that are to happen soon
    breaks: tuple[Break, ...] = ()  # of this working day

    @property
    def view(self) -> View:
        """The shop as it stands."""
        return self.ledger.view

    @property
    def today(self) -> str:
        """The date."""
        return self.at.date().isoformat()

    def left(self) -> float:
        """Minutes until the day ends."""
        return (self.ends - self.at).total_seconds() / 60

    def chance(self, share: float) -> bool:
        """True in so many cases."""
        return self.rng.random() < share

    def fault(self, name: str, share: float) -> bool:
        """True where this fault was planned, and else in so many cases."""
        if name in self.planned:
            self.planned.remove(name)
            return True
        return self.chance(share)

    def minutes(self, low: float, high: float) -> float:
        """Some time between the two."""
        return self.rng.uniform(low, high)

    @contextmanager
    def beside(self) -> Iterator[None]:
        """Draws what chance says here from a source of its own: all else goes as without it."""
        drawn, self.rng = self.rng, Random(self.done.total())
        yield
        self.rng = drawn

    def do(
        self,
        who: Who,
        subject: str,
        args: Args,
        *,
        numbers: tuple[str, ...] = (),
        why: str = "",
    ) -> Done:
        """An act. What the rule asks for is given: a second scan, the supervisor, `why`."""
        taken = {n: self.ledger.take_number(n) for n in numbers}
        args = add_known(args, Args(numbers=taken))
        answers = {
            "sure": Args(sure=True),
            "supervisor": Args(approved=SUPERVISOR),
            "reason": Args(reason=why),
        }
        for _ in range(4):
            done = self._record(who, subject, args)
            asks = done.answer.asks
            if done.ok or not asks or (asks == "reason" and not why):
                break
            args = add_known(args, answers[asks])
        self._count(args.kind, done)
        return done

    def _record(self, who: Who, subject: str, args: Args) -> Done:
        act = Act(id=self._id(), kind=args.kind, at=self.at.isoformat(timespec="seconds"),
                  worker=who.worker, station=who.station, subject=subject,
                  args=args)  # fmt: skip
        recorded = self.ledger.record(act)
        return Done(recorded.answer, recorded.entry or "")

    def _id(self) -> str:
        return f"{self.rng.getrandbits(64):016x}"

    def _count(self, kind: str, done: Done) -> None:
        if done.ok:
            self.done[kind] += 1
        else:
            self.refused[f"{kind}: {done.answer.said}"] += 1

    def undo(self, who: Who, done: Done, subject: str) -> None:
        """Takes an act back."""
        act = Act(id=self._id(), kind=TakeBack.kind, at=self.at.isoformat(timespec="seconds"),
                  worker=who.worker, station=who.station, subject=subject,
                  args=TakeBack(entry=done.id))  # fmt: skip
        recorded = self.ledger.undo(done.id, act)
        self._count("undo", Done(recorded.answer, recorded.entry or ""))


Waiting = tuple[datetime, int, Process]  # when it goes on, its turn, the process


def start(hands: Hands, processes: Iterable[Process]) -> list[Waiting]:
    """Processes that all begin now."""
    return [(hands.at, n, process) for n, process in enumerate(processes)]


def run(hands: Hands, waiting: list[Waiting], until: datetime) -> list[Waiting]:
    """Runs the processes in the order of their times; gives those still under way."""
    heap = list(waiting)
    heapq.heapify(heap)
    while heap and heap[0][0] <= until:
        at, n, process = heapq.heappop(heap)
        hands.at = max(hands.at, at)
        wait = next(process, None)
        if wait is not None:
            pause = timedelta(seconds=max(1, round(wait * 60)))
            heapq.heappush(heap, (hands.at + pause, n, process))
    hands.at = max(hands.at, until)
    return heap


def rest(hands: Hands, process: Process) -> Process:
    """A person's process, at rest in the breaks: what is begun before one goes on after it."""
    for wait in process:
        ends = hands.at + timedelta(minutes=wait)
        for begins, over in hands.breaks:
            if hands.at < over and ends > begins:
                ends += over - max(begins, hands.at)
        yield (ends - hands.at).total_seconds() / 60


def attend(hands: Hands, process: Process) -> Process:
    """A router's process: it runs on in the breaks, and what is done in one waits for its end.

    The later it was done, the later somebody comes to it.
    """
    for wait in process:
        ends = hands.at + timedelta(minutes=wait)
        for begins, over in hands.breaks:
            if begins <= ends < over:
                ends = over + (ends - begins) / 10
        yield (ends - hands.at).total_seconds() / 60


def before(hands: Hands, process: Process, until: datetime) -> Process:
    """The process up to a time; then it is left as it stands."""
    for wait in process:
        if hands.at + timedelta(minutes=wait) >= until:
            return
        yield wait
