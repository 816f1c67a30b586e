"""Looks a window over: cut text, widgets over each other, targets too small for a glove."""

from itertools import combinations

from PySide6.QtCore import QPoint, QRect
from PySide6.QtWidgets import QScrollArea, QWidget

from station.look.widgets import TARGET, Label, Touch
from station.look.window import SIZE, Window


def problems(window: Window) -> list[str]:
    """Everything on this screen that is not fit, each named by its control."""
    found = [p for label in window.findChildren(Label) if label.isVisible() for p in _cut(label)]
    found += [
        p for touch in window.findChildren(Touch) if touch.isVisible() for p in _small(touch)
    ]
    for widget in window.findChildren(QWidget):
        if widget.isVisible():
            found += _overlaps(widget)
    found += _too_large(window)
    return found + [
        p for area in window.findChildren(QScrollArea) if area.isVisible() for p in _hidden(area)
    ]


def _cut(label: Label) -> list[str]:
    """A label whose text needs more room than it has."""
    text = label.text()
    if not text:
        return []
    need = label.fontMetrics().boundingRect(
        QRect(0, 0, max(label.width(), 1), 10_000),
        int(label.alignment()) | (0x1000 if label.wordWrap() else 0),
        text,
    )
    if need.width() > label.width() + 1 or need.height() > label.height() + 4:
        needs, has = f"{need.width()}×{need.height()}", f"{label.width()}×{label.height()}"
        return [f"cut text “{text}”: needs {needs}, has {has}"]
    return []


def _too_large(window: Window) -> list[str]:
    """A window that its contents have pushed beyond the smallest screen."""
    least = window.minimumSizeHint()
    if least.width() <= SIZE[0] and least.height() <= SIZE[1]:
        return []
    return [f"the window needs {least.width()}×{least.height()}, a screen has {SIZE[0]}×{SIZE[1]}"]


def _small(touch: Touch) -> list[str]:
    if not touch.code or touch.height() >= TARGET:
        return []
    return [f"small target “{touch.accessibleName()}”: {touch.height()} px high"]


def _overlaps(widget: QWidget) -> list[str]:
    """Children that lie over each other."""
    children = [c for c in widget.children() if isinstance(c, QWidget) and c.isVisible()]
    children = [c for c in children if isinstance(c, Label | Touch) and c.width() and c.height()]
    return [
        f"“{_name(a)}” lies over “{_name(b)}”"
        for a, b in combinations(children, 2)
        if _box(a).adjusted(2, 2, -2, -2).intersects(_box(b).adjusted(2, 2, -2, -2))
    ]


def _hidden(area: QScrollArea) -> list[str]:
    """Touchable things that only scrolling shows."""
    inner = area.widget()
    if inner is None or inner.height() <= area.viewport().height() + 2:
        return []
    low = area.viewport().height()
    below = [
        t.accessibleName()
        for t in inner.findChildren(Touch)
        if t.isVisible() and t.code and t.mapTo(inner, QPoint(0, t.height())).y() > low + 4
    ]
    return [f"only seen by scrolling: {', '.join(below[:3])}"] if below else []


def _box(widget: QWidget) -> QRect:
    return widget.geometry()


def _name(widget: QWidget) -> str:
    return widget.text() if isinstance(widget, Label) else widget.accessibleName()
