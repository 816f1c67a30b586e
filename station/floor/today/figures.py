"""Counts the day: what each area did, its rate, what waits, how it flowed.

Rates are pieces an hour over the hours worked so far today, the running hour counted by
its minutes. "Holding up" names the area with the longest wait: what lies before it over
its own rate, when that is over an hour and the longest of all.
"""

from typing import NamedTuple

from station.queries.carts import count_left, count_waiting_packs
from station.queries.orders import count_due
from station.queries.routers import count_minutes_left, list_beds
from station.queries.underway import count_pieces_to_cut, count_sheets_to_cut, list_waiting
from station.shop.facts import (
    Bed,
    Reason,
    Router,
    Shop,
)
from station.shop.first_facts import say_reason
from station.shop.moves import NO_PIECES, SHEET
from station.shop.places import areas_of
from station.shop.views import Passed, View, total
from station.shop.words import Say

# (area, from-heads, to-heads): a piece has been through the area when it made this move.
THROUGH: tuple[tuple[str, frozenset[str], frozenset[str]], ...] = (
    ("cut", frozenset({"cut"}), frozenset({"popping"})),
    ("popped", frozenset({"popping"}), frozenset(areas_of("trimming"))),
    ("trimmed", frozenset(areas_of("trimming")), frozenset({"rack", "packing"})),
    ("packed", frozenset({"packing"}), frozenset({"pack"})),
    ("shipped", frozenset({"cart"}), frozenset({"shipped"})),
)


class Day(NamedTuple):
    """Holds the figures of one day up to now."""

    start: float  # the hour at which work began
    hours: float  # worked so far
    through: dict[str, int]  # pieces by name of THROUGH
    by_hour: dict[str, dict[int, int]]  # the same by hour of the day
    sheets: int
    planned: int  # sheets still queued, and done today
    waiting: dict[str, int]  # pieces before popping, trimming, packing, cart
    packs: int
    packs_waiting: int
    to_do: dict[str, int]  # pieces still to go through today, by name of THROUGH


def read_hours(at: str) -> float:
    """Reads ``2026-11-25T10:30:00`` as 10.5."""
    return int(at[11:13]) + int(at[14:16]) / 60 if len(at) >= 16 else 0.0


def read_start(shop: Shop) -> float:
    """Reads the hour at which the day starts."""
    return int(shop.day_starts[:2]) + int(shop.day_starts[3:5]) / 60


def read_end(shop: Shop) -> float:
    """Reads the hour at which the day ends."""
    return int(shop.day_ends[:2]) + int(shop.day_ends[3:5]) / 60


def find_start(shop: Shop, by_hour: dict[str, dict[int, int]]) -> float:
    """Finds when work began today: the hour of the first pieces, or in it when the day starts."""
    begun = [hour for sums in by_hour.values() for hour, n in sums.items() if n]
    starts = read_start(shop)
    first = min(begun, default=starts)
    return starts if first == int(starts) else first


def count_day(view: View, now: str, shop: Shop) -> Day:
    """Counts all figures of the day that `now` stands in."""
    day, hour = now[:10], now[:13]
    passed = view.once(f"passed by {hour}", lambda view: view.passed(f"{day}T00", hour))
    by_hour = {name: _sum_by_hour(passed, frm, to) for name, frm, to in THROUGH}
    sheets = sum(p.qty for p in passed if p.part == SHEET and (p.frm, p.to) == ("bed", "used"))
    waits = count_waiting(view)
    start, end = find_start(shop, by_hour), read_end(shop)
    until = min(read_hours(now), end) if start < end else read_hours(now)
    return Day(
        start=start,
        hours=max(0.25, until - start),
        through={name: sum(by_hour[name].values()) for name in by_hour},
        by_hour=by_hour,
        sheets=sheets,
        planned=sheets + count_sheets_to_cut(view),
        waiting=waits,
        packs=count_left(view, now[:10]),
        packs_waiting=count_waiting_packs(view),
        to_do=count_to_do(view, now, waits),
    )


def count_to_do(view: View, now: str, waits: dict[str, int]) -> dict[str, int]:
    """Counts what is left today: queued sheets in pieces, what waits, orders due by tonight."""
    cut = count_pieces_to_cut(view)
    popped = cut + waits["popping"]
    return {
        "cut": cut,
        "popped": popped,
        "trimmed": popped + waits["trimming"],
        "packed": count_due(view, f"{now[:10]}T24"),
    }


def _sum_by_hour(
    passed: tuple[Passed, ...], frm: frozenset[str], to: frozenset[str]
) -> dict[int, int]:
    sums: dict[int, int] = {}
    for p in passed:
        if p.part in NO_PIECES:
            continue
        # What was taken back went the other way and counts against it.
        sign = (p.frm in frm and p.to in to) - (p.frm in to and p.to in frm)
        if sign:
            hour = int(p.hour[11:13])
            sums[hour] = sums.get(hour, 0) + sign * p.qty
    return sums


def count_waiting(view: View) -> dict[str, int]:
    """Counts the pieces that wait before each area."""
    return {area: total(list_waiting(view, area)) for area in ("popping", "trimming")}


def find_holding_up(figures: Day) -> str:
    """Finds the area with the longest wait of over an hour, or nothing."""
    done = {"popping": figures.through["popped"], "trimming": figures.through["trimmed"]}
    waits = {
        area: figures.waiting[area] / max(done[area] / figures.hours, 1e-9)
        for area in done
        if figures.waiting[area]
    }
    longest = max(waits, key=lambda area: waits[area], default="")
    return longest if longest and waits[longest] > 1 else ""


def add_up(by_hour: dict[int, int], start_h: float, now_h: float) -> tuple[tuple[float, int], ...]:
    """Adds up to (hour, pieces so far) at each full hour, and now."""
    points, sum_ = [(start_h, 0)], 0
    for hour in range(int(start_h), int(now_h) + 1):
        sum_ += by_hour.get(hour, 0)
        points.append((min(hour + 1, now_h), sum_))
    return tuple(points)


class RouterToday(NamedTuple):
    """Holds what a router does now, for its band."""

    router: Router
    bed: Bed
    reason: Say | str  # why it stands still
    free_in: int | None  # minutes, while cutting


def list_routers_today(view: View, now: str) -> tuple[RouterToday, ...]:
    """Lists each router with what it does."""
    found = []
    for router, bed in list_beds(view):
        reason = view.get(Reason, bed.stop) if bed.stop else None
        left = max(0, round(count_minutes_left(bed, now))) if bed.state == "cutting" else None
        found.append(RouterToday(router, bed, say_reason(reason) if reason else "", left))
    return tuple(found)
