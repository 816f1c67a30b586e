"""The row of large buttons fits into its width, whatever stands on them."""

import pytest
from PySide6.QtWidgets import QWidget

from station.look.presses import Presses
from station.shop.faces import Press
from station.shop.words import say


@pytest.mark.parametrize("width", [640, 811, 838, 839, 840, 1011, 1318])
@pytest.mark.parametrize("wide", [(1, 1), (2, 1), (2, 1, 1), (1, 2, 3, 1), (2, 1, 1, 1, 1)])
def test_the_last_button_ends_inside(qtbot, width, wide):
    parent = QWidget()
    qtbot.addWidget(parent)
    row = Presses(parent, lambda _code: None)
    row.show_presses(tuple(Press(label=say("More"), code="X", wide=n) for n in wide))
    row.needed_height(width)
    last, _ = row._pages[-1]
    assert width - len(wide) <= last.left() + last.width() <= width
