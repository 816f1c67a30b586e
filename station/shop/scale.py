"""What a scale says: a line with a number and g or kg, and when it stands still."""

import re

_LINE = re.compile(r"(-?\d+(?:[.,]\d+)?) ?(kg|g)", re.IGNORECASE)
STEADY = 3  # lines that agree
NEAR_G = 1.0  # they agree within this, or within a part of the whole
NEAR_SHARE = 0.001
LEAST_G = 5.0  # below, nothing lies on it


def read_weight(text: str) -> float | None:
    """Reads a whole text as a weight in g, as ``390.5 g`` or ``1,25 kg``; None: it is none."""
    found = _LINE.fullmatch(text.strip())
    if found is None:
        return None
    return float(found[1].replace(",", ".")) * (1000 if found[2].lower() == "kg" else 1)


def find_weight(line: str) -> float | None:
    """Finds the weight in a line that a scale sends, in g, whatever stands before it."""
    found = _LINE.search(" ".join(line.replace("+", " ").split()).replace("- ", "-"))
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
