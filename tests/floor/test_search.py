"""One line searches the office's lists: numbers, words and parts of them, whichever list it is."""

import pytest

from station.shop.facts import Order
from tests.replay import PIN, Stage
from tests.touch import find_touch, list_touches


@pytest.fixture
def stage(tmp_path):
    made = Stage(tmp_path)
    for line in ("@worker 07", "@area office", "button list_part"):
        made.send(line)
    yield made
    made.close()


def shown(stage):
    return [texts[0] for _, texts in list_touches(stage.desk.face().main)]


@pytest.mark.parametrize(
    ("text", "said", "rows"),
    [
        ("heddle", "Parts with “heddle”: 3", ["014", "061", "062"]),
        ("HC-", "Parts with “HC-”: 3", ["014", "061", "062"]),
        ("330", "Orders with “330”: 4", ["3306", "3307", "3308", "3309"]),
        ("birch", "Materials with “birch”: 2", ["1", "2"]),
        ("no such thing", "Parts: there is no no such thing", None),
    ],
)
def test_what_is_searched_for_stands_in_its_list(stage, text, said, rows):
    stage.send("button search")
    given = stage.send(text)
    assert str(given.answer.said) == said
    if rows is not None:
        assert shown(stage) == rows
        stage.send(find_touch(stage.desk.face(), rows[-1]))
        assert stage.desk.hand.work.chosen == rows[-1]


def test_a_word_is_searched_for_without_asking_first_and_a_card_opens_its_thing(stage):
    assert str(stage.send("treadle").answer.said) == "Parts with “treadle”: 1"
    stage.send("button search")
    assert str(stage.send("order 3307").answer.said) == "Order 3307"


def test_a_list_shows_all_again_and_twelve_a_page(stage):
    stage.send("heddle")
    stage.send("button list_reason")
    rows = shown(stage)
    assert len(rows) == 12
    stage.send(f"touch {rows[-1]}")
    assert stage.desk.hand.work.chosen == rows[-1]


def test_an_order_in_the_form_outlives_a_power_cut(stage):
    lines = ("button list_order", "button new", "product 032", "6", "button lines_done",
             "touch due", "2026-11-27 14:00")  # fmt: skip
    for line in lines:
        stage.send(line)
    stage.send("restart")
    for line in ("button save", "worker 07", PIN):
        given = stage.send(line)
    assert str(given.answer.said) == "Order 9001 is new"
    order = stage.ledger.view.get(Order, "9001")
    assert (order.due, [(x.product, x.quantity) for x in order.lines]) == (
        "2026-11-27T14:00:00", [("032", 6)])  # fmt: skip
