"""Moves pieces from the rack into the pack of an order, and back again."""

from dataclasses import replace

from station.floor.packing.acts import (
    CorrectPick,
    PickPart,
    PickSet,
    PutPartsBack,
    SpoilPacked,
)
from station.floor.packing.rules_order import (
    find_order,
    refuse_elsewhere,
    refuse_not_in_hand,
    refuse_unpackable,
    say_held,
    say_next,
)
from station.queries.batches import keep_free, keep_held
from station.queries.orders import Need, count_closed, count_packed, find_need, list_needs
from station.queries.settings import find_reason
from station.queries.stock import list_free_on_rack, move_in_order
from station.shop.acts import Act, Answer, ask_why, attention, good, notice, refuse
from station.shop.facts import Concern, Fact, Order, Pack, Part, Product
from station.shop.first_facts import say_reason
from station.shop.moves import Held, Move
from station.shop.views import View, by_part, total
from station.shop.words import Say, say, together

NAMED = 3  # parts that a sentence names

NO_PART = refuse(say("There is no such part"), say("Scan the card under the master."))


# --- into the pack


def pick_part(act: Act[PickPart], view: View) -> Answer:
    """Takes pieces of one part from its rack place, oldest batch first."""
    order, part = find_order(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return NO_PART
    if problem := refuse_not_in_hand(act, view, order):
        return problem
    want = find_need(view, order, part.id)
    if want is None or not want.wanted:
        return refuse_unwanted(view, order, part)
    quantity = want.to_go if act.args.quantity is None else act.args.quantity
    if not 0 < quantity <= want.to_go:
        return _refuse_number(want.to_go, part)
    if want.on_rack < quantity:
        return refuse_too_few(want)
    done = good(
        say("{n} × {part} in the pack", n=quantity, part=part.name),
        _say_which_stay(want, say_next(view, order, part.id, want.inside + quantity)),
        moves=move_in_order(list_free_on_rack(view, part), quantity, f"packing/{order.id}"),
    )
    return replace(done, certain="told") if quantity == want.on_rack else done


def pick_set(act: Act[PickSet], view: View) -> Answer:
    """Takes whole sets of a product that the order wants: what is bagged together."""
    order, product = find_order(act, view), view.get(Product, act.args.product)
    if order is None or product is None:
        return refuse(say("There is no such product"), say("Scan its card again."))
    if problem := refuse_not_in_hand(act, view, order):
        return problem
    sets = sum(line.quantity - line.short for line in order.lines if line.product == product.id)
    if not sets:
        do = say_next(view, order)
        return refuse(say("{part} is not in order {order}", part=product.name, order=order.id), do)
    count, last = act.args.quantity, False
    moves: list[Move] = []
    for number, each in product.parts:
        want, part = find_need(view, order, number), view.get(Part, number)
        if want is None or part is None or not 0 < count * each <= want.to_go:
            return refuse(
                say("{product}: no {n} whole {n|set|sets} to go", n=count, product=product.name),
                say_next(view, order),
            )
        if want.on_rack < count * each:
            return refuse_too_few(want)
        last = last or want.on_rack == count * each
        free = list_free_on_rack(view, part)
        moves += move_in_order(free, count * each, f"packing/{order.id}")
    done = _tell_sets(view, order, product, count)
    return replace(done, moves=tuple(moves), certain="told" if last else "")


def _tell_sets(view: View, order: Order, product: Product, count: int) -> Answer:
    """Tells which of its sets a product is at, with `count` of them taken by this act."""
    inside = by_part(view.stock(place=f"packing/{order.id}"))
    for part, each in product.parts:
        inside[part] = inside.get(part, 0) + each * count
    every = {p: n + inside.get(p, 0) for p, n in count_closed(order).items()}
    lines = zip(order.lines, count_packed(view, order, inside | every), strict=True)
    mine = [(whole, line.quantity - line.short) for line, whole in lines
            if line.product == product.id]  # fmt: skip
    there, wanted = sum(w for w, _ in mine), sum(n for _, n in mine)
    said = say("Set {n} of {all}: {product}", n=there, all=wanted, product=product.name)
    bag = say("Bag it.")
    if there < wanted:
        return good(said, say("{bag} Then set {n}.", bag=bag, n=there + 1))
    after = {n.part.id: max(0, n.wanted - inside.get(n.part.id, 0))
             for n in list_needs(view, order)}  # fmt: skip
    to_go = next((n for n in list_needs(view, order) if after[n.part.id]), None)
    if to_go is None:
        return good(said, say("{bag} All parts are in: close the pack.", bag=bag))
    return good(
        said,
        say("{bag} Next: {n} {part} from rack {place}.", bag=bag, n=after[to_go.part.id],
            part=to_go.part.name, place=to_go.place_name),
    )  # fmt: skip


def _say_which_stay(want: Need, then: Say) -> Say:
    """Says first which pieces stay at the rack place that others were just taken from."""
    if not want.held:
        return then
    return say("{batches}: leave them there. {then}", batches=say_held(want.held), then=then)


def refuse_unwanted(view: View, order: Order, part: Part) -> Answer:
    """Refuses a part that the order does not want."""
    names = [say("{part}", part=w.part.name) for w in list_needs(view, order) if w.to_go]
    return refuse(
        say("{part} is not in order {order}", part=part.name, order=order.id),
        say(
            "It wants {parts}. Put the {part} back.",
            parts=together(names, NAMED) or say("nothing more"),
            part=part.name,
        ),
    )


def _refuse_number(most: int, part: Part) -> Answer:
    """Refuses more pieces of a part than may be taken, and none."""
    if most == 0:
        return refuse(
            say("All {part} are in the pack", part=part.name), say("Take the next part.")
        )
    return refuse(
        say("{n} {part} {n|is|are} wanted", n=most, part=part.name),
        say("Enter a number from 1 to {n}.", n=most),
    )


def refuse_too_few(want: Need) -> Answer:
    """Refuses to take more of a part than its rack place has free."""
    if want.held:
        return refuse(
            say("{batches}: {n} {part} in {place} {n|stays|stay} there",
                batches=say_held(want.held), n=total(want.held), part=want.part.name,
                place=want.place_name),
            say("Take the other {n}; a supervisor lets the rest go on.", n=want.on_rack)
            if want.on_rack
            else say("Take the next part. A supervisor lets them go on."),
        )  # fmt: skip
    return refuse(
        say("Only {n} {part} in {place} by the book", n=want.on_rack, part=want.part.name,
            place=want.place_name),
        say("Touch “Part missing” to count them."),
    )  # fmt: skip


def correct_pick(act: Act[CorrectPick], view: View) -> Answer:
    """Makes the pick that was just made another number."""
    order, part = find_order(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return NO_PART
    if problem := refuse_not_in_hand(act, view, order):
        return problem
    want, was, count = find_need(view, order, part.id), act.args.was, act.args.quantity
    if want is None or not 0 < was <= want.inside:
        return refuse(
            say("The pack has changed since"), say("Put back what is too many, or take more.")
        )
    if not 0 <= count <= was + want.to_go:
        return _refuse_number(was + want.to_go, part)
    if count == was:
        return notice(say("{n} × {part} it is", n=was, part=part.name), say("Go on."))
    if count - was > want.on_rack:
        return refuse_too_few(want)
    after = want.inside + count - was
    if count > was:
        moves = move_in_order(list_free_on_rack(view, part), count - was, f"packing/{order.id}")
        do = _say_which_stay(want, say_next(view, order, part.id, after))
    else:
        moves = move_back(view, order, part, was - count)
        do = say("{n} {n|stays|stay} in rack {place}.", n=was - count, place=want.place_name)
    return good(
        say("{n} × {part}, not {was}: {inside} in the pack", n=count, part=part.name, was=was,
            inside=after),
        do,
        moves=moves,
    )  # fmt: skip


# --- back on the rack


def move_back(view: View, order: Order, part: Part, quantity: int) -> tuple[Move, ...]:
    """Moves pieces from the pack to their rack place."""
    return move_out(view, order, part, quantity, f"rack/{part.rack}")


def move_out(view: View, order: Order, part: Part, quantity: int, to: str) -> tuple[Move, ...]:
    """Moves pieces out of the pack: held ones first, then the newest as if never taken."""
    inside = [h for h in view.stock(place=f"packing/{order.id}") if h.part == part.id]
    newest = tuple(reversed(inside))
    first = (*keep_held(view, newest), *keep_free(view, newest))
    return move_in_order(first, quantity, to)


def spoil_packed(act: Act[SpoilPacked], view: View) -> Answer:
    """Counts spoiled pieces out of an order's open pack; others are taken for them."""
    order, part = find_order(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return NO_PART
    if problem := refuse_elsewhere(act, order):
        return problem
    inside = by_part(view.stock(place=f"packing/{order.id}")).get(part.id, 0)
    count, why = act.args.quantity, find_reason(view, act.args.reason, "spoiled")
    if not inside:
        return refuse_unpackable(view, order) or _refuse_not_inside(view, order, part.id)
    if not 0 < count <= inside:
        return _refuse_too_many(inside)
    if why is None:
        return ask_why(say("{n} × {part} spoiled", n=count, part=part.name), "spoiled")
    return attention(
        say("{n} × {part} counted out: {why}", n=count, part=part.name, why=say_reason(why)),
        say("Throw it away. {then}", then=say_next(view, order, part.id, inside - count)),
        moves=move_out(view, order, part, count, f"spoiled/{why.id}"),
    )


def put_parts_back(act: Act[PutPartsBack], view: View) -> Answer:
    """Puts pieces from an order's open pack back on their rack places."""
    order = find_order(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Scan its card."))
    if problem := refuse_elsewhere(act, order):
        return problem
    inside = by_part(view.stock(place=f"packing/{order.id}"))
    counts = {p: n for p, n in inside.items() if act.args.part in ("", p)}
    if not counts:
        return _refuse_not_inside(view, order, act.args.part)
    most = sum(counts.values())
    quantity = most if act.args.quantity is None else act.args.quantity
    if not 0 < quantity <= most:
        return _refuse_too_many(most)
    parts = [part for p in counts if (part := view.get(Part, p))]
    if homeless := next((p for p in parts if not p.rack), None):
        return refuse(
            say("{part} has no place on the rack", part=homeless.name),
            say("The office gives it one first."),
        )
    moves = tuple(m for p in parts for m in move_back(view, order, p, min(quantity, counts[p.id])))
    return _tell_what_went_back(act, view, order, moves)


def _refuse_too_many(most: int) -> Answer:
    """Refuses to take more out of the pack than is in it, and none."""
    return refuse(
        say("{n} {n|is|are} in the pack", n=most), say("Enter a number from 1 to {n}.", n=most)
    )


def _refuse_not_inside(view: View, order: Order, part: str) -> Answer:
    """Refuses to take out what is not in the pack."""
    if found := view.get(Part, part):
        return refuse(
            say("No {part} are in the pack", part=found.name),
            say("Touch the button again, then scan a part that is in it."),
        )
    return refuse(
        say("Nothing to put back from order {order}", order=order.id), say("Take the next order.")
    )


def _tell_what_went_back(
    act: Act[PutPartsBack], view: View, order: Order, moves: tuple[Move, ...]
) -> Answer:
    """Tells what went back where; a cancelled order whose pack is empty is done with."""
    count = sum(m.qty for m in moves)
    said = say("{n} put back on the rack", n=count)
    parts = {m.part for m in moves}
    if len(parts) == 1 and (want := find_need(view, order, next(iter(parts)))):
        said = say("{n} × {part} put back: rack {place}", n=count, part=want.part.name,
                   place=want.place_name)  # fmt: skip
    held = keep_held(view, tuple(Held(*m.to, m.part, m.qty) for m in moves))
    do = say("Under their own masters.")
    if held:
        do = say("{batches}: keep them apart.", batches=say_held(held))
    sets: tuple[Fact, ...] = ()
    if order.state == "cancelled":
        left = total(view.stock(place=f"packing/{order.id}")) - count
        closed = next(iter(_list_closed(view, order)), None)
        do = say("{n} more to put back.", n=left) if left else say("Take the next order.")
        if closed and not left:
            do = say("Pack {pack} of it is still to be opened: scan it.", pack=closed.id)
        sets = () if left or closed else _settle_cancelled(act, view, order)
    return good(said, do, moves=moves, sets=sets)


def _list_closed(view: View, order: Order) -> list[Pack]:
    """Lists the closed packs of an order that goes in several, which are still here."""
    packs = (view.get(Pack, closed.pack) for closed in order.packs)
    return [p for p in packs if p and p.state in ("packed", "cart")]


def _settle_cancelled(act: Act[PutPartsBack], view: View, order: Order) -> tuple[Fact, ...]:
    """Settles a cancelled order that is put back: it is nobody's, with nothing to look at."""
    past = view.last(order.key, "cancel_order")
    worry = view.get(Concern, past.act.id) if past else None
    free = replace(order, claimed="")
    if worry is None or worry.settled:
        return (free,)
    return (free, replace(worry, settled="put back", by=act.worker))
