"""Makes a cut file's text a revision: its letter, and the parts that are new with it."""

from dataclasses import replace
from string import ascii_uppercase

from station.floor.office.acts import TakeInFile
from station.floor.office.approval import ask_supervisor
from station.shop.acts import Act, Answer, good, refuse
from station.shop.codes import usable
from station.shop.facts import CutFile, Fact, Material, Part, Revision
from station.shop.views import Rule, Rules, View, by_kind
from station.shop.words import say

MOST_PARTS = 999


def take_in_file(act: Act[TakeInFile], view: View) -> Answer:
    """Takes in a new revision of a cut file, to be looked at and approved."""
    if asked := ask_supervisor(act):
        return asked
    cut_file, made = view.get(CutFile, act.subject.partition("/")[2]), act.args.revision
    if cut_file is None or (cut_file.work == "parts" and not made.placed):
        return refuse(say("No part was found in that file"), say("Read another file."))
    if view.get(Material, made.material) is None:
        return refuse(say("There is no such material"), say("Enter the material first."))
    before = view.shelf(Revision, cut_file.id, 50)
    if same := next((r for r in before if r.digest == made.digest), None):
        return refuse(
            say("That text is revision {letter} already", letter=same.letter),
            say("Read another file."),
        )
    letter = find_letter({r.letter for r in before})
    if not letter:
        return refuse(say("No letter is left for it"), say("Make a new cut file."))
    parts = _make_parts(act.args.parts, made, view)
    if parts is None:
        return refuse(say("A part of it is not known"), say("Read the file again."))
    return good(
        say("Revision {letter} of {name} is in", letter=letter, name=cut_file.name),
        say("Look it over, then approve it."),
        sets=(
            _give_letter(made, cut_file.id, letter, parts),
            *parts.values(),
            *_give_shapes(made, parts, view),
        ),
    )


def find_letter(taken: set[str]) -> str:
    """Finds the first letter after the last one taken; empty past Z."""
    last = max((ascii_uppercase.index(t) for t in taken if t in ascii_uppercase), default=-1)
    return ascii_uppercase[last + 1 : last + 2]


def _make_parts(names: dict[str, str], made: Revision, view: View) -> dict[str, Part] | None:
    """Makes the new parts by the shape's own id; None when a shape is neither known nor named."""
    known = {p.id for p in view.shelf(Part, "all", MOST_PARTS)}
    free = (n for n in (f"{n:03d}" for n in range(1, MOST_PARTS)) if _is_free(n, known))
    found = {}
    for shape, outline in made.shapes:
        if shape in names:
            name = names[shape]
            found[shape] = Part(id=next(free), name=name, words=name, shape=outline)
        elif shape not in known:
            return None
    return found


def _give_shapes(made: Revision, new: dict[str, Part], view: View) -> list[Part]:
    """Gives known parts that had no shape yet the one that the file cuts."""
    known = ((view.get(Part, s), outline) for s, outline in made.shapes if s not in new)
    return [replace(p, shape=outline) for p, outline in known if p and p.shape is None]


def _is_free(number: str, known: set[str]) -> bool:
    return number not in known and usable("part", number)


def _give_letter(made: Revision, cut_file: str, letter: str, parts: dict[str, Part]) -> Fact:
    ids = {shape: part.id for shape, part in parts.items()}
    return replace(
        made,
        id=Revision.id_of(cut_file, letter),
        letter=letter,
        shapes=tuple((ids.get(s, s), outline) for s, outline in made.shapes),
        placed=tuple(replace(p, part=ids.get(p.part, p.part)) for p in made.placed),
    )


RULES: Rules = by_kind(
    Rule(
        args=TakeInFile,
        reads=frozenset({CutFile, Revision, Material, Part}),
        decide=take_in_file,
    )
)
