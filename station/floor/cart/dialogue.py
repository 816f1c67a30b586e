"""What a code means at the cart: `hand.subject` is the cart, `work["off"]` takes packs off."""

from dataclasses import replace

from station.shop.acts import good, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Cart
from station.shop.rooms import Do, Hand, Input, Took
from station.shop.views import View
from station.shop.words import say


def step(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """One input at the cart."""
    if not isinstance(given, Code):
        return None
    if given.kind == "cart":
        return _take(hand, given.number, view)
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    if given.kind == "pack":
        return _pack(hand, given.number, view)
    return _button(hand, card.name, view) if card else None


def cart_in_hand(hand: Hand, view: View) -> Cart | None:
    """The cart in hand; the only cart there is, where no other was scanned."""
    if hand.subject:
        return view.get(Cart, hand.subject)
    carts = view.shelf(Cart, "all", 2)
    return carts[0] if len(carts) == 1 else None


def _take(hand: Hand, number: str, view: View) -> Took:
    cart = view.get(Cart, number)
    if cart is None:
        return Took(hand, refuse(say("There is no cart {id}", id=number), say("Scan its card.")))
    return Took(
        replace(hand.empty(), subject=cart.id),
        good(say("{cart} in hand", cart=cart.name), say("Scan packs onto it.")),
    )


def _pack(hand: Hand, number: str, view: View) -> Do | Took:
    cart = cart_in_hand(hand, view)
    if cart is None:
        return Took(hand, refuse(say("Which cart?"), say("Scan the cart's card first.")))
    kind = "check_pack" if cart.state == "door" else "load_cart"
    if hand.work.get("off"):
        kind = "unload_cart"
    after = replace(hand, subject=cart.id).with_work(off=None)
    return Do(kind, f"pack/{number}", {"cart": cart.id}, after)


def _button(hand: Hand, name: str, view: View) -> Do | Took | None:
    cart = cart_in_hand(hand, view)
    acts = {"at_door": "go_to_door", "leave": "leave", "not_yet": "come_back"}
    if name not in (*acts, "off_cart", "on_cart", "cart_list"):
        return None
    if cart is None:
        return Took(hand, refuse(say("Which cart?"), say("Scan the cart's card first.")))
    here = replace(hand, subject=cart.id)
    if name in acts:
        return Do(acts[name], f"cart/{cart.id}", {"cart": cart.id}, here.with_work(off=None))
    if name == "off_cart":
        return Took(here.with_work(off=True), good(say("Off the cart"), say("Scan the pack.")))
    if name == "on_cart":
        return Took(here.with_work(off=None), good(say("Onto the cart"), say("Scan the pack.")))
    printed = good(
        say("The list of {cart} is printed", cart=cart.name),
        say("It goes with it."),
        prints=(("cart_list", cart.id),),
    )
    return Took(here, printed)
