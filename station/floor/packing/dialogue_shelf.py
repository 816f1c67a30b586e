"""Reads what a code or a number means at packing with packs for the shelf in hand."""

from dataclasses import replace

from station.floor.packing.acts import ClosePack, MakeShelfPack, TakeShelfPack
from station.floor.packing.rules_shelf import refuse_not_ahead
from station.floor.packing.work import PackingHand
from station.queries.mailers import plan_parcel, plan_product
from station.queries.shelf import is_whole_of, look_ahead
from station.shop.acts import good, refuse
from station.shop.facts import Order, Pack, Part, Product
from station.shop.rooms import Do, Number, Took
from station.shop.views import View
from station.shop.words import say


def begin_ahead(hand: PackingHand, number: str, view: View) -> Do | Took | None:
    """Begins to pack a product ahead; its card scanned again closes the next set."""
    if hand.work.shelf == number:
        return close_set(hand, view)
    product = view.get(Product, number)
    if product is None or not product.mark or not product.active:
        return None if hand.is_free else Took(hand, refuse_not_ahead(product))
    ahead = look_ahead(view, product)
    if not ahead.can:
        do = say("Leave it, and take the next order.")
        return Took(hand, refuse(say("The rack has no whole {p}", p=product.name), do))
    sets = ahead.to_make or 1
    work = replace(type(hand.work)(), shelf=product.id, sets=sets)
    said = say("{n} {product} for the shelf", n=sets, product=product.name)
    do = say("Fetch their parts, bag set by set. A number: so many sets.")
    return Took(replace(hand.empty(), work=work), good(said, do))


def close_set(hand: PackingHand, view: View) -> Do | Took:
    """Closes the set in hand: it gets its card. After the last the hands are free."""
    product = view.get(Product, hand.work.shelf)
    if product is None:
        return Took(hand.empty(), refuse_not_ahead(product))
    parcel = plan_product(view, product)
    work = replace(hand.work, made=hand.work.made + 1)
    after = replace(hand, work=work) if work.made < work.sets else hand.empty()
    args = MakeShelfPack(mailer=parcel.mailer.id if parcel.mailer else "")
    return Do(product.key, args, after, ("pack",))


def read_sets(hand: PackingHand, given: Number, view: View) -> Took:
    """Reads how many sets are made, those that are made already too."""
    product, count, made = view.get(Product, hand.work.shelf), given.whole, hand.work.made
    if product is None:
        return Took(hand.empty(), refuse_not_ahead(product))
    most = made + look_ahead(view, product).can
    if count is None or not made < count <= most:
        said = say("{text} sets cannot be made", text=given.text)
        do = say("Enter a number from {least} to {most}.", least=made + 1, most=most)
        return Took(hand, refuse(said, do))
    said = say("{n} {product} for the shelf", n=count, product=product.name)
    do = say("Set {n} of {all} is next.", n=made + 1, all=count)
    return Took(replace(hand, work=replace(hand.work, sets=count)), good(said, do))


def leave_ahead(hand: PackingHand) -> Took:
    """Leaves what is not made yet."""
    said = say("{n} of {all} made; the rest is left", n=hand.work.made, all=hand.work.sets)
    return Took(hand.empty(), good(said, say("Take the next order.")))


def take_from_shelf(hand: PackingHand, order: Order, pack: Pack, view: View) -> Do:
    """Takes a pack from the shelf: whole for an order that wants just it, else into its pack."""
    if not is_whole_of(view, order, pack):
        work = replace(hand.work, asks="", take=None, picked=None, scale=None)
        return Do(pack.key, TakeShelfPack(order=order.id), replace(hand, work=work))
    pieces = [(p, n) for part, n in pack.contents if (p := view.get(Part, part))]
    parcel = plan_parcel(view, pieces)
    length, width, thick = parcel.stack.lies.size_mm
    args = ClosePack(
        mailer=parcel.mailer.id if parcel.mailer else "",
        length_mm=length,
        width_mm=width,
        thick_mm=thick,
        shelf=pack.id,
    )
    return Do(order.key, args, hand.empty(), ("pack",))
