"""Shows what is still missing before the first sheet, in order, each a touch away."""

from dataclasses import replace

from station.floor.office.lists import make_face
from station.floor.office.work import OfficeHand, OfficeWork
from station.floor.shared.set_up import WORDS, find_next
from station.queries.first_sheet import BEFORE_PACK, SetUpStep, list_set_up
from station.shop.acts import good, notice
from station.shop.cards import button
from station.shop.codes import write_touch
from station.shop.faces import Cell, Face, Hint, Listing, Press
from station.shop.facts import KINDS, Fact
from station.shop.moves import head, tail
from station.shop.rooms import Took
from station.shop.views import View
from station.shop.words import Say, say

SET_UP = say("Set up the shop")
NOTHING_MISSING = say("Nothing is missing.")


def open_set_up(hand: OfficeHand, view: View) -> Took:
    """Shows what is missing; where nothing is, says so."""
    following = find_next(list_set_up(view))
    after = OfficeWork(ask="missing")
    if following is None:
        return Took(hand, notice(say("The shop is set up"), NOTHING_MISSING))
    words = WORDS[following.name]
    said = say("Next: {step}", step=words.title)
    return Took(replace(hand, work=after), good(said, words.do))


def is_shown(hand: OfficeHand, view: View) -> bool:
    """Tells whether the page is shown: asked for, or nothing was opened yet.

    Never once all is done.
    """
    asked = (hand.work.form is None and hand.work.ask == "missing") or hand.work == OfficeWork()
    return asked and bool(list_set_up(view))


def show_set_up(hand: OfficeHand, view: View) -> Face:
    """Shows what is missing: before the first sheet, beside it before the first pack."""
    steps = list_set_up(view)
    following = find_next(steps)
    if following is None:
        return replace(make_face(hand, presses=()), where=SET_UP)
    early, late = ([s for s in steps if _is_late(s) == is_late] for is_late in (False, True))
    rows = tuple((_show_step(s, following), _write_code(s)) for s in early if not s.done)
    before_sheet = say("Before the first sheet: {done} of {n} done")
    main = Listing(title=_count_done(before_sheet, early), rows=rows, empty=NOTHING_MISSING)
    rest = tuple((_show_step(s, following)[1:2], _write_code(s)) for s in late if not s.done)
    before_pack = say("Before the first pack: {done} of {n} done")
    side = Listing(title=_count_done(before_pack, late), rows=rest, empty=NOTHING_MISSING)
    words = WORDS[following.name]
    go = Press(label=words.title, code=_write_code(following), style="primary", wide=2)
    lists = Press(label=say("All lists"), code=button("list_order"))
    hint = Hint(title=say("Next: {step}", step=words.title), note=words.do)
    face = make_face(hand, main, side=(hint, side), presses=(go, lists))
    return replace(face, where=SET_UP)


def _count_done(words: Say, steps: list[SetUpStep]) -> Say:
    """Says how many of some steps are done."""
    return words._replace(values={"done": sum(s.done for s in steps), "n": len(steps)})


def _is_late(step: SetUpStep) -> bool:
    return step.name in BEFORE_PACK


def _show_step(step: SetUpStep, following: SetUpStep) -> tuple[Cell, ...]:
    """Shows a step in a line: whether it is next, what it is, what is done for it."""
    following_one = step is following
    return (
        Cell(text="→" if following_one else "○"),
        Cell(text=WORDS[step.name].title, bold=following_one),
        Cell(text=WORDS[step.name].do, tone="" if following_one else "quiet"),
    )


def _write_code(step: SetUpStep) -> str:
    """Writes what a touch on a step sends: what is begun for it, else its list."""
    open_list = button(f"list_{WORDS[step.name].list}")
    if step.done or not step.about or step.name == "pin":  # a badge signs somebody in
        return open_list
    return write_touch(head(step.about), tail(step.about)) or open_list


def find_begun(step: SetUpStep, view: View) -> Fact | None:
    """Finds what is begun for a step and not complete; None: its list is opened."""
    kind = KINDS.get(head(step.about))
    return view.get(kind, tail(step.about)) if kind and not step.done else None


def press_missing(view: View) -> tuple[Press, ...]:
    """Offers the page from a list, while anything is missing."""
    left = sum(not step.done for step in list_set_up(view))
    if not left:
        return ()
    return (Press(label=say("Still missing: {n}", n=left), code=button("still_missing")),)
