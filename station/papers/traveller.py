"""The traveller: the paper that goes with a batch, and a slip for each of its sheets."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from station.papers import bars, drawing, slips, table
from station.papers.page import LEADING, LEGIBLE, MM, Page, measure_code, write_moment
from station.shop import lengths
from station.shop.cautions import CAUTIONS
from station.shop.codes import write
from station.shop.facts import Batch, CutFile, Material, Part, Revision, Router, Shop
from station.shop.words import several

CARE = 14.0  # mm, the caution's box where its words are short
STEPS = ("Loading", "Popping", "Trimming", "Packing", "Cart")


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
    runs: Sequence[str] = (),
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
    page = Page.make(paper, f"Traveller of batch {batch.id}")
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
    rest = table.draw_table(page, y, rows, signed - 2, "cut" if batch.has_sheets else "pieces")
    _draw_signatures(page, signed, STEPS if batch.has_sheets else STEPS[1:])
    _draw_caution(page, foot - 5 - care.high, care)
    _draw_foot(page, foot, batch, printed)
    slips.draw_first(page, batch)
    while rest:
        page.turn_page()
        said = f"Batch {batch.id}, copy {batch.copy}: more to count"
        page.draw_text(page.edge, 9, said, 10, bold=True)
        rest = table.draw_table(page, 12, rest, page.height - 12)
    slips.draw_further(page, batch)


def _draw_head(page: Page, batch: Batch, cut_file: CutFile) -> float:
    """Draws the number in large, the code at its right, the title below."""
    code = write("batch", batch.id, batch.copy)
    up = 0 if page.is_large else 5
    page.draw_text(page.edge, 14 - up, "Batch", 11)
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
    words = [f"revision {batch.revision} of cut file {cut_file.name}"]
    if not batch.has_sheets:
        role = (
            "split off" if batch.role == "split" else f"to be made good, try {batch.tries} of 2,"
        )
        words.insert(0, f"{role} from batch {several(list(batch.parents)) or 'not known'}")
        words.append(material.name if material else size)
        return page.draw_wrapped(page.edge, y + 6, page.inner, " · ".join(words), 11, most=3)
    words.append("1 sheet" if batch.sheets == 1 else f"{batch.sheets} sheets")
    words.append(f"{material.name} {size}" if material else size)
    if router:
        words.append(f"{router.name}, {router.bed}")
    return page.draw_wrapped(page.edge, y + 6, page.inner, " · ".join(words), 11, most=3)


def _draw_file(page: Page, y: float, revision: Revision) -> float:
    """Draws which file is opened at the router, and the bits that it wants."""
    bits = ", ".join(f"{use.number}: {lengths.write(use.diameter_mm)}" for use in revision.bits)
    words = [f"open {revision.file}"] if revision.file else []
    words += [f"bits {bits} {lengths.name_unit('mm')}"] if bits else []
    if not words:
        return y
    told = " · ".join(words)
    return page.draw_wrapped(page.edge, y + 6.5, page.inner, told, 13, bold=True, most=2)


def _draw_sizes(page: Page, y: float, parts: Sequence[Part]) -> float:
    """Draws what is measured of its parts, with the limits."""
    told = [
        f"{part.name} {size.name} {lengths.write(size.low_mm)} to {lengths.write(size.high_mm)}"
        for part in parts
        for size in part.sizes
    ]
    if not told:
        return y
    words = f"Check, {lengths.name_unit('mm')}: {'; '.join(told)}"
    return page.draw_wrapped(page.edge, y + 5, page.inner, words, 10, most=2)


def _draw_reason(page: Page, y: float, batch: Batch, orders: int, first_due: str) -> float:
    """Draws what the batch is made for, and when the first of it leaves."""
    words = batch.why
    if words and batch.released:
        words = f"{words} (as of {write_moment(batch.released)})"
    if batch.order:
        words = f"For order {batch.order}"
    elif orders:
        words = f"For {orders} orders"
    if first_due:
        words += f"{', ' if words else ''}first leaves {write_moment(first_due)}"
    if not words:
        return y + 4
    return page.draw_wrapped(page.edge, y + 6, page.inner, words, 11, bold=True, most=2) + 4


def _draw_runs(page: Page, y: float, runs: Sequence[str]) -> float:
    """Draws what runs on each sheet, in order; each after the first on its reference pins."""
    if not runs:
        return y
    words = " · ".join(f"{n} {run}" for n, run in enumerate(runs, 1))
    words = f"Runs of each sheet, on its reference pins from the second: {words}"
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
        words = f"{count} × {part.name if part else f'part {number}'}"
        page.draw_fitted(x, y + high - 4, wide - 4, words, 16, bold=True)
    return y + high + 2


def _draw_signatures(page: Page, y: float, steps: tuple[str, ...]) -> None:
    """Draws a box for each area: worker and time."""
    gap = 2.5
    each = (page.inner - gap * (len(steps) - 1)) / len(steps)
    high = _signature_height(page)
    for n, words in enumerate(steps):
        x = page.edge + n * (each + gap)
        page.draw_box(x, y, each, high, line=0.2)
        page.draw_fitted(x + 2, y + 4.5, each - 4, words, 10, bold=True)
        page.draw_fitted(x + 2, y + high - 1.5, each - 4, "worker, time", 8)


def _signature_height(page: Page) -> float:
    return 15.0 if page.is_large else 12.5


def _fit_caution(
    page: Page, material: Material | None, batch: Batch, shop: Shop, *, laser: bool
) -> FittedCaution:
    """Fits the cautions, all of them: smaller where they are long, then in a higher box."""
    here = CAUTIONS["paper_bed" if batch.has_sheets else "paper_table"].line
    words = f"{here} {shop.caution}"
    if material and batch.has_sheets and material.sheet_kg >= shop.two_people_kg:
        words = f"Sheet {material.sheet_kg:.1f} kg: two people or a lift. {words}"
    if laser and batch.has_sheets:
        words = f"{CAUTIONS['paper_laser'].line} {words}"
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
    at = f"Copy {batch.copy} · printed {write_moment(printed)} {printed[:4]}"
    page.draw_text(page.edge, y, at, 8.5)
    gone = slips.list_missing(batch)
    room = page.inner - page.measure_text(at, 8.5) - 4
    if gone:
        sheets = ", ".join(map(str, gone))
        words = f"No slip prints for sheet {sheets}: print a new copy."
        page.draw_fitted(page.right, y, room, words, 10, bold=True, side="right")
    elif batch.has_sheets:
        words = "Tear a slip off for each sheet: it goes with the parts."
        page.draw_fitted(page.right, y, room, words, 8.5, side="right")
