"""What is counted again on each screen, and how it differs from what stands there."""

from collections.abc import Callable, Iterator
from itertools import chain
from typing import NamedTuple

from tests.recount import benches, left, orders_said, routers, today, trade, work
from tests.recount import figures as fig
from tests.recount.census import Cells, list_figures
from tests.recount.read import Row, Shown
from tests.recount.rules import Look
from tests.recount.sentences import compare_text

Count = Callable[[Look], list[Row]]

# area, kind of block, its title: what must stand there
LISTS: dict[tuple[str, str, str], Callable[[Look], Iterator[Row]]] = {
    ("loading", "header", "Batch"): lambda a: work.batch_at_loading(a.books, a.where, a.hand),
    ("loading", "header", "Stopped since"): lambda a: work.stop_at_loading(
        a.books, a.where, a.now
    ),
    ("trimming", "header", "Batch"): lambda a: work.batch_at_trimming(a.books, a.hand, a.now),
    ("packing", "header", "Order"): lambda a: work.order_in_hand(a.books, a.hand, a.now),
    ("packing", "pairs", ""): lambda a: work.lines_in_hand(a.books, a.hand),
    ("packing", "table", "part | take from | in the pack"): lambda a: work.parts_in_hand(
        a.books, a.hand
    ),
    ("cart", "header", "Cart"): lambda a: work.cart_in_hand(a.books, a.hand, a.now),
    ("today", "places", ""): lambda a: today.places(a.books, a.now),
    ("loading", "cards", "Queue of this router"): lambda a: routers.next_on(a.books, a.where),
    ("", "list", "At popping"): lambda a: left.at_popping(a.books),
    ("", "list", "At trimming"): lambda a: left.at_trimming(a.books),
    ("", "list", "Open packs"): lambda a: left.open_packs(a.books),
    ("", "list", "Routers"): lambda a: left.on_beds(a.books, a.now),
    ("", "list", "Bits near their end"): lambda a: left.worn_bits(a.books),
    ("popping", "cards", "Waiting here"): lambda a: benches.waiting_at_popping(
        a.books, a.now, a.hand.subject
    ),
    ("trimming", "cards", "Waiting here"): lambda a: benches.waiting_at(
        a.books, "trimming", a.hand.subject
    ),
    ("loading", "cards", "Next on this router"): lambda a: routers.next_on(a.books, a.where),
    ("loading", "list", "Cut today: {n} {n|sheet|sheets}"): lambda a: routers.cut_today(
        a.books, a.where, a.now
    ),
    ("loading", "meter", "Bit no. {bit}: {here} m on {router}"): lambda a: routers.bits(
        a.books, a.where, a.hand.subject
    ),
    ("loading", "meter", "Spoilboard: {n} {n|pass|passes}"): lambda a: routers.spoilboard(
        a.books, a.where
    ),
    ("loading", "cards", "Lots of {material}"): lambda a: routers.lots(a.books, a.where),
    ("popping", "list", "Comes next"): lambda a: benches.comes_next(a.books, a.now),
    ("popping", "list", "Passed on today"): lambda a: benches.passed_on_today(a.books, a.now),
    ("trimming", "cards", "To be made good"): lambda a: benches.waiting_at(
        a.books, "rework", a.hand.subject
    ),
    ("trimming", "list", "The rack is below its minimum"): lambda a: benches.below_mark(a.books),
    ("trimming", "list", "On the rack today"): lambda a: benches.on_the_rack_today(a.books, a.now),
    ("cart", "cards", "Carts"): lambda a: benches.carts(a.books, a.now),
    ("cart", "list", "Packs that wait: {n}"): lambda a: benches.packs_that_wait(a.books),
    ("packing", "pairs", "Carts"): lambda a: benches.carts_beside(a.books, a.now),
}


# Other blocks bear the same name: those that are counted look like this.
LOOKS_LIKE = {
    ("loading", "header", "Batch"): " a sheet, ",
    ("packing", "header", "Order"): ", ",
    ("packing", "pairs", ""): " whole",
}


def is_counted(area: str, shown: Shown) -> bool:
    """Says whether a block is counted again."""
    key = area, shown.kind, shown.title
    known = key in LISTS or ("", shown.kind, shown.title) in LISTS
    return known and LOOKS_LIKE.get(key, "") in " ".join(chain(*shown.rows))


class Compared(NamedTuple):
    """What was compared of a block, and how it differs."""

    cells: Cells
    told: list[str]


def compare_lists(look: Look, shown: Shown) -> Compared:
    """Compares a list with what must stand there; what it leaves out, it says."""
    count = LISTS.get((look.hand.area, shown.kind, shown.title)) or LISTS.get(
        ("", shown.kind, shown.title)
    )
    on_page = shown.kind == "header" and look.hand.aside.what  # of a thing, not of the work
    if count is None or on_page or not is_counted(look.hand.area, shown):
        return Compared(set(), [])
    due = list(count(look))
    where = f"{look.hand.area}, {shown.whole or shown.title}"
    told, cells = [], {(-1, 0)}
    for n, row in enumerate(shown.rows):
        found = next((d for d in due if agrees(row, d)), None)
        cells |= {(n, k) for k in range(len(row)) if found is None or "*" not in found[k]}
        if found is None:
            near = [d for d in due if d[0] == row[0]]
            told.append(f"{where}: {row} stands there, counted {near or 'none of it'}")
    return Compared(cells, told + list(_compare_whole(where, shown, due, wrong=bool(told))))


def _compare_whole(where: str, shown: Shown, due: list[Row], *, wrong: bool) -> Iterator[str]:
    """Tells where a list has too few or too many, or is in another order."""
    if shown.kind in ("meter", "table"):  # a meter is a block of its own; six parts of an order
        return  # stand in a table at once, those still to go first: its rows are counted alone
    said = len(shown.rows) + shown.more if shown.total is None else shown.total
    if said != len(due):
        yield f"{where}: {len(shown.rows)} shown, {said} said to be there, counted {len(due)}"
    elif not wrong and not _in_order(shown.rows, due):
        yield f"{where}: in another order: {shown.rows[:6]}, counted {due[:6]}"


def agrees(row: Row, due: Row) -> bool:
    """Says whether a row is as counted; a star stands for what is not counted again."""
    return len(row) == len(due) and all(
        a == b or ("*" in b and a.endswith(b.partition("*")[2]))
        for a, b in zip(row, due, strict=True)
    )


def _in_order(rows: list[Row], due: list[Row]) -> bool:
    """Says whether rows stand as counted, one after the other, from any row on.

    Parts of which as many went on may stand either way round.
    """
    last = len(due) - len(rows)
    pieces = [row[-1] for row in rows]
    if rows and all(text.endswith(" good") for text in pieces):
        return pieces == [row[-1] for row in due[: len(rows)]]
    return any(all(map(agrees, rows, due[first:])) for first in range(last + 1))


def compare_block(look: Look, shown: Shown) -> Compared:
    """Compares a block with what must stand there."""
    if shown.kind == "flow":
        return _compare_flow(look, shown)
    if shown.kind == "list" and shown.title == "Waiting to pack":
        cells = {(n, k) for n, row in enumerate(shown.rows) for k in range(len(row))}
        found = Compared(cells, list(_compare_waiting(look, shown)))
    else:
        found = compare_lists(look, shown)
    return _compare_texts(look, shown, found)


def _compare_texts(look: Look, shown: Shown, found: Compared) -> Compared:
    """Compares the texts with figures that no list has compared, one by one."""
    cells, told = set(found.cells), list(found.told)
    for (n, k), figure in list_figures(look.hand.area, shown):
        if (n, k) not in cells:
            row = shown.rows[n] if n >= 0 else (shown.whole,)
            counted, wrong = compare_text(
                look, shown, row, max(k, 0) if n >= 0 else -1, figure.text
            )
            if counted:
                cells.add((n, k))
            told += [f"{look.hand.area}, {wrong}"] if wrong else []
    return Compared(cells, told)


def _compare_flow(look: Look, shown: Shown) -> Compared:
    """Compares a line of the flow, point by point, or the height of its plan."""
    cells = {(n, k) for n, row in enumerate(shown.rows) for k in range(len(row))}
    if shown.title in ("plan", "ends"):
        plan = fig.n(today.flow(look.books, look.now)["cut"] + today.left_to_cut(look.books)[1])
        wrong = shown.title == "plan" and shown.rows[0][0] != plan.replace("\u202f", "")
        return Compared(cells, [f"flow: plan {shown.rows[0]}, counted {plan}"] if wrong else [])
    name = shown.whole.partition(" ")[0]
    due = [(f"{at:.4f}", str(n)) for at, n in today.points(look.books, look.now, name)]
    whole = f"{name} {fig.n(int(due[-1][1]))}"
    right = shown.rows == due and shown.whole == whole
    told = [] if right else [f"flow: {shown.whole} {shown.rows}, counted {whole} {due}"]
    return Compared({*cells, (-1, 0)}, told)


def _compare_waiting(look: Look, shown: Shown) -> Iterator[str]:
    """Each order with how it stands; several that lack one part may be one row of that part."""
    stands = {o.id: o for o in trade.open_orders(look.books)}
    lacking = benches.blocked_by(look.books)
    for name, state, due, *_ in shown.rows:
        if state.startswith("blocks "):
            told = int(state.split()[1])
            if told > lacking.get(name, 0):
                yield f"packing: {name} {state}, counted {lacking.get(name, 0)} that lack it"
        elif name not in stands:
            yield f"packing: order {name} waits, counted as no open order"
        elif due != fig.at_or_day(stands[name].due, look.now):
            yield f"packing: order {name} due {due}, counted {stands[name].due}"
        elif state not in (told := list(orders_said.tell_state(look, stands[name]))):
            yield f"packing: order {name} {state}, counted {told}"
