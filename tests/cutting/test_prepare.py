"""Compiling once: kept for this computer, wherever the program lies; the start is untouched."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

import station
from station.cutting.prepare import is_prepared, prepare_reader

HOME = Path(station.__file__).parent.parent
CACHES = ("XDG_CACHE_HOME", "LOCALAPPDATA", "HOME", "USERPROFILE", "TMPDIR", "TEMP", "TMP")


def python(code, *, home=HOME, cache=None):
    places = dict.fromkeys(CACHES, str(cache)) if cache else {}
    environment = {**os.environ, **places, "PYTHONPATH": str(home)}
    done = subprocess.run(
        [sys.executable, "-c", code],
        env=environment, cwd=home, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


START = """
import argparse, sys, station.commands.main, station.commands.cut_file
station.commands.cut_file.add_arguments(argparse.ArgumentParser())
print([m for m in ("numpy", "numba", "llvmlite") if m in sys.modules])
"""


def test_the_station_starts_without_numpy_and_numba():
    assert python(START) == "[]"


HULL = """
from station.cutting import compiled
from station.cutting.geometry import rings
from station.cutting.prepare import find_kept_folder
stats = rings.fill_hull.stats
print(find_kept_folder(), sum(stats.cache_hits.values()), sum(stats.cache_misses.values()))
"""


@pytest.mark.slow
def test_what_is_compiled_is_kept_where_the_package_may_not_be_written(tmp_path):
    home, cache = tmp_path / "program", tmp_path / "cache"
    shutil.copytree(HOME / "station", home / "station", ignore=shutil.ignore_patterns("__py*"))
    room = home / "station" / "cutting" / "geometry"
    (room / "__pycache__").touch()  # no folder can be made there
    cache.mkdir()
    first, *counts = python(HULL, home=home, cache=cache).split()
    assert Path(first).is_relative_to(cache)
    assert counts == ["0", "1"]
    assert python(HULL, home=home, cache=cache).split() == [first, "1", "0"]


def test_a_change_in_the_sources_is_compiled_anew(tmp_path):
    home = tmp_path / "program"
    shutil.copytree(HOME / "station", home / "station", ignore=shutil.ignore_patterns("__py*"))
    code = "from station.cutting.prepare import find_kept_folder; print(find_kept_folder())"
    first = python(code, home=home, cache=tmp_path)
    with (home / "station" / "cutting" / "read" / "line_compiled.py").open("a") as source:
        source.write("\n# another\n")
    assert python(code, home=home, cache=tmp_path) != first


def test_preparing_tells_how_far_it_is_and_is_remembered():
    seen = []
    prepare_reader(seen.append)
    assert seen == sorted(seen)
    assert seen[-1] == 1.0
    assert is_prepared()


@pytest.mark.skipif(sys.platform == "win32", reason="folders are told apart by name there")
def test_nothing_is_kept_where_nothing_may_be_written(tmp_path):
    blocked = tmp_path / "file"
    blocked.touch()
    code = f"import tempfile; tempfile.tempdir = {str(blocked)!r}\n"
    code += "from station.cutting.prepare import find_kept_folder, is_prepared\n"
    code += "print(find_kept_folder(), is_prepared())"
    assert python(code, cache=blocked) == "None False"
