"""Packs for the shelf: made set by set, taken by one scan, held with a piece in them."""

from dataclasses import replace

from station.queries.leaving import list_prospects
from station.queries.shelf import deal_packs, look_ahead
from station.queries.shortage import survey_parts
from station.queries.whereabouts_orders import answer_pack
from station.shop.codes import Code
from station.shop.facts import Batch, Line, Order, Pack
from station.shop.rooms import Number
from station.shop.views import by_part
from tests.floor.orders import OPEN_AGAIN, PAIR, order, packer, press, shop
from tests.floor.shop_small import COMB, SHUTTLE, batch

AHEAD = replace(PAIR, mark=2, place="F 2")
CARD = Code("product", PAIR.id)
ONE = Order(id="3310", due="2026-11-25T12:00:00", lines=(Line(product=PAIR.id, quantity=1),))


def made(*facts, sets=2, **more):
    """The shop with packs of pairs on the shelf, and the packer that made them."""
    view = shop(AHEAD, *facts, **more)
    player = packer(view)
    player.give(CARD, Number(str(sets)), *[press("close_pack")] * sets)
    return view, player


def packs(view):
    """Every pack by its number."""
    return {f.id: f for f in view.facts.values() if isinstance(f, Pack)}


def test_sets_are_bagged_one_by_one_and_counted():
    view, player = made()
    assert [p.state for p in packs(view).values()] == ["shelf", "shelf"]
    assert by_part(view.stock(place="pack/00501")) == {COMB: 1, SHUTTLE: 1}
    assert by_part(view.stock(place=f"rack/{COMB}")) == {COMB: 5}
    assert player.said[-1].prints == (("label", "00502"),)
    assert str(player.said[-1].do) == "Label it, then shelf F 2: 2 of 2 there."
    assert player.hand.is_free
    # the oldest batch went first, and each pack knows its own
    assert [h.batch for h in view.stock(place="pack/00501")] == ["00100", "00100"]


def test_the_card_of_the_product_closes_the_next_set_too():
    view = shop(AHEAD)
    player = packer(view)
    player.give(CARD, CARD, CARD)
    assert len(packs(view)) == 2
    assert player.hand.is_free


def test_no_set_where_a_part_lacks():
    view = shop(AHEAD, shuttles=1)
    player = packer(view)
    assert player.give(CARD).tone == "good"
    assert player.give(Number("2")).tone == "stop"
    player.give(press("close_pack"))
    assert player.give(CARD).tone == "stop"


def test_an_order_that_wants_just_one_is_packed_by_one_scan_and_its_label():
    view, player = made(ONE)
    player.give(Code("order", "3310"))
    answer = player.give(Code("pack", "00501"))
    assert (answer.tone, answer.prints) == ("good", (("label", "00503"),))
    assert view.get(Order, "3310").state == "packed"
    assert by_part(view.stock(place="pack/00503")) == {COMB: 1, SHUTTLE: 1}
    assert packs(view)["00501"].state == "opened"
    # the same card again is no pack any more
    player.give(Code("order", "3306"))
    assert player.give(Code("pack", "00501")).tone == "stop"


def test_an_order_of_several_takes_them_into_its_pack_and_no_more():
    view, player = made(order(lines=(Line(product=PAIR.id, quantity=2),)), sets=3)
    player.give(Code("order", "3306"), Code("pack", "00501"))
    assert player.give(Code("pack", "00502")).tone == "good"
    assert by_part(view.stock(place="packing/3306")) == {COMB: 2, SHUTTLE: 2}
    assert player.give(Code("pack", "00503")).tone == "stop"
    assert player.give(press("close_pack")).tone == "good"
    assert [p.id for p in look_ahead(view, AHEAD).free] == ["00503"]


def test_a_held_batch_holds_the_packs_that_it_lies_in():
    view, player = made(ONE, batch(id="00100"))
    view.facts["batch/00100"] = replace(view.get(Batch, "00100"), holds=("warped",))
    ahead = look_ahead(view, AHEAD)
    assert (len(ahead.free), len(ahead.held)) == (0, 2)
    player.give(Code("order", "3310"))
    assert player.give(Code("pack", "00501")).tone == "stop"
    assert view.get(Order, "3310").state == "packing"
    # with nothing in hand its page opens it, without a reason; the pieces are kept apart
    player.give(press("put_down"))
    answer = player.give(Code("pack", "00501"), OPEN_AGAIN)
    assert (answer.tone, "keep them apart" in str(answer.do)) == ("attention", True)
    assert by_part(view.stock(place=f"rack/{COMB}"))[COMB] == 6


def test_what_lies_on_the_shelf_is_not_asked_of_the_rack():
    view, _ = made(ONE, combs=2, shuttles=2)
    assert deal_packs(view) == {"3310": {COMB: 1, SHUTTLE: 1}, "3306": {COMB: 1, SHUTTLE: 1}}
    lacks = {p.order.id: [lack.pieces for lack in p.lacks] for p in list_prospects(view)}
    assert lacks == {"3310": [], "3306": [2, 2]}
    comb = next(s for s in survey_parts(view) if s.part.id == COMB)
    assert [t.pieces for t in comb.takers] == [2]


def test_its_card_tells_where_it_lies_and_of_which_batches():
    view, _ = made()
    thing = answer_pack(view, packs(view)["00501"], "2026-11-25T10:00:00")
    assert str(thing.said) == "Pack 00501: lies on shelf F 2, one PAIR"
    assert len(thing.origin) == 2
