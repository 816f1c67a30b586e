"""The office's one form, worked by codes, touch or keyboard.

`hand.work` holds: `list` (which list), `page`, `chosen` (the fact's id), `form` (field →
text typed so far), `field` (which field the next text goes to), `ask` (a number or thing
that an act of its own wants: sheets, router).
"""

from collections.abc import Callable
from dataclasses import replace

from station.floor.office.fields import LISTS, OfficeList, from_text, label, shown, typed_fields
from station.shop.acts import good, notice, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Batch, CutFile, Fact, Lot, Material, Order, Revision, Router, Worker
from station.shop.plain import to_plain
from station.shop.rooms import Do, Hand, Input, Number, Took, Typed
from station.shop.views import View
from station.shop.words import say

ALL_CARDS = (("badges", ""), ("part_cards", ""), ("button_cards", "all"))
ROWS = 6  # of a list on one page, each large enough to touch
FIELDS = 8  # of a form on one page


def list_of(hand: Hand) -> OfficeList:
    """The list that is open."""
    index = hand.work.get("list", 0)
    return LISTS[index if isinstance(index, int) else 0]


def page_of(hand: Hand) -> int:
    """The page that is shown, from 0."""
    page = hand.work.get("page", 0)
    return page if isinstance(page, int) else 0


def facts_on_page(hand: Hand, view: View) -> tuple[Fact, ...]:
    """The rows of the open list on the page that is shown."""
    first = page_of(hand) * ROWS
    return everything(list_of(hand).kind, view)[first : first + ROWS]


def everything(kind: type[Fact], view: View) -> tuple[Fact, ...]:
    """All facts of a kind, over the shelves they stand on."""
    if kind is Order:
        shelves = ["open", "packed", "cancelled", "shipped"]
    elif kind is Revision:
        shelves = [f.id for f in view.shelf(CutFile, "all", 500)]
    elif kind is Lot:
        shelves = [m.id for m in view.shelf(Material, "all", 100)]
    elif kind.kind == "bit":
        routers = [f"router/{r.id}" for r in view.shelf(Router, "all")]
        shelves = [*routers, "good", "worn", "broken"]
    elif kind.kind == "reason":
        shelves = ["spoiled", "sheet", "rework", "stop", "overrule", "correct"]
    else:
        shelves = ["all"]
    return tuple(f for shelf in shelves for f in view.shelf(kind, shelf, 500))


def chosen(hand: Hand, view: View) -> Fact | None:
    """The fact whose form is open."""
    return view.get(list_of(hand).kind, str(hand.work.get("chosen", "")))


def form_of(hand: Hand) -> dict[str, str]:
    """What was typed on the form so far, by field."""
    form = hand.work.get("form")
    return {str(k): str(v) for k, v in form.items()} if isinstance(form, dict) else {}


def step(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """One input in the office."""
    if isinstance(given, Typed | Number):
        return _text(hand, given.text, view)
    if isinstance(given, Code) and given.kind == "router" and hand.work.get("ask") == "router":
        return _release(hand, view, given.number)
    card = (
        BY_NUMBER.get(given.number) if isinstance(given, Code) and given.kind == "button" else None
    )
    if card is None:
        return _scan(hand, given, view) if isinstance(given, Code) else None
    if card.name.startswith("row_"):
        return _row(hand, int(card.name[4:]) - 1, view)
    handlers: dict[str, Callable[[], Do | Took]] = {
        "next_kind": lambda: _turn(hand, 1),
        "back_kind": lambda: _turn(hand, -1),
        "next_page": lambda: _page(hand, 1),
        "back_page": lambda: _page(hand, -1),
        "new": lambda: _new(hand),
        "save": lambda: _save(hand, view),
        "next_field": lambda: _field(hand),
        "approve": lambda: _approve(hand, view),
        "release_batch": lambda: _ask_release(hand, view),
        "cancel_it": lambda: _cancel(hand, view),
        "receive": lambda: _ask_sheets(hand, view),
        "print_cards": lambda: _print(hand, view),
        "new_pin": lambda: _new_pin(hand, view),
    }
    handler = handlers.get(card.name)
    return handler() if handler else None


def _turn(hand: Hand, by: int) -> Took:
    index = (LISTS.index(list_of(hand)) + by) % len(LISTS)
    fresh = replace(hand, work={"list": index})
    return Took(fresh, good(LISTS[index].words, say("Touch a row, or add a new one.")))


def _page(hand: Hand, by: int) -> Took:
    page = max(0, page_of(hand) + by)
    return Took(hand.with_work(page=page), good(say("Page {page}", page=page + 1)))


def _row(hand: Hand, row: int, view: View) -> Took | Do:
    """Without a form a row opens one; on a form a row chooses the field."""
    if hand.work.get("ask") == "router":
        routers = view.shelf(Router, "all")
        return _release(hand, view, routers[row].id if row < len(routers) else "")
    if "form" in hand.work:
        names = typed_fields(list_of(hand).kind)
        place = page_of(hand) * FIELDS + row
        if place >= len(names):
            return Took(hand, refuse(say("There is no field in that row"), say("Touch a field.")))
        return _choose_field(hand, names[place])
    rows = facts_on_page(hand, view)
    if row >= len(rows):
        return Took(hand, refuse(say("There is nothing in that row"), say("Touch a row.")))
    return _open(hand, rows[row])


def _open(hand: Hand, fact: Fact) -> Took:
    opened = hand.with_work(chosen=fact.id, form={}, page=0, field=None)
    return Took(
        opened,
        good(say("{what} {id}", what=fact.kind, id=fact.id), say("Touch a field, type, save.")),
    )


def _scan(hand: Hand, code: Code, view: View) -> Took | None:
    """A thing's own card opens its form."""
    for index, entry in enumerate(LISTS):
        if entry.kind.kind == code.kind and (fact := view.get(entry.kind, code.number)):
            return _open(replace(hand, work={"list": index}), fact)
    if code.kind == "batch" and view.get(Batch, code.number):
        return Took(
            hand.with_work(batch=code.number),
            notice(say("Batch {batch}", batch=code.number), say("Cancel it, or leave it.")),
        )
    return None


def _new(hand: Hand) -> Took:
    fresh = hand.with_work(chosen="", form={}, page=0, field="id")
    return Took(fresh, good(say("A new one"), say("Type its number.")))


def _choose_field(hand: Hand, name: str) -> Took:
    return Took(
        hand.with_work(field=name),
        good(say("{field}", field=label(name)), say("Type it and press Enter.")),
    )


def _field(hand: Hand) -> Took:
    """The next field in turn."""
    names = typed_fields(list_of(hand).kind)
    now = str(hand.work.get("field", ""))
    place = (names.index(now) + 1) % len(names) if now in names else 0
    return _choose_field(hand.with_work(page=place // FIELDS), names[place])


def _text(hand: Hand, text: str, view: View) -> Took | Do:
    """A typed text goes to the field that is chosen, or answers what was asked."""
    if hand.work.get("ask") == "sheets":
        return _sheets(hand, text, view)
    field = str(hand.work.get("field", ""))
    if "form" not in hand.work or not field:
        return Took(hand, refuse(say("No field is chosen"), say("Touch a field first.")))
    kind = list_of(hand).kind
    form = {**form_of(hand), field: text}
    filled = hand.with_work(form=form)
    value = shown(from_text(kind, field, text))
    return Took(
        filled,
        good(
            say("{field}: {value}", field=label(field), value=value),
            say("Touch the next field, or save."),
        ),
    )


def _save(hand: Hand, view: View) -> Do | Took:
    """What was typed over what was there, as one fact."""
    form = form_of(hand)
    if "form" not in hand.work or not form:
        return Took(hand, refuse(say("Nothing was typed"), say("Choose a field and type.")))
    kind, before = list_of(hand).kind, chosen(hand, view)
    value = to_plain(before) if before else {}
    value |= {name: from_text(kind, name, text) for name, text in form.items()}
    after = hand.with_work(form=None, chosen=None, field=None, page=0)
    subject = f"{kind.kind}/{value.get('id', '')}"
    return Do("set_fact", subject, {"kind": kind.kind, "value": value}, after)


def _approve(hand: Hand, view: View) -> Do | Took:
    """The chosen revision, or the newest of the chosen cut file."""
    fact = chosen(hand, view)
    if isinstance(fact, Revision):
        return Do("approve_revision", f"cutfile/{fact.cut_file}", {"letter": fact.letter}, hand)
    if isinstance(fact, CutFile):
        newest = view.shelf(Revision, fact.id, 50)
        letter = newest[-1].letter if newest else ""
        return Do("approve_revision", fact.key, {"letter": letter}, hand)
    return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))


def _ask_release(hand: Hand, view: View) -> Took:
    fact = chosen(hand, view)
    if not isinstance(fact, CutFile):
        return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))
    return Took(
        hand.with_work(ask="router"),
        good(
            say("{name}: which router?", name=fact.name),
            say("Touch a router or scan its card."),
        ),
    )


def _release(hand: Hand, view: View, router: str) -> Took:
    if view.get(Router, router) is None:
        return Took(hand, refuse(say("There is no such router"), say("Touch a router.")))
    return Took(
        hand.with_work(ask="sheets", router=router),
        good(say("Router {router}", router=router), say("How many sheets?")),
    )


def _ask_sheets(hand: Hand, view: View) -> Took:
    if not isinstance(chosen(hand, view), Lot):
        return Took(hand, refuse(say("That is no lot"), say("Open a lot first.")))
    return Took(hand.with_work(ask="sheets"), good(say("Sheets received"), say("How many?")))


def _sheets(hand: Hand, text: str, view: View) -> Do | Took:
    """The number of sheets for a release or a receipt."""
    count = Number(text).whole
    if not count:
        return Took(hand, refuse(say("That is no number of sheets"), say("Type 1 or more.")))
    fact = chosen(hand, view)
    after = hand.with_work(ask=None, router=None)
    if isinstance(fact, Lot):
        return Do("receive_lot", fact.key, {"material": fact.material, "sheets": count}, after)
    args = {
        "cut_file": fact.id if fact else "",
        "router": hand.work.get("router", ""),
        "sheets": count,
    }
    return Do("release_batch", fact.key if fact else "", args, after, ("batch",))


def _new_pin(hand: Hand, view: View) -> Do | Took:
    fact = chosen(hand, view)
    if not isinstance(fact, Worker):
        return Took(hand, refuse(say("That is no worker"), say("Open a worker first.")))
    return Do("set_pin", fact.key, {}, hand)


def _cancel(hand: Hand, view: View) -> Do | Took:
    """The chosen order, or the batch whose traveller was scanned."""
    batch = str(hand.work.get("batch", ""))
    if batch:
        return Do("cancel_batch", f"batch/{batch}", {}, hand.with_work(batch=None))
    fact = chosen(hand, view)
    if isinstance(fact, Order):
        return Do("cancel_order", fact.key, {}, hand)
    return Took(
        hand,
        refuse(
            say("Only an order or a batch is cancelled"),
            say("Open an order, or scan a traveller."),
        ),
    )


def _print(hand: Hand, view: View) -> Took:
    """The chosen thing's card; with nothing chosen, every card of the shop."""
    fact = chosen(hand, view)
    if fact is None:
        answer = good(say("Every card of the shop is printed"), say("Cut them out, put them up."))
        return Took(hand, replace(answer, prints=ALL_CARDS))
    answer = good(say("Its card is printed"), say("Cut it out and put it in place."))
    return Took(hand, replace(answer, prints=(("card", fact.key),)))
