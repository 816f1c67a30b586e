"""A held batch does not go on: not to the rack, not into a pack, not out of the door."""

from dataclasses import replace

import pytest

from station.floor.anywhere.rules import RULES as ANYWHERE
from station.floor.cart import dialogue as cart_dialogue
from station.floor.cart.rules import RULES as CART
from station.floor.cart.screen import screen as cart_screen
from station.floor.packing.screen import screen as packing_screen
from station.floor.popping.rules import RULES as POPPING
from station.floor.today.rules import RULES as TODAY
from station.floor.trimming import dialogue as trimming_dialogue
from station.floor.trimming.rules import RULES as TRIMMING
from station.queries.batches import find_hold
from station.shop.acts import Act, Answer
from station.shop.codes import Code
from station.shop.faces import Face
from station.shop.facts import Batch, Concern, Pack, Slip
from station.shop.moves import move
from station.shop.rooms import Number
from station.shop.views import Rules
from tests.fakes import FakeView
from tests.floor.orders import (
    OPEN_AGAIN,
    ORDER,
    PART_COMB,
    PART_SHUTTLE,
    inside,
    lying,
    on_rack,
    packer,
    press,
    shop,
)
from tests.floor.shop_small import COMB, SHUTTLE, Player, at, batch, hand
from tests.touch import list_texts

WHY = "put aside by worker 02"
OLD, NEW = batch(id="00100", state="cut"), batch(id="00101", state="cut")  # 2 combs, 5 combs
CARD = Code("cart", "1")


def do(view: FakeView, rules: Rules, kind: str, subject: str, **args: object) -> Answer:
    """One act of worker 02."""
    act = Act(id=f"x{len(view.entries)}", kind=kind, at=at("10:00"), worker="02", station="s1",
              subject=subject, args=args)  # fmt: skip
    return view.do(rules, act)


def hold(view: FakeView, number: str) -> None:
    """Worker 02 holds a batch."""
    assert not do(view, ANYWHERE, "hold_batch", f"batch/{number}").refused


def release(view: FakeView, number: str) -> None:
    """A supervisor lets a batch go on."""
    assert not do(
        view, ANYWHERE, "release_hold", f"batch/{number}", approved="07", reason="51"
    ).refused


def tell(face: Face) -> list[str]:
    """Every text on a screen."""
    return list(list_texts(face))


def batches_at(view: FakeView, place: str) -> dict[str, int]:
    """Pieces at a place by batch."""
    found: dict[str, int] = {}
    for h in view.stock(place=place):
        found[h.batch] = found.get(h.batch, 0) + h.qty
    return found


def test_packing_passes_held_pieces_over_and_says_which_stay() -> None:
    view = shop(OLD, NEW)
    hold(view, "00100")
    answer = packer(view).give(ORDER, PART_COMB)
    assert batches_at(view, "packing/3306") == {"00101": 3}
    assert "Batch 00100 is held: leave them there." in str(answer.do)
    assert "ST-200 in rack A 03 is held" in str(answer.do)


def test_with_only_held_pieces_there_packing_names_the_batches() -> None:
    view = shop(OLD, NEW)
    for number in ("00100", "00101"):
        hold(view, number)
    answer = packer(view).give(ORDER, PART_COMB)
    assert answer.refused
    assert str(answer.said) == "Batches 00100 and 00101 are held: 7 HC-300 in C 14 stay there"
    assert str(answer.do) == "Take the next part. A supervisor lets them go on."
    assert inside(view) == {}


def test_with_too_few_free_packing_says_how_many_may_be_taken() -> None:
    view = shop(OLD, NEW)
    hold(view, "00101")
    player = packer(view)
    answer = player.give(ORDER, PART_COMB)
    assert str(answer.said) == "Batch 00101 is held: 5 HC-300 in C 14 stay there"
    assert str(answer.do) == "Take the other 2; a supervisor lets the rest go on."
    assert not player.give(Number("2"), PART_COMB).refused
    assert batches_at(view, "packing/3306") == {"00100": 2}


def test_let_go_by_a_supervisor_they_are_taken_again() -> None:
    view = shop(OLD, NEW)
    hold(view, "00100")
    release(view, "00100")
    packer(view).give(ORDER, PART_COMB)
    assert batches_at(view, "packing/3306") == {"00100": 2, "00101": 1}


def test_a_corrected_pick_takes_no_held_pieces() -> None:
    view = shop(OLD, NEW)
    player = packer(view)
    player.give(ORDER, Number("1"), PART_COMB)
    hold(view, "00100")
    assert not player.give(Number("3")).refused
    assert batches_at(view, "packing/3306") == {"00100": 1, "00101": 2}


def test_a_pack_with_pieces_held_since_is_not_closed_until_they_are_out() -> None:
    view = shop(OLD, NEW)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    hold(view, "00100")  # 2 of the combs and all of the shuttles
    view._move((lying(SHUTTLE, 3, "00101"),))
    shown = tell(packing_screen(player.hand, view))
    assert "touch “Put back”, scan HC-300 and ST-200; then take others" in shown
    assert "Close: held pieces in it" in shown
    assert "All parts are in" not in shown
    answer = player.give(press("close_pack"))
    assert answer.refused
    assert str(answer.said) == "Batch 00100 is held: 5 of it in this pack"
    assert str(answer.do) == "Touch “Put back”, scan HC-300 and ST-200; then take others."
    player.give(press("take_back"), Number("2"))
    answer = player.give(PART_COMB)  # the held ones go first, though not taken last
    assert str(answer.do) == "Batch 00100 is held: keep them apart."
    assert on_rack(view, COMB) == 6
    player.give(press("take_back"), PART_SHUTTLE)
    player.give(PART_COMB, PART_SHUTTLE)
    assert batches_at(view, "packing/3306") == {"00101": 6}
    assert "All parts are in" in tell(packing_screen(player.hand, view))
    assert not player.give(press("close_pack")).refused


def test_a_count_of_the_rack_place_offers_no_held_pieces() -> None:
    view = shop(OLD, NEW)
    hold(view, "00101")
    player = packer(view)
    asked = player.give(ORDER, PART_COMB, press("part_missing"))
    assert str(asked.said) == "HC-300: 7 in rack C 14 by the book"  # held ones are counted too
    answer = player.give(Number("7"))
    assert "Enough" not in str(answer.do)


def packed() -> tuple[FakeView, Player]:
    """Pack 00001 with two combs of batch 00100, of order 3306, and who loads the cart."""
    view = shop(OLD, NEW, moves=(move(COMB, 2, "found", "pack/00001", "00100"),))
    order = view.facts["order/3306"]
    view.facts["order/3306"] = replace(order, state="packed")  # type: ignore[call-arg]
    pack = Pack(id="00001", order="3306", mailer="01", closed=at("09:00"), contents=((COMB, 2),))
    view.facts[pack.key] = pack
    return view, Player(view, CART, cart_dialogue.handle_input, hand("cart"))


PACK = Code("pack", "00001")


def test_a_pack_with_held_pieces_stays_off_the_cart() -> None:
    view, loader = packed()
    hold(view, "00100")
    answer = loader.give(CARD, PACK)
    assert answer.refused
    assert str(answer.said) == "Pack 00001: batch 00100 in it is held"
    release(view, "00100")
    assert not loader.give(PACK).refused


def test_a_pack_with_held_pieces_is_stopped_at_the_door() -> None:
    view, loader = packed()
    loader.give(CARD, PACK, press("at_door"))
    hold(view, "00100")
    answer = loader.give(PACK)
    assert answer.refused
    assert str(answer.said) == "Pack 00001: batch 00100 in it is held"
    assert str(answer.do) == "Scan “Off the cart”, then the pack; packing opens it."


def test_a_cart_does_not_leave_with_pieces_held_at_the_last_moment() -> None:
    view, loader = packed()
    loader.give(CARD, PACK, press("at_door"), PACK)
    assert "All seen: the cart may leave" in tell(cart_screen(loader.hand, view))
    hold(view, "00100")
    assert "All seen: the cart may leave" not in tell(cart_screen(loader.hand, view))
    assert "held: take it off" in tell(cart_screen(loader.hand, view))
    answer = loader.give(press("leave"))
    assert answer.refused
    assert str(answer.said) == "Pack 00001: batch 00100 in it is held"
    release(view, "00100")
    assert not loader.give(press("leave")).refused
    assert batches_at(view, "shipped") == {"00100": 2}


def test_nobody_is_sent_to_fetch_what_is_held() -> None:
    view = shop(OLD, NEW)
    hold(view, "00100")
    hold(view, "00101")
    answer = packer(view).give(ORDER)
    assert str(answer.do) == "ST-200 in rack A 03 is held: “Part missing” has the ways on."
    release(view, "00100")
    assert not packer(view).give(ORDER).refused


def test_only_the_pack_with_held_pieces_stays_behind() -> None:
    view, loader = packed()
    view._move((move(COMB, 2, "found", "pack/00002", "00101"),))
    view.facts["pack/00002"] = replace(view.facts["pack/00001"], id="00002")
    loader.give(CARD, PACK, Code("pack", "00002"), press("at_door"))
    hold(view, "00100")
    assert not loader.give(Code("pack", "00002")).refused
    loader.give(press("off_cart"), PACK)
    assert not loader.give(press("leave")).refused
    assert batches_at(view, "shipped") == {"00101": 2}


def test_a_pack_loaded_before_this_history_is_stopped_by_its_parts() -> None:
    view, loader = packed()
    loader.give(CARD, PACK, press("at_door"))
    hold(view, "00100")
    view.entries.clear()
    assert str(loader.give(PACK).said) == "Pack 00001: batch 00100 in it is held"


def test_a_pack_with_held_pieces_is_opened_and_packed_anew() -> None:
    view, _ = packed()
    packing = packer(view)
    assert packing.give(PACK, OPEN_AGAIN).asks == "reason"  # nothing in it is held
    hold(view, "00100")
    answer = packing.give(PACK, OPEN_AGAIN)
    assert str(answer.do) == "Batch 00100 is held: put 2 HC-300 back, take others."
    assert batches_at(view, "packing/3306") == {"00100": 2}
    packing.give(press("take_back"), PART_COMB, PART_COMB)
    assert batches_at(view, "packing/3306") == {"00101": 3}


@pytest.mark.parametrize("role", ["split", "rework"])
def test_a_child_of_a_held_batch_does_not_go_on_either(role: str) -> None:
    child = replace(NEW, id="00501", parent="00101", role=role)
    pieces = (
        move(COMB, 4, "cut", "trimming", "00501"),
        move(COMB, 4, "cut", "popping/1", "00501"),
    )
    slip = Slip(id="00501-1", batch="00501", sheet=1, router="1", at=at("09:00"))
    view = shop(NEW, child, slip, moves=pieces)
    hold(view, "00101")
    said = f"Batch 00501 is held with batch 00101: {WHY}"
    counts = {COMB: {"good": 4}}
    assert str(do(view, TRIMMING, "put_on_rack", child.key, parts=counts).said) == said
    slips = ["00501-1"]
    assert str(do(view, POPPING, "pass_on", child.key, parts=counts, slips=slips).said) == said
    trimmer = Player(view, TRIMMING, trimming_dialogue.handle_input, hand("trimming"))
    assert str(trimmer.give(Code("batch", "00501", "A")).said) == said
    release(view, "00101")
    assert not do(view, TRIMMING, "put_on_rack", child.key, parts=counts).refused


def test_what_is_split_off_a_held_batch_is_free_with_it_and_not_before() -> None:
    view = shop(NEW, moves=(move(COMB, 4, "cut", "trimming", "00101"),))
    hold(view, "00101")
    answer = do(view, ANYWHERE, "split_batch", NEW.key, part=COMB, quantity=1, area="trimming",
                numbers={"batch": "00501"})  # fmt: skip
    assert str(answer.do) == "Held as batch 00101 is: put them aside with their own traveller."
    answer = do(view, ANYWHERE, "release_hold", "batch/00501", approved="07")
    assert str(answer.said) == "Batch 00501 is held with batch 00101"
    assert str(answer.do) == "Let batch 00101 go on first."
    release(view, "00101")
    assert find_hold(view, "00501") is None


def test_pieces_of_a_held_batch_that_were_found_are_put_aside() -> None:
    view = shop(NEW, moves=(move(COMB, 2, "cut", "missing", "00101"),))
    hold(view, "00101")
    answer = do(view, ANYWHERE, "find_parts", NEW.key, part=COMB, quantity=2)
    assert str(answer.do) == "Batch 00101 is held: put them aside with it."


def settle(view: FakeView, how: str, concern: str = "c1") -> Answer:
    """A supervisor settles what needs a look."""
    return do(view, TODAY, "settle_concern", f"concern/{concern}", how=how, approved="07",
              why="looked")  # fmt: skip


def test_settling_books_no_held_pieces_onward() -> None:
    meant = (move(COMB, 2, "trimming", f"rack/{COMB}", "00101"),)
    worry = Concern(id="c1", what="no-longer", text="?", since=at("09:00"), about=NEW.key,
                    choices=("leave it out", "book what is there"), meant=meant)  # fmt: skip
    view = shop(NEW, worry, moves=(move(COMB, 2, "cut", "trimming", "00101"),))
    hold(view, "00101")
    answer = settle(view, "book what is there")
    assert str(answer.said) == f"Batch 00101 is held: {WHY}"
    assert str(answer.do) == "Leave it out, or let the batch go on first."
    release(view, "00101")
    assert not settle(view, "book what is there").refused


def test_settled_means_that_it_really_goes_on() -> None:
    child = replace(NEW, id="00501", parent="00101", role="split")
    view = shop(NEW, child)
    hold(view, "00101")
    parents = view.entries[-1].act.id
    hold(view, "00501")
    childs = view.entries[-1].act.id
    answer = settle(view, "let it go on", childs)
    assert str(answer.said) == "Batch 00501 is held with batch 00101"
    answer = settle(view, "let it go on", parents)
    assert str(answer.do) == "Batch 00101 may go on. Supervisor 07: looked."
    assert not settle(view, "let it go on", childs).refused
    assert find_hold(view, "00501") is None


def test_a_hold_is_looked_for_up_to_the_first_batch() -> None:
    first = Batch(id="1", cut_file="008", revision="C", holds=("x",))
    second, third = (
        replace(first, id="2", parent="1", holds=()),
        replace(first, id="3", parent="2"),
    )
    view = FakeView.of(first, second, replace(third, holds=()))
    assert find_hold(view, "3") == first
    assert (
        find_hold(FakeView.of(replace(second, parent="3"), replace(third, holds=())), "3") is None
    )
    assert find_hold(view, "") is None


def test_the_answer_to_a_hold_lists_where_its_pieces_lie() -> None:
    view = shop(OLD, NEW)
    packer(view).give(ORDER, PART_COMB)
    answer = do(view, ANYWHERE, "hold_batch", "batch/00100")
    assert str(answer.do) == (
        "Put aside what lies there: open pack of order 3306: 2 and rack A 03: 7."
    )


def test_a_hold_says_what_left_the_shop_already() -> None:
    view = shop(OLD, NEW, moves=(move(COMB, 3, "cut", "shipped", "00100"),))
    answer = do(view, ANYWHERE, "hold_batch", "batch/00100")
    assert str(answer.said) == "Batch 00100 is held; 3 of it left the shop already"


def test_what_was_split_off_is_in_the_list_too() -> None:
    view = shop(OLD, NEW, moves=(move(COMB, 9, "cut", "trimming", "00100"),))
    split = do(view, ANYWHERE, "split_batch", "batch/00100", part=COMB, quantity=4,
               area="trimming", numbers={"batch": "00777"})  # fmt: skip
    assert not split.refused
    answer = do(view, ANYWHERE, "hold_batch", "batch/00100")
    assert "trimming: 9" in str(answer.do)


def test_what_let_a_batch_go_who_and_why_is_kept() -> None:
    view = shop(OLD, NEW)
    hold(view, "00100")
    (worry,) = view.shelf(Concern, "open")
    asked = do(view, ANYWHERE, "release_hold", "batch/00100", approved="07")
    assert asked.asks == "reason"
    release(view, "00100")
    settled = view.get(Concern, worry.id)
    assert (settled.settled, settled.by) == ("let it go on", "07")
    assert settled.reason == "counted again"


def count(view: FakeView, counted: int, **known: object) -> Answer:
    """Worker 02 counts the rack place of the combs, for a reason."""
    return do(view, ANYWHERE, "recount_place", f"part/{COMB}", part=COMB, counted=counted,
              **{"sure": True, "reason": "51", **known})  # fmt: skip


def test_held_pieces_are_not_counted_off_the_rack_without_a_supervisor() -> None:
    view = shop(OLD, NEW)  # 2 and 5 combs
    hold(view, "00100")
    assert not count(view, 3).refused  # free ones first
    assert batches_at(view, f"rack/{COMB}") == {"00100": 2, "00101": 1}
    asked = count(view, 1)
    assert (str(asked.said), asked.asks) == (
        "Batch 00100 is held, and 1 of it would be gone", "supervisor",
    )  # fmt: skip
    assert not count(view, 1, approved="07").refused
    assert batches_at(view, f"rack/{COMB}") == {"00100": 1}


def test_what_is_found_where_held_pieces_lie_is_held_with_them() -> None:
    view = shop(OLD, NEW)
    hold(view, "00100")
    answer = count(view, 9)
    assert batches_at(view, f"rack/{COMB}") == {"00100": 4, "00101": 5}
    assert "Enough" not in str(answer.do)
    release(view, "00100")
    count(view, 10)
    assert batches_at(view, f"rack/{COMB}") == {"00100": 4, "00101": 6}


def test_held_pieces_that_were_counted_off_are_held_when_they_turn_up_again() -> None:
    view = shop(OLD, NEW)
    hold(view, "00101")
    count(view, 0, approved="07")
    assert count(view, 3).tone == "attention"
    assert batches_at(view, f"rack/{COMB}") == {"00101": 3}


@pytest.mark.parametrize(("counted", "asks"), [(5, ""), (6, "reason"), (4, "reason")])
def test_every_count_above_what_was_there_asks_why(counted: int, asks: str) -> None:
    view = shop(NEW, moves=(move(COMB, 5, "cut", "trimming", "00101"),))
    answer = do(view, ANYWHERE, "recount", NEW.key, part=COMB, place="trimming", counted=counted)
    assert answer.asks == asks
    sure = do(view, ANYWHERE, "recount_place", f"part/{COMB}", part=COMB, counted=counted + 2)
    assert sure.asks == asks


def test_what_is_found_with_its_paper_joins_the_holds_of_its_batch() -> None:
    view = shop(NEW, moves=(move(COMB, 5, "cut", "trimming", "00101"),))
    hold(view, "00101")
    assert not do(view, ANYWHERE, "recount", NEW.key, part=COMB, place="trimming", counted=8,
                  reason="51").refused  # fmt: skip
    counts = {COMB: {"good": 8}}
    assert do(view, TRIMMING, "put_on_rack", NEW.key, parts=counts).refused
    release(view, "00101")
    assert not do(view, TRIMMING, "put_on_rack", NEW.key, parts=counts).refused


def test_a_worker_neither_counts_held_pieces_off_nor_lets_them_go() -> None:
    view = shop(NEW, moves=(move(COMB, 5, "cut", "trimming", "00101"),))
    hold(view, "00101")
    fewer = do(view, ANYWHERE, "recount", NEW.key, part=COMB, place="trimming", counted=3,
               reason="51")  # fmt: skip
    assert fewer.asks == "supervisor"
    assert do(view, ANYWHERE, "release_hold", NEW.key, reason="51").asks == "supervisor"
    assert find_hold(view, "00101") is not None
