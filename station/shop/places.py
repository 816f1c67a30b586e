"""Places in words for a person."""

from station.shop.facts import RackPlace
from station.shop.moves import head, tail
from station.shop.views import View
from station.shop.words import Say, say


def place_name(view: View, place: str) -> Say:
    """A place in words for a person."""
    if head(place) == "rack":
        rack = view.get(RackPlace, tail(place))
        return say("rack {name}", name=rack.name if rack else tail(place))
    if head(place) == "popping":
        return say("popping, sheet {sheet}", sheet=tail(place))
    return say("{place}", place=place)
