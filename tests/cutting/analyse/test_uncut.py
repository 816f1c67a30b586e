"""What does not go through though it was meant to is told at its line; what was not meant, not."""

import pytest
from reading import HEAD, SETTING, box, found

from station.cutting.model import KNOW, Setting


def uncut(body: str, setting: Setting = SETTING) -> list[int]:
    """The lines at which something is told as not cut through."""
    return [p.line for p in found(body, setting).problems if p.kind == "uncut"]


def stroke(x0: float, y0: float, x1: float, y1: float, z: float) -> str:
    return f"G0 X{x0} Y{y0}\nG1 Z{z} F900\nX{x1} Y{y1} F3000\nG0 Z5\n"


def pieces_of_box(z: float) -> str:
    """A box of 106 by 86 whose four sides are single strokes that end short of a tab."""
    sides = [(20, 20, 68, 20), (78, 20, 126, 20), (126, 20, 126, 106), (126, 106, 20, 106),
             (20, 106, 20, 20)]  # fmt: skip
    return "".join(stroke(*side, z) for side in sides)


FRAME = box(0, 0, 300, 160)
AMID = box(170, 40, 60, 60, z=-6.2)


@pytest.mark.parametrize(
    ("body", "lines"),
    [
        # a small outline of short strokes in the waste
        (pieces_of_box(-5.0) + box(200, 20, 106, 86), [7]),
        # an outline in the waste of a hole, and one of a part to come out of another
        (box(40, 30, 90, 100, z=-4.8) + AMID + FRAME, [8]),
        # a line right across a part, as one that two parts share
        (stroke(120, 0, 120, 160, -4.9) + FRAME, [7]),
        # a groove right across, and one all around that nobody takes for a cut
        (stroke(120, 0, 120, 160, -3) + FRAME, []),
        (box(40, 30, 90, 100, z=-3) + FRAME, []),
        # a deep groove that ends in the part parts nothing
        (stroke(120, 40, 120, 120, -4.9) + FRAME, []),
    ],
)
def test_a_cut_that_would_free_something_is_told(body, lines):
    assert uncut(body) == lines


def lap(x: float, *, tabs: bool, stop: str, start: float = 53) -> str:
    """A lap around a box of 106 by 86 from its lower side to `stop`, tabs in its upright sides."""
    side = "Y{0}\nZ-4\nY{1}\nZ-6.2\n" if tabs else ""
    around = f"X{x + 106}\n{side.format(55, 67)}Y106\nX{x}\n{side.format(67, 55)}" + stop.format(
        start=x + start
    )
    return f"G0 X{x + start} Y20\nG1 Z-6.2 F900\nG1 F3000\n{around}G0 Z5\n"


def two_ends(off: float) -> str:
    """A strip of 206 by 36 in two laps from long side to long side, with a jump over a tab in
    each of these; `off` outside.
    """
    low, high = 20 - off, 56 + off
    return "".join(
        f"G0 X{a} Y{y}\nG1 Z-6.2 F900\nX{x} F3000\nY{to}\nX{a}\nG0 Z5\n"
        for a, x, y, to in ((117, 20 - off, low, high), (129, 226 + off, high, low))
    )


WHOLE = "Y20\nX{start}\n"


@pytest.mark.parametrize(
    ("body", "lines"),
    [
        (lap(20, tabs=True, stop=WHOLE) + lap(140, tabs=True, stop=WHOLE), []),
        # 20 mm short of its start, where tabs are lifts
        (lap(20, tabs=True, stop=WHOLE) + lap(140, tabs=True, stop="Y20\nX173\n"), [37]),
        # the same where one of three has it, and none a tab
        (
            lap(20, tabs=False, stop=WHOLE)
            + lap(140, tabs=False, stop=WHOLE)
            + lap(260, tabs=False, stop="Y20\nX290\n"),
            [30],
        ),
        # 8 mm short, where others are whole, of one outline alone, and where tabs are lifts
        (lap(20, tabs=False, stop=WHOLE) + lap(140, tabs=False, stop="Y20\nX185\n"), [21]),
        (lap(20, tabs=False, stop="Y20\nX65\n"), [12]),
        (lap(20, tabs=True, stop=WHOLE) + lap(140, tabs=True, stop="Y20\nX185\n"), [37]),
        # another length than all the others
        (
            lap(20, tabs=False, stop="Y20\nX59\n")
            + lap(140, tabs=False, stop="Y20\nX179\n")
            + lap(260, tabs=False, stop="Y20\nX305\n"),
            [30],
        ),
        # all are held so
        (lap(20, tabs=False, stop="Y20\nX53\n") + lap(140, tabs=False, stop="Y20\nX173\n"), []),
        # more than a tab: it frees nothing
        (lap(20, tabs=False, stop=WHOLE) + lap(140, tabs=False, stop="Y60\n"), [20]),
        # tabs that are jumped over, in rough laps beside fine ones: these free the piece
        (two_ends(0.5) + two_ends(0), []),
        # a rough lap that runs over its start, beside the fine one that frees the piece
        (lap(19.5, tabs=False, stop="Y20\nX125\n") + lap(20, tabs=False, stop=WHOLE), []),
    ],
)
def test_an_outline_that_does_not_get_back_to_its_start(body, lines):
    told = [p for p in found(body).problems if p.kind == "frees-nothing" and p.grade != KNOW]
    assert [p.line for p in told] == lines


@pytest.mark.parametrize(
    ("deeper", "shallower", "left"),
    [("Z-6.3", "Z-5", 1.0), ("Z-6.2", "Z-5.5", 0.5), ("Z-4", "Z-5", 1.0)],
)
def test_what_a_cut_leaves_is_measured_where_it_does_not_go_through(deeper, shallower, left):
    """It goes through before, and then on at another depth from edge to edge of nothing."""
    cut = f"G0 X20 Y150\nG1 {deeper} F900\nX120 F3000\n{shallower}\nX300\nG0 Z5\n"
    told = [p for p in found(cut + box(20, 20, 106, 86)).problems if p.kind == "uncut"]
    assert [str(p.text) for p in told] == [f"This cut leaves {left:.2f} mm and frees nothing."]


def test_a_skin_over_which_the_bit_was_lifted_is_not_meant():
    """Six parts with the same skin would be meant, but for the tabs in them."""
    skins = "".join(box(20 + 130 * n, 20, 106, 86, z=-5.3) for n in range(3))
    assert uncut(skins) == []
    tabs = "".join(box(20 + 130 * n, 20, 106, 86, z=-5.3, tab=12) for n in range(3))
    assert len(uncut(tabs)) == 3


@pytest.mark.parametrize(("top", "told"), [(-5.85, True), (-4.5, False)])
def test_a_tab_of_the_last_pass_counts_though_an_earlier_one_left_more(top, told):
    rough = box(20, 20, 106, 86, z=-2) + box(20, 20, 106, 86, z=-4)
    last = box(20, 20, 106, 86, tab=12).replace("Z-4", f"Z{top}")
    got = found(rough + last)
    line = (HEAD + rough + last).splitlines().index(f"Z{top}") + 2
    assert [(p.line, p.kind) for p in got.problems if p.kind == "thin-tab"] == [
        (line, "thin-tab")
    ] * told
    (piece,) = got.pieces
    (tab,) = piece.tabs
    assert tab.height_mm == pytest.approx(6 + top, abs=1e-6)
