"""What an open question is about, large enough to be seen from where the work lies.

The act's subject and its figures say it: the batch with its sheet, the order with its pieces,
the part.
"""

from station.desk.draft import OpenQuestion
from station.queries.batches import describe_batch, find_revision
from station.shop.acts import plain_of
from station.shop.counts import read_counts, sum_by_fate
from station.shop.faces import Block, Cell, Header, PartDrawing, Row, SheetDrawing, Table, Text
from station.shop.facts import Batch, Order, Part, Router
from station.shop.moves import tail
from station.shop.views import View, by_part
from station.shop.words import say


def concerned(waiting: OpenQuestion, view: View) -> tuple[Block, ...]:
    """The subject of the act that waits; nothing where it is of no such kind."""
    kind, name = waiting.do.subject.partition("/")[0], tail(waiting.do.subject)
    if kind in ("batch", "slip"):
        number, _, sheet = name.partition("-")
        batch = view.get(Batch, number)
        return _batch(batch, sheet, waiting, view) if batch else ()
    order = view.get(Order, name) if kind == "order" else None
    if order:
        return _order(order, view)
    part = view.get(Part, name) if kind == "part" else None
    counted = plain_of(waiting.do.args).get("counted")
    return _part(part, counted) if part and isinstance(counted, int) else ()


def _batch(batch: Batch, sheet: str, waiting: OpenQuestion, view: View) -> tuple[Block, ...]:
    """The batch; the figures of a count, or else the sheet that is cut."""
    router = view.get(Router, batch.router)
    header = Header(
        label=say("Batch"),
        number=batch.id,
        title=describe_batch(view, batch),
        note=router.name if router else "",
        right_label=say("sheet") if sheet else "",
        right=say("{n} of {most}", n=sheet, most=batch.sheets) if sheet else "",
    )
    if counts := read_counts(plain_of(waiting.do.args).get("parts")):
        return header, _counts(counts, view)
    revision = find_revision(view, batch)
    return (header, SheetDrawing(revision=revision)) if revision else (header,)


def _counts(counts: dict[str, dict[str, int]], view: View) -> Table:
    """The figures that would be recorded."""
    rows = []
    for part, row in counts.items():
        figures = (say("{n}", n=n) for n in sum_by_fate(row).values())
        rows.append(_row(part, view, *figures))
    heads = (say("part"), say("good"), say("spoiled"), say("missing"), say("rework"))
    return Table(columns=heads, rows=tuple(rows))


def _order(order: Order, view: View) -> tuple[Block, ...]:
    """The order, and every piece that lies in its pack."""
    inside = by_part(view.stock(place=f"packing/{order.id}"))
    header = Header(
        label=say("Order"),
        number=order.id,
        title=say("{n} {n|part|parts}", n=sum(inside.values())),
    )
    rows = tuple(_row(part, view, say("{n}", n=n)) for part, n in inside.items())
    return header, Table(columns=(say("part"), say("in the pack")), rows=rows)


def _row(id: str, view: View, *figures: Text) -> Row:
    """A part, drawn small, and its figures."""
    part = view.get(Part, id)
    return Row(
        title=part.name if part else id,
        note=part.words if part else "",
        shape=part.shape if part else None,
        cells=tuple(Cell(text=figure, bold=True) for figure in figures),
    )


def _part(part: Part, counted: int) -> tuple[Block, ...]:
    """The part, drawn, and how many of it were counted."""
    header = Header(
        label=say("counted"),
        number=str(counted),
        title=part.name,
        note=part.words,
    )
    return header, PartDrawing(part=part)
