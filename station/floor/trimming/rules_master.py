"""Compares a piece with its master: what differs keeps its batch back until it is settled."""

from dataclasses import replace
from datetime import datetime, timedelta

from station.floor.trimming.acts import CheckMaster
from station.floor.trimming.readings import give_comparison
from station.queries.batches import list_family
from station.queries.readings import ask_if_far
from station.queries.stock import count_in_shop, tell_where
from station.shop.acts import Act, Answer, attention, good, notice, refuse
from station.shop.facts import Batch, Concern, Doubt, Fact, Part, Size
from station.shop.moves import tail
from station.shop.views import View
from station.shop.words import Say, length, say, several

A_MOMENT = timedelta(seconds=3)  # the trigger pulled twice
ENOUGH = 2  # readings inside in a row settle a doubt
MEASURE_AGAIN = say("Measure again: every reading is kept.")


def decide_check_master(act: Act[CheckMaster], view: View) -> Answer:
    """Compares a piece by eye, or by a reading of one of its sizes.

    What differs raises a doubt about the batch: nothing of it goes on until it was right twice
    in a row, or a supervisor lets it go on. A reading that can't be of that size is asked
    about, and booked nowhere.
    """
    part, batch = view.get(Part, tail(act.subject)), view.get(Batch, act.args.batch)
    if part is None:
        return refuse(say("There is no such part"), say("Scan its card."))
    if _is_same_again(act, view, part):
        said = say("The same again within a moment: counted once")
        return notice(said, say("Compare another piece, or this one anew."))
    size, mm, agrees = find_size(part, act.args), act.args.reading_mm or 0.0, act.args.agrees
    if size is not None:
        if far := ask_if_far(size, mm):
            return far
        agrees = size.allows(mm)
    settled = _settle(act, view, part, batch, size, agrees=agrees)
    readings = give_comparison(view, part, act.args.batch, size, mm, agrees=agrees)
    return replace(settled, readings=readings)


def _is_same_again(act: Act[CheckMaster], view: View, part: Part) -> bool:
    """Tells whether a card was read twice by one pull of the trigger."""
    past = view.last(part.key, CheckMaster)
    if past is None or past.act.args != act.args or past.undone:
        return False
    gone = datetime.fromisoformat(act.at) - datetime.fromisoformat(past.act.at)
    return gone < A_MOMENT


def find_size(part: Part, compared: CheckMaster) -> Size | None:
    """Finds the size that was measured; None: it was compared by eye."""
    if compared.reading_mm is None or compared.size >= len(part.sizes):
        return None
    return part.sizes[compared.size]


def find_doubt(batch: Batch | None, part: str, size: str) -> Doubt | None:
    """Finds what keeps a batch back because of one size of a part; "" for compared by eye."""
    doubts = batch.doubts if batch else ()
    return next((d for d in doubts if (d.part, d.size) == (part, size)), None)


def _settle(
    act: Act[CheckMaster],
    view: View,
    part: Part,
    batch: Batch | None,
    size: Size | None,
    *,
    agrees: bool,
) -> Answer:
    """Books what was found: right, right after a doubt, or a doubt about the batch."""
    text = _say_found(part, size, act.args)
    doubt = find_doubt(batch, part.id, size.name if size else "")
    if not agrees:
        sets = _raise_doubt(act, view, part, batch, size, text, doubt)
        return attention(text, _say_waits(view, batch), sets=sets)
    following = _say_following(part, act.args)
    if batch is None or doubt is None:
        return good(text, following or say("Go on."))
    again = doubt.again + 1
    others = tuple(d for d in batch.doubts if d != doubt)
    if again < ENOUGH:
        kept = replace(batch, doubts=(*others, replace(doubt, again=again)))
        return good(
            text, say("Once more the same: two that are right in a row count."), sets=(kept,)
        )
    heaps = _list_heaps(view, batch, doubt.part)
    free = _say_free(replace(batch, doubts=others), heaps)
    return good(
        text,
        say("{first} {next}", first=free, next=following) if following else free,
        sets=(
            _drop_doubt(batch, doubt),
            *_settle_look(act, view, doubt),
            *(fact for heap in heaps for fact in _pass_doubt(act, batch, heap, doubt)),
        ),
    )


def _list_heaps(view: View, batch: Batch, part: str) -> tuple[Batch, ...]:
    """Lists what came of a batch and has pieces of a part in the shop: heaps of their own.

    A piece that was right shows nothing of a heap that it does not lie in.
    """
    family = (view.get(Batch, number) for number in list_family(view, batch.id)[1:])
    return tuple(b for b in family if b and count_in_shop(view, b.id, part))


def _pass_doubt(
    act: Act[CheckMaster], batch: Batch, heap: Batch, doubt: Doubt
) -> tuple[Fact, ...]:
    """Passes a doubt on to a heap of a batch that shows for itself, with a look at it."""
    if find_doubt(heap, doubt.part, doubt.size):
        return ()
    look = Concern(
        id=f"{act.id}-{heap.id}",
        what="master",
        since=act.at,
        text=say(
            "Batch {batch} waits with batch {other}: {why}",
            batch=heap.id,
            other=batch.id,
            why=doubt.text,
        ),
        about=heap.key,
        choices=("let it go on", "keep it"),
    )
    waits = replace(doubt, again=0, look=look.id)
    return (
        replace(heap, doubts=(*heap.doubts, waits), looks=(*heap.looks, look.id)),
        look,
    )


def _say_found(part: Part, size: Size | None, found: CheckMaster) -> Say:
    if size is not None:
        return say(
            "{part} {size}: {mm} mm, limits {low} to {high}",
            part=part.name,
            size=size.name,
            mm=length(found.reading_mm or 0.0, 2),
            low=length(size.low_mm),
            high=length(size.high_mm),
        )
    if found.agrees:
        return say("{part} agrees with its master", part=part.name)
    return say("{part} differs from its master", part=part.name)


def _say_following(part: Part, found: CheckMaster) -> Say | None:
    """Says the size that is asked for behind one that is settled; None: no other is left."""
    after = found.size + 1
    if found.reading_mm is None or after >= len(part.sizes):
        return None
    return say("Next: {size}.", size=part.sizes[after].in_words)


def _say_waits(view: View, batch: Batch | None) -> Say:
    """Says what to do about a doubt; where pieces went on before it, where these lie."""
    where = tell_where(view, batch.id, besides="trimming") if batch else None
    if not where:
        return say("Measure it once more. Till then nothing of it goes on.")
    return say("Measure it once more. Till then put aside too: {where}.", where=where)


def _say_free(batch: Batch, heaps: tuple[Batch, ...]) -> Say:
    if heaps and not batch.why_held:
        return say("Right twice: batch {batch} may go on. Measure {heaps} too, each for itself.",
                   batch=batch.id, heaps=several([heap.id for heap in heaps]))  # fmt: skip
    if batch.why_held:
        return say("Batch {batch} still waits: {why}", batch=batch.id, why=batch.why_held)
    return say("Right twice: batch {batch} may go on.", batch=batch.id)


def _raise_doubt(
    act: Act[CheckMaster],
    view: View,
    part: Part,
    batch: Batch | None,
    size: Size | None,
    text: Say,
    doubt: Doubt | None,
) -> tuple[Fact, ...]:
    """The batch with this doubt, and what asks the supervisor for a look at it."""
    look = (view.get(Concern, doubt.look) if doubt else None) or Concern(
        id=act.id,
        what="master",
        since=act.at,
        text="",
        about=f"batch/{act.args.batch}",
        choices=("let it go on", "keep it"),
    )
    look = replace(look, text=str(text))
    if batch is None:
        return (look,)
    found = Doubt(part=part.id, size=size.name if size else "", text=str(text), look=look.id)
    others = tuple(d for d in batch.doubts if d != doubt)
    looks = tuple(dict.fromkeys((*batch.looks, look.id)))
    return (replace(batch, doubts=(*others, found), looks=looks), look)


def _drop_doubt(batch: Batch, doubt: Doubt) -> Batch:
    return replace(
        batch,
        doubts=tuple(d for d in batch.doubts if d != doubt),
        looks=tuple(look for look in batch.looks if look != doubt.look),
    )


def _settle_look(act: Act[CheckMaster], view: View, doubt: Doubt) -> tuple[Concern, ...]:
    """What had asked for a look, settled by what was measured."""
    look = view.get(Concern, doubt.look)
    if look is None or look.settled:
        return ()
    how = "measured again"
    return (replace(look, settled=how, settled_at=act.at, by=act.worker, reason="right twice"),)
