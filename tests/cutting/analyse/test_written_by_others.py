"""Small files written from the trade alone, by somebody who has not seen the program.

Each is in `files/`; beside it stands what it makes, and what is to be told of it.
"""

from pathlib import Path

import pytest

from station.cutting.model import KNOW, Setting
from station.cutting.report import analyse_program, read_program

FILES = Path(__file__).parent / "files"
PLATE, CARD = (80, 100, 8000), (40, 60, 2400)

# A name, the sheet, what comes off it as count, width, length and area, and what is told
WRITTEN = [
    # G0 back to just above what is drilled, G1 deeper: posts without canned cycles
    ("pecks_by_hand", 6, (600, 400), [(1, 80, 100, 7971.7)], []),
    # the second pass begins by G0 in the kerf of the first
    ("second_pass_in_its_kerf", 6, (600, 400), [(1, *PLATE)], []),
    ("bits_at_the_head", 6, (900, 600), [(1, 80, 80, 6227.4)], []),
    # the sheet's edge is a side of the part; the cuts end on it, or a little past it
    ("at_the_edge", 6, (900, 600), [(2, *PLATE)], []),
    ("past_the_edge", 6, (900, 600), [(2, *PLATE)], []),
    # five laps down a ramp lie on one another but for what two decimals round off
    ("disc_down_a_ramp", 9, (900, 600), [(1, 115, 115, 10386.7)], [(10, "arc-radii")]),
    # 0.5 mm to spare the face, then even passes
    ("thin_first_pass", 12, (1220, 610), [(1, *PLATE)], []),
    ("ring_and_disc", 6, (900, 600), [(1, 40, 40, 1256.6), (1, 140, 140, 7539.7)], []),
    ("plates_in_a_window", 6, (900, 600), [(2, 30, 40, 1200), (1, 160, 170, 11607.7)], []),
    # a retract was forgotten
    ("stray_into_the_next", 6, (900, 600), None, [(14, "gouge")]),
    ("stray_from_the_next", 6, (900, 600), None, [(21, "gouge")]),
    # the second piece is cut from another zero: where, only the control knows
    ("two_zeroes", 6, (900, 600), None, [(21, "other-zero"), (29, "twice")]),
    # one of three is not cut as the others are
    ("odd_pass", 17.8, (900, 600), [(3, *PLATE)], [(42, "pass-deep")]),
    ("odd_plunge", 6, (1220, 610), [(3, *PLATE)], [(21, "plunge-fast"), (28, "plunge-fast")]),
    ("one_lap_down_a_ramp", 9, (900, 600), [(2, 80, 80, 6400)], [(37, "pass-deep")]),
    # nobody gives the thickness: the remark holds where a cut ends just below it
    ("one_slip_in_depth", None, (900, 600), [(3, *PLATE)], [(27, "too-deep")]),
    ("zero_on_the_board", None, (900, 600), [(1, *PLATE)], []),
    ("thicker_than_its_remark", None, (900, 600), [(1, *PLATE)], [(1, "thickness")]),
    ("zeroes_set_by_the_file", 6, (900, 600), [(2, *PLATE)], []),
    # M4, a feed with two zeros too many, a pass or a tab that was forgotten, a wrong bit
    ("spindle_backwards", 6, (900, 600), [(1, *PLATE)], [(4, "spindle-backward")]),
    (
        "feed_with_zeros_too_many",
        6,
        (900, 600),
        [(2, *PLATE)],
        [(10, "feed-out-of-band"), (10, "tabs-forgotten")],
    ),  # of its two plates one has a tab
    ("last_pass_forgotten", 6, (900, 600), [(2, *PLATE)], [(40, "uncut")]),
    ("tab_forgotten", 6, (900, 600), [(3, *PLATE)], [(24, "tabs-forgotten")]),
    ("outline_by_a_v_bit", 6, (900, 600), None, [(10, "bit-pointed")]),
    # a part is cut out of what its window has freed before; a tab holds it to nothing
    ("cut_out_of_what_is_loose", 6, (900, 600), None, [(19, "late-inside")]),
    ("bit_from_a_point", 6, (900, 600), [(1, 76.2, 101.6, 7741.9)], []),
    ("bit_as_a_fraction", 6, (900, 600), [(1, 76.2, 101.6, 7741.9)], []),
    ("thickness_in_a_remark", None, (900, 600), [(1, *CARD)], []),
    ("lost_point_after_a_tab", 6, (900, 600), [(1, *CARD)], [(12, "feed-out-of-band")]),
    ("zero_shifted_for_the_second", 6, (900, 600), [(2, *CARD)], []),
    # the speed is set by hand at the router
    ("no_speed_in_the_file", 6, (900, 600), [(1, *CARD)], []),
]


def read(text: bytes, thickness: float | None = 6.0, size: tuple[float, float] = (900, 600)):
    setting = Setting(thickness_mm=thickness, sheet=size, origin="lower-left", spoilboard_mm=2)
    return analyse_program(read_program(text, setting), setting)


@pytest.mark.parametrize(
    ("name", "thickness", "size", "pieces", "told"), WRITTEN, ids=[row[0] for row in WRITTEN]
)
def test_it_is_read_as_it_was_meant(name, thickness, size, pieces, told):
    got = read((FILES / f"{name}.nc").read_bytes(), thickness, size)
    assert [(p.line, p.kind) for p in got.problems if p.grade != KNOW] == told
    if pieces is not None:
        found = [(len(s.pieces), s.width_mm, s.length_mm, s.area_mm2) for s in got.shapes]
        assert [n for row in sorted(found) for n in row] == pytest.approx(
            [n for row in sorted(pieces) for n in row], abs=0.1
        )


@pytest.mark.parametrize(
    "one", ["BIT 1 = 8 MM", "BIT 1 8 MM", "BIT NO 1: 8 MM DIA", "1: 8MM UPCUT",
            "CUTTER 1 - DIAMETER 8.0", "BIT 1 DIAMETER=8 MM END MILL"],
)  # fmt: skip
def test_a_list_of_bits_is_read_by_the_numbers_that_it_gives(one):
    other = one.replace("1", "2", 1).replace("8", "4", 1)
    text = (FILES / "bits_at_the_head.nc").read_text()
    text = text.replace("BIT 1 = 8 MM", one).replace("BIT 2 = 4 MM", other)
    assert {bit.number: bit.diameter_mm for bit in read(text.encode()).bits} == {1: 8.0, 2: 4.0}


def test_how_many_flutes_a_bit_has_is_not_its_number():
    """Both bits have the flutes that the other has for a number."""
    text = (FILES / "bits_at_the_head.nc").read_text()
    text = text.replace("BIT 1 = 8 MM", "2-FLUTE 8 MM").replace("BIT 2 = 4 MM", "1 FLUTE 4 MM")
    assert {bit.number: bit.diameter_mm for bit in read(text.encode()).bits} != {1: 4.0, 2: 8.0}


def test_a_rough_lap_beside_a_fine_one_is_no_cut_that_frees_nothing():
    """It leaves a skin that the fine lap, 0.3 mm nearer to the part, goes through."""
    laps = "".join(
        f"G0 X{20 - off} Y{20 - off}\nG1 Z{z} F500\nG1 X{106 + off} F1800\nY{126 + off}\n"
        f"X{20 - off}\nY{20 - off}\nG0 Z5\n"
        for off, z in ((0.3, -3.0), (0.3, -5.6), (0.0, -6.2))
    )
    got = read(f"(T1 D=6)\nG21 G90\nT1 M6\nS18000 M3\nG0 Z5\n{laps}M5\nM30\n".encode())
    assert [p.kind for p in got.problems if p.grade != KNOW] == []
    assert [(s.width_mm, s.length_mm) for s in got.shapes] == [pytest.approx((80, 100))]


def test_a_rebate_along_the_edge_belongs_to_its_part_whatever_the_rounding():
    """The bit's centre runs along an edge that is cut through: rounding puts it to either side."""
    made = []
    for off in (-0.002, 0.0, 0.002):
        rebate = f"G0 X{103 + off} Y23\nG1 Z-2 F500\nG1 Y123 F1800\nG0 Z5\n"
        lap = "G0 X20 Y20\nG1 Z-6.2 F500\nG1 X106 F1800\nY126\nX20\nY20\nG0 Z5\n"
        head = "(T1 D=6)\nG21 G90\nT1 M6\nS18000 M3\nG0 Z5\n"
        got = read(f"{head}{rebate}{lap}M5\nM30\n".encode())
        made.append([len(piece.hollows) for piece in got.pieces])
    assert made == [[1], [1], [1]]


def test_arcs_that_are_counted_and_not_listed_are_no_arc():
    """Read in the wrong unit, every arc of a long file may be off: the rest is only counted."""
    arc = "G2 X40 Y0 I19 J0 F900\nG2 X0 Y0 I-19.5 J0\n" * 700
    got = read(f"G21 G90\nT1 M6\nS9000 M3\nG0 X0 Y0\nG1 Z-2 F500\n{arc}G0 Z5\nM5\nM30\n".encode())
    told = [p for p in got.problems if p.kind == "arc-radii"]
    assert len(told) == 1001
    assert sum(p.line == 0 for p in told) == 1


@pytest.mark.parametrize(("end", "grade"), [(18.0025, "know"), (18.0035, "look"), (18.03, "look")])
@pytest.mark.parametrize("arcs", [1, 5])
def test_arcs_that_are_off_as_three_decimals_make_them_are_only_worth_knowing(end, grade, arcs):
    arc = f"G0 X10 Y10\nG1 Z-3 F900\nG2 X{end} Y10 I4\nG0 Z5\n"
    got = analyse_program(
        read_program(f"G21 G90\nM3 S18000\nG0 Z5\n{arc * arcs}M30\n".encode(), Setting()),
        Setting(),
    )
    assert {p.grade for p in got.problems if p.kind == "arc-radii"} == {grade}
