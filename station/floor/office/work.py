"""Holds what is open in the office: a list, a form, a question beside it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from station.shop.cut_text import CutBooks, Laying, TakenAs, TextProblem
from station.shop.facts import Revision
from station.shop.field_texts import Rows
from station.shop.file_requests import OpenCutFile
from station.shop.rooms import Hand, Work
from station.shop.strokes import PackedPath
from station.shop.words import Say, length, say

# The question that is open: about a release, sheets received, a count, files to choose from,
# the rows of a field that is a list, a cut file to be taken in, what is missing in a new shop,
# the sheets that were not made.
Ask = Literal["", "release", "sheets", "count", "files", "lines", "cut", "missing", "unmade",
              "health", "restore", "search", "columns", "would"]  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Releasing:
    """Holds what was said of a batch that is released."""

    router: str = ""
    order: str = ""
    due: str = ""


@dataclass(frozen=True, kw_only=True)
class Counting:
    """Holds what is counted, and where."""

    about: str = ""  # the key of a part, a rack place, a lot or a batch
    spot: int | None = None  # the row of the place


@dataclass(frozen=True, kw_only=True)
class FilesFound:
    """Holds which files lie there, and what is wrong in the one that was read."""

    folder: str = ""
    names: tuple[str, ...] = ()  # newest first
    problems: tuple[Say | str, ...] = ()  # by line; as text in what older programs kept
    read: str = ""  # the file that they are in; empty: several


@dataclass(frozen=True, kw_only=True)
class OwnPc:
    """Holds how this PC is, as it was looked at."""

    version: str
    free_mb: int
    backup_at: str  # empty: none
    newest_at: str  # when the newest act was recorded
    entries: int


@dataclass(frozen=True, kw_only=True)
class ColumnsAsked:
    """Holds what is known of the columns of a file, and what taking it in would do."""

    file: str = ""  # its name; empty: every list of the folder is taken in
    kind: str = ""  # the list that it is; empty: not known yet
    header: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()  # the first ones, as examples
    matched: dict[str, str] = field(default_factory=dict)  # the column of each field
    slot: str = ""  # the field whose column is asked
    seen: str = ""  # the fingerprint of what was shown
    would: tuple[Say, ...] = ()  # what would change, in a line each


@dataclass(frozen=True, kw_only=True)
class EditedRows:
    """Holds the rows of the list field that is being edited."""

    field: str = ""
    rows: Rows = ()
    item: int | None = None  # the chosen row; with none an input begins a new one
    column: int = 0  # where the next input goes


# length and width of a shape, mm; drafts of older programs have them as a text
ShapeSize = tuple[float, float] | str


def say_size(size: ShapeSize) -> Say | str:
    """Says length and width of a shape in the shop's unit."""
    if isinstance(size, str):
        return size
    long, wide = (length(side, 1) for side in size)
    return say("{l} × {w} mm", l=long, w=wide)


@dataclass(frozen=True, kw_only=True)
class ReadText:
    """Holds what was read of a cut file; a shape that is no part yet is called ``new0``."""

    file: str
    revision: Revision
    sizes: Mapping[str, ShapeSize]
    unnamed: tuple[str, ...]  # shapes that are no part yet
    found: int  # problems in all
    router: str  # its id; "": not known
    path: PackedPath
    parts: dict[str, str] = field(default_factory=dict)  # names of new parts by shape
    chosen: tuple[str, ...] = ()  # parts of the shop that somebody said a shape is
    told: tuple[TextProblem, ...] = ()  # the first of the problems, the gravest before others
    taken: tuple[TakenAs, ...] = ()  # what a person may know better
    books: CutBooks = CutBooks()  # what all its cuts make
    laying: Laying = Laying()  # how a clamped sheet of it is held and popped


@dataclass(frozen=True, kw_only=True)
class Intake:
    """Holds what is known of the cut file that is taken in."""

    material: str = ""
    which: OpenCutFile | None = None  # what was to be read, while its units are asked
    read: ReadText | None = None
    opened: OpenCutFile | None = None  # what was read, to be read again otherwise
    drawn: bool = False  # its path is looked at
    layers: bool = False  # with keys for its layers
    comes_off: bool = False  # what comes off the sheet is drawn instead of the path
    how: str = ""  # how it is read is looked at: "list", or the number of the row that is asked
    holding: bool = False  # its hold-downs are looked at
    held: int | None = None  # the hold-down that is moved
    problem: int = 0  # the one that is looked at, from 1
    asked: tuple[int, str] = (0, "")  # how often the path was asked for something, and what


@dataclass(frozen=True, kw_only=True)
class OfficeWork(Work):
    """Holds the list, the form and the question that are open."""

    # the kind of fact that is listed; empty: nothing was opened yet, so orders, or what is missing
    list: str = ""
    search: str = ""  # what the list's rows have; empty: all of it is shown
    page: int = 0
    chosen: str = ""  # the fact whose form is open; empty: a new one
    form: dict[str, object] | None = None  # what was given so far, by field; None: not open
    field: str = ""  # where the next input goes
    batch: str = ""  # whose traveller was scanned
    look: str = ""  # the id of what tells of the unmade sheet that is chosen
    dropped: str = ""  # the path of a cut file that was dropped, until it is read
    ask: Ask = ""
    releasing: Releasing = Releasing()
    counting: Counting = Counting()
    found: FilesFound = FilesFound()
    own_pc: OwnPc | None = None
    columns: ColumnsAsked = ColumnsAsked()
    editing: EditedRows = EditedRows()
    intake: Intake = Intake()

    @property
    def takes_text(self) -> bool:
        """A field of the form is chosen, or a row of one that is a list."""
        return (self.form is not None and bool(self.field)) or self.ask == "search"

    @property
    def is_begun(self) -> bool:
        """Whether a form, a question or a count is open; a list that is looked at is nothing."""
        return self.form is not None or bool(self.ask or self.batch or self.dropped)

    @classmethod
    def renamed(cls, kept: Mapping[str, Any]) -> Mapping[str, Any]:
        """Gives what older programs kept its place: all of it stood side by side."""
        now: dict[str, Any] = {}
        for name, value in kept.items():
            group, today = _MOVED.get(name, ("", name))
            (now.setdefault(group, {}) if group else now)[today] = value
        if isinstance(now.get("list"), int):
            now["list"] = _ONCE_IN_ORDER[now["list"]]
        return now


# where older programs kept what, and what it is called there today
_MOVED: Mapping[str, tuple[str, str]] = {
    **{name: ("releasing", name) for name in ("router", "order", "due")},
    **{name: ("counting", name) for name in ("about", "spot")},
    **{name: ("found", name) for name in ("folder", "problems")},
    "files": ("found", "names"),
    **{name: ("editing", name) for name in ("item", "column")},
    "lines": ("editing", "field"),
    "items": ("editing", "rows"),
    **{name: ("intake", name) for name in ("material", "which", "asked")},
    "cut": ("intake", "read"),
    "path": ("intake", "drawn"),
}
# and the lists in the order in which they stood when a list was kept by its position
_ONCE_IN_ORDER = (
    *("order", "cutfile", "part", "product", "rack", "material", "lot", "router"),
    *("bit", "mailer", "cart", "worker", "reason", "revision", "shop"),
)


OfficeHand = Hand[OfficeWork]
WORK = OfficeWork
