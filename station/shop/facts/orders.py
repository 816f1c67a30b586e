"""What is sold and must leave: products, orders, mailers, packs, carts."""

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal, NamedTuple

from station.shop.facts.about import About
from station.shop.facts.base import (
    RETIRED,
    Description,
    Fact,
    InUse,
    LeadDays,
    Name,
    Shelf,
    Time,
    Times,
)
from station.shop.words import Say, say

# owed: it left, and all of it is owed
OrderState = Literal["open", "packing", "waiting", "packed", "shipped", "owed", "cancelled"]
# shelf: packed ahead, of no order yet
PackState = Literal["packed", "cart", "shipped", "opened", "shelf"]
# flat with a bottom and a flap; flat and open at both ends; a box of a height inside
MailerForm = Literal["mailer", "sleeve", "box"]
CartState = Literal["here", "door", "gone"]
PartId = Annotated[str, About(say("part"), points_at="part")]
Quantity = Annotated[int, About(say("quantity"), least=1, most=999_999)]


@dataclass(frozen=True, kw_only=True)
class Product(Fact):
    """What is sold: a list of parts."""

    kind: ClassVar[str] = "product"
    name: Name
    words: Description
    parts: Annotated[tuple[tuple[PartId, Quantity], ...], About(say("parts"))]
    mark: Annotated[int, About(say("packs ahead"), least=0, most=9999)] = 0  # 0: none are kept
    place: Annotated[str, About(say("shelf place"))] = ""  # of packs ahead
    active: InUse = True


@dataclass(frozen=True, kw_only=True)
class Line:
    """One line of an order. `short` of the quantity was approved to be owed."""

    product: Annotated[str, About(say("product"), points_at="product")]
    quantity: Quantity
    short: Annotated[int, About(say("short"), typed=False, least=0, most=999_999)] = 0


class ClosedPack(NamedTuple):
    """A closed pack of an order that goes in several: its number and what lies in it."""

    pack: str
    contents: tuple[tuple[str, int], ...]  # part, quantity


@dataclass(frozen=True, kw_only=True)
class Order(Fact):
    """What must leave, and when."""

    kind: ClassVar[str] = "order"
    lines: Annotated[tuple[Line, ...], About(say("lines"))]
    due: Annotated[str, About(say("due"), written="time")]
    state: Annotated[OrderState, About(say("state"), typed=False)] = "open"
    claimed: Annotated[str, About(say("packed at station"), typed=False)] = ""
    by: Annotated[str, About(say("packed by worker"), typed=False)] = ""
    waits: Annotated[str, About(say("waits"), typed=False)] = ""  # the part that it waits for
    owed_of: Annotated[str, About(say("owed of order"), typed=False)] = ""  # that left short
    # of one that goes in several, those that are closed; none where it goes in one
    packs: tuple[ClosedPack, ...] = ()

    @property
    def to_pack(self) -> bool:
        """Whether it is still to be packed."""
        return self.state in ("open", "packing", "waiting")

    @property
    def takes_pieces(self) -> bool:
        """Whether pieces cut for it go to it still: it is neither packed, gone nor cancelled."""
        return self.state not in ("packed", "shipped", "cancelled")

    @property
    def shelf(self) -> Shelf:
        """Open ones by due time; the others by state."""
        return ("open" if self.to_pack else self.state, f"{self.due}/{self.id}")


@dataclass(frozen=True, kw_only=True)
class Mailer(Fact):
    """What pieces are packed in: its inside, a mailer's lying flat, the flap already taken off."""

    kind: ClassVar[str] = "mailer"
    name: Name
    length_mm: Annotated[float, About(say("length"), unit="mm", above=0)]
    width_mm: Annotated[float, About(say("width"), unit="mm", above=0)]
    # what it closes over; a box's height inside
    thick_mm: Annotated[float, About(say("thick"), unit="mm", inch_start=1.5)] = 40.0
    mass_g: Annotated[float, About(say("mass"), unit="g", least=0, inch_start=1)] = 30.0
    price: Annotated[float, About(say("price"), least=0)] = 0.0  # of one; 0: not known
    hangs: Annotated[str, About(say("its place"))] = ""  # where it is taken from
    mark: Annotated[int, About(say("minimum"), least=0, most=999_999)] = 0  # new ones are bought
    lead_days: LeadDays = 0
    # that sold in packs of; 0: any number
    pack: Annotated[int, About(say("sold in packs of"), least=0, most=99_999)] = 0
    form: Annotated[MailerForm, About(say("form"))] = "mailer"
    active: InUse = True


@dataclass(frozen=True, kw_only=True)
class Postage(Fact):
    """What a service takes for a parcel up to a mass: one step of it. A limit of 0: none.

    A parcel whose volume in cm³ over the divisor is more kg than it weighs counts as so many.
    """

    kind: ClassVar[str] = "postage"
    name: Name
    to_g: Annotated[float, About(say("up to"), unit="g", above=0)]
    price: Annotated[float, About(say("price"), least=0)]
    length_mm: Annotated[float, About(say("longest"), unit="mm", least=0)] = 0.0
    width_mm: Annotated[float, About(say("widest"), unit="mm", least=0)] = 0.0
    thick_mm: Annotated[float, About(say("thickest"), unit="mm", least=0)] = 0.0
    # its length and twice its width, as it lies
    length_girth_mm: Annotated[float, About(say("length and girth"), unit="mm", least=0)] = 0.0
    divisor: Annotated[float, About(say("volume of a weight"), unit="cm³/kg", least=0)] = 0.0
    active: InUse = True


@dataclass(frozen=True, kw_only=True)
class Habit(Fact):
    """The mailer that people chose for a pack of the same contents, how often, why the last time.

    `id` names the contents; see `station.queries.mailers.name_contents`.
    """

    kind: ClassVar[str] = "habit"
    mailer: str
    times: Times = 1
    why: str = ""


@dataclass(frozen=True, kw_only=True)
class Pack(Fact):
    """A closed pack. Its pieces lie at ``pack/<id>``, on a cart at ``cart/<cart>``."""

    kind: ClassVar[str] = "pack"
    order: str
    mailer: str
    mass_g: float = 0.0  # it should weigh, without wrap; 0: a part of it has no weight
    scale_g: float = 0.0  # it did weigh; 0: nobody weighed it
    copies: Times = 1  # of its label
    closed: Time = ""
    by: str = ""
    state: PackState = "packed"
    cart: str = ""
    seen: bool = False  # scanned at the door
    left: Time = ""  # when it left the shop
    contents: tuple[tuple[str, int], ...] = ()  # part, quantity: what the label says
    why: str = ""  # reason for which it was opened again
    returned: tuple[tuple[str, int], ...] = ()  # part, quantity: what came back of it
    product: str = ""  # one set of which was packed ahead
    nth: int = 0  # of an order that goes in several; 0: it is the only one
    of: int = 0  # so many there are; 0: more follow

    @property
    def shelf(self) -> Shelf:
        """On the shelf of its product, waiting for a cart, on a cart, or shipped on a day."""
        if self.state == "shelf":
            return (f"shelf/{self.product}", self.id)
        if self.state == "cart":
            return (f"cart/{self.cart}", self.id)
        if self.state == "shipped" and self.left:
            return (f"shipped/{self.left[:10]}", self.id)
        return (self.state, self.id)

    def say_nth(self) -> Say:
        """Says which pack of its order it is; nothing where it is the only one."""
        if not self.nth:
            return Say()
        if not self.of:
            return say("pack {n}, more follow", n=self.nth)
        return say("pack {n} of {all}", n=self.nth, all=self.of)


@dataclass(frozen=True, kw_only=True)
class Damage(Fact):
    """A pack that was crushed here, or came back damaged: its mailer, and what lay in it.

    `id` is the pack's number.
    """

    kind: ClassVar[str] = "damage"
    mailer: str
    contents: tuple[tuple[str, int], ...]  # part, quantity
    why: str  # its reason
    at: Time


@dataclass(frozen=True, kw_only=True)
class Cart(Fact):
    """A cart to shipping."""

    kind: ClassVar[str] = "cart"
    name: Name
    state: Annotated[CartState, About(say("state"), typed=False)] = "here"
    goes: Annotated[str, About(say("leaves at"), written="clock")] = ""  # usual time, HH:MM
    left: Annotated[str, About(say("left"), written="time", typed=False)] = ""  # when it last left
    runs: Annotated[int, About(say("runs"), typed=False)] = 0
    active: InUse = True

    @property
    def shelf(self) -> Shelf:
        """All of them; a retired one stands apart."""
        return ("all" if self.active else RETIRED, self.id)
