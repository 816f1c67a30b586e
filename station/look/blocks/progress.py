"""A large value with a bar under it that runs on by the shop's clock."""

from PySide6.QtCore import QRect, QTimer
from PySide6.QtGui import QHideEvent, QPainter, QShowEvent

from station.look.marks import draw_bar
from station.look.shop_time import SHOP_TIME, to_seconds
from station.look.style import px
from station.look.widgets import PaintedBlock, Send
from station.look.written import LOW_LEFT, LOW_RIGHT, TextPage, write_line
from station.shop.faces import Progress

HIGH = 16  # px, the bar
FASTEST, SLOWEST = 40, 1000  # ms between two steps of the bar


class ProgressBlock(PaintedBlock[Progress]):
    """A large value with a bar under it.

    With `until` the bar runs on from the share that the room gave, to be full at the end;
    no timer runs while nothing moves or nobody can see it.
    """

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self._given_at = 0.0
        self.timer = QTimer(self)
        self.timer.timeout.connect(self._go_on)

    def show_block(self, block: Progress) -> None:
        """Shows a progress."""
        if block != self.block:
            self._given_at = SHOP_TIME.now()
            super().show_block(block)
        self._set_timer()

    def lay_out(self, page: TextPage, block: Progress) -> None:
        """Lays out the value, its note, what is said at the right; room for the bar."""
        big, note = write_line(block.big, 28, bold=True), write_line(block.note, 17)
        left = big.width + px(10) if big.text else 0
        rest = left + note.width + px(10) if note.text else left
        shade = "" if block.tone == "good" else block.tone
        high = page.put_line(big, (0, 0, big.width), tone=shade)
        right = (rest, 0, page.width - rest)
        high = page.put_text(block.right, right, 16, tone="quiet", flags=LOW_RIGHT, high=high)
        low = high - px(3)
        page.put_line(note, (left, 0, note.width), tone="quiet", flags=LOW_LEFT, high=low)
        page.height = high + px(8) + px(HIGH)

    def find_share(self) -> float:
        """Finds the share of the bar that is filled now, 0 to 1."""
        if self.block is None or self.block.until is None:
            return self.block.fraction if self.block else 0.0
        left = to_seconds(self.block.until[1]) - self._given_at
        if left <= 0:
            return self.block.fraction
        gone = min((SHOP_TIME.now() - self._given_at) / left, 1.0)
        return self.block.fraction + (1.0 - self.block.fraction) * gone

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the bar."""
        if self.block:
            box = QRect(0, self.height() - px(HIGH), self.width(), px(HIGH))
            draw_bar(painter, box, self.find_share(), self.block.tone or "good")

    def _go_on(self) -> None:
        """Paints the bar alone; the timer ends when it is full."""
        self.update(0, self.height() - px(HIGH), self.width(), px(HIGH))
        self._set_timer()

    def _set_timer(self) -> None:
        """Starts the timer where the bar moves and is seen, and stops it elsewhere."""
        until = self.block.until if self.block else None
        if until is None or not self.isVisible() or self.find_share() >= 1.0:
            self.timer.stop()
            return
        whole = max(to_seconds(until[1]) - to_seconds(until[0]), 1.0)
        each = whole * 1000 / max(self.width(), 1)  # ms for one pixel
        self.timer.setInterval(round(min(max(each, FASTEST), SLOWEST)))
        if not self.timer.isActive():
            self.timer.start()

    def showEvent(self, event: QShowEvent) -> None:
        """Moves on."""
        super().showEvent(event)
        self._set_timer()

    def hideEvent(self, event: QHideEvent) -> None:
        """Stops: nobody sees it."""
        super().hideEvent(event)
        self.timer.stop()
