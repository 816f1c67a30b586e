"""The traveller: the paper that goes with a batch, and a slip for each of its sheets."""

from collections.abc import Mapping

from station.papers import bars, drawing, table
from station.papers.page import Page, code_width, day
from station.shop.codes import usable, write
from station.shop.facts import Batch, CutFile, Material, Part, Revision, Router, Shop
from station.shop.words import say

EDGE = table.EDGE
QUIET_MM = bars.QUIET * 2 * 25.4 / 203  # a quiet zone of narrow bars of two dots
SLIP = (50.0, 19.0)  # mm, wide and high
CARE_MM = 12.4  # what the caution's box holds
LEAST = 4.0  # points; smaller is no reading at all
STEPS = ("Loading", "Popping", "Trimming", "Packing", "Cart")


def traveller(
    batch: Batch,
    cut_file: CutFile,
    revision: Revision,
    material: Material | None,
    router: Router | None,
    parts: Mapping[str, Part],
    *,
    orders: int = 0,
    first_due: str = "",
    printed: str,
    paper: str = "A4",
    shop: Shop,
) -> bytes:
    """The traveller as PDF. A child (split off, or to be made good) has no slips."""
    page = Page.of(paper, f"Traveller of batch {batch.id}")
    y = _head(page, batch, cut_file)
    y = _what(page, y, batch, cut_file, revision, material, router)
    y = _why(page, y, batch, orders, first_due)
    slips = _slip_rows(page, batch)
    foot = page.height - slips * SLIP[1] - 5
    rows = table.rows(batch, revision, parts)
    y = _middle(page, y, batch, revision, foot - 46 - y - table.height(page, len(rows)))
    rest = table.draw(page, y, rows, foot - 42)
    _signed(page, foot - 41)
    _care(page, foot - 24, None if batch.parent else material, shop)
    _foot(page, foot - 4, batch, printed)
    _slips(page, batch, slips)
    while rest:
        page.turn()
        page.text(EDGE, 9, f"Batch {batch.id}, copy {batch.copy}: more to count", 10, bold=True)
        rest = table.draw(page, 12, rest, page.height - 12)
    return page.pdf()


def _head(page: Page, batch: Batch, cut_file: CutFile) -> float:
    """The number in large, the code at its right, the title below."""
    code = write("batch", batch.id, batch.copy)
    dots = 3 if page.width > 180 else 2
    page.text(EDGE, 14, "Batch", 10)
    page.text(EDGE, 29, batch.id, 40 if page.width > 180 else 30, bold=True)
    left = page.width - EDGE - code_width(code, dots) + QUIET_MM * dots / 2
    page.code(left, 9, code, dots=dots, height=15, size=12)
    page.fitted(EDGE, 42, page.width - 2 * EDGE, cut_file.words or cut_file.name, 17, bold=True)
    return 42


def _what(
    page: Page,
    y: float,
    batch: Batch,
    cut_file: CutFile,
    revision: Revision,
    material: Material | None,
    router: Router | None,
) -> float:
    """Material, sheets, router, cut file and revision; for a child what it is."""
    size = f"{revision.length_mm:g} × {revision.width_mm:g}"
    # The revision first: whatever long names push off the paper, it is not that.
    words = [f"revision {batch.revision} of cut file {cut_file.name}"]
    words.append(f"{material.name} {size}" if material else size)
    if batch.parent:
        role = (
            "split off" if batch.role == "split" else f"to be made good, try {batch.tries} of 2,"
        )
        words.append(f"{role} from batch {batch.parent}")
    else:
        words.append(str(say("{n} {n|sheet|sheets}", n=batch.sheets)))
    if router and not batch.parent:
        words.append(f"{router.name}, {router.bed}")
    return page.wrapped(EDGE, y + 6, page.width - 2 * EDGE, " · ".join(words), 10.5, most=3)


def _why(page: Page, y: float, batch: Batch, orders: int, first_due: str) -> float:
    words = batch.why
    if batch.order:
        words = f"For order {batch.order}"
    elif orders:
        words = str(say("For {n} {n|order|orders}", n=orders))
    if first_due:
        words += f"{', ' if words else ''}first leaves {day(first_due)} {first_due[11:16]}"
    if not words:
        return y + 4
    return page.wrapped(EDGE, y + 6, page.width - 2 * EDGE, words, 10.5, bold=True, most=2) + 4


def _middle(page: Page, y: float, batch: Batch, revision: Revision, room: float) -> float:
    """The sheet in the room there is, the batch's code once more at its right."""
    code = write("batch", batch.id, batch.copy)
    wide = code_width(code)
    page.code(page.width - EDGE - wide + QUIET_MM, y, code, height=9, size=8)
    least = 100.0 if page.width > 180 else 40.0
    most = page.width - 2 * EDGE - wide - 2
    drawn = min(most, max(least, room * revision.length_mm / revision.width_mm))
    if batch.parent or not revision.placed:
        return y + 16
    return y + max(16.0, drawing.sheet(page, revision, EDGE, y, drawn) + 2)


def _signed(page: Page, y: float) -> None:
    """A box for each area: worker and time."""
    gap = 2.5
    each = (page.width - 2 * EDGE - gap * (len(STEPS) - 1)) / len(STEPS)
    for n, words in enumerate(STEPS):
        x = EDGE + n * (each + gap)
        page.box(x, y, each, 15, line=0.2)
        page.fitted(x + 2, y + 5, each - 4, words, 10, bold=True)
        page.fitted(x + 2, y + 13, each - 4, "worker, time", 8)


def _care(page: Page, y: float, material: Material | None, shop: Shop) -> None:
    """The usual cautions, deferring to local rules."""
    words = (
        "Eye and ear protection, dust extraction on. Guards on; spindle isolated before "
        f"hands go near the bit. {shop.caution}"
    )
    if material and material.sheet_kg >= shop.two_people_kg:
        words = f"Sheet {material.sheet_kg:.1f} kg: two people or a lift. {words}"
    page.box(EDGE, y, page.width - 2 * EDGE, 14, line=0.5)
    loop = [(EDGE + 3, y + 11), (EDGE + 8, y + 3), (EDGE + 13, y + 11)]
    drawing.loop(page, loop, 0.5)
    page.text(EDGE + 7.3, y + 10.2, "!", 13, bold=True)
    width, size = page.width - 2 * EDGE - 20, 9.0 if page.width > 180 else 7.0
    while size > LEAST and _tall(page, width, words, size) > CARE_MM:
        size -= 0.5
    page.wrapped(EDGE + 17, y + 1.6 + size / 3, width, words, size, most=99)


def _tall(page: Page, width: float, words: str, size: float) -> float:
    """How high wrapped words stand, mm."""
    return len(page.lines(width, words, size)) * size * 1.22 * 25.4 / 72


def _foot(page: Page, y: float, batch: Batch, printed: str) -> None:
    at = f"{day(printed)} {printed[:4]}, {printed[11:16]}"
    page.text(EDGE, y, f"Copy {batch.copy} · printed {at}", 8.5)
    if not batch.parent:
        page.text(
            page.width - EDGE,
            y,
            "Tear a slip off for each sheet: it goes with the parts.",
            8.5,
            right=True,
        )


def _across(page: Page) -> int:
    return int(page.width // SLIP[0])


def _slip_codes(batch: Batch) -> list[tuple[int, str]]:
    """Every sheet's slip; none for a child, it has no sheets of its own."""
    if batch.parent:
        return []
    return [
        (n, write("batch", batch.id, batch.copy, n))
        for n in range(1, batch.sheets + 1)
        if usable("batch", batch.id, batch.copy, n)
    ]


def _slip_rows(page: Page, batch: Batch) -> int:
    """Rows of slips on the first page, three at most on A4 and two on A5."""
    rows = -(-len(_slip_codes(batch)) // _across(page))
    return min(rows, 3 if page.width > 180 else 2)


def _slips(page: Page, batch: Batch, rows: int) -> None:
    """Tear-off slips at the foot; those that have no room follow on pages of their own."""
    codes = _slip_codes(batch)
    first = rows * _across(page)
    _lay(page, batch, codes[:first], page.height - rows * SLIP[1])
    rest = codes[first:]
    a_page = _across(page) * int((page.height - 20) // SLIP[1])
    while rest:
        page.turn()
        page.text(EDGE, 9, f"Slips of batch {batch.id}, copy {batch.copy}", 10, bold=True)
        _lay(page, batch, rest[:a_page], 14)
        rest = rest[a_page:]


def _lay(page: Page, batch: Batch, codes: list[tuple[int, str]], top: float) -> None:
    across = _across(page)
    wide = page.width / across
    for n, (sheet, code) in enumerate(codes):
        x, y = n % across * wide, top + n // across * SLIP[1]
        page.line(x, y, x + wide, y, dash=True)
        page.line(x + wide, y, x + wide, y + SLIP[1], dash=True)
        words = f"B {batch.id} {batch.copy} · sheet {sheet}"
        page.code(x + (wide - code_width(code)) / 2, y + 2, code, height=9, size=8, words=words)
