"""What is bought, what is on its way, and what the shop itself expects to sell.

Whatever is not known stays empty: 0, or no text.
"""

from dataclasses import dataclass
from typing import Annotated, ClassVar

from station.shop.facts.about import About
from station.shop.facts.base import Fact, InUse, LeadDays, Name, Shelf
from station.shop.words import say


@dataclass(frozen=True, kw_only=True)
class BitSize(Fact):
    """Bits of one diameter as they are bought."""

    kind: ClassVar[str] = "bit_size"
    name: Name  # "6 mm compression"
    diameter_mm: Annotated[float, About(say("diameter"), unit="mm", above=0)]
    # good ones, below which new ones are bought
    mark: Annotated[int, About(say("minimum"), least=0, most=9999)] = 0
    lead_days: LeadDays = 0
    # that sold in packs of; 0: any number
    pack: Annotated[int, About(say("sold in packs of"), least=0, most=99_999)] = 0
    price: Annotated[float, About(say("price"), least=0)] = 0.0  # of one
    active: InUse = True


@dataclass(frozen=True, kw_only=True)
class Purchase(Fact):
    """What is ordered and on its way: of one thing, how many, when they should be there.

    Sheets that are received, bits that are entered and mailers that are counted beyond the book
    count as come by themselves, the first expected first.
    """

    kind: ClassVar[str] = "purchase"
    material: Annotated[str, About(say("material"), points_at="material", may_be_empty=True)] = ""
    bit_size: Annotated[str, About(say("bit size"), points_at="bit_size", may_be_empty=True)] = ""
    mailer: Annotated[str, About(say("mailer"), points_at="mailer", may_be_empty=True)] = ""
    quantity: Annotated[int, About(say("quantity"), least=1, most=999_999)]
    came: Annotated[int, About(say("came"), least=0, most=999_999)] = 0  # of these
    expected: Annotated[str, About(say("expected"), written="day")] = ""

    @property
    def things(self) -> tuple[str, str, str]:
        """The numbers of the material, the bit size and the mailer; all but one are empty."""
        return (self.material, self.bit_size, self.mailer)

    @property
    def coming(self) -> int:
        """How many are still on their way."""
        return max(0, self.quantity - self.came)

    @property
    def shelf(self) -> Shelf:
        """Those on their way by the day they are expected; the others have come."""
        return ("coming" if self.coming else "came", f"{self.expected or '9999'}/{self.id}")


@dataclass(frozen=True, kw_only=True)
class Push(Fact):
    """What the shop expects to sell of a product from a day on, which no past can tell."""

    kind: ClassVar[str] = "push"
    product: Annotated[str, About(say("product"), points_at="product")]
    quantity: Annotated[int, About(say("expected to sell"), least=1, most=999_999)]
    begins: Annotated[str, About(say("begins"), written="day")]
    ends: Annotated[str, About(say("ends"), written="day")] = ""
    active: InUse = True
