"""Positions agree with another reader, pygcode, on files that it can read."""

import numpy as np
import pytest
from layouts import STYLES, make
from reading import positions_elsewhere

from station.cutting.report import read_program

READABLE = [n for n, s in enumerate(STYLES) if not s.inch and not s.radius_words and not s.blanks]


@pytest.mark.parametrize("seed", READABLE[:4])
def test_positions(seed):
    layout = make(seed)
    text = "\n".join(layout.text.splitlines()[:300])
    text = text.replace("M30", "")
    got = read_program(text.encode(), layout.setting)
    by_line = dict(zip(got.moves.line.tolist(), got.moves.points[1:].tolist(), strict=True))
    places = positions_elsewhere(text)
    checked = 0
    for line, point in by_line.items():
        np.testing.assert_allclose(point, places[line - 1], atol=1e-6)
        checked += 1
    assert checked > 10
