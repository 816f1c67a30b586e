"""Lists what waits at popping, what comes next from the routers, what was passed on today."""

from station.floor.popping.work import PoppingHand
from station.floor.shared.put_today import list_passed_on
from station.queries.batches import describe_batch, find_hold
from station.queries.first_offs import find_unmeasured
from station.queries.routers import list_beds
from station.queries.underway import MOST
from station.shop.codes import write_touch
from station.shop.faces import Cards, Cell, Entry, Listing
from station.shop.facts import Batch, Bed, Slip
from station.shop.places import KINDS, areas_of
from station.shop.times import count_seconds
from station.shop.views import View, total
from station.shop.words import Say, clock, moment, say, several

LONG_WAIT = 45  # minutes after which a batch that waits is shown as late
GOOD = frozenset(name for name, kind in KINDS.items() if kind.good)
LONG_AGO = 600  # minutes; told by the time itself from here on
MOST_SHEETS = 6  # that are named of a batch


def list_waiting(hand: PoppingHand, view: View, most: int) -> Cards:
    """Lists the batches that wait here, the longest wait first; those in hand left out."""
    by_batch: dict[str, list[Slip]] = {}
    for slip in view.shelf(Slip, "popping", MOST):
        if slip.id not in hand.work.slips:
            by_batch.setdefault(slip.batch, []).append(slip)
    entries = [_make_entry(view, slips, hand.now) for slips in list(by_batch.values())[:most]]
    more = len(by_batch) - len(entries)
    title = say("Waiting here: {n} more", n=more) if more > 0 else say("Waiting here")
    return Cards(title=title, entries=tuple(entries), empty=say("Nothing else waits."))


def _make_entry(view: View, slips: list[Slip], now: str) -> Entry:
    batch = view.get(Batch, slips[0].batch)
    waited = count_minutes(slips[0].at, now)
    lying = sum(total(view.stock(batch=s.batch, place=f"popping/{s.sheet}")) for s in slips)
    hold = find_hold(view, slips[0].batch)
    due = [s.sheet for s in slips if find_unmeasured(view, s.batch, s.sheet)]
    first = say("first-off is due of sheet {n}", n=due[0]) if due else ""
    return Entry(
        big=slips[0].batch,
        right=_say_waited(waited, slips[0].at, now),
        tone="attention" if hold or due or waited >= LONG_WAIT else "",
        line1=say("{words} · {k|sheet|sheets} {sheets} · {n} {n|part|parts}",
                  words=describe_batch(view, batch) if batch else "", k=len(slips),
                  sheets=_name_sheets(slips), n=lying),
        line2=say("held: {why}", why=hold.why_held) if hold else first,
        code=write_touch("batch", slips[0].batch, batch.copy if batch else ""),
    )  # fmt: skip


def _name_sheets(slips: list[Slip]) -> str:
    """Names the first sheets of many, and shows that there are more."""
    numbers = [str(s.sheet) for s in slips]
    if len(numbers) <= MOST_SHEETS:
        return several(numbers)
    return ", ".join(numbers[:MOST_SHEETS]) + " …"


def _say_waited(minutes: int, since: str, now: str) -> Say:
    """Says how long a sheet waits; after many hours since when, and on which day."""
    if minutes < LONG_AGO:
        return say("{n} min", n=minutes)
    return say("since {at}", at=clock(since) if since[:10] == now[:10] else moment(since))


def count_minutes(since: str, now: str) -> int:
    """Counts the minutes between what two clocks show, across midnight too."""
    return round(count_seconds(since[:16], now[:16]) / 60)


def list_coming(hand: PoppingHand, view: View) -> Listing:
    """Lists what the routers cut now: the sheets that come here next, the first one first."""
    beds = list_beds(view)
    cutting = sorted((b.ends, r.id, b, r) for r, b in beds if b.sheet and b.state == "cutting")
    stopped = [(b.ends, r.id, b, r) for r, b in beds if b.sheet and b.state == "stopped"]
    return Listing(
        title=say("Comes next"),
        rows=tuple(
            (
                (
                    Cell(text=r.name, bold=True),
                    Cell(text=say("{batch}, sheet {n}", batch=b.batch, n=b.sheet)),
                    _say_when(b, hand.now),
                ),
                "",
            )
            for _, _, b, r in (*cutting, *stopped)
        ),
        empty=say("No sheet is being cut."),
    )


def _say_when(bed: Bed, now: str) -> Cell:
    """Says when a sheet should be off its bed."""
    if bed.state == "stopped":
        return Cell(text=say("stopped"), tone="stop")
    if bed.ends <= now:
        return Cell(text=say("due"), tone="attention")
    return Cell(text=say("about {at}", at=clock(bed.ends)), tone="quiet")


def list_passed(hand: PoppingHand, view: View) -> Listing:
    """Lists what was passed on as good today, the most first."""
    title = say("Passed on today")
    return list_passed_on(title, view, hand.now, frm=areas_of("popping"), to=GOOD)
