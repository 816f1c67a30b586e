"""What the setting leaves open is inferred from the path, and said so."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.cutting.analyse.heights import SheetHeights, infer_heights
from station.cutting.geometry.moves import Geometry, list_values
from station.cutting.geometry.strokes import Levels
from station.cutting.model import RAPID, Bools, Floats, Program, Setting
from station.shop.cut_text import ORIGINS

SHEET = (2440.0, 1220.0)
BIT_MM = 6.0  # common practice, no source
SPOILBOARD_MM = 0.5  # the same
BESIDE_SHARE = 0.05  # of a sheet: what lies no further over its edge was meant to lie on it
SKIN_MM, SKIN_SHARE = 1.0, 0.2  # what is left of a thickness by a cut that nearly goes through


@dataclass(frozen=True)
class Inferred:
    """Answers every open question. SheetHeights and corners are in the file's own frame, mm."""

    sheet: tuple[float, float]
    corner: tuple[float, float]
    heights: SheetHeights
    spoilboard: float
    bits: dict[int, float]
    assumed: tuple[str, ...]

    @property
    def face(self) -> float:
        """Gives the height of the sheet's face."""
        return self.heights.face

    @property
    def bottom(self) -> float:
        """Gives the height of the sheet's bottom."""
        return self.heights.bottom

    @property
    def thickness(self) -> float:
        """Gives the thickness of the sheet, mm."""
        return self.face - self.bottom

    @property
    def levels(self) -> Levels:
        """Gives the heights that decide what a cut does."""
        skin = self.bottom + min(SKIN_MM, SKIN_SHARE * self.thickness)
        through = self.heights.through
        return Levels(self.face, self.bottom, through, max(skin, through), self.heights.known)


def infer_setting(program: Program, setting: Setting, geo: Geometry) -> Inferred:
    """Answers what was not given, from the file where it can."""
    said: list[str] = []
    moves = program.moves
    cuts = (moves.kind != RAPID) & moves.sure
    sheet = setting.sheet or SHEET
    if setting.sheet is None:
        said.append(f"Sheet: {sheet[0]:g} × {sheet[1]:g} mm.")
    corner = _infer_corner(program, cuts, setting, sheet, said)
    bits_said: list[str] = []
    bits = _infer_bits(program, setting, bits_said)
    heights = infer_heights(program, geo, setting, bits, said)
    allowed = setting.spoilboard_mm
    if allowed is None:
        allowed = SPOILBOARD_MM
        said.append(f"A cut may go {allowed:g} mm into the spoilboard.")
    return Inferred(sheet, corner, heights, allowed, bits, (*said, *bits_said))


def _infer_corner(
    program: Program, cuts: Bools, setting: Setting, sheet: tuple[float, float], said: list[str]
) -> tuple[float, float]:
    """Finds the sheet's lower left corner in the file's frame, mm."""
    origin, remark = setting.origin, program.origin_said
    if origin is None:
        ends = [program.moves.points[1:, axis][cuts] for axis in (0, 1)]
        holds = remark and _fits(ends, np.array(sheet), remark)
        origin = remark if holds else _infer_origin(ends, np.array(sheet))
        where = origin if origin == "centre" else f"{origin.replace('-', ' ')} corner"
        said.append(f"Origin: {where} of the sheet{', as a remark says' if holds else ''}.")
    along, up = ORIGINS[origin]
    return 0.0 - along * sheet[0], 0.0 - up * sheet[1]


def _fits(ends: list[Floats], sheet: Floats, origin: str) -> bool:
    """Tells whether cuts lie on the sheet, or just beside it, where x and y are 0 there."""
    beside = BESIDE_SHARE * sheet
    low = -np.array(ORIGINS[origin]) * sheet - beside
    most = low + sheet + 2 * beside
    return all(
        bool(some.min(initial=np.inf) > low[axis]) and bool(some.max(initial=-np.inf) < most[axis])
        for axis, some in enumerate(ends)
    )


def _infer_origin(ends: list[Floats], sheet: Floats) -> str:
    """Finds where on the sheet x and y are 0: the centre where cuts lie on both sides of it, else
    the corner that they lie beside, however near. What lies left of and below zero, and no further
    than half the sheet, may be about a centre too. `ends` are the x, and the y, of the cuts' ends.
    """
    if not len(ends[0]):
        return "lower-left"
    low, high = (np.array([reach(some) for some in ends]) for reach in (np.min, np.max))
    beside = BESIDE_SHARE * sheet
    left, below = ((low < -beside) | (high < 0)).tolist()
    both = (low < -beside) & (high > beside)
    near = (low > -(0.5 + BESIDE_SHARE) * sheet).all()
    if both.any() or (left and below and near):
        return "centre"
    return f"{'upper' if below else 'lower'}-{'right' if left else 'left'}"


def find_first_bit(program: Program) -> int:
    """Finds the number of the bit that cuts first: the one in the spindle; 0: none cuts."""
    feed = np.flatnonzero(program.moves.kind != RAPID)
    return int(program.moves.tool[feed[0]]) if len(feed) else 0


def _infer_bits(program: Program, setting: Setting, said: list[str]) -> dict[int, float]:
    """Gives each bit that cuts a diameter, mm, and says where it is from.

    In this order: what a person gave, the file's remarks, the changer, the spindle (of the
    first bit), the router's usual bit, an assumption.
    """
    moves = program.moves
    numbers = list_values(moves.tool[moves.kind != RAPID])
    plain = setting.bit_mm.get(-1)
    remarks = {s.number: s for s in program.bits_said}
    bits = _take_given(setting, numbers, said)
    first = find_first_bit(program)
    for number in numbers:
        remark = remarks.get(number)
        if number in bits:
            continue
        if plain is not None and (len(numbers) == 1 or remark is None):
            bits[number] = plain
        elif remark is not None:
            bits[number] = remark.diameter_mm
            said.append(f"Bit {number}: {remark.diameter_mm:g} mm, as line {remark.line} says.")
        elif number in setting.changer_mm:
            bits[number] = setting.changer_mm[number]
            said.append(f"Bit {number}: {bits[number]:g} mm, the one in the changer.")
        elif setting.spindle_mm is not None and number == first:
            bits[number] = setting.spindle_mm
            said.append(f"Bit {number}: {setting.spindle_mm:g} mm, the one in the spindle.")
        elif setting.usual_mm is not None:
            bits[number] = setting.usual_mm
            said.append(f"Bit {number}: {setting.usual_mm:g} mm, as usual on this router.")
        else:
            bits[number] = BIT_MM
            said.append(f"Bit {number}: {BIT_MM:g} mm, which is only assumed.")
    return bits


def _take_given(setting: Setting, numbers: list[int], said: list[str]) -> dict[int, float]:
    """Takes the diameters that a person gave by number, mm. A file that calls no bit has one, of
    no number: the only one given is its. What is given of a bit that cuts nothing is said.
    """
    given = {n: mm for n, mm in setting.bit_mm.items() if n >= 0}
    if numbers == [0] and len(given) == 1 and 0 not in given:
        ((number, size),) = given.items()
        said.append(f"Bit 0: {size:g} mm, as given for bit {number}; the file calls none.")
        return {0: size}
    said += [f"Bit {n}: cuts nothing in this file." for n in given if n not in numbers]
    return given
