"""What planning is asked, and what it answers: typed, as JSON on the way to its job and back.

The request holds all that is thought about, as plain figures; the answer holds figures and names
alone. Screens, papers and commands say them in words. Minutes are router time unless a name
says otherwise, times the shop's own.
"""

from typing import Literal

import msgspec

Stage = Literal["rework", "trimming", "popping", "bed", "queue"]  # where pieces under way are
# why sheets are cut: orders lack parts, the rack falls below its minimum or what it should be, or
# packs ahead and own pushes want more
Because = Literal["orders", "mark", "use", "ahead"]
# why a part cannot be cut: all routers of its file stopped, or none in use that may run it
WhyNot = Literal["", "no file", "none runs it", "no router", "no sheets"]
CERTAINTY = 0.95  # with which what is cut is enough: common practice, no source


class Wish(msgspec.Struct, frozen=True):
    """Pieces of a part that an open order still takes from the rack."""

    order: str
    due: str
    pieces: int


class Passage(msgspec.Struct, frozen=True):
    """How many pieces went through a step so far, and how many were lost in it."""

    good: int = 0
    lost: int = 0


class PartNow(msgspec.Struct, frozen=True, kw_only=True):
    """A part as it stands: what is wanted, what lies there, what is under way, what was used."""

    id: str
    name: str
    mark: int = 0
    free: int = 0  # on the rack, may be taken
    kept_back: int = 0  # on the rack or under way, and held or in doubt
    besides: int = 0  # wanted besides: for packs ahead, and for what the shop expects to sell
    room: int = 0  # pieces that its rack place holds; 0: not known
    unsettled: int = 0  # recounts of it that nobody has settled yet
    coming: dict[Stage, int] = {}
    wishes: tuple[Wish, ...] = ()  # by due time
    own: tuple[Wish, ...] = ()  # what orders take of sheets that are cut for them alone
    use: tuple[int, ...] = ()  # pieces packed on each worked day, oldest first
    passed: dict[str, Passage] = {}  # by step: cut, popping, trimming

    @property
    def wanted(self) -> int:
        """Pieces that open orders still take."""
        return sum(wish.pieces for wish in self.wishes)

    @property
    def under_way(self) -> int:
        """Pieces on their way to the rack, those still to be cut too."""
        return sum(self.coming.values())

    @property
    def on_own(self) -> int:
        """Pieces that come on sheets for one order alone, as far as it takes them."""
        return sum(wish.pieces for wish in self.own)


class FileNow(msgspec.Struct, frozen=True, kw_only=True):
    """A cut file in its approved revision."""

    id: str
    name: str
    material: str
    makes: dict[str, int]  # pieces of each part, a sheet
    minutes: dict[str, float]  # a sheet, by the routers that may run it
    bits_mm: tuple[float, ...] = ()
    cut_m: tuple[tuple[float, float], ...] = ()  # a sheet: (diameter of a bit in mm, metres)


class RouterNow(msgspec.Struct, frozen=True, kw_only=True):
    """A router in use."""

    id: str
    name: str
    stopped: bool = False
    free_in: float = 0.0  # minutes until its bed is free
    bits_mm: tuple[float, ...] = ()  # that are in it


class QueuedNow(msgspec.Struct, frozen=True, kw_only=True):
    """A batch in a router's queue: `sheets` are those not on a bed yet."""

    id: str
    file: str  # the cut file's id
    router: str
    sheets: int
    minutes: float  # a sheet
    makes: dict[str, int]
    material: str = ""
    between: int = 0  # of its sheets, those that have left the store: they wait for their next run
    due: str = ""
    begun: bool = False  # a sheet of it was cut or is on a bed
    held: bool = False  # or another revision is approved: nobody may cut it
    order: str = ""  # for one order alone, that takes pieces still

    @property
    def to_take(self) -> int:
        """Sheets that it will take from the store."""
        return max(0, self.sheets - self.between)


class Coming(msgspec.Struct, frozen=True):
    """What is on its way, and the day on which it should be there; empty: not known."""

    day: str
    pieces: int


class MaterialNow(msgspec.Struct, frozen=True, kw_only=True):
    """A sheet good, and the sheets in the store; None: none was ever received here."""

    id: str
    name: str
    sheets: int | None = None
    lead_days: int = 0  # worked days from an order until it is there; 0: not known
    pack: int = 0  # sheets that sold in packs of; 0: any number
    price: float = 0.0  # of a sheet; 0: not known
    coming: tuple[Coming, ...] = ()


class BitsNow(msgspec.Struct, frozen=True, kw_only=True):
    """The good bits of one diameter: how many, and the metres that they may still cut."""

    diameter_mm: float
    bits: int
    left_m: float
    life_m: float  # of a new one
    size: str = ""  # id of how they are bought; empty: nobody has entered it
    name: str = ""
    mark: int = 0  # good ones, below which new ones are bought
    lead_days: int = 0  # as of a material
    pack: int = 0
    price: float = 0.0
    coming: tuple[Coming, ...] = ()


class MailersNow(msgspec.Struct, frozen=True, kw_only=True):
    """Mailers of one kind: how many are left, and how many packs a worked day takes."""

    id: str
    name: str
    left: int
    a_day: float
    mark: int = 0
    lead_days: int = 0  # as of a material
    pack: int = 0
    price: float = 0.0
    coming: tuple[Coming, ...] = ()


class LeadSeen(msgspec.Struct, frozen=True):
    """Worked days from a release until its parts were on the rack: mean, standard deviation."""

    mean: float
    deviation: float


class PlanCutting(msgspec.Struct, frozen=True, kw_only=True, tag=True):
    """Think about what to cut next."""

    now: str
    day_starts: str = "07:00"
    day_ends: str = "16:00"
    weekdays: tuple[int, ...] = (0, 1, 2, 3, 4)  # worked on; Monday is 0
    certainty: float = CERTAINTY
    service: float = 0.95  # share of uses for which what lies on the rack should last
    lead_days: float = 2.0  # worked days from a release until its parts are mostly on the rack
    lead_seen: LeadSeen | None = None  # the same as it varied; None: always the same
    short_notice: float = 1.0  # share of pieces that orders want sooner than they can be cut
    parts: tuple[PartNow, ...] = ()
    files: tuple[FileNow, ...] = ()
    routers: tuple[RouterNow, ...] = ()
    queued: tuple[QueuedNow, ...] = ()
    materials: tuple[MaterialNow, ...] = ()
    bits: tuple[BitsNow, ...] = ()
    mailers: tuple[MailersNow, ...] = ()
    breaks: tuple[tuple[str, str], ...] = ()  # of a worked day, in which nobody works
    closed: tuple[str, ...] = ()  # days on which nobody works
    # pieces that popping and trimming got through on each worked day, oldest first
    through: dict[str, tuple[int, ...]] = {}
    seconds: float = 1.0  # that the counts of sheets may be thought about


class Release(msgspec.Struct, frozen=True, kw_only=True):
    """So many sheets of a cut file on a router, and what it is good for."""

    file: str  # the cut file's id
    name: str
    sheets: int
    more: int = 0  # sheets for the same orders that follow in batches of their own
    router: str = ""  # empty: every one that takes it stands still
    router_name: str = ""
    starts: str = ""
    ends: str = ""
    behind: int = 0  # batches of that router's queue that go before it
    next_router: str = ""  # of the others the name of the one where it would end first; or none
    next_ends: str = ""
    due: str = ""  # when the first order wants it; empty: it is for the rack
    by: str = (
        ""  # its place in the queue: when it is due, or the rack runs out of it, or turns are
    )
    part: str = ""  # the one that it is cut for before all others
    part_name: str = ""
    because: Because = "orders"
    each: int = 0  # pieces of that part, a sheet
    need: int = 0  # good pieces of it that are wanted of these sheets
    loss: float | None = None  # of it, usual share; None: can't tell yet
    certainty: float | None = None  # that these sheets are enough; None: can't tell yet
    orders: int = 0  # that want it and cannot have it yet
    first_due: str = ""
    serves: int = 0  # of these, how many it is for, with the lots before it
    mark: int = 0
    besides: int = 0  # of it, for packs ahead and own pushes
    use: float | None = None  # of it, pieces a worked day; None: can't tell yet
    days_before: float | None = None  # worked days that it lasts; below zero: orders lack it
    days_after: float | None = None
    beyond: int = 0  # pieces of all its parts that nobody needs yet
    minutes: float = 0.0
    people_minutes: float = 0.0
    material: str = ""
    in_store: int | None = None  # sheets in the store that no queued batch takes
    store_left: int | None = None  # of these, once all that is planned is cut
    bit_missing: bool = False  # a bit that it takes is not in the router


class Blocked(msgspec.Struct, frozen=True, kw_only=True):
    """A part that open orders lack, though it is not under way."""

    part: str
    name: str
    wanted: int
    there: int
    kept_back: int
    under_way: int
    unsettled: int  # recounts of it that nobody has settled yet
    orders: tuple[str, ...]  # that cannot have it, by due time
    late: int
    release: Release | None = None
    why_not: WhyNot = ""


class TakeQueuedBack(msgspec.Struct, frozen=True, kw_only=True):
    """A queued batch whose parts nobody needs yet."""

    batch: str
    file: str
    name: str
    router: str
    sheets: int
    part: str  # the one of its parts that lasts shortest
    part_name: str
    there: int
    wanted: int
    days: float | None  # worked days that it lasts without the batch; None: it is not used


class BringForward(msgspec.Struct, frozen=True, kw_only=True):
    """A queued batch that orders want sooner than it is due in its queue."""

    batch: str
    file: str
    name: str
    router: str
    sheets: int
    part: str  # the one of its parts that is wanted first
    part_name: str
    order: str  # that wants it first
    due: str  # when that order is due
    was: str  # its place in the queue now: when it is due; empty: at the end
    by: str  # its place as it should be


class OverFull(msgspec.Struct, frozen=True, kw_only=True):
    """A part of which far more lies on the rack than is used."""

    part: str
    name: str
    there: int
    wanted: int
    days: float | None  # None: it is not used


class ToOrder(msgspec.Struct, frozen=True, kw_only=True):
    """Sheets, bits or mailers to order: how many, by when, and how long those there last."""

    of: Literal["material", "bit_size", "mailer"]
    id: str  # of a bit size that nobody has entered: empty
    name: str
    quantity: int
    by: str  # a day of the shop's time
    lasts: float | None  # worked days, what is on its way too; None: nobody can tell
    lead_days: int
    lead_known: bool  # False: the usual days are taken
    expected: str  # the day on which it would be there
    a_day: float  # of them used on a worked day
    diameter_mm: float = 0.0  # of bits
    coming: int = 0
    price: float = 0.0  # of one; 0: not known


class MarkAdvice(msgspec.Struct, frozen=True, kw_only=True):
    """A mark that is off: what it is, what it should be, and from what that follows."""

    part: str
    name: str
    mark: int
    should: int
    use: float  # pieces a worked day
    days: float  # of its use that it has to last
    varies: float  # standard deviation of these days
    service: float  # share of uses for which it should last
    lacks: float  # share of the pieces used in these days that lacks in the middle, as it is
    lacks_then: float  # as it should be


class Besides(msgspec.Struct, frozen=True):
    """Pieces of a part that are wanted besides orders and mark."""

    name: str
    pieces: int


class CuttingPlan(msgspec.Struct, frozen=True, kw_only=True, tag=True):
    """What to cut next, what to take back, and what the thinking rests on."""

    at: str  # the shop's time of the figures
    seen: tuple[str, ...] = ()  # the batches that were queued then
    blocked: tuple[Blocked, ...] = ()
    then: tuple[Release, ...] = ()  # all other sheets, the most urgent first
    take_back: tuple[TakeQueuedBack, ...] = ()
    forward: tuple[BringForward, ...] = ()
    over_full: tuple[OverFull, ...] = ()
    marks: tuple[MarkAdvice, ...] = ()
    order: tuple[ToOrder, ...] = ()
    uncovered: tuple[str, ...] = ()  # parts that are needed and that no approved file makes
    besides: tuple[Besides, ...] = ()  # for packs ahead and own pushes, the most pieces ahead
    put_off: int = 0  # sheets for the rack that wait until less is under way
    under_way: int = 0  # pieces, those to be cut for orders too
    orders: int = 0  # open
    late: int = 0  # of these
    waiting: int = 0  # of the open ones, that lack a part
    waiting_after: int = 0  # that still lack one once all of it is cut
    beyond: int = 0  # pieces that nobody needs yet
    minutes: float = 0.0
    people_minutes: float = 0.0
    done_by: str = ""  # when the last router is through with all that is queued and planned
    objective: float = 0.0  # of the counts of sheets, and the least that is proven
    lower_bound: float = 0.0
