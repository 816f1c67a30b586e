"""What settles the first-off of a router, for tests that play whole days."""

from collections.abc import Iterable

from station.queries.first_offs import find_unsettled, list_sizes
from station.queries.routers import find_bed
from station.shop.facts import Bed
from station.shop.views import View


def list_passed_over(beds: Iterable[Bed]) -> list[str]:
    """Lists the routers that cut a sheet while the first-off of another one is not settled."""
    return [
        bed.id
        for bed in beds
        for first in bed.firsts
        if bed.sheet and first.state == "due"
        and (first.batch, first.sheet) != (bed.batch, bed.sheet)
    ]  # fmt: skip


def list_answers(view: View, router: str) -> list[str]:
    """Lists the lines that let a first-off agree: a reading of each size, or the button."""
    first = find_unsettled(find_bed(view, router))
    if first is None:
        return []
    twice = 2 if first.state == "wrong" else 1
    sizes = [m for m in list_sizes(view, first) for _ in range(twice)]
    return [f"{m.size.nominal_mm:g}" for m in sizes] or ["button first_off_good"]
