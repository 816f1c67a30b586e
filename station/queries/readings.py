"""Questions about readings: how what is measured went over time, and what it came from."""

from station.shop.readings import name_size
from station.shop.views import Noted, View


def list_size(
    view: View, part: str, size: str, since: str = "", *, router: str = "", bit: str = ""
) -> tuple[Noted, ...]:
    """Lists what was measured of one size of a part, in mm, by time.

    Each reading says which batch, sheet, router and bit it came from, as far as it is known;
    with `router` or `bit` only those of the one or the other are listed.
    """
    return tuple(
        noted
        for noted in view.series(f"part/{part}", name_size(size), since)
        if (not router or noted.reading.router == router) and (not bit or noted.reading.bit == bit)
    )
