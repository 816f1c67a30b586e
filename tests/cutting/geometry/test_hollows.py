"""Pockets, grooves and engraving belong to their part."""

import pytest
from reading import box, found

PLATE = box(20, 20, 106, 86, tab=12)


def move(body: str, by: int) -> str:
    """The same file further along x."""
    return "\n".join(
        " ".join(f"X{float(w[1:]) + by:g}" if w[0] == "X" else w for w in line.split())
        for line in body.splitlines()
    )


def rows(z: float) -> str:
    """A pocket of 36 by 26 mm, cut in rows."""
    lines = "".join(f"Y{y}\nX{x}\n" for y, x in ((45, 80), (50, 50), (55, 80), (60, 50), (65, 80)))
    return f"G0 X50 Y45\nG1 Z{z} F900\n{lines}X50\nY45\nX80\nY65\nG0 Z5\n"


def test_a_pocket_is_one_hollow_with_its_depth():
    (piece,) = found(rows(-1) + rows(-2) + PLATE).pieces
    (hollow,) = piece.hollows
    assert hollow.depth_mm == pytest.approx(2)
    assert hollow.outline.max(axis=0) - hollow.outline.min(axis=0) == pytest.approx(
        (36, 26), abs=0.01
    )


@pytest.mark.parametrize(
    ("one", "other", "shapes"),
    [
        (rows(-2), "", 2),
        (rows(-2), rows(-2), 1),
        (rows(-2), rows(-3), 2),
        (rows(-2), box(50, 45, 30, 20, z=-2), 2),  # a ring, its middle left
        (
            "G0 X40 Y40\nG1 Z-1 F900\nX60 F3000\nG0 Z5\n",
            "G0 X40 Y40\nG1 Z-1 F900\nX70\nG0 Z5\n",
            2,
        ),
    ],
)
def test_parts_are_one_only_where_their_hollows_are(one, other, shapes):
    second = move(other + PLATE, 150) + "\n"
    assert len(found(one + PLATE + second).shapes) == shapes


DRILLED = "G0 X60 Y60\nG1 Z-4 F600\nG0 Z5\n"


@pytest.mark.parametrize(
    ("one", "other", "shapes"),
    [
        (DRILLED, "", 2),
        (DRILLED, DRILLED, 1),
        (DRILLED, DRILLED.replace("Z-4", "Z-3"), 2),
        (DRILLED, DRILLED.replace("Y60", "Y70"), 2),
        # the same hole with its chips cleared, in three ways
        (DRILLED, "G0 X60 Y60\nG1 Z-2 F600\nG0 Z1\nG1 Z-4\nG0 Z5\n", 1),
        (DRILLED, "G0 X60 Y60\nG1 Z-2 F600\nZ-1\nZ-4\nZ5\n", 1),
        (DRILLED, "G83 X60 Y60 Z-4 R1 Q1.5 F600\nG80\nG0 Z5\n", 1),
        # a bit that goes down in what is cut anyway takes nothing more
        (DRILLED.replace("X60 Y60", "X20 Y20"), "", 1),
        (DRILLED.replace("Z-4", "Z-2").replace("X60", "X65") + rows(-2), rows(-2), 1),
    ],
)
def test_a_hole_drilled_in_part_belongs_to_its_part(one, other, shapes):
    second = move(other + PLATE, 150) + "\n"
    assert len(found(one + PLATE + second).shapes) == shapes


def test_a_hole_drilled_in_part_is_as_wide_as_its_bit():
    (piece,) = found(DRILLED + PLATE).pieces
    (hollow,) = piece.hollows
    assert hollow.depth_mm == pytest.approx(4)
    assert hollow.outline.max(axis=0) - hollow.outline.min(axis=0) == pytest.approx(6, abs=0.01)


def test_the_mirror_image_of_a_grooved_part_is_another():
    bent = "G0 X40 Y40\nG1 Z-1 F900\nX60 F3000\nY80\nG0 Z5\n"
    other = "G0 X256 Y40\nG1 Z-1 F900\nX236 F3000\nY80\nG0 Z5\n"  # mirrored in its plate
    second = move(PLATE, 150) + "\n"
    assert len(found(bent + PLATE + other + second).shapes) == 2
    through = bent.replace("Z-1", "Z-6.2"), other.replace("Z-1", "Z-6.2")
    got = found(through[0] + PLATE + through[1] + second)
    assert (len(got.shapes), got.shapes[0].mirrored) == (1, 1)
