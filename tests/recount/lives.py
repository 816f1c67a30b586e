"""What must stand in a life or in the list of all that was done: what the history says it was."""

import re
from typing import Any, NamedTuple

from station.shop.facts import Batch, Concern, CutFile, Order, Pack, Reason, Router, Slip, Station
from tests.recount import figures as fig
from tests.recount import needs_look, trade
from tests.recount.books import Books, Entry
from tests.recount.pages import name_place
from tests.recount.rules import At, Rule

PAGE = 12  # lines of a life on one page
UNMADE_ROWS = 6  # of the page of sheets that were not made
TAKEN_BACK = " (taken back)"


class Step(NamedTuple):
    """One line: when, what was said, who."""

    at: str
    said: str
    by: str


def list_steps(books: Books) -> dict[str, set[str]]:
    """Every sentence that was said of an act, by its time."""

    def gather() -> dict[str, set[str]]:
        found: dict[str, set[str]] = {}
        for entry in books.entries:
            said = entry.said or "set up"
            found.setdefault(entry.at, set()).add(said + _undone(books, entry))
        for slip in books.all(Slip):
            router = books.get(Router, slip.router)
            found.setdefault(slip.at, set()).add(
                f"Sheet {slip.sheet} of batch {slip.batch} off {router.name if router else ''}, "
                f"{fig.n(slip.minutes)} min"
            )
        for pack in books.all(Pack):
            if pack.left:
                found.setdefault(pack.left, set()).add(f"Pack {pack.id} left with its cart")
        return found

    return books.once("steps", gather)


def _undone(books: Books, entry: Entry) -> str:
    return "" if books.counts(entry.id) else TAKEN_BACK


def _step(at: At) -> list[str]:
    """A line of a life stands in the history at its time, as it was said then."""
    books, now = at.books, at.look.now
    steps = at.look.once("shown steps", lambda: _by_shown_time(books, now))
    if at.k == 1:
        return sorted(steps.get(at.row[0], ()))
    if at.k == 0:
        return [at.row[0]] if at.row[1] in steps.get(at.row[0], ()) else []
    workers = {_say_who(books, e) for e in books.entries} | {s.by for s in books.all(Slip)}
    return sorted(workers)


def _by_shown_time(books: Books, now: str) -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for at, said in list_steps(books).items():
        found.setdefault(fig.with_day(at, now), set()).update(said)
    return found


def _newest(at: At) -> list[str] | None:
    """The n-th line of all that was done is that of the n-th newest act of all."""
    entries = [e for e in at.books.entries if not e.verdict][::-1]
    page = at.look.hand.aside.page
    page = min(page, max(0, (len(entries) - 1) // PAGE))
    n = page * PAGE + at.shown.rows.index(at.row)
    if n >= len(entries):
        return []
    same = [e for e in entries if e.at == entries[n].at]  # rows alike stand more than once
    said = [(e.said or "set up") + _undone(at.books, e) for e in same]
    who = [_say_who(at.books, e) for e in same]
    return [[fig.with_day(e.at, at.look.now) for e in same], said, who][at.k]


def _say_who(books: Books, entry: Entry) -> str:
    """Who did it; in a shop of several PCs at which one as well."""
    alone = len(list(books.all(Station))) < 2
    return entry.worker if alone or not entry.station else f"{entry.worker} at {entry.station}"


# --- a concern's story


def _story(at: At) -> list[str] | None:
    """What happened: when, by whom, about what, its pieces, what moved."""
    concern = at.books.get(Concern, at.look.hand.subject)
    if concern is None:
        return None
    entry = at.books.by_id.get(concern.id)
    moved = [_say_move(at.books, m) for m in entry.moves] if entry else []
    number = concern.about.partition("/")[2]
    return {
        "when": [f"{fig.day(concern.since)} {fig.clock(concern.since)}"],
        "by": [f"worker {entry.worker if entry else concern.worker}"],
        "at": [f"station {entry.station if entry else concern.station}"],
        "about": [concern.about.replace("/", " ")],
        "its pieces": [_pieces(at.books, number)],
        "why": [str(concern.now)],
        "moved": moved,
    }.get(at.row[0])


def _pieces(books: Books, batch: str) -> str:
    return fig.n(books.count(batch=batch))


def _say_move(books: Books, m: object) -> str:
    part, qty = m.part, m.qty  # type: ignore[attr-defined]
    nouns = {"sheet": "sheet", "mm": "m", "pass": "pass"}
    if part == "mm":  # what a bit has cut is told in m
        qty = qty / 1000
    what = nouns.get(part) or trade.name(books, part)
    if part in ("sheet", "pass") and qty != 1:
        what = {"sheet": "sheets", "pass": "passes"}[part]
    frm, to = name_place(books, m.frm), name_place(books, m.to)  # type: ignore[attr-defined]
    return f"from {frm} to {to}: {fig.n(qty)} {what}"


# --- what needs a look


def _age(at: At) -> list[str] | None:
    """Since when a thing needs a look: minutes, hours, or its day."""
    look, words = at.look, at.row[0]
    sinces = [c.since for c in needs_look.open_concerns(at.books) if str(c.text) == words]
    late = needs_look.late_orders(at.books, look.now)
    if "late: " in words and late and not words.startswith("Blocks"):
        order = next(o for o in at.books.all(Order) if o.id == late[0])
        sinces.append(order.due)
    if found := needs_look.CART.fullmatch(words):
        sinces.append(f"{look.now[:10]}T{found[2]}:00")
    return [_say_age(since, look.now) for since in sinces]


def _say_age(since: str, now: str) -> str:
    if since[:10] != now[:10]:
        return f"since {fig.day(since)}"
    minutes = max(0, fig.minutes(since, now))
    return f"{minutes} min" if minutes < 90 else f"{fig.n(minutes / 60)} h"


def _raised(at: At) -> list[str] | None:
    """What raised itself, or what a person is to settle, in its words."""
    if "eeds a look" not in at.shown.title and at.look.where != "Needs a look":
        return None
    books, now = at.books, at.look.now
    if at.k == 2 and at.shown.kind == "hint":
        return None  # what is settled with it
    concerns = [str(c.text) for c in needs_look.open_concerns(books)]
    raised = at.look.once("raised", lambda: needs_look.list_raised(books, now))
    return [*concerns, *raised]


def _about(at: At) -> list[str] | None:
    if at.k == 0:
        return None
    return [c.about.replace("/", " ") for c in needs_look.open_concerns(at.books)]


def _more(at: At) -> list[str]:
    """How many things stand nowhere on the screen."""
    every = needs_look.count_all(at.books, at.look.now)
    here = sum(needs_look.count_things(at.books, at.look.now, row[0]) for row in at.shown.rows)
    return [f"Needs a look, and {fig.n(every - here)} more"]


def _count_pages(at: At) -> list[str]:
    every = needs_look.count_all(at.books, at.look.now)
    return [f"Needs a look: {fig.n(every)}, page {at[1]} of {at[2]}"]


def _settled(at: At) -> list[str] | None:
    """What was settled today: when, what, by whom and why."""
    day = at.look.now[:10]
    done = [c for c in at.books.all(Concern) if c.settled and c.settled_at[:10] == day]
    return [
        [str(c.settled), fig.clock(c.settled_at), str(c.text), f"supervisor {c.by}: {c.reason}"][
            at.k
        ]
        for c in done
    ]


def _list_unmade(books: Books) -> list[tuple[str, ...]]:
    """Every sheet that was not made: batch, cut file, sheet, why and since when.

    Sheets that nobody may cut any more stand there as one row of their batch.
    """
    rows = []
    for concern in needs_look.open_concerns(books):
        batch = books.get(Batch, concern.about.partition("/")[2])
        spoiled = books.by_id.get(concern.id)
        if concern.what == "unmade" and batch and spoiled:
            sheet = re.search(r"sheet (\d+)", str(concern.text))
            reason = books.get(Reason, str(spoiled.args.get("reason", "")))
            since = f"{fig.day(concern.since)} {fig.clock(concern.since)}"
            rows.append((batch, sheet[1] if sheet else "", reason.words if reason else "", since))
    for number in needs_look.list_stuck(books):
        if batch := books.get(Batch, number):
            left = f"{batch.cut + 1}–{batch.sheets}"
            rows.append((batch, left, "another revision is approved", "now"))
    files = [(row, books.get(CutFile, row[0].cut_file)) for row in rows]
    return [(f"Batch {b.id}", f.name if f else b.cut_file, *more) for (b, *more), f in files]


def _not_made(at: At) -> str:
    """How many sheets were not made, or may not be cut any more."""
    return f"Not made: {fig.n(len(_list_unmade(at.books)))}"


def _unmade(at: At) -> list[str] | None:
    """The page of those sheets: how many there are, and each of its rows."""
    if not at.shown.whole.startswith("Sheets not made: "):
        return None
    every = _list_unmade(at.books)
    if at.k >= 0:
        alike = [row for row in every if row[0] == at.row[0] and row[2] == at.row[2]]
        return [row[at.k] for row in alike]
    work: Any = at.look.hand.work
    pages = max(1, -(-len(every) // UNMADE_ROWS))
    return [f"Sheets not made: {fig.n(len(every))}, page {work.page + 1} of {pages}"]


RULES = (
    Rule("buttons", "", r"Not made: [^ ]+", _not_made),
    Rule("table", r"\{list\}", r".*", _unmade, "title"),
    Rule("table", r"\{list\}", r".*", _unmade),
    Rule("list", "Its life", r".*", _step),
    Rule("list", "Newest first", r".*", _newest),
    Rule("pairs", "What happened", r".*", _story),
    Rule("list|table", "Needs a look", r"(since .+|\d+ (min|h))", _age),
    Rule("list|table", "Needs a look", r"[a-z]+ [^ ]+", _about),
    Rule("list", "Needs a look", r"Needs a look, and .*", _more, "title"),
    Rule("table", "Needs a look", r".*, page (\d+) of (\d+)", _count_pages, "title"),
    Rule("list|table|hint", "", r".*", _raised),
    Rule("cards", "Settled today", r".*", _settled),
)  # fmt: skip
