"""What is learnt of each part: the chance that a piece comes out good, its use, its level."""

import math
from collections.abc import Mapping
from itertools import accumulate
from typing import NamedTuple

from station.planning.chances import Chance, add_passages, count_to_cut, learn_chance
from station.planning.demand import (
    Choice,
    Forecast,
    Span,
    find_service,
    forecast_use,
    share_marks,
)
from station.planning.messages import PartNow, Passage, PlanCutting, Wish
from station.planning.routers import LAST, LOAD_MIN, SHEET_MIN

STEPS = ("cut", "popping", "trimming")  # a piece passes them in this order; each has its loss
# the steps that pieces of a stage still have before them
AHEAD = {
    "queue": STEPS, "bed": STEPS, "popping": STEPS[1:], "trimming": STEPS[2:], "rework": STEPS[2:],
}  # fmt: skip

TOO_LOW, TOO_HIGH = 0.8, 1.25  # a mark below or above this share of what it should be is off
LEAST_MIN = 1e-3  # router minutes of a piece
LONGEST_DAYS = 30.0  # worked days that pieces may lie on the rack when they are cut for it
ENOUGH = 1_000_000  # pieces, where nobody can tell how long they last


class PartLearnt(NamedTuple):
    """A part as it stands, with what was learnt of it."""

    now: PartNow
    chance: Chance | None  # that a piece comes out good; None: can't tell yet
    coming: float  # pieces under way, weighed as if all of them were still to be cut
    use: Forecast | None  # of a worked day; None: can't tell yet
    should: int | None  # what its mark should be; None: can't tell yet

    @property
    def mean(self) -> float:
        """The share of its pieces that comes out good; all, where that can't be told yet."""
        return self.chance.mean if self.chance else 1.0

    @property
    def lacking(self) -> int:
        """Good pieces that orders want beyond what lies free."""
        return max(0, self.now.wanted - self.now.free)

    @property
    def level(self) -> int:
        """What should lie on the rack: its mark, or more where that is far too low.

        What packs ahead and own pushes take comes on top.
        """
        should = self.should or 0
        level = should if self.now.mark < TOO_LOW * should else self.now.mark
        return level + self.now.besides

    @property
    def left(self) -> float:
        """Pieces expected on the rack once all under way is there and open orders are packed.

        What is lost of sheets for one order alone, that order takes from the rack.
        """
        lost = self.now.on_own * (1 - self.mean)
        return self.now.free + self.coming * self.mean - self.now.wanted - lost

    def count_fresh(self, certainty: float, wanted: int | None = None) -> int:
        """Counts the pieces to cut besides those under way, so that orders get all of theirs.

        With `wanted` it is so for the first orders, which want as many together.
        """
        lacking = self.lacking if wanted is None else max(0, wanted - self.now.free)
        return max(0, count_to_cut(lacking, self.chance, certainty) - int(self.coming))

    def count_served(self, fresh: int, certainty: float) -> tuple[int, str]:
        """Counts what the first orders lack, so many of them as these pieces to cut are for.

        Gives when the last of them is due too. Where they are not enough for one, it is for all.
        """
        served, wanted, until = 0, 0, LAST
        for wish in self.now.wishes:
            wanted += wish.pieces
            if self.count_fresh(certainty, wanted) > fresh:
                break
            if wanted > self.now.free:
                served, until = wanted - self.now.free, wish.due
        return served or self.lacking, until

    def count_below(self, made: float) -> int:
        """Counts the pieces to cut besides those `made` until as many lie there as should.

        Where nothing should lie there, none: those for orders are counted with their certainty.
        """
        if not self.level:
            return 0
        return max(0, math.ceil((self.level - self.left) / self.mean - made))

    def count_room(self, made: float) -> int:
        """Counts the pieces that may be cut for the rack besides those `made`: they lie long.

        A place of the rack holds no more than it has room for.
        """
        most = self.use.mean * LONGEST_DAYS + self.now.besides if self.use else math.inf
        most = max(self.level, min(most, ENOUGH))
        if self.now.room:  # what is kept back lies there too
            most = min(most, self.now.room - self.now.kept_back)
        return max(0, math.ceil((most - self.left) / self.mean - made))

    def count_days(self, pieces: float) -> float | None:
        """Counts the worked days that so many pieces last; None: can't tell, or not used."""
        return round(pieces / self.use.mean, 1) if self.use and self.use.mean > 0 else None

    def list_unmet(self) -> tuple[Wish, ...]:
        """Lists the orders that cannot have it: what lies free or comes is given by due time."""
        left, found = self.now.free + self.now.under_way, []
        for wish in self.now.wishes:
            if wish.pieces > left:
                found.append(wish)
            else:
                left -= wish.pieces
        return tuple(found)

    def list_unsure(self, certainty: float) -> tuple[Wish, ...]:
        """Lists the orders that may lack it though so many come: what is usually lost is not sure
        to leave enough.
        """
        wants = accumulate(wish.pieces for wish in self.now.wishes)
        both = zip(self.now.wishes, wants, strict=True)
        return tuple(wish for wish, wanted in both if self.count_fresh(certainty, wanted))

    def find_first_due(self) -> str:
        """Finds when the first order that cannot have it is due; where all may, the last one."""
        wish: Wish = (*self.list_unmet(), self.now.wishes[-1])[0]
        return wish.due


def find_span_to_last(asked: PlanCutting) -> Span:
    """Finds the span of a part's use that should lie on the rack.

    It has to last until tomorrow's look, and then until more is there; what orders want later than
    that can be cut when they come.
    """
    days, varies, seen = asked.lead_days, 0.0, asked.lead_seen
    if seen:
        days, varies = seen.mean, seen.deviation
    return Span((days + 1) * asked.short_notice, varies * asked.short_notice)


def learn_parts(asked: PlanCutting) -> dict[str, PartLearnt]:
    """Learns what there is to learn of each part, by its id."""
    shop = {
        step: add_passages(p.passed.get(step, Passage()) for p in asked.parts) for step in STEPS
    }
    use = {part.id: forecast_use(part.use) for part in asked.parts}
    should = _suggest_marks(asked, use)
    return {
        part.id: _learn_part(part, shop, use[part.id], should.get(part.id)) for part in asked.parts
    }


def _suggest_marks(asked: PlanCutting, use: Mapping[str, Forecast | None]) -> dict[str, int]:
    """Suggests the marks of all parts whose use can be told."""
    return share_marks(_list_choices(asked, use), find_span_to_last(asked), asked.service)


def find_service_of_marks(asked: PlanCutting) -> float:
    """Finds the service level that the shop could have with what its marks together ask for."""
    use = {part.id: forecast_use(part.use) for part in asked.parts}
    marks = {part.id: part.mark for part in asked.parts}
    return find_service(_list_choices(asked, use), marks, find_span_to_last(asked))


def _list_choices(asked: PlanCutting, use: Mapping[str, Forecast | None]) -> dict[str, Choice]:
    """Lists the parts whose use can be told, with what a piece of them takes."""
    minutes = share_sheets(asked)
    return {
        part.id: Choice(known, sum(n > 0 for n in part.use) / len(part.use),
                        max(LEAST_MIN, minutes.get(part.id, 0.0)))
        for part in asked.parts
        if (known := use[part.id])
    }  # fmt: skip


def share_sheets(asked: PlanCutting) -> dict[str, float]:
    """Shares what a sheet takes among its pieces, by the share of a sheet that each is: minutes.

    That is of the sheet which holds most of its part; of several files the cheapest counts.
    """
    files, most = [f for f in asked.files if f.minutes], dict[str, int]()
    for file in files:
        most |= {part: max(n, most.get(part, 0)) for part, n in file.makes.items()}
    minutes: dict[str, float] = {}
    for file in files:
        whole = sum(n / most[part] for part, n in file.makes.items())
        for part in file.makes:
            each = (min(file.minutes.values()) + LOAD_MIN + SHEET_MIN) / most[part] / whole
            minutes[part] = min(each, minutes.get(part, each))
    return minutes


def _learn_part(
    part: PartNow, shop: Mapping[str, Passage], use: Forecast | None, should: int | None
) -> PartLearnt:
    steps = {step: learn_chance(part.passed.get(step, Passage()), shop[step]) for step in STEPS}
    chance = _join_chances(steps)
    return PartLearnt(part, chance, _weigh_coming(part, steps, chance), use, should)


def _join_chances(steps: Mapping[str, Chance | None]) -> Chance | None:
    """Joins the chances of all steps into one, as firm as the step that is least known."""
    known = [chance for chance in steps.values() if chance]
    if not known:
        return None
    mean = math.prod(chance.mean for chance in known)
    weight = min(chance.good + chance.lost for chance in known)
    return Chance(mean * weight, (1 - mean) * weight)


def _weigh_coming(
    part: PartNow, steps: Mapping[str, Chance | None], chance: Chance | None
) -> float:
    """Counts what is under way as if it were still to be cut: what is far on counts for more."""
    if chance is None:
        return float(part.under_way)
    good = 0.0
    for stage, pieces in part.coming.items():
        known = (steps[step] for step in AHEAD[stage])
        good += pieces * math.prod(c.mean for c in known if c)
    return good / chance.mean
