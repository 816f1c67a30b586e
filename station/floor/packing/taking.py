"""A part named at packing goes into the pack, or back on the rack."""

from station.floor.packing.common import too_few
from station.floor.packing.rules_take import wrong
from station.queries.orders import find_need
from station.shop.facts import Order, Part
from station.shop.rooms import Do, Hand, Took, plain_do
from station.shop.views import View


def back(hand: Hand, part: Part) -> Do:
    """Puts a part back on its rack place, all of it unless a number came first."""
    args: dict[str, object] = {"part": part.id}
    if isinstance(hand.work.get("take"), int):
        args["quantity"] = hand.work["take"]
    after = hand.with_work(asks=None, take=None, picked=None, scale=None, part=part.id)
    return plain_do("take_back", f"order/{hand.subject}", args, after)


def take(hand: Hand, order: Order, part: Part, view: View) -> Do | Took:
    """Takes a part: all that is wanted unless a number came first."""
    chosen = hand.with_work(part=part.id, take=None, picked=None)
    want = find_need(view, order, part.id)
    if want is None or not want.wanted:
        return Took(hand.with_work(picked=None), wrong(view, order, part))
    args: dict[str, object] = {"part": part.id}
    if isinstance(hand.work.get("take"), int):
        args["quantity"] = hand.work["take"]
    asked = args.get("quantity", want.to_go)
    if isinstance(asked, int) and want.on_rack < asked <= want.to_go:
        return Took(chosen, too_few(want))  # “Part missing” is about this part now
    after = chosen.with_work(picked=[part.id, asked], scale=None)
    return plain_do("pick", f"order/{hand.subject}", args, after)


def all_back(hand: Hand, order: Order) -> Do:
    """All that lies in the pack goes back."""
    after = hand.with_work(asks=None, take=None, picked=None, scale=None, part=None)
    return plain_do("take_back", order.key, {}, after)
