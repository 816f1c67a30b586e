"""A small TCP proxy for tests: a network that is cut, slow or silent when a test says so."""

import socket
import threading
import time
from collections.abc import Callable
from contextlib import suppress

CHUNK = 65536


class Proxy:
    """Listens at `port` and passes on to a port of this machine.

    `mode` may change at any time: ``open``; ``slow`` holds every piece back for a moment;
    ``silent`` takes everything and passes on nothing; ``cut`` refuses, and ends what is open.
    `losing` is shown every piece that comes back: the first it says yes to is lost, and the
    network is cut from there on.
    """

    def __init__(self, to: int, *, delay: float = 0.1) -> None:
        self.to, self.delay = to, delay
        self.losing: Callable[[bytes], bool] = lambda _: False
        self._mode = "open"
        self._open: set[socket.socket] = set()
        self._closed = False
        self._listening = socket.create_server(("127.0.0.1", 0))
        self.port: int = self._listening.getsockname()[1]
        threading.Thread(target=self._accept, daemon=True).start()

    @property
    def mode(self) -> str:
        return self._mode

    @mode.setter
    def mode(self, mode: str) -> None:
        self._mode = mode
        if mode == "cut":
            self._end_all()

    def close(self) -> None:
        """Ends everything."""
        self._closed = True
        self._listening.close()
        self._end_all()

    def _end_all(self) -> None:
        for held in list(self._open):
            with suppress(OSError):
                held.shutdown(socket.SHUT_RDWR)

    def _accept(self) -> None:
        while not self._closed:
            try:
                near, _ = self._listening.accept()
            except OSError:  # closed, or who called is gone already
                time.sleep(0.01)
                continue
            threading.Thread(target=self._serve, args=(near,), daemon=True).start()

    def _serve(self, near: socket.socket) -> None:
        try:
            if self._mode == "cut":
                near.close()
                return
            far = socket.create_connection(("127.0.0.1", self.to), timeout=5)
        except OSError:
            near.close()
            return
        far.settimeout(None)
        self._open |= {near, far}
        back = threading.Thread(target=self._pump, args=(far, near), kwargs={"back": True})
        back.daemon = True
        back.start()
        self._pump(near, far)
        back.join()
        self._open -= {near, far}
        near.close()
        far.close()

    def _pump(self, frm: socket.socket, to: socket.socket, *, back: bool = False) -> None:
        with suppress(OSError):
            while piece := frm.recv(CHUNK):
                if back and self.losing(piece):
                    self.mode = "cut"
                    return
                while self._mode == "silent" and not self._closed:
                    time.sleep(0.02)
                if self._mode == "slow":
                    time.sleep(self.delay)
                to.sendall(piece)
        for end in (frm, to):
            with suppress(OSError):
                end.shutdown(socket.SHUT_RDWR)
