"""What a simulated shop is, and a shop of chance, with its orders for all days."""

from dataclasses import dataclass, replace
from random import Random

DAY = 540  # minutes from seven to four; a day's work in the routers
DAYS_BEFORE, DAYS = 20, 30  # worked days that nobody judges, then the six weeks
AN_ORDER = 4.0  # minutes to pack one, besides its pieces
SEARCHED = 400  # orders drawn to know what a day takes of each part


@dataclass(frozen=True)
class File:
    name: str
    makes: dict[str, int]  # pieces of each part, a sheet
    minutes: dict[str, float]  # a sheet, loading too, by the routers that take it


@dataclass(frozen=True)
class Product:
    name: str
    parts: dict[str, int]
    weight: float  # how often it is ordered, beside the others
    sets: float  # ordered at once, in the middle


@dataclass(frozen=True)
class Order:
    name: str
    comes: int  # the morning it is known
    due: int  # minutes of work since the first morning
    wants: dict[str, int]


@dataclass(frozen=True)
class Shop:
    seed: int
    files: dict[str, File]
    routers: tuple[str, ...]
    marks: dict[str, int]
    lost: dict[str, tuple[float, float, float]]  # of a part: cutting, popping, trimming
    people: dict[str, float]  # minutes of work a day at popping, trimming, packing
    handling: dict[str, float]  # minutes a piece there
    orders: tuple[Order, ...]
    a_day: dict[str, float]  # pieces of each part, in the middle

    @property
    def parts(self) -> tuple[str, ...]:
        return tuple(self.lost)


def draw_shop(seed: int) -> Shop:
    """A shop of eight to sixteen parts and two or three routers, busy.

    Its means are enough for what an order wants in the middle; the orders that chance draws may
    want more than a step gets through, so about one shop of eight is late whoever plans.
    """
    rng = Random(f"shop {seed}")
    parts = [f"P{n}" for n in range(rng.randint(8, 16))]
    routers = tuple(f"R{n}" for n in range(rng.randint(2, 3)))
    files = _draw_files(rng, parts, routers)
    load, orders_a_day = rng.uniform(0.55, 0.78), rng.uniform(4, 16)
    minutes = load * DAY * len(routers) / orders_a_day  # of the routers, for an order
    products = _draw_products(rng, parts)
    for _ in range(3):
        order = _weigh_orders(Random(f"mean {seed}"), products)
        scale = minutes / _count_minutes(files, order)
        products = [replace(p, sets=p.sets * scale) for p in products]
    a_day = {part: n * orders_a_day for part, n in order.items()}
    handling = {"popping": 0.2, "trimming": 0.3, "packing": 0.15}  # minutes a piece
    needed = {step: each * sum(a_day.values()) for step, each in handling.items()}
    needed["packing"] += AN_ORDER * orders_a_day
    return Shop(
        seed=seed, files=files, routers=routers,
        marks={part: _guess_mark(rng, a_day[part]) for part in parts},
        lost={p: (rng.uniform(0.005, 0.03), rng.uniform(0, 0.01), rng.uniform(0, 0.02))
              for p in parts},
        people={step: minutes * rng.uniform(1.2, 1.6) for step, minutes in needed.items()},
        handling=handling,
        orders=_draw_orders(rng, products, orders_a_day),
        a_day=a_day,
    )  # fmt: skip


def _draw_files(rng: Random, parts: list[str], routers: tuple[str, ...]) -> dict[str, File]:
    """A file for each part alone, and some for several at once."""
    files = {}
    alone = {part: rng.randint(6, 40) for part in parts}
    sets = [[p] for p in parts] + [rng.sample(parts, rng.randint(2, 4))
                                   for _ in range(rng.randint(3, 5))]  # fmt: skip
    for n, chosen in enumerate(sets):
        makes = {p: max(1, round(alone[p] * rng.uniform(0.9, 1.2) / len(chosen))) for p in chosen}
        minutes, takes = rng.uniform(15, 45), rng.sample(routers, rng.randint(2, len(routers)))
        name = f"F{n}"
        files[name] = File(
            name, makes, {r: round(minutes * rng.uniform(0.9, 1.15), 1) for r in takes}
        )
    return files


def _draw_products(rng: Random, parts: list[str]) -> list[Product]:
    """Few that are ordered every day, many that are ordered now and then; each part is in one."""
    left = rng.sample(parts, len(parts))
    products = []
    while left or len(products) < len(parts) // 2:
        chosen = left[: rng.randint(1, 3)] or rng.sample(parts, rng.randint(1, 3))
        left = left[len(chosen) :]
        made = {p: rng.choice((1, 1, 2, 2, 4, 8)) for p in chosen}
        weight, sets = 1 / (1 + len(products)), rng.choice((1, 3, 6, 12))
        products.append(Product(f"T{len(products)}", made, weight, sets))
    return products


def _draw_wants(rng: Random, products: list[Product]) -> dict[str, int]:
    """What one order wants: a product or two, so many sets of each."""
    wants: dict[str, int] = {}
    weights = [p.weight for p in products]
    for product in {
        p.name: p for p in rng.choices(products, weights, k=rng.choice((1, 1, 2)))
    }.values():
        sets = max(1, round(rng.expovariate(1 / product.sets)))
        for part, each in product.parts.items():
            wants[part] = wants.get(part, 0) + each * sets
    return wants


def _weigh_orders(rng: Random, products: list[Product]) -> dict[str, float]:
    """Pieces of each part that an order wants, in the middle."""
    total: dict[str, int] = {part: 0 for p in products for part in p.parts}
    for _ in range(SEARCHED):
        for part, n in _draw_wants(rng, products).items():
            total[part] += n
    return {part: n / SEARCHED for part, n in total.items()}


def _count_minutes(files: dict[str, File], pieces: dict[str, float]) -> float:
    """Router minutes for so many pieces, each part by its own file."""
    alone = {next(iter(f.makes)): f for f in files.values() if len(f.makes) == 1}
    return sum(n / alone[p].makes[p] * min(alone[p].minutes.values()) for p, n in pieces.items())


def _guess_mark(rng: Random, a_day: float) -> int:
    """A mark as people set it: some days' use, often well off; none for one part in six."""
    return (
        0
        if rng.random() < 1 / 6
        else round(a_day * rng.uniform(0.3, 2) * rng.lognormvariate(0, 0.6))
    )


def _draw_orders(rng: Random, products: list[Product], a_day: float) -> tuple[Order, ...]:
    """Orders as they come: more on some days; due that day or up to five worked days later."""
    orders = []
    for day in range(DAYS_BEFORE + DAYS):
        busy = a_day * rng.lognormvariate(0, 0.3)
        count = int(busy) + (rng.random() < busy % 1)
        for _ in range(count):
            due = (day + rng.choice((0, 1, 1, 2, 2, 3, 5))) * DAY + rng.choice((300, 480))
            orders.append(Order(f"O{len(orders)}", day, due, _draw_wants(rng, products)))
    return tuple(orders)
