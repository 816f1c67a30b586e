"""``station scale``: at which serial port of this PC the packing scale is."""

import argparse

from station import bootstrap
from station.commands.common import CommandError, require_shop
from station.window.scale import USUAL_SPEED, find_port, keep_port


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("port", nargs="?", default="", help="its serial port; none: no scale")
    parser.add_argument("--speed", type=_read_speed, default=USUAL_SPEED, help="bits a second")


def _read_speed(text: str) -> int:
    if not (text.isdecimal() and 0 < int(text) < 10**7):
        raise argparse.ArgumentTypeError(f"{text}: write so many bits a second, as 9600")
    return int(text)


def run(options: argparse.Namespace) -> int:
    """Keeps the port, then tells it and the ports that there are."""
    try:
        from serial.tools.list_ports import comports  # noqa: PLC0415 - only when it is used
    except ImportError as fault:
        raise CommandError("The package pyserial is missing: install it with pip.") from fault
    with bootstrap.open_ledger(require_shop(options)) as ledger:
        if options.port:
            keep_port(ledger, "" if options.port == "none" else options.port, options.speed)
        port, speed = find_port(ledger)
    print(f"scale: {port} at {speed} bits a second" if port else "scale: none")
    print(f"ports: {', '.join(p.device for p in comports()) or 'none'}")
    return 0
