"""What a screen shows, as data: blocks that `look` paints. No Qt here.

A face has a main pane on the left (the work in hand), one or two side panes on the right
(what comes next) and the row of large buttons under the main pane. Blocks stand below
each other in their pane. Every text is a Say or a plain text from the shop's own data;
every thing that can be touched carries the code that a touch sends.
"""

from dataclasses import dataclass, field
from typing import Literal

from station.shop.facts import Loop, Part, Revision, Shape, Size
from station.shop.strokes import Stroke
from station.shop.words import Say

Text = Say | str
Tone = Literal["", "good", "attention", "stop", "quiet"]


@dataclass(frozen=True, kw_only=True)
class Header:
    """The large head of the work in hand: number, title, a note, a value at the right."""

    label: Text  # "Batch"
    number: str  # "00412", 44 px
    title: Text = ""
    note: Text = ""
    right_label: Text = ""
    right: Text = ""  # "3"
    right_small: Text = ""  # "of 8"


@dataclass(frozen=True, kw_only=True)
class Steps:
    """The way through the shop: (name, note, done | now | next)."""

    items: tuple[tuple[Text, Text, str], ...]


@dataclass(frozen=True, kw_only=True)
class Cell:
    """One cell of a table row."""

    text: Text
    tone: Tone = ""
    bold: bool = False


@dataclass(frozen=True, kw_only=True)
class Press:
    """A button. `style`: primary, plain, off (cannot be pressed), or chosen (of keys)."""

    label: Text
    code: str
    style: str = "plain"
    wide: int = 1  # share of the row


@dataclass(frozen=True, kw_only=True)
class Row:
    """One table row; `code` is sent by a touch; minus/plus are codes beside `counter`."""

    title: Text
    note: Text = ""
    cells: tuple[Cell, ...] = ()
    code: str = ""
    shape: Shape | None = None
    selected: bool = False
    minus: str = ""
    plus: str = ""
    counter: int | None = None  # the column that minus and plus stand around
    done: bool | None = None  # a tick at the end of the row; None: no tick
    fraction: float | None = None  # a bar at the end of the row
    press: Press | None = None  # a button at the end of the row
    known: str | None = None  # typing goes into its last cell, over this text; None: not here


@dataclass(frozen=True, kw_only=True)
class Table:
    """Rows under column heads (the first head stands over the title)."""

    columns: tuple[Text, ...]
    rows: tuple[Row, ...]
    title: Text = ""
    thin: bool = False  # many rows of one line each


@dataclass(frozen=True, kw_only=True)
class Keys:
    """Small buttons in rows of `across`, for what stands beside them; one may be `chosen`."""

    presses: tuple[Press, ...]
    across: int = 3


@dataclass(frozen=True, kw_only=True)
class Check:
    """One item to be ticked. `state`: done, due, later (cannot be ticked yet), wrong."""

    label: Text
    text: Text
    code: str = ""  # what a touch sends; empty: it wants a scan or a number
    state: str = "due"


@dataclass(frozen=True, kw_only=True)
class Checks:
    """A list to be ticked before something can start."""

    title: Text
    items: tuple[Check, ...]


@dataclass(frozen=True, kw_only=True)
class Progress:
    """A large value with a bar: "9 min left on this sheet"."""

    big: Text
    note: Text = ""
    right: Text = ""
    fraction: float = 0.0
    tone: Tone = "good"
    until: tuple[str, str] | None = None  # (start, end): the bar runs on by the clock


@dataclass(frozen=True, kw_only=True)
class NumberMark:
    """A number on a drawn sheet, at a place in mm: of a problem, of a hold-down."""

    number: int
    x_mm: float
    y_mm: float
    tone: Tone = "attention"
    chosen: bool = False


@dataclass(frozen=True, kw_only=True)
class SheetDrawing:
    """The sheet drawn from a revision. `cut`: share of pieces drawn as cut already.

    A touch on it sends a place in mm. `spots` are marks (x, y, tone) in sheet mm;
    `chosen` parts are drawn strongly. `slugs` are what comes loose and is no part; `numbers`
    stand on the pieces, in the order of `placed`; pieces of `flying` are drawn as a warning.
    """

    revision: Revision
    cut: float = 0.0
    note: Text = ""
    spots: tuple[tuple[float, float, Tone], ...] = ()
    chosen: tuple[str, ...] = ()
    touch: bool = False
    marks: tuple[NumberMark, ...] = ()
    slugs: tuple[Loop, ...] = ()
    numbers: tuple[int, ...] = ()
    flying: frozenset[int] = frozenset()


@dataclass(frozen=True, kw_only=True)
class PathDrawing:
    """The path of a bit over the sheet, mm: looked at closely, by layers, and played.

    `bits` are (number, diameter in mm); `bands` the depth in mm at which each band of the
    strokes ends, the first band being number 1; `seconds` the whole path with its pauses.
    `asked` is the n-th thing that was asked of it: play, back, on, speed, in, out, all,
    look (at the mark that is chosen), or "layer 3". Under the strokes lie the pieces of
    `revision` with their tabs, `numbers` in the order of its `placed`, and `slugs`; with
    `comes_off` these alone are drawn, as they come off the sheet. `layers`: a key for each stands
    over it. A touch sends a place in mm, and is where it comes closer then.
    """

    length_mm: float
    width_mm: float
    strokes: tuple[Stroke, ...]
    bits: tuple[tuple[int, float], ...]
    bands: tuple[float, ...]
    seconds: float
    marks: tuple[NumberMark, ...] = ()
    note: Text = ""
    asked: tuple[int, str] = (0, "")
    revision: Revision | None = None
    slugs: tuple[Loop, ...] = ()
    numbers: tuple[int, ...] = ()
    layers: bool = False
    comes_off: bool = False


@dataclass(frozen=True, kw_only=True)
class PartDrawing:
    """A part with its tabs and sizes; the size that is measured now stands out."""

    part: Part
    note: Text = ""
    measured: Size | None = None
    beside: Part | None = None  # one that it differs from by little, drawn at the same scale
    names: tuple[Text, Text] = ("", "")  # over the two


@dataclass(frozen=True, kw_only=True)
class Layer:
    """A rectangle in the mailer, mm from the lower left of the stack.

    The label is that of its level; `piece` says what it is, written on it where there is room.
    """

    label: str
    x_mm: float
    y_mm: float
    length_mm: float
    width_mm: float
    level: int = 0
    piece: str = ""


@dataclass(frozen=True, kw_only=True)
class MailerDrawing:
    """A mailer lying flat with the stack in it."""

    name: str
    length_mm: float
    width_mm: float
    layers: tuple[Layer, ...]


@dataclass(frozen=True, kw_only=True)
class Entry:
    """A card in a list: a large text, one at its right, two lines below."""

    big: Text
    right: Text = ""
    tone: Tone = ""
    line1: Text = ""
    line2: Text = ""
    code: str = ""
    chosen: bool = False


@dataclass(frozen=True, kw_only=True)
class Cards:
    """A list of cards under a title: what waits, what comes next."""

    title: Text
    entries: tuple[Entry, ...]
    empty: Text = ""  # said when there is nothing


@dataclass(frozen=True, kw_only=True)
class Listing:
    """Thin rows of cells under a title; (cells, code that a touch sends or "")."""

    title: Text
    rows: tuple[tuple[tuple[Cell, ...], str], ...]
    empty: Text = ""


@dataclass(frozen=True, kw_only=True)
class Remark:
    """A boxed remark; "Take care" is one with the tone attention. `code` is sent by a touch."""

    tone: Tone
    title: Text
    text: Text
    code: str = ""


@dataclass(frozen=True, kw_only=True)
class Meter:
    """A value with a bar and a remark at the right: a bit's metres."""

    title: Text
    left: Text
    right: Text = ""
    fraction: float = 0.0
    tone: Tone = "good"


@dataclass(frozen=True, kw_only=True)
class Pairs:
    """Label and value, a line each."""

    rows: tuple[tuple[Text, Text], ...]
    title: Text = ""


@dataclass(frozen=True, kw_only=True)
class Hint:
    """The one thing to do next, boxed: "Next: SG-10 · Rack B 07"."""

    title: Text
    right: Text = ""
    note: Text = ""
    tone: Tone = ""


@dataclass(frozen=True, kw_only=True)
class Decision:
    """The one thing to decide first, boxed: what is the matter, what is offered, its button."""

    title: Text  # "Blocks 10 orders: WC-70"
    matter: Text = ""  # in figures
    offer: Text = ""  # "CARDS-SET on Router 5, 3 sheets"
    notes: tuple[Text, ...] = ()  # what it rests on
    press: Press | None = None
    tone: Tone = "attention"


@dataclass(frozen=True, kw_only=True)
class Asked:
    """A number is asked for: the question, what is typed so far, its unit, a keypad."""

    question: Text
    typed: str = ""
    unit: Text = ""
    whole: bool = False  # it has digits alone: no point is typed


@dataclass(frozen=True, kw_only=True)
class Letters:
    """A text is asked for: the question, what is typed so far, keys for letters and digits."""

    question: Text
    note: Text = ""


@dataclass(frozen=True, kw_only=True)
class Place:
    """A work area in the row of Shop today: done, rate, plan, and what waits before it."""

    name: Text
    done: Text
    unit: Text
    rate: Text = ""
    plan: Text = ""
    waiting: int | None = None
    holding_up: bool = False


@dataclass(frozen=True, kw_only=True)
class Places:
    """The work areas side by side."""

    items: tuple[Place, ...]


@dataclass(frozen=True, kw_only=True)
class Flow:
    """Cumulative flow: for each line its name and (hours, pieces) points; highest first."""

    title: Text
    note: Text
    lines: tuple[tuple[Text, tuple[tuple[float, int], ...]], ...]
    start_h: float
    end_h: float
    now_h: float
    plan: int | None = None  # pieces planned by end_h: a dashed line


@dataclass(frozen=True, kw_only=True)
class Band:
    """A router's day: (start hour, end hour, cutting | stopped | idle) and what it does."""

    name: Text
    state: Text
    tone: Tone = ""
    spans: tuple[tuple[float, float, str], ...] = ()


@dataclass(frozen=True, kw_only=True)
class Bands:
    """Each router's day as a band."""

    title: Text
    items: tuple[Band, ...]
    start_h: float
    end_h: float


Block = (
    Header
    | Steps
    | Table
    | Checks
    | Progress
    | SheetDrawing
    | PathDrawing
    | PartDrawing
    | MailerDrawing
    | Cards
    | Listing
    | Remark
    | Meter
    | Pairs
    | Hint
    | Decision
    | Keys
    | Asked
    | Letters
    | Places
    | Flow
    | Bands
)


@dataclass(frozen=True, kw_only=True)
class Face:
    """A whole screen between top bar and strip.

    `beside` puts the last blocks of `main` into a second column inside the main pane
    (the check list beside the sheet); `top` spans the whole width (Shop today).
    """

    title: Text  # "Loading"
    where: Text = ""  # "Router 3 · clamped bed"
    main: tuple[Block, ...] = ()
    beside: tuple[Block, ...] = ()
    presses: tuple[Press, ...] = ()
    middle: tuple[Block, ...] = ()  # a pane of its own between main and side (packing)
    side: tuple[Block, ...] = ()
    top: tuple[Block, ...] = ()
    weights: tuple[int, int, int] = field(default=(71, 0, 29))  # main, middle, side

    @property
    def known(self) -> str:
        """Gives the text that stands where typing goes; empty where there is none."""
        rows = (row for block in self.main if isinstance(block, Table) for row in block.rows)
        return next((row.known for row in rows if row.known), "")

    @property
    def takes_text(self) -> bool:
        """Says whether a text is asked for."""
        return any(isinstance(block, Letters) for block in self.side)
