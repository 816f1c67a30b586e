"""Disks of our own: one that loses its power, one on which the n-th call fails.

What a power cut leaves, file by file: what was there at the file's last sync, and of what was
written since, any of its sectors of 512 bytes, each as any of the later writes left it or
garbled where it was just being written; the file as long as at any of these moments. A file
made, renamed or removed since its folder was last synced may be so or not, but in order: a
file system keeps a journal of its folders.
"""

from dataclasses import dataclass, field
from errno import EIO, ENOSPC
from pathlib import Path
from random import Random

SECTOR = 512
GARBLED = 0.1  # of the sectors that were just being written
OK, IOERR, FULL = 0, 10, 13  # SQLite's codes
CHANGING = ("create", "write", "truncate", "sync", "sync folder", "remove")
Write = tuple[int, bytes]


@dataclass(eq=False)
class File:
    """What of a file is safe, and what came since: writes, or a length it was cut to."""

    kept: bytearray = field(default_factory=bytearray)
    since: list[Write | int] = field(default_factory=list)

    def sync(self) -> None:
        """All that came is safe."""
        for change in self.since:
            _change(self.kept, change)
        self.since.clear()

    def left(self, chance: Random, mercy: float) -> bytes:
        """What a power cut leaves; `mercy` is how likely a sector not synced is kept."""
        now, sizes = bytearray(self.kept), [len(self.kept)]
        states: dict[int, list[bytes]] = {}  # of each sector, the oldest first
        for change in self.since:
            for at in _sectors(now, change):
                states.setdefault(at, [bytes(now[at : at + SECTOR])])
            _change(now, change)
            sizes.append(len(now))
            for at in _sectors(now, change):
                states[at].append(bytes(now[at : at + SECTOR]))
                being_written = change is self.since[-1] and not isinstance(change, int)
                if being_written and chance.random() < GARBLED:
                    states[at].append(_garbled(bytes(now), at, change, chance))
        size = sizes[-1] if chance.random() < mercy else chance.choice(sizes)
        rest = bytearray(self.kept)
        rest.extend(bytes(max(0, size - len(rest))))
        for at, was in states.items():
            state = was[-1] if chance.random() < mercy else chance.choice(was)
            rest[at : at + SECTOR] = state.ljust(SECTOR, b"\0")
        return bytes(rest[:size])


def _change(content: bytearray, change: Write | int) -> None:
    if isinstance(change, int):
        del content[change:]
        return
    at, data = change
    content.extend(bytes(max(0, at - len(content))))
    content[at : at + len(data)] = data


def _sectors(content: bytearray, change: Write | int) -> range:
    """Where the sectors begin that a change touches."""
    if isinstance(change, int):
        return range(change - change % SECTOR, len(content), SECTOR)
    at, data = change
    return range(at - at % SECTOR, at + len(data), SECTOR)


def _garbled(content: bytes, at: int, write: Write, chance: Random) -> bytes:
    """A sector just being written: what is written may be anything, the rest stays."""
    first, last = max(at, write[0]), min(at + SECTOR, write[0] + len(write[1]))
    rubbish = chance.randbytes(last - first)
    return content[at:first] + rubbish + content[last : at + SECTOR]


class PowerDisk:
    """A disk that loses its power at one call, and answers nothing from then on."""

    def __init__(self, folder: Path, chance: Random, cut_at: int) -> None:
        self.folder, self.chance, self.calls_left = folder, chance, cut_at
        self.off = False
        self.calls = 0
        known = {str(p): File(bytearray(p.read_bytes())) for p in folder.iterdir() if p.is_file()}
        self.folders = [known]  # as last synced, and after each change since

    @property
    def files(self) -> dict[str, File]:
        """The files by name as a program sees them now."""
        return self.folders[-1]

    def asked(self, what: str, name: str, offset: int = 0, data: bytes = b"") -> int:
        if self.off:
            return IOERR
        if what in CHANGING:
            self._count()
            self._take(what, name, offset, data)
        return IOERR if self.off else OK

    def renamed(self, old: str, new: str) -> None:
        moved = self._file(old)
        self._by_python({**{k: f for k, f in self.files.items() if k != old}, new: moved})

    def removed(self, name: str) -> None:
        self._by_python({k: f for k, f in self.files.items() if k != name})

    def _by_python(self, files: dict[str, File]) -> None:
        self._count()
        self.folders.append(files)
        if self.off:
            raise OSError(EIO, "the power is off")

    def _count(self) -> None:
        self.calls += 1
        self.off = self.off or self.calls >= self.calls_left

    def _take(self, what: str, name: str, offset: int, data: bytes) -> None:
        """Notes a call; of the one that the power goes at, whatever had come about."""
        if what == "create":
            self.folders.append({**self.files, name: File()})
        elif what == "remove":
            self.folders.append({k: f for k, f in self.files.items() if k != name})
        elif what == "write":
            self._file(name).since.append((offset, data))
        elif what == "truncate":
            self._file(name).since.append(offset)
        elif self.off:
            return
        elif what == "sync":
            self._file(name).sync()
        else:
            del self.folders[:-1]

    def _file(self, name: str) -> File:
        """A file; one that Python made is not synced."""
        if name not in self.files:
            self.files[name] = File(since=[(0, Path(name).read_bytes())])
        return self.files[name]

    def cut(self) -> None:
        """The power is off: the folder holds from now on what is left."""
        self.off = True
        chance, mercy = self.chance, self.chance.choice((0.0, 0.2, 0.5, 0.8, 1.0))
        names = chance.choice(self.folders)
        for path in self.folder.iterdir():
            if path.is_file():
                path.unlink()
        for name, file in names.items():
            Path(name).write_bytes(file.left(chance, mercy))


class FailingDisk:
    """A disk on which calls from the n-th on fail, `times` of them; 0: none, and they are counted.

    `full`: no room for what makes files longer; else reading and writing fail alike.
    """

    def __init__(self, folder: Path, *, full: bool = False) -> None:
        self.folder, self.full = folder, full
        self.calls = self.failed = 0
        self.first, self.times = 0, 0

    def fail(self, first: int, times: int = 1) -> None:
        """From now on the call of this number fails, and those behind it as often as said."""
        self.calls, self.failed, self.first, self.times = 0, 0, first, times

    def heal(self) -> None:
        """It works again."""
        self.first = 0

    def asked(self, what: str, name: str, offset: int = 0, data: bytes = b"") -> int:
        if self.full and not self._grows(what, name, offset, data):
            return OK
        return (FULL if self.full else IOERR) if self._now() else OK

    def renamed(self, old: str, new: str) -> None:
        self._by_python()

    def removed(self, name: str) -> None:
        if not self.full:
            self._by_python()

    def _by_python(self) -> None:
        if self._now():
            raise OSError(ENOSPC if self.full else EIO, "the disk fails")

    def _grows(self, what: str, name: str, offset: int, data: bytes) -> bool:
        if what == "create":
            return True
        return what == "write" and offset + len(data) > Path(name).stat().st_size

    def _now(self) -> bool:
        self.calls += 1
        now = 0 < self.first <= self.calls < self.first + self.times
        self.failed += now
        return now
