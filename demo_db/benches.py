"""A day at the demo shop's benches: popping, trimming, packing and the cart."""

from collections.abc import Iterable
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
from station.queries.first_offs import find_unmeasured
from station.queries.orders import count_wanted, find_owed
from station.shop.facts import Batch, Cart, Order, Pack, Part, Pile, Slip
from station.shop.moves import Held
from station.shop.views import by_part, total

POPPING = (Who("04", "3"),)
TRIMMING = (Who("05", "4"), Who("03", "4"))
PACKING = Who("06", "5")
PLACES = ("top left", "top right", "middle", "bottom left", "bottom right")
SPOILT = ("01", "01", "02", "04", "05")

STANDING = 3  # the newest packs stand at the bench until the cart comes by again
EARLY = timedelta(hours=60)  # an order is packed no earlier before it is due

Counts = dict[str, dict[str, int]]


def benches(hands: Hands) -> list[Process]:
    """Everybody who works behind the routers today."""
    return [
        *(Popping(hands, who).run() for who in POPPING),
        *(Trimming(hands, who).run() for who in TRIMMING),
        Packing(hands).run(),
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
            yield min(25.0, 3 + total(lying) * 0.06)
            yield from self._pass_on(slip)

    def _next(self) -> Slip | None:
        for slip in self.hands.view.shelf(Slip, "popping", 20):
            batch = self.hands.view.get(Batch, slip.batch)
            waits = find_unmeasured(self.hands.view, slip.batch, slip.sheet)
            if batch and not batch.holds and waits is None:
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
                batch = view.get(Batch, pile.batch)
                if batch and not batch.holds and view.stock(batch=pile.batch, place=area):
                    return pile
        return None

    def _pile(self, pile: Pile) -> Process:
        hands, subject = self.hands, f"batch/{pile.batch}"
        batch = hands.view.get(Batch, pile.batch)
        lying = hands.view.stock(batch=pile.batch, place=pile.area)
        yield min(60.0, 4 + total(lying) * 0.08)
        lying = hands.view.stock(batch=pile.batch, place=pile.area)
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


class Packing:
    """Orders by due time, where the rack holds all of them."""

    def __init__(self, hands: Hands) -> None:
        self.hands = hands

    def run(self) -> Process:
        """Until the day ends."""
        yield self.hands.minutes(15, 40)
        while self.hands.left() > 5:
            order = self._next()
            if order is None:
                yield self.hands.minutes(5, 12)
                continue
            yield from self._pack(order)

    def _next(self) -> Order | None:
        latest = (self.hands.at + EARLY).isoformat(timespec="seconds")
        for order in self.hands.view.shelf(Order, "open", 60):
            if order.due > latest:
                break
            if order.state in ("open", "waiting") and self._all_there(order):
                return order
        return None

    def _all_there(self, order: Order) -> bool:
        inside = by_part(self.hands.view.stock(place=f"packing/{order.id}"))
        return all(
            self._on_rack(part) >= count - inside.get(part, 0)
            for part, count in count_wanted(self.hands.view, order).items()
        )

    def _on_rack(self, part: str) -> int:
        known = self.hands.view.get(Part, part)
        return total(self.hands.view.stock(place=f"rack/{known.rack}")) if known else 0

    def _pack(self, order: Order) -> Process:
        hands = self.hands
        if not hands.do(PACKING, order.key, ClaimOrder()).ok:
            yield 2
            return
        for part in count_wanted(self.hands.view, order):
            yield hands.minutes(0.7, 2.0)
            coming = any(h.part == part for h in hands.view.stock(place="trimming"))
            missing = hands.fault("wait", 0.03) if coming else hands.fault("short", 0.003)
            if missing and not self._short(order, part):
                return
            hands.do(PACKING, order.key, PickPart(part=part))
        if hands.fault("wrong places", 0.012):  # all of it back, again
            hands.do(PACKING, order.key, PutPartsBack())
            for part in count_wanted(self.hands.view, order):
                yield hands.minutes(0.7, 2.0)
                hands.do(PACKING, order.key, PickPart(part=part))
        yield hands.minutes(1.5, 3.5)
        hands.do(PACKING, order.key, ClosePack(), numbers=("pack",))

    def _short(self, order: Order, part: str) -> bool:
        """Fewer lie there than the book says: wait for trimming, or send it short.

        True: what lies there can be taken.
        """
        hands, wanted = self.hands, count_wanted(self.hands.view, order)[part]
        recount = RecountPlace(part=part, counted=wanted - 1)
        hands.do(PACKING, order.key, recount, why="51")
        if hands.do(PACKING, order.key, WaitForPart(part=part)).ok:
            return False
        hands.do(PACKING, order.key, SendShort(part=part))
        if owed := find_owed(hands.view, order):  # this customer does without what is owed
            with hands.beside():
                hands.do(BOSS, owed.key, CancelOrder())
        return bool(hands.view.stock(place=f"rack/{part}"))


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
            self.hands.do(PACKING, pack.key, LoadCart(cart=cart))

    def _leave(self, cart: str) -> Process:
        hands = self.hands
        if not hands.do(PACKING, f"cart/{cart}", GoToDoor(cart=cart)).ok:
            return
        yield hands.minutes(2, 4)
        for pack in hands.view.shelf(Pack, f"cart/{cart}", 200):
            if not hands.do(PACKING, pack.key, CheckPack(cart=cart)).ok:
                hands.do(PACKING, pack.key, UnloadCart())
        yield hands.minutes(1, 3)
        hands.do(PACKING, f"cart/{cart}", Leave(cart=cart))


def _recounts(hands: Hands) -> Process:
    """Once in a while a rack place is counted and the book corrected."""
    yield hands.minutes(60, 240)
    if not hands.chance(0.4):
        return
    parts = hands.view.shelf(Part, "all", 60)
    part = hands.rng.choice(parts)
    lying = hands.view.stock(place=f"rack/{part.rack}")
    if lying:
        held = lying[0]
        there = max(0, held.qty + hands.rng.choice((-3, -2, -1, 1, 2)))
        args = Recount(part=held.part, place=held.place, counted=there)
        hands.do(PACKING, f"batch/{held.batch}", args, why="51")


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
        lying = hands.view.stock(place=f"rack/{part.rack}")
        if lying and lying[0].qty > 6:
            args = Recount(part=part.id, place=lying[0].place, counted=lying[0].qty - 6)
            hands.do(PACKING, f"batch/{lying[0].batch}", args, why="51")
            return
