"""Cards to scan: badges, single things, a card for every button, digit and reason."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import count
from typing import NamedTuple

from station.papers import drawing
from station.papers.page import Page, measure_code
from station.papers.spoken import Text, join
from station.shop.areas import AREAS
from station.shop.cards import BUTTONS, DIGITS, REASON_USES, ZONES
from station.shop.cautions import CAUTIONS, list_cautions
from station.shop.codes import has_code, write
from station.shop.facts import (
    Bit,
    Cart,
    Fact,
    Lot,
    Mailer,
    Part,
    Reason,
    Router,
    Shape,
    Worker,
)
from station.shop.facts.machines import BEDS
from station.shop.first_facts import say_reason
from station.shop.words import Say, dated, length, say

CARD = (62.0, 36.0)  # mm, wide and high
BESIDE = 1.0  # mm on either side of a code with its quiet zones
USES = {
    "loading": ("sheet", "stop", "overrule"),
    "popping": ("spoiled", "rework"),
    "trimming": ("spoiled", "rework"),
    "packing": ("repack", "spoiled", "overrule"),
    "anywhere": ("correct", "returned"),
    "office": ("overrule", "correct"),
}
CALLED = {"cutfile": say("cut file"), "rack": say("rack place")}
CAPITAL = {"worker": say("Worker {id}"), "lot": say("Lot {id}"), "order": say("Order {id}")}


class CardFace(NamedTuple):
    """What stands on one card: a large line, a small one, its code, perhaps a picture."""

    large: Text
    small: Text
    code: str
    shape: Shape | None = None
    zone: str = ""


def _lay_out(cards: Iterable[CardFace], paper: str, title: Text) -> Page:
    """Lays cards out in rows with lines to cut along."""
    page, faces = Page.make(paper, title), tuple(cards)
    longest = max((measure_code(face.code) for face in faces), default=0.0)
    size = (max(CARD[0], longest + 2 * BESIDE), CARD[1])  # a shop's own numbers may be long
    for card, (x, y) in zip(faces, list_places(page, size), strict=False):
        page.draw_box(x, y, *size, line=0.15, dash=True)
        _draw_card(page, card, x, y, size[0])
    return page


def list_places(page: Page, size: tuple[float, float]) -> Iterator[tuple[float, float]]:
    """Lists where cards of a size lie, row by row; turns the page when it is full."""
    across = max(1, int((page.width - 12) // size[0]))
    down = max(1, int((page.height - 12) // size[1]))
    left, top = (page.width - across * size[0]) / 2, (page.height - down * size[1]) / 2
    for n in count():
        if n and not n % (across * down):
            page.turn_page()
        place = n % (across * down)
        yield left + place % across * size[0], top + place // across * size[1]


def _draw_card(page: Page, card: CardFace, x: float, y: float, wide: float) -> None:
    room = wide - 8 - (22 if card.shape or card.zone else 0)
    page.draw_fitted(x + 4, y + 8.5, room, card.large, 15, bold=True)
    page.draw_fitted(x + 4, y + 13.5, room, card.small, 9)
    if card.shape:
        drawing.draw_part(page, card.shape, x + wide - 24, y + 3, 20, 11)
    if card.zone:
        _draw_zone(page, x + wide - 22, y + 3, card.zone)
    page.draw_code(x + (wide - measure_code(card.code)) / 2, y + 16.5, card.code, size=9)


def _draw_zone(page: Page, x: float, y: float, zone: str) -> None:
    """Draws the sheet in nine, one filled."""
    for n, number in enumerate(ZONES):
        page.draw_box(
            x + n % 3 * 6, y + n // 3 * 3.6, 6, 3.6, line=0.15, fill=0.2 if number == zone else 1.0
        )


def make_badges(workers: Iterable[Worker], *, paper: str = "A4") -> Page:
    """Makes a badge for every worker: a number, never a name."""
    return _lay_out(
        (
            CardFace(
                say("Worker {id}", id=w.id),
                say("supervisor") if w.supervisor else "",
                write("worker", w.id),
            )
            for w in workers
            if has_code("worker", w.id)
        ),
        paper,
        say("Badges"),
    )


def make_button_cards(area: str, reasons: Iterable[Reason], *, paper: str = "A4") -> Page:
    """Makes a card for every button of an area, and the digits, zones and reasons used there."""
    return _lay_out(
        _list_faces(area, tuple(reasons)), paper, say("Cards for {area}", area=_name_area(area))
    )


def _list_faces(area: str, reasons: tuple[Reason, ...]) -> Iterable[CardFace]:
    for card in BUTTONS.values():
        care = card.name == "care" and list_cautions(area)  # its cautions are one scan away
        if area in ("all", card.area) or care:
            yield CardFace(Say(card.words), _name_area(card.area), write("button", card.number))
    if area in ("all", "anywhere"):
        for char in DIGITS:
            yield CardFace(char, say("digit"), write("digit", char))
    if area in ("all", "anywhere", "popping"):
        for zone, words in ZONES.items():
            yield CardFace(Say(words), say("on the sheet"), write("zone", zone), zone=zone)
    for reason in reasons:
        if (area == "all" or reason.use in USES.get(area, ())) and has_code("reason", reason.id):
            use = say("reason: {use}", use=Say(REASON_USES[reason.use]))
            yield CardFace(say_reason(reason), use, write("reason", reason.id))


def make_thing_cards(
    facts: Iterable[Fact], materials: Mapping[str, str], *, paper: str = "A4"
) -> Page:
    """Makes cards of single things: routers, bits, lots, carts, cut files, orders, products.

    `materials`: the name of each, which the card of a lot says.
    """
    faces = (
        CardFace(
            _name_thing(f),
            _call_thing(f, materials),
            write(f.kind, f.id),
            f.shape if isinstance(f, Part) else None,
        )
        for f in facts
        if has_code(f.kind, f.id)
    )
    return _lay_out(faces, paper, say("Cards"))


def _name_area(area: str) -> Say:
    """Names a work area on its cards; ``all`` and ``anywhere`` are none of their own."""
    found = (a.title for a in AREAS if a.id == area)
    return next(found, say("all areas") if area == "all" else say("anywhere"))


def _call_thing(fact: Fact, materials: Mapping[str, str]) -> Text:
    """Says what kind of thing it is, and like what; of a bit, what is done before a change."""
    if isinstance(fact, Bit):
        return CAUTIONS["paper_bit"].line
    if isinstance(fact, Lot):
        return join(materials.get(fact.material, fact.material), dated(fact.received))
    if isinstance(fact, Router):
        return say("router, {bed}", bed=BEDS[fact.bed])
    if isinstance(fact, Mailer):
        size = length(fact.length_mm), length(fact.width_mm)
        return say("mailer, {long} × {wide} mm", long=size[0], wide=size[1])
    if isinstance(fact, Cart):
        return say("cart, goes at {time}", time=fact.goes) if fact.goes else say("cart")
    return CALLED.get(fact.kind, Say(fact.kind))


def _name_thing(fact: Fact) -> Text:
    """Names a thing: by a name that holds its number already, or by both."""
    name = str(getattr(fact, "name", "") or getattr(fact, "words", ""))
    if isinstance(fact, Bit):
        return join(say("Bit {bit}", bit=fact.id), name)
    if fact.kind in CAPITAL:
        return CAPITAL[fact.kind]._replace(values={"id": fact.id})
    return (
        name if fact.kind in ("router", "cart", "rack") and name else f"{fact.id} {name}".strip()
    )
