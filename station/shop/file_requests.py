"""What a room asks for that needs the files of this PC.

Rules and dialogues touch no file: a dialogue gives a `FileJob` with one of these, and what
`station.files` has for its type does it.
"""

from dataclasses import dataclass

from station.shop.facts import ReadAs
from station.shop.rooms import Took


@dataclass(frozen=True, kw_only=True)
class BackUp:
    """Copy the whole history into a new file."""


@dataclass(frozen=True, kw_only=True)
class LookAtPc:
    """Look how this PC is, and tell the shop."""


@dataclass(frozen=True, kw_only=True)
class FindBackups:
    """Find the backups that are kept on this PC."""


@dataclass(frozen=True, kw_only=True)
class FindLists:
    """Find the CSV files in the shop's folder."""


@dataclass(frozen=True, kw_only=True)
class WriteList:
    """Write a list into a new CSV file: all facts of a kind."""

    kind: str


@dataclass(frozen=True, kw_only=True)
class OrderRow:
    """One thing to order: how many, by which day, and from what that follows."""

    what: str
    quantity: int
    by: str  # a day, ISO
    lasts_days: float | None  # worked days that what is there or comes lasts; None: can't tell
    lead_days: int  # worked days that an order takes
    lead_known: bool = True  # False: the usual days are taken
    bit_mm: float = 0.0  # diameter, where it is a bit of no name
    price: float = 0.0  # of one; 0: not known
    coming: int = 0  # on their way already


@dataclass(frozen=True, kw_only=True)
class WriteOrderList:
    """Write what to order as a page and as a CSV file."""

    rows: tuple[OrderRow, ...]
    at: str  # the shop's time of these figures


@dataclass(frozen=True, kw_only=True)
class ReadList:
    """Read a CSV file of the shop's folder: shown first, then taken in.

    `kind` and `matched`: which list it is, and the column of each field, where somebody said so.
    `seen`: the fingerprint of what was shown and is to be taken in; empty: it is only shown.
    """

    file: str
    kind: str = ""
    matched: tuple[tuple[str, str], ...] = ()
    seen: str = ""


@dataclass(frozen=True, kw_only=True)
class ReadLists:
    """Read the newest CSV file of every list in the shop's folder: shown first, then taken in.

    `seen`: the fingerprint of what was shown and is to be taken in; empty: it is only shown.
    """

    seen: str = ""


@dataclass(frozen=True, kw_only=True)
class FindCutFiles:
    """Find the cut files in the shop's folder."""


@dataclass(frozen=True, kw_only=True)
class LookAtDropped:
    """Look whether what was dropped on the window can be a cut file."""

    path: str


@dataclass(frozen=True, kw_only=True)
class OpenCutFile:
    """Read a cut file of the shop's folder, or one that was dropped, as a new revision."""

    cut_file: str  # its id
    material: str  # its id
    file: str = ""  # in the shop's folder
    path: str = ""  # of one that was dropped
    read_as: ReadAs | None = None  # None: as the text of its newest revision was
    hold_downs: tuple[tuple[float, float], ...] = ()  # on the sheet, mm


@dataclass(frozen=True, kw_only=True)
class ProveText:
    """Look whether the folder that a router runs its texts from has the approved one."""

    folder: str
    digest: str  # of the approved text
    letter: str  # of its revision
    proven: Took  # what follows where it is there
