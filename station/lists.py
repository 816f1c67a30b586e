"""The office's lists as CSV files, out and in: a fixed header, problems told by line."""

import csv
import io
from pathlib import Path

from station.app import new_id
from station.floor.office.fields import LISTS, from_text, shown, typed_fields
from station.ledger.ledger import Ledger
from station.shop.acts import Act
from station.shop.facts import Fact
from station.shop.plain import build, to_plain

NAMES = {entry.kind.kind: entry.kind for entry in LISTS}


def write(ledger: Ledger, kind: type[Fact]) -> str:
    """A list as CSV text: the fields that can be typed, `id` first."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    names = typed_fields(kind)
    table.writerow(names)
    for fact in ledger.facts(kind):
        table.writerow([shown(getattr(fact, name)) for name in names])
    return out.getvalue()


def read(ledger: Ledger, kind: type[Fact], file: Path, by: str, at: str) -> list[str]:
    """Takes a list in, all of it or nothing; gives the problems by line (none: taken in)."""
    try:
        text = file.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        return [f"{file.name} is not written in UTF-8. Save it as CSV UTF-8 and try again."]
    rows = list(csv.reader(io.StringIO(text)))
    names = list(typed_fields(kind))
    if not rows or rows[0] != names:
        return [f"line 1: the header must be {','.join(names)}"]
    made, problems = [], []
    for number, row in enumerate(rows[1:], 2):
        value, wrong = _row(ledger, kind, names, row)
        problems += [f"line {number}: {one}" for one in wrong]
        made.append(value)
    if problems:
        return problems
    for value in made:
        _set(ledger, kind, value, by, at)
    return []


def _row(
    ledger: Ledger, kind: type[Fact], names: list[str], row: list[str]
) -> tuple[dict[str, object], list[str]]:
    """One row over what is known of it already, and what is wrong with it."""
    if len(row) != len(names):
        return {}, [f"{len(row)} values, {len(names)} are wanted"]
    before = ledger.view.get(kind, row[0])
    value = to_plain(before) if before else {}
    value |= {n: from_text(kind, n, t) for n, t in zip(names, row, strict=True)}
    made = build(kind.kind, value)
    return value, [str(p) for p in made] if isinstance(made, list) else []


def _set(ledger: Ledger, kind: type[Fact], value: dict[str, object], by: str, at: str) -> None:
    """One fact, as the office sets it."""
    args = {"kind": kind.kind, "value": value, "approved": by}
    act = Act(id=new_id(), kind="set_fact", at=at, worker=by, station=ledger.station,
              subject=f"{kind.kind}/{value['id']}", args=args)  # fmt: skip
    answer = ledger.record(act).answer
    if answer.refused:
        raise ValueError(f"{value['id']}: {answer.said}")
