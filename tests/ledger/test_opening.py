"""An empty file is set aside with its log; a new one is whole before it has its name."""

import sqlite3
from pathlib import Path

import pytest

from station.ledger.faults import Damaged, Empty
from station.ledger.ledger import Ledger
from tests.ledger.toy import act, opened

NAME = "shop.station"


def beside(folder: Path) -> dict[str, bytes]:
    """The files of a folder by name."""
    return {p.name: p.read_bytes() for p in folder.iterdir()}


def test_an_empty_file_is_no_first_morning(tmp_path: Path) -> None:
    (tmp_path / NAME).touch()
    with pytest.raises(Empty) as caught:
        opened(tmp_path)
    assert beside(tmp_path) == {caught.value.aside.name: b""}
    assert str(caught.value).startswith("shop.station was empty and is set aside as shop.station.")
    assert "backup" in str(caught.value)
    ledger = opened(tmp_path)  # who was told begins anew
    assert ledger.count() == 0
    ledger.close()


@pytest.mark.parametrize("empty", [True, False], ids=["file empty", "file gone"])
def test_what_the_log_of_an_empty_file_holds_is_saved(
    tmp_path: Path,
    empty: bool,  # noqa: FBT001
) -> None:
    whole = opened(tmp_path)
    whole.record(act("a"))
    log = (tmp_path / f"{NAME}-wal").read_bytes()
    lost = tmp_path / "lost"
    lost.mkdir()
    (lost / f"{NAME}-wal").write_bytes(log)
    if empty:
        (lost / NAME).touch()
    with pytest.raises(Damaged, match="1 entries were saved") as caught:
        opened(lost)
    whole.close()
    kept = beside(lost)
    assert log in kept.values()
    # whoever opens the empty file finds no log beside it: SQLite would throw that away
    assert f"{caught.value.aside.name}-wal" not in kept
    again = opened(lost)
    assert again.view.past("a") is not None
    assert again.check() == []


@pytest.mark.parametrize("empty", [True, False], ids=["file empty", "file gone"])
def test_a_log_of_which_nothing_can_be_read_is_kept(
    tmp_path: Path,
    empty: bool,  # noqa: FBT001
) -> None:
    log = b"no log at all" * 1000
    (tmp_path / f"{NAME}-wal").write_bytes(log)
    if empty:
        (tmp_path / NAME).touch()
    with pytest.raises(Empty) as caught:
        opened(tmp_path)
    kept = beside(tmp_path)
    assert sorted(map(len, kept.values())) == [0, len(log)] if empty else [len(log)]
    assert NAME not in kept
    assert f"its log is set aside as {caught.value.log.name}." in str(caught.value)
    if not empty:
        assert str(caught.value).startswith("shop.station is gone, its log")


def test_a_backup_goes_in_the_place_of_an_empty_file(tmp_path: Path) -> None:
    whole = opened(tmp_path)
    whole.record(act("a"))
    whole.backup(tmp_path / "copy.backup")
    whole.close()
    log = b"what was left of the log"
    (tmp_path / NAME).write_bytes(b"")
    (tmp_path / f"{NAME}-wal").write_bytes(log)
    Ledger.restore(tmp_path / "copy.backup", tmp_path / NAME)
    assert log in beside(tmp_path).values()
    assert opened(tmp_path).count() == 1


def test_a_new_file_has_its_name_only_once_it_is_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen = []
    rename = Path.replace

    def replace(self: Path, target: Path) -> Path:
        with sqlite3.connect(self) as plain:
            seen.append((target.name, plain.execute("SELECT count(*) FROM local").fetchone()[0]))
        plain.close()
        return rename(self, target)

    monkeypatch.setattr(Path, "replace", replace)
    opened(tmp_path).close()
    assert seen == [(NAME, 1)]
    assert list(beside(tmp_path)) == [NAME]


@pytest.mark.parametrize("left", [b"", b"not a database at all" * 100])
def test_what_a_stopped_making_left_is_made_anew(tmp_path: Path, left: bytes) -> None:
    (tmp_path / f"{NAME}.begun").write_bytes(left)
    opened(tmp_path).close()
    assert list(beside(tmp_path)) == [NAME]


def test_two_files_set_aside_at_once_have_two_names(tmp_path: Path) -> None:
    for _ in range(3):
        (tmp_path / NAME).touch()
        with pytest.raises(Empty):
            opened(tmp_path)
    assert len(beside(tmp_path)) == 3
