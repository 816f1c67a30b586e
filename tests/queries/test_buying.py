"""What is on its way, and what is still expected to be sold."""

from station.queries.buying import count_still_expected, list_coming, list_pushes, note_came
from station.shop.facts import Line, Order, Pack, Purchase, Push
from tests.floor.shop_small import DAY, small_shop

LATE = Purchase(id="2", material="1", quantity=20, expected="2026-12-03")
SOON = Purchase(id="1", material="1", quantity=10, came=4, expected="2026-11-27")
MAILERS = Purchase(id="3", mailer="01", quantity=100, expected="2026-11-26")
PUSH = Push(id="1", product="021", quantity=200, begins="2026-12-01", ends="2026-12-24")


def order(number, sets, due, **fields):
    return Order(id=number, lines=(Line(product="021", quantity=sets),), due=due, **fields)


def test_what_is_expected_first_stands_first_and_what_has_come_not_at_all():
    come = Purchase(id="4", material="1", quantity=5, came=5)
    found = list_coming(small_shop(LATE, SOON, MAILERS, come))
    assert [p.id for p in found] == ["3", "1", "2"]


def test_sheets_that_came_are_noted_on_the_first_expected_first():
    view = small_shop(LATE, SOON, MAILERS)
    noted = note_came(view, "material", "1", 9)  # six were still to come of the first
    assert [(p.id, p.came, p.coming) for p in noted] == [("1", 10, 0), ("2", 3, 17)]
    assert note_came(view, "material", "2", 9) == ()  # nothing of this material was ordered


def test_a_push_counts_until_it_is_over_and_where_it_begins_by_then():
    off = Push(id="2", product="021", quantity=5, begins="2026-12-01", active=False)
    view = small_shop(PUSH, off)
    assert list_pushes(view, "2026-11-25", "2026-11-30") == ()
    assert list_pushes(view, "2026-11-25", "2026-12-01") == (PUSH,)
    assert list_pushes(view, "2026-12-24", "2027-01-01") == (PUSH,)
    assert list_pushes(view, "2026-12-25", "2027-01-01") == ()


def test_what_orders_have_taken_of_a_push_is_expected_no_more():
    gone = order("3303", 30, "2026-12-02T15:00:00", state="shipped")
    left = Pack(id="00901", order="3303", mailer="01", state="shipped", left="2026-12-02T14:00:00")
    view = small_shop(
        order("3301", 7, f"{DAY}T15:00:00"),  # due before it begins: it has nothing to do with it
        order("3302", 11, "2026-12-03T15:00:00"), gone, left,
    )  # fmt: skip
    assert count_still_expected(view, PUSH, DAY) == 200 - 11
    assert count_still_expected(view, PUSH, "2026-12-03") == 200 - 11 - 30
    sold = order("3304", 900, "2026-12-05T15:00:00", state="packed")
    assert count_still_expected(small_shop(sold), PUSH, "2026-12-03") == 0
