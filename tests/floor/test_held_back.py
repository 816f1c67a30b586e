"""What may not go on is refused and says why: held batches, broken bits, cancelled orders."""

import pytest

from station.floor.cart.rules import RULES as CART
from station.floor.loading.rules import RULES as LOADING
from station.floor.popping.rules import RULES as POPPING
from station.shop.acts import Act
from station.shop.facts import Batch, Bit, Cart, Order, Pack, Router
from station.shop.moves import move
from tests.fakes import FakeView

AT = "2026-11-25T10:00:00"
FACTS = (
    Router(id="1", name="Router 1"),
    Bit(id="14", words="3 mm", diameter_mm=3.0, state="broken"),
    Batch(
        id="00412",
        cut_file="008",
        revision="C",
        sheets=1,
        cut=1,
        state="cut",
        due=AT,
        holds=("h1",),
    ),
    Order(id="3306", due=AT, lines=(), state="cancelled"),
    Pack(id="00077", order="3306", mailer="01"),
    Cart(id="2", name="Cart 2"),
)
CASES = [
    (LOADING, "change_bit", "router/1", {"bit": "14"}, "Bit 14 is broken"),
    (POPPING, "pass_on", "batch/00412",
     {"slips": ["00412-1"], "parts": {"014": {"good": 1}}}, "held"),
    (CART, "load_cart", "pack/00077", {"cart": "2"}, "Order 3306 is cancelled"),
]  # fmt: skip


@pytest.mark.parametrize(("rules", "kind", "subject", "args", "said"), CASES)
def test_it_is_refused_with_its_reason(rules, kind, subject, args, said):
    view = FakeView.of(*FACTS, moves=(move("014", 4, "cut", "popping/1", "00412"),))
    act = Act(id="a", kind=kind, at=AT, worker="02", station="1", subject=subject, args=args)
    answer = view.do(rules, act)
    assert answer.refused
    assert said in f"{answer.said} {answer.do}".replace("is on hold", "held")
    assert not answer.moves
