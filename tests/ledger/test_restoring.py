"""What a backup is put in the place of is kept whole, and the backup is taken whole."""

import shutil
from contextlib import closing
from pathlib import Path

import pytest

from station.ledger import backup
from station.ledger.faults import NoBackup
from station.ledger.ledger import Ledger
from station.ledger.log_file import FRAME_HEAD, HEAD, PAGE
from tests.ledger.toy import act, opened

NAME = "shop.station"


def killed(folder: Path, to: Path, *ids: str) -> Path:
    """A shop as its PC leaves it where the current fails: the newest acts are in its log."""
    folder.mkdir()
    with closing(opened(folder)):
        pass
    ledger = opened(folder)
    for id_ in ids:
        ledger.record(act(id_))
    to.mkdir()
    for file in folder.glob(f"{NAME}*"):
        shutil.copyfile(file, to / file.name)
    ledger.close()
    return to / NAME


def test_a_backup_is_put_back_and_a_spoilt_log_is_kept(tmp_path: Path) -> None:
    """SQLite drops what stands behind the first frame that does not hold."""
    path = killed(tmp_path / "a", tmp_path / "b", *map(str, range(9)))
    with closing(opened(tmp_path / "a")) as whole:
        whole.backup(tmp_path / "kept.backup")
    log = path.with_name(f"{NAME}-wal")
    spoilt = bytearray(log.read_bytes())
    spoilt[HEAD + FRAME_HEAD + PAGE + 100] ^= 1
    log.write_bytes(spoilt)
    Ledger.restore(tmp_path / "kept.backup", path)
    assert bytes(spoilt) in [file.read_bytes() for file in path.parent.iterdir()]


def test_the_log_of_a_backup_goes_back_with_it(tmp_path: Path) -> None:
    """Somebody gives the folder of a PC that is gone: its newest acts are in the log."""
    path = killed(tmp_path / "a", tmp_path / "gone", "a", "b")
    new = tmp_path / "new"
    new.mkdir()
    Ledger.restore(path, new / NAME)
    with closing(opened(new)) as ledger:
        assert ledger.count() == 2


def test_what_a_stopped_restore_left_is_no_shop(tmp_path: Path, monkeypatch) -> None:
    """A half copy was taken for the shop at the next start, and told as a damage."""
    killed(tmp_path / "a", tmp_path / "gone", *map(str, range(9)))
    file, new, stopped = tmp_path / "a" / NAME, tmp_path / "new", tmp_path / "stopped"
    new.mkdir()
    stopped.mkdir()

    def stop(half: Path, *_given: object) -> bool:
        (stopped / half.name).write_bytes(half.read_bytes()[:40_000])
        raise KeyboardInterrupt

    with monkeypatch.context() as killing:
        killing.setattr(backup, "_prepare", stop)
        with pytest.raises(KeyboardInterrupt):
            Ledger.restore(file, new / NAME)
    assert list(new.iterdir()) == []
    with closing(opened(stopped)) as ledger:
        assert ledger.count() == 0
    Ledger.restore(file, stopped / NAME)
    with closing(opened(stopped)) as ledger:
        assert ledger.count() == 9


def test_a_log_that_a_stopped_restore_left_is_not_taken_in(tmp_path: Path) -> None:
    path = killed(tmp_path / "a", tmp_path / "gone", *map(str, range(5)))
    file, log = tmp_path / "a" / NAME, path.with_name(f"{NAME}-wal")
    new = tmp_path / "new"
    new.mkdir()
    shutil.copyfile(log, new / f"{NAME}.restoring-wal")
    Ledger.restore(file, new / NAME)
    assert [one.name for one in new.iterdir()] == [NAME]


def test_a_backup_that_cannot_be_read_is_called_so(tmp_path: Path, monkeypatch) -> None:
    """The shop's own folder was named, and whoever looks after it sent to mend that."""
    path = killed(tmp_path / "a", tmp_path / "b", "a")
    file = tmp_path / "kept.backup"
    file.write_bytes(b"closed to us")
    real = Path.open

    def refuse(self: Path, *given: str, **more: str) -> object:
        if self == file:
            raise PermissionError(13, "Permission denied", str(self))
        return real(self, *given, **more)

    monkeypatch.setattr(Path, "open", refuse)
    with pytest.raises(NoBackup, match=r"kept\.backup is no sound backup: it cannot be read"):
        Ledger.restore(file, path)
