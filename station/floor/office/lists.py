"""Lists what the office knows: its lists, the facts on them, what is open, how it is shown."""

from collections.abc import Container
from dataclasses import dataclass, replace

from station.floor.office.work import OfficeHand
from station.shop.acts import good
from station.shop.cards import BY_NUMBER, button
from station.shop.codes import LETTERS, Code, usable, write_touch
from station.shop.faces import Block, Cards, Entry, Face, Press
from station.shop.facts import (
    RETIRED,
    Bit,
    BitSize,
    Cart,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Material,
    Order,
    Part,
    Postage,
    Product,
    Purchase,
    Push,
    RackPlace,
    Reason,
    Revision,
    Router,
    Shop,
    Worker,
)
from station.shop.field_texts import show_scalar, to_rows
from station.shop.fields import FactField, fields_by_name, find_field, typed_fields
from station.shop.lengths import is_length, write
from station.shop.plain import lay
from station.shop.rooms import Input, Took
from station.shop.times import is_time
from station.shop.views import View
from station.shop.words import Say, clock, dated, say

ROWS = 6  # of a list on one page, each large enough to touch
LISTED = 12  # of a list of the office on one page: thin rows, for a bare finger or a mouse
FIELDS = 7  # of a form on one page
MOST = 5000  # facts of a shelf that the office looks through
ORDER_WIDTH = 4  # digits of an order's number, at least


@dataclass(frozen=True, kw_only=True)
class OfficeList:
    """Describes a list: its facts, its words, one of it, what it shows in a row."""

    kind: type[Fact]
    words: Say
    one: Say
    shows: tuple[str, ...]


LISTS: tuple[OfficeList, ...] = (
    OfficeList(kind=Order, words=say("Orders"), one=say("Order"), shows=("lines", "due", "state")),
    OfficeList(
        kind=CutFile, words=say("Cut files"), one=say("Cut file"),
        shows=("words", "name", "approved"),
    ),
    OfficeList(
        kind=Part, words=say("Parts"), one=say("Part"), shows=("words", "name", "rack", "mark")
    ),
    OfficeList(
        kind=Product, words=say("Products"), one=say("Product"), shows=("parts", "words", "name")
    ),
    OfficeList(
        kind=RackPlace, words=say("Rack places"), one=say("Rack place"), shows=("name", "part")
    ),
    OfficeList(
        kind=Material, words=say("Materials"), one=say("Material"),
        shows=("name", "low_mm", "high_mm"),
    ),
    OfficeList(
        kind=Lot, words=say("Lots"), one=say("Lot"), shows=("material", "received", "mark")
    ),
    OfficeList(
        kind=Router, words=say("Routers"), one=say("Router"), shows=("name", "bed", "pace")
    ),
    OfficeList(
        kind=Bit, words=say("Bits"), one=say("Bit"), shows=("words", "router", "life_m", "state")
    ),
    OfficeList(
        kind=Mailer, words=say("Mailers"), one=say("Mailer"),
        shows=("name", "length_mm", "width_mm"),
    ),
    OfficeList(
        kind=Postage, words=say("Postage"), one=say("Postage step"),
        shows=("name", "to_g", "price"),
    ),
    OfficeList(
        kind=BitSize, words=say("Bit sizes"), one=say("Bit size"),
        shows=("name", "mark", "lead_days"),
    ),
    OfficeList(
        kind=Purchase, words=say("On its way"), one=say("Purchase"),
        shows=("material", "quantity", "came", "expected"),
    ),
    OfficeList(
        kind=Push, words=say("Own pushes"), one=say("Own push"),
        shows=("product", "quantity", "begins"),
    ),
    OfficeList(kind=Cart, words=say("Carts"), one=say("Cart"), shows=("name", "goes", "state")),
    OfficeList(
        kind=Worker, words=say("Workers"), one=say("Worker"), shows=("supervisor", "active")
    ),
    OfficeList(kind=Reason, words=say("Reasons"), one=say("Reason"), shows=("words", "use")),
    OfficeList(
        kind=Revision, words=say("Revisions"), one=say("Revision"),
        shows=("cut_file", "material", "minutes"),
    ),
    OfficeList(
        kind=Shop, words=say("This shop"), one=say("This shop"), shows=("name", "units", "paper")
    ),
)  # fmt: skip


def name_press(given: Input) -> str:
    """Names the button that was pressed or whose card was scanned, or nothing."""
    card = (
        BY_NUMBER.get(given.number) if isinstance(given, Code) and given.kind == "button" else None
    )
    return card.name if card else ""


def read_row(name: str) -> int | None:
    """Reads the row, from 0, of a button ``row_3``."""
    return int(name[4:]) - 1 if name.startswith("row_") else None


def find_list(hand: OfficeHand) -> OfficeList:
    """Finds the list that is open."""
    return next((one for one in LISTS if one.kind.kind == hand.work.list), LISTS[0])


def list_page(hand: OfficeHand, view: View) -> tuple[Fact, ...]:
    """Lists the facts of the open list on the page that is shown."""
    rows = count_listed(hand)
    return list_shown(hand, view)[hand.work.page * rows : (hand.work.page + 1) * rows]


def count_listed(hand: OfficeHand) -> int:
    """Counts the rows of a list on one page: more where the screen is larger."""
    return max(LISTED, hand.listed)


def list_shown(hand: OfficeHand, view: View) -> tuple[Fact, ...]:
    """Lists the facts of the open list, or those of it that were searched for."""
    kind = find_list(hand).kind
    return (
        find_matching(kind, hand.work.search, view)
        if hand.work.search
        else (list_facts(kind, view))
    )


def find_matching(kind: type[Fact], text: str, view: View) -> tuple[Fact, ...]:
    """Finds the facts of a kind that have a text in their number or in any of their words."""
    wanted = text.strip().casefold()
    names = [name for name, field in fields_by_name(kind).items() if field.of is str]
    return tuple(
        fact
        for fact in list_facts(kind, view)
        if any(wanted in str(getattr(fact, name)).casefold() for name in names)
    )


def list_facts(kind: type[Fact], view: View) -> tuple[Fact, ...]:
    """Lists all facts of a kind, over the shelves they stand on."""
    return tuple(f for shelf in _list_shelves(kind, view) for f in view.shelf(kind, shelf, MOST))


def is_cut_off(kind: type[Fact], view: View) -> bool:
    """Says whether a shelf holds more facts of a kind than the office looks through."""
    return any(len(view.shelf(kind, s, MOST)) == MOST for s in _list_shelves(kind, view))


def _list_shelves(kind: type[Fact], view: View) -> list[str]:
    """Lists the shelves that facts of a kind stand on, that of the retired ones last."""
    return [*_list_shelves_in_use(kind, view), RETIRED]


def _list_shelves_in_use(kind: type[Fact], view: View) -> list[str]:
    if kind is Order:
        return ["open", "packed", "cancelled", "owed", "shipped"]
    if kind is Purchase:
        return ["coming", "came"]
    if kind is Revision:
        return [f.id for f in view.shelf(CutFile, "all", MOST)]
    if kind is Lot:
        return [m.id for m in list_facts(Material, view)]
    if kind is Bit:
        return [*(f"router/{r.id}" for r in view.shelf(Router, "all")), "good", "worn", "broken"]
    if kind is Reason:
        return [
            "spoiled",
            "sheet",
            "rework",
            "stop",
            "overrule",
            "correct",
            "repack",
            "returned",
            "mailer",
        ]
    return ["all"]


def find_chosen(hand: OfficeHand, view: View) -> Fact | None:
    """Finds the fact whose form is open."""
    return view.get(find_list(hand).kind, hand.work.chosen)


def find_fact(kind: type[Fact], text: str, view: View) -> Fact | None:
    """Finds a fact by its number, or by its name as people write it."""
    number, wanted = text.strip(), text.strip().casefold()
    if found := view.get(kind, number):
        return found
    facts = list_facts(kind, view)
    if named := next((f for f in facts if str(getattr(f, "name", "")).casefold() == wanted), None):
        return named
    if not number.isdecimal():
        return None
    counted = (f for f in facts if f.id.isdecimal())  # 2 is 002 as people write it
    return next((f for f in counted if int(f.id) == int(number)), None)


def name_fact(kind: type[Fact], id: object, view: View) -> str:
    """Names a fact for a person; by its number where it has no name or is not there."""
    fact = view.get(kind, str(id))
    return str(getattr(fact, "name", "") or id)


def say_one(one: Say, id: Say | str) -> Say:
    """Says what a thing is, with its number; of the shop there is one, without a number."""
    return one if id == "shop" else say("{kind} {id}", kind=one, id=id)


def find_page(kind: type[Fact], name: str) -> int:
    """Finds the page of a form on which a field stands."""
    names = [field.name for field in typed_fields(kind)]
    return names.index(name) // FIELDS if name in names else 0


def name_thing(fact: Fact) -> Say | str:
    """Names a thing in a sentence: by its name, or as what it is with its number."""
    one = next((o.one for o in LISTS if o.kind is type(fact)), Say(fact.kind))
    return str(getattr(fact, "name", "")) or say("{kind} {id}", kind=one, id=fact.id)


def propose_number(kind: type[Fact], view: View, taken: Container[str] = ()) -> str:
    """Proposes the number after the highest one that is in use and can be printed.

    `taken`: numbers that are given already, though nothing has them yet.
    """
    if kind.kind == "shop":
        return "shop"
    numbers = [f.id for f in list_facts(kind, view) if f.id.isdecimal()]
    if kind is Order:
        numbers = _keep_typed(numbers)
    top = max(numbers, key=int, default="00" if kind is Worker else "000")
    number = int(top)
    while True:
        number += 1
        text = str(number).zfill(len(top))
        printed = kind.kind not in LETTERS or usable(kind.kind, text)
        if printed and text not in taken and view.get(kind, text) is None:
            return text


def _keep_typed(numbers: list[str]) -> list[str]:
    """Keeps the numbers of orders that were typed, which have a range of their own from 9000.

    A list from elsewhere counts on from its own last number, which nobody here has taken then.
    Where its numbers are longer the range is too: 90000.
    """
    wide = max([ORDER_WIDTH, *map(len, numbers)])
    first = "9".ljust(wide, "0")
    return [first, *(n for n in numbers if len(n) == wide and n > first)]


# --- what stands in a field


def find_chosen_field(hand: OfficeHand) -> FactField | None:
    """Finds the field of the open form that the next input goes to."""
    return find_field(find_list(hand).kind, hand.work.field)


def find_value(hand: OfficeHand, field: FactField, view: View) -> object:
    """Finds a field's plain value: as given, else as known, else as a new fact has it."""
    if hand.work.form and field.name in hand.work.form:
        return hand.work.form[field.name]
    fact = find_chosen(hand, view)
    return lay(getattr(fact, field.name)) if fact else field.starts


def give_value(hand: OfficeHand, field: FactField, value: object, view: View) -> Took:
    """Gives a field its value, still to be saved."""
    form = {**(hand.work.form or {}), field.name: value}
    said = say("{field}: {value}", field=field.label, value=say_value(field, value, view))
    return Took(
        replace(hand, work=replace(hand.work, form=form)),
        good(said, say("Touch the next field, or save.")),
    )


def say_value(field: FactField, value: object, view: View) -> Say | str:
    """Says a field's value for a person: names for numbers, a time without its seconds."""
    if field.columns:
        return say_rows(field, value, view)
    if field.points and value:
        name = name_fact(field.points, value, view)
        return name if name == value else f"{value} · {name}"
    if isinstance(value, float) and is_length(field.about.unit):
        return write(value, field.about.unit)
    text = show_scalar(value)
    if text in field.choices or isinstance(value, bool):
        return Say(text)
    if field.about.written == "day" and is_time(f"{text}T00:00:00"):
        return dated(text)
    return say("{day} {at}", day=dated(text), at=clock(text)) if is_time(text) else text


def say_rows(field: FactField, value: object, view: View) -> str:
    """Says a list field in one line: ``2 × HC-300, 1 × ST-200``."""
    points = field.columns[0].points
    if not points:
        return "; ".join(_say_row(field, row) for row in to_rows(field, value))
    found = []
    for row in to_rows(field, value):
        name = name_fact(points, row[0], view)
        found.append(f"{row[1]} × {name}" if len(row) > 1 else name)
    return ", ".join(found)


def _say_row(field: FactField, row: tuple[object, ...]) -> str:
    shown = zip(row, field.columns, strict=False)
    return " × ".join(show_scalar(v, c.about.unit) for v, c in shown if c.about.typed)


# --- what its screens have in common

LEAVE = Press(label=say("Leave it"), code=button("put_down"))
PAGES = (
    Press(label=say("Page back"), code=button("back_page")),
    Press(label=say("Next page"), code=button("next_page")),
)
THINGS = 10  # cards of things to choose from


def make_face(
    hand: OfficeHand,
    *main: Block,
    side: tuple[Block, ...] = (),
    presses: tuple[Press, ...] = (LEAVE,),
    weights: tuple[int, int, int] = (71, 0, 29),
) -> Face:
    """Makes a screen of the office."""
    return Face(
        title=say("Office"),
        where=find_list(hand).words,
        main=main,
        side=side,
        presses=presses,
        weights=weights,
    )


def offer_things(field: FactField, view: View) -> Cards | None:
    """Offers the things that a field can point at, or the words that it can hold, as cards."""
    if field.points:
        return list_cards(field.points, view)
    words = ("yes", "no") if field.of is bool else field.choices
    title = say("Type or touch one")
    entries = tuple(Entry(big=Say(word), code=word) for word in words)
    return Cards(title=title, entries=entries) if words else None


def list_cards(kind: type[Fact], view: View) -> Cards:
    """Lists the things of a kind that are in use, as cards to touch."""
    found = [f for f in list_facts(kind, view) if f.in_use]
    return Cards(
        title=say("Scan, type or touch one"),
        entries=tuple(
            Entry(big=name_fact(kind, f.id, view), code=write_touch(kind.kind, f.id) or f.id)
            for f in found[:THINGS]
        ),
    )
