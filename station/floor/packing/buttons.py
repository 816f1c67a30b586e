"""What a button means at packing."""

from station.floor.packing import rows, taking
from station.floor.packing.rules_claim import stays
from station.queries.orders import Need, list_needs
from station.shop.acts import good, notice, refuse
from station.shop.facts import Order
from station.shop.rooms import Do, Hand, Took, plain_do
from station.shop.views import View, total
from station.shop.words import say


def button(hand: Hand, name: str, view: View) -> Do | Took | None:
    """A button by its name; None where it means nothing with what is in hand."""
    if name == "label_again":
        return _label(hand)
    if name == "put_down" and hand.work.get("asks"):
        return Took(
            hand.with_work(asks=None, take=None),
            good(say("Left; nothing was changed"), say("Go on with your work.")),
        )
    order = view.get(Order, hand.subject) if hand.subject else None
    return _with_order(hand, order, name, view) if order else None


def _with_order(hand: Hand, order: Order, name: str, view: View) -> Do | Took | None:
    """The buttons that want an order in hand."""
    if name == "put_down":
        return _put_down(hand, order, view)
    if name == "close_pack":
        return _close(hand, order, view)
    if name == "part_missing":
        return _missing(hand, order, view)
    if name == "take_back":
        return _back(hand, order)
    if name == "all_of_it":
        return _all(hand, order, view)
    if name == "scale":
        return _scale(hand)
    short = str(hand.work.get("short") or hand.work.get("part") or "")
    if name == "wait":
        return plain_do("wait_for", order.key, {"part": short}, hand.empty())
    if name == "send_short":
        after = hand.with_work(short=None, picked=None, scale=None)
        return plain_do("send_short", order.key, {"part": short}, after)
    return None


def _put_down(hand: Hand, order: Order, view: View) -> Do | Took:
    """Free for everybody if nothing was taken for it; else it stays here and says so."""
    if order.claimed != hand.station:
        return Took(
            hand.empty(),
            good(say("Order {order} is put down", order=order.id), say("Take the next order.")),
        )
    lying = total(view.stock(place=f"packing/{order.id}"))
    if lying:
        return Took(hand.empty(), stays(order, lying))
    return plain_do("put_order_down", order.key, {}, hand.empty())


def _close(hand: Hand, order: Order, view: View) -> Do:
    args = {"scale_g": hand.work["scale"]} if "scale" in hand.work else {}
    packed = bool(view.stock(place=f"packing/{order.id}"))
    return plain_do("close_pack", order.key, args, hand.empty(), ("pack",) if packed else ())


def front(hand: Hand, found: tuple[Need, ...]) -> Need | None:
    """The row in front: the part scanned last while more of it is to go, else the first."""
    open_ones = [w for w in found if w.to_go]
    last = (w for w in open_ones if w.part.id == hand.work.get("part"))
    return next(last, open_ones[0] if open_ones else None)


def _all(hand: Hand, order: Order, view: View) -> Do | Took:
    """All that is asked of the row in front is in; or all of the pack goes back."""
    if rows.back(hand, order):
        return taking.all_back(hand, order)
    want = front(hand, list_needs(view, order))
    if want is None:
        return Took(hand, refuse(say("All of it is in already"), say("Close the pack.")))
    return taking.take(hand, order, want.part, view)


def _back(hand: Hand, order: Order) -> Do | Took:
    """Asks what goes back; pressed again, and of a cancelled order, everything does."""
    if rows.back(hand, order):
        return taking.all_back(hand, order)
    return Took(
        hand.with_work(asks="back", take=None, picked=None),
        notice(
            say("Put what back?"), say("Scan its card, or touch its row; a number first for some.")
        ),
    )


def _scale(hand: Hand) -> Took:
    return Took(
        hand.with_work(asks="scale"),
        notice(say("What does the scale show?"), say("Parts and mailer, without wrap, in g.")),
    )


def _label(hand: Hand) -> Took:
    return Took(
        hand.with_work(asks="label"),
        notice(say("Which label?"), say("Scan the order's card, or touch its pack.")),
    )


def _missing(hand: Hand, order: Order, view: View) -> Took:
    """Asks for a count of the rack place that does not hold what the book says."""
    want = front(hand, list_needs(view, order))
    if want is None:
        return Took(
            hand, refuse(say("Nothing is missing from this order"), say("Close the pack."))
        )
    return Took(
        hand.with_work(asks="count", part=want.part.id, picked=None),
        notice(
            say(
                "{part}: {n} in rack {place} by the book",
                part=want.part.name,
                n=want.on_rack + total(want.held),
                place=want.place_name,
            ),
            say("How many are really there?"),
        ),
    )
