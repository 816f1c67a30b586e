"""Decides what a code means at the router table, with a batch in hand and exceptions counted."""

from dataclasses import replace

from station.floor.shared import counting
from station.floor.shared.reasons import press_counter
from station.floor.trimming.acts import CheckMaster, PutOnRack
from station.floor.trimming.rules import MOST_TRIES, list_lying
from station.floor.trimming.rules_master import ENOUGH, find_doubt
from station.floor.trimming.work import TrimmingHand
from station.queries.batches import find_hold, find_order, refuse_held, refuse_wrong_paper
from station.queries.readings import ask_if_far
from station.queries.stock import name_part
from station.queries.underway import count_good
from station.shop.acts import Answer, attention, good, question, refuse
from station.shop.beginning import not_here
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.counts import has_rework
from station.shop.facts import Batch, Part, RackPlace
from station.shop.rooms import Do, Input, Number, Took
from station.shop.views import View, by_part
from station.shop.words import MM, clock, length, say

# what the room's own buttons count
COUNTS = {"lost": "missing", "overtrimmed": "spoiled", "rework": "rework"}


def handle_input(hand: TrimmingHand, given: Input, view: View) -> Do | Took | None:
    """Takes one input at trimming."""
    if isinstance(given, Code) and given.kind == "batch":
        return _pick_up(hand, given, view)
    if not hand.subject:
        return None
    parts = count_here(hand, view)
    if isinstance(given, Number):
        return _enter_number(hand, given, parts, view)
    if not isinstance(given, Code):
        return None
    if given.kind == "part":
        return counting.choose_part(hand, given.number, parts, view)
    if given.kind == "rack":
        return _scan_rack(hand, given.number, parts, view)
    if given.kind == "reason":
        return counting.count_reason(hand, given.number, parts, view)
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    return _press_button(hand, card.name, parts, view) if card else None


def count_here(hand: TrimmingHand, view: View) -> dict[str, int]:
    """Counts the pieces of each part of the batch in hand that lie here."""
    return by_part(list_lying(view, hand.subject))


def _pick_up(hand: TrimmingHand, code: Code, view: View) -> Took | None:
    """Picks up a batch; with free hands one of which nothing lies here is a question."""
    batch = view.get(Batch, code.number)
    if wrong := _refuse_pick_up(hand, code, batch, view):
        return Took(counting.let_go_of_other(hand, code.number), wrong)
    if hand.is_free and not list_lying(view, code.number):
        return None
    assert batch is not None
    base = hand if hand.subject == batch.id else hand.empty()
    parts = by_part(list_lying(view, batch.id))
    part = next(iter(parts)) if len(parts) == 1 else base.work.part
    picked = replace(base, subject=batch.id, work=replace(base.work, seen=parts, part=part))
    names = counting.name_parts(view, parts)
    if batch.doubts:
        said = say("Batch {batch} in hand: it waits", batch=batch.id)
        return Took(picked, attention(said, say("{why}. Measure it again.", why=batch.why_held)))
    if batch.tries:
        return Took(
            picked,
            attention(
                say(
                    "Rework {batch}, try {n} of {most}",
                    batch=batch.id,
                    n=batch.tries,
                    most=MOST_TRIES,
                ),
                say("{parts}: say which are good.", parts=names),
            ),
        )
    do = say("{parts} to trim: say what is not good.", parts=names)
    if counted := picked.work.tell_counted(view):
        do = say("{counted} so far. Go on from there.", counted=counted)
    return Took(picked, good(say("Batch {batch} in hand", batch=batch.id), do))


def _refuse_pick_up(
    hand: TrimmingHand, code: Code, batch: Batch | None, view: View
) -> Answer | None:
    if wrong := refuse_wrong_paper(code, batch):
        return wrong
    assert batch is not None
    hold = find_hold(view, batch.id)
    if hold and (hold.holds or hold.id != batch.id):  # in doubt itself, it is measured again
        return refuse_held(view, batch.id)
    if hand.subject and hand.subject != batch.id and hand.work.counts:
        return refuse(
            say("Batch {batch} is in hand", batch=hand.subject),
            say("Finish it or put it down first."),
        )
    if hand.is_free or list_lying(view, batch.id):
        return None
    return _refuse_empty(view, batch)


def _refuse_empty(view: View, batch: Batch) -> Answer:
    """Refuses a batch of which nothing lies at trimming, and says where it is."""
    past = view.last(batch.key, PutOnRack)
    if past:
        goods = count_good(past.moves)
        return refuse(
            say(
                "Trimmed at {at} by worker {worker}: {n} good",
                at=clock(past.act.at),
                worker=past.act.worker,
                n=goods,
            ),
            say("Scan the next traveller."),
        )
    return refuse(
        say("Batch {batch} has nothing at trimming", batch=batch.id),
        not_here(view.begins()) or say("Popping passes it on first."),
    )


def _press_button(
    hand: TrimmingHand, name: str, parts: dict[str, int], view: View
) -> Do | Took | None:
    if name == "on_rack":
        open_ = counting.refuse_open(hand)
        return Took(hand, open_) if open_ else _put_on_rack(hand, parts)
    if name == "some_trimmed":
        return counting.ask_some(hand, parts, view)
    if name.startswith("row_"):
        return _choose_size(hand, int(name.removeprefix("row_")) - 1, parts, view)
    if name in ("master_agrees", "master_differs"):
        compared = CheckMaster(batch=hand.subject, agrees=name == "master_agrees")
        return _check_master(hand, parts, view, compared)
    return press_counter(hand, name, parts, view, COUNTS)


def _enter_number(
    hand: TrimmingHand, given: Number, parts: dict[str, int], view: View
) -> Do | Took:
    """Takes a count for the last counter, or a reading in mm where a size is measured.

    A whole number is a reading only once a size was chosen: it may be a count. One with a point
    is never a count.
    """
    part = view.get(Part, counting.find_part(hand, parts))
    measures = hand.work.asks == "size" or (given.whole is None and given.length is not None)
    if measures and part and part.sizes:
        return _take_reading(hand, given, part, view)
    return counting.take_number(hand, given, parts, view)


def _take_reading(hand: TrimmingHand, given: Number, part: Part, view: View) -> Do | Took:
    """Takes a reading; the same size is asked for until it is settled, then the next one.

    Behind the last one nothing is asked for: the next number may be a count again.
    """
    if given.length is None:
        said = say("{typed} is no reading", typed=given.text)
        return Took(
            hand,
            refuse(
                said, say("Enter the {unit}, such as {example}.", unit=MM, example=length(399.8))
            ),
        )
    chosen = find_chosen_size(hand, part)
    size, batch = part.sizes[chosen], view.get(Batch, hand.subject)
    if far := ask_if_far(size, given.length):
        return Took(replace(hand, work=replace(hand.work, asks="size", open=given.text)), far)
    doubt = find_doubt(batch, part.id, size.name)
    settled = size.allows(given.length) and (doubt is None or doubt.again + 1 >= ENOUGH)
    following = (chosen + 1) % len(part.sizes) if settled else chosen
    args = CheckMaster(batch=hand.subject, reading_mm=given.length, size=chosen)
    over = settled and following == 0
    work = replace(hand.work, size=following, asks="" if over else "size", counter="", open="")
    return Do(part.key, args, replace(hand, work=work))


def find_chosen_size(hand: TrimmingHand, part: Part) -> int:
    """Finds which of the part's sizes is measured now, counted from 0."""
    return hand.work.size if hand.work.size < len(part.sizes) else 0


def _choose_size(hand: TrimmingHand, row: int, parts: dict[str, int], view: View) -> Took:
    """Chooses the size that is measured now, by its row."""
    part = view.get(Part, counting.find_part(hand, parts))
    if part is None:
        return Took(hand, counting.refuse_without_part(parts, view))
    if row >= len(part.sizes):
        said = say("Nothing is measured there")
        return Took(hand, refuse(said, say("Choose a size that is shown.")))
    chosen = replace(hand, work=replace(hand.work, size=row, asks="size", counter=""))
    said = say("{part}: {size}", part=part.name, size=part.sizes[row].in_words)
    return Took(chosen, question(said, say("Measure it, enter the {unit}.", unit=MM)))


def _check_master(
    hand: TrimmingHand, parts: dict[str, int], view: View, compared: CheckMaster
) -> Do | Took:
    """Compares a piece of the chosen part by eye."""
    part = counting.find_part(hand, parts)
    if not part:
        return Took(hand, counting.refuse_without_part(parts, view))
    return Do(f"part/{part}", compared, hand)


def _scan_rack(hand: TrimmingHand, number: str, parts: dict[str, int], view: View) -> Do | Took:
    """Puts a part on the rack by the card under its master; a wrong card is refused by name."""
    rack, batch = view.get(RackPlace, number), view.get(Batch, hand.subject)
    if rack is None:
        said = say("This shop knows no rack place {id}", id=number)
        return Took(hand, refuse(said, say("Look at the card.")))
    if rack.part not in parts:
        said = say("Rack {rack} is the place of {part}", rack=rack.name,
                   part=name_part(view, rack.part))  # fmt: skip
        return Took(hand, refuse(said, say("In hand: {parts}.",
                                           parts=counting.name_parts(view, parts))))  # fmt: skip
    if hand.work.part in parts and hand.work.part != rack.part:
        said = say("Rack {rack} is the place of {part}", rack=rack.name,
                   part=name_part(view, rack.part))  # fmt: skip
        do = say("{part} is chosen. Touch the other row first, or scan the right card.",
                 part=name_part(view, hand.work.part))  # fmt: skip
        return Took(hand, refuse(said, do))
    if order := find_order(view, batch) if batch else None:
        said = say("Batch {batch} is for order {order}", batch=hand.subject, order=order.id)
        return Took(
            hand,
            refuse(said, say("Not onto the rack: press “Put on the rack”, it goes to packing.")),
        )
    if open_ := counting.refuse_open(hand):
        return Took(hand, open_)
    if len(parts) == 1:
        return _put_on_rack(hand, parts)
    return _put_one_on_rack(hand, rack.part, parts)


def _put_one_on_rack(hand: TrimmingHand, part: str, parts: dict[str, int]) -> Do:
    """Puts one part of several on the rack; the others stay in hand with their count."""
    counted = {p: row for p, row in counting.list_figures(hand, parts).items() if p == part}
    numbers = ("batch",) if has_rework(counted) else ()
    args, work = PutOnRack(parts=counted, seen=hand.work.seen), hand.work
    left = replace(
        work,
        part="",
        counter="",
        counts={p: row for p, row in work.counts.items() if p != part},
        good={p: n for p, n in work.good.items() if p != part},
        seen={p: n for p, n in work.seen.items() if p != part},
    )
    return Do(f"batch/{hand.subject}", args, replace(hand, work=left), numbers)


def _put_on_rack(hand: TrimmingHand, parts: dict[str, int]) -> Do:
    """Puts the count on the rack as it stands, every figure said."""
    counted = counting.list_figures(hand, parts)
    numbers = ("batch",) if has_rework(counted) else ()
    args = PutOnRack(parts=counted, seen=hand.work.seen)
    return Do(f"batch/{hand.subject}", args, hand.empty(), numbers)
