"""The row of large buttons under the work in hand, in the order of F1 to F9, which press them."""

from operator import itemgetter

from PySide6.QtCore import QRect
from PySide6.QtWidgets import QWidget

from station.look.style import TARGET, palette, px
from station.look.widgets import KeyedTouch, Send
from station.look.written import CENTRE, TextLine, TextPage, write_line
from station.shop.cards import CODES, F_KEYS
from station.shop.faces import Press

BETWEEN = 16  # px
INSIDE = (14, 6)  # px, from a button's edge to its words
TIGHT, CLOSE = 6, 10  # px, beside the words and between buttons where there is little room
KEY = 6  # px beside them for the name of the key
WIDER = 1.15  # a word may have wider letters than its line
ALONE = 3  # a button on its own takes this part of the row
NUMBERS = {CODES[name]: number for name, number in F_KEYS.items()}


def number_presses(presses: tuple[Press, ...]) -> list[int]:
    """Numbers buttons by their F keys: those that have their own, the others around them."""
    taken = [NUMBERS[press.code] for press in presses if press.code in NUMBERS]
    free = iter(n for n in range(1, len(presses) + max(NUMBERS.values())) if n not in taken)
    return [NUMBERS.get(press.code) or next(free) for press in presses]


def _squeeze(labels: list[TextLine], needs: list[int], free: int, aside: int) -> list[int]:
    """Gives each button what its longest word needs, where lines must break; the rest by need."""
    least = [_guess_longest_word(label) + 2 * aside for label in labels]
    if sum(least) >= free:
        return [free * need // sum(needs) for need in needs]
    wants = [max(need - room, 0) for need, room in zip(needs, least, strict=True)]
    more = free - sum(least)
    return [room + more * want // max(sum(wants), 1)
            for room, want in zip(least, wants, strict=True)]  # fmt: skip


def _guess_longest_word(label: TextLine) -> int:
    """Guesses the width of the longest word of a label by its letters, pixels."""
    longest = max(map(len, label.text.split()), default=0)
    return min(label.width, round(WIDER * label.width * longest / max(len(label.text), 1)))


class PressButton(KeyedTouch):
    """A large button."""

    def show_press(self, press: Press, number: int, page: TextPage) -> None:
        """Shows a button with the number of its F key."""
        self.number = number
        off, primary, colours = press.style == "off", press.style == "primary", palette()
        self.update()
        self.ground = colours.act if primary else colours.paper
        self.edge = colours.act if primary else colours.line
        self.ink = colours.on_bar if primary else colours.quiet if off else colours.ink
        page.words = [words._replace(colour=self.ink) for words in page.words]
        self.set_content("" if off else press.code, page.join_texts(), page)
        self.setEnabled(not off)


class Presses(QWidget):
    """Holds the row of large buttons."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent)
        self.send = send
        self.shown: tuple[Press, ...] = ()
        self.numbers: tuple[int, ...] = ()  # of their F keys
        self.buttons: list[PressButton] = []  # every one so far; the first ones are in use
        self._laid: tuple[tuple[Press, ...], int] = ((), 0)
        self._pages: list[tuple[QRect, TextPage]] = []

    def show_presses(self, presses: tuple[Press, ...]) -> None:
        """Shows the buttons at the next `put_into`."""
        numbered = sorted(zip(number_presses(presses), presses, strict=True), key=itemgetter(0))
        self.numbers, self.shown = tuple(n for n, _ in numbered), tuple(p for _, p in numbered)
        self.setVisible(bool(presses))

    def needed_height(self, width: int) -> int:
        """Gives the height of the row at a width, pixels; 0 for none."""
        if (self.shown, width) != self._laid:
            self._laid = (self.shown, width)
            self._pages = self._lay_buttons(width)
        return max((page.height for _, page in self._pages), default=0)

    def _lay_buttons(self, width: int) -> list[tuple[QRect, TextPage]]:
        """Lays out the place and the words of each button."""
        left, made = 0, []
        (aside, above), between, least = map(px, INSIDE), px(BETWEEN), px(TARGET)
        labels = [write_line(press.label, 20, bold=True) for press in self.shown]
        words, key = sum(label.width for label in labels), px(KEY)
        if words + 2 * len(labels) * (aside + key) > width - between * (len(labels) - 1):
            aside, between = px(TIGHT), px(CLOSE)
        widths = self._share_widths(labels, width - between * (len(labels) - 1), aside + key)
        for label, wide_ in zip(labels, widths, strict=True):
            page = TextPage(wide_)
            page.put_line(label, (aside, 0, wide_ - 2 * aside), flags=CENTRE)
            page.stack_texts(len(page.words), least, above)
            made.append((QRect(left, 0, wide_, page.height), page))
            left += wide_ + between
        return made

    def _share_widths(self, labels: list[TextLine], free: int, aside: int) -> list[int]:
        """Gives each button what its words need; the rest is shared as the room wishes."""
        needs = [label.width + 2 * aside for label in labels]
        if len(needs) <= 1:  # a button on its own keeps a button's size
            return [min(max(free // ALONE, need), free) for need in needs]
        if sum(needs) > free:
            return _squeeze(labels, needs, free, aside)
        each = (free - sum(needs)) / sum(p.wide for p in self.shown)
        return [int(n + each * p.wide) for n, p in zip(needs, self.shown, strict=True)]

    def put_into(self, box: QRect) -> None:
        """Puts the buttons into their places, all as high as the highest."""
        self.setGeometry(box)
        while len(self.buttons) < len(self.shown):
            self.buttons.append(PressButton(self, self.send))
        for n, button in enumerate(self.buttons):
            if n < len(self.shown):
                place, page = self._pages[n]
                if page.height != box.height():
                    page.stack_texts(len(page.words), box.height(), 0)
                button.setGeometry(place.left(), 0, place.width(), box.height())
                if button.page is not page:
                    button.show_press(self.shown[n], self.numbers[n], page)
            button.setVisible(n < len(self.shown))
