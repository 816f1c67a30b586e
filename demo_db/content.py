"""Everything that the demo shop knows before a sheet is cut; of our own invention."""

from datetime import datetime, time, timedelta

from demo_db.machines import FIRST_LOTS, machines, shop
from demo_db.orders import orders, products
from demo_db.parts import part_facts
from demo_db.sheets import sheet_facts
from station.shop.facts import Fact, Part, Push
from station.shop.moves import SHEET

PUSH_IN = timedelta(days=6)  # until the shop begins to sell more heddle combs
Stock = tuple[str, int, str, str, str]  # part, quantity, from, to, batch
FILLED = 3  # how many times its mark of each part lies on the rack when the demo begins
DAY = (time(7), time(16))


def founding(
    received: datetime,
    now: datetime,
    day: tuple[time, time] = DAY,
    breaks: tuple[tuple[time, time], ...] = (),
) -> tuple[Fact, ...]:
    """Everything but orders; the lots were received then. An own push begins soon after `now`."""
    begins = (now + PUSH_IN).date().isoformat()
    return (
        shop(day, breaks),
        *machines(received.isoformat(timespec="seconds")),
        *part_facts(),
        *sheet_facts(),
        *products(),
        Push(id="001", product="032", quantity=200, begins=begins),
    )


def stock() -> tuple[Stock, ...]:
    """The sheets of the first lots in the store, and what lies on the rack; of no known batch."""
    parts = (part for part in part_facts() if isinstance(part, Part))
    return (
        *((SHEET, sheets, "bought", "store", lot) for lot, _, sheets in FIRST_LOTS),
        *((p.id, FILLED * p.mark, "found", f"rack/{p.rack}", "") for p in parts),
    )


def facts(now: datetime) -> tuple[Fact, ...]:
    """The whole demo shop with its 40 orders, due around `now`."""
    return (*founding(now - timedelta(days=42), now), *orders(now))
