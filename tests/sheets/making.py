"""Makes one sheet from a seed: its parts, strokes, text and truth."""

from collections import defaultdict
from collections.abc import Sequence
from math import pi
from random import Random

from tests.sheets.as_cut import find_cut_sizes
from tests.sheets.draft import SheetDraft
from tests.sheets.faults import Marked, put_fault
from tests.sheets.laying import LaidPart, lay_out
from tests.sheets.lines import CutLine, choose_sizes, plan_lines
from tests.sheets.manners import Manner, choose_manner
from tests.sheets.models import MAIN, Means
from tests.sheets.shapes import Track
from tests.sheets.strokes import Heights, make_steps
from tests.sheets.truth import TrueFault, TrueGroup, WrittenSheet
from tests.sheets.writing import TextWriter

SIZES = ((600, 400), (600, 400), (900, 600), (1220, 610), (1250, 800), (2440, 1220), (2500, 1250))
THICK = (3.0, 4.0, 5.0, 6.0, 6.5, 9.0, 12.0, 15.0, 18.0)
WIDE = (3.0, 3.175, 4.0, 5.0, 6.0, 6.0, 6.35, 8.0)
NARROW = (2.0, 2.5, 3.0, 3.175)


def make_draft(seed: int, *, small: bool = False) -> SheetDraft:
    """Draws a sheet; `small` keeps to 600 × 400."""
    rng = Random(seed)
    manner = choose_manner(rng)
    size = SIZES[0] if small else rng.choice(SIZES)
    means = choose_means(rng, manner, size)
    sizes = choose_sizes(rng, manner, means)
    gap = choose_gap(rng, manner, means.bits[MAIN], sizes.lead)
    laying = lay_out(rng, manner.form, size, means, gap, manner.beside)
    while not laying.parts:
        laying = lay_out(rng, manner.form, size, means, gap, manner.beside)
    lines = plan_lines(rng, laying, manner, means, sizes)
    safe, between = rng.choice([10.0, 15.0, 20.0, 25.0]), rng.choice([3.0, 5.0, 8.0])
    heights = Heights(safe, between, rng.choice([0.5, 1.0, 1.0, 2.0, between]))
    return SheetDraft(
        rng, manner, means, size, laying, lines, heights, make_steps(lines, manner, heights)
    )


def choose_means(rng: Random, manner: Manner, size: tuple[float, float]) -> Means:
    """Draws thickness and bits: main, for small details, for engraving."""
    thick = rng.choice(THICK)
    main = rng.choice([w for w in WIDE if w * 4 >= thick])
    count = {"one": 1, "two": 2}.get(manner.bits, 3)
    others = [w for w in NARROW if w < main and w * 5 >= thick] or [main * 0.75]
    fine = rng.choice(others)
    mark = 6.0 if manner.bits == "three, V" else 2.0 if fine != 2.0 else 1.5
    bits = (main, fine, mark)[:count]
    return Means(thick, bits, min(size[1] * 0.45, 220.0))


def choose_gap(rng: Random, manner: Manner, bit: float, lead: float) -> float:
    """Draws how far parts lie apart: tabs need waste between the strokes, leads some more."""
    if manner.gap == "wide":
        return round(2 * bit + lead + rng.choice([2.0, 4.0, 8.0]), 1)
    return round(bit + rng.choice([1.0, 3.0, 10.0]), 1)


def make_sheet(seed: int, *, small: bool = False) -> WrittenSheet:
    """Gives the sheet of a seed, its text and its truth; odd seeds have a fault."""
    draft = make_draft(seed, small=small)
    marked = put_fault(draft, Random(f"fault {seed}")) if seed % 2 else None
    return write_draft(seed, draft, marked)


def write_draft(seed: int, draft: SheetDraft, marked: Marked | None = None) -> WrittenSheet:
    """Writes a draft's text, and finds the lines of its fault."""
    means, manner = draft.means, draft.manner
    writer = TextWriter(draft.rng, manner, means.thickness, draft.size, means.bits, draft.heights)
    written = writer.write(draft.steps, marked.skipped if marked else ())
    told = manner.remark != "none" and draft.rng.random() < 0.5
    first = next(s.bit for s in draft.steps if s.kind == "change")
    return WrittenSheet(
        seed=seed, text=written.text, thickness=marked.thickness if marked else means.thickness,
        size=draft.size, zero=manner.zero, bit=None if told else means.bits[first],
        bits=means.bits, groups=find_groups(draft, writer), rest=draft.laying.rest,
        fault=find_fault(draft, marked, written.lines) if marked else None,
        parts_hold=marked is None or marked.parts_hold,
        habits=(*manner.rows(), *name_parts(draft)),
    )  # fmt: skip


def name_parts(draft: SheetDraft) -> list[tuple[str, str]]:
    """Gives the kinds of parts on a sheet as rows of the table, too."""
    names = {part.model.name.split(" with")[0].split(" wider")[0] for part in draft.laying.parts}
    return [("part", name) for name in sorted(names)]


def find_fault(draft: SheetDraft, marked: Marked, lines: Sequence[tuple[int, int]]) -> TrueFault:
    """Gives a fault with its lines in the text, joined where they follow each other."""
    spans: list[tuple[int, int]] = []
    for k, (step, (first, last)) in enumerate(zip(draft.steps, lines, strict=True)):
        if step.line not in marked.lines and k not in marked.steps:
            continue
        if spans and first <= spans[-1][1] + 1:
            spans[-1] = (spans[-1][0], max(last, spans[-1][1]))
        else:
            spans.append((first, last))
    return TrueFault(marked.kind, () if marked.anywhere else tuple(spans))


def find_groups(draft: SheetDraft, writer: TextWriter | None = None) -> tuple[TrueGroup, ...]:
    """Gives the groups of equal parts; what is mirrored is a kind of its own.

    With the `writer` of its text their sizes are as the strokes leave them.
    """
    kinds: dict[tuple[str, bool], list[int]] = defaultdict(list)
    for k, part in enumerate(draft.laying.parts):
        kinds[part.kind, part.frame.mirrored].append(k)
    return tuple(find_group(draft, members, writer) for members in kinds.values())


def count_turned(parts: Sequence[LaidPart], part: LaidPart) -> int:
    """Counts what is equal to a part when turned over: mirrored, with nothing blind in it."""
    if any(feature.depth for feature in part.model.features):
        return 0
    mirrored = part.frame.mirrored
    return sum(p.model is part.model and p.frame.mirrored != mirrored for p in parts)


def find_group(
    draft: SheetDraft, members: Sequence[int], writer: TextWriter | None = None
) -> TrueGroup:
    """Gives one group of equal parts."""
    parts = [draft.laying.parts[k] for k in members]
    model = parts[0].model
    boxes = [part.box for part in parts]
    drawn = model.outline.trace(0.0).bounds()
    sizes = {(round(b[2] - b[0], 4), round(b[3] - b[1], 4)) for b in [drawn, *boxes]}
    sizes.add(find_least_box(model.outline.trace(0.0)))
    sizes = (find_cut_sizes(draft, members[0], writer) if writer else set()) or sizes
    return TrueGroup(
        name=model.name + (" mirrored" if parts[0].frame.mirrored and model.handed else ""),
        sizes=tuple(sorted(sizes)),
        holes=model.count("hole", "drilled"), slots=model.count("slot"),
        notches=model.count("notch"), pockets=model.count("pocket", "groove", "engraving"),
        places=tuple(complex((b[0] + b[2]) / 2, (b[1] + b[3]) / 2) for b in boxes),
        tabs=tuple(count_tabs(draft.lines, k) for k in members),
        area=find_area(parts[0], draft.means),
        turned=count_turned(draft.laying.parts, parts[0]),
    )  # fmt: skip


def find_least_box(track: Track) -> tuple[float, float]:
    """Gives the sides of the least box about a closed track, turned as it may."""
    step = max(track.length / 400, 0.2)
    points = [seg.a for seg in track.segs]
    points += [track.find(step * k) for k in range(int(track.length / step))]
    turns = [1j ** (k / 45) for k in range(90)]
    turns += [
        (seg.b - seg.a).conjugate() / abs(seg.b - seg.a) for seg in track.segs if not seg.sweep
    ]

    def measure(turn: complex) -> tuple[float, float]:
        turned = [point * turn for point in points]
        xs, ys = [p.real for p in turned], [p.imag for p in turned]
        return max(xs) - min(xs), max(ys) - min(ys)

    def area(turn: complex) -> float:
        return measure(turn)[0] * measure(turn)[1]

    best = min(turns, key=area)
    for little in (1j ** (0.5**k / 90) for k in range(12)):
        best = min(best * little, best, best / little, key=area)
    found = measure(best)
    return round(found[0], 3), round(found[1], 3)


def count_tabs(lines: Sequence[CutLine], part: int) -> int:
    """Counts the tabs that hold a part; those of a line that is cut again stand once."""
    once = {id(line.track): line for line in lines}.values()
    return sum(
        (len(line.tabs) if line.part == part else line.holds.count(part)) - len(line.lost)
        for line in once
        if line.part == part or part in line.holds
    )


def find_area(part: LaidPart, means: Means) -> float:
    """Gives what a part covers, in mm², with the round corners that bits leave."""
    area = abs(part.model.outline.as_cut(means.bits[MAIN], inside=False).area())
    for feature in part.model.features:
        wide = means.bit(feature.bit)
        if feature.kind in {"hole", "drilled"}:
            assert feature.outline
            area -= abs(feature.outline.as_cut(wide, inside=True).area())
        elif feature.kind == "slot":
            assert feature.stroke
            area -= feature.stroke.length * wide + pi * wide**2 / 4
        elif feature.kind == "notch":
            assert feature.stroke
            deep = feature.stroke.length - means.bits[MAIN] / 2 - 0.5
            area -= deep * wide + pi * wide**2 / 8
    return area
