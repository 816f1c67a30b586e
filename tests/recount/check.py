"""Counts a day again: the state, every screen that it shows, its papers."""

import re
from collections import Counter
from collections.abc import Callable, Iterator

from station.commands.state import describe_shop
from station.papers.page import Page
from station.printing.gathering import make_paper
from station.shop.facts import Batch, Cart, Order, Pack
from tests.recount import needs_look, papers
from tests.recount.books import Books
from tests.recount.days import Day
from tests.recount.read import read_face
from tests.recount.screens import Look, compare_screen, is_counted
from tests.recount.state import Json, count_state

FIGURE = re.compile(r"\d")


class Recount:
    """A day as it is counted again: what differs, and how many figures were looked at."""

    def __init__(self, day: Day) -> None:
        self.day, self.books = day, Books()
        self.wrong: list[str] = []
        self.figures = 0
        self.not_read: Counter[str] = Counter()

    def look(self) -> None:
        """Takes new entries in, and counts the screen again."""
        for body in self.day.bodies():
            self.books.take(body)
        desk, now = self.day.desk, self.day.clock()
        face = desk.face()
        look = Look(self.books, desk.hand, now, str(face.where))
        self._note(compare_screen(look, face))
        for shown in read_face(face):
            count = sum(len(FIGURE.findall(text)) > 0 for row in shown.rows for text in row)
            area = desk.hand.area
            if is_counted(area, shown) or shown.kind == "flow":
                self.figures += count
            elif count:
                self.not_read[f"{area}, {shown.kind}: {shown.title}"] += count

    def look_at_all(self) -> None:
        """Counts the state again, and every paper that could be printed now."""
        self._note(compare_state(self.books, self.day))
        self._note(self._papers())

    def _papers(self) -> Iterator[str]:
        books = self.books
        packs = [p for p in books.all(Pack) if p.state not in ("opened", "shelf")][-40:]
        orders = [o for o in books.all(Order) if o.state in ("open", "waiting", "packing")][:40]
        for number in [b.id for b in books.all(Batch)][-40:]:
            yield from self._paper("traveller", number, papers.check_traveller)
        for number in [p.id for p in packs]:
            yield from self._paper("label", number, papers.check_label)
        for number in [o.id for o in orders]:
            yield from self._paper("pick_list", number, papers.check_pick_list)
        for number in [c.id for c in books.all(Cart)]:
            yield from self._paper("cart_list", number, papers.check_cart_list)

    def _paper(
        self, kind: str, number: str, check: Callable[[Books, str, Page], Iterator[str]]
    ) -> Iterator[str]:
        page = make_paper(self.day.ledger, kind, number, self.day.clock())
        if page is not None:
            self.figures += sum(bool(FIGURE.search(text)) for text in papers.texts(page))
            yield from check(self.books, number, page)

    def _note(self, differences: Iterator[str]) -> None:
        self.wrong += [f"{self.day.clock()} {told}" for told in differences]


def compare_state(books: Books, day: Day) -> Iterator[str]:
    """Tells how ``station state --json`` differs from what is counted."""
    now = day.clock()
    told, counted = describe_shop(day.ledger, now), count_state(books, now)
    looks: list[Json] = told.pop("look")  # type: ignore[assignment]
    concerns = counted.pop("look")
    told.pop("now")
    for batch in told["batches"]:  # type: ignore[attr-defined]
        batch["parts"] = {
            p["part"]: {"expected": p["expected"], "places": p["places"]} for p in batch["parts"]
        }
    yield from (f"state{told}" for told in _differ(told, counted))
    for look in looks:
        if look not in concerns:
            yield from (f"state: {t}" for t in needs_look.tell_raised(books, now, look["text"]))
    yield from (f"state: {c} is not told" for c in concerns if c not in looks)


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
