"""What must stand on the screens of popping, trimming and of the cart, counted from the books."""

from collections import Counter
from collections.abc import Iterator
from datetime import datetime, timedelta

from station.shop.facts import (
    Batch,
    Bed,
    Cart,
    CutFile,
    Order,
    Pack,
    Part,
    Pile,
    RackPlace,
    Router,
    Slip,
)
from tests.recount import figures as fig
from tests.recount import trade
from tests.recount.books import Books
from tests.recount.read import Row


def words(books: Books, batch: Batch) -> str:
    """What a batch's cut file is called."""
    found = books.get(CutFile, batch.cut_file)
    return found.words if found else batch.cut_file


# --- popping


def waiting_at_popping(books: Books, now: str, in_hand: str) -> Iterator[Row]:
    """Each batch with uncounted sheets: how long the oldest waits, which, how many parts."""
    slips: dict[str, list[Slip]] = {}
    there = sorted(
        (s for s in books.all(Slip) if s.state == "popping"), key=lambda s: (s.at, s.id)
    )
    for slip in there:
        if books.count(place=f"popping/{slip.sheet}", batch=slip.batch):
            slips.setdefault(slip.batch, []).append(slip)
    for number, rows in slips.items():
        batch = books.get(Batch, number)
        if batch is None or number == in_hand:
            continue
        parts = sum(books.count(place=f"popping/{s.sheet}", batch=number) for s in rows)
        named = [str(s.sheet) for s in rows]
        sheets = fig.joined(named) if len(named) <= 6 else ", ".join(named[:6]) + " …"
        noun = "sheet" if len(rows) == 1 else "sheets"
        waited = fig.minutes(rows[0].at, now)
        held = trade.why_held(books, batch)
        line = f"{words(books, batch)} · {noun} {sheets} · {fig.of(parts, 'part')}"
        since = (
            f"{fig.n(waited)} min" if waited < 600 else f"since {fig.with_day(rows[0].at, now)}"
        )
        yield number, since, line, f"held: {held}" if held else first_off_due(books, rows)


def first_off_due(books: Books, slips: list[Slip]) -> str:
    """Which of the sheets is a first-off that nobody has measured yet; of what came of one too."""
    for slip in slips:
        number = slip.batch
        while number:
            batch = books.get(Batch, number)
            for bed in books.all(Bed):
                for first in bed.firsts:
                    again = first.state == "wrong" and bool(batch and batch.holds)
                    its_own = (first.batch, first.sheet) == (number, slip.sheet)
                    if its_own and (first.state == "due" or again):
                        return f"first-off is due of sheet {slip.sheet}"
            number = batch.parent if batch else ""
    return ""


def comes_next(books: Books, now: str) -> Iterator[Row]:
    """Each router with a sheet on its bed, and when that should be off."""
    cutting = [(bed, router) for bed, router in beds(books) if bed.sheet and bed.state != "free"]
    for bed, router in sorted(cutting, key=comes_when):
        end = ends(bed)
        about = "due" if end < now else f"about {fig.with_day(end, now)}"
        about = "stopped" if bed.state == "stopped" else about
        yield router.name, f"{bed.batch}, sheet {bed.sheet}", about


def comes_when(pair: tuple[Bed, Router]) -> tuple[bool, str]:
    """Sorts beds by when their sheet comes off; who knows when one comes that stands still."""
    stopped = pair[0].state == "stopped"
    return stopped, "" if stopped else ends(pair[0])


def beds(books: Books) -> list[tuple[Bed, Router]]:
    """Routers in use with what they do, by number."""
    pairs = [(books.get(Bed, r.id), r) for r in books.all(Router) if r.active]
    return [(bed, r) for bed, r in pairs if bed is not None]


def ends(bed: Bed) -> str:
    """When a sheet should be off the bed: its start, its minutes, its stops so far."""
    begun = datetime.fromisoformat(bed.started)
    off = begun + timedelta(minutes=bed.minutes, seconds=bed.paused_s)
    return off.isoformat(timespec="seconds")


def passed_on_today(books: Books, now: str) -> Iterator[Row]:
    """Good pieces of each part that were passed on from popping today, most first."""
    yield from _sum_today(books, now, [("popping", to) for to in ("trimming", "rack", "packing")])


def _sum_today(books: Books, now: str, ways: list[tuple[str, str]]) -> Iterator[Row]:
    counts: Counter[str] = Counter()
    for entry in books.done(now[:10]):
        for m in entry.moves:
            if m.heads in ways:
                counts[m.part] += m.qty
    for part, count in sorted(counts.items(), key=lambda row: (-row[1], row[0])):
        yield trade.name(books, part), f"{fig.n(count)} good"


# --- trimming


def waiting_at(books: Books, place: str, in_hand: str = "") -> Iterator[Row]:
    """Each batch with pieces at the router table, by due time."""
    piles = [p for p in books.all(Pile) if p.area == place and not p.done]
    for pile in sorted(piles, key=lambda p: (p.due or "9999", p.since)):
        batch = books.get(Batch, pile.batch)
        count = books.count(place=place, batch=pile.batch)
        if not batch or not count or batch.id == in_hand:
            continue
        held = trade.why_held(books, batch)
        due = due_or_order(books, batch, pile.due)
        line = f"held: {held}" if held else due
        yield pile.batch, fig.of(count, "part"), f"{words(books, batch)} · {line}", ""


def due_or_order(books: Books, batch: Batch, due: str) -> str:
    """The order that a batch is cut for, while that takes pieces; else when it is due."""
    order = books.get(Order, batch.order)
    if order and order.state not in ("packed", "shipped", "cancelled"):
        return f"for order {order.id}"
    return f"due {fig.day(due)} {fig.clock(due)}" if due else "for the rack"


def below_mark(books: Books) -> Iterator[Row]:
    """Each part with fewer on the rack than its mark."""
    low = []
    for part in books.all(Part):
        place = books.get(RackPlace, part.rack)
        count = trade.on_rack(books, part.id)
        if part.active and place and count < part.mark:
            low.append(
                (
                    count / part.mark,
                    part.id,
                    (part.name, place.name, f"{fig.n(count)} of {fig.n(part.mark)}"),
                )
            )
    for _, _, row in sorted(low):
        yield row


def on_the_rack_today(books: Books, now: str) -> Iterator[Row]:
    """Good pieces of each part that were put on the rack today, most first."""
    yield from _sum_today(books, now, [("trimming", "rack"), ("rework", "rack")])


# --- carts

DOOR = {"door": "at the door"}


def packs_on(books: Books, cart: Cart) -> list[Pack]:
    """The packs on a cart."""
    return [p for p in books.all(Pack) if p.state == "cart" and p.cart == cart.id]


def goes(books: Books, cart: Cart, now: str) -> str:
    """When a cart goes, or when it last left if that was today or it has no time of its own."""
    if cart.left[:10] == now[:10]:
        return f"last left {fig.clock(cart.left)}"
    if not cart.goes:
        return f"last left {fig.with_day(cart.left, now)}" if cart.left else ""
    if cart.goes < now[11:16]:
        loaded = packs_on(books, cart) or waiting_packs(books)
        return f"{'late:' if loaded else 'usually'} {cart.goes}"
    return f"goes {cart.goes}"


def carts(books: Books, now: str) -> Iterator[Row]:
    """Each cart with its packs."""
    for cart in books.all(Cart):
        yield (
            cart.name,
            fig.of(len(packs_on(books, cart)), "pack"),
            goes(books, cart, now),
            DOOR.get(cart.state, ""),
        )


def waiting_packs(books: Books) -> list[Pack]:
    """Closed packs that are on no cart."""
    return [p for p in books.all(Pack) if p.state == "packed"]


def packs_that_wait(books: Books) -> Iterator[Row]:
    """Each of them with its order."""
    for pack in waiting_packs(books):
        yield pack.id, f"order {pack.order}"


def carts_beside(books: Books, now: str) -> Iterator[Row]:
    """The carts as packing sees them."""
    for cart in books.all(Cart):
        yield (
            cart.name,
            ", ".join(
                filter(None, (fig.of(len(packs_on(books, cart)), "pack"), goes(books, cart, now)))
            ),
        )
    yield "packs for a cart", fig.n(len(waiting_packs(books)))


# --- packing


def stands(books: Books) -> list[tuple[Order, dict[str, int]]]:
    """Each open order and the pieces that it would lack if it alone were packed now."""
    return books.once("stands", lambda: list(_stand(books)))


def _stand(books: Books) -> Iterator[tuple[Order, dict[str, int]]]:
    parts = {p for o in trade.open_orders(books) for p in trade.to_take(books, o)}
    free = {part: trade.on_rack(books, part, free=True) for part in parts}
    for order in trade.open_orders(books):
        rows = trade.to_take(books, order).items()
        yield order, {part: n - free[part] for part, n in rows if n > free[part]}


def blocked_by(books: Books) -> dict[str, int]:
    """How many open orders lack each part."""
    counts: Counter[str] = Counter()
    for _, lacks in stands(books):
        counts.update(trade.name(books, part) for part in lacks)
    return counts
