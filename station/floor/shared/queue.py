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
