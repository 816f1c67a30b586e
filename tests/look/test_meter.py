"""A bar's title and what is said to it never lie over each other."""

import pytest
from PySide6.QtWidgets import QApplication

from station.look.blocks.plain import MeterBlock
from station.shop.faces import Meter


@pytest.mark.parametrize("width", [300, 360, 420, 600])
@pytest.mark.parametrize("title", ["Spoilboard: 7 passes", "Opferplatte: 7 Durchgänge"])
def test_what_is_said_stands_beside_the_title_or_below_it(
    title: str, width: int, qapp: QApplication
) -> None:
    block = MeterBlock(lambda _code: None)
    block.show_block(Meter(title=title, left="", right="noch 93 Platten", fraction=0.1))
    named, beside = (w for w in block.find_page(width).words if w.text)
    assert beside.box.top() >= named.box.top() + named.measure()[1] or (
        beside.box.left() >= named.box.left() + named.measure()[0]
    )
