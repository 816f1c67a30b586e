"""The smallest widgets: a label, a block that writes itself, something to touch."""

from collections.abc import Callable
from typing import Generic, TypeVar

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget

from station.look import style
from station.look.language import Text, text
from station.look.marks import plate
from station.look.style import palette, px
from station.look.written import CENTRE, FAR, Page, Words, wide

Send = Callable[[str], None]
Shown = TypeVar("Shown")
Line = TypeVar("Line", bound="Touch")


class Label(QLabel):
    """One line of text in the bars; its place is set by what holds it."""

    def __init__(self, parent: QWidget, size: int, colour: str, *, bold: bool = False) -> None:
        super().__init__(parent)
        self.size_, self.heavy = size, bold  # px on the smallest screen
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(style.font(size, bold=bold))
        shades = self.palette()
        shades.setColor(QPalette.ColorRole.WindowText, QColor(colour))
        self.setPalette(shades)

    def say(self, words: Text) -> bool:
        """Sets the text; False where it is the same."""
        shown = text(words)
        if shown == self.text():
            return False
        self.setText(shown)
        return True

    def need(self) -> int:
        """The width of its text, pixels."""
        return wide(self.text(), self.size_, bold=self.heavy)

    def align(self, flags: int) -> None:
        """Puts the text to a side."""
        self.setAlignment(Qt.AlignmentFlag(flags))

    def size_to(self, size: int) -> None:
        """Sets the height of the text."""
        if size != self.size_:
            self.size_ = size
            self.setFont(style.font(size, bold=self.heavy))


class Painted(QWidget, Generic[Shown]):
    """A block that writes and draws itself.

    `lay` puts its texts on a page of a given width; a page is kept until another block is
    shown. What can be touched on it are widgets of their own, moved by `place`.
    """

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.block: Shown | None = None
        self._pages: dict[int, Page] = {}
        self._placed = QSize()

    def set(self, block: Shown) -> None:
        """Shows a block; nothing is done when it is the same."""
        if block != self.block:
            self.block = block
            self.anew()

    def anew(self) -> None:
        """Lays everything out anew at the next `stand`."""
        self._pages.clear()
        self._placed = QSize()

    def page(self, width: int) -> Page:
        """What is written at a width."""
        if width not in self._pages:
            page = self._pages[width] = Page(width)
            if self.block is not None:
                self.lay(page, self.block)
        return self._pages[width]

    def lay(self, page: Page, block: Shown) -> None:
        """Puts the texts on the page and sets its height."""
        raise NotImplementedError

    def place(self, page: Page) -> None:
        """Moves what can be touched to where the page has room for it."""

    def draw(self, painter: QPainter) -> None:
        """Draws what is no text, below the texts."""

    def most(self, _width: int) -> int:
        """How tall a block that takes what height is left may become, pixels."""
        return FAR

    def stand(self, box: QRect) -> None:
        """Puts the block into its place."""
        self.setGeometry(box)
        if self._placed != box.size():
            self._placed = box.size()
            page = self.page(box.width())
            self.place(page)
            self.setAccessibleName(page.said())
            self.freshen(page)

    def freshen(self, _page: Page) -> None:
        """Has the block painted again."""
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The drawing, then the texts."""
        painter = QPainter(self)
        self.draw(painter)
        self.page(self.width()).write(painter)


class Touch(QAbstractButton):
    """Something to touch that sends a code; paints its ground and what is written on it.

    `code` may be several codes joined by ``|``: each is sent in turn.
    """

    def __init__(self, parent: QWidget, send: Send, code: str = "", name: str = "") -> None:
        super().__init__(parent)
        self._send, self.code = send, code
        self.ground, self.edge, self.radius = "", "", 8
        self.page = Page(0)
        # by Tab only: a touch leaves no focus behind that a scanner's Enter would press
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus if code else Qt.FocusPolicy.NoFocus)
        self.setAccessibleName(name)
        self.clicked.connect(self._sent)

    def become(self, code: str, name: str, page: Page) -> None:
        """Sends another code from now on, and shows another page."""
        if bool(code) != bool(self.code):
            self.setFocusPolicy(Qt.FocusPolicy.TabFocus if code else Qt.FocusPolicy.NoFocus)
        if page.words != self.page.words:
            self.update()
        self.code, self.page = code, page
        self.setAccessibleName(name)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the focus; every other key is the scanner's."""
        arrows = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)
        if event.key() in arrows:
            super().keyPressEvent(event)
        else:
            event.ignore()

    def _sent(self) -> None:
        for one in filter(None, self.code.split("|")):
            self._send(one)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The ground with a line around it, what stands on it, a ring while it has the focus."""
        painter = QPainter(self)
        ground = palette().tint if self.isDown() and self.code else self.ground
        if ground or self.edge:
            plate(painter, self.rect(), ground, self.edge, 2, self.radius)
        self.draw(painter)
        self.page.write(painter)
        if self.hasFocus() and self.code:
            self._ring(painter)

    def draw(self, painter: QPainter) -> None:
        """Draws what is no text."""

    def _ring(self, painter: QPainter) -> None:
        """Two lines, dark and light: one of them is seen on any ground."""
        plate(painter, self.rect(), "", palette().ink, 3, self.radius)
        inside = px(3)
        inner = self.rect().adjusted(inside, inside, -inside, -inside)
        plate(painter, inner, "", palette().paper, 2, max(self.radius - 3, 0))


class Key(Touch):
    """A key with one sign on it."""

    def __init__(self, parent: QWidget, send: Send, sign: str, code: str, name: str) -> None:
        super().__init__(parent, send, code, name)
        self.sign = sign
        self.ground, self.edge = palette().paper, palette().line

    def stand(self, box: QRect) -> None:
        """Puts the key into its place."""
        if box.size() != self.size() or not self.page.words:
            self.page = Page(box.width())
            self.page.put(
                self.sign, (0, 0, box.width()), 26, bold=True, flags=CENTRE, high=box.height()
            )
        self.setGeometry(box)


class Rowed(Painted[Shown], Generic[Shown, Line]):
    """A block with rows to touch: their widgets are made once and filled again."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.rows: list[Line] = []
        self._own: list[Words] = []

    def row(self) -> Line:
        """Makes one more widget."""
        raise NotImplementedError

    def fill(self, number: int, row: Line, page: Page) -> None:
        """Fills the widget of a row."""
        raise NotImplementedError

    def place(self, page: Page) -> None:
        """Puts each row's widget into its place; those left over are hidden."""
        while len(self.rows) < len(page.inner):
            self.rows.append(self.row())
        for number, row in enumerate(self.rows):
            used = number < len(page.inner)
            if used:
                box, inner = page.inner[number]
                row.setGeometry(box)
                self.fill(number, row, inner)
            row.setVisible(used)

    def freshen(self, page: Page) -> None:
        """Paints only what changed: rows see to themselves."""
        if page.words != self._own:
            self._own = page.words
            self.update()
