"""What must stand about a count in hand at popping and trimming: what came, what goes on."""

from typing import Any

from station.shop.facts import Batch, Part, RackPlace, Router, Shape, Slip
from tests.recount import figures as fig
from tests.recount import trade
from tests.recount.books import Books
from tests.recount.rules import At, Look, Rule

TALLY = r"part \| (cut|came) \| good"
EDGES = ("top", "bottom", "left", "right")


def came(look: Look) -> dict[str, int]:
    """Pieces of each part that the hand has before it."""
    hand: Any = look.hand
    batch = look.books.get(Batch, hand.subject)
    if batch is None:
        return {}
    if hand.area == "popping":
        sheets = [s.rpartition("-")[2] for s in hand.work.slips]
        places = [f"popping/{sheet}" for sheet in sheets]
    else:
        places = ["rework" if batch.role == "rework" else "trimming"]
    counts: dict[str, int] = {}
    for place in places:
        for _, _, part, n in look.books.lying(place=place, batch=batch.id):
            counts[part] = counts.get(part, 0) + n
    return counts


def _tally(at: At) -> str | None:
    """A cell of a count: how many came, and of those that are good whatever is left over."""
    number = trade.find_part(at.books, at.row[0])
    if at.k == 1:
        part = at.books.get(Part, number)
        tabs = len(part.shape.tabs) if part and part.shape else 0
        return f"{part.words if part else ''} · {fig.of(tabs, 'tab')}"
    here = came(at.look).get(number, 0)
    if at.k == 2:
        return fig.n(here)
    if at.k == 3:  # what is typed in hand and recorded when it goes on is taken off
        return fig.n(here - sum(fig.read(text) for text in at.row[4:]))
    return None


def sum_of_hand(look: Look) -> dict[str, int]:
    """The sums of each column of the count in hand: good, spoiled, missing, rework."""
    counts = came(look)
    table = next((s for s in look.face if s.kind == "table" and s.title.startswith("part | c")), 0)
    sums = dict.fromkeys(("good", "spoiled", "missing", "rework"), 0)
    if not table:
        return sums
    for row in table.rows:
        off = [fig.read(text) for text in row[4:]]
        here = counts.get(trade.find_part(look.books, row[0]), 0)
        for name, n in zip(sums, (here - sum(off), *off), strict=False):
            sums[name] += n
    return sums


def _say_whole(at: At) -> str:
    sums = sum_of_hand(at.look)
    first, *wrong = [f"{fig.n(n)} {name}" for name, n in sums.items() if n or name == "good"]
    return f"{at[1]}: {fig.joined([first, *wrong])}"


def _say_short(at: At) -> str:
    """In short: several kinds of fault together."""
    sums = sum_of_hand(at.look)
    wrong = [f"{fig.n(n)} {name}" for name, n in list(sums.items())[1:] if n]
    if len(wrong) > 1:
        wrong = [f"{fig.n(sum(sums.values()) - sums['good'])} not good"]
    good = f"{fig.n(sums['good'])} good"
    return f"{at[1]}: {', '.join([good, *wrong])}"


def _slips_at_popping(at: At) -> str | None:
    """The sheets in hand, of how many, and on which routers they were cut."""
    hand: Any = at.look.hand
    batch = at.books.get(Batch, hand.subject)
    slips = [s for name in hand.work.slips if (s := at.books.get(Slip, name))]
    if batch is None:
        return None
    sheets = fig.joined([str(s.sheet) for s in slips])
    noun = "slip for sheet" if len(slips) == 1 else "slips for sheets"
    names = dict.fromkeys(r.name for s in slips if (r := at.books.get(Router, s.router)))
    routers = fig.joined(list(names)) or "-"
    return f"{noun} {sheets} of {batch.sheets or sheets} · cut on {routers}"


def _step(at: At) -> str | None:
    """The way of the batch in hand: sheets cut, pieces to count, pieces beyond."""
    batch = at.books.get(Batch, at.look.hand.subject)
    if batch is None:
        return None
    if at.row[0] == "Loading":
        return f"{fig.of(batch.cut, 'sheet')} cut"
    head = at.row[0].lower()
    n = at.books.count(head=head, batch=batch.id)
    return f"{fig.n(n)} to count" if head == "popping" else f"{fig.n(n)} there"


def name_tabs(shape: Shape) -> str:
    """Where the tabs were: the edge that each is nearest to, how far along it in mm."""
    length, width = shape.box
    found: dict[str, list[float]] = {}
    for x, y in shape.tabs:
        gaps = (width - y, y, x, length - x)
        edge = EDGES[gaps.index(min(gaps))]
        found.setdefault(edge, []).append(x if edge in ("top", "bottom") else y)
    told = [
        f"{edge} edge at {fig.joined([f'{at:.0f}' for at in sorted(found[edge])])} mm"
        for edge in EDGES
        if edge in found
    ]
    return fig.joined(told)


def _draw_part(at: At) -> str | None:
    part = at.books.get(Part, trade.find_part(at.books, at[1]))
    if part is None or part.shape is None:
        return None
    return f"{part.name}, {fig.of(len(part.shape.tabs), 'tab')}: {name_tabs(part.shape)}."


def _under_master(at: At) -> str | None:
    part = at.books.get(Part, trade.find_part(at.books, at[1]))
    if part is None:
        return None
    lying = at.books.count(place=f"rack/{part.rack}", part=part.id)
    return f"under its master, {part.name}: {fig.n(lying)} there now, minimum {fig.n(part.mark)}"


def _goes_under(at: At) -> list[str]:
    parts = [at.books.get(Part, part) for part in came(at.look)]
    return [f"Goes under rack {name_rack(at.books, p.rack)}" for p in parts if p]


def _for_order(at: At) -> str | None:
    batch = at.books.get(Batch, at.look.hand.subject)
    return f"For order {batch.order}" if batch and batch.order else None


def name_rack(books: Books, number: str) -> str:
    """What a rack place is called."""
    found = books.get(RackPlace, number)
    return found.name if found else "?"


def _whole(at: At) -> str | None:
    """At popping a sheet is drawn as cut."""
    return "1.000" if at.look.hand.area == "popping" else None


RULES = (
    Rule("table", TALLY, r".*\d.*", _tally),
    Rule("buttons", "", r"(Pass on): .*", _say_whole),
    Rule("buttons", "", r"(To the rack|To packing): .*", _say_short),
    Rule("header", "Batch", r"slips? for sheets? .* · cut on .*", _slips_at_popping),
    Rule("steps", "", r".*\d.*", _step),
    Rule("drawing", "", r"(.+), \d+ tabs?: .*", _draw_part),
    Rule("hint", "Goes under", r"Goes under rack .*", _goes_under),
    Rule("hint", "Goes under", r"under its master, (.+): .*", _under_master),
    Rule("hint", "For order", r"For order \d+", _for_order),
    Rule("drawing", "share that is cut", r"1\.000", _whole),
)
