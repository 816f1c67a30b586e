"""The shop's history is taken in: pages of shared entries, under what is not shared yet."""

import gc
from collections.abc import Generator, Iterator, Sequence
from contextlib import contextmanager
from time import perf_counter

from station.ledger import effects, rebase, statements
from station.ledger.books import instead
from station.ledger.closing import begin_of
from station.ledger.codec import Body, answer_of, digest
from station.ledger.faults import Fault
from station.ledger.history import History
from station.ledger.page import HistoryPage
from station.ledger.rebase import Turned, Waiting, decide_again, run_out
from station.ledger.shop_link import SharedEntry
from station.ledger.sound import taken_in
from station.shop.views import Rules
from station.shop.words import Say

# Entries whose parts are in memory at once: with those of a whole page of 4,000 there, the
# processor waits for its memory, and taking in is slower (``python -m tests.bench shared``).
AT_ONCE = 250
MOST_AT_ONCE = 50  # acts or entries of one step, where nothing else bounds it
FOREVER = float("inf")  # a time of `perf_counter` that never comes


class HistoryBroken(Fault):
    """What came from the shop's database does not follow on what this station has."""

    def __init__(self) -> None:
        super().__init__(
            "The shop's database holds another history than this station. Sharing has stopped; "
            "scanning goes on. Ask who owns the database whether an older day was put back."
        )


class Absorbing:
    """Takes entries in that follow on the head, in one transaction, by steps.

    Between two steps the transaction stands open. Whoever asks the file for anything then, a scan
    above all, finds all as it was before: what is done so far is rolled back (`put_off`), and it
    has to be begun anew. Total: it never fails on content. Where what is here has gaps (`trusted`)
    nothing is held against the entries. Raises HistoryBroken, or a Fault of the surroundings.
    """

    def __init__(
        self,
        history: History,
        rules: Rules,
        entries: Sequence[SharedEntry],
        *,
        trusted: bool = False,
    ) -> None:
        check_chain(history.number, history.digest, entries)
        self.entries = entries
        self.is_put_off = False
        self._history, self._store, self._rules = history, history.store, rules
        self._work = self._begin(trusted=trusted)
        self._began = False

    def _begin(self, *, trusted: bool) -> "Steps":
        """Begins the work, of which nothing is done yet."""
        return _take_all(self._history, self._rules, self.entries, trusted=trusted)

    def step(self, until: float) -> list[Turned] | None:
        """Goes on until a time of `perf_counter`; gives the acts that turned once all is in."""
        if not self.entries:
            return []
        try:
            with quiet(), self._store.faults():
                self._take_up()
                turned = self._work_until(until)
                if turned is None:
                    self._let_stand()
                    return None
                ((number, link, at),) = self._store.rows(statements.NEWEST)
                self._store.commit()
                self._history.reader.come_in()
        except BaseException:
            self._store.roll_back()
            self._history.after_a_stop()
            raise
        self._history.number, self._history.digest, self._history.at = number, link, at
        self._store.bound_log()
        return turned

    def _work_until(self, until: float) -> list[Turned] | None:
        """Works, an act at a time at most; None: it is not all done."""
        while True:
            try:
                next(self._work)
            except StopIteration as done:
                turned: list[Turned] = done.value
                return turned
            if perf_counter() >= until:
                return None

    def _take_up(self) -> None:
        if not self._began:
            self._history.reader.set_out()
            self._store.begin()
            self._began = True
            return
        self._store.take_up()
        self._history.reader.take_back()

    def _let_stand(self) -> None:
        self._history.reader.put_aside()
        self._store.let_stand(self.put_off)

    def put_off(self) -> None:
        """Rolls back what stands open, so that the file is as it was before."""
        self.is_put_off = True
        self._store.take_up()
        self._store.roll_back()
        self._history.reader.drop_aside()
        self._work.close()


def absorb(
    history: History, rules: Rules, entries: Sequence[SharedEntry], *, trusted: bool = False
) -> list[Turned]:
    """Takes entries in at once, as `Absorbing` does by steps; gives the acts that turned."""
    turned = Absorbing(history, rules, entries, trusted=trusted).step(FOREVER)
    assert turned is not None
    return turned


def decide_anew(history: History, rules: Rules) -> list[Turned]:
    """Decides all that is pending again, where what may be done here has changed."""
    steps = _take_under(history, rules, rebase.waiting(history), (), ())
    try:
        with quiet(), history.store.writing():
            return run_out(steps)
    except BaseException:
        history.after_a_stop()
        raise


Steps = Generator[None, None, list[Turned]]


def _take_all(
    history: History, rules: Rules, entries: Sequence[SharedEntry], *, trusted: bool
) -> Steps:
    """Takes the entries in, some at once; may be left standing at each `yield`."""
    turned = list[Turned]()
    while entries:
        at_once = max(AT_ONCE, len(rebase.waiting(history)))  # each part may decide those again
        turned += yield from _take(history, rules, entries[:at_once], trusted=trusted)
        entries = entries[at_once:]
    return turned


@contextmanager
def quiet() -> Iterator[None]:
    """Without looking for cycles: a page makes many small things and none goes in a circle.

    They took two fifths of the time of taking in.
    """
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def check_chain(number: int, link: bytes, entries: Sequence[SharedEntry]) -> None:
    """Holds entries against the place that they follow on. Raises HistoryBroken."""
    for entry in entries:
        number, link = number + 1, digest(link, entry.id, entry.body)
        if (entry.number, entry.digest) != (number, link):
            raise HistoryBroken


def _take(
    history: History, rules: Rules, entries: Sequence[SharedEntry], *, trusted: bool
) -> Steps:
    acts = rebase.waiting(history)
    yield
    own = share_own(history, acts, entries)
    acts, rest = acts[own:], entries[own:]
    if not rest:
        return []
    come = yield from take_apart(history, rest)
    hit = [] if trusted else (yield from find_touched(acts, [body for body, _ in come]))
    yield
    if 0 < len(hit) < len(acts):
        run = history.store.run
        run("SAVEPOINT some")
        turned = yield from _take_under(history, rules, hit, rest, come)
        yield
        if (yield from _let_be(hit, rebase.waiting(history))):
            run("RELEASE some")
            return turned
        run("ROLLBACK TO some")
        run("RELEASE some")
        history.reader.forget()
        hit = acts
    if trusted:
        return _take_trusted(history, acts, rest, come)
    return (yield from _take_under(history, rules, hit, rest, come))


Come = Sequence[tuple[Body, Say]]


def _take_under(
    history: History,
    rules: Rules,
    hit: Sequence[Waiting],
    entries: Sequence[SharedEntry],
    come: Come,
) -> Steps:
    """Puts entries under the pending acts that they touch, which are decided again on top."""
    yield from lay_under(history, hit, entries, come)
    ids = {entry.id for entry in entries}
    left = [act for act in hit if act.id not in ids]
    return find_turned(hit, come) + (yield from decide_again(history, rules, left))


def find_turned(acts: Sequence[Waiting], come: Come) -> list[Turned]:
    """Finds the acts that come as entries and had turned before anybody here was told."""
    turned = {body.act.id: body for body, _ in come if body.verdict}
    came = [act for act in acts if act.id in turned and not act.body.verdict]
    return [Turned(act.id, answer_of(turned[act.id])) for act in came]


def lay_under(
    history: History, hit: Sequence[Waiting], entries: Sequence[SharedEntry], come: Come
) -> Generator[None, None, None]:
    """Undoes the acts that entries touch, and puts the entries under them.

    An act that is among the entries waits no more.
    """
    page, ids = HistoryPage(history.store), {entry.id for entry in entries}
    page.prepare([body for body, _ in come])
    for act in reversed(hit):
        page.back(act.body)
        if act.id in ids:
            history.store.run(statements.DROP_PENDING, (act.seq,))
        yield
    for n in range(0, len(come), MOST_AT_ONCE):
        part = come[n : n + MOST_AT_ONCE]
        counted = [_counted(page, body, why, trusted=False) for body, why in part]
        _keep(history, entries[n : n + MOST_AT_ONCE], counted)
        for body in counted:
            history.reader.held.touch(body)
        yield
    page.write(history.store.connection)
    yield
    history.reader.forget(None if hit else page.touched())
    if hit:
        history.reader.held.touch_all()


def _take_trusted(
    history: History, acts: Sequence[Waiting], entries: Sequence[SharedEntry], come: Come
) -> list[Turned]:
    """Takes entries in where what is here has gaps; acts that come back wait no more."""
    page = HistoryPage(history.store)
    page.prepare([body for body, _ in come])
    _keep(history, entries, [_counted(page, body, why, trusted=True) for body, why in come])
    page.write(history.store.connection)
    history.reader.forget(page.touched())
    history.reader.held.touch_all()
    ids = {entry.id for entry in entries}
    for act in acts:
        if act.id in ids:
            history.store.run(statements.DROP_PENDING, (act.seq,))
    return []


def take_apart(
    history: History, entries: Sequence[SharedEntry]
) -> Generator[None, None, list[tuple[Body, Say]]]:
    """What can be read of the entries; one that has no time has that of the one before."""
    newest = history.store.rows(statements.NEWEST)
    come, at = list[tuple[Body, Say]](), (newest or [begin_of(history.store)])[0][2]
    for n, entry in enumerate(entries, 1):
        if n % MOST_AT_ONCE == 0:
            yield
        come.append(taken_in(entry.id, entry.body, at))
        at = come[-1][0].act.at
    return come


def share_own(history: History, acts: Sequence[Waiting], entries: Sequence[SharedEntry]) -> int:
    """Keeps the oldest of the acts that come back first, as they were, as the entries they are.

    Gives how many.
    """
    count = 0
    for act, entry in zip(acts, entries, strict=False):
        if (act.id, act.text) != (entry.id, entry.body):
            break
        count += 1
    _keep(history, entries[:count], [act.body for act in acts[:count]])
    for act in acts[:count]:
        history.store.run(statements.DROP_PENDING, (act.seq,))
    return count


def find_touched(
    acts: Sequence[Waiting], bodies: Sequence[Body]
) -> Generator[None, None, list[Waiting]]:
    """Finds the pending acts that what comes does not let be, and those that rest on one of them.

    All others commute with what comes: they stay as they are.
    """
    if not acts:
        return []
    names = {name for body in bodies for name in effects.writes(body)}
    marks = {name for body in bodies for name in effects.rests_on(body)}
    ids, touched = {body.act.id for body in bodies}, list[Waiting]()
    for n, act in enumerate(acts, 1):
        if n % MOST_AT_ONCE == 0:
            yield
        alone = act.reads.isdisjoint(names) and act.marks.isdisjoint(marks)
        if not alone or act.id in ids:
            touched.append(act)
            names |= act.writes
            marks |= act.marks
    return touched


def _let_be(hit: Sequence[Waiting], acts: Sequence[Waiting]) -> Generator[None, None, bool]:
    """Whether acts that were decided again let be those behind them that were not."""
    again_, names, marks, reads = {act.seq for act in hit}, set[str](), set[str](), set[str]()
    for n, act in enumerate(acts, 1):
        if n % MOST_AT_ONCE == 0:
            yield
        if act.seq in again_:
            names |= act.writes
            marks |= act.marks
            reads |= act.reads
        elif not (
            act.reads.isdisjoint(names)
            and act.marks.isdisjoint(marks)
            and act.writes.isdisjoint(reads)
        ):
            return False
    return True


def _counted(page: HistoryPage, body: Body, why: Say, *, trusted: bool) -> Body:
    """An entry carried out, or what needs a look in its place."""
    unfit = page.take(body, why, trusted=trusted)
    return instead(body, unfit) if unfit else body


def _keep(history: History, entries: Sequence[SharedEntry], bodies: Sequence[Body]) -> None:
    rows = (
        effects.entry_row(entry.number, body, entry.body, entry.digest)
        for entry, body in zip(entries, bodies, strict=True)
    )
    history.store.connection.executemany(statements.ADD_ENTRY, rows)
