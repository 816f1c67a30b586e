"""What a scale says: a line with a number and its unit, and when it stands still."""

import re

from station.shop.weights import GRAMS

_NUMBER = r"-?\d+(?:[.,]\d+)?"
# a scale of pounds and ounces sends both: "3 lb 4.5 oz"
_BOTH = re.compile(rf"(?:({_NUMBER}) ?lbs? ?)({_NUMBER}) ?oz", re.IGNORECASE)
_LINE = re.compile(rf"({_NUMBER}) ?(kg|g|oz|lb)s?", re.IGNORECASE)
STEADY = 3  # lines that agree
NEAR_G = 1.0  # they agree within this, or within a part of the whole
NEAR_SHARE = 0.001
LEAST_G = 5.0  # below, nothing lies on it


def read_weight(text: str) -> float | None:
    """Reads a whole text as a weight in g, as ``390.5 g`` or ``13,8 oz``; None: it is none."""
    if both := _BOTH.fullmatch(text.strip()):
        return _to_number(both[1]) * GRAMS["lb"] + _to_number(both[2]) * GRAMS["oz"]
    found = _LINE.fullmatch(text.strip())
    return _to_number(found[1]) * GRAMS[found[2].lower()] if found else None


def _to_number(text: str) -> float:
    return float(text.replace(",", "."))


def find_weight(line: str) -> float | None:
    """Finds the weight in a line that a scale sends, in g, whatever stands before it."""
    bare = " ".join(line.replace("+", " ").split()).replace("- ", "-")
    found = _BOTH.search(bare) or _LINE.search(bare)
    return read_weight(found[0]) if found else None


class SteadyScale:
    """Tells the weight that lies on a scale once it stands still, once for each load."""

    def __init__(self) -> None:
        self._last: list[float] = []
        self._told = False

    def take(self, line: str) -> float | None:
        """Takes a line; gives the weight in g where it stands still and was not told yet."""
        grams = find_weight(line)
        if grams is None:
            return None
        self._last = [*self._last, grams][-STEADY:]
        near = max(NEAR_G, NEAR_SHARE * abs(grams))
        if max(self._last) - min(self._last) > near or len(self._last) < STEADY:
            self._told = self._told and abs(grams - self._last[0]) <= near
            return None
        if grams < LEAST_G:
            self._told = False
            return None
        if self._told:
            return None
        self._told = True
        return grams
