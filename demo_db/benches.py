"""A day at the demo shop's benches: popping, trimming, packing and the cart."""

from collections.abc import Callable, Iterable
from datetime import timedelta

from demo_db.hands import BOSS, Hands, Process, Who
from station.floor.anywhere.acts import FindParts, HoldBatch, NewCopy, Recount, SplitBatch
from station.floor.cart.acts import CheckPack, GoToDoor, Leave, LoadCart, UnloadCart
from station.floor.office.acts import CancelOrder
from station.floor.packing.acts import (
    ClaimOrder,
    ClosePack,
    PickPart,
    PutPartsBack,
    SendShort,
    WaitForPart,
)
from station.floor.popping.acts import PassOn
from station.floor.shared.recounts import RecountPlace
from station.floor.trimming.acts import CheckMaster, PutOnRack
from station.queries.batches import find_hold
from station.queries.first_offs import find_unmeasured
from station.queries.orders import count_wanted, find_owed
from station.queries.stock import list_free_on_rack, list_on_rack
from station.queries.underway import count_underway
from station.shop.facts import Batch, Cart, Order, Pack, Part, Pile, Slip
from station.shop.moves import Held
from station.shop.views import View, by_part, total

POPPING = (Who("04", "3"),)
TRIMMING = (Who("05", "4"), Who("07", "4"))
PACKING = (Who("06", "5"), Who("08", "7"))
PACKER = PACKING[0]  # who loads the carts and counts places too
PLACES = ("top left", "top right", "middle", "bottom left", "bottom right")
SPOILT = ("01", "01", "02", "04", "05")

IN_ONE_GO = 160  # pieces that are trimmed before they are brought to the rack
STANDING = 3  # the newest packs stand at the bench until the cart comes by again
SOON = timedelta(hours=4)  # before an order is due, when what lacks is looked for
EARLY = timedelta(hours=96)  # an order is packed no earlier before it is due
OFF = (0, 0, 0, 0, 0, -2, -1, -1, 1)  # how far from the book a place is found that is counted

Counts = dict[str, dict[str, int]]
Find = Callable[[View, Part], tuple[Held, ...]]


def benches(hands: Hands) -> list[Process]:
    """Everybody who works behind the routers today."""
    return [
        *(Popping(hands, who).run() for who in POPPING),
        *(Trimming(hands, who).run() for who in TRIMMING),
        *(Packing(hands, who).run() for who in PACKING),
        Carts(hands).run(),
        _recounts(hands),
    ]


class Popping:
    """Sheet after sheet, the longest wait first."""

    def __init__(self, hands: Hands, who: Who) -> None:
        self.hands, self.who = hands, who

    def run(self) -> Process:
        """Until the day ends."""
        yield self.hands.minutes(5, 15)
        while self.hands.left() > 5:
            slip = self._next()
            if slip is None:
                yield self.hands.minutes(4, 9)
                continue
            lying = self.hands.view.stock(batch=slip.batch, place=f"popping/{slip.sheet}")
            yield 6 + total(lying) * 0.15
            yield from self._pass_on(slip)

    def _next(self) -> Slip | None:
        for slip in self.hands.view.shelf(Slip, "popping", 20):
            waits = find_unmeasured(self.hands.view, slip.batch, slip.sheet)
            if waits is None and find_hold(self.hands.view, slip.batch) is None:
                return slip
        return None

    def _pass_on(self, slip: Slip) -> Process:
        """Counted by exception; now and then the wrong sheet, taken back."""
        hands = self.hands
        lying = hands.view.stock(batch=slip.batch, place=f"popping/{slip.sheet}")
        if not lying:
            return
        counts = counted(hands, lying, "21")
        where = {p: self._place(row) for p, row in counts.items() if len(row) > 1}
        args = PassOn(slips=(slip.id,), parts=counts, where=where)
        rework = any(c.startswith("rework") for row in counts.values() for c in row)
        done = hands.do(self.who, f"batch/{slip.batch}", args,
                        numbers=("batch",) if rework else ())  # fmt: skip
        if done.ok and not rework and hands.fault("wrong sheet", 0.006):
            yield 1
            hands.undo(self.who, done, f"batch/{slip.batch}")
        if done.ok and hands.chance(0.5):
            self._find(slip.batch)

    def _place(self, row: dict[str, int]) -> dict[str, tuple[str, ...]]:
        """All that is wrong with a part lay in one zone of the sheet."""
        zone = self.hands.rng.choice(PLACES)
        return {counter: (zone,) for counter in row if counter != "good"}

    def _find(self, batch: str) -> None:
        """A missing piece turns up under the bench."""
        for part, count in by_part(self.hands.view.stock(batch=batch, place="missing")).items():
            args = FindParts(part=part, quantity=max(1, count // 2))
            self.hands.do(self.who, f"batch/{batch}", args)


def counted(hands: Hands, lying: Iterable[Held], again: str) -> Counts:
    """Nearly all good; some spoiled, missing, or to be made good for the reason `again`."""
    counts: Counts = {}
    for part, count in by_part(tuple(lying)).items():
        row: dict[str, int] = {}
        if hands.chance(0.22):
            row[f"spoiled/{hands.rng.choice(SPOILT)}"] = hands.rng.randint(1, 3)
        if hands.chance(0.06):
            row["missing"] = hands.rng.randint(1, 4)
        if hands.chance(0.03):
            row[f"rework/{again}"] = hands.rng.randint(2, 6)
        if sum(row.values()) >= count:
            row = {}
        counts[part] = {"good": count - sum(row.values()), **row}
    return counts


class Trimming:
    """Pile after pile by due time, then what is to be made good."""

    def __init__(self, hands: Hands, who: Who) -> None:
        self.hands, self.who = hands, who

    def run(self) -> Process:
        """Until the day ends."""
        yield self.hands.minutes(10, 30)
        while self.hands.left() > 5:
            pile = self._next()
            if pile is None:
                yield self.hands.minutes(4, 9)
                continue
            yield from self._pile(pile)

    def _next(self) -> Pile | None:
        view = self.hands.view
        for area in ("trimming", "rework"):
            piles = view.shelf(Pile, area, 20)
            for pile in piles[:: -1 if self.who == TRIMMING[1] else 1]:
                lying = view.stock(batch=pile.batch, place=area)
                if lying and find_hold(view, pile.batch) is None:
                    return pile
        return None

    def _pile(self, pile: Pile) -> Process:
        hands, subject = self.hands, f"batch/{pile.batch}"
        batch = hands.view.get(Batch, pile.batch)
        lying = hands.view.stock(batch=pile.batch, place=pile.area)
        yield 6 + total(_take_some(lying)) * 0.22
        lying = _take_some(hands.view.stock(batch=pile.batch, place=pile.area))
        if not lying or batch is None:
            return
        self._compare(lying[0].part, pile.batch)
        if pile.area == "trimming" and lying[0].qty > 40 and hands.fault("split", 0.01):
            split = SplitBatch(part=lying[0].part, quantity=20, area="trimming")
            hands.do(self.who, subject, split, numbers=("batch",))
            return
        if hands.fault("hold", 0.004):
            hands.do(self.who, subject, HoldBatch(why="stubs torn"))
            return
        if hands.fault("paper", 0.006):  # the paper went astray
            hands.do(self.who, subject, NewCopy())
        counts = counted(hands, lying, "22")
        if batch.tries:
            counts = {p: {c: n for c, n in row.items() if not c.startswith("rework")}
                      for p, row in counts.items()}  # fmt: skip
        rework = any(c.startswith("rework") for row in counts.values() for c in row)
        args = PutOnRack(parts=counts)
        hands.do(self.who, subject, args, numbers=("batch",) if rework else ())

    def _compare(self, part: str, batch: str) -> None:
        """A piece against its master, with a reading now and then."""
        hands = self.hands
        if not hands.chance(0.5):
            return
        known = hands.view.get(Part, part)
        args = CheckMaster(batch=batch, agrees=True)
        if known and known.sizes:
            size = known.sizes[0]
            spread = (size.high_mm - size.low_mm) / 9
            reading = round(hands.rng.gauss(size.nominal_mm, spread), 2)
            args = CheckMaster(batch=batch, agrees=True, reading_mm=reading)
        hands.do(self.who, f"part/{part}", args)


def _take_some(lying: tuple[Held, ...]) -> tuple[Held, ...]:
    """As much of a pile as is trimmed in one go."""
    room, taken = IN_ONE_GO, []
    for held in lying:
        if room:
            taken.append(held._replace(qty=min(room, held.qty)))
            room -= taken[-1].qty
    return tuple(taken)


class Packing:
    """Orders by due time, where the rack holds all of them."""

    def __init__(self, hands: Hands, who: Who) -> None:
        self.hands, self.who = hands, who

    def run(self) -> Process:
        """Until the day ends."""
        yield self.hands.minutes(15, 40)
        while self.hands.left() > 5:
            order = self._next() or self._lacking()
            if order is None:
                yield self.hands.minutes(5, 12)
                continue
            yield from self._pack(order)

    def _next(self) -> Order | None:
        """The one that was begun yesterday, else the first of which all lies on the rack."""
        latest = (self.hands.at + EARLY).isoformat(timespec="seconds")
        for order in self.hands.view.shelf(Order, "open", 60):
            if order.due > latest:
                break
            mine = order.claimed in ("", self.who.station)
            if mine and not self._lacks(order) and not self._is_held(order):
                return order
        return None

    def _is_held(self, order: Order) -> bool:
        """Whether a piece of its pack is held."""
        inside = self.hands.view.stock(place=f"packing/{order.id}")
        return any(find_hold(self.hands.view, held.batch) for held in inside)

    def _lacking(self) -> Order | None:
        """One that is due soon and begun though a part of it is still under way."""
        latest = (self.hands.at + SOON).isoformat(timespec="seconds")
        for order in self.hands.view.shelf(Order, "open", 20):
            lacks = self._lacks(order) if order.state == "open" and order.due < latest else ()
            if len(lacks) == 1 and len(order.lines) > 1:
                coming = count_underway(self.hands.view, lacks[0], order.id).all
                if coming and self.hands.fault("wait", 0.5):
                    return order
        return None

    def _to_go(self, order: Order) -> dict[str, int]:
        """What is still wanted of each part."""
        inside = by_part(self.hands.view.stock(place=f"packing/{order.id}"))
        known = self.hands.view.get(Order, order.id) or order
        wanted = count_wanted(self.hands.view, known)
        return {p: n - inside.get(p, 0) for p, n in wanted.items() if n > inside.get(p, 0)}

    def _lacks(self, order: Order) -> list[str]:
        """The parts of which fewer lie on the rack than are still wanted."""
        return [p for p, n in self._to_go(order).items() if self._on_rack(p) < n]

    def _on_rack(self, part: str, find: Find = list_free_on_rack) -> int:
        known = self.hands.view.get(Part, part)
        return total(find(self.hands.view, known)) if known else 0

    def _pack(self, order: Order) -> Process:
        hands = self.hands
        if not hands.do(self.who, order.key, ClaimOrder()).ok:
            yield 2
            return
        yield from self._pick(order)
        if hands.fault("wrong places", 0.012):  # all of it back, again
            hands.do(self.who, order.key, PutPartsBack())
            yield from self._pick(order)
        if self._to_go(order):
            return
        yield hands.minutes(3.0, 6.0)
        hands.do(self.who, order.key, ClosePack(), numbers=("pack",))

    def _pick(self, order: Order) -> Process:
        """To the place of each part and back, until one of them lacks."""
        for part, count in self._to_go(order).items():
            yield self.hands.minutes(2.3, 4.3) + count * 0.03
            if self.hands.chance(0.05):
                self._count(order, part)
            if part in self._lacks(order) and not self._short(order, part):
                return
            self.hands.do(self.who, order.key, PickPart(part=part))

    def _count(self, order: Order, part: str) -> None:
        """The whole place is counted: mostly the book agrees, else it is off by a piece or two."""
        there = max(0, self._on_rack(part, list_on_rack) + self.hands.rng.choice(OFF))
        args = RecountPlace(part=part, counted=there, order=order.id)
        self.hands.do(self.who, order.key, args, why="51")

    def _short(self, order: Order, part: str) -> bool:
        """Fewer lie there than are wanted: wait for what is under way, or send it short.

        True: what lies there can be taken.
        """
        hands = self.hands
        if hands.do(self.who, order.key, WaitForPart(part=part)).ok:
            return False
        if not hands.fault("short", 0.1):
            return False  # it is gone on with once more is there
        hands.do(self.who, order.key, SendShort(part=part))
        if owed := find_owed(hands.view, order):  # this customer does without what is owed
            with hands.beside():
                hands.do(BOSS, owed.key, CancelOrder())
        return part in self._to_go(order)


class Carts:
    """Packs onto the cart through the day; it leaves twice."""

    def __init__(self, hands: Hands) -> None:
        self.hands = hands

    def run(self) -> Process:
        """Until the day ends."""
        goes = {cart.id: cart.goes for cart in self.hands.view.shelf(Cart, "all")}
        shares = (0.45, 0.9)  # of the day, when each cart leaves
        whole = self.hands.left()
        for (cart, _), share in zip(goes.items(), shares, strict=False):
            while 1 - self.hands.left() / whole < share:
                yield self.hands.minutes(20, 35)
                self._load(cart)
            yield from self._leave(cart)

    def _load(self, cart: str) -> None:
        for pack in self.hands.view.shelf(Pack, "packed", 40)[:-STANDING]:
            self.hands.do(PACKER, pack.key, LoadCart(cart=cart))

    def _leave(self, cart: str) -> Process:
        hands = self.hands
        if not hands.do(PACKER, f"cart/{cart}", GoToDoor(cart=cart)).ok:
            return
        yield hands.minutes(2, 4)
        for pack in hands.view.shelf(Pack, f"cart/{cart}", 200):
            if not hands.do(PACKER, pack.key, CheckPack(cart=cart)).ok:
                hands.do(PACKER, pack.key, UnloadCart())
        yield hands.minutes(1, 3)
        hands.do(PACKER, f"cart/{cart}", Leave(cart=cart))


def _recounts(hands: Hands) -> Process:
    """Once in a while a rack place is counted and the book corrected."""
    yield hands.minutes(60, 240)
    if not hands.chance(0.4):
        return
    parts = hands.view.shelf(Part, "all", 60)
    part = hands.rng.choice(parts)
    lying = [h for h in hands.view.stock(place=f"rack/{part.rack}") if h.batch]
    if lying:
        held = lying[0]
        there = max(0, held.qty + hands.rng.choice((-3, -2, -1, 1, 2)))
        args = Recount(part=held.part, place=held.place, counted=there)
        hands.do(PACKER, f"batch/{held.batch}", args, why="51")


def worries(hands: Hands) -> None:
    """What needs a look today: a part off its master, a held batch, a place counted short."""
    piles = hands.view.shelf(Pile, "trimming", 10)
    cut = [p for p in piles[1:] if (b := hands.view.get(Batch, p.batch)) and b.state == "cut"]
    for pile in cut[-1:]:  # one pile at least goes on, and no router waits for it
        lying = hands.view.stock(batch=pile.batch, place="trimming")
        part = hands.view.get(Part, lying[0].part) if lying else None
        if part and part.sizes:
            reading = round(part.sizes[0].high_mm + 0.08, 2)
            hands.do(TRIMMING[0], part.key, CheckMaster(batch=pile.batch, reading_mm=reading))
        hands.do(TRIMMING[0], f"batch/{pile.batch}", HoldBatch(why="off its master"))
    for part in hands.view.shelf(Part, "all", 60):
        known = [h for h in hands.view.stock(place=f"rack/{part.rack}") if h.batch]
        if known and known[0].qty > 6:
            args = Recount(part=part.id, place=known[0].place, counted=known[0].qty - 6)
            hands.do(PACKER, f"batch/{known[0].batch}", args, why="51")
            return
