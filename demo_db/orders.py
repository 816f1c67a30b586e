"""Products of the demo shop, as lists of parts, and orders that come in."""

from datetime import datetime, timedelta
from random import Random

from station.shop.codes import usable
from station.shop.facts import Fact, Line, Order, Product

# number, name, words, (part, pieces) …
_PRODUCTS: tuple[tuple[str, str, str, tuple[tuple[str, int], ...]], ...] = (
    ("021", "LOOM-KIT", "Small loom kit", (("014", 1), ("021", 2), ("032", 4))),
    ("022", "BAND-KIT", "Band weaving kit", (("015", 1), ("022", 2), ("062", 2))),
    ("023", "WIDE-KIT", "Wide band kit", (("016", 1), ("021", 2), ("062", 4))),
    ("024", "FRAME-600", "Frame loom 600", (("051", 4), ("032", 8), ("021", 2))),
    ("025", "CARD-SET", "Weaving cards, set of 24", (("073", 24),)),
    ("026", "BOBBIN-SET", "Bobbins, set of 10", (("063", 10),)),
    ("027", "SETT-PAIR", "Two sett gauges", (("045", 1), ("046", 1))),
    ("028", "PICK-SET", "Pick-up and shed sticks", (("061", 2), ("072", 1))),
    ("029", "BEATER", "Tapestry beater", (("071", 1),)),
    ("030", "SHUTTLE-6", "Six stick shuttles 200", (("021", 6),)),
    ("031", "SHUTTLE-S", "Six stick shuttles 120", (("022", 6),)),
    ("032", "COMB-300", "Heddle comb 300", (("014", 1),)),
    ("033", "COMB-40", "Heddle comb 40", (("015", 1),)),
    ("034", "COMB-50", "Heddle comb 50", (("016", 1),)),
    ("035", "WHEELS", "Bobbin wheels, set of 20", (("074", 20),)),
    ("036", "SPACERS", "Warp spacers, set of 12", (("032", 12),)),
    ("037", "SIDE-600", "Frame side 600", (("051", 1),)),
    ("038", "KEYS", "Tension keys, set of 8", (("062", 8),)),
)
# How often a product stands in an order, beside the others.
_LIKED = {"021": 5, "022": 3, "025": 3, "027": 6, "030": 3, "032": 5, "035": 2.5, "036": 4}


def products() -> tuple[Fact, ...]:
    """Everything that is sold."""
    return tuple(
        Product(id=number, name=name, words=words, parts=parts)
        for number, name, words, parts in _PRODUCTS
    )


def needs(order: Order) -> dict[str, int]:
    """Pieces of each part that an order wants."""
    lists = {number: parts for number, _, _, parts in _PRODUCTS}
    wanted: dict[str, int] = {}
    for line in order.lines:
        for part, count in lists[line.product]:
            wanted[part] = wanted.get(part, 0) + count * line.quantity
    return wanted


def new_order(number: str, due: datetime, rng: Random) -> Order:
    """An order of one to three lines, as dealers and schools send them."""
    ids = [number for number, *_ in _PRODUCTS]
    chosen: list[str] = []
    for _ in range(rng.choice((1, 2, 2, 3))):
        found = rng.choices(ids, [_LIKED.get(i, 2) for i in ids])[0]
        if found not in chosen:
            chosen.append(found)
    lines = tuple(Line(product=p, quantity=_quantity(p, rng)) for p in chosen)
    return Order(id=number, lines=lines, due=due.isoformat(timespec="seconds"))


def _quantity(product: str, rng: Random) -> int:
    """Few of what is large or a set of many pieces, more of what is small."""
    pieces = next(
        sum(n for _, n in parts) for number, _, _, parts in _PRODUCTS if number == product
    )
    if product == "024" or pieces >= 8:
        return rng.choice((1, 2, 2, 3))
    return rng.choice((2, 3, 4, 5, 6, 8))


def numbers(start: int, count: int) -> list[str]:
    """So many order numbers from `start` on that can be printed."""
    found: list[str] = []
    while len(found) < count:
        if usable("order", f"{start:04d}"):
            found.append(f"{start:04d}")
        start += 1
    return found


FIRST_NUMBER = 3301
_DUE_HOURS = (-20, -2, 1, 2, 2, 3, 3, 4, 4, 4, 5, 5)  # the first ones; then by the day


def orders(now: datetime, seed: int = 7, count: int = 40) -> tuple[Order, ...]:
    """The orders that are in the shop now: two are late, ten are due today."""
    rng = Random(seed)
    made = []
    for n, number in enumerate(numbers(FIRST_NUMBER, count)):
        if n < len(_DUE_HOURS):
            due = now + timedelta(hours=_DUE_HOURS[n])
        else:
            days = 1 + (n - len(_DUE_HOURS)) // 7
            due = (now + timedelta(days=days)).replace(hour=(9, 11, 13, 15)[n % 4])
        made.append(new_order(number, due.replace(minute=0, second=0, microsecond=0), rng))
    return tuple(made)
