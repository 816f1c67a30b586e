"""One round of talk with the shop's database, parted so that only the middle needs a network.

The ledger makes an offer (where its history ends, what it has to share); `exchange` takes it
to the shop and brings news; the ledger takes the news in. The first and the last touch the
file and run on its thread; the middle runs on another and touches nothing.
"""

from collections.abc import Sequence
from itertools import count, takewhile
from typing import Literal, NamedTuple

from station.ledger.codec import digest
from station.ledger.shop_link import (
    Away,
    Head,
    HistoryDiffers,
    NoShop,
    Pushed,
    Refused,
    SharedEntry,
    SharedRow,
    ShopLink,
    TooOld,
)

PAGE = 500  # entries that come at once
ROWS = 200  # acts that are pushed at once

State = Literal[
    "shared",
    "behind",
    "away",
    "too old",
    "differs",
    "another",
    "empty",
    "put back",
    "twin",
    "refused",
]


class Mark(NamedTuple):
    """A number of this station's history and the digest there."""

    number: int
    digest: bytes


class Offer(NamedTuple):
    """What a station tells the shop: its site and epoch, its head, and acts to share.

    `marks` are older places of its history, the newest first, down to where it begins.
    """

    site: str
    epoch: int
    format: int
    head: Mark
    reads: tuple[str, ...] = ()
    rows: tuple[SharedRow, ...] = ()
    marks: tuple[Mark, ...] = ()


class News(NamedTuple):
    """What came of it. `common` is where both histories were last the same (put back)."""

    state: State
    entries: tuple[SharedEntry, ...] = ()
    more: bool = False  # there is more to come at once
    why: str = ""
    epoch: int = 0
    common: Mark = Mark(0, b"")
    clock: float = 0.0  # the server's time in seconds since 1970; 0 where it was not asked
    office: tuple[str, ...] | None = None  # its stations; None where it was not asked
    held: tuple[str, str] = ("", "")  # the station that was cut off last, and when
    is_old: bool = False  # whether the database lacks what this program would bring it up to


def exchange(link: ShopLink, offer: Offer, page: int = PAGE) -> News:
    """Takes an offer to the shop. Never raises for what the network or the shop does."""
    try:
        try:
            return _push(link, offer) or _pull(link, offer, page)
        except Refused as refused:
            news = _pull(link, offer, page)
            told = news._replace(state="refused", why=str(refused))
            return told if news.state == "behind" else news
    except NoShop as empty:
        return News("empty", why=str(empty))
    except Away as away:
        return News("away", why=str(away))


def further(offer: Offer, news: News) -> Offer:
    """What asks for the page behind this one, and shares nothing."""
    last = news.entries[-1]
    return offer._replace(head=Mark(last.number, last.digest), reads=(), rows=(), marks=())


def _push(link: ShopLink, offer: Offer) -> News | None:
    """The news when the acts were pushed right behind this station's head, or may never be."""
    if not offer.rows:
        return None
    if offer.head.number == 0 and link.head().site != offer.site:
        return News("another")  # an empty history fits every shop: its digest proves nothing
    outcome = link.push(*offer.head, offer.format, offer.reads, offer.rows)
    if isinstance(outcome, TooOld):
        return News("too old")
    if isinstance(outcome, HistoryDiffers):
        return _differing(link, offer, link.head())
    if isinstance(outcome, Pushed) and outcome.number == offer.head.number + len(offer.rows):
        own = _own(offer)
        if own[-1].digest == outcome.digest:
            return News("shared", own, epoch=offer.epoch)
    return None


def _own(offer: Offer) -> tuple[SharedEntry, ...]:
    """The acts as the entries that they are now."""
    entries, link = list[SharedEntry](), offer.head.digest
    for number, row in zip(count(offer.head.number + 1), offer.rows, strict=False):
        link = digest(link, row.id, row.body)
        entries.append(SharedEntry(number, row.id, row.verdict, row.body, link))
    return tuple(entries)


def _pull(link: ShopLink, offer: Offer, page: int) -> News:
    head = link.head()
    if head.site != offer.site:
        return News("another")
    if head.format > offer.format:
        return News("too old")
    same = head.number > offer.head.number or (head.number, head.digest) == offer.head
    if not same or head.epoch > offer.epoch:
        return _differing(link, offer, head)
    ahead = head.number > offer.head.number
    entries = tuple(link.pull(offer.head.number, page)) if ahead else ()
    if ahead and not (entries and _follows(offer.head, entries[0])):
        return _differing(link, offer, head)
    more = bool(entries and entries[-1].number < head.number)
    state: State = "behind" if offer.rows else "shared"
    told = News(state, entries, more, epoch=head.epoch, clock=head.clock)
    return told._replace(office=head.office, held=head.held, is_old=head.is_old)


def _follows(head: Mark, entry: SharedEntry) -> bool:
    return digest(head.digest, entry.id, entry.body) == entry.digest


def _differing(link: ShopLink, offer: Offer, head: Head) -> News:
    """An older day was put back, or worse. Once the owner has said so, how far both agree."""
    if head.site != offer.site:
        return News("another")
    if head.epoch <= offer.epoch:
        return News("differs")
    common = next((m for m in offer.marks if _in_shop(link, m, head)), None)
    if common is None:  # the older day is from before this station's history begins
        return News("differs")
    return News("put back", epoch=head.epoch, common=common)


def _in_shop(link: ShopLink, mark: Mark, head: Head) -> bool:
    if mark.number == 0 or mark.number > head.number:
        return mark.number == 0
    found = link.pull(mark.number - 1, 1)
    return bool(found) and found[0].digest == mark.digest


def steps_back(head: int) -> Sequence[int]:
    """Numbers back from a head, each step twice as far: 99, 98, 96, 92 … from 100."""
    return list(takewhile(lambda n: n > 0, (head - 2**k for k in range(63))))
