"""Questions about what orders lack."""

from dataclasses import replace

import pytest

from station.queries.shortage import list_blocking, list_waiting_for, survey_parts
from station.queries.underway import count_underway
from station.shop.facts import Batch, Bed, CutFile, Line, Order, Product
from station.shop.moves import move
from tests.floor.shop_small import COMB, COMBS, DAY, SHUTTLE, SHUTTLES, batch, off_bed, small_shop

NOW = f"{DAY}T10:42:00"
COMB_ONLY = Product(id="032", name="COMB", words="One comb", parts=((COMB, 1),))


def order(number, combs, due=f"{DAY}T15:00:00"):
    return Order(id=number, lines=(Line(product="032", quantity=combs),), due=due)


def on_rack(part, count, number="00400"):
    return move(part, count, "found", f"rack/{part}", number)


def stand(view, part=COMB):
    return next(s for s in survey_parts(view) if s.part.id == part)


def test_what_lies_free_and_what_is_under_way_is_counted_apart():
    view = small_shop(
        COMB_ONLY, batch(), Bed(id="1", state="cutting", batch="00412", sheet=2), order("3301", 9),
        moves=(on_rack(COMB, 4), move(COMB, 3, "found", "trimming", "00401"),
               move(COMB, 2, "found", "rework", "00401")),
    )  # fmt: skip
    view = off_bed(view, view.get(Batch, "00412"), 1)
    found = stand(view)
    assert (found.wanted, found.free, found.kept_back) == (9, 4, 0)
    assert found.coming == {"rework": 2, "trimming": 3, "popping": 24, "bed": 24, "queue": 48}
    assert found.lacking == 0


def test_pieces_that_were_held_in_an_open_pack_lack_again():
    """Five of nine were picked, then their batch was held: they may not leave."""
    inside = (move(COMB, 5, "found", "packing/3301", "00412"),)
    view = small_shop(COMB_ONLY, batch(sheets=0), order("3301", 9), moves=inside)
    assert (stand(view).wanted, stand(view).kept_back) == (4, 0)
    view = small_shop(
        COMB_ONLY, batch(sheets=0, holds=("stubs torn",)), order("3301", 9), moves=inside
    )
    assert (stand(view).wanted, stand(view).kept_back) == (9, 5)


def test_sheets_that_may_not_be_cut_any_more_are_not_under_way():
    """Another revision was approved when one of three sheets was cut."""
    begun = batch(sheets=3, cut=1, state="cutting")
    view = small_shop(COMB_ONLY, begun, order("3301", 9))
    assert stand(view).coming == {"queue": 48}
    assert count_underway(view, COMB).queue == 48
    view.facts[f"cutfile/{COMBS}"] = replace(view.get(CutFile, COMBS), approved="D")
    assert stand(view).coming == {}
    assert count_underway(view, COMB).queue == 0
    assert [b.standing.part.id for b in list_blocking(view, NOW)] == [COMB]


def test_what_is_held_or_came_of_what_is_held_is_kept_back_and_counts_nowhere_else():
    held = batch(holds=("stubs torn",), sheets=4)
    child = batch(id="00420", parent="00412", role="split", sheets=0, state="cut")
    view = small_shop(
        COMB_ONLY, held, child, order("3301", 9),
        moves=(on_rack(COMB, 5, "00412"), move(COMB, 3, "found", "trimming", "00420")),
    )  # fmt: skip
    found = stand(view)
    assert (found.free, found.kept_back, found.coming) == (0, 8, {})
    assert found.lacking == 9


def test_what_lies_in_an_orders_pack_is_not_taken_again():
    view = small_shop(COMB_ONLY, order("3301", 9),
                      moves=(move(COMB, 4, "found", "packing/3301", "00400"),))  # fmt: skip
    assert stand(view).wanted == 5


def test_pieces_are_given_out_by_due_time_and_the_rest_is_blocked():
    view = small_shop(
        COMB_ONLY,
        order("3301", 6, f"{DAY}T09:00:00"),
        order("3302", 6, f"{DAY}T08:00:00"),
        order("3303", 3, f"{DAY}T15:00:00"),
        moves=(on_rack(COMB, 10),),
    )
    (found,) = list_blocking(view, NOW)
    assert [o.id for o in found.orders] == ["3301"]  # 3302 takes six, 3303 three of what is left
    assert found.late == 1


@pytest.mark.parametrize(("sheets", "blocks"), [(1, True), (2, False)])
def test_a_part_blocks_until_enough_is_under_way(sheets, blocks):
    view = small_shop(COMB_ONLY, order("3301", 40), batch(sheets=sheets))
    assert bool(list_blocking(view, NOW)) == blocks


def test_the_part_with_most_late_orders_stands_first():
    kit = Product(id="033", name="SHUTTLES", words="Shuttles", parts=((SHUTTLE, 1),))
    late = Order(id="3309", lines=(Line(product="033", quantity=1),), due=f"{DAY}T07:00:00")
    view = small_shop(COMB_ONLY, kit, order("3301", 1), order("3302", 1), late)
    assert [b.standing.part.id for b in list_blocking(view, NOW)] == [SHUTTLE, COMB]


def test_a_part_that_nobody_wants_stands_in_the_survey_alone():
    view = small_shop(batch(cut_file=SHUTTLES, id="00413", router="2"))
    assert stand(view, SHUTTLE).coming == {"queue": 4 * 96}
    assert list_blocking(view, NOW) == ()
    assert {s.part.id for s in survey_parts(view, wanted_only=True)} == set()
    assert COMBS


def test_who_waits_for_a_batch_changes_while_it_waits():
    view = small_shop(
        COMB_ONLY, batch(sheets=1), order("3301", 6, f"{DAY}T09:00:00"), order("3302", 9),
        order("3303", 90), moves=(on_rack(COMB, 7),),
    )  # fmt: skip
    queued = view.get(Batch, "00412")
    # seven lie there: the first order takes six of them; 24 come of the batch, which the second
    # gets its nine of; the third lacks more than all of it
    assert [o.id for o in list_waiting_for(view, queued)] == ["3302", "3303"]
    rich = small_shop(COMB_ONLY, batch(sheets=1), order("3301", 6), moves=(on_rack(COMB, 7),))
    assert list_waiting_for(rich, queued) == ()
    held = batch(sheets=1, holds=("a crack",))
    stuck = small_shop(COMB_ONLY, held, order("3301", 9))
    assert list_waiting_for(stuck, held) == ()


def test_what_is_cut_for_one_order_alone_goes_to_no_other():
    """The other one is due a week before; of 24 one is for the rack, for the first takes 23."""
    week = "2026-12-02T15:00:00"
    theirs = batch(sheets=1, order="3301")
    view = small_shop(COMB_ONLY, order("3301", 23, week), order("3302", 24), theirs)
    found = stand(view)
    assert [(t.order.id, t.pieces) for t in found.takers] == [("3302", 24)]
    assert [(t.order.id, t.pieces) for t in found.own] == [("3301", 23)]
    assert (found.coming, found.lacking) == ({"queue": 1}, 23)
    assert (found.wanted, found.under_way) == (47, 24)
    assert [o.id for o in found.list_blocked()] == ["3302"]
    assert [o.id for o in list_waiting_for(view, theirs)] == ["3301"]
    gone = replace(order("3301", 23, week), state="cancelled")
    view = small_shop(COMB_ONLY, gone, order("3302", 24), theirs)
    assert (stand(view).coming, stand(view).own) == ({"queue": 24}, ())


def test_what_is_cut_for_one_order_alone_is_as_far_on_as_it_is():
    """Those that are farthest on are its own; sheets that are held bring nothing."""
    theirs = batch(sheets=2, order="3301")
    view = off_bed(small_shop(COMB_ONLY, order("3301", 30), theirs), theirs, 1)
    assert (stand(view).coming, stand(view).takers) == ({"queue": 18}, ())
    assert (stand(view).lacking, stand(view).list_blocked()) == (0, ())
    held = replace(theirs, holds=("stubs torn",))
    assert [t.pieces for t in stand(small_shop(COMB_ONLY, order("3301", 30), held)).takers] == [30]
