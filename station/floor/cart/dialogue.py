"""What a code means at the cart.

The cart is the subject of the hand.
"""

from dataclasses import replace

from station.floor.cart import rows
from station.floor.cart.acts import CheckPack, ComeBack, GoToDoor, Leave, LoadCart, UnloadCart
from station.floor.cart.rows import cart_in_hand
from station.floor.cart.work import CartHand, Mode
from station.floor.shared.no_row import NO_ROW
from station.floor.shared.retired import refuse_retired
from station.queries.carts import list_packs_on
from station.shop.acts import Answer, good, refuse
from station.shop.beginning import not_here
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Cart
from station.shop.rooms import Do, Input, Took
from station.shop.views import View
from station.shop.words import Say, say

ACTS: dict[str, type[GoToDoor | Leave | ComeBack]] = {
    "at_door": GoToDoor,
    "leave": Leave,
    "not_yet": ComeBack,
}
WHICH = refuse(say("Which cart?"), say("Scan the cart's card first."))


def handle_input(hand: CartHand, given: Input, view: View) -> Do | Took | None:
    """One input at the cart."""
    if not isinstance(given, Code):
        return None
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    if card and card.name.startswith("row_"):
        row = rows.row(hand, int(card.name[4:]), view)
        return _code(hand, row, view) if row else Took(hand, NO_ROW)
    return _button(hand, card.name, view) if card else _code(hand, given, view)


def _code(hand: CartHand, given: Code, view: View) -> Do | Took | None:
    if given.kind == "cart":
        return _take(hand, given.number, view)
    return _pack(hand, given.number, view) if given.kind == "pack" else None


def _take(hand: CartHand, number: str, view: View) -> Took:
    cart = view.get(Cart, number)
    if cart is None:
        return Took(hand, refuse(say("There is no cart {id}", id=number), say("Scan its card.")))
    if wrong := refuse_retired(cart, say("Cart {cart}", cart=cart.id)):
        return Took(hand, wrong)
    do = say("Scan every pack on it.") if cart.state == "door" else say("Scan packs onto it.")
    return Took(
        replace(hand.empty(), subject=cart.id), good(say("{cart} in hand", cart=cart.name), do)
    )


def _pack(hand: CartHand, number: str, view: View) -> Do | Took | None:
    cart, mode = cart_in_hand(hand, view), hand.work.mode
    if cart is None:
        return None
    kind: type[CheckPack | LoadCart | UnloadCart] = CheckPack if cart.state == "door" else LoadCart
    if mode:
        kind = UnloadCart if mode == "off" else LoadCart
    after = replace(hand, subject=cart.id, work=replace(hand.work, mode=""))
    return Do(f"pack/{number}", kind(cart=cart.id), after, refused=hand.disarm())


def _button(hand: CartHand, name: str, view: View) -> Do | Took | None:
    if name == "put_down" and hand.work.mode:
        left = good(say("Left; nothing was changed"), say("Go on with your work."))
        return Took(replace(hand, work=replace(hand.work, mode="")), left)
    cart = cart_in_hand(hand, view)
    if cart is None and name in ("next_page", "back_page"):
        return None
    if name not in (*ACTS, "off_cart", "on_cart", "cart_list", "next_page", "back_page"):
        return None
    if cart is None:
        return Took(hand, WHICH)
    here = replace(hand, subject=cart.id)
    if name in ACTS:
        return Do(cart.key, ACTS[name](cart=cart.id), here.idle())
    if name in ("off_cart", "on_cart"):
        return _mode(here, "off" if name == "off_cart" else "on", cart)
    if name in ("next_page", "back_page"):
        return _page(here, 1 if name == "next_page" else -1, cart, view)
    return Took(here, _printed(cart, view))


def _mode(hand: CartHand, mode: Mode, cart: Cart) -> Took:
    """What the next pack is scanned for."""
    said: Say = say("Off the cart") if mode == "off" else say("Onto the cart")
    wanted: Mode = mode if mode == "off" or cart.state == "door" else ""
    after = replace(hand, work=replace(hand.work, mode=wanted))
    return Took(after, good(said, say("Scan the pack.")))


def _page(hand: CartHand, by: int, cart: Cart, view: View) -> Took:
    page, count = rows.pages(hand, list_packs_on(view, cart))
    page = min(max(0, page + by), count - 1)
    said = say("Page {page} of {count}", page=page + 1, count=count)
    after = replace(hand, work=replace(hand.work, page=page))
    return Took(after, good(said, say("Scan or touch a pack.")))


def _printed(cart: Cart, view: View) -> Answer:
    """The list of what is on the cart; of an empty one, of what it left with last."""
    if not list_packs_on(view, cart) and not view.last(cart.key, Leave):
        do = not_here(view.begins()) or say("Scan packs onto it first.")
        return refuse(say("Nothing is on that cart"), do)
    return good(
        say("The list of {cart} is printed", cart=cart.name),
        say("It goes with it."),
        prints=(("cart_list", cart.id),),
    )
