"""Counts again what lies there: what can hardly be so is asked once more, and why is kept.

A rack place is counted as a whole: nobody tells the batches in it apart. The book then takes
what is too few from its oldest free batch, as packing does, and puts what is too many to its
newest; but while pieces of a held batch lie there, or were counted off, what is found may be
theirs: it is held with them.
"""

from station.queries.batches import find_hold, keep_free, keep_held
from station.queries.orders import find_need, list_losing
from station.queries.settings import find_reason, find_shop
from station.queries.stock import list_free_on_rack, list_on_rack, move_in_order
from station.queries.underway import count_underway
from station.shop.acts import (
    Act,
    Answer,
    Args,
    ask,
    ask_approval,
    ask_why,
    attention,
    good,
    refuse,
)
from station.shop.facts import (
    Batch,
    Bed,
    Concern,
    CutFile,
    Fact,
    Order,
    Part,
    Product,
    RackPlace,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
)
from station.shop.moves import Move, head, move
from station.shop.views import View, total
from station.shop.words import Say, name_first, say

MOST = 100_000  # pieces at one place
# A count is far off beyond both: common practice, no source.
FAR_SHARE = 0.1
FAR = 5
# what is read to ask about a count
COUNT_READS: frozenset[type[Fact]] = frozenset(
    {Batch, Bed, Concern, CutFile, Order, Part, Product, RackPlace, Reason, Revision, Router, Shop,
     Slip}
)  # fmt: skip
NAMED = 3  # orders that are named


class RecountPlace(Args, frozen=True, kw_only=True):
    """Says how many of a part really lie at its rack place. The subject is the part."""

    kind = "recount_place"

    part: str
    counted: int
    order: str = ""  # that wants it


def recount_place(act: Act[RecountPlace], view: View) -> Answer:
    """Corrects the book to what is really at a rack place, for a reason."""
    part, counted = view.get(Part, act.args.part), act.args.counted
    if part is None:
        return refuse(say("There is no such part"), say("Scan its card."))
    if not part.rack:
        return refuse(
            say("{part} has no place on the rack", part=part.name),
            say("The office gives it one first."),
        )
    book = total(list_on_rack(view, part))
    problem = ask_about_count(act, view, part, book, counted)
    held = keep_held(view, list_on_rack(view, part))
    gone = total(held) - counted  # free ones are counted off first
    if problem := problem or (ask_about_held(act, view, held[0].batch, gone) if held else None):
        return problem
    moves = _correct_book(view, part, counted - book)
    do = _say_after_count(act, view, part, _count_free_after(view, part, moves))
    if counted == book:
        return good(say("Counted {n}: the book agrees", n=counted), do)
    said = say(
        "Corrected: {n} {part} there, {by}",
        n=counted,
        part=part.name,
        by=say_difference(counted - book),
    )
    worry = Concern(
        id=act.id,
        what="recount",
        since=act.at,
        about=part.key,
        text=say(
            "{part}: {book} by the book, {counted} counted in its rack place",
            part=part.name,
            book=book,
            counted=counted,
        ),
    )
    return attention(said, do, moves=moves, sets=(worry,))


def ask_about_count(
    act: Act[Args], view: View, part: Part | None, book: int, counted: int, *, place: str = "rack"
) -> Answer | None:
    """Asks about a count that differs from the book: whether it is so, a supervisor, and why.

    What lies before the rack is lacked only where rack and all that is under way are too few. A
    supervisor is asked for beyond the shop's limit. None: it is corrected, or agrees.
    """
    by, known = counted - book, act.args
    if counted < 0:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    if counted > MOST:
        return refuse(say("{n} cannot lie in one place", n=counted),
                      say("Enter the number that you counted."))  # fmt: skip
    if by == 0 or act.again:  # what was counted was answered for when it was counted
        return None
    differs = say("Counted {counted}, the book says {book}", counted=counted, book=book)
    if is_far(book, counted) and not known.sure:
        return ask(differs, _say_losing(view, part, place, -by), "sure")
    if abs(by) > find_shop(view).recount_limit and not known.approved:
        return ask_approval(differs)
    if find_reason(view, known.reason, "correct") is None:
        return ask_why(differs, "correct")
    return None


def ask_about_held(act: Act[Args], view: View, batch: str, fewer: int) -> Answer | None:
    """Asks for a supervisor where so many of a held batch would be gone. None: go on."""
    if fewer <= 0 or act.args.approved or act.again or not find_hold(view, batch):
        return None
    return ask_approval(
        say("Batch {batch} is held, and {n} of it would be gone", batch=batch, n=fewer)
    )


def say_difference(by: int) -> Say:
    """Says how far a count is from the book."""
    if by < 0:
        return say("{n} fewer than by the book", n=-by)
    return say("{n} more than by the book", n=by)


def is_far(book: int, counted: int) -> bool:
    """Tells whether a count is so far from the book that it is asked about once more."""
    return abs(counted - book) > max(FAR, FAR_SHARE * book)


def _say_losing(view: View, part: Part | None, place: str, fewer: int) -> Say:
    losing: tuple[Order, ...] = ()
    if part and fewer > 0:
        there = total(list_free_on_rack(view, part))
        if head(place) != "rack":
            there += count_underway(view, part.id).all
        losing = list_losing(view, part, there, fewer)
    if not losing:
        return say("Count once more; then enter it again, or say that you are sure.")
    names = name_first([o.id for o in losing], NAMED)
    return say(
        "{n} {n|order|orders} would lack it: {names}. Count once more, or say that you are sure.",
        n=len(losing),
        names=names,
    )


def _correct_book(view: View, part: Part, by: int) -> tuple[Move, ...]:
    lying = list_on_rack(view, part)
    held = keep_held(view, lying)
    if by == 0:
        return ()
    if by < 0:
        return move_in_order((*keep_free(view, lying), *held), -by, "recount")
    lost = (h for h in view.stock(place="recount") if h.part == part.id)
    found = (*lying, *keep_held(view, tuple(lost)), *held)  # whose they may be: the last of these
    batch = found[-1].batch if found else ""
    return (move(part.id, by, "recount", f"rack/{part.rack}", batch),)


def _count_free_after(view: View, part: Part, moves: tuple[Move, ...]) -> int:
    """Counts what may be taken from the rack place once the book is corrected."""
    free = total(list_free_on_rack(view, part))
    for m in moves:
        spot = m.to if m.frm.place == "recount" else m.frm
        if find_hold(view, spot.batch) is None:
            free += m.qty if spot is m.to else -m.qty
    return free


def _say_after_count(act: Act[RecountPlace], view: View, part: Part, free: int) -> Say:
    """Says what to do now that so many are free there: take them, wait, or send it short."""
    order = view.get(Order, act.args.order) if act.args.order else None
    want = find_need(view, order, part.id) if order else None
    if order is None or want is None or not want.to_go:
        return say("Go on.")
    if free >= want.to_go:
        return say("Enough: take {n} from rack {place}.", n=want.to_go, place=want.place_name)
    under_way = count_underway(view, part.id, order.id)
    if under_way.all:
        return say("Under way: {where}. Wait, or send it short.", where=under_way.words(act.at))
    return say("No more are under way: send it short, or put it down.")
