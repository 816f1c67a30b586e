"""Looks a window over: cut text, widgets over each other, targets too small for a glove."""

from collections.abc import Iterator
from itertools import combinations

from PySide6.QtCore import QPoint, QRect
from PySide6.QtWidgets import QScrollArea, QWidget

from station.look.blocks.rows import TableRow, measure_thin
from station.look.style import TARGET, find_lettering, px
from station.look.widgets import Label, PaintedBlock, Touch
from station.look.window import Window
from station.look.written import FAR, PlacedText

WITHIN = 4  # px that a text may reach beyond its box: letters have room around them


def list_problems(window: Window) -> list[str]:
    """Lists everything on this screen that is not fit, each named by its control."""
    found: list[str] = []
    for widget in window.findChildren(QWidget):
        if not widget.isVisible():
            continue
        found += [p for words in list_written(widget) for p in _find_cut(words, widget)]
        found += _find_overlaps(widget) + _find_outside(widget)
        if isinstance(widget, Touch):
            found += _find_small(widget)
        if isinstance(widget, QScrollArea):
            found += _find_hidden(widget)
    return found


def list_texts(window: Window) -> list[str]:
    """Lists every text that stands on the window."""
    shown = (w for w in window.findChildren(QWidget) if w.isVisible())
    return [words.text for widget in shown for words in list_written(widget)]


def list_written(widget: QWidget) -> Iterator[PlacedText]:
    """Lists the texts that a widget writes itself."""
    if isinstance(widget, PaintedBlock):
        yield from widget.find_page(widget.width()).words
    elif isinstance(widget, Touch):
        yield from widget.list_words()
    elif isinstance(widget, Label) and widget.text():
        yield PlacedText(
            widget.text(),
            widget.rect(),
            find_lettering(widget.size_, bold=widget.heavy),
            "",
            int(widget.alignment()),
        )


def _find_cut(words: PlacedText, widget: QWidget) -> list[str]:
    """Finds a text that needs more room than it has, or stands outside its widget."""
    wide, high = words.measure(FAR if isinstance(widget, Label) else 0)
    box = words.box
    if wide > box.width() + 1 or high > box.height() + WITHIN:
        has = f"{box.width()}×{box.height()}"
        return [f"cut text “{words.text}”: needs {wide}×{high}, has {has}"]
    if not widget.rect().adjusted(-1, -WITHIN, 1, WITHIN).contains(box):
        return [f"text “{words.text}” stands outside its place"]
    return []


def _find_small(touch: Touch) -> list[str]:
    thin = isinstance(touch, TableRow) and touch.height() >= measure_thin()
    if not touch.code or thin or touch.height() >= px(TARGET):
        return []
    return [f"small target “{touch.accessibleName()}”: {touch.height()} px high"]


def _find_overlaps(widget: QWidget) -> list[str]:
    """Finds children, or texts on one page, that lie over each other."""
    children = [
        c
        for c in widget.children()
        if isinstance(c, Label | Touch | PaintedBlock) and c.isVisible()
    ]
    boxes = [(_name_widget(c), c.geometry()) for c in children if c.width() and c.height()]
    if isinstance(widget, PaintedBlock | Touch):
        boxes += [(words.text, _find_ink(words)) for words in list_written(widget)]
    return [
        f"“{a}” lies over “{b}”"
        for (a, one), (b, other) in combinations(boxes, 2)
        if one.adjusted(2, 2, -2, -2).intersects(other.adjusted(2, 2, -2, -2))
    ]


def _find_ink(words: PlacedText) -> QRect:
    """Finds where a text's letters stand in its box."""
    wide, high = words.measure()
    left, top = words.box.left(), words.box.top()
    spare, below = words.box.width() - wide, words.box.height() - high
    if words.flags & 0x2:  # at the right
        left += spare
    elif words.flags & 0x4:  # in the middle
        left += spare // 2
    if words.flags & 0x40:  # at the foot
        top += below
    elif words.flags & 0x80:
        top += below // 2
    return QRect(left, top, wide, high)


def _find_outside(widget: QWidget) -> list[str]:
    """Finds a block or a target that reaches beyond what holds it."""
    holder = widget.parentWidget()
    if not isinstance(widget, PaintedBlock | Touch | Label) or holder is None:
        return []
    if holder.rect().adjusted(-1, -1, 1, 1).contains(widget.geometry()):
        return []
    return [f"“{_name_widget(widget)}” reaches beyond its place"]


def _find_hidden(area: QScrollArea) -> list[str]:
    """Finds touchable things that only scrolling shows."""
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


def _name_widget(widget: QWidget) -> str:
    return widget.text() if isinstance(widget, Label) else widget.accessibleName()
