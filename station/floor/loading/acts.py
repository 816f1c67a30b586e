"""Writes down what is done at the cutting bed, as it is kept for ever.

The subject is the batch, the slip of its sheet, or the router.
"""

from station.shop.acts import Args


class TakeBatch(Args, frozen=True, kw_only=True):
    """Takes a batch on at a router."""

    kind = "take_batch"

    router: str
    copy: str = ""  # of its traveller, as scanned


class StartSheet(Args, frozen=True, kw_only=True):
    """Puts a sheet from the store onto the bed, where it is cut.

    For a further run it comes from between the routers, its lot and thickness known.
    """

    kind = "start_sheet"

    router: str
    copy: str = ""  # of its traveller, as scanned
    lot: str = ""
    reading: float = 0.0  # its thickness, mm
    ticks: tuple[str, ...] = ()  # what a person has confirmed: names of `needs.TICKS`
    sheet: int = 0  # the one that is wanted; 0: the next in order


class EndSheet(Args, frozen=True, kw_only=True):
    """Takes a sheet off the bed: it is cut."""

    kind = "off_bed"

    router: str
    sheet: int = 0  # 0: the one on the bed
    copy: str = ""  # of its slip or traveller, as scanned
    traveller: bool = False  # its main code was scanned, which could also mean a load


class SpoilSheet(Args, frozen=True, kw_only=True):
    """Spoils the sheet on the bed."""

    kind = "spoil_sheet"

    router: str
    survived: dict[str, int] = {}  # noqa: RUF012 - whole pieces of each part; a struct copies it
    bit: str = ""  # which broke; empty: the first one that the file uses


class ReportStop(Args, frozen=True, kw_only=True):
    """Reports that the router stands still, for a reason; this does not stop it."""

    kind = "report_stop"


class EndStop(Args, frozen=True, kw_only=True):
    """Lets the router run again."""

    kind = "end_stop"

    ticks: tuple[str, ...] = ()  # what a person has confirmed: names of `needs.RESTART`
    since: str = ""  # when the stop began that is looked at; another one is not ended by it


class ChangeBit(Args, frozen=True, kw_only=True):
    """Puts another bit in by hand."""

    kind = "change_bit"

    bit: str = ""
    pocket: int = 0  # 0: the spindle


class EnterBit(Args, frozen=True, kw_only=True):
    """Enters a bit that the shop does not know yet, and puts it in where it is wanted now."""

    kind = "enter_bit"

    like: str = ""  # a known bit of its kind; empty: only its size is known
    diameter_mm: float = 0.0
    pocket: int = -1  # 0: the spindle; -1: it lies in the drawer


class BreakBit(Args, frozen=True, kw_only=True):
    """Marks a bit in the router as broken."""

    kind = "bit_broken"

    bit: str = ""


class SetZero(Args, frozen=True, kw_only=True):
    """Notes that zero was set anew though it was not due."""

    kind = "set_zero"


class StartDay(Args, frozen=True, kw_only=True):
    """Notes that the checks for the start of the day are done on a router."""

    kind = "start_day"


class Resurface(Args, frozen=True, kw_only=True):
    """Notes that the spoilboard was cut flat again."""

    kind = "resurface"


class Rehome(Args, frozen=True, kw_only=True):
    """Notes that the router was sent to its home switches."""

    kind = "rehome"


class ReadNotice(Args, frozen=True, kw_only=True):
    """Notes that what was told to a router, and is on its screen, is read."""

    kind = "read_notice"
