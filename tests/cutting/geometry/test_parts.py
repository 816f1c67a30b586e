"""Sizes found in generated files equal the sizes they were generated from."""

import pytest

from station.cutting.report import analyse_program, make_report, read_program
from tests.cutting.layouts import STYLES, make
from tests.layouts import faults


@pytest.mark.parametrize("seed", range(40))
def test_sizes_of_random_layouts(seed):
    layout = make(seed)
    assert faults(layout, layout.text) == []


@pytest.mark.parametrize("seed", range(8))
def test_comments_change_nothing(seed):
    layout = make(seed)
    plain, commented = (
        make_report(analyse_program(read_program(t.encode(), layout.setting), layout.setting))
        for t in (layout.text, layout.commented)
    )
    assert plain == commented


def test_the_styles_differ():
    assert len(STYLES) >= 6
