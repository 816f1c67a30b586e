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


def test_the_mirror_image_of_a_grooved_part_is_another():
    bent = "G0 X40 Y40\nG1 Z-1 F900\nX60 F3000\nY80\nG0 Z5\n"
    other = "G0 X256 Y40\nG1 Z-1 F900\nX236 F3000\nY80\nG0 Z5\n"  # mirrored in its plate
    second = move(PLATE, 150) + "\n"
    assert len(found(bent + PLATE + other + second).shapes) == 2
    through = bent.replace("Z-1", "Z-6.2"), other.replace("Z-1", "Z-6.2")
    got = found(through[0] + PLATE + through[1] + second)
    assert (len(got.shapes), got.shapes[0].mirrored) == (1, 1)
