"""Which orders nobody could save on the morning they came, with the rack as it was then."""

from tests.shops.days import Floor
from tests.shops.shop import DAY, Order


def find_hopeless(floor: Floor) -> set[str]:
    """Of the orders that came this morning, those that would be late even if the whole shop worked
    for one of them alone from now on.
    """
    return {
        order.name
        for order in floor.open
        if order.comes == floor.day and find_earliest(floor, order) > order.due - floor.day * DAY
    }


def find_earliest(floor: Floor, order: Order) -> float:
    """Minutes until all its pieces are there at best: less than it takes in truth.

    All that lies there and is past the routers goes to it, whoever else waits; nothing is lost,
    and sheets may be broken.
    """
    lacking = {
        part: n - there
        for part, n in order.wants.items()
        if n > (there := floor.rack[part] + floor.count_under_way(part) - floor.count_queued(part))
    }
    if not lacking:
        return 0.0
    shop, pieces = floor.shop, sum(lacking.values())
    routers = [r for r in shop.routers if r not in floor.stopped]
    each, first = _share_minutes(floor, lacking)
    steps = [pieces * shop.handling[s] * DAY / shop.people[s] for s in ("popping", "trimming")]
    cutting = sum(n * each[part] for part, n in lacking.items()) / max(1, len(routers))
    return max(cutting, first, *(first + takes for takes in steps))


def _share_minutes(floor: Floor, lacking: dict[str, int]) -> tuple[dict[str, float], float]:
    """Router minutes that a piece takes at least, by part; those of the shortest sheet.

    A sheet's minutes are shared among its pieces so that no file is cheaper than that. A router
    that stands takes as long as another: it may run again next morning.
    """
    files = [f for f in floor.shop.files.values() if lacking.keys() & f.makes]
    most = {part: max(f.makes.get(part, 0) for f in files) for part in lacking}
    each: dict[str, float] = {}
    for file in files:
        minutes = min(file.minutes.values())
        whole = sum(file.makes[part] / most[part] for part in lacking if part in file.makes)
        for part in lacking.keys() & file.makes:
            share = minutes / whole / most[part]
            each[part] = min(share, each.get(part, share))
    return each, min(min(f.minutes.values()) for f in files)
