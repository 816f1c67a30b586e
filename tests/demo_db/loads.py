"""How a demo shop's days and people were loaded, read from its history alone."""

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime
from typing import NamedTuple

from station.ledger.ledger import Ledger
from station.shop.moves import NO_PIECES, Move, head

# What is done with pieces, by the kinds of place that they leave and come to.
STEPS = {("popping", "trimming"): "popped", ("trimming", "rack"): "trimmed",
         ("rework", "rack"): "trimmed", ("rack", "packing"): "packed"}  # fmt: skip
BACK = {("packing", "rack"): "packed"}
MEASURES = ("sheets", "cut", "popped", "trimmed", "packed")


class Acted(NamedTuple):
    """When a worker acted first and last on a day, and with how many pieces in all."""

    first: datetime
    last: datetime
    pieces: int

    @property
    def hours(self) -> float:
        """From the first act to the last one."""
        return (self.last - self.first).total_seconds() / 3600


@dataclass
class DayLoad:
    """One day: sheets and pieces by what was done with them, and the times of each worker."""

    date: str
    done: Counter[str] = field(default_factory=Counter)
    times: dict[str, list[datetime]] = field(default_factory=lambda: defaultdict(list))
    pieces: Counter[str] = field(default_factory=Counter)  # by worker

    def people(self) -> dict[str, Acted]:
        """Who acted, by number."""
        return {who: Acted(min(at), max(at), self.pieces[who])
                for who, at in sorted(self.times.items())}  # fmt: skip


def read_loads(ledger: Ledger) -> list[DayLoad]:
    """Lists the days in order; what was taken back is left out."""
    days: dict[str, DayLoad] = {}
    for entry in ledger.entries():
        if entry.past.undone or entry.reverses or not entry.worker:
            continue
        day = days.setdefault(entry.at[:10], DayLoad(entry.at[:10]))
        day.times[entry.worker].append(datetime.fromisoformat(entry.at))
        day.done["sheets"] += entry.kind == "start_sheet"
        for moved in entry.past.moves:
            if moved.part not in NO_PIECES:
                _add(day, entry.worker, moved)
    return list(days.values())


def _add(day: DayLoad, worker: str, moved: Move) -> None:
    way = head(moved.frm.place), head(moved.to.place)
    if "recount" in way:
        day.done["recounted"] += moved.qty
    elif way[1] in ("spoiled", "missing"):
        day.done["lost"] += moved.qty
    elif way[0] == "missing":
        day.done["lost"] -= moved.qty
    if way[0] == "cut":
        day.done["cut"] += moved.qty
        day.pieces[worker] += moved.qty
    elif step := STEPS.get(way):
        day.done[step] += moved.qty
        day.pieces[worker] += moved.qty
    elif step := BACK.get(way):
        day.done[step] -= moved.qty


def find_ratio(days: list[DayLoad], measure: str) -> float:
    """Finds how many times the emptiest day's the fullest day's load is."""
    loads = [day.done[measure] for day in days]
    return max(loads) / min(loads)


def find_recounted(days: list[DayLoad]) -> float:
    """Finds the share of recounted pieces in those that were cut."""
    return sum(d.done["recounted"] for d in days) / sum(d.done["cut"] for d in days)


def list_waiting(days: list[DayLoad]) -> list[int]:
    """Lists the good pieces cut and not packed, evening after evening, after the start's."""
    waiting, found = 0, []
    for day in days:
        waiting += day.done["cut"] - day.done["lost"] - day.done["packed"]
        found.append(waiting)
    return found


def tell(days: list[DayLoad]) -> Iterator[str]:
    """Tells all of it, a line a day and a line a worker; today is half a day."""
    yield (
        f"{'':10} {'sheets':>7}{'cut':>7}{'popped':>8}{'trimmed':>8}{'packed':>7}{'recounted':>10}"
        "  good and not packed"
    )
    for day, waiting in zip(days, list_waiting(days), strict=True):
        done = day.done
        share = done["recounted"] / done["cut"]
        yield (f"{day.date} {done['sheets']:7}{done['cut']:7}{done['popped']:8}{done['trimmed']:8}"
               f"{done['packed']:7}{done['recounted']:4} {share:5.1%}  {waiting:6}")  # fmt: skip
    whole = days[:-1]
    yield "fullest day against the emptiest, today left out: " + ", ".join(
        f"{m} {find_ratio(whole, m):.2f}" for m in MEASURES
    )
    yield f"recounted: {find_recounted(days):.2%} of the pieces cut"
    for who in sorted({who for day in whole for who in day.times}):
        acted = [day.people()[who] for day in whole if who in day.times]
        pieces, hours = sorted(a.pieces for a in acted), sorted(a.hours for a in acted)
        yield (f"worker {who}: {len(acted)} days, pieces {pieces[0]} to {pieces[-1]}, "
               f"hours from first to last act {hours[0]:.1f} to {hours[-1]:.1f}")  # fmt: skip
