"""Questions about carts: what stands on one, when it goes, whether it should have gone."""

from station.shop.facts import Cart, Pack
from station.shop.views import View
from station.shop.words import Say, clock, say

PACKS = 10_000  # on one cart, of one day, or waiting
CARTS = 100


def list_packs_on(view: View, cart: Cart) -> tuple[Pack, ...]:
    """Lists the packs on a cart."""
    return view.shelf(Pack, f"cart/{cart.id}", PACKS)


def count_left(view: View, day: str) -> int:
    """Counts the packs that left the shop on a day (``2026-11-25``)."""
    return len(view.shelf(Pack, f"shipped/{day}", PACKS))


def count_waiting_packs(view: View) -> int:
    """Counts the closed packs that wait for a cart."""
    return len(view.shelf(Pack, "packed", PACKS))


def say_when(cart: Cart, now: str, *, loaded: bool) -> Say | str:
    """Says when a cart goes; that it should have gone; that it went today; or nothing.

    `loaded`: something waits for it. Without that nobody is late.
    """
    if cart.left[:10] == now[:10]:
        return say("last left {at}", at=clock(cart.left))
    if not cart.goes:
        return ""
    if now[11:16] <= cart.goes:
        return say("goes {at}", at=cart.goes)
    return say("late: {at}", at=cart.goes) if loaded else say("usually {at}", at=cart.goes)


def find_next_cart(view: View, now: str) -> Cart | None:
    """Finds the cart that goes next, by its usual time; one that went today is not among them.

    One that is overdue comes first while anything waits; after the last of the day there is none.
    """
    carts = [c for c in view.shelf(Cart, "all", CARTS) if c.goes and c.left[:10] != now[:10]]
    for cart in sorted(carts, key=lambda c: (c.goes, c.id)):
        if now[11:16] <= cart.goes or is_loaded(view, cart):
            return cart
    return None


def is_loaded(view: View, cart: Cart) -> bool:
    """Says whether packs stand on a cart, or wait for one."""
    return bool(view.shelf(Pack, f"cart/{cart.id}", 1) or view.shelf(Pack, "packed", 1))
