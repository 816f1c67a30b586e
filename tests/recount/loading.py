"""What must stand beside a router about its sheets: minutes, checks, what is next, what runs."""

import re
from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import Any

from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    CutFile,
    Lot,
    Material,
    Notice,
    Pace,
    Part,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
)
from tests.recount import benches, needs_look, routers, trade
from tests.recount import figures as fig
from tests.recount.books import Books
from tests.recount.paces import Line, fit
from tests.recount.rules import At, Look, Rule
from tests.recount.state import queue


def find_bed(look: Look) -> Bed | None:
    """The bed that stands on the screen."""
    return look.books.get(Bed, routers.find_router(look.books, look.where))


def find_batch(look: Look) -> Batch | None:
    """The batch that this router has taken, or has just cut to its end."""
    bed = find_bed(look)
    return look.books.get(Batch, bed.batch or look.hand.subject) if bed else None


def find_revision(look: Look) -> Revision | None:
    """What a sheet of it is cut by."""
    batch = find_batch(look)
    return trade.revision_of(look.books, batch) if batch else None


# --- minutes


def find_line(books: Books, router: str) -> Line | None:
    """What a router makes of a file's time: learnt from its sheets, else as it was typed."""
    known = books.get(Pace, router)
    line = books.once(("line", router), lambda: fit(known.sheets)) if known else None
    return line if line and line.count >= 3 else None


def minutes_on(books: Books, revision: Revision, number: str) -> float:
    """Minutes of a sheet on a router."""
    router = books.get(Router, number)
    line = find_line(books, number)
    if line:
        return revision.minutes * line.pace + line.extra_s / 60
    return revision.minutes * router.pace + router.extra_s / 60 if router else revision.minutes


def _a_sheet(at: At) -> str | None:
    """Minutes a sheet of a batch that waits for this router."""
    number = re.sub(r"\D", "", at.row[0])
    batch = at.books.get(Batch, number)
    runs = trade.runs_of(at.books, batch) if batch else []
    bed = routers.find_router(at.books, at.look.where)
    found = [f"{fig.n(minutes_on(at.books, run, bed))} min a sheet" for run in runs]
    return found or None  # type: ignore[return-value]


def _left_on(at: At) -> str | None:
    """Minutes that a router still cuts."""
    bed = next((b for b, r in benches.beds(at.books) if r.name == at.row[0]), None)
    return f"{fig.n(max(0.0, minutes_left(bed, at.look.now)))} min left" if bed else None


def cutting_s(bed: Bed, now: str) -> float:
    """Seconds that the sheet on a bed has been cut, its stops taken off."""
    until = bed.stopped if bed.state == "stopped" and bed.stopped else now
    return max(0.0, fig.seconds(bed.started, until) - bed.paused_s)


def minutes_left(bed: Bed, now: str) -> float:
    """Minutes until a sheet should be off its bed; below zero once it takes longer."""
    return bed.minutes - cutting_s(bed, now) / 60 if bed.sheet else 0.0


def _still(at: At) -> str | None:
    bed = find_bed(at.look)
    return f"{fig.n(abs(minutes_left(bed, at.look.now)))} min" if bed else None


def _times(at: At) -> str | None:
    """The file's own time, what this router makes of it, how far off that may be."""
    bed, batch = find_bed(at.look), find_batch(at.look)
    runs = trade.runs_of(at.books, batch) if batch else []
    if bed is None or not runs:
        return None
    run = runs[min(bed.run, len(runs)) - 1]
    line, router = find_line(at.books, bed.id), at.books.get(Router, bed.id)
    file, real = write(run.minutes * 60), write(bed.minutes * 60)
    if line is None:
        return f"file says {file}, {router.name if router else ''} runs it in {real}"
    return f"file {file}, here {real} ± {write(line.spread_s)}"


def write(seconds: float) -> str:
    """Minutes and seconds: ``22:10``."""
    whole, rest = divmod(round(seconds), 60)
    return f"{whole}:{rest:02d}"


def _share_cut(at: At) -> str | None:
    """How much of a sheet is drawn as cut, and how long the bar is."""
    bed = find_bed(at.look)
    asked = not at.look.where  # a question stands alone, beside the sheet it is about
    if at.look.hand.area == "office" or at.look.hand.aside.what == "find" or asked:
        return "0.000"  # drawn from the file, of no sheet that is cut
    if bed is None or at.look.hand.area != "loading":
        return None
    if not bed.sheet or bed.minutes <= 0:
        return "0.000"
    return f"{min(1.0, cutting_s(bed, at.look.now) / 60 / bed.minutes):.3f}"


def _runs_until(at: At) -> list[str] | None:
    """When the bar begins and ends."""
    bed = find_bed(at.look)
    if bed is None:
        return None
    off = datetime.fromisoformat(bed.started) + timedelta(
        minutes=bed.minutes, seconds=bed.paused_s
    )
    return [bed.started, off.isoformat(timespec="seconds")]


# --- the checks


def next_sheet(look: Look) -> int:
    """The sheet that comes next of the batch in hand."""
    bed, batch = find_bed(look), find_batch(look)
    if bed is None or batch is None:
        return 0
    return min(batch.cut + 1 + bool(bed.sheet), batch.sheets)


def _before(at: At) -> str | None:
    batch = find_batch(at.look)
    if batch is None or len(trade.runs_of(at.books, batch)) > 1:
        return None  # a sheet of several runs may lie beside the router meanwhile
    return f"{at[1]}{next_sheet(at.look)}{at[2]}"


def _off_bed(at: At) -> str | None:
    bed = find_bed(at.look)
    return f"{at[1]}{bed.sheet}{at[2]}" if bed and bed.sheet else None


def _material(at: At) -> list[str] | None:
    revision = find_revision(at.look)
    material = at.books.get(Material, revision.material) if revision else None
    work: Any = at.look.hand.work
    if material is None:
        return None
    return [f"{material.name}: scan its lot", f"{material.name}, lot {work.lot}"]


def _thickness(at: At) -> list[str] | None:
    """What is to be measured, or what was read against the limits."""
    revision = find_revision(at.look)
    material = at.books.get(Material, revision.material) if revision else None
    work: Any = at.look.hand.work
    if material is None:
        return None
    read, low, high = work.reading or 0.0, f"{material.low_mm:.1f}", f"{material.high_mm:.1f}"
    if not read:
        return [f"measure: {low} to {high} mm"]
    if material.low_mm <= read <= material.high_mm:
        return [f"{read:g} mm read"]
    return [f"{read:g} mm read, limits are {low} to {high}"]


def _holds(at: At) -> list[str] | None:
    batch = find_batch(at.look)
    runs = trade.runs_of(at.books, batch) if batch else []
    return [fig.of(len(run.hold_downs), "hold-down") for run in runs] or None


def _bit(at: At) -> list[str] | None:
    """The bits that are in this router."""
    bed = find_bed(at.look)
    bits = [b for _, n in bed.bits if (b := at.books.get(Bit, n))] if bed else []
    ways = [f"{b.words}, no. {b.id}" for b in bits]
    return [*ways, *(f"no. {', '.join(b.id for b in way)}" for way in _ways(bits))]


def _ways(bits: list[Bit]) -> Iterator[list[Bit]]:
    for n in range(len(bits)):
        for k in range(n + 1, len(bits)):
            yield bits[n : k + 1]


def _laid_ready(at: At) -> list[str] | None:
    """A bit in the drawer: its metres left, and those that a sheet needs of it."""
    batch = find_batch(at.look)
    bit = at.books.get(Bit, at[2])
    runs = trade.runs_of(at.books, batch) if batch else []
    if bit is None:
        return None
    left = fig.n(max(0.0, metres_left(at.books, bit)))
    needs = {fig.n(u.cut_mm / 1000) for run in runs for u in run.bits
             if u.diameter_mm == bit.diameter_mm}  # fmt: skip
    return [f"{bit.diameter_mm:g} mm, no. {bit.id}: {left} m left, {m} m needed" for m in needs]


def metres_left(books: Books, bit: Bit) -> float:
    """Metres that a bit may still cut."""
    worn = books.at.get(f"bit/{bit.id}", {})
    return bit.life_m - sum(mm for (_, what), mm in worn.items() if what == "mm") / 1000


def _in_drawer(at: At) -> str | None:
    bit = at.books.get(Bit, at.row[0])
    return f"{fig.n(max(0.0, metres_left(at.books, bit)))} m left" if bit else None


def _drawer(at: At) -> list[str] | None:
    """How many bits of the sizes that a sheet needs lie in the drawer beyond the three shown."""
    bed, batch = find_bed(at.look), find_batch(at.look)
    if bed is None or batch is None:
        return None
    inside = dict(bed.bits).values()
    bits = [b for b in at.books.all(Bit)
            if b.state == "good" and b.router in ("", bed.id) and b.id not in inside]  # fmt: skip
    sizes = [{u.diameter_mm for u in run.bits} for run in trade.runs_of(at.books, batch)]
    fit = [sum(b.diameter_mm in wanted for b in bits) for wanted in sizes]
    return [f"Bits in the drawer: {fig.n(n - 3)} more" if n > 3 else "Bits in the drawer"
            for n in fit]  # fmt: skip


def _bring(at: At) -> list[str] | None:
    """Sheets of the batch that comes next on this router, and its bits."""
    if at.row[0] not in ("Next batch", "Bring", "Bits"):
        return None
    numbers = queue(at.books, routers.find_router(at.books, at.look.where))
    bed = find_bed(at.look)
    waiting = [b for n in numbers if (b := at.books.get(Batch, n)) and not b.holds]
    batch = next((b for b in waiting if not bed or b.id != bed.batch), None)
    revision = trade.revision_of(at.books, batch) if batch else None
    if batch is None or revision is None:
        return None
    material = at.books.get(Material, revision.material)
    sizes = fig.joined([f"{use.diameter_mm:g}" for use in revision.bits])
    return [
        f"{batch.id}, {benches.words(at.books, batch)}",
        f"{fig.of(batch.sheets - batch.cut, 'sheet')} of {material.name if material else '-'}",
        f"{sizes} mm",
    ]


def _first_off(at: At) -> list[str]:
    bed = find_bed(at.look)
    return [f"batch {f.batch}, sheet {f.sheet}: {f.why}" for f in bed.firsts] if bed else []


def _first_sheet(at: At) -> list[str]:
    """The runs of which this router keeps no first-off: the next sheet of each is its first."""
    bed = find_bed(at.look)
    kept = {first.file for first in bed.firsts} if bed else set()
    names = {f.id: f.name for f in at.books.all(CutFile)}
    return [f"first sheet of {names[r.cut_file]} {r.letter}" for r in at.books.all(Revision)
            if r.id not in kept and r.cut_file in names]  # fmt: skip


# --- what is next


def _next_batch(at: At) -> str | None:
    """The first batch in this router's queue that may go on."""
    numbers = queue(at.books, routers.find_router(at.books, at.look.where))
    found = next((n for n in numbers if (b := at.books.get(Batch, n)) and not b.holds), "")
    return f"{at[1]}{found}" if found else None


def _next_note(at: At) -> list[str] | None:
    batch = at.books.get(Batch, re.sub(r"\D", "", at.row[0]))
    if batch is None:
        return None
    rows = {row[0]: row for row in routers.next_on(at.books, at.look.where)}
    line = rows[batch.id][2] if batch.id in rows else ""
    n = needs_look.count_waiting_for(at.books, batch)
    waits = "order waits" if n == 1 else "orders wait"
    now = f"{fig.n(n)} {waits} for it now" if n else "no order waits for it now"
    return [f"{routers.why(batch) or line}; {now}. Scan its traveller."]


def _batch_on(at: At) -> str | None:
    bed = next((b for b, r in benches.beds(at.books) if r.name == at.row[0]), None)
    return f"batch {bed.batch}" if bed and bed.batch else None


def _in_router(at: At) -> list[str]:
    bed = find_bed(at.look)
    return [f"no. {number}" for _, number in bed.bits] if bed else []


def _heavy(at: At) -> str | None:
    """What a sheet weighs, and the shop's own words."""
    revision = find_revision(at.look)
    material = at.books.get(Material, revision.material) if revision else None
    shop = at.books.get(Shop, "shop") or Shop(id="shop")
    if material is None:
        return None
    litres = material.length_mm * material.width_mm * material.thickness_mm * 1e-6
    kilos = litres * material.density_kg_m3 / 1000
    return (
        f"Sheet {kilos:.1f} kg: two people or a lift. Gloves on for it, off at the spindle. "
        f"{shop.caution}"
    )


def _stays(at: At) -> str | None:
    """Parts of a sheet that is spoiled: on it, whole as typed, lost."""
    revision, work = find_revision(at.look), at.look.hand.work
    part = trade.find_part(at.books, at.row[0])
    if revision is None:
        return None
    n = sum(p.part == part for p in revision.placed)
    whole = getattr(work, "survived", {}).get(part, 0)
    return {2: fig.n(n), 3: fig.n(whole), 4: fig.n(n - whole)}.get(at.k)


def _all_cut(at: At) -> str | None:
    batch = find_batch(at.look)
    if batch is None:
        return None
    if at.k == 1:
        return f"{fig.n(batch.spoiled)} spoiled"
    return f"All {fig.n(batch.sheets)} {'sheet is' if batch.sheets == 1 else 'sheets are'} cut"


def _meter(at: At) -> str | None:
    """How long the bar of a bit or of the spoilboard is."""
    books, number = at.books, routers.find_router(at.books, at.look.where)
    router = books.get(Router, number)
    if at.row[0].startswith("Spoilboard") and router:
        cut = books.at.get(f"spoilboard/{number}", {}).get(("", "pass"), 0)
        return f"{min(1.0, cut / router.flat_after):.3f}"
    read = re.match(r"Bit no\. (\S+):", at.row[0])
    bit = books.get(Bit, read[1]) if read else None
    return f"{min(1.0, 1 - metres_left(books, bit) / bit.life_m):.3f}" if bit else None


def _meter_title(at: At) -> list[str]:
    rows = (*routers.bits(at.books, at.look.where), *routers.spoilboard(at.books, at.look.where))
    return [row[0] for row in rows]


# --- the routers' day, and the one that needs somebody


def _band(at: At) -> list[str]:
    """The hours of one band's spans: sheets that came off today, what runs or stands now.

    Where it is shown who is needed next: how long it still cuts or stands in the next hour.
    """
    books, now = at.books, at.look.now
    bed, router = next((b, r) for b, r in benches.beds(books) if r.name == at.shown.title)
    if getattr(at.look.hand.work, "mode", "") == "tended":
        left = max(0.0, min(60.0, minutes_left(bed, now))) if bed.state == "cutting" else 60.0
        free = f"{int(now[11:13]) + int(now[14:16]) / 60 + left / 60:.3f}"
        return [(f"{hour(now):.3f}", free)[at.k]] if 0 <= at.k < 2 else []
    spans = at.look.once(f"spans {router.id}", lambda: list(_spans(books, bed, now)))
    return [span[at.k] for span in spans] if 0 <= at.k < 2 else []


def _spans(books: Books, bed: Bed, now: str) -> Iterator[tuple[str, str]]:
    for slip in trade.sheets_off(books):
        if slip.router == bed.id and slip.at[:10] == now[:10]:
            yield f"{max(0.0, hour(slip.at) - slip.minutes / 60):.3f}", f"{hour(slip.at):.3f}"
    begun = bed.stopped if bed.state == "stopped" else bed.started
    if bed.state in ("cutting", "stopped"):  # what began before midnight is of today from there on
        yield f"{hour(begun) if begun[:10] == now[:10] else 0.0:.3f}", f"{hour(now):.3f}"


def hour(at: str) -> float:
    """The hour of a time, whole minutes: half past ten is 10.5."""
    return int(at[11:13]) + int(at[14:16]) / 60


def _doing(at: At) -> str | None:
    """What a router does now."""
    if at.k == 0:
        return None
    name = at.shown.title if at.k < 0 else at.row[0]
    bed = next((b for b, r in benches.beds(at.books) if r.name == name), None)
    if bed is None:
        return None
    left = max(0, round(minutes_left(bed, at.look.now)))
    if bed.state == "cutting":
        free = f"cutting {bed.batch}, sheet {bed.sheet}, free in {left} min"
        return free if left else f"{bed.batch}, sheet {bed.sheet}: should be off"
    if bed.state == "stopped":
        reason = at.books.get(Reason, bed.stop)
        since = fig.with_day(bed.stopped, at.look.now)
        return f"stopped since {since}: {reason.words if reason else ''}"
    return f"loading {bed.batch}" if bed.batch else "free"


def _needs_you(at: At) -> list[str] | None:
    """What to bring to a router: a sheet of the oldest lot that its next batch is cut from."""
    name = at.row[0].removesuffix(" needs you next")
    bed = next((b for b, r in benches.beds(at.books) if r.name == name), None)
    number = next(iter(queue(at.books, bed.id)), "") if bed else ""
    batch = at.books.get(Batch, bed.batch if bed and bed.batch else number)
    revision = trade.revision_of(at.books, batch) if batch else None
    material = at.books.get(Material, revision.material) if revision else None
    if material is None:
        return None
    lots = [x for x in at.books.all(Lot) if x.material == material.id]
    lots = [x for x in lots if at.books.sheets("store", x.id) > 0]
    first = min(lots, key=lambda x: (x.received, x.id), default=None)
    if at[0].startswith("free in"):
        return [f"free in {fig.n(minutes_left(bed, at.look.now))} min"] if bed else None
    return [f"Bring a sheet of {material.name} from lot {first.id}"] if first else []


def _pace(at: At) -> str | None:
    """What was learnt of a router: its pace, its extra time, how sure, from how many sheets."""
    line = find_line(at.books, at.look.hand.subject.rpartition("/")[2])
    if line is None:
        return None
    return {
        "pace": f"× {line.pace:.3f}",
        "extra": f"{line.extra_s:.0f} s",
        "spread": f"± {line.spread_s:.0f} s",
    }.get(at.row[0])


def _bad_bit(at: At) -> list[str]:
    """A bit in the router that is no good, and the size that the file wants."""
    bed, batch = find_bed(at.look), find_batch(at.look)
    runs = trade.runs_of(at.books, batch) if batch else []
    sizes = {f"{use.diameter_mm:g}" for run in runs for use in run.bits}
    bits = [b for _, n in bed.bits if (b := at.books.get(Bit, n))] if bed else []
    return [
        f"Bit {b.id} is {what}: {size} mm needed"
        for b in bits
        for size in sizes
        for what in (b.state, f"{b.diameter_mm:g} mm")
    ]


def _held_or_told(at: At) -> list[str]:
    """Why the batch is held, what a router was told, what is new: as it was recorded."""
    batch, bed = find_batch(at.look), find_bed(at.look)
    told = [n.text for n in at.books.all(Notice) if bed and n.router == bed.id]
    return [
        *(batch.holds if batch else ()),
        *told,
        *_first_off(at),
        *([bed.rehome] if bed else []),
    ]


def _first_header(at: At) -> list[str]:
    bed = find_bed(at.look)
    firsts = bed.firsts if bed else ()
    return [f"{f.why}: compared with its master before the next sheet" for f in firsts]


def _of_sheets(at: At) -> str | None:
    """A sheet of how many, in a question about it."""
    batch = at.books.get(Batch, at.row[0])
    return f"{at[1]} of {batch.sheets}" if batch else None


def _first_title(at: At) -> list[str]:
    """The sheet in hand whose first-off is open."""
    work: Any = at.look.hand.work
    slips = [s for name in work.slips if (s := at.books.get(Slip, name))]
    told = [benches.first_off_due(at.books, [slip]) for slip in slips]
    sheets = [words.rpartition(" ")[2] for words in told if words]
    return [f"First: measure one piece of sheet {sheet}" for sheet in sheets]


def _compared(at: At) -> list[str]:
    """One piece in how many is compared, and which of a part's sizes it is."""
    parts = at.books.all(Part)
    which = [f"{n} of {len(p.sizes)}" for p in parts for n in range(1, len(p.sizes) + 1)]
    return [*(f"Against the master: one in {p.check_every}" for p in parts), *which]


def _sizes(at: At) -> list[str]:
    """The limits of a part's sizes as they were entered."""
    return [
        words.format(part=p.name, size=s.name, low=f"{s.low_mm:g}", high=f"{s.high_mm:g}",
                     mm=f"{s.nominal_mm:g}")
        for p in at.books.all(Part)
        for s in p.sizes
        for words in ("{low} to {high} mm", "right from {low} to {high} mm",
                      "{size}: right from {low} to {high} mm", "{part}: {size}, about {mm} mm",
                      "Measure {size}, about {mm} mm.", "Measure {size}: {low} to {high} mm")
    ]  # fmt: skip


QUEUES = "(Next on this router|Queue of this router|Next: batch)"
RULES = (
    Rule("cards|hint", QUEUES, r"[^ ]+ min a sheet", _a_sheet),
    Rule("cards", "Which is free next", r"[^ ]+ min left", _left_on),
    Rule("cards", "Which is free next", r"batch \d+", _batch_on),
    Rule("progress", "", r"[^ ]+ min", _still),
    Rule("progress", "", r"file .*", _times),
    Rule("bar", r"\{minutes\} min", r"\d\.\d{3}", _share_cut),
    Rule("bar", r"\{minutes\} min", r"\d{4}-.*", _runs_until),
    Rule("drawing", "share that is cut", r".*", _share_cut),
    Rule("checks", "(Before|First)", r"((?:Before|First, before) sheet )\d+()", _before, "title"),
    Rule("buttons", "", r"(Start sheet )\d+()", _before),
    Rule("buttons", "", r"(Sheet )\d+( is off the bed| is spoiled)", _off_bed),
    Rule("hint", "Why is sheet", r"(Why is sheet )\d+( spoiled\?)", _off_bed),
    Rule("checks", "Before", r"(.*: scan its lot|.*, lot [^ ]+)", _material),
    Rule("checks|hint", "", r"(measure: .* mm|[^ ]+ mm read.*)", _thickness),
    Rule("checks", "Before", r"\d+ hold-downs?", _holds),
    Rule("checks", "(Before|After)", r"([^ ]+) mm, no\. ([^ ]+): .* m needed", _laid_ready),
    Rule("checks", "Before", r".*no\. .*", _bit),
    Rule("checks", "(Before|After)", r"first sheet of .*", _first_sheet),
    Rule("checks", "After this last sheet", r".*", _bring),
    Rule("checks", "", r"batch \d+, sheet \d+: .*", _first_off),
    Rule("table", "Which bit broke", r"no\. .*", _in_router),
    Rule("cards", "Bits in the drawer", r".* m left", _in_drawer),
    Rule("cards", "Bits in the drawer", r"Bits in the drawer.*", _drawer, "title"),
    Rule("hint|buttons", "(Next: batch|)", r"(Next: batch |Take batch )\d+", _next_batch),
    Rule("hint", "Next: batch", r".*\. Scan its traveller\.", _next_note),
    Rule("remark", "Take care", r"Sheet [^ ]+ kg: .*", _heavy),
    Rule("table", r"Part \| on the sheet", r"[\d\u202f]+", _stays),
    Rule("hint", "All", r"(All .* cut|.* spoiled)", _all_cut),
    Rule("bar", "(Bit no|Spoilboard)", r"\d\.\d{3}", _meter),
    Rule("bar", "(Bit no|Spoilboard)", r"(Bit no|Spoilboard).*", _meter_title),
    Rule("band", "", r"-?\d+\.\d{3}", _band),
    Rule("band", "", r".*[a-z].*", _doing),
    Rule("band", "", r".*", _doing, "title"),
    Rule("hint", ".* needs you next", r"Bring a sheet .* lot [^ ]+|free in [^ ]+ min", _needs_you),
    Rule("pairs", "From the work", r".*", _pace),
    Rule("list", "Against the master", r"Against the master: one in .*", _compared, "title"),
    Rule("list", "(Against|Measure)", r"\d+ of \d+", _compared),
    Rule("list|drawing|asked|checks|cards", "", r".*(to [^ ]+ mm|about [^ ]+ mm)\.?", _sizes),
    Rule("list", "Measure", r"Measure .*", _sizes, "title"),
    Rule("checks", "Before", r"Bit .* is .* mm needed", _bad_bit),
    Rule("checks", "First", r".*", _held_or_told),
    Rule("header", "Batch", r"(\d+) of \d+", _of_sheets),
    Rule("header", "First-off", r".*: compared with its master .*", _first_header),
    Rule("cards", "First: measure", r"First: measure one .*", _first_title, "title"),
)  # fmt: skip
