"""What is true of a written sheet, and what a reader found in it."""

from dataclasses import dataclass, field

STOP, LOOK, KNOW = "stop", "look", "know"


@dataclass(frozen=True)
class TrueGroup:
    """Equal parts. `places` are the middles of their boxes on the sheet, `tabs` one for each.

    `sizes` are (width, height) that may be said of it: as drawn, of its box as laid, and of
    the least box about it.
    A notch is open to the edge and may be counted as a slot or not. So many `turned` parts are
    mirrored ones cut through: turned over they are equal, and may be counted with it or not.
    """

    name: str
    sizes: tuple[tuple[float, float], ...]
    holes: int
    slots: int
    notches: int
    pockets: int
    places: tuple[complex, ...]
    tabs: tuple[int, ...]
    area: float
    turned: int = 0

    @property
    def count(self) -> int:
        """How many there are."""
        return len(self.places)

    @property
    def openings(self) -> int:
        """How many holes and slots go through it."""
        return self.holes + self.slots


@dataclass(frozen=True)
class TrueFault:
    """What goes wrong, and the lines (first, last) at which it may be said."""

    kind: str
    lines: tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class WrittenSheet:
    """A cut file and its truth. `parts_hold`: its fault leaves the parts as they were."""

    seed: int
    text: str
    thickness: float
    size: tuple[float, float]
    zero: str
    bit: float | None
    bits: tuple[float, ...]
    groups: tuple[TrueGroup, ...]
    rest: int
    fault: TrueFault | None
    parts_hold: bool
    habits: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class FoundGroup:
    """Equal parts that a reader found; `tabs` and `places` (middles of boxes) one for each."""

    count: int
    width: float
    height: float
    n_holes: int
    n_slots: int
    n_pockets: int
    tabs: tuple[int, ...]
    places: tuple[complex, ...]


@dataclass(frozen=True)
class FoundProblem:
    """What a reader warns of: kind, line (None is the whole file), how grave."""

    kind: str
    line: int | None
    grade: str = LOOK


@dataclass(frozen=True)
class Found:
    """All that a reader found."""

    groups: list[FoundGroup] = field(default_factory=list)
    problems: list[FoundProblem] = field(default_factory=list)
