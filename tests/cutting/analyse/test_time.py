"""Motion times against a plain small-step integration; closed forms: `tests/outside/motion.py`."""

import math
from dataclasses import fields, replace

import numpy as np
import pytest
from layouts import make
from reading import program

from station.cutting.analyse.time import time_path
from station.cutting.geometry.moves import find_geometry
from station.cutting.model import Moves
from station.cutting.report import analyse_program, read_program
from station.queries.pace import fit_pace
from station.shop.facts import Router

ROUTER = Router(id="1", name="Router 1", change_s=0.0)


def test_a_straight_way_in_pieces_takes_as_long_as_in_one():
    pieces = "\n".join(f"X{x / 10}" for x in range(1, 1001))
    got = program(f"G21 G1 F3000\n{pieces}")
    router = Router(id="1", name="", accel_mm_s2=500)
    assert time_path(got.moves, (), router).total_s == pytest.approx(2.1, abs=1e-6)


def test_moves_that_go_nowhere_are_no_corner():
    plain = program("G21 G1 F3000\nX50\nX100")
    still = program("G21 G1 F3000\nX50\nX50\nX100")
    assert time_path(still.moves, (), ROUTER).total_s == pytest.approx(
        time_path(plain.moves, (), ROUTER).total_s
    )


def test_pauses_stop_the_path_and_take_their_time():
    plain = program("G21 G1 F3000\nX50\nX100")
    dwell = program("G21 G1 F3000\nX50\nG4 P2\nX100")
    more = time_path(dwell.moves, dwell.pauses, ROUTER).total_s
    assert more > time_path(plain.moves, (), ROUTER).total_s + 2.05


def test_inverse_time_takes_its_block():
    got = program("G21 G93\nG1 X10 F2")
    assert time_path(got.moves, (), ROUTER).total_s == pytest.approx(30, abs=0.1)


def test_tool_changes_count():
    got = program("G21 T1 M6\nG0 X10\nT2 M6\nG0 X0\nT2 M6\nX5")
    slow = Router(id="1", name="", change_s=100)
    assert time_path(got.moves, got.pauses, slow).pauses_s == 200


@pytest.mark.parametrize("count", [2, 5, 40])
def test_recorded_times_are_fitted_back(count):
    files = np.linspace(300, 1500, count)
    made = [(float(f), 1.08 * f + 40) for f in files]
    got = fit_pace(made)
    assert got.pace == pytest.approx(1.08, rel=0.01)
    assert got.extra_s == pytest.approx(40, rel=0.01)


def test_the_spread_of_a_fit():
    rng = np.random.default_rng(7)
    made = [(float(f), 1.08 * f + 40 + rng.normal(0, 5)) for f in np.linspace(300, 1500, 200)]
    assert fit_pace(made).spread_s == pytest.approx(5, rel=0.15)
    assert fit_pace([(600, 690)] * 3).pace == pytest.approx(1.15)
    assert fit_pace([]).count == 0


PLANES = {17: (0, 1, 2), 18: (2, 0, 1), 19: (1, 2, 0)}


def place(moves, i, part):
    """Where move i is after `part` of its length: drawn anew from the columns."""
    start, end = moves.points[i], moves.points[i + 1]
    point = start + (end - start) * part
    if moves.kind[i] > 1:
        a, b, _ = PLANES[int(moves.plane[i])]
        centre = complex(*moves.centre[i])
        spoke = complex(start[a], start[b]) - centre
        turned = centre + spoke * complex(
            math.cos(moves.sweep[i] * part), math.sin(moves.sweep[i] * part)
        )
        point[a], point[b] = turned.real, turned.imag
    return point


def drawn(moves, i):
    """Length, directions at both ends and radius of a move, from small chords along it."""
    n = 400 if moves.kind[i] > 1 else 1
    points = np.array([place(moves, i, k / n) for k in range(n + 1)])
    length = float(np.linalg.norm(np.diff(points, axis=0), axis=1).sum())
    ways = [place(moves, i, b) - place(moves, i, a) for a, b in ((0, 1e-5), (1 - 1e-5, 1))]
    leave, arrive = (w / np.linalg.norm(w) for w in ways)
    a, b, _ = PLANES[int(moves.plane[i])]
    spoke = moves.points[i][[a, b]] - moves.centre[i]
    return length, leave, arrive, float(np.hypot(*spoke)) if moves.kind[i] > 1 else math.inf


def limits_of(moves, i, router, way, radius):
    """Acceleration and top speed of a move."""
    x = router.accel_mm_s2
    axes = (x, router.accel_y_mm_s2 or x, router.accel_z_mm_s2)
    accel = min(limit / abs(w) for limit, w in zip(axes, way, strict=True) if abs(w) > 1e-9)
    if moves.kind[i] > 1:
        level = abs(moves.points[i, 2] - moves.points[i + 1, 2]) < 1e-12
        accel = min(axes[:2]) if level and moves.plane[i] == 17 else min(axes)
    v = router.rapid_mm_min / 60
    v = v if moves.kind[i] == 0 else min(v, moves.feed[i] / 60)
    return accel, min(v, math.sqrt(accel * min(radius, 1e12)))


def by_small_steps(moves, router, dt=5e-4):
    """Drives along the path in small steps of time: an independent plain integration.

    The speed allowed at the end of a move comes from walking back over all later moves.
    """
    n = len(moves)
    shapes = [drawn(moves, i) for i in range(n)]
    limits = [limits_of(moves, i, router, s[1], s[3]) for i, s in enumerate(shapes)]
    corner = [0.0] * (n + 1)
    for i in range(1, n):
        cosine = float(shapes[i - 1][2] @ shapes[i][1])
        s = math.sin((math.pi - math.acos(max(-1.0, min(1.0, cosine)))) / 2)
        corner[i] = min(limits[i - 1][1], limits[i][1])
        if s < 1 - 1e-9:
            a = min(limits[i - 1][0], limits[i][0])
            corner[i] = min(corner[i], math.sqrt(a * router.corner_mm * s / (1 - s)))
    for i in range(n - 1, -1, -1):
        reach = math.sqrt(corner[i + 1] ** 2 + 2 * limits[i][0] * shapes[i][0])
        corner[i] = min(corner[i], reach)
    seconds = v = 0.0
    for i in range(n):
        (accel, top), left = limits[i], shapes[i][0]
        v = min(v, corner[i])
        while left > 1e-9:
            v2 = min(v + accel * dt, top, math.sqrt(corner[i + 1] ** 2 + 2 * accel * left))
            step = (v + v2) / 2 * dt
            if step >= left or step <= 0:
                seconds += left / max((v + v2) / 2, 1e-9)
                v = v2
                break
            left, seconds, v = left - step, seconds + dt, v2
    return seconds


ROUTERS = (
    ROUTER,
    Router(id="2", name="", accel_mm_s2=300, accel_z_mm_s2=150, rapid_mm_min=9000, corner_mm=0.05),
    Router(id="3", name="", accel_mm_s2=2500, accel_z_mm_s2=900, rapid_mm_min=40000),
    Router(id="4", name="", accel_mm_s2=800, accel_z_mm_s2=800, accel_y_mm_s2=500, corner_mm=0.2),
)
UPRIGHT = "G18 G3 X10 Z-6 R40\nG19 G2 Y12 Z-2 R30\nG17 G2 X20 Y20 I5 J5 Z-6\n"


@pytest.mark.parametrize("seed", range(50))
@pytest.mark.slow
def test_within_one_percent_of_small_steps(seed):
    """Fifty files on four routers; every fifth with arcs in upright planes and a helix."""
    layout = make(seed)
    lines = layout.text.splitlines()
    text = "\n".join([*lines[:6], *lines[6 + seed % 8 : 56]])
    if seed % 5 == 0:
        text += "\nG90 G21 G0 X0 Y0 Z0\nG1 F2000\n" + UPRIGHT
    got = read_program(text.encode(), layout.setting).moves
    real = find_geometry(got).length > 0
    if not real.all():
        got = only(got, real)
    router = ROUTERS[seed % len(ROUTERS)]
    assert len(got) > 20
    seconds = float(time_path(got, (), router).moves.sum())
    assert seconds == pytest.approx(by_small_steps(got, router), rel=0.01)


def only(moves, real):
    """Without moves that go nowhere."""
    keep = np.flatnonzero(real)
    rest = {f.name: getattr(moves, f.name)[keep] for f in fields(moves) if f.name != "points"}
    return Moves(points=moves.points[np.append(keep, len(moves))], **rest)


@pytest.mark.slow
def test_recorded_times_of_real_files_are_fitted_back():
    files = []
    for seed in range(12):
        layout = make(seed)
        setting = replace(layout.setting, router=ROUTER)
        files.append(analyse_program(read_program(layout.text.encode(), setting), setting).file_s)
    got = fit_pace([(f, 1.08 * f + 40) for f in files])
    assert got.pace == pytest.approx(1.08, rel=0.01)
    assert got.extra_s == pytest.approx(40, rel=0.01)


def test_the_router_puts_its_own_correction_on_top():
    layout = make(0)
    program_ = read_program(layout.text.encode(), layout.setting)
    router = Router(id="1", name="", pace=1.08, extra_s=40)
    got = analyse_program(program_, replace(layout.setting, router=router))
    assert got.time_s == pytest.approx(1.08 * got.file_s + 40)
