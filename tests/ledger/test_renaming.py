"""A file that somebody looks at for a moment is renamed all the same, as Windows needs it."""

from pathlib import Path

import pytest

from station.ledger import renaming
from station.ledger.renaming import PAUSES, replace_file


@pytest.fixture
def held(monkeypatch):
    """Another program has the file open at so many tries, which Windows refuses."""
    left, pauses, rename = [0], [], Path.replace

    def refused(file, target):
        if left[0]:
            left[0] -= 1
            raise PermissionError(13, "used by another process", str(file))
        return rename(file, target)

    monkeypatch.setattr(Path, "replace", refused)
    monkeypatch.setattr(renaming.time, "sleep", pauses.append)
    return left, pauses


@pytest.mark.parametrize("times", range(len(PAUSES) + 1))
def test_it_is_tried_again_for_a_moment(tmp_path, held, times):
    left, pauses = held
    new, old = tmp_path / "new", tmp_path / "old"
    new.write_text("new", encoding="utf-8")
    old.write_text("old", encoding="utf-8")
    left[0] = times
    replace_file(new, old)
    assert old.read_text(encoding="utf-8") == "new"
    assert not new.exists()
    assert pauses == list(PAUSES[:times])


def test_a_file_that_stays_held_is_told(tmp_path, held):
    left, _ = held
    left[0] = len(PAUSES) + 1
    (tmp_path / "new").touch()
    with pytest.raises(PermissionError):
        replace_file(tmp_path / "new", tmp_path / "old")
    assert (tmp_path / "new").exists()


def test_what_is_no_matter_of_a_moment_is_told_at_once(tmp_path, held):
    _, pauses = held
    with pytest.raises(FileNotFoundError):
        replace_file(tmp_path / "none", tmp_path / "old")
    assert not pauses
