"""Puts one fault into a drafted sheet, and marks where it stands."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from random import Random

from tests.sheets.draft import SheetDraft
from tests.sheets.lines import CutLine
from tests.sheets.manners import LEADS
from tests.sheets.shapes import Frame
from tests.sheets.strokes import make_steps


@dataclass
class Marked:
    """A fault, and the lines to cut and the steps at which it may be told.

    `anywhere`: it is the whole file's. `parts_hold`: parts come out as without it.
    """

    kind: str
    lines: set[int] = field(default_factory=set)
    steps: set[int] = field(default_factory=set)
    thickness: float = 0.0
    skipped: set[int] = field(default_factory=set)
    anywhere: bool = False
    parts_hold: bool = True


def put_fault(draft: SheetDraft, rng: Random) -> Marked | None:
    """Puts a fault in, of a kind that this sheet can have."""
    for kind in sorted(KINDS, key=lambda k: rng.random() ** (1 / SELDOM.get(k, 1)), reverse=True):
        marked = KINDS[kind](draft, rng)
        if marked:
            marked.kind = kind
            marked.thickness = marked.thickness or draft.means.thickness
            return marked
    return None


def choose_line(
    draft: SheetDraft, rng: Random, fits: Callable[[CutLine], object]
) -> tuple[int, CutLine] | None:
    """Draws one of the lines that fit."""
    fitting = [(k, line) for k, line in enumerate(draft.lines) if fits(line)]
    return rng.choice(fitting) if fitting else None


def make_again(draft: SheetDraft) -> None:
    """Makes the steps anew after lines were changed."""
    draft.steps = make_steps(draft.lines, draft.manner, draft.heights)


def is_freeing(line: CutLine) -> bool:
    """Whether a line frees a part."""
    return line.role in {"outline", "shared"}


def gouge(draft: SheetDraft, rng: Random) -> Marked | None:
    """Moves a part's lines into the part at its right."""
    if draft.laying.shared:
        return None
    pairs = [
        (k, other, room)
        for k in range(len(draft.laying.parts))
        if (found := find_right_neighbour(draft, k))
        for other, room in [found]
    ]
    if not pairs:
        return None
    part, other, room = rng.choice(pairs)
    by = complex(room - draft.means.bits[0] + rng.uniform(4, 9), 0)
    marked = Marked("")
    for k, line in enumerate(draft.lines):
        if line.part == part:
            line.track = line.track.place(Frame(by))
            marked.lines.add(k)
        elif line.part == other and is_freeing(line):
            marked.lines.add(k)
    make_again(draft)
    marked.parts_hold = False
    return marked


BOXES = {"plate", "card", "name plate", "grooved plate", "heddle"}


def find_right_neighbour(draft: SheetDraft, part: int) -> tuple[int, float] | None:
    """Gives the next part at the right of an upright box, and how far it is."""
    parts = draft.laying.parts
    _x0, y0, x1, y1 = parts[part].box
    best: tuple[float, int] | None = None
    for k, other in enumerate(parts):
        u0, v0, _, v1 = other.box
        level = min(y1, v1) - max(y0, v0) > 20 and min(abs(other.frame.turn.real), 1) in {0.0, 1.0}
        if k != part and level and u0 > x1 and other.model.name in BOXES and (
            best is None or u0 - x1 < best[0]
        ):  # fmt: skip
            best = (u0 - x1, k)
    upright = parts[part].frame.turn in {1, -1, 1j, -1j} and parts[part].model.name in BOXES
    return (best[1], best[0]) if best and upright and best[0] < 40 else None


def cut_inside_late(draft: SheetDraft, rng: Random) -> Marked | None:
    """Cuts a hole of a part, or its last pass, after the part is free."""
    if draft.manner.hold != "through" or draft.laying.shared or draft.manner.form == "nested":
        return None
    roles = {"hole", "slot", "drilled"}
    chosen = choose_line(draft, rng, lambda n: n.role in roles and n.part is not None)
    if not chosen:
        return None
    index, line = chosen
    draft.lines.pop(index)
    if len(line.floors) > 1 and line.entry == "plunge" and line.role == "hole":
        draft.lines.insert(index, replace(line, floors=line.floors[:-1]))
        line.floors = line.floors[-1:]
    last = max(k for k, n in enumerate(draft.lines) if n.part == line.part and is_freeing(n))
    draft.lines.insert(last + 1, line)
    make_again(draft)
    return Marked("", {last + 1})


def leave_thin_tab(draft: SheetDraft, rng: Random) -> Marked | None:
    """Leaves next to nothing of a tab: too short for the bit's width, or too low."""
    chosen = choose_line(draft, rng, lambda n: is_freeing(n) and n.tabs)
    if not chosen:
        return None
    index, line = chosen
    if line.tab_form in {"step", "lift"} and rng.random() < 0.6:
        k = rng.randrange(len(line.tabs))
        a, b = line.tabs[k]
        half = (line.wide + rng.uniform(0.2, 0.4)) / 2
        line.tabs[k] = ((a + b) / 2 - half, (a + b) / 2 + half)
    elif line.tab_form != "lift":
        line.tab_top = -draft.means.thickness + rng.choice([0.1, 0.15, 0.2])
    else:
        return None
    make_again(draft)
    return Marked("", {index}, parts_hold=False)


def cut_tab(draft: SheetDraft, rng: Random) -> Marked | None:
    """Leaves tabs in an earlier pass and cuts them in the last one."""
    chosen = choose_line(draft, rng, lambda n: is_freeing(n) and n.tabs)
    if not chosen:
        return None
    index, line = chosen
    if not any(floor < line.tab_top - 0.05 for floor in line.floors[:-1]):
        line.floors.insert(-1, (min(line.tab_top, 0.0) + line.floors[-1]) / 2)
    every = rng.random() < 0.3 and not line.holds
    line.lost = set(range(len(line.tabs))) if every else {rng.randrange(len(line.tabs))}
    make_again(draft)
    return Marked("", {index}, parts_hold=not line.holds)


def go_too_deep(draft: SheetDraft, rng: Random) -> Marked | None:
    """Cuts one line far into the spoilboard."""
    through = -draft.means.thickness + 0.01
    chosen = choose_line(draft, rng, lambda n: n.floors[-1] < through)
    if not chosen:
        return None
    index, line = chosen
    line.floors[-1] -= round(rng.uniform(1.5, 4.0), 1)
    make_again(draft)
    return Marked("", {index})


def plunge_fast(draft: SheetDraft, rng: Random) -> Marked | None:
    """Plunges at the feed of cutting, because one word is missing."""
    chosen = choose_line(
        draft,
        rng,
        lambda n: n.entry in {"plunge"} | LEADS and n.role != "drilled",
    )
    if not chosen:
        return None
    index, line = chosen
    line.plunge = line.feed = max(line.feed, 3600.0)
    make_again(draft)
    return Marked("", {index})


def go_deep_at_once(draft: SheetDraft, rng: Random) -> Marked | None:
    """Cuts a line in one pass far deeper than its bit is wide."""
    pocketed = {n.part for n in draft.lines if n.role == "pocket"}  # a hole may go on from there
    chosen = choose_line(
        draft, rng,
        lambda n: n.role != "drilled" and n.entry != "helix" and -n.floors[-1] >= 3.4 * n.wide
        and not (n.role == "hole" and n.part in pocketed),
    )  # fmt: skip
    if not chosen:
        return None
    index, line = chosen
    line.floors = line.floors[-1:]
    make_again(draft)
    return Marked("", {index})


def change_low(draft: SheetDraft, _rng: Random) -> Marked | None:
    """Has the bit changed while it stands in the sheet."""
    if draft.manner.distance == "relative":
        return None
    steps = draft.steps
    changes = [k for k, step in enumerate(steps) if step.kind == "change"]
    if len(changes) < 2:
        return None
    at = changes[1]
    begin = at
    while steps[begin - 1].kind == "rapid":
        begin -= 1
    if steps[begin - 1].kind != "feed" or steps[begin - 1].z > -0.3:
        return None
    low = steps[begin - 1].z
    steps[begin : at + 1] = [steps[at]._replace(text="low", z=low)]
    return Marked("", steps={begin - 1, begin, begin + 1})


def cut_twice(draft: SheetDraft, rng: Random) -> Marked | None:
    """Cuts a line again after everything else."""
    chosen = choose_line(
        draft, rng, lambda n: n.role in {"outline", "hole", "slot"} and n.bit == 0
    )
    if not chosen or draft.manner.form == "halves":
        return None
    index, line = chosen
    draft.lines.append(replace(line, tabs=list(line.tabs), lost=set(line.lost)))
    make_again(draft)
    return Marked("", {index, len(draft.lines) - 1})


def take_other_sheet(draft: SheetDraft, rng: Random) -> Marked | None:
    """Has the file of another thickness. Strips that are ripped in one pass from beside the sheet,
    from a zero on the spoilboard, come out right unless rapids run through what is thicker.
    """
    thick = draft.means.thickness
    others = [t for t in (3.0, 6.0, 9.0, 12.0, 18.0) if abs(t - thick) >= 2]
    ripped = draft.manner.form == "strips" and draft.manner.zero == "bed"
    if ripped and all(len(line.floors) == 1 for line in draft.lines):
        others = [t for t in others if t > thick + draft.heights.between]
    if not others:
        return None
    return Marked("", thickness=rng.choice(others), anywhere=True, parts_hold=False)


def go_low(draft: SheetDraft, rng: Random) -> Marked | None:
    """Goes from one line to the next by rapid, in the material."""
    if draft.manner.hold == "onion":
        return None
    steps = draft.steps
    places = [
        k for k in range(1, len(steps) - 1)
        if steps[k - 1].kind == "feed" and steps[k - 1].z < -1
        and steps[k].kind == steps[k + 1].kind == "rapid" and steps[k].to == steps[k - 1].to
        and abs(steps[k + 1].to - steps[k].to) > 25
    ]  # fmt: skip
    if not places:
        return None
    k = rng.choice(places)
    steps[k : k + 2] = [steps[k + 1]._replace(z=steps[k - 1].z, line=None)]
    return Marked("", steps={k}, parts_hold=False)


def leave_spindle_off(draft: SheetDraft, rng: Random) -> Marked | None:
    """Forgets to start the spindle after a change."""
    starts = [k for k, step in enumerate(draft.steps) if step.kind == "start"]
    at = rng.choice(starts)
    draft.steps[at] = draft.steps[at]._replace(text="off")
    end = next((k for k in starts if k > at), len(draft.steps))
    return Marked("", steps=set(range(at, end)), parts_hold=False)


def skip_part(draft: SheetDraft, rng: Random) -> Marked | None:
    """Puts all of a part behind slashes: the router may skip it."""
    if draft.laying.shared or draft.manner.distance == "relative":
        return None
    part = rng.randrange(len(draft.laying.parts))
    lines = {k for k, line in enumerate(draft.lines) if line.part == part}
    return Marked("", lines, skipped=set(lines), parts_hold=False)


def leave_uncut(draft: SheetDraft, rng: Random) -> Marked | None:
    """Does not go through all along an outline: too shallow, or a spiral without a level lap."""
    if draft.manner.hold == "onion":
        return None
    chosen = choose_line(draft, rng, is_freeing)
    if not chosen:
        return None
    index, line = chosen
    thick = draft.means.thickness
    if line.entry == "helix" and len(line.floors) > 1 and line.floors[-2] > 0.5 - thick:
        line.unlevel = True
    else:
        line.floors[-1] = rng.uniform(0.7, min(1.5, thick / 3)) - thick
        line.floors = [z for z in line.floors[:-1] if z > line.floors[-1]] + line.floors[-1:]
    make_again(draft)
    return Marked("", {index}, parts_hold=False)


KINDS: dict[str, Callable[[SheetDraft, Random], Marked | None]] = {
    "gouge": gouge, "late inside": cut_inside_late, "thin tab": leave_thin_tab,
    "tab cut": cut_tab, "too deep": go_too_deep, "plunge fast": plunge_fast,
    "pass deep": go_deep_at_once, "change low": change_low, "twice": cut_twice,
    "other thickness": take_other_sheet, "rapid low": go_low, "spindle off": leave_spindle_off,
    "skipped": skip_part, "uncut": leave_uncut,
}  # fmt: skip

# Few sheets can have these, so where one can it is drawn more often.
SELDOM = {
    "late inside": 12, "gouge": 4, "thin tab": 4, "tab cut": 4, "change low": 5, "pass deep": 7,
    "twice": 4, "skipped": 2, "plunge fast": 2,
}  # fmt: skip
