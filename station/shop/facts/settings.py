"""The shop itself: its settings, its people, its reasons, its numbers."""

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from station.shop.facts.about import About
from station.shop.facts.base import RETIRED, Description, Fact, InUse, Name, Shelf, Time
from station.shop.words import say

Units = Literal["mm", "inch"]
Paper = Literal["A4", "A5", "Letter"]
UNITS = {"mm": say("millimetres"), "inch": say("inches")}
PAPERS: tuple[Paper, ...] = ("A4", "A5", "Letter")
# the usual labels of thermal printers, by what their boxes say; common practice, no source
LabelSize = Literal[
    "100x50 mm", "100x100 mm", "100x150 mm", "3x2 in", "4x2 in", "4x3 in", "4x6 in"
]
LABEL: LabelSize = "100x50 mm"
INCH_LABEL: LabelSize = "4x2 in"  # where a shop of inches begins
LABELS: dict[str, tuple[float, float]] = {  # mm, wide and high
    "100x50 mm": (100.0, 50.0),
    "100x100 mm": (100.0, 100.0),
    "100x150 mm": (100.0, 150.0),
    "3x2 in": (76.2, 50.8),
    "4x2 in": (101.6, 50.8),
    "4x3 in": (101.6, 76.2),
    "4x6 in": (101.6, 152.4),
}
ReasonUse = Literal[
    "spoiled", "sheet", "rework", "stop", "overrule", "correct", "repack", "returned", "mailer"
]
AreaName = Annotated[str, About(say("area"))]


@dataclass(frozen=True, kw_only=True)
class Shop(Fact):
    """The shop's own settings; there is one, with the id ``shop``."""

    kind: ClassVar[str] = "shop"
    name: Name = "Workshop"
    units: Annotated[Units, About(say("units"))] = "mm"  # how lengths are shown
    # inches as 64ths where they are, else as decimals
    fractions: Annotated[bool, About(say("inches as fractions"))] = False
    paper: Annotated[Paper, About(say("paper"))] = "A4"
    label: Annotated[LabelSize, About(say("labels"))] = LABEL  # of the packs
    prefix: Annotated[str, About(say("prefix"))] = ""  # what the shop's scanners put before a code
    day_checks: Annotated[
        tuple[Annotated[str, About(say("check"))], ...], About(say("day checks"))
    ] = (
        "spoilboard flat and clean",
        "spindle warmed up",
        "air pressure",
        "extraction on",
    )
    day_starts: Annotated[str, About(say("day starts"), written="clock", given=True)] = "07:00"
    day_ends: Annotated[str, About(say("day ends"), written="clock", given=True)] = "16:00"
    # from when to when nobody works
    breaks: Annotated[
        tuple[
            tuple[
                Annotated[str, About(say("break begins"), written="clock", given=True)],
                Annotated[str, About(say("break ends"), written="clock", given=True)],
            ],
            ...,
        ],
        About(say("breaks")),
    ] = ()
    # days on which nobody works, besides those of the week
    closed: Annotated[
        tuple[Annotated[str, About(say("day"), written="day")], ...], About(say("closed days"))
    ] = ()
    # from this mass on: two people or a lift; common practice, no source, and local limits differ
    two_people_kg: Annotated[float, About(say("two people"), unit="kg", inch_start=25)] = 12.0
    # where lists and copies go; empty: "files" beside this station's data
    folder: Annotated[str, About(say("folder"))] = ""
    # a second folder or stick for each evening's backup; empty: "backups" beside the data alone
    backup_folder: Annotated[str, About(say("second folder of backups"))] = ""
    # pieces: a recount that is farther off asks for a supervisor; common practice, no source
    recount_limit: Annotated[int, About(say("recount limit"), most=999_999)] = 50
    # of uses, those for which what lies on the rack should last; 95 is common practice, no source
    service_percent: Annotated[float, About(say("service level"), unit="%")] = 95.0
    # of pieces, those that orders want sooner than they can be cut: these alone take a stock
    short_notice_percent: Annotated[float, About(say("at short notice"), unit="%")] = 100.0
    caution: Annotated[str, About(say("caution"))] = "Local rules and your safety lead come first."
    first: int = 0  # the issue of the first facts that its own have been brought up to
    # What decides where hands, bits and packs are at stake: common practice, no source, each of
    # them; a shop sets its own.
    # a loose piece smaller than this flies off
    small_piece_mm2: Annotated[
        float, About(say("small piece"), unit="mm²", least=0, inch_start=1)
    ] = 600.0
    # a thinner or lower tab breaks while it is cut
    tab_width_mm: Annotated[
        float, About(say("least tab width"), unit="mm", least=0, inch_start=0.04)
    ] = 1.0
    tab_height_mm: Annotated[
        float, About(say("least tab height"), unit="mm", least=0, inch_start=0.02)
    ] = 0.5
    # from a clamp's middle to every cut
    clamp_reach_mm: Annotated[
        float, About(say("clamp to cut"), unit="mm", least=0, inch_start=0.75)
    ] = 20.0
    # straight down into a sheet, at most
    plunge_mm_min: Annotated[
        float, About(say("fastest plunge"), unit="mm/min", above=0, inch_start=80)
    ] = 2000.0
    # of a bit's diameter, in one pass
    deepest_pass: Annotated[float, About(say("deepest pass, bit widths"), above=0)] = 3.0
    # a tooth, outside of which a cut file is told of; of every bit, so it is wide
    chip_low_mm: Annotated[
        float, About(say("least chip load"), unit="mm", least=0, inch_start=0.001)
    ] = 0.02
    chip_high_mm: Annotated[
        float, About(say("most chip load"), unit="mm", above=0, inch_start=0.03)
    ] = 0.8
    # of its life, from which on a bit is told to be near its end
    bit_told_at: Annotated[float, About(say("bit told at"), unit="%", above=0, most=100)] = 80.0
    # a pack on the scale: how far wood that was weighed once, or only worked out, may be off,
    # for it is more or less dry, and plywood thinner or thicker; and what a scale and a mailer
    # may be off however light the pack is
    weighed_off: Annotated[float, About(say("weighed may be off"), unit="%", least=0)] = 4.0
    worked_out_off: Annotated[float, About(say("worked out may be off"), unit="%", least=0)] = 15.0
    # besides, from lot to lot of sheets, and from piece to piece of a lot
    lot_off: Annotated[float, About(say("lots may be off"), unit="%", least=0)] = 4.0
    piece_off: Annotated[float, About(say("pieces may be off"), unit="%", least=0)] = 0.5
    # of right packs, those that the scale may doubt
    false_alarms: Annotated[
        float, About(say("false weight alarms"), unit="%", least=0.01, most=20)
    ] = 1.0
    scale_off_g: Annotated[
        float, About(say("scale may be off"), unit="g", least=0, inch_start=0.2)
    ] = 5.0
    # below, new ones are bought; 0: they are not counted
    wrap_mark_m: Annotated[float, About(say("minimum of wrap"), unit="m", least=0)] = 0.0
    label_mark: Annotated[int, About(say("minimum of labels"), least=0, most=999_999)] = 0
    # around a stack in its mailer, both sides together; between parts beside each other
    mailer_spare_mm: Annotated[
        float, About(say("spare in a mailer"), unit="mm", least=0, inch_start=0.4)
    ] = 10.0
    part_gap_mm: Annotated[
        float, About(say("between packed parts"), unit="mm", least=0, inch_start=0.04)
    ] = 1.0


@dataclass(frozen=True, kw_only=True)
class Station(Fact):
    """How a PC of the shop was when it told last: its program, its disk, its backups.

    `unshared` counts the acts that the shop did not have yet; `trouble` says why its newest
    backup could not be made. `wrong_pins` were entered when one last had to wait, the newest at
    `pins_at`. `held` is the station that held sharing up last and was cut off, at `held_at`.
    `database` says whether the shop's is ``old`` or ``new`` to its program, where it heard that.
    `older_at` is the time of its newest act that its own file did not know at a start.
    """

    kind: ClassVar[str] = "station"
    version: str = ""
    seen: Time = ""
    unshared: int = 0
    free_mb: int = 0
    backup_at: Time = ""
    trouble: str = ""
    wrong_pins: int = 0
    pins_at: Time = ""
    held: str = ""
    held_at: Time = ""
    database: str = ""
    older_at: Time = ""

    @property
    def shelf(self) -> Shelf:
        """All stations, by number."""
        return ("all", self.id.zfill(3))


@dataclass(frozen=True, kw_only=True)
class Worker(Fact):
    """A worker by number. `pin` is an argon2 hash, set for supervisors only."""

    kind: ClassVar[str] = "worker"
    supervisor: Annotated[bool, About(say("supervisor"))] = False
    pin: str = ""
    active: InUse = True


@dataclass(frozen=True, kw_only=True)
class Reason(Fact):
    """A reason on a card, and what follows from it: no rule knows a reason by its number.

    `areas` are the work areas that offer it (empty: each one that counts for its use),
    `first_at` those that show it before the others, `usual_at` those whose own button counts
    it until another is touched.
    """

    kind: ClassVar[str] = "reason"
    words: Description
    use: Annotated[ReasonUse, About(say("use"))]
    # after a stop, or a sheet spoiled, for this reason a first-off is due
    first_off: Annotated[bool, About(say("first off"))] = False
    rehome: Annotated[bool, About(say("rehome"))] = False  # and the router must be re-homed
    # a sheet spoiled for it: its bit is broken
    breaks_bit: Annotated[bool, About(say("breaks bit"))] = False
    # a stop: parts may lie loose, nobody holds them by hand
    hold_down: Annotated[bool, About(say("hold down"))] = False
    # to rework: the router's spoilboard or Z is told of
    look_at_board: Annotated[bool, About(say("look at board"))] = False
    # a pack was opened or came back for it: that counts against its mailer and stack
    damage: Annotated[bool, About(say("damage"))] = False
    # another mailer was taken for it: that holds this once, nothing is learnt from it
    passing: Annotated[bool, About(say("this once"))] = False
    # before the router runs on: nothing loose lies on its bed
    bed_clear: Annotated[bool, About(say("bed clear"))] = True
    sheet_held: Annotated[bool, About(say("sheet held"))] = True  # and the sheet is held down
    bit_out: Annotated[bool, About(say("bit out"))] = True  # and the bit is out of the wood
    nobody_near: Annotated[bool, About(say("nobody near"))] = True  # and nobody is at the bed
    areas: Annotated[tuple[AreaName, ...], About(say("areas"))] = ()
    first_at: Annotated[tuple[AreaName, ...], About(say("first at"))] = ()
    usual_at: Annotated[tuple[AreaName, ...], About(say("usual at"))] = ()
    active: InUse = True  # false: on no screen any more; what was counted for it stays

    @property
    def shelf(self) -> Shelf:
        """One list for each use; a retired one stands in none."""
        return (self.use if self.active else RETIRED, self.id)

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


@dataclass(frozen=True, kw_only=True)
class Matching(Fact):
    """Which columns of the shop's own files are which fields of a list; `id`: the list's kind."""

    kind: ClassVar[str] = "matching"
    columns: tuple[tuple[str, str], ...]  # (field, column): ("due", "Ship by"), ("lines.0", "SKU")
