"""Shows how a clamped sheet of a cut file is held down, what flies, how it is popped."""

from station.floor.office.lists import make_face
from station.floor.office.work import OfficeHand, ReadText
from station.queries.settings import find_shop
from station.shop.cards import button
from station.shop.cautions import CAUTIONS, say_cautions
from station.shop.faces import Face, Listing, NumberMark, Pairs, Press, Remark, SheetDrawing
from station.shop.views import View
from station.shop.words import say

POPPED = 8  # numbers in a line of the popping order


def show_holding(hand: OfficeHand, read: ReadText, view: View) -> Face:
    """Shows the sheet with its hold-downs numbered, pieces numbered as they are popped."""
    laying, revision, chosen = read.laying, read.revision, hand.work.intake.held
    marks = tuple(
        NumberMark(number=n + 1, x_mm=x, y_mm=y, tone="good", chosen=n == chosen)
        for n, (x, y) in enumerate(revision.hold_downs)
    )
    drawing = SheetDrawing(
        revision=revision,
        marks=marks,
        slugs=laying.slugs,
        numbers=rank_popping(laying.popping),
        flying=frozenset(laying.flying),
        touch=True,
        note=say("Rounds are hold-downs. Numbers on pieces: in which order they are popped."),
    )
    back = Press(label=say("Back to the list"), code=button("hold_downs"), style="primary")
    proposed = Press(label=say("As proposed"), code=button("as_proposed"))
    side: tuple[Pairs | Remark | Listing, ...] = (
        Pairs(
            title=say("Before the first sheet"),
            rows=((say("hold-downs"), say("{n}", n=len(revision.hold_downs))),
                  (say("pieces that may fly"), say("{n}", n=len(laying.flying))),
                  (say("loose slugs"), say("{n}", n=len(laying.slugs)))),
        ),
        _remind_care(read, view),
    )  # fmt: skip
    return make_face(hand, drawing, side=side, presses=(back, proposed))


def rank_popping(popping: tuple[int, ...]) -> tuple[int, ...]:
    """Ranks each piece, in the order of `placed`: the n-th to be popped."""
    rank = {piece: n for n, piece in enumerate(popping, 1)}
    return tuple(rank[n] for n in range(len(rank)))


def _remind_care(read: ReadText, view: View) -> Remark:
    """Reminds of what may come loose under the bit, and of clamps in its way."""
    names = (*(("flying",) if read.laying.flying else ()), "hold_downs")
    text = say_cautions(names, find_shop(view))
    title = say("Take care: {at}", at=CAUTIONS[names[0]].at)
    return Remark(tone="attention", title=title, text=text, code=button("care"))
