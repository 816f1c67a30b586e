"""Where the bit leaves room on a sheet, kept small: cells of a grid, packed as a text."""

from __future__ import annotations

import zlib
from base64 import b85decode, b85encode
from dataclasses import dataclass
from functools import lru_cache

MOST_CELLS = 1 << 22  # of a sheet of 20 m each way


@dataclass(frozen=True, kw_only=True)
class Clear:
    """Holds the cells of a grid over a sheet where a hold-down may stand: in the waste, and as far
    from every stroke as a clamp and the bit reach.

    `cells` has a byte for each, row by row from below, packed; empty: it is not known.
    """

    cells: str = ""
    cell_mm: float = 10.0
    across: int = 0  # cells along x

    @staticmethod
    def pack(cells: bytes, cell_mm: float, across: int) -> Clear:
        """Packs a byte for each cell, row by row from below."""
        packed = b85encode(zlib.compress(cells, 9)).decode("ascii")
        return Clear(cells=packed, cell_mm=cell_mm, across=across)

    def has_room(self, place: tuple[float, float]) -> bool:
        """Tells whether a hold-down may stand in a place, mm on the sheet; also where nothing is
        known.
        """
        if not self.cells or self.cell_mm <= 0:
            return True
        x, y = (int(each // self.cell_mm) for each in place)
        cells, nth = _unpack(self.cells), y * self.across + x
        return 0 <= x < self.across and 0 <= nth < len(cells) and bool(cells[nth])


@lru_cache(maxsize=8)
def _unpack(cells: str) -> bytes:
    """Gives the byte of each cell; none of what was damaged."""
    try:
        return zlib.decompressobj().decompress(b85decode(cells), MOST_CELLS)
    except (ValueError, zlib.error):
        return b""
