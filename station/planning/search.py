"""Betters a cover of needs by search: takes some of its sheets out, and covers anew what is open.

For problems that the solver does not end in its time. Known as ruin and recreate (Schrimpf and
others 2000, from memory). All in arrays: rows are files, columns are parts.
"""

import math
import time
from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Counts = NDArray[np.int64]
SEED = 1  # nothing depends on when it runs
MOST_OUT = 4  # files that sheets are taken out of at once
FREE = 1e-9  # minutes of a sheet that costs nothing
HEAT = 0.003  # share of the cost by which a worse cover is still gone on from, at first


class Pieces(NamedTuple):
    """What files make of what is wanted, and the columns that say whether they are used."""

    makes: Counts  # pieces of each part on a sheet of each file
    wanted: Counts  # above 0
    used: Counts  # the column that is 1 where a file is used; -1: it costs nothing once


class Cover(NamedTuple):
    """Files that make parts, what they cost, and what is wanted."""

    makes: Counts  # pieces of each part on a sheet of each file
    cost: NDArray[np.float64]  # of a sheet
    fixed: NDArray[np.float64]  # once, where a file is used
    wanted: Counts
    worth: NDArray[np.float64]  # of a piece of each part: what covering it costs at least

    def count_cost(self, counts: Counts) -> float:
        """Counts what so many sheets cost."""
        return float(self.cost @ counts + self.fixed @ (counts > 0))


def better_cover(
    cover: Cover, start: Counts, seconds: float, is_over: Callable[[], bool]
) -> Counts:
    """Makes a cover of what a start leaves open, and betters it for so many seconds, or till over.

    Where files cost something once, it is also made anew: the start may use too many.
    """
    chance, until = np.random.default_rng(SEED), time.perf_counter() + seconds
    began = time.perf_counter()
    starts = (start.copy(), np.zeros_like(start)) if cover.fixed.any() else (start.copy(),)
    covers = (_leave_out(cover, _cover_open(cover, counts), chance) for counts in starts)
    here = best = min(covers, key=cover.count_cost)
    cost_here = cost_best = cover.count_cost(best)
    while (now := time.perf_counter()) < until and not is_over():
        tried = _leave_out(cover, _cover_open(cover, _take_out(here, chance)), chance)
        cost = cover.count_cost(tried)
        heat = HEAT * cost_best * (1 - (now - began) / seconds)
        if cost < cost_here + heat * -math.log(1 - chance.random()):
            here, cost_here = tried, cost
        if cost < cost_best - 1e-9:
            best, cost_best = tried, cost
    return best


def _take_out(counts: Counts, chance: np.random.Generator) -> Counts:
    """Takes sheets of some files out: all of a file's, or some."""
    tried, used = counts.copy(), np.flatnonzero(counts)
    if not len(used):
        return tried
    for file in chance.choice(used, min(len(used), int(chance.integers(1, MOST_OUT + 1))), False):
        all_ = chance.random() < 0.5
        tried[file] -= tried[file] if all_ else chance.integers(1, tried[file] + 1)
    return tried


def _cover_open(cover: Cover, counts: Counts) -> Counts:
    """Adds sheets until everything wanted is covered, those first that are worth most."""
    open_ = np.maximum(cover.wanted - counts @ cover.makes, 0)
    worth = np.minimum(cover.makes, open_) @ cover.worth
    price = np.maximum(cover.cost + cover.fixed * (counts == 0), FREE)
    while open_.any():
        file = int(np.argmax(worth / price))
        parts = np.flatnonzero((cover.makes[file] > 0) & (open_ > 0))
        made, before = cover.makes[file, parts], open_[parts]
        times = max(1, int((before // made).min()))
        counts[file] += times
        price[file] = max(cover.cost[file], FREE)
        after = np.maximum(before - times * made, 0)
        columns = cover.makes[:, parts]
        less = np.minimum(columns, before) - np.minimum(columns, after)
        worth -= less @ cover.worth[parts]
        open_[parts] = after
    return counts


def _leave_out(cover: Cover, counts: Counts, chance: np.random.Generator) -> Counts:
    """Leaves out the sheets that nobody misses, the dear ones first."""
    spare = counts @ cover.makes - cover.wanted
    used = np.flatnonzero(counts)
    dear = cover.cost[used] * chance.uniform(0.8, 1.2, len(used))
    for file in used[np.argsort(-dear)]:
        made = cover.makes[file]
        useful = made > 0
        times = min(int(counts[file]), int((spare[useful] // made[useful]).min()))
        if times > 0:
            counts[file] -= times
            spare -= times * made
    return counts
