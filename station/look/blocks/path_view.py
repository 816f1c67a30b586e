"""Which part of a sheet is looked at, and how closely."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QTransform

MOST = 60.0  # times closer than the whole sheet


class SheetView:
    """Holds the place in the middle, mm on the sheet, and how many times closer than the whole."""

    def __init__(self, length_mm: float = 1.0, width_mm: float = 1.0) -> None:
        self.length_mm, self.width_mm = max(length_mm, 1.0), max(width_mm, 1.0)
        self.show_whole()

    def show_whole(self) -> None:
        """Shows the whole sheet."""
        self.zoom, self.middle = 1.0, QPointF(self.length_mm / 2, self.width_mm / 2)

    def pixels_per_mm(self, box: QRectF) -> float:
        """Gives the pixels a millimetre."""
        fit = min((box.width() - 4) / self.length_mm, (box.height() - 4) / self.width_mm)
        return max(fit, 1e-3) * self.zoom

    def map_onto(self, box: QRectF) -> QTransform:
        """Maps mm on the sheet, y upwards, to pixels in a box."""
        scale = self.pixels_per_mm(box)
        moved = QTransform.fromTranslate(box.center().x(), box.center().y())
        moved.scale(scale, -scale)
        return moved.translate(-self.middle.x(), -self.middle.y())

    def zoom_by(self, times: float, at: QPointF | None = None, box: QRectF | None = None) -> None:
        """Goes so many times closer, the pixel `at` keeping its place of the sheet."""
        fixed = self.to_mm(at, box) if at is not None and box is not None else self.middle
        before, self.zoom = self.zoom, min(max(self.zoom * times, 1.0), MOST)
        self.move_to(fixed + (self.middle - fixed) * (before / self.zoom))
        if self.zoom == 1.0:
            self.show_whole()

    def drag(self, by: QPointF, box: QRectF) -> None:
        """Moves the sheet by so many pixels."""
        if self.zoom > 1.0:
            scale = self.pixels_per_mm(box)
            self.move_to(self.middle - QPointF(by.x() / scale, -by.y() / scale))

    def look_at(self, point: QPointF, zoom: float) -> None:
        """Brings a place into the middle, at least so many times closer than the whole sheet."""
        self.zoom = max(self.zoom, zoom)
        self.move_to(point)

    def to_mm(self, at: QPointF, box: QRectF) -> QPointF:
        """Gives the place of a pixel of a box, mm on the sheet."""
        back, _ = self.map_onto(box).inverted()
        return back.map(at)

    def move_to(self, middle: QPointF) -> None:
        """Moves the middle, which stays on the sheet."""
        x = min(max(middle.x(), 0.0), self.length_mm)
        self.middle = QPointF(x, min(max(middle.y(), 0.0), self.width_mm))
