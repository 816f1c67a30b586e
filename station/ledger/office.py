"""Where people, PINs, reasons and the shop's settings are changed: at the office's PCs alone.

The owner of the shop's database names them there; each station hears of it when it asks where
the history ends. So a stolen password of another station changes none of these.
"""

from collections.abc import Collection, Mapping

import msgspec

from station.shop.acts import Answer, SetPin, refuse
from station.shop.facts import Reason, Shop, Worker
from station.shop.words import Say, say

OFFICE = "office"  # local: the numbers of its stations, as a JSON list; none: every station
KINDS = frozenset({Shop.kind, Worker.kind, Reason.kind})
_numbers = msgspec.json.Decoder(tuple[str, ...]).decode


def read_office(values: Mapping[str, str]) -> tuple[str, ...]:
    """Reads from a station's own values which stations are the office's; none: every one."""
    kept = values.get(OFFICE, "")
    return _numbers(kept) if kept else ()


def write_office(office: Collection[str]) -> str:
    """Writes the stations of the office as a station keeps them."""
    return msgspec.json.encode(tuple(office)).decode() if office else ""


def is_of_office(key: str) -> bool:
    """Tells whether the fact of this key is changed in the office alone."""
    return key.partition("/")[0] in KINDS


def refuse_elsewhere(
    values: Mapping[str, str], station: str, kind: str, keys: Collection[str]
) -> Answer | None:
    """Refuses an act that changes what is the office's at another station; None: it may be.

    A PIN is refused before it is typed.
    """
    office = read_office(values)
    if not office or station in office:
        return None
    if kind != SetPin.kind and not any(map(is_of_office, keys)):
        return None
    return refuse(say_where(office), NOT_HERE)


def say_where(office: tuple[str, ...]) -> Say:
    """Says at which PCs people, PINs, reasons and settings are changed."""
    return say(
        "People, PINs, reasons and settings are changed at {n|station|stations} {stations} alone",
        n=len(office),
        stations=", ".join(office),
    )


NOT_HERE = say("Nothing was changed. Do it at that PC; the database's owner may add this one.")
