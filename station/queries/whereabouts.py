"""Finds what any code means and how it stands: one question for every kind of code."""

from collections.abc import Callable
from typing import Any

from station.queries.things import Thing
from station.queries.whereabouts_machines import (
    answer_bit,
    answer_cutfile,
    answer_lot,
    answer_mailer,
    answer_reason,
    answer_router,
)
from station.queries.whereabouts_orders import (
    answer_cart,
    answer_order,
    answer_pack,
    answer_product,
)
from station.queries.whereabouts_pieces import answer_batch, answer_part, answer_rack, answer_slip
from station.shop.codes import Code
from station.shop.facts import (
    Batch,
    Bit,
    Cart,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Reason,
    Router,
)
from station.shop.views import View
from station.shop.words import say

ANSWERS: dict[str, tuple[type[Fact], Callable[[View, Any, str], Thing]]] = {
    "batch": (Batch, answer_batch),
    "part": (Part, answer_part),
    "rack": (RackPlace, answer_rack),
    "order": (Order, answer_order),
    "product": (Product, answer_product),
    "pack": (Pack, answer_pack),
    "cart": (Cart, answer_cart),
    "router": (Router, answer_router),
    "bit": (Bit, answer_bit),
    "lot": (Lot, answer_lot),
    "cutfile": (CutFile, answer_cutfile),
    "mailer": (Mailer, answer_mailer),
    "reason": (Reason, answer_reason),
}


def find_thing(view: View, code: Code, now: str) -> Thing | None:
    """Finds the thing that a code is of; None where the shop knows none, or it is no thing."""
    if code.kind not in ANSWERS:
        return None
    kind, answer = ANSWERS[code.kind]
    fact = view.get(kind, code.number)
    if fact is None:
        return None
    if isinstance(fact, Batch) and code.sheet:
        return answer_slip(view, fact, code.sheet, now)
    thing = answer(view, fact, now)
    return thing if fact.in_use else _tell_retired(thing)


def _tell_retired(thing: Thing) -> Thing:
    """Tells of a thing that it is out of use, beside how it stands."""
    return thing._replace(said=say("{said}, retired", said=thing.said), note=say("retired"))
