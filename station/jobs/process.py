"""Long work beside the screen: in a process of its own, which can be ended at any moment.

A thread would share one lock with the interface, and what it is in could not be ended.
Requests and what comes back are the types of `station.jobs.messages`, JSON on the way.
"""

import subprocess
import sys
import tempfile
import threading
from importlib import import_module
from typing import IO

from station.jobs.messages import (
    CopyHistory,
    Failed,
    GetReady,
    KeepBackup,
    Outcome,
    Progress,
    ReadCutFile,
    Report,
    Request,
)
from station.jobs.wire import MessageReader, encode
from station.planning.messages import PlanCutting

JOBS: dict[type[Request], str] = {  # the `run` there
    ReadCutFile: "station.jobs.read_cut_file",
    PlanCutting: "station.planning.think",
    GetReady: "station.jobs.get_ready",
    KeepBackup: "station.jobs.keep_backup",
    CopyHistory: "station.jobs.copy_history",
}
SERVE = "from station.jobs.process import serve; serve()"
MOST_SAID = 4000  # bytes of what it said as it broke off
NO_WINDOW = 0x08000000  # Windows opens a black window for a process otherwise
REQUESTS = MessageReader[Request](Request)
ANSWERS = MessageReader[Progress | Outcome](Progress | Outcome)


def do_job(request: Request, report: Report) -> Outcome:
    """Does a job here and now. What a file or the memory refuses is an outcome as well."""
    try:
        outcome: Outcome = import_module(JOBS[type(request)]).run(request, report)
    except OSError as fault:
        return Failed(file=str(fault.filename or ""), why=fault.strerror or str(fault))
    except MemoryError:
        return Failed(file="", why="not enough memory")
    return outcome


class DoneJob:
    """A job that was done when it was asked for: where no screen has to stay live."""

    def __init__(self, request: Request) -> None:
        self._outcome = do_job(request, lambda _stage, _share: None)

    def progress(self) -> tuple[str, float]:
        """Tells that it is over."""
        return "", 1.0

    def is_over(self) -> bool:
        """Tells whether it has ended: it has."""
        return True

    def outcome(self) -> Outcome:
        """Gives what came of it."""
        return self._outcome

    def stop(self) -> None:
        """Does nothing: there is nothing to stop."""


class ProcessJob:
    """A job in a process of its own. A thread only passes on what it says."""

    def __init__(self, request: Request) -> None:
        self._progress = Progress(stage="", share=0.0)
        self._outcome: Outcome | None = None
        self._errors = tempfile.TemporaryFile()  # noqa: SIM115 - open as long as the process is
        flags = NO_WINDOW if sys.platform == "win32" else 0
        # our own Python and our own words: nothing of it comes from outside
        self.process = subprocess.Popen(  # noqa: S603 - our own Python
            [sys.executable, "-c", SERVE], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
            stderr=self._errors, creationflags=flags,
        )  # fmt: skip
        asked = encode(request)
        self._listener = threading.Thread(target=self._listen, args=(asked,), daemon=True)
        self._listener.start()

    def _listen(self, asked: bytes) -> None:
        """Hands over what is asked, then takes what it says until it ends."""
        process = self.process
        assert process.stdin is not None
        assert process.stdout is not None
        try:
            with process.stdin as asks:
                asks.write(asked)
        except OSError:
            pass  # it has ended already; how is told by `outcome`
        with process.stdout as says:
            for line in says:
                answer = ANSWERS.decode(line)
                if isinstance(answer, Progress):
                    self._progress = answer
                else:
                    self._outcome = answer
        process.wait()

    def progress(self) -> tuple[str, float]:
        """Tells the stage it is in, and the part done, 0 to 1."""
        return self._progress.stage, self._progress.share

    def is_over(self) -> bool:
        """Tells whether it has ended, well or not."""
        return not self._listener.is_alive()

    def outcome(self) -> Outcome:
        """Gives what came of it, once it is over. Raises RuntimeError when it broke off."""
        self._errors.seek(0)
        why = self._errors.read()[-MOST_SAID:].decode("utf-8", "replace")
        self._errors.close()
        if self._outcome is None:
            raise RuntimeError(f"it ended with {self.process.returncode}: {why}")
        return self._outcome

    def stop(self) -> None:
        """Ends it at once; nothing comes of it."""
        self.process.kill()
        self._listener.join()
        self._errors.close()


def serve() -> None:
    """Is the other process: a request comes in, progress and the outcome go out, a line each."""
    out, sys.stdout = sys.stdout.buffer, sys.stderr  # whatever else is printed
    request = REQUESTS.decode(sys.stdin.buffer.read())
    told = ("", -1)

    def report(stage: str, share: float) -> None:
        nonlocal told
        if told != (told := (stage, int(share * 100))):
            _send(out, Progress(stage=stage, share=share))

    _send(out, do_job(request, report))


def _send(out: IO[bytes], answer: Progress | Outcome) -> None:
    """Sends one line."""
    out.write(encode(answer) + b"\n")
    out.flush()
