"""Which router takes a batch: of those that run its file, the one where it ends first.

Looked at are what is on its bed now, its queue, the bits in it. A batch goes before those of its
queue that are due later, as the queue does it.
"""

from typing import NamedTuple

from station.planning.messages import FileNow, QueuedNow, RouterNow

LOAD_MIN = 5.0  # a person at the bed for each sheet; common practice, no source
# router minutes that a sheet's material is worth: so many that a file which spares minutes and
# spends sheets is not cut for it; of our own choice
SHEET_MIN = 1000.0
BIT_MIN = (
    10.0  # a bit that is not in the router: found, changed, zeroed; common practice, no source
)
ALIKE_MM = 0.01  # bits of this difference are one size


class Slot(NamedTuple):
    """A router for a batch: minutes of work until its first sheet starts, and its last ends."""

    router: RouterNow
    starts_in: float
    ends_in: float
    bit_missing: bool
    behind: int  # batches that go before it


class RouterLoad:
    """What routers have to do, with what is planned on them so far."""

    def __init__(self, routers: tuple[RouterNow, ...], queued: tuple[QueuedNow, ...]) -> None:
        self.routers = routers
        self.queues: dict[str, list[QueuedNow]] = {r.id: [] for r in routers}
        for batch in queued:
            if batch.router in self.queues and not batch.held and batch.sheets:
                self.queues[batch.router].append(batch)

    def list_slots(self, file: FileNow, sheets: int, due: str) -> list[Slot]:
        """Lists the routers where so many sheets can be cut, the one ahead where they end first.

        None where all that run it stand still.
        """
        slots = (
            self._make_slot(router, file, sheets, due)
            for router in self.routers
            if router.id in file.minutes and not router.stopped
        )
        return sorted(slots, key=lambda s: (s.ends_in, s.router.id))

    def _make_slot(self, router: RouterNow, file: FileNow, sheets: int, due: str) -> Slot:
        before = [b for b in self.queues[router.id] if b.begun or (b.due or LAST) <= due]
        ahead = sum(map(count_minutes, before))
        missing = is_bit_missing(router, file)
        starts = router.free_in + ahead + BIT_MIN * missing
        each = file.minutes[router.id] + LOAD_MIN
        return Slot(router, starts, starts + sheets * each, missing, len(before))

    def plan(self, file: FileNow, sheets: int, due: str, slot: Slot) -> None:
        """Counts a batch as queued from now on."""
        batch = QueuedNow(
            id="",
            file=file.id,
            router=slot.router.id,
            sheets=sheets,
            minutes=file.minutes[slot.router.id],
            makes=file.makes,
            due=due,
        )
        self.queues[slot.router.id].append(batch)

    def count_busy(self) -> float:
        """Counts the minutes until the last router that works is through with its queue."""
        return max((self.count_busy_at(r) for r in self.routers if not r.stopped), default=0.0)

    def count_busy_at(self, router: RouterNow) -> float:
        """Counts the minutes until a router is through with its queue."""
        return router.free_in + sum(map(count_minutes, self.queues[router.id]))


LAST = "9999"  # due after all that has a time


def count_minutes(batch: QueuedNow) -> float:
    """Counts the minutes that the sheets of a batch still take, loading too."""
    return batch.sheets * (batch.minutes + LOAD_MIN)


def is_bit_missing(router: RouterNow, file: FileNow) -> bool:
    """Says whether a router lacks a bit that a file cuts with."""
    return not all(_has_bit(router, bit) for bit in file.bits_mm)


def _has_bit(router: RouterNow, bit_mm: float) -> bool:
    return any(abs(bit - bit_mm) <= ALIKE_MM for bit in router.bits_mm)
