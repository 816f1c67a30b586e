"""Keeps what the office may not set over: orders that are packed or gone, the last supervisor.

What somebody wanted of such an order stands under Needs a look until a person settles it.
"""

from collections.abc import Iterable
from typing import NamedTuple

from station.shop.acts import Act, Answer, Args, refuse
from station.shop.facts import Concern, Fact, Order, Product, Worker
from station.shop.views import View
from station.shop.words import Say, moment, say, together

MOST = 500  # people
STATES: dict[str, Say] = {
    "packed": say("packed"),
    "shipped": say("gone"),
    "owed": say("owed whole"),
    "cancelled": say("cancelled"),
}


class KeptOrders(NamedTuple):
    """What is set all the same, and the wishes for orders that stay as they are."""

    facts: tuple[Fact, ...]
    wishes: tuple[Concern, ...]


def keep_orders(act: Act[Args], facts: Iterable[Fact], view: View) -> KeptOrders:
    """Takes out what would rewrite an order that is being packed or gone, as a wish."""
    sets: list[Fact] = []
    wishes: list[Concern] = []
    for fact in facts:
        before = view.get(Order, fact.id) if isinstance(fact, Order) else None
        state = _say_begun(before, view) if before else None
        if state is None:
            sets.append(fact)
        elif isinstance(fact, Order) and before and _wants(fact) != _wants(before):
            wishes.append(_make_wish(act, fact, state, view))
    return KeptOrders(tuple(sets), tuple(w for w in wishes if not _is_known(w, view)))


def _say_begun(order: Order, view: View) -> Say | None:
    """Says how far an order is; None: nobody has begun to pack it."""
    if order.state in STATES:
        return STATES[order.state]
    begun = order.state == "packing" or view.stock(place=f"packing/{order.id}")
    return say("being packed") if begun else None


def _wants(order: Order) -> tuple[object, ...]:
    """What the customer wants of it, without what the work has filled in."""
    return (order.due, *((line.product, line.quantity) for line in order.lines))


def _make_wish(act: Act[Args], wanted: Order, state: Say, view: View) -> Concern:
    lines = [
        say(
            "{n} × {product}",
            n=line.quantity,
            product=p.name if (p := view.get(Product, line.product)) else line.product,
        )
        for line in wanted.lines
    ]
    return Concern(
        id=f"wish-{wanted.id}",
        what="wish",
        since=act.at,
        about=wanted.key,
        text=say(
            "Order {order} is {state} and stays as it is. Wanted: {lines}, due {due}",
            order=wanted.id,
            state=state,
            lines=together(lines),
            due=moment(wanted.due),
        ),
        choices=("told the customer", "entered as a new order", "left as it is"),
        station=act.station,
        worker=act.worker,
    )


def _is_known(wish: Concern, view: View) -> bool:
    """Says whether the same was wanted before, by a list that is taken in again each day."""
    before = view.get(Concern, wish.id)
    if before is None or not isinstance(before.text, Say) or not isinstance(wish.text, Say):
        return False
    wanted = ("lines", "due")
    return all(before.text.values.get(n) == wish.text.values[n] for n in wanted)


def refuse_last_supervisor(facts: Iterable[Fact], view: View) -> Answer | None:
    """Refuses what would leave nobody who can give a PIN. None: somebody can, or nobody could."""
    before = {w.id: w for w in view.shelf(Worker, "all", MOST)}
    after = before | {f.id: f for f in facts if isinstance(f, Worker)}
    able = [w for w in before.values() if _may_approve(w)]
    if not able or any(_may_approve(w) for w in after.values()):
        return None
    return refuse(
        say("Worker {id} is the last supervisor who has a PIN", id=able[-1].id),
        say("Give another worker a new PIN first: that makes a supervisor. Then change this one."),
    )


def _may_approve(worker: Worker) -> bool:
    return bool(worker.active and worker.supervisor and worker.pin)
