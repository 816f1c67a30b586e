"""Decides on an order at packing: one station claims it, puts it down, and closes its pack."""

from dataclasses import replace

from station.floor.packing.acts import ClaimOrder, ClosePack, OpenPack, PrintLabel, PutOrderDown
from station.queries.batches import keep_held
from station.queries.mailers import closes_over
from station.queries.orders import (
    count_inside,
    find_unknown,
    list_needs,
    say_packed_anew,
    say_void,
)
from station.queries.settings import find_reason, list_reasons
from station.queries.weights import Weight, weigh_parts
from station.shop.acts import (
    Act,
    Answer,
    Args,
    ask,
    ask_why,
    attention,
    good,
    new_number,
    notice,
    refuse,
)
from station.shop.facts import Concern, Mailer, Order, OrderState, Pack, Part, Product
from station.shop.moves import Held, move, tail
from station.shop.views import View, by_part, total
from station.shop.words import Say, say, several, together

STATES: dict[str, Say] = {
    "packed": say("packed"),
    "shipped": say("shipped"),
    "owed": say("owed whole"),
}


# --- whose it is, and what comes next


def find_order(act: Act[Args], view: View) -> Order | None:
    """Finds the order that an act is about."""
    return view.get(Order, tail(act.subject))


def _refuse_unpackable(view: View, order: Order) -> Answer | None:
    """Refuses an order that nobody can pack."""
    if order.state == "cancelled":
        return refuse(
            say("Order {order} is cancelled", order=order.id), say("Put back what is in its pack.")
        )
    if not order.to_pack:
        return refuse(
            say("Order {order} is {state} already", order=order.id, state=STATES[order.state]),
            say("Take the next order."),
        )
    if name := find_unknown(view, order):
        return refuse(
            say("Order {order} wants {name}, which nobody entered", order=order.id, name=name),
            say("The office enters it. Take the next order."),
        )
    return None


def refuse_not_in_hand(act: Act[Args], view: View, order: Order) -> Answer | None:
    """Refuses an order that this station cannot work on: it is done with, or not its own."""
    if problem := _refuse_unpackable(view, order) or refuse_elsewhere(act, order):
        return problem
    if order.claimed:
        return None
    return refuse(
        say("Order {order} was put down", order=order.id), say("Scan its card, or its row.")
    )


def refuse_elsewhere(act: Act[Args], order: Order) -> Answer | None:
    """Refuses an order that another station packs, or puts back once it is cancelled."""
    if order.claimed in ("", act.station):
        return None
    return refuse(
        say("Station {station} packs order {order}", station=order.claimed, order=order.id),
        say("Take the next order."),
    )


def say_next(view: View, order: Order, done: str = "", inside: int = 0) -> Say:
    """Says what to take next, or that the pack can be closed.

    `done` is a part that this act changes: `inside` of it are in the pack after it.
    """
    for want in list_needs(view, order):
        go = max(0, want.wanted - inside) if want.part.id == done else want.to_go
        if go > 0:
            return say("Next: {n} {part} from rack {place}.", n=go, part=want.part.name,
                       place=want.place_name)  # fmt: skip
    return _say_all_in(view, order, done)


def _say_all_in(view: View, order: Order, done: str = "") -> Say:
    """Says that the pack can be closed, or what in it, but for the part `done`, is held."""
    lying = view.stock(place=f"packing/{order.id}")
    held = keep_held(view, tuple(h for h in lying if h.part != done))
    if held:
        return say("{batches}: put {n} of it back, take others.", batches=say_held(held),
                   n=total(held))  # fmt: skip
    return say("All of it is in: close the pack.")


def say_held(lying: tuple[Held, ...]) -> Say:
    """Names the batches of pieces that are held."""
    batches = list(dict.fromkeys(h.batch for h in lying))
    return say(
        "{n|Batch|Batches} {batches} {n|is|are} held", n=len(batches), batches=several(batches)
    )


# --- a claim


def claim_order(act: Act[ClaimOrder], view: View) -> Answer:
    """Lets one station pack an order; nobody else does until it lets go.

    The order that was in hand here before is free again with nothing in its pack. A supervisor
    takes over what another station claimed.
    """
    order = find_order(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Touch a row or scan its card."))
    if order.state == "owed":
        order = _open_again(view, order)
    cancelled = order.state == "cancelled" and view.stock(place=f"packing/{order.id}")
    if not cancelled and (problem := _refuse_unpackable(view, order)):
        return problem
    if refuse_elsewhere(act, order) and not act.args.approved:
        return _ask_to_take_over(order)
    left = _free_left(act, view, order)
    if cancelled:
        return attention(
            say("Order {order} is cancelled", order=order.id),
            say("Put back what is in its pack."),
            sets=(replace(order, claimed=act.station, by=act.worker), *left),
        )
    claimed = replace(order, state="packing", claimed=act.station, by=act.worker, waits="")
    done = good(
        say("Order {order} is yours", order=order.id), _say_first(view, order),
        sets=(claimed, *left),
    )  # fmt: skip
    return done if order.claimed == act.station else replace(done, certain="needed")


def _open_again(view: View, order: Order) -> Order:
    """Opens an order that was owed whole, once one product of it can be packed."""
    again = replace(order, lines=tuple(replace(line, short=0) for line in order.lines))
    there = {w.part.id: w.on_rack + w.inside for w in list_needs(view, again)}
    products = [p for line in order.lines if (p := view.get(Product, line.product))]
    can = any(all(there.get(part, 0) >= n for part, n in p.parts) for p in products)
    return replace(again, state="open") if can else order


def _ask_to_take_over(order: Order) -> Answer:
    return ask(
        say("Station {station} packs order {order}", station=order.claimed, order=order.id),
        say("Take another. Only if that station is out of use a supervisor takes it over."),
        "supervisor",
    )


def _free_left(act: Act[ClaimOrder], view: View, order: Order) -> tuple[Order, ...]:
    """Frees the order that was in hand before, if nothing is in its pack."""
    before = view.get(Order, act.args.leaving)
    if before is None or before.id == order.id or before.claimed != act.station:
        return ()
    return () if view.stock(place=f"packing/{before.id}") else (_free_order(before),)


def _free_order(order: Order) -> Order:
    return replace(order, state="open" if order.state == "packing" else order.state, claimed="")


def _say_first(view: View, order: Order) -> Say:
    first = next((w for w in list_needs(view, order) if w.to_go), None)
    if first is None:
        return _say_all_in(view, order)
    return say("First: {n} {part} from rack {place}.", n=first.to_go, part=first.part.name,
               place=first.place_name)  # fmt: skip


def put_order_down(act: Act[PutOrderDown], view: View) -> Answer:
    """Frees an order with nothing in its pack for every station."""
    order = find_order(act, view)
    if order is None or order.claimed != act.station:
        return refuse(say("That order is not in hand here"), say("Take the next order."))
    if lying := count_inside(view, order):
        return tell_stays(order, lying)
    return good(
        say("Order {order} is put down: anybody can take it", order=order.id),
        say("Take the next order."),
        sets=(_free_order(order),),
    )


def tell_stays(order: Order, lying: int) -> Answer:
    """Tells that an order with pieces in its pack stays with the station that puts it down."""
    if order.state == "cancelled":
        return notice(
            say("Cancelled order {order} has {n} in its pack", order=order.id, n=lying),
            say("It stays with this station until they are put back."),
        )
    return notice(
        say("Order {order} stays with this station: {n} in its pack", order=order.id, n=lying),
        say("Go on with it later, or put them back first."),
    )


# --- its pack


def close_pack(act: Act[ClosePack], view: View) -> Answer:
    """Closes a complete pack: it gets its number, its label and its mailer.

    An order that is owed whole is closed without a pack.
    """
    order = find_order(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Claim an order first."))
    if problem := refuse_not_in_hand(act, view, order):
        return problem
    if problem := _refuse_held_inside(view, order) or _refuse_incomplete(view, order):
        return problem
    if not view.stock(place=f"packing/{order.id}"):
        return _close_as_owed(act, order)
    return _make_pack(act, view, order)


def _refuse_held_inside(view: View, order: Order) -> Answer | None:
    """Refuses a pack with pieces of a batch that was held since."""
    inside = keep_held(view, view.stock(place=f"packing/{order.id}"))
    if not inside:
        return None
    parts = [say("{part}", part=p.name) for h in inside if (p := view.get(Part, h.part))]
    return refuse(
        say("{batches}: {n} of it in this pack", batches=say_held(inside), n=total(inside)),
        say("Touch “Put back”, scan {parts}; then take others.", parts=together(parts)),
    )


def _refuse_incomplete(view: View, order: Order) -> Answer | None:
    """Refuses a pack that is not what the order wants."""
    found = list_needs(view, order)
    if to_go := sum(w.to_go for w in found):
        return refuse(say("Not complete: {n} to go", n=to_go), say_next(view, order))
    if over := next((w for w in found if w.extra), None):
        return refuse(
            say("Too many: {n} × {part}", n=over.extra, part=over.part.name),
            say("Put them back: rack {place}.", place=over.place_name),
        )
    return None


def _close_as_owed(act: Act[ClosePack], order: Order) -> Answer:
    if not any(line.short for line in order.lines):
        return refuse(say("The pack is empty"), say("Take its parts first."))
    owed = replace(order, state="owed", claimed="", by=act.worker)
    return attention(
        say("Order {order} is closed: all of it is owed", order=order.id),
        say("No pack, no label. Scan its card when parts are there."),
        sets=(owed,),
    )


def _make_pack(act: Act[ClosePack], view: View, order: Order) -> Answer:
    mailer = view.get(Mailer, act.args.mailer)
    if problem := _refuse_open_mailer(act, mailer):
        return problem
    held = view.stock(place=f"packing/{order.id}")
    pieces = [(p, n) for part, n in by_part(held).items() if (p := view.get(Part, part))]
    weight = weigh_parts(view, pieces, mailer)
    scale_g = act.args.scale_g or 0.0
    off = scale_g > 0 and weight.agrees(scale_g) is False
    if off and not act.args.sure:
        do = say("Look through the pack. Close it all the same?")
        return ask(weight.words(scale_g), do, "sure")
    number = new_number(act, "pack")
    pack = Pack(
        id=number,
        order=order.id,
        mailer=mailer.id if mailer else "",
        mass_g=0.0 if weight.unknown else round(weight.grams, 1),
        scale_g=scale_g,
        closed=act.at,
        by=act.worker,
        contents=tuple(by_part(held).items()),
    )
    packed = replace(order, state="packed", claimed="", by=act.worker)
    return (attention if off else good)(
        say("Pack {pack} is closed: order {order}", pack=number, order=order.id),
        _say_mailer(mailer),
        moves=tuple(move(h.part, h.qty, h.place, f"pack/{number}", h.batch) for h in held),
        sets=(pack, packed, *([_doubt_weight(act, pack, weight)] if off else ())),
        prints=(("label", number),),
    )


def _refuse_open_mailer(act: Act[ClosePack], mailer: Mailer | None) -> Answer | None:
    """Refuses a mailer that does not close over the stack, or that the office took away."""
    args = act.args
    if not args.mailer or (
        mailer and closes_over(mailer, args.length_mm, args.width_mm, args.thick_mm)
    ):
        return None
    name = mailer.name if mailer else args.mailer
    return refuse(
        say("Mailer {name} does not close over {t} mm", name=name, t=f"{args.thick_mm:.1f}"),
        say("Close it again: another mailer is looked for."),
    )


def _say_mailer(mailer: Mailer | None) -> Say:
    if mailer is None:
        return say("Label it, then onto the cart.")
    return say("Mailer {name}. Label it, then onto the cart.", name=mailer.name)


def _doubt_weight(act: Act[ClosePack], pack: Pack, weight: Weight) -> Concern:
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
    """Opens a closed pack for a reason: its pieces lie in the open pack of its order again.

    No reason is asked for where its order is cancelled, or a batch in it is held.
    """
    pack = view.get(Pack, tail(act.subject))
    order = view.get(Order, pack.order) if pack else None
    if pack is None or order is None or pack.state != "packed":
        return _refuse_not_here(view, pack)
    if problem := refuse_elsewhere(act, order):
        return problem
    inside = view.stock(place=f"pack/{pack.id}")
    held = keep_held(view, inside)
    known = find_reason(view, act.args.reason, "repack")
    bound = held or order.state == "cancelled"
    if known is None and not bound and list_reasons(view, "repack"):
        return ask_why(say("Open pack {pack} again?", pack=pack.id), "repack")
    state: OrderState = "cancelled" if order.state == "cancelled" else "packing"
    return attention(
        say("Pack {pack} is opened", pack=pack.id),
        _say_after_opening(view, order, held),
        moves=tuple(move(h.part, h.qty, h.place, f"packing/{order.id}", h.batch) for h in inside),
        sets=(
            replace(pack, state="opened", why=known.id if known else ""),
            replace(order, state=state, claimed=act.station, by=act.worker),
        ),
    )


def _refuse_not_here(view: View, pack: Pack | None) -> Answer:
    """Refuses a pack that does not lie closed at packing, and says where it is."""
    if pack is None:
        return refuse(say("There is no such pack"), say("Scan the label again."))
    if pack.state == "opened":
        return refuse(say_void(pack), say_packed_anew(view, pack))
    if pack.state == "cart":
        return refuse(
            say("Pack {pack} is on cart {cart}", pack=pack.id, cart=pack.cart),
            say("Take it off at the cart, then scan it here."),
        )
    return refuse(say("Pack {pack} has left already", pack=pack.id), say("Look at its label."))


def _say_after_opening(view: View, order: Order, held: tuple[Held, ...]) -> Say:
    """Says what to do with an opened pack: all of it back, held pieces out, or look through it."""
    if order.state == "cancelled":
        return say("Put its parts back on the rack.")
    if not held:
        return say("Its label is void: tear it off. Count out what is spoiled, then close it.")
    pieces = [
        say("{n} {part}", n=n, part=part.name)
        for number, n in by_part(held).items()
        if (part := view.get(Part, number))
    ]
    return say("{batches}: put {pieces} back, take others.", batches=say_held(held),
               pieces=together(pieces))  # fmt: skip


def print_label(act: Act[PrintLabel], view: View) -> Answer:
    """Prints a pack's label once more; the paper says which copy it is."""
    pack = view.get(Pack, tail(act.subject))
    if pack is None or pack.state not in ("packed", "cart"):
        return _refuse_not_here(view, pack)
    again = replace(pack, copies=pack.copies + 1)
    return good(
        say("Label of pack {pack}: copy {n}", pack=pack.id, n=again.copies),
        say("Throw the old label away."),
        sets=(again,),
        prints=(("label", pack.id),),
    )
