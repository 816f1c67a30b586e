"""What is asked of work beside the screen, and what comes back: typed, as JSON on the way.

A request names its job. `Progress` comes back while it is done, then its outcome, once. What is
asked of planning, and what it answers, stands in `station.planning.messages`.
"""

from collections.abc import Callable

import msgspec

from station.planning.messages import CuttingPlan, PlanCutting
from station.shop.cut_text import CutBooks, Laying, TakenAs, TextProblem
from station.shop.facts import Part, ReadAs, Revision, Router, Shop
from station.shop.strokes import PackedPath


class Message(msgspec.Struct, frozen=True, kw_only=True, tag=True):
    """One value on its way from or to the other process, under the name of its type."""


class Progress(Message, frozen=True):
    """How far a job is: the stage it is in, and the part of all done, 0 to 1."""

    stage: str
    share: float


class Failed(Message, frozen=True):
    """What this PC refused: a file it cannot read (why, in its own words), or memory."""

    file: str
    why: str

    def tell(self) -> str:
        """Tells why, and of which file where that is known."""
        return f"{self.why}: {self.file}" if self.file else self.why


# --- a cut file is read for the office


class Pocket(msgspec.Struct, frozen=True):
    """A bit in a router's changer."""

    number: int
    diameter_mm: float
    flutes: int


class ReadCutFile(Message, frozen=True):
    """Read a cut file's text, and work out what it makes and takes."""

    path: str
    cut_file: str  # its id
    material: str  # its id
    thickness_mm: float
    sheet: tuple[float, float]  # mm along x, along y
    router: Router | None  # None: not known, so no time is worked out
    pockets: tuple[Pocket, ...]  # of its changer
    read_as: ReadAs  # what a person said of it; without units a text that has none asks
    parts: tuple[Part, ...]  # those with a shape
    taken: dict[str, str]  # letters of its revisions by the digest of their texts
    cuts_out: bool  # False: a run on the sheets of another file, which cuts no parts out
    shop: Shop  # what it judges cut files by
    spindle_mm: float | None = None  # of the bit in the spindle; None: not known
    hold_downs: tuple[tuple[float, float], ...] = ()  # on the sheet, mm, besides the bed's own


class CutFileRead(Message, frozen=True):
    """The revision as it would be taken in; its new shapes are still without a name."""

    file: str
    revision: Revision
    sizes: dict[str, tuple[float, float]]  # length and width of each shape, mm
    unnamed: list[str]  # shapes that are no part yet
    found: int  # problems in all
    problems: list[TextProblem]  # the first of them
    taken: list[TakenAs]  # what a person may know better
    router: str  # its id; "": not known
    path: PackedPath
    books: CutBooks = CutBooks()  # what all its cuts make
    laying: Laying = Laying()  # how a clamped sheet of it is held and popped


class AlreadyTaken(Message, frozen=True):
    """The text is this revision of the cut file already."""

    letter: str


class Unreadable(Message, frozen=True):
    """The text cannot be read as a cut file: the template of a sentence, and its values."""

    why: str
    values: dict[str, str | int] = {}


class UnitsMissing(Message, frozen=True):
    """The text does not say whether it is in mm or in inches."""


class NothingCutOut(Message, frozen=True):
    """The text cuts no part out of this material."""


# --- a PC gets ready


class GetReady(Message, frozen=True):
    """Get this PC ready to read cut files, once."""


class GotReady(Message, frozen=True):
    """It is ready."""


# --- a backup is kept


class KeepBackup(Message, frozen=True):
    """Keep a backup of a station's file, which is held still, and prove it."""

    path: str
    at: str  # shop-local
    number: int  # of the history's last entry
    digest: str  # of that, as hex
    away: str  # a second folder; empty: none


class BackupKept(Message, frozen=True):
    """It is kept, and holds."""


# --- the history is copied for somebody


class CopyHistory(Message, frozen=True):
    """Copy a station's file, which is held still, into a new one, and prove that."""

    path: str
    to: str
    number: int  # of the history's last entry
    digest: str  # of that, as hex
    keep: KeepBackup | None = None  # the backup that is kept anew with it


class HistoryCopied(Message, frozen=True):
    """It is copied, and the copy holds."""

    trouble: str = ""  # why no backup could be kept with it


Request = ReadCutFile | PlanCutting | GetReady | KeepBackup | CopyHistory
Outcome = (
    CutFileRead
    | AlreadyTaken
    | Unreadable
    | UnitsMissing
    | NothingCutOut
    | CuttingPlan
    | GotReady
    | BackupKept
    | HistoryCopied
    | Failed
)
Report = Callable[[str, float], None]  # a job calls it with its stage and the part done, 0 to 1
