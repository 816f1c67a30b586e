"""What is retired is refused wherever it would be put to work, and where it comes back is said."""

from station.shop.acts import Answer, refuse
from station.shop.facts import Fact
from station.shop.words import Say, say


def refuse_retired(fact: Fact, thing: Say) -> Answer | None:
    """Refuses what is retired, by the name of the thing; None: it may be used."""
    if fact.in_use:
        return None
    do = say("Take another, or bring it back in the office: “in use” on its page.")
    return refuse(say("{thing} is retired", thing=thing), do)
