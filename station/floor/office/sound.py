"""What makes a fact sound beyond its types: what it points at is there, its values make sense.

What holds for one field stands at that field, in its `About`. Every problem is said at once, for
a form as for a line of a file.
"""

from collections.abc import Iterator, Mapping

from station.floor.office.lists import name_thing
from station.floor.office.retiring import find_use
from station.queries.runs import find_work, name_run
from station.shop.codes import LETTERS, SURE, has_code
from station.shop.facts import Fact, Material, Order, Product, Purchase, Push, Revision, Shop
from station.shop.facts.about import LARGEST
from station.shop.field_texts import to_rows
from station.shop.fields import FactField, fields_by_name
from station.shop.limits import is_written
from station.shop.plain import find_misfit, to_plain
from station.shop.views import View
from station.shop.words import Say, figure, say

MOST_TOLD = 24  # characters of what was typed wrong
EXAMPLES = {"time": "2026-11-25 14:00", "day": "2026-11-25", "clock": "14:00", "letter": "A"}


LOW_ABOVE_HIGH = say("The lower limit is above the upper one")
OUTSIDE = say("The thickness itself is outside its limits")
NONE_COMING: frozenset[str] = frozenset()


def find_problems(fact: Fact, view: View, coming: frozenset[str] = NONE_COMING) -> list[Say]:
    """Finds everything about a fact that cannot be, each as a sentence.

    `coming`: keys of what comes in together with it, and so can be pointed at.
    """
    plain = to_plain(fact)
    fields = [(field, plain[name]) for name, field in fields_by_name(type(fact)).items()]
    return [
        *_check_number(fact),
        *(
            problem
            for field, value in fields
            for problem in _check_text(field, value, view, coming)
        ),
        *(problem for field, value in fields for problem in _check_amount(field, value)),
        *(
            problem
            for field, value in fields
            for problem in _check_rows(field, value, view, coming)
        ),
        *_check_whole(fact, view),
        *_check_retiring(fact, view),
    ]


def _check_number(fact: Fact) -> Iterator[Say]:
    """Checks its number, which is printed as a code."""
    if wrong := find_wrong_number(type(fact), fact.id):
        yield wrong


def _check_text(
    field: FactField, value: object, view: View, coming: frozenset[str]
) -> Iterator[Say]:
    """Checks a time, and what a field points at."""
    yield from _check_written(field, value)
    text = str(value)
    if field.points and (value or not field.about.may_be_empty):
        yield from _check_there(field.points, text, view, coming)


def _check_written(field: FactField, value: object) -> Iterator[Say]:
    """Checks how a time, a day or an hour is written."""
    about, text = field.about, str(value)
    if (value or about.given) and not is_written(about.written, text):
        if about.written in ("time", "day") and any(c.isdecimal() for c in text):
            yield say("{field}: there is no {text}; write it as {example}", field=field.label,
                      text=text[:MOST_TOLD], example=EXAMPLES[about.written])  # fmt: skip
            return
        yield say("{field}: write it as {example}", field=field.label,
                  example=EXAMPLES[about.written])  # fmt: skip


def _check_there(kind: type[Fact], id: str, view: View, coming: frozenset[str]) -> Iterator[Say]:
    if view.get(kind, id) is None and f"{kind.kind}/{id}" not in coming:
        yield say("There is no {kind} {id}", kind=kind.kind, id=id or "without a number")


def _check_amount(field: FactField, value: object) -> Iterator[Say]:
    """Checks a number against its limits."""
    above, least, most = field.about.above, field.about.least, field.about.most
    if not isinstance(value, int | float):
        return
    if above is not None and value <= above:
        yield say("{field} must be above {limit}", field=field.label, limit=figure(above))
    if least is not None and value < least:
        yield say("{field} cannot be below {limit}", field=field.label, limit=figure(least))
    most = LARGEST if most is None else most
    if value > most:
        yield say("{field} cannot be above {limit}", field=field.label, limit=figure(most))


def find_wrong_number(kind: type[Fact], number: str) -> Say | None:
    """Finds why a number cannot stand on this kind's cards; None: it can, or it has none."""
    if kind.kind not in LETTERS or has_code(kind.kind, number):
        return None
    return say(
        "Number {id} cannot be printed as a code: letters A to Z, digits and dashes, at most "
        "{most}",
        id=number,
        most=SURE,
    )


def find_wrong_value(field: FactField, value: object) -> Say | None:
    """Finds what a typed value cannot be for its field alone; None: it can be."""
    if wrong := find_misfit(field, value):
        return wrong
    about = field.about
    found = (*_check_written(field, value), *_check_amount(field, value))
    return found[0] if found and (value or not about.may_be_empty) else None


def find_wrong_beside_others(kind: type[Fact], plain: Mapping[str, object]) -> Say | None:
    """Finds what is wrong with values beside each other, as far as all of them are given."""
    limits = {
        Material: ("low_mm", "thickness_mm", "high_mm"),
        Shop: ("chip_low_mm", "", "chip_high_mm"),
    }.get(kind)
    if limits is None:
        return None
    given = [plain.get(name) for name in limits]
    low, nominal, high = (n if isinstance(n, int | float) else None for n in given)
    if low is not None and high is not None and low > high:
        return LOW_ABOVE_HIGH
    if nominal is None:
        return None
    if (low is not None and nominal < low) or (high is not None and nominal > high):
        return OUTSIDE
    return None


def _check_rows(
    field: FactField, value: object, view: View, coming: frozenset[str]
) -> Iterator[Say]:
    """Checks every row of a list: what it points at is there, once, and at least one of it."""
    if not field.columns:
        return
    rows, first = to_rows(field, value), field.columns[0]
    if first.points:
        for row in rows:
            yield from _check_there(first.points, str(row[0]), view, coming)
    firsts = [row[0] for row in rows]
    if first.of is str and len(set(firsts)) < len(firsts):
        yield say("{field} names one thing twice", field=field.label)
    counts = [n for n, column in enumerate(field.columns) if column.counts]
    if any(isinstance(count := row[n], int) and count < 1 for row in rows for n in counts):
        yield say("{field}: each quantity is 1 or more", field=field.label)


def _check_whole(fact: Fact, view: View) -> Iterator[Say]:
    """Checks limits that are limits, an order with lines and a due time, a product with parts."""
    if wrong := find_wrong_beside_others(type(fact), vars(fact)):
        yield wrong
    if isinstance(fact, Order) and not fact.lines:
        yield say("An order needs at least one line")
    if isinstance(fact, Order) and not fact.due:
        yield say("An order needs a due time")
    if isinstance(fact, Product) and not fact.parts:
        yield say("A product needs at least one part")
    yield from _check_buying(fact)
    if isinstance(fact, Revision):
        if fact.id != (right := Revision.id_of(fact.cut_file, fact.letter)):
            yield say("The number of this revision is {id}", id=right)
        yield from _check_runs(fact, view)


def _check_buying(fact: Fact) -> Iterator[Say]:
    """Checks what is on its way, an own push, and the hours that are worked."""
    if isinstance(fact, Purchase) and len(list(filter(None, fact.things))) != 1:
        yield say("Name one thing that is on its way: a material, a bit size or a mailer")
    if isinstance(fact, Push) and fact.ends and fact.ends[:10] < fact.begins[:10]:
        yield say("It ends before it begins")
    if isinstance(fact, Push) and not fact.begins:
        yield say("An own push needs the day on which it begins")
    if isinstance(fact, Shop) and any(
        not begins or begins >= ends for begins, ends in fact.breaks
    ):
        yield say("A break ends after it begins")


def _check_retiring(fact: Fact, view: View) -> Iterator[Say]:
    """Checks that what is to be retired is in use for nothing, and names nothing retired anew."""
    if use := find_use(fact, view):
        yield say("{thing} is still in use: {use}", thing=name_thing(fact), use=use)
    before = view.get(type(fact), fact.id)
    for kind, number in _list_pointed(fact) - (_list_pointed(before) if before else set()):
        pointed = view.get(kind, number)
        if fact.in_use and pointed and not pointed.in_use:
            thing = name_thing(pointed)
            yield say("{thing} is retired: bring it back first, or name another", thing=thing)


def _list_pointed(fact: Fact) -> set[tuple[type[Fact], str]]:
    """Lists what a fact's fields point at: its kind and its number."""
    plain, found = to_plain(fact), set[tuple[type[Fact], str]]()
    for name, field in fields_by_name(type(fact)).items():
        if field.points:
            found.add((field.points, str(plain[name])))
        elif field.columns and (of := field.columns[0].points):
            found |= {(of, str(row[0])) for row in to_rows(field, plain[name])}
    return found


def _check_runs(fact: Revision, view: View) -> Iterator[Say]:
    """Checks its runs: of the same material, and none that cuts parts out of its own sheets."""
    for each in fact.runs:
        run = view.get(Revision, each)
        if run is None or each == fact.id:
            continue
        if find_work(view, run) == "parts":
            yield say("{run} cuts parts out of a sheet of its own: it is no run",
                      run=name_run(view, run))  # fmt: skip
        if run.material != fact.material:
            yield say("{run} is for another material", run=name_run(view, run))
