"""What a file's remarks say of its sheet, in the habits of many who write them: how thick it is,
and where on it x and y are 0.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from station.cutting.read.remarks import (
    BIT_WORDS,
    HEAD_BYTES,
    NUMBER,
    PARTED_BY,
    REMARK,
    decode_remark,
    read_value,
)
from station.shop.lengths import MM_PER_INCH

# a whole number, a fraction of it, or one with a point; then its unit, if it has one
SIZE = (
    rf"(?<![\d.,/])(?:(?:(\d+)[\s-]+)?(\d+)\s*/\s*(\d+)(?![\d/])|{NUMBER})"
    r"\s*(MM\b|IN(?:CH(?:ES)?)?\b|\"|'')?"
)
STUFF = (
    r"PLY(?:WOOD)?|MDF|HDF|OSB|CHIPBOARD|HARDBOARD|PLASTIC|ACRYLIC|BIRCH|BEECH|OAK|MAPLE|PINE"
    r"|WOOD|SPERRHOLZ|HOLZ"
)
SHEET = r"STOCK|SHEET|BOARD|PANEL|BLANK|MATERIAL|PLATTE|WORKPIECE"
# THICKNESS: 6.5, THICK = 1/4, T=0.25 IN; T1 is a bit
NAMED = re.compile(rf"(?:THICK(?:NESS)?|DICKE|ST\xc4RKE|THK|\bT\s*=)[\s.:=]*(?:IS\s+)?{SIZE}")
# which kind of stuff; any other word between makes the number one of a part: OAK SHUTTLE 45 MM
KIND = rf"{STUFF}|{SHEET}|BALTIC|MARINE|SOLID|COATED|RAW|WHITE|BLACK|CLEAR|IS|OF|SIZE|GAUGE"
# 6.5 MM PLYWOOD, 1/2 IN BALTIC BIRCH, 6 MM THICK
BEFORE = re.compile(rf"{SIZE}\s*-?\s*(?:(?:{KIND})\s+){{0,2}}?(?:THICK|(?:{STUFF}|{SHEET})\b)")
# MATERIAL: BIRCH PLY 6.5 MM, STOCK 6.5
AFTER = re.compile(rf"\b({STUFF}|{SHEET})\b[\s:=,-]*(?:(?:{KIND})[\s:=,-]+){{0,2}}{SIZE}")
# SHEET 1200 X 600 X 9 MM: the smallest of three
THREE = re.compile(rf"{NUMBER}\s*X\s*{NUMBER}\s*X\s*{NUMBER}\s*(MM\b|IN(?:CH(?:ES)?)?\b|\")?")
# STOCK X1220 Y610 Z12: how far it goes along each axis
AXES = re.compile(
    rf"\bX\s*[=:]?\s*{NUMBER}\D*?\bY\s*[=:]?\s*{NUMBER}\D*?\bZ\s*[=:]?\s*{NUMBER}"
    r"\s*(MM\b|IN(?:CH(?:ES)?)?\b|\")?"
)
# whose number is no sheet's thickness
OTHERS = re.compile(
    r"\bTABS?\b|BRIDGE|\bWEB|SKIN|ONION|WALL|\bPASS|LAYER|STEP|DEEP|DEPTH|POCKET|SLOT|DADO|GROOVE"
    r"|REBATE|RABBET|MORTI[CS]E|TENON|HOUSING|\bHOLES?\b|SAFE|CLEAR|RETRACT|RAPID|HEIGHT|ABOVE|BELOW"
    r"|\bOVER\b|\bINTO\b|SPOIL|WASTE|\bBED\b|OFFSET|ALLOW|LEAD|RAMP|KERF|FEED|\bPARTS?\b|PIECE"
    r"|SCREW|\bCUTS?\b|TRIM|MARGIN|EDGE|LEAVE|FINISH"
)
PIECES = re.compile(r",\s+|;|\s[-/|]\s|\.\s")
ORIGIN = re.compile(r"\bX\s*[=:]?\s*0|\bXY\b|\bZERO|\bNULL|\bORIGIN|\bDATUM|\bCORNER\b|\bECKE\b")
UP, DOWN = "TOP|UPPER|BACK|REAR|FAR|OBEN|HINTEN", "BOTTOM|LOWER|FRONT|NEAR|UNTEN|VORNE?"
LEFT, RIGHT = "LEFT|LINKS", "RIGHT|RECHTS"
# both words of a corner beside each other: in TOP OF STOCK, FRONT LEFT the first one is the face
CORNER = re.compile(
    rf"\b(?:(?:{UP}|{DOWN})\W*(?:{LEFT}|{RIGHT})|(?:{LEFT}|{RIGHT})\W*(?:{UP}|{DOWN}))\b"
)
MIDDLE = re.compile(r"\b(?:CENT(?:ER|RE)|MIDDLE|MITTE)\b")
THINNEST_MM, THICKEST_MM = 0.3, 80.0  # of a sheet; what is wider is its width


def find_thickness_said(data: bytes, *, inches: bool) -> tuple[float, int] | None:
    """Finds where a remark says how thick the sheet is: mm, and its line; None: nowhere, or not
    the same everywhere. `inches`: the file's unit, where a remark names none.
    """
    said: dict[float, int] = {}
    for found in REMARK.finditer(data[:HEAD_BYTES]):
        text = decode_remark(found[1] if found[1] is not None else found[2]).upper()
        if not any(c.isdigit() for c in text):
            continue
        size = read_thickness(text, inches=inches)
        if size is not None:
            said.setdefault(round(size, 3), len(data[: found.start()].splitlines()) + 1)
    return next(iter(said.items())) if len(said) == 1 else None


def find_origin_said(data: bytes) -> str:
    """Finds where on the sheet remarks say that x and y are 0, one of ORIGINS; empty: nowhere, or
    not the same everywhere.
    """
    said = set()
    for found in REMARK.finditer(data[:HEAD_BYTES]):
        said.add(
            read_origin(decode_remark(found[1] if found[1] is not None else found[2]).upper())
        )
    said.discard("")
    return said.pop() if len(said) == 1 else ""


def read_origin(text: str) -> str:
    """Reads a corner of the sheet, or its centre, from a remark; empty where it names none."""
    if not ORIGIN.search(text):
        return ""
    if corner := CORNER.search(text):
        up, left = re.search(UP, corner[0]), re.search(LEFT, corner[0])
        return f"{'upper' if up else 'lower'}-{'left' if left else 'right'}"
    return "centre" if MIDDLE.search(text) and re.search(SHEET, text) else ""


def read_thickness(text: str, *, inches: bool) -> float | None:
    """Reads a sheet's thickness from a remark, mm; None where it names none."""
    for some in (text, *PIECES.split(text)):
        if BIT_WORDS.search(some) or OTHERS.search(some):
            continue
        for size in _list_sizes(some, inches=inches):
            if THINNEST_MM <= size <= THICKEST_MM:
                return size
    return None


def _list_sizes(text: str, *, inches: bool) -> Iterator[float]:
    """Lists what may be the thickness in a remark, the plainest first."""
    if (three := THREE.search(text)) and re.search(f"{STUFF}|{SHEET}", text):
        yield min(map(read_value, three.groups()[:3])) * _find_scale(three[4], inches=inches)
        return
    if (axes := AXES.search(text)) and re.search(SHEET, text):
        long, wide, thick = map(read_value, axes.groups()[:3])
        if thick < min(long, wide):
            yield thick * _find_scale(axes[4], inches=inches)
        return
    for found in NAMED.finditer(text):
        yield _measure(found.groups(), inches=inches)
    for found in BEFORE.finditer(text):
        unit = found.groups()[-1]
        across = text[: found.start()].rstrip().endswith("X")
        if not across and (unit or (found[2] and inches)):
            yield _measure(found.groups(), inches=inches)
    for found in AFTER.finditer(text):
        across = text[found.end() :].lstrip().startswith("X")
        if not across and _is_a_size(found, inches=inches):
            yield _measure(found.groups()[1:], inches=inches)


def _is_a_size(found: re.Match[str], *, inches: bool) -> bool:
    """Tells whether a number after a material is a size: SHEET 2 and BOARD 1/4 number them."""
    _, _, over, under, number, unit = found.groups()
    if unit:
        return True
    if over:
        return inches and int(over) % 2 == 1 and int(under) in PARTED_BY
    if found.string[found.end() :].lstrip(" -").startswith("PLY"):
        return False  # it counts the layers
    if "." in number or "," in number:
        return True
    return not inches and re.fullmatch(STUFF, found[1]) is not None


def _measure(size: tuple[str | None, ...], *, inches: bool) -> float:
    """Gives a size in mm. A fraction without a unit is one of inches."""
    whole, over, under, number, unit = size
    if over and under:
        value = int(whole or 0) + int(over) / max(int(under), 1)
        return value * (1.0 if unit == "MM" else MM_PER_INCH)
    return read_value(number or "0") * _find_scale(unit, inches=inches)


def _find_scale(unit: str | None, *, inches: bool) -> float:
    """Gives the mm of a unit, or of the file's own where none is written."""
    return 1.0 if unit == "MM" or (unit is None and not inches) else MM_PER_INCH
