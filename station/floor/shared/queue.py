"""Writes down what puts a batch into a router's queue and takes it out, as it is kept for ever."""

from station.shop.acts import Args


class ReleaseBatch(Args, frozen=True, kw_only=True):
    """Releases a new batch to a router's queue."""

    kind = "release_batch"

    cut_file: str
    router: str
    sheets: int
    order: str = ""
    due: str = ""  # empty: with its order, or by need
    why: str = ""


class CancelBatch(Args, frozen=True, kw_only=True):
    """Ends a batch: no more of its sheets are cut."""

    kind = "cancel_batch"


class AddSheet(Args, frozen=True, kw_only=True):
    """Adds a sheet to a batch, to make good for a spoiled one."""

    kind = "add_sheet"

    router: str  # that takes the batch up again if it is free; empty: it waits in its queue
    look: str = ""  # id of what tells of the sheet; empty: the first that is not made anew
