"""What stands in the rows of the cart's screen, so that a row card means what is shown."""

from station.floor.cart.work import CartHand
from station.queries.carts import list_packs_on
from station.shop.codes import Code
from station.shop.facts import Cart, Pack
from station.shop.views import View

MOST = 6  # rows on the screen at once


def cart_in_hand(hand: CartHand, view: View) -> Cart | None:
    """The cart in hand; the only cart there is, where no other was scanned."""
    if hand.subject:
        return view.get(Cart, hand.subject)
    carts = view.shelf(Cart, "all", 2)
    return carts[0] if len(carts) == 1 else None


def pages(hand: CartHand, packs: tuple[Pack, ...]) -> tuple[int, int]:
    """The page of the list that is shown, counted from 0, and how many there are."""
    count = max(1, -(-len(packs) // MOST))
    return min(hand.work.page, count - 1), count


def shown(hand: CartHand, cart: Cart, view: View) -> tuple[Pack, ...]:
    """The packs in the rows: at the door those still to be seen first, else the newest."""
    packs = list_packs_on(view, cart)
    page, _ = pages(hand, packs)
    found = sorted(packs, key=lambda p: p.id, reverse=True)
    if cart.state == "door":
        found.sort(key=lambda p: p.seen)
    return tuple(found[page * MOST : (page + 1) * MOST])


def row(hand: CartHand, number: int, view: View) -> Code | None:
    """What the n-th row on the screen is, counted from 1; None: there is no such row."""
    cart = cart_in_hand(hand, view)
    if cart is None:
        found = [Code("cart", c.id) for c in view.shelf(Cart, "all", MOST)]
    else:
        found = [Code("pack", p.id) for p in shown(hand, cart, view)]
    return found[number - 1] if 0 < number <= len(found) else None
