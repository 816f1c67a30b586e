"""One line of RS-274 text into words with values: parameters, expressions, functions.

Blanks and comments are taken out before (`clean`). A line that cannot be read raises
BadLine with a sentence.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, field

NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)")
COMMENT = re.compile(r"\([^)]*\)?")
DEEPEST = 40  # brackets within brackets


class BadLine(ValueError):  # noqa: N818 - it is named for what it tells
    """Tells why a line cannot be read; the message is a sentence for people."""


@dataclass
class WordBlock:
    """Holds the words of one line, in their order, and its parameter settings."""

    words: list[tuple[str, float]] = field(default_factory=list)
    settings: list[tuple[int, float]] = field(default_factory=list)
    deleted: bool = False


def clean_line(text: str, *, semicolon: bool = True) -> str:
    """Gives the line without comments and blanks, in upper case."""
    if semicolon and ";" in text:
        text = _cut_remark(text)
    if "(" in text:
        text = COMMENT.sub("", text)
    return "".join(text.split()).upper()


def _cut_remark(text: str) -> str:
    """Cuts at the first ``;`` that does not stand inside a round-bracket comment."""
    inside = False
    for place, letter in enumerate(text):
        if letter == ";" and not inside:
            return text[:place]
        inside = (inside or letter == "(") and letter != ")"
    return text


def read_block(text: str, parameters: dict[int, float]) -> WordBlock:
    """Reads the words of a cleaned line. Settings on it take effect after it is read."""
    block = WordBlock()
    if text.startswith("/"):
        block.deleted, text = True, text.lstrip("/")
    reader = ValueReader(text, parameters)
    while reader.at < len(text):
        _read_word(reader, block)
    return block


def _read_word(reader: ValueReader, block: WordBlock) -> None:
    """Reads one word or one parameter setting into the block."""
    letter = reader.text[reader.at]
    reader.at += 1
    if letter == "#":
        index = reader.read_index()
        reader.expect_sign("=")
        block.settings.append((index, reader.read_value()))
    elif letter == "N" and not block.words:
        reader.read_value()
    elif "A" <= letter <= "Z":
        block.words.append((letter, reader.read_value()))
    else:
        raise BadLine(f"“{letter}” stands where a word should begin.")


def _take_degrees(f: Callable[[float], float]) -> Callable[[float], float]:
    """Makes a function of radians take degrees."""
    return lambda x: f(math.radians(x))


def _give_degrees(f: Callable[[float], float]) -> Callable[[float], float]:
    """Makes a function that gives radians give degrees."""
    return lambda x: math.degrees(f(x))


FUNCTIONS: dict[str, Callable[[float], float]] = {
    "ABS": abs,
    "ACOS": _give_degrees(math.acos),
    "ASIN": _give_degrees(math.asin),
    "COS": _take_degrees(math.cos),
    "EXP": math.exp,
    "FIX": math.floor,
    "FUP": math.ceil,
    "LN": math.log,
    "ROUND": lambda x: math.floor(x + 0.5),
    "SIN": _take_degrees(math.sin),
    "SQRT": math.sqrt,
    "TAN": _take_degrees(math.tan),
}


def _raise_power(a: float, b: float) -> float:
    """Raises a number to a power; one that has none makes the line bad."""
    if a < 0 and b != round(b):
        raise BadLine("A negative number has no such power.")
    return math.pow(a, b)


LEVELS: tuple[dict[str, Callable[[float, float], float]], ...] = (
    {
        "XOR": lambda a, b: float(bool(a) != bool(b)),
        "AND": lambda a, b: float(bool(a) and bool(b)),
        "OR": lambda a, b: float(bool(a) or bool(b)),
        "+": lambda a, b: a + b,
        "-": lambda a, b: a - b,
    },
    {"MOD": lambda a, b: a % b, "/": lambda a, b: a / b, "*": lambda a, b: a * b},
    {"**": _raise_power},
)


class ValueReader:
    """Walks one cleaned line and reads real values from it."""

    def __init__(self, text: str, parameters: dict[int, float]) -> None:
        self.text, self.parameters, self.at, self.depth = text, parameters, 0, 0

    def expect_sign(self, sign: str) -> None:
        """Steps over `sign`, or the line is bad."""
        if not self.text.startswith(sign, self.at):
            raise BadLine(f"“{sign}” is missing.")
        self.at += len(sign)

    def read_value(self) -> float:
        """Reads a number, parameter, bracket or function; finite."""
        self.depth += 1
        if self.depth > DEEPEST:
            raise BadLine("Brackets stand too deep in one another.")
        try:
            result = float(self._read_any())
        except (ArithmeticError, ValueError) as error:
            raise (
                error if isinstance(error, BadLine) else BadLine("This cannot be worked out.")
            ) from error
        self.depth -= 1
        if not math.isfinite(result):
            raise BadLine("This number is too large.")
        return result

    def _read_any(self) -> float:
        """Reads what stands next, whether it is finite or not."""
        if found := NUMBER.match(self.text, self.at):
            self.at = found.end()
            return float(found[0])
        sign = self.text[self.at : self.at + 1]
        if sign == "[":
            return self._read_bracket()
        if sign == "#":
            self.at += 1
            return self.parameters.get(self.read_index(), 0.0)
        if sign in {"+", "-"} and self.text[self.at + 1 : self.at + 2] in {"[", "#"}:
            self.at += 1
            return self.read_value() * (-1 if sign == "-" else 1)
        return self._read_function()

    def read_index(self) -> int:
        """Reads the number of a parameter, 1 to 5399 or a little beyond."""
        number = self.read_value()
        if abs(number - round(number)) > 1e-4 or not 1 <= number < 100_000:
            raise BadLine("A parameter's number is not a whole number.")
        return round(number)

    def _read_function(self) -> float:
        """Reads a function of what stands in brackets."""
        for name, function in FUNCTIONS.items():
            if self.text.startswith(name + "[", self.at):
                self.at += len(name)
                return function(self._read_bracket())
        if self.text.startswith("ATAN[", self.at):
            self.at += 4
            over = self._read_bracket()
            self.expect_sign("/")
            return math.degrees(math.atan2(over, self._read_bracket()))
        raise BadLine("A number is missing.")

    def _read_bracket(self) -> float:
        """Reads what stands in square brackets."""
        self.expect_sign("[")
        result = self._read_level(0)
        self.expect_sign("]")
        return result

    def _read_level(self, level: int) -> float:
        """Reads values joined by operators of this level or of those that bind closer."""
        if level == len(LEVELS):
            return self.read_value()
        result = self._read_level(level + 1)
        while operator := self._read_operator(level):
            result = float(LEVELS[level][operator](result, self._read_level(level + 1)))
        return result

    def _read_operator(self, level: int) -> str:
        """Reads an operator of this level; empty: none stands here."""
        for name in LEVELS[level]:
            twice = name == "*" and self.text.startswith("**", self.at)
            if self.text.startswith(name, self.at) and not twice:
                self.at += len(name)
                return name
        return ""
