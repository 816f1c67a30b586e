"""A shop's database in memory: what the push function does, to the letter, and a link to it."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import TypeVar

from station.ledger.books import Books
from station.ledger.closing import Begin, Closing, close
from station.ledger.codec import digest
from station.ledger.shop_link import (
    Away,
    Behind,
    Head,
    HistoryDiffers,
    Outcome,
    Pushed,
    SharedEntry,
    SharedRow,
    TooOld,
)
from station.ledger.sound import taken_in

MOST = 1000
R = TypeVar("R")


@dataclass
class MemoryShop:
    """One site's history. `format` is the lowest that it takes."""

    site: str = "s1"
    epoch: int = 1
    format: int = 1
    entries: list[SharedEntry] = field(default_factory=list)
    writes: list[frozenset[str]] = field(default_factory=list)

    def digest_at(self, number: int) -> bytes | None:
        """The digest at a number; None where there is no such entry."""
        if number == 0:
            return b""
        return self.entries[number - 1].digest if number <= len(self.entries) else None

    def head(self) -> Head:
        number = len(self.entries)
        return Head(self.site, self.epoch, number, self.digest_at(number) or b"", self.format)

    def pull(self, after: int, limit: int) -> list[SharedEntry]:
        return self.entries[after : after + limit]

    def push(
        self,
        head: int,
        digest_: bytes,
        format: int,
        reads: Sequence[str],
        rows: Sequence[SharedRow],
    ) -> Outcome:
        """Appends what nobody was before in, under the names that were read."""
        assert 1 <= len(rows) <= MOST
        if format < self.format:
            return TooOld(self.format)
        if self.digest_at(head) != digest_:
            return HistoryDiffers()
        newer, ids = self.writes[head:], {row.id for row in rows}
        if len(newer) > MOST or any(not names.isdisjoint(reads) for names in newer):
            return Behind()
        if any(entry.id in ids for entry in self.entries):
            return Behind()
        for row in rows:
            self.add(row)
        return Pushed(len(self.entries), self.entries[-1].digest)

    def add(self, row: SharedRow) -> None:
        """Appends one row, whatever stands in it."""
        number = len(self.entries)
        link = digest(self.digest_at(number) or b"", row.id, row.body)
        self.entries.append(SharedEntry(number + 1, row.id, row.verdict, row.body, link))
        self.writes.append(frozenset(row.writes))

    def copy(self) -> "MemoryShop":
        """Another database with the same history."""
        return replace(self, entries=self.entries[:], writes=self.writes[:])

    def closing(self, number: int) -> Closing:
        """What a new PC begins with that wants no entry up to this number."""
        books, at = Books(), ""
        for entry in self.entries[:number]:
            body, why = taken_in(entry.id, entry.body, at)
            at = body.act.at
            books.take(body, why)
        return close(books, Begin(number, self.digest_at(number) or b"", at))

    def put_back(self, number: int) -> None:
        """An older day is restored."""
        del self.entries[number:], self.writes[number:]

    def written_since(self, number: int) -> frozenset[str]:
        """All names that were written behind a number."""
        return frozenset[str]().union(*self.writes[number:])


class MemoryLink:
    """One station's way to the shop. `cut`: nothing gets through; `deaf`: replies are lost."""

    def __init__(self, shop: MemoryShop) -> None:
        self.shop = shop
        self.cut = self.deaf = False

    def head(self) -> Head:
        return self._through(self.shop.head())

    def pull(self, after: int, limit: int) -> list[SharedEntry]:
        return self._through(self.shop.pull(after, limit))

    def push(
        self,
        head: int,
        digest: bytes,
        format: int,
        reads: Sequence[str],
        rows: Sequence[SharedRow],
    ) -> Outcome:
        if self.cut:
            raise Away("cut off")
        return self._through(self.shop.push(head, digest, format, reads, rows))

    def _through(self, reply: R) -> R:
        if self.cut or self.deaf:
            raise Away("the answer was lost" if self.deaf else "cut off")
        return reply
