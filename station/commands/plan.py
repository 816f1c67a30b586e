"""``station plan``: what to cut next, as JSON; or a problem from a file, solved."""

import argparse
from math import inf
from pathlib import Path

import msgspec

from station.commands.common import (
    CommandError,
    make_clock,
    print_json,
    read_plain_file,
    require_shop,
)
from station.planning.messages import CuttingPlan, PartNow, PlanCutting, Release
from station.started import count_seconds_left

Json = dict[str, object]
LEAST = 0.1  # seconds that are thought at least
MOST_PIECES = 10_000_000  # of a part; no shop ever wants more
MOST_MINUTES = 1e12  # of anything; a solver of doubles tells no more beside each other
MARK = b"\xef\xbb\xbf"  # that some editors begin a file with
Pieces = dict[str, int | float]  # by part; some programs write whole numbers with a point


class FileOfProblem(msgspec.Struct):
    """A cut file of a problem."""

    name: str
    minutes: float
    makes: Pieces
    fixed: float = 0.0


class SheetsProblem(msgspec.Struct):
    """How many sheets of which files: minutes, pieces, chances."""

    files: list[FileOfProblem]
    need: Pieces
    over_cost: float = 0.0
    good: dict[str, float] = {}
    certainty: float | None = None


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Adds the arguments of the command."""
    parser.add_argument("--json", action="store_true", help="the only form")
    parser.add_argument("--problem", type=Path, help="a problem of its own instead of the shop")
    parser.add_argument("--seconds", type=float, default=2.0, help="it may take, start included")
    parser.add_argument("--seed", type=int, default=0, help="nothing here is left to chance")


def run(options: argparse.Namespace) -> int:
    """Prints the plan as JSON."""
    if not 0 < options.seconds < inf:
        raise CommandError("The seconds must be more than none: write --seconds 2.")
    if options.problem:
        print_json(solve_problem(options.problem, options.seconds))
        return 0
    from station import bootstrap  # noqa: PLC0415 - only when it is used
    from station.planning import gather, past, think  # noqa: PLC0415 - as above

    with bootstrap.open_ledger(require_shop(options)) as ledger:
        now = make_clock(options)()
        asked = gather.gather_plan(ledger.view, now, past.read_past(ledger.view, now))
    left = max(LEAST, count_seconds_left(options.seconds))
    asked = msgspec.structs.replace(asked, seconds=left)
    plan = think.run(asked, lambda _stage, _share: None)
    print_json(describe_plan(asked, plan))
    return 0


# --- the shop's plan


def describe_plan(asked: PlanCutting, plan: CuttingPlan) -> Json:
    """Describes a plan as one object."""
    blocked = [b.release for b in plan.blocked if b.release]
    releases = list(dict.fromkeys((*blocked, *plan.then)))
    return {
        "need": _list_need(asked),
        "sheets": _list_sheets(releases),
        "uncovered": _list_uncovered(asked, plan),
        "objective": plan.objective,
        "lower_bound": plan.lower_bound,
        "routers": [
            {"router": r.router, "cut_file": r.name, "start": r.starts, "end": r.ends}
            for r in releases
            if r.router
        ],
        "late_orders": plan.late,
        "finish": {"p10": None, "p50": plan.done_by, "p90": None},  # its spread can't be told yet
        "blocked": [_describe_blocked(b) for b in plan.blocked],
        "take_back": [{"batch": b.batch, "days": b.days} for b in plan.take_back],
        "forward": [
            {"batch": f.batch, "part": f.part_name, "order": f.order, "by": f.by}
            for f in plan.forward
        ],
        "over_full": [{"part": o.name, "days": o.days} for o in plan.over_full],
        "service": _describe_service(asked),
        "marks": [{"part": m.name, "mark": m.mark, "should": m.should} for m in plan.marks],
        "order": _list_order(plan),
        "tending": _describe_tending(asked),
    }


def _list_sheets(releases: list[Release]) -> list[Json]:
    """Lists the sheets of each cut file by their reason, whatever lots they are released in."""
    from station.floor.plan.words import say_why_cut  # noqa: PLC0415 - only when it is used

    counts: dict[tuple[str, str], int] = {}
    for release in releases:
        key = (release.name, str(say_why_cut(release)))
        counts[key] = counts.get(key, 0) + release.sheets
    return [{"cut_file": name, "count": n, "reason": why} for (name, why), n in counts.items()]


def _describe_service(asked: PlanCutting) -> Json:
    """Describes the service level as set, and the one that the marks' stock is enough for."""
    from station.planning.learnt import find_service_of_marks  # noqa: PLC0415 - as below

    return {"set": asked.service, "by_marks": round(find_service_of_marks(asked), 3)}


def _describe_tending(asked: PlanCutting) -> Json | None:
    """Describes how far one or two people at loading keep up with the routers; None: can't tell.

    A sheet runs as long as those that wait now, and the routers that stand still do not count.
    """
    from station.planning.routers import LOAD_MIN  # noqa: PLC0415 - as below
    from station.planning.tending import count_tended, find_tending  # noqa: PLC0415 - as below

    routers = sum(not r.stopped for r in asked.routers)
    sheets = sum(b.sheets for b in asked.queued)
    minutes = sum(b.sheets * b.minutes for b in asked.queued)
    if not routers or not minutes:
        return None
    run = minutes / sheets
    found = {people: find_tending(routers, people, run, LOAD_MIN) for people in (1, 2)}
    return {
        "routers": routers,
        "run_minutes": round(run, 1),
        "load_minutes": LOAD_MIN,
        "one_can_tend": round(count_tended(LOAD_MIN, 0.0, run), 1),
        "people": [
            {"people": n, "idle": round(t.idle, 3), "running": round(t.running, 3),
             "waiting": round(t.waiting, 3)}
            for n, t in found.items()
        ],
    }  # fmt: skip


def _list_order(plan: CuttingPlan) -> list[Json]:
    """Lists what to order: sheets, bits, mailers, the most urgent first."""
    return [
        {"what": o.name or f"{o.diameter_mm:g} mm bit", "quantity": o.quantity, "by": o.by,
         "lasts_days": o.lasts, "on_its_way": o.coming, "price": o.price or None}
        for o in plan.order
    ]  # fmt: skip


def _list_need(asked: PlanCutting) -> list[Json]:
    """Lists the pieces to cut of each part, for orders and to fill the rack."""
    return [
        {"part": part.name, "quantity": quantity, "why": why}
        for part, needs in _count_needs(asked)
        for why, quantity in needs.items()
        if quantity
    ]


def _list_uncovered(asked: PlanCutting, plan: CuttingPlan) -> list[Json]:
    """Lists what is needed of the parts that no approved file makes."""
    return [
        {"part": part.name, "quantity": sum(needs.values())}
        for part, needs in _count_needs(asked)
        if part.id in plan.uncovered
    ]


def _count_needs(asked: PlanCutting) -> list[tuple[PartNow, dict[str, int]]]:
    """Counts the pieces to cut of each part by what they are for."""
    from station.planning.learnt import learn_parts  # noqa: PLC0415 - only when it is used

    found = []
    for part in learn_parts(asked).values():
        for_orders = part.count_fresh(asked.certainty)
        for_rack = part.count_below(for_orders)
        ahead = min(for_rack, part.now.besides)
        needs = {"orders": for_orders, "rack": for_rack - ahead, "ahead": ahead}
        found.append((part.now, needs))
    return found


def _describe_blocked(blocked: "msgspec.Struct") -> Json:
    raw = msgspec.to_builtins(blocked)
    release = raw["release"]
    return {
        "part": raw["name"],
        "wanted": raw["wanted"],
        "there": raw["there"],
        "under_way": raw["under_way"],
        "orders": len(raw["orders"]),
        "late": raw["late"],
        "release": release
        and {
            "cut_file": release["name"],
            "router": release["router"],
            "sheets": release["sheets"],
            "certainty": release["certainty"],
        },
    }


# --- a problem from a file


def solve_problem(path: Path, seconds: float) -> Json:
    """Solves the problem in a file. Raises CommandError where it is none."""
    problem = _read_problem(path)
    from station.planning.sheets import (  # noqa: PLC0415 - as above
        SheetFile,
        count_sheets,
        load_solver,
    )

    wanted = _count_wanted(problem)
    files = tuple(
        SheetFile(f.name, f.minutes, {part: int(n) for part, n in f.makes.items() if n}, f.fixed)
        for f in problem.files
    )
    load_solver()  # before the seconds are counted that are left for it
    left = max(LEAST, count_seconds_left(seconds))
    found = count_sheets(files, wanted, over_cost=problem.over_cost, seconds=left)
    return {
        "sheets": [{"cut_file": name, "count": n} for name, n in found.counts.items()],
        "uncovered": [{"part": part, "quantity": n} for part, n in found.uncovered.items()],
        "objective": found.objective,
        "lower_bound": found.lower_bound,
    }


def _read_problem(path: Path) -> SheetsProblem:
    try:
        problem = msgspec.json.decode(read_plain_file(path).removeprefix(MARK), type=SheetsProblem)
    except OSError as fault:
        raise CommandError(f"{path.name} cannot be read: {fault.strerror}.") from None
    except msgspec.DecodeError as fault:
        raise CommandError(f"{path.name} is no problem of sheets: {fault}.") from None
    if wrong := _find_wrong(problem):
        raise CommandError(f"{path.name}: {wrong}.")
    return problem


def _find_wrong(problem: SheetsProblem) -> str:
    """Finds what cannot be meant; empty: nothing."""
    names = [f.name for f in problem.files]
    if len(set(names)) < len(names):
        return "two files have one name"
    costs = (problem.over_cost, *(n for f in problem.files for n in (f.minutes, f.fixed)))
    if min(costs) < 0:
        return "minutes and costs are never below zero"
    if max(costs) > MOST_MINUTES:
        return f"more than {MOST_MINUTES:,.0f} minutes cannot be planned: write fewer"
    if any(not 0 <= chance <= 1 for chance in problem.good.values()):
        return "a chance that a piece is good is 0 at least and 1 at most"
    if problem.certainty is not None and not 0 <= problem.certainty <= 1:
        return "a certainty is 0 at least and 1 at most"
    return _find_wrong_pieces(problem)


def _find_wrong_pieces(problem: SheetsProblem) -> str:
    """Finds pieces that cannot be meant; empty: none."""
    made = [n for f in problem.files for n in f.makes.values()]
    if any(n != int(n) for n in (*made, *problem.need.values())):
        return "pieces come whole"
    if any(n < 0 for n in made):
        return "a file never makes less than no pieces"
    if any(n < 0 for n in problem.need.values()):
        return "nobody needs less than no pieces"
    if any(n > MOST_PIECES for n in (*made, *problem.need.values())):
        return f"more than {MOST_PIECES:,} pieces of a part cannot be planned: write fewer"
    return ""


def _count_wanted(problem: SheetsProblem) -> dict[str, int]:
    """Counts the pieces to cut of each part, so that enough are good."""
    from station.planning.chances import count_to_cut, know_chance  # noqa: PLC0415 - as above

    need = {part: int(n) for part, n in problem.need.items()}
    if problem.certainty is None:
        return need
    chances = {part: know_chance(good) for part, good in problem.good.items()}
    wanted: dict[str, int] = {}
    for part, n in need.items():
        try:
            wanted[part] = count_to_cut(n, chances.get(part), problem.certainty)
        except ValueError as fault:
            raise CommandError(
                f"{part}: its chance is too low, or the certainty too high: {fault}."
            ) from None
    return wanted
