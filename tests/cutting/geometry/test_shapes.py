"""Equal shapes are found whatever their turn or mirror, and lie where they were put."""

import math

import numpy as np
import pytest
from layouts import make

from station.cutting.analyse.revision import make_revision, make_shape
from station.cutting.geometry.rings import find_rectangle
from station.cutting.geometry.shapes import group_pieces
from station.cutting.model import Piece
from station.cutting.report import analyse_program, read_program
from station.shop.facts import Part, Shape
from tests.cutting.reading import box, found

HOOK = np.array([(0, 0), (80, 0), (80, 15), (20, 15), (20, 40), (0, 40)], dtype=float)
ESS = np.array([(0, 0), (60, 0), (60, 40), (80, 40), (80, 60), (20, 60), (20, 20), (0, 20)], float)


def put(ring, degrees, mirrored):
    ring = ring * [-1, 1] if mirrored else ring
    z = (ring[:, 0] + 1j * ring[:, 1]) * np.exp(1j * math.radians(degrees))
    placed = np.column_stack((z.real + 400, z.imag + 300))
    return placed[::-1] if mirrored else placed


@pytest.mark.parametrize("ring", [HOOK, ESS])
@pytest.mark.parametrize("degrees", [0, 90, 180, 33.3, 271])
@pytest.mark.parametrize("mirrored", [False, True])
def test_turn_and_mirror(ring, degrees, mirrored):
    pieces = [Piece(put(ring, d, m), (), (), 1, 1) for d, m in ((0, False), (degrees, mirrored))]
    placed, shapes = group_pieces(pieces, {})
    assert len(shapes) == 1
    assert placed[1].mirrored == mirrored
    turn = (placed[1].turn_deg - placed[0].turn_deg) % 180  # both hold for a turn by half
    assert min(abs(turn - degrees % 180), 180 - abs(turn - degrees % 180)) < 0.05


def test_a_square_and_a_disc_have_many_turns_and_no_mirror():
    angle = np.linspace(0, 2 * np.pi, 200)[:-1]
    disc = np.column_stack((np.cos(angle), np.sin(angle))) * 20
    square = np.array([(0, 0), (30, 0), (30, 30), (0, 30)], float)
    pieces = [Piece(put(r, d, m), (), (), 1, 1) for r in (disc, square)
              for d, m in ((0, False), (45, True), (17, False))]  # fmt: skip
    placed, shapes = group_pieces(pieces, {})
    assert [len(s.pieces) for s in shapes] == [3, 3]
    assert not any(p.mirrored for p in placed)


def test_shapes_with_two_rectangles_almost_as_small_are_one():
    ring = np.array([(103.2, 27.2), (58.5, 77.3), (-13.5, 91.3), (-79.2, 62.5), (-107.9, 4.5),
                     (-86.0, -55.6), (-23.9, -89.7), (49.3, -81.8), (99.6, -35.7)])  # fmt: skip
    some = np.random.default_rng(7)
    rings = [ring + some.uniform(-0.005, 0.005, ring.shape) for _ in range(40)]  # as two decimals
    widths = {round(find_rectangle(ring)[0]) for ring in rings}
    assert len(widths) == 2
    _, shapes = group_pieces([Piece(put(r, 0, False), (), (), 1, 1) for r in rings], {})
    assert len(shapes) == 1


def test_a_known_part_lends_its_name():
    loop = tuple(map(tuple, HOOK.tolist()))
    part = Part(id="014", name="HC-300", words="", shape=Shape(outline=loop))
    placed, shapes = group_pieces([Piece(put(HOOK, 90, False), (), (), 1, 1)], {"014": part})
    assert (shapes[0].name, shapes[0].part, placed[0].turn_deg) == ("HC-300", "014", 90)


def drawn(placed, shape):
    """A piece's outline on the sheet, as a drawing makes it from the shop's record."""
    turn = math.radians(placed.turn_deg)
    z = [complex(-x if placed.mirrored else x, y) for x, y in shape.outline]
    ring = np.array([v * complex(math.cos(turn), math.sin(turn)) for v in z])
    points = np.column_stack((ring.real, ring.imag))
    return points - points.min(axis=0) + [placed.x_mm, placed.y_mm]


@pytest.mark.parametrize("seed", range(8))
def test_the_shops_record_draws_the_sheet_again(seed):
    layout = make(seed)
    got = analyse_program(read_program(layout.text.encode(), layout.setting), layout.setting)
    names = {s.index: f"{s.index:03}" for s in got.shapes}
    record = make_revision(got, id="008.A", cut_file="008", letter="A", material="01", names=names)
    shapes = dict(record.shapes)
    assert len(record.placed) == sum(layout.counts)
    for placed, piece in zip(record.placed, got.pieces, strict=True):
        ring = drawn(placed, shapes[placed.part])
        far = [np.hypot(*(piece.outline - p).T).min() for p in ring]
        assert max(far) < 0.5  # the piece's corners lie close; its long sides have few points
        assert np.abs(ring.max(axis=0) - piece.outline.max(axis=0)).max() < 0.05
    for part, shape in record.shapes:
        index = next(i for i, p in enumerate(record.placed) if p.part == part)
        assert len(shape.tabs) == len(got.pieces[index].tabs)


@pytest.mark.parametrize("seed", range(8))
def test_shapes_kept_by_the_shop_are_known_again(seed):
    layout = make(seed)
    program = read_program(layout.text.encode(), layout.setting)
    got = analyse_program(program, layout.setting)
    known = {
        f"{s.index:03}": Part(
            id=f"{s.index:03}", name=f"P{s.index}", words="", shape=make_shape(got, s)
        )
        for s in got.shapes
    }
    again = analyse_program(program, layout.setting, known=known)
    assert [s.name for s in again.shapes] == [f"P{s.index}" for s in got.shapes]
    assert [p.mirrored for p in again.pieces] == [p.mirrored for p in got.pieces]


@pytest.mark.parametrize(("across", "shapes"), [(False, 1), (True, 2)])
def test_plates_whose_slot_lies_the_other_way_are_two_shapes(across, shapes):
    """The slots are as long, as wide and in the middle of each."""
    along = "G0 X60 Y60\nG1 Z-6.2 F900\nX80 F3000\nG0 Z5\n"
    other = "G0 X210 Y60\nG1 Z-6.2 F900\nX230 F3000\nG0 Z5\n"
    if across:
        other = "G0 X220 Y50\nG1 Z-6.2 F900\nY70 F3000\nG0 Z5\n"
    got = found(along + other + box(20, 20, 100, 80) + box(170, 20, 100, 80))
    assert [len(s.pieces) for s in got.shapes] == [2 // shapes] * shapes


@pytest.mark.parametrize("wider", [0.0, 0.3])
def test_pieces_are_one_shape_whichever_rectangle_is_smallest_around_each(wider):
    """Two rectangles around this leaf have almost one area; rounding picks one or the other."""
    t = np.linspace(0, 2 * np.pi, 60, endpoint=False)
    radius = 47.8 * (1 + 0.117 * np.cos(2 * t + 5.25) + 0.027 * np.cos(3 * t + 1))
    leaf = np.column_stack((radius * np.cos(t), radius * np.sin(t)))
    other = leaf * (1 + wider / 107, 1 / (1 + wider / 107))  # as large, but a little longer
    rings = leaf.round(3), put(other, 33, mirrored=False).round(3)
    _, shapes = group_pieces([Piece(ring, (), (), 1, 1) for ring in rings], {})
    assert len(shapes) == (2 if wider else 1)


def draw_circle(x, y, radius, off):
    """A circle by chords that lie up to `off` from it."""
    n = math.ceil(math.pi / math.acos(1 - off / radius))
    turn = np.linspace(0, 2 * np.pi, n, endpoint=False)
    return np.column_stack((x + radius * np.cos(turn), y + radius * np.sin(turn)))


@pytest.mark.parametrize("radius", [1.0, 1.5, 2.5, 3.0, 5.0])
@pytest.mark.parametrize("wider", [0.0, 0.1])
def test_holes_are_as_large_however_coarse_their_chords(radius, wider):
    """As an older drawing or an older program has drawn them; 0.1 mm more is another hole."""
    plate = np.array([(0, 0), (300, 0), (300, 120), (0, 120)], float)
    known, new = ([draw_circle(40 + 20 * n, 60, r, off) for n in range(10)]
                  for r, off in ((radius, 0.05), (radius + wider, 0.0005)))  # fmt: skip
    _, shapes = group_pieces([Piece(plate, tuple(h), (), 1, 1) for h in (known, new)], {})
    assert len(shapes) == (2 if wider else 1)
