"""What pieces beyond the need are worth: each spares one that would be cut in the next days."""

from station.planning.learnt import PartLearnt

OVER_MIN = 0.4  # router minutes that a piece beyond need weighs, if its use can't be told
OVER_DAYS = 10.0  # worked days from which on a piece that lies spares nothing any more
CREDIT = 0.97  # share of what it takes to cut that a piece used at once spares; of our own choice


def weigh_piece(part: PartLearnt, pieces: float, minutes: float) -> float:
    """Weighs one piece more where so many lie or come, in minutes; less than none, if it is used
    soon. `minutes` are what it takes to cut.

    So a sheet that is full counts for more than one that happens to have just what lacks.
    """
    days = part.count_days(pieces)
    if days is None:
        return OVER_MIN
    return -CREDIT * max(0.0, 1 - days / OVER_DAYS) * minutes


def weigh_surplus(part: PartLearnt, pieces: float, more: int, minutes: float) -> float:
    """Weighs so many pieces more, each by the day on which it would be used."""
    if part.count_days(pieces) is None or part.use is None:
        return OVER_MIN * more
    last = min(pieces + more, OVER_DAYS * part.use.mean)
    within = max(0.0, last - pieces)  # those that spare anything; their credit falls in a line
    return within * weigh_piece(part, pieces + within / 2, minutes)
