"""No module's source is read on the way to a first scan: PySide would for features of its own."""

import subprocess
import sys

import pytest

COUNT = """
import {first}
from shibokensupport import feature
before = set(feature.pyside_feature_dict)
import station.shop.faces, station.shop.places
print(len(set(feature.pyside_feature_dict) - before))
"""


@pytest.mark.parametrize(
    ("first", "read"), [("station.window.show", False), ("PySide6.QtCore", True)]
)
def test_what_is_loaded_is_not_read(first, read):
    done = subprocess.run(
        [sys.executable, "-c", COUNT.format(first=first)],
        check=True,
        capture_output=True,
        text=True,
    )
    assert (int(done.stdout) > 0) == read
