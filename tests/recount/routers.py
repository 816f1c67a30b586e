"""What must stand beside a router, counted from the books."""

from collections import Counter
from collections.abc import Iterator

from station.shop.facts import Batch, Bed, Bit, Lot, Material, Router, Slip
from tests.recount import benches, trade
from tests.recount import figures as fig
from tests.recount.books import Books
from tests.recount.read import Row
from tests.recount.state import queue

OFF = ("used", "between")  # where a sheet goes that came off its bed cut


def find_router(books: Books, where: str) -> str:
    """The router that a screen shows, by the name over it."""
    name = where.partition(" · ")[0]
    return next((r.id for r in books.all(Router) if r.name == name), "")


def next_on(books: Books, where: str) -> Iterator[Row]:
    """The batches that this router has not taken yet, in their order."""
    bed = books.get(Bed, find_router(books, where))
    for number in queue(books, find_router(books, where)):
        batch = books.get(Batch, number)
        if batch is None or (bed and bed.batch == number):
            continue
        revision, held = trade.revision_of(books, batch), trade.why_held(books, batch)
        material = books.get(Material, revision.material) if revision else None
        left = batch.sheets - batch.cut
        sheets = "sheet" if batch.sheets == 1 else "sheets"
        of_material = material.name if material else ""
        sheets = f"{left} of {batch.sheets} {sheets}"
        line = f"{benches.words(books, batch)} · {sheets} · {of_material}"
        yield number, "held" if held else "* min a sheet", line, held or why(batch)


def why(batch: Batch) -> str:
    """Why a batch is cut, as it was said when it was released, and when that was."""
    if not batch.why:
        return ""
    return f"{batch.why} (as of {fig.day(batch.released)} {fig.clock(batch.released)})"


def cut_today(books: Books, where: str, now: str) -> Iterator[Row]:
    """The sheets that came off this router's bed today, newest first."""
    router, off = find_router(books, where), []
    bed: Bed | None = None
    for entry in books.entries:
        came = any(
            m.part == "sheet" and m.frm == f"bed/{router}" and m.to in OFF for m in entry.moves
        )
        heads = {m.heads for m in entry.moves}
        came &= ("cut", "spoiled") not in heads or ("cut", "popping") in heads  # some is whole
        if (
            came
            and bed
            and entry.at[:10] == now[:10]
            and not entry.reverses
            and books.counts(entry.id)
        ):
            stops = bed.paused_s + (fig.seconds(bed.stopped, entry.at) if bed.stopped else 0)
            took = fig.seconds(bed.started, entry.at) - stops
            off.append(
                (fig.clock(entry.at), f"{bed.batch}, sheet {bed.sheet}", f"{took / 60:.0f} min")
            )
        for after in entry.after(Bed):
            bed = after if after.id == router and after.sheet else bed
        if entry.kind == "found_shop":  # what came off before the books began
            off += [
                (fig.clock(s.at), f"{s.batch}, sheet {s.sheet}", f"{s.minutes:.0f} min")
                for s in sorted(entry.after(Slip), key=lambda s: (s.at, s.id))
                if s.router == router and s.at[:10] == now[:10]
            ]
    yield from reversed(off)


def bits(books: Books, where: str, hand: str = "") -> Iterator[Row]:
    """Each bit in this router: metres here, in all, left of its life."""
    router = books.get(Router, find_router(books, where))
    bed = books.get(Bed, router.id) if router else None
    for _, number in sorted(bed.bits) if bed and router else ():
        bit = books.get(Bit, number)
        if bit is None or router is None:
            continue
        worn = books.at.get(f"bit/{number}", Counter())
        here = (
            sum(mm for (of, what), mm in worn.items() if what == "mm" and of == router.id) / 1000
        )
        whole = sum(mm for (_, what), mm in worn.items() if what == "mm") / 1000
        left = (
            f"{fig.n(bit.life_m - whole)} m left"
            if bit.state == "good"
            else f"{bit.state}: change it"
        )
        if bit.state == "good" and whole >= bit.life_m:
            left = f"{fig.n(whole - bit.life_m)} m over: change it"
        for lasts in (left, *_lasts(books, bed, bit, bit.life_m - whole, hand)):
            yield (
                f"Bit no. {number}: {fig.n(here)} m on {router.name}",
                f"{fig.n(whole)} m in all",
                lasts,
            )


def _lasts(books: Books, bed: Bed, bit: Bit, left: float, hand: str) -> Iterator[str]:
    """After which sheet of the batch a bit is changed, where it does not last to its end."""
    batch = books.get(Batch, bed.batch or hand)
    for run in trade.runs_of(books, batch) if batch else ():
        for use in run.bits:
            if batch and use.diameter_mm == bit.diameter_mm and use.cut_mm:
                last = batch.cut + int(max(0.0, left) / (use.cut_mm / 1000))
                if last <= batch.cut:
                    yield "will not last a sheet"
                elif last < batch.sheets:
                    yield f"change after sheet {last}"


def spoilboard(books: Books, where: str) -> Iterator[Row]:
    """Sheets cut into the spoilboard since it was flat, and how many more it bears."""
    router = books.get(Router, find_router(books, where))
    if router is None:
        return
    cut = books.at.get(f"spoilboard/{router.id}", Counter())["", "pass"]
    passes = "pass" if cut == 1 else "passes"
    left = max(0, router.flat_after - cut)
    yield f"Spoilboard: {fig.n(cut)} {passes}", "", fig.of(left, "sheet") + " left"


def lots(books: Books, where: str) -> Iterator[Row]:
    """Lots of the sheet good that is wanted, with the sheets in the store, oldest first."""
    bed = books.get(Bed, find_router(books, where))
    batch = books.get(Batch, bed.batch) if bed else None
    revision = trade.revision_of(books, batch) if batch else None
    found = [x for x in books.all(Lot) if revision and x.material == revision.material]
    for lot in sorted(found, key=lambda x: (x.received, x.id)):
        count = books.sheets("store", lot.id)
        if count > 0:
            yield lot.id, fig.of(count, "sheet"), lot.mark, ""
