"""Shows the handbook beside the work: a chapter, and all of them to touch."""

from dataclasses import replace

from station.floor.shared.no_row import NO_ROW
from station.shop.acts import good
from station.shop.cards import button
from station.shop.faces import Cards, Cell, Entry, Face, Listing, Press
from station.shop.handbook import find_chapter, read_chapters
from station.shop.rooms import Aside, Hand, Took, Work
from station.shop.views import View
from station.shop.words import say

HANDBOOK = "handbook"
TITLE = say("Handbook")


def open_handbook(hand: Hand[Work]) -> Took:
    """Opens the chapter of this work area."""
    return open_chapter(hand, find_chapter(hand.area))


def open_chapter(hand: Hand[Work], number: int) -> Took:
    """Opens a chapter, counted from 0."""
    chapters = read_chapters(hand.language)
    if not 0 <= number < len(chapters):
        return Took(hand, NO_ROW)
    after = replace(hand, aside=Aside(what=HANDBOOK, page=number))
    said = say("Handbook: {title}", title=chapters[number].title)
    return Took(after, good(said, say("Touch another chapter, or leave it.")))


def show_handbook(hand: Hand[Work], _view: View) -> Face:
    """Shows a chapter, and the titles of all."""
    chapters, number = read_chapters(hand.language), hand.aside.page
    rows = tuple(((Cell(text=line),), "") for line in chapters[number].lines)
    entries = tuple(
        Entry(big=chapter.title, chosen=n == number, code=button(f"row_{n + 1}"))
        for n, chapter in enumerate(chapters)
    )
    leave = Press(label=say("Leave it"), code=button("put_down"))
    turn = Press(label=say("Next page"), code=button("next_page"))
    return Face(
        title=TITLE,
        main=(Listing(title=chapters[number].title, rows=rows),),
        side=(Cards(title=say("Chapters"), entries=entries),),
        presses=(leave, turn),
        weights=(60, 0, 40),
    )
