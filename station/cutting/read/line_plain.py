"""The words of one line by letter and by modal group, in plain Python, and where they lead.

`line_compiled.py` takes a line of plain words apart in the same way, compiled.
"""

from __future__ import annotations

from typing import TypeVar

from station.cutting.read.controller_plain import Controller, ControllerState
from station.cutting.read.expressions import WordBlock
from station.shop.words import say

C = TypeVar("C", int, float)
AXES = {"X": 0, "Y": 1, "Z": 2}
GROUPS: dict[float, str] = {}
for _name, _codes in {
    "motion": (0, 1, 2, 3, 38.2, 73, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89),
    "plane": (17, 18, 19),
    "distance": (90, 91),
    "feed mode": (93, 94),
    "units": (20, 21),
    "side": (40, 41, 42),
    "length": (43, 43.1, 49),
    "return": (98, 99),
    "system": (54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3),
    "path": (61, 61.1, 64),
    "once": (4, 10, 28, 30, 52, 53, 92, 92.1, 92.2, 92.3),
    "centres": (90.1, 91.1),
}.items():
    for _code in _codes:
        GROUPS[_code] = _name
M_GROUPS = {0: "stop", 1: "stop", 2: "stop", 30: "stop", 60: "stop", 6: "tool",
            3: "spindle", 4: "spindle", 5: "spindle", 7: "coolant", 8: "coolant",
            9: "coolant", 48: "override", 49: "override"}  # fmt: skip
LETTERS = frozenset("ABCDFHIJKLNPQRSTXYZ")  # of words beside G and M
MOST_M = 4  # on a line, as the report allows


class LineWords:
    """Holds the words of one line by letter and by modal group."""

    def __init__(self, controller: Controller, block: WordBlock) -> None:
        self.words: dict[str, float] = {}
        self.codes: dict[str, float] = {}
        self.m_codes: dict[str, int] = {}
        self.controller, self.unknown = controller, False  # a G code that is not known
        for letter, value in block.words:
            self._keep_word(letter, value)
        if sum(letter == "M" for letter, _ in block.words) > MOST_M:
            controller.note_problem(
                "many-m", say("More than {most} M words stand here; all are taken.", most=MOST_M)
            )
        if self.has_any("ABC"):
            controller.note_problem("rotary", say("A, B and C turn an axis; they are left out."))

    def _keep_word(self, letter: str, value: float) -> None:
        """Keeps one word; one not known or said twice is noted."""
        if letter == "G":
            self._keep_g_code(round(value, 1))
        elif letter == "M":
            self._keep_m_code(round(value))
        elif letter == "O":
            return
        elif letter not in LETTERS:
            self.controller.note_problem(
                "unknown-word", say("{word} is not known; it is left out.", word=letter)
            )
        elif letter in self.words:
            self.controller.note_problem(
                "twice", say("{word} stands twice; the last one is used.", word=letter)
            )
            self.words[letter] = value
        else:
            self.words[letter] = value

    def _keep_g_code(self, code: float) -> None:
        """Keeps a G code in its group."""
        group = GROUPS.get(code)
        if group == "once" and group in self.codes and code == 53:
            return
        self._keep_code(self.codes, f"G{code:g}", code, group, several="once")

    def _keep_m_code(self, code: int) -> None:
        """Keeps an M code in its group."""
        self._keep_code(self.m_codes, f"M{code}", code, M_GROUPS.get(code), several="coolant")

    def _keep_code(
        self, kept: dict[str, C], word: str, code: C, group: str | None, several: str
    ) -> None:
        """Keeps a code in its group; only in the group `several` may more than one stand."""
        if group is None:
            self.unknown |= word[0] == "G"
            self.controller.note_problem(
                "unknown-code", say("{word} is not known; it is left out.", word=word)
            )
            return
        if group in kept and kept[group] != code and group != several:
            both = f"{word[0]}{kept[group]:g} and {word}"
            self.controller.note_problem(
                "twice", say("{both} exclude each other; the last one is used.", both=both)
            )
        kept[group] = code

    def has_any(self, letters: str) -> bool:
        """Tells whether any of the letters stands on the line."""
        return any(letter in self.words for letter in letters)


def find_target(state: ControllerState, line: LineWords) -> list[float]:
    """Finds where the line's X, Y and Z words lead, in the file's frame."""
    end = list(state.at)
    machine_frame = line.codes.get("once") == 53
    for letter, axis in AXES.items():
        if letter not in line.words:
            continue
        value = line.words[letter] * state.scale
        if machine_frame:
            end[axis], state.unsure[axis] = value, True
        elif state.absolute:
            end[axis], state.unsure[axis] = value + state.find_offset(axis), False
        else:
            end[axis] = state.at[axis] + value
    return end
