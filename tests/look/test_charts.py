"""The names on Shop today's charts keep apart from one another."""

from PySide6.QtCore import QPointF

from station.look.blocks.charts import PlacesBlock, find_plan_line
from station.look.style import px
from station.shop.faces import Place, Places
from station.shop.words import say

LINE = 19  # px, the least between two names


def test_the_plan_is_named_above_the_lines_at_the_end_of_the_day() -> None:
    end = QPointF(700, 120)
    cut = QPointF(700, 122)  # named from 12 px below its end on
    assert cut.y() + px(12) - find_plan_line([cut], end) >= px(LINE)


def test_the_plan_is_named_at_its_end_while_the_lines_are_far_from_it() -> None:
    assert find_plan_line([QPointF(300, 200)], QPointF(700, 120)) == 120 + px(5)


def test_an_area_that_nothing_waits_for_keeps_apart_from_the_one_before(qapp) -> None:
    names = ("Loading", "Popping", "Trimming", "Packing", "Cart")
    waits = (None, 3, 4, None, 5)
    block = Places(items=tuple(
        Place(name=say(n), done="7", unit="parts", rate="1 an hour", waiting=w)
        for n, w in zip(names, waits, strict=True)))  # fmt: skip
    spans = PlacesBlock(lambda _code: None)._list_spans(block, 1280)
    (_, trimming, wide), (_, packing, _) = spans[2], spans[3]
    assert packing - (trimming + wide) >= px(22)  # as far as "holding up" may run on
    assert spans[-1][1] + spans[-1][2] <= 1280
