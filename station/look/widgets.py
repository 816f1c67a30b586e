"""The smallest widgets: a label, a block that writes itself, something to touch."""

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Generic, NamedTuple, TypeVar

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget

from station.look import style
from station.look.language import Text, translate
from station.look.marks import draw_plate
from station.look.style import Lettering, Palette, find_lettering, palette, px
from station.look.written import CENTRE, FAR, LOW_RIGHT, PlacedText, TextPage, measure_width

if TYPE_CHECKING:
    from station.shop.faces import Press

Send = Callable[[str], None]
Shown = TypeVar("Shown")
RowWidget = TypeVar("RowWidget", bound="Touch")


class Label(QLabel):
    """Shows one line of text in the bars; its place is set by what holds it."""

    def __init__(self, parent: QWidget, size: int, colour: str, *, bold: bool = False) -> None:
        super().__init__(parent)
        self.size_, self.heavy = size, bold  # px on the smallest screen
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(style.make_font(size, bold=bold))
        shades = self.palette()
        shades.setColor(QPalette.ColorRole.WindowText, QColor(colour))
        self.setPalette(shades)

    def set_words(self, words: Text) -> bool:
        """Sets the text; False where it is the same."""
        shown = translate(words)
        if shown == self.text():
            return False
        self.setText(shown)
        return True

    def needed_width(self) -> int:
        """Gives the width of its text, pixels."""
        return measure_width(self.text(), self.size_, bold=self.heavy)

    def align_to(self, flags: int) -> None:
        """Puts the text to a side."""
        self.setAlignment(Qt.AlignmentFlag(flags))

    def set_size(self, size: int) -> None:
        """Sets the height of the text."""
        if size != self.size_:
            self.size_ = size
            self.setFont(style.make_font(size, bold=self.heavy))


class PaintedBlock(QWidget, Generic[Shown]):
    """Writes and draws a block by itself.

    `lay_out` puts its texts on a page of a given width; a page is kept until another block is
    shown. What can be touched on it are widgets of their own, moved by `place_children`.
    """

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.block: Shown | None = None
        self._pages: dict[int, TextPage] = {}
        self._placed = QSize()

    def show_block(self, block: Shown) -> None:
        """Shows a block; nothing is done when it is the same."""
        if block != self.block:
            self.block = block
            self.lay_out_anew()

    def lay_out_anew(self) -> None:
        """Lays everything out anew at the next `put_into`."""
        self._pages.clear()
        self._placed = QSize()

    def find_page(self, width: int) -> TextPage:
        """Finds what is written at a width; laid out where it is not kept."""
        if width not in self._pages:
            page = self._pages[width] = TextPage(width)
            if self.block is not None:
                self.lay_out(page, self.block)
        return self._pages[width]

    def lay_out(self, page: TextPage, block: Shown) -> None:
        """Puts the texts on the page and sets its height."""
        raise NotImplementedError

    def place_children(self, page: TextPage) -> None:
        """Moves what can be touched to where the page has room for it."""

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws what is no text, below the texts."""

    def show_typing(self, text: str, caret: int) -> None:
        """Shows what is being typed, in a block where it is to stand."""

    def most_height(self, _width: int) -> int:
        """Gives how tall a block that takes what height is left may become, pixels."""
        return FAR

    def put_into(self, box: QRect) -> None:
        """Puts the block into its place."""
        self.setGeometry(box)
        if self._placed != box.size():
            self._placed = box.size()
            page = self.find_page(box.width())
            self.place_children(page)
            self.setAccessibleName(page.join_texts())
            self.update_painting(page)

    def update_painting(self, _page: TextPage) -> None:
        """Has the block painted again."""
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paints the drawing, then the texts."""
        painter = QPainter(self)
        self.draw_shapes(painter)
        self.find_page(self.width()).paint(painter)


BLANK = TextPage(0)  # what stands on a touch until something is written there


class Touch(QAbstractButton):
    """Something to touch that sends a code; paints its ground and what is written on it.

    `code` may be several codes joined by ``|``: each is sent in turn.
    """

    def __init__(self, parent: QWidget, send: Send, code: str = "", name: str = "") -> None:
        super().__init__(parent)
        self._send, self.code = send, code
        self.ground, self.edge, self.radius = "", "", 8
        self.page = BLANK
        # by Tab only: a touch leaves no focus behind that a scanner's Enter would press
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus if code else Qt.FocusPolicy.NoFocus)
        self.setAccessibleName(name)
        self.clicked.connect(self._send_codes)

    def set_content(self, code: str, name: str, page: TextPage) -> None:
        """Sends another code from now on, and shows another page."""
        if bool(code) != bool(self.code):
            self.setFocusPolicy(Qt.FocusPolicy.TabFocus if code else Qt.FocusPolicy.NoFocus)
        if page.words != self.page.words:
            self.update()
        self.code, self.page = code, page
        self.setAccessibleName(name)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leaves every key to the window: scans, and arrows that move the focus."""
        event.ignore()

    def _send_codes(self) -> None:
        for one in filter(None, self.code.split("|")):
            self._send(one)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paints ground and line, what stands on it, a ring while it has the focus."""
        painter = QPainter(self)
        ground = palette().tint if self.isDown() and self.code else self.ground
        if ground or self.edge:
            draw_plate(painter, self.rect(), ground, self.edge, 2, self.radius)
        self.draw_shapes(painter)
        for words in self.list_words():
            words.paint(painter)
        if self.hasFocus() and self.code:
            self._draw_ring(painter)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws what is no text."""

    def list_words(self) -> list[PlacedText]:
        """Lists the texts that stand on it."""
        return self.page.words

    def _draw_ring(self, painter: QPainter) -> None:
        """Draws two lines, dark and light: one of them is seen on any ground."""
        draw_plate(painter, self.rect(), "", palette().ink, 3, self.radius)
        inside = px(3)
        inner = self.rect().adjusted(inside, inside, -inside, -inside)
        draw_plate(painter, inner, "", palette().paper, 2, max(self.radius - 3, 0))


class Sign(NamedTuple):
    """What stands on a key, the code that it sends, and its name for who cannot see it."""

    text: str
    code: str = ""
    name: str = ""


class Key(Touch):
    """A key with one sign on it, and no other text."""

    def __init__(
        self, parent: QWidget, send: Send, sign: Sign, colours: Palette, lettering: Lettering
    ) -> None:
        super().__init__(parent, send, sign.code, sign.name)
        self.ground, self.edge, self.ink = colours.paper, colours.line, colours.ink
        self.sign, self.lettering = sign.text, lettering

    def list_words(self) -> list[PlacedText]:
        """Lists the sign, in the middle of the key."""
        return [PlacedText(self.sign, self.rect(), self.lettering, self.ink, CENTRE)]


def make_keys(parent: QWidget, send: Send, signs: Iterable[Sign]) -> list[Key]:
    """Makes keys that look alike, one for each sign."""
    colours, lettering = palette(), find_lettering(26, bold=True)
    return [Key(parent, send, sign, colours, lettering) for sign in signs]


class KeyedTouch(Touch):
    """A button that an F key presses; 0 for none."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.number = 0  # of its F key
        self.ink, self.font_of_key = palette().ink, style.make_font(11)
        self.right, self.low = px(KEY_RIGHT), px(KEY_LOW)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the key that presses it, small in the corner."""
        if 0 < self.number <= F_KEYS_MOST and self.isEnabled():
            painter.setFont(self.font_of_key)
            painter.setPen(QColor(self.ink))
            corner = self.rect().adjusted(0, 0, -self.right, -self.low)
            painter.drawText(corner, LOW_RIGHT, f"F{self.number}")


KEY_RIGHT, KEY_LOW = 7, 4  # px from the name of the key to a button's edges
F_KEYS_MOST = 9


class InnerPress(KeyedTouch):
    """A button inside a block: what stands there is decided by it."""

    def show_press(self, press: "Press", box: QRect) -> None:
        """Shows a button in its place."""
        primary, off, colours = press.style == "primary", press.style == "off", palette()
        self.ground = colours.act if primary else colours.paper
        self.edge = colours.act if primary else colours.line
        ink = colours.on_bar if primary else colours.quiet if off else colours.ink
        page, edge = TextPage(box.width()), px(PRESS_EDGE)
        at = (edge, 0, box.width() - 2 * edge)
        page.put_text(press.label, at, PRESS_SIZE, bold=True, flags=CENTRE, high=box.height())
        page.words = [words._replace(colour=ink) for words in page.words]
        self.ink = ink
        self.setGeometry(box)
        self.set_content("" if off else press.code, page.join_texts(), page)
        self.setEnabled(not off)
        self.show()


PRESS_SIZE, PRESS_EDGE = 17, 14  # px


def measure_press(press: "Press") -> int:
    """Measures the width of a button inside a block, pixels."""
    return measure_width(press.label, PRESS_SIZE, bold=True) + 2 * px(PRESS_EDGE)


class RowsBlock(PaintedBlock[Shown], Generic[Shown, RowWidget]):
    """Shows rows to touch: their widgets are made once and filled again."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.rows: list[RowWidget] = []
        self._own: list[PlacedText] = []

    def make_row(self) -> RowWidget:
        """Makes one more widget."""
        raise NotImplementedError

    def fill_row(self, number: int, row: RowWidget, page: TextPage) -> None:
        """Fills the widget of a row."""
        raise NotImplementedError

    def place_children(self, page: TextPage) -> None:
        """Puts each row's widget into its place; those left over are hidden."""
        while len(self.rows) < len(page.inner):
            self.rows.append(self.make_row())
        for number, row in enumerate(self.rows):
            used = number < len(page.inner)
            if used:
                box, inner = page.inner[number]
                row.setGeometry(box)
                self.fill_row(number, row, inner)
            row.setVisible(used)

    def update_painting(self, page: TextPage) -> None:
        """Paints only what changed: rows see to themselves."""
        if page.words != self._own:
            self._own = page.words
            self.update()
