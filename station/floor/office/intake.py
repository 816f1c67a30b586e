"""A cut file taken in: which file, of which material, which part each shape is.

`hand.doing` says how far a file is read, which runs beside the screen.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace

from station.floor.office.acts import TakeInFile
from station.floor.office.hold_downs import handle_holding, turn_holding
from station.floor.office.lists import ROWS, find_chosen, name_press, read_row
from station.floor.office.looking import PAGE, look_at_next, look_at_place, look_at_row
from station.floor.office.naming import name_shape, set_part
from station.floor.office.read_as import ask_guessed, handle_how, read_with_material, turn_how
from station.floor.office.work import (
    FilesFound,
    Intake,
    OfficeHand,
    OfficeWork,
    ReadText,
    say_size,
)
from station.floor.shared.no_row import NO_ROW
from station.shop.acts import Answer, good, notice, question, refuse
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.facts import CutFile, Material, Part, ReadAs, Revision
from station.shop.file_requests import FindCutFiles, LookAtDropped, OpenCutFile
from station.shop.rooms import Do, Dropped, FileJob, Input, Point, Took, Typed
from station.shop.views import View
from station.shop.words import Say, say

LAYERS = good(say("Layers of the path"), say("Touch one to hide it, or to show it again."))
OFF = good(say("The sheet as it comes off"), say("Look it over."))
PATH = frozenset(name for name in BUTTONS if name.startswith("path_"))
UNITS = ("mm", "inch")  # by row, where the text does not say


def ask_intake(hand: OfficeHand, view: View) -> Took | FileJob:
    """Asks of which material a file for the chosen cut file is, then which file it is."""
    fact = find_chosen(hand, view)
    if not isinstance(fact, CutFile):
        return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))
    if not view.shelf(Material, "all", 1):
        return Took(hand, refuse(say("No material is known"), say("Enter your material first.")))
    return _find_files(hand, _find_material(hand, fact, view))


def take_dropped(hand: OfficeHand, given: Dropped, view: View) -> Took | FileJob:
    """Takes one file of this PC; asks which cut file it belongs to, where none is open."""
    if len(given.paths) != 1:
        said = say("{n} files at once", n=len(given.paths))
        return Took(hand, refuse(said, say("Drop one cut file at a time.")))
    (path,) = given.paths
    if not path:
        said = say("That is no file of this PC")
        return Took(hand, refuse(said, say("Drop a cut file from one of its folders.")))
    if hand.work.form:
        said = say("What was typed is not saved yet")
        return Took(hand, refuse(said, say("Save it or leave it, then drop the file again.")))
    if not isinstance(find_chosen(hand, view), CutFile):
        hand = replace(hand, work=OfficeWork(list=CutFile.kind))
    return FileJob(LookAtDropped(path=path), hand)


def _find_material(hand: OfficeHand, cut_file: CutFile, view: View) -> str:
    """Finds the material: as chosen, as in its newest revision, or the only one there is."""
    newest = view.shelf(Revision, cut_file.id, 50)
    every = view.shelf(Material, "all", 99)
    only = every[0].id if len(every) == 1 else ""
    return hand.work.intake.material or (newest[-1].material if newest else only)


def _find_files(hand: OfficeHand, material: str) -> Took | FileJob:
    """Finds which files lie there; one that was dropped is read once its material is known."""
    held = Intake(material=material, asked=hand.work.intake.asked)
    work = replace(hand.work, ask="cut", page=0, intake=held)
    if not material:
        asked = good(say("Cut from which material?"), say("Touch its row."))
        return Took(replace(hand, work=work), asked)
    if work.dropped:
        reading = replace(hand, work=replace(work, ask="", dropped=""))
        return _read_file(reading, path=work.dropped)
    return FileJob(FindCutFiles(), replace(hand, work=work))


def _read_file(hand: OfficeHand, *, file: str = "", path: str = "") -> FileJob:
    """Reads a file of the shop's folder, or one that was dropped."""
    material = hand.work.intake.material
    request = OpenCutFile(cut_file=hand.work.chosen, material=material, file=file, path=path)
    return FileJob(request, hand)


def refuse_meanwhile(hand: OfficeHand) -> Took:
    """Refuses whatever else is asked of the office while work runs beside the screen."""
    doing = hand.doing
    assert doing is not None
    far = say("{what}, {n} %", what=doing.title, n=int(doing.share * 100))
    return Took(hand, notice(far, say("Wait for it, or “{stop}”.", stop=doing.stop)))


def handle_input(hand: OfficeHand, given: Input, view: View) -> Do | Took | FileJob | None:
    """Takes a row (a material, a file, the units), then what each shape is."""
    held, name = hand.work.intake, name_press(given)
    row = read_row(name)
    if held.which:
        return None if row is None else _choose_units(hand, held.which, row)
    if held.read is None or not held.material:
        return None if row is None else _choose_row(hand, hand.work.page * ROWS + row, view)
    return _look_over(hand, held.read, given, view)


def _look_over(
    hand: OfficeHand, read: ReadText, given: Input, view: View
) -> Do | Took | FileJob | None:
    """Takes what is done with a text that was read: looked at, said otherwise, taken in."""
    held, name = hand.work.intake, name_press(given)
    row = read_row(name)
    if name in VIEWS:
        return VIEWS[name](hand)
    if held.how:
        return handle_how(hand, given, view)
    if held.holding:
        return handle_holding(hand, read, given, name)
    if isinstance(given, Point):
        return look_at_place(hand, read, given)
    if held.drawn and (name in PATH or (held.layers and row is not None)):
        return _ask_path(hand, name, row)
    if row is not None and row >= PAGE and not read.unnamed:
        return _name_again(hand, read, row - PAGE)
    if row is not None:
        return look_at_row(hand, read, row)
    if name == "save":
        return _take_in(hand, read)
    return _say_part(hand, read, given, view) if read.unnamed else None


def _turn_path(hand: OfficeHand) -> Took:
    """Shows the path of the bit; from there, what was read of it."""
    held = hand.work.intake
    told = say("What was read of it") if held.drawn else say("The path of the bit")
    after = _hold(hand, replace(held, drawn=not held.drawn, how="", holding=False))
    return Took(after, good(told, say("Look it over.")))


VIEWS: Mapping[str, Callable[[OfficeHand], Took]] = {
    "show_path": _turn_path,
    "how_read": turn_how,
    "hold_downs": turn_holding,
    "next_problem": look_at_next,
}


def step_back(hand: OfficeHand) -> Took | None:
    """Goes from a page about a text that was read back to what was read of it; None: not there."""
    held = hand.work.intake
    if held.read is None or not (held.drawn or held.how or held.holding):
        return None
    after = _hold(hand, replace(held, drawn=False, how="", holding=False))
    return Took(after, good(say("What was read of it"), say("Look it over.")))


def _hold(hand: OfficeHand, intake: Intake) -> OfficeHand:
    return replace(hand, work=replace(hand.work, intake=intake))


def _choose_units(hand: OfficeHand, which: OpenCutFile, row: int) -> Took | FileJob:
    """Reads the file again, in the units that its text does not say."""
    if row >= len(UNITS):
        return Took(hand, NO_ROW)
    after = _hold(hand, replace(hand.work.intake, which=None))
    return FileJob(
        replace(which, read_as=replace(which.read_as or ReadAs(), units=UNITS[row])), after
    )


def _choose_row(hand: OfficeHand, row: int, view: View) -> Took | FileJob:
    """Chooses the material, or the file to be read."""
    if not hand.work.intake.material:
        every = view.shelf(Material, "all", 99)
        opened = hand.work.intake.opened
        if row < len(every) and opened:
            return read_with_material(hand, opened, every[row].id)
        return _find_files(hand, every[row].id) if row < len(every) else Took(hand, NO_ROW)
    names = hand.work.found.names
    if row >= len(names):
        return Took(hand, refuse(say("There is no file in that row"), say("Touch a file.")))
    return _read_file(hand, file=names[row])


def _ask_path(hand: OfficeHand, name: str, row: int | None) -> Took:
    """Asks the drawn path to be played, to come closer, to show a layer or not."""
    held = hand.work.intake
    if name == "path_layers":
        return Took(_hold(hand, replace(held, layers=not held.layers, comes_off=False)), LAYERS)
    if name == "path_pieces":
        return Took(_hold(hand, replace(held, comes_off=not held.comes_off, layers=False)), OFF)
    act = name.removeprefix("path_") if row is None else f"layer {row + 1}"
    after = _hold(hand, replace(held, asked=(held.asked[0] + 1, act)))
    return Took(after, _say_of_path(name, row))


def _say_of_path(name: str, row: int | None) -> Answer:
    """The screen alone knows whether it plays and what it shows: the drawing tells."""
    if row is not None:
        return good(say("Layer {n}", n=row + 1), say("It is shown while its key is ticked."))
    return good(Say(BUTTONS[name].words), say("Look it over."))


def _say_part(hand: OfficeHand, read: ReadText, given: Input, view: View) -> Took | None:
    """Says which part the first shape without a name is: by its card, or a new one by name."""
    if isinstance(given, Code) and given.kind == "part" and (part := view.get(Part, given.number)):
        return _name_next(hand, set_part(read, read.unnamed[0], part.id), part.name)
    if isinstance(given, Typed):
        name = given.text.strip()
    elif name_press(given) == "new":
        name = str(say_size(read.sizes.get(read.unnamed[0], ""))).rpartition(" ")[0]
    else:
        return None
    return _name_next(hand, name_shape(read, read.unnamed[0], name), name)


def _name_next(hand: OfficeHand, read: ReadText, name: str) -> Took:
    """Goes on to the next shape, once this one has a name that is one."""
    if not name or len(name) > 24:
        return Took(hand, refuse(say("That is no name"), say("Type 1 to 24 characters.")))
    after = _hold(hand, replace(hand.work.intake, read=read))
    last = say("Look it over, then take it in.")
    next_ = say("Which part is the next shape?") if read.unnamed else last
    return Took(after, good(say("That is {name}", name=name), next_))


def _name_again(hand: OfficeHand, read: ReadText, row: int) -> Took:
    """Asks once more which part the shape in a row is: its name may have been mistyped."""
    shapes = read.revision.shapes
    if row >= len(shapes):
        return Took(hand, NO_ROW)
    shape = shapes[row][0]
    parts = {of: name for of, name in read.parts.items() if of != shape}
    asked = replace(read, unnamed=(shape,), parts=parts)
    after = _hold(hand, replace(hand.work.intake, read=asked))
    return Took(
        after, question(say("Which part is this shape?"), say("Scan its part, or type a name."))
    )


def _take_in(hand: OfficeHand, read: ReadText) -> Do | Took:
    if read.unnamed:
        return Took(
            hand, refuse(say("A shape has no name yet"), say("Scan its part, or type a name."))
        )
    if (asked := ask_guessed(hand)) is not None:
        return asked
    args = TakeInFile(revision=read.revision, parts=read.parts, file=read.file)
    work = replace(hand.work, ask="", page=0, found=FilesFound(), intake=Intake())
    return Do(f"cutfile/{read.revision.cut_file}", args, replace(hand, work=work))
