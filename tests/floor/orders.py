"""An order of combs and shuttles on the small shop, for the tests of packing and the cart."""

from dataclasses import replace

from station.floor.anywhere import dialogue as anywhere
from station.floor.anywhere.rules import RULES as ANYWHERE
from station.floor.packing import dialogue
from station.floor.packing.rules import RULES as PACKING
from station.floor.shared.recounts import RecountPlace
from station.shop.cards import button
from station.shop.codes import Code, read
from station.shop.facts import Fact, Line, Order, Part, Product
from station.shop.moves import Move, move
from station.shop.rooms import Aside, Do, Hand, Input, Took
from station.shop.views import by_part
from tests.fakes import FakeView
from tests.floor.shop_small import COMB, DAY, SHUTTLE, Player, hand, small_shop

# what is decided at packing: a place on the rack can be counted again anywhere
RULES = {**PACKING, RecountPlace.kind: ANYWHERE[RecountPlace.kind]}

DUE = f"{DAY}T15:00:00"
PAIR = Product(id="040", name="PAIR", words="Comb and shuttle", parts=((COMB, 1), (SHUTTLE, 1)))
ORDER, PART_COMB, PART_SHUTTLE = Code("order", "3306"), Code("part", COMB), Code("part", SHUTTLE)


def order(**fields: object) -> Order:
    """Order 3306: three pairs, leaving today at three."""
    plain = Order(id="3306", due=DUE, lines=(Line(product="040", quantity=3),))
    return replace(plain, **fields)  # type: ignore[arg-type]


def lying(part: str, qty: int, batch: str = "00100") -> Move:
    """Pieces of a batch at their rack place."""
    return move(part, qty, "found", f"rack/{part}", batch)


def shop(
    *facts: Fact, combs: int = 7, shuttles: int = 7, moves: tuple[Move, ...] = ()
) -> FakeView:
    """The small shop with order 3306; the combs of two batches, two of the older."""
    on_rack = [
        lying(part, qty, batch)
        for part, qty, batch in (
            (COMB, min(2, combs), "00100"),
            (COMB, max(0, combs - 2), "00101"),
            (SHUTTLE, shuttles, "00100"),
        )
        if qty
    ]
    return small_shop(PAIR, order(), *facts, moves=(*on_rack, *moves))


def packer(view: FakeView, station: str = "s1") -> Player:
    """A packer at a station of that name."""
    return Player(view, RULES, handle_input, hand("packing", bench="4", station=station))


def handle_input(hand: Hand, given: Input, view: FakeView) -> Do | Took | None:
    """Asks packing, and what belongs to no room for the rest; a page that is open goes first."""
    if hand.aside.what and (done := anywhere.handle_input(hand, given, view)):
        return done
    free = replace(hand, aside=Aside())
    return dialogue.handle_input(free, given, view) or anywhere.handle_input(free, given, view)


def press(name: str) -> Code:
    """A button's code."""
    code = read(button(name))
    assert isinstance(code, Code)
    return code


OPEN_AGAIN = press("open_pack")  # on the page of a pack


def inside(view: FakeView, number: str = "3306") -> dict[str, int]:
    """What lies in an order's open pack."""
    return by_part(view.stock(place=f"packing/{number}"))


def on_rack(view: FakeView, part: str) -> int:
    """Pieces of a part at its rack place."""
    return by_part(view.stock(place=f"rack/{part}")).get(part, 0)


def no_weight(view: FakeView, part: str) -> None:
    """Takes a part's weight out of the book."""
    found = view.get(Part, part)
    assert found
    view.facts[found.key] = replace(found, mass_g=0.0)
