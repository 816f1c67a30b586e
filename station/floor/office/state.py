"""What is open in the office: a list, a form, and what the shop knows of them.

`hand.work` holds: `list` (which list), `page`, `chosen` (the fact's id; empty: a new one),
`form` (field → plain value given so far), `field` (which one the next input goes to), and
`ask` while a dialogue of its own is open: ``release``, ``sheets``, ``count``, ``files``,
``lines``. What each keeps beside stands in its own module.
"""

from station.floor.office.fields import LISTS, OfficeList, Rows
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code, usable
from station.shop.facts import (
    Bit,
    CutFile,
    Fact,
    Lot,
    Material,
    Order,
    Reason,
    Revision,
    Router,
    Worker,
)
from station.shop.rooms import Hand, Input
from station.shop.views import View

ROWS = 6  # of a list on one page, each large enough to touch
FIELDS = 7  # of a form on one page
MOST = 500  # facts of a shelf that the office looks through


def pressed(given: Input) -> str:
    """The name of the button that was pressed or whose card was scanned, or nothing."""
    card = (
        BY_NUMBER.get(given.number) if isinstance(given, Code) and given.kind == "button" else None
    )
    return card.name if card else ""


def row_of(name: str) -> int | None:
    """The row, from 0, of a button ``row_3``."""
    return int(name[4:]) - 1 if name.startswith("row_") else None


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
    return tuple(f for shelf in _shelves(kind, view) for f in view.shelf(kind, shelf, MOST))


def _shelves(kind: type[Fact], view: View) -> list[str]:
    if kind is Order:
        return ["open", "packed", "cancelled", "shipped"]
    if kind is Revision:
        return [f.id for f in view.shelf(CutFile, "all", MOST)]
    if kind is Lot:
        return [m.id for m in view.shelf(Material, "all", MOST)]
    if kind is Bit:
        return [*(f"router/{r.id}" for r in view.shelf(Router, "all")), "good", "worn", "broken"]
    if kind is Reason:
        return ["spoiled", "sheet", "rework", "stop", "overrule", "correct"]
    return ["all"]


def chosen(hand: Hand, view: View) -> Fact | None:
    """The fact whose form is open."""
    return view.get(list_of(hand).kind, str(hand.work.get("chosen", "")))


def form_of(hand: Hand) -> dict[str, object]:
    """What was given on the form so far, by field."""
    form = hand.work.get("form")
    return {str(k): v for k, v in form.items()} if isinstance(form, dict) else {}


def items_of(hand: Hand) -> Rows:
    """The rows of the list field that is being edited."""
    items = hand.work.get("items")
    return [list(row) for row in items] if isinstance(items, list | tuple) else []


def find(kind: type[Fact], text: str, view: View) -> Fact | None:
    """A fact by its number, or by its name as people write it."""
    wanted = text.strip().casefold()
    if found := view.get(kind, text.strip()):
        return found
    return next(
        (f for f in everything(kind, view) if str(getattr(f, "name", "")).casefold() == wanted),
        None,
    )


def called(kind: type[Fact], id: object, view: View) -> str:
    """A fact's name for a person; its number where it has none or is not there."""
    fact = view.get(kind, str(id))
    return str(getattr(fact, "name", "") or id)


def next_number(kind: type[Fact], view: View) -> str:
    """The number after the highest one that is in use and can be printed."""
    if kind.kind == "shop":
        return "shop"
    numbers = [f.id for f in everything(kind, view) if f.id.isdecimal()]
    top = max(numbers, key=int, default="00" if kind is Worker else "000")
    number = int(top)
    while True:
        number += 1
        text = str(number).zfill(len(top))
        if kind.kind in ("material", "revision") or usable(kind.kind, text):
            return text
