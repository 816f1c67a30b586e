"""The layer: every file that SQLite opens goes through here on its way to the system's files.

It is a file system of SQLite's own making ("VFS", https://www.sqlite.org/vfs.html), registered
as the default one in the very library that Python's driver runs, so nothing of the program
knows of it. Each call asks the disk first, then goes on to the system's own. Renaming and
removing by Python goes through here as well.
"""

import _sqlite3
import ctypes
import os
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from ctypes import CFUNCTYPE, POINTER, Structure, c_char_p, c_int, c_int64, c_void_p, cast
from pathlib import Path
from typing import Any, Protocol

OK, IOERR = 0, 10
CREATE, JOURNAL_OR_LOG = 0x4, 0x800 | 0x80000  # flags of xOpen
HEAD = 16  # bytes before the system's file in a file of ours: methods, handle


class Disk(Protocol):
    """Says what becomes of each call: 0, or SQLite's code of the error that it ends in."""

    folder: Path

    def asked(self, what: str, name: str, offset: int = 0, data: bytes = b"") -> int:
        """`what`: open, create, read, write, truncate (to `offset`), sync, sync folder, remove."""

    def renamed(self, old: str, new: str) -> None:
        """A file is renamed, by Python. Raises OSError where it fails."""

    def removed(self, name: str) -> None:
        """A file is removed, by Python. Raises OSError where it fails."""


class Methods(Structure):
    """sqlite3_io_methods, as far as its second version."""


class Vfs(Structure):
    """sqlite3_vfs, its first version."""


_file = (c_void_p,)
_METHODS = {
    "xClose": CFUNCTYPE(c_int, *_file),
    "xRead": CFUNCTYPE(c_int, *_file, c_void_p, c_int, c_int64),
    "xWrite": CFUNCTYPE(c_int, *_file, c_void_p, c_int, c_int64),
    "xTruncate": CFUNCTYPE(c_int, *_file, c_int64),
    "xSync": CFUNCTYPE(c_int, *_file, c_int),
    "xFileSize": CFUNCTYPE(c_int, *_file, c_void_p),
    "xLock": CFUNCTYPE(c_int, *_file, c_int),
    "xUnlock": CFUNCTYPE(c_int, *_file, c_int),
    "xCheckReservedLock": CFUNCTYPE(c_int, *_file, c_void_p),
    "xFileControl": CFUNCTYPE(c_int, *_file, c_int, c_void_p),
    "xSectorSize": CFUNCTYPE(c_int, *_file),
    "xDeviceCharacteristics": CFUNCTYPE(c_int, *_file),
    "xShmMap": CFUNCTYPE(c_int, *_file, c_int, c_int, c_int, c_void_p),
    "xShmLock": CFUNCTYPE(c_int, *_file, c_int, c_int, c_int),
    "xShmBarrier": CFUNCTYPE(None, *_file),
    "xShmUnmap": CFUNCTYPE(c_int, *_file, c_int),
}
Methods._fields_ = [("iVersion", c_int), *_METHODS.items()]
_OPEN = CFUNCTYPE(c_int, c_void_p, c_void_p, c_void_p, c_int, c_void_p)
_DELETE = CFUNCTYPE(c_int, c_void_p, c_char_p, c_int)
Vfs._fields_ = [
    ("iVersion", c_int), ("szOsFile", c_int), ("mxPathname", c_int), ("pNext", c_void_p),
    ("zName", c_char_p), ("pAppData", c_void_p), ("xOpen", _OPEN), ("xDelete", _DELETE),
    *[(f"same{n}", c_void_p) for n in range(10)],
]  # fmt: skip


def library() -> ctypes.CDLL | None:
    """The library that Python's driver runs; None where SQLite is built into the driver."""
    name = "sqlite3" if sys.platform == "win32" else getattr(_sqlite3, "__file__", None)
    with suppress(OSError):
        found = ctypes.CDLL(name)
        if hasattr(found, "sqlite3_vfs_register"):
            return found
    return None


class Layer:
    """The calls, and the disk they ask. One for a process: SQLite keeps pointers to it."""

    def __init__(self) -> None:
        self.disk: Disk | None = None
        self.broken: list[BaseException] = []  # mistakes of the layer or of a disk
        self._names: dict[int, tuple[Disk, str]] = {}  # open files of the disk, by address
        self._to_sync: set[int] = set()  # journals and logs just made: their folder is synced too
        found = library()
        assert found, "SQLite's library cannot be reached"
        self._library = found
        self._library.sqlite3_vfs_find.restype = POINTER(Vfs)
        self._system = self._library.sqlite3_vfs_find(None)
        self._vfs = Vfs.from_buffer_copy(self._system.contents)
        self._vfs.iVersion, self._vfs.zName = 1, b"tests-power"
        self._vfs.szOsFile = HEAD + self._system.contents.szOsFile
        self._vfs.xOpen, self._vfs.xDelete = _OPEN(self._open), _DELETE(self._delete)
        self._methods = Methods(iVersion=2)
        for name, kind in _METHODS.items():
            setattr(self._methods, name, kind(self._safely(name)))

    def register(self, *, on: bool) -> None:
        """Puts the layer under all files opened from now on, or the system's own again."""
        chosen = self._vfs if on else self._system.contents
        self._library.sqlite3_vfs_register(ctypes.byref(chosen), 1)

    def _open(self, _vfs: int, name: int, file: int, flags: int, out: int) -> int:
        code = self._asked_to_open(name, file, flags)
        real = file + HEAD
        code = code or self._system.contents.xOpen(
            ctypes.addressof(self._system.contents), name, real, flags, out
        )
        opened = c_void_p.from_address(real).value is not None
        c_void_p.from_address(file).value = ctypes.addressof(self._methods) if opened else None
        if not opened or code:
            self._names.pop(file, None)
        return code

    def _asked_to_open(self, name: int, file: int, flags: int) -> int:
        self._names.pop(file, None)
        c_void_p.from_address(file + HEAD).value = None
        path = os.fsdecode(ctypes.string_at(name)) if name else ""
        disk = self.disk
        if disk is None or Path(path).parent != disk.folder:
            return OK
        self._names[file] = disk, path
        made = bool(flags & CREATE) and not Path(path).exists()
        if made and flags & JOURNAL_OR_LOG:
            self._to_sync.add(file)
        return self._ask(disk, "create" if made else "open", path)

    def _delete(self, _vfs: int, name: bytes, synced: int) -> int:
        path, disk = os.fsdecode(name), self.disk
        if disk is not None and Path(path).parent == disk.folder and Path(path).exists():
            code = self._ask(disk, "remove", path)
            code = code or (self._ask(disk, "sync folder", path) if synced else OK)
            if code:
                return code
        return self._system.contents.xDelete(ctypes.addressof(self._system.contents), name, synced)

    def _safely(self, method: str) -> Callable[..., Any]:
        """A method that asks the disk where there is something to ask, then the system's own."""
        before = getattr(self, f"_{method}", None)

        def call(file: int, *given: Any) -> Any:
            if before and file in self._names and (code := before(file, *given)):
                return code
            real = file + HEAD
            methods = cast(c_void_p.from_address(real).value, POINTER(Methods)).contents
            if method == "xSync" and file in self._names:
                return OK  # the disk has said what is kept: the real one is not waited for
            done = getattr(methods, method)(real, *given)
            if method == "xClose":
                self._names.pop(file, None)
                self._to_sync.discard(file)
            return done

        return call

    def _xRead(self, file: int, _to: int, _size: int, offset: int) -> int:  # noqa: N802
        disk, name = self._names[file]
        return self._ask(disk, "read", name, offset)

    def _xWrite(self, file: int, data: int, size: int, offset: int) -> int:  # noqa: N802
        disk, name = self._names[file]
        return self._ask(disk, "write", name, offset, ctypes.string_at(data, size))

    def _xTruncate(self, file: int, size: int) -> int:  # noqa: N802
        disk, name = self._names[file]
        return self._ask(disk, "truncate", name, size)

    def _xSync(self, file: int, _flags: int) -> int:  # noqa: N802
        disk, name = self._names[file]
        code = self._ask(disk, "sync", name)
        if not code and file in self._to_sync:
            self._to_sync.discard(file)
            code = self._ask(disk, "sync folder", name)
        return code

    def _ask(self, disk: Disk, what: str, name: str, offset: int = 0, data: bytes = b"") -> int:
        try:
            return disk.asked(what, name, offset, data)
        except BaseException as error:  # noqa: BLE001 - an error cannot pass through SQLite
            self.broken.append(error)
            return IOERR


_layer: list[Layer] = []


@contextmanager
def under(disk: Disk) -> Iterator[None]:
    """Files in the disk's folder go through the disk; all others are left alone."""
    if not _layer:
        _layer.append(Layer())
    layer = _layer[0]
    replace, unlink = os.replace, os.unlink

    def renamed(old: Any, new: Any, **more: Any) -> None:
        if Path(old).parent == disk.folder:
            disk.renamed(os.fspath(old), os.fspath(new))
        replace(old, new, **more)

    def removed(name: Any, **more: Any) -> None:
        if Path(name).parent == disk.folder and Path(name).exists():
            disk.removed(os.fspath(name))
        unlink(name, **more)

    layer.disk = disk
    layer.register(on=True)
    os.replace, os.unlink = renamed, removed
    try:
        yield
    finally:
        os.replace, os.unlink = replace, unlink
        layer.register(on=False)
        layer.disk = None
    assert not layer.broken, layer.broken


@contextmanager
def in_memory() -> Iterator[Path]:
    """A folder for a test, in memory where the system has such: no real disk is waited for."""
    memory = Path("/dev/shm")
    with tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as folder:
        yield Path(folder)
