"""The shop's history is taken in: pages of shared entries, under what is not shared yet."""

import gc
from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from station.ledger import again, effects, statements
from station.ledger.again import Turned, Waiting, decide_again
from station.ledger.books import instead
from station.ledger.closing import begin_of
from station.ledger.codec import Body, digest
from station.ledger.faults import Fault
from station.ledger.history import History
from station.ledger.page import HistoryPage
from station.ledger.shop_link import SharedEntry
from station.ledger.sound import taken_in
from station.shop.views import Rules
from station.shop.words import Say

# Entries whose parts are in memory at once: with those of a whole page of 4,000 there, the
# processor waits for its memory, and taking in is slower (``python -m tests.bench shared``).
AT_ONCE = 250
# Pending acts that are decided again in one step where somebody may scan in between.
MOST_AGAIN = 100


class HistoryBroken(Fault):
    """What came from the shop's database does not follow on what this station has."""

    def __init__(self) -> None:
        super().__init__(
            "The shop's database holds another history than this station. Sharing has stopped; "
            "scanning goes on. Ask who owns the database whether an older day was put back."
        )


def absorb(
    history: History, rules: Rules, entries: Sequence[SharedEntry], *, trusted: bool = False
) -> list[Turned]:
    """Takes entries in that follow on the head, in one transaction; gives the acts that turned.

    Total: it never fails on content. Where what is here has gaps (`trusted`) nothing is held
    against the entries. Raises HistoryBroken, or a Fault of the surroundings.
    """
    _check_chain(history, entries)
    if not entries:
        return []
    try:
        with quiet(), history.store.writing():
            turned = [
                act
                for first in range(0, len(entries), AT_ONCE)
                for act in _take(history, rules, entries[first : first + AT_ONCE], trusted=trusted)
            ]
    except BaseException:
        history.after_a_stop()
        raise
    history.number, history.digest = entries[-1].number, entries[-1].digest
    history.store.bound_log()
    return turned


def count_step(history: History, entries: Sequence[SharedEntry]) -> int:
    """Counts how many of the entries to take in at once, so that nobody waits long for a scan.

    Zero: pending acts were read ahead instead. Entries that touch more pending acts than a step
    has room for are taken in by fewer; where the first alone touches so many, as many go with it
    as touch hardly more, for each step decides all of those again.
    """
    with quiet():
        acts = again.waiting(history)
        if len(acts) <= MOST_AGAIN:
            return len(entries)
        if not again.read_ahead(acts):
            return 0
        return _own(acts, entries) or _count_fitting(acts, entries)


def _count_fitting(acts: Sequence[Waiting], entries: Sequence[SharedEntry]) -> int:
    bodies = [taken_in(entry.id, entry.body)[0] for entry in entries]
    if len(_touched(acts, bodies)) <= MOST_AGAIN:
        return len(entries)
    most, count = max(MOST_AGAIN, len(_touched(acts, bodies[:1])) * 5 // 4), 1
    while 2 * count < len(entries) and len(_touched(acts, bodies[: 2 * count])) <= most:
        count *= 2
    return count


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


def _check_chain(history: History, entries: Sequence[SharedEntry]) -> None:
    number, link = history.number, history.digest
    for entry in entries:
        number, link = number + 1, digest(link, entry.id, entry.body)
        if (entry.number, entry.digest) != (number, link):
            raise HistoryBroken


def _take(
    history: History, rules: Rules, entries: Sequence[SharedEntry], *, trusted: bool
) -> list[Turned]:
    acts = again.waiting(history)
    own = _own(acts, entries)
    _keep(history, entries[:own], [act.body for act in acts[:own]])
    for act in acts[:own]:
        history.store.run(statements.DROP_PENDING, (act.seq,))
    acts, rest = acts[own:], entries[own:]
    if not rest:
        return []
    come = _taken_in(history, rest)
    hit = [] if trusted else _touched(acts, [body for body, _ in come])
    if 0 < len(hit) < len(acts):
        run = history.store.run
        run("SAVEPOINT some")
        turned = _take_under(history, rules, hit, rest, come)
        if _let_be(hit, again.waiting(history)):
            run("RELEASE some")
            return turned
        run("ROLLBACK TO some")
        run("RELEASE some")
        history.reader.forget()
        hit = acts
    if trusted:
        return _take_trusted(history, acts, rest, come)
    return _take_under(history, rules, hit, rest, come)


Come = Sequence[tuple[Body, Say]]


def _take_under(
    history: History,
    rules: Rules,
    hit: Sequence[Waiting],
    entries: Sequence[SharedEntry],
    come: Come,
) -> list[Turned]:
    """Puts entries under the pending acts that they touch, which are decided again on top."""
    page = HistoryPage(history.store)
    page.prepare([body for body, _ in come])
    for act in reversed(hit):
        page.back(act.body)
        history.store.run(statements.DROP_PENDING, (act.seq,))
    _keep(history, entries, [_counted(page, body, why, trusted=False) for body, why in come])
    page.write(history.store.connection)
    history.reader.forget(None if hit else page.touched())
    ids = {entry.id for entry in entries}
    return decide_again(history, rules, [act for act in hit if act.id not in ids])


def _take_trusted(
    history: History, acts: Sequence[Waiting], entries: Sequence[SharedEntry], come: Come
) -> list[Turned]:
    """Takes entries in where what is here has gaps; acts that come back wait no more."""
    page = HistoryPage(history.store)
    page.prepare([body for body, _ in come])
    _keep(history, entries, [_counted(page, body, why, trusted=True) for body, why in come])
    page.write(history.store.connection)
    history.reader.forget(page.touched())
    ids = {entry.id for entry in entries}
    for act in acts:
        if act.id in ids:
            history.store.run(statements.DROP_PENDING, (act.seq,))
    return []


def _taken_in(history: History, entries: Sequence[SharedEntry]) -> list[tuple[Body, Say]]:
    """What can be read of the entries; one that has no time has that of the one before."""
    newest = history.store.rows(statements.NEWEST)
    come, at = list[tuple[Body, Say]](), (newest or [begin_of(history.store)])[0][2]
    for entry in entries:
        come.append(taken_in(entry.id, entry.body, at))
        at = come[-1][0].act.at
    return come


def _own(acts: Sequence[Waiting], entries: Sequence[SharedEntry]) -> int:
    """How many of this station's oldest pending acts come back first, as they were."""
    count = 0
    for act, entry in zip(acts, entries, strict=False):
        if (act.id, act.text) != (entry.id, entry.body):
            break
        count += 1
    return count


def _touched(acts: Sequence[Waiting], bodies: Sequence[Body]) -> list[Waiting]:
    """The pending acts that what comes does not let be, and those that rest on one of them.

    All others commute with what comes: they stay as they are.
    """
    names = {name for body in bodies for name in effects.writes(body)}
    marks = {name for body in bodies for name in effects.rests_on(body)}
    ids, hit = {body.act.id for body in bodies}, list[Waiting]()
    for act in acts:
        alone = act.reads.isdisjoint(names) and act.marks.isdisjoint(marks)
        if not alone or act.id in ids:
            hit.append(act)
            names |= act.writes
            marks |= act.marks
    return hit


def _let_be(hit: Sequence[Waiting], acts: Sequence[Waiting]) -> bool:
    """Whether acts that were decided again let be those behind them that were not."""
    again_, names, marks, reads = {act.seq for act in hit}, set[str](), set[str](), set[str]()
    for act in acts:
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
    if bodies:
        history.at = bodies[-1].act.at
