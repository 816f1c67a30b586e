"""Questions about an order that lacks a part: what can be done, and when it leaves then."""

from datetime import date, timedelta
from typing import NamedTuple

from station.queries.carts import find_next_cart
from station.queries.orders import MOST, Need, count_wanted
from station.queries.underway import count_underway
from station.shop.facts import Cart, Order
from station.shop.views import View, total

SHEET_DAYS = 1  # from asking for a sheet to its parts on the rack: about, until it is planned
CARTS = 100


class LaterPack(NamedTuple):
    """Pieces of a part in the open pack of an order that is due later."""

    order: Order
    pieces: int


class Ways(NamedTuple):
    """What can be done about a part that an order lacks, and the day that it leaves then.

    A day is ``2026-11-25``; empty: it can't be told, or that cannot be done. `later` is the order
    that pieces are taken from.
    """

    wait: str
    later: LaterPack | None
    now: str
    sheet: str


def list_ways(view: View, order: Order, need: Need, now: str) -> Ways:
    """Lists what can be done about what an order lacks of a part."""
    coming = count_underway(view, need.part.id, order.id)
    today = find_leaving_day(view, now)
    wait = ""
    if coming.all >= need.lacking:
        ready = max(coming.due, now) if coming.due else now
        wait = find_leaving_day(view, ready if ready[:10] > now[:10] else now)
    sheet = "" if coming.all >= need.lacking else skip_days(today, SHEET_DAYS)
    return Ways(wait, find_later_pack(view, order, need), today, sheet)


def find_later_pack(view: View, order: Order, need: Need) -> LaterPack | None:
    """Finds the order due last that has all of what lacks in its open pack."""
    for other in reversed(view.shelf(Order, "open", MOST)):
        if (other.due, other.id) <= (order.due, order.id) or other.id == order.id:
            return None
        wanted = count_wanted(view, other).get(need.part.id, 0)
        inside = total(view.stock(place=f"packing/{other.id}"), part=need.part.id)
        if need.lacking <= min(inside, wanted):
            return LaterPack(other, need.lacking)
    return None


def find_leaving_day(view: View, at: str) -> str:
    """Finds the day on which what is packed at a time leaves: the next cart's."""
    carts = [c for c in view.shelf(Cart, "all", CARTS) if c.goes]
    if not carts or find_next_cart(view, at):
        return at[:10]
    return skip_days(at[:10], 1)


def skip_days(day: str, days: int) -> str:
    """Skips so many days that are no Saturday or Sunday."""
    found = date.fromisoformat(day)
    while days:
        found += timedelta(days=1)
        days -= found.weekday() < 5
    return found.isoformat()
