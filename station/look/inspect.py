"""Looks a window over: cut text, widgets over each other, targets too small for a glove."""

from collections.abc import Iterator
from itertools import combinations

from PySide6.QtCore import QPoint, QRect
from PySide6.QtWidgets import QScrollArea, QWidget

from station.look.style import TARGET, px
from station.look.widgets import Label, Painted, Touch
from station.look.window import Window
from station.look.written import Words, room

WITHIN = 4  # px that a text may reach beyond its box: letters have room around them


def problems(window: Window) -> list[str]:
    """Everything on this screen that is not fit, each named by its control."""
    found: list[str] = []
    for widget in window.findChildren(QWidget):
        if not widget.isVisible():
            continue
        found += [p for words in written(widget) for p in _cut(words, widget)]
        found += _overlaps(widget) + _outside(widget)
        if isinstance(widget, Touch):
            found += _small(widget)
        if isinstance(widget, QScrollArea):
            found += _hidden(widget)
    return found


def texts(window: Window) -> list[str]:
    """Every text that stands on the window."""
    shown = (w for w in window.findChildren(QWidget) if w.isVisible())
    return [words.text for widget in shown for words in written(widget)]


def written(widget: QWidget) -> Iterator[Words]:
    """The texts that a widget writes itself."""
    if isinstance(widget, Painted):
        yield from widget.page(widget.width()).words
    elif isinstance(widget, Touch):
        yield from widget.page.words
    elif isinstance(widget, Label) and widget.text():
        yield Words(
            widget.text(), widget.rect(), widget.size_, widget.heavy, "", int(widget.alignment())
        )


def _cut(words: Words, widget: QWidget) -> list[str]:
    """A text that needs more room than it has, or stands outside its widget."""
    wide, high = words.needs() if not isinstance(widget, Label) else room(
        words.text, words.size, 100_000, bold=words.bold
    )  # fmt: skip
    box = words.box
    if wide > box.width() + 1 or high > box.height() + WITHIN:
        has = f"{box.width()}×{box.height()}"
        return [f"cut text “{words.text}”: needs {wide}×{high}, has {has}"]
    if not widget.rect().adjusted(-1, -WITHIN, 1, WITHIN).contains(box):
        return [f"text “{words.text}” stands outside its place"]
    return []


def _small(touch: Touch) -> list[str]:
    if not touch.code or touch.height() >= px(TARGET):
        return []
    return [f"small target “{touch.accessibleName()}”: {touch.height()} px high"]


def _overlaps(widget: QWidget) -> list[str]:
    """Children, or texts on one page, that lie over each other."""
    children = [
        c for c in widget.children() if isinstance(c, Label | Touch | Painted) and c.isVisible()
    ]
    boxes = [(_name(c), c.geometry()) for c in children if c.width() and c.height()]
    if isinstance(widget, Painted | Touch):
        boxes += [(words.text, _ink(words)) for words in written(widget)]
    return [
        f"“{a}” lies over “{b}”"
        for (a, one), (b, other) in combinations(boxes, 2)
        if one.adjusted(2, 2, -2, -2).intersects(other.adjusted(2, 2, -2, -2))
    ]


def _ink(words: Words) -> QRect:
    """Where a text's letters stand in its box."""
    wide, high = words.needs()
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


def _outside(widget: QWidget) -> list[str]:
    """A block or a target that reaches beyond what holds it."""
    holder = widget.parentWidget()
    if not isinstance(widget, Painted | Touch | Label) or holder is None:
        return []
    if holder.rect().adjusted(-1, -1, 1, 1).contains(widget.geometry()):
        return []
    return [f"“{_name(widget)}” reaches beyond its place"]


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


def _name(widget: QWidget) -> str:
    return widget.text() if isinstance(widget, Label) else widget.accessibleName()
