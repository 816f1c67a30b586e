"""What a station asks of the shop's database, whatever stands behind it.

Every call blocks until it is answered and so never runs on the interface's thread.
"""

from collections.abc import Sequence
from typing import NamedTuple, Protocol

from station.ledger.faults import Fault


class Away(Fault):
    """The shop's database cannot be reached, or did not answer in time; the text says why."""


class Refused(Away):
    """The shop's database takes no such act from this station; the text says why."""


class NoShop(Away):
    """A database answers, and no shop is in it: another one, or one that is being put back."""


class Head(NamedTuple):
    """Where the shared history ends, and what the database asks of a station.

    `epoch` counts how often an older day was put back; `format` is the lowest it takes;
    `clock` its own time in seconds since 1970, whatever its zone; `office` the stations where
    people, PINs, reasons and settings are changed: every one where none is named; `held` the
    station that held sharing up last and was cut off, and when (shop-local), where one did;
    `is_old` whether it lacks what this program would bring it up to.
    """

    site: str
    epoch: int
    number: int
    digest: bytes
    format: int
    clock: float = 0.0
    office: tuple[str, ...] = ()
    held: tuple[str, str] = ("", "")
    is_old: bool = False


class SharedRow(NamedTuple):
    """What a station pushes of an act: `writes` are the names of what it changed."""

    id: str
    verdict: str
    writes: tuple[str, ...]
    body: str


class SharedEntry(NamedTuple):
    """An entry of the shared history."""

    number: int
    id: str
    verdict: str
    body: str
    digest: bytes


class Pushed(NamedTuple):
    """The rows are in the history, and it ends here now."""

    number: int
    digest: bytes


class Behind(NamedTuple):
    """Somebody wrote first what was read here, or a row is in the history: pull, then again."""


class TooOld(NamedTuple):
    """The shop takes this format and newer ones only: update this program."""

    format: int


class HistoryDiffers(NamedTuple):
    """The database's history is another than this station's."""


Outcome = Pushed | Behind | TooOld | HistoryDiffers


class ShopLink(Protocol):
    """The shop's database. Every call raises Away when it is not to be had."""

    def head(self) -> Head:
        """Where the shared history ends."""

    def pull(self, after: int, limit: int) -> list[SharedEntry]:
        """Entries in order from behind a number."""

    def push(
        self,
        head: int,
        digest: bytes,
        format: int,
        reads: Sequence[str],
        rows: Sequence[SharedRow],
    ) -> Outcome:
        """Appends rows if nothing that was read has been written since `head`."""
