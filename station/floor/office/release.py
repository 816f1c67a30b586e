"""Releasing a batch: a router, where it is due or for one order, and how many sheets.

The number of sheets releases it.
"""

from dataclasses import replace

from station.floor.office.form import move_by_days
from station.floor.office.lists import (
    LEAVE,
    find_chosen,
    make_face,
    name_press,
    read_row,
    say_rows,
)
from station.floor.office.work import OfficeHand, Releasing
from station.floor.shared.approval import refuse_unapproved
from station.floor.shared.queue import ReleaseBatch
from station.planning.by_hand import ByHand, look_by_hand
from station.queries.batches import find_approved
from station.queries.orders import count_wanted
from station.queries.routers import list_routers
from station.queries.runs import list_runs
from station.queries.settings import find_shop
from station.shop.acts import good, refuse
from station.shop.cards import button
from station.shop.codes import Code, write
from station.shop.faces import Asked, Cards, Entry, Face, Hint, Pairs, Press
from station.shop.facts import CutFile, Material, Order, Revision, Router
from station.shop.field_texts import read_time
from station.shop.fields import fields_by_name
from station.shop.rooms import Do, Input, Number, Took, Typed
from station.shop.views import View
from station.shop.words import Say, moment, say, when_ahead

OFFERED = 4  # orders that stand on the screen
SHOWN = 3  # parts of the file


def ask_release(hand: OfficeHand, view: View) -> Took:
    """Asks how the chosen cut file is released."""
    fact = find_chosen(hand, view)
    if not isinstance(fact, CutFile):
        return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))
    if not fact.approved:
        return Took(hand, refuse_unapproved(fact, view))
    return Took(
        replace(hand, work=replace(hand.work, ask="release", releasing=Releasing())),
        good(
            say("{name}: which router?", name=fact.name),
            say("Touch a router or scan its card."),
        ),
    )


def handle_input(hand: OfficeHand, given: Input, view: View) -> Do | Took | None:
    """Takes a router, an order, a time, or the number of sheets."""
    if isinstance(given, Number):
        return _take_sheets(hand, given, view)
    if isinstance(given, Typed):
        return _take_due(hand, given.text, view)
    if isinstance(given, Code) and given.kind == "router":
        return _choose_router(hand, given.number, view)
    if isinstance(given, Code) and given.kind == "order":
        return _choose_order(hand, given.number, view)
    name = name_press(given)
    if (row := read_row(name)) is not None:
        routers = list_able(hand, view)
        return _choose_router(hand, routers[row].id if row < len(routers) else "", view)
    if name in ("more", "fewer"):
        by = 1 if name == "more" else -1
        return _set_due(hand, move_by_days(find_due(hand, view), hand.now, by, view))
    return None


def _find_revision(hand: OfficeHand, view: View) -> Revision | None:
    """Finds the approved revision of the chosen cut file."""
    fact = find_chosen(hand, view)
    return find_approved(view, fact) if isinstance(fact, CutFile) else None


def list_able(hand: OfficeHand, view: View) -> tuple[Router, ...]:
    """Lists the routers in use that run the approved revision of the chosen cut file."""
    revision = _find_revision(hand, view)
    first = list_runs(view, revision)[0] if revision else None
    return tuple(r for r in list_routers(view) if not first or first.takes(r.id))


def find_due(hand: OfficeHand, view: View) -> str:
    """Finds when it is due: as given, else with its order; empty: by need."""
    order = view.get(Order, hand.work.releasing.order)
    return hand.work.releasing.due or (order.due if order else "")


def list_wanting(hand: OfficeHand, view: View) -> tuple[Order, ...]:
    """Lists the open orders that want a part this cut file makes, by due time."""
    revision = _find_revision(hand, view)
    makes = revision.makes() if revision else {}
    found = [
        o for o in view.shelf(Order, "open", 100) if makes.keys() & count_wanted(view, o).keys()
    ]
    return tuple(found[:OFFERED])


def _hold(hand: OfficeHand, releasing: Releasing) -> OfficeHand:
    return replace(hand, work=replace(hand.work, releasing=releasing))


def _choose_router(hand: OfficeHand, id: str, view: View) -> Took:
    router = view.get(Router, id)
    if router is None:
        return Took(hand, refuse(say("There is no such router"), say("Touch a router.")))
    return Took(
        _hold(hand, replace(hand.work.releasing, router=id)),
        good(say("{router}", router=router.name), say("How many sheets?")),
    )


def _choose_order(hand: OfficeHand, id: str, view: View) -> Took:
    """Chooses the order that it is for; the same one again takes it off."""
    order = view.get(Order, id)
    if order is None or order.shelf is None or order.shelf[0] != "open":
        return Took(hand, refuse(say("Order {id} is not open", id=id), say("Scan another.")))
    if hand.work.releasing.order == id:
        off = _hold(hand, replace(hand.work.releasing, order=""))
        return Took(off, good(say("Not for one order"), _say_next(hand)))
    return Took(
        _hold(hand, replace(hand.work.releasing, order=id)),
        good(say("For order {id}, due {due}", id=id, due=moment(order.due)), _say_next(hand)),
    )


def _say_next(hand: OfficeHand) -> Say:
    return say("How many sheets?") if hand.work.releasing.router else say("Which router?")


def _take_due(hand: OfficeHand, text: str, view: View) -> Took:
    due = read_time(text, hand.now, find_shop(view).day_ends)
    if due == text and len(text) != 19:
        return Took(
            hand,
            refuse(
                say("{text} is no time", text=text),
                say("Type it as {example}.", example=moment("2026-11-26T14:00")),
            ),
        )
    return _set_due(hand, due)


def _set_due(hand: OfficeHand, due: str) -> Took:
    after = _hold(hand, replace(hand.work.releasing, due=due))
    return Took(after, good(say("Due {due}", due=moment(due)), _say_next(hand)))


def _take_sheets(hand: OfficeHand, given: Number, view: View) -> Do | Took:
    held = hand.work.releasing
    if not given.whole:
        return Took(hand, refuse(say("That is no number of sheets"), say("Type 1 or more.")))
    if not held.router:
        return Took(hand, refuse(say("Which router?"), say("Touch a router first.")))
    fact = find_chosen(hand, view)
    args = ReleaseBatch(
        cut_file=fact.id if fact else "",
        router=held.router,
        sheets=given.whole,
        order=held.order,
        due=held.due,
    )
    after = replace(hand, work=replace(hand.work, ask="", releasing=Releasing()))
    return Do(fact.key if fact else "", args, after, ("batch",))


# --- its screen


def show_release(hand: OfficeHand, view: View) -> Face:
    """Shows router, order and due time to touch; the number of sheets releases."""
    fact, held = find_chosen(hand, view), hand.work.releasing
    router, due = view.get(Router, held.router), find_due(hand, view)
    known = [
        say("due {due}", due=moment(due)) if due else say("no due time: by need"),
        say("for order {order}", order=held.order) if held.order else say("for the rack"),
    ]
    head = Hint(
        title=say("Release {name}", name=fact.name if isinstance(fact, CutFile) else ""),
        right=router.name if router else "",
        note=say("{due}, {order}", due=known[0], order=known[1]),
    )
    sooner = Press(label=say("Due a day sooner"), code=button("fewer"))
    later = Press(label=say("Due a day later"), code=button("more"))
    revision = _find_revision(hand, view)
    found = look_by_hand(view, revision, hand.now) if revision else None
    return make_face(
        hand,
        head,
        _list_routers(hand, view, router, found),
        _list_orders(hand, view),
        side=(
            ask_sheets(hand),
            *(_show_need(found, revision, view) if found and revision else ()),
        ),
        presses=(sooner, later, LEAVE),
        weights=(66, 0, 34),
    )


def _show_need(found: ByHand, revision: Revision, view: View) -> tuple[Pairs, ...]:
    """Shows how the parts of the file stand, those lacking first, and the sheets in the store."""
    parts = sorted(found.parts, key=lambda s: (-s.lacking, s.free - s.part.mark, s.part.id))
    rows: list[tuple[Say | str, Say | str]] = [
        (
            say("{part}, minimum {mark}", part=s.part.name, mark=s.part.mark),
            say("{wanted} wanted, {n} there, {coming} coming", wanted=s.wanted, n=s.free,
                coming=s.under_way),
        )
        for s in parts[:SHOWN]
    ]  # fmt: skip
    if (more := len(parts) - SHOWN) > 0:
        rows.append((say("{n} more", n=more), ""))
    material = view.get(Material, revision.material)
    store = say("none was ever received")
    if found.in_store is not None:
        store = say("{n} in the store are free", n=found.in_store)
    return (Pairs(rows=(*rows, (material.name if material else revision.material, store))),)


def _say_queue(found: ByHand | None, router: Router, now: str) -> Say | str:
    """Says when a router is through with its queue."""
    queue = found.queues.get(router.id) if found else None
    if queue is None:
        return ""
    if queue.stopped:
        return say("stopped")
    if queue.ends == now:
        return say("free now")
    return when_ahead(queue.ends, now)


def _list_routers(
    hand: OfficeHand, view: View, chosen_one: Router | None, found: ByHand | None
) -> Cards:
    return Cards(
        title=say("Which router? When its queue ends"),
        entries=tuple(
            Entry(
                big=r.name,
                chosen=bool(chosen_one and r.id == chosen_one.id),
                right=_say_queue(found, r, hand.now),
                code=write("router", r.id),
            )
            for r in list_able(hand, view)
        ),
        empty=say("No router runs it."),
    )


def _list_orders(hand: OfficeHand, view: View) -> Cards:
    return Cards(
        title=say("For one order? Scan or touch it"),
        entries=tuple(
            Entry(
                big=o.id,
                right=say("due {at}", at=moment(o.due)),
                line1=_say_wanted(o, view),
                tone="good" if o.id == hand.work.releasing.order else "",
                code=write("order", o.id),
            )
            for o in list_wanting(hand, view)
        ),
        empty=say("No open order wants its parts."),
    )


def _say_wanted(order: Order, view: View) -> str:
    lines_field = fields_by_name(Order)["lines"]
    return say_rows(lines_field, [[x.product, x.quantity] for x in order.lines], view)


def ask_sheets(hand: OfficeHand) -> Asked:
    """Asks how many sheets, of a batch or a lot."""
    return Asked(
        question=say("How many sheets?"),
        typed=hand.digits,
        unit=say("{n|sheet|sheets}", n=hand.digits),
    )
