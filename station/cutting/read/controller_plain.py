"""What a controller keeps in mind from line to line, and the path it has written so far.

`controller_compiled.py` holds the same as one record.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from station.cutting.model import (
    MOST_OF_A_KIND,
    RAPID,
    XY,
    Moves,
    Pause,
    Problem,
    SideSet,
)
from station.cutting.read.dialects import Dialect
from station.shop.words import Say

Point = tuple[float, float, float]


@dataclass
class WrittenMoves:
    """Holds columns of moves as plain lists, for reading line by line."""

    points: list[Point] = field(default_factory=list)
    rows: list[tuple[float, ...]] = field(default_factory=list)
    pauses: list[Pause] = field(default_factory=list)
    sides: list[SideSet] = field(default_factory=list)


@dataclass
class ControllerState:
    """Holds the modes of a controller, in mm and mm/min; as the report has them at the start."""

    dialect: Dialect
    scale: float = 1.0
    at: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    unsure: list[bool] = field(default_factory=lambda: [False, False, False])
    absolute: bool = True
    absolute_centres: bool = False
    plane: int = XY
    motion: int | None = None
    inverse: bool = False
    feed: float = 0.0
    rpm: float = math.nan  # not said yet
    turning: bool = False
    chosen: int = 0
    tool: int = 0
    system: int = 1
    systems: dict[int, list[float]] = field(default_factory=dict)
    shift: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    local: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])  # G52
    kept_shift: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    side: int = 40
    radii: dict[int, float] = field(default_factory=dict)  # of bits, by D number, G10 L12
    back_to: int = 98
    exact: bool = False
    series: float | None = None  # the height where a series of cycles began
    sticky: dict[str, float] = field(default_factory=dict)
    parameters: dict[int, float] = field(default_factory=dict)
    ended: bool = False

    def find_offset(self, axis: int) -> float:
        """Gives the way from the program's own numbers to the file's one frame, mm."""
        system = self.systems.get(self.system)
        return self.shift[axis] + self.local[axis] + (system[axis] if system else 0.0)

    def find_dwell(self, p: float) -> float:
        """Gives the seconds of a dwell's P, whatever the dialect counts in."""
        return max(0.0, p / 1000 if self.dialect.dwell_ms else p)


class Controller:
    """Holds a state, the path written so far, and the problems met."""

    def __init__(self, dialect: Dialect, scale: float) -> None:
        self.state = ControllerState(dialect, scale)
        self.path = WrittenMoves()
        self.written = 0  # moves that are in columns already
        self.problems: list[Problem] = []
        self.told: dict[str, int] = {}
        self.line = 0
        self.source = ""
        self.now_minutes = math.nan

    def note_problem(self, kind: str, text: Say) -> None:
        """Notes what is wrong with the line that is being read."""
        x, y, _ = self.state.at
        self.told[kind] = self.told.get(kind, 0) + 1
        if self.told[kind] <= MOST_OF_A_KIND:
            self.problems.append(Problem(self.line, kind, text, self.source, (x, y)))

    def write_pause(self, kind: str, seconds: float = 0.0, tool: int = 0) -> None:
        """Notes that the path stops here."""
        self.path.pauses.append(Pause(self.move_count, kind, seconds, self.line, tool))

    @property
    def move_count(self) -> int:
        """Counts the moves that are written."""
        return self.written + len(self.path.rows)

    def take_block(self) -> Moves | None:
        """Takes the moves written since the last time, as columns; None: there are none."""
        if not self.path.rows:
            return None
        block = make_columns(self.path)
        self.path.rows, self.path.points = [], []
        self.written += len(block)
        return block

    def write_straight(self, kind: int, end: list[float]) -> None:
        """Writes a straight move to `end` in the frame."""
        self._write_move(kind, end, 0.0, 0.0, 0.0)

    def write_arc(
        self, kind: int, end: list[float], centre: tuple[float, float], sweep: float
    ) -> None:
        """Writes an arc or helix to `end` about `centre` of its plane."""
        self._write_move(kind, end, *centre, sweep)

    def _write_move(self, kind: int, end: list[float], c0: float, c1: float, sweep: float) -> None:
        """Writes one move into the lists."""
        state = self.state
        rate = 0.0 if kind == RAPID else state.feed
        minutes = math.nan if kind == RAPID else self.now_minutes
        rpm = state.rpm if state.turning else 0.0
        sure = not any(state.unsure)
        row = (kind, state.plane, c0, c1, sweep, rate, minutes)
        self.path.rows.append((*row, state.tool, rpm, self.line, sure, state.exact))
        self.path.points.append((end[0], end[1], end[2]))
        state.at = list(end)


def make_columns(path: WrittenMoves) -> Moves:
    """Makes a block of columns of the path's lists."""
    points = np.array(path.points, dtype=float).reshape(-1, 3)
    table = np.array(path.rows, dtype=float).reshape(-1, 12).T
    kind, plane = table[0].astype(np.uint8), table[1].astype(np.uint8)
    centre = np.ascontiguousarray(table[2:4].T)
    tool, line = table[7].astype(np.int32), table[9].astype(np.int32)
    sure, exact = table[10] > 0, table[11] > 0
    return Moves(
        points,
        kind,
        plane,
        centre,
        table[4],
        table[5],
        table[6],
        tool,
        table[8],
        line,
        sure,
        exact,
    )
