"""What every fact has: its kind, its id, its key, its shelf."""

from dataclasses import dataclass
from typing import Annotated, ClassVar

from station.shop.facts.about import About, Limit
from station.shop.words import say

Shelf = tuple[str, str] | None
Name = Annotated[str, About(say("name"))]
Description = Annotated[str, About(say("description"))]
Time = Annotated[str, Limit(written="time")]  # empty: not yet
Sheets = Annotated[int, Limit(least=0, most=9999)]
Times = Annotated[int, Limit(least=0, most=9999)]  # how often something was done
Minutes = Annotated[float, Limit(least=0, most=1e6)]
# worked days from an order until it is there; 0: not known
LeadDays = Annotated[int, About(say("lead days"), least=0, most=999)]
InUse = Annotated[bool, About(say("in use"))]  # false: retired, and kept
# where something lies or presses on a bed or a sheet, from its lower left
PlaceOnBed = tuple[
    Annotated[float, About(say("x"), unit="mm")], Annotated[float, About(say("y"), unit="mm")]
]


@dataclass(frozen=True, kw_only=True)
class Fact:
    """A thing the shop knows, by its id. Its kind is the name it is stored under."""

    kind: ClassVar[str] = "fact"
    id: Annotated[str, About(say("number"))]

    @property
    def shelf(self) -> Shelf:
        """The list it stands in and its rank there; None when in no list."""
        return ("all", self.id)

    @property
    def in_use(self) -> bool:
        """Whether it is not retired; one that never can be is in use."""
        return bool(getattr(self, "active", True))

    @property
    def key(self) -> str:
        """Its name in the ledger, ``kind/id``."""
        return f"{self.kind}/{self.id}"


RETIRED = "retired"  # the shelf of what is out of use


@dataclass(frozen=True, kw_only=True)
class Gone(Fact):
    """In an answer's `sets`: the fact `gone` (a key) is no more. Undo uses it."""

    kind: ClassVar[str] = "gone"
    gone: str

    @property
    def shelf(self) -> Shelf:
        """A fact that is gone stands nowhere."""
        return None

    @property
    def key(self) -> str:
        """The key of the fact that goes."""
        return self.gone
