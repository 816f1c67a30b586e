"""What makes a fact sound beyond its types: what it points at is there, its values make sense.

Every problem is said at once, for a form as for a line of a file.
"""

import re
from collections.abc import Iterator

from station.floor.office.fields import (
    CLOCKS,
    COLUMNS,
    DAYS,
    MAY_BE_EMPTY,
    POINTS,
    TIMES,
    is_time,
    label,
    rows_of,
)
from station.queries.runs import find_work, name_run
from station.shop.codes import LETTERS, usable
from station.shop.facts import Fact, Material, Order, Product, Revision
from station.shop.plain import to_plain
from station.shop.views import View
from station.shop.words import Say, say

_CLOCK = re.compile(r"([01]\d|2[0-3]):[0-5]\d")
ABOVE_ZERO = ("minutes", "pace", "life_m", "diameter_mm", "length_mm", "width_mm", "thickness_mm")
NOT_BELOW_ZERO = (
    "mark", "mass_g", "extra_s", "change_s", "flat_after", "lead_days", "pack_sheets",
)  # fmt: skip


def wrong(fact: Fact, view: View) -> list[Say]:
    """Everything about a fact that cannot be, each as a sentence."""
    checks = (_number, _fields, _amounts, _lists, _limits)
    return [problem for check in checks for problem in check(fact, view)]


def _number(fact: Fact, _view: View) -> Iterator[Say]:
    """Its number is printed as a code."""
    if fact.kind not in LETTERS:
        return
    if not fact.id.isdecimal() or not fact.id.isascii():
        yield say("Its number is printed as a code: digits only, not {id}", id=fact.id)
    elif not usable(fact.kind, fact.id):
        yield say("Number {id} cannot be printed as a code: take the next one", id=fact.id)


def _fields(fact: Fact, view: View) -> Iterator[Say]:
    """Times, choices, and what a field points at."""
    kind = type(fact)
    for field, value in to_plain(fact).items():
        name, at = label(field), (kind, field)
        if at in TIMES and value and not is_time(str(value)):
            yield say("{field}: write it as 2026-11-25 14:00", field=name)
        if at in DAYS and value and not is_time(f"{value}"[:10] + "T00:00:00"):
            yield say("{field}: write it as 2026-11-25", field=name)
        if at in CLOCKS and value and not _CLOCK.fullmatch(str(value)):
            yield say("{field}: write it as 14:00", field=name)
        if at in POINTS and (value or at not in MAY_BE_EMPTY):
            yield from _there(POINTS[at], str(value), view)


def _there(kind: type[Fact], id: str, view: View) -> Iterator[Say]:
    if view.get(kind, id) is None:
        yield say("There is no {kind} {id}", kind=kind.kind, id=id or "without a number")


def _amounts(fact: Fact, _view: View) -> Iterator[Say]:
    """Sizes and counts that must be above zero, or not below it."""
    for field, value in to_plain(fact).items():
        if not isinstance(value, int | float):
            continue
        if field in ABOVE_ZERO and value <= 0:
            yield say("{field} must be above 0", field=label(field))
        if field in NOT_BELOW_ZERO and value < 0:
            yield say("{field} cannot be below 0", field=label(field))


def _lists(fact: Fact, view: View) -> Iterator[Say]:
    """Every row of a list: what it points at is there, once, and its quantity is above zero."""
    kind = type(fact)
    for of, field in COLUMNS:
        if of is not kind:
            continue
        columns = COLUMNS[of, field]
        rows = rows_of(kind, field, to_plain(fact)[field])
        if columns[0].points:
            for row in rows:
                yield from _there(columns[0].points, str(row[0]), view)
        firsts = [row[0] for row in rows]
        if columns[0].kind is str and len(set(firsts)) < len(firsts):
            yield say("{field} names one thing twice", field=label(field))
        if any(c.name == "quantity" and r[n] < 1 for r in rows for n, c in enumerate(columns)):  # type: ignore[operator]  # build has checked the types
            yield say("{field}: each quantity is 1 or more", field=label(field))


def _limits(fact: Fact, view: View) -> Iterator[Say]:
    """Limits that are limits, an order with lines and a due time, a product with parts."""
    if isinstance(fact, Material) and not fact.low_mm <= fact.high_mm:
        yield say("The lower limit is above the upper one")
    if isinstance(fact, Order) and not fact.lines:
        yield say("An order needs at least one line")
    if isinstance(fact, Order) and not fact.due:
        yield say("An order needs a due time")
    if isinstance(fact, Product) and not fact.parts:
        yield say("A product needs at least one part")
    if isinstance(fact, Revision):
        if fact.id != (right := Revision.id_of(fact.cut_file, fact.letter)):
            yield say("The number of this revision is {id}", id=right)
        yield from _runs(fact, view)


def _runs(fact: Revision, view: View) -> Iterator[Say]:
    """Its runs are on one sheet: of the same material, and no sheet's own parts but its own."""
    for each in fact.runs:
        run = view.get(Revision, each)
        if run is None or each == fact.id:
            continue
        if find_work(view, run) == "parts":
            yield say("{run} cuts parts out of a sheet of its own: it is no run",
                      run=name_run(view, run))  # fmt: skip
        if run.material != fact.material:
            yield say("{run} is for another material", run=name_run(view, run))
