"""What the cart's screen shows: its packs, which were seen at the door, what waits."""

from station.floor.cart import rows
from station.floor.cart.rules import refuse_held_on_cart
from station.floor.cart.work import CartHand, Mode
from station.queries.carts import PACKS, is_loaded, list_packs_on, say_when
from station.queries.settings import find_shop
from station.shop.cards import button, row_code
from station.shop.cautions import CAUTIONS, say_cautions
from station.shop.codes import write_touch
from station.shop.faces import (
    Block,
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
from station.shop.facts import Cart, Order, Pack
from station.shop.views import View
from station.shop.words import Say, kilograms, mass, say


def screen(hand: CartHand, view: View) -> Face:
    """The screen at the cart."""
    cart = rows.cart_in_hand(hand, view)
    if cart is None:
        return _choose(hand, view)
    packs = list_packs_on(view, cart)
    mode = hand.work.mode
    return Face(
        title=say("Cart"),
        where=cart.name,
        main=(_header(hand, cart, packs, view), *_hint(packs, mode), *_packs(hand, cart, view)),
        presses=_presses(hand, cart, packs, view),
        side=(_waiting(view), _care(view)),
    )


def _header(hand: CartHand, cart: Cart, packs: tuple[Pack, ...], view: View) -> Header:
    kilos = _say_load(packs)
    if cart.state == "door":
        seen = sum(1 for p in packs if p.seen)
        note = say("at the door: {seen} of {n} seen · {kilos}", seen=seen, n=len(packs),
                   kilos=kilos)  # fmt: skip
    else:
        note = say("loading · {kilos}", kilos=kilos) if packs else say("loading")
    return Header(
        label=say("Cart"),
        number=cart.id,
        title=cart.name,
        note=note,
        right_label=say("{n|pack|packs} on it", n=len(packs)),
        right=f"{len(packs)}",
        right_small=say_when(cart, hand.now, loaded=is_loaded(view, cart)),
    )


def _say_load(packs: tuple[Pack, ...]) -> Say:
    """Says what lies on a cart; packs of no known weight are told, not taken for nothing."""
    known = [grams for p in packs if (grams := p.scale_g or p.mass_g)]
    kg, unknown = kilograms(sum(known) / 1000), len(packs) - len(known)
    if not unknown:
        return say("about {kg} kg on it", kg=kg)
    if not known:
        return say("its weight is not known")
    return say("at least {kg} kg on it, {n} {n|pack|packs} of unknown weight", kg=kg, n=unknown)


def _hint(packs: tuple[Pack, ...], mode: Mode) -> tuple[Block, ...]:
    """What the next scan does, where it is not plain from the list."""
    if mode == "off":
        note = say("scan or touch the pack that comes off")
        return (Hint(title=say("Off the cart"), note=note, tone="attention"),)
    if mode == "on":
        return (Hint(title=say("Onto the cart"), note=say("scan the pack that goes on")),)
    if not packs:
        note = say("scan its label, or touch it in the list at the right")
        return (Hint(title=say("Put the first pack on"), note=note),)
    return ()


def _choose(hand: CartHand, view: View) -> Face:
    entries = tuple(
        Entry(
            big=c.name,
            right=say("{n} {n|pack|packs}", n=len(list_packs_on(view, c))),
            line1=say_when(c, hand.now, loaded=is_loaded(view, c)),
            line2=say("at the door") if c.state == "door" else "",
            code=row_code("cart", c.id, n),
        )
        for n, c in enumerate(view.shelf(Cart, "all", rows.MOST), 1)
    )
    return Face(
        title=say("Cart"),
        main=(
            Hint(title=say("Which cart?"), note=say("scan its card, or touch it")),
            Cards(title=say("Carts"), entries=entries),
        ),
        side=(_waiting(view), _care(view)),
    )


def _packs(hand: CartHand, cart: Cart, view: View) -> tuple[Table, ...]:
    packs = rows.shown(hand, cart, view)
    if not packs:
        return ()
    door = cart.state == "door"
    page, count = rows.pages(hand, list_packs_on(view, cart))
    title = say("Still to see come first") if door else say("Newest first")
    if door and _may_leave(list_packs_on(view, cart), view):
        title = say("All seen: the cart may leave")
    if count > 1:
        title = say("{title} · page {page} of {count}", title=title, page=page + 1, count=count)
    table = Table(
        columns=(say("pack"), say("parts"), say("weight")),
        rows=tuple(_row(p, n, view, door=door) for n, p in enumerate(packs, 1)),
        title=title,
    )
    return (table,)


def _row(pack: Pack, number: int, view: View, *, door: bool) -> Row:
    wrong = _say_wrong(pack, view)
    weight = say("{g} g", g=mass(pack.scale_g or pack.mass_g))
    if not pack.scale_g:
        weight = say("≈ {weight}", weight=weight) if pack.mass_g else say("—")
    return Row(
        title=pack.id,
        note=say("order {order}", order=pack.order),
        cells=(
            Cell(text=say("{n} {n|part|parts}", n=sum(n for _, n in pack.contents))),
            Cell(text=wrong, tone="stop") if wrong else Cell(text=weight),
        ),
        done=pack.seen if door else None,
        code=row_code("pack", pack.id, number),
    )


def _may_leave(packs: tuple[Pack, ...], view: View) -> bool:
    """Tells whether every pack was seen at the door, and none has to stay."""
    return bool(packs) and all(p.seen and not _say_wrong(p, view) for p in packs)


def _say_wrong(pack: Pack, view: View) -> Say:
    """Says why a pack on the cart has to stay here; empty: it may leave."""
    if _cancelled(pack, view):
        return say("cancelled")
    return say("held: take it off") if refuse_held_on_cart(view, pack) else Say()


def _cancelled(pack: Pack, view: View) -> bool:
    order = view.get(Order, pack.order)
    return order is not None and order.state == "cancelled"


def _presses(hand: CartHand, cart: Cart, packs: tuple[Pack, ...], view: View) -> tuple[Press, ...]:
    door, mode, pages = cart.state == "door", hand.work.mode, rows.pages(hand, packs)[1]
    off = Press(label=say("Take off"), code=button("off_cart"))
    if mode:
        off = Press(label=say("None off") if mode == "off" else say("None on"),
                    code=button("put_down"))  # fmt: skip
    more = (Press(label=say("Next page"), code=button("next_page")),) if pages > 1 else ()
    printed = Press(label=say("Print list"), code=button("cart_list"))
    if door:
        ready = _may_leave(packs, view)
        leave = Press(label=say("The cart leaves"), code=button("leave"), wide=2,
                      style="primary" if ready else "off")  # fmt: skip
        back = Press(label=say("Not yet"), code=button("not_yet"))
        return (leave, off, back, *(more or (printed,)))
    at_door = Press(label=say("At the door"), code=button("at_door"), wide=2,
                    style="primary" if packs else "off")  # fmt: skip
    return (at_door, off, printed, *more)


def _waiting(view: View) -> Listing:
    packs = view.shelf(Pack, "packed", PACKS)
    return Listing(
        title=say("Packs that wait: {n}", n=len(packs)),
        rows=tuple(
            (
                (Cell(text=p.id, bold=True), _whose(p, view)),
                write_touch("pack", p.id),
            )
            for p in packs[: rows.MOST]
        ),
        empty=say("No pack waits."),
    )


def _whose(pack: Pack, view: View) -> Cell:
    """The order of a pack; one that is cancelled goes back to packing."""
    if _cancelled(pack, view):
        return Cell(text=say("cancelled: to packing"), tone="stop")
    return Cell(text=say("order {order}", order=pack.order))


def _care(view: View) -> Remark:
    title = say("Take care: {at}", at=CAUTIONS["cart"].at)
    text = say_cautions(("cart",), find_shop(view))
    return Remark(tone="attention", title=title, text=text, code=button("care"))
