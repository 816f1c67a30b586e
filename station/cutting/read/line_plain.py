"""The words of one line by letter and by modal group, and where its axis words lead."""

from __future__ import annotations

from typing import TypeVar

from station.cutting.read.controller_plain import Machine, State
from station.cutting.read.expressions import Block

C = TypeVar("C", int, float)
AXES = {"X": 0, "Y": 1, "Z": 2}
GROUPS: dict[float, str] = {}
for _name, _codes in {
    "motion": (0, 1, 2, 3, 38.2, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89),
    "plane": (17, 18, 19),
    "distance": (90, 91),
    "feed mode": (93, 94),
    "units": (20, 21),
    "side": (40, 41, 42),
    "length": (43, 43.1, 49),
    "return": (98, 99),
    "system": (54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3),
    "path": (61, 61.1, 64),
    "once": (4, 10, 28, 30, 53, 92, 92.1, 92.2, 92.3),
    "centres": (91.1,),
}.items():
    for _code in _codes:
        GROUPS[_code] = _name
M_GROUPS = {0: "stop", 1: "stop", 2: "stop", 30: "stop", 60: "stop", 6: "tool",
            3: "spindle", 4: "spindle", 5: "spindle", 7: "coolant", 8: "coolant",
            9: "coolant", 48: "override", 49: "override"}  # fmt: skip
LETTERS = frozenset("ABCDFHIJKLNPQRSTXYZ")  # of words beside G and M
MOST_M = 4  # on a line, as the report allows


class Line:
    """The words of one line by letter and by modal group."""

    def __init__(self, machine: Machine, block: Block) -> None:
        self.words: dict[str, float] = {}
        self.codes: dict[str, float] = {}
        self.m_codes: dict[str, int] = {}
        self.machine = machine
        for letter, value in block.words:
            self._take(letter, value)
        if sum(letter == "M" for letter, _ in block.words) > MOST_M:
            machine.problem("many-m", f"More than {MOST_M} M words stand here; all are taken.")
        if self.has("ABC"):
            machine.problem("rotary", "A, B and C turn an axis; they are left out.")

    def _take(self, letter: str, value: float) -> None:
        if letter == "G":
            self._take_g(round(value, 1))
        elif letter == "M":
            self._take_m(round(value))
        elif letter == "O":
            return
        elif letter not in LETTERS:
            self.machine.problem("unknown-word", f"{letter} is not known; it is left out.")
        elif letter in self.words:
            self.machine.problem("twice", f"{letter} stands twice; the last one is used.")
            self.words[letter] = value
        else:
            self.words[letter] = value

    def _take_g(self, code: float) -> None:
        group = GROUPS.get(code)
        if group == "once" and group in self.codes and code == 53:
            return
        self._keep(self.codes, f"G{code:g}", code, group, several="once")

    def _take_m(self, code: int) -> None:
        self._keep(self.m_codes, f"M{code}", code, M_GROUPS.get(code), several="coolant")

    def _keep(
        self, kept: dict[str, C], word: str, code: C, group: str | None, several: str
    ) -> None:
        """Keeps a code in its group; only in the group `several` may more than one stand."""
        if group is None:
            self.machine.problem("unknown-code", f"{word} is not known; it is left out.")
            return
        if group in kept and kept[group] != code and group != several:
            both = f"{word[0]}{kept[group]:g} and {word}"
            self.machine.problem("twice", f"{both} exclude each other; the last one is used.")
        kept[group] = code

    def has(self, letters: str) -> bool:
        """Whether any of the letters stands on the line."""
        return any(letter in self.words for letter in letters)


def target(state: State, line: Line) -> list[float]:
    """Where the line's X, Y and Z words lead, in the file's frame."""
    end = list(state.at)
    machine_frame = line.codes.get("once") == 53
    for letter, axis in AXES.items():
        if letter not in line.words:
            continue
        value = line.words[letter] * state.scale
        if machine_frame:
            end[axis], state.unsure[axis] = value, True
        elif state.absolute:
            end[axis], state.unsure[axis] = value + state.offset(axis), False
        else:
            end[axis] = state.at[axis] + value
    return end
