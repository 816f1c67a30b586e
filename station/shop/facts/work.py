"""The work on its way: batches, slips, piles, and what needs a look."""

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from station.shop.facts.about import Limit
from station.shop.facts.base import Fact, Minutes, Sheets, Shelf, Time, Times
from station.shop.moves import Move
from station.shop.words import Say

BatchRole = Literal["cut", "split", "rework"]
BatchState = Literal["queued", "cutting", "cut", "cancelled"]
SlipState = Literal["between", "popping", "popped", "spoiled"]  # between: two runs
PileArea = Literal["trimming", "rework", "held"]
ConcernTone = Literal["attention", "stop"]


@dataclass(frozen=True, kw_only=True)
class Doubt:
    """A part of a batch that differed from its master or was measured outside its limits.

    It keeps the batch back until `again` readings inside in a row settle it, or a supervisor.
    """

    part: str
    text: str  # what was seen or measured, in words
    size: str = ""  # the name of the size; empty: compared by eye
    again: Times = 0  # readings inside since
    look: str = ""  # the id of the concern that it raised


@dataclass(frozen=True, kw_only=True)
class Batch(Fact):
    """One cut file cut on some number of sheets, or a part of such a batch.

    A child (`parent` set) has no sheets of its own: it was split off, or holds pieces to
    be made good (`tries` counts the attempts). `copy` is the one valid letter of its
    traveller.
    """

    kind: ClassVar[str] = "batch"
    cut_file: str
    revision: str  # letter
    router: str = ""
    sheets: Sheets = 0  # planned
    cut: Sheets = 0  # sheets done, spoiled ones included
    spoiled: Sheets = 0  # of these spoiled
    copy: Annotated[str, Limit(written="letter")] = "A"
    parent: str = ""
    others: tuple[str, ...] = ()  # batches beside its parent that some of its pieces are of
    role: BatchRole = "cut"
    tries: Times = 0
    order: str = ""  # for one order: goes to packing, not to the rack
    due: Time = ""
    why: str = ""  # why it is cut, in words
    state: BatchState = "queued"
    holds: tuple[str, ...] = ()  # why it may not go on
    doubts: tuple[Doubt, ...] = ()  # what must be measured again before it may go on
    looks: tuple[str, ...] = ()  # the ids of the concerns that its holds and doubts have raised
    released: Time = ""
    void: tuple[str, ...] = ()  # copies that are void

    @property
    def shelf(self) -> Shelf:
        """A router's queue by due time; what came of a batch; the batches that are cut."""
        if self.parent:
            return (f"child/{self.parent}", self.id)
        if self.state in ("queued", "cutting"):
            return (f"queue/{self.router}", f"{self.state}/{self.due or '9999'}/{self.id}")
        return (self.state, self.id)

    @property
    def parents(self) -> tuple[str, ...]:
        """The batches that its pieces came from; none where its own sheets were cut."""
        return (self.parent, *self.others) if self.parent else ()

    @property
    def has_sheets(self) -> bool:
        """Whether it has sheets of its own: it was neither split off nor is it made good."""
        return self.role == "cut"

    @property
    def reasons_held(self) -> tuple[str, ...]:
        """Every reason why it may not go on."""
        return (*self.holds, *(d.text for d in self.doubts))

    @property
    def why_held(self) -> str:
        """Why it may not go on, the newest hold first; empty: it may."""
        if self.holds:
            return self.holds[-1]
        return self.doubts[-1].text if self.doubts else ""


@dataclass(frozen=True, kw_only=True)
class Mixed(Fact):
    """Pieces of a batch lie in a batch of another parent; id ``<the other>/<batch>``."""

    kind: ClassVar[str] = "mixed"
    within: str  # the number of the other
    batch: str

    @property
    def shelf(self) -> Shelf:
        """By the batch that the pieces are of."""
        return (f"of/{self.batch}", self.within)


@dataclass(frozen=True, kw_only=True)
class Ran:
    """One run of a sheet that is done: of which revision, where, when, how long."""

    revision: str
    router: str
    at: Time
    minutes: Minutes
    by: str = ""


@dataclass(frozen=True, kw_only=True)
class Slip(Fact):
    """A sheet that came off the bed, by the slip that goes with its parts.

    Its id is ``<batch>-<sheet>``; its pieces lie at ``popping/<sheet>``.
    """

    kind: ClassVar[str] = "slip"
    batch: str
    sheet: Sheets
    router: str
    at: Time
    by: str = ""
    minutes: Minutes = 0.0  # it really took
    state: SlipState = "popping"
    runs: tuple[Ran, ...] = ()  # those done before the one that it tells of; between: all done
    lot: str = ""
    bit: str = ""
    bits: tuple[str, ...] = ()  # all that cut it, where more than one is known; `bit` is the first

    @property
    def cut_by(self) -> tuple[str, ...]:
        """Its bits, as far as they are known: older slips tell the first alone."""
        return self.bits or tuple(filter(None, (self.bit,)))

    @property
    def shelf(self) -> Shelf:
        """Waiting for a run or at popping, oldest first; then what its router cut that day."""
        if self.state in ("between", "popping"):
            return (self.state, f"{self.at}/{self.id}")
        return (f"cut/{self.router}/{self.at[:10]}", f"{self.at}/{self.id}")


@dataclass(frozen=True, kw_only=True)
class Pile(Fact):
    """Pieces of one batch waiting in one area; id ``<area>/<batch>``."""

    kind: ClassVar[str] = "pile"
    area: PileArea
    batch: str
    since: Time
    due: Time = ""
    done: bool = False

    @property
    def shelf(self) -> Shelf:
        """By area and due time while anything is left."""
        return None if self.done else (self.area, f"{self.due or '9999'}/{self.since}")


@dataclass(frozen=True, kw_only=True)
class Concern(Fact):
    """Something that needs a look: settled by a person with a reason.

    `about` is the key of what it concerns (``batch/00412``); `choices` the ways to
    settle it, by name. Where stations were of two minds, `station` and `worker` say whose
    act it was, `first` what was said then, `now` what would be said now, `meant` what was
    to move; `before` is the id of the act that was first, where one is known, and `other`
    what was said to it.
    """

    kind: ClassVar[str] = "concern"
    what: str  # its kind: counted-twice, recount, short, sheet-lost, hold, …
    text: Say | str  # a sentence kept as template and values can be translated
    since: Time
    tone: ConcernTone = "attention"
    about: str = ""
    choices: tuple[str, ...] = ("looked at",)
    settled: str = ""  # how
    settled_at: Time = ""
    reason: str = ""
    by: str = ""
    station: str = ""
    worker: str = ""
    first: Say | str = ""
    now: Say | str = ""
    meant: tuple[Move, ...] = ()
    before: str = ""
    other: Say | str = ""

    @property
    def shelf(self) -> Shelf:
        """Open ones, oldest first; then among what was settled that day."""
        if not self.settled:
            return ("open", f"{self.since}/{self.id}")
        day = self.settled_at[:10]
        return (f"settled/{day}", f"{self.settled_at}/{self.id}") if day else None
