"""A sheet's thickness and its zero are read from remarks in many habits, and from nothing else."""

import pytest

from station.cutting.read.sheet_remarks import (
    find_origin_said,
    find_thickness_said,
    read_origin,
    read_thickness,
)

MM, INCH = False, True


@pytest.mark.parametrize(
    ("text", "inches", "size"),
    [
        ("THICKNESS 6.5 MM", MM, 6.5),
        ("MATERIAL THICKNESS: 6.5", MM, 6.5),
        ("STOCK THICKNESS = 6.5 MM", MM, 6.5),
        ("STOCK 6.5 MM", MM, 6.5),
        ("6.5MM PLYWOOD", MM, 6.5),
        ("MATERIAL: BIRCH PLY 6.5 MM", MM, 6.5),
        ("BIRCH PLYWOOD, THICKNESS 6.5 MM", MM, 6.5),
        ("Z0 = TOP OF 6.5MM STOCK", MM, 6.5),
        ("6 MM PLY, CUT 0.2 MM INTO SPOILBOARD", MM, 6),
        ("SHEET 1200 X 600 X 9 MM", MM, 9),
        ("MDF 18", MM, 18),
        ("DICKE 6,5 MM", MM, 6.5),
        ("T=0.25 IN", MM, 6.35),
        ("THICKNESS .25", INCH, 6.35),
        ("1/4 PLY", INCH, 6.35),
        ('1/2" BALTIC BIRCH PLYWOOD', MM, 12.7),
        ("STOCK: 1-1/4 IN", MM, 31.75),
        ("STOCK 48 X 24 X .25", INCH, 6.35),
        ("THICKNESS 6 MM", INCH, 6),
        ("STOCK X1220 Y610 Z12", MM, 12),
        ("STOCK: X=48.0 Y=24.0 Z=.25", INCH, 6.35),
        ("SHEET X 1220 MM, Y 610 MM, Z 9 MM", MM, 9),
        # bits, parts, and what else has a size
        ("T1 6 MM DOWNCUT", MM, None),
        ("T1 = 6 MM", MM, None),
        ("6 MM STRAIGHT BIT FOR 9 MM PLY", MM, None),
        ("PART 40 X 60 X 6 MM", MM, None),
        ("TAB THICKNESS 1.5 MM", MM, None),
        ("SLOT FOR 9 MM PLY", MM, None),
        ("OAK SHUTTLE 45 MM", MM, None),
        ("HEDDLE 12 MM WIDE BIRCH", MM, None),
        ("BIRCH BATCH 12.5", MM, None),
        ("BOARD NO 3.2", MM, None),
        ("BIRCH 3 PLY 4 MM", MM, 4),
        ("PLY 3", INCH, None),
        ("COMB FROM 4 MM BEECH", MM, 4),
        ("SPOILBOARD 18 MM MDF", MM, None),
        ("SAFE Z 10 MM ABOVE STOCK", MM, None),
        ("2440X1220 MM SHEET", MM, None),
        ("SHEET 2", MM, None),
        ("SHEET 1 OF 3", MM, None),
        ("BOARD 2/4", INCH, None),
        ("PARK AT X1220 Y610 Z12", MM, None),
        ("STOCK BEGINS AT X0 Y0 Z20", MM, None),
        ("THICKNESS 6", INCH, None),  # a sheet of 6 inches is none
    ],
)
def test_thicknesses(text, inches, size):
    assert read_thickness(text, inches=inches) == (None if size is None else pytest.approx(size))


def test_it_is_said_where_it_stands_first():
    text = b"G21\n(STOCK 6.5 MM)\n; THICKNESS 6.5\n"
    assert find_thickness_said(text, inches=False) == (6.5, 2)
    assert find_thickness_said(text + b"(9 MM MDF)\n", inches=False) is None


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("X0 Y0 = TOP RIGHT CORNER", "upper-right"),
        ("ZERO: UPPER-LEFT CORNER OF SHEET", "upper-left"),
        ("ORIGIN AT THE BACK LEFT", "upper-left"),
        ("XY ZERO RIGHT FRONT", "lower-right"),
        ("Z0 TOP OF STOCK, X0 Y0 FRONT LEFT", "lower-left"),
        ("NULLPUNKT UNTEN LINKS", "lower-left"),
        ("X0Y0 HINTEN RECHTS", "upper-right"),
        ("ORIGIN: CENTER OF STOCK", "centre"),
        ("DATUM IN THE MIDDLE OF THE SHEET", "centre"),
        # of Z alone, of a part or a tab
        ("Z0 = TOP OF STOCK", ""),
        ("Z ZERO BOTTOM", ""),
        ("TAB AT THE TOP RIGHT", ""),
        ("LOWER LEFT SHUTTLE", ""),
        ("CENTRE THE SHEET", ""),
    ],
)
def test_where_a_remark_says_that_zero_is(text, where):
    assert read_origin(text) == where


def test_remarks_that_name_two_places_say_nothing():
    text = b"G21\n(X0 Y0 TOP RIGHT)\n"
    assert find_origin_said(text + b"; ORIGIN UPPER RIGHT\n") == "upper-right"
    assert find_origin_said(text + b"(ORIGIN LOWER LEFT)\n") == ""
