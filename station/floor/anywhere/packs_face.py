"""Shows what to touch where a pack is asked for: one that came back, one to be opened again."""

from station.floor.anywhere.finding_face import BACK, LEAVE, MORE
from station.floor.anywhere.returning import list_away, list_back, name_subject
from station.queries.handing_over import when_exactly
from station.queries.returns import list_left_packs
from station.shop.codes import write, write_touch
from station.shop.faces import Asked, Cell, Face, Hint, Listing, Row, Table
from station.shop.facts import Pack, Part
from station.shop.rooms import Hand, Work
from station.shop.views import View
from station.shop.words import Say, say

ROWS = 9  # of a list on one page
LAST = 6  # packs to be opened again
CLOSED = 500  # packs that are looked through
RETURNED = say("Something came back")
OPENED = say("Open the pack again")


def show_returned(hand: Hand[Work], view: View) -> Face:
    """Shows what came back, and asks how many."""
    part, back = view.get(Part, hand.aside.part), list_back(hand, view)
    if part is None and back:
        what = say("What came back of {what}?", what=name_subject(hand.aside.subject, view))
        rows = tuple(
            Row(title=p.name, note=p.words, shape=p.shape, code=write("part", p.id),
                cells=(Cell(text=say("{count}", count=back[p.id]), bold=True),))
            for p in (view.get(Part, name) for name in back)
            if p
        )  # fmt: skip
        table = Table(columns=(what, say("away")), rows=rows)
        return Face(title=RETURNED, main=(table,), presses=(LEAVE,))
    if part is None:
        return _ask_what_came_back(hand, view)
    asked = Asked(
        question=say("How many came back?"),
        typed=hand.digits,
        unit=say("{n|piece|pieces}", n=hand.digits),
    )
    hint = Hint(title=part.name, note=part.words)
    return Face(title=RETURNED, main=(hint, asked), presses=(LEAVE,))


def _ask_what_came_back(hand: Hand[Work], view: View) -> Face:
    """Asks for the pack or the part: by its code, its number, or a touch on its row."""
    first = ROWS * hand.aside.page
    packs = list_left_packs(view, hand.now, first + ROWS + 1)[first:]
    parts = list_away(view)[first:]
    rows = tuple(
        ((Cell(text=part.name, bold=True), Cell(text=say("{n} away", n=n), tone="quiet")),
         write_touch("part", part.id))
        for part, n in parts[:ROWS]
    )  # fmt: skip
    back = (BACK,) if hand.aside.page else ()
    more = (MORE,) if len(packs) > ROWS or len(parts) > ROWS else ()
    note = say("scan the pack’s label or a card; touch a row; or type its number")
    return Face(
        title=RETURNED,
        main=(
            Hint(title=say("What came back?"), note=note),
            Asked(question=say("The number of its order, pack or part?"), typed=hand.digits),
        ),
        middle=(_list_packs(say("Packs that left last"), packs[:ROWS], hand.now, left=True),),
        side=(Listing(title=say("Or parts alone"), rows=rows, empty=say("Nothing is away.")),),
        presses=(*back, *more, LEAVE),
        weights=(38, 36, 26),
    )


def _list_packs(title: Say, packs: tuple[Pack, ...], now: str, *, left: bool) -> Listing:
    """Lists packs to touch: of which order they are, and when they left or were closed."""
    rows = tuple(
        (
            (
                Cell(text=p.id, bold=True),
                Cell(text=say("order {order}", order=p.order)),
                Cell(text=when_exactly(p.left if left else p.closed, now), tone="quiet"),
            ),
            write_touch("pack", p.id),
        )
        for p in packs
    )
    return Listing(title=title, rows=rows, empty=say("There is none."))


def show_opening(hand: Hand[Work], view: View) -> Face:
    """Asks which pack is opened again: those closed last stand to be touched."""
    packs = sorted(view.shelf(Pack, "packed", CLOSED), key=lambda p: (p.closed, p.id))[::-1]
    hint = Hint(title=say("Which pack is opened again?"), note=say("scan its label, or touch it"))
    closed = _list_packs(say("Closed last"), tuple(packs[:LAST]), hand.now, left=False)
    return Face(title=OPENED, main=(hint, closed), presses=(LEAVE,), weights=(100, 0, 0))
