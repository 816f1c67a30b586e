"""How a cut file's text is read: what was assumed of it is touched, changed, and read again."""

from dataclasses import replace

from station.cutting.read.dialects import DIALECTS
from station.floor.office.lists import name_press, read_row
from station.floor.office.work import Intake, OfficeHand, ReadText
from station.floor.shared.no_row import NO_ROW
from station.shop.acts import good, question, refuse
from station.shop.cut_text import ORIGINS, TakenAs
from station.shop.facts import Bit, Material, ReadAs, Router
from station.shop.file_requests import OpenCutFile
from station.shop.rooms import FileJob, Input, Number, Took
from station.shop.views import View
from station.shop.words import MM, length, say

# what stands in the rows of a question, by what is asked; "": as the text shows. For a bit the
# sizes of the shop's own stand above it.
CHOICES: dict[str, tuple[str, ...]] = {
    "bit": ("",),
    "zero": ("face", "spoilboard", ""),
    "origin": (*ORIGINS, ""),
    "spoilboard": ("",),
    "units": ("mm", "inch"),
    "dialect": tuple(name for name in DIALECTS if name != "report"),
}
MOST_BIT_MM, MOST_DEEP_MM = 100.0, 20.0
LIST = "list"
AT_ONCE = 7  # rows on a page
SIZES = 5  # of the shop's bits, to choose from
MOST_BITS = 200  # of a shop that are looked through for their sizes
SAID = good(say("How it is read"), say("Touch what is not so."))
LEFT = good(say("What was read of it"), say("Look it over."))


def list_asked(read: ReadText) -> tuple[TakenAs, ...]:
    """Lists what can be said of a text, in the order of the rows; the material comes after it."""
    return tuple(t for t in read.taken if t.source != "text")


def find_asked(hand: OfficeHand) -> TakenAs | None:
    """Finds what is asked about; None: the list is shown."""
    held = hand.work.intake
    if held.read is None or not held.how.isdecimal():
        return None
    return list_asked(held.read)[int(held.how)]


def list_choices(asked: TakenAs, view: View) -> tuple[str, ...]:
    """Lists what stands in the rows of a question.

    A bit that nothing tells may be one of the shop's; "as the text shows" is no answer then.
    """
    if asked.what != "bit":
        return CHOICES[asked.what]
    shelves = ("good", *(f"router/{r.id}" for r in view.shelf(Router, "all")))
    sizes = {b.diameter_mm for s in shelves for b in view.shelf(Bit, s, MOST_BITS)}
    shows = () if is_guessed(asked) else CHOICES["bit"]
    return (*(f"{mm:g}" for mm in sorted(sizes)[:SIZES]), *shows)


def is_guessed(taken: TakenAs) -> bool:
    """Whether nothing says how wide a bit is: every size of the parts hangs on it."""
    return taken.what == "bit" and taken.source == "assumed"


def ask_guessed(hand: OfficeHand) -> Took | None:
    """Asks how wide the first bit is that nothing tells; None where all are known."""
    held = hand.work.intake
    for n, taken in enumerate(list_asked(held.read) if held.read else ()):
        if is_guessed(taken):
            asked = replace(held, how=str(n), drawn=False, holding=False)
            said = say("How wide is bit {n}? The file does not say", n=taken.number)
            do = say("Touch its size, or type it, then Enter.")
            return Took(_hold(hand, asked), question(said, do))
    return None


def turn_how(hand: OfficeHand) -> Took:
    """Shows how the text is read; from there, what was read of it."""
    held = hand.work.intake
    if held.how.isdecimal():
        return Took(_hold(hand, replace(held, how=LIST)), SAID)
    after = _hold(hand, replace(held, how="" if held.how else LIST, drawn=False, holding=False))
    return Took(after, LEFT if held.how else SAID)


def handle_how(hand: OfficeHand, given: Input, view: View) -> Took | FileJob | None:
    """Takes a row of what was assumed, then its value: the text is read again with it."""
    row, asked = read_row(name_press(given)), find_asked(hand)
    if asked is None:
        return None if row is None else _choose_row(hand, row, view)
    if isinstance(given, Number):
        return _take_length(hand, asked, given)
    if row is None:
        return None
    choices = list_choices(asked, view)
    if row >= len(choices):
        return Took(hand, NO_ROW)
    return _read_again(hand, asked, choices[row])


def _choose_row(hand: OfficeHand, row: int, view: View) -> Took:
    """Opens the question about a row; the last row asks for another material."""
    held = hand.work.intake
    asked = list_asked(held.read) if held.read else ()
    row += hand.work.page * AT_ONCE if hand.work.page * AT_ONCE <= len(asked) else 0
    if row == len(asked) and len(view.shelf(Material, "all", 2)) > 1:
        after = _hold(hand, replace(held, how="", material=""))
        return Took(after, good(say("Cut from which material?"), say("Touch its row.")))
    if row >= len(asked):
        return Took(hand, NO_ROW)
    after = _hold(hand, replace(held, how=str(row)))
    if asked[row].what in ("bit", "spoilboard"):
        return Took(after, good(say("How many {unit}?", unit=MM), say("Type it, then Enter.")))
    return Took(after, good(say("Which is it?"), say("Touch its row.")))


def _take_length(hand: OfficeHand, asked: TakenAs, given: Number) -> Took | FileJob | None:
    """Takes a diameter or a depth in mm."""
    if asked.what not in ("bit", "spoilboard"):
        return None
    size, bit = given.length, asked.what == "bit"
    most = MOST_BIT_MM if bit else MOST_DEEP_MM
    if size is None or not 0 <= size <= most or (bit and not size):
        low = say("above 0") if bit else say("0")
        do = say("Type {unit}, from {low} to {most}.", unit=MM, low=low, most=length(most))
        return Took(hand, refuse(say("That is no such length"), do))
    return _read_again(hand, asked, f"{size:g}")


def _read_again(hand: OfficeHand, asked: TakenAs, value: str) -> Took | FileJob:
    """Reads the text again with what was said."""
    held = hand.work.intake
    if held.opened is None or held.read is None:  # of a program of before
        return Took(hand, refuse(say("The file is not known any more"), say("Read it again.")))
    said = say_otherwise(held.opened.read_as or ReadAs(), asked, value)
    after = _hold(hand, replace(held, how="" if is_guessed(asked) else LIST))
    return FileJob(replace(ask_again(held.opened, held.read), read_as=said), after)


def read_with_material(hand: OfficeHand, opened: OpenCutFile, material: str) -> FileJob:
    """Reads the text again as one for another material."""
    after = _hold(hand, replace(hand.work.intake, material=opened.material))
    return FileJob(replace(opened, material=material, hold_downs=()), after)


def ask_again(opened: OpenCutFile, read: ReadText) -> OpenCutFile:
    """Asks for the same text; hold-downs that somebody moved stay where they are."""
    places = read.revision.hold_downs
    return replace(opened, hold_downs=() if places == read.laying.proposed else places)


def say_otherwise(said: ReadAs, asked: TakenAs, value: str) -> ReadAs:
    """Gives what is said of a text once one thing is said anew; an empty value: as it shows."""
    match asked.what:
        case "bit":
            bits = {**dict(said.bits), asked.number: float(value or 0)}
            return replace(said, bits=tuple((n, mm) for n, mm in sorted(bits.items()) if mm))
        case "zero":
            return replace(said, zero=value)
        case "origin":
            return replace(said, origin=value)
        case "spoilboard":
            return replace(said, spoilboard_mm=float(value) if value else None)
        case "units":
            return replace(said, units=value)
    names = [n for n in said.dialect.split("+") if n]
    turned = [n for n in names if n != value] if value in names else [*names, value]
    return replace(said, dialect="+".join(turned))


def _hold(hand: OfficeHand, intake: Intake) -> OfficeHand:
    return replace(hand, work=replace(hand.work, intake=intake))
