"""Cards for the rack, large enough to be read from two metres."""

from collections.abc import Iterable

from station.papers import drawing
from station.papers.cards import list_places
from station.papers.page import Page, measure_code
from station.papers.spoken import join
from station.shop.codes import has_code, write
from station.shop.facts import Part, RackPlace
from station.shop.words import say

# A capital of 40 points is 9.4 mm high: a two hundredth of two metres (common practice for
# signs, no source). A name too long for that is cut off rather than made smaller.
FAR = 40.0


def make_part_cards(rows: Iterable[tuple[Part, RackPlace]], *, paper: str = "A4") -> Page:
    """Makes a card for every part and its place, under the master: three on A4, two on A5."""
    page = Page.make(paper, say("Part cards"))
    size = (page.width - 14, 94.0)
    printable = [(p, r) for p, r in rows if has_code("part", p.id) and has_code("rack", r.id)]
    for (part, rack), (x, y) in zip(printable, list_places(page, size), strict=False):
        page.draw_box(x, y, *size, line=0.15, dash=True)
        _draw_card(page, part, rack, x + 5, y + 5, size[0] - 10)
    return page


def _draw_card(page: Page, part: Part, rack: RackPlace, x: float, y: float, wide: float) -> None:
    """Draws the place in a thick frame at the right, the mark beside it, the drawing below."""
    frame = wide * 0.36
    page.draw_box(x + wide - frame, y, frame, 24, line=1.2)
    page.draw_fitted(
        x + wide - frame / 2, y + 17.5, frame - 5, rack.name, 48, bold=True, least=FAR,
        side="middle",
    )  # fmt: skip
    room = wide - frame - 5
    page.draw_fitted(x, y + 16, room, part.name, 48, bold=True, least=FAR)
    page.draw_fitted(x, y + 24.5, room, part.words, 18, least=14)
    if part.shape:
        drawing.draw_part(page, part.shape, x, y + 29, room, 33)
    if part.mark:
        page.draw_text(x + wide, y + 33, say("cut more below"), 14, side="right")
        page.draw_text(x + wide, y + 49, str(part.mark), FAR, bold=True, side="right")
    for code, words, left in (
        (write("part", part.id), say("part"), x),
        (write("rack", rack.id), say("place"), x + wide - measure_code(write("rack", rack.id))),
    ):
        page.draw_code(left, y + 66, code, size=11, words=join(words, code, by=" "))
