"""What a part is used for in the days to come, from its own use, and the mark that follows.

Use that comes now and then is forecast by Croston's method as Syntetos and Boylan corrected it
(SBA: Syntetos and Boylan 2005, from memory); where the use has died away, by that of Teunter,
Syntetos and Babai (TSB, 2011, from memory), which falls with every day without use. Which of
them fits is told from how often it comes and how much it varies (Syntetos, Boylan and Croston
2005, from memory).
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

LEAST_DAYS = 10  # worked days, before anything can be told
LEAST_TIMES = 2  # days with use, before anything can be told
ALPHA = 0.1  # how much the newest value counts
OFTEN = 1.32  # worked days from use to use; below, it comes about every day
STEADY = 0.49  # squared coefficient of variation of the pieces used; below, they vary little
GONE = 3.0  # times the usual gap without use: it may have died away


class Forecast(NamedTuple):
    """Pieces used on a worked day, expected, with their variance; and how that was told."""

    mean: float
    variance: float
    method: str  # mean, SBA, TSB


class Pattern(NamedTuple):
    """How use comes: worked days from use to use, and squared variation of the pieces."""

    gap: float
    varies: float


def forecast_sba(use: Sequence[float], alpha: float = ALPHA) -> float:
    """Forecasts a day's use by Croston's method with the Syntetos-Boylan correction.

    Begins with the first use and the days until it. 0 where there was none.
    """
    level = gap = 0.0
    since = 0
    for pieces in use:
        since += 1
        if pieces > 0:
            first = level == 0
            level = pieces if first else level + alpha * (pieces - level)
            gap = since if first else gap + alpha * (since - gap)
            since = 0
    return (1 - alpha / 2) * level / gap if gap else 0.0


def forecast_tsb(use: Sequence[float], alpha: float = ALPHA, beta: float = ALPHA) -> float:
    """Forecasts a day's use by the method of Teunter, Syntetos and Babai.

    Begins with the first use, and with 1 or 0 as the first day had use or not.
    """
    if not any(use):
        return 0.0
    level = next(pieces for pieces in use if pieces > 0)
    often = 1.0 if use[0] > 0 else 0.0
    for pieces in use[1:]:
        often += beta * ((pieces > 0) - often)
        if pieces > 0:
            level += alpha * (pieces - level)
    return often * level


def find_pattern(use: Sequence[float]) -> Pattern:
    """Finds how use comes; needs a day with use."""
    times = [pieces for pieces in use if pieces > 0]
    mean = sum(times) / len(times)
    variance = sum((pieces - mean) ** 2 for pieces in times) / len(times)
    return Pattern(len(use) / len(times), variance / mean**2)


def forecast_use(use: Sequence[int]) -> Forecast | None:
    """Forecasts a worked day's use by the method that fits; None: can't tell yet."""
    if len(use) < LEAST_DAYS:
        return None
    if not any(use):
        return Forecast(0.0, 0.0, "mean")
    if sum(pieces > 0 for pieces in use) < LEAST_TIMES:
        return None
    pattern, mean = find_pattern(use), sum(use) / len(use)
    variance = sum((pieces - mean) ** 2 for pieces in use) / (len(use) - 1)
    if _count_quiet(use) > GONE * pattern.gap:
        return Forecast(forecast_tsb(use), variance, "TSB")
    if pattern.gap < OFTEN and pattern.varies < STEADY:
        return Forecast(mean, variance, "mean")
    return Forecast(forecast_sba(use), variance, "SBA")


def _count_quiet(use: Sequence[int]) -> int:
    """Counts the days without use at the end."""
    return next(n for n, pieces in enumerate(reversed(use)) if pieces > 0)


def suggest_mark(forecast: Forecast, days: float, certainty: float) -> int:
    """Suggests the least mark that lasts so many worked days with a certainty.

    The use of these days is taken as negative binomial, or as Poisson where it varies no more
    than that; of many pieces the normal distribution is near enough.
    """
    mean, variance = forecast.mean * days, forecast.variance * days
    if mean <= 0:
        return 0
    if mean > MANY:
        return math.ceil(mean + find_deviate(certainty) * math.sqrt(max(variance, mean)))
    return find_quantile(mean, variance, certainty)


MANY = 2000.0  # pieces


def find_quantile(mean: float, variance: float, certainty: float) -> int:
    """Finds the least n that a use of this mean and variance stays within, with a certainty."""
    n, log = 0, _log_none(mean, variance)
    sum_ = math.exp(log)
    while sum_ < certainty - 1e-12:
        log += _log_step(n, mean, variance)
        n += 1
        sum_ += math.exp(log)
        if n > 100 * MANY:  # beyond what a sum of doubles can tell
            break
    return n


def _log_none(mean: float, variance: float) -> float:
    """Logarithm of the chance that nothing is used."""
    if variance <= mean:
        return -mean
    size = mean**2 / (variance - mean)
    return size * math.log(mean / variance)


def _log_step(n: int, mean: float, variance: float) -> float:
    """Logarithm of the chance of n + 1 over that of n."""
    if variance <= mean:
        return math.log(mean / (n + 1))
    size = mean**2 / (variance - mean)
    return math.log((n + size) / (n + 1)) + math.log1p(-mean / variance)


def find_deviate(certainty: float) -> float:
    """Finds the normal deviate that lies above a share of all, by halving."""
    low, high = -9.0, 9.0
    for _ in range(80):
        middle = (low + high) / 2
        if 0.5 * math.erfc(-middle / math.sqrt(2)) < certainty:
            low = middle
        else:
            high = middle
    return high
