"""Questions about work under way: what waits where, what comes next, what was done meanwhile."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from station.queries.batches import find_hold, find_revision, is_approved
from station.queries.routers import list_beds
from station.shop.acts import Act, Answer, Args, ask
from station.shop.facts import Batch, Order, Router, Slip
from station.shop.moves import Held, Move, head
from station.shop.places import areas_of, kind_of
from station.shop.views import View
from station.shop.words import Say, clock, say, together, when

MOST = 500  # slips at popping, and sheets of a router's day
BATCHES = 10_000  # cut ones that are listed
QUEUED = 200  # batches in a router's queue


# --- what waits


def list_waiting(view: View, area: str = "") -> tuple[Held, ...]:
    """Lists the pieces that wait for work, in one work area where given."""
    held: list[Held] = []
    if area != "popping":
        for place in areas_of("trimming"):
            held += view.stock(place=place)
    if area != "trimming":
        for slip in view.shelf(Slip, "popping", MOST):
            held += view.stock(batch=slip.batch, place=f"popping/{slip.sheet}")
    return tuple(held)


def list_waiting_batches(view: View) -> tuple[str, ...]:
    """Lists the batches whose pieces wait for work: at popping the oldest first, then others."""
    ids = [slip.batch for slip in view.shelf(Slip, "popping", MOST)]
    ids += [held.batch for held in list_waiting(view, "trimming")]
    return tuple(dict.fromkeys(ids))


def list_with_paper(view: View, batch: str, area: str = "") -> tuple[Held, ...]:
    """Lists the pieces of a batch that lie with its traveller, in one work area where given.

    An area that nothing waits in is as good as none: the pieces may lie anywhere.
    """
    held = tuple(h for h in view.stock(batch=batch) if kind_of(h.place).paper)
    kinds = areas_of(area) if area else ()
    return tuple(h for h in held if head(h.place) in kinds) if kinds else held


def count_by_place(held: Iterable[Held]) -> dict[str, dict[str, int]]:
    """Counts the pieces of each part by the place where they lie."""
    counts: dict[str, dict[str, int]] = {}
    for h in held:
        here = counts.setdefault(h.part, {})
        here[h.place] = here.get(h.place, 0) + h.qty
    return counts


# --- what is to be cut, and what was


def list_queue(view: View, router: str) -> tuple[Batch, ...]:
    """Lists the batches in a router's queue, those being cut first, then by due time."""
    return view.shelf(Batch, f"queue/{router}", QUEUED)


def list_queued(view: View) -> tuple[Batch, ...]:
    """Lists the batches in the queues of all routers."""

    def list_now(view: View) -> tuple[Batch, ...]:
        return tuple(b for r in view.shelf(Router, "all") for b in list_queue(view, r.id))

    return view.once("queued/all", list_now)


def count_sheets_to_cut(view: View) -> int:
    """Counts the sheets that are still to be cut, those on the beds too."""
    return sum(b.sheets - b.cut for b in list_queued(view))


def count_pieces_to_cut(view: View) -> int:
    """Counts the pieces of all parts on the sheets that are still to be cut."""

    def count_all(view: View) -> int:
        return sum(
            (batch.sheets - batch.cut) * len(revision.placed)
            for batch in list_queued(view)
            if (revision := find_revision(view, batch))
        )

    return view.once("queued/pieces", count_all)


def list_cut(view: View, router: str, day: str) -> tuple[Slip, ...]:
    """Lists the sheets that came off a router on a day (``2026-11-25``), oldest first.

    The slip of what was split off a sheet tells of no sheet more.
    """
    slips = [*view.shelf(Slip, f"cut/{router}/{day}", MOST)]
    slips += (s for s in view.shelf(Slip, "popping", MOST) if s.router == router)
    found = (s for s in slips if s.at[:10] == day and not _is_split_off(view, s))
    return tuple(sorted(found, key=lambda s: s.at))


def _is_split_off(view: View, slip: Slip) -> bool:
    batch = view.get(Batch, slip.batch)
    return batch is not None and not batch.has_sheets


def list_all_batches(view: View) -> tuple[Batch, ...]:
    """Lists the batches in the queues, under way and cut, by number, the newest first."""

    def list_now(view: View) -> tuple[Batch, ...]:
        found = {b.id: b for b in (*list_queued(view), *view.shelf(Batch, "cut", BATCHES))}
        for number in list_waiting_batches(view):
            if batch := view.get(Batch, number):
                found[number] = batch
        return tuple(found[number] for number in sorted(found, reverse=True))

    return view.once("batches/all", list_now)


# --- what comes


class Underway(NamedTuple):
    """Pieces of a part by where they are, and the earliest due time of their batches.

    `bed` are on a router's bed now, `queue` on sheets that are still to be cut.
    """

    trimming: int
    rework: int
    popping: int
    bed: int
    queue: int
    due: str

    @property
    def all(self) -> int:
        """Pieces under way, wherever they are."""
        return self.trimming + self.rework + self.popping + self.bed + self.queue

    def words(self, now: str) -> Say:
        """The places in words: 160 in trimming and 24 at popping, due 14:00."""
        places = (
            (self.trimming, say("{n} in trimming", n=self.trimming)),
            (self.rework, say("{n} in rework", n=self.rework)),
            (self.popping, say("{n} at popping", n=self.popping)),
            (self.bed, say("{n} being cut", n=self.bed)),
            (self.queue, say("{n} still to be cut", n=self.queue)),
        )
        where = together([words for count, words in places if count])
        if not self.due:
            return where
        return say("{where}, due {at}", where=where, at=when(self.due, now))


def count_underway(view: View, part: str, order: str = "") -> Underway:
    """Counts the pieces of a part that may reach the rack, or an order, from where they are.

    Batches that are held, and those cut for another order that still wants them, do not
    count.
    """
    dues: list[str] = []
    found = Underway(
        _lying(view, part, order, "trimming", dues),
        _lying(view, part, order, "rework", dues),
        _at_popping(view, part, order, dues),
        *_to_cut(view, part, order, dues),
        due="",
    )
    return found._replace(due=min(filter(None, dues), default=""))


def _may_come(view: View, batch: Batch | None, order: str) -> bool:
    """Says whether pieces of a batch may come to this order."""
    if batch is None:
        return True
    if find_hold(view, batch.id):
        return False
    theirs = view.get(Order, batch.order) if batch.order not in ("", order) else None
    return theirs is None or not theirs.takes_pieces


def _lying(view: View, part: str, order: str, place: str, dues: list[str]) -> int:
    count = 0
    for held in view.stock(place=place):
        batch = view.get(Batch, held.batch) if held.part == part else None
        if held.part == part and _may_come(view, batch, order):
            count += held.qty
            dues.append(batch.due if batch else "")
    return count


def _at_popping(view: View, part: str, order: str, dues: list[str]) -> int:
    count = 0
    for slip in view.shelf(Slip, "popping", MOST):
        batch = view.get(Batch, slip.batch)
        if not _may_come(view, batch, order):
            continue
        held = view.stock(batch=slip.batch, place=f"popping/{slip.sheet}")
        here = sum(h.qty for h in held if h.part == part)
        count += here
        dues.append(batch.due if batch and here else "")
    return count


def _to_cut(view: View, part: str, order: str, dues: list[str]) -> tuple[int, int]:
    """Counts the pieces on the beds now, and on the sheets that are still to be cut."""
    bed_count = queue_count = 0
    for router, bed in list_beds(view):
        for batch in list_queue(view, router.id):
            revision = find_revision(view, batch)
            each = revision.makes().get(part, 0) if revision else 0
            if not each or not _may_come(view, batch, order):
                continue
            on_bed = bool(bed.batch == batch.id and bed.sheet and bed.state != "free")
            left = max(0, batch.sheets - batch.cut - on_bed) if is_approved(view, batch) else 0
            bed_count += each * on_bed
            queue_count += each * left
            dues.append(batch.due if on_bed or left else "")
    return bed_count, queue_count


# --- what another has done meanwhile
#
# A hand is known to its own station alone, so nobody sees who else holds a pile. Each act on a
# pile therefore carries what lay there when it was picked up (`seen`: part → pieces), and the
# second person is told before their count takes the rest.

DID: dict[str, Say] = {
    "pass_on": say("passed {n} on"),
    "put_on_rack": say("put {n} on the rack"),
    "split_batch": say("split {n} off"),
    "find_parts": say("found {n}"),
}
ALL_OF_IT = ("split_batch", "find_parts")  # acts whose moves all tell how many


def count_good(moves: Iterable[Move]) -> int:
    """Counts the pieces that went on as good."""
    return sum(m.qty for m in moves if kind_of(m.to.place).good)


def explain_last(view: View, batch: Batch) -> Say:
    """Explains what was last done with a batch: "worker 02 passed 60 on at 10:42"; or nothing."""
    past = view.last(batch.key)
    if past is None or past.undone or past.act.kind not in DID:
        return Say()
    moves = past.moves
    n = sum(m.qty for m in moves) if past.act.kind in ALL_OF_IT else count_good(moves)
    did = DID[past.act.kind]._replace(values={"n": n})
    return say("worker {by} {did} at {at}", by=past.act.worker, did=did, at=clock(past.act.at))


def ask_if_changed(
    act: Act[Args], seen: Mapping[str, int], view: View, batch: Batch, here: Mapping[str, int]
) -> Answer | None:
    """Asks back where another number lies here than was picked up (part → pieces, both)."""
    if not seen or act.args.sure:
        return None
    past = view.last(batch.key)
    mine = past is not None and past.act.station == act.station
    if mine or {part: n for part, n in seen.items() if n} == dict(here):
        return None
    return ask(
        say(
            "{n} {n|is|are} here, {seen} when you took it: {who}",
            n=sum(here.values()),
            seen=sum(seen.values()),
            who=explain_last(view, batch) or say("it was changed"),
        ),
        say("Count again. Scan it again if the figures on the screen are right."),
        "sure",
    )
