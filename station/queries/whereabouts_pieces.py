"""Answers about batches, slips, parts and rack places: where all of their pieces are."""

from collections.abc import Iterable

from station.queries.batches import describe_batch, find_hold, find_order, list_family, say_why
from station.queries.carts import CARTS, PACKS
from station.queries.orders import MOST, list_takers
from station.queries.routers import find_bed, name_router
from station.queries.shelf import list_ahead
from station.queries.stock import name_part, name_place, tell_where
from station.queries.things import AnswerLine, Thing
from station.queries.underway import count_underway, list_waiting
from station.shop.codes import write_touch
from station.shop.facts import Batch, Cart, Order, Pack, Part, RackPlace, Slip
from station.shop.moves import Held, head, tail
from station.shop.places import balances
from station.shop.views import View, by_batch, total
from station.shop.words import Say, clock, moment, say, when

MOST_SLIPS = 40  # of a batch, whose entries are part of its life


def answer_batch(view: View, batch: Batch, now: str) -> Thing:
    """Answers about a batch: its pieces, its sheets still to be cut, what came of it."""
    lying = list_places(view, view.stock(batch=batch.id), with_part=True)
    to_cut = _list_to_cut(view, batch)
    where = tell_where(view, batch.id, gone=True)
    if not where:
        where = to_cut[0].what if to_cut and isinstance(to_cut[0].what, Say) else say("no pieces")
    family = list_family(view, batch.id)[1:]
    children = tuple(
        AnswerLine(say("Batch {batch}", batch=child), tell_where(view, child, gone=True),
             write_touch("batch", child))
        for child in family
    )  # fmt: skip
    return Thing(
        label=say("Batch"),
        number=batch.id,
        title=describe_batch(view, batch),
        note=say_why(batch),
        said=say("Batch {batch}: {where}", batch=batch.id, where=where),
        next=_tell_next_of_batch(view, batch),
        where=(*to_cut, *lying, *children),
        promised=_list_promised_of_batch(view, batch, now),
        origin=(*_list_parents(batch), *list_sheets(view, batch)),
        about=(batch.key, *(f"slip/{batch.id}-{n}" for n in range(1, _count_slips(batch) + 1))),
    )


def _count_slips(batch: Batch) -> int:
    return min(MOST_SLIPS, batch.sheets)


def _list_to_cut(view: View, batch: Batch) -> tuple[AnswerLine, ...]:
    """Lists the sheets of a batch that are not cut yet: on the bed, and in the queue."""
    bed = find_bed(view, batch.router)
    on_bed = int(bed.batch == batch.id and bool(bed.sheet))
    router, code = name_router(view, batch.router), write_touch("router", batch.router)
    lines = []
    if on_bed:
        lines.append(AnswerLine(say("sheet {n} of {of}", n=bed.sheet, of=batch.sheets),
                          say("on the bed of {router}", router=router), code))  # fmt: skip
    left = batch.sheets - batch.cut - on_bed if batch.state in ("queued", "cutting") else 0
    if left > 0:
        lines.append(AnswerLine(say("{n} {n|sheet|sheets} still to be cut", n=left), router, code))
    return tuple(lines)


def list_places(
    view: View, lying: Iterable[Held], *, with_part: bool = False, with_batch: bool = False
) -> tuple[AnswerLine, ...]:
    """Lists where pieces lie, every place that does not balance the books."""
    lines = []
    for h in lying:
        if balances(h.place):
            continue
        what = say("{n} {n|piece|pieces}", n=h.qty)
        if with_part:
            what = say("{n} {part}", n=h.qty, part=name_part(view, h.part))
        if with_batch:
            what = say("{n} of batch {batch}", n=h.qty, batch=h.batch)
        code = _code_of_place(h.place)
        if with_batch and view.get(Batch, h.batch):
            code = write_touch("batch", h.batch)
        lines.append(AnswerLine(what, name_place(view, h.place), code))
    return tuple(lines)


CODED = {"rack": "rack", "packing": "order", "pack": "pack", "cart": "cart", "bed": "router"}


def _code_of_place(place: str) -> str:
    """The code of what a place is named after; empty where it has none."""
    kind = CODED.get(head(place), "")
    return write_touch(kind, tail(place)) if kind else ""


def _list_promised_of_batch(view: View, batch: Batch, now: str) -> tuple[AnswerLine, ...]:
    if order := find_order(view, batch):
        said = say("for order {order}", order=order.id)
        return (AnswerLine(said, code=write_touch("order", order.id)),)
    if batch.due:
        return (AnswerLine(say("for the rack"), say("due {at}", at=when(batch.due, now))),)
    return ()


def _list_parents(batch: Batch) -> tuple[AnswerLine, ...]:
    return tuple(
        AnswerLine(say("made of batch {batch}", batch=number), code=write_touch("batch", number))
        for number in batch.parents
    )


def list_sheets(view: View, batch: Batch) -> tuple[AnswerLine, ...]:
    """Lists the cut sheets of a batch, the newest first: router, time, lot and bit."""
    found = (view.get(Slip, f"{batch.id}-{n}") for n in range(1, _count_slips(batch) + 1))
    return tuple(_describe_slip(view, s) for s in found if s)[::-1]


def _describe_slip(view: View, slip: Slip) -> AnswerLine:
    told = say("{router}, {at}", router=name_router(view, slip.router), at=moment(slip.at))
    if slip.lot:
        told = say("{told}, lot {lot}", told=told, lot=slip.lot)
    for bit in slip.cut_by:
        told = say("{told}, bit {bit}", told=told, bit=bit)
    code = write_touch("lot", slip.lot) if slip.lot else ""
    return AnswerLine(
        say("sheet {n} of batch {batch}", n=slip.sheet, batch=slip.batch), told, code
    )


def _tell_next_of_batch(view: View, batch: Batch) -> Say:
    """Tells where a batch goes next."""
    if hold := find_hold(view, batch.id):
        return say("Held: {why}. A supervisor lets it go on.", why=hold.why_held)
    if batch.state == "cancelled":
        return say("It is cancelled: throw its traveller away.")
    places = {head(h.place) for h in view.stock(batch=batch.id)}
    if "popping" in places:
        return say("Next: pop its sheets.")
    if places & {"trimming", "rework"}:
        return say("Next: trim it.")
    if batch.state in ("queued", "cutting"):
        return say("Next: cut it on {router}.", router=name_router(view, batch.router))
    if "rack" in places:
        return say("It lies on the rack until packing takes it.")
    if places & {"packing", "pack", "cart"}:
        return say("Next: it leaves with its packs.")
    return say("Nothing is left to do with it.")


def answer_slip(view: View, batch: Batch, sheet: int, now: str) -> Thing:
    """Answers about one sheet by its slip: where its pieces wait, what cut it."""
    slip = view.get(Slip, f"{batch.id}-{sheet}")
    whole = answer_batch(view, batch, now)
    if slip is None:
        said = say("Sheet {n} of batch {batch} is not cut yet", n=sheet, batch=batch.id)
        if sheet > batch.sheets:
            said = say("Batch {batch} has {all} {all|sheet|sheets}, no sheet {n}", n=sheet,
                       batch=batch.id, all=batch.sheets)  # fmt: skip
        return whole._replace(label=say("Sheet {n} of batch", n=sheet), said=said)
    here = view.stock(batch=batch.id, place=f"popping/{sheet}")
    at = clock(slip.at) if slip.at[:10] == now[:10] else moment(slip.at)
    words = {"between": say("it waits for its next run"), "spoiled": say("it is spoiled"),
             "popped": say("it is popped")}  # fmt: skip
    state = words.get(slip.state) or say("{n} at popping still", n=total(here))
    said = say("Sheet {n} of batch {batch}: cut {at}, {state}", n=sheet, batch=batch.id, at=at,
               state=state)  # fmt: skip
    about = (slip.key, batch.key)
    label, origin = say("Sheet {n} of batch", n=sheet), (_describe_slip(view, slip),)
    return whole._replace(label=label, said=said, origin=origin, about=about)


def answer_part(view: View, part: Part, now: str) -> Thing:
    """Answers about a part: on the rack, under way, packed; who takes it, what is coming."""
    place = view.get(RackPlace, part.rack)
    on_rack = tuple(h for h in view.stock(place=f"rack/{part.rack}") if h.part == part.id)
    held = sum(h.qty for h in on_rack if find_hold(view, h.batch))
    promised = sum(n for _, n in list_takers(view, part.id))
    name = say("rack {number}", number=place.name) if place else say("no rack place")
    there = say("{name}: {n}", name=name, n=total(on_rack))
    said = say("{part}: {n} on {rack}, {promised} promised", part=part.name, n=total(on_rack),
               rack=name, promised=promised)  # fmt: skip
    kept = (AnswerLine(say("{n} held", n=held), there),) if held else ()
    lying = list_places(view, on_rack, with_batch=True)
    return Thing(
        label=say("Part"),
        number=part.id,
        title=part.name,
        note=part.words,
        said=said,
        next=_tell_next_of_part(view, part, total(on_rack) - held, promised, now),
        where=(*lying, *_list_elsewhere(view, part)),
        promised=(*kept, *_list_promised(view, part, now)),
        about=(part.key,),
    )


def _tell_next_of_part(view: View, part: Part, free: int, promised: int, now: str) -> Say:
    coming = count_underway(view, part.id)
    if promised <= free:
        return say("Free: {n}. Scan your work to go on.", n=free - promised)
    if coming.all:
        return say("Coming: {where}.", where=coming.words(now))
    return say("Lacking: {n}, and nothing is coming.", n=promised - free)


def _list_elsewhere(view: View, part: Part) -> tuple[AnswerLine, ...]:
    """Lists the pieces of a part that are in the shop and not on the rack."""
    waiting = [h for h in list_waiting(view) if h.part == part.id]
    waiting += [h for h in view.stock(place="held") if h.part == part.id]
    lines = []
    for h in waiting:
        what, place = (
            say("{n} of batch {batch}", n=h.qty, batch=h.batch),
            name_place(view, h.place),
        )
        lines.append(AnswerLine(what, place, write_touch("batch", h.batch)))
    inside = count_in_open_packs(view, part.id)
    closed = _count_packed(view, part.id)
    lines += [AnswerLine(say("{n} {n|piece|pieces}", n=inside), say("in open packs"))] * bool(
        inside
    )
    lines += [AnswerLine(say("{n} {n|piece|pieces}", n=closed), say("in closed packs"))] * bool(
        closed
    )
    return tuple(lines)


def count_in_open_packs(view: View, part: str) -> int:
    """Counts the pieces of a part in the packs that are not closed yet."""
    opened = (view.stock(place=f"packing/{o.id}") for o in view.shelf(Order, "open", MOST))
    return sum(total(held, part=part) for held in opened)


def _count_packed(view: View, part: str) -> int:
    """Counts the pieces of a part in closed packs that have not left."""
    packs = [*view.shelf(Pack, "packed", PACKS)]
    for cart in view.shelf(Cart, "all", CARTS):
        packs += view.shelf(Pack, f"cart/{cart.id}", PACKS)
    for ahead in list_ahead(view):
        packs += (*ahead.free, *ahead.held)
    return sum(n for pack in packs for name, n in pack.contents if name == part)


def _list_promised(view: View, part: Part, now: str) -> tuple[AnswerLine, ...]:
    """Lists what is coming of a part, and who takes it."""
    coming = count_underway(view, part.id)
    lines = [AnswerLine(say("{n} coming", n=coming.all), coming.words(now))] * bool(coming.all)
    lines += [
        AnswerLine(say("{n} for order {order}", n=n, order=order.id),
             say("due {at}", at=when(order.due, now)), write_touch("order", order.id))
        for order, n in list_takers(view, part.id)
    ]  # fmt: skip
    return tuple(lines)


def answer_rack(view: View, rack: RackPlace, now: str) -> Thing:
    """Answers about a rack place: what lies there, by batch, and who takes it."""
    lying = view.stock(place=f"rack/{rack.id}")
    part = view.get(Part, rack.part)
    name = part.name if part else say("no part")
    there = Thing(
        label=say("Rack place"),
        number=rack.name,
        title=name,
        note=part.words if part else "",
        said=say("Rack {rack}: {n} {part}", rack=rack.name, n=total(lying), part=name),
        next=say("Nothing is promised of it."),
        where=list_places(view, lying, with_batch=True),
        about=(rack.key,),
    )
    if part is None:
        return there._replace(next=say("The office gives it a part."))
    batches = by_batch(lying)
    whole = answer_part(view, part, now)
    note = say("{n} {n|batch|batches}, the oldest first", n=len(batches)) if batches else ""
    about = (rack.key, part.key)
    return there._replace(next=whole.next, promised=whole.promised, note=note, about=about)
