"""The shop's history is taken in: pages of shared entries, under what is not shared yet."""

from collections.abc import Sequence

from station.ledger import again, effects, statements
from station.ledger.again import Turned, Waiting
from station.ledger.codec import Body, digest
from station.ledger.faults import Fault
from station.ledger.history import History
from station.ledger.shop_link import SharedEntry
from station.ledger.sound import taken_in
from station.shop.views import Rules


class HistoryBroken(Fault):
    """What came from the shop's database does not follow on what this station has."""

    def __init__(self) -> None:
        super().__init__(
            "The shop's database holds another history than this station. Sharing has stopped; "
            "scanning goes on. Ask who owns the database whether an older day was put back."
        )


def absorb(history: History, rules: Rules, entries: Sequence[SharedEntry]) -> list[Turned]:
    """Takes entries in that follow on the head, in one transaction; gives the acts that turned.

    Total: it never fails on content. Raises HistoryBroken, or a Fault of the surroundings.
    """
    _check_chain(history, entries)
    if not entries:
        return []
    try:
        with history.store.writing():
            turned = _take(history, rules, entries)
    except BaseException:
        history.reload()
        raise
    history.number, history.digest = entries[-1].number, entries[-1].digest
    history.store.bound_log()
    return turned


def _check_chain(history: History, entries: Sequence[SharedEntry]) -> None:
    number, link = history.number, history.digest
    for entry in entries:
        number, link = number + 1, digest(link, entry.id, entry.body)
        if (entry.number, entry.digest) != (number, link):
            raise HistoryBroken


def _take(history: History, rules: Rules, entries: Sequence[SharedEntry]) -> list[Turned]:
    acts = again.waiting(history)
    own = _own(acts, entries)
    for act, entry in zip(acts, entries[:own], strict=False):
        history.store.run(statements.ADD_ENTRY, _row(entry, taken_in(entry.id, entry.body)))
        history.store.run(statements.DROP_PENDING, (act.seq,))
    acts, rest = acts[own:], entries[own:]
    if not rest:
        return []
    bodies = [taken_in(e.id, e.body) for e in rest]
    if _apart(acts, rest, bodies):
        _apply(history, rest, bodies)
        return []
    again.undo_all(history, acts)
    come = {e.id for e in rest}
    _apply(history, rest, bodies)
    return again.decide_again(history, rules, [a for a in acts if a.id not in come])


def _own(acts: Sequence[Waiting], entries: Sequence[SharedEntry]) -> int:
    """How many of this station's oldest pending acts come back first, as they were."""
    count = 0
    for act, entry in zip(acts, entries, strict=False):
        if (act.id, act.text) != (entry.id, entry.body):
            break
        count += 1
    return count


def _apart(
    acts: Sequence[Waiting], entries: Sequence[SharedEntry], bodies: Sequence[Body]
) -> bool:
    """Whether nothing that comes touches what the pending acts rest on: then all commutes."""
    if not acts:
        return True
    rests_on = frozenset[str]().union(*(act.reads for act in acts))
    ids = {act.id for act in acts}
    return not any(e.id in ids for e in entries) and rests_on.isdisjoint(
        name for body in bodies for name in effects.writes(body)
    )


def _apply(history: History, entries: Sequence[SharedEntry], bodies: Sequence[Body]) -> None:
    """Carries the whole page out at once: what many entries do to one spot is one change."""
    connection = history.store.connection
    effects.apply_all(connection, bodies)
    for change in (c for body in bodies for c in body.sets):
        history.reader.took(change.key, None, None)
    connection.executemany(statements.ADD_ENTRY, map(_row, entries, bodies))
    history.at = max(history.at, *(body.act.at for body in bodies))


def _row(entry: SharedEntry, body: Body) -> effects.EntryRow:
    return effects.entry_row(entry.number, body, entry.body, entry.digest)
