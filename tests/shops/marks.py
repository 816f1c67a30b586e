"""Cuts below-mark parts, those for the earliest due order first: as without a planner."""

from collections import Counter
from math import ceil, inf

from tests.shops.days import Floor
from tests.shops.shop import File


def cut_by_marks(floor: Floor) -> None:
    """Releases each part that falls below its minimum up to it, to the queue that ends first."""
    left = Counter({p: floor.rack[p] + floor.count_under_way(p) - floor.count_wanted(p)
                    for p in floor.shop.parts})  # fmt: skip
    for due, part in sorted((find_first_due(floor, p), p) for p in floor.shop.parts):
        short = floor.marks[part] - left[part]
        if short > 0:
            file = choose_file(floor, part)
            sheets = ceil(short / file.makes[part])
            left.update({p: n * sheets for p, n in file.makes.items()})
            floor.release(file.name, sheets, choose_router(floor, file), due)


def find_first_due(floor: Floor, part: str) -> float:
    """When the first order is due that what lies there and comes is not enough for; never: inf."""
    left = floor.rack[part] + floor.count_under_way(part)
    for order in floor.open:
        left -= order.wants.get(part, 0)
        if left < 0:
            return order.due
    return inf


def choose_file(floor: Floor, part: str) -> File:
    """The file that makes most of it a sheet."""
    files = [f for f in floor.shop.files.values() if part in f.makes]
    return max(files, key=lambda f: f.makes[part])


def choose_router(floor: Floor, file: File) -> str:
    """The router whose queue ends first; one that stands only where no other takes the file."""
    return min(file.minutes, key=lambda r: (r in floor.stopped, floor.count_ahead(r)))
