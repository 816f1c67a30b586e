"""Thinks about what to cut next: a foreman's morning, in figures.

What orders lack comes first, and of that only as much as they want. Then the rack is filled to
where it should be; sheets planned for orders count as under way by then. What is queued and
nobody needs is named.
"""

import math
from collections.abc import Callable, Mapping
from typing import NamedTuple

from msgspec.structs import replace

from station.planning.chances import find_chance_enough
from station.planning.hours import Hours
from station.planning.learnt import PartLearnt, learn_parts, share_sheets
from station.planning.lots import divide_for_orders, part_sheets
from station.planning.messages import (
    Because,
    Blocked,
    CuttingPlan,
    FileNow,
    PlanCutting,
    Release,
    WhyNot,
)
from station.planning.order import count_sheets_a_day, list_to_order
from station.planning.routers import LAST, LOAD_MIN, SHEET_MIN, RouterLoad
from station.planning.sheets import SheetCounts, SheetFile, count_sheets
from station.planning.surplus import OVER_DAYS, weigh_piece, weigh_surplus
from station.planning.timing import take_turns
from station.planning.waiting import (
    find_wanted,
    list_besides,
    list_forward,
    list_marks,
    list_over_full,
    list_take_back,
)

FIRST, AGAIN = 0.3, 0.2  # of the time, for one count of sheets and for counting them again
# worked days of use that may be under way before more is cut for the rack; of our own choice
UNDER_WAY_DAYS = 1.25
Counts = Mapping[str, int]  # sheets by cut file


class DraftLine(NamedTuple):
    """Sheets of a file that are still to get a router, and the part they are cut for."""

    rank: tuple[str | float, ...]
    file: str
    sheets: int
    part: PartLearnt
    due: str
    by: str
    because: Because
    more: int = 0  # sheets that follow for the same, in batches of their own


def run(asked: PlanCutting, report: Callable[[str, float], None]) -> CuttingPlan:
    """Thinks it through."""
    report("learn", 0.0)
    thinking = Thinking(asked)
    report("orders", 0.2)
    lacked = thinking.count_for_orders()
    report("rack", 0.6)
    return thinking.answer(lacked, thinking.count_for_rack())


class Thinking:
    """One plan in the making."""

    def __init__(self, asked: PlanCutting) -> None:
        self.asked = asked
        self.files = {f.id: f for f in asked.files}
        self.parts = learn_parts(asked)
        self.hours = Hours(
            asked.day_starts, asked.day_ends, asked.weekdays, asked.breaks, asked.closed
        )
        self.load = RouterLoad(asked.routers, asked.queued)
        self.in_store = _count_store(asked)
        self.store = dict(self.in_store)  # what is left of it
        self.minutes = share_sheets(asked)  # of a piece of each part
        sure = asked.certainty
        self.fresh = {part: known.count_fresh(sure) for part, known in self.parts.items()}
        self.made: dict[str, int] = {}  # pieces planned so far
        self.before: dict[str, int] = {}  # of these for orders
        self.lots: dict[str, int] = {}  # of these for orders, in the lots so far
        self.found: list[SheetCounts] = []
        self.put_off = 0  # sheets for the rack that wait until less is under way

    # --- how many sheets

    def count_for_orders(self) -> Counts:
        """Counts the sheets for what open orders lack."""
        return self._count(self.fresh)

    def count_for_rack(self) -> Counts:
        """Counts the sheets for parts of which less lies on the rack than should."""
        self.before = dict(self.made)
        made = [(part, self.made.get(part.now.id, 0)) for part in self.parts.values()]
        return self._count(
            {part.now.id: part.count_below(n) for part, n in made},
            {part.now.id: part.count_room(n) for part, n in made},
        )

    def _count(self, need: Mapping[str, int], room: Mapping[str, int] = {}) -> Counts:
        over = {part: self._weigh_more(part) for part in self.parts}
        found = self._count_sheets(need, room, over, FIRST)
        less = self._weigh_much(found, need, over)
        if less != over:
            other = self._count_sheets(need, room, less, AGAIN)
            covers = not other.uncovered.keys() - found.uncovered.keys()
            if covers and self._weigh_all(other, need) < self._weigh_all(found, need):
                found, over = other, less
        needed = {part: n - found.uncovered.get(part, 0) for part, n in need.items() if n > 0}
        shift = sum(over.get(part, 0.0) * n for part, n in needed.items())
        found = found._replace(
            objective=found.objective - shift, lower_bound=found.lower_bound - shift
        )
        self.found.append(found)
        for number, sheets in found.counts.items():
            file = self.files[number]
            if file.material in self.store:
                self.store[file.material] -= sheets
            for part, each in file.makes.items():
                self.made[part] = self.made.get(part, 0) + each * sheets
        return found.counts

    def _count_sheets(
        self,
        need: Mapping[str, int],
        room: Mapping[str, int],
        over: Mapping[str, float],
        share: float,
    ) -> SheetCounts:
        """Counts the sheets of each file, where a piece beyond need weighs so much; `share` of
        the time is for it.
        """
        return count_sheets(
            tuple(self._weigh_file(f, over) for f in self.asked.files if f.minutes),
            need,
            in_store=self.store,
            room=room,
            seconds=self.asked.seconds * share,
        )

    @staticmethod
    def _weigh_file(file: FileNow, over: Mapping[str, float]) -> SheetFile:
        """Weighs a sheet of a file: the router, the person, the material, its pieces in excess."""
        weight = min(file.minutes.values()) + LOAD_MIN + SHEET_MIN
        weight += sum(over.get(part, 0.0) * n for part, n in file.makes.items())
        return SheetFile(file.id, weight, file.makes, stock=file.material)

    def _count_there(self, part: str) -> float:
        """Counts the pieces of a part that lie or come by now, or should lie."""
        known = self.parts[part]
        return max(known.level, known.left + self.made.get(part, 0))

    def _weigh_more(self, part: str, more: float = 0.0) -> float:
        """Weighs a piece beyond need, in minutes, after so many more."""
        there = self._count_there(part) + more
        return weigh_piece(self.parts[part], there, self.minutes.get(part, 0.0))

    def _list_surplus(self, found: SheetCounts, need: Mapping[str, int]) -> Counts:
        """Lists by part the pieces of found sheets beyond the need."""
        made: dict[str, int] = {}
        for file, sheets in found.counts.items():
            for part, each in self.files[file].makes.items():
                made[part] = made.get(part, 0) + each * sheets
        return {p: max(0, n - max(0, need.get(p, 0))) for p, n in made.items() if p in self.parts}

    def _weigh_much(
        self, found: SheetCounts, need: Mapping[str, int], over: Mapping[str, float]
    ) -> dict[str, float]:
        """Weighs pieces beyond need anew where so many are made that the last lie for long: each
        as the one in the middle of them.
        """
        less = dict(over)
        for part, more in self._list_surplus(found, need).items():
            days = self.parts[part].count_days(self._count_there(part) + more)
            if over[part] < 0 and days is not None and days > OVER_DAYS:
                less[part] = self._weigh_more(part, more / 2)
        return less

    def _weigh_all(self, found: SheetCounts, need: Mapping[str, int]) -> float:
        """Weighs sheets and each piece beyond need by its own day, in minutes."""
        weight = sum(
            sheets * (min(self.files[file].minutes.values()) + LOAD_MIN + SHEET_MIN)
            for file, sheets in found.counts.items()
        )
        return weight + sum(
            weigh_surplus(self.parts[p], self._count_there(p), more, self.minutes.get(p, 0.0))
            for p, more in self._list_surplus(found, need).items()
        )

    # --- on which router

    def answer(self, lacked: Counts, rack: Counts) -> CuttingPlan:
        """Gives the releases their routers, the most urgent first, and puts all together."""
        drafts = self._fit_under_way(self._draft_rack(rack), lacked)
        releases = [*map(self._release, self._draft_orders(lacked)), *map(self._release, drafts)]
        wanted = find_wanted(self.asked, self.parts)
        turned = take_turns(self.asked, self.parts, self.hours, releases, wanted)
        for_orders = tuple(r for r in turned.releases if r.due)
        for_rack = tuple(r for r in turned.releases if not r.due)
        blocked = self._list_blocked(for_orders)
        shown = {b.release for b in blocked}
        then = (*(r for r in for_orders if r not in shown), *for_rack)
        a_day = count_sheets_a_day(self.asked, self.parts)
        plan = CuttingPlan(
            at=self.asked.now,
            seen=tuple(batch.id for batch in self.asked.queued),
            blocked=blocked,
            then=then,
            take_back=list_take_back(self.asked, self.parts),
            forward=list_forward(self.asked, wanted, turned.places),
            over_full=list_over_full(self.parts),
            marks=list_marks(self.asked, self.parts),
            order=list_to_order(self.asked, a_day, self.store, self.hours),
            uncovered=self._list_unmakeable(),
            besides=list_besides(self.asked),
            put_off=self.put_off,
            under_way=sum(p.under_way + p.on_own for p in self.asked.parts)
            + sum(self._count_pieces(file, sheets) for file, sheets in lacked.items()),
            done_by=self.hours.add_minutes(self.asked.now, turned.busy),
        )
        return self._add_sums(plan, (*for_orders, *for_rack))

    def _add_sums(self, plan: CuttingPlan, releases: tuple[Release, ...]) -> CuttingPlan:
        wishes = [wish for part in self.asked.parts for wish in (*part.wishes, *part.own)]
        late = {wish.order for wish in wishes if wish.due < self.asked.now}
        stuck = {order for b in plan.blocked if b.why_not for order in b.orders}
        return replace(
            plan,
            orders=len({wish.order for wish in wishes}),
            late=len(late),
            waiting=len({order for b in plan.blocked for order in b.orders}),
            waiting_after=len(stuck),
            beyond=sum(r.beyond for r in releases),
            minutes=sum(r.minutes for r in releases),
            people_minutes=sum(r.people_minutes for r in releases),
            objective=round(sum(f.objective for f in self.found), 3),
            lower_bound=round(sum(f.lower_bound for f in self.found), 3),
        )

    def _draft_orders(self, counts: Counts) -> list[DraftLine]:
        """Drafts the sheets for orders in lots, those first that the first order waits for."""
        lots = divide_for_orders(counts, self.files, self.parts, self.asked.certainty)
        return [
            DraftLine((lot.due,), lot.file, lot.sheets, self.parts[lot.part], lot.due, lot.due,
                      "orders", lot.more)
            for lot in lots
        ]  # fmt: skip

    def _draft_rack(self, counts: Counts) -> list[DraftLine]:
        """Drafts the sheets for the rack, those first of which least lies there."""
        drafts = []
        for file, sheets in counts.items():
            made = [p for p in map(self.parts.get, self.files[file].makes) if p and p.level]
            part = min(made, key=self._find_share)
            because = self._find_why(part)
            rank, by = (self._find_share(part), file), self._find_empty(part)
            drafts.append(DraftLine(rank, file, sheets, part, "", by, because))
        return sorted(drafts, key=lambda d: d.rank)

    def _find_why(self, part: PartLearnt) -> Because:
        """Finds why a part is cut for the rack."""
        left = self._count_left(part)
        if left < part.now.mark:
            return "mark"
        return "use" if left < part.level - part.now.besides else "ahead"

    def _fit_under_way(self, drafts: list[DraftLine], lacked: Counts) -> list[DraftLine]:
        """Keeps the sheets for the rack that may be cut now: else all that is under way waits.

        The more is under way, the longer it takes to the rack (known as constant work in process,
        Spearman, Woodruff and Hopp 1990, from memory).
        """
        use = sum(part.use.mean for part in self.parts.values() if part.use)
        ahead = sum(self._count_pieces(file, sheets) for file, sheets in lacked.items())
        left = UNDER_WAY_DAYS * use - ahead - sum(p.under_way + p.on_own for p in self.asked.parts)
        kept = []
        for draft in drafts:
            each = self._count_pieces(draft.file, 1)
            sheets = min(draft.sheets, math.ceil(left / each)) if use else draft.sheets
            sheets = max(0, sheets)
            self.put_off += draft.sheets - sheets
            if (material := self.files[draft.file].material) in self.store:
                self.store[material] += draft.sheets - sheets
            parted = part_sheets(self.files[draft.file], sheets)
            kept += [draft._replace(sheets=batch) for batch, _more in parted]
            left -= sheets * each
        return kept

    def _count_pieces(self, file: str, sheets: int) -> int:
        return sheets * sum(self.files[file].makes.values())

    def _find_empty(self, part: PartLearnt) -> str:
        """Finds its place in a queue: no order waits yet, but in the end its turn must come.

        That is when the rack runs out of it, and as long again as an order that comes then waits.
        """
        days = part.count_days(max(0.0, self._count_left(part)))
        if days is None:
            return ""
        days += self.asked.lead_days + 1
        return self.hours.add_minutes(self.asked.now, days * self.hours.minutes)

    def _count_left(self, part: PartLearnt) -> float:
        """Counts the pieces that are left once what is cut for orders is there too."""
        return part.left + self.before.get(part.now.id, 0) * part.mean

    def _find_share(self, part: PartLearnt) -> float:
        """Finds the share of what should lie there that does."""
        return self._count_left(part) / part.level

    def _release(self, draft: DraftLine) -> Release:
        """Gives a draft the router where it ends first."""
        file, part = self.files[draft.file], draft.part
        bare = self._describe(file, draft.sheets, part, draft)
        if draft.due:
            for made, each in file.makes.items():
                self.lots[made] = self.lots.get(made, 0) + each * draft.sheets
        slots = self.load.list_slots(file, draft.sheets, draft.by or LAST)
        if not slots:
            return bare
        slot = slots[0]
        self.load.plan(file, draft.sheets, draft.by, slot)
        return replace(
            bare,
            router=slot.router.id,
            router_name=slot.router.name,
            minutes=draft.sheets * file.minutes[slot.router.id],
            bit_missing=slot.bit_missing,
        )

    def _describe(self, file: FileNow, sheets: int, part: PartLearnt, draft: DraftLine) -> Release:
        """Says what so many sheets are good for, whatever router takes them."""
        fresh, chance = sheets * file.makes[part.now.id], part.chance
        unmet = part.list_unmet() or part.list_unsure(self.asked.certainty)
        left = part.left if draft.due else self._count_left(part)
        before = self.lots.get(part.now.id, 0) if draft.due else 0
        served, until = part.count_served(before + fresh, self.asked.certainty)
        coming = before + fresh + int(part.coming)
        sure = find_chance_enough(coming, served, chance) if chance else 0
        material = next((m for m in self.asked.materials if m.id == file.material), None)
        return Release(
            file=file.id,
            name=file.name,
            sheets=sheets,
            more=draft.more,
            due=draft.due,
            by=draft.by,
            part=part.now.id,
            part_name=part.now.name,
            because=draft.because,
            each=file.makes[part.now.id],
            need=served if draft.due else max(0, round(part.level - left)),
            loss=round(chance.loss, 4) if chance else None,
            certainty=round(sure, 4) if chance and draft.due else None,
            orders=len(unmet),
            serves=sum(wish.due <= until for wish in unmet) if draft.due else 0,
            first_due=unmet[0].due if unmet else "",
            mark=part.now.mark,
            besides=part.now.besides,
            use=round(part.use.mean, 1) if part.use else None,
            days_before=part.count_days(left),
            days_after=part.count_days(left + fresh * part.mean),
            beyond=self._count_beyond(file, sheets, draft),
            minutes=sheets * min(file.minutes.values()),
            people_minutes=sheets * LOAD_MIN,
            material=material.name if material else file.material,
            in_store=self.in_store.get(file.material),
            store_left=self.store.get(file.material),
        )

    def _count_beyond(self, file: FileNow, sheets: int, draft: DraftLine) -> int:
        """Counts the pieces beyond what orders lack and what should lie on the rack."""
        beyond = 0
        for made, each in file.makes.items():
            part, lots = self.parts.get(made), self.lots.get(made, 0) if draft.due else 0
            below = part.count_below(0 if draft.due else self.before.get(made, 0)) if part else 0
            needed = max(self.fresh.get(made, 0) if draft.due else 0, below)
            beyond += max(0, lots + each * sheets - needed) - max(0, lots - needed)
        return beyond

    # --- what blocks

    def _list_blocked(self, releases: tuple[Release, ...]) -> tuple[Blocked, ...]:
        found = [
            self._block(part, releases)
            for part in self.parts.values()
            if part.now.wanted > part.now.free + part.now.under_way
        ]
        return tuple(sorted(found, key=lambda b: (-b.late, -len(b.orders), b.part)))

    def _block(self, part: PartLearnt, releases: tuple[Release, ...]) -> Blocked:
        now, unmet = part.now, part.list_unmet()
        makers = [r for r in releases if now.id in self.files[r.file].makes]
        own = min(makers, key=lambda r: r.part != now.id, default=None)
        return Blocked(
            part=now.id,
            name=now.name,
            wanted=now.wanted + now.on_own,
            there=now.free,
            kept_back=now.kept_back,
            under_way=now.under_way + now.on_own,
            unsettled=now.unsettled,
            orders=tuple(wish.order for wish in unmet),
            late=sum(wish.due < self.asked.now for wish in unmet),
            release=own,
            why_not=self._find_why_not(now.id, own),
        )

    def _find_why_not(self, part: str, own: Release | None) -> WhyNot:
        """Finds why an order's part cannot be cut now, or not all of it."""
        makers = [f for f in self.asked.files if part in f.makes]
        if not any(f.minutes for f in makers):
            return "none runs it" if makers else "no file"
        if self.found[0].uncovered.get(part):
            return "no sheets"
        return "" if own and own.router else "no router"

    def _list_unmakeable(self) -> tuple[str, ...]:
        """Lists the parts that are needed and that no approved file makes."""
        needed = {part for found in self.found for part in found.uncovered}
        made = {part for f in self.asked.files for part in f.makes}
        return tuple(sorted(needed - made))


def _count_store(asked: PlanCutting) -> dict[str, int]:
    """Counts the sheets in the store that no queued batch will take."""
    left = {m.id: m.sheets for m in asked.materials if m.sheets is not None}
    for batch in asked.queued:
        if batch.material in left and not batch.held:
            left[batch.material] -= batch.to_take
    return {material: max(0, sheets) for material, sheets in left.items()}
