"""What one shift leaves to the next, counted from the books."""

from collections import Counter
from collections.abc import Iterator

from station.shop.facts import Bit, Order, Reason, Shop, Slip
from tests.recount import benches, trade
from tests.recount import figures as fig
from tests.recount.books import Books
from tests.recount.read import Row


def at_popping(books: Books) -> Iterator[Row]:
    """Each sheet that waits to be popped, oldest first."""
    slips = [s for s in books.all(Slip) if s.state == "popping"]
    for slip in sorted(slips, key=lambda s: (s.at, s.id)):
        count = books.count(place=f"popping/{slip.sheet}", batch=slip.batch)
        if count:
            yield slip.batch, f"sheet {slip.sheet}", fig.of(count, "piece")


def at_trimming(books: Books) -> Iterator[Row]:
    """Each batch at the router table, then what is to be made good there."""
    for place in ("trimming", "rework"):
        counts: Counter[str] = Counter()
        for _, batch, _, n in books.lying(place=place):
            counts[batch] += n
        for batch in sorted(counts):
            yield batch, fig.of(counts[batch], "piece")


def open_packs(books: Books) -> Iterator[Row]:
    """Each order with pieces in a pack that is not closed yet."""
    for order in sorted(books.all(Order), key=lambda o: (o.due, o.id)):
        inside = books.count(place=f"packing/{order.id}")
        if inside:
            if order.state == "cancelled":
                yield f"order {order.id}", f"{fig.n(inside)} to put back: it is cancelled"
                continue
            whole = sum(trade.want_open(books, order).values())
            at = f", at station {order.claimed}" if order.claimed else ""
            yield f"order {order.id}", f"{fig.n(inside)} of {fig.n(whole)} in it{at}"


def on_beds(books: Books, now: str) -> Iterator[Row]:
    """What each router has on its bed, since when it stands, what must be done first."""
    for bed, router in benches.beds(books):
        told = [f"batch {bed.batch} is taken on" if bed.batch else "free"]
        if bed.sheet:
            told = [f"batch {bed.batch}, sheet {bed.sheet} on it"]
        if bed.state == "stopped":
            reason = books.get(Reason, bed.stop)
            since = fig.with_day(bed.stopped, now)
            told.append(f"stopped since {since}: {reason.words if reason else ''}")
        elif bed.sheet:
            end = benches.ends(bed)
            off = "should be off since" if end < now else "off at"
            told = [f"{told[0]}, {off} {fig.with_day(end, now)}"]
        told += [f"first-off {f.state}" for f in bed.firsts if f.state != "agreed"]
        told += ["zero is due"] if bed.zero else []
        told += ["re-home it"] if bed.rehome else []
        yield router.name, fig.joined(told)


def share_used(books: Books) -> Iterator[tuple[Bit, float]]:
    """Each bit in use that is near the end of its life, or past it, and the share of it."""
    for bit in books.all(Bit):
        worn = sum(
            mm for (_, what), mm in books.at.get(f"bit/{bit.id}", {}).items() if what == "mm"
        )
        used = worn / 1000 / bit.life_m
        shop = books.get(Shop, "shop") or Shop(id="shop")
        if bit.router and used >= shop.bit_told_at / 100:
            yield bit, used


def worn_bits(books: Books) -> Iterator[Row]:
    """Each of them as it stands on the screen."""
    for bit, used in share_used(books):
        yield f"Bit {bit.id}", bit.words, f"{round(100 * used)} % of its life"
