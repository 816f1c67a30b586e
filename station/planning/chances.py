"""Loss as a chance, not as a mean: how many pieces to cut so that enough come out good.

Each piece comes out good with a chance that is itself not quite known. What was seen of it so far
and a careful guess before it make a beta distribution, and the good ones of n pieces follow a
beta-binomial one. With the chance known for certain that is the binomial distribution (NIST/
SEMATECH e-Handbook 1.3.6.6.18); the two together stand in any textbook of Bayesian statistics
(named from memory).
"""

import math
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from station.planning.messages import Passage

SLACK = 1e-12  # a chance that is just the certainty asked for is enough
GUESS = 50.0  # pieces that the shop's usual loss weighs, where a part's own is little known
LEAST = 30  # pieces that must have passed before a shop can tell anything of its loss
SURE = 1e9  # pieces that stand behind a chance that is known for certain
LONG = 100_000_000  # pieces; more are never cut at once
MANY = 1000.0  # pieces lost: so many are reckoned all at once
FAR = 12.0  # times the usual spread: what lies beyond has no chance that matters


class Chance(NamedTuple):
    """The chance that a piece comes out good, as a beta distribution."""

    good: float
    lost: float

    @property
    def is_known(self) -> bool:
        """Whether it is known for certain; the two need not add up to the last digit."""
        return self.good + self.lost > SURE / 2

    @property
    def mean(self) -> float:
        """The chance that is expected."""
        return self.good / (self.good + self.lost)

    @property
    def loss(self) -> float:
        """The share that is expected to be lost."""
        return self.lost / (self.good + self.lost)


def know_chance(good: float) -> Chance:
    """Makes a chance that is known for certain."""
    return Chance(good * SURE, (1 - good) * SURE)


def learn_chance(own: Passage, shop: Passage) -> Chance | None:
    """Learns a part's chance from its own pieces and all of the shop's; None: can't tell yet."""
    seen = shop.good + shop.lost
    if seen < LEAST:
        return None
    usual = (shop.lost + 0.5) / (seen + 1)  # half a piece: nobody can say that none is ever lost
    return Chance(own.good + GUESS * (1 - usual), own.lost + GUESS * usual)


def add_passages(passed: Iterable[Passage]) -> Passage:
    """Adds up what passed."""
    each = tuple(passed)
    return Passage(good=sum(p.good for p in each), lost=sum(p.lost for p in each))


def find_chance_enough(cut: int, wanted: int, chance: Chance) -> float:
    """Finds the chance that at least `wanted` of so many pieces are good."""
    if wanted <= 0:
        return 1.0
    if cut < wanted:
        return 0.0
    if chance.lost == 0:
        return 1.0
    may_lose = cut - wanted
    return min(1.0, math.fsum(p for _, p in zip(range(may_lose + 1), _lose(cut, chance))))  # noqa: B905 - the range ends it


def _lose(cut: int, chance: Chance) -> Iterator[float]:
    """Gives the chances that 0, 1, 2 … of so many pieces are lost."""
    if chance.is_known:
        yield from _lose_surely(cut, chance.loss)
        return
    a, b = chance.good, chance.lost
    log = math.lgamma(a + cut) + math.lgamma(a + b) - math.lgamma(a) - math.lgamma(a + b + cut)
    for lost in range(cut + 1):
        yield math.exp(log)
        if lost < cut:  # the next term from this one
            log += math.log((cut - lost) / (lost + 1))
            log += math.log((b + lost) / (a + cut - lost - 1))


def _lose_surely(cut: int, loss: float) -> Iterator[float]:
    """Gives the same where the chance is known for certain: the binomial distribution."""
    if loss >= 1:
        yield from (float(lost == cut) for lost in range(cut + 1))
        return
    log = cut * math.log1p(-loss)
    for lost in range(cut + 1):
        yield math.exp(log)
        if lost < cut:
            log += math.log((cut - lost) / (lost + 1)) + math.log(loss) - math.log1p(-loss)


def count_to_cut(wanted: int, chance: Chance | None, certainty: float) -> int:
    """Counts the pieces to cut so that `wanted` are good with a certainty.

    Without a chance just as many. Raises ValueError where no count is enough.
    """
    if wanted <= 0 or certainty <= 0:
        return 0
    if chance is None or chance.lost == 0:
        return wanted
    if certainty >= 1 or wanted > LONG * (1 - chance.loss):
        raise ValueError("no number of pieces is enough")
    if chance.is_known and wanted * chance.loss > MANY:
        return wanted + _lose_many(wanted, chance.loss, certainty)
    enough = 0.0
    for lost, likely in enumerate(_lose_on_the_way(wanted, chance)):
        enough += likely
        if enough >= certainty - _find_slack(certainty):
            return wanted + lost
        if wanted + lost > LONG:
            break
    raise ValueError("no number of pieces is enough")


def _find_slack(certainty: float) -> float:
    """Finds by how much a sum may be short: far less than what is left to be lost."""
    return min(SLACK, (1 - certainty) / 1000)


def _lose_many(wanted: int, loss: float, certainty: float) -> int:
    """Counts the pieces that are lost at most, with a certainty, until the last wanted is good.

    The same chances as below, each from the one before, but only where they are not too small to
    matter; there they add up to 1.
    """
    import numpy as np  # noqa: PLC0415 - few ask for so many pieces

    mean, spread = wanted * loss / (1 - loss), math.sqrt(wanted * loss) / (1 - loss)
    lost = np.arange(max(0, int(mean - FAR * spread)), int(mean + FAR * spread) + 1)
    logs = np.cumsum(np.log((wanted + lost - 1) / np.maximum(lost, 1) * loss))
    chances = np.cumsum(np.exp(logs - logs.max()))
    first = np.searchsorted(chances, (certainty - _find_slack(certainty)) * chances[-1])
    return int(lost[min(first, len(lost) - 1)])


def _lose_on_the_way(wanted: int, chance: Chance) -> Iterator[float]:
    """Gives the chances that 0, 1, 2 … pieces are lost until the last one wanted is good.

    So many pieces more than wanted are enough with the sum of these chances up to there: the
    negative binomial distribution, or where the chance is not quite known, its mean over that.
    """
    a, b, known = chance.good, chance.lost, chance.is_known
    if known:
        log = wanted * math.log1p(-chance.loss)
    else:
        log = math.lgamma(a + wanted) + math.lgamma(a + b) - math.lgamma(a)
        log -= math.lgamma(a + b + wanted)
    lost = 0
    while True:
        yield math.exp(log)
        share = chance.loss if known else (b + lost) / (a + b + wanted + lost)
        log += math.log((wanted + lost) / (lost + 1) * share)
        lost += 1
