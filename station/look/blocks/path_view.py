"""Which part of a sheet is looked at, and how closely."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QTransform

MOST = 60.0  # times closer than the whole sheet


class Look:
    """The place in the middle, mm on the sheet, and how many times closer than the whole."""

    def __init__(self, length_mm: float = 1.0, width_mm: float = 1.0) -> None:
        self.length_mm, self.width_mm = max(length_mm, 1.0), max(width_mm, 1.0)
        self.whole()

    def whole(self) -> None:
        """The whole sheet."""
        self.zoom, self.middle = 1.0, QPointF(self.length_mm / 2, self.width_mm / 2)

    def scale(self, box: QRectF) -> float:
        """Pixels a millimetre."""
        fit = min((box.width() - 4) / self.length_mm, (box.height() - 4) / self.width_mm)
        return max(fit, 1e-3) * self.zoom

    def onto(self, box: QRectF) -> QTransform:
        """From mm on the sheet, y upwards, to pixels in a box."""
        scale = self.scale(box)
        moved = QTransform.fromTranslate(box.center().x(), box.center().y())
        moved.scale(scale, -scale)
        return moved.translate(-self.middle.x(), -self.middle.y())

    def closer(self, times: float, at: QPointF | None = None, box: QRectF | None = None) -> None:
        """So many times closer, the pixel `at` keeping its place of the sheet."""
        fixed = self._mm(at, box) if at is not None and box is not None else self.middle
        before, self.zoom = self.zoom, min(max(self.zoom * times, 1.0), MOST)
        self._to(fixed + (self.middle - fixed) * (before / self.zoom))
        if self.zoom == 1.0:
            self.whole()

    def drag(self, by: QPointF, box: QRectF) -> None:
        """Moves the sheet by so many pixels."""
        if self.zoom > 1.0:
            scale = self.scale(box)
            self._to(self.middle - QPointF(by.x() / scale, -by.y() / scale))

    def follow(self, point: QPointF | None, *, played: bool) -> None:
        """The bit comes into the middle while the path is played: a way to any place by key."""
        if played and point is not None:
            self._to(point)

    def _mm(self, at: QPointF, box: QRectF) -> QPointF:
        back, _ = self.onto(box).inverted()
        return back.map(at)

    def _to(self, middle: QPointF) -> None:
        """The middle stays on the sheet."""
        x = min(max(middle.x(), 0.0), self.length_mm)
        self.middle = QPointF(x, min(max(middle.y(), 0.0), self.width_mm))
