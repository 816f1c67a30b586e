"""Releasing a batch: a router, where it is due or for one order, and how many sheets.

`hand.work` holds `router`, `order` and `due`; the number of sheets releases it.
"""

from station.floor.office.fields import a_time
from station.floor.office.form import another_day
from station.floor.office.state import chosen, pressed, row_of
from station.queries.batches import find_approved
from station.queries.orders import count_wanted
from station.queries.routers import list_routers
from station.queries.runs import list_runs
from station.queries.settings import find_shop
from station.shop.acts import good, refuse
from station.shop.codes import Code
from station.shop.facts import CutFile, Order, Router
from station.shop.rooms import Do, Hand, Input, Number, Took, Typed, plain_do
from station.shop.views import View
from station.shop.words import Say, moment, say

OFFERED = 4  # orders that stand on the screen


def start(hand: Hand, view: View) -> Took:
    """Opens it for the chosen cut file."""
    fact = chosen(hand, view)
    if not isinstance(fact, CutFile):
        return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))
    return Took(
        hand.with_work(ask="release", router=None, order=None, due=None),
        good(
            say("{name}: which router?", name=fact.name),
            say("Touch a router or scan its card."),
        ),
    )


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """A router, an order, a time, or the number of sheets."""
    if isinstance(given, Number):
        return _sheets(hand, given, view)
    if isinstance(given, Typed):
        return _due(hand, given.text, view)
    if isinstance(given, Code) and given.kind == "router":
        return _router(hand, given.number, view)
    if isinstance(given, Code) and given.kind == "order":
        return _order(hand, given.number, view)
    name = pressed(given)
    if (row := row_of(name)) is not None:
        routers = able(hand, view)
        return _router(hand, routers[row].id if row < len(routers) else "", view)
    if name in ("more", "fewer"):
        due = another_day(due_of(hand, view), hand.now, 1 if name == "more" else -1, view)
        return _due_is(hand, due)
    return None


def able(hand: Hand, view: View) -> tuple[Router, ...]:
    """Routers in use that run the approved revision of the chosen cut file."""
    fact = chosen(hand, view)
    revision = find_approved(view, fact) if isinstance(fact, CutFile) else None
    first = list_runs(view, revision)[0] if revision else None
    return tuple(r for r in list_routers(view) if not first or first.takes(r.id))


def due_of(hand: Hand, view: View) -> str:
    """When it is due: as given, else with its order; empty: by need."""
    order = view.get(Order, str(hand.work.get("order", "")))
    return str(hand.work.get("due", "")) or (order.due if order else "")


def orders(hand: Hand, view: View) -> tuple[Order, ...]:
    """Open orders that want a part this cut file makes, by due time."""
    fact = chosen(hand, view)
    revision = find_approved(view, fact) if isinstance(fact, CutFile) else None
    makes = revision.makes() if revision else {}
    found = [
        o for o in view.shelf(Order, "open", 100) if makes.keys() & count_wanted(view, o).keys()
    ]
    return tuple(found[:OFFERED])


def _router(hand: Hand, id: str, view: View) -> Took:
    router = view.get(Router, id)
    if router is None:
        return Took(hand, refuse(say("There is no such router"), say("Touch a router.")))
    return Took(
        hand.with_work(router=id),
        good(say("{router}", router=router.name), say("How many sheets?")),
    )


def _order(hand: Hand, id: str, view: View) -> Took:
    """The order that it is for; the same one again takes it off."""
    order = view.get(Order, id)
    if order is None or order.shelf is None or order.shelf[0] != "open":
        return Took(hand, refuse(say("Order {id} is not open", id=id), say("Scan another.")))
    if hand.work.get("order") == id:
        return Took(hand.with_work(order=None), good(say("Not for one order"), _next(hand)))
    return Took(
        hand.with_work(order=id),
        good(say("For order {id}, due {due}", id=id, due=moment(order.due)), _next(hand)),
    )


def _next(hand: Hand) -> Say:
    return say("How many sheets?") if hand.work.get("router") else say("Which router?")


def _due(hand: Hand, text: str, view: View) -> Took:
    shop = find_shop(view)
    due = a_time(text, hand.now, shop.day_ends)
    if due == text and len(text) != 19:
        return Took(
            hand, refuse(say("{text} is no time", text=text), say("Type it as 26.11. 14:00."))
        )
    return _due_is(hand, due)


def _due_is(hand: Hand, due: str) -> Took:
    return Took(hand.with_work(due=due), good(say("Due {due}", due=moment(due)), _next(hand)))


def _sheets(hand: Hand, given: Number, view: View) -> Do | Took:
    if not given.whole:
        return Took(hand, refuse(say("That is no number of sheets"), say("Type 1 or more.")))
    if not hand.work.get("router"):
        return Took(hand, refuse(say("Which router?"), say("Touch a router first.")))
    fact = chosen(hand, view)
    args: dict[str, object] = {
        "cut_file": fact.id if fact else "",
        "router": hand.work["router"],
        "sheets": given.whole,
    }
    if order := hand.work.get("order"):
        args["order"] = order
    if due := hand.work.get("due"):
        args["due"] = due
    after = hand.with_work(ask=None, router=None, order=None, due=None)
    return plain_do("release_batch", fact.key if fact else "", args, after, ("batch",))
