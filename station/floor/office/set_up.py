"""Shows what is still missing before the first sheet, in order, each a touch away."""

from dataclasses import replace

from station.floor.office.lists import make_face
from station.floor.office.work import OfficeHand, OfficeWork
from station.floor.shared.set_up import WORDS, find_next
from station.queries.first_sheet import SetUpStep, list_set_up
from station.shop.acts import good, notice
from station.shop.cards import button
from station.shop.codes import write_touch
from station.shop.faces import Check, Checks, Face, Hint, Press
from station.shop.facts import KINDS, Fact
from station.shop.moves import head, tail
from station.shop.rooms import Took
from station.shop.views import View
from station.shop.words import Say, say

SET_UP = say("Set up the shop")


def open_set_up(hand: OfficeHand, view: View) -> Took:
    """Shows what is missing; where nothing is, says so."""
    following = find_next(list_set_up(view))
    after = OfficeWork(ask="missing")
    if following is None:
        return Took(hand, notice(say("The shop is set up"), say("Nothing is missing.")))
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
    """Shows every step: done, the next one, those that come later."""
    steps = list_set_up(view)
    following = find_next(steps)
    done = sum(step.done for step in steps)
    checks = Checks(
        title=say("Before the first sheet: {done} of {n} done", done=done, n=len(steps)),
        items=tuple(
            Check(
                label=WORDS[step.name].title,
                text=_say_note(step),
                code=_write_code(step),
                state=_find_state(step, following),
            )
            for step in steps
        ),
    )
    if following is None:
        return replace(make_face(hand, checks, presses=()), where=SET_UP)
    words = WORDS[following.name]
    go = Press(label=words.title, code=_write_code(following), style="primary", wide=2)
    lists = Press(label=say("All lists"), code=button("list_order"))
    hint = Hint(title=say("Next: {step}", step=words.title), note=words.do)
    face = make_face(hand, checks, side=(hint,), presses=(go, lists))
    return replace(face, where=SET_UP)


def _say_note(step: SetUpStep) -> Say:
    return say("done") if step.done else WORDS[step.name].do


def _find_state(step: SetUpStep, following: SetUpStep | None) -> str:
    if step.done:
        return "done"
    return "due" if step is following else "later"


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
    return (Press(label=say("Still missing: {n}", n=left), code=button("missing")),)
