"""What was taken of a cut file's text that a person may know better: bits, zero, origin, units."""

from __future__ import annotations

import math

from station.cutting.analyse.inference import SPOILBOARD_MM, find_first_bit
from station.cutting.model import Analysis, Setting
from station.shop.cut_text import ORIGINS, TakenAs

SAME_MM = 1e-6


def list_taken(analysis: Analysis, setting: Setting) -> tuple[TakenAs, ...]:
    """Lists what was taken, bits first; lengths are texts in mm."""
    program = analysis.program
    bits = tuple(
        TakenAs("bit", f"{b.diameter_mm:g}", _find_source(b.number, b.diameter_mm, analysis,
                                                         setting), b.number)
        for b in analysis.bits
    )  # fmt: skip
    zero = "face" if abs(analysis.face_z) < SAME_MM else "spoilboard"
    said_zero = "given" if setting.zero else "remark" if program.zero_said else "assumed"
    origin = _find_origin(analysis)
    remark = setting.origin is None and program.origin_said == origin
    said_origin = "remark" if remark else _given(setting.origin)
    deep = SPOILBOARD_MM if setting.spoilboard_mm is None else setting.spoilboard_mm
    unsaid = any(p.kind == "no-units" for p in program.problems)
    return (
        *bits,
        TakenAs("zero", zero, said_zero),
        TakenAs("origin", origin, said_origin),
        TakenAs("spoilboard", f"{deep:g}", _given(setting.spoilboard_mm)),
        TakenAs("units", program.units, _given(setting.units) if unsaid else "text"),
        TakenAs("dialect", setting.dialect, "given" if setting.dialect != "report" else "assumed"),
    )


def _find_origin(analysis: Analysis) -> str:
    """Finds where on the sheet x and y are 0."""
    places = zip(analysis.corner_mm, analysis.sheet_mm, strict=True)
    here = [-corner / size if size else 0.0 for corner, size in places]
    return min(ORIGINS, key=lambda name: math.dist(ORIGINS[name], here))


def _given(value: object) -> str:
    return "assumed" if value is None else "given"


def _find_source(number: int, size: float, analysis: Analysis, setting: Setting) -> str:
    """Finds who or what says how wide a bit is, in the order in which they are believed."""
    if number in setting.bit_mm:
        return "given"
    remarks = {s.number: s.diameter_mm for s in analysis.program.bits_said}
    plain = setting.bit_mm.get(-1)
    spindle = setting.spindle_mm if number == find_first_bit(analysis.program) else None
    for source, said in (
        ("given", plain),
        ("remark", remarks.get(number)),
        ("changer", setting.changer_mm.get(number)),
        ("spindle", spindle),
        ("usual", setting.usual_mm),
    ):
        if said is not None and abs(said - size) < SAME_MM:
            return source
    return "assumed"
