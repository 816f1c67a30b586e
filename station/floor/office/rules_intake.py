"""A cut file's text becomes a revision: its letter, and the parts that are new with it."""

from dataclasses import replace
from string import ascii_uppercase

from station.floor.office.approval import supervised
from station.shop.acts import Act, Answer, good, refuse
from station.shop.codes import usable
from station.shop.facts import CutFile, Fact, Material, Part, Revision
from station.shop.plain import build
from station.shop.views import Rule, Rules, View
from station.shop.words import say

MOST_PARTS = 999


def take_in_file(act: Act, view: View) -> Answer:
    """A new revision of a cut file, to be looked at and approved."""
    if asked := supervised(act):
        return asked
    cut_file = view.get(CutFile, act.subject.partition("/")[2])
    plain = act.args.get("revision")
    made = build("revision", plain) if isinstance(plain, dict) else None
    cuts_out = cut_file is None or cut_file.work == "parts"
    if cut_file is None or not isinstance(made, Revision) or (cuts_out and not made.placed):
        return refuse(say("No part was found in that file"), say("Read another file."))
    if view.get(Material, made.material) is None:
        return refuse(say("There is no such material"), say("Enter the material first."))
    before = view.shelf(Revision, cut_file.id, 50)
    if same := next((r for r in before if r.digest == made.digest), None):
        return refuse(
            say("That text is revision {letter} already", letter=same.letter),
            say("Read another file."),
        )
    letter = next_letter({r.letter for r in before})
    if not letter:
        return refuse(say("No letter is left for it"), say("Make a new cut file."))
    names = act.args.get("parts")
    parts = _new_parts(dict(names) if isinstance(names, dict) else {}, made, view)
    if parts is None:
        return refuse(say("A part of it is not known"), say("Read the file again."))
    return good(
        say("Revision {letter} of {name} is in", letter=letter, name=cut_file.name),
        say("Look it over, then approve it."),
        sets=(
            _lettered(made, cut_file.id, letter, parts),
            *parts.values(),
            *_shaped(made, parts, view),
        ),
    )


def next_letter(taken: set[str]) -> str:
    """The first letter after the last one taken; empty past Z."""
    last = max((ascii_uppercase.index(t) for t in taken if t in ascii_uppercase), default=-1)
    return ascii_uppercase[last + 1 : last + 2]


def _new_parts(names: dict[str, object], made: Revision, view: View) -> dict[str, Part] | None:
    """New parts by the shape's own id; None when a shape is neither known nor named."""
    known = {p.id for p in view.shelf(Part, "all", MOST_PARTS)}
    free = (n for n in (f"{n:03d}" for n in range(1, MOST_PARTS)) if _free(n, known))
    found = {}
    for shape, outline in made.shapes:
        if shape in names:
            name = str(names[shape])
            found[shape] = Part(id=next(free), name=name, words=name, shape=outline)
        elif shape not in known:
            return None
    return found


def _shaped(made: Revision, new: dict[str, Part], view: View) -> list[Part]:
    """Known parts that had no shape yet, with the one that the file cuts."""
    known = ((view.get(Part, s), outline) for s, outline in made.shapes if s not in new)
    return [replace(p, shape=outline) for p, outline in known if p and p.shape is None]


def _free(number: str, known: set[str]) -> bool:
    return number not in known and usable("part", number)


def _lettered(made: Revision, cut_file: str, letter: str, parts: dict[str, Part]) -> Fact:
    ids = {shape: part.id for shape, part in parts.items()}
    return replace(
        made,
        id=Revision.id_of(cut_file, letter),
        letter=letter,
        shapes=tuple((ids.get(s, s), outline) for s, outline in made.shapes),
        placed=tuple(replace(p, part=ids.get(p.part, p.part)) for p in made.placed),
    )


RULES: Rules = {
    "take_in_file": Rule(frozenset({CutFile, Revision, Material, Part}), take_in_file),
}
