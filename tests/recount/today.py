"""What must stand under Shop today, counted from the books."""

from collections.abc import Iterator
from fractions import Fraction

from station.shop.facts import Batch, Cart, Pack, Shop
from tests.recount import benches, trade
from tests.recount import figures as fig
from tests.recount.books import Books
from tests.recount.read import Row

OFF = {  # kinds of place that pieces leave and go to when a work area is done with them
    "popping": (("popping", "trimming"), ("popping", "rework"), ("popping", "rack")),
    "trimming": (
        ("trimming", "rack"),
        ("rework", "rack"),
        ("trimming", "packing"),
        ("rework", "packing"),
    ),
    "packing": (("packing", "pack"),),
}
BACK = {
    "packing": (("pack", "packing"),),
    "packed": (("pack", "packing"),),
}  # a pack that is opened again is not packed


def done_today(books: Books, area: str, now: str) -> int:
    """Pieces that a work area has passed on today."""
    off = sum(books.moved(now[:10], now, way) for way in OFF[area])
    back = sum(books.moved(now[:10], now, way) for way in BACK.get(area, ()))
    return off - back


def sheets_today(books: Books, now: str) -> int:
    """Sheets that came off a bed today, spoiled ones too."""
    return sum(
        m.qty
        for e in books.done(now[:10], now)
        for m in e.moves
        if m.part == "sheet" and m.heads[0] == "bed" and m.heads[1] == "used"
    )


def left_to_cut(books: Books) -> tuple[int, int]:
    """Sheets that batches still have to cut, and the pieces on them."""
    sheets = pieces = 0
    for batch in books.all(Batch):
        if batch.state in ("queued", "cutting") and trade.has_sheets(batch):
            left = batch.sheets - batch.cut
            sheets += left
            pieces += left * sum(trade.makes(books, batch).values())
    return sheets, pieces


def places(books: Books, now: str) -> Iterator[Row]:
    """The row of work areas: done, of how many, an hour, waiting."""
    sheets, pieces = left_to_cut(books)
    cut = sheets_today(books, now)
    popped, trimmed = done_today(books, "popping", now), done_today(books, "trimming", now)
    at_popping = books.count(head="popping")
    at_trimming = books.count(head="trimming") + books.count(head="rework")
    packed = done_today(books, "packing", now)
    due = [o for o in trade.open_orders(books) if o.due[:10] <= now[:10]]
    to_pack = sum(trade.not_closed(books, o) for o in due)
    left = packs_left(books, now)
    hours = hours_so_far(books, now)

    def row(name: str, done: int, unit: str, waiting: int | None) -> Row:
        tenths = name == "Loading"  # sheets are few: a tenth tells them apart
        rate = say_rate(done, hours, digits=int(tenths))
        return name, fig.n(done), unit, rate, "", "" if waiting is None else str(waiting)

    yield row("Loading", cut, f"of {fig.of(cut + sheets, 'sheet')}", None)
    plan = popped + at_popping + pieces
    yield row("Popping", popped, f"of {fig.of(plan, 'part')}", at_popping)
    plan = trimmed + at_trimming + at_popping + pieces
    yield row("Trimming", trimmed, f"of {fig.of(plan, 'part')}", at_trimming)
    yield row("Packing", packed, f"of {fig.of(packed + to_pack, 'part')}", None)
    wait = len(benches.waiting_packs(books))
    unit = "pack sent" if left == 1 else "packs sent"
    yield "Cart", fig.n(left), unit, next_to_go(books, now), "", str(wait)


def say_rate(done: int, hours: float, *, digits: int) -> str:
    """How many an hour; half way between two figures, either: doubles meet there."""
    rate = Fraction(done * 3600, round(hours * 3600))
    if rate * 10**digits % 1 == Fraction(1, 2):
        return "* an hour"
    return f"{float(rate):.{digits}f} an hour" if digits else f"{fig.n(rate)} an hour"


def packs_left(books: Books, now: str) -> int:
    """Packs that left today."""
    return sum(1 for p in books.all(Pack) if p.state == "shipped" and p.left[:10] == now[:10])


def next_to_go(books: Books, now: str) -> str:
    """When the next cart goes of those that have not gone today."""
    here = [c for c in books.all(Cart) if c.goes and c.left[:10] != now[:10]]
    times = sorted(c.goes for c in here if c.goes >= now[11:16])
    late = min((c.goes for c in here if c.goes < now[11:16]), default="")
    there = benches.waiting_packs(books) or any(benches.packs_on(books, c) for c in here)
    if late and there:
        return f"late: {late}"
    return f"goes {times[0]}" if times else ""


def _hours_of_work(books: Books, now: str) -> set[str]:
    """The hours of today in which pieces went on."""
    ways = {
        ("cut", "popping"),
        ("cart", "shipped"),
        *(way for ways in OFF.values() for way in ways),
    }
    moves = ((e.at[:13], m) for e in books.done(now[:10], now) for m in e.moves)
    return {hour for hour, m in moves if m.heads in ways}


def hours_so_far(books: Books, now: str) -> float:
    """Hours from the first work of today until now."""
    shop = books.get(Shop, "shop")
    shop = shop or Shop(id="shop")
    end = int(shop.day_ends[:2]) + int(shop.day_ends[3:5]) / 60
    start, here = first_hour(books, now), int(now[11:13]) + int(now[14:16]) / 60
    until = here if start >= end else min(here, end)  # a day is over when it ends
    return max(0.25, until - start)  # a quarter of an hour at least


def flow(books: Books, now: str) -> dict[str, int]:
    """Pieces of today by the line of the flow that they stand in."""
    return {
        "cut": books.moved(now[:10], now, ("cut", "popping")),
        "popped": done_today(books, "popping", now),
        "trimmed": done_today(books, "trimming", now),
        "packed": done_today(books, "packing", now),
    }


WAYS = {"cut": (("cut", "popping"),), "popped": OFF["popping"], "trimmed": OFF["trimming"],
        "packed": OFF["packing"]}  # fmt: skip


def points(books: Books, now: str, name: str) -> Iterator[tuple[float, int]]:
    """A line of the flow: at the start, at each full hour since and now, pieces until then."""
    here = int(now[11:13]) + int(now[14:16]) / 60
    start = first_hour(books, now)
    yield start, 0
    for hour in range(int(start), int(max(here, start)) + 1):
        until = f"{now[:10]}T{hour:02d}:59:59"
        on = sum(books.moved_until(now[:10], until, way) for way in WAYS[name])
        off = sum(books.moved_until(now[:10], until, way) for way in BACK.get(name, ()))
        yield min(hour + 1, max(here, start)), on - off


def first_hour(books: Books, now: str) -> float:
    """When work began: in the hour of the first pieces, not before the shop's day in that hour."""
    shop = books.get(Shop, "shop") or Shop(id="shop")
    begins = int(shop.day_starts[:2]) + int(shop.day_starts[3:5]) / 60
    hours = [int(hour[11:13]) for hour in _hours_of_work(books, now)]
    first = min(hours) if hours else begins
    return begins if int(first) == int(begins) else first
