"""A scale on a serial port: a pseudo-terminal sends what it would; one that is pulled out."""

import os
import time

import pytest

from station.shop.facts import Order, Pack
from station.window.scale import ScaleLine, keep_port
from station.window.show import listen_to_scale

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


@pytest.fixture
def weighed(screen, stage, port):
    """The window of a PC with a scale on a serial port, all of an order in its pack."""
    mine, name = port
    keep_port(stage.ledger, name)
    line = listen_to_scale(stage.ledger, screen.session)
    line.listen()  # it is open
    screen.at("packing", worker="05")
    screen.scan("order 3307", "part 045")
    yield mine, line
    line.stop()


def send(mine, line, grams, times):
    """Sends a line of the scale so many times, and lets the station listen."""
    os.write(mine, f"ST,GS,+ {grams:7.1f} g\r\n".encode() * times)
    for _ in range(20):
        line.listen()
        time.sleep(0.005)


def test_a_scale_closes_the_pack_when_it_stands_still_and_not_before(weighed, screen, stage):
    mine, line = weighed
    for grams in (120.0, 263.0, 371.0):  # the pack is put down
        send(mine, line, grams, 1)
    assert stage.ledger.view.get(Order, "3307").state == "packing"
    send(mine, line, 390.0, 5)
    assert screen.said == "Pack 00001 is closed: order 3307"
    assert stage.ledger.view.get(Pack, "00001").scale_g == 390.0
    send(mine, line, 390.0, 8)  # it stands there still: that closes and opens nothing
    assert stage.ledger.view.get(Order, "3307").state == "packed"
    assert len(stage.ledger.view.shelf(Pack, "packed")) == 1


def test_a_pack_that_lacks_a_piece_is_told_by_the_scale_and_not_closed(weighed, screen, stage):
    mine, line = weighed
    send(mine, line, 330.0, 5)
    assert screen.said == "330 g on the scale, 390 ± 53 g expected"
    assert screen.window.strip.do.text() == "Too light by 60 g: look through the pack."
    assert stage.ledger.view.get(Order, "3307").state == "packing"
    send(mine, line, 0.0, 5)
    send(mine, line, 391.5, 5)
    assert screen.said == "Pack 00001 is closed: order 3307"


def test_a_weight_that_is_typed_closes_it_as_the_scale_does(screen, stage):
    screen.at("packing", worker="05")
    screen.scan("order 3307", "part 045")
    screen.type("391")
    assert screen.said == "Pack 00001 is closed: order 3307"
    assert stage.ledger.view.get(Pack, "00001").scale_g == 391.0


def test_a_port_that_is_away_stops_nothing(qtbot):
    line = ScaleLine("/dev/there-is-none", 9600)
    line.listen()
    line.listen()
    line.stop()
