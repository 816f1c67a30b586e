"""Listens to this PC's scale on a serial port, and tells each weight that stands still."""

import logging
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from station.ledger.ledger import Ledger
from station.shop.scale import SteadyScale

LOG = logging.getLogger("station")
PORT, SPEED = "scale_port", "scale_speed"  # kept on this PC
USUAL_SPEED = 9600  # bits a second: common practice, no source
LISTEN_MS = 100
AGAIN_MS = 5000  # until a port that is away is tried again
LONGEST = 4096  # bytes without an end of line: then it is no scale


def find_port(ledger: Ledger) -> tuple[str, int]:
    """Finds the port of this PC's scale and its speed; an empty port: it has none."""
    return ledger.local(PORT) or "", int(ledger.local(SPEED) or USUAL_SPEED)


def keep_port(ledger: Ledger, port: str, speed: int = USUAL_SPEED) -> None:
    """Keeps which port this PC's scale is at; an empty one: it has none."""
    ledger.set_local(PORT, port)
    ledger.set_local(SPEED, str(speed))


class ScaleLine(QObject):
    """Reads lines from a serial port; `steady` carries each weight as ``390.5 g``."""

    steady = Signal(str)

    def __init__(self, port: str, speed: int, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._port, self._speed = port, speed
        self._line: Any = None  # a serial.Serial, loaded only where there is a scale
        self._rest, self._scale = b"", SteadyScale()
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.listen)
        self._timer.start(LISTEN_MS)

    def listen(self) -> None:
        """Takes what has come since; a port that is away is opened again later."""
        from serial import Serial, SerialException  # noqa: PLC0415 - only where there is a scale

        try:
            if self._line is None:
                self._line = Serial(self._port, self._speed, timeout=0)
                self._timer.setInterval(LISTEN_MS)
            self.take(self._line.read(LONGEST))
        except (SerialException, OSError, ValueError) as fault:  # no port, or no such speed
            LOG.warning("the scale at %s: %s", self._port, fault)
            self.stop()
            self._timer.start(AGAIN_MS)

    def take(self, sent: bytes) -> None:
        """Takes bytes that the scale sent, and tells what stands still."""
        *lines, rest = (self._rest + sent).replace(b"\r", b"\n").split(b"\n")
        self._rest = rest[-LONGEST:]
        for line in lines:
            grams = self._scale.take(line.decode("ascii", "replace"))
            if grams is not None:
                self.steady.emit(f"{grams:.1f} g")

    def stop(self) -> None:
        """Lets the port go."""
        self._timer.stop()
        if self._line is not None:
            self._line.close()
        self._line = None
