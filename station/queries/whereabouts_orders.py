"""Answers about orders, products, packs and carts: what is in them, how far they are."""

from collections.abc import Iterable

from station.queries.batches import find_cut_batch, keep_free, list_slips
from station.queries.carts import is_loaded, list_packs_on, say_when
from station.queries.orders import MOST, Need, list_needs, say_packed_anew, say_void
from station.queries.routers import name_router
from station.queries.shelf import find_hold_in
from station.queries.stock import list_free_on_rack, name_part
from station.queries.things import AnswerLine, Thing
from station.shop.codes import write_touch
from station.shop.facts import Batch, Cart, Mailer, Order, Pack, Part, Product
from station.shop.moves import head, tail
from station.shop.views import View, total
from station.shop.words import Say, mass, moment, say, together, when

NAMED = 3  # parts that a sentence names

STATES: dict[str, Say] = {
    "open": say("not begun"),
    "packing": say("being packed"),
    "waiting": say("waits for a part"),
    "packed": say("packed"),
    "shipped": say("left"),
    "owed": say("left, all parts are owed"),
    "cancelled": say("cancelled"),
}


def answer_order(view: View, order: Order, now: str) -> Thing:
    """Answers about an order: what it wants, what is in its pack, what lacks."""
    needs = list_needs(view, order) if order.to_pack else ()
    pack = find_pack(view, order)
    lines = [_tell_need(n) for n in needs]
    packs = [p for c in order.packs if (p := view.get(Pack, c.pack))] or ([pack] if pack else [])
    lines += [
        AnswerLine(say("Pack {pack}", pack=p.id), tell_pack(view, p, now),
                   write_touch("pack", p.id))
        for p in packs
    ]  # fmt: skip
    said = say("Order {order}: {state}, due {at}", order=order.id, state=STATES[order.state],
               at=when(order.due, now))  # fmt: skip
    if len(packs) == 1 and pack and not order.to_pack:
        where = tell_pack(view, pack, now)
        said = say("Order {order}: pack {pack} {where}", order=order.id, pack=pack.id, where=where)
    return Thing(
        label=say("Order"),
        number=order.id,
        title=STATES[order.state],
        note=say("due {at}", at=moment(order.due)),
        said=said,
        next=_say_coming(order, needs),
        where=tuple(lines),
        promised=tuple(
            AnswerLine(say("{n} × {product}", n=line.quantity,
                           product=_name_product(view, line.product)),
                 say("{n} owed", n=line.short) if line.short else "",
                 write_touch("product", line.product))
            for line in order.lines
        ),
        about=(order.key, *(p.key for p in packs)),
    )  # fmt: skip


def _say_coming(order: Order, needs: Iterable[Need]) -> Say:
    """Says what an order still waits for."""
    if lacking := [n for n in needs if n.lacking]:
        names = [say("{n} {part}", n=n.lacking, part=n.part.name) for n in lacking]
        return say("Lacking on the rack: {parts}.", parts=together(names, NAMED))
    if order.to_pack:
        return say("All parts are there: packing takes them.")
    return say("Nothing is left to do with it.")


def _tell_need(need: Need) -> AnswerLine:
    """Tells of a part how many are in the pack, and how many lie free on the rack."""
    return AnswerLine(
        say("{inside} of {wanted} {part}", inside=need.inside, wanted=need.wanted,
            part=need.part.name),
        say("{n} free on rack {place}", n=need.on_rack, place=need.place_name),
        write_touch("part", need.part.id),
    )  # fmt: skip


def _name_product(view: View, id: str) -> str:
    product = view.get(Product, id)
    return product.name if product else id


def find_pack(view: View, order: Order) -> Pack | None:
    """Finds the pack that an order was closed in last; None: it is in none."""
    past = view.last(order.key, "close_pack")
    closed = [tail(w.key) for w in past.sets if head(w.key) == "pack"] if past else []
    pack = view.get(Pack, closed[0]) if closed else None
    return pack if pack and pack.state != "opened" else None


def tell_pack(view: View, pack: Pack, now: str) -> Say:
    """Tells where a pack is."""
    if pack.state == "opened":
        return say("was opened again")
    if pack.state == "shelf":
        product = view.get(Product, pack.product)
        if product and product.place:
            return say("lies on shelf {place}", place=product.place)
        return say("lies on the shelf")
    if pack.state == "shipped":
        return say("left {at}", at=moment(pack.left) if pack.left else say("before"))
    if pack.state == "cart":
        cart = view.get(Cart, pack.cart)
        return say("is on {cart}", cart=cart.name if cart else pack.cart)
    return say("waits for a cart since {at}", at=when(pack.closed, now))


def answer_pack(view: View, pack: Pack, now: str) -> Thing:
    """Answers about a pack: its pieces, where it is, and of which batches they are."""
    where = tell_pack(view, pack, now)
    origin, batches = _list_origin(view, pack)
    whom, promised = _tell_whose(view, pack)
    said = say("Pack {pack}: {where}, {whom}", pack=pack.id, where=where, whom=whom)
    return Thing(
        label=say("Pack"),
        number=pack.id,
        title=say("Order {order}", order=pack.order) if pack.order else whom,
        note=where,
        said=say_void(pack) if pack.state == "opened" else said,
        next=_say_next(view, pack),
        where=_list_inside(view, pack, where),
        promised=(promised,),
        origin=origin,
        about=(pack.key, *((f"order/{pack.order}",) if pack.order else ()),
               *(f"batch/{b}" for b in batches)),
    )  # fmt: skip


def _say_next(view: View, pack: Pack) -> Say:
    """Says what comes next with a pack; one that may not leave is opened first."""
    if pack.state == "opened":
        return say_packed_anew(view, pack)
    order, held = view.get(Order, pack.order), find_hold_in(view, pack)
    if pack.state == "packed" and order and order.state == "cancelled":
        return say("Its order is cancelled: packing opens it and puts its parts back.")
    if held and pack.state in ("packed", "shelf"):
        return say("Batch {batch} in it is held: packing opens it.", batch=held.id)
    nexts = {
        "packed": say("Next: onto a cart."),
        "cart": say("Next: it leaves with its cart."),
        "shelf": say("Next: packing takes it for an order."),
    }
    return nexts.get(pack.state, say("Nothing is left to do with it."))


def _tell_whose(view: View, pack: Pack) -> tuple[Say, AnswerLine]:
    """Tells for whom a pack is: its order, or the product that it is one of on the shelf."""
    if not pack.order:
        whom = say("one {product}", product=_name_product(view, pack.product))
        return whom, AnswerLine(whom, "", write_touch("product", pack.product))
    order = view.get(Order, pack.order)
    due = say("due {at}", at=moment(order.due)) if order else ""
    line = AnswerLine(say("for order {order}", order=pack.order), due,
                      write_touch("order", pack.order))  # fmt: skip
    return say("order {order}", order=pack.order), line


def _list_inside(view: View, pack: Pack, where: Say) -> tuple[AnswerLine, ...]:
    """Lists what is in a pack, what of it came back, and its mailer."""
    back = dict(pack.returned)
    lines = [
        AnswerLine(
            say("{n} {part}", n=n, part=name_part(view, part)),
            say("{n} came back", n=back[part]) if part in back else where,
            write_touch("part", part),
        )
        for part, n in pack.contents
    ]
    if mailer := view.get(Mailer, pack.mailer):
        weighed = say("{g} g, weighed", g=mass(pack.scale_g)) if pack.scale_g else ""
        lines.append(AnswerLine(mailer.name, weighed, write_touch("mailer", mailer.id)))
    return tuple(lines)


def _list_origin(view: View, pack: Pack) -> tuple[tuple[AnswerLine, ...], tuple[str, ...]]:
    """Lists the batches of the pieces in a pack, with the sheets, lots and bits they are of."""
    past = view.last(f"order/{pack.order}", "close_pack")
    moves = past.moves if past and any(w.key == pack.key for w in past.sets) else ()
    lying = view.stock(place=f"pack/{pack.id}") if not moves else ()
    if not moves and not lying and (loaded := view.last(pack.key, "load_cart")):
        moves = loaded.moves  # one of several, closed before the last of them
    counts: dict[tuple[str, str], int] = {}
    for h in lying:
        counts[h.part, h.batch] = counts.get((h.part, h.batch), 0) + h.qty
    for m in moves:
        counts[m.part, m.to.batch] = counts.get((m.part, m.to.batch), 0) + m.qty
    lines = []
    for (part, number), n in counts.items():
        batch = view.get(Batch, number)
        lines.append(AnswerLine(
            say("{n} {part} of batch {batch}", n=n, part=name_part(view, part), batch=number),
            _tell_cut(view, batch) if batch else "",
            write_touch("batch", number) if batch else "",
        ))  # fmt: skip
    return tuple(lines), tuple(dict.fromkeys(b for _, b in counts if view.get(Batch, b)))


def _tell_cut(view: View, batch: Batch) -> Say:
    """Tells on which routers a batch was cut, from which lots and with which bits.

    Of one without sheets in the book its own router is told, where it has one.
    """
    made = find_cut_batch(view, batch.id)
    if made is None:
        return Say()
    cut = list_slips(view, made)
    routers = dict.fromkeys(s.router for s in cut) or {batch.router: None}
    told = [say("{router}", router=name_router(view, router)) for router in routers if router]
    told += [say("lot {lot}", lot=lot) for lot in dict.fromkeys(s.lot for s in cut if s.lot)]
    told += [say("bit {bit}", bit=bit) for bit in dict.fromkeys(b for s in cut for b in s.cut_by)]
    return together(told)


def answer_product(view: View, product: Product, now: str) -> Thing:
    """Answers about a product: its parts on the rack, and the open orders that want it."""
    whole, lines = 0, []
    for n, (number, each) in enumerate(product.parts):
        part = view.get(Part, number)
        free = total(list_free_on_rack(view, part)) if part else 0
        whole = min(whole, free // each) if n else free // each
        lines.append(AnswerLine(say("{n} × {part}", n=each, part=name_part(view, number)),
                          say("{n} free on the rack", n=free),
                          write_touch("part", number)))  # fmt: skip
    wanting = [
        (order, sum(line.quantity - line.short for line in order.lines
                    if line.product == product.id))
        for order in view.shelf(Order, "open", MOST)
    ]  # fmt: skip
    wanting = [(order, n) for order, n in wanting if n]
    wanted = sum(n for _, n in wanting)
    return Thing(
        label=say("Product"),
        number=product.id,
        title=product.name,
        note=product.words,
        said=say("{product}: the rack has parts for {n}, {wanted} wanted", product=product.name,
                 n=whole, wanted=wanted),
        next=say("Orders that want it: {n}.", n=len(wanting)),
        where=tuple(lines),
        promised=tuple(
            AnswerLine(say("{n} for order {order}", n=n, order=order.id),
                 say("due {at}", at=when(order.due, now)), write_touch("order", order.id))
            for order, n in wanting
        ),
        about=(product.key,),
    )  # fmt: skip


def answer_cart(view: View, cart: Cart, now: str) -> Thing:
    """Answers about a cart: what stands on it, and when it goes."""
    packs = list_packs_on(view, cart)
    states = {"here": say("it is here"), "door": say("it is at the door"), "gone": say("it left")}
    held = keep_free(view, view.stock(place=f"cart/{cart.id}"))
    goes = say_when(cart, now, loaded=is_loaded(view, cart))
    return Thing(
        label=say("Cart"),
        number=cart.id,
        title=cart.name,
        note=goes,
        said=say("{cart}: {n} {n|pack|packs} on it, {state}", cart=cart.name, n=len(packs),
                 state=states[cart.state]),
        next=say("{n} {n|piece|pieces} may go.", n=total(held)),
        where=tuple(
            AnswerLine(say("Pack {pack}", pack=p.id), say("order {order}", order=p.order),
                 write_touch("pack", p.id))
            for p in packs
        ),
        about=(cart.key,),
    )  # fmt: skip
