"""Positions agree with pygcode 0.2.1 on files that it can read (checks 7.6, COMPUTED)."""

import numpy as np
import pytest
from layouts import STYLES, make
from pygcode import Line, Machine

from station.cutting.report import read

READABLE = [n for n, s in enumerate(STYLES) if not s.inch and not s.radius_words and not s.blanks]


def theirs(text: str) -> list[tuple[float, float, float]]:
    machine, found = Machine(), []
    for line in text.splitlines():
        block = Line(line).block
        machine.process_block(block)
        found.append(tuple(machine.pos.values[a] for a in "XYZ"))
    return found


@pytest.mark.parametrize("seed", READABLE[:4])
def test_positions(seed):
    layout = make(seed)
    text = "\n".join(layout.text.splitlines()[:300])
    text = text.replace("M30", "")
    got = read(text.encode(), layout.setting)
    by_line = dict(zip(got.moves.line.tolist(), got.moves.points[1:].tolist(), strict=True))
    places = theirs(text)
    checked = 0
    for line, point in by_line.items():
        np.testing.assert_allclose(point, places[line - 1], atol=1e-6)
        checked += 1
    assert checked > 10
