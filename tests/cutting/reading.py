"""Short ways to read a text and look at its path."""

from dataclasses import replace

import numpy as np
from pygcode import Line, Machine

from station.cutting.geometry.moves import find_geometry
from station.cutting.model import Analysis, Program, Setting
from station.cutting.read.reader_plain import read_plain
from station.cutting.report import analyse_program, read_program
from tests.fuzz import differences

# How an ordinary workshop file begins, and what is known beside it
HEAD = "G21 G90 G17\nT1 M6\nS18000 M3\nG0 Z5\n"
SETTING = Setting(thickness_mm=6.0, bit_mm={1: 6.0, 2: 3.0})
SHEET = Setting(thickness_mm=6, sheet=(300, 200), zero="face", origin="lower-left", spindle_mm=6)


def program(text: str, **setting) -> Program:
    return read_program(text.encode(), Setting(**setting))


def lengths(got: Program) -> tuple[float, float]:
    """Rapid and feed length."""
    length = find_geometry(got.moves).length
    rapid = got.moves.kind == 0
    return float(length[rapid].sum()), float(length[~rapid].sum())


def ends(got: Program) -> list[tuple[float, ...]]:
    return [tuple(map(float, np.round(p, 6) + 0.0)) for p in got.moves.points[1:]]


def kinds(got: Program) -> set[str]:
    return {p.kind for p in got.problems}


def told(got: Program) -> list[tuple[int, str]]:
    return [(p.line, p.kind) for p in got.problems]


def both(data: str | bytes, **setting) -> Program:
    """The program, after both readers have agreed on it."""
    data = data if isinstance(data, bytes) else data.encode("latin-1")
    got = read_program(data, Setting(**setting))
    assert differences(read_plain(data, Setting(**setting)), got) == []
    return got


def box(x: float, y: float, w: float, h: float, z: float = -6.2, tab: float = 0.0) -> str:
    """A rectangle of the bit's centre with lower left x, y; a tab in its lower side."""
    side = f"X{x + w}\n"
    if tab:
        a, b = x + w / 2 - tab / 2, x + w / 2 + tab / 2
        side = f"X{a}\nZ-4\nX{b}\nZ{z}\nX{x + w}\n"
    return f"G0 X{x} Y{y}\nG1 Z{z} F900\nG1 F3000\n{side}Y{y + h}\nX{x}\nY{y}\nG0 Z5\n"


def jump_around(x: float, y: float, w: float, h: float, gap: float = 12) -> str:
    """A rectangle of the bit's centre in four cuts, with a tab jumped over in each side."""
    middles = [(x + w / 2, y), (x + w, y + h / 2), (x + w / 2, y + h), (x, y + h / 2)]
    corners = [(x + w, y), (x + w, y + h), (x, y + h), (x, y)]
    ways = [(1, 0), (0, 1), (-1, 0), (0, -1)]
    text = ""
    for n in range(4):
        (a, b), (u, v), (p, q) = middles[n], ways[n], ways[(n + 1) % 4]
        c, d = middles[(n + 1) % 4]
        text += f"G0 X{a + u * gap / 2} Y{b + v * gap / 2}\nG1 Z-6.2 F400\n"
        text += f"G1 X{corners[n][0]} Y{corners[n][1]} F2000\n"
        text += f"X{c - p * gap / 2} Y{d - q * gap / 2}\nG0 Z5\n"
    return text


def found(body: str, setting: Setting = SETTING) -> Analysis:
    return analyse_program(program(HEAD + body), setting)


def read_on_sheet(text: str, bit_mm: float = 6) -> Analysis:
    setting = replace(SHEET, spindle_mm=bit_mm)
    return analyse_program(read_program(text.encode(), setting), setting)


def positions_elsewhere(text: str) -> list[tuple[float, float, float]]:
    """Where pygcode is after each line."""
    machine, found = Machine(), []
    for line in text.splitlines():
        machine.process_block(Line(line).block)
        found.append(tuple(machine.pos.values[axis] for axis in "XYZ"))
    return found


def sizes(got: Analysis) -> list[tuple[float, float, int]]:
    """Width, length and count of each shape."""
    return sorted((round(s.width_mm, 2), round(s.length_mm, 2), len(s.pieces)) for s in got.shapes)
