"""The traveller: the paper that goes with a batch, and a slip for each of its sheets."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from station.papers import bars, drawing, slips, table
from station.papers.page import (
    LEADING,
    LEGIBLE,
    MM,
    Page,
    measure_code,
    say_moment,
    say_moment_in_full,
)
from station.papers.spoken import Text, join, tell_caution
from station.queries.why_cut import read_why
from station.shop import lengths
from station.shop.cautions import CAUTIONS
from station.shop.codes import write
from station.shop.facts import Batch, CutFile, Material, Part, Revision, Router, Shop
from station.shop.facts.machines import BEDS
from station.shop.words import Say, kilograms, length, say, together

CARE = 14.0  # mm, the caution's box where its words are short
STEPS = (say("Loading"), say("Popping"), say("Trimming"), say("Packing"), say("Cart"))


class FittedCaution(NamedTuple):
    """The usual cautions as lines of a size that can be read, and how high their box is."""

    lines: list[str]
    size: float
    high: float


def make_traveller(
    batch: Batch,
    cut_file: CutFile,
    revision: Revision,
    material: Material | None,
    router: Router | None,
    parts: Mapping[str, Part],
    *,
    pieces: Mapping[str, int] | None = None,
    orders: int = 0,
    first_due: str = "",
    runs: Sequence[Text] = (),
    racks: Mapping[str, str] = {},
    laser: bool = False,
    printed: str,
    paper: str = "A4",
    shop: Shop,
) -> Page:
    """Makes a batch's traveller.

    A child (split off, or to be made good) has no sheets and no slips: it shows its own `pieces`
    by part. `runs`: those of each sheet in order, where it is several. `racks` names the rack
    place of each part.
    """
    page = Page.make(paper, say("Traveller of batch {batch}", batch=batch.id))
    rows = table.make_rows(batch, revision, parts, pieces or {}, racks)
    y = _draw_head(page, batch, cut_file)
    y = _draw_what(page, y, batch, cut_file, revision, material, router)
    y = _draw_file(page, y, revision) if batch.has_sheets else y
    held = [row for row in revision.makes() if batch.has_sheets or row in (pieces or {})]
    y = _draw_sizes(page, y, [p for row in held if (p := parts.get(row))])
    y = _draw_reason(page, y, batch, orders, first_due)
    y = _draw_runs(page, y, runs) if batch.has_sheets else y
    caution = _fit_caution(page, material, batch, shop, laser=laser)
    _draw_body(page, y, batch, revision, parts, pieces or {}, rows, caution, printed)
    return page


def _draw_body(
    page: Page, y: float, batch: Batch, revision: Revision, parts: Mapping[str, Part],
    pieces: Mapping[str, int], rows: list[table.CountRow], care: FittedCaution, printed: str,
) -> None:  # fmt: skip
    """Draws what stands below the head: drawing, table, signatures, caution, foot, slips."""
    foot = slips.find_top(page, batch) - 3
    signed = foot - 5 - care.high - 2 - _signature_height(page)
    room = signed - 5 - y - table.measure_table(page, len(rows))
    if not batch.has_sheets:
        y = _draw_own_parts(page, y, batch, parts, pieces, room)
    else:
        y = _draw_sheet(page, y, batch, revision, room)
    rest = table.draw_table(
        page, y, rows, signed - 2, table.CUT if batch.has_sheets else table.PIECES
    )
    _draw_signatures(page, signed, STEPS if batch.has_sheets else STEPS[1:])
    _draw_caution(page, foot - 5 - care.high, care)
    _draw_foot(page, foot, batch, printed)
    slips.draw_first(page, batch)
    while rest:
        page.turn_page()
        said = say("Batch {batch}, copy {copy}: more to count", batch=batch.id, copy=batch.copy)
        page.draw_text(page.edge, 9, said, 10, bold=True)
        rest = table.draw_table(page, 12, rest, page.height - 12)
    slips.draw_further(page, batch)


def _draw_head(page: Page, batch: Batch, cut_file: CutFile) -> float:
    """Draws the number in large, the code at its right, the title below."""
    code = write("batch", batch.id, batch.copy)
    up = 0 if page.is_large else 5
    page.draw_text(page.edge, 14 - up, say("Batch"), 11)
    room = page.right - measure_code(code) - page.edge
    page.draw_fitted(
        page.edge, 30 - 1.8 * up, room, batch.id, 46 if page.is_large else 34, bold=True
    )
    _draw_code(page, 9 - up, code, height=16, size=12)
    title = cut_file.words or cut_file.name
    return page.draw_wrapped(page.edge, 43 - 1.8 * up, page.inner, title, 18, bold=True, most=2)


def _draw_code(page: Page, y: float, code: str, *, height: float, size: float) -> None:
    """Draws a code at the right edge: its last bar stands there, its quiet zone is the margin."""
    page.draw_code(
        page.right + bars.measure_quiet() - measure_code(code), y, code, height=height, size=size
    )


def _draw_what(
    page: Page,
    y: float,
    batch: Batch,
    cut_file: CutFile,
    revision: Revision,
    material: Material | None,
    router: Router | None,
) -> float:
    """Draws material, sheets, router, cut file and revision; for a child what it is."""
    size = f"{lengths.write(revision.length_mm)} × {lengths.write(revision.width_mm)}"
    # The revision first: whatever long names push off the paper, it is not that.
    words: list[Text] = [
        say("revision {letter} of cut file {file}", letter=batch.revision, file=cut_file.name)
    ]
    if not batch.has_sheets:
        words.insert(0, _say_role(batch))
        words.append(material.name if material else size)
        return page.draw_wrapped(page.edge, y + 6, page.inner, join(*words), 11, most=3)
    words.append(say("{n} {n|sheet|sheets}", n=batch.sheets))
    words.append(f"{material.name} {size}" if material else size)
    if router:
        words.append(say("{router}, {bed}", router=router.name, bed=BEDS[router.bed]))
    return page.draw_wrapped(page.edge, y + 6, page.inner, join(*words), 11, most=3)


def _say_role(batch: Batch) -> Say:
    """Says what a child is: split off or to be made good, and from which batches."""
    parents = together([say("{batch}", batch=number) for number in batch.parents]) or say(
        "not known"
    )
    if batch.role == "split":
        return say("split off from batch {parents}", parents=parents)
    return say(
        "to be made good, try {n} of 2, from batch {parents}", n=batch.tries, parents=parents
    )


def _draw_file(page: Page, y: float, revision: Revision) -> float:
    """Draws which file is opened at the router, and the bits that it wants."""
    bits = ", ".join(f"{use.number}: {lengths.write(use.diameter_mm)}" for use in revision.bits)
    told = join(
        say("open {file}", file=revision.file) if revision.file else "",
        say("bits {bits} {unit}", bits=bits, unit=lengths.name_unit("mm")) if bits else "",
    )
    if not told:
        return y
    return page.draw_wrapped(page.edge, y + 6.5, page.inner, told, 13, bold=True, most=2)


def _draw_sizes(page: Page, y: float, parts: Sequence[Part]) -> float:
    """Draws what is measured of its parts, with the limits."""
    told = [
        say(
            "{part} {size} {low} to {high}",
            part=part.name,
            size=size.name,
            low=length(size.low_mm),
            high=length(size.high_mm),
        )
        for part in parts
        for size in part.sizes
    ]
    if not told:
        return y
    unit, sizes = lengths.name_unit("mm"), join(*told, by="; ")
    words = say("Check, {unit}: {sizes}", unit=unit, sizes=sizes)
    return page.draw_wrapped(page.edge, y + 5, page.inner, words, 10, most=2)


def _draw_reason(page: Page, y: float, batch: Batch, orders: int, first_due: str) -> float:
    """Draws what the batch is made for, and when the first of it leaves."""
    words: Text = read_why(batch.why)
    if words and batch.released:
        words = say("{why} (as of {time})", why=words, time=say_moment(batch.released))
    if batch.order:
        words = say("For order {order}", order=batch.order)
    elif orders:
        words = say("For {n} {n|order|orders}", n=orders)
    leaves = say("first leaves {time}", time=say_moment(first_due)) if first_due else ""
    words = join(words, leaves, by=", ")
    if not words:
        return y + 4
    return page.draw_wrapped(page.edge, y + 6, page.inner, words, 11, bold=True, most=2) + 4


def _draw_runs(page: Page, y: float, runs: Sequence[Text]) -> float:
    """Draws what runs on each sheet, in order; each after the first on its reference pins."""
    if not runs:
        return y
    named = join(*(say("{n} {run}", n=n, run=run) for n, run in enumerate(runs, 1)))
    words = say("Runs of each sheet, on its reference pins from the second: {runs}", runs=named)
    return page.draw_wrapped(page.edge, y + 2, page.inner, words, 11, most=3) + 4


def _draw_sheet(page: Page, y: float, batch: Batch, revision: Revision, room: float) -> float:
    """Draws the sheet in the room there is, the batch's code once more at its right."""
    code = write("batch", batch.id, batch.copy)
    _draw_code(page, y, code, height=12, size=9)
    high = 18.0
    if revision.placed:
        least, most = 50.0, page.inner - measure_code(code) + bars.measure_quiet() - 3
        drawn = min(most, max(least, room * revision.length_mm / revision.width_mm))
        numbers = table.number_parts(revision)
        high = max(high, drawing.draw_sheet(page, revision, page.edge, y, drawn, numbers))
    return y + high + 3


def _draw_own_parts(
    page: Page,
    y: float,
    batch: Batch,
    parts: Mapping[str, Part],
    pieces: Mapping[str, int],
    room: float,
) -> float:
    """Draws a child's parts beside each other, how many of each; its code at their right."""
    code = write("batch", batch.id, batch.copy)
    _draw_code(page, y, code, height=12, size=9)
    shown = list(pieces.items())[: 3 if page.is_large else 2]
    wide = (page.inner - measure_code(code) + bars.measure_quiet() - 3) / max(1, len(shown))
    high = min(70.0, max(24.0, room))
    for n, (number, count) in enumerate(shown):
        x, part = page.edge + n * wide, parts.get(number)
        if part and part.shape:
            drawing.draw_part(page, part.shape, x, y, wide - 4, high - 12)
        name = part.name if part else say("part {part}", part=number)
        words = say("{n} × {part}", n=count, part=name)
        page.draw_fitted(x, y + high - 4, wide - 4, words, 16, bold=True)
    return y + high + 2


def _draw_signatures(page: Page, y: float, steps: tuple[Say, ...]) -> None:
    """Draws a box for each area: worker and time."""
    gap = 2.5
    each = (page.inner - gap * (len(steps) - 1)) / len(steps)
    high = _signature_height(page)
    for n, words in enumerate(steps):
        x = page.edge + n * (each + gap)
        page.draw_box(x, y, each, high, line=0.2)
        page.draw_fitted(x + 2, y + 4.5, each - 4, words, 10, bold=True)
        page.draw_fitted(x + 2, y + high - 1.5, each - 4, say("worker, time"), 8)


def _signature_height(page: Page) -> float:
    return 15.0 if page.is_large else 12.5


def _fit_caution(
    page: Page, material: Material | None, batch: Batch, shop: Shop, *, laser: bool
) -> FittedCaution:
    """Fits the cautions, all of them: smaller where they are long, then in a higher box."""
    here = CAUTIONS["paper_bed" if batch.has_sheets else "paper_table"].line
    heavy = material and batch.has_sheets and material.sheet_kg >= shop.two_people_kg
    words = join(
        CAUTIONS["paper_laser"].line if laser and batch.has_sheets else "",
        say("Sheet {kg} kg: two people or a lift.", kg=kilograms(material.sheet_kg))
        if material and heavy
        else "",
        here,
        tell_caution(shop),
        by=" ",
    )
    for size in (9.5, 9.0, 8.5, LEGIBLE):
        lines = page.break_lines(page.inner - 20, words, size)
        high = len(lines) * size * LEADING / MM + 3
        if high <= CARE:
            break
    return FittedCaution(lines, size, max(CARE, high))


def _draw_caution(page: Page, y: float, care: FittedCaution) -> None:
    """Draws the cautions in a box, deferring to local rules."""
    page.draw_box(page.edge, y, page.inner, care.high, line=0.5)
    warning = [(page.edge + 3, y + 11), (page.edge + 8, y + 3), (page.edge + 13, y + 11)]
    page.draw_loop(warning, 0.5, grey=0.0)
    page.draw_text(page.edge + 8, y + 10.2, "!", 13, bold=True, side="middle")
    step = care.size * LEADING / MM
    first = y + (care.high - step * len(care.lines)) / 2 + step * 0.75
    for n, line in enumerate(care.lines):
        page.draw_text(page.edge + 17, first + n * step, line, care.size)


def _draw_foot(page: Page, y: float, batch: Batch, printed: str) -> None:
    """Draws copy and time of printing; what is done with the slips, or which did not print."""
    printed_at = say("printed {time}", time=say_moment_in_full(printed))
    at = join(say("Copy {copy}", copy=batch.copy), printed_at)
    page.draw_text(page.edge, y, at, 8.5)
    gone = slips.list_missing(batch)
    room = page.inner - page.measure_text(at, 8.5) - 4
    if gone:
        sheets = ", ".join(map(str, gone))
        words = say("No slip prints for sheet {sheets}: print a new copy.", sheets=sheets)
        page.draw_fitted(page.right, y, room, words, 10, bold=True, side="right")
    elif batch.has_sheets:
        words = say("Tear a slip off for each sheet: it goes with the parts.")
        page.draw_fitted(page.right, y, room, words, 8.5, side="right")
