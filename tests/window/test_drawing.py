"""A piece is spoiled by a touch on the drawn sheet: the real window, the real pieces."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from station.look.blocks.drawings import SheetBlock
from station.shop.faces import SheetDrawing, Table
from station.shop.facts import Revision
from tests.floor.shop_small import SHUTTLES
from tests.queries.test_pace import later, sent, started


@pytest.mark.parametrize("n", [0, 17, 95])
def test_a_touch_on_a_drawn_piece_counts_it_spoiled(screen, n):
    stage = screen.stage
    batch = started(stage, SHUTTLES)
    later(stage, 1300)
    assert sent(stage, f"slip {batch} 1").tone == "good"
    screen.at("popping")
    screen.scan(f"slip {batch} 1")
    QApplication.processEvents()
    (drawn,) = [b for b in screen.window.findChildren(SheetBlock) if b.isVisible()]
    piece = stage.ledger.view.get(Revision, f"{SHUTTLES}.C").placed[n]
    width = drawn.block.revision.width_mm
    x, y = piece.x_mm + 100, piece.y_mm + 20  # in the middle of 200 × 40 mm
    scale = drawn.pixels_per_mm()
    at = QPoint(round(1 + x * scale), round(1 + (width - y) * scale))
    QTest.mouseClick(drawn, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
    face = screen.session.desk.face()
    (table,) = [b for b in face.main if isinstance(b, Table)]
    assert [str(cell.text) for cell in table.rows[0].cells][:3] == ["96", "95", "1"]
    (block,) = [b for b in face.side if isinstance(b, SheetDrawing)]
    ((spot_x, spot_y, tone),) = block.spots
    assert abs(spot_x - x) < 10
    assert abs(spot_y - y) < 10
    assert tone == "stop"
    assert screen.window.strip.code.text() == ""  # a touch is no scan
