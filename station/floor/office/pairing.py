"""Pairs parts and rack places: whichever comes second is told to the one that was there first."""

from collections.abc import Iterable
from dataclasses import replace

from station.shop.facts import Fact, Part, RackPlace
from station.shop.views import View


def pair_places(facts: Iterable[Fact], view: View) -> tuple[Fact, ...]:
    """Gives the facts, and what they change beside them.

    A part without a place gets the place that names it; a place without a part the part that
    names it. What points elsewhere already stays.
    """
    found = {fact.key: fact for fact in facts}
    for fact in tuple(found.values()):
        if isinstance(fact, RackPlace) and fact.part:
            part = found.get(f"part/{fact.part}") or view.get(Part, fact.part)
            if isinstance(part, Part) and not part.rack:
                found[part.key] = replace(part, rack=fact.id)
        elif isinstance(fact, Part) and fact.rack:
            place = found.get(f"rack/{fact.rack}") or view.get(RackPlace, fact.rack)
            if isinstance(place, RackPlace) and not place.part:
                found[place.key] = replace(place, part=fact.id)
    return tuple(found.values())
