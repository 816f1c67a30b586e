"""Where people, PINs, reasons and the shop's settings are changed: at the office's PCs alone.

The owner of the shop's database names them there; each station hears of it when it asks where
the history ends. So a stolen password of another station changes none of these.
"""

from collections.abc import Iterable

from station.shop.acts import Answer, refuse
from station.shop.facts import Reason, Shop, Worker
from station.shop.words import Say, say

KINDS = frozenset({Shop.kind, Worker.kind, Reason.kind})


def is_of_office(keys: Iterable[str]) -> bool:
    """Tells whether one of the facts of these keys is changed in the office alone."""
    return any(key.partition("/")[0] in KINDS for key in keys)


def refuse_elsewhere(office: tuple[str, ...]) -> Answer:
    """Refuses a change at another PC; says at which one it is made."""
    return refuse(
        say_where(office),
        say("Nothing was changed. Do it at that PC; the database's owner may add this one."),
    )


def say_where(office: tuple[str, ...]) -> Say:
    """Says at which PCs people, PINs, reasons and settings are changed."""
    return say(
        "People, PINs, reasons and settings are changed at {n|station|stations} {stations} alone",
        n=len(office),
        stations=", ".join(office),
    )
