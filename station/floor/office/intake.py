"""A cut file taken in: which file, of which material, which part each shape is.

`hand.work` holds `files` and `folder` while one is chosen, `material` once that is known, and
`cut` when it was read: `file`, `revision` (its plain values, part ids ``new0`` … for shapes
that the shop does not know yet), `unnamed`, `parts` (name by such an id), `sizes`, `problems`,
`path` (packed strokes). `which` is what was to be read while its units are asked. `path` in
the hand itself is true while the path is looked at.
`hand.doing` says how far a file is read, which runs beside the screen.
"""

from station.floor.office.dropped import path_of
from station.floor.office.files import texts
from station.floor.office.state import ROWS, chosen, page_of, pressed, row_of
from station.shop.acts import Answer, good, notice, refuse
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.facts import CutFile, Material, Part, Revision
from station.shop.file_requests import FindCutFiles, OpenCutFile
from station.shop.plain import build
from station.shop.rooms import Do, FileJob, Hand, Input, Took, Typed, plain_do
from station.shop.views import View
from station.shop.words import Say, say

PATH = frozenset(name for name in BUTTONS if name.startswith("path_"))
UNITS = ("mm", "inch")  # by row, where the text does not say
NEW = "NEW"  # the letter of a revision that is not taken in yet


def start(hand: Hand, view: View) -> Took | FileJob:
    """For the chosen cut file: of which material, then which files lie there."""
    fact = chosen(hand, view)
    if not isinstance(fact, CutFile):
        return Took(hand, refuse(say("That is no cut file"), say("Open a cut file first.")))
    material = material_of(hand, fact, view)
    if not view.shelf(Material, "all", 1):
        return Took(hand, refuse(say("No material is known"), say("Enter your material first.")))
    return _look(hand.with_work(material=material or None))


def _look(hand: Hand) -> Took | FileJob:
    """Which files lie there; a file that was dropped is read once its material is known."""
    hand = hand.with_work(ask="cut", page=0, cut=None, path=None, which=None)
    if not hand.work.get("material"):
        return Took(hand, good(say("Cut from which material?"), say("Touch its row.")))
    if path_of(hand):
        return _read(hand.with_work(dropped=None, ask=None), path=path_of(hand))
    return FileJob(FindCutFiles(), hand)


def _read(hand: Hand, *, file: str = "", path: str = "") -> FileJob:
    """Reads a file of the shop's folder, or one that was dropped."""
    chosen, material = str(hand.work["chosen"]), str(hand.work["material"])
    return FileJob(OpenCutFile(cut_file=chosen, material=material, file=file, path=path), hand)


def _of_units(hand: Hand, row: int) -> Took | FileJob:
    """The file is read again, in the units that its text does not say."""
    which, units = hand.work["which"], UNITS[row : row + 1]
    if not units or not isinstance(which, dict):
        return Took(hand, refuse(say("There is nothing in that row"), say("Touch a row.")))
    named = {str(name): str(value) for name, value in which.items()}
    return FileJob(OpenCutFile(**named, units=units[0]), hand.with_work(which=None))


def being_read(hand: Hand) -> Took:
    """Said to whatever else is asked of the office while a file is read."""
    share = hand.doing.share if hand.doing else 0.0
    return Took(
        hand,
        notice(
            say("A cut file is being read, {n} %", n=int(share * 100)),
            say("Wait for it, or “{stop}”.", stop=say("Stop reading")),
        ),
    )


def material_of(hand: Hand, cut_file: CutFile, view: View) -> str:
    """The material: as chosen, as in its newest revision, or the only one there is."""
    newest = view.shelf(Revision, cut_file.id, 50)
    every = view.shelf(Material, "all", 99)
    only = every[0].id if len(every) == 1 else ""
    return str(hand.work.get("material", "")) or (newest[-1].material if newest else only)


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | FileJob | None:
    """A row is a material, a file, or a shape; a part's card or a name says what a shape is."""
    name = pressed(given)
    row = row_of(name)
    if "which" in hand.work:
        return None if row is None else _of_units(hand, row)
    if "cut" not in hand.work:
        return None if row is None else _chosen_row(hand, page_of(hand) * ROWS + row, view)
    if name == "show_path":
        shown = bool(hand.work.get("path"))
        told = say("What was read of it") if shown else say("The path of the bit")
        return Took(hand.with_work(path=not shown), good(told, say("Look it over.")))
    if hand.work.get("path") and (name in PATH or row is not None):
        return _of_the_path(hand, name, row)
    if name == "save":
        return _take_in(hand)
    if not unnamed(hand):
        return None
    if isinstance(given, Code) and given.kind == "part" and (part := view.get(Part, given.number)):
        return _named(hand, part.id, part.name)
    if isinstance(given, Typed):
        return _named(hand, "", given.text.strip())
    if name == "new":
        return _named(hand, "", sizes(hand).get(unnamed(hand)[0], "").removesuffix(" mm"))
    return None


def _of_the_path(hand: Hand, name: str, row: int | None) -> Took:
    """What a card asks of the drawn path: to play it, to come closer, to show a layer or not."""
    asked = hand.work.get("asked")
    count = int(asked[0]) if isinstance(asked, list | tuple) else 0
    act = name.removeprefix("path_") if row is None else f"layer {row + 1}"
    return Took(hand.with_work(asked=[count + 1, act]), _said_of_the_path(name, row))


def _said_of_the_path(name: str, row: int | None) -> Answer:
    """The screen alone knows whether it plays and what it shows: the keys on it tell."""
    if row is not None:
        return good(say("Layer {n}", n=row + 1), say("It is shown while its key is ticked."))
    if name == "path_play":
        return good(
            say("Play or pause: done"),
            say("It plays while its key says “{pause}”.", pause=say("Pause")),
        )
    return good(Say(BUTTONS[name].words), say("Look it over."))


def _chosen_row(hand: Hand, row: int, view: View) -> Took | FileJob:
    if not hand.work.get("material"):
        every = view.shelf(Material, "all", 99)
        if row >= len(every):
            return Took(hand, refuse(say("There is nothing in that row"), say("Touch a row.")))
        return _look(hand.with_work(material=every[row].id))
    names = texts(hand, "files")
    if row >= len(names):
        return Took(hand, refuse(say("There is no file in that row"), say("Touch a file.")))
    return _read(hand, file=names[row])


def cut_of(hand: Hand) -> dict[str, object]:
    """What was read of the file."""
    cut = hand.work.get("cut")
    return dict(cut) if isinstance(cut, dict) else {}


def unnamed(hand: Hand) -> list[str]:
    """The shapes that are no part yet, in order."""
    found = cut_of(hand).get("unnamed")
    return [str(n) for n in found] if isinstance(found, list | tuple) else []


def sizes(hand: Hand) -> dict[str, str]:
    """Length and width of each shape, as text."""
    found = cut_of(hand).get("sizes")
    return {str(k): str(v) for k, v in found.items()} if isinstance(found, dict) else {}


def revision_of(hand: Hand) -> Revision | None:
    """The revision as it was read, to be drawn."""
    plain = cut_of(hand).get("revision")
    made = build("revision", plain) if isinstance(plain, dict) else None
    return made if isinstance(made, Revision) else None


def named(hand: Hand) -> dict[str, str]:
    """The names of parts that are new with this file, by the shape's own id."""
    found = cut_of(hand).get("parts")
    return {str(k): str(v) for k, v in found.items()} if isinstance(found, dict) else {}


def _named(hand: Hand, part: str, name: str) -> Took:
    """The first shape without a name is this part, or a new one of this name."""
    cut, (shape, *rest) = cut_of(hand), unnamed(hand)
    if not name or len(name) > 24:
        return Took(hand, refuse(say("That is no name"), say("Type 1 to 24 characters.")))
    if part:
        cut["revision"] = _with_part(cut["revision"], shape, part)
    else:
        cut["parts"] = {**named(hand), shape: name}
    cut["unnamed"] = rest
    next_ = say("Which part is the next shape?") if rest else say("Look it over, then take it in.")
    return Took(hand.with_work(cut=cut), good(say("That is {name}", name=name), next_))


def _with_part(plain: object, shape: str, part: str) -> dict[str, object]:
    """The revision's plain values with a shape known as a part."""
    assert isinstance(plain, dict)
    return {
        **plain,
        "shapes": [[part if n == shape else n, s] for n, s in plain["shapes"]],
        "placed": [
            {**p, "part": part if p["part"] == shape else p["part"]} for p in plain["placed"]
        ],
    }


def _take_in(hand: Hand) -> Do | Took:
    if unnamed(hand):
        return Took(
            hand, refuse(say("A shape has no name yet"), say("Scan its part, or type a name."))
        )
    cut = cut_of(hand)
    revision = cut["revision"]
    assert isinstance(revision, dict)
    args = {"revision": revision, "parts": named(hand), "file": cut["file"]}
    after = hand.with_work(
        ask=None, cut=None, path=None, asked=None, files=None, folder=None, material=None, page=0
    )
    return plain_do("take_in_file", f"cutfile/{revision['cut_file']}", args, after)
