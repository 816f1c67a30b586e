"""What a code means at packing, with an order in hand.

`hand.work`: `part` (chosen last), `take` (a number given before the scan), `asks` (``count``
while a rack place is counted), `short` (the part that was counted short).
"""

from dataclasses import replace

from station.floor.packing.needs import wants
from station.floor.packing.rules import too_few
from station.shop.acts import notice, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Order, Pack, Part, RackPlace
from station.shop.rooms import Do, Hand, Input, Number, Took
from station.shop.views import View
from station.shop.words import say


def step(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """One input at packing."""
    if isinstance(given, Number):
        return _number(hand, given, view) if hand.subject else None
    if not isinstance(given, Code):
        return None
    if given.kind == "order":
        return _claim(hand, given.number)
    if given.kind == "pack":
        return _open(hand, given.number, view)
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    if card and card.name == "next_order":
        return _next_order(hand, view)
    if not hand.subject:
        return None
    if given.kind in ("part", "rack"):
        return _thing(hand, given, view)
    return _button(hand, card.name, view) if card else None


def _claim(hand: Hand, number: str) -> Do:
    fresh = replace(hand.empty(), subject=number)
    return Do("claim_order", f"order/{number}", {}, fresh)


def _next_order(hand: Hand, view: View) -> Do | Took:
    """The first order by due time that nobody packs."""
    for order in view.shelf(Order, "open", 100):
        if order.state == "open":
            return _claim(hand, order.id)
    return Took(hand, refuse(say("No order waits to be packed"), say("Help at trimming.")))


def _open(hand: Hand, number: str, view: View) -> Do | Took:
    """A pack of a cancelled order is opened, and its order taken in hand to put it back."""
    pack = view.get(Pack, number)
    if pack is None:
        return Took(hand, refuse(say("There is no such pack"), say("Scan the label again.")))
    return Do("open_pack", pack.key, {}, replace(hand.empty(), subject=pack.order))


def part_of(given: Code, view: View) -> Part | None:
    """The part of a part card or of the rack place under its master."""
    if given.kind == "part":
        return view.get(Part, given.number)
    rack = view.get(RackPlace, given.number)
    return view.get(Part, rack.part) if rack else None


def _thing(hand: Hand, given: Code, view: View) -> Do | Took:
    part = part_of(given, view)
    if part is None:
        return Took(hand, refuse(say("Nothing has its place there"), say("Scan the card again.")))
    if hand.work.get("asks") == "count":
        return Took(
            hand.with_work(part=part.id),
            notice(
                say("How many {part} are really there?", part=part.name),
                say("Enter the number."),
            ),
        )
    args: dict[str, object] = {"part": part.id}
    if isinstance(hand.work.get("take"), int):
        args["quantity"] = hand.work["take"]
    chosen = hand.with_work(part=part.id, take=None)
    order = view.get(Order, hand.subject)
    want = next((w for w in wants(view, order) if w.part.id == part.id), None) if order else None
    asked = args.get("quantity", want.to_go if want else 0)
    if want and isinstance(asked, int) and want.on_rack < asked <= want.to_go:
        return Took(chosen, too_few(want))  # “Part missing” is about this part now
    return Do("pick", f"order/{hand.subject}", args, chosen)


def _number(hand: Hand, given: Number, view: View) -> Do | Took:
    """A count of a rack place, or how many the next scan takes."""
    count = given.whole
    if count is None:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    part = str(hand.work.get("part", ""))
    if hand.work.get("asks") == "count" and view.get(Part, part):
        after = hand.with_work(asks=None, short=part)
        return Do("recount_place", f"part/{part}", {"part": part, "counted": count}, after)
    return Took(
        hand.with_work(take=count),
        notice(say("{n} of the next part", n=count), say("Scan its card.")),
    )


def _button(hand: Hand, name: str, view: View) -> Do | Took | None:
    subject = f"order/{hand.subject}"
    if name == "close_pack":
        return Do("close_pack", subject, {}, hand.empty(), ("pack",))
    if name == "part_missing":
        return _missing(hand, view)
    if name == "take_back":
        return Do("take_back", subject, {}, hand)
    short = str(hand.work.get("short") or hand.work.get("part") or "")
    if name == "wait":
        return Do("wait_for", subject, {"part": short}, hand.empty())
    if name == "send_short":
        return Do("send_short", subject, {"part": short}, hand.with_work(short=None))
    return None


def _missing(hand: Hand, view: View) -> Took:
    """Asks for a count of the rack place that does not hold what the book says."""
    order = view.get(Order, hand.subject)
    open_wants = [w for w in wants(view, order) if w.to_go] if order else []
    asking = hand.with_work(asks="count")
    chosen = next((w for w in open_wants if w.part.id == hand.work.get("part")), None)
    chosen = chosen or (open_wants[0] if open_wants else None)
    if chosen is None:
        return Took(
            hand, refuse(say("Nothing is missing from this order"), say("Close the pack."))
        )
    return Took(
        asking.with_work(part=chosen.part.id),
        notice(
            say(
                "{part}: {n} in rack {place} by the book",
                part=chosen.part.name,
                n=chosen.on_rack,
                place=chosen.place_name,
            ),
            say("How many are really there?"),
        ),
    )
