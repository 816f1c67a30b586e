"""Two stations pack and load at random: what must hold whatever is scanned, in any order.

Nothing below zero and nothing lost between rack and door; no station touches what another
has claimed; a pack holds what its order wants; nothing leaves that was not scanned at the
door, and nothing of a cancelled order; every face can be shown.
"""

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import event, given, settings
from hypothesis import strategies as st

from station.floor.cart import dialogue as cart_dialogue
from station.floor.cart import screen as cart_screen
from station.floor.cart.rules import RULES as CART
from station.floor.office.acts import CancelOrder
from station.floor.office.rules import RULES as OFFICE
from station.floor.packing import dialogue, screen
from station.shop.acts import Act, Args, add_known
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.facts import Cart, Line, Order, Pack, Product
from station.shop.moves import head, move
from station.shop.places import balances
from station.shop.rooms import Do, Input, Number, Took
from station.shop.views import by_part
from tests.floor.orders import RULES, lying, order, press, shop
from tests.floor.shop_small import COMB, DAY, GAUGE, SHUTTLE, batch, hand

ORDERS = ("3306", "3307", "3308")
STATIONS = ("s1", "s2")
PACKS = [Code("pack", f"{n:05d}") for n in range(1, 7)]
PACKING: list[Input] = [
    *(Code("button", c.number) for c in BUTTONS.values() if c.area == "packing"),
    *(press(name) for name in ("put_down", "row_1", "row_2")),
    *(Code("order", number) for number in (*ORDERS, "9999")),
    *(Code(kind, part) for part in (COMB, SHUTTLE, GAUGE) for kind in ("part", "rack")),
    *(Number(text) for text in ("0", "1", "2", "3", "40", "999999", "-1", "6.4", "390")),
    *PACKS,
]
LOADING: list[Input] = [
    *(Code("button", c.number) for c in BUTTONS.values() if c.area == "cart"),
    *(press(name) for name in ("put_down", "row_1", "row_2", "next_page", "back_page")),
    *(Code("cart", number) for number in "12"),
    *PACKS,
]
ALL = press("all_of_it")
QUICK: list[list[Input]] = [
    *([Code("order", number), ALL, ALL, press("close_pack")] for number in ORDERS),
    *([Code("order", number), ALL, Number("1")] for number in ORDERS),
    *([Code("order", number), press("put_down")] for number in ORDERS),
    [press("part_missing"), Number("0"), press("send_short"), press("close_pack")],
    [press("part_missing"), Number("0"), press("wait")],
    [press("scale"), Number("100"), press("close_pack")],
    [press("take_back"), Number("1"), Code("part", COMB)],
    *([pack, press("take_back"), press("put_down")] for pack in PACKS[:3]),
]
AWAY: list[list[Input]] = [
    [Code("cart", "1"), *PACKS[:2], press("at_door"), *PACKS[:2], press("leave")],
    [Code("cart", "2"), *PACKS[1:4], press("at_door"), press("on_cart"), PACKS[0]],
    [press("at_door"), *PACKS, press("leave")],
    [Code("cart", "1"), *PACKS[:2], press("at_door"), PACKS[0], press("leave")],
    [press("not_yet"), press("at_door"), press("leave")],
    *([press("off_cart"), pack] for pack in PACKS[:3]),
]


def one_of(*inputs: Input) -> list[list[Input]]:
    """Each as a step of its own."""
    return [[i] for i in inputs]


CHOICES = [
    *(("packing", scans) for scans in (*one_of(*PACKING), *QUICK * 3)),
    *(("cart", scans) for scans in (*one_of(*LOADING), *AWAY * 3)),
    *(("cancel", [Code("order", number)]) for number in ORDERS),
]
steps = st.tuples(st.sampled_from(STATIONS), st.sampled_from(CHOICES), st.booleans())


class Walk:
    """Both stations on one shop; what was seen at the door is kept beside it."""

    def __init__(self) -> None:
        more = [
            replace(order(), id="3307", lines=(Line(product="040", quantity=2),)),
            replace(order(), id="3308", lines=(Line(product="021", quantity=2),)),
        ]
        lots = batch("009", "00500", state="cut")
        away = (lying(GAUGE, 4), move(SHUTTLE, 9, "cut", "trimming", "00500"))
        self.view = shop(*more, lots, shuttles=6, moves=away)
        self.hands = {(s, a): hand(a, station=s) for s in STATIONS for a in ("packing", "cart")}
        self.seen: set[str] = set()
        self.pieces = self._pieces()

    def go(self, station: str, area: str, given: Input, *, sure: bool) -> None:
        """One input; what must hold is looked at after it."""
        if area == "cancel":
            assert isinstance(given, Code)
            subject = f"order/{given.number}"
            asked = Do(subject, CancelOrder(approved="07"), hand("office"))
            self._do("office", asked, "office", sure=True)
            return
        handle_input = dialogue.handle_input if area == "packing" else cart_dialogue.handle_input
        shown = screen.screen if area == "packing" else cart_screen.screen
        one = self.hands[station, area]
        result = handle_input(one, given, self.view)
        if isinstance(result, Took):
            self.hands[station, area] = result.hand
        elif isinstance(result, Do) and self._do(station, result, area, sure=sure):
            self.hands[station, area] = replace(result.after, now=one.now)
        assert shown(self.hands[station, area], self.view).main

    def _do(self, station: str, do: Do, area: str, *, sure: bool) -> bool:
        number = f"{sum(1 for e in self.view.entries if e.act.kind == 'close_pack') + 1:05d}"
        yes = Args(sure=True, approved="07") if sure else Args()
        args = add_known(add_known(do.args, Args(numbers={"pack": number})), yes)
        act = Act(id=f"w{len(self.view.entries)}", kind=do.kind, at=f"{DAY}T10:00:00",
                  worker="02", station=station, subject=do.subject, args=args)  # fmt: skip
        before = {o.id: (o, self._inside(o.id)) for o in self._orders()}
        rules = {"packing": RULES, "cart": CART, "office": OFFICE}[area]
        answer = self.view.do(rules, act)
        if answer.refused:
            return False
        event(do.kind)
        if area == "packing":
            self._others_alone(station, act, before)
        self._door(act)
        self._sound()
        return True

    def _orders(self) -> list[Order]:
        return [o for number in ORDERS if (o := self.view.get(Order, number))]

    def _inside(self, number: str) -> Counter[str]:
        return Counter(by_part(self.view.stock(place=f"packing/{number}")))

    def _others_alone(
        self, station: str, act: Act, before: dict[str, tuple[Order, Counter[str]]]
    ) -> None:
        """What another station had claimed is as it was, unless a supervisor took it over."""
        for number, (was, inside) in before.items():
            if was.claimed in ("", station):
                continue
            if act.kind == "claim_order" and act.args.approved:
                continue
            assert self.view.get(Order, number) == was
            assert self._inside(number) == inside

    def _door(self, act: Act) -> None:
        """What was scanned at the door, and that only this left."""
        pack = act.subject.partition("/")[2]
        cart = self.view.get(Cart, getattr(act.args, "cart", ""))
        if act.kind == "check_pack" or (act.kind == "load_cart" and cart and cart.state == "door"):
            self.seen.add(pack)
        if act.kind == "unload_cart":
            self.seen.discard(pack)
        if act.kind == "come_back" and cart:
            self.seen -= {p.id for p in self.view.shelf(Pack, f"cart/{cart.id}", 99)}
        if act.kind == "leave":
            gone = self.view.entries[-1].sets
            for made in (w.after for w in gone if isinstance(w.after, Pack)):
                assert made.id in self.seen
                if not made.nth:  # one of several: its order has left when all have
                    assert self.view.get(Order, made.order).state == "shipped"
        if act.kind == "close_pack":
            made = next((w.after for w in self.view.entries[-1].sets if isinstance(w.after, Pack)),
                        None)  # fmt: skip
            if made and made.nth and not made.of:
                return  # the rest of its order follows in another
            if made:
                order = self._order(made)
                packs = [p.contents for p in order.packs] or [made.contents]
                inside = sum((Counter(dict(contents)) for contents in packs), Counter[str]())
                assert inside == self._wanted(order)

    def _wanted(self, order: Order) -> Counter[str]:
        """Pieces of each part that an order's lines want, packed or not."""
        sums: Counter[str] = Counter()
        for line in order.lines:
            product = self.view.get(Product, line.product)
            for part, each in product.parts if product else ():
                sums[part] += each * (line.quantity - line.short)
        return +sums

    def _order(self, pack: Pack) -> Order:
        found = self.view.get(Order, pack.order)
        assert found
        return found

    def _pieces(self) -> Counter[str]:
        """Pieces of each part in the shop, what was counted away or found anew added."""
        sums: Counter[str] = Counter()
        for (place, _, part), qty in self.view.pieces.items():
            if head(place) in ("rack", "packing", "pack", "cart", "shipped", "recount"):
                sums[part] += qty
        return sums

    def _sound(self) -> None:
        assert self._pieces() == self.pieces
        for (place, _, part), qty in self.view.pieces.items():
            assert qty >= 0 or balances(place), (place, part, qty)
        for found in self._orders():
            assert (found.state != "packing") or found.claimed
            assert (found.state == "packing") == bool(found.claimed) or found.state == "cancelled"
        packs = [p for p in self.view.facts.values() if isinstance(p, Pack)]
        for pack in packs:
            lies = by_part(self.view.stock(place=f"pack/{pack.id}"))
            assert lies == (dict(pack.contents) if pack.state == "packed" else {}), pack
        for cart in "12":
            load = sum((Counter(dict(p.contents)) for p in packs if p.cart == cart
                        and p.state == "cart"), Counter[str]())  # fmt: skip
            assert Counter(by_part(self.view.stock(place=f"cart/{cart}"))) == load


@settings(max_examples=400, deadline=None)
@given(walk=st.lists(steps, min_size=10, max_size=40), packed=st.booleans())
@pytest.mark.slow
def test_whatever_two_stations_scan(
    *, walk: list[tuple[str, tuple[str, list[Input]], bool]], packed: bool
) -> None:
    shop = Walk()
    for one in (*QUICK[0], *QUICK[1]) if packed else ():
        shop.go("s1", "packing", one, sure=False)
    for station, (area, inputs), sure in walk:
        for one in inputs:
            shop.go(station, area, one, sure=sure)
