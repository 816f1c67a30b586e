"""Counts a day again: the state, every screen that it shows, its papers."""

from collections.abc import Iterable, Iterator

from station.commands.state import describe_shop
from station.printing.gathering import make_paper
from station.shop.facts import Batch, Cart, Order, Pack
from tests.recount import needs_look
from tests.recount.books import Books
from tests.recount.census import Census, Figure, list_figures
from tests.recount.days import Day
from tests.recount.papers import compare_paper
from tests.recount.read import FIGURE, read_face
from tests.recount.rules import Look
from tests.recount.screens import compare_block
from tests.recount.state import Json, count_state

MOST = 40  # papers of a kind


class Recount:
    """A day as it is counted again: what differs, and how many figures were looked at."""

    def __init__(self, day: Day) -> None:
        self.day, self.books = day, Books()
        self.wrong: list[str] = []
        self.has_cards = False  # cards were looked at: they change with the shop's set-up alone
        self.census = Census()

    def look(self) -> None:
        """Takes new entries in, and counts the screen again."""
        for body in self.day.bodies():
            self.books.take(body)
        desk, now = self.day.desk, self.day.clock()
        face = desk.face()
        every = tuple(read_face(face))
        look = Look(self.books, desk.hand, now, str(face.where), every, {})
        for shown in every:
            compared = compare_block(look, shown)
            self._note(compared.told)
            for cell, figure in list_figures(desk.hand.area, shown):
                counted = cell in compared.cells
                self.census.note(self.books, figure, counted=counted)

    def look_at_all(self) -> None:
        """Counts the state again, and every paper that could be printed now."""
        self._note(compare_state(self.books, self.day, self.census))
        for kind, number in self._list_papers():
            page = make_paper(self.day.ledger, kind, number, self.day.clock())
            if page is not None:
                compared = compare_paper(self.books, kind, number, page, self.day.clock())
                self._note(compared.told)
                for figure, counted in compared.figures:
                    self.census.note(self.books, figure, counted=counted)

    def _list_papers(self) -> Iterator[tuple[str, str]]:
        """The papers of this moment, of each kind the newest ones; cards once a day."""
        books = self.books
        packs = [p for p in books.all(Pack) if p.order and p.state != "opened"]
        orders = [o for o in books.all(Order) if o.state in ("open", "waiting", "packing")]
        yield from (("traveller", b.id) for b in books.all(Batch)[-MOST:])
        yield from (("label", p.id) for p in packs[-MOST:])
        yield from (("pick_list", o.id) for o in orders[:MOST])
        yield from (("cart_list", c.id) for c in books.all(Cart))
        yield "handover", self.day.desk.hand.worker
        if not self.has_cards:
            yield from ((kind, "") for kind in ("part_cards", "thing_cards", "badges"))
            self.has_cards = True

    def _note(self, differences: Iterable[str]) -> None:
        self.wrong += [f"{self.day.clock()} {told}" for told in differences]


def compare_state(books: Books, day: Day, census: Census) -> Iterator[str]:
    """Tells how ``station state --json`` differs from what is counted."""
    now = day.clock()
    told, counted = describe_shop(day.ledger, now), count_state(books, now)
    looks: list[Json] = told.pop("look")  # type: ignore[assignment]
    concerns = counted.pop("look")
    told.pop("now")
    for firsts in (told["firsts"], counted["firsts"]):  # in any order
        firsts.sort(key=lambda f: (f["router"], f["batch"], f["part"], f["dimension"]))
    for batch in told["batches"]:  # type: ignore[attr-defined]
        batch["parts"] = {
            p["part"]: {"expected": p["expected"], "places": p["places"]} for p in batch["parts"]
        }
    for name, text in _list_leaves({**told, "look": looks}, "state"):
        census.note(books, Figure(name, text), counted=True)
    yield from (f"state{told}" for told in _differ(told, counted))
    raised = needs_look.list_raised(books, now)
    raised += [needs_look.say_blocks(books, *row) for row in needs_look.list_blocks(books, now)]
    for look in looks:
        if look not in concerns and look["text"] not in raised:
            yield f"state: {look} is told, counted {raised}"
    yield from (f"state: {c} is not told" for c in concerns if c not in looks)


def _list_leaves(told: object, path: str) -> Iterator[tuple[str, str]]:
    """Every value with a figure in JSON, and where it stands; things of a list are one."""
    if isinstance(told, dict):
        for key, value in told.items():
            named = "*" if FIGURE.search(key) or "/" in key else key
            yield from _list_leaves(value, f"{path}.{named}")
    elif isinstance(told, list):
        for value in told:
            yield from _list_leaves(value, f"{path}[]")
    elif FIGURE.search(str(told)):
        yield path, str(told)


def _differ(told: object, counted: object, path: str = "") -> Iterator[str]:
    """Every place in JSON where two values differ."""
    if isinstance(told, dict) and isinstance(counted, dict):
        for key in sorted(told.keys() | counted.keys()):
            yield from _differ(told.get(key), counted.get(key), f"{path}.{key}")
    elif isinstance(told, list) and isinstance(counted, list) and len(told) == len(counted):
        for n, (a, b) in enumerate(zip(told, counted, strict=True)):
            yield from _differ(a, b, f"{path}[{_name(a, n)}]")
    elif told != counted:
        yield f"{path}: {told}, counted {counted}"


def _name(value: object, n: int) -> object:
    names = ("batch", "order", "part", "router", "cart")
    return next((value[k] for k in names if k in value), n) if isinstance(value, dict) else n
