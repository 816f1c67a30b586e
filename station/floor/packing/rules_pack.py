"""Decides on packs: closed and labelled, opened again, printed again."""

from dataclasses import replace

from station.floor.packing.acts import ClaimOrder, ClosePack, PrintLabel
from station.floor.packing.rules_order import (
    claim_order,
    find_order,
    refuse_elsewhere,
    refuse_not_in_hand,
    say_held,
    say_next,
)
from station.floor.shared.opening import OpenPack
from station.queries.batches import keep_held
from station.queries.damage import note_damage
from station.queries.mailers import closes_over, name_contents, take_share
from station.queries.orders import (
    count_closed,
    count_inside,
    count_wanted,
    list_needs,
    say_packed_anew,
    say_void,
)
from station.queries.settings import find_reason, list_reasons
from station.queries.shelf import find_hold_in, is_whole_of
from station.queries.stock import name_part
from station.queries.supplies import LABELS, TENTHS, WRAP, count_left, use_up
from station.queries.weights import Weight, note_weights, weigh_parts
from station.shop.acts import (
    Act,
    Answer,
    ask,
    ask_why,
    attention,
    good,
    new_number,
    refuse,
    with_args,
)
from station.shop.facts import ClosedPack, Concern, Habit, Mailer, Order, OrderState, Pack, Part
from station.shop.moves import Held, Move, move, tail
from station.shop.views import View, by_part, total
from station.shop.words import Say, length, mass, say, together


def close_pack(act: Act[ClosePack], view: View) -> Answer:
    """Closes the pack in hand; the order that was scanned for it is claimed with it."""
    closed = _close_order(act, view)
    if not act.args.next or closed.refused:
        return closed
    claim = replace(with_args(act, ClaimOrder()), subject=f"order/{act.args.next}")
    claimed = claim_order(claim, view)
    if claimed.refused:
        return refuse(claimed.said, say("Close the pack in hand, or scan another order."))
    return replace(
        closed,
        do=say("{do} Then order {order}: {then}", do=closed.do, order=act.args.next,
               then=claimed.do),
        sets=(*closed.sets, *claimed.sets),
        certain=claimed.certain,
    )  # fmt: skip


def _close_order(act: Act[ClosePack], view: View) -> Answer:
    """Closes a complete pack: it gets its number, its label and its mailer.

    An order that is owed whole is closed without a pack.
    """
    order = find_order(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Claim an order first."))
    if problem := refuse_not_in_hand(act, view, order):
        return problem
    if act.args.shelf:
        return _close_from_shelf(act, view, order)
    if problem := _refuse_held_inside(view, order):
        return problem
    if act.args.share:
        return _close_share(act, view, order)
    if problem := _refuse_incomplete(view, order):
        return problem
    held = view.stock(place=f"packing/{order.id}")
    return _make_pack(act, view, order, held) if held else _close_as_owed(act, order)


def _close_share(act: Act[ClosePack], view: View, order: Order) -> Answer:
    """Closes one pack of an order whose rest goes in another; the order stays in hand."""
    wants = {want.part.id: want for want in list_needs(view, order)}
    share = dict(act.args.share)
    fits = all(p in wants and 0 < n <= min(wants[p].inside, wants[p].wanted)
               for p, n in share.items())  # fmt: skip
    if not fits or sum(share.values()) >= sum(want.wanted for want in wants.values()):
        return refuse(say("The pack has changed since"), say("Close it again."))
    return _make_pack(act, view, order, take_share(view, order.id, act.args.share))


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
    return _refuse_closed_too_many(view, order)


def _refuse_closed_too_many(view: View, order: Order) -> Answer | None:
    """Refuses to end an order with more in a closed pack than it still wants."""
    wanted = count_wanted(view, replace(order, packs=()))
    for part, n in count_closed(order).items():
        if over := n - wanted.get(part, 0) if n > wanted.get(part, 0) else 0:
            holds = next(c.pack for c in order.packs if part in dict(c.contents))
            return refuse(
                say("Too many: {n} × {part}", n=over, part=name_part(view, part)),
                say("They are in pack {pack}: scan its label to open it.", pack=holds),
            )
    return None


def _close_as_owed(act: Act[ClosePack], order: Order) -> Answer:
    if not any(line.short for line in order.lines):
        return refuse(say("The pack is empty"), say("Take its parts first."))
    owed = replace(order, state="owed", claimed="", by=act.worker)
    return attention(
        say("Order {order} is closed: all of it is owed", order=order.id),
        say("No pack, no label. What is owed comes up when its parts are there."),
        sets=(owed,),
    )


def _close_from_shelf(act: Act[ClosePack], view: View, order: Order) -> Answer:
    """Makes a pack from the shelf the pack of an order that wants just what it is."""
    shelf = view.get(Pack, act.args.shelf)
    if problem := refuse_shelf_pack(view, shelf):
        return problem
    if shelf is None or not is_whole_of(view, order, shelf):
        return refuse(
            say("Order {order} wants something else", order=order.id),
            say("Scan its parts; or scan a pack that it wants."),
        )
    made = _make_pack(act, view, order, view.stock(place=f"pack/{shelf.id}"))
    if made.tone == "stop" or made.asks:
        return made
    return replace(made, sets=(*made.sets, replace(shelf, state="opened", order=order.id)))


def refuse_shelf_pack(view: View, pack: Pack | None) -> Answer | None:
    """Refuses a pack that does not lie on the shelf, or whose pieces may not leave."""
    if pack is None or pack.state != "shelf":
        return _refuse_not_here(view, pack)
    if hold := find_hold_in(view, pack):
        return refuse(
            say("Pack {pack}: batch {batch} in it is held", pack=pack.id, batch=hold.id),
            say("Put it aside, take another. Scan it later with free hands, to open it."),
        )
    return None


def _make_pack(act: Act[ClosePack], view: View, order: Order, held: tuple[Held, ...]) -> Answer:
    mailer, why = view.get(Mailer, act.args.mailer), find_reason(view, act.args.reason, "mailer")
    if problem := _refuse_open_mailer(act, view, mailer):
        return problem
    if act.args.instead and why is None and list_reasons(view, "mailer"):
        return ask_why(say("{name} instead", name=mailer.name if mailer else ""), "mailer")
    pieces = [(p, n) for part, n in by_part(held).items() if (p := view.get(Part, part))]
    weight = weigh_parts(view, pieces, mailer, held)
    scale_g = act.args.scale_g or 0.0
    off = scale_g > 0 and weight.agrees(scale_g) is False
    if off and not act.args.sure:
        do = say("Look through the pack. Close it all the same?")
        return ask(weight.words(scale_g), do, "sure")
    number, (nth, of) = new_number(act, "pack"), _number_in_order(act, view, order)
    pack = Pack(
        id=number,
        order=order.id,
        mailer=mailer.id if mailer else "",
        mass_g=0.0 if weight.unknown else round(weight.grams, 1),
        scale_g=scale_g,
        closed=act.at,
        by=act.worker,
        contents=tuple(by_part(held).items()),
        nth=nth,
        of=of,
    )
    packed = _add_pack(act, order, pack)
    doubts = (_doubt_weight(act, pack, weight),) if off else ()
    return (attention if off else good)(
        _say_closed(pack),
        _say_mailer(view, mailer, _say_rest(view, order) if act.args.share else None),
        moves=(
            *(move(h.part, h.qty, h.place, f"pack/{number}", h.batch) for h in held),
            *_use_supplies(act, view),
        ),
        sets=(pack, packed, *_learn_mailer(act, view, pack), *doubts),
        prints=(("label", number),),
        readings=note_weights(view, held, mailer, scale_g) if scale_g and not off else (),
    )


def _say_closed(pack: Pack) -> Say:
    """Says that a pack is closed, and which of its order it is where there are several."""
    if not pack.nth:
        return say("Pack {pack} is closed: order {order}", pack=pack.id, order=pack.order)
    return say("Pack {pack} is closed: order {order}, {nth}", pack=pack.id, order=pack.order,
               nth=pack.say_nth())  # fmt: skip


def _number_in_order(act: Act[ClosePack], view: View, order: Order) -> tuple[int, int]:
    """Numbers a pack of an order that goes in several: which it is, of how many (0: more follow).

    Twice 0: it goes in this one.
    """
    if not order.packs and not act.args.share:
        return (0, 0)
    closed = {p.nth for c in order.packs if (p := view.get(Pack, c.pack))}
    nth = next(n for n in range(1, len(closed) + 2) if n not in closed)
    return (nth, 0 if act.args.share else len(order.packs) + 1)


def _add_pack(act: Act[ClosePack], order: Order, pack: Pack) -> Order:
    """Gives an order with a pack closed: packed, or with the rest of it still in hand."""
    packs = (*order.packs, ClosedPack(pack.id, pack.contents))
    if act.args.share:
        return replace(order, state="packing", packs=packs, by=act.worker)
    packs = packs if order.packs else ()
    return replace(order, state="packed", claimed="", by=act.worker, packs=packs)


def _use_supplies(act: Act[ClosePack], view: View) -> tuple[Move, ...]:
    """Uses up a pack's mailer, its wrap and its label."""
    args = act.args
    wrap = use_up(view, WRAP, round(args.wrap_m * TENTHS))
    return (
        *(use_up(view, args.mailer, 1) if args.mailer else ()),
        *wrap,
        *use_up(view, LABELS, 1),
    )


def _learn_mailer(act: Act[ClosePack], view: View, pack: Pack) -> tuple[Habit, ...]:
    """Learns which mailer people take for such a pack, and why; where they take another."""
    known = view.get(Habit, name_contents(pack.contents))
    why = find_reason(view, act.args.reason, "mailer")
    if not act.args.instead or (why and why.passing):
        return ()
    again = known is not None and known.mailer == act.args.mailer
    times = known.times + 1 if known and again else 1
    return (
        Habit(id=name_contents(pack.contents), mailer=act.args.mailer, times=times,
              why=act.args.reason),
    )  # fmt: skip


def _refuse_open_mailer(act: Act[ClosePack], view: View, mailer: Mailer | None) -> Answer | None:
    """Refuses a mailer that does not close over the stack, or that the office took away."""
    args = act.args
    if (
        not args.mailer
        or (mailer and args.instead)
        or (mailer and closes_over(view, mailer, args.length_mm, args.width_mm, args.thick_mm))
    ):
        return None
    name = mailer.name if mailer else args.mailer
    return refuse(
        say("Mailer {name} does not close over {t} mm", name=name, t=length(args.thick_mm, 1)),
        say("Close it again: another mailer is looked for."),
    )


def _say_mailer(view: View, mailer: Mailer | None, then: Say | None = None) -> Say:
    """Says what a pack goes in, and whether it is the last of them.

    And what is next where the rest of its order is in hand.
    """
    label = say("Label it, then onto the cart.")
    if then:
        label = say("Label it. {then}", then=then)
    if mailer is None:
        return label
    if count_left(view, mailer.id) == 1:
        return say("Mailer {name}, the last one: order more. {label}", name=mailer.name,
                   label=label)  # fmt: skip
    return say("Mailer {name}. {label}", name=mailer.name, label=label)


def _say_rest(view: View, order: Order) -> Say:
    """Says what is next of an order whose other pack is closed."""
    if any(want.to_go for want in list_needs(view, order)):
        return say_next(view, order)
    return say("The rest is there: close it too.")


def _doubt_weight(act: Act[ClosePack], pack: Pack, weight: Weight) -> Concern:
    return Concern(
        id=act.id,
        what="weight",
        since=act.at,
        about=pack.key,
        text=say(
            "Pack {pack}: {g} g on the scale, {grams} ± {plus} g expected",
            pack=pack.id,
            g=mass(pack.scale_g),
            grams=mass(weight.grams),
            plus=mass(weight.plus, weight.grams),
        ),
    )


def open_pack(act: Act[OpenPack], view: View) -> Answer:
    """Opens a closed pack for a reason: its pieces lie in the open pack of its order again.

    No reason is asked for where its order is cancelled, or a batch in it is held.
    """
    pack = view.get(Pack, tail(act.subject))
    if pack and pack.state == "shelf":
        return _open_shelf_pack(act, view, pack)
    order = view.get(Order, pack.order) if pack else None
    if pack is None or order is None or pack.state != "packed":
        return _refuse_not_here(view, pack)
    if problem := refuse_elsewhere(act, order):
        return problem
    if problem := _refuse_with_other(view, order):
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
            replace(
                order,
                state=state,
                claimed=act.station,
                by=act.worker,
                packs=tuple(c for c in order.packs if c.pack != pack.id),
            ),
            *note_damage(pack, known, act.at),
        ),
    )


def _refuse_with_other(view: View, order: Order) -> Answer | None:
    """Refuses to open a pack of an order while another pack of it is open: they would mix."""
    lying = count_inside(view, order)
    if not lying or not order.packs or order.state == "cancelled":
        return None
    return refuse(
        say("Order {order} has {n} in its open pack", order=order.id, n=lying),
        say("Close that first, then open this one."),
    )


def _open_shelf_pack(act: Act[OpenPack], view: View, pack: Pack) -> Answer:
    """Opens a pack that lies on the shelf: its pieces go back on the rack, held ones apart."""
    inside = view.stock(place=f"pack/{pack.id}")
    held = keep_held(view, inside)
    known = find_reason(view, act.args.reason, "repack")
    if known is None and not held and list_reasons(view, "repack"):
        return ask_why(say("Open pack {pack} again?", pack=pack.id), "repack")
    racks = {h.part: p.rack for h in inside if (p := view.get(Part, h.part))}
    if homeless := next((h.part for h in inside if not racks.get(h.part)), ""):
        return refuse(
            say("{part} has no place on the rack", part=name_part(view, homeless)),
            say("The office gives it one first."),
        )
    do = say("Put its parts back, under their own masters.")
    if held:
        do = say("{batches}: keep them apart.", batches=say_held(held))
    return attention(
        say("Pack {pack} is opened: {n} back on the rack", pack=pack.id, n=total(inside)),
        do,
        moves=tuple(
            move(h.part, h.qty, h.place, f"rack/{racks[h.part]}", h.batch) for h in inside
        ),
        sets=(
            replace(pack, state="opened", why=known.id if known else ""),
            *note_damage(pack, known, act.at),
        ),
    )


def _refuse_not_here(view: View, pack: Pack | None) -> Answer:
    """Refuses a pack that does not lie closed at packing, and says where it is."""
    if pack is None:
        return refuse(say("There is no such pack"), say("Scan the label again."))
    if pack.state == "packed":
        return refuse(
            say("Pack {pack} is of order {order}", pack=pack.id, order=pack.order),
            say("Take one from the shelf."),
        )
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
    if pack is None or pack.state not in ("packed", "cart", "shelf"):
        return _refuse_not_here(view, pack)
    again = replace(pack, copies=pack.copies + 1)
    return good(
        say("Label of pack {pack}: copy {n}", pack=pack.id, n=again.copies),
        say("Throw the old label away."),
        sets=(again,),
        prints=(("label", pack.id),),
    )
