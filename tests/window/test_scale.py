"""A scale on a serial port: a pseudo-terminal sends what it would; one that is pulled out."""

import os
import time

import pytest

from station.window.scale import ScaleLine

pytest.importorskip("serial")
pty = pytest.importorskip("pty")
tty = pytest.importorskip("tty")


@pytest.fixture
def port():
    """Both ends of a line: what the scale writes to, and the name of the port."""
    mine, other = pty.openpty()
    tty.setraw(mine)
    yield mine, os.ttyname(other)
    os.close(other)
    os.close(mine)


def listen(line, told, count, seconds=5.0):
    """Listens until so many weights were told."""
    end = time.monotonic() + seconds
    while len(told) < count and time.monotonic() < end:
        line.listen()
        time.sleep(0.01)


def test_a_weight_that_stands_still_is_told_once(qtbot, port):
    mine, name = port
    line, told = ScaleLine(name, 9600), []
    line.steady.connect(told.append)
    line.listen()
    os.write(mine, b"ST,GS,+    0.0 g\r\n" * 3 + b"US,GS,+  377.0 g\r\nST,GS,+  39")
    line.listen()
    os.write(mine, b"0.5 g\r\n" + b"ST,GS,+  390.5 g\r\n" * 4)
    listen(line, told, 1)
    assert told == ["390.5 g"]
    line.stop()


def test_a_port_that_is_away_stops_nothing(qtbot):
    line = ScaleLine("/dev/there-is-none", 9600)
    line.listen()
    line.listen()
    line.stop()
