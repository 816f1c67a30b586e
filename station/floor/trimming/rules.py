"""Trimming: tab stubs come off, parts are compared with their master and go to the rack."""

from collections.abc import Mapping
from dataclasses import replace

from station.floor.shared.counting import draw_pieces, list_faults
from station.floor.trimming.acts import CheckMaster, PutOnRack
from station.floor.trimming.rules_master import MEASURE_AGAIN, decide_check_master
from station.queries.batches import find_order, make_pile, make_rework, refuse_held
from station.queries.readings import find_source
from station.queries.underway import ask_if_changed
from station.shop.acts import Act, Answer, attention, good, refuse
from station.shop.counts import Counts, has_rework, read_counts, sum_by_fate
from station.shop.facts import (
    Batch,
    Concern,
    Fact,
    Mixed,
    Order,
    Part,
    Pile,
    RackPlace,
    Reason,
    Slip,
)
from station.shop.moves import Held, Move, head, tail
from station.shop.places import areas_of, kind_of
from station.shop.views import Rule, Rules, View, by_kind, by_part, total
from station.shop.words import Say, name_first, say, together

NAMED = 3  # parts that a sentence names

MOST_TRIES = 2  # a piece is made good at most so often


def list_lying(view: View, batch: str) -> tuple[Held, ...]:
    """Lists the pieces of a batch that lie at the router table, to trim or to make good."""
    return tuple(h for p in areas_of("trimming") for h in view.stock(batch=batch, place=p))


def decide_put_on_rack(act: Act[PutOnRack], view: View) -> Answer:
    """Puts good pieces under their master, or to the order that they were cut for."""
    batch = view.get(Batch, tail(act.subject))
    if batch is None:
        return refuse(say("There is no such batch"), say("Scan its traveller."))
    if problem := refuse_held(view, batch.id):
        return problem
    counts = read_counts(act.args.parts)
    held = list_lying(view, batch.id)
    here = by_part(held)
    if problem := _refuse_counts(view, batch, counts, here):
        return problem
    if asked := ask_if_changed(act, act.args.seen, view, batch, here):
        return asked
    router = find_source(view, batch.id).router
    return replace(_put_on_rack(act, view, batch, held, counts), router=router)


def _refuse_counts(
    view: View, batch: Batch, counts: Counts, here: Mapping[str, int]
) -> Answer | None:
    """Refuses counts that cannot be: more than is here, a third try, no rack place."""
    order = find_order(view, batch)
    if not any(sum(row.values()) for row in counts.values()):
        return refuse(say("Nothing was counted"), say("Say how many are good."))
    for part, row in counts.items():
        known, left = view.get(Part, part), here.get(part, 0)
        name = known.name if known else part
        if sum(row.values()) > left:
            return refuse(
                say("{left} {part} left here, not {n}", left=left, part=name, n=sum(row.values())),
                say("Count again."),
            )
        if row.get("good") and not (known and known.rack) and not order:
            return refuse(
                say("{part} has no rack place", part=name), say("The office gives it one.")
            )
        if batch.tries >= MOST_TRIES and any(head(c) == "rework" for c in row):
            return refuse(
                say("{part} was tried twice", part=name), say("Now each is good or spoiled.")
            )
    return None


def _put_on_rack(
    act: Act[PutOnRack], view: View, batch: Batch, held: tuple[Held, ...], counts: Counts
) -> Answer:
    live = find_order(view, batch) is not None
    child = _find_child(act, view, batch, counts) if has_rework(counts) else None
    lying = list(held)
    moves: list[Move] = []
    for part, row in counts.items():
        for counter, count in row.items():
            to, to_batch = _find_destination(view, part, counter, batch, child, live=live)
            moves += _draw_pieces(lying, part, count, to, to_batch)
    left = total(lying)
    sets = _set_piles(act, view, batch, child, lying)
    return _say_put(
        view, batch, counts, child, left, tuple(moves), sets, freed=bool(batch.order) and not live
    )


def _draw_pieces(lying: list[Held], part: str, count: int, to: str, to_batch: str) -> list[Move]:
    """Draws pieces, without moves that go nowhere: rework of a rework stays where it lies."""
    return [m for m in draw_pieces(lying, part, count, to, to_batch) if m.frm != m.to]


def _find_destination(
    view: View, part: str, counter: str, batch: Batch, child: Batch | None, *, live: bool
) -> tuple[str, str]:
    if counter == "good":
        if live:
            return f"packing/{batch.order}", ""
        known = view.get(Part, part)
        return f"rack/{known.rack if known else ''}", ""
    if head(counter) == "rework":
        return "rework", child.id if child and child.id != batch.id else ""
    return counter, ""


def _find_child(act: Act[PutOnRack], view: View, batch: Batch, counts: Counts) -> Batch:
    """Finds the batch of the pieces to be made good, each of them one try on.

    All pieces of a batch have had as many tries: the same paper goes on only where nothing
    else is left on it, and otherwise what failed goes on a paper of its own.
    """
    if batch.tries and _is_alone(view, batch, counts):
        return replace(batch, tries=batch.tries + 1)
    return make_rework(act, batch)


def _is_alone(view: View, batch: Batch, counts: Counts) -> bool:
    """Says whether everything of the batch before the rack is counted out, none of it missing."""
    if any("missing" in row for row in counts.values()):
        return False
    before = sum(h.qty for h in view.stock(batch=batch.id) if kind_of(h.place).before_rack)
    return before == sum(sum(row.values()) for row in counts.values())


def _set_piles(
    act: Act[PutOnRack], view: View, batch: Batch, child: Batch | None, lying: list[Held]
) -> tuple[Fact, ...]:
    sets: list[Fact] = []
    if child:
        sets.append(child)
        if child.id != batch.id:
            sets.append(make_pile(act, "rework", child))
    for area in areas_of("trimming"):
        pile = view.get(Pile, f"{area}/{batch.id}")
        left = any(h.place == area for h in lying)
        stays = child is not None and child.id == batch.id and area == "rework"
        if pile and not pile.done and not left and not stays:
            sets.append(replace(pile, done=True))
    return tuple(sets)


def _say_put(
    view: View,
    batch: Batch,
    counts: Counts,
    child: Batch | None,
    left: int,
    moves: tuple[Move, ...],
    sets: tuple[Fact, ...],
    *,
    freed: bool,
) -> Answer:
    """Says what went where, and what to do now."""
    sums = sum_by_fate(*counts.values())
    faults = list_faults(sums)
    told = together([say("{n} good", n=sums["good"]), *faults])
    do = _say_where_to(view, moves)
    if left:
        do = say("{where} {left} {left|stays|stay} here.", where=do, left=left)
    new = child is not None and child.id != batch.id
    if new and child:
        do = say("Rework traveller {child} goes with the {n}.", child=child.id, n=sums["rework"])
    if child and not new:
        do = say("Try them once more; a third try is not allowed.")
    prints = (("traveller", child.id),) if new and child else ()
    said = say("Batch {batch}: {told}", batch=batch.id, told=told)
    if freed:
        order = view.get(Order, batch.order)
        said = say("Order {order} takes no more: {n} free on the rack")
        if order and order.state == "cancelled":
            said = say("Order {order} is cancelled: {n} free on the rack")
        said = said._replace(values={"order": batch.order, "n": sums["good"]})
    answer = attention if faults or freed else good
    return answer(said, do, moves=moves, sets=sets, prints=prints)


def _say_where_to(view: View, moves: tuple[Move, ...]) -> Say:
    """Says under which master the good ones go, or to which order."""
    places = list(dict.fromkeys(m.to.place for m in moves))
    orders = [tail(p) for p in places if head(p) == "packing"]
    if orders:
        return say("To packing, with order {order}.", order=orders[0])
    racks = [r.name for p in places if head(p) == "rack" and (r := view.get(RackPlace, tail(p)))]
    if racks:
        return say("Under the master: rack {places}.", places=name_first(racks, NAMED))
    return say("Scan the next traveller.")


_READS = frozenset({Batch, Concern, Mixed, Order, Part, Pile, RackPlace, Reason, Slip})

RULES: Rules = by_kind(
    Rule(args=PutOnRack, reads=_READS, decide=decide_put_on_rack),
    Rule(args=CheckMaster, reads=_READS, decide=decide_check_master, stays=MEASURE_AGAIN),
)
