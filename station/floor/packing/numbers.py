"""What a number means at packing: a count, a weight, or how many were or will be taken."""

from station.queries.mailers import plan_open_pack
from station.queries.orders import list_needs
from station.shop.acts import Answer, attention, good, notice, refuse
from station.shop.facts import Order, Part
from station.shop.rooms import Do, Hand, Number, Took, plain_do
from station.shop.views import View
from station.shop.words import say


def number(hand: Hand, given: Number, view: View) -> Do | Took:
    """A number, by what was asked or done last."""
    if hand.work.get("asks") == "scale":
        return _weighed(hand, given, view)
    count = given.whole
    if count is None:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    if hand.work.get("asks") == "count":
        return _counted(hand, count, view)
    if hand.work.get("asks") == "back":
        return Took(
            hand.with_work(take=count),
            notice(say("{n} {n|goes|go} back on the rack", n=count), say("Scan the part's card.")),
        )
    picked = hand.work.get("picked")
    if isinstance(picked, list):
        return _picked(hand, str(picked[0]), picked[1], count)
    order = view.get(Order, hand.subject)
    if order and all(count > want.to_go for want in list_needs(view, order)):
        return Took(
            hand,
            refuse(
                say("No part of this order still wants {n}", n=count),
                say("Scan the part's card, or enter another number."),
            ),
        )
    return Took(
        hand.with_work(take=count),
        notice(say("{n} of the next part", n=count), say("Scan its card.")),
    )


def _picked(hand: Hand, part: str, was: object, count: int) -> Do:
    """The pick just made really was so many."""
    args = {"part": part, "was": was, "quantity": count}
    after = hand.with_work(picked=[part, count] if count else None, scale=None)
    return plain_do("correct_pick", f"order/{hand.subject}", args, after)


def _counted(hand: Hand, count: int, view: View) -> Do | Took:
    part = view.get(Part, str(hand.work.get("part", "")))
    if part is None:
        return Took(hand, refuse(say("Which part was counted?"), say("Scan its card.")))
    args = {"part": part.id, "counted": count, "order": hand.subject}
    after = hand.with_work(asks=None, short=part.id, picked=None)
    return plain_do("recount_place", part.key, args, after)


def _weighed(hand: Hand, given: Number, view: View) -> Took:
    """The scale's reading against what lies in the pack, and its mailer."""
    grams = given.reading
    if grams is None or grams <= 0:
        return Took(
            hand,
            refuse(
                say("{text} is no weight", text=given.text),
                say("Enter what the scale shows, in g."),
            ),
        )
    return Took(hand.with_work(asks=None, scale=grams, picked=None), answer(hand, grams, view))


def answer(hand: Hand, grams: float, view: View) -> Answer:
    """What a reading tells, and what it cannot tell."""
    weight = plan_open_pack(view, hand.subject).weight
    if weight.unknown:
        return notice(
            weight.words(grams),
            say("{part} has no weight in the book. Count the pack.", part=weight.unknown),
        )
    if not weight.agrees(grams):
        do = (
            say("Too heavy by {g} g: look through the pack.", g=round(grams - weight.grams))
            if grams > weight.grams
            else say("Too light by {g} g: look through the pack.", g=round(weight.grams - grams))
        )
        return attention(weight.words(grams), do)
    if weight.blind:
        return good(
            weight.words(grams),
            say(
                "Up to {n} {part} more or less would not show: count those.",
                n=weight.blind,
                part=weight.light,
            ),
        )
    return good(weight.words(grams), say("Close the pack."))
