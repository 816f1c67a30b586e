"""Small buttons side by side, for what stands beside them."""

from PySide6.QtCore import QRect

from station.look.style import TARGET, palette, px
from station.look.widgets import PaintedBlock, Send, Touch
from station.look.written import CENTRE, TextPage
from station.shop.faces import Keys, Press

BETWEEN, EDGE, SIZE = 6, 4, 15  # px


class KeysBlock(PaintedBlock[Keys]):
    """Shows keys in rows, all of one size; those that are chosen stand out."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.keys: list[Touch] = []

    def lay_out(self, page: TextPage, block: Keys) -> None:
        """Lays each key's name into the middle of its place."""
        gap, wide = px(BETWEEN), _share_width(page.width, block.across)
        names = []
        for press in block.presses:
            name, edge = TextPage(wide), px(EDGE)
            name.put_text(press.label, (edge, 0, wide - 2 * edge), SIZE, flags=CENTRE)
            name.stack_texts(len(name.words), px(TARGET), edge)
            names.append(name)
        high = max((name.height for name in names), default=0)
        for n, name in enumerate(names):
            name.stack_texts(len(name.words), high, 0)
            row, nth = divmod(n, block.across)
            page.inner.append((QRect(nth * (wide + gap), row * (high + gap), wide, high), name))
        rows = -(-len(names) // block.across)
        page.height = max(rows * (high + gap) - gap, 0)

    def place_children(self, page: TextPage) -> None:
        """Puts each key into its place."""
        presses = self.block.presses if self.block else ()
        while len(self.keys) < len(presses):
            self.keys.append(Touch(self, self.send))
        for key in self.keys[len(presses) :]:
            key.hide()
        for key, press, (box, name) in zip(self.keys, presses, page.inner, strict=False):
            _show_key(key, press, name)
            key.setGeometry(box)


def _share_width(width: int, across: int) -> int:
    """Shares a width out to so many keys."""
    return (width - (across - 1) * px(BETWEEN)) // across


def _show_key(key: Touch, press: Press, name: TextPage) -> None:
    """Shows a key with its name on it."""
    key.ground = palette().tint if press.style == "chosen" else palette().paper
    key.edge = palette().line
    key.set_content(press.code, name.join_texts(), name)
    key.show()
    key.update()
