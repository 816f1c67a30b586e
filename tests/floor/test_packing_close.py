"""Too few on the rack, what is under way, an order owed, the scale, the label."""

from dataclasses import replace

import msgspec
import pytest

from station.floor.packing import dialogue, screen
from station.floor.shared.recounts import RecountPlace
from station.queries.leaving import list_prospects
from station.queries.mailers import plan_open_pack
from station.queries.orders import list_needs
from station.queries.underway import count_underway
from station.shop import lengths
from station.shop.acts import Act
from station.shop.codes import Code
from station.shop.faces import Asked, Table
from station.shop.facts import Bed, Concern, Line, Order, Pack, Part, Slip
from station.shop.moves import move
from station.shop.rooms import Number, Weighed
from station.shop.words import moment, say
from tests.floor.orders import (
    ORDER,
    PART_COMB,
    PART_SHUTTLE,
    RULES,
    inside,
    no_weight,
    on_rack,
    order,
    packer,
    press,
    shop,
)
from tests.floor.shop_small import COMB, DAY, SHUTTLE, SHUTTLES, at, batch
from tests.touch import NO_ROW

AT_TWO = f"{DAY}T14:00:00"
SOON, LATER = batch(SHUTTLES, "00500", due=AT_TWO, state="cut"), f"{DAY[:-2]}26T09:00:00"


def waiting_for(*facts, shuttles=2, moves=()):
    """An order in hand whose shuttles are too few, these facts and moves under way."""
    view = shop(*facts, shuttles=shuttles, moves=moves)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("part_missing"))
    return view, player


def lies(place, qty, batch="00500"):
    return move(SHUTTLE, qty, "cut", place, batch)


def slip(sheet=2):
    return Slip(id=f"00500-{sheet}", batch="00500", sheet=sheet, router="1", at=at("09:00"))


@pytest.mark.parametrize(
    ("counted", "said", "do"),
    [
        (2, "Counted 2: the book agrees", "No more are under way: send it short, or put it down."),
        (0, "Corrected: 0 ST-200 there, 2 fewer than by the book",
         "No more are under way: send it short, or put it down."),
        (3, "Corrected: 3 ST-200 there, 1 more than by the book",
         "Enough: take 3 from rack A 03."),
        (9, "Corrected: 9 ST-200 there, 7 more than by the book",
         "Enough: take 3 from rack A 03."),
        (200, "Corrected: 200 ST-200 there, 198 more than by the book",
         "Enough: take 3 from rack A 03."),
        (999_999, "999 999 cannot lie in one place", "Enter the number that you counted."),
    ],
)  # fmt: skip
def test_a_count_says_what_to_do_now(counted, said, do):
    view, player = waiting_for()
    answer = player.recount(counted)
    assert (str(answer.said), str(answer.do)) == (said, do)
    assert on_rack(view, SHUTTLE) == (counted if counted < 1000 else 2)


def test_a_count_far_off_is_asked_about_then_a_supervisor_then_why():
    view, player = waiting_for()
    assert player.give(Number("200")).asks == "sure"
    assert player.yes().asks == "supervisor"
    assert player.approve().asks == "reason"
    assert on_rack(view, SHUTTLE) == 2
    assert str(player.reason("51").do) == "Enough: take 3 from rack A 03."
    assert on_rack(view, SHUTTLE) == 200


def test_a_count_near_the_book_asks_for_its_reason_only():
    view, player = waiting_for()
    assert player.give(Number("1")).asks == "reason"
    assert on_rack(view, SHUTTLE) == 2


@pytest.mark.parametrize(
    ("counted", "lies"),
    [(9, [("00100", 2), ("00101", 7)]), (6, [("00100", 1), ("00101", 5)]), (1, [("00101", 1)])],
)
def test_which_batch_a_count_adds_to_and_takes_from(counted, lies):
    view = shop()
    args = RecountPlace(part=COMB, counted=counted, reason="51", sure=True)
    view.do(RULES, Act(id="c", kind="recount_place", at=AT_TWO, subject=f"part/{COMB}", args=args))
    assert [(h.batch, h.qty) for h in view.stock(place=f"rack/{COMB}")] == lies


def test_pieces_that_the_book_does_not_know_at_all_can_be_packed():
    view, player = waiting_for(shuttles=0)
    player.recount(3)
    player.give(PART_SHUTTLE)
    assert inside(view)[SHUTTLE] == 3
    assert not player.give(press("close_pack")).refused


@pytest.mark.parametrize(
    ("facts", "moves", "words"),
    [
        ((SOON,), (lies("trimming", 96),), "96 in trimming, due 14:00"),
        ((SOON,), (lies("rework", 5),), "5 in rework, due 14:00"),
        ((SOON, slip()), (lies("popping/2", 90),), "90 at popping, due 14:00"),
        ((SOON, slip()), (lies("popping/2", 90), lies("trimming", 6)),
         "6 in trimming and 90 at popping, due 14:00"),
        ((replace(SOON, due=LATER),), (lies("trimming", 6),), "6 in trimming, due 26 Nov"),
        ((replace(SOON, due=""),), (lies("trimming", 6),), "6 in trimming"),
        ((replace(SOON, state="cutting", sheets=3, cut=1),
          Bed(id="1", state="cutting", batch="00500", sheet=2)), (),
         "96 being cut and 96 still to be cut, due 14:00"),
        ((replace(SOON, state="queued", sheets=2),), (), "192 still to be cut, due 14:00"),
    ],
)  # fmt: skip
def test_what_is_under_way_can_be_waited_for(facts, moves, words):
    view, player = waiting_for(*facts, moves=moves)
    assert str(player.recount(2).do) == f"Under way: {words}. Wait, or send it short."
    assert str(player.give(press("wait")).said) == f"Order 3306 waits for ST-200: {words}"
    found = view.get(Order, "3306")
    assert (found.state, found.claimed, found.waits) == ("waiting", "", SHUTTLE)


@pytest.mark.parametrize(
    "fields",
    [{"holds": ("thickness",)}, {"order": "3399"}],
)
def test_what_is_held_or_anothers_is_not_waited_for(fields):
    other = replace(order(), id="3399")
    view, player = waiting_for(other, replace(SOON, **fields), moves=(lies("trimming", 96),))
    assert str(player.recount(2).do).startswith("No more are under way")
    assert str(player.give(press("wait")).said) == "No ST-200 are under way"
    assert count_underway(view, SHUTTLE, "3399").all == (96 if "order" in fields else 0)
    view.facts["order/3399"] = replace(other, state="cancelled")
    assert count_underway(view, SHUTTLE, "3306").all == (96 if "order" in fields else 0)


def test_an_order_does_not_wait_for_what_lies_there():
    _, player = waiting_for(SOON, shuttles=7, moves=(lies("trimming", 96),))
    assert not player.hand.work.asks  # nothing is missing
    assert str(player.give(press("wait")).said) == "ST-200 is not missing"


def test_an_order_waits_for_what_was_counted_short_whatever_is_taken_since():
    view, player = waiting_for(SOON, moves=(lies("trimming", 96),))
    player.give(Number("2"), press("take_back"), Number("1"), PART_COMB)
    codes = [p.code for p in screen.screen(player.hand, view).presses]
    assert codes == [str(press(name)) for name in ("wait", "send_short", "put_down")]
    player.give(PART_COMB, press("wait"))
    assert view.get(Order, "3306").waits == SHUTTLE


def test_a_short_says_what_goes_back():
    view, player = waiting_for()
    player.give(Number("2"), press("send_short"))
    answer = player.approve()
    assert str(answer.said) == "1 ST-200 is owed to order 3306"
    assert str(answer.do) == "Put back 1 HC-300 (rack C 14). Then close the pack."
    assert on_rack(view, COMB) == 5
    looks = [str(c.text) for c in view.shelf(Concern, "open")]
    assert looks == ["Order 3306 is short of 1 × ST-200"]
    player.give(PART_SHUTTLE)
    assert not player.give(press("close_pack")).refused


def test_an_order_that_is_owed_whole_is_closed_without_a_pack():
    view, player = waiting_for(shuttles=0)
    player.give(Number("0"), press("send_short"))
    answer = player.approve()
    assert str(answer.do) == "Put back 3 HC-300 (rack C 14). Then close it as owed."
    assert screen.screen(player.hand, view).presses[0].label == say("Close it as owed")
    answer = player.give(press("close_pack"))
    assert (str(answer.said), answer.prints) == (
        "Order 3306 is closed: all of it is owed",
        (),
    )
    assert (view.get(Order, "3306").state, view.shelf(Pack, "packed")) == ("owed", ())
    assert str(player.give(ORDER).said) == "What order 3306 owes is order 3306-1"
    # the shuttles come after all: what is owed comes up by itself, and first
    view._move((lies(f"rack/{SHUTTLE}", 3),))
    assert [p.order.id for p in list_prospects(view) if p.ready] == ["3306-1"]
    player.give(press("next_order"))
    assert player.hand.subject == "3306-1"
    assert not player.give(PART_COMB, PART_SHUTTLE, press("close_pack")).refused
    assert view.get(Order, "3306-1").state == "packed"


def test_an_empty_pack_of_an_order_that_owes_nothing_is_not_closed():
    view = shop(order(lines=()))
    assert str(packer(view).give(ORDER, press("close_pack")).said) == "The pack is empty"


LABEL_IT = "Mailer Flat 350 × 250. Label it, then onto the cart."


# Three combs and three shuttles of 60 g, a mailer of 30 g: 390 g. 4 % of 360 g of one lot, and of
# 180 g of each part, are 17.6 g together; one right pack in a hundred is off by 2.576 of it, 45 g.
@pytest.mark.parametrize(
    ("scale", "said", "do"),
    [
        ("390", "Pack 00501 is closed: order 3306", LABEL_IT),
        ("435", "Pack 00501 is closed: order 3306", LABEL_IT),
        ("343,5", "344 g on the scale, 390 ± 46 g expected",
         "Too light by 46 g: look through the pack."),
        ("450", "450 g on the scale, 390 ± 46 g expected",
         "Too heavy by 60 g: look through the pack."),
        ("0", "0 is no weight", "Enter what the scale shows, in g."),
        ("-5", "-5 is no weight", "Enter what the scale shows, in g."),
    ],
)  # fmt: skip
def test_the_scale_against_the_parts(scale, said, do):
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("scale"))
    answer = player.give(Number(scale))
    assert (str(answer.said), str(answer.do)) == (said, do)


def test_a_weight_before_all_is_in_closes_nothing():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, press("scale"), Number("210"))
    assert view.shelf(Pack, "packed") == ()
    assert player.hand.work.scale == 210


def test_the_scale_cannot_tell_without_a_weight_in_the_book():
    view = shop()
    no_weight(view, SHUTTLE)
    bare = view.get(Part, SHUTTLE)
    view.facts[bare.key] = replace(bare, shape=None)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("scale"))
    answer = player.give(Number("390"))
    assert str(answer.said) == "390 g on the scale: can't tell"
    assert str(answer.do) == "ST-200: no weight, no outline. Count the pack."
    assert not player.give(press("close_pack")).refused
    assert view.shelf(Pack, "packed")[0].mass_g == 0


def test_a_part_without_a_weight_is_worked_out_and_said_to_be():
    view = shop()
    no_weight(view, SHUTTLE)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    # three combs by the book, three of 200 × 40 × 6.5 mm at 680 kg/m³, the mailer of 30 g
    rows = screen.screen(player.hand, view).middle[2].rows
    assert [tuple(map(str, row)) for row in rows[:4]] == [
        ("should weigh, no wrap", "316 ± 54 g"),
        ("scale may miss one of", "ST-200 and HC-300"),
        ("ST-200: density as", "6.5 mm birch plywood"),
        ("on the scale", "—"),
    ]
    assert str(player.give(Number("316")).said) == "Pack 00501 is closed: order 3306"


def test_once_all_is_in_a_number_is_the_weight():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB)
    assert player.give(Number("390")).refused  # some is still to go: a count, and too many
    player.give(PART_SHUTTLE)
    assert player.give(Number("500")).tone == "attention"  # too heavy: it stays open
    assert str(player.give(Number("389.5")).said) == "Pack 00501 is closed: order 3306"
    assert view.shelf(Pack, "packed")[0].scale_g == 389.5
    kinds = {(r.subject, r.value) for r in player.said[-1].readings}
    assert kinds == {(f"part/{SHUTTLE}", 59.92), (f"part/{COMB}", 59.92)}


def test_a_scale_that_stands_still_closes_the_pack_whatever_was_picked_last():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    assert player.give(Weighed(391.0)).tone == "good"
    assert view.shelf(Pack, "packed")[0].scale_g == 391


def test_weighed_packs_make_the_next_known_better():
    """The shop's combs and shuttles are a tenth heavier than the book: three packs tell it."""
    view = shop(combs=20, shuttles=20)
    player = packer(view)
    pluses = []
    for n in range(4):
        if n:
            view.facts[f"order/33{n:02d}"] = replace(order(), id=f"33{n:02d}")
        number = Code("order", f"33{n:02d}" if n else "3306")
        player.give(number, PART_COMB, PART_SHUTTLE)
        weight = plan_open_pack(view, player.hand.subject).weight
        pluses.append((round(weight.grams), round(weight.plus)))
        player.give(Weighed(416.0))
    assert pluses[0] == (390, 46)
    assert abs(pluses[-1][0] - 416) < 2
    assert pluses[-1][1] < 8


def test_a_number_that_can_be_a_count_still_changes_the_pick_just_made():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    note = screen.screen(player.hand, view).main[-1].note
    assert str(note) == "A number up to 3: how many ST-200 are in. A larger one: the weight, g."
    assert str(player.give(Number("2")).said) == "2 × ST-200, not 3: 2 in the pack"


def test_the_scale_says_what_it_would_not_notice():
    view = shop(order(lines=(Line(product="040", quantity=15),)), combs=15, shuttles=15)
    light = view.get(Part, SHUTTLE)
    view.facts[light.key] = replace(light, mass_g=8.0)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("scale"))
    weight = plan_open_pack(view, player.hand.subject).weight
    assert (weight.shows, weight.hides) == ((), ("ST-200", "HC-300"))
    rows = dict(tuple(map(str, row)) for row in screen.screen(player.hand, view).middle[1].rows)
    assert rows["scale may miss one of"] == "ST-200 and HC-300"


def test_a_pack_off_its_weight_is_closed_only_when_sure_and_looked_at():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("scale"), Number("300"))
    assert player.give(press("close_pack")).asks == "sure"
    assert view.shelf(Pack, "packed") == ()
    assert player.yes().tone == "attention"
    (pack,) = view.shelf(Pack, "packed")
    assert (pack.scale_g, pack.mass_g) == (300, 390)
    (worry,) = view.shelf(Concern, "open")
    assert str(worry.text) == f"Pack {pack.id}: 300 g on the scale, 390 ± 46 g expected"


def test_a_weight_is_forgotten_once_the_pack_changes():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, press("scale"), Number("900"))
    player.give(press("take_back"), Number("1"), PART_COMB)
    assert player.hand.work.scale is None
    player.give(press("scale"), Number("900"), PART_COMB, PART_SHUTTLE)
    assert not player.give(press("close_pack")).refused


def closed_pack(view):
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    return player, view.shelf(Pack, "packed")[0].id


@pytest.mark.parametrize("by", ["label", "order", "row"])
def test_a_label_is_printed_again(by):
    view = shop()
    player, pack = closed_pack(view)
    given = {"label": Code("pack", pack), "order": ORDER, "row": press("row_1")}[by]
    answer = player.give(press("label_again"), given)
    assert answer.prints == (("label", pack),)
    assert str(answer.said) == f"Label of pack {pack}: copy 2"
    assert (view.get(Pack, pack).copies, player.hand.has_work) == (2, False)


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (Code("order", "3399"), "Order 3399 has no pack"),
        (Code("pack", "00999"), "There is no such pack"),
        (press(NO_ROW), "There is nothing in that row"),
        (press("put_down"), "Left; nothing was changed"),
    ],
)
def test_no_label_of_what_is_no_pack(given, said):
    view = shop()
    player, _ = closed_pack(view)
    assert str(player.give(press("label_again"), given).said) == said


def test_no_label_of_a_pack_that_left():
    view = shop()
    player, pack = closed_pack(view)
    view.facts[f"pack/{pack}"] = replace(view.get(Pack, pack), state="shipped")
    assert player.give(press("label_again"), ORDER).refused


def test_an_assumed_batch_is_marked():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    notes = {r.title: str(r.note) for r in screen.screen(player.hand, view).main[2].rows}
    assert notes == {"ST-200": "Stick shuttle 200",
                     "HC-300": "Heddle comb 300 · ≈ batch assumed"}  # fmt: skip


def test_rows_stand_in_the_order_of_the_rack():
    assert [w.place_name for w in list_needs(shop(), order())] == ["A 03", "C 14"]


def test_equal_layers_are_drawn_once():
    view = shop(order(lines=(Line(product="040", quantity=4),)))
    player = packer(view)
    player.give(ORDER)
    layers = screen.screen(player.hand, view).middle[1].layers
    assert [(x.label, x.level) for x in layers] == [
        ("4 × (1 HC-300 + 1 ST-200)", 0),
        ("", 0),
    ]


def test_the_mailer_and_the_stack_stand_in_the_act_and_the_rule_checks_them():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    do = dialogue.handle_input(player.hand, press("close_pack"), view)
    assert (do.args.mailer, do.args.thick_mm) == ("01", 19.5)
    thicker = msgspec.structs.replace(do.args, thick_mm=41.0, numbers={"pack": "00009"})
    act = Act(id="a9", kind="close_pack", at=player.hand.now, station="s1",
              subject="order/3306", args=thicker)  # fmt: skip
    assert str(view.do(RULES, act).said) == "Mailer Flat 350 × 250 does not close over 41.0 mm"
    gone = msgspec.structs.replace(thicker, mailer="77", thick_mm=19.5)
    assert view.do(RULES, replace(act, args=gone)).refused
    none = msgspec.structs.replace(thicker, mailer="")
    assert str(view.do(RULES, replace(act, args=none)).do) == "Label it, then onto the cart."


def test_a_part_without_an_outline_leaves_the_mailer_to_the_eye():
    view = shop()
    found = view.get(Part, COMB)
    view.facts[found.key] = replace(found, shape=None)
    player = packer(view)
    player.give(ORDER)
    remark = screen.screen(player.hand, view).middle[0]
    assert str(remark.title) == "Which mailer: can't tell"


@pytest.mark.parametrize("asks", ["count", "scale", "back", "label"])
@pytest.mark.parametrize("taken", [(), (PART_COMB,), (PART_COMB, PART_SHUTTLE)])
@pytest.mark.parametrize("state", ["packing", "cancelled"])
def test_faces_of_every_question(asks, taken, state):
    view = shop()
    player = packer(view)
    player.give(ORDER, *taken)
    view.facts["order/3306"] = replace(view.get(Order, "3306"), state=state)
    shown = screen.screen(replace(player.hand, work=replace(player.hand.work, asks=asks)), view)
    assert shown.main
    assert shown.presses[-1].code == str(press("put_down"))


def test_products_stand_above_their_parts_set_by_set():
    view = shop(order(lines=(Line(product="040", quantity=2), Line(product="021", quantity=1))))
    player = packer(view)
    player.give(ORDER, PART_COMB, Number("2"), PART_SHUTTLE)
    header, sets, table, _ = screen.screen(player.hand, view).main
    assert str(header.title) == "2 lines, 7 parts"
    assert [tuple(map(str, row)) for row in sets.rows] == [
        ("2 × PAIR: 1 HC-300 and 1 ST-200", "2 of 2 whole"),
        ("1 × LOOM-KIT: 1 HC-300 and 2 ST-200", "0 of 1 whole"),
    ]
    assert len(table.rows) == 2


def test_one_product_is_the_title_and_many_parts_leave_no_room_for_products():
    view = shop()
    player = packer(view)
    player.give(ORDER)
    assert str(screen.screen(player.hand, view).main[0].title) == "3 × PAIR, 6 parts"
    lines = tuple(Line(product="040", quantity=1) for _ in range(8))
    view.facts["order/3306"] = replace(view.get(Order, "3306"), lines=lines)
    assert isinstance(screen.screen(player.hand, view).main[1], Table)


def test_a_pack_closed_before_midnight_bears_its_day_where_its_label_is_asked_for():
    night = Pack(id="00061", order="3306", mailer="01", closed="2020-02-01T21:15:00", by="06")
    player = packer(shop(night))
    player.give(press("label_again"))
    (entry,) = screen.screen(player.hand, player.view).main[1].entries
    assert str(entry.line1) == f"closed {moment(night.closed)} by worker 06"


def test_a_shop_of_inches_weighs_in_ounces_and_says_so():
    lengths.use_units("inch", fractions=False)
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    note = screen.screen(player.hand, view).main[-1].note
    assert str(note) == "A number up to 3: how many ST-200 are in. A larger one: the weight, oz."
    player.give(press("scale"))
    (asked,) = [b for b in screen.screen(player.hand, view).main if isinstance(b, Asked)]
    assert str(asked.unit) == "oz, without wrap"
    light = player.give(Number("11.8"))
    assert str(light.said) == "11.8 oz on the scale, 13.8 ± 1.6 oz expected"
    assert str(light.do) == "Too light by 2.0 oz: look through the pack."
    player.give(press("scale"))
    assert player.give(Number("13.8")).tone == "good"
    assert view.shelf(Pack, "packed")[0].scale_g == pytest.approx(391.2234)


def test_a_heavy_pack_of_a_shop_of_inches_is_weighed_in_pounds():
    lengths.use_units("inch", fractions=False)
    view = shop(order(lines=(Line(product="040", quantity=15),)), combs=15, shuttles=15)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("scale"))
    assert str(player.give(Number("0")).do) == "Enter what the scale shows, in lb."
    assert player.give(Number("4.05")).tone == "good"
    assert view.shelf(Pack, "packed")[0].scale_g == pytest.approx(1837.0491)
