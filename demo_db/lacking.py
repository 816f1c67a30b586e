"""What the demo shop lacks this morning, whatever chance made of its days: weaving cards.

Ten orders want 21 sets of 24 cards, four of them should have left; five cards lie on the rack
and none are under way. The one file that makes them was not released for days, as other parts
stood first.
"""

from dataclasses import replace
from datetime import datetime, timedelta

from demo_db.benches import PACKING
from demo_db.hands import BOSS, SUPERVISOR, Hands
from demo_db.office import Office
from station.floor.office.acts import CancelOrder, CorrectCount, SetFact
from station.floor.packing.acts import ClaimOrder, PutOrderDown, PutPartsBack
from station.floor.shared.queue import CancelBatch
from station.queries.underway import list_queued
from station.shop.facts import Batch, Line, Order
from station.shop.plain import to_plain

CARD, CARDS_FILE, CARD_SET = "073", "022", "025"
WITHOUT_DAYS = 3  # the last days of the demo, today too, on which none are released
THERE = 5  # cards on the rack
LATE = (2, 2, 2, 2)  # sets that each late order wants, the others below
OTHERS = (2, 2, 2, 2, 2, 3)
HOURS_LATE = (44, 22, 20, 2)  # where a late order has to be made up
DAYS_AHEAD = (0, 0, 1, 1, 2, 3)  # where another has to be


def lack_cards(hands: Hands, office: Office, now: datetime) -> None:
    """Brings orders, rack and queues to where the morning is to be."""
    for batch in list_queued(hands.view):
        if batch.cut_file == CARDS_FILE:
            hands.do(BOSS, batch.key, CancelBatch())
    _count_rack(hands)
    for order in _list_wanting(hands):
        _put_back(hands, order)
    wanting = _list_wanting(hands)
    late = [o for o in wanting if o.due < now.isoformat()]
    others = [o for o in wanting if o not in late]
    _fit_orders(hands, office, late, LATE, [now - timedelta(hours=h) for h in HOURS_LATE])
    _fit_orders(hands, office, others, OTHERS, [now + timedelta(days=d, hours=4)
                                                for d in DAYS_AHEAD])  # fmt: skip


def _list_wanting(hands: Hands) -> list[Order]:
    return [o for o in hands.view.shelf(Order, "open", 300) if _find_sets(o)]


def _put_back(hands: Hands, order: Order) -> None:
    """The other parts of an order that was begun go back: without cards it cannot go on."""
    if order.state != "open" or hands.view.stock(place=f"packing/{order.id}"):
        hands.do(PACKING[0], order.key, ClaimOrder())
        hands.do(PACKING[0], order.key, PutPartsBack())
        hands.do(PACKING[0], order.key, PutOrderDown())


def _find_sets(order: Order) -> int:
    return sum(line.quantity - line.short for line in order.lines if line.product == CARD_SET)


def _count_rack(hands: Hands) -> None:
    """Five cards are counted; the book said what chance had left there."""
    place = f"rack/{CARD}"
    lots = [held.batch for held in hands.view.stock(place=place) if held.part == CARD]
    cut = [b.id for b in hands.view.shelf(Batch, "cut", 2000) if b.cut_file == CARDS_FILE]
    lots = lots or cut[-1:]
    kept = "" if "" in lots else next(iter(lots), "")  # of no known batch: what then lies there
    for lot in sorted(lots, key=lambda lot: lot == kept):
        there = THERE if lot == kept else 0
        args = CorrectCount(part=CARD, place=place, batch=lot, counted=there, approved=SUPERVISOR)
        hands.do(BOSS, f"part/{CARD}", args, why="51")


def _fit_orders(
    hands: Hands, office: Office, orders: list[Order], sets: tuple[int, ...], dues: list[datetime]
) -> None:
    """Changes, enters or cancels orders, until one wants each of these numbers of sets."""
    for order in orders[len(sets) :]:
        hands.do(BOSS, order.key, CancelOrder())
    for n, (wanted, due) in enumerate(zip(sets, dues, strict=True)):
        line = Line(product=CARD_SET, quantity=wanted)
        if n < len(orders):
            others = tuple(one for one in orders[n].lines if one.product != CARD_SET)
            _enter(hands, replace(orders[n], lines=(line, *others)))
        else:
            at = due.replace(minute=0, second=0).isoformat(timespec="seconds")
            _enter(hands, Order(id=next(office.numbers), lines=(line,), due=at))


def _enter(hands: Hands, order: Order) -> None:
    hands.do(BOSS, order.key, SetFact(of=order.kind, value=to_plain(order)))
