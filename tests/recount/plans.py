"""What must stand in the plan room and on the office's lists.

What the plan chooses and foresees (how many sheets, on which router, until when, with which
certainty) is not counted here: it is no figure of the history. `tests/planning` counts it anew.
"""

import re
from collections import Counter
from datetime import datetime, timedelta
from typing import Any

from station.shop.facts import (
    KINDS,
    Batch,
    Bed,
    Bit,
    Concern,
    CutFile,
    Fact,
    Lot,
    Material,
    Part,
    Product,
    RackPlace,
    Revision,
    Router,
    Slip,
)
from tests.recount import figures as fig
from tests.recount import loading, needs_look, trade
from tests.recount.books import Books
from tests.recount.rules import At, Rule

# --- the plan


def _blocks(at: At) -> list[str]:
    """Each part that blocks orders, in words; in fewer beside its own name."""
    found = []
    for part, orders, late in needs_look.list_blocks(at.books, at.look.now):
        found.append(needs_look.say_blocks(at.books, part, orders, late))
        if any(trade.name(at.books, part) in text for text in at.row):
            own = f", {fig.n(late)} late" if late else ""
            found.append(f"Blocks {fig.of(orders, 'order')}{own}")
    return found


def _matter(at: At) -> str | None:
    """What is wanted of the part that blocks most, what lies there, what is coming."""
    part = trade.find_part(at.books, at.row[0].rpartition(": ")[2])
    if not part:
        return None
    books, own = at.books, needs_look.count_own(at.books)[part]
    wanted = needs_look.count_wanted(books)[part] + own
    free = trade.on_rack(books, part, free=True)
    coming = needs_look.count_coming(books)[part] + own
    held = kept_back(books, part)
    words = [f"{fig.n(wanted)} wanted", f"{fig.n(free) if free else 'none'} on the rack"]
    words += [f"{fig.n(held)} kept back"] if held else []
    words.append(f"{fig.n(coming) if coming else 'none'} under way")
    open_ = [c for c in books.all(Concern) if not c.settled and c.what == "recount"]
    unsettled = sum(c.about == f"part/{part}" for c in open_)
    words += [f"{fig.of(unsettled, 'recount')} of it not settled"] if unsettled else []
    return ", ".join(words)


def kept_back(books: Books, part: str) -> int:
    """Pieces of a part on the rack, in open packs or on their way that are held."""
    packs = (needs_look.count_held_in_pack(books, o) for o in trade.open_orders(books))
    return sum(pack[part] for pack in packs) + sum(
        n
        for head in ("rack", "popping", "trimming", "rework")
        for _, b, _, n in books.lying(head=head, part=part)
        if trade.why_held(books, books.get(Batch, b))
    )


def _in_store(at: At) -> str | None:
    """Sheets of a material in the store that no batch in a queue takes, in a sentence."""
    n = count_free_sheets(at, at[3])
    if n is None:
        return None
    is_ = "is" if n == 1 else "are"
    return f"{at[1]}{fig.of(n, 'sheet')} of {at[3]} in the store {is_} free."


def _in_store_by_hand(at: At) -> str | None:
    """The same beside a release by hand."""
    n = count_free_sheets(at, at.row[0])
    return None if n is None else f"{fig.n(n)} in the store are free"


def _need_by_hand(at: At) -> str | None:
    """What is wanted of a part, lies there and is coming, beside a release by hand."""
    part = trade.find_part(at.books, at.row[0].rpartition(", minimum ")[0])
    if not part:
        return None
    own = needs_look.count_own(at.books)[part]
    wanted = needs_look.count_wanted(at.books)[part] + own
    coming = needs_look.count_coming(at.books)[part] + own
    free = trade.on_rack(at.books, part, free=True)
    return f"{fig.n(wanted)} wanted, {fig.n(free)} there, {fig.n(coming)} coming"


def _mark_by_hand(at: At) -> str | None:
    """The mark of a part, behind its name."""
    part = at.books.get(Part, trade.find_part(at.books, at[1]) or "")
    return f"{part.name}, minimum {fig.n(part.mark)}" if part else None


def count_free_sheets(at: At, name: str) -> int | None:
    """Counts sheets of a material in the store that no batch in a queue takes."""
    material = next((m for m in at.books.all(Material) if m.name == name), None)
    if material is None:
        return None
    lots = [x.id for x in at.books.all(Lot) if x.material == material.id]
    n = sum(max(0, at.books.sheets("store", lot)) for lot in lots)
    for batch in trade.to_be_cut(at.books):
        revision, on_bed = trade.revision_of(at.books, batch), trade.on_bed(at.books, batch)
        goes = trade.may_be_cut(at.books, batch) and not trade.why_held(at.books, batch)
        if revision and revision.material == material.id and goes:
            slips = (s for s in at.books.all(Slip) if s.batch == batch.id and s.state == "between")
            bed = at.books.get(Bed, batch.router)
            begun = sum(not (on_bed and bed and s.sheet == bed.sheet) for s in slips)
            n -= max(0, batch.sheets - batch.cut - on_bed - begun)
    return max(0, n)


def _sums(at: At) -> str | list[str] | None:
    """What stands beside the plan: orders that wait for parts and how many will, late ones."""
    orders = trade.open_orders(at.books)
    wanting = [o for o in orders if +needs_look.find_takes(at.books, o)]
    if at.row[0] == "late now":
        late = [o for o in wanting if o.due < at.look.now]
        return f"{fig.n(len(late))} of {fig.n(len(wanting))}"
    if at.row[0] == "orders that wait for parts":
        before = count_waiting(at.books)
        return f"{fig.n(before)} → {at[0].rpartition(' ')[2]}"
    return None


def count_waiting(books: Books) -> int:
    """Orders that lack a part which neither lies there nor is under way."""
    without: set[str] = set()
    coming = needs_look.count_coming(books)
    for part, wanted in needs_look.count_wanted(books).items():
        left = trade.on_rack(books, part, free=True) + coming[part]
        if wanted <= left:
            continue
        for order in trade.open_orders(books):
            takes = needs_look.find_wants(books, order)[part]
            if takes > left:
                without.add(order.id)
            else:
                left -= takes
    return len(without)


# --- the office's lists


def _all_of(books: Books, words: str) -> list[Fact]:
    """All facts of a list, by what is written over it."""
    kind = LISTS.get(words)
    return list(books.all(KINDS[kind])) if kind else []


LISTS = {"Orders": "order", "Cut files": "cutfile", "Parts": "part", "Products": "product",
         "Rack places": "rack", "Materials": "material", "Lots": "lot", "Routers": "router",
         "Bits": "bit", "Mailers": "mailer", "Bit sizes": "bit_size",
         "On its way": "purchase", "Own pushes": "push", "Carts": "cart", "Workers": "worker",
         "Reasons": "reason", "Revisions": "revision", "This shop": "shop"}  # fmt: skip


def _list_title(at: At) -> str | None:
    """How many there are in a list, and on how many pages."""
    facts = _all_of(at.books, at[1])
    pages = max(1, -(-len(facts) // LISTED))
    return f"{at[1]}: {fig.n(len(facts))}, page {at[2]} of {fig.n(pages)}"


def _list_cell(at: At) -> list[str] | None:
    """A cell of a row: what its fact has in one of its fields, names for numbers."""
    words = re.split(r":| with “", at.shown.whole)[0]
    kind = KINDS.get(LISTS.get(words, ""))
    fact = at.books.get(kind, at.row[0]) if kind else None
    return _cut_off(at[0], say_fields(at.books, fact)) if fact else None


def _form_cell(at: At) -> list[str] | None:
    """A field of the thing that is open, as it is known; what is typed is not saved yet."""
    work: Any = at.look.hand.work
    kind = KINDS.get(getattr(work, "list", ""))
    fact = at.books.get(kind, work.chosen) if kind and work.chosen else None
    if fact is None or at.k != 2:
        return None
    typed = [text for value in (work.form or {}).values() for text in _say_value(at.books, value)]
    known = {*say_fields(at.books, fact), *typed}
    if at[0] not in known and work.form:
        return None  # typed, and named by what it points at
    return _cut_off(at[0], known)


def _cut_off(told: str, known: set[str]) -> list[str]:
    """What is known, and what of it is told where there is no room for more."""
    begun = told.removesuffix("…").rstrip()
    cut = [told] if told.endswith("…") and any(k.startswith(begun) for k in known) else []
    return [*sorted(known), *cut]


def say_fields(books: Books, fact: Fact) -> set[str]:
    """Every field of a fact as a form says it."""
    said = set()
    for value in vars(fact).values():
        said |= set(_say_value(books, value))
    return said


def _say_value(books: Books, value: object) -> list[str]:
    if isinstance(value, bool):
        return []
    if isinstance(value, int | float):
        whole = [fig.n(value)] if value == int(value) else []
        return [f"{value:g}", str(value), *whole]
    if isinstance(value, str):
        if re.fullmatch(r"\d{4}-\d\d-\d\dT.*", value):
            return [f"{fig.day(value)} {value[:4]} {fig.clock(value)}"]
        if re.fullmatch(r"\d{4}-\d\d-\d\d", value):
            return [f"{fig.day(value)} {value[:4]}"]
        named = [f"{value} · {f.name}" for kind in NAMED if (f := books.get(kind, value))]
        return [value, *named]
    if isinstance(value, tuple):
        return [_say_rows(books, value)]
    return []


LISTED = 12  # rows of a list
NAMED = (Part, RackPlace, Material, Router, CutFile, Product)


def _say_rows(books: Books, rows: tuple[Any, ...]) -> str:
    """Lines of an order or parts of a product: ``2 × HC-300, 1 × ST-200``."""
    found = []
    for row in rows:
        number, n = (row.product, row.quantity) if hasattr(row, "product") else (row, 0)
        if isinstance(row, tuple) and len(row) == 2:
            number, n = row
        kind = Product if hasattr(row, "product") else Part
        fact = books.get(kind, number) if isinstance(number, str) else None
        name = getattr(fact, "name", number)
        found.append(f"{n} × {name}" if n else f"{name}")
    return ", ".join(found)


# --- beside a form


def _from_the_work(at: At) -> list[str] | None:
    """What the work tells of a router or a bit: pace, spread, sheets; metres, by router."""
    work: Any = at.look.hand.work
    if at.k == 0:
        return None
    if work.list == "router":
        line = loading.find_line(at.books, work.chosen)
        if line is None:
            return None
        sheets = fig.of(line.count, "sheet")
        left = f", {fig.n(line.left_out)} left out" if line.left_out else ""
        return [f"× {line.pace:.3f}", f"{fig.n(line.extra_s)} s", f"± {fig.n(line.spread_s)} s",
                f"{sheets}{left}"]  # fmt: skip
    bit = at.books.get(Bit, work.chosen)
    if work.list == "bit" and bit:
        each = at.books.at.get(f"bit/{bit.id}", {})
        every = [mm for (_, what), mm in each.items() if what == "mm"]
        return [f"{fig.n(mm / 1000)} m" for mm in (sum(every), *every)]
    if work.list == "lot":
        return [fig.of(at.books.sheets("store", work.chosen), "sheet")]
    return _form_cell(at)


def _spoiled(at: At) -> list[str] | None:
    """Pieces that were not good off a router in two weeks, for one reason at one place."""
    work: Any = at.look.hand.work
    since = datetime.fromisoformat(at.look.now) - timedelta(days=14)
    counts: Counter[tuple[str, str]] = Counter()
    for entry in at.books.done(since.isoformat()):
        for read in entry.readings:
            if read.get("kind") == "spoiled" and read.get("router") == work.chosen:
                counts[read.get("why", ""), read.get("place", "")] += round(read["value"])
    return [fig.n(n) for n in counts.values()]


def _revision(at: At) -> list[str] | None:
    """The newest revision of a cut file: parts and minutes of a sheet."""
    work: Any = at.look.hand.work
    found = [r for r in at.books.all(Revision) if r.cut_file == work.chosen]
    return [
        f"Revision {r.letter}: {fig.of(len(r.placed), 'part')} a sheet, {r.minutes:.1f} min."
        for r in found
    ]


RULES = (
    Rule("decision|table", "", r"Blocks .*", _blocks),
    Rule("decision", "", r"[^ ]+ wanted, .*", _matter),
    Rule(
        "decision",
        "",
        r"((.* )?)(?:[^ ]+) sheets? of (.+) in the store (?:is|are) free\.",
        _in_store,
    ),
    Rule("pairs", "If you do this", r".*", _sums),
    Rule("pairs", "", r"[^ ]+ in the store are free", _in_store_by_hand),
    Rule("pairs", "", r"[^ ]+ wanted, [^ ]+ there, [^ ]+ coming", _need_by_hand),
    Rule("pairs", "", r"(.+), minimum [^ ]+", _mark_by_hand),
    Rule(
        "table",
        r"\{list\}",
        r"([^“]+): (?:[^ ]+), page ([^ ]+) of (?:[^ ]+)",
        _list_title,
        "title",
    ),
    Rule("table", r"\{list\}", r".*", _list_cell),
    Rule("table", r"(\{kind\} \{id\}|\{thing\}, page \{page\} of \{pages\})$", r".*", _form_cell),
    Rule("pairs", "From the work", r".*", _from_the_work),
    Rule("drawing", "Revision", r".*", _revision),
    Rule("list", "Not good off it", r"[\d\u202f]+", _spoiled),
)
