"""Decides on packs for the shelf: made ahead, and taken into the pack of an order."""

from dataclasses import replace

from station.floor.packing.acts import MakeShelfPack, TakeShelfPack
from station.floor.packing.rules_order import refuse_not_in_hand, say_next
from station.floor.packing.rules_pack import refuse_shelf_pack
from station.queries.orders import find_need
from station.queries.shelf import count_sets, look_ahead
from station.queries.stock import list_free_on_rack, move_in_order, name_part
from station.queries.weights import weigh_parts
from station.shop.acts import Act, Answer, good, new_number, refuse
from station.shop.facts import Mailer, Order, Pack, Part, Product
from station.shop.moves import move, tail
from station.shop.views import View, by_part, total
from station.shop.words import Say, say, together


def make_shelf_pack(act: Act[MakeShelfPack], view: View) -> Answer:
    """Packs one set of a product for the shelf, of the oldest free batches."""
    product = view.get(Product, tail(act.subject))
    if product is None or not product.active or not product.mark:
        return refuse_not_ahead(product)
    found = [(view.get(Part, part), each) for part, each in product.parts]
    parts = [(part, each) for part, each in found if part]
    if len(parts) < len(found) or count_sets(view, product) < 1:
        return _refuse_no_set(view, product)
    number, mailer = new_number(act, "pack"), view.get(Mailer, act.args.mailer)
    weight = weigh_parts(view, parts, mailer)
    pack = Pack(
        id=number,
        order="",
        mailer=mailer.id if mailer else "",
        mass_g=0.0 if weight.unknown else round(weight.grams, 1),
        closed=act.at,
        by=act.worker,
        state="shelf",
        contents=product.parts,
        product=product.id,
    )
    lying = [(list_free_on_rack(view, part), each) for part, each in parts]
    done = good(
        say("Pack {pack}: one {product} for the shelf", pack=number, product=product.name),
        _say_place(product, len(look_ahead(view, product).free) + 1),
        moves=tuple(m for free, n in lying for m in move_in_order(free, n, f"pack/{number}")),
        sets=(pack,),
        prints=(("label", number),),
    )
    last = any(total(free) == each for free, each in lying)
    return replace(done, certain="told") if last else done


def refuse_not_ahead(product: Product | None) -> Answer:
    """Refuses a product of which none is packed ahead."""
    if product is None:
        return refuse(say("There is no such product"), say("Scan its card again."))
    return refuse(
        say("{product} is not packed ahead", product=product.name),
        say("The office gives it a number of packs ahead."),
    )


def _refuse_no_set(view: View, product: Product) -> Answer:
    """Refuses a set that the rack does not have free, and names what lacks."""
    lacking = []
    for number, each in product.parts:
        part = view.get(Part, number)
        there = total(list_free_on_rack(view, part)) if part else 0
        if there < each:
            lacking.append(say("{n} {part}", n=each - there, part=name_part(view, number)))
    return refuse(
        say("No whole {product} on the rack: {parts} short", product=product.name,
            parts=together(lacking)),
        say("Leave it, and take the next order."),
    )  # fmt: skip


def _say_place(product: Product, there: int) -> Say:
    if product.place:
        return say("Label it, then shelf {place}: {n} of {mark} there.", place=product.place,
                   n=there, mark=product.mark)  # fmt: skip
    return say("Label it, then the shelf: {n} of {mark} there.", n=there, mark=product.mark)


def take_shelf_pack(act: Act[TakeShelfPack], view: View) -> Answer:
    """Takes a pack from the shelf into the open pack of an order that wants all of it."""
    pack, order = view.get(Pack, tail(act.subject)), view.get(Order, act.args.order)
    if order is None:
        return refuse(say("There is no such order"), say("Claim an order first."))
    if problem := refuse_not_in_hand(act, view, order) or refuse_shelf_pack(view, pack):
        return problem
    assert pack
    inside = view.stock(place=f"pack/{pack.id}")
    product = view.get(Product, pack.product)
    for part, n in by_part(inside).items():
        want = find_need(view, order, part)
        if want is None or want.to_go < n:
            return refuse(
                say("Order {order} wants no {product} more", order=order.id,
                    product=product.name if product else pack.product),
                say("Put pack {pack} back on the shelf. {then}", pack=pack.id,
                    then=say_next(view, order)),
            )  # fmt: skip
    done = good(
        say("Pack {pack} is in order {order}: {n} {n|part|parts}", pack=pack.id, order=order.id,
            n=total(inside)),
        say("Keep its bag closed, throw its card away. Then the next."),
        moves=tuple(
            move(h.part, h.qty, h.place, f"packing/{order.id}", h.batch) for h in inside
        ),
        sets=(replace(pack, state="opened", order=order.id),),
    )  # fmt: skip
    return replace(done, certain="told")
