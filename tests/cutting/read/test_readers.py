"""The compiled reader equals the plain one on whole files; progress, cancel, several blocks."""

import pytest
from layouts import make
from sheets import sheet

from station.cutting.model import Cancel, Setting
from station.cutting.read import reader_compiled
from station.cutting.read.reader_plain import read_plain
from station.cutting.report import read_program
from tests.fuzz import differences


@pytest.mark.parametrize("seed", range(16))
def test_layouts_read_alike(seed, monkeypatch):
    layout = make(seed)
    monkeypatch.setattr(reader_compiled, "CHUNK", 700)
    data = layout.text.encode()
    assert differences(read_plain(data, layout.setting), read_program(data, layout.setting)) == []


@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
@pytest.mark.slow
def test_a_long_sheet_reads_alike(ends):
    data = sheet(12_000).replace("\n", ends).encode()
    assert differences(read_plain(data, Setting()), read_program(data, Setting())) == []


def test_progress_goes_up_to_one():
    seen = []
    read_program(sheet(30_000).encode(), Setting(), progress=seen.append)
    assert seen == sorted(seen)
    assert seen[-1] == 1.0
    assert len(seen) > 3


@pytest.mark.slow
def test_a_hundred_megabytes_are_read_and_can_be_cancelled():
    body = sheet(60_000).encode()
    times = 100_000_000 // len(body) + 1
    data = body * times
    with pytest.raises(Cancel):
        read_program(data, Setting(), cancelled=iter([False, False, True]).__next__)
    got = read_program(data, Setting())
    assert got.lines == 60_000 * times + 1
    assert len(got.moves) == times * len(read_program(body, Setting()).moves)


def test_reading_can_be_cancelled():
    calls = iter([False, False, True])
    with pytest.raises(Cancel):
        read_program(sheet(60_000).encode(), Setting(), cancelled=lambda: next(calls))
