"""What the setting leaves open is inferred from the path, and said so."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.cutting.geometry.moves import Geometry, list_values
from station.cutting.geometry.strokes import Levels
from station.cutting.model import RAPID, Bools, Floats, Ints, Moves, Program, Setting

SHEET = (2440.0, 1220.0)
BIT_MM = 6.0  # common practice, no source
SPOILBOARD_MM = 0.5  # the same
THROUGH_MM = 0.05  # a cut that ends this little above the sheet's bottom still parts it
DEEP_MM, ABOVE_MM = -1.0, 0.3  # what tells a zero at the face from one at the spoilboard
MANY_RUNS = 3  # times as many runs above as below tell it too
SKIN_MM, SKIN_SHARE = 1.0, 0.2  # what is left of a thickness by a cut that nearly goes through
OVERCUT_MM = 1.0  # a cut goes no further below the sheet that a remark tells of
SAME_LEVEL_MM = 0.5  # without a thickness: depths this near the deepest go through


@dataclass(frozen=True)
class Inferred:
    """Answers every open question. Heights and corners are in the file's own frame, mm."""

    sheet: tuple[float, float]
    corner: tuple[float, float]
    face: float
    bottom: float
    through_z: float
    spoilboard: float
    bits: dict[int, float]
    assumed: tuple[str, ...]
    measured: bool  # the thickness was given, or the file's remark holds

    @property
    def thickness(self) -> float:
        """Gives the thickness of the sheet, mm."""
        return self.face - self.bottom

    @property
    def levels(self) -> Levels:
        """Gives the heights that decide what a cut does."""
        skin = self.bottom + min(SKIN_MM, SKIN_SHARE * self.thickness)
        return Levels(
            self.face, self.bottom, self.through_z, max(skin, self.through_z), self.measured
        )


def infer_setting(program: Program, setting: Setting, geo: Geometry) -> Inferred:
    """Answers what was not given, from the file where it can."""
    said: list[str] = []
    moves = program.moves
    cuts = (moves.kind != RAPID) & moves.sure
    deepest = float(moves.points[1:, 2][cuts].min()) if cuts.any() else 0.0
    sheet = setting.sheet or SHEET
    if setting.sheet is None:
        said.append(f"Sheet: {sheet[0]:g} × {sheet[1]:g} mm.")
    corner = _infer_corner(moves, cuts, setting, sheet, said)
    zero = setting.zero or _infer_zero(program, geo, setting, deepest, said)
    thick = setting.thickness_mm
    if thick is None:
        thick = _find_thickness_said(program, zero, said)
    face, bottom, through = _infer_heights(program, geo, zero, thick, deepest, said)
    allowed = setting.spoilboard_mm
    if allowed is None:
        allowed = SPOILBOARD_MM
        said.append(f"A cut may go {allowed:g} mm into the spoilboard.")
    bits = _infer_bits(program, setting, said)
    return Inferred(
        sheet, corner, face, bottom, through, allowed, bits, tuple(said), thick is not None
    )


def _infer_corner(
    moves: Moves, cuts: np.ndarray, setting: Setting, sheet: tuple[float, float], said: list[str]
) -> tuple[float, float]:
    """Finds the sheet's lower left corner in the file's frame, mm."""
    origin = setting.origin
    if origin is None:
        ends = (moves.points[1:, axis][cuts] for axis in (0, 1))
        left = any(
            float(end.min(initial=0.0)) < size * -0.05
            for end, size in zip(ends, sheet, strict=True)
        )
        origin = "centre" if left else "lower-left"
        said.append(f"Origin: {'centre' if left else 'lower left corner'} of the sheet.")
    return (-sheet[0] / 2, -sheet[1] / 2) if origin == "centre" else (0.0, 0.0)


def _infer_heights(
    program: Program,
    geo: Geometry,
    zero: str,
    thick: float | None,
    deepest: float,
    said: list[str],
) -> tuple[float, float, float]:
    """Finds the face, the bottom, and the height at or below which a cut goes through."""
    if thick is not None:
        face = 0.0 if zero == "face" else thick
        return face, face - thick, face - thick + THROUGH_MM
    if zero == "face":
        face, bottom = 0.0, min(deepest, -0.1)
    else:
        face, bottom = _infer_face(program.moves, geo), 0.0
    said.append(f"Thickness: {face - bottom:g} mm, the deepest cut.")
    return face, bottom, bottom + min(SAME_LEVEL_MM, 0.2 * (face - bottom))


def _find_thickness_said(program: Program, zero: str, said: list[str]) -> float | None:
    """Finds the thickness that a remark says, mm, where a run ends just below a sheet like that;
    else the file does not cut as its remark says.
    """
    if program.thickness_said is None:
        return None
    thick, line = program.thickness_said
    feed, z = (program.moves.kind != RAPID) & program.moves.sure, program.moves.points[1:, 2]
    begins = _find_begins(feed)
    if not len(begins):
        return None
    lows = np.minimum.reduceat(np.where(feed, z, np.inf), begins)
    over = lows - (-thick if zero == "face" else 0.0)
    if not ((over < THROUGH_MM) & (over > -OVERCUT_MM)).any():
        return None
    said.append(f"Thickness: {thick:g} mm, as line {line} says.")
    return thick


def _infer_zero(
    program: Program, geo: Geometry, setting: Setting, deepest: float, said: list[str]
) -> str:
    """Finds where Z is zero, at the face or the spoilboard, and says by what.

    A remark tells it; else the face where most runs end deep, and the spoilboard where more is
    cut above zero than far below it, or by far more runs. One run that is too deep turns nothing,
    unless all are below zero and it goes halfway through the sheet: then the others engrave.
    """
    if program.zero_said:
        said.append(f"Z is zero at the {program.zero_said}, as a remark says.")
        return program.zero_said
    moves = program.moves
    z = moves.points[1:, 2]
    across = (geo.flat > 1e-9) & moves.sure
    cuts, rapids = across & (moves.kind != RAPID), across & (moves.kind == RAPID)
    thick = setting.thickness_mm
    begins = _find_begins(moves.kind != RAPID)
    usual = _find_usual_low(z, moves.kind != RAPID, begins)
    above, deep = cuts & (z > ABOVE_MM), cuts & (z < DEEP_MM)
    if (thick is None and deepest < DEEP_MM) or (thick and usual < -thick / 2):
        zero = "face"
    elif geo.flat[above].sum() > geo.flat[deep].sum():
        zero = "spoilboard"
    elif thick and _count_runs(above, begins) > MANY_RUNS * _count_runs(deep, begins):
        zero = "spoilboard"  # ramps alone are cut above zero, and that only by some mm
    elif thick and deepest < -thick / 2:
        zero = "face"
    else:
        over = thick is not None and cuts.any() and rapids.any()
        zero = "spoilboard" if over and float(z[rapids].max()) > (thick or 0.0) else "face"
    said.append(f"Z is zero at the {zero}.")
    return zero


def _find_begins(feed: Bools) -> Ints:
    """Finds the first move of each run of feed moves."""
    starts = feed.copy()
    starts[1:] &= ~feed[:-1]
    return np.flatnonzero(starts)


def _find_usual_low(z: Floats, feed: Bools, begins: Ints) -> float:
    """Finds how low most runs of cuts go: the middle one of their deepest heights."""
    if not len(begins):
        return 0.0
    lows = np.minimum.reduceat(np.where(feed, z, np.inf), begins)
    return float(np.median(lows))


def _count_runs(some: Bools, begins: Ints) -> int:
    """Counts the runs that some moves are of."""
    return int(np.count_nonzero(np.logical_or.reduceat(some, begins))) if len(begins) else 0


def _infer_face(moves: Moves, geo: Geometry) -> float:
    """Finds the face over a zero on the spoilboard: where plunges begin, as the path shows it."""
    z = moves.points[:, 2]
    across = (moves.kind != RAPID) & (geo.flat > 1e-9)
    levels = np.unique(np.round(z[1:][across], 3))
    if not len(levels):
        return 1.0
    step = float(np.diff(levels).min()) if len(levels) > 1 else 0.0
    return max(float(levels[-1]) + step, 0.1)


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
    bits = {n: mm for n, mm in setting.bit_mm.items() if n >= 0}
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
