"""The folder of this PC in which the shop's lists, copies and cut files lie."""

from collections.abc import Callable, Iterable
from errno import EINVAL
from pathlib import Path
from typing import Any

from station.ledger.ledger import Ledger
from station.queries.settings import find_shop
from station.shop.acts import refuse
from station.shop.rooms import Hand, Took
from station.shop.words import Say, say

MOST = 60  # files that are offered, newest first


class ShopFolder:
    """The folder that the shop sets, else ``files`` beside the data."""

    def __init__(self, ledger: Ledger, clock: Callable[[], str]) -> None:
        self._ledger, self._clock = ledger, clock

    @property
    def path(self) -> Path:
        """Where it lies on this PC. Raises OSError."""
        named = find_shop(self._ledger.view).folder.strip()
        return find_folder(named) if named else self._ledger.path.parent / "files"

    def make(self) -> Path:
        """Makes the folder where it is not there yet; gives its path."""
        self.path.mkdir(parents=True, exist_ok=True)
        return self.path

    def name_new(self, name: str, ending: str) -> Path:
        """Names a new file, with the time in its name, that is not there yet."""
        folder = self.make()
        stem = f"{name}-{self._clock()[:16].replace('T', '-').replace(':', '')}"
        names = (stem, *(f"{stem}-{n}" for n in range(2, 100)))
        return next(f for n in names if not (f := folder / f"{n}.{ending}").exists())


def find_folder(written: str) -> Path:
    """Finds a folder as somebody wrote it. Raises OSError where it names none for certain."""
    try:
        folder = Path(written).expanduser()
    except (RuntimeError, ValueError):  # the home of somebody who is not known here, or no name
        folder = Path()
    if not folder.is_absolute() or "\0" in written:
        raise OSError(EINVAL, "write the whole path of the folder", written)
    return folder


def list_newest(files: Iterable[Path]) -> list[Path]:
    """Lists files by when they were changed, the newest first; no pipe, which may never end."""
    plain = (file for file in files if file.is_file())
    return sorted(plain, key=lambda file: file.stat().st_mtime, reverse=True)


def has_plain_name(file: Path) -> bool:
    """Tells whether a file's name is text: one that another system wrote may be other bytes."""
    try:
        file.name.encode()
    except UnicodeEncodeError:
        return False
    return True


def refuse_file(hand: Hand[Any], file: str, why: str, mend: Say) -> Took:
    """Says what this PC refuses to do with a file, in its own words."""
    return Took(hand, refuse(say("{file}: {why}", file=file, why=why), mend))
