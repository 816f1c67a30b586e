"""Reads what a code or a number means at packing, with an order in hand."""

from collections.abc import Callable
from dataclasses import replace

from station.floor.packing.acts import (
    AskForSheet,
    ClaimOrder,
    ClosePack,
    CorrectPick,
    PickPart,
    PickSet,
    PrintLabel,
    PutOrderDown,
    PutPartsBack,
    SendShort,
    SpoilPacked,
    TakeFromOrder,
    WaitForPart,
)
from station.floor.packing.dialogue_shelf import (
    begin_ahead,
    close_set,
    leave_ahead,
    read_sets,
    take_from_shelf,
)
from station.floor.packing.dialogue_supplies import (
    ask_which_supply,
    choose_mailer,
    choose_supply,
    read_supply,
)
from station.floor.packing.dialogue_walk import (
    fetch_part,
    leave_walk,
    press_walk,
    read_fetched,
)
from station.floor.packing.in_two import expect_weight, find_two, name_unit, refuse_as_one
from station.floor.packing.rows import find_front, find_row, is_putting_back, is_spoiling
from station.floor.packing.rules_order import tell_stays
from station.floor.packing.rules_take import refuse_too_few, refuse_unwanted
from station.floor.packing.work import PackingHand, Picked
from station.floor.shared.no_row import NO_ROW
from station.floor.shared.opening import OpenPack
from station.floor.shared.recounts import RecountPlace
from station.queries.leaving import list_prospects, walk_ready
from station.queries.mailers import plan_open_pack
from station.queries.orders import count_inside, find_need, is_complete, list_needs
from station.queries.short import find_later_pack
from station.queries.two_packs import Contents
from station.queries.weights import Weight
from station.shop.acts import Answer, attention, good, notice, question, refuse
from station.shop.beginning import not_here
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Order, Pack, Part, RackPlace
from station.shop.lengths import to_grams
from station.shop.moves import head, tail
from station.shop.rooms import Do, Input, Number, Took, Weighed
from station.shop.views import View, total
from station.shop.words import mass, say


def handle_input(hand: PackingHand, given: Input, view: View) -> Do | Took | None:
    """Reads one input at packing."""
    if isinstance(given, Number):
        if hand.work.asks == "supplies":
            return read_supply(hand, given)
        if hand.work.shelf:
            return read_sets(hand, given, view)
        if hand.work.walk:
            return read_fetched(hand, given)
        return _read_number(hand, given, view) if hand.subject else None
    if isinstance(given, Weighed):
        return _weigh_pack(hand, given.grams, view) if hand.subject else None
    done = _read_code(hand, given, view) if isinstance(given, Code) else None
    if isinstance(done, Took):  # a number changes the last pick only directly after it
        work = replace(done.hand.work, picked=None)
        return done._replace(hand=replace(done.hand, work=work))
    return done


def _read_code(hand: PackingHand, given: Code, view: View) -> Do | Took | None:
    """Reads a card: a row of the screen, a button, or a thing."""
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    if card is None:
        return _scan_thing(hand, given, view)
    if not card.name.startswith("row_"):
        return _press_button(hand, card.name, view)
    number = card.name.removeprefix("row_")
    if row := find_row(hand, int(number), view):
        return _scan_thing(hand, row, view)
    return Took(hand, NO_ROW)


# --- an order, a pack, a part


def _scan_thing(hand: PackingHand, given: Code, view: View) -> Do | Took | None:
    """Reads an order, a pack, a part of the order in hand; a pack with free hands is asked of."""
    if given.kind == "order":
        return _scan_order(hand, given.number, view)
    if given.kind == "pack":
        if hand.is_free:
            return None
        pack = view.get(Pack, given.number)
        order = view.get(Order, hand.subject) if hand.subject else None
        if pack and pack.state == "shelf" and order and hand.work.asks != "label":
            return take_from_shelf(hand, order, pack, view)
        return _scan_pack(hand, given.number, view)
    if given.kind == "mailer":
        return _scan_mailer(hand, given.number, view)
    if hand.work.walk and given.kind in ("part", "rack"):
        return fetch_part(hand, given, view)
    if given.kind == "product" and not hand.subject:
        return begin_ahead(hand, given.number, view)
    order = view.get(Order, hand.subject) if hand.subject else None
    if order and given.kind == "product":
        args = PickSet(product=given.number, quantity=hand.work.take or 1)
        work = replace(hand.work, asks="", take=None, picked=None, scale=None)
        return Do(order.key, args, replace(hand, work=work))
    if order and given.kind in ("part", "rack"):
        return _scan_part(hand, order, given, view)
    return None


def _scan_mailer(hand: PackingHand, number: str, view: View) -> Took | None:
    """Counts a mailer, or takes it for the order in hand; with free hands it is a question."""
    if hand.work.asks == "supplies":
        return choose_supply(hand, number, view)
    return choose_mailer(hand, number, view) if hand.subject else None


def _scan_order(hand: PackingHand, number: str, view: View) -> Do | Took | None:
    """Claims an order, or prints its label; one that is done with is a question."""
    if hand.work.asks == "label":
        return _print_label_of(hand, number, view)
    if hand.is_free and _is_done(view.get(Order, number)):
        return None
    return _claim_order(hand, number, view)


def _is_done(order: Order | None) -> bool:
    """Says whether packing has nothing to do with an order any more."""
    return order is not None and order.state in ("packed", "shipped")


def _claim_order(hand: PackingHand, number: str, view: View) -> Do | Took:
    """Claims an order; a pack in hand that is complete is closed by the same scan."""
    order = view.get(Order, hand.subject) if hand.subject else None
    if order and order.id != number and not hand.work.asks and is_complete(view, order):
        if two := find_two(hand, order, view):
            return Took(hand, refuse_as_one(order, two))
        return _close_pack(hand, order, view, number)
    leaving = "" if hand.subject == number else hand.subject
    fresh = replace(hand.empty(), subject=number)
    return Do(f"order/{number}", ClaimOrder(leaving=leaving), fresh)


def _close_pack(
    hand: PackingHand, order: Order, view: View, then: str = "", share: Contents = ()
) -> Do:
    """Closes the pack in the mailer that was worked out for what lies in it.

    With a `share` of it the rest stays open, and the order in hand.
    """
    packed = bool(view.stock(place=f"packing/{order.id}"))
    parcel = plan_open_pack(view, order.id, share)
    length, width, thick = parcel.stack.lies.size_mm
    planned = parcel.mailer.id if parcel.mailer else ""
    chosen = hand.work.mailer or planned
    args = ClosePack(
        scale_g=hand.work.scale,
        mailer=chosen,
        length_mm=length,
        width_mm=width,
        thick_mm=thick,
        next=then,
        instead=planned if chosen != planned else "",
        wrap_m=parcel.stack.wrap_m if packed else 0.0,
        share=share,
    )
    after = replace(hand.empty(), subject=order.id if share else then)
    return Do(order.key, args, after, ("pack",) if packed else ())


def _press_next(hand: PackingHand, view: View) -> Do | Took:
    """Claims the first order due that can be packed whole; else the one that lacks least."""
    live = [o for o in view.shelf(Order, "open", 100) if o.id != hand.subject]
    begun = (o for o in live if o.claimed == hand.station and count_inside(view, o))
    if half := next(begun, None):
        return _claim_order(hand, half.id, view)
    whole = (o for o in walk_ready(view, hand.station) if _is_free(o, hand))
    found = (p.order for p in list_prospects(view, hand.station))
    mine = (o for o in live if o.claimed == hand.station)
    first = next(whole, None)
    first = first or next((o for o in found if o.state == "open" and _is_free(o, hand)), None)
    first = first or next(mine, None)
    if first is None:
        return Took(hand, refuse(say("No order waits to be packed"), say("Help at trimming.")))
    return _claim_order(hand, first.id, view)


def _is_free(order: Order, hand: PackingHand) -> bool:
    """Tells whether nobody packs an order, and it is not the one in hand."""
    return order.state in ("open", "waiting") and order.id != hand.subject


def _scan_pack(hand: PackingHand, number: str, view: View) -> Do | Took:
    """Prints a label again; else opens the pack again."""
    pack = view.get(Pack, number)
    if pack is None:
        return Took(hand, refuse(say("There is no such pack"), say("Scan the label again.")))
    if hand.work.asks == "label":
        after = replace(hand, work=replace(hand.work, asks=""))
        return Do(pack.key, PrintLabel(), after)
    return Do(pack.key, OpenPack(), replace(hand.empty(), subject=pack.order))


def _print_label_of(hand: PackingHand, order: str, view: View) -> Do | Took:
    """Prints the label of an order's pack, where the label itself cannot be scanned."""
    past = view.last(f"order/{order}", ClosePack)
    closed = [tail(w.key) for w in past.sets if head(w.key) == "pack"] if past else []
    if not closed:
        do = not_here(view.begins()) or say("Choose a row.")
        return Took(hand, refuse(say("Order {order} has no pack", order=order), do))
    return _scan_pack(hand, closed[0], view)


def _scan_part(hand: PackingHand, order: Order, given: Code, view: View) -> Do | Took:
    """Reads a part: it is counted, put back or taken."""
    part = _find_part(given, view)
    if part is None:
        return Took(hand, refuse(say("Nothing has its place there"), say("Scan the card again.")))
    if hand.work.asks == "count":
        said = say("How many {part} are really there?", part=part.name)
        chosen = replace(hand, work=replace(hand.work, part=part.id))
        return Took(chosen, question(said, say("Enter the number.")))
    if is_spoiling(hand):
        work = replace(hand.work, asks="", take=None, picked=None, scale=None, part=part.id)
        args = SpoilPacked(part=part.id, quantity=hand.work.take or 1)
        return Do(order.key, args, replace(hand, work=work),
                  refused=_let_go_of_wrong(hand, order, part.id, view))  # fmt: skip
    if is_putting_back(hand, order):
        back = _put_parts_back(hand, order, PutPartsBack(part=part.id, quantity=hand.work.take))
        return back._replace(refused=_let_go_of_wrong(hand, order, part.id, view))
    return _take_part(hand, order, part, view)


def _let_go_of_wrong(hand: PackingHand, order: Order, part: str, view: View) -> PackingHand | None:
    """Gives the hand without its question where the part is not in the pack at all."""
    inside = view.stock(place=f"packing/{order.id}")
    return None if any(h.part == part for h in inside) else hand.disarm()


def _find_part(given: Code, view: View) -> Part | None:
    """Finds the part of a part card, or of the rack place under its master."""
    if given.kind == "part":
        return view.get(Part, given.number)
    rack = view.get(RackPlace, given.number)
    return view.get(Part, rack.part) if rack else None


def _take_part(hand: PackingHand, order: Order, part: Part, view: View) -> Do | Took:
    """Takes a part: all that is wanted unless a number came first."""
    want = find_need(view, order, part.id)
    if want is None or not want.wanted:
        return Took(hand.disarm(), refuse_unwanted(view, order, part))
    chosen = replace(hand.work, part=part.id, take=None, picked=None)
    asked = want.to_go if hand.work.take is None else hand.work.take
    if want.on_rack < asked <= want.to_go:  # “Part missing” is about this part now
        return Took(replace(hand, work=chosen), refuse_too_few(want))
    picked = replace(chosen, picked=Picked(part.id, asked), scale=None)
    args = PickPart(part=part.id, quantity=hand.work.take)
    return Do(order.key, args, replace(hand, work=picked))


def _put_parts_back(hand: PackingHand, order: Order, args: PutPartsBack) -> Do:
    """Puts parts back on their rack places; the question what goes back is answered."""
    work = replace(hand.work, asks="", take=None, picked=None, scale=None, part=args.part)
    return Do(order.key, args, replace(hand, work=work))


# --- a number


def _read_number(hand: PackingHand, given: Number, view: View) -> Do | Took:
    """Reads a number, by what was asked or done last."""
    if _is_weight(hand, given, view):
        shown = given.reading
        if shown is None or shown <= 0:
            said = say("{text} is no weight", text=given.text)
            unit = name_unit(hand, view)
            return Took(hand, refuse(said, say("Enter what the scale shows, in {unit}.",
                                               unit=unit)))  # fmt: skip
        return _weigh_pack(hand, to_grams(shown, expect_weight(hand, view).grams), view)
    count = given.whole
    if count is None:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    if hand.work.asks == "count":
        return _recount_place(hand, count, view)
    if hand.work.asks in ("back", "spoiled"):
        said = say("{n} {n|goes|go} back on the rack", n=count)
        if is_spoiling(hand):
            said = say("{n} of it {n|is|are} spoiled", n=count)
        after = replace(hand, work=replace(hand.work, take=count))
        return Took(after, question(said, say("Scan the part's card.")))
    if hand.work.picked:
        return _correct_pick(hand, hand.work.picked, count)
    return _ask_which_part(hand, count, view)


def _is_weight(hand: PackingHand, given: Number, view: View) -> bool:
    """Tells whether a number is what the scale shows: once all is in, it is no count any more.

    One that is no more than the pick just made still changes that.
    """
    order = view.get(Order, hand.subject)
    if hand.work.asks or order is None or order.state == "cancelled":
        return hand.work.asks == "scale"
    found = list_needs(view, order)
    if any(w.to_go or w.extra for w in found) or not any(w.inside for w in found):
        return False
    picked = hand.work.picked
    return picked is None or given.whole is None or given.whole > picked.pieces


def _ask_which_part(hand: PackingHand, count: int, view: View) -> Took:
    """Keeps a number for the part that is scanned next, where any still wants so many."""
    order = view.get(Order, hand.subject)
    if order and all(count > want.to_go for want in list_needs(view, order)):
        return Took(
            hand,
            refuse(
                say("No part of this order still wants {n}", n=count),
                say("Scan the part's card, or enter another number."),
            ),
        )
    after = replace(hand, work=replace(hand.work, take=count))
    return Took(after, question(say("{n} of the next part", n=count), say("Scan its card.")))


def _correct_pick(hand: PackingHand, picked: Picked, count: int) -> Do:
    """Says that the pick just made really was so many."""
    args = CorrectPick(part=picked.part, was=picked.pieces, quantity=count)
    now = Picked(picked.part, count) if count else None
    after = replace(hand, work=replace(hand.work, picked=now, scale=None))
    return Do(f"order/{hand.subject}", args, after)


def _recount_place(hand: PackingHand, count: int, view: View) -> Do | Took:
    part = view.get(Part, hand.work.part)
    if part is None:
        return Took(hand, refuse(say("Which part was counted?"), say("Scan its card.")))
    args = RecountPlace(part=part.id, counted=count, order=hand.subject)
    after = replace(hand, work=replace(hand.work, asks="", short=part.id, picked=None))
    return Do(part.key, args, after)


def _weigh_pack(hand: PackingHand, grams: float, view: View) -> Do | Took:
    """Compares the scale's reading with what lies in the pack, and its mailer.

    A pack that is complete and weighs what it should is closed by it.
    """
    order = view.get(Order, hand.subject)
    if order and order.state == "cancelled":
        said = say("Order {order} is cancelled", order=order.id)
        return Took(hand, refuse(said, say("Put back what is in its pack.")))
    whole = order and hand.work.asks in ("", "scale") and is_complete(view, order)
    two = find_two(hand, order, view) if order and whole else None
    share = two.first if two else ()
    weight = plan_open_pack(view, hand.subject, share).weight
    if order and whole and weight.agrees(grams):
        done = replace(hand, work=replace(hand.work, scale=grams))
        return _close_pack(done, order, view, share=share)
    after = replace(hand, work=replace(hand.work, asks="", scale=grams, picked=None))
    return Took(after, _judge_weight(weight, grams))


def _judge_weight(weight: Weight, grams: float) -> Answer:
    """Says what a reading tells, and what it cannot tell."""
    said, off = weight.words(grams), mass(abs(grams - weight.grams))
    if weight.unknown:
        do = say("{part}: no weight, no outline. Count the pack.", part=weight.unknown)
        return notice(said, do)
    if not weight.agrees(grams):
        if grams > weight.grams:
            return attention(said, say("Too heavy by {g} g: look through the pack.", g=off))
        return attention(said, say("Too light by {g} g: look through the pack.", g=off))
    if weight.blind:
        do = say("Up to {n} {part} more or less would not show: count those.", n=weight.blind,
                 part=weight.light)  # fmt: skip
        return good(said, do)
    return good(said, say("Go on; close it when all is in."))


# --- a button


def _press_button(hand: PackingHand, name: str, view: View) -> Do | Took | None:
    """Presses a button; None where it means nothing with what is in hand."""
    if hand.work.shelf and name in ("close_pack", "all_of_it"):
        return close_set(hand, view)
    if hand.work.shelf and name == "put_down":
        return leave_ahead(hand)
    if hand.work.walk and name == "put_down":
        return leave_walk(hand)
    if name == "count_supplies" and not hand.subject:
        return ask_which_supply(hand)
    if name == "walk" and not hand.subject:
        return press_walk(hand, view)
    if name == "next_order":
        return _press_next(hand, view)
    if name == "label_again":
        asked = question(say("Which label?"), say("Scan the order's card, or touch its pack."))
        return Took(replace(hand, work=replace(hand.work, asks="label")), asked)
    if name == "put_down" and hand.work.asks:
        left = good(say("Left; nothing was changed"), say("Go on with your work."))
        return Took(replace(hand, work=replace(hand.work, asks="", take=None, supply="")), left)
    order = view.get(Order, hand.subject) if hand.subject else None
    press = BUTTON_STEPS.get(name)
    return press(hand, order, view) if press and order else None


def _press_put_down(hand: PackingHand, order: Order, view: View) -> Do | Took:
    """Leaves the order to everybody if nothing was taken for it; else it stays here."""
    if order.claimed != hand.station:
        done = good(say("Order {order} is put down", order=order.id), say("Take the next order."))
        return Took(hand.empty(), done)
    if lying := count_inside(view, order):
        return Took(hand.empty(), tell_stays(order, lying))
    return Do(order.key, PutOrderDown(), hand.empty())


def _press_close(hand: PackingHand, order: Order, view: View) -> Do:
    """Closes the pack in hand; the first of two where it goes in two."""
    two = find_two(hand, order, view) if is_complete(view, order) else None
    return _close_pack(hand, order, view, share=two.first if two else ())


def _press_part_pack(hand: PackingHand, order: Order, view: View) -> Do | Took:
    """Closes what is in the pack as one of two: the rest of the order goes in another."""
    found = list_needs(view, order)
    if not any(want.to_go for want in found):
        if two := find_two(hand, order, view):
            return _close_pack(hand, order, view, share=two.first)
        do = say("Close it; or first put back what goes in the other pack.")
        return Took(hand, refuse(say("All parts are in this pack"), do))
    share = tuple((w.part.id, n) for w in found if (n := min(w.inside, w.wanted)))
    if not share:
        do = say("Take what goes in the first one.")
        return Took(hand, refuse(say("The pack is empty"), do))
    return _close_pack(hand, order, view, share=share)


def _press_all(hand: PackingHand, order: Order, view: View) -> Do | Took:
    """Takes all that is asked of the row in front; or puts all of the pack back."""
    if is_putting_back(hand, order):
        return _put_parts_back(hand, order, PutPartsBack())
    want = find_front(hand, list_needs(view, order))
    if want is None:
        return Took(hand, refuse(say("All parts are in already"), say("Close the pack.")))
    return _take_part(hand, order, want.part, view)


def _press_back(hand: PackingHand, order: Order, _view: View) -> Do | Took:
    """Asks what goes back; pressed again, and of a cancelled order, everything does."""
    if is_putting_back(hand, order):
        return _put_parts_back(hand, order, PutPartsBack())
    do = say("Scan its card, or touch its row; a number first for some.")
    work = replace(hand.work, asks="back", take=None, picked=None)
    return Took(replace(hand, work=work), question(say("Put what back?"), do))


def _press_spoiled(hand: PackingHand, _order: Order, _view: View) -> Took:
    """Asks which piece of the pack is spoiled."""
    do = say("Scan its card, or touch its row; a number first for several.")
    work = replace(hand.work, asks="spoiled", take=None, picked=None)
    return Took(replace(hand, work=work), question(say("Which part is spoiled?"), do))


def _press_scale(hand: PackingHand, _order: Order, _view: View) -> Took:
    do = say("Parts and mailer, without wrap.")
    asking = replace(hand, work=replace(hand.work, asks="scale"))
    return Took(asking, question(say("What does the scale show?"), do))


def _press_missing(hand: PackingHand, order: Order, view: View) -> Took:
    """Asks for a count of the rack place that does not hold what the book says."""
    want = find_front(hand, list_needs(view, order))
    if want is None:
        return Took(
            hand, refuse(say("Nothing is missing from this order"), say("Close the pack."))
        )
    work = replace(hand.work, asks="count", part=want.part.id, picked=None)
    said = say("{part}: {n} in rack {place} by the book", part=want.part.name,
               n=want.on_rack + total(want.held), place=want.place_name)  # fmt: skip
    return Took(replace(hand, work=work), question(said, say("How many are really there?")))


def _press_wait(hand: PackingHand, order: Order, _view: View) -> Do:
    args = WaitForPart(part=hand.work.short or hand.work.part)
    return Do(order.key, args, hand.empty())


def _press_take_from(hand: PackingHand, order: Order, view: View) -> Do | Took:
    """Takes what lacks from the order due last that has it in its pack."""
    want = find_need(view, order, hand.work.short or hand.work.part)
    later = find_later_pack(view, order, want) if want and want.lacking else None
    if want is None or later is None:
        do = say("Wait for it, or send it short.")
        return Took(hand, refuse(say("No later order has it in its pack"), do))
    args = TakeFromOrder(part=want.part.id, other=later.order.id)
    work = replace(hand.work, short="", picked=None, scale=None)
    return Do(order.key, args, replace(hand, work=work))


def _press_ask(hand: PackingHand, order: Order, _view: View) -> Do:
    return Do(order.key, AskForSheet(part=hand.work.short or hand.work.part), hand.empty())


def _press_short(hand: PackingHand, order: Order, _view: View) -> Do:
    args = SendShort(part=hand.work.short or hand.work.part)
    work = replace(hand.work, short="", picked=None, scale=None)
    return Do(order.key, args, replace(hand, work=work))


BUTTON_STEPS: dict[str, Callable[[PackingHand, Order, View], Do | Took]] = {
    "put_down": _press_put_down,
    "close_pack": _press_close,
    "part_pack": _press_part_pack,
    "part_missing": _press_missing,
    "take_back": _press_back,
    "spoiled_piece": _press_spoiled,
    "all_of_it": _press_all,
    "scale": _press_scale,
    "wait": _press_wait,
    "send_short": _press_short,
    "take_from": _press_take_from,
    "ask_sheet": _press_ask,
}
