"""What is counted again on each screen, and how it differs from what stands there."""

from collections.abc import Callable, Iterator
from itertools import chain
from typing import NamedTuple

from station.shop.faces import Face
from station.shop.rooms import Hand
from tests.recount import benches, left, needs_look, routers, today, work
from tests.recount import figures as fig
from tests.recount.books import Books
from tests.recount.read import Row, Shown, read_face

Hands = Hand[object]


class Look(NamedTuple):
    """The books, the hand that the screen is shown to, and the time."""

    books: Books
    hand: Hands
    now: str
    where: str  # what stands over the screen: the router, the bench


Count = Callable[[Look], list[Row]]

# area, kind of block, its title: what must stand there
LISTS: dict[tuple[str, str, str], Callable[[Look], Iterator[Row]]] = {
    ("loading", "header", "Batch"): lambda a: work.batch_at_loading(a.books, a.where, a.now),
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
        a.books, a.where
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
    ("trimming", "list", "The rack is below its mark"): lambda a: benches.below_mark(a.books),
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


def compare_lists(look: Look, shown: Shown) -> Iterator[str]:
    """Tells how a list differs from what must stand there; what it leaves out, it says."""
    count = LISTS.get((look.hand.area, shown.kind, shown.title)) or LISTS.get(
        ("", shown.kind, shown.title)
    )
    if count is None or not is_counted(look.hand.area, shown):
        return
    due = list(count(look))
    where = f"{look.hand.area}, {shown.whole or shown.title}"
    wrong = [row for row in shown.rows if not any(agrees(row, d) for d in due)]
    for row in wrong:
        near = [d for d in due if d[0] == row[0]]
        yield f"{where}: {row} stands there, counted {near or 'none of it'}"
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
    """Says whether rows stand as counted, one after the other, from any row on."""
    last = len(due) - len(rows)
    return any(all(map(agrees, rows, due[first:])) for first in range(last + 1))


def compare_screen(look: Look, face: Face) -> Iterator[str]:
    """Tells every difference of a screen."""
    for shown in read_face(face):
        if shown.kind == "flow":
            yield from _compare_flow(shown, today.flow(look.books, look.now))
        elif shown.kind == "list" and shown.title == "Waiting to pack":
            yield from _compare_waiting(look, shown)
        elif shown.kind == "table" and shown.title.startswith("Needs a look"):
            yield from needs_look.compare(look.books, look.now, shown)
        else:
            yield from compare_lists(look, shown)


def _compare_flow(shown: Shown, flow: dict[str, int]) -> Iterator[str]:
    name, _, _ = shown.whole.partition(" ")
    if name in flow and (
        shown.rows[-1][1] != str(flow[name]) or shown.whole != f"{name} {fig.n(flow[name])}"
    ):
        yield f"flow: {shown.whole}, {shown.rows[-1]}, counted {flow[name]}"


def _compare_waiting(look: Look, shown: Shown) -> Iterator[str]:
    """Each order with how it stands; several that lack one part may be one row of that part."""
    stands = benches.can_leave(look.books, look.now)
    lacking = benches.blocked_by(look.books)
    for name, state, due, *_ in shown.rows:
        if state.startswith("blocks "):
            told = int(state.split()[1])
            if told > lacking.get(name, 0):
                yield f"packing: {name} {state}, counted {lacking.get(name, 0)} that lack it"
        elif name not in stands:
            yield f"packing: order {name} waits, counted as no open order"
        elif due != stands[name][1]:
            yield f"packing: order {name} due {due}, counted {stands[name][1]}"
        elif not state.startswith(("put down", "taken")) and state not in stands[name][0]:
            yield f"packing: order {name} {state}, counted {stands[name][0]}"
