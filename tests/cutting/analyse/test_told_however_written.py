"""A fault is told however its strokes are written: in halves, as spirals, with slopes in steps."""

import cmath
import math

import pytest
from reading import SETTING, box, found

from station.cutting.model import KNOW, Setting

NEIGHBOUR = {"apart": 130.0, "into the first": 95.0}


def told(body: str, setting: Setting = SETTING) -> set[str]:
    """The kinds of what is told to look at."""
    return {p.kind for p in found(body, setting).problems if p.grade != KNOW}


def halves(x: float, off: float = 0.0) -> str:
    """An outline of 80 by 60 in two open strokes; relative moves have drifted by `off`."""
    lower = f"G0 X{x} Y50\nG1 Z-6.2 F600\nY20 F2500\nX{x + 86}\nY50\nG0 Z5\n"
    upper = f"G0 X{x + 86 + off} Y{50 - off}\nG1 Z-6.2 F600\nY86 F2500\nX{x + off}\nY{50 - off}\n"
    return lower + upper + "G0 Z5\n"


def spiral(x: float) -> str:
    """An outline of 80 by 60 by a spiral: it goes through from a third of its lap on, and on to
    there once more.
    """
    return (
        f"G0 X{x} Y20\nG1 Z-3 F600\nX{x + 86} Z-6.2 F2500\nY86\nX{x}\nY20\nX{x + 86}\n"
        f"X{x + 86} Y60\nG0 Z5\n"
    )


@pytest.mark.parametrize("outline", [halves, lambda x: halves(x, 0.012), spiral])
@pytest.mark.parametrize("where", NEIGHBOUR)
def test_an_outline_that_cuts_into_the_next_part(outline, where):
    assert ("gouge" in told(outline(20) + outline(NEIGHBOUR[where]))) == (where != "apart")


def tabbed_halves(x: float) -> str:
    """An outline of 49 by 156 in two open strokes that go over tabs at feed."""
    over = "Z0.5 F2500\n{to}\nZ-6.2 F600\nF2500\n"
    right = [f"Y113.5 F2500\n{over.format(to='Y101.5')}Y13", f"X{x + 49.2}"]
    right += [over.format(to=f"X{x + 37.2}") + f"X{x}\nY26.4"]
    left = [f"Y70 F2500\n{over.format(to='Y82')}Y175.5", f"X{x + 0.8}"]
    left += [over.format(to=f"X{x + 12.8}") + f"X{x + 55}\nY162"]
    first = f"G0 X{x + 55} Y162.6\nG1 Z-6.2 F600\n" + "\n".join(right)
    return first + f"\nG0 Z5\nG0 X{x} Y26\nG1 Z-6.2 F600\n" + "\n".join(left) + "\nG0 Z5\n"


def test_an_outline_in_halves_that_cuts_into_the_tab_of_the_next_part():
    """That tab is gone, so its half falls apart: still it is the way around one part."""
    assert told(tabbed_halves(30.8)) == set()
    assert "gouge" in told(tabbed_halves(30.8) + tabbed_halves(78))


def test_a_tab_along_which_the_next_part_is_cut_still_holds_its_own():
    """The bit is lifted over it: the line of the first part ends within, and is no way on."""

    def outline(x: float) -> str:
        way = f"G0 X{x + 50} Y20\nG1 Z-6.2 F600\nX{x + 14} F2500\nG0 Z5\nX{x + 4}\nG1 Z-6.2 F600\n"
        return f"{way}X{x} F2500\nY80\nX{x + 86}\nY20\nX{x + 50}\nG0 Z5\n"

    assert told(outline(20)) == set()
    assert "gouge" in told(outline(20) + outline(100.5))


def test_halves_of_two_parts_that_seem_to_go_on_into_each_other():
    """All lower halves are cut first: from one to the next is no further than over a tab."""

    def half(x: float, up: int) -> str:
        far = 100 + 80 * up
        ways = [f"Y{far}", f"X{x + 46 * (up < 0)}", f"Y{100 - 0.5 * up}"]
        start = f"G0 X{x if up < 0 else x + 46} Y100\nG1 Z-6.2 F600\nF2500\n"
        return start + "\n".join(ways) + "\nG0 Z5\n"

    one, other = 20, 62
    assert told(half(one, -1) + half(one, 1)) == set()
    assert told("".join(half(x, up) for up in (-1, 1) for x in (one, other))) == {"gouge"}


def lap(
    z: float, over: float | None, steps: int, tabs: tuple[float, ...] = (50,), wide: float = 16
) -> str:
    """A lap around 100 by 80; `over` is how high it goes over a tab, up and down in steps."""
    side = ""
    for x in tabs if over is not None else ():
        ways = [(x + 6 * k / steps, z + (over - z) * k / steps) for k in range(steps + 1)]
        ways += [(2 * x + wide - at, height) for at, height in reversed(ways)]
        side += "".join(f"X{at:.3f} Z{height:.3f}\n" for at, height in ways)
    return f"G1 Z{z} F600\nF2500\n{side}X126\nY106\nX20\nY20\n"


@pytest.mark.parametrize("steps", [1, 2, 7])
def test_a_tab_whose_slopes_are_written_in_steps_is_cut_through(steps):
    begin, end = "G0 X20 Y20\n", "G0 Z5\n"
    assert "tab-cut-through" in told(begin + lap(-5, -4, steps) + lap(-6.2, None, 1) + end)
    assert told(begin + lap(-5, -4, steps) + lap(-6.2, -4, steps) + end) == set()


def test_a_tab_that_stands_out_of_its_pass_by_a_hair_is_cut_through():
    begin, end = "G0 X20 Y20\n", "G0 Z5\n"
    assert told(begin + lap(-4.05, -4, 1) + lap(-6.2, None, 1) + end) == {"tab-cut-through"}


def test_tabs_lower_than_the_pass_before_are_thin_and_no_skin():
    begin, end = "G0 X20 Y20\n", "G0 Z5\n"
    low = lap(-6.2, -5.85, 3, (24, 50, 76, 100), 22)
    assert told(begin + lap(-5.5, None, 1) + end + begin + low + end) == {"thin-tab"}


@pytest.mark.parametrize("deep", [-5.2, -6.2])
def test_a_shared_line_that_does_not_go_through_is_told_though_it_is_short(deep):
    """The line lies between two plates of 60 by 200: a tenth of what goes around each."""
    middle = f"G0 X20 Y226\nG1 Z{deep} F600\nX86 F2500\nG0 Z5\n"
    assert told(middle + box(20, 20, 66, 412)) == (set() if deep < -6 else {"uncut"})


@pytest.mark.parametrize("arcs", ["I-1.25 J0", "halves"])
def test_a_bored_hole_is_cut_too_deep_at_once(arcs):
    """It goes round by 1.25 mm, so a bit of 5 mm does not only drill."""
    thick = Setting(thickness_mm=18.0, bit_mm={1: 5.0})
    way = f"G3 {arcs}" if arcs != "halves" else "G3 X37.5 I-1.25 J0\nG3 X40 I1.25 J0"
    assert told(f"G0 X40 Y40\nG1 Z-18.4 F600\n{way} F1500\nG0 Z5\n", thick) == {"pass-deep"}


def u_cut(x: float, depths: tuple[float, ...]) -> str:
    """Three sides of a part of 80 by 100 that shares its left side, there and back."""
    ways = f"X{x + 86} F2500\nY126\nX{x - 2}\n", f"X{x + 86} F2500\nY20\nX{x - 2}\n"
    laps = "".join(f"G1 Z{z} F600\n{ways[n % 2]}" for n, z in enumerate(depths))
    return f"G0 X{x - 2} Y20\n{laps}G0 Z5\n"


@pytest.mark.parametrize("depths", [(-6.2,), (-3, -6.2), (-6.2, -6.2), (-3, -6.2, -6.2)])
def test_a_part_on_a_shared_line_is_cut_there_and_back(depths):
    got = found(box(20, 20, 86, 106) + u_cut(106, depths) + u_cut(192, depths))
    assert [len(shape.pieces) for shape in got.shapes] == [3]


def test_a_way_that_crosses_itself_like_an_eight_goes_around_two_parts():
    cross = "G0 X20 Y20\nG1 Z-6.2 F600\nX126 Y106 F2500\nX126 Y20\nX20 Y106\nX20 Y20\nG0 Z5\n"
    assert len(found(cross).pieces) == 2


def polygon(start: float, wide: float, sides: int = 24) -> str:
    """A disc of 100 mm by straight cuts that leaves a tab of the full height: `start` and `wide`
    in sides of it.
    """

    def at(share: float) -> str:
        k, rest = divmod(share, 1)
        a, b = (56 * cmath.rect(1, cmath.tau * n / sides) for n in (k, k + 1))
        place = 100 + 100j + a + (b - a) * rest
        return f"X{place.real:.3f} Y{place.imag:.3f}"

    begin, end = start + wide, start + sides
    stops = [*range(math.floor(begin) + 1, math.ceil(end)), end]
    way = "\n".join(at(stop) for stop in stops)
    return f"G0 {at(begin)}\nG1 Z-6.2 F600\nF2500\n{way}\nG0 Z5\n"


@pytest.mark.parametrize(
    "body",
    [
        # the cut ends at a corner, or begins there
        "G0 X31 Y20\nG1 Z-6.2 F600\nX126 F2500\nY106\nX20\nY20\nG0 Z5\n",
        "G0 X20 Y20\nG1 Z-6.2 F600\nX126 F2500\nY106\nX20\nY31\nG0 Z5\n",
        # it ends a little before a bend, or behind it
        polygon(0.1, 0.95),
        polygon(0.05, 1.0),
    ],
)
def test_a_tab_of_the_full_height_at_a_corner_holds_its_part(body):
    assert [len(piece.tabs) for piece in found(body).pieces] == [1]


def test_a_tab_around_a_corner_is_cut_through():
    """An earlier pass goes over it by a rapid straight from side to side."""
    earlier = "G0 X26 Y20\nG1 Z-3 F600\nX126 F2500\nY106\nX20\nY26\nG0 Z5\n"
    last = "G0 X50 Y20\nG1 Z-6.2 F600\nX126 F2500\nY106\nX20\nY20\nX50\nG0 Z5\n"
    assert told(earlier + "G0 X26 Y20\nG1 Z-3 F600\nX40 F2500\nG0 Z5\n" + last) == {
        "tab-cut-through"
    }
