"""How thick a sheet is where nobody has said it: by a remark, by most cuts, or not known."""

import pytest
from reading import box

from station.cutting.model import KNOW, Analysis, Setting
from station.cutting.report import analyse_program, read_program

HEAD = "(T1 6 MM DOWNCUT)\nG21 G90 G17\nT1 M6\nS12000 M3\nG0 Z20\n"
BED = "(Z0 = SPOILBOARD)\n"


def cards(*depths: float | tuple[float, ...], clear: float = 2.0) -> str:
    """Cards of 40 by 60 side by side, each cut at its depths."""
    made = ""
    for n, some in enumerate(depths):
        for z in some if isinstance(some, tuple) else (some,):
            lap = box(17 + 100 * n, 17, 66, 46, z=z).replace("G0 Z5", "G0 Z20")
            made += lap.replace("G1 Z", f"G0 Z{clear}\nG1 Z", 1)
    return made


def read(body: str, remark: str = "", **known) -> Analysis:
    setting = Setting(sheet=(900, 600), **known)
    return analyse_program(read_program((remark + HEAD + body).encode(), setting), setting)


def told(got: Analysis) -> list[tuple[int, str]]:
    return [(p.line, p.kind) for p in got.problems if p.grade != KNOW]


def says(got: Analysis) -> str:
    return " ".join(text for text in got.assumed if text.startswith("Thickness"))


@pytest.mark.parametrize(
    ("depths", "deep"),
    [
        ((-6.2, -6.2, -12.2), -12.2),
        ((-6.2, -7.2, -6.2), -7.2),  # less than double
        (((-3, -6.2), (-3, -11), (-3, -6.2)), -11),
        (((-3, -6.2), (-9, -6.2), (-3, -6.2)), -9),  # not the last pass
    ],
)
def test_one_cut_that_is_much_too_deep_hides_no_part(depths, deep):
    got = read(cards(*depths))
    line = (HEAD + cards(*depths)).splitlines().index(f"G1 Z{deep} F900") + 1
    assert [len(s.pieces) for s in got.shapes] == [3]
    assert got.thickness_mm == pytest.approx(6.2)
    assert (line, "too-deep") in told(got)
    assert f"line {line} goes deeper" in says(got)


@pytest.mark.parametrize(
    "body",
    [
        # pockets and marks in a part that a deeper lap goes around
        box(27, 27, 20, 26, z=-3) + box(57, 27, 20, 26, z=-3) + box(17, 17, 66, 46),
        # pockets in a panel that is cut to size already, with a window for each
        "".join(box(x, 17, 40, 40, z=-3) + box(x, 77, 20, 20) for x in (17, 77)),
        # marks on the sheet beside
        "".join(box(x, 200, 40, 40, z=-0.5) for x in (17, 77, 137)) + box(17, 17, 66, 46),
    ],
)
def test_shallow_cuts_are_no_measure(body):
    assert read(body).thickness_mm == pytest.approx(6.2)


@pytest.mark.parametrize("remark", ["(STOCK 6.5 MM)\n", "(6.5MM PLYWOOD)\n"])
@pytest.mark.parametrize(
    ("body", "zero"),
    [
        (cards(-6.7, (-3, -6.7)), ""),
        (cards(-0.2, clear=8), ""),
        (cards(-0.2, (3, -0.2), clear=8), BED),
    ],
)
def test_a_remark_is_believed_where_the_cuts_agree(body, zero, remark):
    got = read(body, zero + remark)
    assert got.thickness_mm == pytest.approx(6.5)
    assert told(got) == []
    assert "as line" in says(got)


@pytest.mark.parametrize(
    ("remark", "body", "parts"),
    [
        ("(9 MM PLY)\n", cards(-6.2, -6.2), 2),
        ("(6 MM PLY)\n", cards(-12.2, -12.2), 2),
        ("(9 MM PLY)\n", BED + cards(-0.2, clear=8), 1),  # the bit would go across in the sheet
    ],
)
def test_a_remark_that_the_cuts_deny_is_asked_about(remark, body, parts):
    got = read(body, remark)
    assert (1, "thickness") in told(got)
    assert len(got.pieces) == parts


def test_a_remark_holds_against_one_cut_that_is_much_too_deep():
    """The only outline, after holes that end just below the sheet that the remark names."""
    holes = "".join(f"G0 X{x} Y40\nG0 Z2\nG1 Z-6.2 F500\nG0 Z20\n" for x in (40, 60))
    got = read(holes + cards(-16.2), "(6 MM PLY)\n")
    assert got.thickness_mm == pytest.approx(6)
    assert [kind for _, kind in told(got)] == ["too-deep"]
    assert len(got.pieces) == 1
    # two outlines, and a hole that does not go through: the remark is of another sheet
    assert read(holes[:40] + cards(-12.2, -12.2), "(6 MM PLY)\n").thickness_mm > 12


def test_what_is_given_counts_and_a_remark_that_differs_is_told():
    got = read(cards(-6.2), "(9 MM PLY)\n", thickness_mm=6.0)
    assert got.thickness_mm == 6.0
    assert told(got) == [(1, "thickness")]
    assert says(got) == "Thickness: 6 mm, as given; line 1 says 9 mm."
    assert told(read(cards(-6.2), "(6.3 MM PLY)\n", thickness_mm=6.0)) == []


def test_two_remarks_that_agree_are_one():
    got = read(cards(-6.7), "(THICKNESS 6.5 MM)\n(MATERIAL: BIRCH PLY 6.5 MM)\n")
    assert says(got) == "Thickness: 6.5 mm, as line 1 says."


def test_over_a_zero_on_the_spoilboard_it_is_known_by_even_passes_or_not_at_all():
    got = read(cards((4.3, 2.1, -0.1), clear=8), BED)
    assert got.thickness_mm == pytest.approx(6.5)
    assert told(got) == []
    for body in (cards(-0.2, clear=8), cards((3.2, -0.2), clear=8)):
        got = read(body, BED)
        assert says(got) == "Thickness: not known, at most 8 mm."
        assert told(got) == [(0, "no-thickness")]
        assert len(got.pieces) == 1


def test_a_slip_below_a_zero_on_the_spoilboard_turns_nothing():
    got = read(cards((3.2, -0.2), (3.2, -5), (3.2, -0.2), clear=8))
    assert len(got.pieces) == 3
    assert {kind for _, kind in told(got)} == {"no-thickness", "too-deep"}


def test_pecks_do_not_show_how_low_the_bit_goes_across():
    pecks = "G0 X150 Y150\nG83 Z-0.2 R8 Q3 F300\nG80\nG0 Z20\n"
    got = read(pecks + cards(-0.2, clear=8), BED + "(STOCK 6.5 MM)\n")
    assert got.thickness_mm == pytest.approx(6.5)
    assert told(got) == []
