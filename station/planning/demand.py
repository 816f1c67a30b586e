"""What a part is used for in the days to come, from its own use, and the mark that follows.

Use that comes now and then is forecast by Croston's method as Syntetos and Boylan corrected it
(SBA: Syntetos and Boylan 2005, from memory); where the use has died away, by that of Teunter,
Syntetos and Babai (TSB, 2011, from memory), which falls with every day without use. Which of
them fits is told from how often it comes and how much it varies (Syntetos, Boylan and Croston
2005, from memory).
"""

import math
from collections.abc import Callable, Mapping, Sequence
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


class Span(NamedTuple):
    """How long pieces have to last: worked days, expected, and their standard deviation."""

    days: float
    deviation: float = 0.0

    def expect_use(self, forecast: Forecast) -> tuple[float, float]:
        """Expects what is used in it: pieces, with their variance.

        Both the use of a day and the days vary, each for itself (textbooks of stock, from memory).
        """
        variance = forecast.variance * self.days + (forecast.mean * self.deviation) ** 2
        return forecast.mean * self.days, variance


def suggest_mark(forecast: Forecast, span: Span, certainty: float) -> int:
    """Suggests the least mark that lasts for a span with a certainty.

    The use in it is taken as negative binomial, or as Poisson where it varies no more than that;
    of many pieces the normal distribution is near enough.
    """
    return suggest_levels(forecast, span, (certainty,))[0]


def suggest_levels(
    forecast: Forecast, span: Span, certainties: tuple[float, ...]
) -> tuple[int, ...]:
    """Suggests the least marks that last for a span with each of some certainties."""
    mean, variance = span.expect_use(forecast)
    if mean <= 0:
        return (0,) * len(certainties)
    if mean > MANY:
        spread = math.sqrt(max(variance, mean))
        return tuple(max(0, math.ceil(mean + find_deviate(c) * spread)) for c in certainties)
    return find_quantiles(mean, variance, certainties)


def find_lack(mean: float, variance: float, there: float) -> float:
    """Finds how many pieces lack in the middle, where so many lie there for a use that varies.

    The use is taken as for the marks. Known as the loss function.
    """
    if mean > MANY:
        spread = math.sqrt(max(variance, mean))
        far = (there - mean) / spread
        height = math.exp(-far * far / 2) / math.sqrt(2 * math.pi)
        return spread * (height - far * 0.5 * math.erfc(far / math.sqrt(2)))
    if mean <= 0:
        return 0.0
    log, within, lack = _log_none(mean, variance), 0.0, mean
    for n in range(math.ceil(there)):
        within += math.exp(log)  # the chance that no more than n are used
        lack -= 1 - within
        log += _log_step(n, mean, variance)
        if within > 1 - LEAST_LACK:
            break
    return max(0.0, lack)


class Choice(NamedTuple):
    """A part of which some may lie on the rack: how often it is used, and what a piece takes."""

    forecast: Forecast
    often: float  # share of the worked days on which it is used
    minutes: float  # of router time, a piece


SHARES = (0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.93, 0.95, 0.965, 0.98, 0.99, 0.995)


def share_marks(choices: Mapping[str, Choice], span: Span, certainty: float) -> dict[str, int]:
    """Suggests marks that last for a span for as many uses as the certainty says.

    Not each part alone lasts with it, but all of them together, at the least router time that lies
    on the rack: of what is used often and evenly more lies there, and what is rarely used, and
    then in large numbers, is better cut when it is wanted. Known as the system approach
    (Sherbrooke 1968, from memory).
    """
    levels = _list_levels(choices, span)
    wanted = certainty * sum(c.often for c in choices.values()) - NEAR
    chosen = _choose_levels(choices, levels, lambda served, _minutes: served < wanted).more
    return {part: level for part, (_, level) in chosen.items()}


def find_service(choices: Mapping[str, Choice], marks: Mapping[str, int], span: Span) -> float:
    """Finds the share of uses that lasts with no more router time on the rack than the marks hold.

    It is that of the best marks of so much, not of those set. 0 where nothing is used.
    """
    most = sum(c.minutes * marks.get(part, 0) for part, c in choices.items())
    levels = _list_levels(choices, span)
    chosen = _choose_levels(choices, levels, lambda _served, minutes: minutes <= most).less
    used = sum(c.often for c in choices.values())
    return sum(c.often * chosen[p][0] for p, c in choices.items()) / used if used else 0.0


Level = tuple[float, int]  # the share of uses that lasts, and what has to lie there for it
Levels = tuple[Level, ...]


class Chosen(NamedTuple):
    """Levels of all parts: the most that are still too few by some measure, the least beyond."""

    less: dict[str, Level]
    more: dict[str, Level]


def _list_levels(choices: Mapping[str, Choice], span: Span) -> dict[str, Levels]:
    """Lists what may lie there of each part."""
    return {
        part: (
            (_find_none(c.forecast, span), 0),
            *zip(SHARES, suggest_levels(c.forecast, span, SHARES), strict=True),
        )
        for part, c in choices.items()
    }


def _choose_levels(
    choices: Mapping[str, Choice],
    levels: Mapping[str, Levels],
    is_less: Callable[[float, float], bool],
) -> Chosen:
    """Chooses the best levels on both sides of a measure of the uses that last and the minutes."""
    low, high = 0.0, DEAREST  # router minutes that a use which finds enough is worth
    less = {part: levels[part][0] for part in choices}
    more = {part: levels[part][-1] for part in choices}
    for _ in range(HALVINGS):
        worth = (low + high) / 2
        tried = {part: _choose_level(c, levels[part], worth) for part, c in choices.items()}
        served = sum(c.often * tried[part][0] for part, c in choices.items())
        if is_less(served, sum(c.minutes * tried[part][1] for part, c in choices.items())):
            low, less = worth, tried
        else:
            high, more = worth, tried
    return Chosen(less, more)


def _find_none(forecast: Forecast, span: Span) -> float:
    """Finds the chance that nothing is used in a span."""
    mean, variance = span.expect_use(forecast)
    return math.exp(_log_none(mean, variance)) if mean > 0 else 1.0


def _choose_level(choice: Choice, levels: Levels, worth: float) -> tuple[float, int]:
    """Chooses the level that is worth most for the router time that lies in it."""
    return max(levels, key=lambda at: worth * choice.often * at[0] - choice.minutes * at[1])


DEAREST, HALVINGS = 1e7, 40
NEAR = 1e-9  # uses a day; a sum of doubles can tell no more
MANY = 2000.0  # pieces
LEAST_LACK = 1e-13  # chance beyond which a sum of doubles tells nothing of what lacks


def find_quantiles(
    mean: float, variance: float, certainties: tuple[float, ...]
) -> tuple[int, ...]:
    """Finds the least n that a use of this mean and variance stays within, for each certainty.

    The certainties rise.
    """
    n, log, found = 0, _log_none(mean, variance), []
    sum_ = math.exp(log)
    for certainty in certainties:
        while sum_ < certainty - 1e-12 and n <= 100 * MANY:  # a sum of doubles can tell no more
            log += _log_step(n, mean, variance)
            n += 1
            sum_ += math.exp(log)
        found.append(n)
    return tuple(found)


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
