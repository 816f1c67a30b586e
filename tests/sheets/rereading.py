"""Reads a written text back in the plainest way, to see that it says what was planned."""

import re
from cmath import phase
from math import inf, nan, tau
from typing import NamedTuple

WORD = re.compile(r"([A-Za-z])\s*([-+]?(?:\d+\.?\d*|\.\d+))")
HOME = inf  # z after a return to the machine's own top


class ReadMove(NamedTuple):
    """Where the bit is after a line, in mm; how it came, and how wrong an arc's ends are."""

    line: int
    x: float
    y: float
    z: float
    motion: str
    turned: float  # by how much an arc turns, left is positive
    wrong: float
    skipped: bool


class PlainReader:
    """Knows what a router would know between two lines."""

    def __init__(self) -> None:
        self.at = [nan, nan, nan]
        self.unit, self.relative = 1.0, False
        self.motion = ""
        self.bottom = nan
        self.moves: list[ReadMove] = []

    def read(self, text: str) -> list[ReadMove]:
        """Reads all lines up to the program's end."""
        for number, line in enumerate(text.splitlines(), 1):
            bare = re.sub(r"\([^)]*\)|;.*", "", line).strip()
            words = [(w.upper(), v) for w, v in WORD.findall(bare.lstrip("/"))]
            codes = {w + v.lstrip("0").rstrip(".") if v.strip("0.") else w + "0"
                     for w, v in words if w in "GM"}  # fmt: skip
            if bare.startswith("%"):
                continue
            self._note(codes)
            self._move(number, codes, dict(words), skipped=bare.startswith("/"))
            if codes & {"M2", "M30"}:
                break
        return self.moves

    def _note(self, codes: set[str]) -> None:
        self.unit = 25.4 if "G20" in codes else 1.0 if "G21" in codes else self.unit
        self.relative = "G91" in codes or (self.relative and "G90" not in codes)
        for code in ("G0", "G1", "G2", "G3", "G81", "G83"):
            self.motion = code if code in codes else self.motion
        self.motion = "" if "G80" in codes else self.motion

    def _move(self, number: int, codes: set[str], words: dict[str, str], *, skipped: bool) -> None:
        if codes & {"G28", "G30"} or ("G53" in codes and "Z" in words):
            self.at[2] = HOME
            return
        if not words.keys() & set("XYZIJR") or "O" in words:
            return
        before = list(self.at)
        for k, letter in enumerate("XYZ"):
            if letter in words and not (letter == "Z" and self.motion in {"G81", "G83"}):
                value = float(words[letter]) * self.unit
                self.at[k] = value + (self.at[k] if self.relative else 0.0)
        if "Z" in words and self.motion in {"G81", "G83"}:
            self.bottom = float(words["Z"]) * self.unit
        z = self.bottom if self.motion in {"G81", "G83"} else self.at[2]
        turned, wrong = self._turn(before, words)
        self.moves.append(
            ReadMove(number, self.at[0], self.at[1], z, self.motion, turned, wrong, skipped)
        )

    def _turn(self, before: list[float], words: dict[str, str]) -> tuple[float, float]:
        """Gives by how much an arc turns, and by how many mm its radii differ."""
        if self.motion not in {"G2", "G3"}:
            return 0.0, 0.0
        a, b = complex(before[0], before[1]), complex(self.at[0], self.at[1])
        side = 1 if self.motion == "G3" else -1
        if "R" in words:
            r = float(words["R"]) * self.unit
            half = abs(b - a) / 2
            up = max(r * r - half * half, 0.0) ** 0.5
            centre = (a + b) / 2 + 1j * side * (b - a) / abs(b - a) * up
        else:
            centre = a + complex(float(words.get("I", 0)), float(words.get("J", 0))) * self.unit
        angle = (phase(b - centre) - phase(a - centre)) * side % tau
        angle = tau if angle < 1e-4 or angle > tau - 1e-4 else angle
        return side * angle, abs(abs(a - centre) - abs(b - centre))
