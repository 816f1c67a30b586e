"""Shows how a cut file's text is read: what was assumed, by whom or what, and the choices."""

from station.floor.office.lists import PAGES, make_face
from station.floor.office.read_as import AT_ONCE, find_asked, is_guessed, list_asked, list_choices
from station.floor.office.work import OfficeHand, ReadText
from station.shop.cards import button
from station.shop.cut_text import TakenAs
from station.shop.faces import Asked, Cell, Face, Hint, Press, Row, Table, Text
from station.shop.facts import Material
from station.shop.views import View
from station.shop.words import MM, Say, length, say

SURE = say("said here")
SOURCES: dict[str, Say] = {
    "given": SURE,
    "text": say("as the text says"),
    "remark": say("as a remark in the text says"),
    "changer": say("as in the changer"),
    "spindle": say("the one in the spindle"),
    "usual": say("as usual on this router"),
    "assumed": say("assumed from the path"),
}
GUESSED = say("only assumed")  # of a bit, a depth, a dialect: the path does not show them
NAMES: dict[str, Say] = {
    "zero": say("Z is zero"),
    "origin": say("X and Y are zero"),
    "spoilboard": say("Deepest into the spoilboard"),
    "units": say("Lengths"),
    "dialect": say("Manner of the router"),
}
VALUES: dict[str, Say] = {
    "face": say("at the face of the sheet"),
    "spoilboard": say("at the spoilboard"),
    "lower-left": say("at its lower left corner"),
    "centre": say("at its centre"),
    "upper-left": say("at its upper left corner"),
    "lower-right": say("at its lower right corner"),
    "upper-right": say("at its upper right corner"),
    "mm": say("in millimetres"),
    "inch": say("in inches"),
    "report": say("as most routers"),
    "milliseconds": say("P of a dwell is milliseconds"),
    "no-semicolon": say("a semicolon begins no remark"),
    "run-deleted": say("lines with a slash are run"),
    "return-first": say("G98 goes to where a series began"),
    "absolute-r": say("R under G91 is a height"),
    "peck-1mm": say("a peck comes back to 1 mm"),
    "home-named": say("G28 homes the named axes"),
}
AS_IT_SHOWS = say("As the text shows")


def say_taken(taken: TakenAs) -> tuple[Say, Say, Say]:
    """Says what was taken, as what, and by whom or what."""
    source = SOURCES.get(taken.source, SURE)
    if taken.source == "assumed" and taken.what in ("bit", "spoilboard", "dialect"):
        source = GUESSED
    if taken.what == "bit":
        return (
            say("Bit {n}", n=taken.number),
            say("{mm} mm", mm=length(float(taken.value))),
            source,
        )
    if taken.what == "spoilboard":
        return NAMES["spoilboard"], say("{mm} mm", mm=length(float(taken.value))), source
    return NAMES[taken.what], _say_value(taken.value), source


def _say_value(value: str) -> Say:
    """Says a value; several manners one after the other."""
    names = [VALUES[v] for v in value.split("+") if v in VALUES]
    if not names:
        return say("{value}", value=value)
    first = names[0]
    for each in names[1:]:
        first = say("{first}, {next}", first=first, next=each)
    return first


def show_how(hand: OfficeHand, read: ReadText, view: View) -> Face:
    """Shows all that was taken of a text, or the question about one of it."""
    asked = find_asked(hand)
    back = Press(label=say("Back"), code=button("how_read"), style="primary")
    if asked is not None:
        blocks = _show_question(hand, asked, view)
        return make_face(hand, *blocks, presses=(back,), weights=(1, 0, 0))
    rows = [*map(say_taken, list_asked(read))]
    material = view.get(Material, read.revision.material)
    if len(view.shelf(Material, "all", 2)) > 1:
        name = material.name if material else read.revision.material
        rows.append((say("Material"), say("{name}", name=name), say("chosen in the office")))
    first = hand.work.page * AT_ONCE if hand.work.page * AT_ONCE < len(rows) else 0
    table = Table(
        columns=(say("what"), say("taken as")),
        rows=tuple(
            Row(title=what, note=source, code=button(f"row_{n}"),
                cells=(Cell(text=value, bold=True),))
            for n, (what, value, source) in enumerate(rows[first : first + AT_ONCE], 1)
        ),
        title=say("{file} is read like this. Touch what is not so: it is kept for its next "
                  "revision", file=read.file),
    )  # fmt: skip
    pages = PAGES if len(rows) > AT_ONCE else ()
    return make_face(hand, table, presses=(back, *pages), weights=(1, 0, 0))


def _show_question(
    hand: OfficeHand, asked: TakenAs, view: View
) -> tuple[Hint | Asked | Table, ...]:
    """Shows what a row asks for: a number of mm, or one of a few choices."""
    name, value, source = say_taken(asked)
    now = Hint(title=name, right=value, note=say("{source}. The text is read again with what you "
               "say.", source=source))  # fmt: skip
    if is_guessed(asked):
        note = say("The file does not say how wide it is. The sizes of its parts hang on it.")
        now = Hint(title=name, note=note)
    rows = tuple(
        Row(title=_say_choice(asked, choice), code=button(f"row_{n}"),
            selected=_is_taken(asked, choice))
        for n, choice in enumerate(list_choices(asked, view), 1)
    )  # fmt: skip
    column = say("bits of this shop") if asked.what == "bit" else say("choices")
    table = Table(columns=(column,), rows=rows)
    if asked.what not in ("bit", "spoilboard"):
        return now, table
    question = say("Diameter of bit {n}", n=asked.number)
    if asked.what == "spoilboard":
        question = say("How deep may a cut go into the spoilboard?")
    return now, Asked(question=question, typed=hand.digits, unit=MM), *((table,) if rows else ())


def _say_choice(asked: TakenAs, choice: str) -> Text:
    if not choice:
        return AS_IT_SHOWS
    return say("{mm} mm", mm=length(float(choice))) if asked.what == "bit" else VALUES[choice]


def _is_taken(asked: TakenAs, choice: str) -> bool:
    return bool(choice) and not is_guessed(asked) and choice in asked.value.split("+")
