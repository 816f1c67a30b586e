"""The cart: packs on and off; it leaves only when every pack was scanned at the door."""

from dataclasses import replace

from station.floor.cart.acts import CheckPack, ComeBack, GoToDoor, Leave, LoadCart, UnloadCart
from station.floor.shared.retired import refuse_retired
from station.queries.batches import find_hold, keep_held
from station.queries.carts import list_packs_on
from station.queries.orders import say_packed_anew, say_void
from station.shop.acts import Act, Answer, attention, good, notice, refuse
from station.shop.facts import Batch, Cart, Order, Pack
from station.shop.moves import Held, Move, move, tail
from station.shop.views import Past, Rule, Rules, View, by_kind
from station.shop.words import Say, say

PACKED_ANEW = say("Back to packing: scan it there, open it again, pack it anew.")


def decide_load(act: Act[LoadCart], view: View) -> Answer:
    """A pack onto a cart; one of a cancelled order is caught.

    At the door its scan is the one that is due there.
    """
    pack, cart = view.get(Pack, tail(act.subject)), view.get(Cart, act.args.cart)
    if pack is None or cart is None:
        return refuse(say("There is no such pack"), say("Scan the label again."))
    if wrong := refuse_retired(cart, say("Cart {cart}", cart=cart.id)):
        return wrong
    if pack.state == "cart":
        return notice(
            say("Pack {pack} is on cart {cart} already", pack=pack.id, cart=pack.cart),
            say("Next pack."),
        )
    if pack.state == "shipped":
        return refuse(say("Pack {pack} has left already", pack=pack.id), say("Look at its label."))
    if pack.state == "shelf":
        return refuse(
            say("Pack {pack} is for the shelf", pack=pack.id),
            say("Put it back: packing takes it for an order."),
        )
    if pack.state != "packed":
        return refuse(say_void(pack), say_packed_anew(view, pack))
    inside = view.stock(place=f"pack/{pack.id}")
    if problem := cancelled(view, pack) or _held(view, pack, inside):
        return problem
    moves = tuple(move(h.part, h.qty, h.place, f"cart/{cart.id}", h.batch) for h in inside)
    door = cart.state == "door"
    do = say("Packs on it: {n}. Next pack, or to the door.", n=len(list_packs_on(view, cart)) + 1)
    if other := _find_left_behind(view, pack, cart):
        do = say("Pack {other} is of the same order: onto it too.", other=other.id)
    return good(
        say("Pack {pack} is on {cart}", pack=pack.id, cart=cart.name),
        still_to_see(view, cart) if door else do,
        moves=moves,
        sets=(replace(pack, state="cart", cart=cart.id, seen=door),),
    )


def _find_left_behind(view: View, pack: Pack, cart: Cart) -> Pack | None:
    """Finds another pack of the same order that is still here, and not on this cart."""
    order = view.get(Order, pack.order)
    others = (view.get(Pack, c.pack) for c in (order.packs if order else ()) if c.pack != pack.id)
    here = (p for p in others if p and p.state in ("packed", "cart"))
    return next((p for p in here if p.cart != cart.id), None)


def still_to_see(view: View, cart: Cart, now: int = 0) -> Say:
    """How many packs are still to be scanned at the door, `now` of them by this act."""
    left = sum(1 for p in list_packs_on(view, cart) if not p.seen) - now
    return say("{n} to go.", n=left) if left else say("All seen. The cart can leave.")


def cancelled(view: View, pack: Pack) -> Answer | None:
    """A pack whose order was cancelled does not leave."""
    order = view.get(Order, pack.order)
    if order and order.state == "cancelled":
        return refuse(
            say("Order {order} is cancelled", order=pack.order),
            say("Take pack {pack} back to packing.", pack=pack.id),
        )
    return None


def _held(view: View, pack: Pack, inside: tuple[Held, ...]) -> Answer | None:
    """A pack with pieces of a held batch does not leave."""
    batch = next((h.batch for h in inside if find_hold(view, h.batch)), "")
    if not batch:
        return None
    do = PACKED_ANEW
    if pack.state == "cart":
        do = say("Scan “Off the cart”, then the pack; packing opens it.")
    return refuse(say("Pack {pack}: batch {batch} in it is held", pack=pack.id, batch=batch), do)


def refuse_held_on_cart(view: View, pack: Pack) -> Answer | None:
    """A pack on the cart with pieces of a held batch does not leave."""
    on_it = keep_held(view, view.stock(place=f"cart/{pack.cart}"))
    if not on_it:
        return None
    loaded = view.last(pack.key, LoadCart)
    if loaded:
        own = {(m.part, m.frm.batch) for m in loaded.moves}
        on_it = tuple(h for h in on_it if (h.part, h.batch) in own)
    else:  # loaded before this PC's history begins: any of its parts may be the held ones
        on_it = tuple(h for h in on_it if h.part in dict(pack.contents))
    return _held(view, pack, on_it)


def decide_unload(act: Act[UnloadCart], view: View) -> Answer:
    """A pack off its cart again; a cart that is empty is at no door any more."""
    pack, cart = view.get(Pack, tail(act.subject)), view.get(Cart, act.args.cart)
    if pack is None or pack.state != "cart":
        return refuse(say("That pack is on no cart"), say("Scan the label again."))
    loaded = view.last(pack.key, LoadCart)
    if loaded is None:  # then nobody here knows which of the pieces on the cart are its own
        return refuse(
            say("Pack {pack} was loaded before this PC's history begins", pack=pack.id),
            say("Take it off at another PC."),
        )
    back, empty = _brought(pack, loaded), list_packs_on(view, cart) == (pack,) if cart else False
    held = any(find_hold(view, m.frm.batch) for m in back)
    return good(
        say("Pack {pack} is off the cart", pack=pack.id),
        PACKED_ANEW if held else say("Put it with the packs."),
        moves=back,
        sets=(
            replace(pack, state="packed", cart="", seen=False),
            *((replace(cart, state="here"),) if cart and empty else ()),
        ),
    )


def _brought(pack: Pack, loaded: Past[LoadCart]) -> tuple[Move, ...]:
    """The very pieces that this pack brought onto its cart, batch by batch, off it again."""
    return tuple(
        move(m.part, m.qty, f"cart/{pack.cart}", f"pack/{pack.id}", m.frm.batch)
        for m in loaded.moves
    )


def decide_go_to_door(act: Act[GoToDoor], view: View) -> Answer:
    """The cart is at the door: every pack on it is scanned once more."""
    cart = view.get(Cart, act.args.cart)
    if cart is None or not list_packs_on(view, cart):
        return refuse(say("Nothing is on that cart"), say("Scan packs onto it first."))
    return good(
        say("{cart} is at the door", cart=cart.name),
        say("Scan every pack on it: {n}.", n=len(list_packs_on(view, cart))),
        sets=(replace(cart, state="door"),),
    )


def decide_check(act: Act[CheckPack], view: View) -> Answer:
    """A pack seen at the door."""
    pack, cart = view.get(Pack, tail(act.subject)), view.get(Cart, act.args.cart)
    if pack is None or cart is None or pack.state != "cart" or pack.cart != cart.id:
        return refuse(
            say("That pack is not on this cart's list"),
            say("Scan “Onto the cart”, then the pack; or leave it here."),
        )
    if problem := cancelled(view, pack) or refuse_held_on_cart(view, pack):
        return problem
    if pack.seen:
        return notice(say("Pack {pack} was seen already", pack=pack.id), say("Next pack."))
    return good(
        say("Pack {pack} seen at the door", pack=pack.id),
        still_to_see(view, cart, now=1),
        sets=(replace(pack, seen=True),),
    )


def decide_leave(act: Act[Leave], view: View) -> Answer:
    """The cart leaves with every pack on its list."""
    cart = view.get(Cart, act.args.cart)
    packs = list_packs_on(view, cart) if cart else ()
    if cart is None or not packs:
        return refuse(say("Nothing is on that cart"), say("Scan packs onto it first."))
    if cart.state != "door":
        return refuse(
            say("{cart} is not at the door yet", cart=cart.name),
            say("Push it to the door and scan “At the door”."),
        )
    unseen = [p.id for p in packs if not p.seen]
    if unseen:
        return refuse(
            say("Not scanned at the door: {n}", n=len(unseen)),
            say("Scan pack {pack} next.", pack=unseen[0]),
        )
    for pack in packs:
        if problem := cancelled(view, pack) or refuse_held_on_cart(view, pack):
            return problem
    return _left(act, view, cart, packs)


def _left(act: Act[Leave], view: View, cart: Cart, packs: tuple[Pack, ...]) -> Answer:
    moves = tuple(
        move(h.part, h.qty, h.place, "shipped", h.batch)
        for h in view.stock(place=f"cart/{cart.id}")
    )
    orders = (view.get(Order, o) for o in dict.fromkeys(p.order for p in packs))
    sets = (
        replace(cart, state="here", left=act.at, runs=cart.runs + 1),
        *(replace(p, state="shipped", left=act.at) for p in packs),
        *(replace(o, state="shipped") for o in orders if o and _is_gone(view, o, packs)),
    )
    done = good(
        say("{cart} left, packs on it: {n}", cart=cart.name, n=len(packs)),
        say("It is empty now."),
        moves=moves,
        sets=sets,
    )
    return replace(done, certain="needed")


def _is_gone(view: View, order: Order, leaving: tuple[Pack, ...]) -> bool:
    """Tells whether all of an order has left with these packs: no other of it is here."""
    going = {p.id for p in leaving}
    others = (view.get(Pack, c.pack) for c in order.packs if c.pack not in going)
    return order.state == "packed" and all(p is None or p.state == "shipped" for p in others)


def decide_come_back(act: Act[ComeBack], view: View) -> Answer:
    """Back from the door: the packs are to be scanned there again."""
    cart = view.get(Cart, act.args.cart)
    if cart is None or cart.state != "door":
        return refuse(say("That cart is not at the door"), say("Go on loading it."))
    again = tuple(replace(p, seen=False) for p in list_packs_on(view, cart) if p.seen)
    return attention(
        say("{cart} is back from the door", cart=cart.name),
        say("All packs are scanned there again."),
        sets=(replace(cart, state="here"), *again),
    )


_READS = frozenset({Batch, Cart, Order, Pack})

RULES: Rules = by_kind(
    Rule(args=LoadCart, reads=_READS, decide=decide_load),
    Rule(args=UnloadCart, reads=_READS, decide=decide_unload),
    Rule(args=GoToDoor, reads=_READS, decide=decide_go_to_door),
    Rule(args=CheckPack, reads=_READS, decide=decide_check),
    Rule(args=Leave, reads=_READS, decide=decide_leave),
    Rule(args=ComeBack, reads=_READS, decide=decide_come_back),
)
