"""Holds what a reader found against the truth of a sheet."""

from dataclasses import dataclass, field

from tests.sheets.truth import KNOW, Found, FoundGroup, FoundProblem, TrueGroup, WrittenSheet

NEAR = 1.5  # mm, how far the middle of a found part may be from the true one

# What else says a fault in other words.
ALSO = {
    "other thickness": {"too deep", "uncut", "rapid low", "pass deep"},
    "tab cut": {"thin tab"},
    "thin tab": {"tab cut"},
    "rapid low": {"gouge"},
}


@dataclass
class Verdict:
    """How a reader did on one sheet. `parts` to `tabs` are None where a fault changes the parts.

    `fault`: "found" (its kind, at its lines), "elsewhere" (its kind, at other lines), "other
    kind" (at its lines), "missed", or "" on a clean sheet. `alarms` count on clean sheets only.
    """

    parts: bool | None = None
    groups: bool | None = None
    features: bool | None = None
    tabs: bool | None = None
    sizes: list[float] = field(default_factory=list)
    fault: str = ""
    alarms: list[str] = field(default_factory=list)
    told: list[str] = field(default_factory=list)


def judge(sheet: WrittenSheet, found: Found) -> Verdict:
    """Judges what was found of a sheet."""
    verdict = Verdict()
    grave = [p for p in found.problems if p.grade != KNOW]
    if sheet.fault:
        verdict.fault = judge_fault(sheet, grave)
    else:
        verdict.alarms = [p.kind for p in grave]
    if sheet.parts_hold:
        judge_parts(sheet, found, verdict)
    return verdict


def judge_fault(sheet: WrittenSheet, problems: list[FoundProblem]) -> str:
    """Tells how well a sheet's fault was found."""
    fault = sheet.fault
    assert fault
    words = {fault.kind} | ALSO.get(fault.kind, set())
    same = [p for p in problems if p.kind in words]
    here = [p for p in problems if is_at(p.line, fault.lines)]
    if any(p in here for p in same):
        return "found"
    if same:
        return "elsewhere"
    return "other kind" if here else "missed"


def is_at(line: int | None, spans: tuple[tuple[int, int], ...]) -> bool:
    """Whether a line is in one of the spans; no spans are the whole file."""
    return not spans or (line is not None and any(a <= line <= b for a, b in spans))


def judge_parts(sheet: WrittenSheet, found: Found, verdict: Verdict) -> None:
    """Holds found parts against true ones, by where they lie."""
    left = [
        (k, place, group.tabs[n] if n < len(group.tabs) else 0)
        for k, group in enumerate(found.groups)
        for n, place in enumerate(group.places)
    ]
    verdict.parts = verdict.groups = verdict.features = verdict.tabs = True
    for group in sheet.groups:
        matched = []
        for place, tabs in zip(group.places, group.tabs, strict=True):
            near = find_piece(group, place, left, found.groups)
            if near is None or abs(near[1] - place) > NEAR:
                verdict.parts = verdict.groups = verdict.features = verdict.tabs = False
                verdict.told.append(f"no {group.name} at {place:.1f}")
                continue
            left.remove(near)
            matched.append(near[0])
            if near[2] != tabs:
                verdict.tabs = False
                verdict.told.append(f"{near[2]} tabs, not {tabs}: {group.name} at {place:.1f}")
        judge_group(group, [found.groups[k] for k in sorted(set(matched))], verdict)
    if len(left) > sheet.rest:
        verdict.parts = verdict.groups = False
        verdict.told.append(f"{len(left)} parts that are none, one at {left[0][1]:.1f}")


def find_piece(
    group: TrueGroup,
    place: complex,
    left: list[tuple[int, complex, int]],
    groups: list[FoundGroup],
) -> tuple[int, complex, int] | None:
    """Gives the found piece that lies there; of two in each other, the one of its size."""

    def away(piece: tuple[int, complex, int]) -> float:
        off = abs(piece[1] - place)
        return off if off > NEAR else 1e-3 * find_size_error(group, groups[piece[0]])

    return min(left, key=away, default=None)


def judge_group(group: TrueGroup, found: list[FoundGroup], verdict: Verdict) -> None:
    """Holds one group against the found groups that its parts are in."""
    counts = {group.count, group.count + group.turned}
    if len(found) != 1 or found[0].count not in counts:
        verdict.groups = False
        verdict.told.append(f"{group.count} of {group.name} are {[f.count for f in found]}")
    for one in found:
        verdict.sizes.append(find_size_error(group, one))
        openings = one.n_holes + one.n_slots  # where a hole ends and a slot begins, nobody agrees
        if (
            openings not in {group.openings, group.openings + group.notches}
            or one.n_pockets != group.pockets
        ):
            verdict.features = False
            verdict.told.append(
                f"{group.name}: openings {openings} not {group.openings} (+{group.notches}), "
                f"pockets {one.n_pockets} not {group.pockets}"
            )


def find_size_error(group: TrueGroup, found: FoundGroup) -> float:
    """Gives by how many mm a found size is off, whichever side is called its width."""
    size = (found.width, found.height)
    return min(max(abs(a - c), abs(b - d)) for a, b in group.sizes for c, d in (size, size[::-1]))
