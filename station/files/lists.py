"""The office's lists as CSV files, out and in: columns by their names, problems told by line.

A file tells by its columns which list it is. They may stand in any order; one that is not
there leaves what is known as it is, or takes the default, so a file that an older program
wrote can still be read; one that the list does not have is named. A shop's own file has columns
of its own: what somebody said of them is kept (`own_columns`). Spreadsheets part columns by
comma, semicolon or tab, and write decimals with a comma where their language does: all are read.
"""

import csv
import hashlib
import io
import re
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import NamedTuple

from station.files.own_columns import find_by_name, free_cell, name_columns, name_things, read_own
from station.floor.office.acts import GivenList, SetList, SetLists
from station.floor.office.lists import LISTS
from station.floor.office.matching import find_kept
from station.floor.office.rules import build_sound
from station.floor.office.sound import NONE_COMING
from station.ledger.ledger import Ledger
from station.queries.settings import find_shop
from station.shop.acts import Act, Args
from station.shop.facts import Fact
from station.shop.field_texts import read_time, read_value, write_value
from station.shop.fields import FactField, fields_by_name, typed_fields
from station.shop.plain import Plain, to_plain
from station.shop.views import View
from station.shop.words import Say, say, several

NAMES = {entry.kind.kind: entry.kind for entry in LISTS}
MOST_BYTES = 5_000_000
MOST_PROBLEMS = 200
MOST_HEADER = 5_000  # characters of a first line
EXAMPLES = 3  # rows that are shown while columns are asked
Matched = tuple[tuple[str, str], ...]  # (field, column)
FORMULA = re.compile(r"'*[=+\-@\t\r]")  # how a spreadsheet's formula begins, guarded or not
NUMBER = re.compile(r"[+-]?\d+([.,]\d+)?")


class Read(NamedTuple):
    """A file as it was read: which list, its facts as plain values, or what is wrong.

    `header` and `rows` are its columns and its first rows where nobody said yet which column is
    which; `matched` is what was said of them.
    """

    kind: type[Fact] | None
    values: tuple[Plain, ...] = ()
    problems: tuple[Say, ...] = ()
    matched: tuple[tuple[str, str], ...] = ()
    header: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


def write(ledger: Ledger, kind: type[Fact]) -> str:
    """A list as CSV text: the fields that can be typed, `id` first."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    fields = typed_fields(kind)
    table.writerow([field.name_column() for field in fields])
    for fact in ledger.facts(kind):
        plain = to_plain(fact)
        table.writerow([guard_cell(write_value(f, plain[f.name])) for f in fields])
    return out.getvalue()


def guard_cell(text: str) -> str:
    """Writes a text so that no spreadsheet takes it for a formula: a quote stands before it.

    Numbers stay numbers. What begins with quotes before such a sign gets one more, so that
    `free_cell` gives back what was there.
    """
    return f"'{text}" if FORMULA.match(text) and not NUMBER.fullmatch(text) else text


def list_names(kind: type[Fact]) -> tuple[str, ...]:
    """Lists the names of a list's columns, as they are written out."""
    return tuple(field.name_column() for field in typed_fields(kind))


def _find_columns(kind: type[Fact]) -> dict[str, tuple[str, str]]:
    """Finds the field of each column that a list can have, and the units that its name says."""
    found: dict[str, tuple[str, str]] = {}
    for field in typed_fields(kind):
        names = {units: field.name_column(units) for units in ("inch", "mm")}
        says = len({*names.values()}) > 1
        found |= {name: (field.name, units if says else "") for units, name in names.items()}
    return found


def read_together(view: View, files: Iterable[tuple[Path, type[Fact] | None]]) -> dict[Path, Read]:
    """Reads several files, each of a list or one that tells by its columns; nothing is set.

    What one of them brings another may name, whichever comes first. Raises OSError where one
    cannot be read.
    """
    chosen = tuple(files)
    first = [read_file(view, file, kind) for file, kind in chosen]
    coming = frozenset(
        f"{read.kind.kind}/{value.get('id', '')}"
        for read in first
        if read.kind
        for value in read.values
    )
    return {file: read_file(view, file, kind, coming) for file, kind in chosen}


def read_file(
    view: View,
    file: Path,
    kind: type[Fact] | None = None,
    coming: frozenset[str] = NONE_COMING,
    matched: Matched = (),
) -> Read:
    """Reads a file and checks all of it against what the shop knows; nothing is set.

    `matched`: the column of each field, where somebody said so. Raises OSError where it cannot
    be read.
    """
    if file.exists() and not file.is_file():  # reading a pipe may never end
        return _nothing(say("{file} is no plain file", file=file.name))
    if file.stat().st_size > MOST_BYTES:
        return _nothing(say("{file} is too large for a list", file=file.name))
    try:
        text = _decode(file.read_bytes())
    except UnicodeDecodeError:
        return _nothing(say("{file} is no text. Save it as CSV and try again.", file=file.name))
    return read_text(view, text, kind, coming, matched)


def _decode(data: bytes) -> str:
    """Decodes a text: UTF-8, or what spreadsheets of older systems write.

    Raises UnicodeDecodeError where it is neither.
    """
    if b"\0" in data:
        raise UnicodeDecodeError("utf-8", data, 0, 1, "it is no text")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252")


def fingerprint(files: Iterable[Path]) -> str:
    """Gives what tells whether files are as they were shown; of one that is too large its size.

    Raises OSError.
    """
    seen = hashlib.sha256()
    for file in files:
        size = file.stat().st_size
        text = file.read_bytes() if size <= MOST_BYTES else b""
        seen.update(f"{file.name} {size} ".encode() + text)
    return seen.hexdigest()[:16]


def _nothing(problem: Say) -> Read:
    return Read(None, (), (problem,))


def read_text(
    view: View,
    text: str,
    kind: type[Fact] | None = None,
    coming: frozenset[str] = NONE_COMING,
    matched: Matched = (),
) -> Read:
    """The same for a text; with a `kind` it must be that list.

    `coming`: keys of what comes in together with it, and so can be named.
    """
    rows = _rows(text)
    names = [name.strip() for name in rows[0]] if rows else []
    if kind and matched:
        return _read_matched(view, rows, kind, matched, coming)
    of = kind or _find_kind(names)
    problem = _explain_header(names, of) if of else None
    if of is None or problem:
        kept = find_kept(view, name_columns(names))
        if kept and kind in (None, NAMES[kept.id]):
            return _read_matched(view, rows, NAMES[kept.id], kept.columns, coming)
    if of is None:
        return _nothing(_say_no_list(names))._replace(
            header=name_columns(names), rows=tuple(map(tuple, rows[1 : 1 + EXAMPLES]))
        )
    return _nothing(problem) if problem else _read_rows(view, of, names, rows[1:], coming)


def _read_rows(
    view: View, of: type[Fact], names: list[str], rows: list[list[str]], coming: frozenset[str]
) -> Read:
    """Reads the rows under a header of the list's own columns."""
    values: list[Plain] = []
    problems: list[Say] = []
    seen: dict[str, int] = {}
    for number, row in enumerate(rows, 2):
        if not any(cell.strip() for cell in row):
            continue
        value, wrong = _row(view, of, names, row, coming)
        name = str(value.get("id", ""))
        if name in seen:
            wrong = [say("{id} stands in line {n} already", id=name, n=seen[name])]
        seen[name] = number
        problems += [say("line {n}: {what}", n=number, what=one) for one in wrong]
        values.append(value)
    return Read(of, tuple(values), tuple(problems[:MOST_PROBLEMS]))


def _read_matched(
    view: View,
    rows: list[list[str]],
    kind: type[Fact],
    matched: Matched,
    coming: frozenset[str],
) -> Read:
    """Reads a file of the shop's own columns, once it was said which is which."""
    values, problems = read_own(view, kind, rows, dict(matched), coming)
    return Read(kind, tuple(values), tuple(problems[:MOST_PROBLEMS]), matched)


def _find_kind(names: list[str]) -> type[Fact] | None:
    """Finds the list whose columns these are: the one that has most of them, if it is one."""
    if "id" not in names:
        return None
    shared = {kind: len({*names} & _find_columns(kind).keys()) for kind in NAMES.values()}
    most = max(shared.values())
    best = [kind for kind, count in shared.items() if count == most]
    strange = len(names) - most
    return best[0] if len(best) == 1 and most > max(1, strange) else None


def _say_no_list(names: list[str]) -> Say:
    return say(
        "line 1: “{header}” is the header of no list. Write the list out once and see.",
        header=",".join(names)[:60],
    )


def _explain_header(names: list[str], kind: type[Fact]) -> Say | None:
    """Explains what is wrong with a list's columns; None: they can be read."""
    known = _find_columns(kind)
    if strange := [name for name in names if name not in known]:
        return say(
            "line 1: this list has no column {strange}; its columns are {names}",
            strange=several([name or "without a name" for name in strange]),
            names=", ".join(list_names(kind)),
        )
    fields = [known[name][0] for name in names]
    if twice := [n for n, field in zip(names, fields, strict=True) if fields.count(field) > 1]:
        return say("line 1: column {twice} stands there twice", twice=twice[0])
    return None if "id" in names else say("line 1: the column id is missing")


def _rows(text: str) -> list[list[str]]:
    """The cells; parted by whichever sign parts the first line into the most."""
    first = text.partition("\n")[0]
    sign = max(",;\t", key=first.count)
    return list(csv.reader(io.StringIO(text), delimiter=sign))


def _row(
    view: View, kind: type[Fact], names: list[str], row: list[str], coming: frozenset[str]
) -> tuple[Plain, list[Say]]:
    """One row over what is known of it already, and what is wrong with it."""
    if len(row) != len(names):
        return {}, [say("{n} {n|value|values}, wanted: {wanted}", n=len(row), wanted=len(names))]
    columns = [_find_columns(kind)[name] for name in names]
    units = dict(columns)
    cells = {name: free_cell(text.strip()) for (name, _), text in zip(columns, row, strict=True)}
    number = cells["id"]
    before = view.get(kind, number)
    if before is None and (lost := _zeros(view, kind, number)):
        return {"id": number}, [say("{id} is {lost} here: keep its zeros", id=number, lost=lost)]
    value = to_plain(before) if before else {}
    fields = fields_by_name(kind)
    find = find_by_name(view)
    value |= {
        name: name_things(fields[name], _read_cell(view, fields[name], text, units[name]), find)
        for name, text in cells.items()
    }
    made = build_sound(kind.kind, value, view, coming)
    return value, made if isinstance(made, list) else []


def _read_cell(view: View, field: FactField, text: str, units: str) -> object:
    """Reads one cell; a day alone is its end, as the shop has it."""
    if field.about.written == "time":
        return read_time(text, ends=find_shop(view).day_ends)
    return read_value(field, text, units)


def _zeros(view: View, kind: type[Fact], number: str) -> str:
    """The number that a spreadsheet has taken the leading zeros from, or nothing."""
    longer = (number.zfill(n) for n in range(len(number) + 1, len(number) + 6))
    return next((n for n in longer if number.isdecimal() and view.get(kind, n)), "")


def read(ledger: Ledger, kind: type[Fact], file: Path, by: str, at: str, id: str) -> list[str]:
    """Takes a list in, all of it in one act or nothing; gives the problems (none: taken in)."""
    found = read_file(ledger.view, file, kind)
    if found.problems:
        return [str(p) for p in found.problems]
    args = SetList(of=kind.kind, values=found.values, matched=found.matched, approved=by)
    return _record(ledger, args, f"list/{kind.kind}", by, at, id)


def read_several(
    ledger: Ledger, files: Iterable[tuple[Path, type[Fact]]], by: str, at: str, id: str
) -> list[str]:
    """Takes several lists in together, all of them in one act or nothing; gives the problems."""
    found = read_together(ledger.view, files)
    if problems := list_problems(found):
        return [str(p) for p in problems]
    args = SetLists(lists=give_lists(found), approved=by)
    return _record(ledger, args, "list/several", by, at, id)


def list_problems(found: Mapping[Path, Read]) -> list[Say]:
    """Lists what is wrong in files that were read together, each with its file."""
    return [
        say("{file}, {what}", file=file.name, what=problem)
        for file, one in found.items()
        for problem in one.problems
    ]


def give_lists(found: Mapping[Path, Read]) -> tuple[GivenList, ...]:
    """Gives what was read as an act takes it."""
    return tuple(
        GivenList(of=one.kind.kind, values=one.values, file=file.name)
        for file, one in found.items()
        if one.kind
    )


def find_newest_lists(files: Iterable[Path]) -> tuple[Path, ...]:
    """Finds the newest file of each list among files that come newest first; others are left."""
    found: dict[type[Fact], Path] = {}
    for file in files:
        try:
            with file.open(encoding="utf-8-sig") as text:
                header = _rows(text.readline(MOST_HEADER))
        except (OSError, UnicodeDecodeError):
            continue
        if header and (kind := _find_kind([name.strip() for name in header[0]])):
            found.setdefault(kind, file)
    return tuple(found.values())


def _record(ledger: Ledger, args: Args, subject: str, by: str, at: str, id: str) -> list[str]:
    act = Act(id=id, kind=args.kind, at=at, worker=by, station=ledger.station,
              subject=subject, args=args)  # fmt: skip
    answer = ledger.record(act).answer
    return [str(answer.said)] if answer.tone == "stop" else []
