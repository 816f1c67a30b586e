"""New numbers for codes, from blocks that each station takes for itself."""

from collections.abc import Mapping
from typing import ClassVar

from station.ledger.codec import KeptAct, plain_args
from station.ledger.view import Reader
from station.shop.acts import Act, Answer, Args, good
from station.shop.codes import batch_usable, usable
from station.shop.facts import Numbers, Spent
from station.shop.views import Rule, View
from station.shop.words import Say, say

TAKING = "take_numbers"  # the kind of act by which a block is taken
BLOCK = 20
LEAP = "leap"  # local: the kinds of number to leap, after a backup was restored
LEAPING = ("batch", "order", "pack", "lot")  # papers may bear newer numbers than the backup
LEAPT = 100
MOST_SHEETS = 40  # a batch number must print with this many slips

WIDTHS = {
    "worker": 2,
    "batch": 5,
    "part": 3,
    "rack": 3,
    "order": 4,
    "product": 3,
    "pack": 5,
    "cart": 1,
    "router": 1,
    "bit": 2,
    "lot": 4,
    "cutfile": 3,
    "mailer": 2,
    "reason": 2,
}


class TakeNumbers(Args, frozen=True, kw_only=True, rename={"of": "kind"}):
    """Takes the next block of numbers for a station: of one kind of code."""

    kind: ClassVar[str] = TAKING

    of: str
    leap: bool = False


def take_block(act: Act[TakeNumbers], view: View) -> Answer:
    """The rule by which a station takes the next block of numbers."""
    kind = act.args.of
    numbers = view.get(Numbers, kind) or Numbers(id=kind)
    leapt = LEAPT if act.args.leap else 0
    block = Numbers(id=kind, next=numbers.next + leapt + BLOCK)
    said = say("New {kind} numbers for station {id}", kind=Say(kind), id=act.station)
    return good(said, sets=(block,))


TAKE_BLOCK = Rule(args=TakeNumbers, reads=frozenset({Numbers}), decide=take_block)


def printable(kind: str, number: str) -> bool:
    """Whether every code with this number prints."""
    return batch_usable(number, MOST_SHEETS) if kind == "batch" else usable(kind, number)


def given_to(act: KeptAct) -> list[tuple[str, str]]:
    """The numbers that were handed out for an act, each with its kind."""
    given = plain_args(act).get("numbers")
    return [(k, str(n)) for k, n in given.items()] if isinstance(given, Mapping) else []


def spent_by(act: KeptAct) -> list[Spent]:
    """The numbers of an act that does not count, or no longer.

    Its papers are in the shop all the same: after an older day of the shop's database their
    numbers may lie in the block of another station.
    """
    return [Spent(id=f"{act.id}/{kind}", of=f"{kind}/{n}") for kind, n in given_to(act)]


def block_taken(reader: Reader, kind: str) -> "Block":
    """The block that was just taken."""
    numbers = reader.fact(Numbers, f"numbers/{kind}")
    end = numbers.next if numbers else 1
    return Block(kind, f"{end - BLOCK},{end}")


class Block:
    """A block of one kind of number at this station: what is left of it.

    A number handed out is written down with the next act or draft that is kept, and needs
    no commit of its own: until then nothing bears it.
    """

    def __init__(self, kind: str, kept: str | None) -> None:
        self.kind = kind
        start, _, end = (kept or "1,1").partition(",")
        self.next, self.end = int(start), int(end)

    @property
    def key(self) -> str:
        """Its name among the local values."""
        return f"numbers/{self.kind}"

    def kept(self) -> str:
        """Its text among the local values."""
        return f"{self.next},{self.end}"

    def take(self, reader: Reader) -> str | None:
        """The next number that prints and is not taken; None when the block is used up."""
        while self.next < self.end:
            number = str(self.next).zfill(WIDTHS[self.kind])
            self.next += 1
            if printable(self.kind, number) and _free(reader, f"{self.kind}/{number}"):
                return number
        return None


def _free(reader: Reader, name: str) -> bool:
    """Whether nothing bears a number: no fact, and no paper of an act that was not counted."""
    return reader.state(name) is None and not reader.shelf(Spent, name, 1)
