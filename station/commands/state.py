"""``station state``: the shop as JSON."""

import argparse
import sys

from station import bootstrap
from station.commands.common import make_clock, print_json, require_shop
from station.floor.today.figures import count_day
from station.ledger.ledger import Ledger
from station.queries.batches import find_revision
from station.queries.first_offs import list_open_sizes, list_sizes
from station.queries.looks import list_raised
from station.queries.orders import count_packed, count_promised
from station.queries.routers import find_bed
from station.queries.settings import find_shop
from station.queries.shortage import list_blocking
from station.queries.stock import name_part
from station.queries.underway import count_by_place, list_queue
from station.shop.facts import (
    Batch,
    Bed,
    Cart,
    Concern,
    CutFile,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Router,
)
from station.shop.moves import Held
from station.shop.views import by_part
from station.shop.words import say

Json = dict[str, object]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the option of the command."""
    parser.add_argument("--json", action="store_true", help="the only form")


def run(options: argparse.Namespace) -> int:
    """Prints the shop as JSON."""
    now = make_clock(options)()
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        if ledger.newest_at() > now:
            print(
                f"The clock says {now}, and work was done {ledger.newest_at()}.", file=sys.stderr
            )
        print_json(describe_shop(ledger, now))
    return 0


def describe_shop(ledger: Ledger, now: str) -> Json:
    """Describes the shop as one object."""
    held = Stock(ledger)
    packs = _sort_packs(ledger)
    return {
        "now": now,
        "batches": [_describe_batch(ledger, b, held) for b in ledger.facts(Batch)],
        "rack": _describe_racks(ledger, held),
        "orders": [
            _describe_order(ledger, o, held, packs.get(o.id, [])) for o in ledger.facts(Order)
        ],
        "carts": [_describe_cart(ledger, c) for c in ledger.facts(Cart)],
        "routers": [_describe_router(ledger, r) for r in ledger.facts(Router)],
        "look": _list_looks(ledger, now),
        "firsts": _list_firsts(ledger),
        "not_shared": ledger.not_shared(),
        "today": _describe_day(ledger, now),
    }


def _describe_day(ledger: Ledger, now: str) -> Json:
    """Describes the day up to now: packs that left, pieces that each area passed on."""
    day = count_day(ledger.view, now, find_shop(ledger.view))
    return {"packs_left": day.packs, "parts": day.through}


def _list_firsts(ledger: Ledger) -> list[Json]:
    """Lists what first-offs and batches in doubt wait for: a size to be read, or a look by eye."""
    view = ledger.view
    rows: list[Json] = []
    for bed in ledger.facts(Bed):
        for first in (f for f in bed.firsts if f.state != "agreed"):
            about: Json = {"router": f"R{bed.id}", "batch": first.batch, "sheet": first.sheet,
                           "state": first.state}  # fmt: skip
            sizes = list_open_sizes(first, list_sizes(view, first))
            rows += [{**about, "part": m.part.id, "dimension": m.size.name} for m in sizes]
            rows += [] if sizes else [{**about, "part": "", "dimension": ""}]
    doubts = [(b, d) for b in ledger.facts(Batch) for d in b.doubts]
    return rows + [
        {"router": "", "batch": b.id, "sheet": 0, "state": "doubt", "part": d.part,
         "dimension": d.size}
        for b, d in doubts
    ]  # fmt: skip


def _list_looks(ledger: Ledger, now: str) -> list[Json]:
    """Lists what blocks orders and what else raises itself, then what waits to be settled."""
    blocking: list[Json] = [
        {"kind": "blocks", "text": str(b.words), "since": now, "about": b.standing.part.key}
        for b in list_blocking(ledger.view, now)
    ]
    raised: list[Json] = [
        {"kind": r.kind, "text": str(r.words), "since": r.since or now, "about": ""}
        for r in list_raised(ledger.view, now)
        if r.kind != "blocks"
    ]
    open_ones: list[Json] = [
        {"kind": c.what, "text": str(c.text), "since": c.since, "about": c.about}
        for c in ledger.facts(Concern)
        if not c.settled
    ]
    return blocking + raised + open_ones


class Stock:
    """Holds all balances above zero, by batch and by place."""

    def __init__(self, ledger: Ledger) -> None:
        self.by_batch: dict[str, list[Held]] = {}
        self.by_place: dict[str, list[Held]] = {}
        for held in ledger.balances():
            if held.qty > 0:
                self.by_batch.setdefault(held.batch, []).append(held)
                self.by_place.setdefault(held.place, []).append(held)


def _describe_batch(ledger: Ledger, batch: Batch, stock: Stock) -> Json:
    revision = find_revision(ledger.view, batch)
    cut_file = ledger.view.get(CutFile, batch.cut_file)
    makes = revision.makes() if revision and batch.has_sheets else {}
    places: dict[str, dict[str, int]] = {p: {} for p in makes}
    places |= count_by_place(stock.by_batch.get(batch.id, []))
    return {
        "batch": batch.id,
        "cut_file": cut_file.name if cut_file else batch.cut_file,
        "revision": batch.revision,
        "router": f"R{batch.router}" if batch.router else "",
        "parent": batch.parent or None,
        "copy": batch.copy,
        "sheets": {"planned": batch.sheets, "cut": batch.cut, "spoiled": batch.spoiled},
        "parts": [
            {
                "part": name_part(ledger.view, p),
                "expected": makes.get(p, 0) * batch.sheets,
                "places": found,
            }
            for p, found in places.items()
        ],
        "holds": [*batch.holds, *_list_old_revision(batch, cut_file)],
    }


def _list_old_revision(batch: Batch, cut_file: CutFile | None) -> list[str]:
    """Tells the hold on sheets that are left of a revision that is not approved any more."""
    if cut_file is None or batch.state not in ("queued", "cutting"):
        return []
    if batch.revision == cut_file.approved:
        return []
    left = batch.sheets - batch.cut
    words = say(
        "revision {letter} is not approved: {left} {left|sheet|sheets} held",
        letter=batch.revision,
        left=left,
    )
    return [str(words)]


def _describe_racks(ledger: Ledger, stock: Stock) -> list[Json]:
    promised = count_promised(ledger.view)
    return [
        _describe_rack(ledger, r, stock, promised.get(r.part, 0)) for r in ledger.facts(RackPlace)
    ]


def _describe_rack(ledger: Ledger, rack: RackPlace, stock: Stock, promised: int) -> Json:
    part = ledger.view.get(Part, rack.part)
    return {
        "place": rack.name,
        "part": part.name if part else rack.part,
        "on_hand": sum(h.qty for h in stock.by_place.get(f"rack/{rack.id}", [])),
        "promised": promised,
        "mark": part.mark if part else 0,
    }


def _sort_packs(ledger: Ledger) -> dict[str, list[str]]:
    """Sorts the ids of all packs by their order: a shop has thousands of both."""
    found: dict[str, list[str]] = {}
    for pack in ledger.facts(Pack):
        found.setdefault(pack.order, []).append(pack.id)
    return found


def _describe_order(ledger: Ledger, order: Order, stock: Stock, packs: list[str]) -> Json:
    places = [f"packing/{order.id}", *(f"pack/{pack}" for pack in packs)]
    inside = by_part(tuple(h for p in places for h in stock.by_place.get(p, [])))
    for closed in order.packs:  # those that went on a cart, or left already
        for part, n in closed.contents if not stock.by_place.get(f"pack/{closed.pack}") else ():
            inside[part] = inside.get(part, 0) + n
    gone = order.state in ("packed", "shipped")
    lines = []
    for item, packed in zip(order.lines, count_packed(ledger.view, order, inside), strict=True):
        product = ledger.view.get(Product, item.product)
        lines.append(
            {
                "product": product.name if product else item.product,
                "quantity": item.quantity,
                "packed": item.quantity - item.short if gone else packed,
                "short": item.short,
            }
        )
    return {"order": order.id, "due": order.due, "state": order.state, "lines": lines}


def _describe_cart(ledger: Ledger, cart: Cart) -> Json:
    packs = [p.id for p in ledger.view.shelf(Pack, f"cart/{cart.id}", 500)]
    return {"cart": cart.id, "packs": packs, "state": cart.state}


def _describe_router(ledger: Ledger, router: Router) -> Json:
    bed = find_bed(ledger.view, router.id)
    queue = [b.id for b in list_queue(ledger.view, router.id)]
    return {"router": f"R{router.id}", "state": bed.state, "queue": queue}
