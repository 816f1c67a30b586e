"""Differences of revisions."""

import pytest
from reading import box, found

from station.cutting.analyse.changes import compare_analyses


@pytest.mark.parametrize(
    ("after", "kinds"),
    [
        (box(20, 20, 106, 86, tab=12), set()),
        (box(20, 20, 107, 86, tab=12), {"size"}),
        (box(30, 20, 106, 86, tab=12), {"place"}),
        (box(20, 20, 106, 86, tab=14), {"tabs"}),
        (box(20, 20, 106, 86), {"path", "tabs"}),
        (box(20, 20, 106, 86, z=-6.4, tab=12), {"depth", "tabs"}),
        (box(20, 20, 106, 86, tab=12) + box(300, 20, 50, 50, tab=12), {"new", "path"}),
        (box(300, 20, 50, 50, tab=12), {"gone", "new", "path"}),
        (
            box(20, 20, 106, 86, tab=12) + box(200, 20, 106, 86, tab=12),
            {"count", "place", "path"},
        ),
    ],
)
def test_differences(after, kinds):
    got = compare_analyses(found(box(20, 20, 106, 86, tab=12)), found(after))
    assert {c.kind for c in got} - {"tabs"} == kinds - {"tabs"}
    assert all(c.text.endswith(".") for c in got)


def test_a_moved_tab_is_told():
    one, other = (
        box(20, 20, 106, 86, tab=12),
        box(20, 20, 106, 86).replace("X126\n", "X60\nZ-4\nX72\nZ-6.2\nX126\n", 1),
    )
    assert [c.text[-16:] for c in compare_analyses(found(one), found(other))] == [
        "a tab was moved."
    ]
