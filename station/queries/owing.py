"""Questions about what is owed: as an order of its own, made for pieces that were short or came
back.
"""

from collections.abc import Mapping
from dataclasses import replace

from station.queries.orders import PRODUCTS, find_owed, list_owed
from station.shop.acts import Act
from station.shop.facts import Concern, Line, Order, Pack, Part, Product
from station.shop.moves import Move, tail
from station.shop.views import View
from station.shop.words import Say, say

RETURNED = "returned"  # the kind of concern
OTHERS, NOTHING = "send others", "nothing is owed"  # how it is settled


def owe(view: View, order: Order, more: Mapping[str, int], due: str) -> Order:
    """Makes what is owed an order of its own, or adds to the one that nobody packs yet.

    `more`: how many of each product.
    """
    before = find_owed(view, order)
    owed = {line.product: line.quantity for line in before.lines} if before else {}
    for product, n in more.items():
        owed[product] = owed.get(product, 0) + n
    whole = tuple(Line(product=product, quantity=n) for product, n in owed.items())
    if before:
        return replace(before, lines=whole)
    number = f"{order.id}-{len(list_owed(view, order)) + 1}"
    return Order(id=number, lines=whole, due=due, owed_of=order.id)


def ask_owed(
    act: Act[object], pack: Pack, part: Part, why: str, moves: tuple[Move, ...]
) -> Concern:
    """Asks whether an order is owed others for pieces of its pack that came back."""
    text = say("{n} {part} of order {order} came back: {why}", n=sum(m.qty for m in moves),
               part=part.name, order=pack.order, why=why)  # fmt: skip
    return Concern(id=act.id, what=RETURNED, since=act.at, about=f"order/{pack.order}", text=text,
                   choices=("send others", "nothing is owed"), meant=moves)  # fmt: skip


def find_others(view: View, concern: Concern) -> tuple[Order, dict[str, int]] | None:
    """Finds what is sent for pieces that came back: the order, and how many of each product.

    A product of the part alone is sent where there is one; else whole ones of the order. None:
    neither the order nor a product that has the part is known.
    """
    order = view.get(Order, tail(concern.about))
    if order is None or not concern.meant:
        return None
    part, left = concern.meant[0].part, sum(m.qty for m in concern.meant)
    alone = (p for p in view.shelf(Product, "all", PRODUCTS) if p.parts == ((part, 1),))
    if single := next(alone, None):
        return order, {single.id: left}
    found: dict[str, int] = {}
    for line in order.lines:
        product = view.get(Product, line.product)
        each = dict(product.parts).get(part, 0) if product else 0
        if each and left > 0:
            found[line.product] = min(line.quantity, -(-left // each))
            left -= found[line.product] * each
    return (order, found) if found else None


def name_products(view: View, of: Mapping[str, int]) -> list[Say]:
    """Names products with how many of each."""
    known = {id_: view.get(Product, id_) for id_ in of}
    return [
        say("{n} × {product}", n=n, product=p.name if (p := known[id_]) else id_)
        for id_, n in of.items()
    ]
