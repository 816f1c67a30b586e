"""``station``: opens this PC's station."""

import argparse

from station.commands.common import CommandError, find_data, has_display, make_clock


def run(options: argparse.Namespace) -> int:
    """Opens this PC's station and runs it until its window is closed."""
    if not has_display():
        raise CommandError("There is no display here. For the text station: station scan --help")
    from station.window import show  # noqa: PLC0415 - Qt may not be there without a display

    return show.open_station(find_data(options), make_clock(options))
