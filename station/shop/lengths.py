"""Lengths in the shop's own units, and figures with the language's decimal sign: here alone.

Lengths are kept in mm (in m). Weights follow them: what an ounce and a pound are says `weights`.
A program serves one shop: its units are set once it is known, and followed when it changes them.
What is typed may have a point or a comma in any language.
"""

import re
from math import gcd

from station.shop.weights import G_PER_OUNCE, GRAMS, KG_PER_POUND, choose_unit, write_weight

# the international inch of 1959; a foot is twelve of them
MM_PER_INCH = 25.4
M_PER_FOOT = 0.3048
FINEST = 4  # digits of a mm that are kept: a tenth of a micrometre
SHOWN = 3  # digits of an inch on a screen: a thousandth, as calipers of inches show
PARTS = 64  # of an inch, the finest fraction on a rule
NEAR = 0.0005  # inches that a fraction may be off, and still be that fraction
# what a unit is called where lengths are in inches, and how many of it one of those is
_INCH_UNITS = {
    "mm": ("in", MM_PER_INCH),
    "mm/min": ("in/min", MM_PER_INCH),
    "mm/s²": ("in/s²", MM_PER_INCH),
    "mm²": ("in²", MM_PER_INCH**2),
    "m": ("ft", M_PER_FOOT),
    "m²": ("ft²", M_PER_FOOT**2),
    "g": ("oz", G_PER_OUNCE),
    "kg": ("lb", KG_PER_POUND),
    "kg/m³": ("lb/ft³", KG_PER_POUND / M_PER_FOOT**3),
    "cm³/kg": ("in³/lb", (MM_PER_INCH / 10) ** 3 / KG_PER_POUND),
}
LARGE = 100  # a speed or an area from here on is written without decimals
THOUSANDS = "\u202f"  # parts them: a narrow space at which no line is broken
DECIMALS = {"de": ","}  # the decimal sign of a language; every other has a point
_FRACTION = re.compile(r"(?:(\d{1,4})[ -])?(\d{1,3})/(\d{1,3})")


class _Units:
    """Holds the units of the shop; one for the program."""

    units = "mm"
    fractions = False
    decimal = "."


def use_units(units: str, *, fractions: bool) -> None:
    """Writes and reads lengths in these units (mm, inch) from now on, inches as fractions."""
    _Units.units, _Units.fractions = units, fractions


def use_decimals(language: str) -> None:
    """Writes figures with the decimal sign of a language from now on ("" is English)."""
    _Units.decimal = DECIMALS.get(language, ".")


def write_figure(figure: float | str, digits: int | None = None) -> str:
    """Writes a number as the language does; `digits`: behind its sign, fixed.

    One that is a text already, and what is no number, keeps all but its decimal point.
    """
    if isinstance(figure, str):
        text = figure
    else:
        text = f"{figure:g}" if digits is None else f"{figure:.{digits}f}"
    return text.replace(".", _Units.decimal)


def are_in_inches() -> bool:
    """Says whether the shop's lengths are in inches."""
    return _Units.units == "inch"


def name_unit(unit: str, units: str = "") -> str:
    """Names the unit that is shown for one that is kept; others stay as they are.

    `units`: mm or inch; "": the shop's.
    """
    in_inches = (units or _Units.units) == "inch" and unit in _INCH_UNITS
    return _INCH_UNITS[unit][0] if in_inches else unit


def is_length(unit: str) -> bool:
    """Says whether a unit is one of lengths or weights, which differ between shops."""
    return unit in _INCH_UNITS


def _find_factor(unit: str, units: str = "") -> float:
    in_inches = (units or _Units.units) == "inch" and unit in _INCH_UNITS
    return _INCH_UNITS[unit][1] if in_inches else 1.0


def to_shown(kept: float, unit: str) -> float:
    """Gives a kept value in the shop's unit."""
    return kept / _find_factor(unit)


def name_weight(grams: float) -> str:
    """Names the unit that so many g are written in."""
    return choose_unit(grams) if are_in_inches() else "g"


def to_grams(shown: float, like: float) -> float:
    """Gives a weight that was typed in the unit of one of `like` g as it is kept."""
    return round(shown * GRAMS[name_weight(like)], FINEST)


def weigh(grams: float, like: float) -> str:
    """Writes a weight for a person, without its unit: in that of one of `like` g."""
    if are_in_inches():
        return write_figure(write_weight(grams, choose_unit(like)))
    return f"{grams:_.0f}".replace("_", THOUSANDS)


def write(value: float, unit: str = "mm", digits: int | None = None) -> str:
    """Writes a kept value for a person, without its unit; `digits`: of a mm, fixed."""
    shown = value / _find_factor(unit)
    if unit == "m" or (unit == "mm/min" and digits is not None and not are_in_inches()):
        text = f"{shown:_.{digits or 0}f}"
        return write_figure(text).replace("_", THOUSANDS)
    if not are_in_inches():
        return write_figure(value, digits)
    if unit != "mm":
        return write_figure(f"{shown:.3g}" if shown < LARGE else f"{shown:.0f}")
    if _Units.fractions and (text := _write_fraction(shown)):
        return text
    return write_figure(_strip(f"{shown:.{SHOWN}f}"))


def _write_fraction(inches: float) -> str:
    """Writes inches as a fraction where it is one, whole inches before it; else nothing."""
    parts = round(abs(inches) * PARTS)
    if abs(abs(inches) - parts / PARTS) > NEAR:
        return ""
    whole, rest = divmod(parts, PARTS)
    most = gcd(rest, PARTS)
    part = f"{rest // most}/{PARTS // most}" if rest else ""
    sign = "-" if inches < 0 and parts else ""
    return sign + (" ".join(filter(None, (str(whole) if whole else "", part))) or "0")


def write_exactly(value: float, unit: str) -> str:
    """Writes a kept value as a file or a form reads it again: as short as that allows.

    Its decimal sign is a point in every language.
    """
    factor = _find_factor(unit)
    if factor == 1.0:
        return f"{value:g}"
    texts = (f"{value / factor:.{digits}f}" for digits in range(9))
    exact = (text for text in texts if to_kept(float(text), unit) == round(value, FINEST))
    return _strip(next(exact, f"{value / factor:.8f}"))


def write_as_typed(mm: float) -> str:
    """Writes a length that was typed as it was: none of its digits is left out."""
    if _Units.fractions and are_in_inches():
        text = _write_fraction(mm / MM_PER_INCH)
        if text and read(text) == mm:
            return text
    return write_figure(write_exactly(mm, "mm"))


def read(text: str, unit: str = "mm", units: str = "") -> float | None:
    """Reads what a person typed, in `units` or the shop's, as it is kept; None: it is no number.

    Inches may be a fraction, with whole inches before it: ``3/8``, ``6 3/8``.
    """
    bare = text.strip().replace(",", ".")
    in_inches = (units or _Units.units) == "inch"
    if unit == "mm" and in_inches and (match := _FRACTION.fullmatch(bare)):
        whole, above, below = (int(part or 0) for part in match.groups())
        return to_kept(whole + above / below, unit, units) if below else None
    body = bare.removeprefix("-")
    if not body.replace(".", "", 1).isdecimal() or not body.isascii():
        return None
    return to_kept(float(bare), unit, units)


def to_kept(shown: float, unit: str, units: str = "") -> float:
    """Gives a value in `units` or the shop's as it is kept."""
    factor = _find_factor(unit, units)
    return shown if factor == 1.0 else round(shown * factor, FINEST)


def inches(length: float) -> float:
    """Gives inches in mm, as they are kept."""
    return round(length * MM_PER_INCH, FINEST)


def _strip(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text
