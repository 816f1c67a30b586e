"""The shop itself: its settings, its people, its reasons, its numbers."""

from dataclasses import dataclass
from typing import ClassVar, Literal

from station.shop.facts.base import Fact, Shelf

Units = Literal["mm", "inch"]
Paper = Literal["A4", "A5"]
ReasonUse = Literal["spoiled", "sheet", "rework", "stop", "overrule", "correct", "repack"]


@dataclass(frozen=True, kw_only=True)
class Shop(Fact):
    """The shop's own settings; there is one, with the id ``shop``."""

    kind: ClassVar[str] = "shop"
    name: str = "Workshop"
    units: Units = "mm"  # how lengths are shown
    paper: Paper = "A4"
    prefix: str = ""  # what the shop's scanners put before a code
    day_checks: tuple[str, ...] = (
        "spoilboard flat and clean",
        "spindle warmed up",
        "air pressure",
        "extraction on",
    )
    day_starts: str = "07:00"
    day_ends: str = "16:00"
    # from this mass on: two people or a lift; common practice, no source, and local limits differ
    two_people_kg: float = 12.0
    folder: str = ""  # where lists and copies go; empty: "files" beside this station's data
    recount_limit: int = 50  # pieces: a recount that is farther off asks for a supervisor
    caution: str = "Local rules and your safety lead come first."
    first: int = 0  # the issue of the first facts that its own have been brought up to


@dataclass(frozen=True, kw_only=True)
class Worker(Fact):
    """A worker by number. `pin` is an argon2 hash, set for supervisors only."""

    kind: ClassVar[str] = "worker"
    supervisor: bool = False
    pin: str = ""
    active: bool = True


@dataclass(frozen=True, kw_only=True)
class Reason(Fact):
    """A reason on a card, and what follows from it: no rule knows a reason by its number.

    `areas` are the work areas that offer it (empty: each one that counts for its use),
    `first_at` those that show it before the others, `usual_at` those whose own button counts
    it until another is touched.
    """

    kind: ClassVar[str] = "reason"
    words: str
    use: ReasonUse
    first_off: bool = False  # after a stop for this reason a first-off is due
    rehome: bool = False  # and the router must be re-homed
    breaks_bit: bool = False  # a sheet spoiled for it: its bit is broken
    hold_down: bool = False  # a stop: parts may lie loose, nobody holds them by hand
    look_at_board: bool = False  # to rework: the router's spoilboard or Z is told of
    bed_clear: bool = True  # before the router runs on: nothing loose lies on its bed
    sheet_held: bool = True  # and the sheet is held down
    bit_out: bool = True  # and the bit is out of the wood
    nobody_near: bool = True  # and nobody is at the bed
    areas: tuple[str, ...] = ()
    first_at: tuple[str, ...] = ()
    usual_at: tuple[str, ...] = ()
    active: bool = True  # false: on no screen any more; what was counted for it stays

    @property
    def shelf(self) -> Shelf:
        """One list for each use; a retired one stands in none."""
        return (self.use, self.id) if self.active else ("retired", self.id)

    def is_offered(self, area: str) -> bool:
        """Says whether a work area shows it."""
        return not self.areas or area in self.areas


@dataclass(frozen=True, kw_only=True)
class Numbers(Fact):
    """The next free number of one kind of code; stations take blocks of it."""

    kind: ClassVar[str] = "numbers"
    next: int = 1


@dataclass(frozen=True, kw_only=True)
class Spent(Fact):
    """A number that a paper bears though its act does not count: it is never handed out.

    `id` is the act's, with the kind of number; `of` the code's name (``batch/00412``).
    """

    kind: ClassVar[str] = "spent"
    of: str

    @property
    def shelf(self) -> Shelf:
        """A list for each number: more than one act may have had it."""
        return (self.of, self.id)
