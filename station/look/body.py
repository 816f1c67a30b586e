"""What stands between the bars: four panes, laid out once for each face."""

from operator import itemgetter
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from station.look.style import px

if TYPE_CHECKING:
    from station.look.panes import Pane
    from station.look.widgets import KeyedTouch, Send, Touch
    from station.shop.faces import Face

EDGE, GAP, ABOVE = 24, 16, 8  # px, beside the panes, between them, above and below them
LEVEL = 8  # px, what differs by no more stands on one line
TOP_PANE = 126  # px, four lines of an area's figures


class FaceBody(QWidget):
    """Holds a top pane over the whole width; main, middle and side under it."""

    def __init__(self) -> None:
        super().__init__()
        self.panes: list[Pane] = []
        self._weights = (1, 0, 0)

    def _make_panes(self, send: "Send") -> None:
        """Makes the panes with the first face: the frame stands before they are loaded."""
        from station.look.panes import Pane  # noqa: PLC0415 - after the first frame

        self.panes = [Pane(send, self) for _ in range(4)]
        self.top_pane, self.main_pane, self.middle_pane, self.side_pane = self.panes

    def show_face(self, face: "Face", send: "Send") -> None:
        """Fills the panes and lays them out."""
        if not self.panes:
            self._make_panes(send)
        self.top_pane.show_blocks(face.top)
        self.main_pane.show_blocks(face.main, face.beside, face.presses)
        self.middle_pane.show_blocks(face.middle)
        self.side_pane.show_blocks(face.side)
        self.side_pane.set_ground(face.side)
        self._weights = face.weights
        self._lay_panes()

    def show_typing(self, text: str, caret: int) -> None:
        """Shows what is being typed where it is to stand."""
        for pane in self.panes:
            for block in (*pane.first.blocks, *pane.second.blocks):
                block.show_typing(text, caret)

    def list_buttons(self) -> "list[KeyedTouch]":
        """Lists the buttons in use that an F key presses: the large ones, in order, first."""
        if not self.panes:
            return []
        from station.look.widgets import KeyedTouch  # noqa: PLC0415 - after the first frame

        presses = self.main_pane.presses
        inner = self.main_pane.first.findChildren(KeyedTouch)
        large = presses.buttons[: len(presses.shown)] if presses else []
        return [*large, *(t for t in inner if t.number and t.code and t.isVisibleTo(self))]

    def list_stops(self) -> "list[Touch]":
        """Lists what can be touched now, in the order of reading: pane by pane, row by row."""
        from station.look.widgets import Touch  # noqa: PLC0415 - after the first frame

        found = []
        for pane in self.panes:
            here = [t for t in pane.findChildren(Touch) if t.code and t.isVisibleTo(self)]
            places = {t: t.mapTo(self, QPoint(0, 0)) for t in here if t.isEnabled()}
            found += sorted(places, key=lambda t: (places[t].y(), places[t].x()))
        return found

    def find_stop(self, now: QWidget | None, toward: QPoint) -> "Touch | None":
        """Finds what can be touched next to what has the focus, up, down, left or right.

        Up and down stay in the pane. With the focus nowhere: the first of all.
        """
        stops = self.list_stops()
        if now is None or now not in stops:
            return next(iter(stops), None)
        middle, pane = now.mapTo(self, now.rect().center()), self._find_pane(now)
        ahead = []
        for stop in stops:
            by = stop.mapTo(self, stop.rect().center()) - middle
            along = by.x() * toward.x() + by.y() * toward.y()
            aside = abs(by.x() * toward.y()) + abs(by.y() * toward.x())
            reached = bool(toward.x()) or self._find_pane(stop) is pane
            if reached and along > px(LEVEL):
                ahead.append((along + 2 * aside, stop))
        return min(ahead, key=itemgetter(0))[1] if ahead else None

    def _find_pane(self, widget: QWidget) -> "Pane | None":
        """Finds the pane that something stands in."""
        return next((pane for pane in self.panes if pane.isAncestorOf(widget)), None)

    def focus_stop(self, stop: "Touch") -> None:
        """Gives the focus to what can be touched, and scrolls to it where it is hidden."""
        stop.setFocus(Qt.FocusReason.TabFocusReason)
        if pane := self._find_pane(stop):
            for area in (pane.main, pane.beside):
                if area.isAncestorOf(stop):
                    area.ensureWidgetVisible(stop, 0, px(LEVEL))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lays the panes out in the new size."""
        super().resizeEvent(event)
        if self.panes:
            self._lay_panes()

    def _lay_panes(self) -> None:
        edge, gap = px(EDGE), px(GAP)
        above = px(ABOVE)
        left, top, width = edge, above, self.width() - 2 * edge
        if not self.top_pane.isHidden():
            self.top_pane.put_into(QRect(left, top, width, px(TOP_PANE)))
            top += px(TOP_PANE) + gap
        row = [
            (pane, max(weight, 1))
            for pane, weight in zip(self.panes[1:], self._weights, strict=True)
            if not pane.isHidden()
        ]
        free = width - gap * max(len(row) - 1, 0)
        total = sum(weight for _, weight in row)
        for pane, weight in row:
            wide = round(free * weight / total)
            pane.put_into(QRect(left, top, wide, self.height() - top - above))
            left += wide + gap
