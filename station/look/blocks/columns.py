"""Where the columns of a table stand, the same for its heads and all of its rows."""

from station.look.language import translate
from station.look.style import TARGET, px
from station.look.widgets import measure_press
from station.look.written import measure_width
from station.shop.faces import Table

Span = tuple[int, int]  # left and width, px
EDGE, BETWEEN = 8, 18  # px
ASIDE = 14  # px
TITLE, CELL, BAR = 5, 2, 3  # shares of the width
COUNT = 46  # px, the least width of a count between its keys


class Columns:
    """Holds left and width of a table's columns at a width.

    A cell's column is at least as wide as its longest text while the title keeps its share;
    columns of words wrap before the title does.
    """

    def __init__(self, table: Table, width: int) -> None:
        self.words = find_worded(table)
        rows = table.rows
        self.counter = next((r.counter for r in rows if r.counter is not None), None)
        outline = px(52) if any(r.shape for r in rows) else 0
        tick = px(28) if any(r.done is not None for r in rows) else 0
        bar = BAR if any(r.fraction is not None for r in rows) else 0
        press = max((measure_press(r.press) for r in rows if r.press), default=0)
        self._least = self._measure_cells(table)
        count = len(self._least)
        parts = 1 + count + bool(outline) + bool(tick) + bool(bar) + bool(press)
        keys = 2 * px(TARGET + BETWEEN) if self.counter is not None else 0
        free = width - 2 * px(EDGE) - outline - tick - press - (parts - 1) * px(BETWEEN) - keys
        self._share_width(free, bar, keys)
        self._place_columns(outline, tick)
        self.press: Span = (width - press, press)  # at the edge

    def _measure_cells(self, table: Table) -> list[int]:
        """Measures each cell column's longest text."""
        most = max((len(r.cells) for r in table.rows), default=len(table.columns) - 1)
        heads = [measure_width(h, 15) for h in table.columns[1:]] + [0] * most
        return [
            max(
                [heads[n] + self._stand_off(n), px(COUNT) if n == self.counter else 0]
                + [
                    measure_width(r.cells[n].text, 19, bold=r.cells[n].bold) + self._stand_off(n)
                    for r in table.rows
                    if n < len(r.cells)
                ]
            )
            for n in range(max(most, 0))
        ]

    def _stand_off(self, n: int) -> int:
        """Gives how far words stand off from numbers before them, which end at their edge."""
        return px(ASIDE) if n in self.words and n and n - 1 not in self.words else 0

    def _share_width(self, free: int, bar: int, keys: int) -> None:
        """Gives each column its share of the width, or what its texts need."""
        shares = TITLE + CELL * len(self._least) + bar
        each = free * CELL // shares
        widths = [max(each, need) for need in self._least]
        self._bar = free * bar // shares
        room = free - self._bar - free * TITLE // shares // 2
        over = sum(widths) - room
        for n in sorted(self.words, key=lambda c: -widths[c]):
            if over > 0:
                less = min(over, max(widths[n] - each, 0))
                widths[n] -= less
                over -= less
        self._title = free - self._bar - sum(widths)
        if self.counter is not None:  # the count stands close between its keys
            spare = widths[self.counter] - self._least[self.counter]
            widths[self.counter] += keys - spare
            self._title += spare
        self._widths = widths

    def _place_columns(self, outline: int, tick: int) -> None:
        """Puts the columns beside each other."""
        left, gap = px(EDGE), px(BETWEEN)
        self.outline: Span = (left, outline)
        left += outline + gap if outline else 0
        self.title: Span = (left, self._title)
        left += self._title + gap
        self.cells: list[Span] = []
        for n, width in enumerate(self._widths):
            self.cells.append((left + self._stand_off(n), width - self._stand_off(n)))
            left += width + gap
        self.tick: Span = (left, tick)
        left += tick + gap if tick else 0
        self.bar: Span = (left, self._bar)


def find_worded(block: Table) -> set[int]:
    """Finds the columns that hold words, not numbers: they stand at the left."""
    shown = [[translate(cell.text) for cell in row.cells] for row in block.rows]
    return {
        n
        for n, cells in enumerate(zip(*shown, strict=False))
        if all(c[:1].isalpha() for c in cells)
    }
