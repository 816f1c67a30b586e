"""Everything that the demo shop knows before a sheet is cut; of our own invention."""

from datetime import datetime, timedelta

from demo_db.machines import FIRST_LOTS, machines, shop
from demo_db.orders import orders, products
from demo_db.parts import part_facts
from demo_db.sheets import sheet_facts
from station.shop.facts import Fact
from station.shop.moves import SHEET

Stock = tuple[str, int, str, str, str]  # part, quantity, from, to, batch


def founding(received: datetime, day: tuple[str, str] = ("07:00", "16:00")) -> tuple[Fact, ...]:
    """Everything but orders; the lots were received then."""
    return (
        shop(*day),
        *machines(received.isoformat(timespec="seconds")),
        *part_facts(),
        *sheet_facts(),
        *products(),
    )


def sheets_in_store() -> tuple[Stock, ...]:
    """The sheets of the first lots, as moves into the store."""
    return tuple((SHEET, sheets, "bought", "store", lot) for lot, _, sheets in FIRST_LOTS)


def facts(now: datetime) -> tuple[Fact, ...]:
    """The whole demo shop with its 40 orders, due around `now`."""
    return (*founding(now - timedelta(days=42)), *orders(now))
