"""Questions about orders: what one needs, what of it is packed, whether it is ready or late.

Pieces are counted by part. What is approved to be owed (`short`) is no more needed.
"""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from station.queries.batches import keep_free, keep_held
from station.queries.stock import list_on_rack
from station.shop.facts import Order, Pack, Part, Product, RackPlace
from station.shop.moves import Held, head, tail
from station.shop.views import View, by_part, total
from station.shop.words import Say, say, several

MOST = 1000  # open orders that are looked through
PRODUCTS = 10_000
FIRST = 50  # of them that are read at first; all, where the walk goes on


class Need(NamedTuple):
    """One part of an order: wanted and in the pack; where it lies and how many may be taken.

    `held` are the pieces at its rack place whose batch is held: they stay there.

    `assumed` is the number of batches that its pieces in the pack may be from: the book
    takes the oldest first, though nobody scanned a batch. 0 or 1: there is no doubt.
    """

    part: Part
    wanted: int
    inside: int
    place: RackPlace | None
    on_rack: int
    assumed: int = 0
    held: tuple[Held, ...] = ()

    @property
    def to_go(self) -> int:
        """Pieces that are still to be taken."""
        return max(0, self.wanted - self.inside)

    @property
    def extra(self) -> int:
        """Pieces in the pack that the order does not want."""
        return max(0, self.inside - self.wanted)

    @property
    def lacking(self) -> int:
        """Pieces still to be taken that the rack does not have free."""
        return max(0, self.to_go - self.on_rack)

    @property
    def place_name(self) -> Say | str:
        """The rack place in words."""
        return self.place.name if self.place else say("no place")


def count_wanted(view: View, order: Order) -> dict[str, int]:
    """Counts the pieces of each part that an order wants in its open pack, those in it too."""
    sums: dict[str, int] = {}
    for line in order.lines:
        product = view.get(Product, line.product)
        for part, count in product.parts if product else ():
            sums[part] = sums.get(part, 0) + count * (line.quantity - line.short)
    for part, count in count_closed(order).items():
        sums[part] = max(0, sums.get(part, 0) - count)
    return sums


def count_closed(order: Order) -> dict[str, int]:
    """Counts the pieces of each part in closed packs of an order that goes in several."""
    sums: dict[str, int] = {}
    for closed in order.packs:
        for part, count in closed.contents:
            sums[part] = sums.get(part, 0) + count
    return sums


def list_needs(view: View, order: Order) -> tuple[Need, ...]:
    """Lists every part of an order and of its pack, in the order of a walk along the rack."""
    inside = view.stock(place=f"packing/{order.id}")
    counts = {**dict.fromkeys(by_part(inside), 0), **count_wanted(view, order)}
    found = [
        _need(view, part, count, tuple(h for h in inside if h.part == number))
        for number, count in counts.items()
        if (part := view.get(Part, number))
    ]
    return tuple(sorted(found, key=rank_along_the_rack))


def _need(view: View, part: Part, wanted: int, inside: tuple[Held, ...]) -> Need:
    lying = list_on_rack(view, part)
    batches = {h.batch for h in (*inside, *lying)}
    return Need(
        part,
        wanted,
        total(inside),
        view.get(RackPlace, part.rack) if part.rack else None,
        total(keep_free(view, lying)),
        len(batches) if inside else 0,
        keep_held(view, lying),
    )


def rank_along_the_rack(need: Need) -> tuple[bool, str, str]:
    """Ranks needs in the order of a walk along the rack."""
    return (need.place is None, need.place.name if need.place else "", need.part.id)


def find_need(view: View, order: Order, part: str) -> Need | None:
    """Finds what an order needs of one part; None: it is neither wanted nor in the pack."""
    inside = tuple(h for h in view.stock(place=f"packing/{order.id}") if h.part == part)
    wanted, found = count_wanted(view, order).get(part), view.get(Part, part)
    if found is None or (wanted is None and not inside):
        return None
    return _need(view, found, wanted or 0, inside)


def count_inside(view: View, order: Order) -> int:
    """Counts the pieces that lie in an order's open pack."""
    return total(view.stock(place=f"packing/{order.id}"))


def find_unknown(view: View, order: Order) -> str:
    """Finds a product or part that an order names and nobody has entered; else nothing."""
    for line in order.lines:
        product = view.get(Product, line.product)
        if product is None:
            return line.product
        for part, _ in product.parts:
            if view.get(Part, part) is None:
                return part
    return ""


def list_lacking(view: View, order: Order) -> tuple[Need, ...]:
    """Lists the parts that keep an order from being packed whole."""
    return tuple(n for n in list_needs(view, order) if n.lacking)


def is_ready(view: View, order: Order) -> bool:
    """Says whether the whole order can be packed now."""
    return not find_unknown(view, order) and not list_lacking(view, order)


def is_complete(view: View, order: Order) -> bool:
    """Says whether all that an order wants lies in its open pack, no more and nothing held."""
    found = list_needs(view, order)
    inside = any(n.inside for n in found)
    whole = inside and not any(n.to_go or n.extra for n in found)
    return order.to_pack and whole and not keep_held(view, view.stock(place=f"packing/{order.id}"))


def list_owed(view: View, order: Order) -> tuple[Order, ...]:
    """Lists the orders that were made of what an order owes, the oldest first."""
    found: list[Order] = []
    while owed := view.get(Order, f"{order.id}-{len(found) + 1}"):
        found.append(owed)
    return tuple(found)


def find_owed(view: View, order: Order) -> Order | None:
    """Finds the order of what an order owes that nobody has begun; None: there is none."""
    for owed in list_owed(view, order):
        if owed.state == "open" and not view.stock(place=f"packing/{owed.id}"):
            return owed
    return None


def is_late(order: Order, now: str) -> bool:
    """Says whether an order should have left by now."""
    return order.due < now


def count_packed(view: View, order: Order, inside: Mapping[str, int]) -> tuple[int, ...]:
    """Counts for each line the whole products that the pieces `inside` its packs make up.

    A piece is counted once, for the first line that takes it.
    """
    left, counts = dict(inside), []
    for line in order.lines:
        product = view.get(Product, line.product)
        parts = product.parts if product else ()
        whole = min((left.get(part, 0) // count for part, count in parts), default=0)
        whole = min(whole, line.quantity - line.short)
        left |= {part: left.get(part, 0) - whole * count for part, count in parts}
        counts.append(whole)
    return tuple(counts)


def count_promised(view: View) -> dict[str, int]:
    """Counts the pieces of each part that orders still to be packed want from the rack."""
    promised: dict[str, int] = {}
    for order in view.shelf(Order, "open", MOST):
        inside = by_part(view.stock(place=f"packing/{order.id}"))
        for part, count in count_wanted(view, order).items():
            promised[part] = promised.get(part, 0) + max(0, count - inside.get(part, 0))
    return promised


def list_losing(view: View, part: Part, there: int, fewer: int) -> tuple[Order, ...]:
    """Lists the orders that would lack a part if so many fewer were `there` for all of them.

    The earliest due takes first; those that lack it already are not among them.
    """
    losing = []
    for order, to_go in list_takers(view, part.id):
        there -= to_go
        if there < 0:
            break
        if there - fewer < 0:
            losing.append(order)
    return tuple(losing)


def list_takers(view: View, part: str) -> Iterator[tuple[Order, int]]:
    """Lists the open orders that still take pieces of a part, by due time, and how many."""
    with_it = {
        product.id: each
        for product in view.shelf(Product, "all", PRODUCTS)
        for number, each in product.parts
        if number == part
    }
    for order in _walk_open(view) if with_it else ():
        wanted = 0
        for line in order.lines:
            if line.product in with_it:
                wanted += with_it[line.product] * (line.quantity - line.short)
        if not wanted:
            continue
        inside = total(view.stock(place=f"packing/{order.id}"), part=part)
        inside += count_closed(order).get(part, 0)
        if (to_go := wanted - inside) > 0:
            yield order, to_go


def _walk_open(view: View) -> Iterator[Order]:
    """Walks the open orders by due time; not many more are read than it walks."""
    walked, limit = 0, FIRST
    while walked < limit:
        found = view.shelf(Order, "open", limit)
        yield from found[walked:]
        if len(found) < limit:
            break
        walked, limit = limit, MOST


def say_void(pack: Pack) -> Say:
    """Says that the label of a pack that was opened again counts no more."""
    if pack.product:
        return say("The card of pack {pack} is void: it was opened", pack=pack.id)
    return say("The label of pack {pack} is void: it was opened again", pack=pack.id)


def say_packed_anew(view: View, pack: Pack) -> Say:
    """Says where the pieces of a pack that was opened again are by now."""
    if pack.product and pack.order:
        return say("Throw it away. Order {order} took what was in it.", order=pack.order)
    if not pack.order:
        return say("Throw its card away: its parts are on the rack again.")
    order = view.get(Order, pack.order)
    if order and order.packs and not order.to_pack:
        return say("Throw it away. Order {order} is in packs {packs} now.", order=order.id,
                   packs=several([closed.pack for closed in order.packs]))  # fmt: skip
    past = view.last(f"order/{pack.order}", "close_pack")
    closed = [tail(w.key) for w in past.sets if head(w.key) == "pack"] if past else []
    if closed and closed[0] != pack.id and not (order and order.packs):
        return say("Throw it away. Order {order} is in pack {pack} now.", order=pack.order,
                   pack=closed[0])  # fmt: skip
    if order and order.state == "cancelled":
        return say("Throw it away. Order {order} is cancelled.", order=pack.order)
    return say("Tear it off. Order {order} is packed anew.", order=pack.order)


def count_due(view: View, until: str) -> int:
    """Counts the pieces that orders still to be packed, due by then, want in closed packs."""

    def count_all(view: View) -> int:
        due = (o for o in view.shelf(Order, "open", MOST) if o.due <= until)
        return sum(sum(count_wanted(view, order).values()) for order in due)

    return view.once(f"orders/due/{until}", count_all)
