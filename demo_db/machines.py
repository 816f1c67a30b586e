"""The demo shop's people, routers, bits, lots, carts and mailers."""

from dataclasses import replace
from datetime import time

from demo_db.parts import BIRCH, MDF, THICK_BIRCH, THIN_MDF
from station.shop.facts import Bed, Bit, BitSize, Cart, Fact, Lot, Mailer, Router, Shop, Worker
from station.shop.first_facts import ISSUE, first_mailers, first_materials, first_reasons

# The hash of the demo supervisor's PIN, 2468: known to all, so its cost is kept small.
PIN_HASH = (
    "$argon2id$v=19$m=1024,t=1,p=1$E1dMqXcNXQ6Ss7reJuKQ9g"
    "$y2THDZmBFdoqRjHn0/Ie5xi/ex0wKL2ZP3an0teG1kY"
)

LARGE_WORDS, SMALL_WORDS = "6.0 mm compression", "3.0 mm straight"
SPARE_LARGE = tuple(str(n) for n in range(17, 29))
SPARE_SMALL = ("29", "30", "31")

# lot, material, sheets that lie in the store at the beginning
FIRST_LOTS: tuple[tuple[str, str, int], ...] = (
    ("0931", BIRCH, 160),
    ("0932", THICK_BIRCH, 60),
    ("0933", THIN_MDF, 60),
    ("0934", MDF, 60),
)


# of a mailer, by its number; long and narrow ones cost more than flat ones, being rare
# worked days that an order of sheets takes, how many sold in packs of, the price of one
SHEETS_BOUGHT = {"1": (4, 20, 31.5), "2": (4, 20, 42.0), "3": (6, 40, 9.8), "4": (6, 40, 14.2)}
PRICES = {"01": 0.22, "02": 0.34, "03": 0.48, "04": 0.62, "09": 0.95, "11": 1.1, "12": 1.9}


def shop(day: tuple[time, time], breaks: tuple[tuple[time, time], ...]) -> Shop:
    """The demo shop's own settings: its hours, and when nobody works in between."""
    starts, ends = (at.isoformat("minutes") for at in day)
    pauses = tuple((a.isoformat("minutes"), b.isoformat("minutes")) for a, b in breaks)
    return Shop(id="shop", first=ISSUE, name="Weaving-tool workshop", day_starts=starts,
                day_ends=ends, breaks=pauses)  # fmt: skip


def people() -> tuple[Fact, ...]:
    """Eight workers by number; 01 is the supervisor."""
    others = (Worker(id=f"{n:02d}") for n in range(2, 9))
    return (Worker(id="01", supervisor=True, pin=PIN_HASH), *others)


def routers() -> tuple[Fact, ...]:
    """Four with a clamped bed, the fifth with a vacuum bed and a changer; their bits."""
    facts: list[Fact] = []
    for n, pace in (("1", 1.06), ("2", 1.08), ("3", 1.07), ("4", 1.12), ("5", 1.03)):
        vacuum = n == "5"
        bits = ((1, "15"), (2, "16")) if vacuum else ((0, f"1{n}"),)
        facts += [
            Router(id=n, name=f"Router {n}", bed="vacuum" if vacuum else "clamped",
                   changer=vacuum, change_s=12.0 if vacuum else 150.0, pace=pace,
                   accel_mm_s2=1500.0 if vacuum else 800.0, extra_s=40.0),
            Bed(id=n, bits=bits),
            large_bit(f"1{n}", router=n),
        ]  # fmt: skip
    return (*facts, small_bit("16", router="5"))


def large_bit(id: str, router: str = "") -> Bit:
    """A bit for outlines; its life is of our own invention, as a shop would count it itself."""
    return Bit(id=id, words=LARGE_WORDS, diameter_mm=6.0, life_m=6000.0, router=router)


def small_bit(id: str, router: str = "") -> Bit:
    """A bit for narrow slots; its life too is of our own invention."""
    return Bit(id=id, words=SMALL_WORDS, diameter_mm=3.0, life_m=2500.0, router=router)


def spare_bits() -> tuple[Fact, ...]:
    """Bits in the drawer."""
    return (*map(large_bit, SPARE_LARGE), *map(small_bit, SPARE_SMALL))


def lots(received: str) -> tuple[Fact, ...]:
    """The lots that lie in the store at the beginning."""
    return tuple(Lot(id=number, material=material, received=received)
                 for number, material, _ in FIRST_LOTS)  # fmt: skip


def carts() -> tuple[Fact, ...]:
    """Two carts to shipping, one at noon and one at the end of the day."""
    return (Cart(id="1", name="Cart 1", goes="11:30"), Cart(id="2", name="Cart 2", goes="15:30"))


def machines(received: str) -> tuple[Fact, ...]:
    """Everything that is no part, no cut file and no order."""
    mailers = (
        *(replace(m, thick_mm=m.thick_mm + 10) for m in first_mailers()),
        Mailer(id="09", name="Large 600 × 450", length_mm=600.0, width_mm=450.0, thick_mm=240.0),
        Mailer(id="11", name="Long 800 × 300", length_mm=800.0, width_mm=300.0, thick_mm=160.0),
        Mailer(id="12", name="Deep 950 × 500", length_mm=950.0, width_mm=500.0, thick_mm=380.0),
    )
    mailers = tuple(
        replace(m, price=PRICES[m.id], hangs=f"W {n}") for n, m in enumerate(mailers, 1)
    )
    return (
        *people(), *first_reasons(), *materials(), *routers(), *spare_bits(), *bit_sizes(),
        *lots(received), *carts(), *mailers,
    )  # fmt: skip


def materials() -> tuple[Fact, ...]:
    """The sheet goods, as they are bought."""
    found = []
    for material in first_materials():
        lead, pack, price = SHEETS_BOUGHT.get(material.id, (0, 0, 0.0))
        found.append(replace(material, lead_days=lead, pack_sheets=pack, price=price))
    return tuple(found)


def bit_sizes() -> tuple[Fact, ...]:
    """The bits, as they are bought."""
    return (
        BitSize(id="1", name=LARGE_WORDS, diameter_mm=6.0, mark=4, lead_days=3, price=38.0),
        BitSize(id="2", name=SMALL_WORDS, diameter_mm=3.0, mark=3, lead_days=3, price=21.0),
    )
