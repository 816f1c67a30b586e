"""Says in the top bar how sharing stands: how many acts are not shared, since when, and why."""

from datetime import datetime
from typing import TYPE_CHECKING

from station.ledger.ledger import Ledger
from station.queries.health import list_troubles
from station.shop.words import Say, clock, moment, say
from station.window.own_clock import CLOCK_OFF

if TYPE_CHECKING:
    from station.sharing.loop import Loop

A_MOMENT = 3  # seconds in which an act may be on its way without a word
STOPPED = {
    "too old": say("Update this program"),
    "differs": say("Another history in the shop"),
    "another": say("Another shop's database"),
    "twin": say("Another PC works as this station"),
    "refused": say("The shop's database refuses an act of this PC"),
    "empty": say("An empty database, not the shop's"),
}
DISK = say("This PC's disk fails")


def describe_sharing(ledger: Ledger, loop: "Loop | None", now: str) -> tuple[Say, bool]:
    """Describes how sharing stands; and whether all is well."""
    count = ledger.not_shared()
    if loop is None:
        return (say("{count} not shared", count=count), False) if count else (ALONE, True)
    if what := DISK if loop.fault else STOPPED.get(loop.state):
        how = _say_since(ledger, now) if count else say("sharing has stopped")
        return say("{what}: {how}", what=what, how=how), False
    if count and (loop.state != "shared" or _is_older(ledger.oldest_not_shared(), now)):
        return _say_since(ledger, now), False
    if loop.state == "away":
        why = say("The shop is away: {why}", why=loop.why) if loop.why else AWAY
        return why, False
    if abs(loop.clock_off) > CLOCK_OFF:
        return say("This PC's clock is {n} min off", n=round(loop.clock_off / 60)), False
    return say("Shared"), True


ALONE = say("On this PC")
AWAY = say("The shop is away")


def describe_health(ledger: Ledger) -> Say:
    """Describes what is worst with the shop's PCs, if anything."""
    troubles = list_troubles(ledger.view)
    return troubles[0].words if troubles else Say()


def _say_since(ledger: Ledger, now: str) -> Say:
    """Says how many acts are not shared, and since when: the day too, where it is another."""
    since = ledger.oldest_not_shared()
    at = clock(since) if since[:10] == now[:10] else moment(since)
    return say("{count} not shared since {since}", count=ledger.not_shared(), since=at)


def _is_older(since: str, now: str) -> bool:
    """Says whether an act was done more than a moment ago; times are shop-local text."""
    gone = datetime.fromisoformat(now) - datetime.fromisoformat(since)
    return gone.total_seconds() > A_MOMENT
