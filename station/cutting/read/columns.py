"""The columns of a path while it is read: they grow as moves are added."""

from __future__ import annotations

from typing import Any

import numpy as np
import numpy.typing as npt

from station.cutting.model import Moves
from station.cutting.read.controller_compiled import Record

NAMES = {
    "kind": "kind", "plane": "planes", "sweep": "sweep", "feed": "rate", "minutes": "fixed",
    "tool": "bit", "rpm": "turns", "line": "lines", "sure": "sure", "exact": "exactly",
}  # fmt: skip
TYPES: dict[str, type[np.generic]] = {
    **dict.fromkeys(("kind", "plane"), np.uint8),
    **dict.fromkeys(("tool", "line"), np.int32),
    **dict.fromkeys(("sure", "exact"), np.bool_),
}


class Columns:
    """Room for so many moves; each coordinate stands in one piece of memory."""

    def __init__(self, room: int) -> None:
        self.count, self.room = 0, max(room, 16)
        self._make()

    def _make(self) -> None:
        self.rest: dict[str, npt.NDArray[Any]] = {
            name: np.empty(self.room, TYPES.get(name, np.float64)) for name in NAMES
        }
        self.points = np.empty((3, self.room + 1))
        self.points[:, 0] = 0.0
        self.centre = np.empty((2, self.room))

    def _fit(self, more: int) -> None:
        if self.count + more <= self.room:
            return
        old = self.moves()
        self.room = max(self.room + self.room // 2, self.count + more)
        self._make()
        self.points[:, : self.count + 1] = old.points.T
        self.centre[:, : self.count] = old.centre.T
        for name, column in self.rest.items():
            column[: self.count] = getattr(old, name)

    def fetch(self, record: Record) -> None:
        """Adds the moves that the compiled reader has written into its record."""
        row = record[0]
        more = int(row["moves"])
        self._fit(more)
        a, b = self.count, self.count + more
        for axis, name in enumerate(("x", "y", "z")):
            self.points[axis, a + 1 : b + 1] = row[name][:more]
        for axis, name in enumerate(("c0", "c1")):
            self.centre[axis, a:b] = row[name][:more]
        for name, field in NAMES.items():
            self.rest[name][a:b] = row[field][:more]
        self.count, row["moves"] = b, 0

    def add(self, block: Moves) -> None:
        """Adds a block whose points are ends only."""
        more = len(block)
        self._fit(more)
        a, b = self.count, self.count + more
        self.points[:, a + 1 : b + 1] = block.points.T
        self.centre[:, a:b] = block.centre.T
        for name, column in self.rest.items():
            column[a:b] = getattr(block, name)
        self.count = b

    def moves(self) -> Moves:
        """The path so far, as views."""
        n = self.count
        rest = {name: column[:n] for name, column in self.rest.items()}
        return Moves(points=self.points[:, : n + 1].T, centre=self.centre[:, :n].T, **rest)
