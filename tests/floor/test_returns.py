"""What comes back with a pack, by its code: part by part, of the batches that it took along."""

from dataclasses import replace

import pytest

from station.floor.anywhere import dialogue
from station.floor.anywhere.finding_face import show_list
from station.floor.anywhere.returning import list_back
from station.floor.anywhere.rules import RULES as ANYWHERE
from station.floor.anywhere.screen import screen
from station.floor.cart import dialogue as cart_dialogue
from station.floor.cart.rules import RULES as CART_RULES
from station.floor.today import dialogue as today_dialogue
from station.floor.today.rules import RULES as TODAY
from station.queries.batches import find_hold, list_family, refuse_held_parent
from station.queries.readings import find_source
from station.queries.returns import list_left_packs
from station.queries.whereabouts_orders import answer_pack
from station.queries.whereabouts_pieces import answer_batch
from station.shop.acts import Act, good
from station.shop.codes import Code, write_touch
from station.shop.facts import Batch, Concern, Order, Pack, Part, Product, Reason, Revision, Slip
from station.shop.moves import move
from station.shop.rooms import Aside, Number
from station.shop.views import by_batch, by_part, total
from station.shop.words import say
from tests.floor.orders import DUE, order, press, shop
from tests.floor.shop_small import COMB, COMBS, SHUTTLE, Player, batch, hand, small_shop
from tests.touch import list_texts, touch

PACK, CART, RETURNED = Code("pack", "00001"), Code("cart", "1"), press("returned")
COMBS_CARD, SHUTTLES_CARD = Code("part", COMB), Code("part", SHUTTLE)
WHY = Reason(id="71", words="damaged on the way", use="returned")


@pytest.fixture
def view():
    """Pack 00001 left: four combs of two batches, two shuttles from before the books began.

    Five combs of a newer batch left with other packs.
    """
    inside = [(COMB, 1, "00100"), (COMB, 3, "00101"), (SHUTTLE, 2, "00000")]
    pack = Pack(id="00001", order="3306", mailer="01", mass_g=200.0, closed=DUE,
                contents=((COMB, 4), (SHUTTLE, 2)))  # fmt: skip
    batches = [Batch(id=n, cut_file=COMBS, revision="C", sheets=1, cut=1, state="cut")
               for n in ("00100", "00101", "00102")]  # fmt: skip
    shop_now = shop(
        order(state="packed"), pack, WHY, *batches,
        moves=(*(move(p, n, "found", "pack/00001", b) for p, n, b in inside),
               move(COMB, 5, "found", "shipped", "00102")),
    )  # fmt: skip
    closing = Act(id="p1", kind="close_pack", at=DUE, subject="order/3306")
    shop_now.apply(closing, good(say("Pack 00001 is closed"), sets=(pack,)))
    loader = Player(shop_now, CART_RULES, cart_dialogue.handle_input, hand("cart"))
    loader.give(CART, PACK, press("at_door"), PACK, press("leave"))
    return shop_now


@pytest.fixture
def worker(view):
    return Player(view, ANYWHERE, dialogue.handle_input, hand("packing"))


def back(worker, *inputs):
    worker.give(*inputs)
    return worker.reason("71")


def number(count):
    return Number(str(count))


def test_a_pack_is_taken_back_part_by_part(view, worker):
    asked = worker.give(RETURNED, PACK)
    assert str(asked.said) == "What came back of pack 00001?"
    back(worker, COMBS_CARD, number(4))
    assert worker.hand.aside.subject == "pack/00001", "its shuttles may be on the table too"
    back(worker, SHUTTLES_CARD, number(2))
    assert not worker.hand.aside.what, "all of it is back"
    assert by_part(view.stock(place="rework")) == {COMB: 4, SHUTTLE: 2}
    assert by_part(view.stock(place="shipped")) == {COMB: 5}
    nothing = worker.give(RETURNED, PACK)
    assert str(nothing.said) == "Nothing of pack 00001 is away by the book"


def test_pieces_come_back_to_the_batches_that_their_pack_took_along(view, worker):
    back(worker, RETURNED, PACK, COMBS_CARD, number(4))
    left = by_batch(h for h in view.stock(place="shipped") if h.part == COMB)
    assert left == {"00102": 5}, "the newest left with other packs"


@pytest.mark.parametrize("count", [0, 5])
def test_no_more_comes_back_than_the_pack_took_along(view, worker, count):
    refused = worker.give(RETURNED, PACK, COMBS_CARD, number(count))
    assert refused.tone == "stop"
    assert "4 HC-300 of pack 00001 are still away" in str(refused.said)
    assert not view.stock(place="rework")


@pytest.mark.parametrize("typed", ["-1", "2.5", "1000000"])
def test_what_is_no_count_is_asked_for_again(view, worker, typed):
    refused = worker.give(RETURNED, PACK, COMBS_CARD, Number(typed))
    assert str(refused.said) == f"{typed} is no count"
    back(worker, number(2))
    assert total(view.stock(place="rework")) == 2


def test_the_pack_tells_what_came_back_of_it(view, worker):
    back(worker, RETURNED, PACK, COMBS_CARD, number(3))
    pack = view.get(Pack, "00001")
    told = answer_pack(view, pack, DUE)
    assert "3 came back" in str(told.where[0].where)
    assert "came back" not in str(told.where[1].where)


def test_pieces_of_a_held_batch_are_held_when_they_come_back(view, worker):
    view.facts["batch/00100"] = replace(view.get(Batch, "00100"), holds=("wood splits",))
    back(worker, RETURNED, PACK, COMBS_CARD, number(4))
    child = next(h.batch for h in view.stock(place="rework"))
    assert find_hold(view, child).id == "00100", "one of the four is of it, nobody knows which"


@pytest.mark.parametrize("batch", ["00100", "00101"])
def test_a_later_hold_on_any_of_several_batches_reaches_what_came_back_together(
    batch, view, worker
):
    back(worker, RETURNED, PACK, COMBS_CARD, number(4))
    child = next(h.batch for h in view.stock(place="rework"))
    assert find_hold(view, child) is None
    view.facts[f"batch/{batch}"] = replace(view.get(Batch, batch), holds=("wood splits",))
    assert find_hold(view, child).id == batch
    refused = refuse_held_parent(view, view.get(Batch, child))
    assert f"held with batch {batch}" in str(refused.said)
    assert list_family(view, batch) == (batch, child), "a hold tells where its pieces lie"
    assert [line.code for line in answer_batch(view, view.get(Batch, child), DUE).origin] == [
        write_touch("batch", "00101"), write_touch("batch", "00100"),
    ]  # fmt: skip


def test_nobody_knows_the_bit_of_pieces_that_came_back_together(view, worker):
    slips = [Slip(id=f"{n}-1", batch=n, sheet=1, router=r, at=DUE) for n, r in
             (("00100", "1"), ("00101", "2"))]  # fmt: skip
    view.facts |= {slip.key: slip for slip in slips}
    back(worker, RETURNED, PACK, COMBS_CARD, number(3))
    back(worker, COMBS_CARD, number(1))
    one, other = sorted(h.batch for h in view.stock(place="rework"))
    assert [find_source(view, n).router for n in (one, other)] == ["2", "1"]
    view.facts[f"batch/{one}"] = replace(view.get(Batch, one), others=("00100",))
    assert find_source(view, one).router == ""


def test_what_is_older_than_the_books_comes_back_too(view, worker):
    back(worker, RETURNED, PACK, SHUTTLES_CARD, number(1))
    child = view.get(Batch, next(h.batch for h in view.stock(place="rework")))
    file = view.get(Revision, f"{child.cut_file}.{child.revision}")
    assert SHUTTLE in file.makes()
    assert (child.role, child.has_sheets) == ("rework", False)
    assert child.why == "came back: damaged on the way"


def test_what_no_cut_file_makes_is_not_taken_back(view, worker):
    view.facts["part/099"] = Part(id="099", name="BOUGHT", words="Bought in", rack="099")
    view._move((move("099", 3, "found", "shipped", "00000"),))
    refused = worker.give(RETURNED, Code("part", "099"), number(1))
    assert str(refused.said) == "No cut file makes BOUGHT"


def test_a_product_and_an_order_say_which_parts_there_are(view, worker):
    worker.give(RETURNED, Code("product", "040"))
    assert list_back(worker.hand, view) == {COMB: 9, SHUTTLE: 2}, "whatever pack they left in"
    worker.give(Code("order", "3306"))
    assert list_back(worker.hand, view) == {COMB: 4, SHUTTLE: 2}
    worker.give(touch(screen(worker.hand, view), "HC-300"))
    assert worker.hand.aside.part == COMB, "a row is touched as a card is scanned"


def test_a_part_that_is_not_of_the_pack_is_refused_while_that_is_open(view, worker):
    view._move((move("045", 9, "found", "shipped", "00100"),))
    refused = worker.give(RETURNED, PACK, Code("part", "045"))
    assert str(refused.said) == "No SG-10 of pack 00001 is away"
    assert worker.hand.aside.subject == "pack/00001"
    back(worker, COMBS_CARD, number(4))
    assert "No HC-300 of pack 00001" in str(worker.give(COMBS_CARD).said), "all of it is back"


def test_a_reason_of_another_use_takes_nothing_back(view, worker):
    worker.give(RETURNED, PACK, COMBS_CARD, number(1))
    assert worker.said[-1].uses == ("returned",)
    assert worker.reason("21").refused
    assert total(view.stock(place="rework")) == 0


def test_a_short_list_of_batches_has_no_empty_half_beside_it():
    one = hand("today")
    few = show_list(replace(one, aside=Aside(what="batches")), small_shop(batch()))
    assert few.side == ()


def test_what_came_back_is_said_by_touch_alone(view, worker):
    worker.hand = replace(worker.hand, now=view.get(Pack, "00001").left)
    worker.give(RETURNED)
    assert str(ask(worker, "00001").said) == "What came back of pack 00001?"
    assert str(ask(worker, "HC-300").said) == "HC-300 came back; 4 are away by the book"
    back(worker, number(4))
    assert total(view.stock(place="rework")) == 4


def ask(worker, words):
    """What a touch on these words at the open dialogue is answered."""
    return worker.give(touch(screen(worker.hand, worker.view), words))


def test_a_part_without_its_pack_is_touched_too(view, worker):
    worker.give(RETURNED)
    assert str(ask(worker, "HC-300").said) == "HC-300 came back; 9 are away by the book"


@pytest.mark.parametrize("typed", ["3306", "00001"])
def test_its_order_or_pack_is_typed(view, worker, typed):
    assert str(worker.give(RETURNED, Number(typed)).said) == "What came back of pack 00001?"


def test_a_part_is_typed(view, worker):
    assert "9 are away" in str(worker.give(RETURNED, Number(COMB)).said)


def test_a_number_that_nothing_bears_is_refused(view, worker):
    refused = worker.give(RETURNED, Number("77777"))
    assert str(refused.said) == "This shop knows no order, pack or part 77777"


def test_packs_that_are_back_whole_are_offered_no_more(view, worker):
    left = view.get(Pack, "00001").left
    assert [p.id for p in list_left_packs(view, left, 9)] == ["00001"]
    back(worker, RETURNED, PACK, COMBS_CARD, number(4))
    back(worker, SHUTTLES_CARD, number(2))
    assert list_left_packs(view, left, 9) == ()


def test_older_packs_stand_on_the_next_page(view, worker):
    pack = view.get(Pack, "00001")
    for n in range(2, 12):
        one = replace(pack, id=f"{n:05d}", contents=((COMB, 1),))
        view.facts[one.key] = one
    worker.hand = replace(worker.hand, now=pack.left)
    worker.give(RETURNED)
    first = screen(worker.hand, view)
    assert "00011" in list(list_texts(first))
    assert "00001" not in list(list_texts(first))
    ask(worker, "More of the list")
    assert "00001" in list(list_texts(screen(worker.hand, view)))


def settle(view, way):
    """What a supervisor is answered who settles the one thing that needs a look so."""
    today = Player(view, TODAY, today_dialogue.handle_input, hand("today", worker="07"))
    today.give("came back: damaged on the way", way)
    today.approve()
    return today.reason("51")


def test_others_are_sent_for_what_came_back_by_one_touch(view, worker):
    said = back(worker, RETURNED, PACK, COMBS_CARD, number(2))
    assert "What order 3306 is owed by it, a supervisor says at Shop today." in str(said.do)
    sent = settle(view, "send others")
    assert str(sent.said) == "Order 3306-1 is owed to order 3306: 2 × PAIR"
    owed = view.get(Order, "3306-1")
    assert (owed.owed_of, owed.state) == ("3306", "open")
    assert [(line.product, line.quantity) for line in owed.lines] == [("040", 2)]
    assert view.shelf(Concern, "open") == ()


def test_a_product_of_the_part_alone_is_sent_where_there_is_one(view, worker):
    single = Product(id="041", name="COMB", words="A comb", parts=((COMB, 1),))
    view.facts[single.key] = single
    back(worker, RETURNED, PACK, COMBS_CARD, number(4))
    assert str(settle(view, "send others").said).endswith(": 4 × COMB")


def test_no_order_is_owed_where_a_supervisor_says_so(view, worker):
    back(worker, RETURNED, PACK, COMBS_CARD, number(2))
    assert str(settle(view, "nothing is owed").said) == "Settled: nothing is owed"
    assert view.get(Order, "3306-1") is None


def test_a_part_alone_is_of_no_order_that_could_be_owed(view, worker):
    said = back(worker, RETURNED, COMBS_CARD, number(2))
    assert "No order is owed by it" in str(said.do)
    assert view.shelf(Concern, "open") == ()
