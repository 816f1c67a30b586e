"""What the cart's screen shows: its packs, which were seen at the door, what waits."""

from station.floor.cart.dialogue import cart_in_hand
from station.floor.cart.rules import packs_on
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import (
    Cards,
    Cell,
    Entry,
    Face,
    Header,
    Hint,
    Listing,
    Press,
    Remark,
    Row,
    Table,
)
from station.shop.facts import Cart, Order, Pack, Shop
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import say


def face(hand: Hand, view: View) -> Face:
    """The screen at the cart."""
    cart = cart_in_hand(hand, view)
    if cart is None:
        return _choose(view)
    packs = packs_on(view, cart)
    door = cart.state == "door"
    seen = sum(1 for p in packs if p.seen)
    note = (
        say("at the door: {seen} of {n} seen", seen=seen, n=len(packs))
        if door
        else say("loading; scan a pack to put it on")
    )
    return Face(
        title=say("Cart"),
        where=cart.name,
        main=(
            Header(
                label=say("Cart"),
                number=cart.id,
                title=cart.name,
                note=note,
                right_label=say("packs"),
                right=f"{len(packs)}",
                right_small=say("goes {at}", at=cart.goes) if cart.goes else "",
            ),
            _packs(packs, view, door=door),
        ),
        presses=_presses(packs, seen, door=door),
        side=(_waiting(view), _care(view)),
    )


def _choose(view: View) -> Face:
    entries = tuple(
        Entry(
            big=c.name,
            right=say("{n} {n|pack|packs}", n=len(packs_on(view, c))),
            line1=say("goes at {at}", at=c.goes) if c.goes else "",
            code=write("cart", c.id),
        )
        for c in view.shelf(Cart, "all", 6)
    )
    return Face(
        title=say("Cart"),
        main=(
            Hint(title=say("Which cart?"), note=say("Scan its card.")),
            Cards(title=say("Carts"), entries=entries),
        ),
        side=(_waiting(view), _care(view)),
    )


def _packs(packs: tuple[Pack, ...], view: View, *, door: bool) -> Table:
    rows = []
    for pack in packs[-6:] if not door else sorted(packs, key=lambda p: p.seen)[:6]:
        order = view.get(Order, pack.order)
        gone = order is not None and order.state == "cancelled"
        rows.append(
            Row(
                title=pack.id,
                note=say("order {order}", order=pack.order),
                cells=(
                    Cell(text=say("{n} {n|part|parts}", n=sum(n for _, n in pack.contents))),
                    Cell(
                        text=say("cancelled") if gone else say("{g} g", g=round(pack.mass_g)),
                        tone="stop" if gone else "",
                    ),
                ),
                done=pack.seen if door else None,
                code=write("pack", pack.id) if door else "",
            )
        )
    title = say("Still to see at the door come first") if door else say("Put on last")
    return Table(columns=(say("pack"), say("parts"), say("weight")), rows=tuple(rows), title=title)


def _presses(packs: tuple[Pack, ...], seen: int, *, door: bool) -> tuple[Press, ...]:
    if door:
        ready = bool(packs) and seen == len(packs)
        return (
            Press(
                label=say("The cart leaves"),
                code=button("leave"),
                wide=2,
                style="primary" if ready else "off",
            ),
            Press(label=say("Back from the door"), code=button("not_yet")),
            Press(label=say("Print the list"), code=button("cart_list")),
        )
    return (
        Press(
            label=say("At the door"),
            code=button("at_door"),
            wide=2,
            style="primary" if packs else "off",
        ),
        Press(label=say("Take one off"), code=button("off_cart")),
        Press(label=say("Print the list"), code=button("cart_list")),
    )


def _waiting(view: View) -> Listing:
    packs = view.shelf(Pack, "packed", 500)
    rows = tuple(
        (
            (Cell(text=p.id, bold=True), Cell(text=say("order {order}", order=p.order))),
            write("pack", p.id),
        )
        for p in packs[:6]
    )
    return Listing(
        title=say("Packs that wait: {n}", n=len(packs)), rows=rows, empty=say("No pack waits.")
    )


def _care(view: View) -> Remark:
    shop = view.get(Shop, "shop") or Shop(id="shop")
    return Remark(
        tone="attention",
        title=say("Take care"),
        text=say(
            "Push the cart, never pull it. See over the load. Heavy packs low. {local}",
            local=shop.caution,
        ),
    )
