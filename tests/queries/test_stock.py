"""Questions about what lies where."""

from station.queries import stock
from station.shop.facts import Batch, Lot, Part, RackPlace
from station.shop.moves import SHEET, Held, move
from tests.fakes import FakeView

COMB = Part(id="014", name="HC-300", words="Heddle comb 300", rack="014")
HELD = Batch(id="00412", cut_file="008", revision="C", holds=("why",))
RACK = (
    move("014", 5, "found", "rack/014", "00413"),
    move("014", 3, "found", "rack/014", "00412"),
    move("021", 9, "found", "rack/014", "00411"),
)


def test_the_oldest_batch_comes_first_and_other_parts_are_left_out():
    lying = stock.list_on_rack(FakeView.of(moves=RACK), COMB)
    assert [(h.batch, h.qty) for h in lying] == [("00412", 3), ("00413", 5)]


def test_a_part_without_a_place_lies_nowhere():
    assert stock.list_on_rack(FakeView.of(moves=RACK), Part(id="014", name="", words="")) == ()


def test_held_pieces_are_not_free():
    lying = stock.list_free_on_rack(FakeView.of(HELD, moves=RACK), COMB)
    assert [(h.batch, h.qty) for h in lying] == [("00413", 5)]


def test_sheets_of_a_lot_are_counted_in_the_store_alone():
    view = FakeView.of(
        moves=(move(SHEET, 9, "bought", "store", "7"), move(SHEET, 2, "store", "bed/1", "7"))
    )
    assert stock.count_in_store(view, "7") == 7
    assert stock.count_in_store(view, "8") == 0


def test_pieces_are_taken_in_the_order_they_come():
    lying = (Held("rack/014", "1", "014", 3), Held("rack/014", "2", "014", 5))
    assert [h.qty for h in stock.take_in_order(lying, 4)] == [3, 1]
    assert [h.qty for h in stock.take_in_order(lying, 99)] == [3, 5]
    assert stock.take_in_order(lying, 0) == ()
    assert stock.move_in_order(lying, 4, "recount") == (
        move("014", 3, "rack/014", "recount", "1"),
        move("014", 1, "rack/014", "recount", "2"),
    )


def test_a_place_is_named_for_a_person():
    view = FakeView.of(RackPlace(id="014", name="C 14", part="014"))
    named = [str(stock.name_place(view, p)) for p in ("rack/014", "rack/099", "popping/2")]
    assert named == ["rack C 14", "rack 099", "popping, sheet 2"]


def test_the_lots_in_the_store_are_found_behind_hundreds_that_are_used_up():
    used = [Lot(id=f"{n:04d}", material="1", received="2026-01-05") for n in range(1, 200)]
    left = [
        Lot(id="0700", material="1", received="2026-11-20"),
        Lot(id="0701", material="1", received="2026-11-03"),
        Lot(id="0702", material="2", received="2026-11-01"),
        Lot(id="0703", material="1", received="2026-11-02", active=False),
    ]
    moves = tuple(move(SHEET, 5, "bought", "store", lot.id) for lot in left)
    view = FakeView.of(*used, *left, moves=moves)
    assert [(lot.id, n) for lot, n in stock.list_stored_lots(view, "1")] == [
        ("0701", 5),
        ("0700", 5),
    ]
