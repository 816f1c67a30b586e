"""Shows a product that is packed ahead: what its sets take, set by set, and where they go."""

from station.floor.packing.screen_parcel import draw_parcel
from station.floor.packing.waiting import (
    TITLE,
    list_carts,
    list_shelf,
    remind_care,
    say_where,
)
from station.floor.packing.work import PackingHand
from station.queries.mailers import plan_product
from station.queries.shelf import look_ahead
from station.queries.stock import list_free_on_rack
from station.shop.cards import button
from station.shop.faces import Cell, Face, Header, Hint, Press, Row, Table
from station.shop.facts import Part, Product, RackPlace
from station.shop.views import View, total
from station.shop.words import Say, say


def show_ahead(hand: PackingHand, view: View) -> Face:
    """Shows the set in hand of a product that is packed for the shelf."""
    product = view.get(Product, hand.work.shelf)
    assert product
    number = hand.work.made + 1
    parts = [(p, n) for part, n in product.parts if (p := view.get(Part, part))]
    return Face(
        title=TITLE,
        where=say_where(hand),
        main=(
            Header(
                label=say("For the shelf"),
                number=product.name,
                title=say("set {n} of {all}", n=number, all=hand.work.sets),
                note=_say_shelf(product, len(look_ahead(view, product).free)),
            ),
            _tabulate_set(parts, hand.work.sets - hand.work.made, view),
            Hint(
                title=say("Bag set {n}", n=number),
                note=say("then its card: close the pack, or scan the product’s card again"),
            ),
        ),
        presses=(
            Press(label=say("Close set {n} of {all}", n=number, all=hand.work.sets),
                  code=button("close_pack"), style="primary", wide=2),
            Press(label=say("Leave it"), code=button("put_down")),
        ),
        middle=draw_parcel(plan_product(view, product), {p.id: p.name for p, _ in parts}),
        side=(list_shelf(view), list_carts(view, hand.now), remind_care(view)),
        weights=(48, 27, 25),
    )  # fmt: skip


def _say_shelf(product: Product, there: int) -> Say:
    if product.place:
        return say("shelf {place}: {n} of {mark} there", place=product.place, n=there,
                   mark=product.mark)  # fmt: skip
    return say("{n} of {mark} there", n=there, mark=product.mark)


def _tabulate_set(parts: list[tuple[Part, int]], sets: int, view: View) -> Table:
    """Lists what one set takes, and what is fetched for all that are still to be made."""
    rows = []
    for part, each in parts:
        rack = view.get(RackPlace, part.rack) if part.rack else None
        there = total(list_free_on_rack(view, part))
        place = say("rack {place}", place=rack.name) if rack else say("no place")
        rows.append(
            Row(
                title=part.name,
                note=part.words,
                cells=(
                    Cell(text=place),
                    Cell(text=say("{n}", n=each), bold=True),
                    Cell(
                        text=say("{n}", n=each * sets),
                        tone="stop" if there < each * sets else "",
                    ),
                ),
            )
        )
    columns = (say("part"), say("take from"), say("a set"), say("still to fetch"))
    return Table(columns=columns, rows=tuple(rows))
