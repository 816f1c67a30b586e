"""What of all that falls out is a part, a slug or waste."""

from dataclasses import replace

from reading import SETTING, box, found, sizes

DEEP = "G1 Z-6.2 F900\nG1 F3000\n"
UP = "G0 Z5\n"


def test_waste_between_round_parts_is_no_part():
    discs = "".join(
        f"G0 X{x + 23} Y{y}\n{DEEP}G3 I-23 J0\n{UP}" for x in (60, 106) for y in (60, 106)
    )
    assert sizes(found(discs)) == [(40, 40, 4)]


def test_the_slug_of_a_hole_is_no_part_and_a_part_in_a_hole_is_one():
    got = found(box(60, 60, 40, 40) + box(20, 20, 146, 146, tab=12))
    assert sizes(got) == [(140, 140, 1)]
    got = found(box(80, 80, 60, 60, tab=12) + box(50, 50, 120, 120) + box(20, 20, 186, 186))
    assert sizes(got) == [(54, 54, 1), (180, 180, 1)]


def test_strips_ripped_across_the_sheet():
    body = "".join(f"G0 X-5 Y{y}\n{DEEP}X605\n{UP}" for y in (20, 76, 132))
    got = found(body, replace(SETTING, sheet=(600.0, 400.0)))
    assert sizes(got) == [(50, 600, 2)]
