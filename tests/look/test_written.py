"""What is written on a widget: no line is lost where it just fits."""

import pytest
from PySide6.QtGui import QColor, QImage, QPainter

from station.look.written import TextPage, write_line

WORDS = ("Next router", "Bit 001 is broken: 0.125 in needed", "Sheet 6 is off the bed", "AVAVA Tj")


def ink(page, wide, high):
    """Counts the dark points of each row of what a page paints."""
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.fill(QColor("#ffffff"))
    painter = QPainter(image)
    page.paint(painter)
    painter.end()
    rows = ((image.pixelColor(x, y).lightness() < 128 for x in range(wide)) for y in range(high))
    return [sum(row) for row in rows]


@pytest.mark.parametrize("words", WORDS)
@pytest.mark.parametrize("size", [15, 18, 20, 24])
def test_a_line_that_just_fits_is_written_whole(words, size, qapp):
    line = write_line(words, size, bold=True)
    made = []
    for room in (0, 40):
        page = TextPage(line.width + room)
        high = page.put_line(line, (0, 0, line.width - 2 + room))
        assert high == line.height
        made.append(ink(page, line.width + 50, high + 10))
    assert made[0] == made[1]
