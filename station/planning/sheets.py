"""How many sheets of which cut file cover a need: a problem in whole numbers.

The least of minutes, of what each file that is used costs once, and of what pieces beyond the need
cost, so that every part is covered. HiGHS (MIT) solves it and proves how much less it could be at
best. It is loaded in here alone, by the job that asks.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor, wait
from random import Random
from time import perf_counter
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from station.planning.search import Pieces
    from station.planning.tighten import Broken, Tight

FEASIBLE = 2  # what the solver says of a solution that keeps every row
GREATEST = 16.0  # minutes, that the greatest cost is reckoned as at least
PATIENCE = 20  # times as long for an answer, where there is none in time
ENDED = 1e-6  # minutes by which a cover must be better to count as such
SOON = 0.1  # share of the time after which search begins beside the solver
AT_ONCE = 0.4  # seconds; what a day's plan asks is mostly solved by then
AFTER = 0.05  # seconds that the solver goes on beyond its time, until it looks at the clock
TIGHTENED = 0.15  # share of the time for rows that raise the bound
HELPED = 1.1  # times the bound: where they raise it less they slow the solver more than they help
SEARCHED = 0.1  # share of the time that is left then, for search without the solver
SCALED, SCALINGS = 0.1, 8  # share of it, and rounds, to find which files are likely used
USED = 1e-6  # sheets: fewer are none
LEAST_SHEETS = 0.3  # that what a file costs once is laid on
DEAREST = 100.0  # minutes; a file that is so much too dear counts as half as near to being used
LIKELY, ADDED = 32, 8  # files that are counted first; those added to all that are used
SEED = 1  # nothing depends on when it runs
FEW, FEWEST = 12, 5  # files that are counted anew at once: at first, and at least
SHORTEST, LONGEST = 0.05, 0.5  # seconds for these
SMALLEST = 1e-6  # minutes that a piece is worth at least


class SheetFile(NamedTuple):
    """A cut file: minutes a sheet, minutes once where it is used, pieces of each part a sheet."""

    name: str
    minutes: float
    makes: Mapping[str, int]
    fixed: float = 0.0
    stock: str = ""  # which sheets it takes; empty: of those there are enough


class SheetCounts(NamedTuple):
    """Sheets of each file that is used; what it costs, and less than that is proven impossible.

    `uncovered` are pieces by part that no file makes, or that there are no sheets or no room for;
    then no plan that leaves as few uncovered costs less.
    """

    counts: dict[str, int]
    objective: float
    lower_bound: float
    uncovered: dict[str, int]


class _Model(NamedTuple):
    """The problem as columns and rows; the columns of files come first, then what they cost once.

    Rows are sparse: (column, factor) pairs.
    """

    cost: list[float]
    upper: list[float]
    rows: list[list[tuple[int, float]]]
    row_low: list[float]
    row_high: list[float]
    dear: float  # minutes that a piece left uncovered costs: more than any sheet
    files: int  # the first columns
    limited: bool  # whether sheets or room are short, so that pieces may be left uncovered
    fixed: list[float]  # what each file costs once
    tight: tuple[list[tuple[int, float]], ...] = ()  # rows that add up to 1 in every whole answer

    def count_cost(self, values: list[float]) -> float:
        """Counts what so many sheets of each file cost, where nothing is left uncovered."""
        used = zip(self.cost, self.fixed, values[: self.files], strict=False)
        return math.fsum(cost * n + once * (n > 0) for cost, once, n in used)

    def find_covers(self) -> list[int]:
        """Finds the rows that ask for a least: one for each part that is wanted."""
        return [n for n, low in enumerate(self.row_low) if low > 0]

    def is_covered(self, values: list[float]) -> bool:
        """Says whether whole counts of each file keep all rows that ask for a least."""
        return all(
            sum(factor * values[n] for n, factor in row if n < self.files) >= low
            for row, low in zip(self.rows, self.row_low, strict=True)
            if low > 0
        )


class _Relaxed(NamedTuple):
    """What is known of a problem from counts that may be broken."""

    model: _Model  # where it helps much: with the rows that these counts break
    pieces: "Pieces"
    bound: float  # what they cost with these rows; -inf: not known
    values: list[float]  # of each column
    worth: list[float]  # of a piece of each part: what covering it costs at least

    @property
    def is_known(self) -> bool:
        """Whether they were counted in time."""
        return self.bound > -math.inf


def count_sheets(
    files: tuple[SheetFile, ...],
    need: Mapping[str, int],
    *,
    over_cost: float = 0.0,
    in_store: Mapping[str, int] = {},
    room: Mapping[str, int] = {},
    seconds: float = 1.5,
) -> SheetCounts:
    """Counts the sheets of each file that cover the need at the least cost.

    `over_cost` are minutes for each piece beyond the need, `in_store` the sheets there are of each
    stock that a file names, `room` the most pieces of a part that may be made. Raises RuntimeError
    where none was found in time.
    """
    makeable = {part for f in files for part in f.makes}
    wanted = {part: n for part, n in need.items() if n > 0 and part in makeable}
    useful = tuple(f for f in files if any(part in wanted for part in f.makes))
    missing = {part: n for part, n in need.items() if n > 0 and part not in makeable}
    if not useful:
        return SheetCounts({}, 0.0, 0.0, missing)
    unit = _find_unit(useful, over_cost)
    scaled = tuple(f._replace(minutes=f.minutes / unit, fixed=f.fixed / unit) for f in useful)
    model = _make_model(scaled, wanted, over_cost / unit, in_store, room)
    values, bound = _solve(model, seconds)
    counts = {f.name: round(n) for f, n in zip(useful, values, strict=False) if round(n)}
    made = _add_up(useful, counts)
    short = {part: n - made.get(part, 0) for part, n in wanted.items() if n > made.get(part, 0)}
    lacking = sum(short.values())
    needed = over_cost * (sum(wanted.values()) - lacking)
    objective = _count_cost(useful, counts) + over_cost * sum(made.values()) - needed
    proven = min(objective, (bound - model.dear * lacking) * unit - needed)
    return SheetCounts(counts, objective, proven, missing | short)


def _find_unit(files: tuple[SheetFile, ...], over_cost: float) -> float:
    """Finds in what minutes are reckoned where all of them are so few that the solver, which
    stops within a millionth, would tell nothing: a power of two, by which nothing is rounded.
    """
    greatest = max(over_cost, *(n for f in files for n in (f.minutes, f.fixed)))
    if not 0 < greatest < GREATEST:
        return 1.0
    return max(math.ulp(0.0), 2.0 ** math.floor(math.log2(greatest)) / GREATEST)


def _add_up(files: tuple[SheetFile, ...], counts: Mapping[str, int]) -> dict[str, int]:
    """Adds up the pieces of each part on so many sheets."""
    made: dict[str, int] = {}
    for f in files:
        for part, each in f.makes.items():
            made[part] = made.get(part, 0) + each * counts.get(f.name, 0)
    return made


def _count_cost(files: tuple[SheetFile, ...], counts: Mapping[str, int]) -> float:
    """Counts the minutes of so many sheets, those that each file costs once too."""
    used = ((f, counts[f.name]) for f in files if counts.get(f.name))
    return math.fsum(f.minutes * n + f.fixed for f, n in used)


def _make_model(
    files: tuple[SheetFile, ...],
    wanted: Mapping[str, int],
    over_cost: float,
    in_store: Mapping[str, int],
    room: Mapping[str, int],
) -> _Model:
    """Makes the columns and rows.

    More sheets of a file than cover all of its parts never help, which bounds each column.
    """
    most = [max(math.ceil(n / f.makes[p]) for p, n in wanted.items() if p in f.makes)
            for f in files]  # fmt: skip
    cost = [f.minutes + over_cost * sum(f.makes.values()) for f in files]
    dear = 2 * max(c + f.fixed for c, f in zip(cost, files, strict=True)) + 1
    limited = {f.stock: in_store[f.stock] for f in files if f.stock in in_store}
    model = _Model(cost, [float(n) for n in most], [], [], [], dear,
                   len(files), bool(limited or room), [f.fixed for f in files])  # fmt: skip
    for n, f in enumerate(files):
        if f.fixed:
            _add_fixed(model, n, f.fixed, most[n])
    for part, pieces in wanted.items():
        row = [(n, float(f.makes[part])) for n, f in enumerate(files) if f.makes.get(part)]
        if limited or room:
            row.append((_add_column(model, model.dear, pieces), 1.0))
        _add_row(model, row, float(pieces), math.inf)
    for stock, sheets in limited.items():
        row = [(n, 1.0) for n, f in enumerate(files) if f.stock == stock]
        _add_row(model, row, -math.inf, float(max(0, sheets)))
    for part, pieces in room.items():
        row = [(n, float(f.makes[part])) for n, f in enumerate(files) if f.makes.get(part)]
        if row:
            _add_row(model, row, -math.inf, float(max(0, pieces)))
    return model


def _add_fixed(model: _Model, column: int, fixed: float, most: int) -> None:
    """Adds the column that is 1 where a file is used, and the row that holds it to that."""
    used = _add_column(model, fixed, 1)
    _add_row(model, [(column, 1.0), (used, -float(most))], -math.inf, 0.0)


def _add_column(model: _Model, cost: float, upper: float) -> int:
    model.cost.append(cost)
    model.upper.append(float(upper))
    return len(model.cost) - 1


def _add_row(model: _Model, row: list[tuple[int, float]], low: float, high: float) -> None:
    model.rows.append(row)
    model.row_low.append(low)
    model.row_high.append(high)


def _solve(model: _Model, seconds: float) -> tuple[list[float], float]:
    """Gives the value of each file's column, and the proven bound.

    What the solver does not end soon is searched for beside it, on the other core. Raises
    RuntimeError where nothing is found.
    """
    if model.limited:
        return _solve_limited(model, seconds)
    until = perf_counter() + seconds
    relaxed = _relax(model, seconds)
    model = relaxed.model
    with ThreadPoolExecutor(1) as beside:
        solving = beside.submit(_run_solver, model, until - AFTER - perf_counter())
        wait((solving,), max(SOON * seconds, min(AT_ONCE, seconds / 2)))
        found = None
        if not solving.done():
            found = _find_beside(relaxed, until - AFTER, solving.done)
        solver = solving.result()
    bound = max(relaxed.bound, float(solver.getInfo().mip_dual_bound))
    solved = [float(round(v)) for v in list(solver.getSolution().col_value)[: model.files]]
    # the solver's whole numbers are whole but for a millionth, which may lack a piece
    sound = solver.getInfo().primal_solution_status == FEASIBLE and model.is_covered(solved)
    covers = [cover for cover in (solved if sound else None, found) if cover]
    if not covers:
        covers = [_find_beside(relaxed, perf_counter() + SHORTEST, lambda: False)]
    return min(covers, key=model.count_cost), bound


def _relax(model: _Model, seconds: float) -> _Relaxed:
    """Solves it for counts that may be broken, and tightens it by rows that these break."""
    from station.planning.tighten import read_broken, tighten  # noqa: PLC0415 - loads numpy

    until, pieces = perf_counter() + seconds * TIGHTENED, _lay_pieces(model)
    solver = _run_solver(model, seconds, whole=False)
    plain = read_broken(solver)
    if plain is None:
        nothing = [0.0] * len(model.cost)
        return _Relaxed(model, pieces, -math.inf, nothing, [0.0] * len(pieces.wanted))
    bound = plain.cost
    if any(model.fixed):
        broken, tight = tighten(solver, pieces, plain, until - perf_counter())
        bound = broken.cost
        if bound > plain.cost * HELPED:
            model = model._replace(tight=tuple(found.row for found in tight))
            return _Relaxed(
                model, pieces, bound, broken.values, _add_worth(model, pieces, broken, tight)
            )
    worth = [plain.worth[row] for row in model.find_covers()]
    return _Relaxed(model, pieces, bound, plain.values, worth)


def _add_worth(
    model: _Model, pieces: "Pieces", broken: "Broken", tight: "list[Tight]"
) -> list[float]:
    """Adds up what covering a piece of each part costs: by its own row and those added."""
    worth = [broken.worth[row] for row in model.find_covers()]
    for found in tight:
        worth[found.part] += found.worth / float(pieces.wanted[found.part])
    return worth


def _lay_pieces(model: _Model) -> "Pieces":
    """Lays out in arrays what each file makes of each part that is wanted."""
    import numpy as np  # noqa: PLC0415 - a problem that needs it pays for it

    from station.planning.search import Pieces  # noqa: PLC0415 - as above

    covers = model.find_covers()
    makes = np.zeros((model.files, len(covers)), dtype=np.int64)
    for part, row in enumerate(covers):
        for file, pieces in model.rows[row]:
            makes[file, part] = round(pieces)
    wanted = np.array([round(model.row_low[n]) for n in covers], dtype=np.int64)
    once = iter(range(model.files, len(model.cost)))
    used = np.array([next(once) if fixed else -1 for fixed in model.fixed], dtype=np.int64)
    return Pieces(makes, wanted, used)


def _solve_limited(model: _Model, seconds: float) -> tuple[list[float], float]:
    """Gives the same where sheets or room are short."""
    solver = _run_solver(model, seconds)
    if solver.getInfo().primal_solution_status != FEASIBLE:
        solver = _run_solver(model, seconds * PATIENCE)  # busy: late is better than never
    info = solver.getInfo()
    if info.primal_solution_status != FEASIBLE:
        raise RuntimeError("no count of sheets was found in time")
    return [float(v) for v in solver.getSolution().col_value], float(info.mip_dual_bound)


def _find_beside(relaxed: _Relaxed, until: float, is_over: Callable[[], bool]) -> list[float]:
    """Finds a cover without the solver's end; it is over when the solver has ended."""
    left = until - perf_counter()
    if not relaxed.is_known:
        return _search(relaxed, left, is_over)
    found = _search(relaxed, left * SEARCHED, is_over)
    model = relaxed.model
    by_use = _order_by_use(model, perf_counter() + left * SCALED)
    return _better_by_few(model, found, by_use, until, is_over)


def _order_by_use(model: _Model, until: float) -> list[int]:
    """Orders the files by how often they are used where counts may be broken.

    What a file costs once is laid on its sheets, on as many as were used the time before. Known as
    slope scaling (Kim and Pardalos 1999, from memory).
    """
    bare, uses = model.cost[: model.files], [0.0] * model.files
    sheets = [max(1.0, most) for most in model.upper[: model.files]]
    for _ in range(SCALINGS):
        cost = [c + once / n for c, once, n in zip(bare, model.fixed, sheets, strict=True)]
        cost += [0.0] * (len(model.cost) - model.files)
        left = max(SHORTEST, until - perf_counter())
        solution = _run_solver(model._replace(cost=cost), left, whole=False).getSolution()
        values, dear = list(solution.col_value), list(solution.col_dual)
        for n in range(model.files):
            # of those never used, the ones that come nearest to it first
            uses[n] += 1.0 if values[n] > USED else -dear[n] / (DEAREST + dear[n])
            sheets[n] = max(values[n], LEAST_SHEETS) if values[n] > USED else sheets[n]
        if perf_counter() > until:
            break
    return sorted(range(model.files), key=lambda n: -uses[n])


def _better_by_few(
    model: _Model,
    values: list[float],
    by_use: list[int],
    until: float,
    is_over: Callable[[], bool],
) -> list[float]:
    """Betters counts by solving for a few files at a time, while all others keep theirs.

    First those that are likeliest used. Then in turn some that are used and some that are not, and
    all that are used with a few more. Known as large neighbourhood search (Shaw 1998, from
    memory).
    """
    chance, few = Random(SEED), FEW  # noqa: S311 - which files are drawn is no secret
    best, cost = values[: model.files], model.count_cost(values)
    free = {*by_use[:LIKELY], *(n for n in by_use if best[n])}
    turn = 0
    while (left := until - perf_counter()) > SHORTEST and not is_over():
        kept = {n: best[n] for n in range(model.files) if n not in free}
        began = perf_counter()
        solver = _run_solver(model, min(left, LONGEST), kept=kept, start=best)
        took, info = perf_counter() - began, solver.getInfo()
        if info.primal_solution_status == FEASIBLE:
            tried = [float(round(v)) for v in list(solver.getSolution().col_value)[: model.files]]
            if model.is_covered(tried) and model.count_cost(tried) < cost - ENDED:
                best, cost = tried, model.count_cost(tried)
        if len(kept) == 0 and took < LONGEST / 2:
            break  # all were free, and it was ended
        turn += 1
        if turn % 2:
            few = max(FEWEST, few - 1) if took > LONGEST / 2 else few + 1
        free = _draw_free(best, by_use, few if turn % 2 else 0, chance)
    return best


def _draw_free(best: list[float], by_use: list[int], few: int, chance: Random) -> set[int]:
    """Draws the files that are counted anew: so many, or all that are used and some more."""
    used = [n for n in by_use if best[n]]
    others = [n for n in by_use if not best[n]]
    if not few:
        near = others[: 2 * LIKELY]
        return {*used, *chance.sample(near, min(len(near), ADDED))}
    free = set(chance.sample(used, min(len(used), few - few // 3)))
    near = others[: 2 * few]
    return free | set(chance.sample(near, min(len(near), few - len(free))))


def load_solver() -> Any:  # noqa: ANN401 - it has no types
    """Loads the solver; only the first time takes time."""
    import highspy  # noqa: PLC0415 - a job's start alone pays for it

    return highspy


def _run_solver(
    model: _Model,
    seconds: float,
    *,
    whole: bool = True,
    kept: Mapping[int, float] = {},
    start: Sequence[float] = (),
) -> Any:  # noqa: ANN401 - it has no types
    """Runs HiGHS on a problem; with `whole` false its counts need not be whole.

    The columns of `kept` keep their values; `start` are counts of the files that cover all.
    """
    highspy = load_solver()
    # what it is derived from: the solver itself greets on standard output, even when told not to
    solver: Any = highspy.Highs.__mro__[1]()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("time_limit", max(SHORTEST, seconds))
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("threads", 1)  # the other core is the search's, or the screen's
    lp = _lay_model(highspy, model)
    if not whole:
        lp.integrality_ = []
    if kept:
        lp.col_lower_ = [kept.get(n, 0.0) for n in range(len(model.cost))]
        lp.col_upper_ = [kept.get(n, most) for n, most in enumerate(model.upper)]
    solver.passModel(lp)
    if start:
        known = highspy.HighsSolution()
        known.col_value = [
            *start,
            *(float(n > 0) for n, f in zip(start, model.fixed, strict=True) if f),
        ]
        solver.setSolution(known)
    solver.run()
    return solver


def _search(relaxed: _Relaxed, seconds: float, is_over: Callable[[], bool]) -> list[float]:
    """Searches a cover without the solver, from the whole part of the broken counts."""
    import numpy as np  # noqa: PLC0415 - as above

    from station.planning.search import Cover, better_cover  # noqa: PLC0415 - as above

    model = relaxed.model
    cover = Cover(
        makes=relaxed.pieces.makes,
        cost=np.array(model.cost[: model.files]),
        fixed=np.array(model.fixed),
        wanted=relaxed.pieces.wanted,
        worth=np.maximum(np.array(relaxed.worth), SMALLEST),
    )
    first = np.floor(np.array(relaxed.values[: model.files]) + USED).astype(np.int64)
    return [float(n) for n in better_cover(cover, first, seconds, is_over)]


def _lay_model(highspy: Any, model: _Model) -> Any:  # noqa: ANN401 - it has no types of its own
    """Lays the model out as the solver takes it."""
    lp, end = highspy.HighsLp(), highspy.kHighsInf
    rows = [*model.rows, *model.tight]
    lp.num_col_, lp.num_row_ = len(model.cost), len(rows)
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = model.cost, [0.0] * len(model.cost), model.upper
    lp.row_lower_ = [max(low, -end) for low in model.row_low] + [1.0] * len(model.tight)
    lp.row_upper_ = [min(high, end) for high in model.row_high] + [end] * len(model.tight)
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    starts = [0]
    for row in rows:
        starts.append(starts[-1] + len(row))
    lp.a_matrix_.start_ = starts
    lp.a_matrix_.index_ = [column for row in rows for column, _ in row]
    lp.a_matrix_.value_ = [factor for row in rows for _, factor in row]
    lp.integrality_ = [highspy.HighsVarType.kInteger] * len(model.cost)
    return lp
