"""Reads a CSV file whose columns a shop has named its own way: each stands for a field.

Rows of one number are one thing: an order with a row for each of its lines. What a cell names is
found by number or by name. A thing without a number is the one of its name, or gets the next
number.
"""

import re
from collections.abc import Callable, Mapping
from datetime import date

from station.floor.office.lists import find_fact, propose_number
from station.floor.office.matching import NAMES, Slot, list_slots
from station.floor.office.rules import build_sound
from station.queries.settings import find_shop
from station.shop.facts import Fact
from station.shop.field_texts import Rows, from_rows, read_scalar, read_time, read_value
from station.shop.fields import FactField, fields_by_name
from station.shop.lengths import are_in_inches
from station.shop.plain import Plain, to_plain
from station.shop.views import View
from station.shop.words import Say, say

ISO = re.compile(r"20\d\d-[01]\d-[0-3]\d")
GUARDED = re.compile(r"'+[=+\-@\t\r]")
SLASHED = re.compile(r"(\d\d?)/(\d\d?)/(\d{2}|\d{4})\b")


def free_cell(text: str) -> str:
    """Reads a text as it was before its formula was guarded (`lists.guard_cell`)."""
    return text[1:] if GUARDED.match(text) else text


def name_columns(names: list[str]) -> tuple[str, ...]:
    """Names the columns of a file, each by a name of its own: ``Name``, ``Name (2)``."""
    found: list[str] = []
    for name in (n or "–" for n in names):
        again = sum(1 for f in found if f == name or f.startswith(f"{name} ("))
        found.append(f"{name} ({again + 1})" if again else name)
    return tuple(found)


FindNumber = Callable[[type[Fact], str], str]
Cells = Mapping[str, tuple[Slot, str]]  # what a row says, by field


def find_by_name(view: View) -> FindNumber:
    """Gives what finds the number of a thing that a cell names; the text itself where none is."""
    known: dict[tuple[type[Fact], str], str] = {}

    def find(kind: type[Fact], text: str) -> str:
        if (kind, text) not in known:
            found = find_fact(kind, text, view)
            known[kind, text] = found.id if found else text
        return known[kind, text]

    return find


def name_things(field: FactField, value: object, find: FindNumber) -> object:
    """Gives a field's plain value with numbers for the names of things that stand in it.

    ``2 x Insert set`` is read as well as ``Insert set x 2``: a screen says it so.
    """
    if field.points and isinstance(value, str) and value:
        return find(field.points, value)
    points = field.columns[0].points if field.columns else None
    if points is None or not isinstance(value, list):
        return value
    return [_name_row(points, row, find) for row in value]


def _name_row(points: type[Fact], row: object, find: FindNumber) -> object:
    if isinstance(row, Mapping):  # a record: its values in the order of its columns
        again = _name_row(points, list(row.values()), find)
        assert isinstance(again, list)
        return dict(zip(row, again, strict=True))
    if not isinstance(row, list):
        return find(points, str(row))
    first, *rest = row
    count = str(first)
    if rest and count.isdecimal() and not isinstance(rest[0], int):
        named = find(points, str(rest[0]))
        if named != str(rest[0]) or find(points, count) == count:
            return [named, int(count), *rest[1:]]
    return [find(points, count), *rest]


def read_own(
    view: View,
    kind: type[Fact],
    rows: list[list[str]],
    matched: Mapping[str, str],
    coming: frozenset[str],
) -> tuple[list[Plain], list[Say]]:
    """Reads the rows under a header; gives plain values and what is wrong with them, by line.

    `matched`: the column of each field ("due", "lines.0"); `coming`: keys of what comes in
    together with it.
    """
    reader = _Reader(view, kind, rows, matched)
    problems: list[Say] = []
    for line, row in enumerate(rows[1:], 2):
        if any(cell.strip() for cell in row):
            problems += [say("line {n}: {what}", n=line, what=w) for w in reader.take(line, row)]
    values = []
    for number, value in reader.values.items():
        if view.get(kind, number) is None:
            name_new(kind, value)
        made = build_sound(kind.kind, value, view, coming)
        if isinstance(made, list):
            line = reader.lines[number]
            problems += [say("line {n}: {what}", n=line, what=one) for one in made]
        values.append(value)
    return values, problems


def name_new(kind: type[Fact], value: Plain) -> None:
    """Names a new thing that has but a name or a description by it; one with neither by number."""
    fields = fields_by_name(kind)
    wanted = [name for name in NAMES if name in fields and fields[name].must]
    known = next((value[name] for name in wanted if value.get(name)), value["id"])
    for name in wanted:
        value[name] = value.get(name) or known


class _Reader:
    """Puts rows together: by the number, which the first row of a thing says or gets."""

    def __init__(
        self, view: View, kind: type[Fact], rows: list[list[str]], matched: Mapping[str, str]
    ) -> None:
        self.view, self.kind, self.find = view, kind, find_by_name(view)
        self.header = name_columns([name.strip() for name in rows[0]])
        place = {name: n for n, name in enumerate(self.header)}
        slots = {slot.key: slot for slot in list_slots(kind)}
        self.columns = [
            (slots[key], place[name])
            for key, name in matched.items()
            if key in slots and name in place
        ]
        self.month_first = self._find_order(rows[1:])
        self.values: dict[str, Plain] = {}
        self.lines: dict[str, int] = {}  # where each of them begins
        self.rows: dict[tuple[str, str], Rows] = {}  # of list fields, by number and field

    def _find_order(self, rows: list[list[str]]) -> bool:
        """Finds whether 12/1/2026 is in December: as the whole file has it, else as the shop.

        Where every day could be either, they are what lies nearer to the file's plain days.
        """
        found = [m for row in rows for cell in row if (m := SLASHED.match(cell.strip()))]
        if any(int(m[1]) > 12 for m in found):
            return False
        if any(int(m[2]) > 12 for m in found):
            return True
        plain = [
            date.fromisoformat(m[0])
            for row in rows
            for cell in row
            if (m := ISO.match(read_time(cell.strip()))) and not SLASHED.match(cell.strip())
        ]
        if not plain or not found:
            return are_in_inches()
        away: dict[bool, int] = {
            first: sum(abs((_make_day(m, month_first=first) - plain[0]).days) for m in found)
            for first in (True, False)
        }
        return away[True] < away[False]

    def take(self, line: int, row: list[str]) -> list[Say]:
        """Takes one row; gives what is wrong with it."""
        if len(row) > len(self.header):
            return [say("{n} {n|value|values}, wanted: {wanted}", n=len(row),
                        wanted=len(self.header))]  # fmt: skip
        cells = {
            slot.key: (slot, free_cell(row[n].strip())) for slot, n in self.columns if n < len(row)
        }
        number = self._find_number(cells)
        begun = number in self.values
        if not begun:
            before = self.view.get(self.kind, number)
            self.values[number] = (to_plain(before) if before else {}) | {"id": number}
            self.lines[number] = line
        return self._add(number, cells, begun=begun)

    def _find_number(self, cells: Cells) -> str:
        """Finds the number of a row's thing: as it says, by its name, or the next free one."""
        _, said = cells.get("id", (None, ""))
        if number := said.removeprefix("#").strip():
            return number
        _, name = cells.get("name", (None, ""))
        if name and (found := find_fact(self.kind, name, self.view)):
            return found.id
        return propose_number(self.kind, self.view, self.values)

    def _add(
        self, number: str, cells: Mapping[str, tuple[Slot, str]], *, begun: bool
    ) -> list[Say]:
        """Adds what a row says; a thing that stands in several rows is the same in each."""
        value, wrong, lists = self.values[number], list[Say](), dict[str, dict[int, object]]()
        for key, (slot, text) in cells.items():
            name, _, column = key.partition(".")
            if column:
                lists.setdefault(name, {})[int(column)] = self._read_cell(slot.field, text)
            elif text and key != "id":
                now = self._read_cell(slot.field, text)
                if begun and value.get(name) != now:
                    wrong.append(say("{field} differs from line {n}", field=slot.label,
                                     n=self.lines[number]))  # fmt: skip
                value[name] = now
        for name, given in lists.items():
            field = fields_by_name(self.kind)[name]
            row = tuple(
                given.get(n, 1 if column.counts else column.start)
                for n, column in enumerate(field.columns)
            )
            self.rows[number, name] = (*self.rows.get((number, name), ()), row)
            value[name] = from_rows(field, self.rows[number, name])
        return wrong

    def _read_cell(self, field: FactField, text: str) -> object:
        if field.points:
            return self.find(field.points, text)
        if field.about.written in ("time", "day"):
            ends = find_shop(self.view).day_ends
            time = read_time(self._turn(text), ends=ends)
            return time if field.about.written == "time" else time[:10]
        if not field.name:  # a column of a list that has no name of its own
            return read_scalar(field.of, text, field.about.unit)
        return read_value(field, text)

    def _turn(self, text: str) -> str:
        """Writes a day with strokes as a year, a month and a day; any other text as it is."""
        match = SLASHED.match(text)
        if match is None:
            return text
        try:
            day = _make_day(match, month_first=self.month_first)
        except ValueError:  # it is told with its line
            return text
        return f"{day.isoformat()}{text[match.end() :]}"


def _make_day(match: re.Match[str], *, month_first: bool) -> date:
    """Makes the day of a text with strokes. Raises ValueError where there is no such day."""
    first, second, year = (int(n) for n in match.groups())
    month, day = (first, second) if month_first else (second, first)
    return date(year if year > 99 else 2000 + year, month, day)
