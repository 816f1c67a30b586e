"""Packing: claim an order, take its parts from the rack, close the pack."""

from dataclasses import replace

from station.floor.packing import mailers
from station.floor.packing.needs import Want, coming, rack, to_go, wants
from station.shop.acts import Act, Answer, ask, attention, good, new_number, refuse
from station.shop.facts import (
    Batch,
    Concern,
    Line,
    Mailer,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
)
from station.shop.moves import Held, Move, move, tail
from station.shop.views import Rule, Rules, View, by_part, total
from station.shop.words import Say, clock, say, several

LIVE = ("open", "packing", "waiting")


def order_of(act: Act, view: View) -> Order | None:
    """The order that an act is about."""
    return view.get(Order, tail(act.subject))


def claim_order(act: Act, view: View) -> Answer:
    """One station packs an order; nobody else does until it lets go."""
    order = order_of(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Touch a row or scan its card."))
    if order.state == "cancelled" and view.stock(place=f"packing/{order.id}"):
        return attention(
            say("Order {order} is cancelled", order=order.id),
            say("Put back what is in its pack."),
            sets=(replace(order, claimed=act.station, by=act.worker),),
        )
    if problem := unpackable(act, order):
        return problem
    claimed = replace(order, state="packing", claimed=act.station, by=act.worker, waits="")
    first = next((w for w in wants(view, order) if w.to_go), None)
    do = say("All of it is in: close the pack.")
    if first:
        do = say(
            "First: {n} {part} from rack {place}.",
            n=first.to_go,
            part=first.part.name,
            place=first.place_name,
        )
    return good(say("Order {order} is yours", order=order.id), do, sets=(claimed,))


def unpackable(act: Act, order: Order) -> Answer | None:
    """Why this station cannot pack this order."""
    if order.state == "cancelled":
        return refuse(
            say("Order {order} is cancelled", order=order.id), say("Put back what is in its pack.")
        )
    if order.state not in LIVE:
        return refuse(
            say("Order {order} is {state} already", order=order.id, state=order.state),
            say("Take the next order."),
        )
    if order.state == "packing" and order.claimed not in ("", act.station):
        return elsewhere(order)
    return None


def elsewhere(order: Order) -> Answer:
    """Said when another station packs an order."""
    return refuse(
        say("Station {station} packs order {order}", station=order.claimed, order=order.id),
        say("Take the next order."),
    )


def pick(act: Act, view: View) -> Answer:
    """Takes pieces of one part from its rack place, oldest batch first.

    args: `part`, and `quantity` where not all that is wanted is taken.
    """
    order, part = order_of(act, view), view.get(Part, str(act.args.get("part", "")))
    if order is None or part is None:
        return refuse(say("There is no such part"), say("Scan the card under the master."))
    if problem := unpackable(act, order):
        return problem
    want = next((w for w in wants(view, order) if w.part.id == part.id), None)
    if want is None:
        return _wrong(view, order, part)
    quantity = act.args.get("quantity", want.to_go)
    if type(quantity) is not int or not 0 < quantity <= want.to_go:
        return _no_more(want.to_go, part)
    lying = rack(view, part)
    if total(lying) < quantity:
        return too_few(want)
    moves = _taken(lying, quantity, f"packing/{order.id}")
    left = to_go(view, order) - quantity
    return good(
        say("{n} × {part} in the pack", n=quantity, part=part.name),
        _next(view, order, part.id, want.inside + quantity, left),
        moves=moves,
    )


def too_few(want: Want) -> Answer:
    """Said when the book has fewer of a part on the rack than are wanted."""
    return refuse(
        say("Only {n} {part} in {place} by the book", n=want.on_rack, part=want.part.name,
            place=want.place_name),
        say("Touch “Part missing” to count them."),
    )  # fmt: skip


def _wrong(view: View, order: Order, part: Part) -> Answer:
    names = [w.part.name for w in wants(view, order) if w.to_go] or ["nothing more"]
    return refuse(
        say("{part} is not in order {order}", part=part.name, order=order.id),
        say("It wants {parts}. Put the {part} back.", parts=several(names[:3]), part=part.name),
    )


def _no_more(to_take: int, part: Part) -> Answer:
    if to_take == 0:
        return refuse(
            say("All {part} are in the pack", part=part.name), say("Take the next part.")
        )
    return refuse(
        say("{n} {part} {n|is|are} wanted", n=to_take, part=part.name),
        say("Enter a number from 1 to {n}.", n=to_take),
    )


def _taken(lying: tuple[Held, ...], quantity: int, to: str) -> tuple[Move, ...]:
    moves: list[Move] = []
    for held in lying:
        if quantity <= 0:
            break
        some = min(held.qty, quantity)
        moves.append(move(held.part, some, held.place, to, held.batch))
        quantity -= some
    return tuple(moves)


def _next(view: View, order: Order, done: str, inside: int, left: int) -> Say:
    """What to take next, or that the pack can be closed."""
    if left == 0:
        return say("All of it is in: close the pack.")
    for want in wants(view, order):
        go = want.wanted - inside if want.part.id == done else want.to_go
        if go > 0:
            return say(
                "Next: {n} {part} from rack {place}.",
                n=go,
                part=want.part.name,
                place=want.place_name,
            )
    return say("Close the pack.")


def recount_place(act: Act, view: View) -> Answer:
    """What is really at a rack place replaces the book's figure; the order may then wait.

    args: `part`, `counted`.
    """
    part, counted = view.get(Part, str(act.args.get("part", ""))), act.args.get("counted")
    if part is None:
        return refuse(say("There is no such part"), say("Scan the card under the master."))
    lying = rack(view, part)
    book = total(lying)
    if type(counted) is not int or not 0 <= counted <= 100_000:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    if counted == book:
        return good(say("Counted {n}: the book agrees", n=counted), say("Go on."))
    if counted > book and not lying:
        return refuse(say("The book knows no batch for them"), say("The office corrects it."))
    by = counted - book
    moves = (
        _taken(lying, -by, "recount")
        if by < 0
        else (move(part.id, by, "recount", f"rack/{part.rack}", lying[-1].batch),)
    )
    worry = Concern(
        id=act.id,
        what="recount",
        since=act.at,
        about=part.key,
        text=say(
            "{part}: {book} by the book, {counted} counted at packing",
            part=part.name,
            book=book,
            counted=counted,
        ),
    )
    here, due = coming(view, part.id)
    do = say("No more are under way: send it short, or wait.")
    if here:
        do = say(
            "{n} {n|is|are} in trimming{due}. Wait, or send it short.",
            n=here,
            due=f", due {clock(due)}" if due else "",
        )
    return attention(
        say(
            "Corrected: {n} {part} there, {by} by the book",
            n=counted,
            part=part.name,
            by=f"{by:+d}",
        ),
        do,
        moves=moves,
        sets=(worry,),
    )


def wait_for(act: Act, view: View) -> Answer:
    """The order waits for a part; its pack stays as it is."""
    order, part = order_of(act, view), view.get(Part, str(act.args.get("part", "")))
    if order is None or part is None:
        return refuse(say("What does it wait for?"), say("Scan the part's card."))
    if problem := unpackable(act, order):
        return problem
    here, due = coming(view, part.id)
    if not here:
        return refuse(
            say("No {part} are in trimming", part=part.name),
            say("Send it short, or put the order down."),
        )
    text = f"{here} {part.name} in trimming" + (f", due {clock(due)}" if due else "")
    waiting = replace(order, state="waiting", claimed="", waits=text)
    return attention(
        say("Order {order} waits: {text}", order=order.id, text=text),
        say("Leave its pack open on the shelf. Take the next."),
        sets=(waiting,),
    )


def send_short(act: Act, view: View) -> Answer:
    """A supervisor lets an order go with pieces owed."""
    order, part = order_of(act, view), view.get(Part, str(act.args.get("part", "")))
    if order is None or part is None:
        return refuse(say("Which part is short?"), say("Scan the part's card."))
    if problem := unpackable(act, order):
        return problem
    want = next((w for w in wants(view, order) if w.part.id == part.id), None)
    short = max(0, want.to_go - want.on_rack) if want else 0
    if not short:
        return refuse(say("{part} is not short", part=part.name), say("Take it from the rack."))
    if not act.args.get("approved"):
        return ask(
            say("{n} {part} would be owed", n=short, part=part.name),
            say("Supervisor: scan your badge, then enter your PIN."),
            "supervisor",
        )
    lines, owed = _shorten(view, order, part.id, short)
    worry = Concern(
        id=act.id,
        what="short",
        since=act.at,
        about=order.key,
        tone="stop",
        text=say("Order {order} is short of {n} × {part}", order=order.id, n=owed, part=part.name),
    )
    return attention(
        say("{n} {part} {n|is|are} owed to order {order}", n=owed, part=part.name, order=order.id),
        say("Take the rest and close the pack."),
        moves=_beyond(view, replace(order, lines=lines)),
        sets=(replace(order, lines=lines), worry),
    )


def _beyond(view: View, order: Order) -> tuple[Move, ...]:
    """Pieces in the pack beyond what is wanted now, back to their rack places."""
    moves: list[Move] = []
    for want in wants(view, order):
        held = tuple(h for h in view.stock(place=f"packing/{order.id}") if h.part == want.part.id)
        extra = want.inside - want.wanted
        if extra > 0 and want.part.rack:
            moves += _taken(held, extra, f"rack/{want.part.rack}")
    return tuple(moves)


def _shorten(view: View, order: Order, part: str, short: int) -> tuple[tuple[Line, ...], int]:
    """Lines with whole products owed until `short` pieces of the part are covered."""
    lines, owed = [], 0
    for line in order.lines:
        product = view.get(Product, line.product)
        each = dict(product.parts).get(part, 0) if product else 0
        more = 0
        if each and short > owed:
            more = min(line.quantity - line.short, -(-(short - owed) // each))
            owed += more * each
        lines.append(replace(line, short=line.short + more))
    return tuple(lines), owed


def take_back(act: Act, view: View) -> Answer:
    """Pieces from an order's open pack go back to their rack place."""
    order = order_of(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Scan its card."))
    if order.claimed not in ("", act.station):
        return elsewhere(order)
    only = str(act.args.get("part", ""))
    held = [h for h in view.stock(place=f"packing/{order.id}") if only in ("", h.part)]
    places = {h.part: p.rack for h in held if (p := view.get(Part, h.part))}
    if not held or not all(places.values()):
        return refuse(
            say("Nothing to put back from order {order}", order=order.id),
            say("Take the next order."),
        )
    moves = tuple(move(h.part, h.qty, h.place, f"rack/{places[h.part]}", h.batch) for h in held)
    return good(
        say("{n} put back on the rack", n=sum(h.qty for h in held)),
        say("Under their own masters."),
        moves=moves,
    )


def close_pack(act: Act, view: View) -> Answer:
    """The pack is complete: it gets its number, its label and its mailer."""
    order = order_of(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Claim an order first."))
    if problem := unpackable(act, order):
        return problem
    open_wants = [w for w in wants(view, order) if w.to_go]
    if open_wants:
        first = open_wants[0]
        return refuse(
            say("Not complete: {n} to go", n=sum(w.to_go for w in open_wants)),
            say(
                "Next: {n} {part} from rack {place}.",
                n=first.to_go,
                part=first.part.name,
                place=first.place_name,
            ),
        )
    held = view.stock(place=f"packing/{order.id}")
    if not held:
        return refuse(say("The pack is empty"), say("Take its parts first."))
    return _closed(act, view, order)


def _closed(act: Act, view: View, order: Order) -> Answer:
    held, number = view.stock(place=f"packing/{order.id}"), new_number(act, "pack")
    inside = by_part(held)
    pieces = [(p, n) for part, n in inside.items() if (p := view.get(Part, part))]
    made = mailers.stack(pieces)
    mailer = mailers.smallest(made, view.shelf(Mailer, "all", 100))
    pack = Pack(
        id=number,
        order=order.id,
        mailer=mailer.id if mailer else "",
        mass_g=round(mailers.weight(made, mailer)[0], 1),
        closed=act.at,
        by=act.worker,
        contents=tuple(inside.items()),
    )
    moves = tuple(move(h.part, h.qty, h.place, f"pack/{number}", h.batch) for h in held)
    packed = replace(order, state="packed", claimed="", by=act.worker)
    do = say("Label it, then onto the cart.")
    if mailer:
        do = say("Mailer {name}. Label it, then onto the cart.", name=mailer.name)
    return good(
        say("Pack {pack} is closed: order {order}", pack=number, order=order.id),
        do,
        moves=moves,
        sets=(pack, packed),
        prints=(("label", number),),
    )


def open_pack(act: Act, view: View) -> Answer:
    """A pack of a cancelled order is opened; its pieces are put back next."""
    pack = view.get(Pack, tail(act.subject))
    order = view.get(Order, pack.order) if pack else None
    if pack is None or order is None or pack.state != "packed":
        return refuse(say("Only a pack off the cart is opened"), say("Take it off first."))
    if order.state != "cancelled":
        return refuse(
            say("Order {order} is not cancelled", order=order.id),
            say("Its pack goes onto the cart."),
        )
    moves = tuple(
        move(h.part, h.qty, h.place, f"packing/{order.id}", h.batch)
        for h in view.stock(place=f"pack/{pack.id}")
    )
    return attention(
        say("Pack {pack} is opened", pack=pack.id),
        say("Put its parts back on the rack."),
        moves=moves,
        sets=(replace(pack, state="opened"), replace(order, claimed=act.station)),
    )


_READS = frozenset({Batch, Concern, Mailer, Order, Pack, Part, Product, RackPlace})

RULES: Rules = {
    kind: Rule(_READS, decide)
    for kind, decide in {
        "claim_order": claim_order,
        "pick": pick,
        "recount_place": recount_place,
        "wait_for": wait_for,
        "send_short": send_short,
        "take_back": take_back,
        "close_pack": close_pack,
        "open_pack": open_pack,
    }.items()
}
