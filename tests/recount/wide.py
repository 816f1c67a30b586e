"""A wide shop of our own invention: more of everything than a list of a screen holds."""

import itertools
import random
from collections.abc import Iterator
from datetime import datetime, timedelta

from demo_db.machines import machines
from demo_db.orders import numbers
from station import bootstrap
from station.ledger.ledger import Ledger
from station.shop.codes import batch_usable, usable
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    BitUse,
    Cart,
    CutFile,
    Fact,
    Line,
    Order,
    Pack,
    PackState,
    Part,
    Pile,
    Placed,
    Product,
    RackPlace,
    Revision,
    Router,
    Shape,
    Slip,
    Worker,
)
from station.shop.first_facts import first_mailers
from tests.replay import HASH

PARTS, FILES, PRODUCTS, OPEN, ROUTERS, LEFT = 300, 60, 100, 400, 12, 2000
SHEETS = 6  # of each batch
MAILER_G = next(m.mass_g for m in first_mailers() if m.id == "01")
PLAIN = Shape(outline=((0.0, 0.0), (80.0, 0.0), (80.0, 40.0), (0.0, 40.0)), tabs=((40.0, 0.0),))
Stock = tuple[str, int, str, str, str]


def found_wide_shop(ledger: Ledger, at: str, dice: random.Random) -> None:
    """Records the wide shop's first act."""
    wide = _Wide(at, dice)
    facts = {f.key: f for f in wide.facts()}  # the later of two counts
    bootstrap.seed_shop(ledger, facts.values(), at, stock=wide.stock)


def _numbers(kind: str, digits: int, count: int) -> list[str]:
    """So many numbers of a kind that can be printed."""
    every = (f"{n:0{digits}d}" for n in itertools.count(1))
    return list(itertools.islice((n for n in every if usable(kind, n)), count))


class _Wide:
    """Its facts, and what lies where in the beginning."""

    def __init__(self, at: str, dice: random.Random) -> None:
        self.at, self.dice = datetime.fromisoformat(at), dice
        self.stock: list[Stock] = []
        self.parts = _numbers("part", 3, PARTS)
        self.routers, self.bits = _numbers("router", 1, ROUTERS), _numbers("bit", 3, ROUTERS)
        self.batches = [n for n in _numbers("batch", 5, 4 * FILES) if batch_usable(n, SHEETS)]
        self.packs = _numbers("pack", 5, LEFT + 40)

    def facts(self) -> Iterator[Fact]:
        """All of them, the general before the special."""
        yield from machines(self._time(days=-30))
        yield Worker(id="07", supervisor=True, pin=HASH)
        yield from self._routers()
        yield from self._designs()
        yield from self._batches()
        yield from self._orders()

    def _time(self, **ago: float) -> str:
        return (self.at + timedelta(**ago)).isoformat(timespec="seconds")

    def _routers(self) -> Iterator[Fact]:
        for n, bit in zip(self.routers, self.bits, strict=True):
            yield Router(id=n, name=f"Router {n}")
            yield Bit(id=bit, words="6.0 mm compression", diameter_mm=6.0, life_m=6000.0, router=n)
            yield Bed(id=n, bits=((0, bit),), zero_since=self._time(hours=-2))
        self.stock += [("sheet", 900, "bought", "store", lot) for lot in ("0931", "0932")]

    def _designs(self) -> Iterator[Fact]:
        for n, part in enumerate(self.parts):
            light = n % 50 == 7  # nobody can tell what it weighs: it has no outline either
            yield Part(id=part, name=f"WP-{part}", words=f"Wide part {part}", rack=part, mark=30,
                       mass_g=0.0 if light else 12.5, shape=None if light else PLAIN)  # fmt: skip
            yield RackPlace(id=part, name=f"W {part}", part=part)
        for n in range(FILES):
            own = self.parts[n * 5 : n * 5 + 5]
            placed = [
                Placed(part=own[i % 5], x_mm=90.0 * (i % 20), y_mm=50.0 * (i // 20))
                for i in range(100)
            ]
            number = f"{n + 1:03d}"
            yield CutFile(
                id=number, name=f"WIDE-{number}", words=f"Wide set {number}", approved="A"
            )
            yield Revision(id=f"{number}.A", cut_file=number, letter="A", material="1",
                           minutes=30.0, placed=tuple(placed),
                           shapes=tuple((p, PLAIN) for p in own),
                           bits=(BitUse(number=1, diameter_mm=6.0, cut_mm=50000.0),))  # fmt: skip
        for n in range(PRODUCTS):
            parts = tuple((self.parts[(n * 3 + i) % PARTS], 1 + i) for i in range(3))
            yield Product(
                id=f"{n + 1:03d}", name=f"KIT-{n + 1:03d}", words="Wide kit", parts=parts
            )

    def _batches(self) -> Iterator[Fact]:
        """A third nearly cut, with its sheets at popping; a third at trimming; a third queued."""
        for n in range(FILES):
            number, file = self.batches[n], f"{n + 1:03d}"
            kind, router = n % 3, self.routers[n % ROUTERS]
            due = self._time(hours=self.dice.randrange(2, 90))
            cut = (SHEETS - 1, SHEETS, 0)[kind]
            yield Batch(id=number, cut_file=file, revision="A", router=router, sheets=SHEETS,
                        cut=cut, state=("queued", "cut", "queued")[kind], due=due,
                        released=self._time(hours=-30))  # fmt: skip
            made = [(p, 20) for p in self.parts[n * 5 : n * 5 + 5]]
            for sheet in range(1, cut + 1) if kind == 0 else ():
                yield Slip(id=f"{number}-{sheet}", batch=number, sheet=sheet, router=router,
                           at=self._time(minutes=-300 + n + 20 * sheet), minutes=31.0)  # fmt: skip
                self.stock += [(p, q, "cut", f"popping/{sheet}", number) for p, q in made]
            if kind == 1:
                since = self._time(minutes=-200 + n)
                yield Pile(id=f"trimming/{number}", area="trimming", batch=number, since=since,
                           due=due)  # fmt: skip
                self.stock += [(p, q * SHEETS, "cut", "trimming", number) for p, q in made]
        for part in self.parts:
            lies = self.dice.choice((0, 5, 25, 40, 60, 90, 200))
            if lies:
                self.stock.append((part, lies, "found", f"rack/{part}", "00000"))

    def _orders(self) -> Iterator[Fact]:
        printable = numbers(3301, OPEN + LEFT + 40)
        for number in printable[:OPEN]:
            yield self._order(number, self._time(hours=self.dice.randrange(-30, 200)), "open")
        for n, number in enumerate(printable[OPEN:]):
            state = "shipped" if n < LEFT else "packed"
            order = self._order(number, self._time(hours=-n % 60 - 1), state)
            yield order
            yield from self._pack(order, self.packs[n], n)
        yield Cart(id="1", name="Cart 1", goes="11:30", left=self._time(days=-1), runs=40)
        yield Cart(id="2", name="Cart 2", goes="08:30", left=self._time(days=-1), runs=41)

    def _order(self, number: str, due: str, state: str) -> Order:
        lines = tuple(
            Line(product=f"{p + 1:03d}", quantity=self.dice.randint(1, 4))
            for p in self.dice.sample(range(PRODUCTS), self.dice.choice((1, 1, 2, 3)))
        )
        return Order(id=number, lines=lines, due=due, state=state)  # type: ignore[arg-type]

    def _weigh(self, inside: dict[str, int]) -> float:
        """What a pack should weigh; nothing where a part of it has no weight."""
        if any(self.parts.index(part) % 50 == 7 for part in inside):
            return 0.0
        return 12.5 * sum(inside.values()) + MAILER_G

    def _pack(self, order: Order, number: str, n: int) -> Iterator[Fact]:
        """The pack of an order that is packed: it left, lies on cart 1, or waits for a cart."""
        inside: dict[str, int] = {}
        for line in order.lines:
            first = (int(line.product) - 1) * 3
            for i in range(3):
                part = self.parts[(first + i) % PARTS]
                inside[part] = inside.get(part, 0) + line.quantity * (1 + i)
        left = self._time(minutes=-30 - 5 * n) if n < LEFT else ""
        on_cart = not left and n % 2 == 0
        place = "shipped" if left else ("cart/1" if on_cart else f"pack/{number}")
        self.stock += [(part, q, "found", place, "00000") for part, q in inside.items()]
        state: PackState = "shipped" if left else "cart" if on_cart else "packed"
        yield Pack(id=number, order=order.id, mailer="01", mass_g=self._weigh(inside),
                   contents=tuple(inside.items()), state=state, left=left, by="05",
                   cart="1" if on_cart or left else "",
                   closed=self._time(minutes=-60 - 5 * n))  # fmt: skip
