"""Compiling once: kept for this computer, wherever the program lies; the start is untouched."""

import os
import shutil
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import pytest

import station
from station.cutting import prepare
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


TOLD = """
from station.cutting.prepare import prepare_reader
prepare_reader(lambda share: print(share, flush=True))
"""


@pytest.mark.long
@pytest.mark.slow
def test_the_first_preparation_tells_how_far_it_is_and_a_second_process_waits_for_it(tmp_path):
    """Its steps are small and about even: no half minute at 0 %, no leap to the end."""
    environment = {**os.environ, **dict.fromkeys(CACHES, str(tmp_path)), "PYTHONPATH": str(HOME)}

    def begin():
        return subprocess.Popen(
            [sys.executable, "-c", TOLD], env=environment, cwd=HOME, stdout=subprocess.PIPE,
            text=True,
        )  # fmt: skip

    with begin() as first:
        started = float(first.stdout.readline())
        with begin() as second:
            shares = [started, *map(float, first.stdout)]
            waited = [float(line) for line in second.stdout]
    assert shares == sorted(shares)
    assert 0 < shares[0] < 0.05
    assert max(b - a for a, b in pairwise(shares)) < 0.05
    assert shares[-1] == 1.0
    assert waited == sorted(waited)
    assert waited[-1] == 1.0
    assert len(waited) > 10
    (folder,) = tmp_path.rglob("compiled-*")
    assert {f.name for f in folder.iterdir() if f.is_file()} == {"ready"}


def test_who_was_killed_while_it_prepared_stops_nobody(tmp_path, monkeypatch):
    note, told, now = tmp_path / "under-way", [], [0.0]
    note.write_text("0.400", encoding="ascii")
    monkeypatch.setattr(prepare.time, "monotonic", lambda: now[0])
    monkeypatch.setattr(prepare.time, "sleep", lambda _s: now.__setitem__(0, now[0] + 1))
    prepare._wait_for_another(note, told.append)
    assert told == [0.4]
    assert now[0] < 2 * prepare.SILENT_S


@pytest.mark.skipif(sys.platform == "win32", reason="folders are told apart by name there")
def test_nothing_is_kept_where_nothing_may_be_written(tmp_path):
    blocked = tmp_path / "file"
    blocked.touch()
    code = f"import tempfile; tempfile.tempdir = {str(blocked)!r}\n"
    code += "from station.cutting.prepare import find_kept_folder, is_prepared\n"
    code += "print(find_kept_folder(), is_prepared())"
    assert python(code, cache=blocked) == "None False"
