"""What the commands print: state and codes as JSON, and the text station's lines."""

from collections.abc import Callable, Iterator
from queue import Empty, SimpleQueue
from threading import Thread
from time import monotonic, sleep
from typing import TYPE_CHECKING, TextIO

from station.clock import Clock
from station.desk.desk import Desk, Given
from station.desk.replies import line
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.queries.batches import find_revision
from station.queries.orders import count_packed, count_promised
from station.shop.acts import Answer, good, refuse
from station.shop.cards import BUTTONS, DIGITS, ZONES
from station.shop.codes import usable, write
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    Cart,
    Concern,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Reason,
    Router,
    Worker,
)
from station.shop.moves import Held
from station.shop.views import by_part
from station.shop.words import say

if TYPE_CHECKING:
    from station.sharing.loop import Loop

LAST_WORDS = 3.0  # seconds
Json = dict[str, object]


# --- the text station


def text_station(
    desk: Desk,
    clock: Clock,
    lines: TextIO,
    out: Callable[[str], None],
    beside: Callable[[str], None],
    loop: "Loop | None" = None,
) -> None:
    """Takes a line at a time and prints one JSON line for each, after its commit.

    A station that shares goes on with that between the lines, and a moment after the last.
    What keeps it from sharing is said `beside`: no line asked for it.
    """
    if loop is not None:
        loop.trouble = lambda fault: beside(f"{fault} Sharing tries again by itself.")
    for raw in lines if loop is None else _meanwhile(lines, loop, beside):
        text = raw.strip()
        if text and not text.startswith("#"):
            given = told(desk, clock, text)
            out(line(given.answer, given.entry, given.moves))
            if loop is not None:
                loop.kick()


def _meanwhile(lines: TextIO, loop: "Loop", beside: Callable[[str], None]) -> Iterator[str]:
    """The lines as they come; while none comes, the talk with the shop goes on."""
    come: SimpleQueue[str | None] = SimpleQueue()

    def read() -> None:
        for raw in lines:
            come.put(raw)
        come.put(None)

    Thread(target=read, daemon=True).start()
    while True:
        try:
            raw = come.get(timeout=0.01)
        except Empty:
            _step(loop, beside)
            continue
        if raw is None:
            break
        _step(loop, beside)
        yield raw
    _last_words(loop, beside)


def _last_words(loop: "Loop", beside: Callable[[str], None]) -> None:
    """A moment for what is not shared yet; away from the shop it waits for the next start."""
    end = monotonic() + LAST_WORDS
    while monotonic() < end and loop.ledger.not_shared():
        _step(loop, beside)
        sleep(0.005)
    loop.close()


def _step(loop: "Loop", beside: Callable[[str], None]) -> None:
    """A step of the talk with the shop. What kept it from going on is over: that is said."""
    before = loop.fault
    loop.step()
    if before and not loop.fault:
        beside("Sharing goes on again.")


def told(desk: Desk, clock: Clock, text: str) -> Given:
    """One line of the text station: an order to the station (``@…``) or an input."""
    if not text.startswith("@"):
        return desk.take(text)
    try:
        return _ordered(desk, clock, text)
    except Fault as fault:  # where the station stands cannot be kept: it stays there
        return Given(
            refuse(say("{what}", what=str(fault)), say("The work in hand stays as it was."))
        )


def _ordered(desk: Desk, clock: Clock, text: str) -> Given:
    """What became of an order to the station."""
    word, _, rest = text[1:].partition(" ")
    rest = rest.strip()
    if word == "at":
        return _at(clock, rest)
    if word == "place":
        return _place(desk, rest)
    if word in ("area", "router", "bench", "worker"):
        return _where(desk, word, rest)
    return Given(
        refuse(
            say("There is no order @{word}", word=word),
            say("Use @area, @router, @bench, @worker, @at or @place."),
        )
    )


def _at(clock: Clock, text: str) -> Given:
    try:
        clock.pin(text)
    except ValueError:
        return Given(
            refuse(say("{text} is no time", text=text), say("Write it as 2026-11-25T10:42:00."))
        )
    return Given(_done(f"The clock says {clock()}"))


def _place(desk: Desk, text: str) -> Given:
    try:
        x, y = (float(part) for part in text.split())
    except ValueError:
        return Given(refuse(say("A place is two numbers in mm"), say("Write @place 1200 300.")))
    return desk.touch(x, y)


def _where(desk: Desk, word: str, value: str) -> Given:
    if word == "area" and value not in desk.rooms:
        return Given(refuse(say("There is no work area {area}", area=value)))
    if word == "worker":
        if desk.ledger.view.get(Worker, value) is None:
            return Given(refuse(say("There is no worker {id}", id=value)))
        desk.sign_in(value)
    else:
        _move(desk, word, value)
    return Given(_done(f"{word} {value}"))


def _move(desk: Desk, word: str, value: str) -> None:
    """Puts the desk at an area, a router or a bench."""
    if word == "area":
        desk.at(area=value)
    elif word == "router":
        desk.at(router=value.upper().removeprefix("R"))
    else:
        desk.at(bench=value)


def _done(text: str) -> Answer:
    return good(say("{text}", text=text))


# --- codes


def codes_list(ledger: Ledger) -> list[Json]:
    """Every code that can be scanned now: cards, things and travellers."""
    return list(_cards()) + list(_things(ledger)) + list(_travellers(ledger))


def _code(
    kind: str,
    number: str,
    meaning: str,
    *,
    area: str = "",
    copy: str = "",
    sheet: int = 0,
    named: str = "",
) -> Iterator[Json]:
    if usable(kind, number, copy, sheet):
        row: Json = {
            "code": write(kind, number, copy, sheet),
            "kind": named or kind,
            "meaning": meaning,
        }
        yield row | ({"area": area} if area else {})


def _cards() -> Iterator[Json]:
    for card in BUTTONS.values():
        yield from _code("button", card.number, card.words, area=card.area)
    for char in DIGITS:
        yield from _code("digit", char, char)
    for zone, words in ZONES.items():
        yield from _code("zone", zone, words)


_MEANINGS: tuple[tuple[type[Fact], str, Callable[[Fact], str]], ...] = (
    (Worker, "worker", lambda f: "supervisor" if getattr(f, "supervisor", False) else "worker"),
    (Part, "part", lambda f: f"{getattr(f, 'name', '')} {getattr(f, 'words', '')}"),
    (RackPlace, "rack", lambda f: f"{getattr(f, 'name', '')}"),
    (Order, "order", lambda f: f"due {getattr(f, 'due', '')}"),
    (Product, "product", lambda f: f"{getattr(f, 'words', '')}"),
    (Pack, "pack", lambda f: f"order {getattr(f, 'order', '')}"),
    (Cart, "cart", lambda f: f"{getattr(f, 'name', '')}"),
    (Router, "router", lambda f: f"{getattr(f, 'name', '')}"),
    (Bit, "bit", lambda f: f"{getattr(f, 'words', '')}"),
    (Lot, "lot", lambda f: f"material {getattr(f, 'material', '')}"),
    (Reason, "reason", lambda f: f"{getattr(f, 'use', '')}: {getattr(f, 'words', '')}"),
    (CutFile, "cutfile", lambda f: f"{getattr(f, 'name', '')}"),
    (Mailer, "mailer", lambda f: f"{getattr(f, 'name', '')}"),
)


def _things(ledger: Ledger) -> Iterator[Json]:
    for kind, name, meaning in _MEANINGS:
        for fact in ledger.facts(kind):
            yield from _code(name, fact.id, meaning(fact))


def _travellers(ledger: Ledger) -> Iterator[Json]:
    """Travellers of batches still under way, and a slip for each of their sheets."""
    for batch in ledger.facts(Batch):
        if batch.state == "cancelled":
            continue
        meaning = f"traveller of batch {batch.id}, copy {batch.copy}"
        yield from _code("batch", batch.id, meaning, copy=batch.copy)
        for sheet in range(1, batch.sheets + 1):
            yield from _code(
                "batch",
                batch.id,
                f"batch {batch.id}, sheet {sheet}",
                copy=batch.copy,
                sheet=sheet,
                named="slip",
            )


# --- state


def state(ledger: Ledger, now: str) -> Json:
    """The shop as one object; see the commands page of the design."""
    held = Stock(ledger)
    return {
        "now": now,
        "batches": [_batch(ledger, b, held) for b in ledger.facts(Batch)],
        "rack": _racks(ledger, held),
        "orders": [_order(ledger, o, held) for o in ledger.facts(Order)],
        "carts": [_cart(ledger, c) for c in ledger.facts(Cart)],
        "routers": [_router(ledger, r) for r in ledger.facts(Router)],
        "look": [
            {"kind": c.what, "text": str(c.text), "since": c.since}
            for c in ledger.facts(Concern)
            if not c.settled
        ],
        "not_shared": ledger.not_shared(),
    }


class Stock:
    """All balances above zero, by batch and by place."""

    def __init__(self, ledger: Ledger) -> None:
        self.by_batch: dict[str, list[Held]] = {}
        self.by_place: dict[str, list[Held]] = {}
        for held in ledger.balances():
            if held.qty > 0:
                self.by_batch.setdefault(held.batch, []).append(held)
                self.by_place.setdefault(held.place, []).append(held)


def _name(ledger: Ledger, part: str) -> str:
    found = ledger.view.get(Part, part)
    return found.name if found else part


def _batch(ledger: Ledger, batch: Batch, stock: Stock) -> Json:
    revision = find_revision(ledger.view, batch)
    cut_file = ledger.view.get(CutFile, batch.cut_file)
    makes = revision.makes() if revision and not batch.parent else {}
    places: dict[str, dict[str, int]] = {p: {} for p in makes}
    for held in stock.by_batch.get(batch.id, []):
        here = places.setdefault(held.part, {})
        here[held.place] = here.get(held.place, 0) + held.qty
    return {
        "batch": batch.id,
        "cut_file": cut_file.name if cut_file else batch.cut_file,
        "revision": batch.revision,
        "router": f"R{batch.router}" if batch.router else "",
        "parent": batch.parent or None,
        "copy": batch.copy,
        "sheets": {"planned": batch.sheets, "cut": batch.cut, "spoiled": batch.spoiled},
        "parts": [
            {"part": _name(ledger, p), "expected": makes.get(p, 0) * batch.sheets, "places": found}
            for p, found in places.items()
        ],
        "holds": [*batch.holds, *_old_revision(batch, cut_file)],
    }


def _old_revision(batch: Batch, cut_file: CutFile | None) -> list[str]:
    """The hold on sheets that are left of a revision that is not approved any more."""
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


def _racks(ledger: Ledger, stock: Stock) -> list[Json]:
    promised = count_promised(ledger.view)
    return [_rack(ledger, r, stock, promised.get(r.part, 0)) for r in ledger.facts(RackPlace)]


def _rack(ledger: Ledger, rack: RackPlace, stock: Stock, promised: int) -> Json:
    part = ledger.view.get(Part, rack.part)
    return {
        "place": rack.name,
        "part": part.name if part else rack.part,
        "on_hand": sum(h.qty for h in stock.by_place.get(f"rack/{rack.id}", [])),
        "promised": promised,
        "mark": part.mark if part else 0,
    }


def _order(ledger: Ledger, order: Order, stock: Stock) -> Json:
    places = [
        f"packing/{order.id}",
        *(f"pack/{p.id}" for p in ledger.facts(Pack) if p.order == order.id),
    ]
    inside = by_part(tuple(h for p in places for h in stock.by_place.get(p, [])))
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


def _cart(ledger: Ledger, cart: Cart) -> Json:
    packs = [p.id for p in ledger.view.shelf(Pack, f"cart/{cart.id}", 500)]
    return {"cart": cart.id, "packs": packs, "state": cart.state}


def _router(ledger: Ledger, router: Router) -> Json:
    bed = ledger.view.get(Bed, router.id)
    queue = [b.id for b in ledger.view.shelf(Batch, f"queue/{router.id}", 200)]
    return {"router": f"R{router.id}", "state": bed.state if bed else "free", "queue": queue}
