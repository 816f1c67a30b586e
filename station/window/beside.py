"""Lets commands work beside the window: it runs them itself, on the file that it alone has open.

A command finds the file in use and asks here, over a socket of this PC that only who can read the
shop's own folder may talk to. Nothing opens the file a second time.
"""

import hashlib
import sys
import tempfile
from collections.abc import Callable, Sequence
from contextlib import suppress
from multiprocessing import AuthenticationError
from multiprocessing.connection import Client, Connection, Listener
from pathlib import Path
from queue import Empty, SimpleQueue
from secrets import token_bytes
from threading import Thread

import msgspec

from station.ledger.private import make_private

KEY = "beside.key"  # in the shop's folder, for who may ask
PATIENCE = 120.0  # seconds until an answer is there: a long history is checked meanwhile
MAY = frozenset({"state", "codes", "check", "backup", "list-out", "traveller"})


class CommandAsked(msgspec.Struct, frozen=True):
    """A command's words, and the folder that its files are named from."""

    words: list[str]
    folder: str


class Reply(msgspec.Struct, frozen=True):
    """What a command printed, and its exit code."""

    out: str
    told: str
    code: int


RunCommand = Callable[[CommandAsked], Reply]


class Beside:
    """Listens for commands; `step` runs them where the file is at home."""

    def __init__(self, data: Path, run: RunCommand) -> None:
        self._run = run
        self._asked: SimpleQueue[tuple[Connection, CommandAsked]] = SimpleQueue()
        key = token_bytes(32)
        (data / KEY).write_bytes(key)
        make_private(data / KEY)
        where = find_address(data)
        if sys.platform != "win32":
            Path(where).unlink(missing_ok=True)  # left behind: the file itself is ours alone
        self._listener = Listener(where, authkey=key)
        Thread(target=self._listen, name="beside", daemon=True).start()

    def _listen(self) -> None:
        while True:
            try:
                caller = self._listener.accept()
                self._asked.put(
                    (caller, msgspec.json.decode(caller.recv_bytes(), type=CommandAsked))
                )
            except (AuthenticationError, EOFError, ConnectionError, msgspec.MsgspecError):
                continue
            except OSError:  # closed
                return

    def step(self) -> None:
        """Runs what was asked for, and answers it."""
        with suppress(Empty):
            while True:
                caller, asked = self._asked.get_nowait()
                with suppress(OSError), caller:
                    caller.send_bytes(msgspec.json.encode(self._run(asked)))

    def close(self) -> None:
        """Listens no more."""
        self._listener.close()


def find_address(data: Path) -> str:
    """Finds where the program listens that has the shop of a folder open."""
    name = f"station-{hashlib.sha256(str(data.resolve()).encode()).hexdigest()[:16]}"
    if sys.platform == "win32":
        return rf"\\.\pipe\{name}"
    return str(Path(tempfile.gettempdir()) / name)


def ask(data: Path, words: Sequence[str]) -> Reply | None:
    """Asks the running program for a command; None where none that has this shop answers."""
    asked = CommandAsked(["--data", str(data.resolve()), *words], str(Path.cwd()))
    try:
        with Client(find_address(data), authkey=(data / KEY).read_bytes()) as program:
            program.send_bytes(msgspec.json.encode(asked))
            if not program.poll(PATIENCE):
                return None
            return msgspec.json.decode(program.recv_bytes(), type=Reply)
    except (OSError, EOFError, AuthenticationError, msgspec.MsgspecError):
        return None
