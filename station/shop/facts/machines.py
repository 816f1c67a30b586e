"""Routers, what they do now, their bits."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Annotated, ClassVar, Literal

from station.shop.facts.about import About, Limit
from station.shop.facts.base import (
    RETIRED,
    Description,
    Fact,
    InUse,
    Minutes,
    Name,
    PlaceOnBed,
    Sheets,
    Shelf,
    Time,
    Times,
)
from station.shop.words import say

BedKind = Literal["clamped", "vacuum"]
BEDS = {"clamped": say("clamped"), "vacuum": say("vacuum")}
BedState = Literal["free", "cutting", "stopped"]
BitState = Literal["good", "worn", "broken"]
FirstOffState = Literal["due", "wrong", "agreed"]


@dataclass(frozen=True, kw_only=True)
class FirstOff:
    """The first sheet of a file that these bits have cut at this zero, against the master.

    It is due once the sheet is cut. A wrong one stays wrong until it is measured again, or a
    sheet that was cut with another bit or zero agrees.
    """

    file: str  # id of the revision that ran
    bits: tuple[str, ...]  # that have cut it
    zero_since: Time  # as the bed's
    batch: str
    sheet: Sheets
    why: str = ""  # what was new
    state: FirstOffState = "due"
    readings: tuple[tuple[str, str, float], ...] = ()  # (part, name of its size, mm), in order
    concern: str = ""  # id of the one that tells of it, while it is wrong


RAPID = say("How fast it moves above the sheet. Its control has it.")
ACCEL = say("How quickly it gains speed along the bed. Its control has it.")
ACCEL_Z = say("How quickly it gains speed up and down. Its control has it.")
CORNER = say("By how much it may round a corner to keep its speed. Its control has it.")
CHANGE = say("How long one change of the bit takes.")
PACE = say("1.1: a tenth slower than the file says. Three sheets here tell it by themselves.")
EXTRA = say("What a sheet takes besides its cuts: spindle up, the way home.")


@dataclass(frozen=True, kw_only=True)
class Router(Fact):
    """A router as it was bought and set up."""

    kind: ClassVar[str] = "router"
    name: Name  # "Router 3"
    bed: Annotated[BedKind, About(say("bed"))] = "clamped"
    # changes bits itself and keeps their zero
    changer: Annotated[bool, About(say("changer"))] = False
    length_mm: Annotated[float, About(say("length"), unit="mm", above=0, inch_start=100)] = 2500.0
    width_mm: Annotated[float, About(say("width"), unit="mm", above=0, inch_start=50)] = 1250.0
    rapid_mm_min: Annotated[
        float, About(say("rapid"), unit="mm/min", help=RAPID, inch_start=800)
    ] = 20000.0
    # along x; along y too, unless that has its own
    accel_mm_s2: Annotated[float, About(say("accel"), unit="mm/s²", help=ACCEL, inch_start=30)] = (
        800.0
    )
    accel_z_mm_s2: Annotated[
        float, About(say("accel z"), unit="mm/s²", help=ACCEL_Z, inch_start=15)
    ] = 400.0
    corner_mm: Annotated[float, About(say("corner"), unit="mm", help=CORNER, inch_start=0.001)] = (
        0.02
    )
    # one tool change
    change_s: Annotated[float, About(say("change"), unit="s", help=CHANGE, least=0)] = 120.0
    # real time over the file's time
    pace: Annotated[float, About(say("pace"), help=PACE, above=0)] = 1.0
    # added a sheet
    extra_s: Annotated[float, About(say("extra"), unit="s", help=EXTRA, least=0)] = 0.0
    # sheets until its spoilboard is cut flat again, 0: not counted; common practice, no source
    flat_after: Annotated[int, About(say("spoilboard bears, sheets"), least=0, most=999_999)] = 100
    # where its bed takes them, (x, y)
    hold_downs: Annotated[tuple[PlaceOnBed, ...], About(say("hold downs"))] = ()
    # on its PC, where the texts it runs lie; empty: they are not looked at
    folder: Annotated[str, About(say("folder"))] = ""
    active: InUse = True
    accel_y_mm_s2: Annotated[float, About(say("accel y"), unit="mm/s²")] = 0.0  # 0: as along x
    # what a cut file is read with where nothing else tells its bit; 0: none
    usual_bit_mm: Annotated[float, About(say("usual bit"), unit="mm", least=0)] = 0.0


@dataclass(frozen=True, kw_only=True)
class Bed(Fact):
    """What a router is doing now; same id as its router."""

    kind: ClassVar[str] = "bed"
    state: BedState = "free"
    batch: str = ""  # the batch taken on
    sheet: Sheets = 0  # the sheet on the bed while cutting
    run: Times = 1  # which of the sheet's runs
    lot: str = ""
    started: Time = ""
    minutes: Minutes = 0.0  # expected for this sheet
    by: str = ""
    stop: str = ""  # reason id while stopped
    stopped: Time = ""  # since
    paused_s: Annotated[int, Limit(least=0, most=10**8)] = 0  # stops since the sheet was started
    ran_on: str = ""  # the stop that its sheet ran on after, where its position may be lost
    bits: tuple[tuple[int, str], ...] = ()  # (T number or pocket, bit id); 0: in the spindle
    first_off: str = ""  # what is new: the next sheet that is cut is a first-off
    firsts: tuple[FirstOff, ...] = ()  # the newest of each file; what agreed counts on
    zero: str = ""  # why zero must be set again
    zero_since: Time = ""  # when that was last so; a bit that is put back keeps its zero
    rehome: str = ""  # why it must be re-homed
    day: Annotated[str, Limit(written="day")] = ""  # date of the last start of day
    seen: tuple[str, ...] = ()  # bits that were in since its batch was taken
    changes: Times = 0  # bits that were put in by hand in the middle of the sheet on it

    @property
    def ends(self) -> str:
        """When the sheet on the bed should be done, stops so far counted in; or nothing."""
        if not self.sheet or not self.started:
            return ""
        length = timedelta(minutes=self.minutes, seconds=self.paused_s)
        return (datetime.fromisoformat(self.started) + length).isoformat(timespec="seconds")


@dataclass(frozen=True, kw_only=True)
class Pace(Fact):
    """How long the newest sheets of a router took; same id as its router."""

    kind: ClassVar[str] = "pace"
    # the file's seconds, the recorded seconds
    sheets: tuple[
        tuple[Annotated[float, Limit(above=0)], Annotated[float, Limit(least=0)]], ...
    ] = ()


@dataclass(frozen=True, kw_only=True)
class Bit(Fact):
    """A router bit. Its metres are counted in moves (place ``bit/<id>``)."""

    kind: ClassVar[str] = "bit"
    words: Description  # "6.0 mm compression"
    diameter_mm: Annotated[float, About(say("diameter"), unit="mm", above=0)]
    flutes: Annotated[int, About(say("flutes"), most=99)] = 2
    # until the office knows better; common practice, no source
    life_m: Annotated[float, About(say("life"), unit="m", above=0, inch_start=5000)] = 1500.0
    # where it is; empty: in the drawer
    router: Annotated[str, About(say("router"), points_at="router", may_be_empty=True)] = ""
    state: Annotated[BitState, About(say("state"))] = "good"
    active: InUse = True

    @property
    def shelf(self) -> Shelf:
        """By router, or with its state in the drawer; a retired one stands apart."""
        if not self.active:
            return (RETIRED, self.id)
        return (f"router/{self.router}" if self.router else self.state, self.id)


@dataclass(frozen=True, kw_only=True)
class Notice(Fact):
    """What went wrong with a router's parts, told to it before its next sheet."""

    kind: ClassVar[str] = "notice"
    router: str
    text: str
    at: Time
    by: str = ""
    seen: str = ""  # worker who has read it

    @property
    def shelf(self) -> Shelf:
        """By router until read."""
        return None if self.seen else (f"router/{self.router}", self.at)
