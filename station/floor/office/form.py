"""One form for every fact: choose a field, give its value, save the whole of it."""

from dataclasses import replace
from datetime import date, timedelta

from station.floor.office import lines
from station.floor.office.acts import SetFact
from station.floor.office.lists import (
    FIELDS,
    LISTS,
    find_chosen,
    find_chosen_field,
    find_fact,
    find_list,
    find_page,
    find_value,
    give_value,
    list_facts,
    name_press,
    offer_things,
    propose_number,
    read_row,
    say_one,
)
from station.floor.office.sound import (
    EXAMPLES,
    find_wrong_beside_others,
    find_wrong_number,
    find_wrong_value,
)
from station.floor.office.work import OfficeHand, OfficeWork
from station.queries.settings import find_shop
from station.shop.acts import attention, good, notice, refuse
from station.shop.codes import Code
from station.shop.facts import KINDS, Fact, Revision, Shop
from station.shop.field_texts import read_day, read_time, read_value
from station.shop.fields import FactField, fields_by_name, list_starts, typed_fields
from station.shop.plain import to_plain
from station.shop.rooms import Do, Input, Number, Took, Typed
from station.shop.times import is_time
from station.shop.views import View
from station.shop.words import Say, say

SMALL = 50  # a number below it steps by a tenth, a larger one by one
LISTED = say("Give one that is in its list, or add it there first.")


def open_fact(hand: OfficeHand, fact: Fact) -> Took:
    """Opens the form of a fact that is there."""
    of = next(one for one in LISTS if isinstance(fact, one.kind))
    work = OfficeWork(list=of.kind.kind, chosen=fact.id, form={})
    return Took(
        replace(hand, work=work),
        good(say_one(of.one, fact.id), say("Touch a field, type, save.")),
    )


def open_new(hand: OfficeHand, view: View) -> Took:
    """Opens the form of a new fact, its number proposed."""
    of = find_list(hand)
    if of.kind is Shop:
        return Took(hand, refuse(say("There is one shop"), say("Touch its row to change it.")))
    form = _propose(hand, view)
    fresh = replace(hand, work=replace(hand.work, chosen="", form=form, page=0))
    first = choose_field(fresh, typed_fields(of.kind)[1], view)
    said = say("{what} {id}, new", what=of.one, id=str(form.get("id", "")))
    return Took(first.hand, good(said, first.answer.do))


def _propose(hand: OfficeHand, view: View) -> dict[str, object]:
    """Proposes what a new thing of the open list has: its number, and today where it begins so."""
    kind = find_list(hand).kind
    number = {} if kind is Revision else {"id": propose_number(kind, view)}
    today = {f.name: hand.now[:10] for f in typed_fields(kind) if f.about.starts_today}
    return {**number, **today}


def leave(hand: OfficeHand, view: View) -> Took | None:
    """Leaves what is open: a question for its form, a form or a question for its list."""
    work = hand.work
    if work.ask and work.form is not None:
        field = work.field if work.ask == "lines" else ""  # the next one follows it
        after = OfficeWork(list=work.list, chosen=work.chosen, form=work.form, field=field,
                           page=find_page(find_list(hand).kind, field))  # fmt: skip
        said = good(say("Left as it was"), say("Touch a field, type, save."))
        return Took(replace(hand, work=after), said)
    if work.form is None and work.ask in ("", "missing"):
        return None
    said = good(find_list(hand).words, say("Touch a row, or add a new one."))
    if has_typed(hand, view):
        said = notice(say("What was typed is not saved"), say("Touch a row, or add a new one."))
    return Took(replace(hand, work=OfficeWork(list=work.list)), said)


def has_typed(hand: OfficeHand, view: View) -> bool:
    """Says whether the open form holds anything but what is proposed for a new thing."""
    form = hand.work.form or {}
    proposed = {} if hand.work.chosen else _propose(hand, view)
    return any(value != proposed.get(name) for name, value in form.items())


def handle_input(hand: OfficeHand, given: Input, view: View) -> Do | Took | None:
    """Takes one input while a form is open."""
    if isinstance(given, Typed | Number):
        return _take_text(hand, given.text, view)
    name = name_press(given)
    if (row := read_row(name)) is not None:
        fields = typed_fields(find_list(hand).kind)
        place = hand.work.page * FIELDS + row
        if place >= len(fields):
            return Took(hand, refuse(say("There is no field in that row"), say("Touch a field.")))
        return choose_field(hand, fields[place], view)
    if name == "next_field":
        return _choose_next(hand, view)
    if name in ("more", "fewer"):
        return _step_value(hand, 1 if name == "more" else -1, view)
    if name == "save":
        return save_fact(hand, view)
    return _scan_thing(hand, given, view) if isinstance(given, Code) else None


def choose_field(hand: OfficeHand, field: FactField, view: View) -> Took:
    """Chooses the field that the next input goes to; a list opens."""
    if field.name == "id" and find_chosen(hand, view):
        return Took(hand, refuse(say("Its number stays as it is"), say("Touch another field.")))
    if field.columns:
        return lines.open_rows(hand, field, view)
    do = say("{field}: type it and press Enter.", field=field.label)
    if example := EXAMPLES.get(field.about.written):
        do = say("{field}: type it as {example}.", field=field.label, example=example)
    if offer_things(field, view):
        do = say("{field}: touch one, or type it.", field=field.label)
    after = replace(hand, work=replace(hand.work, field=field.name))
    return Took(after, good(say("{field}", field=field.label), do))


def _choose_next(hand: OfficeHand, view: View) -> Took:
    """Chooses the next field in turn; the number of a fact that is there is left out."""
    every, now = typed_fields(find_list(hand).kind), find_chosen_field(hand)
    fields = every[1:] if find_chosen(hand, view) else every
    field = fields[(fields.index(now) + 1) % len(fields)] if now in fields else fields[0]
    page = every.index(field) // FIELDS
    return choose_field(replace(hand, work=replace(hand.work, page=page)), field, view)


def _take_text(hand: OfficeHand, text: str, view: View) -> Took:
    """Gives a typed text to the field that is chosen."""
    field = find_chosen_field(hand)
    if field is None:
        return Took(hand, refuse(say("No field is chosen"), say("Touch a field first.")))
    if field.points and (found := find_fact(field.points, text, view)):
        text = found.id
    elif field.points and text.strip():
        said = say("There is no {field} {text}", field=field.label, text=text)
        return Took(hand, refuse(said, LISTED))
    value = read_value(field, text)
    if field.about.written == "time":
        value = read_time(text, hand.now, find_shop(view).day_ends)
    if field.about.written == "day":
        value = read_day(text, hand.now)
    kind = find_list(hand).kind
    if field.name == "id" and (wrong := find_wrong_number(kind, text.strip())):
        own = say("Type another; a name of your own goes into the name.")
        again = own if "name" in fields_by_name(kind) else say("Type another.")
        return Took(hand, refuse(wrong, again))
    if wrong := find_wrong_value(field, value):
        return Took(hand, refuse(wrong, say("{field}: type it again.", field=field.label)))
    done = give_value(hand, field, value, view)
    if beside := find_wrong_beside(done.hand, view):
        return Took(done.hand, attention(beside, say("Change one of them, then save.")))
    return _go_down(done)


def find_wrong_beside(hand: OfficeHand, view: View) -> Say | None:
    """Finds what is wrong with the given values beside each other; None: nothing yet."""
    kind, before = find_list(hand).kind, find_chosen(hand, view)
    known = to_plain(before) if before else {}
    return find_wrong_beside_others(kind, known | (hand.work.form or {}))


def _go_down(done: Took) -> Took:
    """Goes down the form: the field after this one is chosen, unless it is a list."""
    hand: OfficeHand = done.hand
    fields = typed_fields(find_list(hand).kind)
    place = [field.name for field in fields].index(hand.work.field) + 1
    if place >= len(fields) or fields[place].columns:
        return done
    after = replace(hand, work=replace(hand.work, field=fields[place].name, page=place // FIELDS))
    next_ = say("Next: {field}. Type it, or save.", field=fields[place].label)
    return Took(after, good(done.answer.said, next_))


def _scan_thing(hand: OfficeHand, code: Code, view: View) -> Took | None:
    """Fills the field that points at such things with the one whose card was scanned.

    What is the code of no known thing is a number of the shop's own that happens to read as one.
    """
    field = find_chosen_field(hand)
    points = field.points if field else None
    if field and points and points.kind == code.kind and view.get(points, code.number):
        return give_value(hand, field, code.number, view)
    known = KINDS.get(code.kind)
    if field and field.of is str and known and view.get(known, code.number) is None:
        return _take_text(hand, str(code), view)
    return None


def can_step(field: FactField) -> bool:
    """Says whether “one more” and “one less” change a field."""
    few = bool(field.choices or field.points) or field.about.written == "time"
    return few or field.of in (int, float, bool)


def _step_value(hand: OfficeHand, by: int, view: View) -> Took:
    field = find_chosen_field(hand)
    if field is None or not can_step(field):
        return Took(hand, refuse(say("That is typed"), say("Choose a field and type.")))
    return give_value(hand, field, _find_beside(field, hand, by, view), view)


def _find_beside(field: FactField, hand: OfficeHand, by: int, view: View) -> object:
    """Finds the value after or before the one that stands there."""
    value = find_value(hand, field, view)
    if isinstance(value, bool):
        return not value
    if field.choices:
        return _turn_choice(field.choices, str(value), by)
    if field.points:
        return _turn_choice(tuple(f.id for f in list_facts(field.points, view)), str(value), by)
    if field.about.written == "time":
        return move_by_days(str(value), hand.now, by, view)
    number = value if isinstance(value, int | float) else 0
    if field.of is int:
        return int(number) + by
    return round(number + by * (1.0 if abs(number) >= SMALL else 0.1), 3)


def _turn_choice(choices: tuple[str, ...], value: str, by: int) -> str:
    if not choices:
        return value
    if value not in choices:
        return choices[0 if by > 0 else -1]
    return choices[(choices.index(value) + by) % len(choices)]


def move_by_days(value: str, now: str, by: int, view: View) -> str:
    """Moves a time by days, never before today, at the same hour; the first is today."""
    shop = find_shop(view)
    if not is_time(value):
        return f"{now[:10]}T{shop.day_ends}:00"
    day = date.fromisoformat(value[:10]) + timedelta(days=by)
    return f"{max(day.isoformat(), now[:10])}{value[10:]}"


def save_fact(hand: OfficeHand, view: View) -> Do | Took:
    """Saves what was given over what was there, as one fact."""
    form, kind, before = hand.work.form, find_list(hand).kind, find_chosen(hand, view)
    if not form:
        return Took(hand, refuse(say("Nothing was typed"), say("Choose a field and type.")))
    value = (to_plain(before) if before else list_starts(kind)) | form
    if kind is Revision and not before:
        value["id"] = Revision.id_of(str(value.get("cut_file", "")), str(value.get("letter", "")))
    number = str(value.get("id", ""))
    if not before and view.get(kind, number):
        return Took(
            hand,
            refuse(say("Number {id} is taken", id=number), say("Give it another number.")),
        )
    work = replace(hand.work, form=None, chosen="", field="", page=0)
    if not before:  # what is new stays open
        work = replace(work, form={}, chosen=number)
    after = replace(hand, work=work)
    return Do(f"{kind.kind}/{number}", SetFact(of=kind.kind, value=value), after)
