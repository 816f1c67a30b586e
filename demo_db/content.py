"""Everything that the demo shop knows before a sheet is cut; of our own invention."""

from datetime import datetime, timedelta

from demo_db.machines import FIRST_LOTS, machines, shop
from demo_db.orders import orders, products
from demo_db.parts import part_facts
from demo_db.sheets import sheet_facts
from station.shop.facts import Fact, Push
from station.shop.moves import SHEET

PUSH_IN = timedelta(days=6)  # until the shop begins to sell more heddle combs
Stock = tuple[str, int, str, str, str]  # part, quantity, from, to, batch


def founding(
    received: datetime, now: datetime, day: tuple[str, str] = ("07:00", "16:00")
) -> tuple[Fact, ...]:
    """Everything but orders; the lots were received then. An own push begins soon after `now`."""
    begins = (now + PUSH_IN).date().isoformat()
    return (
        shop(*day),
        *machines(received.isoformat(timespec="seconds")),
        *part_facts(),
        *sheet_facts(),
        *products(),
        Push(id="001", product="032", quantity=200, begins=begins),
    )


def sheets_in_store() -> tuple[Stock, ...]:
    """The sheets of the first lots, as moves into the store."""
    return tuple((SHEET, sheets, "bought", "store", lot) for lot, _, sheets in FIRST_LOTS)


def facts(now: datetime) -> tuple[Fact, ...]:
    """The whole demo shop with its 40 orders, due around `now`."""
    return (*founding(now - timedelta(days=42), now), *orders(now))
