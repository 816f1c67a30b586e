"""A file that somebody looks at for a moment is renamed all the same, as Windows needs it."""

import os
from pathlib import Path

import pytest

from station.ledger import renaming
from station.ledger.renaming import PAUSES, replace_file, write_whole
from tests.full_disk import fill_disk


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


def test_what_is_written_anew_stands_as_it_was_where_the_disk_is_full(tmp_path, monkeypatch):
    file = tmp_path / "traveller.pdf"
    write_whole(file, b"the first copy")
    fill_disk(monkeypatch)
    with pytest.raises(OSError, match=r"No space left.*traveller\.pdf"):
        write_whole(file, b"the second copy")
    assert file.read_bytes() == b"the first copy"
    monkeypatch.undo()
    write_whole(file, b"the third copy")
    assert file.read_bytes() == b"the third copy"
    assert [one.name for one in tmp_path.iterdir()] == ["traveller.pdf"]


@pytest.mark.skipif(os.name == "nt", reason="rights of its own are needed for one")
def test_a_file_that_a_link_names_is_written_where_it_lies(tmp_path):
    (tmp_path / "far").mkdir()
    file, link = tmp_path / "far" / "list.csv", tmp_path / "list.csv"
    file.write_bytes(b"old")
    link.symlink_to(file)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert file.read_bytes() == b"new"
