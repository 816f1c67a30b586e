"""Motion times: closed forms (checks 7.5, COMPUTED) and a plain small-step integration."""

import math
from dataclasses import replace

import numpy as np
import pytest
from layouts import make
from reading import program

from station.cutting.drive import corner_speed2, trapezoid
from station.cutting.moves import geometry
from station.cutting.report import analyse, read
from station.cutting.time import fit, timing
from station.shop.facts import Router

ROUTER = Router(id="1", name="Router 1", change_s=0.0)


@pytest.mark.parametrize(
    ("length", "top", "accel", "seconds"),
    [(100, 50, 500, 2.1), (5, 50, 500, 0.2), (2.5, 50, 500, 0.1414214), (1, 50, 500, 0.0894427),
     (1000, 250, 1000, 4.25)],
)  # fmt: skip
def test_rest_to_rest(length, top, accel, seconds):
    assert trapezoid(length, top, accel, 0.0, 0.0) == pytest.approx(seconds, abs=1e-7)


def test_entered_at_speed():
    assert trapezoid(50, 100, 1000, 20, 0) == pytest.approx(0.582)


@pytest.mark.parametrize(("inside", "speed"), [(150, 11.9054), (90, 3.47434), (45, 1.76056)])
def test_corner_speed(inside, speed):
    cosine = -math.cos(math.radians(inside))
    assert math.sqrt(corner_speed2(500, 0.01, cosine)) == pytest.approx(speed, abs=1e-4)


@pytest.mark.parametrize(
    ("length", "top", "accel", "seconds"), [(100, 50, 500, 2.1), (2.5, 50, 500, 0.1414214)]
)
def test_a_whole_path_of_one_move(length, top, accel, seconds):
    router = Router(id="1", name="", accel_mm_s2=accel, accel_z_mm_s2=accel)
    got = program(f"G21 G1 X{length} F{top * 60}")
    assert timing(got.moves, got.pauses, router).total_s == pytest.approx(seconds, abs=1e-6)


def test_a_straight_way_in_pieces_takes_as_long_as_in_one():
    pieces = "\n".join(f"X{x / 10}" for x in range(1, 1001))
    got = program(f"G21 G1 F3000\n{pieces}")
    router = Router(id="1", name="", accel_mm_s2=500)
    assert timing(got.moves, (), router).total_s == pytest.approx(2.1, abs=1e-6)


def test_moves_that_go_nowhere_are_no_corner():
    plain = program("G21 G1 F3000\nX50\nX100")
    still = program("G21 G1 F3000\nX50\nX50\nX100")
    assert timing(still.moves, (), ROUTER).total_s == pytest.approx(
        timing(plain.moves, (), ROUTER).total_s
    )


def test_pauses_stop_the_path_and_take_their_time():
    plain = program("G21 G1 F3000\nX50\nX100")
    dwell = program("G21 G1 F3000\nX50\nG4 P2\nX100")
    more = timing(dwell.moves, dwell.pauses, ROUTER).total_s
    assert more > timing(plain.moves, (), ROUTER).total_s + 2.05


def test_inverse_time_takes_its_block():
    got = program("G21 G93\nG1 X10 F2")
    assert timing(got.moves, (), ROUTER).total_s == pytest.approx(30, abs=0.1)


def test_tool_changes_count():
    got = program("G21 T1 M6\nG0 X10\nT2 M6\nG0 X0\nT2 M6\nX5")
    slow = Router(id="1", name="", change_s=100)
    assert timing(got.moves, got.pauses, slow).pauses_s == 200


@pytest.mark.parametrize("count", [2, 5, 40])
def test_recorded_times_are_fitted_back(count):
    files = np.linspace(300, 1500, count)
    made = [(float(f), 1.08 * f + 40) for f in files]
    got = fit(made)
    assert got.pace == pytest.approx(1.08, rel=0.01)
    assert got.extra_s == pytest.approx(40, rel=0.01)


def test_the_spread_of_a_fit():
    rng = np.random.default_rng(7)
    made = [(float(f), 1.08 * f + 40 + rng.normal(0, 5)) for f in np.linspace(300, 1500, 200)]
    assert fit(made).spread_s == pytest.approx(5, rel=0.15)
    assert fit([(600, 690)] * 3).pace == pytest.approx(1.15)
    assert fit([]).count == 0


def by_small_steps(moves, router, dt=2e-4):
    """Drives along the path in small steps of time: an independent plain integration.

    The speed allowed at the end of a move comes from walking back over all later moves.
    """
    geo = geometry(moves)
    n = len(moves)
    accel, top, corner = [], [], [0.0] * (n + 1)
    for i in range(n):
        limits = [
            limit / abs(d[axis])
            for d in (geo.leave[i], geo.arrive[i])
            for axis, limit in enumerate((router.accel_mm_s2,) * 2 + (router.accel_z_mm_s2,))
            if abs(d[axis]) > 1e-12
        ]
        a = min(limits)
        if moves.kind[i] > 1:
            level = abs(moves.points[i, 2] - moves.points[i + 1, 2]) < 1e-12
            a = min(router.accel_mm_s2, a if level else router.accel_z_mm_s2)
            a = router.accel_mm_s2 if level else min(router.accel_mm_s2, router.accel_z_mm_s2)
        v = router.rapid_mm_min / 60
        v = v if moves.kind[i] == 0 else min(v, moves.feed[i] / 60)
        accel.append(a)
        top.append(min(v, math.sqrt(a * geo.radius[i])))
    for i in range(1, n):
        cosine = float(geo.arrive[i - 1] @ geo.leave[i])
        inside = math.pi - math.acos(max(-1.0, min(1.0, cosine)))
        s = math.sin(inside / 2)
        free = min(top[i - 1], top[i])
        a = min(accel[i - 1], accel[i])
        if s < 1 - 1e-9:
            free = min(free, math.sqrt(a * router.corner_mm * s / (1 - s)))
        corner[i] = free
    for i in range(n - 1, -1, -1):
        reach = math.sqrt(corner[i + 1] ** 2 + 2 * accel[i] * geo.length[i])
        corner[i] = min(corner[i], reach)
    seconds, v = 0.0, 0.0
    for i in range(n):
        left = float(geo.length[i])
        v = min(v, corner[i])
        while left > 1e-9:
            brake = math.sqrt(corner[i + 1] ** 2 + 2 * accel[i] * left)
            v2 = min(v + accel[i] * dt, top[i], brake)
            step = (v + v2) / 2 * dt
            if step >= left or step <= 0:
                seconds += left / max((v + v2) / 2, 1e-9)
                v = min(v2, max(corner[i + 1], 0.0)) if corner[i + 1] else 0.0
                break
            left -= step
            seconds += dt
            v = v2
    return seconds


@pytest.mark.parametrize("seed", [0, 1, 3])
def test_within_one_percent_of_small_steps(seed):
    layout = make(seed)
    got = read(layout.text.encode(), layout.setting)
    moves = got.moves
    short = int(np.searchsorted(moves.line, 60))
    text = "\n".join(layout.text.splitlines()[:60])
    got = read(text.encode(), layout.setting)
    assert short
    got_s = float(timing(got.moves, (), ROUTER).moves.sum())
    real = geometry(got.moves).length > 0
    assert real.all()
    assert got_s == pytest.approx(by_small_steps(got.moves, ROUTER), rel=0.01)


def test_the_router_puts_its_own_correction_on_top():
    layout = make(0)
    program_ = read(layout.text.encode(), layout.setting)
    router = Router(id="1", name="", pace=1.08, extra_s=40)
    got = analyse(program_, replace(layout.setting, router=router))
    assert got.time_s == pytest.approx(1.08 * got.file_s + 40)
