"""How far people at loading keep up with the routers that they tend.

N routers run for a while each, then wait for one of R people, who loads the one that came first.
Known as the finite-source queue, or machine repairman (textbooks of queueing; from memory). Its
figures hold for running times of any kind with that mean, as long as loading varies about as much
as its mean; where it varies less, routers wait less.
"""

from math import fsum
from typing import NamedTuple


class Tending(NamedTuple):
    """Shares of the time, and how many routers wait for a person in the middle."""

    nobody_waits: float  # every router runs
    idle: float  # a person has nothing to load
    running: float  # a router runs
    waiting: float  # routers, besides those being loaded


def find_tending(routers: int, people: int, run_min: float, load_min: float) -> Tending:
    """Finds how it goes on in the middle; minutes a sheet of running, and of loading.

    Raises ValueError where there is no router, no person or no running time.
    """
    if routers < 1 or people < 1 or run_min <= 0 or load_min < 0:
        raise ValueError("it takes a router, a person and a running time")
    weights = [1.0]  # of so many routers that do not run
    for standing in range(routers):
        busy = min(standing + 1, people)
        weights.append(weights[-1] * (routers - standing) * load_min / run_min / busy)
    chances = [weight / fsum(weights) for weight in weights]
    loading = fsum(min(n, people) * chance for n, chance in enumerate(chances))
    stand = fsum(n * chance for n, chance in enumerate(chances))
    return Tending(
        nobody_waits=chances[0],
        idle=1 - loading / people,
        running=1 - stand / routers,
        waiting=stand - loading,
    )


def count_tended(load_min: float, own_min: float, run_min: float) -> float:
    """Counts the routers that one person can tend: `own_min` are minutes of the person alone.

    Where all times are always the same; loading takes the router's time and the person's.
    """
    return (load_min + run_min) / (load_min + own_min)
