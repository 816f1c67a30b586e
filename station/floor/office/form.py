"""One form for every fact: choose a field, give its value, save the whole of it."""

from dataclasses import replace
from datetime import date, timedelta

from station.floor.office import lines
from station.floor.office.fields import (
    CHOICES,
    COLUMNS,
    LISTS,
    POINTS,
    TIMES,
    a_time,
    from_text,
    is_time,
    label,
    typed_fields,
)
from station.floor.office.state import (
    FIELDS,
    chosen,
    everything,
    find,
    form_of,
    list_of,
    next_number,
    page_of,
    pressed,
    row_of,
)
from station.floor.office.values import given_value, value_now
from station.queries.settings import find_shop
from station.shop.acts import good, refuse
from station.shop.codes import Code
from station.shop.facts import Fact, Revision, Shop
from station.shop.plain import field_types, to_plain
from station.shop.rooms import Do, Hand, Input, Number, Took, Typed, plain_do
from station.shop.views import View
from station.shop.words import say

SMALL = 50  # a number below it steps by a tenth, a larger one by one
LISTED = say("Give one that is in its list, or add it there first.")


def open_fact(hand: Hand, fact: Fact) -> Took:
    """The form of a fact that is there."""
    index = next(n for n, entry in enumerate(LISTS) if isinstance(fact, entry.kind))
    work = {"list": index, "chosen": fact.id, "form": {}, "page": 0}
    return Took(
        replace(hand, work=work),
        good(
            say("{what} {id}", what=LISTS[index].one, id=fact.id),
            say("Touch a field, type, save."),
        ),
    )


def new(hand: Hand, view: View) -> Took:
    """The form of a new fact, its number proposed."""
    entry = list_of(hand)
    if entry.kind is Shop:
        return Took(hand, refuse(say("There is one shop"), say("Touch its row to change it.")))
    form = {} if entry.kind is Revision else {"id": next_number(entry.kind, view)}
    fresh = hand.with_work(chosen="", form=form, page=0)
    first = choose(fresh, typed_fields(entry.kind)[1], view)
    said = say("{what} {id}, new", what=entry.one, id=str(form.get("id", "")))
    return Took(first.hand, good(said, first.answer.do))


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """One input while a form is open."""
    if isinstance(given, Typed | Number):
        return _text(hand, given.text, view)
    name = pressed(given)
    if (row := row_of(name)) is not None:
        names = typed_fields(list_of(hand).kind)
        place = page_of(hand) * FIELDS + row
        if place >= len(names):
            return Took(hand, refuse(say("There is no field in that row"), say("Touch a field.")))
        return choose(hand, names[place], view)
    if name == "next_field":
        return _next(hand, view)
    if name in ("more", "fewer"):
        return _step_value(hand, 1 if name == "more" else -1, view)
    if name == "save":
        return save(hand, view)
    return _scan(hand, given, view) if isinstance(given, Code) else None


def choose(hand: Hand, name: str, view: View) -> Took:
    """The field that the next input goes to; a list opens."""
    if name == "id" and chosen(hand, view):
        return Took(hand, refuse(say("Its number stays as it is"), say("Touch another field.")))
    if (list_of(hand).kind, name) in COLUMNS:
        return lines.start(hand, name, view)
    return Took(
        hand.with_work(field=name),
        good(
            say("{field}", field=label(name)),
            say("{field}: type it and press Enter.", field=label(name)),
        ),
    )


def _next(hand: Hand, view: View) -> Took:
    """The next field in turn; the number of a fact that is there is left out."""
    names = typed_fields(list_of(hand).kind)
    names = names[1:] if chosen(hand, view) else names
    now = str(hand.work.get("field", ""))
    name = names[(names.index(now) + 1) % len(names)] if now in names else names[0]
    place = typed_fields(list_of(hand).kind).index(name)
    return choose(hand.with_work(page=place // FIELDS), name, view)


def _text(hand: Hand, text: str, view: View) -> Took:
    """A typed text goes to the field that is chosen."""
    field, kind = str(hand.work.get("field", "")), list_of(hand).kind
    if not field:
        return Took(hand, refuse(say("No field is chosen"), say("Touch a field first.")))
    if (kind, field) in POINTS and (found := find(POINTS[kind, field], text, view)):
        text = found.id
    elif (kind, field) in POINTS and text.strip():
        return Took(
            hand,
            refuse(say("There is no {field} {text}", field=label(field), text=text), LISTED),
        )
    if (kind, field) in TIMES:
        shop = find_shop(view)
        done = given_value(hand, field, a_time(text, hand.now, shop.day_ends), view)
    else:
        done = given_value(hand, field, from_text(kind, field, text), view)
    return _and_next(done)


def _and_next(done: Took) -> Took:
    """Typed down the form: the field after this one is chosen, unless it is a list."""
    names, kind = typed_fields(list_of(done.hand).kind), list_of(done.hand).kind
    place = names.index(str(done.hand.work["field"])) + 1
    if place >= len(names) or (kind, names[place]) in COLUMNS:
        return done
    hand = done.hand.with_work(field=names[place], page=place // FIELDS)
    next_ = say("Next: {field}. Type it, or save.", field=label(names[place]))
    return Took(hand, good(done.answer.said, next_))


def _scan(hand: Hand, code: Code, view: View) -> Took | None:
    """A thing's own card fills the field that points at such things."""
    field, kind = str(hand.work.get("field", "")), list_of(hand).kind
    points = POINTS.get((kind, field))
    if points and points.kind == code.kind and view.get(points, code.number):
        return given_value(hand, field, code.number, view)
    return None


def steps(kind: type[Fact], field: str) -> bool:
    """Whether “one more” and “one less” change a field."""
    numbers = field_types(kind).get(field) in (int, float, bool) and field != "id"
    return numbers or any((kind, field) in table for table in (CHOICES, POINTS, TIMES))


def _step_value(hand: Hand, by: int, view: View) -> Took:
    field, kind = str(hand.work.get("field", "")), list_of(hand).kind
    if not field or not steps(kind, field):
        return Took(hand, refuse(say("That is typed"), say("Choose a field and type.")))
    return given_value(hand, field, _stepped(kind, field, hand, by, view), view)


def _stepped(kind: type[Fact], field: str, hand: Hand, by: int, view: View) -> object:
    """The value after or before the one that stands there."""
    value = value_now(hand, field, view)
    if isinstance(value, bool):
        return not value
    if (kind, field) in CHOICES:
        return _turned(CHOICES[kind, field], str(value), by)
    if (kind, field) in POINTS:
        return _turned(tuple(f.id for f in everything(POINTS[kind, field], view)), str(value), by)
    if (kind, field) in TIMES:
        return another_day(str(value), hand.now, by, view)
    number = value if isinstance(value, int | float) else 0
    if field_types(kind)[field] is int:
        return int(number) + by
    return round(number + by * (1.0 if abs(number) >= SMALL else 0.1), 3)


def _turned(choices: tuple[str, ...], value: str, by: int) -> str:
    if not choices:
        return value
    if value not in choices:
        return choices[0 if by > 0 else -1]
    return choices[(choices.index(value) + by) % len(choices)]


def another_day(value: str, now: str, by: int, view: View) -> str:
    """The same hour a day later or sooner, never before today; the first is today."""
    shop = find_shop(view)
    if not is_time(value):
        return f"{now[:10]}T{shop.day_ends}:00"
    day = date.fromisoformat(value[:10]) + timedelta(days=by)
    return f"{max(day.isoformat(), now[:10])}{value[10:]}"


def save(hand: Hand, view: View) -> Do | Took:
    """What was given over what was there, as one fact."""
    form, kind, before = form_of(hand), list_of(hand).kind, chosen(hand, view)
    if not form:
        return Took(hand, refuse(say("Nothing was typed"), say("Choose a field and type.")))
    value = (to_plain(before) if before else {}) | form
    if kind is Revision and not before:
        value["id"] = Revision.id_of(str(value.get("cut_file", "")), str(value.get("letter", "")))
    if not before and view.get(kind, str(value.get("id", ""))):
        return Took(
            hand,
            refuse(say("Number {id} is taken", id=value["id"]), say("Give it another number.")),
        )
    new = {} if before else {"form": {}, "chosen": str(value.get("id", ""))}
    after = hand.with_work(**{"form": None, "chosen": None, "field": None, "page": 0, **new})
    subject = f"{kind.kind}/{value.get('id', '')}"
    return plain_do("set_fact", subject, {"kind": kind.kind, "value": value}, after)
