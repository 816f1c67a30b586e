"""What people do in the simulated shop: short runs of scans over few batches and orders."""

from collections.abc import Iterator
from random import Random

from station.floor.today.dialogue import ROWS
from station.ledger.ledger import Ledger
from station.shop.facts import Batch, Concern, Order, Pack, Product

ORDERS = ("3306", "3307", "3308", "3310", "3311")
PARTS = ("061", "062", "045", "051")


def errand(random: Random, ledger: Ledger) -> Iterator[str]:
    """The scans of one errand; which one is left to chance."""
    kind = random.choices(list(ERRANDS), [weight for weight, _ in ERRANDS.values()])[0]
    yield from ERRANDS[kind][1](random, ledger)


def _batch(random: Random, ledger: Ledger, place: str = "") -> str:
    """Mostly one that lies there, so that many want the same; else any."""
    there = sorted({h.batch for h in ledger.view.stock(place=place)}) if place else []
    if there and random.random() < 0.8:
        return random.choice(there)
    return random.choice([b.id for b in ledger.facts(Batch)])


def _parts(ledger: Ledger, order: str) -> list[str]:
    """The parts that go into an order."""
    found = ledger.view.get(Order, order)
    products = (ledger.view.get(Product, x.product) for x in (found.lines if found else ()))
    return [part for p in products if p for part, _ in p.parts]


def _pop(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area popping"
    yield f"traveller {_batch(random, ledger, 'popping/1')}"
    if random.random() < 0.4:
        yield from ("button missing" if random.random() < 0.5 else "reason 01", "2")
    yield "button pass_on"


def _trim(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area trimming"
    yield f"traveller {_batch(random, ledger, 'trimming')}"
    if random.random() < 0.4:
        yield from ("reason 03" if random.random() < 0.5 else "reason 22", "1")
    yield "button on_rack"


def _split(random: Random, ledger: Ledger) -> Iterator[str]:
    area, place = random.choice((("popping", "popping/1"), ("trimming", "trimming")))
    yield f"@area {area}"
    yield f"traveller {_batch(random, ledger, place)}"
    yield "button split"
    yield str(random.choice((1, 5, 30, 80)))
    yield "button put_down"


def _find(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area trimming"
    yield from ("button found", f"traveller {_batch(random, ledger)}", "1", "button put_down")


def _hold(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area trimming"
    yield from (f"traveller {_batch(random, ledger)}", "button hold", "button put_down")


def _claim(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area packing"
    yield f"order {random.choice(ORDERS)}"


def _pack(random: Random, ledger: Ledger) -> Iterator[str]:
    order = random.choice(ORDERS)
    yield "@area packing"
    yield f"order {order}"
    for part in _parts(ledger, order) or random.sample(PARTS, 1):
        yield f"part {part}"
    yield "button close_pack" if random.random() < 0.8 else "button put_down"


def _close(random: Random, ledger: Ledger) -> Iterator[str]:
    mine = [o.id for o in ledger.facts(Order) if o.claimed == ledger.station]
    yield "@area packing"
    order = random.choice(mine or ORDERS)
    yield f"order {order}"
    yield from (f"part {part}" for part in _parts(ledger, order))
    yield "button close_pack"


def _miss(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area packing"
    yield f"order {random.choice(ORDERS)}"
    yield from ("button part_missing", str(random.randrange(8)), "reason 51", "button wait")


def _cart(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "@area cart"
    yield "cart 1"
    packs = [p.id for p in ledger.facts(Pack)]
    yield from (f"pack {p}" for p in packs[:4])
    if random.random() < 0.5:
        yield "button at_door"
        yield from (f"pack {p}" for p in packs[:4])
        yield "button leave"


def _undo(random: Random, ledger: Ledger) -> Iterator[str]:
    yield "button undo"


def _settle(random: Random, ledger: Ledger) -> Iterator[str]:
    waiting = len(ledger.view.shelf(Concern, "open"))
    if waiting:
        yield "@area today"
        yield f"button row_{random.randint(1, min(waiting, ROWS))}"
        yield f"button row_{random.choice((1, 2))}"


ERRANDS = {
    "pop": (5, _pop),
    "trim": (5, _trim),
    "split": (4, _split),
    "find": (1, _find),
    "hold": (1, _hold),
    "claim": (1, _claim),
    "pack": (3, _pack),
    "close": (3, _close),
    "miss": (1, _miss),
    "cart": (2, _cart),
    "undo": (3, _undo),
    "settle": (3, _settle),
}
