"""Ordinary workshop files: several bits, pockets, clearing, finishing, nested pieces."""

import math

import pytest
from reading import box, found

from station.cutting.report import make_report


def sizes(got):
    return sorted((round(s.width_mm, 3), round(s.length_mm, 3), len(s.pieces)) for s in got.shapes)


def test_a_pocket_that_does_not_go_through_is_no_hole():
    got = found(box(40, 40, 20, 20, z=-3) + box(20, 20, 106, 86, tab=12))
    assert sizes(got) == [(80, 100, 1)]
    assert got.pieces[0].holes == ()
    assert got.shapes[0].area_mm2 == pytest.approx(8000, abs=0.5)


def test_a_hole_that_is_cleared_in_rings_is_one_hole():
    rings = "".join(box(60 - r, 60 - r, 2 * r, 2 * r) for r in (2, 6, 10, 14))
    got = found(rings + box(20, 20, 106, 86, tab=12))
    hole = 34 * 34 - (4 - math.pi) * 9
    assert sizes(got) == [(80, 100, 1)]
    assert len(got.pieces[0].holes) == 1
    assert got.shapes[0].area_mm2 == pytest.approx(8000 - hole, abs=0.5)


def test_a_rough_lap_before_the_last_one_changes_no_size():
    rough = box(19.5, 19.5, 107, 87, tab=12)
    got = found(rough + box(20, 20, 106, 86, tab=12))
    assert sizes(got) == [(80, 100, 1)]


def test_a_piece_in_the_hole_of_another():
    got = found(
        box(103, 103, 94, 94, tab=12)
        + box(57, 57, 186, 186, tab=0)
        + box(20, 20, 266, 266, tab=12)
    )
    assert sizes(got) == [(88, 88, 1), (260, 260, 1)]
    outer = max(got.pieces, key=lambda p: float(p.outline.max()))
    assert len(outer.holes) == 1


def test_bits_are_counted_apart():
    drill = "G99 G81 X40 Y40 Z-6.2 R1 F500\nX50\nG80\nG0 Z5\nM5\nT2 M6\nM3\n"
    got = found(drill + box(20, 20, 103, 83, tab=12))
    assert [b.number for b in got.bits] == [1, 2]
    assert got.bits[0].cut_mm == pytest.approx(14.4)
    assert sizes(got) == [(80, 100, 1)]
    assert len(got.pieces[0].holes) == 2
    assert got.shapes[0].area_mm2 == pytest.approx(8000 - 2 * math.pi * 9, abs=0.5)


def test_bored_holes():
    helix = (
        "G0 X73 Y60\nG1 Z0 F900\n"
        + "".join(f"G3 X73 Y60 I-3 J0 Z{-z}\n" for z in (1, 2, 3, 4, 5, 6.2))
        + "G3 X73 Y60 I-3 J0\nG0 Z5\n"
    )
    got = found(helix + box(20, 20, 106, 86, tab=12))
    assert len(got.pieces[0].holes) == 1
    assert got.shapes[0].area_mm2 == pytest.approx(8000 - math.pi * 36, abs=0.2)


@pytest.mark.parametrize("style", ["square", "ramped", "gap"])
def test_tabs_have_place_width_and_height(style):
    over = {
        "square": "X67\nZ-4\nX79\nZ-6.2\n",
        "ramped": "X67\nX70 Z-4\nX76\nX79 Z-6.2\n",
        "gap": "X67\nG0 Z5\nX79\nG1 Z-6.2\n",
    }[style]
    body = box(20, 20, 106, 86).replace("X126\n", over + "X126\n", 1)
    (piece,) = found(body).pieces
    (tab,) = piece.tabs
    assert (tab.style, tab.x_mm, tab.y_mm) == (style, pytest.approx(73), pytest.approx(23))
    assert tab.width_mm == pytest.approx(6)
    assert tab.height_mm == pytest.approx(6 if style == "gap" else 2)


def test_tabs_left_out_by_a_later_lap_are_told():
    got = found(box(20, 20, 106, 86, tab=12) + box(20, 20, 106, 86))
    kinds = {p.kind for p in got.problems}
    assert "tab-cut-through" in kinds


def test_scrap_is_what_no_piece_takes():
    got = found(box(20, 20, 106, 86, tab=12))
    assert make_report(got)["scrap_mm2"] == pytest.approx(2440 * 1220 - 8000, abs=1)
