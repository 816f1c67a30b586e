"""A PC whose history begins late: what is asked about earlier days gets a clear sentence."""

from dataclasses import replace

import pytest

from station.floor.anywhere.finding import find_code
from station.floor.anywhere.finding_face import show_thing
from station.floor.cart import dialogue as cart
from station.floor.cart.rules import RULES as CART
from station.floor.packing import dialogue as packing
from station.floor.packing.rules import RULES as PACKING
from station.floor.today import looks
from station.shop.beginning import not_here
from station.shop.codes import Code
from station.shop.facts import Cart, Concern, Pack
from station.shop.moves import move
from tests.floor.orders import order, press, shop
from tests.floor.shop_small import COMB, COMBS, DAY, Player, batch, hand, small_shop

BEGINS = "2026-10-05T10:00:00"
OLDER = "What was done before 5 Oct 2026 is not on this PC."
SINCE = "This PC knows what was done since 5 Oct 10:00."
PAPER = Code("batch", "00412", "A")
PACK = Pack(id="00001", order="3301", mailer="01", mass_g=200, contents=((COMB, 2),), cart="1")


@pytest.mark.parametrize(
    ("area", "rules", "handle_input", "inputs", "otherwise"),
    [
        (
            "packing",
            PACKING,
            packing.handle_input,
            (press("label_again"), Code("order", "3301")),
            "Choose a row.",
        ),
        (
            "cart",
            CART,
            cart.handle_input,
            (Code("cart", "1"), press("cart_list")),
            "Scan packs onto it first.",
        ),
    ],
)
def test_what_is_not_found_may_be_older(area, rules, handle_input, inputs, otherwise):
    for begins, do in (("", otherwise), (BEGINS, OLDER)):
        view = small_shop(batch(COMBS), Cart(id="1", name="Cart 1"), replace(order(), id="3301"))
        view.beginning = begins
        answer = Player(view, rules, handle_input, hand(area)).give(*inputs)
        assert (answer.refused, str(answer.do)) == (True, do)


def test_the_page_of_a_thing_says_since_when_this_pc_knows():
    """A paper with nothing waiting gets its page, whose life begins where the history does."""
    view = small_shop(batch(COMBS))
    for begins, told in (("", "Nothing was written down of it."), (BEGINS, SINCE)):
        view.beginning = begins
        took = find_code(hand("popping"), PAPER, view)
        (life,) = show_thing(took.hand, view).side
        assert (took.answer.refused, str(life.empty)) == (False, told)


def test_a_pack_is_not_taken_off_where_nobody_knows_what_it_brought():
    view = shop(replace(PACK, state="cart"), moves=(move(COMB, 2, "found", "cart/1", "00100"),))
    view.beginning = BEGINS
    answer = Player(view, CART, cart.handle_input, hand("cart")).give(
        Code("cart", "1"), press("off_cart"), Code("pack", "00001")
    )
    assert str(answer.said) == "Pack 00001 was loaded before this PC's history begins"
    assert view.get(Pack, "00001").state == "cart"


def test_who_did_what_needs_a_look_may_be_older():
    concern = Concern(id="gone", what="recount", text="Look", since=f"{DAY}T09:00:00")
    view = small_shop(batch(COMBS), concern)
    for begins, by in (("", None), (BEGINS, OLDER)):
        view.beginning = begins
        story = {str(name): str(value) for name, value in looks._tell_story(concern, view)}
        assert story.get("by") == by


def test_nothing_is_said_where_all_is_here():
    assert not not_here("")
