"""``python -m tests.any_days [DAYS] [SEED]``: every code at every work area, after days of chance.

Each day's history is written as CSV, a line a move, and nothing else of it is handed on. Then
each code of `station codes` is scanned with free hands at every work area. It must be answered;
a question must leave the history's digest as it was; and how many of a batch, a part, a rack
place, a lot and a pack lie where must be what the lines of the CSV add up to.
"""

import csv
import io
import json
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from station.bootstrap import Where, make_desk
from station.desk.desk import Desk
from station.ledger.ledger import Ledger
from station.printing.codes import list_codes
from station.queries.whereabouts import find_thing
from station.shop.areas import AREAS
from station.shop.cards import button
from station.shop.codes import Code, read
from station.shop.places import balances
from tests.any_code import APART, WORKER
from tests.measured import note
from tests.recount.books import read_entry
from tests.recount.days import Day, demo_day, small_day

STEPS = 250  # touches and scans of a day, before the codes are scanned
COLUMNS = ("entry", "part", "quantity", "from", "batch", "to", "to_batch")
NO_PIECES = ("sheet", "mm", "pass", "supply")
SHOP = ("popping", "trimming", "rework", "held", "rack", "packing", "pack", "cart", "between")
Lying = Counter[tuple[str, str, str]]  # part, batch, place


class Asked(NamedTuple):
    """What became of the codes of a day: answers, acts of a room, and what was wrong."""

    answered: int
    acts: int
    compared: int
    wrong: list[str]


def write_csv(day: Day) -> str:
    """Writes every move of a day's history as a line of CSV."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    table.writerow(COLUMNS)
    for number, body in enumerate(day.bodies(), 1):
        for m in read_entry(json.loads(body)).moves:
            table.writerow((number, m.part, m.qty, m.frm, m.frm_batch, m.to, m.to_batch))
    return out.getvalue()


def add_up(text: str) -> Lying:
    """Adds the lines of the CSV up: how many of which part and batch lie where."""
    lying: Lying = Counter()
    for row in csv.DictReader(io.StringIO(text)):
        n = int(row["quantity"])
        lying[row["part"], row["batch"], row["from"]] -= n
        lying[row["part"], row["to_batch"], row["to"]] += n
    return Counter({spot: n for spot, n in lying.items() if n > 0})


def count_said(kind: str, number: str, lying: Lying) -> list[int] | None:
    """Counts what the page of a thing must say, line by line, of a part in all; None: no count."""
    every = {s: n for s, n in lying.items() if s[0] not in NO_PIECES and not balances(s[2])}
    if kind == "batch":  # what has left, or is spoiled, is told of a batch too
        return sorted(n for (_, batch, _), n in every.items() if batch == number)
    pieces = {s: n for s, n in every.items() if _head(s[2]) in SHOP}
    if kind == "rack":
        return sorted(n for (_, _, place), n in pieces.items() if place == f"rack/{number}")
    if kind == "part":
        return [sum(n for (part, _, _), n in pieces.items() if part == number)]
    if kind == "lot":
        sheets = {s: n for s, n in lying.items() if s[0] == "sheet" and s[1] == number}
        return sorted(n for (_, _, p), n in sheets.items() if _head(p) in ("store", "bed", "used"))
    return None


def _head(place: str) -> str:
    return place.partition("/")[0]


def list_said(ledger: Ledger, code: Code, now: str) -> list[int]:
    """Lists the counts that a thing's page says, line by line; of a part what they add up to."""
    thing = find_thing(ledger.view, code, now)
    assert thing is not None
    lines = [v for line in thing.where if (v := getattr(line.what, "values", {})).get("n")]
    if code.kind == "batch":
        lines = [v for v in lines if "part" in v]
    counts = sorted(int(v["n"]) for v in lines)
    return [sum(counts)] if code.kind == "part" else counts


def ask_all(day: Day) -> Asked:
    """Scans every code at every area, and compares what is told with the CSV."""
    lying = add_up(write_csv(day))
    rows = [row for row in list_codes(day.ledger) if row["kind"] not in APART]
    things = [row for row in rows if row["kind"] != "button"]
    buttons = [row for row in rows if row["kind"] == "button"]
    found = Asked(0, 0, 0, [])
    for some in (things, buttons):  # a button may do something, and what is asked then is another
        for area in AREAS:
            desk = make_desk(day.ledger, Where(area=area.id, router="1", bench="9"), day.clock)
            for row in some:
                _free(desk, area.id)
                found = _ask(day, desk, row, lying, found)
    return found


def _ask(day: Day, desk: Desk, row: dict[str, object], lying: Lying, found: Asked) -> Asked:
    """Scans one code; what the room does with it is taken back."""
    where = f"{row['kind']} {row['code']} at {desk.hand.area}"
    before = day.ledger.witness()
    given = desk.take(str(row["code"]))
    wrong = [] if given.answer.said else [f"{where}: not answered"]
    if given.entry:
        desk.take(button("undo"))
    elif row["kind"] != "button" and day.ledger.witness() != before:
        wrong.append(f"{where}: the history changed")
    code, compared = read(str(row["code"])), 0
    if row["kind"] != "button" and not given.entry and desk.hand.aside.what:
        told = count_said(code.kind, code.number, lying) if not code.sheet else None
        if told is not None:
            compared, said = 1, list_said(day.ledger, code, desk.hand.now)
            if said != told:
                wrong.append(f"{where}: {said} told, {told} by the CSV")
    return Asked(
        found.answered + 1, found.acts + bool(given.entry), found.compared + compared,
        found.wrong + wrong,
    )  # fmt: skip


def _free(desk: Desk, area: str) -> None:
    """Stands at an area with nothing in hand: some of the codes before were buttons."""
    if desk.hand.area != area:
        desk.at(area=area)
    desk.sign_in(WORKER)
    for _ in range(3):  # a page, a question, work in hand
        desk.take(button("put_down"))


def play(days: int, seed: int) -> Iterator[tuple[str, Asked]]:
    """Plays days in turn on the small shop and on demo shops, and asks at the end of each."""
    for n in range(days):
        make = demo_day if n % 5 == 4 else small_day
        with tempfile.TemporaryDirectory() as folder, make(Path(folder), seed + n) as (day, going):
            for _, _ in zip(range(STEPS), going, strict=False):
                pass
            yield f"day {n + 1}, seed {seed + n}", ask_all(day)


def main() -> int:
    """Prints what each day gave; 1 where anything was wrong."""
    days, seed = (*map(int, sys.argv[1:3]), *(50, 1)[len(sys.argv) - 1 :])
    scans = compared = wrong = 0
    for name, asked in play(days, seed):
        print(f"{name}: {asked.answered} scans, {asked.acts} of them acts, "
              f"{asked.compared} counts compared", flush=True)  # fmt: skip
        for line in asked.wrong[:10]:
            print(f"  {line}")
        scans, compared = scans + asked.answered, compared + asked.compared
        wrong += len(asked.wrong)
    figure = f"{scans:,} scans answered, {compared:,} counts equal to the CSV's, {wrong} wrong"
    print(figure)
    note(f"every code at every area after {days} days of chance", figure, "0 wrong",
         f"python -m tests.any_days {days} {seed}")  # fmt: skip
    return int(wrong > 0)


if __name__ == "__main__":
    sys.exit(main())
