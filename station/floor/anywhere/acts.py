"""Writes down what is done at any work area, as it is kept for ever.

The subject is the batch.
"""

from station.shop.acts import Args


class SplitBatch(Args, frozen=True, kw_only=True):
    """Splits so many of a part off a batch, as a batch of their own."""

    kind = "split_batch"

    part: str
    quantity: int
    area: str = ""  # where it is done; empty, or nothing lies there: wherever they lie


class FindParts(Args, frozen=True, kw_only=True):
    """Finds parts that were missing from a batch."""

    kind = "find_parts"

    part: str
    quantity: int
    area: str = ""  # where it is done


class Recount(Args, frozen=True, kw_only=True):
    """Counts a batch's parts at one place again; the book is set right for a reason."""

    kind = "recount"

    part: str
    place: str
    counted: int


class NewCopy(Args, frozen=True, kw_only=True):
    """Prints a new copy of a batch's traveller; the one before is void."""

    kind = "new_copy"


class TakeReturn(Args, frozen=True, kw_only=True):
    """Takes back pieces that have left: of a part, or of what is named with one.

    The subject is the part, or the product or pack that it came back with.
    """

    kind = "take_return"

    quantity: int
    part: str = ""  # empty: the subject is the part


class HoldBatch(Args, frozen=True, kw_only=True):
    """Holds a batch until a supervisor lets it go on."""

    kind = "hold_batch"

    why: str = ""


class ReleaseHold(Args, frozen=True, kw_only=True):
    """Lets a held batch go on."""

    kind = "release_hold"


class TellHealth(Args, frozen=True, kw_only=True):
    """Tells how a station's PC is: the program does so by itself, the subject is the station."""

    kind = "tell_health"

    version: str = ""
    unshared: int = 0
    free_mb: int = 0
    backup_at: str = ""
    trouble: str = ""
    wrong_pins: int = 0
    pins_at: str = ""
    held: str = ""
    held_at: str = ""
    database: str = ""
    older_at: str = ""
