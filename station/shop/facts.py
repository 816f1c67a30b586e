"""What the shop knows, as frozen facts. A rule never changes one: it sets it anew.

A fact has an `id` unique in its kind and may stand on one shelf, the only kind of list
there is: ``shelf`` gives the list's name and the rank in it. Counts are not kept in
facts; they are sums of moves (`station.shop.moves`).

Lengths are millimetres, masses grams, times shop-local ``YYYY-MM-DDTHH:MM:SS`` unless
a name says otherwise.
"""

from dataclasses import dataclass
from typing import ClassVar

from station.shop.words import Say

Shelf = tuple[str, str] | None


@dataclass(frozen=True, kw_only=True)
class Fact:
    """A thing the shop knows, by its id. Its kind is the name it is stored under."""

    kind: ClassVar[str] = "fact"
    id: str

    @property
    def shelf(self) -> Shelf:
        """The list it stands in and its rank there; None when in no list."""
        return ("all", self.id)

    @property
    def key(self) -> str:
        """Its name in the ledger, ``kind/id``."""
        return f"{self.kind}/{self.id}"


@dataclass(frozen=True, kw_only=True)
class Gone(Fact):
    """In an answer's `sets`: the fact `gone` (a key) is no more. Undo uses it."""

    kind: ClassVar[str] = "gone"
    gone: str

    @property
    def shelf(self) -> Shelf:
        """A fact that is gone stands nowhere."""
        return None

    @property
    def key(self) -> str:
        """The key of the fact that goes."""
        return self.gone


# --- settings and people


@dataclass(frozen=True, kw_only=True)
class Shop(Fact):
    """The shop's own settings; there is one, with the id ``shop``."""

    kind: ClassVar[str] = "shop"
    name: str = "Workshop"
    units: str = "mm"  # or "inch": how lengths are shown
    paper: str = "A4"  # or "A5"
    prefix: str = ""  # what the shop's scanners put before a code
    day_checks: tuple[str, ...] = (
        "spoilboard flat and clean",
        "spindle warmed up",
        "air pressure",
        "extraction on",
    )
    day_starts: str = "07:00"
    day_ends: str = "16:00"
    two_people_kg: float = 12.0  # from this mass on: two people or a lift; local limits differ
    caution: str = "Local rules and your safety lead come first."


@dataclass(frozen=True, kw_only=True)
class Worker(Fact):
    """A worker by number. `pin` is an argon2 hash, set for supervisors only."""

    kind: ClassVar[str] = "worker"
    supervisor: bool = False
    pin: str = ""
    active: bool = True


@dataclass(frozen=True, kw_only=True)
class Reason(Fact):
    """A reason on a card. `for_` is what it explains: see REASON_USES in cards."""

    kind: ClassVar[str] = "reason"
    words: str
    use: str  # spoiled, rework, stop, sheet, overrule, correct
    first_off: bool = False  # after a stop for this reason a first-off is due
    rehome: bool = False  # and the router must be re-homed

    @property
    def shelf(self) -> Shelf:
        """One list for each use."""
        return (self.use, self.id)


# --- material


@dataclass(frozen=True, kw_only=True)
class Material(Fact):
    """A sheet good: its nominal thickness, the limits a reading must keep, its size."""

    kind: ClassVar[str] = "material"
    name: str
    thickness_mm: float
    low_mm: float
    high_mm: float
    length_mm: float = 2440.0
    width_mm: float = 1220.0
    density_kg_m3: float = 700.0

    @property
    def sheet_kg(self) -> float:
        """What one sheet weighs, in kilograms."""
        volume_mm3 = self.length_mm * self.width_mm * self.thickness_mm
        return volume_mm3 * 1e-9 * self.density_kg_m3


@dataclass(frozen=True, kw_only=True)
class Lot(Fact):
    """Sheets received together. How many are left is counted in moves (place ``store``)."""

    kind: ClassVar[str] = "lot"
    material: str
    received: str = ""
    mark: str = ""  # why to look twice: "5.8 mm read on router 1"

    @property
    def shelf(self) -> Shelf:
        """By material, oldest first."""
        return (self.material, f"{self.received}/{self.id}")


# --- parts, cut files


@dataclass(frozen=True, kw_only=True)
class Size:
    """One size of a part that is compared with its master. `low`/`high` are limits."""

    name: str  # "A along"
    nominal_mm: float
    low_mm: float
    high_mm: float
    kind: str = "outside"  # outside, inside, pitch, thickness


Loop = tuple[tuple[float, float], ...]  # a closed outline, (x, y) in mm, last joins first


@dataclass(frozen=True, kw_only=True)
class Shape:
    """A flat outline with its holes; lower left of its box at 0, 0."""

    outline: Loop
    holes: tuple[Loop, ...] = ()
    tabs: tuple[tuple[float, float], ...] = ()  # where tabs hold it, on the outline

    @property
    def box(self) -> tuple[float, float]:
        """Length along x and width along y, mm."""
        xs, ys = zip(*self.outline, strict=True) if self.outline else ((0.0,), (0.0,))
        return (max(xs) - min(xs), max(ys) - min(ys))


@dataclass(frozen=True, kw_only=True)
class Part(Fact):
    """A small flat part. `mark`: when the rack falls below it, more is cut."""

    kind: ClassVar[str] = "part"
    name: str  # "HC-300"
    words: str  # "Heddle comb 300"
    rack: str = ""  # id of its rack place
    mark: int = 0
    thickness_mm: float = 6.0
    mass_g: float = 0.0
    shape: Shape | None = None
    sizes: tuple[Size, ...] = ()
    small: bool = False  # trim in a holder
    check_every: int = 20  # one in so many is compared with the master
    active: bool = True

    @property
    def tabs(self) -> int:
        """Tab stubs to trim on one piece."""
        return len(self.shape.tabs) if self.shape else 0


@dataclass(frozen=True, kw_only=True)
class RackPlace(Fact):
    """A place on the rack, under the master of one part."""

    kind: ClassVar[str] = "rack"
    name: str  # "C 14"
    part: str


@dataclass(frozen=True, kw_only=True)
class Placed:
    """One piece on the sheet: which part, where its box's lower left is, how turned."""

    part: str
    x_mm: float
    y_mm: float
    turn_deg: float = 0.0
    mirrored: bool = False
    tabs: tuple[tuple[float, float], ...] = ()  # on the sheet, mm; empty: as its shape


@dataclass(frozen=True, kw_only=True)
class BitUse:
    """What a cut file asks of one bit for one sheet."""

    number: int  # the T number in the file
    diameter_mm: float
    cut_mm: float  # length it is in the cut, a sheet


@dataclass(frozen=True, kw_only=True)
class CutFile(Fact):
    """A cut file by name, and which of its revisions may be cut."""

    kind: ClassVar[str] = "cutfile"
    name: str  # "HC300-SET"
    words: str  # "Heddle comb 300 + shuttles"
    approved: str = ""  # revision letter; empty: none may be cut
    active: bool = True


@dataclass(frozen=True, kw_only=True)
class Revision(Fact):
    """One revision of a cut file, never changed: what it makes and takes, per sheet.

    Its id is ``<cut file id>.<letter>``. `shapes` are the pieces' outlines by part id;
    the drawing of the sheet is made from `placed` alone.
    """

    kind: ClassVar[str] = "revision"
    cut_file: str
    letter: str
    material: str
    minutes: float
    routers: tuple[str, ...] = ()  # ids that can run it; empty: every one
    length_mm: float = 2440.0
    width_mm: float = 1220.0
    shapes: tuple[tuple[str, Shape], ...] = ()
    placed: tuple[Placed, ...] = ()
    bits: tuple[BitUse, ...] = ()
    hold_downs: tuple[tuple[float, float], ...] = ()
    digest: str = ""  # SHA-256 of the text that was approved
    note: str = ""

    @property
    def shelf(self) -> Shelf:
        """By cut file."""
        return (self.cut_file, self.letter)

    def makes(self) -> dict[str, int]:
        """Pieces of each part on one sheet, in the order they are first placed."""
        counts: dict[str, int] = {}
        for piece in self.placed:
            counts[piece.part] = counts.get(piece.part, 0) + 1
        return counts


# --- machines


@dataclass(frozen=True, kw_only=True)
class Router(Fact):
    """A router as it was bought and set up."""

    kind: ClassVar[str] = "router"
    name: str  # "Router 3"
    bed: str = "clamped"  # or "vacuum"
    changer: bool = False  # changes bits itself and keeps their zero
    length_mm: float = 2500.0
    width_mm: float = 1250.0
    rapid_mm_min: float = 20000.0
    accel_mm_s2: float = 800.0
    accel_z_mm_s2: float = 400.0
    corner_mm: float = 0.02
    change_s: float = 120.0  # one tool change
    pace: float = 1.0  # real time over the file's time
    extra_s: float = 0.0  # added a sheet
    active: bool = True


@dataclass(frozen=True, kw_only=True)
class Bed(Fact):
    """What a router is doing now; same id as its router."""

    kind: ClassVar[str] = "bed"
    state: str = "free"  # free, cutting, stopped
    batch: str = ""  # the batch taken on
    sheet: int = 0  # the sheet on the bed while cutting
    lot: str = ""
    started: str = ""
    minutes: float = 0.0  # expected for this sheet
    by: str = ""
    stop: str = ""  # reason id while stopped
    stopped: str = ""  # since
    paused_s: int = 0  # stops since the sheet was started
    bits: tuple[tuple[int, str], ...] = ()  # (T number or pocket, bit id); 0: in the spindle
    first_off: str = ""  # why a first-off check is due before the next sheet
    zero: str = ""  # why zero must be set again
    rehome: str = ""  # why it must be re-homed
    day: str = ""  # date of the last start of day


@dataclass(frozen=True, kw_only=True)
class Bit(Fact):
    """A router bit. Its metres are counted in moves (place ``bit/<id>``)."""

    kind: ClassVar[str] = "bit"
    words: str  # "6.0 mm compression"
    diameter_mm: float
    flutes: int = 2
    life_m: float = 1500.0
    router: str = ""  # where it is; empty: in the drawer
    state: str = "good"  # good, broken, worn

    @property
    def shelf(self) -> Shelf:
        """By router, or with its state in the drawer."""
        return (f"router/{self.router}" if self.router else self.state, self.id)


@dataclass(frozen=True, kw_only=True)
class Notice(Fact):
    """What went wrong with a router's parts, told to it before its next sheet."""

    kind: ClassVar[str] = "notice"
    router: str
    text: str
    at: str
    by: str = ""
    seen: str = ""  # worker who has read it

    @property
    def shelf(self) -> Shelf:
        """By router until read."""
        return None if self.seen else (f"router/{self.router}", self.at)


# --- the work


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
    sheets: int = 0  # planned
    cut: int = 0  # sheets done, spoiled ones included
    spoiled: int = 0  # of these spoiled
    copy: str = "A"
    parent: str = ""
    role: str = "cut"  # cut, split, rework
    tries: int = 0
    order: str = ""  # for one order: goes to packing, not to the rack
    due: str = ""
    why: str = ""  # why it is cut, in words
    state: str = "queued"  # queued, cutting, cut, cancelled
    holds: tuple[str, ...] = ()  # why it may not go on
    released: str = ""
    void: tuple[str, ...] = ()  # copies that are void

    @property
    def shelf(self) -> Shelf:
        """A router's queue by due time; then the batches that are cut."""
        if self.state in ("queued", "cutting"):
            return (f"queue/{self.router}", f"{self.state}/{self.due or '9999'}/{self.id}")
        return (self.state, self.id)


@dataclass(frozen=True, kw_only=True)
class Slip(Fact):
    """A sheet that came off the bed, by the slip that goes with its parts.

    Its id is ``<batch>-<sheet>``; its pieces lie at ``popping/<sheet>``.
    """

    kind: ClassVar[str] = "slip"
    batch: str
    sheet: int
    router: str
    at: str
    by: str = ""
    minutes: float = 0.0  # it really took
    state: str = "popping"  # or "popped"
    lot: str = ""
    bit: str = ""

    @property
    def shelf(self) -> Shelf:
        """Waiting at popping, oldest first; then among what its router cut that day."""
        if self.state == "popping":
            return ("popping", f"{self.at}/{self.id}")
        return (f"cut/{self.router}/{self.at[:10]}", f"{self.at}/{self.id}")


@dataclass(frozen=True, kw_only=True)
class Pile(Fact):
    """Pieces of one batch waiting in one area; id ``<area>/<batch>``."""

    kind: ClassVar[str] = "pile"
    area: str  # trimming, rework, held
    batch: str
    since: str
    due: str = ""
    done: bool = False

    @property
    def shelf(self) -> Shelf:
        """By area and due time while anything is left."""
        return None if self.done else (self.area, f"{self.due or '9999'}/{self.since}")


# --- orders


@dataclass(frozen=True, kw_only=True)
class Product(Fact):
    """What is sold: a list of parts."""

    kind: ClassVar[str] = "product"
    name: str
    words: str
    parts: tuple[tuple[str, int], ...]
    active: bool = True


@dataclass(frozen=True, kw_only=True)
class Line:
    """One line of an order. `short` of the quantity was approved to be owed."""

    product: str
    quantity: int
    short: int = 0


@dataclass(frozen=True, kw_only=True)
class Order(Fact):
    """What must leave, and when."""

    kind: ClassVar[str] = "order"
    lines: tuple[Line, ...]
    due: str
    state: str = "open"  # open, packing, waiting, packed, shipped, cancelled
    claimed: str = ""  # station that packs it
    by: str = ""
    waits: str = ""  # what it waits for, in words

    @property
    def shelf(self) -> Shelf:
        """Open ones by due time; the others by state."""
        live = self.state in ("open", "packing", "waiting")
        return ("open" if live else self.state, f"{self.due}/{self.id}")


@dataclass(frozen=True, kw_only=True)
class Mailer(Fact):
    """A flat mailer: inside size lying flat, the flap already taken off."""

    kind: ClassVar[str] = "mailer"
    name: str
    length_mm: float
    width_mm: float
    thick_mm: float = 40.0  # what it closes over
    mass_g: float = 30.0
    active: bool = True


@dataclass(frozen=True, kw_only=True)
class Pack(Fact):
    """A closed pack. Its pieces lie at ``pack/<id>``, on a cart at ``cart/<cart>``."""

    kind: ClassVar[str] = "pack"
    order: str
    mailer: str
    mass_g: float = 0.0
    closed: str = ""
    by: str = ""
    state: str = "packed"  # packed, cart, shipped, opened
    cart: str = ""
    seen: bool = False  # scanned at the door
    contents: tuple[tuple[str, int], ...] = ()  # part, quantity: what the label says

    @property
    def shelf(self) -> Shelf:
        """Waiting for a cart, on a cart, or shipped."""
        return (f"cart/{self.cart}" if self.state == "cart" else self.state, self.id)


@dataclass(frozen=True, kw_only=True)
class Cart(Fact):
    """A cart to shipping."""

    kind: ClassVar[str] = "cart"
    name: str
    state: str = "here"  # here, door, gone
    goes: str = ""  # usual time, HH:MM
    left: str = ""  # when it last left
    runs: int = 0


@dataclass(frozen=True, kw_only=True)
class Concern(Fact):
    """Something that needs a look: settled by a person with a reason.

    `about` is the key of what it concerns (``batch/00412``); `choices` the ways to
    settle it, by name.
    """

    kind: ClassVar[str] = "concern"
    what: str  # its kind: counted-twice, recount, short, sheet-lost, hold, …
    text: Say | str  # a sentence kept as template and values can be translated
    since: str
    tone: str = "attention"
    about: str = ""
    choices: tuple[str, ...] = ("settled",)
    settled: str = ""  # how
    reason: str = ""
    by: str = ""

    @property
    def shelf(self) -> Shelf:
        """Open ones, oldest first."""
        return ("open", f"{self.since}/{self.id}") if not self.settled else None


@dataclass(frozen=True, kw_only=True)
class Numbers(Fact):
    """The next free number of one kind of code; stations take blocks of it."""

    kind: ClassVar[str] = "numbers"
    next: int = 1


KINDS: dict[str, type[Fact]] = {
    kind.kind: kind
    for kind in (
        Shop,
        Worker,
        Reason,
        Material,
        Lot,
        Part,
        RackPlace,
        CutFile,
        Revision,
        Router,
        Bed,
        Bit,
        Notice,
        Batch,
        Slip,
        Pile,
        Product,
        Order,
        Mailer,
        Pack,
        Cart,
        Concern,
        Numbers,
    )
}
