"""Writes down what the office does, as it is kept for ever.

The subject is what is set, approved, released, received or cancelled.
"""

from typing import NamedTuple

import msgspec

from station.shop.acts import Args
from station.shop.facts import Revision

# A fact's fields by name, as JSON values: what a form or a file gave, which the rule judges.
GivenFields = dict[str, object]


class GivenFact(msgspec.Struct, frozen=True, kw_only=True):
    """One of the facts that a shop begins with."""

    kind: str
    value: GivenFields


class Lying(NamedTuple):
    """Pieces of a part that lie somewhere when a shop begins; kept as a list of the five."""

    part: str
    quantity: int
    frm: str
    to: str
    batch: str


class FoundShop(Args, frozen=True, kw_only=True):
    """Founds a shop: all that it starts with, and what lies on its rack."""

    kind = "found_shop"

    facts: tuple[GivenFact, ...]
    stock: tuple[Lying, ...] = ()


class RenewFirstFacts(Args, frozen=True, kw_only=True):
    """Brings a shop up to what the first facts of a newer program say."""

    kind = "renew_first_facts"


class RestoreBackup(Args, frozen=True, kw_only=True):
    """Goes back to a kept backup of this PC when its station is opened the next time."""

    kind = "restore_backup"

    file: str  # its name


class SetFact(Args, frozen=True, kw_only=True):
    """Sets any fact anew."""

    kind = "set_fact"

    of: str = msgspec.field(name="kind")
    value: GivenFields


class SetList(Args, frozen=True, kw_only=True):
    """Takes a whole list in."""

    kind = "set_list"

    of: str = msgspec.field(name="kind")
    values: tuple[GivenFields, ...]
    file: str = ""  # that it was read from
    matched: tuple[tuple[str, str], ...] = ()  # the column of each field, to be remembered


class GivenList(msgspec.Struct, frozen=True, kw_only=True):
    """One of several lists that are taken in together."""

    of: str = msgspec.field(name="kind")
    values: tuple[GivenFields, ...]
    file: str = ""  # that it was read from


class SetLists(Args, frozen=True, kw_only=True):
    """Takes several lists in together: one may name what another one brings."""

    kind = "set_lists"

    lists: tuple[GivenList, ...]


class TakeInFile(Args, frozen=True, kw_only=True):
    """Takes a cut file's text in as a revision; the subject is the cut file."""

    kind = "take_in_file"

    revision: Revision
    parts: dict[str, str] = {}  # noqa: RUF012 - names of new ones by shape; a struct copies it
    file: str = ""


class ApproveRevision(Args, frozen=True, kw_only=True):
    """Approves one revision of a cut file."""

    kind = "approve_revision"

    letter: str


class CancelOrder(Args, frozen=True, kw_only=True):
    """Cancels an order."""

    kind = "cancel_order"


class ReceiveLot(Args, frozen=True, kw_only=True):
    """Receives sheets: a new lot, or more of one."""

    kind = "receive_lot"

    material: str
    sheets: int


class ReceiveMailers(Args, frozen=True, kw_only=True):
    """Receives mailers that were bought. The subject is the mailer."""

    kind = "receive_mailers"

    mailers: int


class CorrectCount(Args, frozen=True, kw_only=True):
    """Sets the book right at one place, for a reason."""

    kind = "correct_count"

    part: str
    place: str
    batch: str
    counted: int
