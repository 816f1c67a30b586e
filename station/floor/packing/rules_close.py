"""The pack is closed, its label printed again, or the pack of a cancelled order opened."""

from dataclasses import replace

from station.floor.packing.acts import ClosePack, OpenPack, PrintLabel
from station.floor.packing.common import (
    are_held,
    elsewhere,
    next_to_take,
    not_in_hand,
    order_of,
)
from station.queries.batches import keep_held
from station.queries.mailers import Weight, plan_open_pack
from station.queries.orders import list_needs
from station.shop.acts import Act, Answer, ask, attention, good, new_number, refuse
from station.shop.facts import Concern, Mailer, Order, Pack, Part
from station.shop.moves import move, tail
from station.shop.views import View, by_part, total
from station.shop.words import Say, say, together


def close_pack(act: Act[ClosePack], view: View) -> Answer:
    """The pack is complete: it gets its number, its label and its mailer.

    An order that is owed whole is closed without a pack.
    """
    order = order_of(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Claim an order first."))
    if problem := not_in_hand(act, view, order):
        return problem
    if problem := _held_inside(view, order) or _incomplete(view, order):
        return problem
    if not view.stock(place=f"packing/{order.id}"):
        return _owed_whole(act, order)
    return _closed(act, view, order)


def _held_inside(view: View, order: Order) -> Answer | None:
    """Why the pack may not be closed: pieces in it are of a batch that was held since."""
    inside = keep_held(view, view.stock(place=f"packing/{order.id}"))
    if not inside:
        return None
    parts = [say("{part}", part=p.name) for h in inside if (p := view.get(Part, h.part))]
    return refuse(
        say("{batches}: {n} of it in this pack", batches=are_held(inside), n=total(inside)),
        say("Touch “Put back”, scan {parts}; then take others.", parts=together(parts)),
    )


def _incomplete(view: View, order: Order) -> Answer | None:
    """Why the pack is not what the order wants."""
    found = list_needs(view, order)
    if to_go := sum(w.to_go for w in found):
        return refuse(say("Not complete: {n} to go", n=to_go), next_to_take(view, order))
    if over := next((w for w in found if w.extra), None):
        return refuse(
            say("Too many: {n} × {part}", n=over.extra, part=over.part.name),
            say("Put them back: rack {place}.", place=over.place_name),
        )
    return None


def _owed_whole(act: Act[ClosePack], order: Order) -> Answer:
    if not any(line.short for line in order.lines):
        return refuse(say("The pack is empty"), say("Take its parts first."))
    owed = replace(order, state="owed", claimed="", by=act.worker)
    return attention(
        say("Order {order} is closed: all of it is owed", order=order.id),
        say("No pack, no label. Scan its card when parts are there."),
        sets=(owed,),
    )


def _closed(act: Act[ClosePack], view: View, order: Order) -> Answer:
    held = view.stock(place=f"packing/{order.id}")
    inside = by_part(held)
    _, mailer, weight = plan_open_pack(view, order.id)
    scale_g = act.args.scale_g
    off = scale_g > 0 and weight.agrees(scale_g) is False
    if off and not act.args.sure:
        return ask(
            weight.words(scale_g), say("Look through the pack. Close it all the same?"), "sure"
        )
    number = new_number(act, "pack")
    pack = Pack(
        id=number,
        order=order.id,
        mailer=mailer.id if mailer else "",
        mass_g=0.0 if weight.unknown else round(weight.grams, 1),
        scale_g=scale_g,
        closed=act.at,
        by=act.worker,
        contents=tuple(inside.items()),
    )
    packed = replace(order, state="packed", claimed="", by=act.worker)
    return (attention if off else good)(
        say("Pack {pack} is closed: order {order}", pack=number, order=order.id),
        _into(mailer),
        moves=tuple(move(h.part, h.qty, h.place, f"pack/{number}", h.batch) for h in held),
        sets=(pack, packed, *([_off_weight(act, pack, weight)] if off else ())),
        prints=(("label", number),),
    )


def _into(mailer: Mailer | None) -> Say:
    if mailer is None:
        return say("Label it, then onto the cart.")
    return say("Mailer {name}. Label it, then onto the cart.", name=mailer.name)


def _off_weight(act: Act[ClosePack], pack: Pack, weight: Weight) -> Concern:
    return Concern(
        id=act.id,
        what="weight",
        since=act.at,
        about=pack.key,
        text=say(
            "Pack {pack}: {g} g on the scale, {grams} ± {plus} g expected",
            pack=pack.id,
            g=round(pack.scale_g),
            grams=round(weight.grams),
            plus=round(weight.plus),
        ),
    )


def open_pack(act: Act[OpenPack], view: View) -> Answer:
    """A pack that may not leave is opened: its order is cancelled, or a batch in it is held."""
    pack = view.get(Pack, tail(act.subject))
    order = view.get(Order, pack.order) if pack else None
    if pack is None or order is None or pack.state != "packed":
        return refuse(say("Only a pack off the cart is opened"), say("Take it off first."))
    inside = view.stock(place=f"pack/{pack.id}")
    held = keep_held(view, inside)
    if order.state != "cancelled" and not held:
        return refuse(
            say("Order {order} is not cancelled", order=order.id),
            say("Its pack goes onto the cart."),
        )
    if problem := elsewhere(act, order):
        return problem
    again = replace(order, claimed=act.station, by=act.worker)
    do = say("Put its parts back on the rack.")
    if order.state != "cancelled":
        again = replace(again, state="packing")
        do = say("{batches}: put those {n} back, take others.", batches=are_held(held),
                 n=total(held))  # fmt: skip
    return attention(
        say("Pack {pack} is opened", pack=pack.id),
        do,
        moves=tuple(move(h.part, h.qty, h.place, f"packing/{order.id}", h.batch) for h in inside),
        sets=(replace(pack, state="opened"), again),
    )


def print_label(act: Act[PrintLabel], view: View) -> Answer:
    """A pack's label once more; the paper says which copy it is."""
    pack = view.get(Pack, tail(act.subject))
    if pack is None or pack.state not in ("packed", "cart"):
        return refuse(say("That pack is not here any more"), say("Choose a pack of the list."))
    again = replace(pack, copies=pack.copies + 1)
    return good(
        say("Label of pack {pack}: copy {n}", pack=pack.id, n=again.copies),
        say("Throw the old label away."),
        sets=(again,),
        prints=(("label", pack.id),),
    )
