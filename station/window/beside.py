"""Lets commands work beside the window: it runs them itself, on the file that it alone has open.

A command finds the file in use and asks here, over a socket of this PC that only who can read the
shop's own folder may talk to. Nothing opens the file a second time.
"""

import hashlib
import os
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from multiprocessing import AuthenticationError
from multiprocessing.connection import Client, Connection, Listener
from pathlib import Path
from queue import Empty, SimpleQueue
from secrets import token_bytes
from threading import Thread
from typing import NamedTuple, Protocol

import msgspec

from station.jobs.wire import MessageReader, encode
from station.ledger.private import make_private

KEY = "beside.key"  # in the shop's folder, for who may ask
PATIENCE = 120.0  # seconds until an answer is there: a long history is checked meanwhile
MAY = frozenset({"state", "codes", "check", "backup", "list-out", "traveller", "printer"})
LINES = "scan"  # the command that goes on, a line at a time
ENDED = OSError, EOFError, AuthenticationError, msgspec.MsgspecError, ValueError


class CommandAsked(msgspec.Struct, frozen=True):
    """A command's words, the folder that its files are named from, and whether lines follow."""

    words: list[str]
    folder: str
    lines: bool = False


class Reply(msgspec.Struct, frozen=True):
    """What a command printed, and its exit code; or the answer to one of its lines."""

    out: str
    told: str
    code: int


COMMANDS, REPLIES = MessageReader[CommandAsked](CommandAsked), MessageReader[Reply](Reply)


class Replies(Protocol):
    """A command that was begun: its answer comes sooner or later."""

    def reply(self) -> Reply | None:
        """Gives the answer once it is there."""

    def stop(self) -> None:
        """Ends what it has begun: nobody waits for it any more."""


class TakesLines(Replies, Protocol):
    """A command that goes on: it is handed a line, and answers the newest."""

    def take(self, text: str) -> None:
        """Takes one line; the one before was answered."""


class Commands(NamedTuple):
    """How a command that was asked for is run, and how one begins that lines follow."""

    run: Callable[[CommandAsked], Reply | Replies]
    begin: Callable[[CommandAsked], TakesLines | Reply]


class Beside:
    """Listens for commands; `step` runs them where the file is at home.

    Each caller has a thread of its own, which waits for it; `knock` is called on that one
    whenever there is something for `step` to do.
    """

    def __init__(
        self, data: Path, commands: Commands, knock: Callable[[], None] = lambda: None
    ) -> None:
        self._commands, self._knock = commands, knock
        self._asked: SimpleQueue[tuple[_Caller, CommandAsked | str]] = SimpleQueue()
        self._at_lines: _Caller | None = None
        self._takes: TakesLines | None = None
        self._awaited: list[tuple[_Caller, Replies]] = []
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
                caller = _Caller(self._listener.accept(), self._hear)
                Thread(target=caller.talk, name="caller", daemon=True).start()
            except (AuthenticationError, EOFError, ConnectionError):
                continue
            except OSError:  # closed
                return

    def _hear(self, caller: "_Caller", asked: CommandAsked | str) -> None:
        """Hands on, from a caller's thread, what it asks for."""
        self._asked.put((caller, asked))
        self._knock()

    def step(self) -> bool:
        """Runs what was asked for, and answers it; tells whether there was anything."""
        self._answer_awaited()
        ran = False
        with suppress(Empty):
            while True:
                caller, asked = self._asked.get_nowait()
                ran = True
                if isinstance(asked, str):
                    assert self._takes is not None
                    self._takes.take(asked)
                    self._awaited.append((caller, self._takes))
                elif asked.lines:
                    self._begin(caller, asked)
                else:
                    self._run(caller, asked)
        self._answer_awaited()
        return ran

    def _run(self, caller: "_Caller", asked: CommandAsked) -> None:
        """Runs a command; where its answer takes long, it comes later."""
        done = self._commands.run(asked)
        if isinstance(done, Reply):
            caller.replies.put(done)
        else:
            self._awaited.append((caller, done))

    def _begin(self, caller: "_Caller", asked: CommandAsked) -> None:
        """Begins a command that lines follow; there is one at a time."""
        if self._at_lines is not None and not self._at_lines.has_gone:
            busy = "Another text station is at work beside the window: end that one first.\n"
            caller.replies.put(Reply("", busy, 1))
            return
        begun = self._commands.begin(asked)
        if isinstance(begun, Reply):
            caller.replies.put(begun)
            return
        self._at_lines, self._takes = caller, begun
        caller.replies.put(Reply("", "", 0))

    def _answer_awaited(self) -> None:
        """Answers what is awaited, as far as its answer is there."""
        waiting, self._awaited = self._awaited, []
        for caller, done in waiting:
            if (reply := done.reply()) is None:
                self._awaited.append((caller, done))
            else:
                caller.replies.put(reply)

    def close(self) -> None:
        """Listens no more, and ends what was begun."""
        self._listener.close()
        for _, done in self._awaited:
            done.stop()


class _Caller:
    """One that asks: its thread reads what it asks for, and hands the answers back to it."""

    def __init__(
        self, connection: Connection, hear: Callable[["_Caller", CommandAsked | str], None]
    ) -> None:
        self.replies: SimpleQueue[Reply] = SimpleQueue()
        self.has_gone = False
        self._connection, self._hear = connection, hear

    def talk(self) -> None:
        """Is the thread: ends when the caller is gone, or its command did not begin."""
        with suppress(*ENDED), self._connection as connection:
            asked = COMMANDS.decode(connection.recv_bytes())
            self._hear(self, asked)
            code = self._pass_on()
            while asked.lines and code == 0:
                text = connection.recv_bytes().decode("utf-8", "replace")
                self._hear(self, text)
                self._pass_on()
        self.has_gone = True

    def _pass_on(self) -> int:
        reply = self.replies.get()
        self._connection.send_bytes(encode(reply))
        return reply.code


def find_address(data: Path) -> str:
    """Finds where the program listens that has the shop of a folder open."""
    name = f"station-{hashlib.sha256(os.fsencode(data.resolve())).hexdigest()[:16]}"
    if sys.platform == "win32":
        return rf"\\.\pipe\{name}"
    return str(Path(tempfile.gettempdir()) / name)


def ask(data: Path, words: Sequence[str]) -> Reply | None:
    """Asks the running program for a command; None where none that has this shop answers."""
    try:
        with _call(data, words, lines=False) as program:
            return _await_reply(program)
    except ENDED:
        return None


def hand_in(data: Path, words: Sequence[str], lines: Iterable[str]) -> Iterator[Reply | None]:
    """Begins a command that lines follow; gives what is said to it, then to each line.

    None, which is the last then, where no program that has this shop answers any more.
    """
    try:
        with _call(data, words, lines=True) as program:
            yield (reply := _await_reply(program))
            for line in lines if reply.code == 0 else ():
                program.send_bytes(line.encode(errors="replace"))
                yield _await_reply(program)
    except ENDED:
        yield None


@contextmanager
def _call(data: Path, words: Sequence[str], *, lines: bool) -> Iterator[Connection]:
    """Calls the running program. Raises one of ENDED where none answers."""
    asked = CommandAsked(["--data", str(data.resolve()), *words], str(Path.cwd()), lines)
    with Client(find_address(data), authkey=(data / KEY).read_bytes()) as program:
        program.send_bytes(encode(asked))
        yield program


def _await_reply(program: Connection) -> Reply:
    """Waits for an answer. Raises one of ENDED where none comes."""
    if not program.poll(PATIENCE):
        raise EOFError
    return REPLIES.decode(program.recv_bytes())
