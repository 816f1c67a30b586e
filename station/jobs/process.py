"""Long work beside the screen: in a process of its own, which can be ended at any moment.

A thread would share one lock with the interface, and what it is in could not be ended.
What goes in and what comes out are plain JSON values.
"""

import json
import subprocess
import sys
import tempfile
import threading
from collections.abc import Callable, Mapping
from importlib import import_module
from typing import cast

from station.shop.rooms import Running

WORKS = {"read_cut_file": "station.jobs.cut_reading"}  # where each stands, as `work`
SERVE = "from station.jobs.process import serve; serve()"
MOST_SAID = 4000  # bytes of what it said as it broke off
NO_WINDOW = 0x08000000  # Windows opens a black window for a process otherwise

Tell = Callable[[str, float], None]  # the stage and the part done, 0 to 1
Plain = Mapping[str, object]


def done(work: str, asked: Plain, tell: Tell) -> dict[str, object]:
    """Does it here and now. What a file or the memory refuses is `fault`: (what, why)."""
    try:
        return dict(import_module(WORKS[work]).work(asked, tell))
    except OSError as fault:
        return {"fault": [str(fault.filename or ""), fault.strerror or str(fault)]}
    except MemoryError:
        return {"fault": ["", "not enough memory"]}


class AtOnce:
    """Work that is done when it is asked for: where no screen has to stay live."""

    def __init__(self, work: str, asked: Plain) -> None:
        self._done = done(work, asked, lambda _stage, _share: None)

    def news(self) -> tuple[str, float]:
        """It is over."""
        return "", 1.0

    def is_over(self) -> bool:
        """It is."""
        return True

    def outcome(self) -> Plain:
        """What came of it."""
        return self._done

    def stop(self) -> None:
        """There is nothing to stop."""


class Process:
    """Work in a process of its own. A thread only passes on what it says."""

    def __init__(self, work: str, asked: Plain) -> None:
        self._news, self._done = ("", 0.0), cast("Plain | None", None)
        self._errors = tempfile.TemporaryFile()  # noqa: SIM115 - open as long as the process is
        flags = NO_WINDOW if sys.platform == "win32" else 0
        # our own Python and our own words: nothing of it comes from outside
        self.process = subprocess.Popen(  # noqa: S603 - our own Python
            [sys.executable, "-c", SERVE], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
            stderr=self._errors, encoding="ascii", creationflags=flags,
        )  # fmt: skip
        text = json.dumps([work, asked])
        self._listener = threading.Thread(target=self._listen, args=(text,), daemon=True)
        self._listener.start()

    def _listen(self, text: str) -> None:
        """Hands over what is asked, then takes what it says until it ends."""
        process = self.process
        assert process.stdin is not None
        assert process.stdout is not None
        try:
            with process.stdin as asks:
                asks.write(text)
        except OSError:
            pass  # it has ended already; how is told by `outcome`
        with process.stdout as says:
            for line in says:
                said = json.loads(line)
                if isinstance(said, dict):
                    self._done = said
                else:
                    self._news = (said[0], said[1])
        process.wait()

    def news(self) -> tuple[str, float]:
        """The stage it is in, and the part done, 0 to 1."""
        return self._news

    def is_over(self) -> bool:
        """Whether it has ended, well or not."""
        return not self._listener.is_alive()

    def outcome(self) -> Plain:
        """What came of it, once it is over. Raises RuntimeError when it broke off."""
        self._errors.seek(0)
        why = self._errors.read()[-MOST_SAID:].decode("utf-8", "replace")
        self._errors.close()
        if self._done is None:
            raise RuntimeError(f"it ended with {self.process.returncode}: {why}")
        return self._done

    def stop(self) -> None:
        """Ends it at once; nothing comes of it."""
        self.process.kill()
        self._listener.join()
        self._errors.close()


def at_once(work: str, asked: Plain) -> Running:
    """Runs it to its end."""
    return AtOnce(work, asked)


def in_a_process(work: str, asked: Plain) -> Running:
    """Begins it and goes on."""
    return Process(work, asked)


def serve() -> None:
    """The other process: what is asked comes in, stages and the outcome go out, a line each."""
    out, sys.stdout = sys.stdout, sys.stderr  # whatever else is printed
    work, asked = json.load(sys.stdin)
    told: tuple[str, int] = ("", -1)

    def tell(stage: str, share: float) -> None:
        nonlocal told
        if told != (told := (stage, int(share * 100))):
            print(json.dumps([stage, share]), file=out, flush=True)

    print(json.dumps(done(work, asked, tell)), file=out, flush=True)
